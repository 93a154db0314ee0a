/**
 * The end of a bolt as the sawyer looks at it from the small end: wood, bark, sweep, rot, pith, every kerf, and the strips
 * that pieces are cut from. Shapes in millimetres about the sawing axis, y upwards, exact decimals; no SVG.
 *
 * The bolt lies with its hollow side down: its ends are half the sweep below the sawing axis and its middle half above it.
 */
import { type Decimal, decimal, ZERO } from "../quantity/decimal.js";
import type { BoltSteps, StripSteps } from "../salvage/explain-sawing.js";
import type { SawingProblem, SawLog } from "../salvage/sawing-problem.js";

/** A circle about a point of the upright through the sawing axis. */
export interface Disc {
  readonly radius: Decimal;
  /** Height of its centre above the sawing axis; negative below it. */
  readonly y: Decimal;
}

/** A rectangle, millimetres about the sawing axis. */
export interface Box {
  readonly x0: Decimal;
  readonly x1: Decimal;
  readonly y0: Decimal;
  readonly y1: Decimal;
}

/** A strip that pieces come out of. */
export interface StripBox extends Box {
  /** Place of its slab from the top, and its own in the slab. */
  readonly slab: number;
  readonly strip: number;
}

/** A cut through the whole width, as wide as the wood is at the small end. */
export interface CutBox extends Box {
  /** 1 for the opening cut. */
  readonly order: number;
}

/** Everything that is drawn of one bolt. */
export interface EndView {
  readonly wood: Disc;
  /** Round the outside. */
  readonly bark: Disc;
  /** The bolt at its middle, where it bows most; absent in a straight one. */
  readonly middle: Disc | undefined;
  /** Wood all along, however the bolt is turned: what the plan draws on. */
  readonly sure: Disc;
  /** As far as rot may reach anywhere in the bolt; absent in sound wood. */
  readonly rot: Disc | undefined;
  /** As far as the pith may stray. */
  readonly pith: Disc;
  readonly cuts: readonly CutBox[];
  readonly rips: readonly Box[];
  readonly strips: readonly StripBox[];
  /** A log's end is out of true by no more than this, so that a page can be laid out. */
  readonly reach: Decimal;
}

/** Draws one bolt. @param bolt - Its steps, of a plan for this problem. */
export function endView({ gridMm, shop }: SawingProblem, log: SawLog, bolt: BoltSteps): EndView {
  const grid = decimal(gridMm);
  const mm = (steps: number) => grid.times(steps);
  const { small, sweep, rot, bow } = boltSizes(log, bolt);
  const half = sweep.dividedBy(2);
  const disc = (diameter: Decimal, y: Decimal): Disc => ({
    radius: diameter.dividedBy(2).times(grid),
    y: y.times(grid),
  });
  const wood = disc(small, half.negated());
  const bark = disc(small.plus(2 * log.bark), half.negated());
  const middle = sweep.isZero() ? undefined : disc(bow, half);
  const reach = bark.radius.plus(half.times(grid));
  return {
    ...{ wood, bark, middle, reach },
    sure: disc(small.minus(sweep), ZERO),
    rot: rot.isZero() ? undefined : disc(rot.plus(sweep), ZERO),
    pith: disc(sweep.plus(shop.pith), ZERO),
    cuts: bolt.stackCuts.map(({ lo, hi }, i) => {
      const x1 = chord(wood, mm(lo + hi).dividedBy(2));
      return { order: i + 1, x0: x1.negated(), x1, y0: mm(lo), y1: mm(hi) };
    }),
    rips: bolt.slabs.flatMap(({ y0, y1, rips }) =>
      rips.map(({ lo, hi }) => ({ x0: mm(lo), x1: mm(hi), y0: mm(y0), y1: mm(y1) })),
    ),
    strips: bolt.slabs.flatMap(({ y0, y1, strips }, slab) =>
      strips.map(({ x0, x1 }: StripSteps, strip) => ({
        ...{ slab, strip, x0: mm(x0), x1: mm(x1), y0: mm(y0), y1: mm(y1) },
      })),
    ),
  };
}

/** Diameters in grid steps, exact: at the small end, at the middle, of the rot where it is widest; and the bolt's sweep. */
export function boltSizes(log: SawLog, { z0, z1 }: Pick<BoltSteps, "z0" | "z1">) {
  const along = (from: number, to: number, z: number) =>
    decimal(to - from)
      .times(z)
      .dividedBy(log.length)
      .plus(from);
  const wood = (z: number) => along(log.smallDiameter, log.largeDiameter, z);
  const rot = (z: number) => along(log.rot.smallEnd, log.rot.largeEnd, z);
  const share = decimal(z1 - z0).dividedBy(log.length);
  const wider = rot(z0).gt(rot(z1)) ? rot(z0) : rot(z1);
  return {
    small: wood(z0),
    bow: wood(z0).plus(wood(z1)).dividedBy(2),
    sweep: share.times(share).times(log.sweep),
    rot: wider,
  };
}

/** Half the width of a disc at a height; nothing beyond it. */
function chord({ radius, y }: Disc, height: Decimal): Decimal {
  const up = height.minus(y);
  const square = radius.times(radius).minus(up.times(up));
  return square.lte(0) ? ZERO : square.sqrt();
}
