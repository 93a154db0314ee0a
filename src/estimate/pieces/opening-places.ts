/**
 * Where openings stand along a wall, and in which bay: where the request says, else each in the middle of the widest bay that is
 * still free, of bays alike the one nearest to the middle. With more openings than bays they share the one that has most room left, spread evenly.
 * Measured along the wall from the corner where its bays are counted from.
 */
import { toQuantity } from "../../catalog/reading.js";
import { type Fault, pointer } from "../faults.js";
import type { Decimal } from "../quantity/decimal.js";
import { onTape } from "../quantity/text.js";
import type { OpeningShape } from "../request/structure-walls.js";
import { type Cell, count, minus, number, type Operand, over, plus, sum, times } from "../sheet/expression.js";
import type { Sheet } from "../sheet/sheet.js";
import type { WallSide } from "./frame.js";
import type { Opening } from "./wall-openings.js";
import type { Walling } from "./walling.js";

/** An opening where it stands. */
export interface PlacedOpening {
  readonly opening: Opening;
  /** Which of the side's openings, as they are asked for. */
  readonly nth: number;
  /** To its clear edge. */
  readonly from: Cell;
  readonly bay: number;
  /** Whether it has the bay to itself. */
  readonly alone: boolean;
}

/** A bay, clear between posts; in the unit of the wall's width. */
interface Bay {
  readonly from: Operand;
  readonly to: Operand;
  readonly start: Decimal;
  readonly end: Decimal;
  readonly taken: Taken[];
}

/** An opening in its bay: with a place of its own, or spread with the others. */
interface Taken {
  readonly opening: Opening;
  readonly nth: number;
  readonly copy: number;
  readonly at?: Decimal;
}

/** The bays of a side, clear between posts. */
function baysOf(sheet: Sheet, { bays, firstBays, width }: WallSide, post: Cell): readonly Bay[] {
  const reach = minus(width, post);
  const before = (i: number): Operand => {
    if (i === 0) return number("0 mm");
    return firstBays ? sum(firstBays.slice(0, i)) : over(times(count(i), reach), bays ?? number("1"));
  };
  const all = firstBays ? firstBays.length + 1 : bays ? sheet.decideWhole(bays) : 1;
  const value = (of: Operand): Decimal => sheet.decideOf("walls.bay", of).toDecimalPlaces(9);
  return Array.from({ length: all }, (_, i): Bay => {
    const [from, to] = [plus(before(i), post), i === all - 1 ? reach : before(i + 1)];
    return { from, to, start: value(from), end: value(to), taken: [] };
  });
}

/** What is free of a bay, jambs off; bays that differ by a last digit are alike. */
function roomIn(sheet: Sheet, { start, end, taken }: Bay, jambs: Decimal): Decimal {
  const used = taken.map(({ opening }) => sheet.decide(opening.width).plus(jambs));
  return used.reduce((left, one) => left.minus(one), end.minus(start)).toDecimalPlaces(6);
}

/**
 * Places a side's openings.
 * @param at - Of the side; faults are added to `faults`, and then nothing is placed.
 */
export function placeOpenings(
  walling: Walling,
  side: WallSide,
  asked: { readonly openings: readonly Opening[]; readonly shapes: readonly OpeningShape[]; readonly at: string },
  faults: Fault[],
): PlacedOpening[] {
  const { sheet, laying, post } = walling;
  if (asked.openings.length === 0) return [];
  const bays = baysOf(sheet, side, post);
  const jambs = sheet.decide(laying.sections["opening-jambs"].thickness).times(2);
  const before = faults.length;
  const refuse = (nth: number, field: string, wrong: string, cure: string) =>
    faults.push({ code: "cannot-build", at: pointer(asked.at, "openings", nth, field), wrong, cure });
  for (const [nth, opening] of asked.openings.entries()) {
    const given = asked.shapes[nth]?.from;
    if (given === undefined) continue;
    if ((asked.shapes[nth]?.count ?? 1) > 1) {
      refuse(
        nth,
        "count",
        "Several openings are to stand in one place.",
        "Give each of them an entry and a place of its own.",
      );
      continue;
    }
    const value = toQuantity(given, "mm").value;
    const wrong = takePlace(sheet, bays, { opening, nth, copy: 0, at: value }, jambs);
    if (wrong) refuse(nth, "from", wrong, "Give another place, or leave it out.");
  }
  for (const [nth, opening] of asked.openings.entries()) {
    if (asked.shapes[nth]?.from !== undefined) continue;
    for (let copy = 0; copy < (asked.shapes[nth]?.count ?? 1); copy++) {
      if (takeBay(sheet, bays, { opening, nth, copy }, jambs)) continue;
      const wrong = `The openings of the ${side.label} and their jambs have no room between its posts.`;
      const placed = asked.shapes.some(({ from }) => from !== undefined);
      const say = placed ? ' Some have a place of their own: say "from" for the others, too, or for none.' : "";
      refuse(nth, "width", wrong, `Make them narrower, or fewer, or give fewer bays on that side.${say}`);
      break;
    }
  }
  return faults.length > before ? [] : bays.flatMap((bay, i) => layPlaces(walling, side, bay, i));
}

