/**
 * Common rafter of any roof.
 *
 * Plan lengths are level; slope lengths lie along the rafter. Nothing is rounded here. The rafter's measuring line runs
 * through the corner of the birdsmouth; its two edges are parallel to it.
 */
import type { Fault } from "../faults.js";
import { onTape } from "../quantity/text.js";
import type { Cell, Operand } from "../sheet/expression.js";
import { arctangent, least, minus, number, over, plus, root, square, tangent, times } from "../sheet/expression.js";
import type { Sheet } from "../sheet/sheet.js";
import { sideOf } from "./piece-group.js";

/** Cells, not numbers: the user may override any of them, and the workbook stays live. All are lengths. */
export interface RafterPlan {
  /** Level, outer face of the plate to the centre of the ridge, or to the upper end where there is no ridge. */
  readonly run: Cell;
  /** Level, outer face of the plate to the tail; may be zero. */
  readonly overhang: Cell;
  /** Rise over `unitRun`: two lengths, not their quotient, for 4 in 12 has no finite decimal. */
  readonly unitRise: Cell;
  readonly unitRun: Cell;
  /** What the upper ends of two rafters meet at, half of it each; absent where the rafter ends at its run. */
  readonly ridgeThickness?: Cell | undefined;
  /** How the lower end is cut; plumb where nothing is said. */
  readonly tail?: "plumb" | "square" | undefined;
  /** Square to the rafter. */
  readonly depth: Cell;
  /** Bearing of the plate, level. */
  readonly plateWidth: Cell;
  /** Level depth of the seat, where the user gives one. */
  readonly seat?: Cell | undefined;
}

/** Lengths, cuts and birdsmouth of one common rafter. */
export interface RafterCells {
  /** Rafter for one `unitRun`; at 12 in, the figure stamped on a framing square. */
  readonly unitLength: Cell;
  /** Plate face to ridge centre. */
  readonly lineLength: Cell;
  /** Ridge face to tail along one edge, between the two plumb cuts. */
  readonly edgeLength: Cell;
  /** The two parts of the edge, along the slope: from the plate's face up, and from there down to the tail. */
  readonly bodyLength: Cell;
  readonly tailLength: Cell;
  /** What a plumb cut takes: with plumb cuts at both ends the stock is this much longer than the edge. */
  readonly plumbCut: Cell;
  /** Shortest straight piece from which it can be cut. */
  readonly stockLength: Cell;
  /** Between level and rafter; a plumb cut lies this far off square. */
  readonly slopeAngle: Cell;
  readonly seat: Cell;
  /** Square to the rafter, and plumb. */
  readonly notchDepth: Cell;
  readonly notchPlumb: Cell;
  /** Plumb, from the plate's top to the rafter's upper edge, above the plate's outer face. */
  readonly heightAbovePlate: Cell;
  /** Open gap across a plumb cut when its angle is one degree off. */
  readonly gapAtOneDegree: Cell;
}

/** Most rise to one of run: nobody lays courses or stands on steeper ones. Assumption. */
const STEEPEST = 2;

/** What cannot be built, each with its cure. Empty when `layCommonRafter` may be called. */
export function commonRafterFaults(sheet: Sheet, plan: RafterPlan, at: string): Fault[] {
  const faults: Fault[] = [];
  const refuse = (where: string, wrong: string, cure: string): void => {
    faults.push({ code: "cannot-build", at: `${at}${where}`, wrong, cure });
  };
  if (sheet.decide(plan.unitRise).lt(0)) {
    refuse(
      "/slope/rise",
      `The roof falls towards its ridge (${sheet.onTape(plan.unitRise)}).`,
      "Give the rise from plate to ridge as zero or more.",
    );
  }
  if (sheet.decide(plan.unitRun).lte(0)) {
    refuse(
      "/slope/run",
      `A slope needs a level run (${sheet.onTape(plan.unitRun)}).`,
      "Give a run of more than zero, such as 12 in.",
    );
  } else if (sheet.decide(plan.unitRise).gt(sheet.decide(plan.unitRun).times(STEEPEST))) {
    const wrong = `A roof that rises ${sheet.onTape(plan.unitRise)} over ${sheet.onTape(plan.unitRun)} is a wall.`;
    refuse("/slope/rise", wrong, `Give at most ${STEEPEST} times the run: 24 in over 12 in.`);
  }
  const ridge = plan.ridgeThickness;
  if (ridge && sheet.decide(ridge).gte(sheet.decide(plan.run).times(2))) {
    refuse("/span", `The ridge (${sheet.onTape(ridge)}) is thicker than the building is wide.`, "Give a larger span.");
  }
  return faults;
}

/**
 * A birdsmouth that would cut the rafter through, with the deepest seat there is. Asked once it is laid.
 * @param notch - Its depth, square to the rafter.
 */
export function birdsmouthFaults(
  sheet: Sheet,
  { notch, depth, what }: { readonly notch: Cell; readonly depth: Cell; readonly what: string },
  at: string,
): Fault[] {
  if (sheet.decide(notch).lt(sheet.decide(depth))) return [];
  const tape = (cell: Cell): string => onTape({ value: sheet.decide(cell), unit: cell.unit }, cell.display);
  const wrong = `The birdsmouth (${tape(notch)} deep) goes through the ${what} (${tape(depth)}).`;
  const cure = "Give a shallower seat or a deeper section; a quarter of the depth is the most that is advised.";
  return [{ code: "cannot-build", at, wrong, cure }];
}

/**
 * A seat longer than what it rests on is wide. Asked once it is laid: where nobody gives one it is no longer.
 * @param bearer - Width of the narrowest beam that the rafter is seated on.
 */
