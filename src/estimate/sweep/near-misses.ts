/**
 * Near misses: where a small change of the structure drops a stock length, a panel, a row or a rafter, and what it saves.
 *
 * Each change is laid and priced anew, everything bought, so that a shorter rafter that wants a longer panel shows what it
 * costs. Some dozens of layings, so it is done only where it is asked for.
 */

import { lengthsOf } from "../../catalog/offers/lumber.js";
import { type Basis, layBasis } from "../basis.js";
import { layRoute, type RoutePlan } from "../compare/route.js";
import { FaultError } from "../faults.js";
import type { PieceGroup } from "../pieces/piece-group.js";
import { type Planners, planRoute } from "../plan.js";
import type { ShoppingLine } from "../purchase/line.js";
import { piecesShort } from "../purchase/lumber.js";
import { type Decimal, decimal, fixed } from "../quantity/decimal.js";
import { marked, markedSmall } from "../quantity/text.js";
import { minorDigits, unit } from "../quantity/unit.js";
import { capital } from "../quantity/words.js";
import type { EstimateRequest } from "../request/request.js";
import { aside } from "../sheet/aside.js";
import { layOwnLines } from "../sheet/own-lines.js";
import { Sheet } from "../sheet/sheet.js";
import { slopeWorsens } from "../takeoff/slope-verdict.js";
import { layCommon, layTakeoffs, type Takeoffs } from "../takeoffs.js";
import { panelSteps } from "./panel-steps.js";
import { type SmallChange, smallChanges } from "./small-changes.js";

/** Something counted that a change made fewer or shorter. */
export interface Dropped {
  readonly what: string;
  readonly from: string;
  readonly to: string;
}

/** A change worth knowing of. */
export interface NearMiss {
  /** JSON Pointer of the field, and its values as the trade writes them. */
  readonly at: string;
  readonly from: string;
  readonly to: string;
  readonly drops: readonly Dropped[];
  /** Less cash where everything is bought; lines without a price not counted. */
  readonly cash: Decimal;
  /** Fewer person-hours. */
  readonly hours: Decimal;
  readonly text: string;
}

/** A structure laid, and the steps that an order goes by. Keys name things, so that two layings can be compared. */
interface Laid {
  readonly basis: Basis;
  readonly takeoffs: Takeoffs;
  readonly counts: ReadonlyMap<string, Decimal>;
  /** Stock length for the longest piece of each section, and for panels. */
  readonly stock: ReadonlyMap<string, Decimal>;
}

/** What it comes to, everything bought. */
interface Priced extends Laid {
  readonly cash: Decimal;
  readonly hours: Decimal;
  /** What nothing on offer serves, or without a price: what costs nothing for that is no saving. */
  readonly unpriced: ReadonlySet<string>;
}

/**
 * Near misses of a request, the most saving first; the smallest change of a field that saves, and no further one of it,
 * but of the longest piece the one that saves most: it moves no roof, only the splices.
 * @throws FaultError when the request itself can't be built.
 */
export function nearMisses(request: EstimateRequest, planners: Planners): NearMiss[] {
  const laid = lay(request);
  const now = { ...laid, ...priced(laid, planners) };
  const found = smallChanges(request, (name) => laid.basis.sheet.find(name)).flatMap((changes) => {
    const saving: NearMiss[] = [];
    for (const change of changes) {
      const miss = tried(change, now, planners);
      if (miss && !change.bestOf) return [miss];
      if (miss) saving.push(miss);
    }
    return saving.sort((a, b) => b.cash.cmp(a.cash) || b.hours.cmp(a.hours)).slice(0, 1);
  });
  return found.sort((a, b) => b.cash.cmp(a.cash) || (a.at < b.at ? -1 : 1));
}

/** A change that drops nothing is not priced, which is most of the work; one that asks more of the covering's slope is not told. */
function tried(change: SmallChange, now: Priced, planners: Planners): NearMiss | undefined {
  const { system, catalog } = now.basis.request;
  if (change.pieces !== undefined && !isShorter(now.basis, change.pieces, change.to)) return undefined;
  const changed = layChanged(change);
  if (!changed || slopeWorsens(now.takeoffs.covering?.slope, changed.takeoffs.covering?.slope)) return undefined;
  const fewer = dropsOf(now.counts, changed.counts, (count) => count.toFixed());
  const shorter = dropsOf(now.stock, changed.stock, (value) => marked({ value, unit: LENGTH }, system));
  if (fewer.length + shorter.length === 0) return undefined;
  const then = priced(changed, planners);
  if ([...then.unpriced].some((what) => !now.unpriced.has(what))) return undefined;
  const cash = now.cash.minus(then.cash);
  const hours = now.hours.minus(then.hours);
  // Without any price the hours decide.
  const unpriced = now.cash.isZero() && then.cash.isZero();
  if (unpriced ? hours.lte(0) : cash.lte(0)) return undefined;
  const written = change.long ? marked : markedSmall;
  const of = (value: Decimal) => written({ value, unit: LENGTH }, system);
  const [from, to] = [of(change.from), of(change.to)];
  const list = [
    ...fewer.map((drop) => `${drop.to} ${drop.what} instead of ${drop.from}`),
    ...shorter.map((drop) => `${drop.what} from ${drop.to} stock instead of ${drop.from}`),
  ];
  const money = `${fixed(cash, minorDigits(catalog.currency) ?? 2)} ${catalog.currency}`;
  const saved = savedWords(unpriced ? undefined : money, hours);
  const text = `${change.label}, ${to} instead of ${from}: ${list.join(", ")}; saves ${saved}.`;
  const drops = [...fewer, ...shorter.map((drop) => ({ ...drop, what: `stock of ${drop.what}` }))];
  return { at: change.at, from, to, drops, cash, hours, text: capital(text) };
}

