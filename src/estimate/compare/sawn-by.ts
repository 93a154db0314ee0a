/** With which saws a plan makes the pieces of each group: on the mill alone, at the table saw, or along a guide, and why. */
import type { Basis } from "../basis.js";
import { machinesOf } from "../effort/dressing.js";
import type { SawnBy } from "../effort/dressing-choice.js";
import { decimal } from "../quantity/decimal.js";
import { displayUnits } from "../quantity/display.js";
import { inUnit, quantity } from "../quantity/quantity.js";
import { marked, shown } from "../quantity/text.js";
import { unit } from "../quantity/unit.js";
import type { Part } from "../salvage/cut-walk.js";
import { explainSawing, type SlabSteps } from "../salvage/explain-sawing.js";
import { isGuided, stockOf } from "../salvage/ripping.js";
import type { SawLog } from "../salvage/sawing-problem.js";
import { aside, asideIn } from "../sheet/aside.js";
import type { Cell } from "../sheet/expression.js";
import type { RoutePlan } from "./route.js";

type Stock = Pick<Part, "x" | "y" | "z">;

/** A slab as it comes off the mill, before any of its edges is ripped. */
interface OffTheMill {
  readonly log: SawLog;
  readonly stock: Stock;
  readonly slab: SlabSteps;
}

/** Saws by the group whose pieces they make. */
export function sawsOf(basis: Basis, { sawing }: RoutePlan): ReadonlyMap<string, SawnBy> {
  const saws = new Map<string, SawnBy>();
  if (!sawing) return saws;
  for (const { log, stock, slab } of slabsOf(sawing)) {
    const ripped = !slab.onMill && slab.rips.length > 0;
    const guide = ripped && isGuided(log, stock, basis.feeding) ? whyGuided(basis, log, stock) : undefined;
    for (const { group } of slab.strips.flatMap(({ pieces }) => pieces)) {
      const known = saws.get(group);
      const first = known?.guide ?? guide;
      const tableSaw = (known?.tableSaw ?? false) || (ripped && !guide);
      saws.set(group, { tableSaw, ...(first ? { guide: first } : {}) });
    }
  }
  return saws;
}

const ROUND = [Number.NEGATIVE_INFINITY, Number.POSITIVE_INFINITY] as const;

function slabsOf({ problem, plan }: NonNullable<RoutePlan["sawing"]>): OffTheMill[] {
  const logs = new Map(problem.logs.map((log) => [log.name, log]));
  return explainSawing(problem, plan).flatMap(({ log, bolts }) =>
    bolts.flatMap(({ z0, z1, slabs }) =>
      slabs.map((slab) => ({
        log: logs.get(log) as SawLog,
        stock: { x: ROUND, y: [slab.y0, slab.y1], z: [z0, z1] } as const,
        slab,
      })),
    ),
  );
}

/** `a slab of 130 lb is too heavy to feed, at most 100 lb`. */
function whyGuided(basis: Basis, log: SawLog, stock: Stock): string {
  const { request, assumed, woods, sawing, feeding } = basis;
  const { system } = request;
  if (!machinesOf(request.shop).tableSaw) return "there is no table saw";
  const millimetres = decimal(stock.z[1] - stock.z[0]).times(sawing.gridMm);
  const most = (name: string): Cell => assumed.cell(name);
  if (stock.z[1] - stock.z[0] > feeding.longest) {
    const longest = quantity(aside(most("dress.longest")), "mm");
    return `a slab of ${marked(quantity(millimetres, "mm"), system)} is too long to feed, at most ${marked(longest, system)}`;
  }
  const mass = unit(displayUnits(system).mass);
  const density = woods.get(log.species)?.greenDensity;
  const volume = decimal(stockOf(log, stock)).times(sawing.gridMm.pow(3));
  const weight = density ? volume.times(asideIn(density, "kg/mm3")) : decimal(0);
  const heaviest = most("dress.heaviest");
  const said = (kilograms: typeof weight) => {
    const { symbol } = mass;
    return shown(quantity(inUnit(quantity(kilograms, "kg"), symbol).toDecimalPlaces(0), symbol), mass);
  };
  return `a slab of ${said(weight)} is too heavy to feed, at most ${said(asideIn(heaviest, "kg"))}`;
}
