/**
 * Ripping one bought piece down to what is wanted, where the yard sells it larger: to width first, then to thickness, a rip
 * for each side; where it is wanted dressed the sawn faces are planed. What the table saw or the planer does not take goes
 * to hand-held tools. Common practice.
 */
import type { PieceGroup } from "../pieces/piece-group.js";
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
import { type DressingLaying, limitsOf, type MachineLimit, type RawPiece, ripSaw } from "./dressing.js";

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
}

const ONE = number("1");
const ONE_PERSON = number("1 people");
const NO_TIME = number("0 person-h");
const NO_FACE = number("0 m2");

/** Lays the ripping down of one piece of a group. */
export function layRipDown(laying: DressingLaying, group: PieceGroup, input: RipDownInput): RipDownCells {
  const { sheet, assumed, machines } = laying;
  const { sold, sides } = input;
  const a = (name: string) => assumed.cell(name);
  // Ripped to width the cut is as deep as the piece is thick; to thickness, as deep as the piece is wide by then.
  const left = sides.includes("width") ? greatest(group.thickness, group.width) : sold.width;
  const depths = sides.map((side): Operand => (side === "width" ? sold.thickness : left));
  const sawLimits = [...feedLimits(sold, laying), cutLimit(greatest(...depths), laying)];
  const handled = times(a("dress.handling"), number(`${sides.length}`), roundUp(over(sold.weight, a("carry.load"))));
  const ripped = (feed: Cell, deepest: Cell): Operand => {
    const cuts = sum(depths.map((depth) => roundUp(over(depth, deepest))));
    return plus(times(over(times(group.length, cuts), feed), sold.hardness, ONE_PERSON), handled);
  };
  const saw = ripSaw(assumed, machines);
  const atSaw = ripped(saw.feed, saw.depth);
  // What no machine takes is never the quicker for it.
  const byHandSaw = greatest(ripped(a("dress.handRipFeed"), a("cut.depth")), atSaw);
  const past = sheet.lay(`work.${group.name}.ripLimit`, greatest(...sawLimits.map(({ share }) => share)), {
    label: "of what the table saw takes, at most",
    display: "%",
  });
  const planerLimits = limitsOf(sold, laying).filter(({ machine }) => machine === "planer");
  const planing = planingOfSawn(laying, group, input, depths);
  const paced = (time: Operand) => times(time, a("pace"));
  // Without a table saw there is no machine for it.
  const sawing = machines.tableSaw
    ? { machine: when(past, "above", ONE, NO_TIME, atSaw), hand: when(past, "above", ONE, byHandSaw, NO_TIME) }
    : { machine: NO_TIME, hand: byHandSaw };
  const byMachine = paced(plus(sawing.machine, planing.byMachine));
  const byHand = paced(plus(sawing.hand, planing.byHand));
  const each = sheet.lay(`work.${group.name}.ripDown`, plus(byMachine, byHand), {
    label: "rip one bought piece down to size",
    display: "person-min",
  });
  return { each, byMachine, byHand, planedEach: planing.face, sawLimits, planerLimits };
}

const feedLimits = (sold: RawPiece, laying: DressingLaying): MachineLimit[] =>
  limitsOf(sold, laying).filter(({ machine }) => machine === "all");

function cutLimit(is: Operand, { assumed, machines }: DressingLaying): MachineLimit {
  const most = times(number("2"), ripSaw(assumed, machines).depth);
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
  laying: DressingLaying,
  { rules, length }: PieceGroup,
  { sold, sides }: RipDownInput,
  depths: readonly Operand[],
): { readonly byMachine: Operand; readonly byHand: Operand; readonly face: Operand } {
  const { assumed, machines } = laying;
  if (rules.surface !== "dressed") return { byMachine: NO_TIME, byHand: NO_TIME, face: NO_FACE };
  const sawn = times(length, sum(depths));
  const hand = times(over(sawn, assumed.cell("dress.handRate")), sold.hardness);
  if (machines.planer === "none") return { byMachine: NO_TIME, byHand: hand, face: NO_FACE };
  const passes = over(times(length, number(`${sides.length}`)), assumed.cell("dress.planeFeed"));
  const machine = times(passes, sold.hardness, ONE_PERSON);
  const limits = limitsOf(sold, laying).filter(({ machine }) => machine !== "saw");
  const past = greatest(...limits.map(({ share }) => share));
  const either = (beyond: Operand, within: Operand): Operand => when(past, "above", ONE, beyond, within);
  return {
    byMachine: either(NO_TIME, machine),
    byHand: either(greatest(hand, machine), NO_TIME),
    face: either(NO_FACE, sawn),
  };
}
