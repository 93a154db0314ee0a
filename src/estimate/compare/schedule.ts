/** The calendar of one route: its own stages and the common ones, in the order of the work. */
import { type Basis, basisOf } from "../basis.js";
import { type Calendar, calendarOf } from "../effort/calendar.js";
import { setsFor } from "../effort/setting.js";
import type { StageWork } from "../effort/timeline.js";
import { asideIn } from "../sheet/aside.js";
import type { Cell } from "../sheet/expression.js";
import type { CommonCells, RouteCells } from "./route.js";

/** The mill's own people are at it; all others share the rest. */
const AT_MILL: ReadonlySet<string> = new Set(["setUp", "saw"]);

/** What waits for dried fascia alone: it is dressed late, and put up last. */
const WAITS_FOR_FASCIA: ReadonlySet<string> = new Set(["dress", "dressByHand", "sand", "trim", "cleanUp"]);

/** What needs no lumber that dries: everything up to the stack, and the bought lumber. */
const BEFORE_DRYING: ReadonlySet<string> = new Set(
  "dig pour getOut prepare setUp saw edge sharpen carry stack slabs fetch sort cut".split(" "),
);

/** Days of one route from the first log got out. */
export function scheduleOf(given: Basis, common: CommonCells, route: RouteCells): Calendar {
  const basis = basisOf(given, route.plan);
  const { labor } = basis;
  const needsDry = dryNeed(basis, route);
  const work = (cell: Cell): StageWork => {
    const stage = cell.name.split(".").at(-1) as string;
    return {
      stage,
      label: cell.label,
      personHours: asideIn(cell, "person-h"),
      people: peopleAt(basis, common, cell, stage),
      atMill: AT_MILL.has(stage),
      needsDry: needsDry(stage),
      sets: setsFor(common.setting, stage),
    };
  };
  const { drying } = route;
  return calendarOf({
    stages: [...route.stages, ...common.stages, ...common.ownHours].map(work),
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

function peopleAt({ mill, labor }: Basis, common: CommonCells, cell: Cell, stage: string) {
  if (AT_MILL.has(stage)) return asideIn(mill.crew, "people");
  const crew = asideIn(labor.crew, "people");
  return common.raising.includes(cell) ? crew.plus(asideIn(labor.helpers, "people")) : crew;
}

/** Dried fascia holds up little; anything else that dries holds up the frame, from its dressing on. */
function dryNeed(basis: Basis, { plan }: RouteCells): (stage: string) => boolean {
  const dried = basis.groups.filter(({ group }) => group.rules.seasoning === "dried" && plan.sawn.has(group.name));
  if (dried.length === 0) return () => false;
  const fasciaOnly = dried.every(({ group }) => group.role === "fascia");
  return (stage) => (fasciaOnly ? WAITS_FOR_FASCIA.has(stage) : !BEFORE_DRYING.has(stage));
}
