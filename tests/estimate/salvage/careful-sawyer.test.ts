import { describe, expect, it } from "vitest";
import { carefulSawyer } from "../../../src/estimate/salvage/careful-sawyer.js";
import { measureCuts, planCost } from "../../../src/estimate/salvage/cut-measures.js";
import { explainSawing } from "../../../src/estimate/salvage/explain-sawing.js";
import { judgeSawingPlan } from "../../../src/estimate/salvage/sawing-judge.js";
import type { SawGroup, SawingProblem, SawLog } from "../../../src/estimate/salvage/sawing-problem.js";
import { generate, type Kind } from "../../bench/sawing/generate.js";
import { priceSawingPlan } from "../../judges/sawing-price.js";

/** Chance of a seed chooses size, demand and switches, so that every corner of the form is met. */
function anyKind(seed: number): Kind {
  return {
    logs: 1 + (seed % 5),
    groups: 1 + (seed % 7),
    pieces: 10 + (seed % 41),
    demand: [0.3, 1, 2][seed % 3] as number,
    switches: seed % 4 !== 0,
    thickest: seed % 2 === 0 ? 16 : 30,
  };
}

const pine: SawLog = {
  name: "windthrow",
  species: "pine",
  length: 192 * 16,
  smallDiameter: 12 * 16,
  largeDiameter: 14 * 16,
  sweep: 0,
  rot: { smallEnd: 0, largeEnd: 0 },
  bark: 0,
};
const post: SawGroup = {
  name: "post",
  thickness: 128,
  width: 128,
  length: 96 * 16,
  count: 1,
  species: [],
  heart: "boxed",
  wane: 0,
  buy: { cash: 60, hours: 0 },
};
const board: SawGroup = { ...post, name: "board", thickness: 16, width: 96, count: 40, heart: "any" };
const shop = {
  millKerf: 4,
  ripKerf: 2,
  crossKerf: 4,
  buckKerf: 6,
  deepestRip: 50,
  longestBolt: 3840,
  throat: 0,
  pith: 32,
};
const rates = {
  wage: 20,
  logHours: 0.5,
  logCash: 1,
  boltHours: 0.25,
  millCutHours: 0.05,
  millHoursPerFt2: 0.01,
  millCashPerFt2: 0.05,
  ripCutHours: 0.02,
  ripHoursPerFt: 0.002,
  ripCashPerFt: 0.01,
  crosscutHours: 0.01,
};
const onePost: SawingProblem = { gridMm: "1.5875", logs: [pine], groups: [post], shop, rates };

describe("the careful sawyer's plan", () => {
  it.each([1, 2, 3, 4, 5, 6, 7, 8])(
    "passes the judge and keeps its price on 280 random problems, batch %i",
    (batch) => {
      for (let seed = batch * 280; seed < batch * 280 + 280; seed++) {
        const problem = generate(seed, anyKind(seed));
        const plan = carefulSawyer(problem);
        expect({ seed, faults: judgeSawingPlan(problem, plan) }).toEqual({ seed, faults: [] });
        const difference = priceSawingPlan(problem, plan).cost.minus(planCost(problem, plan).total.toFixed(12));
        expect(difference.abs().lte("0.000001")).toBe(true);
      }
    },
  );

  it("is the same, byte for byte, when asked twice", () => {
    const problem = generate(7, anyKind(7));
    expect(JSON.stringify(carefulSawyer(problem))).toBe(JSON.stringify(carefulSawyer(structuredClone(problem))));
  });

  it("boxes the heart of an 8 × 8 post: a 12 in circle holds an 8.485 in square (d/√2)", () => {
    const plan = carefulSawyer(onePost);
    expect(plan.buy).toEqual({});
    expect(plan.logs[0]?.pieces).toEqual([
      expect.objectContaining({ group: "post", x0: -64, x1: 64, y0: -64, y1: 64, z1: 3072, z0: 3072 - 1536 }),
    ]);
  });

  it("takes no 9 × 9 post from a 12 in log, for 9 > 12/√2", () => {
    const nine = { ...post, thickness: 144, width: 144, length: 192 * 16 };
    expect(carefulSawyer({ ...onePost, groups: [nine] })).toEqual({ gridMm: "1.5875", logs: [], buy: { post: 1 } });
  });

  it("saws nothing that is not wanted", () => {
    expect(carefulSawyer({ ...onePost, groups: [{ ...post, count: 0 }] }).logs).toEqual([]);
  });

  it("takes boards from beside the heart timber", () => {
    const problem = { ...onePost, logs: [{ ...pine, length: 200 * 16 }], groups: [board, post] };
    const { groups } = measureCuts(problem, carefulSawyer(problem));
    expect(groups[1]).toEqual({ group: "post", sawn: 1, wanted: 1, spare: 0, bought: 0 });
    expect(groups[0]?.sawn).toBeGreaterThanOrEqual(10);
  });

  it("keeps a species demand", () => {
    const oakOnly = { ...post, species: ["oak"] };
    expect(carefulSawyer({ ...onePost, groups: [oakOnly] }).buy).toEqual({ post: 1 });
  });
});

describe("measures of the cuts", () => {
  it("are those of one post worked by hand", () => {
    // Bolt: butt half, z = 1536 … 3072 steps, one buck; diameter at its middle (z = 2304): 12 + 2 × 3/4 = 13.5 in.
    // Two stack cuts at ±(4 + 1/8) in: chord 2 √(6.75² − 4.125²) = 10.6858 in = 170.973 steps; two flat cuts 128 steps.
    const plan = carefulSawyer(onePost);
    const work = measureCuts(onePost, plan);
    const face = Math.round(2 * Math.sqrt(108 ** 2 - 66 ** 2) * 1536);
    expect(work).toMatchObject({
      logsUsed: 1,
      boltsSawn: 1,
      bucks: 1,
      millCuts: 4,
      ripCuts: 0,
      crosscuts: 0,
      pieces: 1,
    });
    expect(work).toMatchObject({ cants: 1, millArea: 2 * face + 2 * 128 * 1536, pieceVolume: 128 * 128 * 1536 });
    // 0.5 + 0.25 + 4 × 0.05 + 0.01 = 0.96 h; faces 2 × 7.1239 + 2 × 5.3333 = 24.914 ft².
    const feet2 = (2 * 170.9737 * 1536 + 2 * 128 * 1536) / 192 ** 2;
    expect(planCost(onePost, plan).hours).toBeCloseTo(0.96 + feet2 * 0.01, 5);
    expect(planCost(onePost, plan).cash).toBeCloseTo(1 + feet2 * 0.05, 4);
  });

  it("say for each bolt what the plan says: every piece is in one strip of one slab", () => {
    const problem = generate(11, anyKind(11));
    const plan = carefulSawyer(problem);
    const steps = explainSawing(problem, plan);
    const told = steps.flatMap((log) => log.bolts.flatMap((bolt) => bolt.slabs.flatMap((slab) => slab.strips)));
    expect(told.flatMap((strip) => strip.pieces).length).toBe(plan.logs.flatMap((log) => log.pieces).length);
  });

  it("tell the opening face first: above the top slab", () => {
    const [log] = explainSawing(onePost, carefulSawyer(onePost));
    expect(log).toMatchObject({ log: "windthrow", bucks: [{ lo: 1530, hi: 1536 }] });
    expect(log?.bolts[0]).toMatchObject({
      opening: 64,
      turns: 1,
      stackCuts: [
        { lo: 64, hi: 68 },
        { lo: -68, hi: -64 },
      ],
    });
  });
});
