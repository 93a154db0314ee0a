/** A real browser before the real service: the service on a free port, Debian's or another Chromium in front of it. */
import { existsSync, readFileSync } from "node:fs";
import { createRequire } from "node:module";
import { delimiter, join } from "node:path";
import { type Browser, type BrowserContextOptions, chromium, type Page } from "playwright-core";
import { expect } from "vitest";
import type { Estimate } from "../../openapi/client-types.js";
import { createApp } from "../../src/api/app.js";
import { calls } from "../../src/api/calls.js";
import { type Computing, here } from "../../src/api/computing.js";
import { type Listening, serve } from "../../src/api/serve.js";
import { scripts } from "../../src/api/web/bundle.js";
import { webPage } from "../../src/api/web/page.js";

const NAMES = ["chromium", "chromium-browser", "google-chrome"];
const FLAGS = [
  ...["--no-sandbox", "--disable-gpu", "--disable-quic", "--no-first-run", "--disable-background-networking"],
  ...["--disable-component-update", "--disable-sync"],
];

/** The browser: CHROMIUM_PATH, else the first on the path; undefined where there is none. */
function browserPath(): string | undefined {
  const given = process.env.CHROMIUM_PATH;
  if (given) return given;
  const folders = (process.env.PATH ?? "").split(delimiter);
  return folders.flatMap((folder) => NAMES.map((name) => join(folder, name))).find((path) => existsSync(path));
}

const path = browserPath();
const must = process.env.BROWSER_TESTS === "must";
if (path === undefined) {
  const words = "No Chromium is on the path. Install one (apt-get install chromium) or set CHROMIUM_PATH.";
  if (must) throw new Error(words);
  console.warn(`${words} The form is not tried in a browser this time.`);
}

/** Whether there is a browser to try the form in. Where BROWSER_TESTS is `must`, there is, or loading this fails. */
export const hasBrowser = path !== undefined;

/** The service and the browser. */
export interface Stage {
  readonly url: string;
  readonly browser: Browser;
  close(): Promise<void>;
}

/** The same job gives the same bytes, which other tests hold; most pages here open with the same one. */
function remembering({ compute, queue }: Computing): Computing {
  const known = new Map<string, Uint8Array<ArrayBuffer>>();
  return {
    queue,
    compute: async (job, waiting) => {
      const key = JSON.stringify(job);
      const answer = known.get(key) ?? (await compute(job, waiting));
      known.set(key, answer);
      return answer;
    },
  };
}

/** Starts both. */
export async function openStage(): Promise<Stage> {
  webPage(); // as the service does: the first visitor does not wait for the demo to be worked out
  await scripts();
  const listening: Listening = await serve({
    fetch: createApp(calls, { computing: remembering(here(calls)) }).fetch,
    port: 0,
    host: "127.0.0.1",
  });
  const browser = await chromium.launch({ executablePath: path as string, args: FLAGS });
  return {
    url: `http://127.0.0.1:${listening.port}`,
    browser,
    close: async () => {
      await browser.close();
      await listening.stop();
    },
  };
}

/** A page, with all that must never happen noted on the way. */
export interface Visit {
  readonly page: Page;
  /** Errors on the console, uncaught errors, and requests that leave the origin. */
  readonly mishaps: string[];
  /** Waits until the answer belongs to what was asked; a change is not fresh from its first keystroke on. */
  settled(): Promise<void>;
  /** Every violation that axe finds, in a line each. */
  violations(): Promise<string[]>;
  end(): Promise<void>;
}

const axe = readFileSync(createRequire(import.meta.url).resolve("axe-core/axe.min.js"), "utf8");

/** Opens the form. */
export async function visit(stage: Stage, options: BrowserContextOptions = {}, address = "/"): Promise<Visit> {
  const context = await stage.browser.newContext({ viewport: { width: 1440, height: 900 }, ...options });
  const page = await context.newPage();
  const mishaps: string[] = [];
  page.on("console", (message) => {
    const text = message.text();
    // The browser itself writes a line for every answer that is a problem: that is what a wrong field gets.
    if (["error", "warning"].includes(message.type()) && !/status of 422/.test(text)) mishaps.push(text);
  });
  page.on("pageerror", (error) => mishaps.push(error.message));
  page.on("request", (request) => {
    const url = request.url();
    if (!url.startsWith(stage.url) && !/^(data|blob):/.test(url)) mishaps.push(`left the origin: ${url}`);
  });
  await page.goto(stage.url + address, { timeout: 120_000 });
  return {
    page,
    mishaps,
    settled: () => settled(page),
    violations: () => violations(page),
    end: async () => {
      await context.close();
    },
  };
}

async function settled(page: Page): Promise<void> {
  await page.waitForSelector(".state.is-fresh", { timeout: 120_000 });
}

interface Violation {
  readonly id: string;
  readonly nodes: readonly { readonly html: string; readonly failureSummary?: string }[];
}

async function violations(page: Page): Promise<string[]> {
  await page.evaluate(axe);
  const found = (await page.evaluate("axe.run()")) as { readonly violations: readonly Violation[] };
  return found.violations.flatMap(({ id, nodes }) => nodes.map(({ html }) => `${id}: ${html.slice(0, 200)}`));
}

/** The same project by its file: what the form would save. */
export async function saved(page: Page): Promise<string> {
  const [download] = await Promise.all([page.waitForEvent("download"), page.click("text=Save file")]);
  return readFileSync(await download.path(), "utf8");
}

/** The orchard's request, as it lies on disk. */
export const demo = JSON.parse(readFileSync(new URL("../../demo-data/orchard-shelter.json", import.meta.url), "utf8"));

/** What the service answers to a request, asked without a browser. */
export async function asked(stage: Stage, request: unknown): Promise<Estimate> {
  const response = await fetch(`${stage.url}/v1/estimates`, {
    method: "POST",
    headers: { "content-type": "application/json" },
    body: JSON.stringify(request),
  });
  if (response.status !== 200) throw new Error(`${response.status}: ${await response.text()}`);
  return (await response.json()) as Estimate;
}

/** Nothing that axe finds, nothing in the console, nothing asked of another host. */
export async function clean(v: Visit): Promise<void> {
  expect(await v.violations()).toEqual([]);
  expect(v.mishaps).toEqual([]);
}
