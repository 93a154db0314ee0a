/** Connections and footings of random structures against a walk: every piece laid down, and what it meets counted one by one. */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { layBasis } from "../../src/estimate/basis.js";
import type { Cell } from "../../src/estimate/sheet/expression.js";
import { Sheet } from "../../src/estimate/sheet/sheet.js";
import { layTakeoffs, type Takeoffs } from "../../src/estimate/takeoffs.js";
import { request } from "../helpers/estimating.js";
import {
  braceCount,
  centres,
  jackPlaces,
  postLine,
  postPlaces,
  rowCount,
  type Sizes,
  wallLine,
} from "../judges/frame-walker.js";
import { crossedBy, hipRowsOf, tileRows } from "../judges/hip-rows-walker.js";

const RUNS = 220;
const SEED = 20_261_127;
const half = (least: number, most: number) => fc.integer({ min: least * 2, max: most * 2 }).map((n) => n / 2);

const drawn = fc.record({
  kind: fc.constantFrom<Sizes["kind"]>("gable", "lean-to", "ledger", "hip", "pergola"),
  span: half(96, 240),
  longer: half(0, 240),
  end: half(0, 36),
  bays: fc.integer({ min: 1, max: 4 }),
  /** Share of the length that the first bay has, in hundredths; bays alike where absent. */
  first: fc.option(fc.integer({ min: 15, max: 45 }), { nil: undefined }),
  frost: half(0, 48),
  hole: half(8, 24),
  precast: fc.boolean(),
  endBays: fc.integer({ min: 1, max: 3 }),
  rafterSpacing: half(12, 36),
  purlinSpacing: half(12, 36),
  longest: half(72, 240),
  beam: fc.boolean(),
  floor: fc.boolean(),
  /** Boards of 6 in edge to edge in place of purlins. */
  boarded: fc.boolean(),
  slats: half(6, 24),
  short: fc.boolean(),
});

type Drawn = typeof drawn extends fc.Arbitrary<infer T> ? T : never;

const inches = (n: number) => `${n} in`;

/** In whole half inches; another bay takes what it leaves. */
const firstBay = (d: Drawn): number => Math.floor(((d.span + d.longer) * (d.first ?? 0)) / 50) / 2;

/** The shortest bay along the eaves, posts of 6 in apart, centres. */
function shortestBay(d: Drawn): number {
  const reach = d.span + d.longer - 6;
  return d.first === undefined ? reach / d.bays : Math.min(firstBay(d), reach - firstBay(d));
}

/** As drawn, or as wide as the nearest posts leave room for. */
const holeOf = (d: Drawn): number =>
  Math.min(d.hole, Math.floor(2 * Math.min(shortestBay(d), (d.span - 6) / d.endBays)) / 2);

/** Ends reach no further past the end posts than the bay behind them. */
const draw = drawn.map((d): Drawn => ({ ...d, end: Math.min(d.end, Math.floor(2 * shortestBay(d)) / 2) }));

function bodyOf(d: Drawn) {
  const shared = {
    span: inches(d.span),
    length: inches(d.span + d.longer),
    rafterSpacing: inches(d.rafterSpacing),
    longestPiece: inches(d.longest),
    ...(d.first === undefined ? { bays: d.bays } : { bayLengths: [inches(firstBay(d))] }),
    footings: { frostDepth: inches(d.frost), diameter: inches(holeOf(d)), kind: d.precast ? "precast" : "poured" },
    ...(d.floor ? { floor: {} } : {}),
  };
  if (d.kind === "pergola") {
    return {
      kind: "pergola",
      ...shared,
      slatSpacing: inches(d.slats),
      overhang: { side: "12 in", end: inches(d.end) },
    };
  }
  const roof = {
    ...shared,
    slope: { rise: "8 in", run: "12 in" },
    endBays: d.endBays,
    purlinSpacing: inches(d.purlinSpacing),
    ...(d.boarded ? { deck: { kind: "solid-boards" }, groups: { "deck-boards": { section: "1 x 6 in" } } } : {}),
  };
  if (d.kind === "hip") {
    return { kind: "hip", ...roof, overhang: { eave: "12 in" }, rafterBays: d.short ? "short-last" : "equal" };
  }
  if (d.kind === "gable") {
    return {
      kind: "gable",
      ...roof,
      overhang: { eave: "12 in", gable: inches(d.end) },
      ridge: d.beam ? "beam" : "board",
    };
  }
  const highSide = d.kind === "ledger" ? "ledger" : "posts";
  const high = d.kind === "ledger" ? {} : { high: "12 in" };
  return { kind: "lean-to", ...roof, highSide, overhang: { low: "12 in", ...high, end: inches(d.end) } };
}

