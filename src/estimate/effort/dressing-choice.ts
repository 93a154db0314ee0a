/** Which machine dresses a group, and why: read off the same limits as the hours, for showing. No formula hangs on it. */

import type { PieceGroup } from "../pieces/piece-group.js";
import type { Decimal } from "../quantity/decimal.js";
import { displayUnits } from "../quantity/display.js";
import type { Quantity } from "../quantity/quantity.js";
import { type MeasureSystem, marked, markedSmall, shown } from "../quantity/text.js";
import { unit } from "../quantity/unit.js";
import { wholeNumber } from "../quantity/whole.js";
import type { Assumed } from "../request/assumed.js";
import { aside } from "../sheet/aside.js";
import { evaluate } from "../sheet/evaluate.js";
import { expressionOf, least, type Operand } from "../sheet/expression.js";
import { crosscutFaces } from "./building.js";
import {
  jointerWidth,
  limitsOf,
  type MachineLimit,
  type Machines,
  planingOf,
  type RawPiece,
  ripSaw,
} from "./dressing.js";
import type { RipDownCells } from "./rip-down.js";

/** How one group is dressed and cut to length. */
export interface DressingChoice {
  readonly group: string;
  readonly by: "machine" | "hand" | "nobody";
  /** Several pieces in one slab, planed before they are ripped, or one at a time; by machine only. */
  readonly order?: "slab-first" | "piece-by-piece";
  /** From one face, or from both where the saw is too shallow; by machine only. */
  readonly rip?: "one-face" | "both-faces";
  /** Faces from which each crosscut is made. */
  readonly crosscutFaces: number;
  /** Reasons, in words. */
  readonly because: readonly string[];
}

/** A group on a route: as it comes to the machines, where anything is to be dressed. */
export interface DressedGroup {
  readonly group: PieceGroup;
  readonly raw: RawPiece | undefined;
  /** Whether it is bought as it is wanted, or larger. */
  readonly comesDressed: boolean;
  /** Whether its faces come smooth from the yard, whatever was asked for; absent where it is milled. */
  readonly comesSmooth?: boolean;
  /** How it is ripped down, where it is bought larger. */
  readonly ripDown?: RipDownCells | undefined;
  /** Which saws make its section, where it is milled on this route. */
  readonly sawn?: SawnBy | undefined;
}

/** Whether a group's pieces come off the mill as they are, or some of their edges are ripped beside it. */
export interface SawnBy {
  readonly tableSaw: boolean;
  /** The first slab that goes along a guide, and why it is not fed; absent where none does. */
  readonly guide?: string;
}

/** The shop in which it is dressed. */
export interface DressingShop {
  readonly machines: Machines;
  readonly assumed: Assumed;
  readonly system: MeasureSystem;
}

/** With what its section is sawn. */
function sawnWith({ tableSaw, guide }: SawnBy): string {
  if (!tableSaw && !guide) return "sawn to size on the mill alone";
  const table = tableSaw ? "edges ripped on the table saw" : undefined;
  const along = guide && `${tableSaw ? "some" : "edges ripped"} by a circular saw along a guide: ${guide}`;
  return ["sawn on the mill", table, along].filter((part) => part !== undefined).join(", ");
}

const valueNow = (operand: Operand) => evaluate(expressionOf(operand), aside);
const quantityNow = (operand: Operand): Quantity => ({ value: valueNow(operand), unit: expressionOf(operand).unit });

/** Both measure the same, in the one unit in which it is held. */
const exceeds = (is: Operand, most: Operand): boolean => valueNow(is).gt(valueNow(most));

/** The choice for one group. */
export function dressingChoice(of: DressedGroup, shop: DressingShop): DressingChoice {
  const faces = crosscutOf(of.group, shop);
  const { because, ...choice } = dressing(of, shop);
  return { group: of.group.name, ...choice, crosscutFaces: faces.count, because: [...because, ...faces.because] };
}

