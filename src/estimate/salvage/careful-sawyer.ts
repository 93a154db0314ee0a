/**
 * The plan of a careful sawyer, by rule and without search: largest pieces first, each from the log that gives most
 * for it, bucked to the pieces' lengths, opened at the heart, boards taken outward, and every wanted smaller piece
 * taken from what is left. It mills whatever the logs hold; what to mill is the caller's question.
 *
 * It is the rule that the optimiser is measured against, and the plan it starts from.
 */
import { type Bolt, layBolt, passesMill, seatPiece, speciesServes } from "./bolt.js";
import { type BoltPattern, layLogPlan, type SlabPattern } from "./sawing-pattern.js";
import type { SawGroup, SawingPlan, SawingProblem, SawLog, SawShop } from "./sawing-problem.js";
import { fillSlab, stripWidth, takeOff, type Want } from "./slab-filling.js";

/** Logs looked over for one bolt, thin to thick. Assumption: more looking gains nothing that a rule would find. */
const LOGS_LOOKED_OVER = 8;
/** A bolt is bucked to at most so many lengths of its first piece. Assumption. */
const LENGTHS_A_BOLT = 3;

/** A log and the bolts bucked from it so far; [0, top] still lies uncut. */
interface Standing {
  readonly log: SawLog;
  top: number;
  readonly bolts: BoltPattern[];
}

interface Choice {
  readonly standing: Standing;
  readonly bolt: Bolt;
  readonly slabs: readonly SlabPattern[];
  /** Wanted pieces' share of the wood of the bolt. */
  readonly recovery: number;
}

/** A plan by rule, also as patterns of bolts, by name of the log: what the optimiser starts from. */
export interface CarefulPlan {
  readonly plan: SawingPlan;
  readonly bolts: ReadonlyMap<string, readonly BoltPattern[]>;
}

/** Plans all logs by rule. Every call gives the same plan for the same problem; ties go by name. */
export function carefulSawyer(problem: SawingProblem): SawingPlan {
  return carefulPlan(problem).plan;
}

/** The same with its bolts. */
export function carefulPlan(problem: SawingProblem): CarefulPlan {
  const { yard, wants } = sawAll(problem);
  const used = yard.filter(({ bolts }) => bolts.length > 0);
  const buy = wants.filter(({ open }) => open > 0).map(({ group, open }) => [group.name, open] as const);
  const plan = {
    gridMm: problem.gridMm,
    logs: used.map(({ log, bolts }) => layLogPlan(log, problem.shop, bolts)),
    buy: Object.fromEntries(buy.sort(([a], [b]) => (a < b ? -1 : 1))),
  };
  return { plan, bolts: new Map(yard.map(({ log, bolts }) => [log.name, bolts])) };
}

function sawAll(problem: SawingProblem): { yard: Standing[]; wants: Want[] } {
  const wants = largestFirst(problem.groups).map((group): Want => ({ group, open: group.count }));
  const yard = problem.logs.map((log): Standing => ({ log, top: Math.floor(log.length), bolts: [] }));
  for (const want of wants) {
    while (want.open > 0) {
      const best = bestBolt(problem.shop, yard, wants, want);
      if (best === null) break;
      commit(problem.shop, wants, best);
    }
  }
  return { yard, wants };
}

/** What is pinned, then the largest section first, then the longest; boxed pieces before others of their size, for they need the heart. */
function largestFirst(groups: readonly SawGroup[]): SawGroup[] {
  const section = (g: SawGroup) => g.thickness * g.width;
  const boxed = (g: SawGroup) => (g.heart === "boxed" ? 1 : 0);
  const pinned = (g: SawGroup) => (g.pinned ? 1 : 0);
  return groups
    .filter((g) => g.count > 0)
    .sort(
      (a, b) =>
        pinned(b) - pinned(a) ||
        section(b) - section(a) ||
        boxed(b) - boxed(a) ||
        b.length - a.length ||
        (a.name < b.name ? -1 : 1),
    );
}

function commit(shop: SawShop, wants: readonly Want[], { standing, bolt, slabs }: Choice): void {
  for (const slab of slabs) for (const strip of slab.strips) takeOff(wants, strip.pieces);
  standing.bolts.push({ z0: bolt.z0, z1: bolt.z1, slabs });
  standing.top = bolt.z0 - shop.buckKerf;
}

/** The bolt, of the logs looked over, of which most becomes wanted pieces. */
function bestBolt(shop: SawShop, yard: readonly Standing[], wants: readonly Want[], want: Want): Choice | null {
  const seats = yard.flatMap((standing) => {
    const bolt = speciesServes(standing.log, want.group) ? firstSeat(shop, standing, want.group, 1) : null;
    return bolt === null ? [] : [{ standing, bolt }];
  });
  seats.sort((a, b) => a.bolt.radius - b.bolt.radius || (a.standing.log.name < b.standing.log.name ? -1 : 1));
  let best: Choice | null = null;
  for (const seat of lookedOver(seats)) {
    for (let lengths = 1; lengths <= LENGTHS_A_BOLT; lengths++) {
      const bolt = lengths === 1 ? seat.bolt : firstSeat(shop, seat.standing, want.group, lengths);
      if (bolt === null) break;
      const choice = drawBolt(shop, seat.standing, bolt, wants, want);
      if (choice !== null && (best === null || choice.recovery > best.recovery + 1e-9)) best = choice;
    }
  }
  return best;
}

