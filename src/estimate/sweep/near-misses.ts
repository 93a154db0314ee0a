/**
 * Near misses: where a small change of the structure drops a stock length, a panel, a row or a rafter, and what it saves.
 *
 * Each change is laid and priced anew, everything bought, so that a shorter rafter that wants a longer panel shows what it
 * costs. Asked for on its own: it is some dozens of layings.
 */
import { lengthsOf } from "../../catalog/offers/lumber.js";
import { type Basis, layBasis } from "../basis.js";
import { layRoute } from "../compare/route.js";
import { FaultError } from "../faults.js";
import type { PieceGroup } from "../pieces/piece-group.js";
import { type Planners, planRoute } from "../plan.js";
import { type Decimal, decimal, fixed } from "../quantity/decimal.js";
import { marked, markedSmall } from "../quantity/text.js";
import { unit } from "../quantity/unit.js";
import type { EstimateRequest } from "../request/request.js";
import { aside } from "../sheet/aside.js";
import { layOwnLines } from "../sheet/own-lines.js";
import { Sheet } from "../sheet/sheet.js";
import { layCommon, layTakeoffs } from "../takeoffs.js";
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

/** Steps that an order goes by. Keys name things, so that two layings can be compared. */
interface Laid {
  readonly counts: ReadonlyMap<string, Decimal>;
  /** Stock length for the longest piece of each section. */
  readonly stock: ReadonlyMap<string, Decimal>;
  readonly cash: Decimal;
  readonly hours: Decimal;
}

/**
 * Near misses of a request, the most saving first; the smallest change of a field that saves, and no further one of it.
 * @throws FaultError when the request itself can't be built.
 */
export function nearMisses(request: EstimateRequest, planners: Planners): NearMiss[] {
  const basis = layBasis(newSheet(request), request);
  const now = measured(basis, planners);
  const found = smallChanges(request, (name) => basis.sheet.find(name)).flatMap((changes) => {
    for (const change of changes) {
      const miss = tried(change, now, request, planners);
      if (miss) return [miss];
    }
    return [];
  });
  return found.sort((a, b) => b.cash.cmp(a.cash) || (a.at < b.at ? -1 : 1));
}

function tried(change: SmallChange, now: Laid, request: EstimateRequest, planners: Planners): NearMiss | undefined {
  const then = layChanged(change, planners);
  if (!then) return undefined;
  const drops = [
    ...dropsOf(now.counts, then.counts, (count) => count.toFixed()),
    ...dropsOf(now.stock, then.stock, (value) => marked({ value, unit: LENGTH }, request.system)),
  ];
  const cash = now.cash.minus(then.cash);
  const hours = now.hours.minus(then.hours);
  if (drops.length === 0 || cash.lte(0)) return undefined;
  const [from, to] = [change.from, change.to].map((value) => markedSmall({ value, unit: LENGTH }, request.system)) as [
    string,
    string,
  ];
  const list = drops.map((drop) => `${drop.what} ${drop.to} instead of ${drop.from}`).join(", ");
  const saved = `${fixed(cash, 2)} ${request.catalog.currency} and ${fixed(hours, 1)} person-hours`;
  const text = `${to} instead of ${from} (${change.label}): ${list}; saves ${saved}.`;
  return { at: change.at, from, to, drops, cash, hours, text };
}

const LENGTH = unit("mm");

/** A change may be one that can't be built. */
function layChanged(change: SmallChange, planners: Planners): Laid | undefined {
  try {
    return measured(layBasis(newSheet(change.request), change.request), planners);
  } catch (error) {
    if (error instanceof FaultError) return undefined;
    throw error;
  }
}

const newSheet = (request: EstimateRequest) => new Sheet(new Map(Object.entries(request.overrides ?? {})));

function measured(basis: Basis, planners: Planners): Laid {
  const { sheet, request, catalog, cutList } = basis;
  const takeoffs = layTakeoffs(basis);
  const own = layOwnLines(sheet, request.lines ?? [], { at: "/lines", currency: catalog.currency });
  const common = layCommon(basis, takeoffs, own.cells);
  const route = layRoute(
    basis,
    planRoute(basis, "bought", "Everything bought", new Set(), planners, undefined),
    common,
  );
  const roof = cutList.frame?.roof;
  const panels = takeoffs.covering?.panels;
  const layout = takeoffs.covering?.faces[0];
  const counted: [string, Decimal | undefined][] = [
    ["purlin rows", roof && aside(roof.purlinRows)],
    ["panels", panels && aside(panels.panels)],
    ["panels up a slope", panels && layout && aside(layout.up)],
    ...piecesByBase(cutList.groups),
  ];
  return {
    counts: new Map(counted.flatMap(([name, value]) => (value ? [[name, value] as const] : []))),
    stock: stockByBase(basis),
    cash: aside(route.cash),
    hours: aside(route.hours),
  };
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
    const fit = lengthsOf(substitution.offer).find(({ value }) => value.gte(aside(group.length)))?.value;
    if (!fit) continue;
    const key = `stock of ${baseOf(group)}`;
    const known = found.get(key);
    if (!known || fit.gt(known)) found.set(key, fit);
  }
  return found;
}

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
