/** Preparing a log for the mill: its bark is scraped and its rot cleared by the face of the bark, so that a thick log takes more. */
import type { DisplayUnits } from "../quantity/display.js";
import type { Assumed } from "../request/assumed.js";
import type { SoundLog } from "../salvage/sound-wood.js";
import { type Cell, number, over, PI, plus, times } from "../sheet/expression.js";
import type { Sheet } from "../sheet/sheet.js";

/** Lays the person-time of each log, by its name: the mean girth over bark times the sound length, at a rate; dirty bark takes more. */
export function layPrepare(
  sheet: Sheet,
  assumed: Assumed,
  logs: readonly SoundLog[],
  units: DisplayUnits,
): ReadonlyMap<string, Cell> {
  return new Map(
    logs.map(({ name, smallDiameter, largeDiameter, bark, length, dirty }) => {
      const girth = times(PI, plus(over(plus(smallDiameter, largeDiameter), number("2")), times(number("2"), bark)));
      const face = sheet.lay(`logs.${name}.barkFace`, times(girth, length), {
        label: "face of its bark",
        display: units.area,
      });
      const clean = assumed.cell("rate.prepareLog");
      const rate = dirty ? plus(clean, assumed.cell("rate.prepareDirty")) : clean;
      return [
        name,
        sheet.lay(`logs.${name}.prepare`, times(face, rate), { label: "prepare it", display: "person-min" }),
      ];
    }),
  );
}
