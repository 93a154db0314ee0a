/**
 * One route from nothing to finished lumber: some groups milled, the others bought. Every route is laid from this one
 * template, so that all-milled, all-bought, and the mix are the same arithmetic on other plans.
 */

import { type Basis, basisOf } from "../basis.js";
import { type DryingCells, type DryingPiece, layDrying } from "../effort/drying.js";
import { type JointHours, layJoining } from "../effort/joints.js";
import { layMilling, type MillingCells } from "../effort/milling.js";
import { isAtMill, peopleAt, stageOf } from "../effort/room.js";
import type { GroupBasis } from "../group-basis.js";
import type { PieceGroup } from "../pieces/piece-group.js";
import { amountsOf, layTaxes, type ShoppingLine } from "../purchase/line.js";
import type { BoughtPieces } from "../purchase/lumber.js";
import { type CutCells, layCuts, type MeasuredPlan } from "../salvage/cut-cells.js";
import type { RoughCells } from "../salvage/rough-size.js";
import { type Cell, type Operand, over, type PlanProof, plus, sum, sumOr, times } from "../sheet/expression.js";
import { plain } from "../sheet/sheet.js";
import type { FacesToFinish } from "../takeoff/finish.js";
import type { FittedHardware } from "../takeoff/fitted-hardware.js";
import { layConsumables } from "./consumables.js";
import { layFinishing, type SplitGroup } from "./finishing.js";
import { layHire } from "./hire.js";
import { layLumber, type StockPlans } from "./lumber-lines.js";
import { layRouteFinish, type RouteFinish } from "./route-finish.js";
import { layRouteHardware, type RouteHardware } from "./route-hardware.js";

/** The plans behind one route. */
export interface RoutePlan extends StockPlans {
  readonly label: string;
  /** Whether a hired sawyer mills them. */
  readonly hired: boolean;
  /** Groups that the route is to mill. */
  readonly milled: ReadonlySet<string>;
  /** Those of them of which at least one piece comes from the logs. */
  readonly sawn: ReadonlySet<string>;
  readonly sawing: (MeasuredPlan & { readonly proof: PlanProof }) | undefined;
  readonly bought: readonly BoughtPieces[];
}

/** Costs and hours that every route has. */
export interface CommonCells {
  readonly lines: readonly ShoppingLine[];
  /** Person-hours of stages that all routes share. */
  readonly hours: Cell;
  /** Those stages, in the order of the work. */
  readonly stages: readonly Cell[];
  /** The joints of each group, by its name: each route cuts them in the wood that it has. */
  readonly joints: ReadonlyMap<string, JointHours>;
  /** The first of the shared stages that comes after the joints, and the first after the finish. */
  readonly afterJoints: Cell;
  readonly afterFinish: Cell;
  /** Those of them to which helpers come. */
  readonly raising: readonly Cell[];
  /** What concrete sets in; absent where none is poured. */
  readonly concrete: Cell | undefined;
  readonly finish: FacesToFinish;
  /** Hardware that each route needs for itself; undefined where milled and bought pieces take the same. */
  readonly fitted: FittedHardware | undefined;
  /** The user's own lines of money, and of person-hours. */
  readonly own: readonly Cell[];
  readonly ownHours: readonly Cell[];
}

/** A route as laid: lines, taxes, stages, cash, hours and total. */
export interface RouteCells {
  readonly plan: RoutePlan;
  readonly cuts: CutCells | undefined;
  readonly milling: MillingCells | undefined;
  /** Calendar time in the stack; undefined where nothing that is milled needs to dry. */
  readonly drying: DryingCells | undefined;
  readonly finish: RouteFinish;
  /** Hardware that is made for pieces of one size. */
  readonly hardware: RouteHardware;
  readonly split: readonly SplitGroup[];
  /** The joints of each group, by its name, in the wood of either way. */
  readonly joints: ReadonlyMap<string, JointHours>;
  /** Person-hours by stage, own to the route, in the order of the work. */
  readonly stages: readonly Cell[];
  /** The same with those that all routes share between them, and the user's own hours at the end. */
  readonly inOrder: readonly Cell[];
  /** Own and common person-hours. */
  readonly hours: Cell;
  /** Elapsed with the crew. */
  readonly elapsed: Cell;
  readonly lines: readonly ShoppingLine[];
  readonly taxes: readonly Cell[];
  /** Bought lumber without tax. */
  readonly lumber: Cell;
  readonly cash: Cell;
  /** Cash and hours at the value of an hour. */
  readonly total: Cell;
  /** How many lines have no price, common ones included. */
  readonly unpriced: number;
}

