/** Structures that nobody can build: each is refused with the field, what is wrong with its limit, and the cure. */
import { describe, expect, it } from "vitest";
import { refused, takenOff } from "./helpers/posting.js";

const gable = { kind: "gable", span: "16 ft", length: "24 ft" };
const shed = { kind: "lean-to", span: "8 ft", length: "24 ft" };
const hip = { kind: "hip", span: "16 ft", length: "24 ft" };
const pergola = { kind: "pergola", span: "10 ft", length: "16 ft" };
const near = (more: object) => ({ walls: { boards: "vertical", sides: [{ side: "near", ...more }] } });
const rafters = (more: object) => ({ groups: { rafters: more } });
const posts = (side: string) => ({ groups: { posts: { section: { thickness: side, width: side } } } });
const steep = { rafterTail: "square", slope: { rise: "12 in", run: "12 in" } };
const long = (group: string, length: string) => ({ groups: { [group]: { length } } });

/** A structure, the field under /structure, and the limit or the measure that it breaks as the sentence has it. */
const ROWS: readonly (readonly [what: string, structure: object, pointer: string, limit: RegExp])[] = [
  [
    "gable: a rafter shorter than its overhang",
    { ...gable, ...rafters({ length: "1 ft" }) },
    "groups/rafters/length",
    /12 in/,
  ],
  // 16 ft of span: 8 ft of run and more to reach over.
  [
    "gable: a rafter that ends far below its ridge",
    { ...gable, ...rafters({ length: "3 ft" }) },
    "groups/rafters/length",
    /do not reach .* along the slope/,
  ],
  [
    "gable: a birdsmouth through the rafter",
    { ...gable, seat: "14 in", slope: { rise: "12 in", run: "12 in" } },
    "seat",
    /6 in/,
  ],
  // Three bays of 24 ft less a post of 6 in are 7 ft 10 in each.
  [
    "gable: beams that reach further past the end than the bay behind them",
    { ...gable, overhang: { gable: "8 ft" } },
    "overhang/gable",
    /8'.*7' 10"/,
  ],
  [
    "lean-to: beams that reach further past the end than a short last bay",
    { ...shed, bayLengths: ["8 ft", "12 ft"], overhang: { end: "4 ft" } },
    "overhang/end",
    /4'.*3' 6"/,
  ],
  ["gable: no bay", { ...gable, bays: 0 }, "bays", /0 is outside/],
  [
    "gable: a seat longer than the plate is wide",
    { ...gable, seat: "5 in" },
    "seat",
    /5 in.*the thickness of the beams is 4 in/,
  ],
  ["hip: a seat longer than the plate is wide", { ...hip, seat: "5 in" }, "seat", /5 in.*beams is 4 in/],
  [
    "lean-to: a seat longer than the high beam is wide",
    { ...shed, seat: "3 in", groups: { "high-beams": { section: "2 x 8 in" } } },
    "seat",
    /3 in.*the thickness of the high beams is 2 in/,
  ],
  // 6 in at 1 in 12 are 6 × √145 ÷ 12 = 6.021 in plumb, less a seat of 4 in × 1 ÷ 12; the run of 36 in less 2 rises 2.833 in.
  [
    "gable: a ridge beam in its ties",
    {
      ...gable,
      span: "6 ft",
      ridge: "beam",
      slope: { rise: "1 in", run: "12 in" },
      groups: { ridge: { section: "4 x 12 in" } },
    },
    "groups/ridge/section",
    /12 in deep.* 3 1\/2 in below .* leaves 8 1\/2 in/,
  ],
  [
    "gable: a roof as steep as a wall",
    { ...gable, slope: { rise: "25 in", run: "12 in" } },
    "slope/rise",
    /25 in over 12 in is a wall/,
  ],
  ["gable: posts in one another", { ...gable, bays: 60 }, "bays", /60 bays over 24' .*6 in/],
  ["gable: rafters closer than thick", { ...gable, rafterSpacing: "1 in" }, "rafterSpacing", /1 in.*2 in/],
  ["gable: no purlin spacing", { ...gable, purlinSpacing: "0 in" }, "purlinSpacing", /0/],
  ["gable: a plate deeper than its height", { ...gable, eaveHeight: "6 in" }, "eaveHeight", /6"/],
  ["gable: braces longer than the post", { ...gable, braceLeg: "9 ft" }, "braceLeg", /88 in/],
  // 6 ft less two posts of 6 in: 60 in between them, for two braces of 31 in each.
  [
    "gable: braces below a tie that would cross",
    { ...gable, span: "6 ft", braceLeg: "31 in" },
    "braceLeg",
    /31 in each\) are longer than the room between posts there \(60 in/,
  ],
  // (192 − 6) ÷ 3 − 6 = 56 in.
  [
    "hip: braces across an end that would cross",
    { ...hip, endBays: 3, braceLeg: "30 in" },
    "braceLeg",
    /30 in each\) .*\(56 in/,
  ],
  ...[gable, shed, hip].map(
    (one) =>
      [
        `${one.kind}: posts of an end in one another`,
        { ...one, endBays: 60 },
        "endBays",
        /60 bays across .*6 in/,
      ] as const,
  ),
  [
    "gable: tails down to the ground",
    { ...gable, eaveHeight: "2 ft", overhang: { eave: "9 ft" } },
    "overhang/eave",
    /9 ft|108 in/,
  ],
  [
    "gable: a ridge wider than the building",
    { ...gable, span: "2 ft", groups: { ridge: { section: "30 x 8 in" } } },
    "span",
    /30 in/,
  ],
  [
    "gable: an opening wider than its wall",
    { ...gable, ...near({ openings: [{ width: "25 ft", height: "6 ft" }] }) },
    "walls/sides/0/openings/0/width",
    /24'/,
  ],
  [
    "gable: an opening higher than its boards",
    { ...gable, ...near({ openings: [{ width: "3 ft", height: "9 ft" }] }) },
    "walls/sides/0/openings/0/height",
    /7\.6|7' 8"/,
  ],
  [
    "gable: joists closer than thick",
    { ...gable, floor: { joistSpacing: "1 in" } },
    "floor/joistSpacing",
    /1 in.*2 in/,
  ],
  ["lean-to: beams that leave no room", { ...shed, span: "6 in" }, "span", /4 in/],
  [
    "lean-to: a high overhang at a wall",
    { ...shed, highSide: "ledger", overhang: { high: "12 in" } },
    "overhang/high",
    /no high overhang/,
  ],
  [
    "lean-to: a birdsmouth through the rafter",
    { ...shed, seat: "14 in", slope: { rise: "12 in", run: "12 in" } },
    "seat",
    /6 in/,
  ],
  ["hip: a ridge along the shorter side", { ...hip, length: "12 ft" }, "length", /12'.*16'/],
  ["hip: jacks closer than thick", { ...hip, rafterSpacing: "1 in" }, "rafterSpacing", /1 in.*2 in/],
  ["pergola: rafters closer than thick", { ...pergola, rafterSpacing: "1 in" }, "rafterSpacing", /1 in.*2 in/],
  // 10 ft between the beams' outer faces and 18 in past each.
  [
    "pergola: rafters that end before the second beam's overhang",
    { ...pergola, ...long("rafters", "12 ft 11 in") },
    "groups/rafters/length",
    /12' 11".*13'/,
  ],
  [
    "pergola: rafters shorter than their overhang",
    { ...pergola, ...long("rafters", "1 ft") },
    "groups/rafters/length",
    /13'/,
  ],
  // 96 in of run, 12 of overhang, less half of a 2 in common: 107 in × √(288 + 16) ÷ 12 = 155.5 in.
  ["hip: hips shorter than their overhang", { ...hip, ...long("hips", "6 in") }, "groups/hips/length", /12' 11 1\/2"/],
  [
    "hip: hips that end below the ridge",
    { ...hip, ...long("hips", "12 ft 11 in") },
    "groups/hips/length",
    /12' 11 1\/2"/,
  ],
  [
    "hip: end rafters shorter than their overhang",
    { ...hip, ...long("end-rafters", "6 in") },
    "groups/end-rafters/length",
    /along the slope/,
  ],
  [
    "hip: jacks shorter than their overhang",
    { ...hip, ...long("jacks", "6 in") },
    "groups/jacks/length",
    /along the slope/,
  ],
  [
    "gable: fly rafters shorter than their overhang",
    { ...gable, ...long("fly-rafters", "1 ft") },
    "groups/fly-rafters/length",
    /12 in/,
  ],
  [
    "gable: rafters too short for the wider overhang alone",
    { ...gable, overhang: { farEave: "30 in" }, ...long("rafters", "10 ft") },
    "groups/rafters/length",
    /30 in|2' 6"/,
  ],
  [
    "lean-to: fly rafters shorter than their overhang",
    { ...shed, ...long("fly-rafters", "6 in") },
    "groups/fly-rafters/length",
    /12 in/,
  ],
  // Purlins of 2 × 4 in lie flat.
  ...[gable, shed, hip].map(
    (one) =>
      [
        `${one.kind}: purlins in one another`,
        { ...one, purlinSpacing: "1 in" },
        "purlinSpacing",
        /1 in.*4 in/,
      ] as const,
  ),
  [
    "gable: purlins in one another where closer rows halve their spaces",
    { ...gable, purlinSpacing: "7 in", deck: { kind: "purlins", closerRows: 1 } },
    "purlinSpacing",
    /7 in.*4 in/,
  ],
  // Asked for with room between, but closer once they are spread evenly.
  [
    "pergola: rafters in one another when they are spread evenly",
    { ...pergola, length: "20 in", bays: 1, overhang: { end: "0 in" }, rafterSpacing: "2.1 in", ...posts("3 in") },
    "rafterSpacing",
    /2 in apart, centres, and 2 in thick/,
  ],
  [
    "pergola: slats in one another when they are spread evenly",
    { ...pergola, span: "8 in", overhang: { side: "0 in" }, slatSpacing: "2.1 in", ...posts("3 in") },
    "slatSpacing",
    /2 in apart, centres, and 2 in thick/,
  ],
  [
    "gable: joists in one another when they are spread evenly",
    { ...gable, length: "20 in", bays: 1, ...posts("3 in"), floor: { joistSpacing: "2.1 in" } },
    "floor/joistSpacing",
    /2 in apart, centres, and 2 in thick/,
  ],
  // 287 in between outer centres: 11 whole spaces of 26 in leave 1 in; rafters of 2 in.
  ...[gable, shed].map(
    (one) =>
      [
        `${one.kind}: a last rafter in the one before it`,
        { ...one, length: "289 in", rafterBays: "short-last", rafterSpacing: "26 in" },
        "rafterSpacing",
        /leave 1 in for the last space/,
      ] as const,
  ),
  [
    "hip: commons in one another at both ends of a ridge",
    { ...hip, length: "16 ft 1 in" },
    "length",
    /1 in.*2 in thick/,
  ],
  // 126.5 in up the slope over 3.7 in: 35 spaces of 3.6 in; lookouts of 3 5/8 in.
  [
    "gable: lookouts in one another when they are spread evenly",
    { ...gable, lookoutSpacing: "3.7 in", groups: { lookouts: { section: "2 x 3.65 in" } } },
    "lookoutSpacing",
    /3 11\/16 in apart at most stand .* 3 5\/8 in wide/,
  ],
  ["pergola: posts in one another", { ...pergola, bays: 60 }, "bays", /60 bays over 16'/],
  // 6 × √2 − 2.121 = 6.364 in over the plate, and as far inside its face at 45°.
  ...[[gable, "eave"] as const, [hip, "eave"] as const, [shed, "low"] as const].map(
    ([one, side]) =>
      [
        `${one.kind}: a square tail cut back past the seat`,
        { ...one, ...steep, overhang: { [side]: "0 in" } },
        `overhang/${side}`,
        /6 3\/8 in inside .* seat of 2 1\/8 in/,
      ] as const,
  ),
  [
    "gable: a square tail that takes the seat of the far side alone",
    { ...gable, ...steep, overhang: { farEave: "3 in" } },
    "overhang/farEave",
    /3\/8 in inside/,
  ],
  ...[gable, shed, pergola].map(
    (one) =>
      [
        `${one.kind}: two rows of posts in one another`,
        { ...one, span: "9 in" },
        "span",
        /two posts are wide \(12 in\)/,
      ] as const,
  ),
  // 24 ft less a post of 6 in, in 12 bays: 282 ÷ 12 = 23.5 in.
  [
    "gable: footings in one another",
    { ...gable, bays: 12, footings: { frostDepth: "36 in", diameter: "48 in" } },
    "footings/diameter",
    /48 in .* 23 1\/2 in apart/,
  ],
  // Across the ends, in 8 bays: (96 − 6) ÷ 8 = 11.25 in; along them 8 ft and more.
  [
    "lean-to: footings of an end in one another",
    { ...shed, endBays: 8, footings: { frostDepth: "36 in", diameter: "12 in" } },
    "footings/diameter",
    /12 in .* 11 1\/4 in apart/,
  ],
  [
    "pergola: a footing narrower than its post",
    { ...pergola, footings: { frostDepth: "36 in", diameter: "2 in" } },
    "footings/diameter",
    /2 in is narrower .*6 in/,
  ],
  // 8 ft to the plate's top less a beam of 8 in; a tie runs from face to face; four bays of 8 ft less a post, in two pieces.
  ...(
    [
      [gable, "posts", /7' 4" is the least/],
      [gable, "gable-beams", /16' is the least/],
      [gable, "ties", /16' is the least/],
      [gable, "beams", /is the least/],
      [gable, "ridge", /is the least/],
      [gable, "purlins", /is the least/],
      [gable, "eave-fascia", /is the least/],
      [gable, "rake-fascia", /is the least/],
      [gable, "braces", /3' 6 7\/16" is the least/],
      [shed, "low-posts", /6' 4" is the least/],
      [shed, "low-beams", /is the least/],
      [shed, "end-beams", /8' is the least/],
      [hip, "end-beams", /8' is the least/],
      [pergola, "posts", /7' 4" is the least/],
    ] as const
  ).map(
    ([one, group, limit]) =>
      [
        `${one.kind}: ${group} that do not reach`,
        { ...one, ...long(group, "1 ft") },
        `groups/${group}/length`,
        limit,
      ] as const,
  ),
];

describe("what cannot be built", () => {
  it.each(ROWS)("%s", async (_, structure, pointer, limit) => {
    const problem = await refused({ structure }, "/v1/takeoffs");
    expect(problem.status).toBe(422);
    const fault = problem.faults?.find((one) => one.pointer === `/structure/${pointer}`);
    expect(problem.faults?.map((one) => one.pointer)).toContain(`/structure/${pointer}`);
    expect(fault?.wrong).toMatch(limit);
    expect(fault?.cure).toMatch(/\w/);
  });

  it("asks where all openings are to stand where one has a place and another finds none", async () => {
    const openings = (from?: string) => [
      { width: "4 ft", height: "7 ft", ...(from && { from }) },
      { width: "3 ft", height: "3 ft", sill: "3 ft", from: "2 ft" },
    ];
    const end = (from?: string) => ({ ...gable, walls: { sides: [{ side: "left", openings: openings(from) }] } });
    const wide = { span: "24 ft", endBays: 1 };
    const problem = await refused({ structure: { ...end(), span: "8 ft", endBays: 1 } }, "/v1/takeoffs");
    expect(problem.faults?.map(({ cure }) => cure).join()).toMatch(/say "from" for the others, too/);
    expect((await takenOff({ structure: { ...end("12 ft"), ...wide } })).cutList.pieces.value).toMatch(/^\d+$/);
  });

  it("is not a close spacing where boards, not purlins, carry the covering", async () => {
    const boards = await takenOff({ structure: { ...gable, purlinSpacing: "4 in", deck: { kind: "solid-boards" } } });
    expect(boards.cutList.groups.map(({ name }) => name)).not.toContain("purlins");
  });

  it("is said once where a spacing is changed to nothing", async () => {
    for (const structure of [gable, shed, hip, pergola]) {
      const problem = await refused({ structure, overrides: { "frame.rafterSpacing": "0 in" } }, "/v1/takeoffs");
      expect([structure.kind, problem.faults?.map((one) => one.pointer)]).toEqual([
        structure.kind,
        ["/overrides/frame.rafterSpacing"],
      ]);
    }
  });

  it("is not a square tail with the least overhang that the refusal says", async () => {
    const square = { ...gable, ...steep };
    const cureOf = async (eave: string) =>
      (await refused({ structure: { ...square, overhang: { eave } } }, "/v1/takeoffs")).faults?.[0]?.cure;
    // 6.364 in × 12 × 12 ÷ (12² + 12²) = 3.182 in, up to the next eighth.
    expect(await cureOf("0 in")).toBe("Give an overhang of 3 1/4 in or more, or a plumb tail.");
    expect(await cureOf("3.18 in")).toMatch(/3 1\/4 in/);
    const { cutList } = await takenOff({ structure: { ...square, overhang: { eave: "3.25 in" } } });
    expect(cutList.groups.map(({ name }) => name)).toContain("rafters");
    const plumb = { ...square, rafterTail: "plumb", overhang: { eave: "0 in" } };
    expect((await takenOff({ structure: plumb })).cutList.groups.length).toBeGreaterThan(0);
  });

  it("is not a length that reaches, or one of which enough pieces are given", async () => {
    for (const groups of [
      { posts: { length: "12 ft" }, ties: { length: "16 ft" } },
      { purlins: { length: "4 ft", count: 200 } },
      { braces: { length: "3.535 ft" } }, // 30 in × √2 = 42.426 in, less than a tape's sixteenth more
    ]) {
      expect((await takenOff({ structure: { ...gable, groups } })).cutList.groups.length).toBeGreaterThan(0);
    }
    const few = { ...gable, groups: { purlins: { length: "4 ft", count: 10 } } };
    const problem = await refused({ structure: few }, "/v1/takeoffs");
    expect(problem.faults?.[0]?.pointer).toBe("/structure/groups/purlins/length");
  });

  it("is a length that an override makes too short", async () => {
    for (const name of ["rafter.lineLength", "rafter.stockLength", "pieces.posts.length"]) {
      const problem = await refused({ structure: gable, overrides: { [name]: "6 in" } }, "/v1/takeoffs");
      expect(problem.faults).toMatchObject([{ pointer: `/overrides/${name}`, code: "cannot-build" }]);
      expect(problem.faults?.[0]?.wrong).toMatch(/6"/);
    }
  });

  it("is the same in metres", async () => {
    const problem = await refused({ structure: { kind: "gable", span: "5 m", length: "7 m", rafterSpacing: "10 mm" } });
    expect(problem.faults).toMatchObject([{ pointer: "/structure/rafterSpacing" }]);
    expect(problem.faults?.[0]?.wrong).toMatch(/10 mm.*50 mm/);
  });
});
