/**
 * What each log, slab and piece weighs, green and dry, and which lifts are over one person's load: how many people they
 * take, or which aid where more hands would stand in one another's way.
 * @see NIOSH 94-110: 51 lb (23 kg) at best, close to the body.
 */
import { type Decimal, decimal } from "../quantity/decimal.js";
import { type Quantity, quantity } from "../quantity/quantity.js";
import { wholeNumber } from "../quantity/whole.js";
import { explainSawing } from "../salvage/explain-sawing.js";
import { stockOf } from "../salvage/ripping.js";
import type { SawingPlan, SawingProblem, SawLog } from "../salvage/sawing-problem.js";
import type { SoundLog } from "../salvage/sound-wood.js";
import type { WoodCells } from "../salvage/wood.js";
import { aside, asideIn } from "../sheet/aside.js";
import type { Cell } from "../sheet/expression.js";
import type { WeightLine } from "../takeoff/weight.js";

/** Something that is lifted. */
export interface Load {
  readonly kind: "log" | "slab" | "piece";
  /** Log, or group; a slab by its log. */
  readonly name: string;
  readonly green: Quantity;
  readonly dry: Quantity;
  /** As it is lifted: logs and slabs green, pieces as they are raised. */
  readonly lifted: Quantity;
}

/** What lifts a load that is too much for one. */
export interface Means {
  /** Helpers, each at the load of one person or less; undefined where more would be needed than find a hold. */
  readonly people: number | undefined;
  readonly aid: "helpers" | "cart, rollers or levers" | "winch, tractor or lift";
}

/** A load that is too much for one. */
export interface Lift extends Load, Means {}

/** More than four get in each other's way; past sixteen times one's load nothing is moved by hand. Common practice. */
const MOST_HANDS = 4;
const MOST_LEVERS = 16;

/** Loads over what one carries, the heaviest first. @param load - What one person carries. */
export function liftsOf(loads: readonly Load[], load: Cell): Lift[] {
  return loads
    .flatMap((one): Lift[] => {
      const hands = handsFor(one.lifted.value, aside(load));
      return hands.gt(1) ? [{ ...one, ...meansFor(hands) }] : [];
    })
    .sort((a, b) => b.lifted.value.cmp(a.lifted.value));
}

const handsFor = (weight: Decimal, load: Decimal): Decimal =>
  load.gt(0) ? weight.dividedBy(load).toDecimalPlaces(9).ceil() : decimal(MOST_LEVERS + 1);

/** @param hands - Loads of one person in it, more than one; a fraction, which only an override can make it, needs one more. */
export function meansFor(hands: Decimal): Means {
  if (hands.lte(MOST_HANDS)) return { people: wholeNumber(hands.ceil()), aid: "helpers" };
  return { people: undefined, aid: hands.lte(MOST_LEVERS) ? "cart, rollers or levers" : "winch, tractor or lift" };
}

/** The slabs of one log that are too much for one, told together: the heaviest speaks for all. */
export interface LiftedTogether extends Lift {
  readonly count: number;
}

/** Loads of one log or group and kind, together; the heaviest first. @param lifts - The heaviest first. */
export function together(lifts: readonly Lift[]): LiftedTogether[] {
  const found = new Map<string, LiftedTogether>();
  for (const lift of lifts) {
    const key = `${lift.kind} ${lift.name}`;
    const known = found.get(key);
    found.set(key, known ? { ...known, count: known.count + 1 } : { ...lift, count: 1 });
  }
  return [...found.values()];
}

const quantityOf = (cell: Cell): Quantity => ({ value: aside(cell), unit: cell.unit, written: cell.display });

/** Logs by their sound wood. */
export function logLoads(logs: readonly SoundLog[], woods: ReadonlyMap<string, WoodCells>): Load[] {
  return logs.map(({ name, species, weight, scale }) => {
    const green = quantityOf(weight);
    const dry = weighed(asideIn(scale.smalian, "m3"), woods.get(species)?.dryDensity);
    return {
      kind: "log",
      name,
      green,
      dry: { ...dry, ...(green.written ? { written: green.written } : {}) },
      lifted: green,
    };
  });
}

/** Pieces, one of each group. */
export function pieceLoads(lines: readonly WeightLine[]): Load[] {
  return lines.map(({ group, green, dry, lifted }) => ({
    kind: "piece",
    name: group,
    green: quantityOf(green),
    dry: quantityOf(dry),
    lifted: quantityOf(lifted),
  }));
}

/**
 * Every slab of a plan that holds pieces, as it comes off the mill with its wany edges: thickness by the mean of its two
 * faces in the circle half way along the bolt. What is ripped from a slab in the stack only later weighs less.
 */
export function slabLoads(problem: SawingProblem, plan: SawingPlan, woods: ReadonlyMap<string, WoodCells>): Load[] {
  const logs = new Map(problem.logs.map((log) => [log.name, log]));
  const step = decimal(problem.gridMm).dividedBy(1000);
  return explainSawing(problem, plan).flatMap(({ log: name, bolts }) => {
    const log = logs.get(name) as SawLog;
    const wood = woods.get(log.species);
    return bolts.flatMap(({ z0, z1, slabs }) =>
      slabs.map(({ y0, y1 }): Load => {
        const volume = step.pow(3).times(stockOf(log, { x: ROUND, y: [y0, y1], z: [z0, z1] }));
        const green = weighed(volume, wood?.greenDensity);
        return { kind: "slab", name, green, dry: weighed(volume, wood?.dryDensity), lifted: green };
      }),
    );
  });
}

/** From edge to edge of the log. */
const ROUND = [Number.NEGATIVE_INFINITY, Number.POSITIVE_INFINITY] as const;

/** @param volume - In cubic metres. */
function weighed(volume: Decimal, density: Cell | undefined): Quantity {
  return quantity(density ? volume.times(asideIn(density, "kg/m3")) : decimal(0), "kg");
}
