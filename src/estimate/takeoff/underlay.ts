/**
 * What lies between deck and covering: layers of felt by the slope, as the code asks, or the felt that is laid in with each
 * course of shakes. A strip of width w that laps l on the one below covers w − l; two layers are strips lapped 19 in of 36.
 */
import { UNDERLAY_LAPS, UNDERLAYS, underlayLayers } from "../../catalog/coverings.js";
import type { Need } from "../need.js";
import { riseOn12 } from "../pieces/deck.js";
import type { InEither } from "../request/given.js";
import { type Cell, count, minus, number, over, plus, roundUp, sum, times } from "../sheet/expression.js";
import { type CoveringWork, type FaceLayout, fastenerNeed, laySize, partNeed, refuseLongLap } from "./covering-work.js";

/** What an underlay takes. */
export interface UnderlayCells {
  readonly layers: 1 | 2;
  /** Roof area times layers: what is rolled out. */
  readonly laid: Cell;
  /** Of the roll, laps and waste included. */
  readonly gross: Cell;
  readonly weight: Cell;
  readonly needs: readonly Need[];
}

/** Felt between shakes: strips of 18 in, one to a course (R905.8.6, from memory). */
const INTERLAY = number("18 in");
const CAP_NAIL = { "inch-pound": "1 in", metric: "25 mm" } as const;

/** Lays the underlay; undefined where the covering wants none. */
export function layUnderlay(work: CoveringWork, faces: readonly FaceLayout[]): UnderlayCells | undefined {
  const { sheet, kind, roof } = work;
  const layers = underlayLayers(kind, riseOn12(sheet, roof.unitRise, roof.unitRun));
  // Below the least slope the rules are silent: as many as at the least.
  const needed = layers === 0 ? work.row.underlay.length > 0 && !work.slope.allowed : true;
  if (!needed) return undefined;
  const known = layers === 0 ? ((work.row.underlay[0]?.layers ?? 1) as 1 | 2) : layers;
  return kind === "wood-shakes" ? interlaid(work, faces) : rolledOut(work, known);
}

function rolledOut(work: CoveringWork, layers: 1 | 2): UnderlayCells {
  const { sheet, name, surface, offer, assumed, units } = work;
  const width = laySize(work, "underlayWidth", "width of a roll of underlay", offer?.underlay?.width, {
    "inch-pound": UNDERLAYS["felt-15"].width,
    metric: "1 m",
  });
  // Two layers: each strip covers 17 of 36 in, in proportion on other widths.
  const lap =
    layers === 1
      ? laySize(work, "underlayLap", "lap of underlay", undefined, {
          "inch-pound": UNDERLAY_LAPS.single,
          metric: "50 mm",
        })
      : sheet.lay(`${name}.underlayLap`, over(times(width, number(UNDERLAY_LAPS.double)), number("36 in")), {
          label: "lap of underlay, two layers",
          display: units.small,
        });
  if (layers === 1) refuseLongLap(sheet, lap, width);
  const laid = sheet.lay(`${name}.underlaid`, times(count(layers), surface.area), {
    label: layers === 1 ? "underlay laid" : "underlay laid, both layers",
    display: units.area,
  });
  const waste = plus(number("1"), assumed.cell("covering.underlayWaste"));
  const gross = sheet.lay(`${name}.underlay`, over(times(surface.area, width, waste), minus(width, lap)), {
    label: "underlay, laps and waste included",
    display: units.area,
  });
  const perSquare = over(assumed.cell("covering.capNails"), number("1 square"));
  const nails = sheet.lay(`${name}.underlayNails`, roundUp(times(laid, perSquare)), { label: "cap nails" });
  return {
    layers,
    laid,
    gross,
    weight: layWeight(work, gross),
    needs: [
      partNeed(work, "underlay", gross),
      fastenerNeed(work, { fastener: "cap-nail", label: "Cap nails", driven: nails, length: CAP_NAIL, dry: true }),
    ],
  };
}

function interlaid(work: CoveringWork, faces: readonly FaceLayout[]): UnderlayCells {
  const { sheet, name, assumed, units, defaults } = work;
  const wide = defaults.system === "metric" ? "457 mm" : "18 in";
  const strips = faces.map(({ face, up }) =>
    times(count(face.alike), up, over(plus(face.eave, face.top), number("2")), INTERLAY),
  );
  const laid = sheet.lay(`${name}.underlaid`, sum(strips), {
    label: `felt laid in with the courses, ${wide} to each`,
    display: units.area,
  });
  const gross = sheet.lay(`${name}.underlay`, times(laid, plus(number("1"), assumed.cell("covering.underlayWaste"))), {
    label: "felt, waste included",
    display: units.area,
  });
  return { layers: 1, laid, gross, weight: layWeight(work, gross), needs: [partNeed(work, "underlay", gross)] };
}

/** The published weights, and the same in the round figures of metric trade. */
const FELT_WEIGHT: Readonly<Record<"felt-15" | "felt-30", InEither>> = {
  "felt-15": { "inch-pound": UNDERLAYS["felt-15"].weight, metric: "0.6 kg/m2" },
  "felt-30": { "inch-pound": UNDERLAYS["felt-30"].weight, metric: "1.2 kg/m2" },
};

function layWeight(work: CoveringWork, gross: Cell): Cell {
  const { sheet, name, units, kind } = work;
  const felt = kind === "wood-shakes" || kind === "tile" ? "felt-30" : "felt-15";
  const each = sheet.input(
    `${name}.underlayWeightPerArea`,
    work.defaults.quantity(
      undefined,
      `/overrides/${name}.underlayWeightPerArea`,
      FELT_WEIGHT[felt],
      UNDERLAYS[felt].name,
    ),
    {
      label: "weight of underlay",
    },
  );
  return sheet.lay(`${name}.underlayWeight`, times(gross, each), {
    label: "weight of the underlay",
    display: units.mass,
  });
}