/** Rafters' middles along the roof, fly rafters included. */
function rafterLines(d: Drawn): number[] {
  if (d.kind === "pergola") return centres(d.span + d.longer + 2 * d.end, 2, d.rafterSpacing).map((y) => y - d.end);
  const inner = centres(d.span + d.longer, 2, d.rafterSpacing);
  return d.end >= 2 ? [1 - d.end, ...inner, d.span + d.longer + d.end - 1] : inner;
}

/** Pieces of a run laid end to end, and the rafters under each: two at a joint lie on the same one. */
function crossed(d: Drawn, pieces: readonly number[]): number {
  let [at, count] = [-d.end, 0];
  for (const length of pieces) {
    const [from, to] = [at - 1e-4, at + length + 1e-4];
    count += rafterLines(d).filter(
      (line) => line + 1 > from && line - 1 < to && line > from - 1 && line < to + 1,
    ).length;
    at += length;
  }
  return count;
}

/** An order in which the pieces of a run can lie so that every joint is over the middle of a support. */
function inOrder(supports: readonly number[], pieces: readonly number[], at: number): number[] | undefined {
  if (pieces.length < 2) return [...pieces];
  for (const [i, length] of pieces.entries()) {
    if (pieces.indexOf(length) < i) continue;
    const joint = at + length;
    if (!supports.some((support) => Math.abs(support - joint) < 1e-3)) continue;
    const rest = inOrder(
      supports,
      pieces.filter((_, j) => j !== i),
      joint,
    );
    if (rest) return [length, ...rest];
  }
  return undefined;
}

type Of = (...names: readonly string[]) => number;
type Groups = Laid["cutList"]["groups"];

/** Sizes as the walk has them; what is not asked for is the service's own by default. */
const sizesOf = (d: Drawn) =>
  ({
    ...{ ...d, length: d.span + d.longer, post: 6, near: 12, rise: 8, ridge: 2, purlin: 4, endPurlin: 4 },
    ...{
      unlike: d.first === undefined ? undefined : [firstBay(d), d.span + d.longer - 6 - firstBay(d)],
      rafter: { thick: 2, deep: 6 },
    },
    ...{ beam: { thick: 4, deep: 8 }, hip: { thick: 2, deep: 8 } },
  }) as unknown as Sizes;

/** Posts, their beams and braces, and what holds the floor: by walking round the frame. */
function checkPosts(d: Drawn, s: Sizes, of: Of): void {
  const posts = postPlaces(d.kind === "pergola" ? { ...s, endBays: 1 } : s);
  const rows = d.kind === "lean-to" || d.kind === "ledger" ? ["low-posts", "high-posts"] : ["posts"];
  for (const end of ["post-base", "post-top"]) {
    expect(of(...[...rows, "end-posts"].map((name) => `${name}.${end}`))).toBe(posts.rows + posts.ends);
  }
  expect(of("braces.brace")).toBe(2 * braceCount(s));
  // A tie from one plate to the other below every pair of posts; of a hip none at its ends, where beams go across.
  const pairs = { gable: d.bays + 1, hip: d.bays - 1, "lean-to": 2, ledger: 2, pergola: 0 }[d.kind];
  expect(of("ties.lap", "gable-beams.lap", "end-beams.lap")).toBe(pairs * (d.kind === "ledger" ? 1 : 2));
  expect(of("end-beams.hanger")).toBe(d.kind === "ledger" ? 2 : 0);
  // At a wall there are no posts to bolt a bearer to.
  const rowsOfPosts = d.kind === "ledger" ? 1 : 2;
  expect(of("bearers.bearer-post")).toBe(d.floor ? rowsOfPosts * (d.bays + 1) : 0);
  expect(of("joists.joist-seat")).toBe(d.floor ? 2 * centres(s.length, 2, 16).length : 0);
}

