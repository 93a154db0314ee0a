/**
 * Hip and jack rafters of a roof that is equally steep on all sides, so that hips run at 45° in plan.
 *
 * Level lengths along a hip are 45° lengths: √2 times those along a common rafter. Multiplied by the hip's length for one
 * unit of *common* run they need no root of two, so everything below is measured in common run.
 * @see US Navy, NAVEDTRA 14044, Builder vol. 2, ch. 2: hip and jack rafters, shortening by half the 45° thickness,
 * fig. 2-31 B: hips framed between the common rafters at the ridge's end.
 */
import type { DisplayUnits } from "../quantity/display.js";
import {
  arctangent,
  type Cell,
  count,
  minus,
  number,
  type Operand,
  over,
  plus,
  root,
  square,
  times,
} from "../sheet/expression.js";
import type { Sheet } from "../sheet/sheet.js";
import type { RafterCells } from "./common-rafter.js";

/** Cells that the hips and jacks are laid from; all are lengths. */
export interface HipPlan {
  /** Level, plate face to ridge centre: half the span. */
  readonly run: Cell;
  readonly overhang: Cell;
  readonly unitRise: Cell;
  readonly unitRun: Cell;
  /** Of the common rafters, between which the hips end. */
  readonly commonThickness: Cell;
  readonly hipThickness: Cell;
  /** Square to the hip. */
  readonly hipDepth: Cell;
  readonly jackThickness: Cell;
  /** Common rafter of the same slope. */
  readonly common: RafterCells;
  /** How commons and jacks end below; hips end in two plumb cuts that meet. */
  readonly tail: "plumb" | "square";
}

/** How to cut a hip rafter. */
export interface HipRafterCells {
  /** Hip for one `unitRun` of common run; at 12 in, the figure stamped on a framing square. */
  readonly unitLength: Cell;
  /** Corner of the plates to the ridge's end. */
  readonly lineLength: Cell;
  /** Between the points of its upper and lower cheeks, along the centre of its upper edge. */
  readonly edgeLength: Cell;
  /** The two parts of the edge, along the hip: from the corner of the plates up, and from there down to the tail. */
  readonly bodyLength: Cell;
  readonly tailLength: Cell;
  readonly plumbCut: Cell;
  /** Shortest straight piece from which it can be cut. */
  readonly stockLength: Cell;
  /** Between level and hip; its plumb cut lies this far off square. */
  readonly slopeAngle: Cell;
  /** Bevel of either half of a backed upper edge, off square. */
  readonly backingAngle: Cell;
  /** Plumb; how much lower a hip that is not backed must sit. */
  readonly drop: Cell;
  /** Of its birdsmouth: plumb, and square to the hip. */
  readonly notchPlumb: Cell;
  readonly notchDepth: Cell;
  /** Level, along the hip. */
  readonly seat: Cell;
  /** On the square beside one unit run: the side cut across its upper edge. */
  readonly sideCut: Cell;
}

/** What all jack rafters share. */
export interface JackCells {
  /** Jacks apart, centres. */
  readonly space: Cell;
  /** Each jack is so much shorter than its longer neighbour. */
  readonly difference: Cell;
  /** On the square beside one unit run: the side cut across their upper edge. */
  readonly sideCut: Cell;
  /** The same, between the cut and the rafter's edge. */
  readonly sideAngle: Cell;
}

