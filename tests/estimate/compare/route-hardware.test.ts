/** Hardware made for pieces of one size: each route has what fits its own. */
import { describe, expect, it } from "vitest";
import type { RouteCells } from "../../../src/estimate/compare/route.js";
import type { Estimate } from "../../../src/estimate/estimate.js";
import { DEMOS, demoBody, demoCatalog, estimated } from "../../helpers/estimating.js";

/** Lines of fasteners of a route with those that all have: label, how many, and amount. */
const hardware = ({ common }: Estimate, { lines }: RouteCells): string[] =>
  [...common.lines, ...lines]
    .filter(({ department }) => department === "fasteners")
    .map(({ label, quantity, amount }) => `${label}: ${quantity.value.toFixed()} for ${amount?.value.toFixed()}`)
    .sort();

const countOf = (route: RouteCells, what: RegExp): number =>
  route.lines.filter(({ label }) => what.test(label)).reduce((sum, { quantity }) => sum + quantity.value.toNumber(), 0);

const leanTo = { structure: { kind: "lean-to", span: "10 ft", length: "14 ft" }, catalog: { demo: "orchard-yard" } };
const logs = (count: number) => [
  { name: "pine", species: "eastern-white-pine", length: "9 ft", smallDiameter: "11 in", count },
];

/** Posts of pine on footings, and what is built beside them. */
const posts = (more: object) => ({
  name: "posts",
  role: "post",
  length: "8 ft",
  species: ["eastern-white-pine"],
  ...more,
});
const onFootings = (...pieces: object[]) => ({ kind: "pieces", pieces, footings: { frostDepth: "24 in" } });

describe("hardware of what is bought", () => {
  const bodies: readonly (readonly [string, object])[] = [
    ...DEMOS.map((name) => [name, demoBody(name)] as const),
    ["a lean-to", { ...leanTo, logs: logs(6) }],
  ];

  it.each(bodies)("is in %s what it would be without logs", (_, { logs: some, ...without }: { logs?: unknown }) => {
    const [made, plain] = [estimated({ ...without, logs: some }), estimated(without)];
    expect(hardware(made, made.routes.buy)).toEqual(hardware(plain, plain.routes.buy));
  });
});

describe("posts of which some are milled", () => {
  const made = estimated({
    structure: onFootings(posts({ count: 8, section: "6 x 6 in" })),
    logs: logs(3),
    catalog: { demo: "orchard-yard" },
    options: { mixedSizes: true },
  });
  const mill = made.routes.mill as RouteCells;
  const milled = made.basis.sheet.find("milled.sawn.posts")?.value.toNumber() ?? 0;

  it("stand each on a base of its own size, held by bolts of its own length", () => {
    expect([milled > 0, milled < 8]).toEqual([true, true]);
    expect(countOf(mill, /^Post base 6 × 6 in/)).toBe(milled);
    expect(countOf(mill, /^Post base 5 1\/2 × 5 1\/2 in/)).toBe(8 - milled);
    // Two bolts a base, a twentieth of them spare, none of them in parts.
    expect(countOf(mill, /^Hexagon-head bolt 1\/2 × 8 in/)).toBe(Math.ceil(2 * milled * 1.05));
    expect(countOf(mill, /^Hexagon-head bolt 1\/2 × 7 in/)).toBe(Math.ceil(2 * (8 - milled) * 1.05));
    expect(countOf(made.routes.buy, /^Post base 5 1\/2/)).toBe(8);
    expect(countOf(made.routes.buy, /^Post base 6/)).toBe(0);
  });

  it("are counted in the schedule as laid out, and as bought", () => {
    const line = made.takeoffs.fasteners?.lines.find(({ kind }) => kind === "post-base");
    const sizes = (items: readonly { fastener: string; count: { value: { toNumber(): number } } }[] | undefined) =>
      items?.map(({ fastener, count }) => [fastener, count.value.toNumber()]);
    expect(sizes(line?.fitted?.milled)).toEqual([
      ["post-base", 8],
      ["hex-bolt", 16],
    ]);
    expect(sizes(line?.fitted?.bought)).toEqual([
      ["post-base", 8],
      ["hex-bolt", 16],
    ]);
  });
});

