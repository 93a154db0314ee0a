/** A hired sawyer who comes with a mill: what it saws like, who helps, and what it is charged by. */
import { MILLS, millOf } from "../../catalog/mills.js";
import { toQuantity } from "../../catalog/reading.js";
import type { DisplayUnits } from "../quantity/display.js";
import { exactly } from "../quantity/text.js";
import type { Assumed } from "../request/assumed.js";
import type { SawyerShape } from "../request/sawyer.js";
import { type Cell, number, plus } from "../sheet/expression.js";
import type { Sheet } from "../sheet/sheet.js";
import { type MillCells, USUAL_SAWYER } from "./mill.js";

/** On which terms the sawyer comes. */
export interface SawyerTerms {
  readonly charge: "hour" | "board-foot";
  /** Least charge for set-up and sawing together. */
  readonly minimum: Cell | undefined;
}

/** The sawyer's mill in the yard of one's own: other kerf and pace, the same carrying and the same saws beside it. */
export function laySawyer(
  sheet: Sheet,
  shape: SawyerShape,
  own: MillCells,
  { assumed, units, currency }: { readonly assumed: Assumed; readonly units: DisplayUnits; readonly currency: string },
): { readonly mill: MillCells; readonly terms: SawyerTerms } {
  const kind = shape.mill ?? USUAL_SAWYER;
  const { from, pace, ...mill } = millOf(kind);
  sheet.title("sawyer", `Hired sawyer: ${MILLS[kind].name}`);
  const rate = (name: string, label: string, spread: (typeof mill)["kerf"]) =>
    assumed.spread(`sawyer.${name}`, label, spread, from);
  const crew = sheet.input("sawyer.helpers", exactly(`${shape.helpers ?? 1} people`), {
    label: "people of one's own who help the sawyer",
  });
  const fed = pace.by === "feed" ? pace : undefined;
  const cells: MillCells = {
    ...own,
    kind,
    blade: mill.blade,
    kerf: rate("kerf", "kerf of the sawyer's mill", mill.kerf),
    throat: sheet.input("sawyer.throat", exactly(mill.largestLog), {
      label: "largest log of the sawyer's mill, bark included",
      display: units.small,
    }),
    rate: rate("rate", "cut face that the sawyer saws, while sawing", pace.rate),
    feed: fed && rate("feed", "fastest feed of the sawyer", fed.feed),
    back: fed && rate("back", "return after a cut of the sawyer", fed.back),
    setUp: rate("setUp", "first straight cut of a bolt, by the sawyer", mill.setUp),
    turn: rate("turn", "turning a bolt, by the sawyer", mill.turn),
    cutHandling: rate("cutHandling", "clear the sawyer's mill and reset it, a cut", mill.cutHandling),
    crew,
    hands: sheet.lay("sawyer.hands", plus(crew, number("1 people")), { label: "people at the sawyer's mill" }),
    fuel: rate("fuel", "fuel of the sawyer, in the charge", mill.fuel),
    barOil: undefined,
    sharpenEvery: rate("sharpenEvery", "sawn between the sawyer's sharpenings", mill.sharpenEvery),
    bladeLife: rate("bladeLife", "sharpenings of the sawyer's blade", mill.bladeLife),
    sharpen: sheet.input("sawyer.sharpen", exactly("0 person-h"), { label: "own hours of a sharpening of the sawyer" }),
    stopsToSharpen: true,
    sharpening: "service",
  };
  const minimum =
    shape.minimum === undefined
      ? undefined
      : sheet.input("sawyer.minimum", toQuantity(shape.minimum, currency), { label: "least charge of the sawyer" });
  return { mill: cells, terms: { charge: shape.charge, minimum } };
}