/** Lays a hip rafter's cells. */
export function layHipRafter(sheet: Sheet, plan: HipPlan, units: DisplayUnits): HipRafterCells {
  const { long, small } = units;
  const { unitRise, unitRun, common } = plan;
  const two = number("2");
  const diagonal = sheet.lay("hip.unitRun", root(times(two, square(unitRun))), {
    label: "run of the hip for one unit of common run",
    display: small,
  });
  const unitLength = sheet.lay("hip.unitLength", root(plus(times(two, square(unitRun)), square(unitRise))), {
    label: "hip for one unit of common run",
    display: small,
  });
  const along = (commonRun: Operand) => over(times(commonRun, unitLength), unitRun);
  const lay = (name: string, label: string, formula: Operand, display: string) =>
    sheet.lay(`hip.${name}`, formula, { label, display });
  const lineLength = lay("lineLength", "plate corner to ridge end", along(plan.run), long);
  // Half the 45° thickness of the commons, along the hip, is half their thickness of common run.
  const halved = (level: Operand) => minus(level, over(plan.commonThickness, two));
  const level = halved(plus(plan.run, plan.overhang));
  const edgeLength = lay("edgeLength", "point of the ridge cut to point of the tail", along(level), long);
  const bodyLength = lay("bodyLength", "plate corner to point of the ridge cut", along(halved(plan.run)), long);
  const tailLength = lay("tailLength", "plate corner to point of the tail", along(plan.overhang), long);
  const plumbOf = (square: Operand) => over(times(square, unitRise), diagonal);
  const plumbCut = lay("plumbCut", "taken by the hip's plumb cut", plumbOf(plan.hipDepth), small);
  const stockLength = lay("stockLength", "shortest stock", plus(edgeLength, plumbCut), long);
  const drop = lay("drop", "hip lowered, where it is not backed", plumbOf(over(plan.hipThickness, two)), small);
  const plumbDepth = over(times(plan.hipDepth, unitLength), diagonal);
  // Its corners must stand no higher above the plate than the commons' upper edges.
  const sunk = minus(plumbDepth, minus(common.heightAbovePlate, drop));
  const notchPlumb = lay("notchPlumb", "hip's birdsmouth, plumb", sunk, small);
  return {
    unitLength,
    lineLength,
    edgeLength,
    bodyLength,
    tailLength,
    plumbCut,
    stockLength,
    slopeAngle: sheet.lay("hip.slopeAngle", arctangent(over(unitRise, diagonal)), {
      label: "hip's plumb cut off square",
    }),
    backingAngle: sheet.lay("hip.backingAngle", arctangent(over(unitRise, unitLength)), {
      label: "backing bevel, off square",
    }),
    drop,
    notchPlumb,
    notchDepth: lay(
      "notchDepth",
      "hip's birdsmouth, square to it",
      over(times(notchPlumb, diagonal), unitLength),
      small,
    ),
    seat: lay("seat", "hip's seat, level along it", over(times(notchPlumb, diagonal), unitRise), small),
    sideCut: lay("sideCut", "side cut of hips, on one unit run", over(times(unitRun, diagonal), unitLength), small),
  };
}

/** Lays what all jacks share. @param space - Jacks apart, centres. */
export function layJacks(sheet: Sheet, plan: HipPlan, space: Cell, units: DisplayUnits): JackCells {
  const { unitRun, common } = plan;
  const lay = (name: string, label: string, formula: Operand) =>
    sheet.lay(`jacks.${name}`, formula, { label, display: units.small });
  return {
    space,
    difference: lay("difference", "common difference of jacks", over(times(space, common.unitLength), unitRun)),
    sideCut: lay("sideCut", "side cut of jacks, on one unit run", over(square(unitRun), common.unitLength)),
    sideAngle: sheet.lay("jacks.sideAngle", arctangent(over(unitRun, common.unitLength)), {
      label: "side cut of jacks, from the edge",
    }),
  };
}

/**
 * Shortest straight piece for the jack that stands `index` spaces from the ridge's end.
 *
 * Its centre line stops half the 45° thickness of the hip before the hip's centre; the point of its cheek lies half its own
 * thickness further, and there it is longest.
 */
export function jackStock(plan: HipPlan, space: Cell, index: number): Operand {
  const { unitRun, common } = plan;
  const inset = index === 1 ? space : times(count(index), space);
  const hip = root(over(square(plan.hipThickness), number("2")));
  const cheek = over(plan.jackThickness, number("2"));
  const level = plus(minus(plus(plan.run, plan.overhang), inset, hip), cheek);
  const edge = over(times(level, common.unitLength), unitRun);
  return plan.tail === "square" ? edge : plus(edge, common.plumbCut);
}
