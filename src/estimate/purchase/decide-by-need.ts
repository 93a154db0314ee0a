/** Needs that decide which of several offers is bought. */
import type { PriceCatalog } from "../../catalog/price-catalog.js";
import type { Need } from "../need.js";
import type { Sheet } from "../sheet/sheet.js";

/** Where several finishes or coverings of a kind are on offer, how much is needed decides which of them is bought. */
export function decideByNeed(
  { sheet, catalog }: { readonly sheet: Sheet; readonly catalog: PriceCatalog },
  needs: readonly Need[],
): void {
  for (const { item, quantity } of needs) {
    const rivals =
      item.kind === "finish"
        ? catalog.finishes.filter(({ kind }) => kind === item.finish)
        : item.kind === "covering"
          ? catalog.coverings.filter(({ covering }) => covering === item.covering)
          : [];
    if (rivals.length > 1) sheet.decide(quantity);
  }
}
