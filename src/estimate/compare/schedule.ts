/** The calendar of one route: its own stages and the common ones, in the order of the work. */
import { type Basis, basisOf } from "../basis.js";
import { brushingOf } from "../effort/brushing.js";
import { easing, isTried } from "../effort/building.js";
import { type Calendar, calendarOf } from "../effort/calendar.js";
import { isAtMill, peopleAt, stageOf } from "../effort/room.js";
import { setsFor } from "../effort/setting.js";
import type { StageWork } from "../effort/timeline.js";
import type { GroupBasis } from "../group-basis.js";
import { type Decimal, ZERO } from "../quantity/decimal.js";
import { inUnit } from "../quantity/quantity.js";
import { aside, asideIn } from "../sheet/aside.js";
import { evaluate } from "../sheet/evaluate.js";
import { type Cell, expressionOf, type Operand, over, plus, sum, times } from "../sheet/expression.js";
import { textureOf } from "../takeoff/finish.js";
import { type CommonCells, milledPieces, type RouteCells } from "./route.js";

/** What needs no lumber that dries: everything up to the stack, and the bought lumber. */
const BEFORE_DRYING: ReadonlySet<string> = new Set(
  "dig pour getOut prepare setUp saw edge sharpen carry stack slabs fetch sort cut".split(" "),
);

/** Of what comes after, the stages that dried fascia holds up: eave trim lies on it, and the covering over that. */
const AFTER_FASCIA: ReadonlySet<string> = new Set(["eaves", "roof", "trim", "cleanUp"]);

/** Stages that fit the pieces of the frame together on the ground: they wait where any of those dries. */
const TRIAL: ReadonlySet<string> = new Set(["trialAssemble", "dismantle"]);

/** Groups that a route saws and that have to dry. */
export const driedGroups = ({ groups }: Basis, { plan }: RouteCells): GroupBasis[] =>
  groups.filter(({ group }) => group.rules.seasoning === "dried" && plan.sawn.has(group.name));

/** Days of one route from the first log got out. */
export const scheduleOf = (given: Basis, common: CommonCells, route: RouteCells): Calendar =>
  scheduled(given, common, route, driedGroups(given, route));

/** The same, were none of its lumber to dry. */
export const scheduleWithoutDrying = (given: Basis, common: CommonCells, route: RouteCells): Calendar =>
  scheduled(given, common, { ...route, drying: undefined }, []);

function scheduled(given: Basis, common: CommonCells, route: RouteCells, dried: readonly GroupBasis[]): Calendar {
  const basis = basisOf(given, route.plan);
  const { labor } = basis;
  const works = (cell: Cell): StageWork[] => {
    // A line of one's own is nobody's stage, whatever its name.
    const own = common.ownHours.includes(cell);
    const stage = own ? cell.name : stageOf(cell);
    const helped = common.raising.includes(cell);
    const work = {
      stage,
      label: cell.label,
      people: valueIn(peopleAt(basis, stage, helped), "people"),
      ...(helped && { helpers: asideIn(labor.helpers, "people") }),
      atMill: isAtMill(basis, stage),
      sets: setsFor({ concrete: common.concrete, coat: route.finish.coat }, stage),
    };
    return inParts(asideIn(cell, "person-h"), driedHours(basis, route, stage, dried)).map((part) => ({
      ...work,
      ...part,
    }));
  };
  const { drying } = route;
  return calendarOf({
    stages: route.inOrder.flatMap(works),
    drying: drying && {
      soonest: asideIn(drying.soonest, "day"),
      likely: asideIn(drying.likely, "day"),
      latest: asideIn(drying.latest, "day"),
    },
    crew: asideIn(labor.crew, "people"),
    hoursPerDay: asideIn(labor.hoursPerDay, "h/day"),
    hoursPerWeek: asideIn(labor.hoursPerWeek, "h/week"),
  });
}

type Part = Pick<StageWork, "personHours" | "needsDry" | "part">;

