import { readFileSync } from "node:fs";
import { dirname, join, relative } from "node:path";
import { fileURLToPath } from "node:url";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { judgeSawingPlan } from "../../../src/estimate/salvage/sawing-judge.js";
import { sureDiameterSquared } from "../../../src/estimate/salvage/sawing-judge-wood.js";
import type {
  LogPlan,
  SawGroup,
  SawingPlan,
  SawingProblem,
  SawLog,
  SawShop,
} from "../../../src/estimate/salvage/sawing-problem.js";
import { mulberry32 } from "../../judges/sawing-problems.js";
import { writeLog } from "../../judges/sawing-writer.js";

/** A tapered log, 4 m long, 300 mm at the small end and 340 mm at the butt, on a 1 mm grid. */
const LOG: SawLog = {
  name: "pine",
  species: "white pine",
  length: 4000,
  smallDiameter: 300,
  largeDiameter: 340,
  sweep: 0,
  rot: { smallEnd: 0, largeEnd: 0 },
  bark: 10,
};
const GROUP = { species: [], heart: "any", wane: 0, buy: { cash: 10, hours: 0 } } as const;
const POST: SawGroup = { ...GROUP, name: "post", thickness: 100, width: 100, length: 2000, count: 1 };
const BOARD: SawGroup = { ...GROUP, name: "board", thickness: 25, width: 150, length: 1000, count: 4 };
const SHOP: SawShop = {
  millKerf: 6,
  ripKerf: 3,
  crossKerf: 3,
  buckKerf: 10,
  deepestRip: 80,
  longestBolt: 2500,
  throat: 0,
  pith: 50,
};
const RATES = {
  wage: 20,
  logHours: 0.5,
  logCash: 1,
  boltHours: 0.3,
  millCutHours: 0.01,
  millHoursPerFt2: 0.01,
  millCashPerFt2: 0.1,
  ripCutHours: 0.01,
  ripHoursPerFt: 0.002,
  ripCashPerFt: 0.01,
  crosscutHours: 0.005,
};

interface Given {
  readonly log?: Partial<SawLog>;
  readonly post?: Partial<SawGroup>;
  readonly board?: Partial<SawGroup>;
  readonly shop?: Partial<SawShop>;
}

function question(given: Given = {}): SawingProblem {
  return {
    gridMm: "1",
    logs: [
      { ...LOG, ...given.log },
      { ...LOG, name: "spare log" },
    ],
    groups: [
      { ...POST, ...given.post },
      { ...BOARD, ...given.board },
    ],
    shop: { ...SHOP, ...given.shop },
    rates: RATES,
  };
}

/** The butt half as one bolt: a post about the heart, and above it a slab with one board; three boards are bought. */
const CUTS: LogPlan["cuts"] = [
  { tool: "buck", axis: "z", part: 0, lo: 1990, hi: 2000 }, // 1 small half, 2 bolt
  { tool: "mill", axis: "y", part: 2, lo: -56, hi: -50 }, // 3 waste below, 4
  { tool: "mill", axis: "y", part: 4, lo: 50, hi: 56 }, // 5 heart slab, 6
  { tool: "mill", axis: "x", part: 5, lo: -56, hi: -50 }, // 7 waste, 8
  { tool: "mill", axis: "x", part: 8, lo: 50, hi: 56 }, // 9 post, 10 waste
  { tool: "mill", axis: "y", part: 6, lo: 81, hi: 87 }, // 11 thin slab, 12 waste
  { tool: "rip", axis: "x", part: 11, lo: -78, hi: -75 }, // 13 edging, 14
  { tool: "rip", axis: "x", part: 14, lo: 75, hi: 78 }, // 15 strip, 16 edging
  { tool: "cross", axis: "z", part: 15, lo: 3000, hi: 3003 }, // 17 board, 18 offcut
];
const POST_PIECE = { group: "post", part: 9, x0: -50, x1: 50, y0: -50, y1: 50, z0: 2000, z1: 4000 };
const BOARD_PIECE = { group: "board", part: 17, x0: -75, x1: 75, y0: 56, y1: 81, z0: 2000, z1: 3000 };
const GOOD: SawingPlan = {
  gridMm: "1",
  logs: [{ log: "pine", cuts: CUTS, pieces: [POST_PIECE, BOARD_PIECE] }],
  buy: { board: 3 },
};