function dressing(
  { group, raw, comesDressed, comesSmooth, ripDown, sawn }: DressedGroup,
  shop: DressingShop,
): Omit<DressingChoice, "group" | "crosscutFaces"> {
  const { machines, assumed, system } = shop;
  const lacking = machines.tableSaw ? [] : ["ripped along a guide: there is no table saw"];
  if (comesDressed && ripDown) return rippedDown(ripDown, group.rules.surface === "dressed", shop);
  if (group.rules.surface !== "dressed" && !comesSmooth)
    return { by: "nobody", because: ["they stay rough", ...(sawn ? [sawnWith(sawn)] : [])] };
  if (comesDressed || comesSmooth || !raw) return { by: "nobody", because: ["they are bought dressed"] };
  const guided = sawn?.guide && machines.tableSaw ? [sawnWith(sawn)] : [];
  if (machines.planer === "none") return { by: "hand", because: ["there is no planer", ...lacking, ...guided] };
  const limits = limitsOf(raw, shop);
  const beyond = limits.filter(({ share }) => valueNow(share).gt(1));
  if (beyond.length > 0)
    return {
      by: "hand",
      because: [...beyond.map((limit) => `${limit.beyond}: ${measures(limit, system)}`), ...lacking, ...guided],
    };
  const { piece, slab, abreast } = planingOf(group, raw, assumed);
  const slabFirst = exceeds(piece, slab);
  const jointed = !exceeds(raw.width, jointerWidth(assumed));
  const { depth } = ripSaw(assumed, machines);
  const bothFaces = exceeds(raw.thickness, depth);
  const ripDepth = markedSmall(quantityNow(depth), system);
  const saw = machines.tableSaw ? "rip saw" : "circular saw along a guide";
  return {
    by: "machine",
    order: slabFirst ? "slab-first" : "piece-by-piece",
    rip: bothFaces ? "both-faces" : "one-face",
    because: [
      `${jointed ? `jointer, ${saw}` : saw} and planer take them; nearest to its limit is the ${nearest(limits, system)}`,
      ...lacking,
      ...(jointed ? [] : [unjointed(raw, assumed, system)]),
      whyInOrder(valueNow(abreast), slabFirst),
      ...(bothFaces ? [`they are thicker than the ${ripDepth} that the saw rips from one face`] : []),
      ...guided,
    ],
  };
}

/** Why a saw along a guide straightens them. */
function unjointed({ width }: RawPiece, assumed: Assumed, system: MeasureSystem): string {
  const widest = quantityNow(jointerWidth(assumed));
  if (widest.value.isZero()) return "straightened by a saw along a guide: there is no jointer";
  const [is, most] = [markedSmall(quantityNow(width), system), markedSmall(widest, system)];
  return `straightened by a saw along a guide: ${is} is wider than the jointer's ${most}`;
}

/** Bought larger: the table saw takes it down, and the planer its sawn faces, or hand-held tools do. */
function rippedDown(
  { sawLimits, planerLimits }: RipDownCells,
  dressed: boolean,
  { machines, assumed, system }: DressingShop,
): Omit<DressingChoice, "group" | "crosscutFaces"> {
  const past = (limits: readonly MachineLimit[]) =>
    limits.filter(({ share }) => valueNow(share).gt(1)).map((limit) => `${limit.beyond}: ${measures(limit, system)}`);
  const [beyondSaw, beyondPlaner] = [past(sawLimits), past(planerLimits)];
  const planed = machines.planer === "none" ? ["there is no planer"] : beyondPlaner;
  const faces = dressed && planed.length > 0 ? [`the sawn faces are planed by hand: ${planed.join("; ")}`] : [];
  const bought = "they are bought larger and ripped down";
  const lacking = machines.tableSaw ? [] : ["there is no table saw"];
  if (lacking.length + beyondSaw.length > 0)
    return { by: "hand", because: [`${bought} along a guide`, ...lacking, ...beyondSaw, ...faces] };
  const depth = sawLimits.find(({ of }) => of === "cut");
  const bothFaces = depth !== undefined && exceeds(depth.is, assumed.cell("dress.deepestRip"));
  const because = [`${bought}; nearest to its limit is the ${nearest(sawLimits, system)}`, ...faces];
  return { by: "machine", rip: bothFaces ? "both-faces" : "one-face", because };
}

/** `weight, 86 lb of 100 lb`. */
function nearest(limits: readonly MachineLimit[], system: MeasureSystem): string {
  const [first] = limits.toSorted((a, b) => valueNow(b.share).cmp(valueNow(a.share)));
  return first ? `${first.of === "cut" ? "depth of cut" : first.of}, ${measures(first, system)}` : "";
}

/** `143 lb, at most 100 lb`. */
function measures({ of, is, most }: MachineLimit, system: MeasureSystem): string {
  const said = (operand: Operand): string => {
    const quantity = quantityNow(operand);
    if (of === "weight") return shown(quantity, unit(displayUnits(system).mass));
    return of === "length" ? marked(quantity, system) : markedSmall(quantity, system);
  };
  return `${said(is)}, at most ${said(most)}`;
}

function whyInOrder(abreast: Decimal, slabFirst: boolean): string {
  if (slabFirst) return `${abreast.toFixed()} in one slab take fewer passes before they are ripped`;
  return abreast.gt(1)
    ? "a pass over sawn edges costs more than one slab for several would save"
    : "no two go through the planer in one slab";
}

function crosscutOf({ thickness, width }: PieceGroup, { assumed, system }: DressingShop) {
  const depth = assumed.cell("cut.depth");
  const thinner = least(thickness, width);
  const count = wholeNumber(valueNow(crosscutFaces(thinner, depth)));
  const [deep, saw] = [markedSmall(quantityNow(thinner), system), markedSmall(quantityNow(depth), system)];
  const because = {
    1: [],
    2: [`crosscut from 2 faces: ${deep} is deeper than the saw's ${saw}`],
    4: [`crosscut from all 4 faces: ${deep} is deeper than twice the saw's ${saw}, and a handsaw takes the core`],
  }[count as 1 | 2 | 4];
  return { count, because };
}