/** Joints within runs on posts: as many as pieces have to be joined so that the run is as long as its side. */
function checkSplices(d: Drawn, s: Sizes, groups: Groups, of: Of): void {
  const past = d.kind === "hip" ? 0 : d.end;
  const runs = {
    gable: ["beams"],
    hip: ["beams", "end-beams"],
    pergola: ["beams"],
    "lean-to": ["low-beams", "high-beams"],
    ledger: ["low-beams"],
  };
  for (const base of [...runs[d.kind], ...(d.floor ? ["bearers"] : [])]) {
    const line = base === "end-beams" ? wallLine(s.span, s.post, s.endBays) : postLine(s);
    const whole = base === "end-beams" ? s.span : s.length + 2 * (base === "bearers" ? 0 : past);
    const from = base === "end-beams" || base === "bearers" ? 0 : -past;
    const each = d.kind === "lean-to" || d.kind === "ledger" ? 1 : 2;
    const sides = base === "bearers" && d.kind !== "ledger" ? 2 : each;
    const pieces = piecesOf(groups, base, sides);
    const ordered = inOrder(line, pieces, from);
    expect([base, ordered?.reduce((a, b) => a + b, 0)]).toEqual([base, expect.closeTo(whole, 6)]);
    expect([base, of(`${base}.splice`)]).toEqual([base, sides * (pieces.length - 1)]);
  }
}

/** Pieces of one of so many runs alike, in inches. */
function piecesOf(groups: Groups, base: string, runs: number): number[] {
  return groups
    .filter(({ name }) => name === base || name.startsWith(`${base}-`))
    .flatMap(({ count, length }) => {
      const each = count.value.toNumber() / runs;
      expect(Number.isInteger(each)).toBe(true);
      return Array.from({ length: each }, () => length.value.toNumber() / 25.4);
    });
}

/** Straight slopes: what rafters sit on and lean on, and every row that crosses them. */
function checkSlopes(d: Drawn, s: Sizes, basis: Laid, of: Of): void {
  const fly = d.end >= 2 ? 2 : 0;
  const rafters = centres(s.length, 2, d.rafterSpacing).length;
  const sides = d.kind === "gable" ? 2 : 1;
  const seats = d.kind === "lean-to" ? 2 : 1;
  expect(of("rafters.rafter-plate", "fly-rafters.rafter-plate")).toBe(sides * seats * (rafters + fly));
  expect(of("rafters.rafter-ridge", "fly-rafters.rafter-ridge")).toBe(d.kind === "gable" ? 2 * (rafters + fly) : 0);
  expect(of("rafters.hanger", "fly-rafters.hanger")).toBe(d.kind === "ledger" ? rafters + fly : 0);
  const kings = basis.cutList.groups.some(({ name }) => name === "king-posts");
  expect(of("king-posts.post-top")).toBe(kings ? 2 * (d.bays + 1) : 0);
  // Rows: the pieces of one, in an order in which they can lie, from the cut list.
  const level = d.kind === "gable" ? d.span / 2 - basis.sheet.in(ridgeOf(basis), "in").toNumber() / 2 : topOf(d);
  const up = (level + 12) * (Math.hypot(12, 8) / 12);
  const base = d.boarded ? "deck-boards" : "purlins";
  const all = sides * (d.boarded ? Math.ceil(up / 6 - 1e-7) : rowCount(up, 4, d.purlinSpacing));
  const ordered = inOrder(rafterLines(d), piecesOf(basis.cutList.groups, base, all), -d.end);
  expect(ordered).toBeDefined();
  expect(of(`${base}.crossing`)).toBe(all * crossed(d, ordered ?? []));
}

/** Commons, hips and jacks one by one, and purlins laid out again in their rows. */
function checkHip(d: Drawn, s: Sizes, { cutList: { groups } }: Laid, of: Of): void {
  const commons = d.longer === 0 ? 1 : centres(d.longer, 0, d.rafterSpacing).length;
  const jacks = 8 * jackPlaces(s).length;
  for (const end of ["rafter-plate", "rafter-ridge"]) {
    expect(of(`rafters.${end}`)).toBe(2 * commons);
    expect(of(`end-rafters.${end}`)).toBe(2);
    expect(of(`hips.${end}`)).toBe(4);
    expect(of(`jacks.${end}`)).toBe(jacks);
  }
  if (d.boarded) return;
  for (const side of ["side", "end"] as const) {
    const { rows, rafters } = hipRowsOf(s, side);
    const stock = groups
      .filter(({ name }) => name.startsWith(`${side}-purlins`))
      .map(({ length, count }) => ({ length: length.value.toNumber() / 25.4, count: count.value.toNumber() / 2 }));
    const tiled = tileRows(rows, rafters, stock);
    expect(tiled).toBeDefined();
    expect(of(`${side}-purlins.crossing`)).toBe(2 * crossedBy(tiled ?? [], rafters));
  }
}

