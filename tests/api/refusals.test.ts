import { describe, expect, it } from "vitest";
import { type Asking, demo, estimated, post, refused } from "./helpers/posting.js";

type Gable = Extract<Asking["structure"], { kind: "gable" }>;
type Change = (request: Asking & { structure: Gable; logs: NonNullable<Asking["logs"]> }) => void;

const changed = (change: Change): Asking => {
  const request = demo("orchard-shelter");
  change(request as Parameters<Change>[0]);
  return request;
};
/** Past the compiler, as any caller may be. */
const loose = (part: object) => part as Record<string, unknown>;

const NO_LOGS = { gridMm: "1.5875", logs: [], buy: {} };

interface Case {
  readonly what: string;
  readonly change: Change;
  readonly code: string;
  readonly pointer: string;
  /** Words that the cure or the fault must have. */
  readonly says?: RegExp;
}

const shape: Case[] = [
  {
    what: "a mass for a length",
    change: (r) => (r.structure.span = "16 kg"),
    code: "wrong-dimension",
    pointer: "/structure/span",
  },
  {
    what: "a bare number",
    change: (r) => (r.structure.span = "16"),
    code: "not-a-quantity",
    pointer: "/structure/span",
    says: /no unit/,
  },
  {
    what: "a number where text is asked for",
    change: (r) => (loose(r.structure).span = 16),
    code: "wrong-shape",
    pointer: "/structure/span",
  },
  {
    what: "a negative length",
    change: (r) => (r.structure.length = "-24 ft"),
    code: "out-of-range",
    pointer: "/structure/length",
  },
  {
    what: "a building of a hundred miles",
    change: (r) => (r.structure.length = "100 mi"),
    code: "out-of-range",
    pointer: "/structure/length",
    says: /400 ft/,
  },
  {
    what: "a span that no shelter has",
    change: (r) => (r.structure.span = "120 ft"),
    code: "out-of-range",
    pointer: "/structure/span",
    says: /at most 60 ft/,
  },
  {
    what: "sixty nines",
    change: (r) => (r.structure.length = `${"9".repeat(60)} ft`),
    code: "not-a-quantity",
    pointer: "/structure/length",
  },
  { what: "no span", change: (r) => delete loose(r.structure).span, code: "missing-field", pointer: "/structure/span" },
  { what: "no structure", change: (r) => delete loose(r).structure, code: "missing-field", pointer: "/structure" },
  {
    what: "two logs of one name",
    change: (r) => (loose(r.logs[3] as object).name = r.logs[0]?.name),
    code: "duplicate-name",
    pointer: "/logs/3/name",
  },
  {
    what: "a log of nobody knows what",
    change: (r) => (loose(r.logs[0] as object).species = "eastern-white-pin"),
    code: "unknown-name",
    pointer: "/logs/0/species",
    says: /eastern-white-pine/,
  },
  {
    what: "a log without a thickness",
    change: (r) => delete loose(r.logs[0] as object).smallDiameter,
    code: "missing-field",
    pointer: "/logs/0",
  },
  {
    what: "a tree of a name of its own",
    change: (r) => (loose(r.logs[0] as object).species = "Pine 1"),
    code: "unknown-name",
    pointer: "/logs/0/species",
    says: /Which one: eastern-white-pine, /,
  },
  {
    what: "a log that is thick at no end",
    change: (r) => (loose(r.logs[0] as object).diameter = "14 in"),
    code: "unknown-field",
    pointer: "/logs/0/diameter",
    says: /called “smallDiameter” here/,
  },
  {
    what: "a pitch",
    change: (r) => (loose(r.structure).pitch = "5/12"),
    code: "unknown-field",
    pointer: "/structure/pitch",
    says: /called “slope” here. Give an object, such as {"rise":"5 in","run":"12 in"}/,
  },
  {
    what: "walls of no side",
    change: (r) => (loose(r.structure).walls = {}),
    code: "missing-field",
    pointer: "/structure/walls/sides",
    says: /such as \[{"side":"near"}\]/,
  },
  {
    what: "walls as a list",
    change: (r) => (loose(r.structure).walls = ["left"]),
    code: "wrong-shape",
    pointer: "/structure/walls",
    says: /such as {"sides":\[{"side":"near"}\]}/,
  },
  {
    what: "a misspelt key",
    change: (r) => (loose(r).strcture = {}),
    code: "unknown-field",
    pointer: "/strcture",
    says: /structure/,
  },
  {
    what: "a misspelt key far down",
    change: (r) => (loose(r.structure.overhang as object).eaves = "1 ft"),
    code: "unknown-field",
    pointer: "/structure/overhang/eaves",
    says: /eave/,
  },
  {
    what: "a misspelt demo",
    change: (r) => (r.catalog = { demo: "orchard-yrd" }),
    code: "unknown-name",
    pointer: "/catalog/demo",
    says: /orchard-yard/,
  },
  {
    what: "a spacing of nothing",
    change: (r) => (r.structure.rafterSpacing = "0 in"),
    code: "out-of-range",
    pointer: "/structure/rafterSpacing",
  },
  { what: "a crew of nobody", change: (r) => (r.labor = { crew: 0 }), code: "out-of-range", pointer: "/labor/crew" },
  {
    what: "an overhang of a street",
    change: (r) => (r.structure.overhang = { eave: "40 ft" }),
    code: "out-of-range",
    pointer: "/structure/overhang/eave",
  },
];

