/** Small jobs, and what a way of doing them comes to: planned by the service, laid and priced here. */
import { type Basis, layBasis } from "../../../src/estimate/basis.js";
import { type CommonCells, layRoute, type RoutePlan } from "../../../src/estimate/compare/route.js";
import { withChosenFirst } from "../../../src/estimate/offer-choice.js";
import { Sheet } from "../../../src/estimate/sheet/sheet.js";
import { layCommon, layTakeoffs } from "../../../src/estimate/takeoffs.js";
import { request } from "../../helpers/estimating.js";

/** What a way comes to. */
export interface Way {
  readonly cash: number;
  readonly hours: number;
  readonly total: number;
}

/** A job on a sheet, ready for routes. */
export function laidJob(body: unknown): { readonly basis: Basis; readonly common: CommonCells } {
  const basis = layBasis(new Sheet(), withChosenFirst(request(body)));
  return { basis, common: layCommon(basis, layTakeoffs(basis), []) };
}

/** A plan laid and priced. */
export function wayOf(basis: Basis, plan: RoutePlan, common: CommonCells): Way {
  const { cash, hours, total } = layRoute(basis, plan, common);
  return { cash: cash.value.toNumber(), hours: hours.value.toNumber(), total: total.value.toNumber() };
}

/** A piece group of a list. */
export const piece = (name: string, count: number, section: string, length: string, more: object = {}): Piece => ({
  ...{ name, role: "other", count, section, length },
  ...more,
});

export interface Piece {
  readonly name: string;
  readonly source?: "mill" | "buy";
}
