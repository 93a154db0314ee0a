/** What a route buys of lumber, as lines: sticks by offer and length, pieces that nothing serves, boards at hand. */
import type { Basis } from "../basis.js";
import type { GroupBasis } from "../group-basis.js";
import { lengthSlugs } from "../purchase/board-prices.js";
import { layBulkLine } from "../purchase/bulk.js";
import type { ShoppingLine } from "../purchase/line.js";
import { piecesShort, type StockQuestion, sticksOf } from "../purchase/lumber.js";
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

type Order = StockPlans["stock"][number];

/** Sticks of each offer and length, as paid for; pieces that nothing serves are lines without a price. */
export function layLumber(basis: Basis, plan: StockPlans): ShoppingLine[] {
  const { sheet } = basis;
  const lines = plan.stock.flatMap((order) => [
    ...layPaid(basis, plan.key, order),
    ...layAtHand(basis, plan.key, order),
    ...layUncut(basis, plan.key, order),
  ]);
  const unsold = plan.unsold.map(({ group, count, add }): ShoppingLine => {
    const name = `${plan.key}.buy.unsold-${group.group.name}`;
    const quantity = sheet.input(`${name}.pieces`, plain(count), { label: "pieces" });
    return { name, department: "lumber", label: group.group.label, quantity, add };
  });
  return [...lines, ...unsold];
}

/** Sticks that a plan cuts, with the rows of the problem that they are. */
function cutSticks({ question: { problem }, plan }: Order) {
  const used = sticksOf(plan);
  return problem.stocks.flatMap((stock) => {
    const cut = used.get(stock.name) ?? 0;
    return cut === 0 ? [] : [{ ...stock, cut }];
  });
}

/** Sticks to pay for, spares and whole bundles in them. */
function layPaid({ sheet, pricing, cutting }: Basis, key: string, order: Order): ShoppingLine[] {
  const { offer, prices, ...question } = order.question;
  const slugs = lengthSlugs(question);
  const paid = cutSticks(order).flatMap((stock) => {
    const priceName = `${offer.name}-${slugs.get(stock.name) ?? stock.name}`;
    return stock.owned ? [] : [{ ...stock, name: `${key}.buy.${priceName}`, of: stock.name, priceName }];
  });
  const lot = { bundle: offer.bundle, spoiled: cutting.spoiled, proof: order.proof };
  const laid = laySticks(sheet, lot, paid);
  return paid.map(({ name, of, priceName, available }, i): ShoppingLine => {
    const found = prices.get(of);
    if (!found) throw new Error(`the stock plan buys a length that is not on offer: ${of}`);
    const { quantity, spares } = laid[i] as (typeof laid)[number];
    const line = { name, department: "lumber", label: `${offer.label}, ${of}`, offer: offer.name, spares } as const;
    return layBulkLine(pricing, line, quantity, found, { priceName, bundle: offer.bundle, available });
  });
}

/** Pieces that no stick is left for. */
function layUncut({ sheet }: Basis, key: string, { question, plan, proof }: Order): ShoppingLine[] {
  const { offer, problem } = question;
  return [...piecesShort(question, plan)].map(([group, count]): ShoppingLine => {
    const name = `${key}.buy.${offer.name}-too_long-${group}`;
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
}

/** Boards that lie at hand and are cut: a line that says how many, and that they cost nothing. */
function layAtHand({ sheet, pricing }: Basis, key: string, order: Order): ShoppingLine[] {
  const { offer } = order.question;
  return cutSticks(order).flatMap(({ name: length, cut, owned }): ShoppingLine[] => {
    if (!owned) return [];
    const name = `${key}.buy.${offer.name}-${length.replaceAll(/[^0-9A-Za-z]+/g, "_").replace(/_$/, "")}`;
    const label = `${offer.label}, ${length}`;
    sheet.title(name, label);
    const quantity = sheet.planned(`${name}.sticks`, plain(cut), order.proof, { label: "boards at hand that are cut" });
    const amount = sheet.lay(`${name}.amount`, times(quantity, number(`0 ${pricing.currency}`)), { label: "amount" });
    return [{ name, department: "lumber", label, quantity, amount, atHand: true }];
  });
}
