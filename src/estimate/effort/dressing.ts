/**
 * Dressing one piece of a group: straightened, ripped to width, jointed and planed by machine, or by hand-held tools
 * where it is too heavy, too long, too wide or too thick for the machines.
 *
 * Planing goes piece by piece, or several pieces to a pass: left in one slab until planed and ripped after, which saves
 * passes over the faces and costs one more over the sawn edges. Whichever is less.
 */
import { type MachineKind, machineOf } from "../../catalog/machines.js";
import type { PieceGroup } from "../pieces/piece-group.js";
import type { Assumed } from "../request/assumed.js";
import type { ShopShape } from "../request/shop.js";
import {
  type Cell,
  greatest,
  least,
  minus,
  number,
  type Operand,
  over,
  plus,
  roundUp,
  times,
  when,
} from "../sheet/expression.js";
import type { Sheet } from "../sheet/sheet.js";

/** Hours and faces of dressing one piece. */
export interface DressingCells {
  /** Person-hours for one piece; zero where it stays rough. */
  readonly each: Cell;
  /** The same where machines dress it, and where hands do: one of the two is zero. */
  readonly byMachine: Operand;
  readonly byHand: Operand;
  /** Faces of one piece, finished. */
  readonly surfaceEach: Cell;
  /** Those of them that go through the planer: none of a piece that hands dress. */
  readonly planedEach: Operand;
}

/** The piece as it comes to the machines. */
export interface RawPiece {
  readonly thickness: Cell;
  readonly width: Cell;
  readonly length: Cell;
  readonly weight: Cell;
  /** How much slower its wood works than softwood, times. */
  readonly hardness: Operand;
}

/** The planer at hand. */
export type Planer = NonNullable<ShopShape["planer"]>;

/** Machines of the shop, whose lack sends work to hand-held tools. */
export interface Machines {
  /** The portable one where nothing is said. */
  readonly planer: Planer | undefined;
  /** Whether there is one; a circular saw along a guide rips where there is none. */
  readonly tableSaw: boolean;
}

/** What the shop says of its machines. */
export const machinesOf = (shop: ShopShape | undefined): Machines => ({
  planer: shop?.planer,
  tableSaw: shop?.tableSaw !== "none",
});

/** Depth and feed of the saw that rips pieces. */
export function ripSaw(assumed: Assumed, { tableSaw }: Machines): { readonly depth: Cell; readonly feed: Cell } {
  const [depth, feed] = tableSaw ? ["dress.deepestRip", "dress.ripFeed"] : ["cut.depth", "dress.handRipFeed"];
  return { depth: assumed.cell(depth as string), feed: assumed.cell(feed as string) };
}

/** On what and with what dressing is laid. */
export interface DressingLaying {
  readonly sheet: Sheet;
  readonly assumed: Assumed;
  readonly machines: Machines;
  readonly units: { readonly area: string };
}

const ONE = number("1");
const ONE_PERSON = number("1 people");
const NO_FACE = number("0 m2");

/** Limits and feed of another planer than the one that the assumptions are for. Ask before the first piece is dressed. */
export function layPlaner(assumed: Assumed, planer: Planer | undefined): void {
  if (planer !== "stationary-planer") return;
  const { feed, widest = "20 in", deepest = "8 in", heaviest, from, name } = machineOf(planer satisfies MachineKind);
  assumed.spread("dress.planeFeed", `feed of the ${name}`, feed, from);
  assumed.spread("dress.widest", `widest piece for the ${name}`, [widest, widest, widest], from);
  assumed.spread("dress.thickest", `thickest piece for the ${name}`, [deepest, deepest, deepest], from);
  assumed.spread("dress.heaviest", `heaviest piece for the ${name}`, [heaviest, heaviest, heaviest], from);
}

