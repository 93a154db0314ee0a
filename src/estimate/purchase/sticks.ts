/** How many sticks of one length are bought for a plan that cuts some: spares for defects, whole bundles, what can be had. */
import {
  type Cell,
  greatest,
  least,
  minus,
  number,
  over,
  type PlanProof,
  plus,
  roundUp,
  times,
} from "../sheet/expression.js";
import { plain, type Sheet } from "../sheet/sheet.js";

/** A plan's sticks of one length, and what stands between them and the order. */
export interface PlannedSticks {
  /** Sticks that the plan cuts. */
  readonly cut: number;
  /** Sold in multiples of this. */
  readonly bundle: number;
  /** How many can be had; null = any number. */
  readonly available: number | null;
  /** Share set aside for defects. */
  readonly spoiled: Cell;
  readonly proof: PlanProof;
}

/** Sticks as the plan needs them, whole bundles, and as they are bought. */
export interface StickCells {
  readonly planned: Cell;
  readonly quantity: Cell;
}

/** Spares are a share of the sticks that are cut, to the nearest stick; only then is the order rounded up to bundles. */
export function laySticks(sheet: Sheet, name: string, sticks: PlannedSticks): StickCells {
  const { cut: used, bundle, available, spoiled, proof } = sticks;
  const inBundles = Math.ceil(used / bundle) * bundle;
  const planned = sheet.planned(`${name}.planned`, plain(inBundles), proof, { label: "sticks that the plan takes" });
  const cut =
    bundle === 1 ? planned : sheet.planned(`${name}.cut`, plain(used), proof, { label: "of them cut by the plan" });
  const spare = roundUp(minus(times(cut, plus(number("1"), spoiled)), number("1/2")));
  const bundles = bundle === 1 ? spare : times(roundUp(over(spare, number(`${bundle}`))), number(`${bundle}`));
  const most = available === null ? bundles : least(bundles, number(`${available - (available % bundle)}`));
  return { planned, quantity: sheet.lay(`${name}.sticks`, greatest(most, planned), { label: "sticks to buy" }) };
}