/** The good plan with one cut changed. */
const withCut = (index: number, change: object): SawingPlan =>
  withLog({ cuts: CUTS.with(index, { ...cut(index), ...change }) });
const withPieces = (...pieces: LogPlan["pieces"]): SawingPlan => withLog({ pieces });
const withLog = (change: object): SawingPlan => ({
  ...GOOD,
  logs: [{ log: "pine", cuts: CUTS, pieces: [POST_PIECE, BOARD_PIECE], ...change }],
});
function cut(index: number) {
  const found = CUTS[index];
  if (found === undefined) throw new Error(`no cut ${index}`);
  return found;
}

describe("judge of sawing plans", () => {
  it("passes a plan that can be sawn as drawn", () => {
    expect(judgeSawingPlan(question(), GOOD)).toEqual([]);
  });

  it("passes a plan that buys everything", () => {
    expect(judgeSawingPlan(question(), { gridMm: "1", logs: [], buy: { post: 1, board: 4 } })).toEqual([]);
  });

  it("passes spare pieces", () => {
    const plan = { ...GOOD, buy: {} };
    expect(judgeSawingPlan(question({ board: { count: 0 } }), plan)).toEqual([]);
  });

  it("passes pieces that lie on edge", () => {
    const plan = {
      ...GOOD,
      logs: [
        writeLog(question(), "pine", [
          {
            z0: 2000,
            z1: 4000,
            slabs: [
              { y0: -75, y1: 75, strips: [{ x0: 10, x1: 35, pieces: [{ group: "board", z0: 2000, z1: 3000 }] }] },
            ],
          },
        ]),
      ],
      buy: { post: 1, board: 3 },
    };
    expect(judgeSawingPlan(question({ shop: { deepestRip: 150 } }), plan)).toEqual([]);
  });

  it("passes work at the very limit of rip saw, mill and throat", () => {
    // The butt is 340 and its bark twice 10; the bolt is 2,000 long, the slab 25 thick.
    const shop = { deepestRip: 25, longestBolt: 2000, throat: 360, thinnestSlab: 25 };
    expect(judgeSawingPlan(question({ shop }), GOOD)).toEqual([]);
  });

  it("passes a waste slab that is just as thick as the mill saws, and refuses it a step thinner", () => {
    const post = { x0: -50, x1: 50, pieces: [{ group: "post", z0: 2000, z1: 4000 }] };
    const board = { x0: -75, x1: 75, pieces: [{ group: "board", z0: 2000, z1: 3000 }] };
    const slabs = [
      { y0: -50, y1: 50, strips: [post] },
      // Two kerfs of 6 and 10 of waste above the heart slab.
      { y0: 72, y1: 97, strips: [board] },
    ];
    const plan = { ...GOOD, logs: [writeLog(question(), "pine", [{ z0: 2000, z1: 4000, slabs }])] };
    expect(judgeSawingPlan(question({ shop: { thinnestSlab: 10 } }), plan)).toEqual([]);
    expect(judgeSawingPlan(question({ shop: { thinnestSlab: 11 } }), plan)).toEqual([
      expect.stringContaining("it leaves a slab of 10 steps, the mill saws none under 11 steps"),
    ]);
  });

  it("refuses a thin strip where the mill rips it, not where the rip saw does", () => {
    const strip = { x0: 10, x1: 35, pieces: [{ group: "board", z0: 2000, z1: 3000 }] };
    const bolt = { z0: 2000, z1: 4000, slabs: [{ y0: -75, y1: 75, strips: [strip] }] };
    const by = (deepestRip: number) => {
      const asked = question({ shop: { deepestRip, thinnestSlab: 26 } });
      return judgeSawingPlan(asked, {
        ...GOOD,
        logs: [writeLog(asked, "pine", [bolt])],
        buy: { post: 1, board: 3 },
      });
    };
    expect(by(150)).toEqual([]);
    expect(by(149)).toEqual([expect.stringContaining("the mill ripped it to 25 steps, it saws none under 26 steps")]);
  });

  it("passes pieces that touch on every side, for a saw without a kerf", () => {
    const given = question({
      shop: { millKerf: 0, ripKerf: 0, crossKerf: 0, buckKerf: 0 },
      board: { thickness: 50, width: 100, count: 8 },
    });
    const pieces = [
      { group: "board", z0: 2000, z1: 3000 },
      { group: "board", z0: 3000, z1: 4000 },
    ];
    const strips = [
      { x0: -100, x1: 0, pieces },
      { x0: 0, x1: 100, pieces },
    ];
    const slabs = [
      { y0: -50, y1: 0, strips },
      { y0: 0, y1: 50, strips },
    ];
    const logs = [writeLog(given, "pine", [{ z0: 2000, z1: 4000, slabs }])];
    expect(judgeSawingPlan(given, { gridMm: "1", logs, buy: { post: 1 } })).toEqual([]);
    const reversed = logs.map((log) => ({ ...log, pieces: log.pieces.toReversed() }));
    expect(judgeSawingPlan(given, { gridMm: "1", logs: reversed, buy: { post: 1 } })).toEqual([]);
  });

  it("passes a strip trimmed by half a kerf, for the blade may run out at the end", () => {
    // The board is 1,999 long, so that 1 mm of the strip is left for a kerf of 3.
    const plan = withLog({
      cuts: CUTS.with(8, { ...cut(8), lo: 3999, hi: 4002 }),
      pieces: [POST_PIECE, { ...BOARD_PIECE, z1: 3999 }],
    });
    expect(judgeSawingPlan(question({ board: { length: 1999 } }), plan)).toEqual([]);
  });

  it.each<[string, Given, SawingPlan, RegExp]>([
    [
      "a mill kerf thinner than the blade",
      {},
      withCut(1, { lo: -55 }),
      /cut 1 \(mill\): the kerf is 5 steps wide, the saw takes 6 steps/,
    ],
    ["a rip kerf thinner than the blade", {}, withCut(6, { lo: -77 }), /cut 6 \(rip\): the kerf is 2 .* takes 3/],
    [
      "a crosscut kerf thinner than the blade",
      {},
      withCut(8, { hi: 3001 }),
      /cut 8 \(cross\): the kerf is 1 .* takes 3/,
    ],
    [
      "a bucking kerf thinner than the chain",
      {},
      withCut(0, { lo: 1991 }),
      /cut 0 \(buck\): the kerf is 9 .* takes 10/,
    ],
    ["a kerf from high to low", {}, withCut(0, { lo: 2000, hi: 1990 }), /cut 0 \(buck\): the kerf is -10/],
    ["a cut beside its part", {}, withCut(5, { lo: 40, hi: 46 }), /cut 5 \(mill\): it misses part 6/],
    [
      "a kerf that is all of its part",
      {},
      withCut(8, { lo: 2000, hi: 4000 }),
      /cut 8 \(cross\): it leaves nothing of part 15/,
    ],
    ["a part cut twice", {}, withCut(7, { part: 11 }), /cut 7 \(rip\): part 11 has been cut already/],
    ["a part cut before it exists", {}, withCut(1, { part: 6 }), /cut 1 \(mill\): part 6 does not exist yet/],
    ["a negative part", {}, withCut(1, { part: -1 }), /cut 1 \(mill\): part -1 does not exist yet/],
    [
      "a rip cut too deep",
      { shop: { deepestRip: 24 } },
      GOOD,
      /cut 6 \(rip\): the stock is 25 steps thick, the rip saw cuts 24 steps/,
    ],
    ["a rip cut in a round bolt", {}, withCut(1, { tool: "rip" }), /cut 1 \(rip\): the stock is still round/],
    [
      "a bolt longer than the mill",
      { shop: { longestBolt: 1999 } },
      GOOD,
      /cut 1 \(mill\): the bolt is 2000 .* takes 1999/,
    ],
    [
      "a butt that does not pass the throat with its bark",
      { shop: { throat: 359 } },
      GOOD,
      /cut 1 .*large end .*throat/,
    ],
    [
      "a slab thinner than the mill saws",
      { shop: { thinnestSlab: 26 } },
      GOOD,
      /cut 5 \(mill\): it leaves a slab of 25 steps, the mill saws none under 26 steps/,
    ],
    ["bucking after sawing", {}, withCut(8, { tool: "buck", hi: 3010 }), /cut 8 \(buck\): only a round log is bucked/],
    [
      "a crosscut in a slab with wany edges",
      {},
      withCut(6, { tool: "cross", axis: "z", lo: 3000, hi: 3003 }),
      /cut 6 \(cross\): only a strip/,
    ],
    ["a crosscut in a round log", {}, withCut(0, { tool: "cross" }), /cut 0 \(cross\): only a strip/],
    ["a bucking cut along the log", {}, withCut(0, { axis: "y" }), /cut 0 \(buck\): this saw does not cut square to y/],
    [
      "a mill cut across the log",
      {},
      withCut(1, { axis: "z", lo: 3000, hi: 3006 }),
      /cut 1 \(mill\): this saw does not cut square to z/,
    ],
    [
      "a piece that is not its part",
      {},
      withPieces(POST_PIECE, { ...BOARD_PIECE, y0: 57, y1: 82 }),
      /piece 1 .*not what the cuts leave/,
    ],
    [
      "a piece with a side still round",
      {},
      withPieces(POST_PIECE, { ...BOARD_PIECE, part: 12 }),
      /piece 1 .*not what the cuts leave/,
    ],
    [
      "a piece of a part that is cut up",
      {},
      withPieces(POST_PIECE, { ...BOARD_PIECE, part: 15 }),
      /piece 1 .*part 15 has been cut up/,
    ],
    ["a piece of no part", {}, withPieces(POST_PIECE, { ...BOARD_PIECE, part: 99 }), /piece 1 .*there is no part 99/],
    [
      "a part taken twice",
      {},
      withPieces(POST_PIECE, BOARD_PIECE, BOARD_PIECE),
      /piece 2 .*part 17 is another piece already/,
    ],
    ["pieces that overlap", {}, withPieces(POST_PIECE, { ...BOARD_PIECE, y0: 49, y1: 74 }), /pieces 0 and 1 overlap/],
    [
      "an unknown group",
      {},
      withPieces(POST_PIECE, { ...BOARD_PIECE, group: "plank" }),
      /piece 1 \(“plank”\): there is no such group/,
    ],
    ["an unknown log", {}, withLog({ log: "oak" }), /There is no log “oak”/],
    ["a log sawn up twice", {}, { ...GOOD, logs: [...GOOD.logs, ...GOOD.logs] }, /Log “pine” is sawn up twice/],
    [
      "a wrong section",
      { board: { thickness: 24 } },
      GOOD,
      /piece 1 .*section is 150 steps × 25 steps, wanted is 24 steps × 150 steps/,
    ],
    ["a wrong length", { board: { length: 999 } }, GOOD, /piece 1 .*it is 1000 steps long, wanted is 999 steps/],
    [
      "a species that does not serve",
      { post: { species: ["black locust"] } },
      GOOD,
      /piece 0 .*white pine does not serve, only black locust/,
    ],
    [
      "too few pieces",
      { board: { count: 5 } },
      GOOD,
      /Group “board”: 1 sawn and 3 bought of 5 wanted; 4 must be bought/,
    ],
    ["pieces bought that are not wanted", {}, { ...GOOD, buy: { board: 4 } }, /Group “board”: 1 sawn and 4 bought/],
    [
      "purchases of an unknown group",
      {},
      { ...GOOD, buy: { board: 3, plank: 1 } },
      /buys pieces of an unknown group, “plank”/,
    ],
    ["half a piece bought", {}, { ...GOOD, buy: { board: 2.5 } }, /“board”: what is bought is not a whole number/],
    ["half steps", {}, withCut(6, { lo: -78.5, hi: -75.5 }), /cut 6: not a cut in whole steps/],
    [
      "a piece in half steps",
      {},
      withPieces(POST_PIECE, { ...BOARD_PIECE, x0: -74.5, x1: 75.5 }),
      /piece 1: not a piece in whole steps/,
    ],
    ["a coordinate that is no number", {}, withCut(2, { hi: Number.NaN }), /cut 2: not a cut in whole steps/],
    ["another grid", {}, { ...GOOD, gridMm: "1.5875" }, /grid of “1.5875” mm, the logs are measured in 1 mm/],
    // Corner of the board at the bolt's small end: hypot(75, 81) = 110.4, so a bolt of 220 mm is too thin there.
    [
      "a piece that the small end does not hold",
      { log: { smallDiameter: 100, largeDiameter: 340 } },
      GOOD,
      /piece 1 .*outside the wood/,
    ],
    // Sweep 160 in 4 m is 40 in the half: the circle is 260 − 40 = 220 wide.
    [
      "a piece that the bow leaves",
      { log: { smallDiameter: 260, largeDiameter: 260, sweep: 160 } },
      GOOD,
      /piece 1 .*outside the wood/,
    ],
    ["a piece in the rot", { log: { rot: { smallEnd: 0, largeEnd: 20 } } }, GOOD, /piece 0 .*into the rot/],
    [
      "a thin piece too near the pith",
      { board: { heart: "free" }, shop: { pith: 113 } },
      GOOD,
      /piece 1 .*too near the pith/,
    ],
    [
      "a post beside the pith",
      { post: { heart: "boxed" }, shop: { pith: 101 } },
      GOOD,
      /piece 0 .*does not box the pith in/,
    ],
    ["a cut in the kerf below its part", {}, withCut(5, { lo: 50, hi: 56 }), /cut 5 \(mill\): it misses part 6/],
    ["a cut just past the end", {}, withCut(8, { lo: 4000, hi: 4003 }), /cut 8 \(cross\): it misses part 15/],
    [
      "a piece of the end that a trimming cut turned to dust",
      {},
      {
        ...withLog({ cuts: CUTS.with(8, { ...cut(8), lo: 3997, hi: 4000 }), pieces: [{ ...BOARD_PIECE, part: 18 }] }),
        buy: { post: 1, board: 3 },
      },
      /piece 0 .*there is no part 18/,
    ],
    [
      "a piece of the near end that a trimming cut turned to dust",
      {},
      {
        ...withLog({ cuts: CUTS.with(8, { ...cut(8), lo: 2000, hi: 2003 }), pieces: [{ ...BOARD_PIECE, part: 17 }] }),
        buy: { post: 1, board: 3 },
      },
      /piece 0 .*there is no part 17/,
    ],
    [
      "a section with one side right",
      {},
      withPieces(POST_PIECE, { ...BOARD_PIECE, x0: 0, x1: 25 }),
      /piece 1 .*section is 25 steps × 25 steps, wanted is 25 steps × 150 steps/,
    ],
    ["a board that lies beside the pith it should box", { board: { heart: "boxed" } }, GOOD, /piece 1 .*does not box/],
    [
      "pieces that overlap, in whatever order they are listed",
      {},
      withPieces({ ...BOARD_PIECE, y0: 49, y1: 74, z0: 2500, z1: 3500 }, POST_PIECE),
      /pieces 1 and 0 overlap/,
    ],
  ])("refuses %s", (_, given, plan, reason) => {
    expect(judgeSawingPlan(question(given), plan).join("\n")).toMatch(reason);
  });

  it("finds nothing else wrong with a plan that has one fault", () => {
    expect(judgeSawingPlan(question(), withCut(1, { lo: -55 }))).toHaveLength(1);
    expect(judgeSawingPlan(question({ log: { rot: { smallEnd: 0, largeEnd: 20 } } }), GOOD)).toHaveLength(1);
  });
});

