/** Hours of the finish, by coat. */
import type { Texture } from "../../catalog/finishes.js";
import type { Assumed } from "../request/assumed.js";
import { aside } from "../sheet/aside.js";
import { type Cell, least, minus, type Operand, over, plus, sumOr, times } from "../sheet/expression.js";
import type { Sheet } from "../sheet/sheet.js";
import type { FinishTakeoff } from "../takeoff/finish.js";

/** The first, or all others. */
export type Coat = "first" | "later";

/** Lays the first coat and the later ones as a route's stages; none without a finish. */
export function layBrushing(
  sheet: Sheet,
  key: string,
  { area, brushed, kind }: FinishTakeoff,
  assumed: Assumed,
): Cell[] {
  if (kind === "none") return [];
  const hours = (name: string, label: string, coat: Coat) => {
    const both = (["rough", "smooth"] as const).map((texture) =>
      over(facesOf(coat, area[texture], brushed[texture]), rateOf(assumed, texture)),
    );
    return sheet.lay(`${key}.hours.${name}`, paced(assumed, coat, sumOr(both, "person-h")), {
      label,
      display: "person-h",
    });
  };
  return [
    hours("finishFirst", "brush on the first coat", "first"),
    hours("finishLater", "brush on later coats", "later"),
  ];
}

/**
 * Person-time of those coats on some of the faces of a route.
 * @param faces - All of one texture.
 * @returns undefined where they take none.
 */
export function brushingOf(
  { area, brushed, kind }: FinishTakeoff,
  { texture, faces, coat }: { readonly texture: Texture; readonly faces: Operand; readonly coat: Coat },
  assumed: Assumed,
): Operand | undefined {
  if (kind === "none" || aside(area[texture]).isZero()) return undefined;
  const coats = over(times(faces, facesOf(coat, area[texture], brushed[texture])), area[texture]);
  return paced(assumed, coat, over(coats, rateOf(assumed, texture)));
}

/** Person-time of all coats on some faces. @param brushed - The faces times their coats. */
export function brushingTime(assumed: Assumed, texture: Texture, area: Operand, brushed: Operand): Operand {
  const [first, later] = (["first", "later"] as const).map((coat) =>
    paced(assumed, coat, over(facesOf(coat, area, brushed), rateOf(assumed, texture))),
  ) as [Operand, Operand];
  return plus(first, later);
}

const rateOf = (assumed: Assumed, texture: Texture): Cell =>
  assumed.cell(texture === "rough" ? "rate.finishRough" : "rate.finishSmooth");

function paced(assumed: Assumed, coat: Coat, time: Operand): Operand {
  const pace = assumed.cell("pace");
  return coat === "first" ? times(time, pace) : times(time, assumed.cell("finish.laterCoat"), pace);
}

/** Faces of the first coat, or of all others. No coats at all are no first coat either. */
function facesOf(coat: Coat, area: Operand, brushed: Operand): Operand {
  const first = least(area, brushed);
  return coat === "first" ? first : minus(brushed, first);
}
