/** The web form as people use it: from a blank project to a verdict, and every number poked. */
import { readFileSync } from "node:fs";
import { afterAll, beforeAll, describe, expect, it, vi } from "vitest";
import { asked, clean, demo, hasBrowser, openStage, type Stage, saved, type Visit, visit } from "./browser.js";

vi.setConfig({ testTimeout: 180_000 }); // a busy machine is slow, not wrong

let stage: Stage;
beforeAll(async () => {
  if (hasBrowser) stage = await openStage();
}, 180_000);
afterAll(async () => stage?.close());

/** What the form opens with: the demo, the mixes between searched. */
const opening = { ...demo, options: { frontier: true } };

/** All that the answer says, without what is still shown of one before it. */
const answerOf = (page: Visit["page"]) =>
  page.locator(".get").evaluate((part) => {
    const copy = part.cloneNode(true) as Element;
    for (const one of copy.querySelectorAll(".old, .offer")) one.remove();
    return copy.textContent;
  });

const headline = (page: Visit["page"]) => page.locator("#verdict-head").textContent();

describe.skipIf(!hasBrowser)("the form at /", () => {
  it("shows the demo's answer without any script, and says how to change it", async () => {
    const v = await visit(stage, { javaScriptEnabled: false });
    const { decision, purchasing } = await asked(stage, opening);
    expect(await headline(v.page)).toBe(decision.verdict.headline);
    const text = await v.page.locator("body").textContent();
    for (const reason of decision.verdict.reasons) expect(text).toContain(reason);
    expect(text).toContain(purchasing.shared[0]?.lines[0]?.label);
    expect(text).toContain("switch on scripts");
    expect(await v.page.locator(".plot .between").count()).toBe(decision.frontier.length);
    expect(await v.page.locator(".plot .ring").count()).toBe(1); // the chosen point
    expect(await v.page.locator("#sawing .drawing img").count()).toBeGreaterThan(5); // end views of the bolts
    await v.end();
  });

  it("leads a newcomer with a phone from blank, step by step, to a verdict", async () => {
    const v = await visit(stage, { viewport: { width: 360, height: 740 }, hasTouch: true, isMobile: true });
    const { page } = v;
    await page.selectOption("#demo", "-blank");
    await page.click("#begin");
    await v.settled();
    await clean(v);
    expect(await headline(page)).toBe("No verdict yet: nothing has a price.");
    expect(await page.locator("#shopping").textContent()).toContain("no prices yet");
    expect(await page.locator("body").textContent()).not.toContain("$0.00"); // what has no price is not zero
    await page.click(".next >> text=Change it");
    await page.waitForFunction(() => document.activeElement?.id === "at-structure-kind");
    expect(await page.locator("#at-structure-kind").isVisible()).toBe(true);
    await page.selectOption("#at-structure-kind", "lean-to");
    await page.fill("#at-structure-span", "8 ft");
    await v.settled();
    await clean(v);
    await page.click(".next >> text=Add a log");
    await page.waitForFunction(() => document.activeElement?.id === "at-logs-0-length");
    await page.waitForTimeout(1500);
    await v.settled();
    expect(await page.locator(".give .fault").count()).toBe(0); // nobody is told off for an empty row
    expect(await page.locator("#give-logs").textContent()).toContain("Not counted yet");
    await clean(v);
    await page.fill("#at-logs-0-smallDiameter", "14");
    expect(await page.locator("#give-logs").textContent()).toContain("“14” still needs its unit");
    expect(await page.locator(".logtable thead").textContent()).toContain("over the bark");
    await page.fill("#at-logs-0-length", "12 ft 6 in");
    await page.fill("#at-logs-0-smallDiameter", "14 in");
    await page.fill("#at-logs-0-count", "5");
    await v.settled();
    expect(await page.locator("#sawing .gist").textContent()).toMatch(/^\d of 5 sawn/);
    await clean(v);
    await page.click("#give-logs >> text=Add a log");
    await page.waitForFunction(() => document.activeElement?.id === "at-logs-1-length");
    expect(await page.inputValue("#at-logs-1-name")).toBe("log-2");
    await page.click('[aria-label="Remove log-2"]');
    await v.settled();
    await page.click("text=Use invented prices");
    await page.waitForSelector(".next", { state: "detached" });
    await v.settled();
    expect(await page.evaluate(() => document.activeElement?.id)).toBe("verdict-head");
    await clean(v);
    const request = {
      structure: { kind: "lean-to", span: "8 ft", length: "16 ft" },
      logs: [{ name: "log-1", species: "eastern-white-pine", length: "12 ft 6 in", smallDiameter: "14 in", count: 5 }],
      catalog: { demo: "orchard-yard" },
    };
    expect(JSON.parse(await saved(page))).toEqual(request);
    expect(await headline(page)).toBe((await asked(stage, request)).decision.verdict.headline);
    await v.end();
  });

  it("follows an edit, shows an error at its field with the cure, and takes the correction", async () => {
    const v = await visit(stage);
    const { page } = v;
    await page.fill("#at-structure-span", "16");
    await page.waitForSelector(".state.is-refused");
    const field = page.locator(".field.wrong", { has: page.locator("#at-structure-span") });
    expect(await field.locator(".fault").textContent()).toMatch(/“16” has no unit\. Give a length/);
    expect(await page.getAttribute("#at-structure-span", "aria-invalid")).toBe("true");
    await clean(v);
    await page.fill("#at-structure-span", "14 ft");
    await v.settled();
    const structure = { ...demo.structure, span: "14 ft" };
    const cash = (await asked(stage, { ...demo, structure })).decision.routes.at(-1)?.cash.value;
    expect(await page.locator(".routes").first().locator(".route").last().textContent()).toContain(`$${cash}`);
    await v.end();
  });

  it("opens a number's card with its working, puts the user's value in its place, and takes it back", async () => {
    const v = await visit(stage);
    const { page } = v;
    const before = await page.locator(".route.best .big").textContent();
    await page.click("#rafter > summary");
    await page.locator("#rafter .fig").nth(3).click();
    await page.waitForSelector("#card .working");
    expect(await page.locator("#card code").textContent()).toBe("rafter.seat");
    expect(await v.violations()).toEqual([]);
    await page.fill("#own-value", "3 in");
    await page.click("text=Use my value");
    await v.settled();
    await page.keyboard.press("Escape");
    expect(await page.locator("#rafter .fig").nth(3).textContent()).toBe("3 in");
    expect(JSON.parse(await saved(page)).overrides).toEqual({ "rafter.seat": "3 in" });
    await page.click("text=Undo");
    await v.settled();
    expect(await page.locator(".route.best .big").textContent()).toBe(before);
    await clean(v);
    await v.end();
  });

  it("is patient with who types, tells at the field, dims what is of before, and says in the card what its number does", async () => {
    const v = await visit(stage);
    const { page } = v;
    await page.click("#at-structure-span");
    await page.keyboard.press("ControlOrMeta+A");
    const refused = page.waitForResponse((response) => response.status() === 422);
    await page.keyboard.type("14");
    await refused;
    await page.waitForTimeout(300);
    expect(await page.locator(".fault").count()).toBe(0); // in mid-word
    expect(await page.locator("main.stale").count()).toBe(1);
    await page.keyboard.press("Tab");
    await page.waitForSelector(".field.wrong #at-structure-span");
    expect(
      await page.locator('summary:text-is("Spacings and joints")').evaluate((one) => one.closest("details")?.open),
    ).toBe(false);
    await clean(v); // readable, though dimmed
    await page.click("#at-structure-span");
    await page.keyboard.press("End");
    await page.keyboard.type(" ft");
    expect(await page.locator(".field.wrong").count()).toBe(0); // what was said of the entry goes with it
    await v.settled();
    expect(await page.locator("main.stale").count()).toBe(0);
    await page.click("#rafter > summary");
    await page.locator("#rafter .fig").nth(3).click();
    await page.waitForSelector("#card .working");
    await page.fill("#own-value", "3 lb");
    await page.click("text=Use my value");
    await page.waitForSelector("#card .fault");
    expect(await page.locator("#card .fault").textContent()).toContain("3 lb");
    await page.fill("#own-value", "3 in");
    await page.click("text=Use my value");
    await page.waitForSelector('#card :text("Working it out")');
    expect(await page.locator("#card .fault").count()).toBe(0);
    await v.settled();
    await v.end();
  });

  it("draws every kind to scale, builds parts on and off, and leaves a list of pieces undrawn", async () => {
    const v = await visit(stage);
    const { page } = v;
    await page.selectOption("#demo", "-blank");
    await page.click("#begin");
    await v.settled();
    const drawing = page.locator("#give-structure .drawing img");
    for (const kind of ["gable", "lean-to", "hip", "pergola"]) {
      await page.selectOption("#at-structure-kind", kind);
      await v.settled();
      expect(await drawing.getAttribute("alt")).toMatch(new RegExp(`^Section of a ${kind}`));
      expect(await drawing.evaluate((image) => (image as HTMLImageElement).decode())).toBeUndefined();
    }
    await clean(v);
    await page.check("#at-structure-floor");
    await v.settled();
    expect(JSON.parse(await saved(page)).structure.floor).toEqual({});
    expect(await page.locator("#pieces").textContent()).toContain("oist");
    await page.check("#at-structure-footings");
    await page.waitForSelector(".state.is-refused");
    const frost = page.locator(".field.wrong", { has: page.locator("#at-structure-footings-frostDepth") });
    expect(await frost.locator(".fault").textContent()).toContain("frostDepth");
    await page.fill("#at-structure-footings-frostDepth", "36 in");
    await v.settled();
    await page.uncheck("#at-structure-floor");
    await v.settled();
    expect(JSON.parse(await saved(page)).structure.floor).toBeUndefined();
    await page.selectOption("#at-structure-kind", "pieces");
    await v.settled();
    expect(await drawing.count()).toBe(0);
    await clean(v);
    await v.end();
  });

  it("draws what is typed before it is estimated, and keeps the last drawing while it can't be read", async () => {
    const v = await visit(stage);
    const { page } = v;
    await page.route("**/v1/estimates**", () => {}); // never answered
    const drawn = (span: string) =>
      page.waitForSelector(`#give-structure .drawing img[alt^="Section of a gable, ${span}"]`);
    await page.fill("#at-structure-span", "19 ft");
    await drawn("19'");
    await page.fill("#at-structure-span", "19 f");
    await page.waitForTimeout(600);
    await drawn("19'");
    await page.fill("#at-structure-span", "5.5 m");
    await drawn("18' ");
    expect(await page.getAttribute(".state", "class")).not.toContain("is-fresh");
    expect(v.mishaps).toEqual([]);
    await v.end();
  });

  it("sets coverings side by side with the figures of the call, and builds with another", async () => {
    const v = await visit(stage);
    const { page } = v;
    await page.click("#covering > summary");
    await page.click("text=Set all coverings side by side");
    await page.waitForSelector("#covering table");
    const response = await fetch(`${stage.url}/v1/covering-comparisons`, {
      method: "POST",
      headers: { "content-type": "application/json" },
      body: JSON.stringify(demo),
    });
    const { coverings } = await response.json();
    const rows = page.locator("#covering tbody tr");
    expect(await rows.count()).toBe(coverings.length);
    for (const [i, { name, compared }] of coverings.entries()) {
      const text = await rows.nth(i).textContent();
      expect(text?.toLowerCase()).toContain(name.toLowerCase());
      expect(text).toContain(compared.cash.value);
    }
    expect(await rows.last().textContent()).toContain("Not allowed");
    await page.locator("#covering tbody .fig").nth(12).click();
    await page.waitForSelector("#card .big");
    expect(await page.locator("#card code").textContent()).toMatch(/^coverings\./);
    await clean(v);
    await page.keyboard.press("Escape");
    await page.click('[aria-label="Build with asphalt strip shingles"]');
    await v.settled();
    expect(JSON.parse(await saved(page)).structure.covering).toBe("asphalt-shingles");
    await page.waitForSelector('#covering tr:has(.mark):has-text("Asphalt strip shingles")');
    await clean(v);
    await v.end();
  });

  it("lays the hired sawyer's way beside the others, and says where every way's cash goes", async () => {
    const v = await visit(stage);
    const { page } = v;
    await page.click("#give-shop > summary");
    await page.check("#at-shop-sawyer");
    await v.settled();
    expect(await page.locator(".routes h3").allTextContents()).toContain("Have a sawyer mill it");
    const { purchasing, decision } = await asked(stage, {
      ...demo,
      shop: { ...demo.shop, sawyer: { charge: "board-foot" } },
    });
    const spent = page.locator('#hours table:has-text("Cash by department")');
    expect(await spent.locator("thead th").count()).toBe(1 + decision.routes.length);
    for (const route of purchasing.routes) {
      for (const { amount } of route.spent) expect(await spent.textContent()).toContain(amount?.value);
    }
    await clean(v);
    await page.uncheck("#at-shop-sawyer");
    await v.settled();
    expect(await page.locator(".routes h3").allTextContents()).not.toContain("Have a sawyer mill it");
    await v.end();
  });

  it("adds a price that the catalog lacks, says what is wrong with it, and takes it into the estimate", async () => {
    const v = await visit(stage);
    const { page } = v;
    await page.click("#give-catalog > summary");
    await page.click("text=Add a price");
    await page.selectOption("#add-kind", "equipment");
    await page.fill("#add-hire_per_day", "40 USD");
    await page.selectOption("#add-item", "table-saw");
    await page.fill("#add-name", "mine");
    await page.click("text=Add this price");
    await page.waitForSelector(".adding .fault");
    expect(await page.locator(".adding .fault").first().textContent()).toContain("Give a rate");
    expect(await page.inputValue("#add-hire_per_day")).toBe("40 USD"); // nothing typed is lost
    expect(JSON.parse(await saved(page)).catalog).toEqual(demo.catalog);
    await clean(v);
    await page.fill("#add-hire_per_day", "40 USD/day");
    await page.click("text=Add this price");
    await page.waitForSelector("text=is added");
    const { catalog } = JSON.parse(await saved(page));
    expect(catalog.equipment.at(-1)).toMatchObject({ name: "mine", item: "table-saw", hirePerDay: "40 USD/day" });
    await v.end();
  });

  it("takes a first price of one's own into a blank project", async () => {
    const v = await visit(stage);
    const { page } = v;
    await page.selectOption("#demo", "-blank");
    await page.click("#begin");
    await v.settled();
    await page.click("#give-catalog > summary");
    await page.click("text=Add a price");
    await page.selectOption("#add-kind", "services");
    await page.click("text=Add this price");
    await page.waitForSelector(".adding .fault");
    expect(await page.locator(".adding").textContent()).not.toContain("demo");
    expect(JSON.parse(await saved(page)).catalog).toBeUndefined();
    await page.selectOption("#add-item", "delivery");
    await page.fill("#add-name", "mine");
    await page.fill("#add-price", "40 EUR");
    await page.selectOption("#add-currency", "EUR");
    expect(await page.locator('label[for="add-item"]').textContent()).toContain("needed");
    await page.click("text=Add this price");
    await page.waitForSelector("text=is added");
    await v.settled();
    expect(JSON.parse(await saved(page)).catalog.services).toEqual([
      { name: "mine", item: "delivery", price: "40 EUR" },
    ]);
    await clean(v);
    await v.end();
  });

  it("saves a project and opens it again to the same answer, by file and by address", async () => {
    const v = await visit(stage);
    await v.page.fill("#at-structure-length", "20 ft");
    await v.settled();
    const text = await saved(v.page);
    const shown = await answerOf(v.page);
    await v.page.waitForFunction(() => location.hash.startsWith("#p1."));
    const address = new URL(v.page.url());
    await clean(v);
    await v.end();

    const byFile = await visit(stage);
    const file = { name: "shelter.json", mimeType: "application/json", buffer: Buffer.from(text) };
    await byFile.page.setInputFiles("#open-file", file);
    await byFile.page.waitForSelector(".state:not(.is-fresh)");
    await byFile.settled();
    expect(await answerOf(byFile.page)).toBe(shown);
    await clean(byFile);
    await byFile.end();

    const byAddress = await visit(stage, {}, `/${address.hash}`);
    await byAddress.page.waitForFunction(() =>
      document.querySelector("#give-structure .gist")?.textContent?.includes("20 ft"),
    );
    await byAddress.settled();
    expect(await answerOf(byAddress.page)).toBe(shown);
    await byAddress.end();
  });

  it("takes logs pasted from a spreadsheet, and prices saved as CSV and read again", async () => {
    const v = await visit(stage);
    const { page } = v;
    await page.click("#give-logs > summary");
    await page.click("text=Paste rows from a spreadsheet");
    await page.fill("#pasted-logs", "oak-1\twhite oak\t10 ft\t12 in\noak-2\twhite oak\t9 ft\t11 in");
    await page.click("text=Add these logs");
    await v.settled();
    expect(JSON.parse(await saved(page)).logs.slice(-1)).toEqual([
      { name: "oak-2", species: "white-oak", length: "9 ft", smallDiameter: "11 in" },
    ]);
    const shown = await page.locator("#shopping").textContent();
    await page.click("#give-catalog > summary");
    const [download] = await Promise.all([page.waitForEvent("download"), page.click("text=Save prices as CSV")]);
    const csv = readFileSync(await download.path());
    await page.setInputFiles("#prices-file", { name: "prices.csv", mimeType: "text/csv", buffer: csv });
    await page.waitForSelector("text=Prices read from prices.csv");
    await v.settled();
    expect(await page.locator("#shopping").textContent()).toBe(shown);
    await clean(v);
    await v.end();
  });

  it("names pasted columns that it leaves out, and says beside the button why a table of prices was not read", async () => {
    const v = await visit(stage);
    const { page } = v;
    await page.selectOption("#demo", "-blank");
    await page.click("#begin");
    await v.settled();
    if (!(await page.locator("#give-logs").getAttribute("open"))) await page.click("#give-logs > summary");
    await page.click("text=Paste rows from a spreadsheet");
    await page.fill("#pasted-logs", "Log\tWood\tLength\tColour\tSmall end\nred\twhite oak\t8 ft\tred\t10 in");
    await page.click("text=Add these logs");
    expect(await page.locator(".state").textContent()).toContain("not understood and left out: “Colour”");
    await v.settled();
    expect(JSON.parse(await saved(page)).logs).toEqual([
      { name: "red", species: "white-oak", length: "8 ft", smallDiameter: "10 in" },
    ]);
    await page.click("#give-catalog > summary");
    const [empty] = await Promise.all([page.waitForEvent("download"), page.click("text=Save an empty table as CSV")]);
    const give = (text: string | Buffer) =>
      page.setInputFiles("#prices-file", { name: "yard.csv", mimeType: "text/csv", buffer: Buffer.from(text) });
    await give("department,a b c d,e f g h,i j k l,m n o p\n");
    const told = await page.locator("#give-catalog .fault[role=alert]").textContent();
    expect(told).toMatch(/^Nothing was read from yard\.csv\. .*“a b c d”.*And 1 more\.$/);
    expect(await page.locator(".state").textContent()).not.toContain("header");
    await clean(v);
    await give(readFileSync(await empty.path()));
    await page.waitForSelector("text=Prices read from yard.csv");
    await v.settled();
    expect(await page.locator("#give-catalog .fault").count()).toBe(0);
    expect(JSON.parse(await saved(page)).catalog).toEqual({ name: "My prices", currency: "USD" });
    await clean(v);
    await v.end();
  });

  it("says so when the service can't be reached or is busy, and goes on when it can", async () => {
    const v = await visit(stage);
    const { page } = v;
    await page.context().setOffline(true);
    await page.fill("#at-title", "Barn");
    await page.waitForSelector(".state.is-offline");
    expect(await page.locator(".state").textContent()).toContain("can't be reached");
    expect(await v.violations()).toEqual([]); // the browser itself writes of a call that failed
    await page.context().setOffline(false);
    await v.settled();
    const waits = ["60", "1"];
    await page.route("**/v1/estimates**", (route) => {
      const wait = waits.shift();
      if (wait === undefined) return route.continue();
      return route.fulfill({ status: 503, headers: { "Retry-After": wait }, body: "{}" });
    });
    await page.fill("#at-title", "Barn 2");
    await page.waitForSelector(".state.is-busy");
    expect(await v.violations()).toEqual([]);
    await page.click("text=Try again");
    await v.settled(); // asked again by itself after the second refusal
    expect(await page.locator("#verdict .for").textContent()).toContain("Barn 2");
    await v.end();
  });

  it("gives a call up when asked to, and keeps the answer of before", async () => {
    const v = await visit(stage);
    const { page } = v;
    const before = await headline(page);
    await page.route("**/v1/estimates**", () => {}); // never answered
    await page.fill("#at-structure-span", "15 ft");
    await page.waitForSelector(".state.is-working");
    await clean(v);
    await page.click("text=Cancel");
    await page.waitForSelector(".state.is-stopped");
    await clean(v);
    expect(await headline(page)).toBe(before);
    await v.end();
  });

  it("leads from blank to a verdict by the keyboard alone", async () => {
    const v = await visit(stage);
    const { page } = v;
    const at = () => page.evaluate(() => document.activeElement?.id || document.activeElement?.textContent);
    const tabTo = async (what: string, key = "Tab") => {
      for (let presses = 0; presses < 120 && (await at()) !== what; presses += 1) await page.keyboard.press(key);
      expect(await at()).toBe(what);
    };
    await tabTo("demo");
    await page.keyboard.type("a blank");
    expect(await page.locator("#give-logs .gist").textContent()).not.toBe("none yet"); // choosing is not yet acting
    await page.keyboard.press("Tab");
    await page.keyboard.press("Enter");
    await v.settled();
    await tabTo("Use invented prices");
    await page.keyboard.press("Enter");
    await v.settled();
    await tabTo("Add a log", "Shift+Tab");
    await page.keyboard.press("Enter");
    await page.waitForFunction(() => document.activeElement?.id === "at-logs-0-length");
    await page.keyboard.type("16 ft");
    await page.keyboard.press("Tab");
    await page.keyboard.type("15 in");
    await page.keyboard.press("Tab");
    await page.keyboard.type("6");
    await v.settled();
    await tabTo("To the verdict", "Shift+Tab");
    await page.keyboard.press("Enter");
    await page.waitForFunction(() => document.activeElement?.id === "verdict-head");
    expect(await headline(page)).toMatch(/^(Mill|Buy)/);
    await clean(v);
    await v.end();
  });

  it("is used by the keyboard alone", async () => {
    const v = await visit(stage);
    const { page } = v;
    const at = () => page.evaluate(() => document.activeElement?.id ?? "");
    const tabTo = async (id: string) => {
      for (let presses = 0; presses < 60 && (await at()) !== id; presses += 1) await page.keyboard.press("Tab");
      expect(await at()).toBe(id);
    };
    await tabTo("at-structure-span");
    await page.keyboard.press("ControlOrMeta+A");
    await page.keyboard.type("15 ft");
    await v.settled();
    expect(await at()).toBe("at-structure-span"); // a new answer does not take the focus away
    expect(await page.locator("#give-structure .gist").textContent()).toContain("15 ft");
    const figure = page.locator(".route.best .fig").first();
    await figure.focus();
    await page.keyboard.press("Enter");
    await page.waitForSelector("#card .working");
    await page.keyboard.press("Escape");
    await page.waitForSelector("#card", { state: "detached" });
    expect(await figure.evaluate((element) => element === document.activeElement)).toBe(true);
    expect(v.mishaps).toEqual([]);
    await v.end();
  });

  it.each([
    { width: 360, colorScheme: "light" as const },
    { width: 360, colorScheme: "dark" as const },
    { width: 1440, colorScheme: "dark" as const },
  ])("fits $width px in $colorScheme colors with everything unfolded", async ({ width, colorScheme }) => {
    const v = await visit(stage, { viewport: { width, height: 740 }, colorScheme, reducedMotion: "reduce" });
    const { page } = v;
    const shut = await page.locator(".panel:not([open])").evaluateAll((panels) => panels.map(({ id }) => id));
    for (const id of shut) await page.click(`#${id} > summary`);
    await page.waitForSelector("#sheet .sub");
    expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBe(width);
    await clean(v);
    await v.end();
  });

  it.each([
    { width: 360, kbits: undefined },
    { width: 1440, kbits: undefined },
    { width: 360, kbits: 400 },
  ])("moves nothing that is in view when its script takes over: $width px, $kbits kbit/s", async ({ width, kbits }) => {
    const v = await visit(stage, { viewport: { width, height: 740 } });
    const { page } = v;
    if (kbits !== undefined) {
      const cdp = await page.context().newCDPSession(page);
      const throughput = (kbits * 1000) / 8;
      const link = { offline: false, latency: 400, downloadThroughput: throughput, uploadThroughput: throughput };
      await cdp.send("Network.setCacheDisabled", { cacheDisabled: true });
      await cdp.send("Network.emulateNetworkConditions", link);
      await page.reload();
    }
    await page.waitForSelector("#demo:enabled", { timeout: 120_000 });
    const shift = await page.evaluate(
      () =>
        new Promise<number>((resolve) => {
          let sum = 0;
          new PerformanceObserver((list) => {
            for (const entry of list.getEntries()) sum += (entry as unknown as { value: number }).value;
          }).observe({ type: "layout-shift", buffered: true });
          setTimeout(() => resolve(sum), 500);
        }),
    );
    expect(shift).toBeLessThan(0.02);
    expect(v.mishaps).toEqual([]);
    await v.end();
  });

  it("answers in metric when asked to", async () => {
    const v = await visit(stage);
    await v.page.click("#give-options > summary");
    await v.page.selectOption("#at-options-measure", "metric");
    expect(await v.page.locator(".state").textContent()).toContain("What you typed stays as it is");
    await v.settled();
    expect(await v.page.inputValue("#at-structure-span")).toBe("16 ft");
    expect(await v.page.locator("#pieces").textContent()).toContain("mm");
    await clean(v);
    await v.end();
  });
});