/** A stage whole, or what need not wait for dry lumber ahead of what does. */
function inParts(all: Decimal, dried: Decimal | "all"): Part[] {
  if (dried === "all" || dried.gte(all)) return [{ personHours: all, needsDry: dried === "all" || dried.gt(0) }];
  if (dried.isZero()) return [{ personHours: all, needsDry: false }];
  return [
    { personHours: all.minus(dried), needsDry: false, part: "green" },
    { personHours: dried, needsDry: true, part: "dried" },
  ];
}

/**
 * Person-hours of a stage that wait until the lumber is dry: those of the pieces that dry, where each is worked by itself;
 * all, from the finish on, where anything of the frame dries. Fascia alone is brushed and moved after the others.
 */
function driedHours(basis: Basis, route: RouteCells, stage: string, dried: readonly GroupBasis[]): Decimal | "all" {
  if (dried.length === 0 || BEFORE_DRYING.has(stage)) return ZERO;
  const fasciaOnly = dried.every(({ group }) => group.role === "fascia");
  const pieceWork = PIECE_WORK[stage] ?? (fasciaOnly ? FASCIA_WORK[stage] : undefined);
  if (pieceWork) {
    const hours = dried.map((one) => {
      const work = pieceWork(basis, one, milledPieces(basis, route.plan, one) ?? one.group.count, route);
      return work ? valueIn(work, "person-h") : ZERO;
    });
    return hours.reduce((sum, one) => sum.plus(one), ZERO);
  }
  if (fasciaOnly) return AFTER_FASCIA.has(stage) ? "all" : ZERO;
  return TRIAL.has(stage) && !dried.some(({ group }) => isTried(group)) ? ZERO : "all";
}

type PieceWork = (basis: Basis, one: GroupBasis, milled: Cell, route: RouteCells) => Operand | undefined;

const dressed =
  (by: "byMachine" | "byHand"): PieceWork =>
  (_, { millable }, milled) =>
    millable && times(milled, millable.dressing[by]);

const brushed =
  (coat: "first" | "later"): PieceWork =>
  ({ sheet, assumed }, { group }, milled, { finish }) => {
    const shown = sheet.find(`finish.${group.name}.area`);
    const faces = shown && over(times(shown, milled), group.count);
    return faces && brushingOf(finish.takeoff, { texture: textureOf(group), faces, coat }, assumed);
  };

/** Person-time of one group's dried pieces in the stages that take them one by one. */
const PIECE_WORK: Readonly<Record<string, PieceWork>> = {
  dress: dressed("byMachine"),
  dressByHand: dressed("byHand"),
  sand: ({ assumed }, { group, millable }, milled) => {
    if (!millable || group.rules.surface !== "dressed") return undefined;
    const faces = over(times(milled, millable.dressing.surfaceEach), assumed.cell("rate.sand"));
    return times(plus(faces, easing(times(milled, group.length), assumed)), assumed.cell("pace"));
  },
  join: ({ sheet }, { group }, milled) => {
    const all = sheet.find(`work.${group.name}.join`);
    return all && over(times(all, milled), group.count);
  },
};

/** The same of the stages that come after, where nothing but fascia dries. */
const FASCIA_WORK: Readonly<Record<string, PieceWork>> = {
  finishFirst: brushed("first"),
  finishLater: brushed("later"),
  move: ({ sheet, groups }, { group }, milled) => {
    const weightOf = (name: string) => sheet.find(`weight.${name}.lifted`);
    const all = groups.flatMap((one) => {
      const weight = weightOf(one.group.name);
      return weight ? [times(one.group.count, weight)] : [];
    });
    const [hours, own] = [sheet.find("common.hours.move"), weightOf(group.name)];
    return hours && own && over(times(hours, milled, own), sum(all));
  },
};

/** Value now, for showing: no formula hangs on it. */
function valueIn(formula: Operand, unit: string): Decimal {
  const expression = expressionOf(formula);
  return inUnit({ value: evaluate(expression, aside), unit: expression.unit }, unit);
}
