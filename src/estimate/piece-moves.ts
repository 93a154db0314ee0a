/**
 * The best mix of a small job, improved piece by piece: of one group after the other a piece more comes from the logs or from the
 * yard, the logs are planned for just these pieces, and the whole route is priced. So what plans of whole groups and the plan of the
 * bound only guess at has its say: whole sticks, boards at hand, bulk prices, hire by the day, a lorry, a least charge.
 */
import { type Basis, basisOf } from "./basis.js";
import type { MixFound } from "./best-mix.js";
import type { MixPoint } from "./compare/mix-point.js";
import { runsOf } from "./compare/mix-search.js";
import type { RoutePlan } from "./compare/route.js";
import { forWantOfPrice } from "./compare/unpriced.js";
import type { GroupBasis } from "./group-basis.js";
import { mixLabel } from "./joint-route.js";
import type { BestMix } from "./mix-choice.js";
import { isPinned, pinnedPrice, roughPrice } from "./piece-price.js";
import { keptWhole, knowing, type Planners, planRoute, roughWanted } from "./plan.js";
import { type Decimal, ZERO } from "./quantity/decimal.js";
import type { SawingProblem } from "./salvage/sawing-problem.js";
import { inFloats } from "./salvage/sawing-question.js";

/** Pieces planned in all moves: a job of ten is planned 24 times, each in some tens of milliseconds. */
const MOST_PLANNED = 240;
/** Mixes of whole groups planned before: of random short lists one in eighty wanted the sixth. Assumption, measured. */
const MIXES = 6;
/** Below so many plans no group would be tried on both sides. */
const LEAST_TURNS = 8;

/** Rough pieces that come from the logs, by their group. */
type Sawn = ReadonlyMap<string, number>;

/** The best mix of a small job, or a better one near it; that of a large job as it is. */
export function improvedByPiece(basis: Basis, found: MixFound, best: BestMix, planners: Planners): BestMix {
  const groups = basis.groups.filter((one) => one.millable);
  const wanted = new Map(groups.map((one) => [one.group.name, roughWanted(basis, one)]));
  const turns = Math.floor(MOST_PLANNED / Math.max(1, sum(wanted)));
  if (turns < LEAST_TURNS) return best;
  const { hired } = best.plan;
  const planned = (sawn: Sawn, worth: Worth, sawing = planners.sawing): RoutePlan =>
    planOf(basisOf(basis, { hired }), sawn, knowing({ ...planners, sawing }, found.learntOf(hired)), worth);
  const priced = (sawn: Sawn): MixPoint => found.price(planned(sawn, byPrice(basis)));
  const free = freeRuns(basis, groups);
  const made = new Map<string, MixPoint>();
  let now = best.point;
  let at = sawnOf(best.plan, wanted);
  const make = (next: Sawn): void => {
    const point = priced(next);
    made.set(keyOf(next), point);
    if (found.better(point, now)) [now, at] = [point, next];
  };
  make(at);
  // Mixes that the careful sawyer's rule thinks dearer may be the cheaper once they are planned.
  for (const mix of mixesOf(found, hired, wanted).slice(0, MIXES)) if (!made.has(keyOf(mix))) make(mix);
  for (let turn = 1; turn < turns; turn++) {
    const next = movesOf(at, wanted, free).find((one) => !made.has(keyOf(one)));
    if (!next) break;
    make(next);
  }
  // What was found and all of it from the logs, each planned well: quick plans of few logs may be far off.
  const ends = keyOf(at) === keyOf(wanted) ? [at] : [at, wanted];
  const well = ends
    .filter((sawn) => sum(sawn) > 0)
    .flatMap((sawn) => {
      const plan = planned(sawn, byPrice(basis), planners.joint);
      const lacks = sum(sawnOf(plan, wanted)) < sum(sawn);
      return lacks ? [plan, planned(sawn, bySize, planners.joint)] : [plan];
    });
  return best.among([...made.values(), ...well.map(found.price)]);
}

/** What leaving a piece out counts for, in money. */
type Worth = (group: Sized, all: readonly Sized[]) => number;
type Sized = SawingProblem["groups"][number];

/** By its price: where not all will come out of the logs, the cheapest are bought. */
function byPrice(basis: Basis): Worth {
  const worth = new Map(basis.groups.map((one) => [one.group.name, pinnedPrice(roughPrice(basis, one))]));
  return ({ name }) => inFloats({ cash: worth.get(name) as Decimal, hours: ZERO }).cash;
}

/**
 * By the square of its share of the largest: small pieces find room between large ones, never the other way round. Of one list of 27
 * pieces that four logs hold, all were found by five seeds of six; by price by none to two.
 */
