/**
 * A ridge beam of a gable and the king posts that it stands on, one on every tie. Its upper corners lie in the planes of the
 * rafters' upper edges; the ties are flush with the plates.
 */
import type { GableGroup } from "../request/structure-gable.js";
import { type Cell, minus, number, over, plus, times } from "../sheet/expression.js";
import type { RafterCells, RafterPlan } from "./common-rafter.js";
import { type GroupKind, type Laying, one } from "./laying.js";
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

/** From the top of every tie to the underside of the ridge beam; none below a roof so low that the beam is let into the ties. */
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
  if (sheet.decide(height).lte(0)) return [];
  return one(laying, "king-posts", "King posts", height, postPairs);
}