/** Lays the dressing of one piece. */
export function layDressing(laying: DressingLaying, group: PieceGroup, raw: RawPiece): DressingCells {
  const { sheet, assumed, machines, units } = laying;
  const line = `work.${group.name}`;
  const surfaceEach = sheet.lay(`${line}.surfaceEach`, over(group.surface, group.count), {
    label: "faces of one piece",
    display: units.area,
  });
  const lay = (name: string, label: string, formula: Operand) =>
    sheet.lay(`${line}.${name}`, formula, { label, display: "person-min" });
  const nothing = number("0 person-h");
  const laid = (formula: Operand): Cell => lay("dressEach", "dress one piece", formula);
  if (group.rules.surface !== "dressed")
    return { each: laid(nothing), byMachine: nothing, byHand: nothing, surfaceEach, planedEach: NO_FACE };
  const rate = over(surfaceEach, assumed.cell("dress.handRate"));
  const hand = lay("byHand", "dress one by hand", times(rate, raw.hardness));
  if (machines.planer === "none") {
    const each = laid(times(hand, assumed.cell("pace")));
    return { each, byMachine: nothing, byHand: each, surfaceEach, planedEach: NO_FACE };
  }
  const machine = lay("byMachine", "dress one by machine", byMachine(group, raw, laying));
  const beyond = greatest(...limitsOf(raw, laying).map(({ share }) => share));
  const fit = sheet.lay(`${line}.machineLimit`, beyond, { label: "of what the machines take, at most", display: "%" });
  // What no machine takes is never the quicker for it.
  const each = laid(times(when(fit, "above", ONE, greatest(hand, machine), machine), assumed.cell("pace")));
  const only = (past: Operand, within: Operand): Operand => when(fit, "above", ONE, past, within);
  const sides = { byMachine: only(nothing, each), byHand: only(each, nothing) };
  return { each, ...sides, surfaceEach, planedEach: only(NO_FACE, surfaceEach) };
}

/** One limit of the machines: past the whole of it a piece is dressed by hand. */
export interface MachineLimit {
  /** What of the piece it limits, which machine, and what a piece beyond it is, in words. */
  readonly of: "weight" | "length" | "width" | "thickness" | "cut";
  readonly machine: "all" | "planer" | "saw";
  readonly beyond: string;
  readonly is: Operand;
  readonly most: Operand;
  readonly share: Operand;
}

/** What a piece takes up of each limit. */
export function limitsOf(
  raw: RawPiece,
  { assumed, machines }: Pick<DressingLaying, "assumed" | "machines">,
): MachineLimit[] {
  const a = (name: string) => assumed.cell(name);
  const limit = (
    of: Exclude<MachineLimit["of"], "cut">,
    machine: MachineLimit["machine"],
    beyond: string,
    most: Operand,
  ) => {
    return { of, machine, beyond, is: raw[of], most, share: over(raw[of], most) };
  };
  return [
    limit("weight", "all", "too heavy to feed", a("dress.heaviest")),
    limit("length", "all", "too long for the room at the machines", a("dress.longest")),
    limit("width", "planer", "too wide for the planer", a("dress.widest")),
    limit("thickness", "planer", "too thick for the planer", a("dress.thickest")),
    limit(
      "thickness",
      "saw",
      "too thick to rip, even from both faces",
      times(number("2"), ripSaw(assumed, machines).depth),
    ),
  ];
}

function byMachine(group: PieceGroup, raw: RawPiece, { assumed, machines }: DressingLaying): Operand {
  const saw = ripSaw(assumed, machines);
  const a = (name: string) => assumed.cell(name);
  // People who lift it, for every handling; one is enough up to the load that one carries.
  const lifters = roundUp(over(raw.weight, a("carry.load")));
  const { piece, slab } = planingOf(group, raw, assumed);
  // What the jointer does not take is straightened by a saw along a guide, never the quicker for it.
  const jointed = over(a("dress.jointPasses"), a("dress.jointFeed"));
  const guided = over(a("dress.jointPasses"), a("dress.handRipFeed"));
  const perLength = plus(
    when(raw.width, "above", jointerWidth(assumed), greatest(guided, jointed), jointed),
    over(roundUp(over(raw.thickness, saw.depth)), saw.feed),
    over(plus(least(piece, slab), a("dress.edgePasses")), a("dress.planeFeed")),
  );
  return plus(times(raw.length, perLength, raw.hardness, ONE_PERSON), times(a("dress.handling"), lifters));
}

/** Widest piece for the jointer; of no width without one. */
export const jointerWidth = (assumed: Assumed): Cell => assumed.cell("dress.jointerWidest");

/** Passes over the faces that fall on one piece: one at a time, and several in one slab. */
export function planingOf(
  group: PieceGroup,
  raw: RawPiece,
  assumed: Assumed,
): { readonly piece: Operand; readonly slab: Operand; readonly abreast: Operand } {
  const off = over(minus(raw.thickness, group.thickness), assumed.cell("dress.cutDepth"));
  const piece = greatest(roundUp(off), ONE);
  const abreast = wholeTimes(over(assumed.cell("dress.widest"), raw.width));
  const light = when(times(abreast, raw.weight), "above", assumed.cell("dress.heaviest"), ONE, abreast);
  const side = greatest(light, ONE);
  return { piece, slab: plus(over(piece, side), ONE), abreast: side };
}

/** Down to the whole number below. */
const wholeTimes = (ratio: Operand): Operand => minus(number("0"), roundUp(minus(number("0"), ratio)));
