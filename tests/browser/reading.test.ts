/** The form for who listens to it, for who asks where a number comes from, and for the shop wall. */
import type { Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, it, vi } from "vitest";
import { asked, clean, demo, hasBrowser, openStage, type Stage, type Visit, visit } from "./browser.js";

vi.setConfig({ testTimeout: 180_000 }); // a busy machine is slow, not wrong

let stage: Stage;
beforeAll(async () => {
  if (hasBrowser) stage = await openStage();
}, 180_000);
afterAll(async () => stage?.close());

interface Heard {
  readonly role: string;
  readonly name: string;
}

/** What a screen reader is given, in its order. */
async function heardOn(page: Page): Promise<Heard[]> {
  const cdp = await page.context().newCDPSession(page);
  const { nodes } = await cdp.send("Accessibility.getFullAXTree");
  return nodes
    .filter(({ ignored }) => !ignored)
    .map(({ role, name }) => ({ role: String(role?.value), name: String(name?.value ?? "").trim() }));
}

/** Roles that say nothing without a name. */
const NAMED = [
  "button",
  "textbox",
  "combobox",
  "checkbox",
  "link",
  "table",
  "image",
  "dialog",
  "region",
  "progressbar",
];

const unnamed = (heard: readonly Heard[]) => heard.filter(({ role, name }) => NAMED.includes(role) && name === "");

/** Everything that hangs on the wall, and what does not. */
const ON_THE_WALL = [
  ...["#verdict", ".routes .route", "#cautions li", "#pieces tbody tr", "#sawing .drawing img", "#shopping tbody tr"],
  ...["#sticks table", "#rafter dl", "#hours tbody tr"],
];
const NOT_ON_THE_WALL = [
  ...["#drawings img", "#covering .route", "#calendar table", "#notices li", "#sheet .cells", ".plot"],
];
const NEVER_PRINTED = [".give", ".state", ".bar-top"];

/** Pages of a print, as the browser makes it: it tells the page before and after. */
async function pagesOf({ page }: Visit): Promise<number> {
  const pdf = (await page.pdf({ format: "Letter" })).toString("latin1");
  return pdf.match(/\/Type \/Page\n/g)?.length ?? 0;
}

/** Which of the parts are on paper. */
async function onPaper({ page }: Visit, parts: readonly string[]): Promise<string[]> {
  await page.evaluate(() => dispatchEvent(new Event("beforeprint")));
  await page.emulateMedia({ media: "print" });
  const shown: string[] = [];
  for (const part of parts) if (await page.locator(part).first().isVisible()) shown.push(part);
  return shown;
}

