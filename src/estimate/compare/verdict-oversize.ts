/** What the verdict says of bought sticks that hold far more wood than is wanted: the rest is paid for and ripped off. */
import type { Basis } from "../basis.js";
import type { BoughtPieces } from "../purchase/lumber.js";
import { type Decimal, decimal, ONE, ZERO } from "../quantity/decimal.js";
import { moneyText } from "../quantity/text.js";
import { capital, lowered } from "../quantity/words.js";
import { aside } from "../sheet/aside.js";
import type { RouteCells } from "./route.js";

/** Times the wood that is wanted from which on it is told; and what it costs at the least, as a share of all that buying costs. Assumptions. */
const MUCH = decimal("1.25");
const LEAST_SHARE = decimal("0.01");
/** Offers that are named, the dearest first. */
const MOST_NAMED = 3;

interface Oversize {
  readonly offer: string;
  readonly groups: readonly string[];
  /** Times the wood that is wanted. */
  readonly times: Decimal;
  /** Of what the sticks cost, the share for wood that is not wanted. */
  readonly wasted: Decimal;
}

/** By the sticks that buying everything takes. What the user insists on is left out. */
export function oversizeChange(basis: Basis, { plan, lines, cash }: RouteCells): string[] {
  const least = aside(cash).times(LEAST_SHARE);
  const costOf = (name: string): Decimal =>
    lines.reduce((sum, { offer, amount }) => (offer === name && amount ? sum.plus(aside(amount)) : sum), ZERO);
  return plan.stock
    .flatMap(({ question: { offer, bought } }) => oversizeOf([...bought.values()], costOf(offer.name)))
    .filter(({ wasted }) => wasted.gte(least) && wasted.gt(0))
    .toSorted((a, b) => b.wasted.cmp(a.wasted))
    .slice(0, MOST_NAMED)
    .map(({ offer, groups, times, wasted }) => {
      const money = moneyText(wasted, basis.pricing.currency);
      return `${capital(groups.map(lowered).join(", "))}: bought as ${offer}, which holds ${times.toFixed(1)} times the wood that is wanted. Of what buying everything costs, about ${money} is for wood that is ripped off; a yard that sells a nearer size may turn this round.`;
    });
}

/** @param cost - Of all sticks of the offer. */
function oversizeOf(pieces: readonly BoughtPieces[], cost: Decimal): Oversize[] {
  const wood = pieces.map((one) => ({ ...one, ...woodOf(one) }));
  const large = wood.filter(
    ({ substitution, sold, wanted }) => !substitution.group.rules.buyAs && sold.gt(wanted.times(MUCH)),
  );
  const [first] = large;
  if (!first) return [];
  const sum = (of: readonly Decimal[]): Decimal => of.reduce((total, one) => total.plus(one), ZERO);
  const [sold, wanted] = [sum(large.map((one) => one.sold)), sum(large.map((one) => one.wanted))];
  const share = sold.dividedBy(sum(wood.map((one) => one.sold)));
  return [
    {
      offer: first.substitution.offer.label,
      groups: large.map(({ substitution }) => substitution.group.label),
      times: sold.dividedBy(wanted),
      wasted: cost.times(share).times(ONE.minus(wanted.dividedBy(sold))),
    },
  ];
}

/** Wood of some bought pieces as they come out of their sticks, and as these are sold. */
function woodOf({ substitution: { group, offer, abreast, each }, count }: BoughtPieces) {
  const long = aside(group.length).times(count);
  const { thickness, width } = offer.actual;
  return {
    wanted: long.times(each[0]).times(each[1]),
    sold: long.times(thickness.value).times(width.value).dividedBy(abreast),
  };
}
