/**
 * Random structures and their mirror images: all pieces, and of every second one the whole takeoff: fasteners, footings,
 * covering, finish, weights and hours, every figure that is laid; of some of them packs and cans as well. Names and labels may differ, where they say near or
 * far; no figure may. A structure whose mirror image is the very same request is not laid twice.
 */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { type Basis, layBasis } from "../../src/estimate/basis.js";
import { layShoppingList } from "../../src/estimate/purchase/shopping-list.js";
import type { StructureShape } from "../../src/estimate/request/structure-kinds.js";
import { Sheet } from "../../src/estimate/sheet/sheet.js";
import { layTakeoffs, type Takeoffs } from "../../src/estimate/takeoffs.js";
import { request } from "../helpers/estimating.js";
import { bodyOf, type Draw, draw, inches, SEED } from "./random-structure.js";

/** All that are walked: the same seed draws the same ones. */
const RUNS = 5000;

/** One of so many is taken off whole. */
const WHOLE = 2;

/** One of so many is priced, too. */
const PRICED = 50;

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
function coveringOf({ deck, sizes }: Draw): (typeof ON_PURLINS)[number] | (typeof ON_CLOSED)[number] {
  const closed = deck.kind === "solid-boards" || deck.kind === "sheets";
  const all = closed ? ON_CLOSED : ON_PURLINS;
  return all[(2 * sizes.span) % all.length] as (typeof all)[number];
}

/** The request as far as it is the same for all: read once. */
const read = (catalog: unknown) =>
  request({ structure: { kind: "gable", span: "16 ft", length: "24 ft" }, catalog, options: { sealEnds: true } });
const UNPRICED = read({ name: "none", currency: "USD" });
const AT_YARD = read({ demo: "orchard-yard" });

/** What all groups are, whatever they are called. */
const groupsOf = ({ groups }: Basis): string[] =>
  groups.map(({ group: { role, rules, thickness, width, length, count }, weightEach }) =>
    JSON.stringify(bare({ role, rules, thickness, width, length, count, weightEach })),
  );

/** What is ordered: items with their sizes and classes, and the lines of the shopping list. */
function ordered({ pricing, catalog }: Basis, { needs }: Takeoffs, priced: boolean): string[] {
  const items = needs.map(({ item, quantity }) => JSON.stringify(bare({ item, quantity })));
  if (!priced) return items;
  const lines = layShoppingList(pricing, catalog, needs, "inch-pound").map(({ line }) => line);
  return [
    ...items,
    ...lines.map(({ amount, quantity }) => `${amount?.value.toFixed()} for ${quantity.value.toFixed(9)}`),
  ];
}

type Amount = { readonly value: { toDecimalPlaces(n: number): object }; readonly unit: object };
const isAmount = (of: object): of is Amount => "value" in of && "unit" in of;

/** Amounts alone, not what their cells are called; what stands in a list, in whatever order. */
function bare(of: unknown): unknown {
  if (typeof of !== "object" || of === null) return of;
  if (Array.isArray(of)) return of.map((one) => JSON.stringify(bare(one))).sort();
  if (isAmount(of)) return of.value.toDecimalPlaces(9).toString();
  return Object.fromEntries(Object.entries(of).map(([key, one]) => [key, bare(one)]));
}

interface Takeoff {
  readonly figures: readonly string[];
  readonly groups: readonly string[];
  readonly orders: readonly string[];
}

function takeoff(structure: StructureShape, drawn: Draw, depth: "pieces" | "whole" | "priced"): Takeoff {
  const priced = depth === "priced";
  // As wide as the posts: those of short bays stand nearer than usual holes are wide.
  const footings = { frostDepth: "30 in", diameter: `${drawn.sizes.post} in` };
  const covered = structure.kind === "pieces" || structure.kind === "pergola" ? {} : { covering: coveringOf(drawn) };
  const whole = { ...structure, ...covered, footings } as StructureShape;
  const sheet = new Sheet();
  const basis = layBasis(sheet, { ...(priced ? AT_YARD : UNPRICED), structure: whole });
  if (depth === "pieces") return { figures: [], groups: groupsOf(basis).sort(), orders: [] };
  const before = sheet.cells.length;
  const found = layTakeoffs(basis);
  const laid = sheet.cells.slice(before);
  return {
    figures: laid.map(({ value, unit }) => `${value.toDecimalPlaces(9).toString()} ${unit.symbol}`).sort(),
    groups: groupsOf(basis).sort(),
    orders: ordered(basis, found, priced).sort(),
  };
}

describe("mirrored structures at random", () => {
  it(`give equal takeoffs, ${RUNS} times`, { timeout: 1_200_000 }, () => {
    let [run, laid, figures, orders] = [0, 0, 0, 0];
    const coverings = new Set<string>();
    fc.assert(
      fc.property(draw, (drawn) => {
        const [straight, mirrored] = [bodyOf(drawn, inches), bodyOf(drawn, inches, true)];
        run += 1;
        if (JSON.stringify(straight) === JSON.stringify(mirrored)) return;
        const depth = run % PRICED === 0 ? "priced" : run % WHOLE === 0 ? "whole" : "pieces";
        const [mine, other] = [takeoff(straight, drawn, depth), takeoff(mirrored, drawn, depth)];
        expect(other).toEqual(mine);
        if (depth === "pieces") return;
        laid += 1;
        figures += mine.figures.length;
        orders += mine.orders.length;
        coverings.add(coveringOf(drawn));
      }),
      { numRuns: RUNS, seed: SEED },
    );
    // Some are their own mirror images: a pergola, or a hip, of equal bays without a wall.
    expect(laid).toBeGreaterThan((0.8 * RUNS) / WHOLE);
    expect(figures).toBeGreaterThan(300 * laid);
    expect(orders).toBeGreaterThan(15 * laid);
    expect(coverings.size).toBe(8);
  });
});
