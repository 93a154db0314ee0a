import { type ChildProcess, spawn } from "node:child_process";
import { once } from "node:events";
import { createServer } from "node:http";
import type { AddressInfo } from "node:net";
import { afterEach, describe, expect, it, vi } from "vitest";

// A process takes its time to start where others use the machine.
vi.setConfig({ testTimeout: 120_000 });

const main = new URL("../../src/api/main.ts", import.meta.url).pathname;
const started: ChildProcess[] = [];
afterEach(() => {
  for (const child of started.splice(0)) child.kill("SIGKILL");
});

/** Starts the service as its own process. */
function start(environment: Record<string, string>) {
  const child = spawn(process.execPath, ["--import", "tsx", main], { env: { ...process.env, ...environment } });
  started.push(child);
  const output = { out: "", err: "" };
  child.stdout.on("data", (data) => {
    output.out += data;
  });
  child.stderr.on("data", (data) => {
    output.err += data;
  });
  const ended = once(child, "exit").then(([code]) => code as number | null);
  return { child, output, ended };
}

async function until<T>(found: () => T | undefined): Promise<T> {
  for (;;) {
    const value = found();
    if (value !== undefined) return value;
    await new Promise((resolve) => setTimeout(resolve, 20));
  }
}

const portOf = (out: string) => /http:\/\/localhost:(\d+)/.exec(out)?.[1];

describe("the service as a process", () => {
  it("says where it serves, answers, and ends with 0 on SIGTERM", async () => {
    const { child, output, ended } = start({ PORT: "0" });
    const port = await until(() => portOf(output.out));
    expect((await fetch(`http://localhost:${port}/healthz`)).status).toBe(200);
    child.kill("SIGTERM");
    expect(await ended).toBe(0);
    expect(output.err).toBe("");
  });

  it("ends with 0 on SIGINT too, and leaves the port free", async () => {
    const { child, output, ended } = start({ PORT: "0" });
    const port = await until(() => portOf(output.out));
    child.kill("SIGINT");
    expect(await ended).toBe(0);
    await expect(fetch(`http://localhost:${port}/healthz`)).rejects.toThrow();
  });

  it.each(["http", "-1", "65536", "80 80", "1e3"])("refuses PORT=%s in a sentence", async (port) => {
    const { output, ended } = start({ PORT: port });
    expect(await ended).toBe(1);
    expect(output.err).toBe(`PORT is "${port}"; give a whole number from 0 to 65535.\n`);
  });

  it("says when the port is in use, and what to do", async () => {
    const other = createServer().listen(0);
    await once(other, "listening");
    const { port } = other.address() as AddressInfo;
    const { output, ended } = start({ PORT: String(port) });
    expect(await ended).toBe(1);
    other.close();
    expect(output.err).toContain(`Port ${port} is in use.`);
    expect(output.err).not.toContain("at ");
  });
});