describe("sound wood, to the step", () => {
  const judged = (given: Given) => judgeSawingPlan(question(given), GOOD);

  it("lets a corner touch the bark and refuses it one step farther out", () => {
    // The board's far corner is 4 × hypot²(75, 81) = 48,744 = 220.78² from side to side; the straight bolt starts half way up.
    expect(judged({ log: { smallDiameter: 221, largeDiameter: 221 } })).toEqual([]);
    expect(judged({ log: { smallDiameter: 220, largeDiameter: 221 } }).join()).toMatch(/outside the wood/); // 220.5
  });

  it("lets a corner lie on the very circle: 30 and 40 from the axis in a log of 100", () => {
    const given = (diameter: number) =>
      question({
        log: { smallDiameter: diameter, largeDiameter: diameter },
        post: { thickness: 60, width: 80, length: 4000 },
        shop: { longestBolt: 4000 },
      });
    const pieces = [{ group: "post", z0: 0, z1: 4000 }];
    const bolt = { z0: 0, z1: 4000, slabs: [{ y0: -40, y1: 40, strips: [{ x0: -30, x1: 30, pieces }] }] };
    const logs = [writeLog(given(100), "pine", [bolt])];
    expect(judgeSawingPlan(given(100), { gridMm: "1", logs, buy: { board: 4 } })).toEqual([]);
    expect(judgeSawingPlan(given(99), { gridMm: "1", logs, buy: { board: 4 } })).toHaveLength(1);
  });

  it("takes a bolt's own sweep off, a quarter of the log's in half its length", () => {
    // At either end of the bolt the axis is off by half of the bolt's sweep: 229 − 8 = 221, 229 − 9 = 220.
    const crooked = (sweep: number) => judged({ log: { smallDiameter: 229, largeDiameter: 229, sweep } });
    expect(crooked(32)).toEqual([]);
    expect(crooked(36).join()).toMatch(/piece 1 .*outside the wood/);
  });

  it("finds a piece that has wood at both ends and leaves it at the bulge", () => {
    // One board 400 long about the middle of the bolt. Sweep 160 gives the bolt 40: the axis is off by 20 at the middle and by
    // 13.6 at the board's ends (1 − 0.2² of 40, less 20 … 18.4). 260 − 40 = 220 < 220.78 < 260 − 36.8 = 223.2.
    const cuts = [
      ...CUTS.slice(0, 8),
      { tool: "cross", axis: "z", part: 15, lo: 2797, hi: 2800 },
      { tool: "cross", axis: "z", part: 18, lo: 3200, hi: 3203 },
    ] as const;
    const plan = withLog({ cuts, pieces: [POST_PIECE, { ...BOARD_PIECE, part: 19, z0: 2800, z1: 3200 }] });
    const on = (sweep: number) =>
      judgeSawingPlan(
        question({ log: { smallDiameter: 260, largeDiameter: 260, sweep }, board: { length: 400 } }),
        plan,
      );
    expect(on(160).join()).toMatch(/piece 1 .*outside the wood/);
    expect(on(156)).toEqual([]); // 39 off: 221
  });

  it("agrees with a dense sampling of the bowed, tapered log", () => {
    const next = mulberry32(7);
    const whole = (from: number, to: number) => from + Math.floor(next() * (to - from + 1));
    for (let round = 0; round < 2000; round += 1) {
      const length = whole(100, 4000);
      const [lo, end] = [whole(0, length - 50), length];
      const hi = whole(lo + 50, end);
      const smallDiameter = whole(50, 400);
      const log = {
        ...LOG,
        length,
        smallDiameter,
        largeDiameter: smallDiameter + whole(-20, 100),
        sweep: whole(0, 80),
      };
      const z0 = whole(lo, hi - 2);
      const z1 = whole(z0 + 1, hi);
      const sweep = log.sweep * ((hi - lo) / length) ** 2;
      let least = Number.POSITIVE_INFINITY;
      for (let sample = 0; sample <= 2000; sample += 1) {
        const z = z0 + ((z1 - z0) * sample) / 2000;
        const u = (z - lo) / (hi - lo);
        const off = Math.abs(4 * sweep * u * (1 - u) - sweep / 2);
        least = Math.min(least, smallDiameter + ((log.largeDiameter - smallDiameter) * z) / length - 2 * off);
      }
      const sure = Number(sureDiameterSquared(log, { lo, hi }, { lo: z0, hi: z1 }));
      const sampled = Math.max(0, least) ** 2;
      // Whole squares: up to 1 less. Samples miss the lowest point by less than 1e-3 of a step.
      expect(sure).toBeLessThanOrEqual(sampled + 1e-6);
      expect(sure).toBeGreaterThan(sampled - 1 - 2e-3 * Math.sqrt(sampled));
    }
  });

  it("keeps pieces off a cone of rot where they lie, not where the log is rotten elsewhere", () => {
    // Rot from nothing at the small end to 80 at the butt: 60 where the board ends (z = 3000), 80 where the post does.
    const rot = { smallEnd: 0, largeEnd: 80 };
    const boardOnly = { ...withPieces(BOARD_PIECE), buy: { board: 3, post: 1 } };
    expect(judgeSawingPlan(question({ log: { rot } }), boardOnly)).toEqual([]);
    // The board's near face is 56 from the axis: 112 across.
    const at = (largeEnd: number) => judgeSawingPlan(question({ log: { rot: { smallEnd: 0, largeEnd } } }), boardOnly);
    expect(at(149)).toEqual([]); // 111.75 at z = 3000
    expect(at(150).join()).toMatch(/piece 0 .*into the rot/); // 112.5
  });

  it("widens rot and pith by the bolt's sweep", () => {
    // A bolt of half the log has a quarter of its sweep: 40 of 160.
    const boardOnly = { ...withPieces(BOARD_PIECE), buy: { board: 3, post: 1 } };
    const on = (end: number, pith: number) =>
      judgeSawingPlan(
        question({
          log: { smallDiameter: 300, largeDiameter: 300, sweep: 160, rot: { smallEnd: end, largeEnd: end } },
          board: { heart: "free" },
          shop: { pith },
        }),
        boardOnly,
      ).join();
    expect(on(72, 72)).toBe(""); // 72 + 40 = 112
    expect(on(73, 0)).toMatch(/into the rot/);
    expect(on(0, 73)).toMatch(/near the pith/);
  });

  it("lets a post just hold the pith's circle", () => {
    expect(judged({ post: { heart: "boxed" }, shop: { pith: 100 } })).toEqual([]);
  });

  it("lets each corner lose the wane and no more, on either face", () => {
    // Corner (75, 81). With 10 of wane it has to be wood at (65, 81) and (75, 71): 4 × 10,786 = 207.7².
    const log = (diameter: number) => ({ smallDiameter: diameter, largeDiameter: diameter });
    expect(judged({ log: log(208), board: { wane: 10 } })).toEqual([]);
    expect(judged({ log: log(207), board: { wane: 10 } }).join()).toMatch(/piece 1 .*outside the wood/);
    expect(judged({ log: log(208), board: { wane: 9 } }).join()).toMatch(/piece 1 .*outside the wood/);
  });
});

