/**
 * A ridge beam of a gable and the king posts that it stands on, one on every tie. Its upper corners lie in the planes of the
 * rafters' upper edges; the ties are flush with the plates.
 */
import { FaultError } from "../faults.js";
import type { Decimal } from "../quantity/decimal.js";
import { onTape } from "../quantity/text.js";
import type { GableGroup } from "../request/structure-gable.js";
import { type Cell, minus, number, over, plus, times } from "../sheet/expression.js";
import type { RafterCells, RafterPlan } from "./common-rafter.js";
import { AT, type GroupKind, type Laying, one } from "./laying.js";
import type { PieceGroup } from "./piece-group.js";

/** What carries the roof is a timber. */
export const RIDGE_BEAM: GroupKind = {
  role: "ridge",
  section: { "inch-pound": "4 x 8 in", metric: "100 x 200 mm" },
  rules: { surface: "rough", seasoning: "green" },
};

/** Held by brackets at its foot and at its top. */
export const KING_POST: GroupKind = {
  role: "other",
  section: { "inch-pound": "4 x 4 in", metric: "100 x 100 mm" },
  joint: "king-post",
  mark: "KP",
  rules: { surface: "rough", seasoning: "green", structural: true },
};

/**
 * From the top of every tie to the underside of the ridge beam; none where the beam lies on the ties.
 * @throws FaultError when it would run through them.
 */
export function kingPosts(
  laying: Laying<GableGroup>,
  { run, ridgeThickness = run, unitRise, unitRun }: RafterPlan,
  { heightAbovePlate }: RafterCells,
  postPairs: Cell,
): PieceGroup[] {
  const { sheet, sections, units } = laying;
  const toFace = minus(run, over(ridgeThickness, number("2")));
  const top = plus(heightAbovePlate, over(times(toFace, unitRise), unitRun));
  const height = sheet.lay("roof.kingPost", minus(top, sections.ridge.width), {
    label: "top of the ties to the underside of the ridge beam",
    display: units.long,
  });
  if (sheet.decide(height).lt(0)) refuseLow(laying, height);
  if (sheet.decide(height).isZero()) return [];
  return one(laying, "king-posts", "King posts", height, postPairs);
}

/** The roof is too low for the beam: it would cut the ties that hold the plates together. */
function refuseLow({ sheet, sections, settings }: Laying<GableGroup>, height: Cell): void {
  if (settings?.ties?.remove && settings["gable-beams"]?.remove) return;
  const { width } = sections.ridge;
  const say = (value: Decimal, limit?: "most") => onTape({ value, unit: width.unit }, width.display, limit);
  const room = say(sheet.decide(width).plus(sheet.decide(height)), "most");
  const wrong = `The ridge beam (${sheet.onTape(width)} deep) reaches ${say(sheet.decide(height).neg())} below the top of the ties: the roof leaves ${room} above them.`;
  const cure = `Give a ridge beam ${room} deep or less, a steeper roof, deeper rafters, or a ridge board.`;
  throw new FaultError([{ code: "cannot-build", at: `${AT}/groups/ridge/section`, wrong, cure }]);
}