/** Level rafters on both beams, slats across them. */
function checkPergola(d: Drawn, { cutList: { groups } }: Laid, of: Of): void {
  expect(of("rafters.rafter-plate")).toBe(2 * rafterLines(d).length);
  const rows = centres(d.span + 24, 2, d.slats).length;
  const ordered = inOrder(rafterLines(d), piecesOf(groups, "slats", rows), -d.end);
  expect(ordered).toBeDefined();
  expect(of("slats.crossing")).toBe(rows * crossed(d, ordered ?? []));
}

describe("connections at random", () => {
  it(`are what a walk over the frame meets, ${RUNS} times`, { timeout: 120_000 }, () => {
    const kinds = new Map<string, number>();
    fc.assert(
      fc.property(draw, (drawn) => {
        const longer = drawn.kind === "hip" && drawn.longer <= 2 ? 0 : drawn.longer;
        const d = { ...drawn, longer, ...(drawn.first === undefined ? {} : { bays: 2 }) };
        const basis = layBasis(new Sheet(new Map()), request({ structure: bodyOf(d) }));
        const { fasteners, footings } = layTakeoffs(basis);
        const sites = new Map((fasteners?.lines ?? []).map((line) => [line.name, line.sites.value.toNumber()]));
        const of: Of = (...names) => names.reduce((sum, name) => sum + (sites.get(name) ?? 0), 0);
        const s = sizesOf(d);
        const posts = postPlaces(d.kind === "pergola" ? { ...s, endBays: 1 } : s);
        checkFootings(d, posts.rows + posts.ends, footings, basis.sheet);
        checkPosts(d, s, of);
        checkSplices(d, s, basis.cutList.groups, of);
        if (d.kind === "hip") checkHip(d, s, basis, of);
        else if (d.kind === "pergola") checkPergola(d, basis, of);
        else checkSlopes(d, s, basis, of);
        kinds.set(d.kind, (kinds.get(d.kind) ?? 0) + 1);
      }),
      { numRuns: RUNS, seed: SEED },
    );
    expect(kinds.size).toBe(5);
    for (const count of kinds.values()) expect(count).toBeGreaterThan(RUNS / 10);
  });
});

/** One hole a post, at least a foot deep; concrete stands out of it by 4 in on a bed of 4 in, a block stands on gravel. */
function checkFootings(d: Drawn, posts: number, footings: Takeoffs["footings"], sheet: Sheet): void {
  if (!footings) throw new Error("no footings");
  const feet3 = (cell: Cell | undefined) => (cell ? sheet.in(cell, "ft3").toNumber() : 0);
  expect(footings.holes.value.toNumber()).toBe(posts);
  const depth = Math.max(12, d.frost);
  const circle = Math.PI * (holeOf(d) / 2) ** 2;
  const waste = feet3(footings.gravel) / ((posts * circle * (d.precast ? depth : 4)) / 1728);
  expect(waste).toBeGreaterThan(1);
  expect(waste).toBeLessThan(1.3);
  expect(feet3(footings.dug)).toBeCloseTo((posts * circle * (depth + (d.precast ? 0 : 4))) / 1728, 6);
  expect(feet3(footings.concrete)).toBeCloseTo(d.precast ? 0 : (posts * circle * (depth + 4) * waste) / 1728, 6);
  // Tubes of 16 in, one after the other out of 4 ft.
  let [tubes, left] = [0, 0];
  for (let post = 0; post < (d.precast ? 0 : posts); post++) {
    if (left < 16) [tubes, left] = [tubes + 1, 48];
    left -= 16;
  }
  expect(footings.tube?.ordered.value.toNumber() ?? 0).toBe(tubes);
}

type Laid = ReturnType<typeof layBasis>;

function ridgeOf({ cutList }: Laid) {
  const ridge = cutList.groups.find(({ role }) => role === "ridge");
  if (!ridge) throw new Error("no ridge");
  return ridge.thickness;
}

/** A free-standing slope reaches 12 in past its high beam, one at a wall to the face of its ledger of 2 in. */
const topOf = (d: Drawn): number => (d.kind === "ledger" ? d.span - 2 : d.span + 12);
