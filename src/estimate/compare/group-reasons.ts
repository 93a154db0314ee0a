/** One plain sentence a group: milled or bought, and why. It reads the sheet; nothing on the sheet depends on it. */
import type { Basis } from "../basis.js";
import type { GroupBasis } from "../group-basis.js";
import { Decimal, decimal, ZERO } from "../quantity/decimal.js";
import { moneyText } from "../quantity/text.js";
import { about } from "../quantity/words.js";
import { aside, asideIn } from "../sheet/aside.js";
import type { ComparedRoutes } from "./decision.js";
import type { GroupSaving } from "./group-savings.js";
import { runOf } from "./mix-search.js";
import type { RoutePlan } from "./route.js";
import { hasPrice } from "./unpriced.js";
import type { Judged } from "./verdict-limits.js";
import { pinsLose, whyLacking } from "./verdict-pins.js";

/** Where one group comes from. */
export interface GroupReason {
  readonly name: string;
  readonly label: string;
  /** `both`: some of its pieces are milled, some bought. */
  readonly side: "mill" | "buy" | "both";
  /** Pieces from the logs, and from the yard. */
  readonly milled: Decimal;
  readonly bought: Decimal;
  /** A whole sentence, or two. */
  readonly why: string;
}

/** A sentence for every group, in the order of the cut list. */
export function groupReasons(basis: Basis, { mix, mill }: ComparedRoutes, decision: Judged): GroupReason[] {
  const savings = new Map(decision.groups.map((saving) => [saving.name, saving]));
  const dear = mill?.plan;
  const mixed = new Set([...mix.plan.sawn].map(runOf));
  const lose = decision.open && pinsLose(decision.open, aside(mix.total));
  return basis.groups.map((one): GroupReason => {
    const { name, label } = one.group;
    const count = aside(one.group.count);
    const bought = count.minus(milledIn(mix.plan, name, count));
    const side = bought.isZero() ? "mill" : bought.gte(count) ? "buy" : "both";
    const from = { name, label, side, bought, milled: count.minus(bought) } as const;
    const saving = savings.get(name);
    const lacking = bought.gt(0) ? whyLacking(one, mix.plan, dear) : undefined;
    if (side === "buy") {
      const split = mixed.has(runOf(name)) ? ` Other lengths of this run are milled${measures(one)}.` : "";
      const saves = one.group.rules.source === "buy" ? lose?.each.get(name) : undefined;
      const open = saves
        ? ` Left open, milling it would save ${moneyText(saves, basis.pricing.currency)}, your hours counted.`
        : "";
      const asked = lacking ? `You ask for it from the logs, but the plan found saws none. ${lacking}` : undefined;
      return { ...from, why: `${asked ?? whyBought(basis, one, saving)}${open}${split}` };
    }
    const short = lacking ? `, though you ask for all of them. ${lacking}` : undefined;
    const why = short ?? `: ${whyShort(basis, dear, name, bought)}${measures(one)}.`;
    const some = side === "both" ? ` ${countWords(bought, count)} bought${why}` : "";
    return { ...from, why: `${whyMilled(basis, one, saving, lose?.each.get(name))}${some}` };
  });
}

/** Below it, in person-hours, nobody would notice. Assumption. */
const LITTLE = 0.25;

/** Less than a cent is nothing. */
const CENT = decimal("0.005");

const limited = ({ request: { options } }: Basis): boolean =>
  options?.mostCash !== undefined || options?.mostHours !== undefined;

/** In what the bought pieces of a group differ from the milled ones beside them. */
function measures({ substitution }: GroupBasis): string {
  const [first] = "offer" in substitution ? substitution.differences : [];
  return first ? `; mind that they differ: ${first}` : "";
}

const countWords = (some: Decimal, all: Decimal): string =>
  `${some.toFixed()} of ${all.toFixed()} ${some.eq(1) ? "is" : "are"}`;

/** Pieces of a group that a route buys, of those it names. */
export function boughtOf({ bought, unsold }: RoutePlan, name: string): Decimal | undefined {
  const sold = bought.find(({ substitution }) => substitution.group.name === name)?.count;
  const lacking = unsold.find(({ group }) => group.group.name === name)?.count;
  return sold === undefined && lacking === undefined ? undefined : decimal((sold ?? 0) + (lacking ?? 0));
}

