/** Hours of the finish, by coat. */
import type { Texture } from "../../catalog/finishes.js";
import type { PieceGroup } from "../pieces/piece-group.js";
import type { Assumed } from "../request/assumed.js";
import { aside } from "../sheet/aside.js";
import { type Cell, least, minus, type Operand, over, plus, times } from "../sheet/expression.js";
import type { Sheet } from "../sheet/sheet.js";
import { type FinishTakeoff, textureOf } from "../takeoff/finish.js";

type Coat = "first" | "later";

/** Lays the first coat and the later ones as stages; none without a finish. */
export function layBrushing(sheet: Sheet, assumed: Assumed, { area, brushed, kind }: FinishTakeoff): Cell[] {
  if (kind === "none") return [];
  const hours = (name: string, label: string, formula: Operand) =>
    sheet.lay(`common.hours.${name}`, times(formula, assumed.cell("pace")), { label, display: "person-h" });
  const one = (coat: Coat, texture: Texture) =>
    over(facesOf(coat, area[texture], brushed[texture]), rateOf(assumed, texture));
  const both = (coat: Coat) => plus(one(coat, "rough"), one(coat, "smooth"));
  return [
    hours("finishFirst", "brush on the first coat", both("first")),
    hours("finishLater", "brush on later coats", times(both("later"), assumed.cell("finish.laterCoat"))),
  ];
}

/** Person-time of those coats on all pieces of one group; undefined where they take none. */
export function brushingOf(sheet: Sheet, assumed: Assumed, group: PieceGroup, coat: Coat): Operand | undefined {
  const texture = textureOf(group);
  const [own, area, brushed] = [`${group.name}.area`, `${texture}Area`, `${texture}Brushed`].map((name) =>
    sheet.find(`finish.${name}`),
  );
  if (!own || !area || !brushed || aside(area).isZero()) return undefined;
  const faces = over(times(own, facesOf(coat, area, brushed)), area);
  const time = times(over(faces, rateOf(assumed, texture)), assumed.cell("pace"));
  return coat === "first" ? time : times(time, assumed.cell("finish.laterCoat"));
}

const rateOf = (assumed: Assumed, texture: Texture): Cell =>
  assumed.cell(texture === "rough" ? "rate.finishRough" : "rate.finishSmooth");

/** Faces of the first coat, or of all others. No coats at all are no first coat either. */
function facesOf(coat: Coat, area: Cell, brushed: Cell): Operand {
  const first = least(area, brushed);
  return coat === "first" ? first : minus(brushed, first);
}