describe.skipIf(!hasBrowser)("the form, read", () => {
  it("leaves no control, table or picture without a name, with everything unfolded", async () => {
    const v = await visit(stage);
    const { page } = v;
    const shut = await page.locator(".panel:not([open])").evaluateAll((panels) => panels.map(({ id }) => id));
    for (const id of shut) await page.click(`#${id} > summary`);
    await page.waitForSelector("#sheet .sub");
    const heard = await heardOn(page);
    expect(heard.filter(({ role }) => role === "table").length).toBeGreaterThan(10);
    expect(unnamed(heard)).toEqual([]);
    expect(heard.map(({ name }) => name)).toContain("The structure 16 ft × 24 ft");
    await v.end();
  });

  it("tells who listens of the start and the end, not of every keystroke and step", async () => {
    const v = await visit(stage);
    const { page } = v;
    await page.evaluate(() => {
      const region = document.querySelector('.state [role="status"]') as Element;
      const told: string[] = [];
      Object.assign(window, { told });
      const take = () => {
        const words = region.textContent?.trim() ?? "";
        if (words !== told.at(-1)) told.push(words);
      };
      new MutationObserver(take).observe(region, { childList: true, characterData: true, subtree: true });
    });
    await page.focus("#at-structure-span");
    await page.keyboard.press("ControlOrMeta+A");
    await page.keyboard.type("15 ft 6 in", { delay: 40 });
    await page.waitForSelector(".state.is-working");
    await v.settled();
    const told = await page.evaluate(() => (window as unknown as { told: string[] }).told);
    const verdict = await page.locator("#verdict-head").textContent();
    expect(told.filter(Boolean).length).toBeLessThanOrEqual(2);
    expect(told.at(-1)).toMatch(/^Up to date\./);
    const { headline } = (await asked(stage, { ...demo, options: { frontier: true } })).decision.verdict;
    expect(told.at(-1)?.includes(verdict as string)).toBe(verdict !== headline); // said only where it is another
    await v.end();
  });

  it("leads from every figure of a reason to its cell, and from there to what it is made of and back", async () => {
    const v = await visit(stage);
    const { page } = v;
    const first = page.locator("#verdict .reasons").first().locator("li");
    expect(await first.nth(0).locator("button.fig").allTextContents()).toHaveLength(4);
    const figures = first.nth(1).locator("button.fig");
    expect(await figures.count()).toBe(4); // saved, hours, pay, and what an hour is worth
    const names: (string | null)[] = [];
    for (let i = 0; i < 4; i += 1) {
      await figures.nth(i).click();
      await page.waitForSelector("#card .big");
      names.push(await page.locator("#card code").textContent());
      await page.keyboard.press("Escape");
      await page.waitForSelector("#card", { state: "detached" });
    }
    expect(names).toEqual([
      ...["decision.mix.cashSaved", "decision.mix.extraHours", "decision.mix.payPerHour", "labor.valueOfHour"],
    ]);
    await figures.nth(0).click();
    await page.locator("#card .sums button").first().click();
    await page.waitForSelector("#card code:not(:text-is('decision.mix.cashSaved'))");
    await clean(v);
    await page.click("#card >> text=Back");
    await page.waitForSelector("#card code:text-is('decision.mix.cashSaved')");
    expect(await page.locator("#card >> text=Back").count()).toBe(0);
    await page.keyboard.press("Escape");
    const bounds = page.locator("#verdict .reasons").last().locator("li", { hasText: "Of all mixes tried" });
    expect(await bounds.count()).toBe(1);
    expect(await bounds.locator("button").count()).toBe(0); // what no cell holds leads nowhere
    await v.end();
  });

  it("keeps the cursor in the card's field while its number is worked out anew", async () => {
    const v = await visit(stage);
    const { page } = v;
    await page.click("#rafter > summary");
    await page.locator("#rafter .fig").nth(3).click();
    await page.waitForSelector("#card .working");
    await page.focus("#own-value");
    await page.evaluate(() => {
      document.getElementById("own-value")?.addEventListener("blur", () => Object.assign(window, { left: true }));
    });
    await page.keyboard.press("ControlOrMeta+A");
    await page.keyboard.type("3 in");
    await page.keyboard.press("ArrowLeft");
    await page.keyboard.press("Enter");
    await page.waitForSelector('#card .big:not(.old):text-is("3 in")');
    const at = await page.evaluate(() => {
      const field = document.activeElement as HTMLInputElement;
      return { id: field.id, caret: field.selectionStart, left: "left" in window };
    });
    expect(at).toEqual({ id: "own-value", caret: 3, left: false });
    await page.click("text=Take mine back");
    await page.waitForSelector('#card .big:not(.old):not(:text-is("3 in"))');
    expect(await page.evaluate(() => document.activeElement?.id)).toBe("own-value");
    await clean(v);
    await v.end();
  });

  it("jumps within the page without losing the project from the address", async () => {
    const v = await visit(stage);
    const { page } = v;
    await page.fill("#at-title", "Barn");
    await v.settled();
    await page.waitForFunction(() => location.hash.startsWith("#p1."));
    const { hash } = new URL(page.url());
    await page.focus('.skip[href="#give"]');
    await page.keyboard.press("Enter");
    expect(await page.evaluate(() => document.activeElement?.id)).toBe("give");
    expect(new URL(page.url()).hash).toBe(hash);
    await v.end();
  });

  it("prints a few pages for the shop wall: the verdict, what to mind, saw, cut and buy, and the hours", async () => {
    const v = await visit(stage);
    const { page } = v;
    const open = await page.locator(".panel[open]").count();
    const pages = await pagesOf(v);
    expect(pages).toBeGreaterThan(2);
    expect(pages).toBeLessThanOrEqual(6);
    const parts = [...ON_THE_WALL, ...NOT_ON_THE_WALL, ...NEVER_PRINTED];
    expect(await onPaper(v, parts)).toEqual(ON_THE_WALL);
    const top = async (selector: string) => (await page.locator(selector).boundingBox())?.y ?? Number.NaN;
    expect(await top("#cautions")).toBeLessThan(await top("#pieces"));
    const { notices } = await asked(stage, { ...demo, options: { frontier: true } });
    const kept = notices.filter(({ code }: { code: string }) => ["bought-size", "short"].includes(code));
    expect(kept.length).toBeGreaterThan(0);
    const list = (await page.locator("#shopping .note").allTextContents()).join(" ").toLowerCase();
    for (const { text } of kept) expect(list).toContain(text.toLowerCase());
    expect(await page.title()).toBe(`${demo.title}: mill it or buy it? – Boleworth`);
    await page.emulateMedia({ media: "print" });
    // As wide as the print of a Letter page: no name in a way's card is broken into letters.
    await page.setViewportSize({ width: 739, height: 1000 });
    const lines = await page.locator(".route dt").evaluateAll((names) =>
      names.map((name) => {
        const range = document.createRange();
        range.selectNodeContents(name);
        return range.getClientRects().length - (name.textContent ?? "").split(" ").length;
      }),
    );
    expect(lines.length).toBeGreaterThan(8);
    expect(lines.filter((over) => over > 0)).toEqual([]);
    // Tax and total stand below both columns of the list: at the end of the last one they were left off the paper.
    const sums = page.locator("#shopping > .sums");
    expect(await sums.textContent()).toContain("Cash in all");
    expect(await sums.evaluate((one) => getComputedStyle(one).columnSpan)).toBe("all");
    const found = await v.violations();
    // The head of the page is not printed; on the wall the verdict is the heading.
    expect(found.filter((one) => !one.startsWith("page-has-heading-one"))).toEqual([]);
    expect(v.mishaps).toEqual([]);
    await page.emulateMedia({ media: "screen" });
    await page.evaluate(() => dispatchEvent(new Event("afterprint")));
    expect(await page.locator(".panel[open]").count()).toBe(open); // what was folded is folded again
    await v.end();
  });

  it("prints everything, every number too, where that is asked for", async () => {
    const v = await visit(stage);
    const { page } = v;
    await page.evaluate(() => Object.assign(window, { print: () => Object.assign(window, { asked: true }) }));
    await page.click("#sheet > summary");
    await page.click("text=Print everything, these too");
    await page.waitForFunction(() => "asked" in window);
    const all = [...ON_THE_WALL, ...NOT_ON_THE_WALL];
    expect(await onPaper(v, [...all, ...NEVER_PRINTED])).toEqual(all);
    expect(await pagesOf(v)).toBeGreaterThan(20);
    expect(await pagesOf(v)).toBeLessThanOrEqual(6); // asked for once, not for good
    await v.end();
  });
});
