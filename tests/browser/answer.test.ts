/** What the form shows of an answer, held against the same answer asked for without a browser. */
import { afterAll, beforeAll, describe, expect, it, vi } from "vitest";
import { asked, clean, demo, hasBrowser, openStage, type Stage, saved, type Visit, visit } from "./browser.js";

vi.setConfig({ testTimeout: 180_000 }); // a busy machine is slow, not wrong

let stage: Stage;
beforeAll(async () => {
  if (hasBrowser) stage = await openStage();
}, 180_000);
afterAll(async () => stage?.close());

const textOf = async (v: Visit, selector: string): Promise<string> =>
  (await v.page.locator(selector).allTextContents()).join(" ").replaceAll("\u00a0", " ");

describe.skipIf(!hasBrowser)("the answer at /", () => {
  it("tells cost and hours by stage, why each group, what would change it, and wear apart from orders", async () => {
    const v = await visit(stage);
    const answer = await asked(stage, { ...demo, options: { frontier: true } });
    const { decision, effort, purchasing } = answer;
    const table = '#hours table:has-text("by stage")';
    for (const { route, stages } of purchasing.routes) {
      const column = decision.routes.findIndex((one) => one.route === route) + 2;
      const own = effort.routes.find((one) => one.route === route)?.stages ?? [];
      for (const { stage: name, amount } of stages) {
        const label = [...own, ...effort.common].find((one) => one.stage === name)?.label ?? "";
        const row = `${table} tr:has(th:text-is("${label.charAt(0).toUpperCase()}${label.slice(1)}"))`;
        expect(await textOf(v, `${row} td:nth-child(${column})`)).toContain(`$${amount?.value}`);
      }
    }
    for (const { hours, cash } of decision.routes) {
      const foot = await textOf(v, `${table} tfoot`);
      expect(foot).toContain(`${hours.value} h`);
      expect(foot).toContain(`$${cash.value}`);
    }
    const pieces = await textOf(v, '#pieces td[data-head="Verdict"]');
    const sides = decision.verdict.groups.map(({ milled, bought }) =>
      [...(milled !== "0" ? [`mill ${milled}`] : []), ...(bought !== "0" ? [`buy ${bought}`] : [])].join(", "),
    );
    expect(sides.length).toBeGreaterThan(5);
    for (const words of sides) expect(pieces).toContain(words);
    const verdict = await textOf(v, "#verdict");
    for (const words of [...decision.verdict.changes, ...decision.verdict.groups.map(({ why }) => why)])
      expect(verdict).toContain(words);
    await v.page.click("text=Why, group by group");
    const route = purchasing.routes.find((one) => one.route === decision.best);
    const lines = route?.departments.flatMap((one) => one.lines) ?? [];
    const worn = '#shopping table:has-text("nothing to order")';
    for (const { share, label } of lines) {
      expect(await v.page.locator(`${worn} th:text-is("${label}")`).count()).toBe(share ? 1 : 0);
    }
    expect(await v.page.locator(`${worn} .tick`).count()).toBe(0);
    await clean(v);
    await v.end();
  });

  it("keeps the mixes between over an edit as those of before, and searches them again on demand", async () => {
    const v = await visit(stage);
    const { page } = v;
    const sent: { options?: { frontier?: boolean } }[] = [];
    page.on("request", (request) => {
      if (request.url().includes("/v1/estimates")) sent.push(request.postDataJSON());
    });
    const before = await page.locator('[aria-label="Mixes between"] tbody').textContent();
    await page.fill("#at-title", "Barn");
    await page.waitForSelector('[aria-label="Mixes between"].old');
    await v.settled();
    const kept = page.locator('[aria-label="Mixes between"].old');
    expect(await kept.locator("tbody").textContent()).toBe(before);
    expect(await kept.locator("caption").textContent()).toContain("before your change");
    expect(await page.locator(".plot .between").count()).toBe(0); // the plot is of this answer alone
    await clean(v); // readable, though dimmed
    expect(sent.map(({ options }) => options?.frontier)).toEqual([undefined]);
    await page.click("text=Search the mixes between again");
    await page.waitForSelector('[aria-label="Mixes between"]:not(.old)');
    await v.settled();
    expect(JSON.parse(await saved(page)).options).toEqual({ frontier: true });
    const { decision } = await asked(stage, { ...demo, title: "Barn", options: { frontier: true } });
    const rows = page.locator('[aria-label="Mixes between"] tbody tr');
    expect(await rows.count()).toBe(decision.frontier.length);
    await clean(v);
    await v.end();
  });

  it("takes jobs that were timed in the place of an assumed rate, once they are whole", async () => {
    const v = await visit(stage);
    const { page } = v;
    await page.click("#give-calibration > summary");
    await page.focus("#time-rate");
    await page.keyboard.press("ArrowDown"); // looking through the list is not yet acting
    expect(await page.locator("#give-calibration .job").count()).toBe(0);
    await page.selectOption("#time-rate", { label: "Cut face sawn, while sawing" });
    await page.click("text=Put in a job of it");
    await page.waitForFunction(() => document.activeElement?.id === "at-calibration-0-jobs-0-amount");
    await v.settled();
    expect(await textOf(v, "#give-calibration")).toContain("Not counted yet");
    await clean(v);
    await page.fill("#at-calibration-0-jobs-0-amount", "41");
    await page.fill("#at-calibration-0-jobs-0-time", "33 min");
    await page.waitForSelector(".state.is-refused");
    const field = page.locator(".field.wrong", { has: page.locator("#at-calibration-0-jobs-0-amount") });
    expect(await field.locator(".fault").textContent()).toContain("“41”");
    await clean(v);
    await page.fill("#at-calibration-0-jobs-0-amount", "41 ft2");
    await v.settled();
    const calibration = [{ rate: "mill.rate", jobs: [{ amount: "41 ft2", time: "33 min" }] }];
    expect(JSON.parse(await saved(page)).calibration).toEqual(calibration);
    const { effort } = await asked(stage, { ...demo, calibration });
    const saw = effort.routes.find(({ route }) => route === "mixed")?.stages.find((one) => one.stage === "saw");
    expect(await textOf(v, '#hours tr:has(th:text-is("Saw"))')).toContain(`${saw?.hours.value} h`);
    expect(await textOf(v, "#give-calibration")).toContain("By your jobs: 1.2");
    await page.click('[aria-label="Remove Cut face sawn, while sawing"]');
    await v.settled();
    expect(await textOf(v, "#give-calibration")).not.toContain("By your jobs");
    await v.end();
  });

  it("adds a cost of one's own to every way", async () => {
    const v = await visit(stage);
    const { page } = v;
    await page.click("#give-lines > summary");
    await page.click("text=Add to lines");
    await page.fill("#at-lines-0-label", "Crane for a day");
    await page.fill("#at-lines-0-formula", "2 * $90");
    await page.waitForSelector('#hours tr:has(th:text-is("Crane for a day"))');
    await v.settled();
    const lines = [{ name: "row-1", label: "Crane for a day", formula: "2 * $90" }];
    expect(JSON.parse(await saved(page)).lines).toEqual(lines);
    const { decision } = await asked(stage, { ...demo, lines });
    for (const { cash } of decision.routes) expect(await textOf(v, "#hours tfoot")).toContain(`$${cash.value}`);
    await clean(v);
    await v.end();
  });

  it("gives the calendar dates once the start has one, and says which machine dresses what, and why", async () => {
    const v = await visit(stage);
    const { page } = v;
    await page.click("#calendar > summary");
    expect(await textOf(v, "#calendar thead")).toContain("From day");
    await page.click("#give-shop > summary");
    await page.fill("#at-labor-startDate", "2027-03-01");
    await page.waitForSelector('#calendar td:has-text("Mar 1, 2027")');
    await v.settled();
    const { effort, decision } = await asked(stage, { ...demo, labor: { ...demo.labor, startDate: "2027-03-01" } });
    const work = effort.routes.find(({ route }) => route === decision.best)?.work;
    expect(work?.calendar.stages[0]?.dates?.start).toBe("2027-03-01");
    const calendar = await textOf(v, "#calendar");
    expect(calendar).toContain("beside: ");
    expect(calendar).toContain(
      `dry or set on day ${work?.calendar.stages.find((one) => one.stage === "pour")?.setDay?.value}`,
    );
    await page.click("#dressing > summary");
    const rows = page.locator("#dressing tbody tr");
    expect(await rows.count()).toBe(work?.dressing.length);
    for (const { because } of work?.dressing ?? []) {
      const why = because.filter((one) => one !== "they stay rough");
      expect((await textOf(v, "#dressing")).toLowerCase()).toContain(why.join("; ").toLowerCase());
    }
    await clean(v);
    await v.end();
  });
});