function lookedOver<T>(items: readonly T[]): T[] {
  if (items.length <= LOGS_LOOKED_OVER) return [...items];
  const step = (items.length - 1) / (LOGS_LOOKED_OVER - 1);
  return Array.from({ length: LOGS_LOOKED_OVER }, (_, i) => items[Math.round(i * step)] as T);
}

/** The bolt nearest the butt that passes the mill and holds the piece: the butt itself if it can be. */
function firstSeat(shop: SawShop, { log, top }: Standing, group: SawGroup, lengths: number): Bolt | null {
  const length = lengths * group.length + (lengths - 1) * shop.crossKerf;
  if (length > shop.longestBolt) return null;
  const step = Math.max(shop.buckKerf, Math.ceil(group.length / 8), 1);
  for (let z1 = top; z1 >= length; z1 -= step) {
    const bolt = layBolt(log, shop, z1 - length, z1);
    if (passesMill(bolt, shop) && seatPiece(bolt, group) !== null) return bolt;
  }
  return null;
}

/** Draws the bolt opened in each of the usual ways and keeps the drawing with the most wanted wood. */
function drawBolt(shop: SawShop, standing: Standing, bolt: Bolt, wants: readonly Want[], want: Want): Choice | null {
  let best: Choice | null = null;
  const fitting = wants.filter(
    ({ open, group }) => open > 0 && group.length <= bolt.length && speciesServes(standing.log, group),
  );
  for (const opening of openings(bolt, shop, want.group)) {
    const slabs = drawFrom(shop, bolt, fitting, want, opening);
    const sawn = slabs.flatMap((slab) => slab.strips).flatMap((strip) => strip.pieces);
    if (!sawn.includes(want.group)) continue;
    const wood = sawn.reduce((sum, g) => sum + g.thickness * g.width * g.length, 0);
    const recovery = wood / ((Math.PI / 4) * bolt.midDiameter ** 2 * bolt.length);
    if (best === null || recovery > best.recovery + 1e-9) best = { standing, bolt, slabs, recovery };
  }
  return best;
}

interface Opening {
  readonly y0: number;
  readonly thickness: number;
}

/** First slabs a sawyer would try: over the heart lying or on edge, beside a kerf through the heart, or clear of it. */
function openings(bolt: Bolt, shop: SawShop, group: SawGroup): Opening[] {
  const sizes = group.thickness === group.width ? [group.thickness] : [group.thickness, group.width];
  const clear = Math.ceil(Math.max(bolt.rotRadius, group.heart === "free" ? bolt.pithRadius : 0));
  return sizes.flatMap((thickness) => {
    const over = { y0: -Math.floor(thickness / 2), thickness };
    if (group.heart === "boxed") return [over];
    const beside = { y0: Math.ceil(shop.millKerf / 2), thickness };
    return clear > 0 ? [over, beside, { y0: clear, thickness }] : [over, beside];
  });
}

/**
 * The first slab, then outward to both faces, the largest piece that each place holds.
 * @param fitting - What is wanted, no longer than the bolt and of its wood.
 */
function drawFrom(
  shop: SawShop,
  bolt: Bolt,
  fitting: readonly Want[],
  want: Want,
  { y0, thickness }: Opening,
): SlabPattern[] {
  const open = fitting.map((w): Want => ({ group: w.group, open: w.open }));
  const first = fillSlab(bolt, shop, open, open.find((w) => w.group === want.group) as Want, y0, thickness);
  if (first === null) return [];
  const slabs = [first];
  for (let top = y0 + thickness; ; ) {
    const next = nextSlab(shop, bolt, open, (t) => ({ y0: top + shop.millKerf, thickness: t }));
    if (next === null) break;
    slabs.push(next);
    top = next.y0 + next.thickness;
  }
  for (let bottom = y0; ; ) {
    const next = nextSlab(shop, bolt, open, (t) => ({ y0: bottom - shop.millKerf - t, thickness: t }));
    if (next === null) break;
    slabs.unshift(next);
    bottom = next.y0;
  }
  return slabs;
}

/** The slab for the first group, largest first, that the place holds: lying, or on edge where that yields it. */
function nextSlab(shop: SawShop, bolt: Bolt, open: readonly Want[], place: (thickness: number) => Opening) {
  for (const want of open) {
    if (want.open <= 0) continue;
    for (const thickness of new Set([want.group.thickness, want.group.width])) {
      if (stripWidth(shop, want.group, thickness) === 0) continue;
      const at = place(thickness);
      const slab = fillSlab(bolt, shop, open, want, at.y0, at.thickness);
      if (slab !== null) return slab;
    }
  }
  return null;
}