const building: Case[] = [
  {
    what: "a roof that falls inwards",
    change: (r) => (r.structure.slope = { rise: "-5 in", run: "12 in" }),
    code: "cannot-build",
    pointer: "/structure/slope/rise",
  },
  {
    what: "a span narrower than its beams",
    change: (r) => (r.structure.span = "3 in"),
    code: "cannot-build",
    pointer: "/structure/span",
  },
  {
    what: "a plate on the ground",
    change: (r) => (r.structure.eaveHeight = "6 in"),
    code: "cannot-build",
    pointer: "/structure/eaveHeight",
  },
  // (24 ft - 6 in) / 50 apart is 5.64 in, and a post is 6 in wide.
  {
    what: "posts in one another's place",
    change: (r) => (r.structure.bays = 50),
    code: "cannot-build",
    pointer: "/structure/bays",
  },
  // 48 in less a beam of 8 in leaves 40 in of post.
  {
    what: "braces longer than the post",
    change: (r) => {
      r.structure.eaveHeight = "4 ft";
      r.structure.braceLeg = "40 in";
    },
    code: "cannot-build",
    pointer: "/structure/braceLeg",
  },
  // 3 bays are 94 in apart and 88 in clear; two legs of 44 1/2 in are 89 in.
  {
    what: "braces that cross in the bay",
    change: (r) => (r.structure.braceLeg = "44 1/2 in"),
    code: "cannot-build",
    pointer: "/structure/braceLeg",
  },
  // 11 ft out at 12 in 12 falls 11 ft, from a plate 9 ft high.
  {
    what: "an overhang down to the ground",
    change: (r) => {
      r.structure.slope = { rise: "12 in", run: "12 in" };
      r.structure.overhang = { eave: "11 ft" };
    },
    code: "cannot-build",
    pointer: "/structure/overhang/eave",
  },
  // Half of a span of 16 ft lies behind the plate.
  {
    what: "an overhang longer than the rafter's run",
    change: (r) => {
      r.structure.eaveHeight = "14 ft";
      r.structure.overhang = { eave: "8 ft 1 in" };
    },
    code: "cannot-build",
    pointer: "/structure/overhang/eave",
    says: /at most 8'/,
  },
  {
    what: "studs of a wall in one another",
    change: (r) => (r.structure.walls = { boards: "horizontal", backing: "2 in", sides: [{ side: "near" }] }),
    code: "cannot-build",
    pointer: "/structure/walls/backing",
    says: /more than 2 in/,
  },
  // Bearers and joists of 6 in, boards of 1 in: 13 in; a beam of 8 in under a top at 20 in begins at 12 in.
  {
    what: "a floor up in the beams",
    change: (r) => {
      r.structure.eaveHeight = "20 in";
      r.structure.overhang = { eave: "6 in" };
      r.structure.groups = { ...r.structure.groups, braces: { remove: true } };
      r.structure.floor = {};
    },
    code: "cannot-build",
    pointer: "/structure/floor",
    says: /higher than 1' 9"/,
  },
  {
    what: "a log that is all flare",
    change: (r) => (loose(r.logs[0] as object).flare = "30 ft"),
    code: "cannot-build",
    pointer: "/logs/0",
  },
  {
    what: "a log thinner at its butt",
    change: (r) => (loose(r.logs[0] as object).largeDiameter = "3 in"),
    code: "cannot-build",
    pointer: "/logs/0/largeDiameter",
  },
  {
    what: "two groups of one name",
    change: (r) => (r.structure.extraPieces = [{ name: "posts", count: 1, section: "2 x 4 in", length: "1 ft" }]),
    code: "duplicate-name",
    pointer: "/structure/extraPieces/0/name",
  },
  {
    what: "half a rafter",
    change: (r) => (r.overrides = { "pieces.rafters.count": "25.5" }),
    code: "out-of-range",
    pointer: "/overrides/pieces.rafters.count",
  },
  {
    what: "fewer rafters than none",
    change: (r) => (r.overrides = { "pieces.rafters.count": "-3" }),
    code: "out-of-range",
    pointer: "/overrides/pieces.rafters.count",
  },
  {
    what: "an overridden spacing of nothing",
    change: (r) => (r.overrides = { "frame.rafterSpacing": "0 in" }),
    code: "cannot-build",
    pointer: "/overrides/frame.rafterSpacing",
  },
  {
    what: "a roof panel of no width",
    change: (r) => (r.overrides = { "covering.coverWidth": "0 in" }),
    code: "cannot-build",
    pointer: "/overrides/covering.coverWidth",
  },
  {
    what: "a bolt that nobody makes",
    change: (r) => (r.overrides = { "fasteners.bolt.diameter": "3 in" }),
    code: "out-of-range",
    pointer: "/overrides/fasteners.bolt.diameter",
  },
];

