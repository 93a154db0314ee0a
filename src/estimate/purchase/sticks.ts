/** How many sticks are bought for a plan that cuts some: spares for defects, whole bundles, what can be had. */
import {
  type Cell,
  greatest,
  least,
  minus,
  number,
  type Operand,
  over,
  type PlanProof,
  plus,
  roundUp,
  sum,
  times,
} from "../sheet/expression.js";
import { plain, type Sheet } from "../sheet/sheet.js";

/** Sticks of one length that a plan cuts. */
export interface CutSticks {
  /** Prefix of their cells. */
  readonly name: string;
  readonly cut: number;
  /** In any unit that is the same for all: the longest come first. */
  readonly length: number;
  /** How many can be had; null = any number. */
  readonly available: number | null;
}

/** What sticks of one section have alike. */
export interface Lot {
  /** Sold in multiples of this. */
  readonly bundle: number;
  /** Share set aside for defects. */
  readonly spoiled: Cell;
  readonly proof: PlanProof;
}

/** Sticks of one length as the plan needs them, whole bundles, and as they are bought. */
export interface StickCells {
  readonly planned: Cell;
  readonly spares: Cell;
  readonly quantity: Cell;
}

/**
 * Spares are a share of all sticks of the lot, rounded up once: one stick may be bad however few they are. They are
 * bought of the longest, which serve in the place of any other; where the yard has no more of those, of the next. Of
 * each length and all longer ones together there is at least that share to spare. Then come whole bundles, and what lies
 * over in one is spare as well.
 *
 * @returns the cells of each length, in the order given.
 */
export function laySticks(sheet: Sheet, lot: Lot, sticks: readonly CutSticks[]): readonly StickCells[] {
  const longestFirst = sticks.toSorted((a, b) => b.length - a.length);
  const laid = new Map<CutSticks, StickCells>();
  const before: { readonly cut: Cell; readonly over: Operand }[] = [];
  for (const one of longestFirst) {
    const { name, cut: used, available } = one;
    const { bundle, proof } = lot;
    const begun = used % bundle;
    const inBundles = begun === 0 ? used : used + bundle - begun;
    const planned = sheet.planned(`${name}.planned`, plain(inBundles), proof, { label: "sticks that the plan takes" });
    const cut =
      bundle === 1 ? planned : sheet.planned(`${name}.cut`, plain(used), proof, { label: "of them cut by the plan" });
    const all = roundUp(times(lot.spoiled, sum([...before.map((each) => each.cut), cut])));
    const left = before.length === 0 ? all : minus(all, ...before.map((each) => each.over));
    const wanted = bundle === 1 || before.length === 0 ? left : greatest(left, number("0"));
    const most = available === null ? undefined : minus(number(`${available - (available % bundle)}`), cut);
    const spares = sheet.lay(`${name}.spares`, most ? least(wanted, most) : wanted, {
      label: "spare sticks for defects, the longest first",
    });
    const needed = plus(cut, spares);
    const whole = bundle === 1 ? needed : times(roundUp(over(needed, number(`${bundle}`))), number(`${bundle}`));
    const quantity = sheet.lay(`${name}.sticks`, whole, { label: "sticks to buy" });
    before.push({ cut, over: bundle === 1 ? spares : minus(quantity, cut) });
    laid.set(one, { planned, spares, quantity });
  }
  return sticks.map((one) => laid.get(one) as StickCells);
}
