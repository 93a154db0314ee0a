/** Coverings in rolls: mineral-surfaced roll, nailed and cemented at its laps, and a membrane glued down whole. */
import type { Need } from "../need.js";
import type { InEither } from "../request/given.js";
import { type Cell, count, minus, number, type Operand, over, plus, roundUp, sum, times } from "../sheet/expression.js";
import { layTrimLength, layTrims, trimNeeds } from "./covering-edges.js";
import type { CoveredFace } from "./covering-faces.js";
import {
  type CoveringWork,
  fastenerNeed,
  type LaidCovering,
  laySize,
  laySpread,
  partNeed,
  refuseLongLap,
  refuseNothing,
} from "./covering-work.js";

/** What a roof of rolls takes. */
export interface RollCells {
  readonly rolls: Cell;
  /** Length of all strips laid, end laps not counted. */
  readonly laid: Cell;
}

interface RollSize {
  readonly width: InEither;
  readonly length: InEither;
}

const MINERAL_ROLL: RollSize = {
  width: { "inch-pound": "36 in", metric: "1 m" },
  length: { "inch-pound": "36 ft", metric: "10 m" },
};
const ROLL: Readonly<Record<string, RollSize>> = {
  "mineral-roll": MINERAL_ROLL,
  membrane: { width: { "inch-pound": "10 ft", metric: "3 m" }, length: { "inch-pound": "50 ft", metric: "15 m" } },
};
const NAIL: InEither = { "inch-pound": "1 1/4 in", metric: "30 mm" };
/** Strip along a ridge or hip of mineral-surfaced roll: common practice. */
const RIDGE_STRIP = "12 in";

/** Lays strips, laps, fixing and edges. */
export function layRolls(work: CoveringWork): LaidCovering & { readonly rolls: RollCells } {
  const { sheet, name, kind, row, offer, surface, assumed, units } = work;
  const sold = offer?.sheets.form === "rolls" ? offer.sheets : undefined;
  const usual = ROLL[kind] ?? MINERAL_ROLL;
  const width = laySize(work, "rollWidth", "width of a roll", sold?.width, usual.width);
  const length = laySize(work, "rollLength", "length of a roll", sold?.length, usual.length);
  const sideLap = laySpread(work, "sideLap", "side lap of strips", row.sideLap ?? ["2 in", "2 in", "3 in"], row.from);
  const endLap = laySpread(work, "endLap", "end lap of strips", row.endLap ?? ["4 in", "6 in", "6 in"], row.from);
  refuseNothing(work, [width, length]);
  refuseLongLap(sheet, sideLap, width);
  refuseLongLap(sheet, endLap, length);
  const cover = sheet.lay(`${name}.cover`, minus(width, sideLap), {
    label: "a strip covers up the slope",
    display: units.small,
  });
  const faces = surface.faces.map((face) => ({
    face,
    up: sheet.lay(`${face.prefix}.courses`, roundUp(over(minus(face.slopeLength, sideLap), cover)), {
      label: "strips up one slope",
    }),
    module: cover,
  }));
  const strips = faces.map(({ face, up }) => stripLength(face, up, cover));
  const capped = kind === "membrane" ? [] : [...surface.edges.ridge, ...surface.edges.hips];
  const caps = capped.map((edge) => over(times(count(edge.count), edge.length, number(RIDGE_STRIP)), width));
  const laid = sheet.lay(`${name}.stripLength`, sum([...strips, ...caps]), {
    label: "strips laid, end laps not counted",
    display: units.long,
  });
  const waste = plus(number("1"), assumed.cell("covering.courseWaste"));
  const rolls = sheet.lay(`${name}.rolls`, roundUp(over(times(laid, waste), minus(length, endLap))), {
    label: "rolls, waste included",
  });
  const trims = layTrims(work);
  const needs = [partNeed(work, "roll", rolls), ...trimNeeds(work, trims), ...fixing(work, laid)];
  const drip = trims.get("drip-edge")?.woodScrews;
  if (drip)
    needs.push(
      fastenerNeed(work, {
        fastener: "roofing-nail",
        as: "drip-nail",
        label: "Drip-edge nails",
        driven: drip,
        length: NAIL,
      }),
    );
  return { faces, rolls: { rolls, laid }, needs, ...layTrimLength(work, trims) };
}

/** n strips of an eave E that narrows by (E − T) × cover ÷ slope from one to the next: n × E − that × n × (n − 1) ÷ 2. */
function stripLength(face: CoveredFace, up: Cell, cover: Cell): Operand {
  if (face.shape === "rectangle") return times(count(face.alike), up, face.eave);
  const narrower = over(times(minus(face.eave, face.top), cover), face.slopeLength);
  const lost = over(times(narrower, up, minus(up, number("1"))), number("2"));
  return times(count(face.alike), minus(times(up, face.eave), lost));
}

/** Laps of a roll are nailed and cemented; a membrane is glued on its whole face and its seams are taped. */
function fixing(work: CoveringWork, laid: Cell): Need[] {
  const { sheet, name, row, kind, surface, units, assumed } = work;
  const sealed = sheet.lay(`${name}.sealant`, times(laid, plus(number("1"), assumed.cell("covering.sealantWaste"))), {
    label: "sealed laps, waste included",
    display: units.long,
  });
  const laps = partNeed(work, "lap-sealant", sealed, { label: kind === "membrane" ? "Seam tape" : "Lap cement" });
  if (row.fixing.with === "adhesive") {
    const glued = sheet.lay(
      `${name}.glued`,
      times(surface.area, plus(number("1"), assumed.cell("covering.courseWaste"))),
      {
        label: "area glued, waste included",
        display: units.area,
      },
    );
    return [laps, partNeed(work, "adhesive", glued)];
  }
  const apart = laySpread(
    work,
    "nailsApart",
    "nails along a lap, apart",
    row.fixing.apart ?? ["3 in", "3 in", "4 in"],
    row.fixing.from,
  );
  const driven = sheet.lay(`${name}.nails`, roundUp(over(laid, apart)), { label: "nails along the laps" });
  return [laps, fastenerNeed(work, { fastener: "roofing-nail", label: "Roofing nails", driven, length: NAIL })];
}