/** An opening at a given place. @returns what stands in its way. */
function takePlace(sheet: Sheet, bays: readonly Bay[], taken: Required<Taken>, jambs: Decimal): string | undefined {
  const { width } = taken.opening;
  const end = taken.at.plus(sheet.decide(width));
  const say = (value: Decimal) => onTape({ value, unit: width.unit }, width.display);
  const bay = bays.find(({ start, end: to }) => taken.at.gte(start) && end.lte(to));
  if (!bay) {
    const clear = bays.map((one) => `${say(one.start)} to ${say(one.end)}`).join(", ");
    return `From ${say(taken.at)} to ${say(end)} a post would stand in the opening. Clear between posts: ${clear}.`;
  }
  const near = bay.taken.find((other) => {
    const at = other.at as Decimal;
    return taken.at.lt(at.plus(sheet.decide(other.opening.width)).plus(jambs)) && at.lt(end.plus(jambs));
  });
  if (near) return `It has no room for its jambs beside opening ${near.nth + 1}.`;
  bay.taken.push(taken);
  return undefined;
}

/** The widest free bay, of such bays the middle one; where none is free that is wide enough, the one with most room left. */
function takeBay(sheet: Sheet, bays: readonly Bay[], taken: Taken, jambs: Decimal): boolean {
  const wide = sheet.decide(taken.opening.width);
  const off = (bay: Bay) => Math.abs(2 * bays.indexOf(bay) - bays.length + 1);
  const open = bays.filter((bay) => bay.taken.every(({ at }) => at === undefined)).sort((a, b) => off(a) - off(b));
  const roomy = (among: readonly Bay[], least: Decimal) =>
    among
      .map((bay) => ({ bay, room: roomIn(sheet, bay, jambs) }))
      .filter(({ room }) => room.gte(least))
      .reduce<{ bay: Bay; room: Decimal } | undefined>((a, b) => (a?.room.gte(b.room) ? a : b), undefined)?.bay;
  const free = open.filter((bay) => bay.taken.length === 0);
  const found = roomy(free, wide.plus(jambs)) ?? roomy(open, wide.plus(jambs)) ?? roomy(free, wide);
  found?.taken.push(taken);
  return found !== undefined;
}

/** Given places as they are; the others with equal gaps between posts and one another. */
function layPlaces({ sheet, units }: Walling, side: WallSide, bay: Bay, index: number): PlacedOpening[] {
  const { from, to, taken } = bay;
  const widths = taken.map(({ opening }) => opening.width);
  const gap = () =>
    over(widths.length === 0 ? minus(to, from) : minus(minus(to, from), ...widths), count(taken.length + 1));
  return taken.map(({ opening, nth, copy, at }, i) => {
    const name = `walls.${side.name}.opening${nth + 1}.from${copy === 0 ? "" : copy + 1}`;
    const label = "along the wall to the opening";
    const how = { label, display: units.long };
    const place = () => plus(from, times(count(i + 1), gap()), ...widths.slice(0, i));
    const cell = at ? sheet.input(name, { value: at, unit: opening.width.unit }, how) : sheet.lay(name, place(), how);
    return { opening, nth, from: cell, bay: index, alone: taken.length === 1 };
  });
}
