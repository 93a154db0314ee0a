/** Connections of random gables and lean-tos against a walk: every piece laid down, and what it meets counted one by one. */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { layBasis } from "../../src/estimate/basis.js";
import type { Cell } from "../../src/estimate/sheet/expression.js";
import { Sheet } from "../../src/estimate/sheet/sheet.js";
import { layTakeoffs, type Takeoffs } from "../../src/estimate/takeoffs.js";
import { request } from "../helpers/estimating.js";
import { braceCount, centres, postPlaces, rowCount, type Sizes } from "../judges/frame-walker.js";

const RUNS = 150;
const SEED = 20_261_127;
const half = (least: number, most: number) => fc.integer({ min: least * 2, max: most * 2 }).map((n) => n / 2);

const draw = fc.record({
  kind: fc.constantFrom<"gable" | "lean-to" | "ledger">("gable", "lean-to", "ledger"),
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
});

type Drawn = typeof draw extends fc.Arbitrary<infer T> ? T : never;

const inches = (n: number) => `${n} in`;

/** In whole half inches; another bay takes what it leaves. */
const firstBay = (d: Drawn): number => Math.floor(((d.span + d.longer) * (d.first ?? 0)) / 50) / 2;

function bodyOf(d: Drawn) {
  const shared = {
    span: inches(d.span),
    length: inches(d.span + d.longer),
    slope: { rise: "8 in", run: "12 in" },
    ...(d.first === undefined ? { bays: d.bays } : { bayLengths: [inches(firstBay(d))] }),
    footings: { frostDepth: inches(d.frost), diameter: inches(d.hole), kind: d.precast ? "precast" : "poured" },
    endBays: d.endBays,
    rafterSpacing: inches(d.rafterSpacing),
    purlinSpacing: inches(d.purlinSpacing),
    longestPiece: inches(d.longest),
    ...(d.floor ? { floor: {} } : {}),
  };
  if (d.kind === "gable") {
    return {
      kind: "gable",
      ...shared,
      overhang: { eave: "12 in", gable: inches(d.end) },
      ridge: d.beam ? "beam" : "board",
    };
  }
  const highSide = d.kind === "ledger" ? "ledger" : "posts";
  const high = d.kind === "ledger" ? {} : { high: "12 in" };
  return { kind: "lean-to", ...shared, highSide, overhang: { low: "12 in", ...high, end: inches(d.end) } };
}

