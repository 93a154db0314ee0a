import { describe, expect, it } from "vitest";
import { createApp } from "../../src/api/app.js";
import { calls } from "../../src/api/calls.js";
import { here } from "../../src/api/computing.js";
import { PROBLEMS } from "../../src/api/problem.js";
import { FAULT_CODES } from "../../src/estimate/faults.js";
import { pileCall, shelfCall } from "./helpers/woodpile.js";

const app = createApp([...calls, pileCall, shelfCall], { computing: here(calls) });
const page = await (await app.request("/docs", { headers: { Accept: "text/html" } })).text();

describe("the page of the calls", () => {
  it("shows every call, problem and fault", () => {
    for (const row of [...calls, pileCall, shelfCall].filter(({ hidden }) => !hidden)) {
      expect(page).toContain(`<code>${row.method.toUpperCase()} ${row.path}</code>`);
    }
    for (const kind of Object.keys(PROBLEMS)) expect(page).toContain(`id="problem-${kind}"`);
    for (const meaning of Object.values(FAULT_CODES)) expect(page).toContain(`<dd>${meaning}</dd>`);
  });

  it("explains the fields of a body", () => {
    expect(page).toMatch(/<code>rows<\/code><\/th><td>whole number from 1 to 50<\/td><td>Rows of boards\.<\/td>/);
    expect(page).toMatch(/<code>sides<\/code><\/th><td>whole number from 3 to 8; 4 when absent<\/td>/);
  });

  it("needs nothing inline and nothing from elsewhere", () => {
    expect(page).not.toMatch(/<script|<style|\sstyle=|\son\w+=|https?:/);
    expect(page.startsWith("<!doctype html><html lang=")).toBe(true);
  });

  it("has no link that leads nowhere, and no name twice", async () => {
    const ids = [...page.matchAll(/\sid="([^"]+)"/g)].map((match) => match[1]);
    expect(new Set(ids).size).toBe(ids.length);
    for (const [, target] of page.matchAll(/href="#([^"]+)"/g)) expect(ids).toContain(target);
    for (const [, target] of page.matchAll(/href="(\/[^"]+)"/g)) {
      expect([target, (await app.request(target as string)).status]).toEqual([target, 200]);
    }
  });

  it("is what the type of a problem leads to", async () => {
    const problem = (await (await app.request("/nowhere")).json()) as { type: string };
    expect(problem.type).toBe("/docs#problem-not-found");
  });
});
