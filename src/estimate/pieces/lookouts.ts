/**
 * Lookouts, which carry a fly rafter past the end of a roof: flat, from the face of the first inner rafter, let into the end
 * rafter, to the inner face of the fly rafter. Common practice.
 */
import { FaultError } from "../faults.js";
import { exactly, onTape } from "../quantity/text.js";
import { type Cell, count, minus, number, type Operand, over, plus, roundUp, sum, times } from "../sheet/expression.js";
import { type FrameInputs, roomForFly } from "./frame.js";
import { AT, type GroupKind, type Laying, laid, wholes } from "./laying.js";
import type { PieceGroup } from "./piece-group.js";
import type { SpacedCells } from "./spacing.js";

/** Each crosses three rafters: inner, end and fly rafter. */
export const LOOKOUT: GroupKind = {
  role: "other",
  section: { "inch-pound": "2 x 4 in", metric: "50 x 100 mm" },
  joint: "crossing",
  mark: "LO",
  rules: { structural: true },
};
const CROSSED = 3;

/** Up to so much overhang, deck and fascia hold a fly rafter by themselves: common practice, no source. */
const UNFRAMED = exactly("12 in").value;

/** Lays how far lookouts are apart, where they are asked for or the overhang asks for them. */
export function layLookoutSpacing(
  inputs: FrameInputs,
  given: Parameters<FrameInputs["given"]>[1],
  overhang: Cell,
): Cell | undefined {
  if (given === undefined && inputs.sheet.decide(overhang).lte(UNFRAMED)) return undefined;
  return inputs.given(["lookoutSpacing", "lookouts up a rake apart, at most", "small"], given, "/lookoutSpacing", [
    "24 in",
    "600 mm",
  ]);
}

/** Where lookouts are laid. */
export interface RakeEnds {
  readonly spacing: Cell;
  readonly overhang: Cell;
  readonly rafterThickness: Cell;
  /** Up the slope, tail to upper end, and how many rakes are just so. */
  readonly rakes: readonly { readonly slopeLength: Cell; readonly alike: number }[];
  readonly lines: SpacedCells;
  /** Given spacing of the rafters, where the last bay is what is left over. */
  readonly shortLast: Cell | undefined;
}

/** Lays the lookouts of both ends. @throws FaultError when there is no fly rafter for them, or no room between them. */
export function lookouts<Group extends string>(laying: Laying<Group>, base: Group, plan: RakeEnds): PieceGroup[] {
  const { sheet, sections } = laying;
  const { spacing, overhang, rafterThickness, rakes, lines, shortLast } = plan;
  refuse(laying, plan, sections[base].width);
  const each = rakes.map(({ slopeLength, alike }, i) => {
    const up = sheet.lay(
      `roof.lookouts${i === 0 ? "" : i + 1}`,
      minus(roundUp(over(slopeLength, spacing)), number("1")),
      {
        label: "lookouts up one rake",
      },
    );
    return times(count(alike), up);
  });
  const all = each.length === 1 ? (each[0] as Operand) : sum(each);
  const reach = (bay: Operand) => minus(plus(bay, overhang), rafterThickness);
  const group = (name: string, label: string, length: Operand, pieces: Operand) =>
    laid(laying, base, { name, label, length, count: pieces, crossings: CROSSED });
  if (!shortLast) return group(base, "Lookouts", reach(lines.equalSpace), all);
  const before = times(minus(lines.spaces, number("1")), shortLast);
  const last = reach(minus(lines.reach, before));
  if (wholes(sheet, lines.spaces) === 1) return group(base, "Lookouts", last, all);
  const half = over(all, number("2"));
  return [
    ...group(base, "Lookouts", reach(shortLast), half),
    ...group(`${base}-last`, "Lookouts (last bay)", last, half),
  ];
}

function refuse<Group extends string>(
  { sheet }: Laying<Group>,
  { spacing, overhang, rafterThickness, rakes }: RakeEnds,
  width: Cell,
): void {
  const at = `${AT}/lookoutSpacing`;
  if (!roomForFly(sheet, overhang, rafterThickness)) {
    const wrong = `An overhang of ${sheet.onTape(overhang)} has no fly rafters for lookouts to carry.`;
    throw new FaultError([{ code: "cannot-build", at, wrong, cure: "Leave it out, or give more overhang." }]);
  }
  const asked = sheet.decide(spacing);
  // Spread evenly they are closer than asked.
  const even = asked.lte(0)
    ? [asked]
    : rakes.map(({ slopeLength }) => sheet.decide(slopeLength)).map((up) => up.dividedBy(up.dividedBy(asked).ceil()));
  const apart = even.reduce((a, b) => (a.lte(b) ? a : b));
  if (apart.gt(sheet.decide(width))) return;
  const say = onTape({ value: apart, unit: spacing.unit }, spacing.display);
  const wrong = `Lookouts ${sheet.onTape(spacing)} apart at most stand ${say} apart, centres, and are ${sheet.onTape(width)} wide.`;
  throw new FaultError([{ code: "cannot-build", at, wrong, cure: "Give a wider spacing." }]);
}