const bySize: Worth = (group, all) => LARGEST * (volumeOf(group) / Math.max(...all.map(volumeOf))) ** 2;

/** What the largest piece is worth. Assumption: far more than sawing it costs; measured alike from 500 to 50,000. */
const LARGEST = 1000;

const volumeOf = ({ thickness, width, length }: Sized): number => thickness * width * length;

const sum = (counts: Sawn): number => [...counts.values()].reduce((all, count) => all + count, 0);

const keyOf = (sawn: Sawn): string => [...sawn.values()].join(" ");

/** What a plan saws of every group that may be milled. */
function sawnOf({ milled, sawing }: RoutePlan, wanted: Sawn): Sawn {
  const of = (name: string, count: number) => (sawing && milled.has(name) ? count - (sawing.plan.buy[name] ?? 0) : 0);
  return new Map([...wanted].map(([name, count]) => [name, of(name, count)]));
}

/** All pieces of the groups that each mix tried mills, the cheapest first. */
const mixesOf = ({ tried, better }: MixFound, hired: boolean, wanted: Sawn): readonly Sawn[] =>
  tried
    .filter(({ plan }) => plan?.hired === hired)
    .toSorted((a, b) => (better(a, b) ? -1 : better(b, a) ? 1 : 0))
    .map(({ milled }) => new Map([...wanted].map(([name, count]) => [name, milled.has(name) ? count : 0])));

/** Just these pieces from the logs, as far as they hold them, those of most worth first; the others bought. */
function planOf(basis: Basis, sawn: Sawn, planners: Planners, worth: Worth): RoutePlan {
  const milled = new Set([...sawn].flatMap(([name, count]) => (count > 0 ? [name] : [])));
  const sawing = (problem: SawingProblem) => {
    const groups = problem.groups.map((group) => ({
      ...group,
      count: sawn.get(group.name) as number,
      buy: { cash: worth(group, problem.groups), hours: 0 },
    }));
    const { plan, proof } = planners.sawing({ ...problem, groups });
    const bought = problem.groups.flatMap(({ name, count }): [string, number][] => {
      const rest = count - (sawn.get(name) as number) + (plan.buy[name] ?? 0);
      return rest > 0 ? [[name, rest]] : [];
    });
    return { plan: { ...plan, buy: Object.fromEntries(bought) }, proof };
  };
  return planRoute(basis, "mixed", mixLabel(basis.sawyer !== undefined), milled, { ...planners, sawing }, undefined);
}

/** Groups that change sides together: runs of which the yard sells another measure, every other group by itself. */
function freeRuns(basis: Basis, groups: readonly GroupBasis[]): readonly FreeRun[] {
  const unpriced = forWantOfPrice(basis);
  const free = groups.filter((one) => !isPinned(one) && !unpriced.includes(one));
  const whole = free.filter((one) => keptWhole(basis, one)).map(({ group }) => group.name);
  const single = free.map(({ group }) => group.name).filter((name) => !whole.includes(name));
  return [...single.map((name) => ({ names: [name], whole: false })), ...runsOf(whole).map(asWhole)];
}

const asWhole = (names: readonly string[]): FreeRun => ({ names, whole: true });

interface FreeRun {
  readonly names: readonly string[];
  /** On one side or the other, never on both. */
  readonly whole: boolean;
}

/**
 * From the nearest on: a piece more or less of a group, all of it or none, a piece of one in place of one of another, then any number
 * of a group. Of what stays whole, all or none.
 */
function movesOf(at: Sawn, wanted: Sawn, runs: readonly FreeRun[]): readonly Sawn[] {
  const most = (name: string): number => wanted.get(name) as number;
  const single = runs.flatMap(({ names, whole }) => (whole ? [] : names));
  const moved = (changes: Sawn): Sawn[] => {
    const within = [...changes].every(([name, count]) => count >= 0 && count <= most(name));
    return within ? [new Map([...at, ...changes])] : [];
  };
  const step = (name: string, by: number): [string, number] => [name, (at.get(name) as number) + by];
  const ends = runs.flatMap(({ names }) => [
    ...moved(new Map(names.map((name) => [name, 0]))),
    ...moved(new Map(names.map((name) => [name, most(name)]))),
  ]);
  const steps = single.flatMap((name) => [-1, 1].flatMap((by) => moved(new Map([step(name, by)]))));
  const swaps = single.flatMap((more) =>
    single.flatMap((less) => (more === less ? [] : moved(new Map([step(more, 1), step(less, -1)])))),
  );
  const others = single.flatMap((name) =>
    Array.from({ length: most(name) }, (_, count) => moved(new Map([[name, count]]))).flat(),
  );
  return [...steps, ...ends, ...swaps, ...others];
}