function savedWords(money: string | undefined, hours: Decimal): string {
  const work = fixed(hours.abs(), 1);
  if (money === undefined)
    return `${work === "0.0" ? "less than a tenth of a person-hour" : `${work} person-hours`}; nothing here has a price`;
  if (work === "0.0") return money;
  return hours.isNegative() ? `${money}, for ${work} person-hours more` : `${money} and ${work} person-hours`;
}

const LENGTH = unit("mm");

/** A change may be one that can't be built. */
function layChanged(change: SmallChange): Laid | undefined {
  try {
    return lay(change.request);
  } catch (error) {
    if (error instanceof FaultError) return undefined;
    throw error;
  }
}

/** Groups whose rows `purlinRows` counts. */
const PURLINS: ReadonlySet<string> = new Set(["purlins", "side-purlins"]);

function lay(request: EstimateRequest): Laid {
  const basis = layBasis(new Sheet(new Map(Object.entries(request.overrides ?? {}))), request);
  const takeoffs = layTakeoffs(basis);
  const { cutList } = basis;
  const roof = cutList.frame?.roof;
  const panels = takeoffs.covering && panelSteps(takeoffs.covering);
  // Sheets and boards are screwed or nailed down in rows as well, but those are no purlins.
  const onPurlins = cutList.groups.some((group) => PURLINS.has(baseOf(group)));
  const rows = roof && onPurlins ? [["purlin rows", aside(roof.purlinRows)] as const] : [];
  return {
    basis,
    takeoffs,
    counts: new Map([...rows, ...(panels?.counts ?? []), ...piecesByBase(cutList.groups)]),
    stock: new Map([...(panels?.stock ?? []), ...stockByBase(basis)]),
  };
}

function priced({ basis, takeoffs }: Laid, planners: Planners): Pick<Priced, "cash" | "hours" | "unpriced"> {
  const { sheet, request, catalog } = basis;
  const own = layOwnLines(sheet, request.lines ?? [], { at: "/lines", currency: catalog.currency });
  const common = layCommon(basis, takeoffs, own.cells);
  const plan = planRoute(basis, "bought", "Everything bought", new Set(), planners, undefined);
  const route = layRoute(basis, plan, common);
  return {
    cash: aside(route.cash),
    hours: aside(route.hours),
    unpriced: unpricedOf(plan, [...common.lines, ...route.hardware.lines]),
  };
}

/** Sections of which nothing is sold or nothing long enough, lumber without a price, and shared lines without one. */
function unpricedOf({ unsold, stock, bought }: RoutePlan, lines: readonly ShoppingLine[]): ReadonlySet<string> {
  const groups = new Map(bought.map(({ substitution: { group } }) => [group.name, baseOf(group)]));
  const short = stock.flatMap(({ question, plan }) =>
    question.priced ? [...piecesShort(question, plan).keys()] : question.problem.pieces.map(({ name }) => name),
  );
  return new Set([
    ...unsold.map(({ group: { group } }) => baseOf(group)),
    ...short.map((name) => groups.get(name) ?? name),
    ...lines.filter(({ amount }) => !amount).map(({ name }) => name),
  ]);
}

/** `sections.purlins.thickness` belongs to the purlins, into however many kinds of pieces they fall. */
const baseOf = (group: PieceGroup): string => group.thickness.name.split(".")[1] ?? group.name;

function piecesByBase(groups: readonly PieceGroup[]): ReadonlyMap<string, Decimal> {
  const found = new Map<string, Decimal>();
  for (const group of groups) {
    const base = baseOf(group);
    found.set(base, (found.get(base) ?? decimal(0)).plus(aside(group.count)));
  }
  return found;
}

function stockByBase({ groups }: Basis): ReadonlyMap<string, Decimal> {
  const found = new Map<string, Decimal>();
  for (const { group, substitution } of groups) {
    if (!("offer" in substitution)) continue;
    const fit = stickFor(substitution.offer, aside(group.length));
    if (!fit) continue;
    const key = baseOf(group);
    const known = found.get(key);
    if (!known || fit.gt(known)) found.set(key, fit);
  }
  return found;
}

/** Whether pieces of that length come out of a shorter stick than they do now: all that shortening them alone can change here. */
function isShorter({ groups }: Basis, name: string, to: Decimal): boolean {
  const found = groups.find(({ group }) => group.name === name);
  if (!found || !("offer" in found.substitution)) return false;
  const now = stickFor(found.substitution.offer, aside(found.group.length));
  const then = stickFor(found.substitution.offer, to);
  return then !== undefined && (now === undefined || then.lt(now));
}

/** The shortest length sold that is as long. */
const stickFor = (offer: Parameters<typeof lengthsOf>[0], length: Decimal): Decimal | undefined =>
  lengthsOf(offer).find(({ value }) => value.gte(length))?.value;

function dropsOf(
  now: ReadonlyMap<string, Decimal>,
  then: ReadonlyMap<string, Decimal>,
  words: (value: Decimal) => string,
): Dropped[] {
  return [...now].flatMap(([what, from]) => {
    const to = then.get(what);
    return to?.lt(from) ? [{ what: what.replaceAll("-", " "), from: words(from), to: words(to) }] : [];
  });
}