const work: Case[] = [
  {
    what: "purlins 6 in apart over 400 ft, none longer than 3 ft",
    change: (r) => {
      r.structure.length = "400 ft";
      r.structure.purlinSpacing = "6 in";
      r.structure.longestPiece = "3 ft";
    },
    code: "too-large",
    pointer: "/structure",
  },
  {
    what: "3,600 logs",
    change: (r) => {
      for (const log of r.logs) loose(log).count = 200;
    },
    code: "too-large",
    pointer: "/logs",
  },
];

const names: Case[] = [
  {
    what: "an override of no cell",
    change: (r) => (r.overrides = { "frame.spann": "15 ft" }),
    code: "unknown-name",
    pointer: "/overrides/frame.spann",
    says: /frame\.span\?/,
  },
  {
    what: "an override of another kind",
    change: (r) => (r.overrides = { "frame.span": "15 lb" }),
    code: "wrong-dimension",
    pointer: "/overrides/frame.span",
  },
  {
    what: "an assumption that is none",
    change: (r) => (r.assumptions = { "rate.ripFed": "1 ft/min" }),
    code: "unknown-name",
    pointer: "/assumptions/rate.ripFed",
    says: /rate\.ripFeed\?/,
  },
  {
    what: "an assumption upside down",
    change: (r) => (r.assumptions = { pace: { low: "2", likely: "1", high: "3" } }),
    code: "out-of-range",
    pointer: "/assumptions/pace",
  },
  {
    what: "a divisor of nothing",
    change: (r) => (r.assumptions = { "carry.load": "0 lb" }),
    code: "out-of-range",
    pointer: "/assumptions/carry.load",
  },
];

