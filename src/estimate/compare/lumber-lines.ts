/** What a route buys of lumber, as lines: sticks by offer and length, pieces that nothing serves, boards at hand. */
import type { LumberOffer } from "../../catalog/offers/lumber.js";
import type { Basis } from "../basis.js";
import type { GroupBasis } from "../group-basis.js";
import { lengthSlugs } from "../purchase/board-prices.js";
import { layBulkLine } from "../purchase/bulk.js";
import type { ShoppingLine } from "../purchase/line.js";
import { type StockQuestion, sticksOf, uncut } from "../purchase/lumber.js";
import { laySticks } from "../purchase/sticks.js";
import type { StockCut } from "../purchase/stock/problem.js";
import { number, type PlanProof, times } from "../sheet/expression.js";
import { plain } from "../sheet/sheet.js";

/** What a route buys, and how it is cut. */
export interface StockPlans {
  readonly key: string;
  readonly stock: readonly {
    readonly question: StockQuestion;
    readonly plan: readonly StockCut[];
    readonly proof: PlanProof;
  }[];
  /** Groups of which pieces must be bought but nothing serves. */
  readonly unsold: readonly { readonly group: GroupBasis; readonly count: number; readonly add: string }[];
}

/** Sticks of each offer and length, as paid for; pieces that nothing serves are lines without a price. */
export function layLumber(basis: Basis, plan: StockPlans): ShoppingLine[] {
  const { sheet, pricing } = basis;
  const lines = plan.stock.flatMap(({ question, plan: cuts, proof }) => {
    const { offer, problem, prices } = question;
    const slugs = lengthSlugs(question);
    const stockOf = (name: string) => problem.stocks.find((stock) => stock.name === name);
    const sticks = [...sticksOf(cuts)].map(([length, cut]): ShoppingLine => {
      if (stockOf(length)?.owned) return layAtHand(basis, plan.key, { offer, length, cut, proof });
      const slug = slugs.get(length) ?? length;
      const name = `${plan.key}.buy.${offer.name}-${slug}`;
      const { quantity } = laySticks(sheet, name, {
        cut,
        bundle: offer.bundle,
        available: stockOf(length)?.available ?? null,
        spoiled: basis.assumed.cell("buy.wastage"),
        proof,
      });
      const found = prices.get(length);
      if (!found) throw new Error(`the stock plan buys a length that is not on offer: ${length}`);
      const line = { name, department: "lumber", label: `${offer.label}, ${length}`, offer: offer.name } as const;
      const available = stockOf(length)?.available ?? null;
      return layBulkLine(pricing, line, quantity, found, {
        priceName: `${offer.name}-${slug}`,
        bundle: offer.bundle,
        available,
      });
    });
    const long = [...uncut(problem, cuts)].map(([group, count]): ShoppingLine => {
      const name = `${plan.key}.buy.${offer.name}-too_long-${group}`;
      const quantity = sheet.planned(`${name}.pieces`, plain(count), proof, {
        label: "pieces that no stock length holds",
      });
      const fits = problem.pieces.some(
        ({ name: piece, length }) =>
          piece === group && problem.stocks.some((one) => one.length - problem.endTrim >= length),
      );
      const why = fits ? "too few for" : "too short for";
      const add = fits
        ? `Add sticks of ${offer.label}: more than are available are wanted.`
        : `Add a longer stock length of ${offer.label}.`;
      return { name, department: "lumber", label: `${offer.label}: ${why} ${group}`, quantity, add };
    });
    return [...sticks, ...long];
  });
  const unsold = plan.unsold.map(({ group, count, add }): ShoppingLine => {
    const name = `${plan.key}.buy.unsold-${group.group.name}`;
    const quantity = sheet.input(`${name}.pieces`, plain(count), { label: "pieces" });
    return { name, department: "lumber", label: group.group.label, quantity, add };
  });
  return [...lines, ...unsold];
}

/** Boards that lie at hand and are cut: a line that says how many, and that they cost nothing. */
function layAtHand(
  { sheet, pricing }: Basis,
  key: string,
  { offer, length, cut, proof }: { offer: LumberOffer; length: string; cut: number; proof: PlanProof },
): ShoppingLine {
  const name = `${key}.buy.${offer.name}-${length.replaceAll(/[^0-9A-Za-z]+/g, "_").replace(/_$/, "")}`;
  const label = `${offer.label}, ${length}`;
  sheet.title(name, label);
  const quantity = sheet.planned(`${name}.sticks`, plain(cut), proof, { label: "boards at hand that are cut" });
  const amount = sheet.lay(`${name}.amount`, times(quantity, number(`0 ${pricing.currency}`)), { label: "amount" });
  return { name, department: "lumber", label, quantity, amount, atHand: true };
}
