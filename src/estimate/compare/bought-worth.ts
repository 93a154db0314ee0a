/** What a bought piece adds at the least to any order of sticks: lumber, tax, handling, and its part of the spares. */
import type { Basis } from "../basis.js";
import { wholes } from "../pieces/laying.js";
import { taxRatesOn } from "../purchase/line.js";
import { abreastOf, type StockQuestion, triedQuestion } from "../purchase/lumber.js";
import { type CostedLength, pieceWorth } from "../purchase/stock/piece-worth.js";
import { leastPrice } from "../purchase/stock/problem.js";
import { Decimal, decimal, ONE, ZERO } from "../quantity/decimal.js";
import { aside, asideIn } from "../sheet/aside.js";

/** Counted work of the prices of one offer's pieces. Assumption, measured: it solves the relaxation of most orders. */
const WORTH_WORK = 80_000;

/**
 * In money, by group, shared out over the pieces so that no order costs less than its pieces, whichever of the offers that serve a
 * group equally well each of them is cut from: it counts as where it is least.
 * @param wage - Value of an hour.
 */
export function boughtWorth(basis: Basis, wage: Decimal): ReadonlyMap<string, Decimal> {
  const { groups, pricing, catalog, assumed, cutting } = basis;
  const taxed = taxRatesOn(pricing, catalog.taxes, "lumber").reduce((sum, rate) => sum.plus(aside(rate)), ONE);
  const level = aside(pricing.level).times(taxed);
  const [sort, unload] = [assumed.cell("buy.sort"), assumed.cell("buy.unload")].map((cell) =>
    asideIn(cell, "person-h"),
  );
  const handling = wage.times(aside(assumed.cell("pace"))).times((sort as Decimal).plus(unload as Decimal));
  const spoiled = aside(cutting.spoiled);
  const wanted = groups.flatMap(({ group, rivals }) =>
    rivals.map((substitution) => ({ substitution, count: wholes(basis.sheet, group.count) })),
  );
  const offers = [...new Set(wanted.map(({ substitution }) => substitution.offer))];
  const questions = offers.map((offer) =>
    triedQuestion(
      cutting,
      offer,
      wanted.filter(({ substitution }) => substitution.offer === offer),
    ),
  );
  const shares = questions.flatMap((question) => {
    const { problem, priced, moneyDigits } = question;
    const minor = decimal(10).pow(moneyDigits);
    const stocks = problem.stocks.map((stock): CostedLength => {
      const { name, length, owned } = stock;
      // What lies at hand is neither paid nor handled.
      if (owned) return { name, length, cost: ZERO };
      const price = priced ? level.times(leastPrice(stock)) : ZERO;
      // Without limits, and at the price of the greatest number, no order costs more: the bound stays a bound.
      return { name, length, cost: price.plus(handling.times(minor)) };
    });
    const worth = pieceWorth({ ...problem, stocks }, WORTH_WORK);
    const each = (length: number): Decimal => worth.get(length) ?? ZERO;
    const spare = spareWorth(problem, stocks, each, spoiled);
    return problem.pieces.map(({ name, length }) => {
      const pieces = minor.times(abreastOf(question, name));
      return { name, priced, worth: spare(each(length), length).dividedBy(pieces) };
    });
  });
  return new Map(
    groups.flatMap(({ group: { name }, rivals }) => {
      if (rivals.length === 0) return [];
      const own = shares.filter((share) => share.name === name);
      // What has no price is not bought where something that serves as well has one.
      const priced = own.filter((share) => share.priced);
      return [[name, Decimal.min(...(priced.length > 0 ? priced : own).map(({ worth }) => worth))]];
    }),
  );
}

/**
 * A piece's worth with its part of the spares, of which every order has that share of its sticks, and one at the least.
 * Both ways to count them are linear in the pieces, so the greater of the two holds for any part of them.
 *
 * Where the longer stick is never the cheaper one, spares cost that share of the sticks or more: the longest are spared
 * first, so that of each length and all longer ones there is that share. Where sticks are few at the yard, or some lie at
 * hand, there may be none.
 */
function spareWorth(
  { pieces, stocks: sold, endTrim }: StockQuestion["problem"],
  stocks: readonly CostedLength[],
  each: (length: number) => Decimal,
  spoiled: Decimal,
): (worth: Decimal, length: number) => Decimal {
  const held = pieces.filter(({ length }) => each(length).gt(0));
  const all = held.reduce((sum, { length, count }) => sum.plus(each(length).times(count)), ZERO);
  const count = held.reduce((sum, piece) => sum + piece.count, 0);
  if (spoiled.lte(0) || count === 0 || sold.some(({ owned, available }) => owned || available !== null))
    return (worth) => worth;
  const byLength = stocks.toSorted((a, b) => a.length - b.length);
  const monotone = byLength.every(({ cost }, i) => cost.gte(byLength[i - 1]?.cost ?? ZERO));
  const share = monotone ? spoiled : ZERO;
  const shortest = Math.min(...held.map(({ length }) => length)) + endTrim;
  const one = Decimal.min(...byLength.flatMap(({ length, cost }) => (length >= shortest ? cost : [])));
  if (share.times(all).gte(one)) return (worth) => worth.times(share.plus(1));
  return (worth, length) => (each(length).gt(0) ? worth.plus(one.dividedBy(count)) : worth);
}