const estimateOnly: Case[] = [
  {
    what: "an override of a plan's number",
    change: (r) => (r.overrides = { "milled.cuts.bolts": "3" }),
    code: "not-overridable",
    pointer: "/overrides/milled.cuts.bolts",
  },
  {
    what: "a mill that cuts nothing",
    change: (r) => (r.overrides = { "mill.rate": "0 ft2/min" }),
    code: "out-of-range",
    pointer: "/overrides/mill.rate",
  },
  {
    what: "a rip saw that stands still",
    change: (r) => (r.assumptions = { "rate.ripFeed": "0 ft/min" }),
    code: "out-of-range",
    pointer: "/assumptions/rate.ripFeed",
  },
  {
    what: "lines in a circle",
    change: (r) =>
      (r.lines = [
        { name: "a", label: "A", formula: "own.b" },
        { name: "b", label: "B", formula: "own.a" },
      ]),
    code: "circular-lines",
    pointer: "/lines/0/formula",
  },
  {
    what: "half a formula",
    change: (r) => (r.lines = [{ name: "a", label: "A", formula: "2 * (" }]),
    code: "bad-formula",
    pointer: "/lines/0/formula",
  },
  {
    what: "a formula over nothing",
    change: (r) => (r.lines = [{ name: "a", label: "A", formula: "$2 / 0" }]),
    code: "out-of-range",
    pointer: "/lines/0/formula",
  },
  {
    what: "euros in a dollar estimate",
    change: (r) => (r.lines = [{ name: "a", label: "A", formula: "2 EUR" }]),
    code: "currency-mix",
    pointer: "/lines/0/formula",
  },
  {
    what: "a sawing plan of nothing",
    change: (r) => (r.heldPlans = { sawing: { milled: NO_LOGS } }),
    code: "held-plan-misfit",
    pointer: "/heldPlans/sawing/milled",
  },
  {
    what: "a sawing plan of no route",
    change: (r) => (r.heldPlans = { sawing: { mill: NO_LOGS } as object }),
    code: "unknown-field",
    pointer: "/heldPlans/sawing/mill",
  },
  {
    what: "more pieces than a stick holds",
    change: (r) =>
      (r.heldPlans = {
        stock: { bought: { "spf-2x4": [{ stock: "10'", pieces: ["purlins-end", "purlins-end"], times: 3 }] } },
      }),
    code: "held-plan-misfit",
    pointer: "/heldPlans/stock/bought/spf-2x4",
  },
  {
    what: "a held mix of unknown groups",
    change: (r) => (r.heldPlans = { milled: ["rafters", "rafter"] }),
    code: "held-plan-misfit",
    pointer: "/heldPlans/milled/1",
  },
];

describe.each(["/v1/estimates", "/v1/takeoffs"])("%s refuses", (path) => {
  it.each([...shape, ...building, ...work, ...names])(
    "$what, naming the place",
    async ({ change, code, pointer, says }) => {
      const problem = await refused(changed(change), path);
      expect([problem.status, problem.faults[0]?.code, problem.faults[0]?.pointer]).toEqual([422, code, pointer]);
      for (const { wrong, cure } of problem.faults) expect([wrong.length > 5, cure.length > 5]).toEqual([true, true]);
      if (says) expect(`${problem.faults[0]?.wrong} ${problem.faults[0]?.cure}`).toMatch(says);
    },
  );
});

describe("a cure", () => {
  it("names the fields that hold the word, a list of one where text was given, and says neither twice", async () => {
    const structure = { kind: "lean-to", span: "8 ft", length: "16 ft" } as const;
    const curesOf = async (groups: object) =>
      (await refused({ structure: { ...structure, ...loose({ groups }) } })).faults.map(({ cure }) => cure);
    expect(await curesOf({ posts: {} })).toEqual(["Which one: low-posts, high-posts, end-posts?"]);
    expect(await curesOf({ rafters: { species: "southern-pine" } })).toEqual([
      'Give a list, such as ["eastern-white-pine"].',
    ]);
    expect(await curesOf({ rafters: { species: ["red oak"] } })).toEqual(["Did you mean “northern-red-oak”?"]);
  });

  it("says in which currency an hour is worth something, where it is told in another", async () => {
    const labor = { ...demo("orchard-shelter").labor, valueOfHour: "25 €" };
    expect((await refused({ ...demo("orchard-shelter"), labor })).faults).toMatchObject([
      { code: "currency-mix", pointer: "/labor/valueOfHour", cure: expect.stringContaining("in USD") },
    ]);
  });

  it("names a handful of many names, the likest first, none of them cut", async () => {
    const groups = { "nonsense-thing": { route: "buy" } };
    const problem = await refused(changed((request) => (loose(request.structure).groups = groups)));
    const cure = problem.faults[0]?.cure ?? "";
    expect(cure).toMatch(/^Known here: (?:[a-z-]+, ){4}[a-z-]+ and \d+ more\.$/);
    const told = /: (.*) and/.exec(cure)?.[1]?.split(", ") ?? [];
    const known = new Set((await estimated(demo("orchard-shelter"))).cutList.groups.map(({ name }) => name));
    expect(told.some((name) => known.has(name))).toBe(true);
  });

  it("names the cell of the route that the best mix is, where it is one of the others", async () => {
    const base = demo("orchard-shelter");
    // Without logs nothing is milled, and the mix is what is bought.
    const { logs: _, ...bare } = base;
    const problem = await refused({ ...bare, overrides: { "mixed.finish.volume": "3 gal" } });
    expect(problem.faults).toMatchObject([
      { code: "unknown-name", pointer: "/overrides/mixed.finish.volume", cure: "Did you mean bought.finish.volume?" },
    ]);
  });

  it("names the species that a word may mean", async () => {
    const problem = await refused(changed((request) => (loose(request.logs?.[0] ?? {}).species = "pine")));
    expect(problem.faults[0]?.cure).toMatch(/^Which one: (?:[a-z-]+-pine, )+[a-z-]+-pine\?$/);
  });

  it("is given once for an assumption without a unit, not for each of its three figures", async () => {
    const problem = await refused(changed((request) => (loose(request).assumptions = { "mill.rate": "1.1" })));
    expect(problem.faults).toHaveLength(1);
  });
});

