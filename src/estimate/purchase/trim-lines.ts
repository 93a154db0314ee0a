/**
 * Trims and closures that are sold in several lengths, or for less from a number of pieces on: the pieces that cost least,
 * laps reckoned. Along an edge e, pieces of lengths p that lap by l reach Σ (p − l) + l, so packs of p − l are wanted for e − l.
 */
import type { LongPiece } from "../../catalog/offers/covering.js";
import type { Fitted, Need } from "../need.js";
import { quantity } from "../quantity/quantity.js";
import { type MeasureSystem, marked } from "../quantity/text.js";
import { unit } from "../quantity/unit.js";
import { type Cell, minus } from "../sheet/expression.js";
import type { Pricing, ShoppingLine } from "./line.js";
import { layPackLine, type PackNeed, type SizedPack } from "./pack-lines.js";

/** Lays the line of a trim or closure of which the catalog has several rows. */
export function layLongPieces(
  { pricing, system }: { readonly pricing: Pricing; readonly system: MeasureSystem },
  line: Pick<ShoppingLine, "name" | "department" | "label">,
  { quantity: pieces, item }: Need,
  rows: readonly LongPiece<string>[],
): ShoppingLine {
  const fitted = item.kind === "covering" ? item.fitted : undefined;
  const first = rows[0] as LongPiece<string>;
  const add = `Add a price to the ${first.kind} in the catalog.`;
  if (!fitted || rows.every(({ length }) => length.value.eq(first.length.value))) {
    const packs = rows.map((row) => packOf(row, marked(row.length, system), quantity(1, "")));
    return layPackLine(pricing, line, pieces, packs, add);
  }
  const small = unit(system === "metric" ? "mm" : "in");
  const lap = fitted.lap && pricing.sheet.decide(fitted.lap);
  const packs = rows.flatMap((row) => {
    const reach = lap ? row.length.value.minus(lap) : row.length.value;
    // What an overridden lap eats up covers nothing.
    const holds = { value: reach, unit: row.length.unit, written: small };
    return reach.gt(0) ? [packOf(row, marked(row.length, system), holds)] : [];
  });
  return layPackLine(pricing, line, needOf(fitted), packs, add);
}

function packOf({ from, price }: LongPiece<string>, label: string, holds: SizedPack["holds"]): SizedPack {
  return { label, holds, price, ...(from === undefined ? {} : { from }) };
}

/** Every edge begun afresh, or with the offcut of the one before, with at most one lap fewer than pieces over all of them. */
function needOf({ edges, length, lap }: Fitted): PackNeed | Cell {
  if (!lap) return length;
  const afresh = edges.map((edge) => ({ count: edge.count, need: minus(edge.length, lap) }));
  const runs = edges.reduce((all, { count }) => all + count, 0);
  const onward = [{ count: 1, need: minus(length, lap) }];
  return { quantity: length, ways: runs === 1 ? [afresh] : [afresh, onward] };
}