/** Rafters' middles along the roof, fly rafters included. */
function rafterLines(d: Drawn): number[] {
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

/** An order in which the pieces of a row can lie so that every joint is over the middle of a rafter. */
function inOrder(d: Drawn, pieces: readonly number[], at: number): number[] | undefined {
  if (pieces.length < 2) return [...pieces];
  for (const [i, length] of pieces.entries()) {
    if (pieces.indexOf(length) < i) continue;
    const joint = at + length;
    if (!rafterLines(d).some((line) => Math.abs(line - joint) < 1e-3)) continue;
    const rest = inOrder(
      d,
      pieces.filter((_, j) => j !== i),
      joint,
    );
    if (rest) return [length, ...rest];
  }
  return undefined;
}

describe("connections at random", () => {
  it(`are what a walk over the frame meets, ${RUNS} times`, { timeout: 120_000 }, () => {
    const kinds = new Set<string>();
    fc.assert(
      fc.property(draw, (drawn) => {
        const d = drawn.first === undefined ? drawn : { ...drawn, bays: 2 };
        const basis = layBasis(new Sheet(new Map()), request({ structure: bodyOf(d) }));
        const { fasteners, footings } = layTakeoffs(basis);
        const lines = fasteners?.lines ?? [];
        const sites = new Map(lines.map((line) => [line.name, line.sites.value.toNumber()]));
        const of = (names: readonly string[]) => names.reduce((sum, name) => sum + (sites.get(name) ?? 0), 0);
        const s = { ...d, length: d.span + d.longer, post: 6 } as unknown as Sizes;
        const posts = postPlaces(s);
        checkFootings(d, posts.rows + posts.ends, footings, basis.sheet);
        const rows = d.kind === "gable" ? ["posts"] : ["low-posts", "high-posts"];
        for (const end of ["post-base", "post-top"]) {
          expect(of([...rows, "end-posts"].map((name) => `${name}.${end}`))).toBe(posts.rows + posts.ends);
        }
        expect(of(["braces.brace"])).toBe(2 * braceCount(s));
        const fly = d.end >= 2 ? 2 : 0;
        const rafters = centres(s.length, 2, d.rafterSpacing).length;
        const sides = d.kind === "gable" ? 2 : 1;
        const seats = d.kind === "lean-to" ? 2 : 1;
        expect(of(["rafters.rafter-plate", "fly-rafters.rafter-plate"])).toBe(sides * seats * (rafters + fly));
        expect(of(["rafters.hanger", "fly-rafters.hanger"])).toBe(d.kind === "ledger" ? rafters + fly : 0);
        const ties = d.kind === "gable" ? d.bays + 1 : 2;
        expect(of(["ties.lap", "gable-beams.lap", "end-beams.lap"])).toBe(ties * (d.kind === "ledger" ? 1 : 2));
        expect(of(["end-beams.hanger"])).toBe(d.kind === "ledger" ? 2 : 0);
        const kings = basis.cutList.groups.some(({ name }) => name === "king-posts");
        expect(of(["king-posts.post-top"])).toBe(kings ? 2 * (d.bays + 1) : 0);
        expect(of(["bearers.bearer-post"])).toBe(d.floor ? 2 * (d.bays + 1) : 0);
        // Purlins: the pieces of one row, in an order in which they can lie, from the cut list.
        const purlins = basis.cutList.groups.filter(({ name }) => name.startsWith("purlins"));
        const level = d.kind === "gable" ? d.span / 2 - basis.sheet.in(ridgeOf(basis), "in").toNumber() / 2 : topOf(d);
        const perSlope = rowCount((level + 12) * (Math.hypot(12, 8) / 12), 4, d.purlinSpacing);
        const all = sides * perSlope;
        const pieces = purlins.flatMap((group) => {
          const each = group.count.value.toNumber() / all;
          expect(Number.isInteger(each)).toBe(true);
          return Array.from({ length: each }, () => basis.sheet.in(group.length, "in").toNumber());
        });
        const ordered = inOrder(d, pieces, -d.end);
        expect(ordered).toBeDefined();
        expect(of(["purlins.crossing"])).toBe(all * crossed(d, ordered ?? []));
        kinds.add(d.kind);
      }),
      { numRuns: RUNS, seed: SEED },
    );
    expect(kinds.size).toBe(3);
  });
});

/** One hole a post, at least a foot deep; concrete stands out of it by 4 in on a bed of 4 in, a block stands on gravel. */
function checkFootings(d: Drawn, posts: number, footings: Takeoffs["footings"], sheet: Sheet): void {
  if (!footings) throw new Error("no footings");
  const feet3 = (cell: Cell | undefined) => (cell ? sheet.in(cell, "ft3").toNumber() : 0);
  expect(footings.holes.value.toNumber()).toBe(posts);
  const depth = Math.max(12, d.frost);
  const circle = Math.PI * (d.hole / 2) ** 2;
  const waste = feet3(footings.gravel) / ((posts * circle * (d.precast ? depth : 4)) / 1728);
  expect(waste).toBeGreaterThan(1);
  expect(waste).toBeLessThan(1.3);
  expect(feet3(footings.dug)).toBeCloseTo((posts * circle * (depth + (d.precast ? 0 : 4))) / 1728, 6);
  expect(feet3(footings.concrete)).toBeCloseTo(d.precast ? 0 : (posts * circle * (depth + 4) * waste) / 1728, 6);
}

type Laid = ReturnType<typeof layBasis>;

function ridgeOf({ cutList }: Laid) {
  const ridge = cutList.groups.find(({ role }) => role === "ridge");
  if (!ridge) throw new Error("no ridge");
  return ridge.thickness;
}

/** A free-standing slope reaches 12 in past its high beam, one at a wall to the face of its ledger of 2 in. */
const topOf = (d: Drawn): number => (d.kind === "ledger" ? d.span - 2 : d.span + 12);