describe("bolts of one size", () => {
  // 1/2 in bolts of 7 in also hold the splices of 6 in beams.
  const pieces = [
    posts({ count: 4, section: "6 x 6 in" }),
    {
      name: "beams",
      role: "beam",
      joint: "splice",
      runs: 2,
      count: 4,
      section: "6 x 8 in",
      length: "8 ft",
      source: "buy",
      buyAs: "treated-6x6",
    },
  ];
  const { routes, common } = estimated({
    structure: onFootings(...pieces),
    logs: logs(4),
    catalog: { demo: "orchard-yard" },
  });

  it("are bought together, whichever joints they hold", () => {
    for (const route of [routes.buy, routes.mill as RouteCells]) {
      const labels = [...common.lines, ...route.lines].flatMap(({ label, department }) =>
        department === "fasteners" ? [label.replace(/,.*/, "")] : [],
      );
      expect(new Set(labels).size).toBe(labels.length);
    }
  });
});

describe("hardware of which only one size has a price", () => {
  const body = { structure: onFootings(posts({ count: 4, section: "4 x 4 in", length: "7 ft" })), logs: logs(8) };
  const bases = (catalog: object) => {
    const made = estimated({ ...body, catalog });
    const lines = (route: RouteCells) =>
      [...made.common.lines, ...route.lines].flatMap(({ label, amount }) =>
        /^Post base/.test(label) ? [`${label.split(" in,")[0]} ${amount ? "priced" : "no price"}`] : [],
      );
    const told = made.notices.filter(({ code }) => code === "bought-size").map(({ text }) => text);
    return { ways: [made.routes.buy, made.routes.mill as RouteCells].map(lines), told, made };
  };
  const yard = demoCatalog("orchard-yard") as { fasteners: object[] };

  it("is ordered on every way as laid out, so that a price that is missing decides nothing", () => {
    const { ways, made } = bases(yard);
    expect(ways).toEqual([["Post base 4 × 4 no price"], ["Post base 4 × 4 no price"]]);
    expect(made.routes.buy.unpriced).toBe(made.routes.mill?.unpriced);
  });

  it("is each way's own once both have one", () => {
    const base = { name: "rough-base", kind: "post-base", fits: "4 x 4 in", packs: [{ count: 1, price: "$21.98" }] };
    const sized = { ...base, label: "post base for rough 4 x 4", finish: "hot-dip-galvanized" };
    const { ways, told } = bases({ ...yard, fasteners: [...yard.fasteners, sized] });
    expect(ways).toEqual([["Post base 3 1/2 × 3 1/2 priced"], ["Post base 4 × 4 priced"]]);
    expect(told).toEqual([]);
  });
});

describe("sizes", () => {
  const basesOf = (more: object) => {
    const made = estimated({
      structure: onFootings(posts({ count: 6, ...more })),
      logs: logs(12),
      catalog: { demo: "orchard-yard" },
    });
    return [made.routes.buy, ...(made.routes.mill ? [made.routes.mill] : [])].map((route) =>
      [...made.common.lines, ...route.lines].flatMap(({ label, quantity }) =>
        /^(Post base|Hexagon-head)/.test(label) ? [`${label.split(",")[0]}: ${quantity.value.toFixed()}`] : [],
      ),
    );
  };

  it.each([
    ["that differ by less than half a millimetre are one", { section: "140 x 140 mm" }],
    ["are those wanted where what is sold is ripped down", { section: "5 x 5 in" }],
    [
      "are those wanted where what is sold is dressed down",
      { section: "5 1/2 x 5 1/2 in", surface: "dressed", buyAs: "pine-rough-6x6" },
    ],
    ["do not depend on which side is written first", { section: "6 x 4 in", buyAs: "pine-rough-4x6" }],
  ])("%s", (_, more) => {
    const [bought, milled] = basesOf(more);
    expect(bought).toEqual(milled);
    expect(bought?.length).toBe(2);
  });

  it("of a list are those that are sold where its posts can only be bought", () => {
    const [bought] = basesOf({ section: "6 x 6 in", source: "buy" });
    expect(bought).toEqual(["Post base 5 1/2 × 5 1/2 in: 6", "Hexagon-head bolt 1/2 × 7 in: 13"]);
  });
});

it("asks for nothing of a size of which the logs give no piece", () => {
  const long = posts({ count: 4, section: "6 x 6 in", length: "10 ft" });
  const rails = { ...long, name: "rails", role: "other", section: "2 x 4 in", length: "8 ft" };
  const { routes } = estimated({
    structure: onFootings(long, rails),
    logs: logs(4), // 9 ft
    catalog: { demo: "orchard-yard" },
  });
  const mill = routes.mill as RouteCells;
  expect(mill.plan.sawn.has("rails")).toBe(true);
  expect([countOf(mill, /^Post base 6 ×/), countOf(mill, /^Post base 5 1\/2/)]).toEqual([0, 4]);
  expect(mill.lines.some(({ label, quantity }) => /^(Post|Hexagon)/.test(label) && quantity.value.isZero())).toBe(
    false,
  );
});
