import { beforeAll, describe, expect, it } from "vitest";
import type { z } from "zod";
import type { SawingPlanSchema } from "../../src/api/render/json/sawing-plan.js";
import type { sawingRequest } from "../../src/estimate/request/sawing-request.js";
import { cellsOf, post, refused } from "./helpers/posting.js";

type Answer = z.output<typeof SawingPlanSchema>;
type Asking = z.input<typeof sawingRequest>;

const PATH = "/v1/sawing-plans";
const shelf: Asking = {
  pieces: [{ name: "boards", role: "board", count: 5, section: "1 x 8 in", length: "5 ft" }],
  logs: [
    { name: "pine", species: "eastern-white-pine", length: "10 ft 6 in", smallDiameter: "14 in", sweep: "straight" },
  ],
};

async function planned(body: Asking, query = ""): Promise<Answer> {
  const response = await post(PATH + query, body);
  const answer: unknown = await response.json();
  if (response.status !== 200) throw new Error(JSON.stringify(answer));
  return answer as Answer;
}

/** `1 3/8` as a number. */
const inches = (text: string): number =>
  text.split(" ").reduce(
    (sum, part) =>
      sum +
      part
        .split("/")
        .map(Number)
        .reduce((a, b) => a / b),
    0,
  );

describe("a sawing plan by itself", () => {
  let answer: Answer;
  beforeAll(async () => {
    answer = await planned(shelf, "?include=plan,sheet,workings,drawings");
  });

  it("says which log supplies which marks, and nothing is short where the logs hold all", () => {
    expect(answer.plan.short).toEqual([]);
    const [log] = answer.plan.logs;
    expect(log?.log).toBe("pine");
    expect(log?.yields).toEqual([{ group: "boards", count: 6, marks: "A-01–05, spare" }]); // 12 % of 5 rejects: one spare
    expect(log?.bolts.every(({ drawing }) => drawing?.startsWith("<svg "))).toBe(true);
  });

  it("lists boards out of what is left, counted and measured by their lengths, that are not wanted pieces", () => {
    const { extras, yield: sawn } = answer.plan;
    expect(extras?.map(({ from }) => from)).toContain("sawn");
    for (const { section, count, lengths, logs, lumber } of extras ?? []) {
      expect(logs).toEqual([{ log: "pine", lengths }]); // the one log there is
      expect(count).toBe(lengths.reduce((sum, one) => sum + one.count, 0));
      const sides = section.replace(" in", "").split(" × ").map(inches);
      const feet = lengths.reduce(
        (sum, { length, count: boards }) => sum + boards * Number(/^(\d+)'$/.exec(length)?.[1]),
        0,
      );
      const boardFeet = ((sides[0] as number) * (sides[1] as number) * feet) / 12;
      expect(Number(lumber.value), section).toBeCloseTo(boardFeet, 0);
      expect(feet).toBeGreaterThanOrEqual(3 * count);
    }
    // Wanted lumber and extras together are no more than the round log, 10 1/2 ft of 14 in at its thin end and taper.
    const extra = (extras ?? []).reduce((sum, { lumber }) => sum + Number(lumber.value), 0);
    const cubicFeet = Number(answer.plan.yield.rules.find(({ rule }) => rule === "smalian")?.scale.value);
    expect(Number(sawn.lumber.value) + extra).toBeLessThan(12 * cubicFeet);
  });

  it("sets the lumber beside every rule: overrun and recovery follow from the figures shown", () => {
    const lumber = Number(answer.plan.yield.lumber.value);
    expect(answer.plan.yield.rules.map(({ rule }) => rule)).toEqual([
      ...["international", "scribner", "doyle"],
      ...["smalian", "huber", "newton"],
    ]);
    for (const { rule, scale, share } of answer.plan.yield.rules) {
      const cubic = ["smalian", "huber", "newton"].includes(rule);
      const of = cubic ? Number(scale.value) * 12 : Number(scale.value); // 12 bf are a cubic foot
      const expected = 100 * (lumber / of - (cubic ? 0 : 1));
      expect(Math.abs(Number(share?.value) - expected)).toBeLessThan(0.3); // both rounded for paper
    }
  });

  it("scales by the published formulas: Doyle by ((D − 4) ÷ 4)² L", () => {
    const [log] = answer.logs;
    const d = Number(log?.smallDiameter.value);
    const doyle = answer.plan.yield.rules.find(({ rule }) => rule === "doyle");
    expect(Number(doyle?.scale.value)).toBeCloseTo(((d - 4) / 4) ** 2 * 10.5, 1);
    expect(cellsOf(answer).get("sawing.overrun.doyle")?.working).toContain("sawing.yield.lumber");
  });

  it("is measured again, not made anew, when it is handed back", async () => {
    const { heldPlan } = answer;
    const again = await planned({ ...shelf, heldPlan: heldPlan as NonNullable<Asking["heldPlan"]> }, "?include=plan");
    expect(again.heldPlan).toEqual(heldPlan);
    expect(again.plan.covers).toBe("held from an earlier answer");
    expect(again.hours).toEqual(answer.hours);
  });

  it("refuses a held plan that does not fit, where the request has it", async () => {
    const heldPlan = answer.heldPlan as NonNullable<Asking["heldPlan"]>;
    const logs = shelf.logs.map((log) => ({ ...log, smallDiameter: "9 in" }));
    const { faults } = await refused({ ...shelf, logs, heldPlan }, PATH);
    expect(faults[0]).toMatchObject({ code: "held-plan-misfit", pointer: "/heldPlan" });
  });

  it("tells of what fits no log which log comes nearest and what it lacks", async () => {
    const beam = { name: "beam", role: "beam", count: 1, section: "8 x 8 in", length: "14 ft" } as const;
    const { plan } = await planned({ ...shelf, pieces: [...shelf.pieces, beam] });
    expect(plan.short).toMatchObject([
      { group: "beam", missing: 1, why: expect.stringMatching(/pine, is .* too short/) },
    ]);
  });

  it("saws no slab thinner than the mill does, and says so of a board that is", async () => {
    const thin = { ...shelf, shop: { thinnestSlab: "2 in", deepestRip: "2 in" } };
    const { plan } = await planned(thin);
    expect(plan.short).toMatchObject([
      {
        group: "boards",
        missing: 6,
        why: expect.stringMatching(/thinner than the thinnest slab that the mill saws\.$/),
      },
    ]);
    // 1 in boards on edge out of a slab 8 in deep are ripped by a saw that cuts so deep.
    expect((await planned({ ...thin, shop: { ...thin.shop, deepestRip: "10 in" } })).plan.short).toEqual([]);
    const { faults } = await refused({ ...shelf, shop: { thinnestSlab: "13 in" } }, PATH);
    expect(faults[0]).toMatchObject({ pointer: "/shop/thinnestSlab" });
  });

  it("sets rough sizes in the steps of the mill", async () => {
    const rough = async (shop: Asking["shop"]) => (await planned({ ...shelf, shop })).pieces[0]?.rough;
    const [usual, stepped] = [await rough({}), await rough({ settingStep: "1/2 in" })];
    expect(usual).toBe("1 3/8 × 8 5/8 in");
    expect(stepped).toBe("1 1/2 × 9 in");
  });

  it("says which log gives which of the boards that could still come out", async () => {
    const logs = ["one", "two"].map((name) => ({ ...shelf.logs[0], name })) as Asking["logs"];
    const { plan } = await planned({ ...shelf, logs, pieces: [{ ...shelf.pieces[0], count: 10 }] as Asking["pieces"] });
    expect(plan.logs.length).toBe(2);
    for (const { count, lengths, logs: from } of plan.extras ?? []) {
      const boards = from.flatMap((own) => own.lengths);
      expect(boards.reduce((sum, own) => sum + own.count, 0)).toBe(count);
      for (const { length, count: all } of lengths)
        expect(boards.filter((own) => own.length === length).reduce((sum, own) => sum + own.count, 0)).toBe(all);
    }
    expect(new Set(plan.extras?.flatMap((own) => own.logs.map(({ log }) => log)))).toEqual(new Set(["one", "two"]));
  });

  it.each([
    { what: "would fetch most", change: { value: "$400" } },
    { what: "lies farthest off", change: { distance: "4000 ft" } },
  ])("leaves the log lying that $what, where another like it does as well", async ({ change }) => {
    const [log] = shelf.logs as [Asking["logs"][number]];
    const logs = ["one", "two", "three"].map((name) => ({ ...log, name, ...(name !== "two" && change) }));
    const { plan } = await planned({ ...shelf, logs, labor: { valueOfHour: "$20/h" } });
    expect([plan.logs.map((sawn) => sawn.log), plan.unused]).toEqual([["two"], ["one", "three"]]);
  });

  it.each([
    {
      name: "a section without a unit",
      change: { pieces: [{ ...shelf.pieces[0], section: "1 x 8" }] },
      at: "/pieces/0/section",
    },
    { name: "a field that an estimate has", change: { structure: {} }, at: "/structure" },
    { name: "no log at all", change: { logs: [] }, at: "/logs" },
    { name: "pieces that must be bought", change: { pieces: [{ ...shelf.pieces[0], source: "buy" }] }, at: "/pieces" },
    {
      name: "a log without a thickness",
      change: { logs: [{ ...shelf.logs[0], smallDiameter: undefined }] },
      at: "/logs/0",
    },
  ])("refuses $name at $at", async ({ change, at }) => {
    const { status, faults } = await refused({ ...shelf, ...change }, PATH);
    expect(status).toBe(422);
    expect(faults.map(({ pointer }) => pointer)).toContain(at);
  });

  it("saws all that the logs hold where nothing has a price, and leaves to be bought what a yard all but gives away", async () => {
    const dear = (await planned({ ...shelf, labor: { valueOfHour: "$100/h" } })).plan.logs;
    expect(dear.length).toBe(1);
    const catalog: NonNullable<Asking["catalog"]> = {
      name: "Give-away",
      currency: "USD",
      lumber: [
        {
          ...{
            name: "cheap",
            label: "1 x 8 board",
            species: "eastern-white-pine",
            section: "1 x 8 in",
            actual: "1 x 8 in",
            surface: "rough",
          },
          sold: { by: "piece", lengths: [{ length: "6 ft", price: "$0.01" }] },
        },
      ],
    };
    const { plan } = await planned({ ...shelf, catalog, labor: { valueOfHour: "$100/h" } });
    expect([plan.logs, plan.short[0]?.missing]).toEqual([[], 6]);
  });
});
