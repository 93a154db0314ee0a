/**
 * Ripping one bought piece down to what is wanted, where the yard sells it larger: to width first, then to thickness, a rip
 * for each side; where it is wanted dressed the sawn faces are planed. What the table saw or the planer does not take goes
 * to hand-held tools. Common practice.
 */
import type { PieceGroup } from "../pieces/piece-group.js";
import type { Assumed } from "../request/assumed.js";
import {
  type Cell,
  greatest,
  number,
  type Operand,
  over,
  plus,
  roundUp,
  sum,
  times,
  when,
} from "../sheet/expression.js";
import type { Sheet } from "../sheet/sheet.js";
import { limitsOf, type MachineLimit, type Planer, type RawPiece } from "./dressing.js";

/** Sides of a bought piece that may be larger than wanted. */
export type Side = "thickness" | "width";

/** Person-time and faces of ripping one piece down. */
export interface RipDownCells {
  readonly each: Cell;
  /** The parts of it at the machines and by hand-held tools. */
  readonly byMachine: Operand;
  readonly byHand: Operand;
  /** Faces that go through the planer. */
  readonly planedEach: Operand;
  /** What the table saw takes, and what the planer takes; past any of them the work is done by hand. */
  readonly sawLimits: readonly MachineLimit[];
  readonly planerLimits: readonly MachineLimit[];
}

/** What is ripped down, and with what. */
export interface RipDownInput {
  /** The piece as the yard sells it, its smaller side as the thickness. */
  readonly sold: RawPiece;
  /** Those on which it is larger; at least one. */
  readonly sides: readonly Side[];
  readonly planer: Planer | undefined;
}

const ONE = number("1");
const ONE_PERSON = number("1 people");
const NO_TIME = number("0 person-h");
const NO_FACE = number("0 m2");

/** Lays the ripping down of one piece of a group. */
export function layRipDown(sheet: Sheet, group: PieceGroup, input: RipDownInput, assumed: Assumed): RipDownCells {
  const { sold, sides } = input;
  const a = (name: string) => assumed.cell(name);
  // Ripped to width the cut is as deep as the piece is thick; to thickness, as deep as the piece is wide by then.
  const left = sides.includes("width") ? greatest(group.thickness, group.width) : sold.width;
  const depths = sides.map((side): Operand => (side === "width" ? sold.thickness : left));
  const sawLimits = [...feedLimits(sold, assumed), cutLimit(greatest(...depths), assumed)];
  const handled = times(a("dress.handling"), number(`${sides.length}`), roundUp(over(sold.weight, a("carry.load"))));
  const ripped = (feed: Cell, deepest: Cell): Operand => {
    const cuts = sum(depths.map((depth) => roundUp(over(depth, deepest))));
    return plus(times(over(times(group.length, cuts), feed), sold.hardness, ONE_PERSON), handled);
  };
  const atSaw = ripped(a("dress.ripFeed"), a("dress.deepestRip"));
  // What no machine takes is never the quicker for it.
  const byHandSaw = greatest(ripped(a("dress.handRipFeed"), a("cut.depth")), atSaw);
  const past = sheet.lay(`work.${group.name}.ripLimit`, greatest(...sawLimits.map(({ share }) => share)), {
    label: "of what the table saw takes, at most",
    display: "%",
  });
  const planerLimits = limitsOf(sold, assumed).filter(({ machine }) => machine === "planer");
  const planing = planingOfSawn(group, input, depths, [...feedLimits(sold, assumed), ...planerLimits], assumed);
  const paced = (time: Operand) => times(time, a("pace"));
  const byMachine = paced(plus(when(past, "above", ONE, NO_TIME, atSaw), planing.byMachine));
  const byHand = paced(plus(when(past, "above", ONE, byHandSaw, NO_TIME), planing.byHand));
  const each = sheet.lay(`work.${group.name}.ripDown`, plus(byMachine, byHand), {
    label: "rip one bought piece down to size",
    display: "person-min",
  });
  return { each, byMachine, byHand, planedEach: planing.face, sawLimits, planerLimits };
}

const feedLimits = (sold: RawPiece, assumed: Assumed): MachineLimit[] =>
  limitsOf(sold, assumed).filter(({ machine }) => machine === "all");

function cutLimit(is: Operand, assumed: Assumed): MachineLimit {
  const most = times(number("2"), assumed.cell("dress.deepestRip"));
  return {
    of: "cut",
    machine: "saw",
    beyond: "too deep to rip, even from both faces",
    is,
    most,
    share: over(is, most),
  };
}

/** A pass of the planer over each sawn face, or the faces by hand; nothing where it stays rough. */
function planingOfSawn(
  { rules, length }: PieceGroup,
  { sold, sides, planer }: RipDownInput,
  depths: readonly Operand[],
  limits: readonly MachineLimit[],
  assumed: Assumed,
): { readonly byMachine: Operand; readonly byHand: Operand; readonly face: Operand } {
  if (rules.surface !== "dressed") return { byMachine: NO_TIME, byHand: NO_TIME, face: NO_FACE };
  const sawn = times(length, sum(depths));
  const hand = times(over(sawn, assumed.cell("dress.handRate")), sold.hardness);
  if (planer === "none") return { byMachine: NO_TIME, byHand: hand, face: NO_FACE };
  const passes = over(times(length, number(`${sides.length}`)), assumed.cell("dress.planeFeed"));
  const machine = times(passes, sold.hardness, ONE_PERSON);
  const past = greatest(...limits.map(({ share }) => share));
  const either = (beyond: Operand, within: Operand): Operand => when(past, "above", ONE, beyond, within);
  return {
    byMachine: either(NO_TIME, machine),
    byHand: either(greatest(hand, machine), NO_TIME),
    face: either(NO_FACE, sawn),
  };
}
