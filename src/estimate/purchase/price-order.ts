/** Prices in order, exactly: two offers a cent apart over a hundred pieces are not alike. */
import type { Decimal } from "../quantity/decimal.js";

/** For sorting: the cheaper first, what has no price last. */
export function dearer(a: Decimal | undefined, b: Decimal | undefined): number {
  if (a && b) return a.cmp(b);
  return a ? -1 : b ? 1 : 0;
}
