/**
 * Whole takeoffs of random structures and of their mirror images: pieces, fasteners and packs, footings, covering, finish and
 * cans, weights and hours. Names and labels may differ, where they say near or far; no figure may.
 */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { layBasis } from "../../src/estimate/basis.js";
import { layShoppingList } from "../../src/estimate/purchase/shopping-list.js";
import type { StructureShape } from "../../src/estimate/request/structure-kinds.js";
import { Sheet } from "../../src/estimate/sheet/sheet.js";
import { layTakeoffs } from "../../src/estimate/takeoffs.js";
import { request } from "../helpers/estimating.js";
import { bodyOf, type Draw, draw, inches, SEED } from "./random-structure.js";

/** Of the structures that are walked, the first of them: the same seed draws the same ones. */
const RUNS = 300;

/** Names tell one side from the other; what was laid from what is no takeoff. */
const NOT_COMPARED = new Set([
  "name",
  "label",
  "group",
  "groups",
  "joins",
  "at",
  "work",
  "source",
  "cell",
  "stage",
  "prefix",
]);

const isCell = (of: object): of is { readonly value: { toDecimalPlaces(n: number): object }; readonly unit: object } =>
  "value" in of && "unit" in of && "kind" in of;

/** Every figure of a takeoff as a line of its own; what stands in a list, in whatever order. */
function figures(of: unknown): unknown {
  if (typeof of !== "object" || of === null) return of;
  if (of instanceof Map) return figures([...of.values()]);
  if (Array.isArray(of)) return of.map((one) => JSON.stringify(figures(one))).sort();
  if (isCell(of)) return of.value.toDecimalPlaces(9).toString();
  const kept = Object.entries(of).filter(([key]) => !NOT_COMPARED.has(key));
  return Object.fromEntries(kept.map(([key, value]) => [key, figures(value)]));
}

const ON_PURLINS = ["ribbed-steel", "corrugated-steel", "polycarbonate"] as const;
const ON_CLOSED = [
  "ribbed-steel",
  "asphalt-shingles",
  "standing-seam-steel",
  "membrane",
  "tile",
  "wood-shakes",
] as const;

/** A covering that the deck carries, by the drawn span; several of each form come up. */
function coveringOf({ deck, sizes }: Draw): string {
  const closed = deck.kind === "solid-boards" || deck.kind === "sheets";
  const all = closed ? ON_CLOSED : ON_PURLINS;
  return all[(2 * sizes.span) % all.length] as string;
}

function takeoff(structure: StructureShape, drawn: Draw): { readonly lines: number; readonly all: unknown } {
  const covered = drawn.sizes.kind === "pergola" ? {} : { covering: coveringOf(drawn) };
  // As wide as the posts: those of short bays stand nearer than usual holes are wide.
  const footings = { frostDepth: "30 in", diameter: `${drawn.sizes.post} in` };
  const basis = layBasis(
    new Sheet(),
    request({
      structure: { ...structure, ...covered, footings },
      catalog: { demo: "orchard-yard" },
      options: { sealEnds: true },
    }),
  );
  const found = layTakeoffs(basis);
  const shopping = layShoppingList(basis.pricing, basis.catalog, found.needs, "inch-pound").map(({ line }) => line);
  const groups = basis.groups.map(({ group, weightEach }) => ({
    ...{ role: group.role, rules: group.rules, thickness: group.thickness, width: group.width },
    ...{ length: group.length, count: group.count, volume: group.volume, surface: group.surface, weightEach },
  }));
  const { pieceCount, volume, outline } = basis.cutList;
  return { lines: shopping.length, all: figures({ ...found, shopping, groups, pieceCount, volume, outline }) };
}

describe("mirrored structures at random", () => {
  it(`give equal takeoffs, ${RUNS} times`, { timeout: 600_000 }, () => {
    let lines = 0;
    const coverings = new Set<string>();
    fc.assert(
      fc.property(draw, (drawn) => {
        const [mine, other] = [false, true].map((mirror) => takeoff(bodyOf(drawn, inches, mirror), drawn));
        expect(other).toEqual(mine);
        lines += mine?.lines ?? 0;
        coverings.add(coveringOf(drawn));
      }),
      { numRuns: RUNS, seed: SEED },
    );
    expect(lines).toBeGreaterThan(RUNS * 10);
    expect(coverings.size).toBe(8);
  });
});
