/**
 * Whole takeoffs of random structures, to be held against those of their mirror images: pieces, fasteners, footings,
 * covering, finish, weights and hours, every figure that is laid; where it is priced, packs and cans as well. Names and
 * labels are left out, where they say near or far.
 */
import { type Basis, layBasis } from "../../src/estimate/basis.js";
import { layShoppingList } from "../../src/estimate/purchase/shopping-list.js";
import { exactly } from "../../src/estimate/quantity/text.js";
import type { StructureShape } from "../../src/estimate/request/structure-kinds.js";
import type { Cell } from "../../src/estimate/sheet/expression.js";
import { Sheet } from "../../src/estimate/sheet/sheet.js";
import { layTakeoffs, type Takeoffs } from "../../src/estimate/takeoffs.js";
import { request } from "../helpers/estimating.js";
import type { Draw, Laid } from "./random-structure.js";

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
export function coveringOf({ deck, sizes }: Draw): (typeof ON_PURLINS)[number] | (typeof ON_CLOSED)[number] {
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

/** A takeoff in figures, beside what was laid. */
export interface Takeoff {
  readonly laid: Laid;
  /** Every figure of the takeoffs, by its name. */
  readonly cells: ReadonlyMap<string, Cell>;
  readonly groups: readonly string[];
  readonly orders: readonly string[];
}

/**
 * Takes a structure off, on footings and under a covering.
 * @param prices - At those of a yard: packs and cans, too, and boards in the widths that it sells.
 */
export function takenOff(structure: StructureShape, drawn: Draw, prices?: "priced"): Takeoff {
  const priced = prices === "priced";
  // As wide as the posts: those of short bays stand nearer than usual holes are wide.
  const footings = { frostDepth: "30 in", diameter: `${drawn.sizes.post} in` };
  const covered = structure.kind === "pieces" || structure.kind === "pergola" ? {} : { covering: coveringOf(drawn) };
  const whole = { ...structure, ...covered, footings } as StructureShape;
  const sheet = new Sheet();
  const lengths = drawn.sold?.map((inches) => exactly(`${inches} in`).value);
  const yard = lengths && (() => ({ lengths, mayMill: false }));
  const basis = layBasis(sheet, { ...(priced ? AT_YARD : UNPRICED), structure: whole }, yard);
  const before = sheet.cells.length;
  const found = layTakeoffs(basis);
  const laid = sheet.cells.slice(before);
  return {
    laid: { sheet, ...basis.cutList },
    cells: new Map(laid.map((cell) => [cell.name, cell])),
    groups: groupsOf(basis).sort(),
    orders: ordered(basis, found, priced).sort(),
  };
}

/** Figures that are not just so under the same name in the other takeoff, without their names, in order. */
export function figuresBeside({ cells }: Takeoff, other: Takeoff): string[] {
  const left = [...cells].filter(([name, { value, unit }]) => {
    const twin = other.cells.get(name);
    return !twin || twin.unit !== unit || !twin.value.eq(value);
  });
  return left.map(([, { value, unit }]) => `${value.toFixed(9)} ${unit.symbol}`).sort();
}
