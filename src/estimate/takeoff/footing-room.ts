/** Footings that cannot be: narrower than their posts, or so wide that their holes run into one another. */
import { type Fault, FaultError } from "../faults.js";
import type { FrameCells } from "../pieces/outline.js";
import type { PieceGroup } from "../pieces/piece-group.js";
import { Decimal } from "../quantity/decimal.js";
import { onTape } from "../quantity/text.js";
import type { Sheet } from "../sheet/sheet.js";
import type { FootingsTakeoff } from "./footings.js";

/** Least distance of two posts, centre to centre: along the building, or across it where two of a frame stand opposite. */
function postsApart(sheet: Sheet, { kind, frame, ...more }: FrameCells, wide: Decimal): Decimal {
  const along = sheet.decide(frame.length).minus(wide);
  const first = frame.firstBays?.map((bay) => sheet.decide(bay));
  const bays = first
    ? [...first, first.reduce((left, bay) => left.minus(bay), along)]
    : [along.dividedBy(sheet.decide(frame.bays))];
  const endBays = "endBays" in frame ? frame.endBays : undefined;
  const alone = kind === "lean-to" && "highSide" in more && more.highSide === "ledger" && !endBays;
  if (alone) return Decimal.min(...bays);
  const across = sheet.decide(frame.span).minus(wide);
  return Decimal.min(...bays, endBays ? across.dividedBy(sheet.decide(endBays)) : across);
}

/** @throws FaultError when a footing has no room for its post, or none between its neighbours. */
export function refuseFootings(
  sheet: Sheet,
  { diameter }: Pick<FootingsTakeoff, "diameter">,
  posts: readonly PieceGroup[],
  frame: FrameCells | undefined,
): void {
  if (posts.length === 0) return;
  const sides = posts.flatMap(({ thickness, width }) => [sheet.decide(thickness), sheet.decide(width)]);
  const [wide, hole] = [Decimal.max(...sides), sheet.decide(diameter)];
  const say = (value: Decimal): string => onTape({ value, unit: diameter.unit }, diameter.display);
  const faults: Fault[] = [];
  const refuse = (wrong: string, cure: string): void => {
    faults.push({ code: "cannot-build", at: "/structure/footings/diameter", wrong, cure });
  };
  if (hole.lt(wide)) {
    const wrong = `A footing of ${say(hole)} is narrower than the post that stands on it (${say(wide)}).`;
    refuse(wrong, "Give a diameter of more than the post is wide.");
  }
  // Where posts of a list stand is not said; posts of one's own may stand anywhere.
  const apart = frame && postsApart(sheet, frame, wide);
  if (apart && hole.gt(apart)) {
    const wrong = `Holes of ${say(hole)} run into one another: the nearest posts stand ${say(apart)} apart, centres.`;
    refuse(wrong, "Give a smaller diameter, or fewer bays.");
  }
  if (faults.length > 0) throw new FaultError(faults);
}