export function seatFaults(sheet: Sheet, seat: Cell, bearer: Cell, at: string): Fault[] {
  if (sheet.decide(seat).lte(sheet.decide(bearer))) return [];
  const most = onTape({ value: sheet.decide(bearer), unit: bearer.unit }, bearer.display, "most");
  const wrong = `The seat (${sheet.onTape(seat)}) is longer than what it rests on is wide: ${sideOf(bearer)} is ${most}.`;
  return [{ code: "cannot-build", at, wrong, cure: `Give a seat of ${most} or less, or thicker beams.` }];
}

/** The narrower of two beams that rafters are seated on; the first where they are alike. */
export const narrower = (sheet: Sheet, one: Cell, other: Cell): Cell =>
  sheet.decide(other).lt(sheet.decide(one)) ? other : one;

/** A degree is about what a careful hand holds on a saw. Assumption; only shown, nothing rests on it. */
const ANGLE_ERROR = "1 deg";

/**
 * Lays one common rafter's cells on the sheet.
 *
 * @param plan - Already passed by `commonRafterFaults`.
 * @throws Error when `name` is already on the sheet: a bug in the caller.
 * @see US Navy, NAVEDTRA 14044, Builder vol. 2, fig. 2-17: length from unit rise and run; half the ridge measured level.
 */
export function layCommonRafter(
  sheet: Sheet,
  name: string,
  plan: RafterPlan,
  display: { readonly long: string; readonly small: string },
): RafterCells {
  const hypotenuse = root(plus(square(plan.unitRise), square(plan.unitRun)));
  const label = "rafter for one unit run";
  const unitLength = sheet.lay(`${name}.unitLength`, hypotenuse, { label, display: display.small });
  const sloped: Sloped = {
    lay: (of, label, formula, size) => sheet.lay(`${name}.${of}`, formula, { label, display: display[size] }),
    // Multiplied before divided: 20 ÷ 12 first would leave a last digit for a round-up to trip on.
    along: (level) => over(times(level, unitLength), plan.unitRun),
    plumb: (square) => over(times(square, plan.unitRise), plan.unitRun),
  };
  const lengths = layLengths(sloped, plan);
  const slopeAngle = sheet.lay(`${name}.slopeAngle`, arctangent(over(plan.unitRise, plan.unitRun)), {
    label: "plumb cut off square",
  });
  return { unitLength, ...lengths, slopeAngle, ...layBirdsmouth(sheet, sloped, plan, unitLength) };
}

/** Lays cells of one rafter, and turns level lengths into those along the slope, or square ones into plumb ones. */
interface Sloped {
  readonly lay: (of: string, label: string, formula: Operand, size: "long" | "small") => Cell;
  readonly along: (level: Operand) => Operand;
  readonly plumb: (square: Operand) => Operand;
}

function layLengths({ lay, along, plumb }: Sloped, plan: RafterPlan) {
  const { run, overhang, ridgeThickness, depth, tail } = plan;
  const toUpper = ridgeThickness ? "plate face to ridge centre" : "plate face to upper end";
  const lineLength = lay("lineLength", toUpper, along(run), "long");
  // The ridge is measured level, so half of it comes off before the tilt, not after.
  const halved = (level: Operand) => (ridgeThickness ? minus(level, over(ridgeThickness, number("2"))) : level);
  const bodyLength = lay("bodyLength", "plate face to upper end, along an edge", along(halved(run)), "long");
  const tailLength = lay("tailLength", "plate face to tail, along an edge", along(overhang), "long");
  const whole = `${ridgeThickness ? "ridge face" : "upper end"} to tail, along an edge`;
  const edgeLength = lay("edgeLength", whole, along(halved(plus(run, overhang))), "long");
  const plumbCut = lay("plumbCut", "taken by the plumb cut", plumb(depth), "small");
  // Between two plumb cuts the edges are offset by what one of them takes. A square tail ends both edges alike, and the
  // upper one, to which the overhang is measured, is the longer.
  const straight = tail === "square" ? edgeLength : plus(edgeLength, plumbCut);
  const stockLength = lay("stockLength", "shortest stock", straight, "long");
  return { lineLength, edgeLength, bodyLength, tailLength, plumbCut, stockLength };
}

function layBirdsmouth(sheet: Sheet, { lay, along, plumb }: Sloped, plan: RafterPlan, unitLength: Cell) {
  const seat = lay("seat", "birdsmouth seat, level", plan.seat ?? defaultSeat(sheet, plan, unitLength), "small");
  const deep = over(times(seat, plan.unitRise), unitLength);
  const notchDepth = lay("notchDepth", "birdsmouth depth, square to the rafter", deep, "small");
  const notchPlumb = lay("notchPlumb", "birdsmouth depth, plumb", plumb(seat), "small");
  const above = minus(along(plan.depth), notchPlumb);
  const heightAbovePlate = lay("heightAbovePlate", "height above plate", above, "small");
  const gap = times(along(plan.depth), tangent(number(ANGLE_ERROR)));
  const gapAtOneDegree = lay("gapAtOneDegree", "gap when the saw is one degree off", gap, "small");
  return { seat, notchDepth, notchPlumb, heightAbovePlate, gapAtOneDegree };
}

/** The plate's full width, or where a quarter of the rafter's depth is notched away, whichever comes first. */
function defaultSeat(sheet: Sheet, plan: RafterPlan, unitLength: Cell) {
  // On a level roof there is no notch, however deep the seat, and the quarter rule would divide by zero.
  if (sheet.decide(plan.unitRise).lte(0)) return plan.plateWidth;
  return least(plan.plateWidth, over(times(plan.depth, unitLength), times(number("4"), plan.unitRise)));
}