describe("what the judge says", () => {
  it("is in lengths as the caller tells them, and in the bark where a side is round", () => {
    const told = (plan: SawingPlan, given: Given = {}) =>
      judgeSawingPlan(question(given), plan, (steps) => `${steps / 10} cm`).join(" ");
    expect(told(GOOD, { shop: { thinnestSlab: 26 } })).toContain("a slab of 2.5 cm, the mill saws none under 2.6 cm");
    expect(told(GOOD, { board: { thickness: 24 } })).toContain("section is 15 cm × 2.5 cm, wanted is 2.4 cm × 15 cm");
    expect(told(withCut(5, { lo: 40, hi: 46 }))).toContain("misses part 6, which runs from 5.6 cm to the bark.");
  });
});

describe("independence of the judge", () => {
  it("shares no code with the makers of plans: it reads the form of plans, decimals and itself", () => {
    const salvage = join(dirname(fileURLToPath(import.meta.url)), "../../../src/estimate/salvage");
    const seen = new Set<string>();
    const follow = (file: string): void => {
      if (seen.has(file)) return;
      seen.add(file);
      const source = readFileSync(file, "utf8");
      for (const [, target = ""] of source.matchAll(/\b(?:from|import)\s*\(?\s*"([^"]+)"/g)) {
        if (target.startsWith(".")) follow(join(dirname(file), target.replace(/\.js$/, ".ts")));
        else seen.add(target);
      }
    };
    follow(join(salvage, "sawing-judge.ts"));
    follow(join(salvage, "../../../tests/judges/sawing-price.ts"));
    const names = [...seen].map((file) => (file.startsWith("/") ? relative(salvage, file) : file)).sort();
    expect(names).toEqual([
      "../../../tests/judges/sawing-price.ts",
      "../quantity/decimal.ts",
      "decimal.js",
      "sawing-judge-cuts.ts",
      "sawing-judge-form.ts",
      "sawing-judge-wood.ts",
      "sawing-judge.ts",
      "sawing-parts.ts",
      "sawing-problem.ts",
    ]);
  });
});

