/** The mixes between buying and milling, for every worth of an hour, in a terminal. */
import { milledIn } from "../../estimate/compare/group-reasons.js";
import type { RoutePlan } from "../../estimate/compare/route.js";
import type { Estimate } from "../../estimate/estimate.js";
import { Decimal, fixed } from "../../estimate/quantity/decimal.js";
import { moneyText } from "../../estimate/quantity/text.js";
import { lowered } from "../../estimate/quantity/words.js";
import { aside } from "../../estimate/sheet/aside.js";
import { columns, wrap } from "./terminal-lines.js";

const WIDTHS = [24, 14, 14];

/** Cash, hours and what changes sides, the most hours first; nothing where nobody asked for them. */
export function mixesTable({ basis, searched }: Estimate): string[] {
  const { frontier = [], frontierGap } = searched ?? {};
  if (frontier.length < 2) return [];
  const { currency } = basis.catalog;
  const rows = frontier.flatMap(({ point, fromWage }, i) => [
    columns(
      [`${moneyText(fromWage, currency)} or more`, moneyText(point.cash, currency), fixed(point.hours, 1)],
      WIDTHS,
    ),
    ...wrap(`  ${changes(basis, point.plan, frontier[i - 1]?.point.plan)}`, 4),
  ]);
  const proven = frontierGap
    ? wrap(
        `  Between ${moneyText(frontierGap.from, currency)} and ${moneyText(frontierGap.to, currency)} an hour no mix totals more than ${frontierGap.gap.times(100).toDecimalPlaces(1, Decimal.ROUND_UP).toFixed()} % less than the best of these.`,
        2,
      )
    : [];
  return [columns(["WHERE AN HOUR IS WORTH", "cash", "hours"], WIDTHS), ...rows, ...proven];
}

function changes({ groups }: Estimate["basis"], now: RoutePlan | undefined, before: RoutePlan | undefined): string {
  const pieces = (plan: RoutePlan | undefined, name: string, count: Parameters<typeof milledIn>[2]) =>
    plan ? milledIn(plan, name, count) : undefined;
  const told = groups.flatMap(({ group: { name, label, count } }) => {
    const [is, was] = [now, before].map((plan) => pieces(plan, name, aside(count)));
    if (!is || (before ? was?.eq(is) : is.isZero())) return [];
    return [
      before && was ? `${lowered(label)} ${was.toFixed()} to ${is.toFixed()}` : `${lowered(label)} ${is.toFixed()}`,
    ];
  });
  return told.length === 0 ? "the same pieces, sawn or bought otherwise" : `from the logs: ${told.join(", ")}`;
}
