/** The board with the most wood that fits one part of a log: where it lies in the sound wood, and how long it is. */
import { boltSweep, clearOf, diameterAt, halfChord, millSaws, nearestToAxis, rotDiameterAt } from "./bolt.js";
import type { Part } from "./cut-walk.js";
import type { SawLog, SawShop } from "./sawing-problem.js";

/** A section worth having, rough, grid steps; thickness ≤ width. */
export interface SoughtSection {
  readonly name: string;
  readonly thickness: number;
  readonly width: number;
}

/** Sections worth having, the most wood first, and the lengths worth having: `step` apart, from `least`. Grid steps. */
export interface Sought {
  readonly sections: readonly SoughtSection[];
  readonly least: number;
  readonly step: number;
}

/** The bolt that a part was sawn from, and the saws. */
export interface InBolt {
  readonly log: SawLog;
  readonly shop: SawShop;
  readonly bolt: readonly [z0: number, z1: number];
}

type Interval = readonly [lo: number, hi: number];

/** A board in a part: its box about the bolt's sawing axis. */
export interface PlacedBoard {
  readonly section: SoughtSection;
  readonly x: Interval;
  readonly y: Interval;
  readonly z: Interval;
}

/** Sound wood about the sawing axis along a stretch of the bolt. */
interface Sound {
  readonly radius: number;
  readonly rotRadius: number;
}

/** The board of most wood, the first listed where two have as much; null when none fits. */
export function bestBoard(where: InBolt, part: Part, sought: Sought): PlacedBoard | null {
  const longest = Math.floor((part.z[1] - part.z[0] - sought.least) / sought.step);
  let best: PlacedBoard | null = null;
  let most = 0;
  for (const section of sought.sections) {
    const area = section.thickness * section.width;
    for (const lying of section.thickness === section.width ? [true] : [true, false]) {
      for (const atLargeEnd of [true, false]) {
        const least = Math.max(0, Math.floor((most / area - sought.least) / sought.step));
        const place = (steps: number) =>
          fitting(where, part, { section, lying, atLargeEnd, length: sought.least + steps * sought.step });
        const found = longestFitting(place, least, longest);
        if (found === null) continue;
        const wood = area * (found.z[1] - found.z[0]);
        if (wood > most) [most, best] = [wood, { section, ...found }];
      }
    }
  }
  return best;
}

type Box = Omit<PlacedBoard, "section">;

/** The longest that fits: a longer board never fits where a shorter one of the same end does not. */
function longestFitting(place: (steps: number) => Box | null, least: number, longest: number): Box | null {
  let found = least > longest ? null : place(least);
  if (found === null) return null;
  let [low, high] = [least + 1, longest];
  while (low <= high) {
    const middle = Math.ceil((low + high) / 2);
    const box = place(middle);
    if (box === null) high = middle - 1;
    else [found, low] = [box, middle + 1];
  }
  return found;
}

/** A board to be placed: whether its wide face lies in the plane of the slabs, which end of the part it starts from. */
interface Wanted {
  readonly section: SoughtSection;
  readonly lying: boolean;
  readonly atLargeEnd: boolean;
  readonly length: number;
}

/** Where it lies in the part's sound wood, the flat faces of the part used first; null when it does not fit. */
function fitting(where: InBolt, part: Part, { section, lying, atLargeEnd, length }: Wanted): Box | null {
  const { thickness, width } = section;
  const [high, wide] = lying ? [thickness, width] : [width, thickness];
  const { log, shop } = where;
  if (!millSaws(shop, high, wide)) return null;
  const fromEnd = atLargeEnd === log.largeDiameter >= log.smallDiameter;
  const z: Interval = fromEnd ? [part.z[1] - length, part.z[1]] : [part.z[0], part.z[0] + length];
  const sound = soundAlong(where, z);
  for (const y0 of heights(part.y, high, sound.rotRadius)) {
    const y: Interval = [y0, y0 + high];
    if (leavesThin(shop, part.y, y)) continue;
    const x = across(part.x, y, wide, sound);
    if (x !== null) return { x, y, z };
  }
  return null;
}

/**
 * What is sound from one end of a stretch to the other: the thinner end less the bolt's sweep, the wider rot and the
 * sweep, as of a whole bolt (`layBolt`).
 */
function soundAlong({ log, bolt }: InBolt, [z0, z1]: Interval): Sound {
  const sweep = boltSweep(log, bolt[1] - bolt[0]);
  const rot = Math.max(rotDiameterAt(log, z0), rotDiameterAt(log, z1));
  return {
    radius: Math.max(0, (Math.min(diameterAt(log, z0), diameterAt(log, z1)) - sweep) / 2),
    rotRadius: rot > 0 ? (rot + sweep) / 2 : 0,
  };
}

/** Whether freeing a board from a part leaves a layer, above or below, that the mill does not saw so thin. */
function leavesThin({ millKerf, thinnestSlab = 0 }: SawShop, [lo, hi]: Interval, [y0, y1]: Interval): boolean {
  return [y0 - millKerf - lo, hi - y1 - millKerf].some((layer) => layer > 0 && layer < thinnestSlab);
}

/** Lower faces to try, within the part: against its flat faces, about the axis, against the rot. */
function heights([lo, hi]: Interval, high: number, rotRadius: number): number[] {
  const clear = Math.ceil(rotRadius);
  return [lo, hi - high, -Math.floor(high / 2), clear, -clear - high].filter(
    (y0) => Number.isFinite(y0) && y0 >= lo && y0 + high <= hi,
  );
}

/** The strip of a slab from its one edge, or from the rot's; null when neither side is wide enough. */
function across([lo, hi]: Interval, [y0, y1]: Interval, wide: number, { radius, rotRadius }: Sound): Interval | null {
  const half = halfChord(radius, Math.max(Math.abs(y0), Math.abs(y1)));
  if (half < 0) return null;
  const [left, right] = [Math.max(lo, -half), Math.min(hi, half)];
  const hole = clearOf(rotRadius, nearestToAxis(y0, y1));
  const sides: readonly Interval[] =
    hole === 0
      ? [[left, right]]
      : [
          [left, Math.min(right, -hole)],
          [Math.max(left, hole), right],
        ];
  const side = sides.find(([from, to]) => to - from >= wide);
  if (side === undefined) return null;
  // Against a flat edge, which saves a cut.
  const from = side[1] === hi && side[0] !== lo ? side[1] - wide : side[0];
  return [from, from + wide];
}