describe("an estimate refuses", () => {
  it.each(estimateOnly)("$what, naming the place", async ({ change, code, pointer }) => {
    const problem = await refused(changed(change));
    expect([problem.status, problem.faults[0]?.code, problem.faults[0]?.pointer]).toEqual([422, code, pointer]);
  });

  it("plans held from another structure", async () => {
    const answer = (await (await post("/v1/estimates?include=plans", demo("orchard-shelter"))).json()) as Asking;
    const wider = changed((request) => (request.structure.span = "20 ft"));
    const problem = await refused({ ...wider, heldPlans: answer.heldPlans });
    expect(new Set(problem.faults.map(({ code }) => code))).toEqual(new Set(["held-plan-misfit"]));
  });

  it("a sawing plan that does not fit, in the project's lengths", async () => {
    const logs = [
      { log: "pine-1-butt", cuts: [{ tool: "buck", axis: "z", part: 0, lo: 960, hi: 961 } as const], pieces: [] },
    ];
    const sawing = { milled: { ...NO_LOGS, logs } };
    const { faults } = await refused({ ...demo("orchard-shelter"), heldPlans: { milled: [], sawing } });
    expect(faults[0]?.wrong).toBe('Log “pine-1-butt”, cut 0 (buck): the kerf is 1/16" wide, the saw takes 3/8".');
  });

  it.each([
    ["a stock plan of a route that is none", { stock: { bouhgt: {} } }, "/stock/bouhgt", "bought"],
    [
      "a stock plan of an offer that is not bought",
      { stock: { bought: { "spf-2x4x": [] } } },
      "/stock/bought/spf-2x4x",
      "spf-2x4",
    ],
    [
      "a stock plan without a group that is none",
      { stock: { "milled without hats": {} } },
      "/stock/milled without hats",
      "",
    ],
    ["a mix that a sawyer mills where none is hired", { hired: true }, "/hired", ""],
    ["a sawing plan of a sawyer whom nobody hired", { sawing: { hired: NO_LOGS } }, "/sawing/hired", ""],
  ])("%s, with the nearest that there is", async (_, heldPlans, place, near) => {
    const { status, faults } = await refused({ ...demo("orchard-shelter"), heldPlans: { milled: [], ...heldPlans } });
    expect([status, faults.map(({ code, pointer }) => [code, pointer])]).toEqual([
      422,
      [["held-plan-misfit", `/heldPlans${place}`]],
    ]);
    expect(faults[0]?.cure).toContain(near && `Did you mean ${near}? `);
  });

  it("several faults at once, each in its place", async () => {
    const problem = await refused(
      changed((request) => {
        request.structure.span = "16 kg";
        request.structure.rafterSpacing = "-1 in";
        loose(request).colour = "red";
      }),
    );
    expect(problem.faults.map(({ pointer }) => pointer).sort()).toEqual([
      "/colour",
      "/structure/rafterSpacing",
      "/structure/span",
    ]);
  });
});

describe("problems", () => {
  it.each([
    { of: shape, type: "/docs#problem-invalid-request" },
    { of: building.slice(0, 6), type: "/docs#problem-cannot-build" },
    { of: work, type: "/docs#problem-too-much-work" },
  ])("are told apart by their type: $type", async ({ of, type }) => {
    for (const { change } of of) expect((await refused(changed(change))).type).toBe(type);
  });
});