/** Lays one route under its key. */
export function layRoute(given: Basis, plan: RoutePlan, common: CommonCells): RouteCells {
  const basis = basisOf(given, plan);
  const { sheet, pricing, labor } = basis;
  const { key } = plan;
  sheet.title(key, plan.label);
  const cuts = plan.sawing && layCuts(basis, key, plan.sawing, plan.sawing.proof);
  const split = basis.groups.map((one): SplitGroup => ({ one, milled: milledPieces(basis, plan, one) }));
  const stickered = stickeredFaces(split);
  const milling = cuts && layMilling(basis, key, cuts, stickered);
  const lumberLines = layLumber(basis, plan);
  const fetched = lumberLines.filter(({ atHand }) => !atHand);
  const finishing = layFinishing(basis, key, split, fetched);
  const drying = layDrying(sheet, key, dryingPieces(basis, plan, split), basis.assumed);
  const finish = layRouteFinish(basis, key, split, common.finish);
  const pieces = [...(milling ? Object.values(milling.stages) : []), ...finishing.stages];
  const join = layJoining(sheet, key, split, common.joints);
  const stages = [...pieces, join, ...finish.stages];
  const own = sheet.lay(`${key}.hours.own`, sumOr(stages, "person-h"), {
    label: "hours of this route alone",
    display: "person-h",
  });
  const hours = sheet.lay(`${key}.hours.total`, plus(own, common.hours), {
    label: "hours in all",
    display: "person-h",
  });
  const elapsed = layElapsed(basis, key, { stages, milling }, common);
  const hardware = layRouteHardware(basis, key, split, common.fitted);
  const lines = [
    ...lumberLines.map((line) => ({ ...line, stage: "fetch" })),
    ...layConsumables(basis, key, { milling, finishing, cuts, common: common.lines }),
    ...layHire(basis, key, { stages: [...stages, ...common.stages], milling, raising: common.raising }),
    ...hardware.lines,
    ...finish.lines,
  ];
  const all = [...common.lines, ...lines];
  const lumber = sheet.lay(`${key}.lumber`, amountsOf(pricing, lumberLines), { label: "bought lumber, before tax" });
  const goods = sheet.lay(`${key}.goods`, amountsOf(pricing, all), { label: "all lines, before tax" });
  const taxes = layTaxes(pricing, key, basis.catalog.taxes, all);
  const forgone = logValue(basis, plan);
  const cash = sheet.lay(`${key}.cash`, plus(goods, ...taxes, ...(forgone ? [forgone] : []), ...common.own), {
    label: "cash",
  });
  const total = sheet.lay(`${key}.total`, plus(cash, times(hours, labor.valueOfHour)), {
    label: "cash and hours together",
  });
  const unpriced = all.filter(({ amount }) => !amount).length;
  const before = new Map([
    [common.afterJoints, [join]],
    [common.afterFinish, finish.stages],
  ]);
  const shared = common.stages.flatMap((cell) => [...(before.get(cell) ?? []), cell]);
  const inOrder = [...pieces, ...shared, ...common.ownHours];
  return {
    plan,
    cuts,
    milling,
    drying,
    finish,
    hardware,
    split,
    joints: common.joints,
    stages,
    inOrder,
    hours,
    elapsed,
    lines,
    taxes,
    lumber,
    cash,
    total,
    unpriced,
  };
}

/**
 * One stage after the other: the mill at its own pace with its own people, each other stage shared by as many of the crew,
 * and of the helpers where they come, as have room at it.
 */
function layElapsed(
  basis: Basis,
  key: string,
  own: { readonly stages: readonly Cell[]; readonly milling: MillingCells | undefined },
  common: CommonCells,
): Cell {
  const { sheet, labor } = basis;
  const shared = [...own.stages, ...common.stages].flatMap((cell) => {
    const stage = stageOf(cell);
    if (own.milling && isAtMill(basis, stage)) return [];
    return [over(cell, peopleAt(basis, stage, common.raising.includes(cell)))];
  });
  const added = common.ownHours.map((cell) => over(cell, labor.crew));
  return sheet.lay(`${key}.elapsed`, sum([...(own.milling ? [own.milling.millHours] : []), ...shared, ...added]), {
    label: "elapsed with the crew",
    display: "h",
  });
}

/** Groups of which a route mills pieces that must dry. */
function drying(
  split: readonly SplitGroup[],
): { readonly group: PieceGroup; readonly rough: RoughCells; milled: Cell }[] {
  return split.flatMap(({ one: { group, millable }, milled }) =>
    group.rules.seasoning === "dried" && milled && millable ? [{ group, rough: millable.rough, milled }] : [],
  );
}

/** Wide faces of the pieces that lie on stickers. */
function stickeredFaces(split: readonly SplitGroup[]): Operand {
  return sumOr(
    drying(split).map(({ rough, milled }) => times(milled, rough.width, rough.length)),
    "m2",
  );
}

/** Of groups of which the plan saws any: one that is bought whole, for the logs lack it, waits for nothing. */
function dryingPieces(basis: Basis, { sawn }: RoutePlan, split: readonly SplitGroup[]): DryingPiece[] {
  const logs = [...new Set(basis.logs.map(({ species }) => species))];
  const dried = drying(split).filter(({ group }) => sawn.has(group.name));
  return dried.map(({ group, rough }) => ({
    thickness: rough.thickness,
    species: logs.filter((id) => group.rules.species.length === 0 || group.rules.species.includes(id)),
  }));
}

/** How many pieces of a group come from the logs: all, or as many as the plan has. */
export function milledPieces({ sheet }: Basis, plan: RoutePlan, { group }: GroupBasis): Cell | undefined {
  if (!plan.milled.has(group.name) || !plan.sawing) return undefined;
  const bought = plan.bought.find((one) => one.substitution.group.name === group.name)?.count ?? 0;
  const unsold = plan.unsold.find((one) => one.group.group.name === group.name)?.count ?? 0;
  if (bought + unsold === 0) return group.count;
  const pieces = sheet.decide(group.count).minus(bought + unsold);
  const name = `${plan.key}.sawn.${group.name}`;
  return (
    sheet.find(name) ??
    sheet.planned(name, plain(pieces), plan.sawing.proof, {
      label: `${group.label}, from the logs`,
    })
  );
}

/** What the logs that are sawn would have fetched. */
function logValue(basis: Basis, plan: RoutePlan): Cell | undefined {
  const used = new Set(plan.sawing?.measures.logs.filter((log) => log.boltsSawn > 0).map((log) => log.log));
  const values = basis.logs.flatMap((log) => (used.has(log.name) && log.value ? [log.value] : []));
  if (values.length === 0) return undefined;
  return basis.sheet.lay(`${plan.key}.logValue`, sumOr(values, basis.pricing.currency), {
    label: "value of the logs used",
  });
}