/** Pieces of a group that a plan mills, of so many. */
export const milledIn = (plan: RoutePlan, name: string, count: Decimal): Decimal =>
  count.minus(boughtOf(plan, name) ?? (plan.sawn.has(name) ? ZERO : count));

/** Whether the logs give no more even where all is milled that can be, or their wood does more as something else. */
function whyShort({ request }: Basis, dear: RoutePlan | undefined, name: string, bought: Decimal): string {
  if (request.options?.fallDown === "buy") return "in the place of rejects, and of what the logs do not give";
  const lacking = (dear && boughtOf(dear, name)) ?? ZERO;
  return lacking.gte(bought)
    ? "even with everything milled the plan found saws no more of them"
    : "their wood saves more as other pieces";
}

/** @param lost - By asking for it from the logs. */
function whyMilled(basis: Basis, one: GroupBasis, saving: GroupSaving | undefined, lost: Decimal | undefined): string {
  const asked = one.group.rules.source === "mill" ? "You ask for it from the logs. " : "";
  if (!saving && !hasPrice(basis, one)) return `${asked}No price says what buying it would cost.`;
  if (!saving) return `${asked}It comes out of the logs with the others.`;
  const saved = aside(saving.cashSaved);
  const gain = saved.gte(0)
    ? `Milling it saves ${moneyOf(basis, saving.cashSaved)}`
    : `Milling it costs ${moneyText(saved.abs(), basis.pricing.currency)} more than buying it`;
  const hours = asideIn(saving.extraHours, "person-h");
  const loses =
    asked && lost
      ? ` As far as was tried, asking for it loses ${moneyText(lost, basis.pricing.currency)}, your hours counted.`
      : "";
  if (hours.lt(LITTLE)) return `${asked}${gain} and takes ${hours.lte(0) ? "no" : "next to no"} more time.${loses}`;
  const pays = aside(saving.payPerHour).gte(aside(basis.labor.valueOfHour));
  const has = limited(basis) ? "your limits ask for it" : "the best of the mixes tried has it";
  const why = pays ? "" : loses || ` By itself that is too little, but ${has}.`;
  return `${asked}${gain} for ${hoursText(hours)} more: ${rates(basis, saving, pays)}.${why}`;
}

function whyBought(basis: Basis, { millable, notMilled }: GroupBasis, saving: GroupSaving | undefined): string {
  if (!millable) return `Bought, because ${notMilled ?? "it cannot be milled"}.`;
  if (!saving) return "Bought: even with everything milled that can be, the plan found saws none of it.";
  const hours = asideIn(saving.extraHours, "person-h");
  const pays = hours.lte(0) || aside(saving.payPerHour).gte(aside(basis.labor.valueOfHour));
  const little = Decimal.max(aside(basis.labor.valueOfHour).times(LITTLE), CENT);
  if (hours.abs().lt(LITTLE) && aside(saving.cashSaved).abs().lt(little))
    return `Bought, because the logs' wood does more as other pieces.`;
  const saved = aside(saving.cashSaved);
  if (saved.lt(0)) {
    const more = moneyText(saved.abs(), basis.pricing.currency);
    const time = hours.gte(0) ? `${hoursText(hours)} more` : `${hoursText(hours.abs())} less`;
    return `Milled with everything else it would cost ${more} more and take ${time}.`;
  }
  const would = `Milled with everything else it would save ${moneyOf(basis, saving.cashSaved)} for ${hoursText(hours)} more`;
  if (!pays) return `${would}: ${rates(basis, saving, false)}.`;
  return `${would}, but the best of the mixes ${limited(basis) ? "within your limits" : "tried"} leaves it out: logs, set-up and cuts are shared.`;
}

/** What each extra hour brings beside what an hour is worth. */
function rates(basis: Basis, { payPerHour }: GroupSaving, above: boolean): string {
  const worth = moneyOf(basis, basis.labor.valueOfHour);
  return `${moneyOf(basis, payPerHour)} an hour, ${above ? "above" : "below"} your ${worth}`;
}

const moneyOf = ({ pricing }: Basis, cell: Parameters<typeof aside>[0]): string =>
  moneyText(aside(cell), pricing.currency);

const hoursText = (hours: Decimal): string => `${about(hours, 1)} ${hours.toFixed(1) === "1.0" ? "hour" : "hours"}`;