describe("hostile plans", () => {
  const judge = (plan: unknown) => judgeSawingPlan(question(), plan as SawingPlan);

  it.each([
    undefined,
    null,
    7,
    "plan",
    [],
    {},
    { gridMm: "1", logs: {}, buy: {} },
    { gridMm: "1", logs: [], buy: [] },
    { gridMm: "1", logs: [null, 3], buy: {} },
    { gridMm: "1", logs: [{ log: "pine", cuts: [null], pieces: [[]] }], buy: {} },
    { gridMm: "1", logs: [{ log: { toString: "no" }, cuts: [], pieces: [] }], buy: {} },
    { gridMm: "1", logs: new Array(2), buy: {} },
    { gridMm: "1", logs: [{ log: "pine", cuts: new Array(4_000_000_000), pieces: [] }], buy: {} },
    { gridMm: "1", logs: [], buy: JSON.parse('{"__proto__": 1, "constructor": 2, "hasOwnProperty": 3}') },
    { ...GOOD, buy: { board: 1e300 } },
    { ...GOOD, buy: { board: -3 } },
    { ...GOOD, gridMm: "x".repeat(1_000_000) },
    withCut(3, { lo: -1e15, hi: 1e15 }),
    withCut(3, { tool: "toString" }),
    withCut(3, { part: 10n }),
  ])("are refused and do no harm: %#", (plan) => {
    const sentences = judge(plan);
    expect(sentences.length).toBeGreaterThan(0);
    expect(sentences.length).toBeLessThanOrEqual(50);
    expect(sentences.every((sentence) => sentence.length < 300)).toBe(true);
  });

  it("are refused at most fifty times", () => {
    const pieces = Array.from({ length: 9000 }, () => ({ ...BOARD_PIECE, group: "plank" }));
    expect(judge(withLog({ pieces }))).toHaveLength(50);
  });

  it("take bounded time, the largest form of plan included", () => {
    const cuts = Array.from({ length: 200_000 }, (_, index) => ({
      tool: "mill",
      axis: "y",
      part: 2 * index,
      lo: -900_000 + 6 * index,
      hi: -900_000 + 6 * index + 6,
    }));
    const pieces = Array.from({ length: 10_000 }, (_, index) => ({
      ...BOARD_PIECE,
      x0: 200 * index,
      x1: 200 * index + 150,
    }));
    expect(judge(withLog({ cuts, pieces })).length).toBeGreaterThan(0);
    expect(judge(withLog({ pieces })).length).toBeGreaterThan(0);
    expect(judge(withLog({ cuts: [...cuts, ...cuts] }))).toEqual([
      "The plan names more logs, cuts or pieces than a plan may hold.",
    ]);
  });

  it("never make it throw, whatever is put anywhere in a plan", () => {
    const places = paths(GOOD);
    const plan = fc.tuple(fc.constantFrom(...places), fc.anything()).map(([place, value]) => put(GOOD, place, value));
    fc.assert(
      fc.property(fc.oneof(plan, fc.anything()), (hostile) => {
        const sentences = judge(hostile);
        expect(sentences.length).toBeLessThanOrEqual(50);
      }),
      { seed: 20, numRuns: 3000 },
    );
  });
});

/** Every place in a value, as the keys that lead to it. */
function paths(value: unknown): string[][] {
  if (typeof value !== "object" || value === null) return [[]];
  return [[], ...Object.entries(value).flatMap(([key, inner]) => paths(inner).map((rest) => [key, ...rest]))];
}

/** A copy of a value with something else in one place. */
function put(value: unknown, [key, ...rest]: readonly string[], other: unknown): unknown {
  if (key === undefined) return other;
  if (Array.isArray(value)) return value.with(Number(key), put(value[Number(key)], rest, other));
  const record = value as Record<string, unknown>;
  return { ...record, [key]: put(record[key], rest, other) };
}
