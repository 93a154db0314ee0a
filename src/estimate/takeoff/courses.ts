/**
 * Coverings laid in courses: shingles, shakes, tile. Each course shows its exposure; what a bundle covers goes in proportion
 * to it. The starter at the eave is a strip, or the first course laid twice.
 */
import { type Fixing, shingleExposure } from "../../catalog/coverings.js";
import type { FastenerKind } from "../../catalog/fasteners.js";
import type { Need } from "../need.js";
import { riseOn12 } from "../pieces/deck.js";
import type { Quantity } from "../quantity/quantity.js";
import { exactly, type MeasureSystem } from "../quantity/text.js";
import type { InEither } from "../request/given.js";
import { type Cell, count, least, number, over, plus, roundUp, sum, times } from "../sheet/expression.js";
import { layStrips, layTrimLength, layTrims, trimNeeds } from "./covering-edges.js";
import {
  both,
  type CoveringWork,
  coverWidthOf,
  fastenerNeed,
  type LaidCovering,
  laySize,
  laySpread,
  partNeed,
  refuseNothing,
} from "./covering-work.js";

/** What a roof laid in courses takes. */
export interface CourseCells {
  /** Height of a course to the weather. */
  readonly exposure: Cell;
  /** Strips, shingles or tiles, as laid. */
  readonly pieces: Cell;
  /** Bundles, or tiles where they are sold one by one. */
  readonly bundles: Cell;
}

/** Nails through a covering into its deck, by kind. Lengths: R905.2.5, table R905.7.5(2); tile by common practice. */
const NAIL_LENGTH: Readonly<Record<string, InEither>> = {
  "asphalt-shingles": { "inch-pound": "1 1/4 in", metric: "30 mm" },
  "wood-shingles": { "inch-pound": "1 1/4 in", metric: "35 mm" },
  "wood-shakes": { "inch-pound": "2 in", metric: "50 mm" },
  tile: { "inch-pound": "2 1/2 in", metric: "60 mm" },
};
const DRIP_NAIL: InEither = { "inch-pound": "1 in", metric: "25 mm" };
const BATTEN_SCREW: InEither = { "inch-pound": "2 in", metric: "50 mm" };

/** Lays courses, starter, nails, ridge and hips. */
export function layCourses(work: CoveringWork): LaidCovering & { readonly courses: CourseCells } {
  const { sheet, surface, kind } = work;
  const exposure = layExposure(work);
  refuseNothing(work, [exposure]);
  const faces = surface.faces.map((face) => ({
    face,
    up: sheet.lay(`${face.prefix}.courses`, roundUp(over(face.slopeLength, exposure)), {
      label: "courses up one slope",
    }),
    module: exposure,
  }));
  const courses = { exposure, ...layBundles(work, exposure) };
  const trims = layTrims(work);
  const battens = kind === "tile" ? layBattens(work, faces) : [];
  const label = kind === "tile" ? "Tiles" : undefined;
  const needs = [
    partNeed(work, "course", courses.bundles, label ? { label } : {}),
    ...trimNeeds(work, trims),
    ...birdStop(work),
    ...battens,
    ...layNails(work, courses, trims),
  ];
  return { faces, courses, needs, ...layTrimLength(work, trims) };
}

/** As sold, but no more than the code's table lets wood shingles show at this slope. */
function layExposure(work: CoveringWork): Cell {
  const { sheet, name, row, offer, kind, roof, units, defaults } = work;
  const sold = offer?.sheets.form === "courses" ? offer.sheets.exposure : undefined;
  if (kind !== "wood-shingles") {
    if (sold) return laySize(work, "exposure", "exposure of a course", sold, both("5 in"));
    return laySpread(work, "exposure", "exposure of a course", row.exposure ?? ["5 in", "5 in", "5 in"], row.from);
  }
  const [length, three] = [exactly("16 in"), exactly("3 in")];
  const rise = riseOn12(sheet, roof.unitRise, roof.unitRun);
  const most = shingleExposure(length, "No. 1", rise) ?? shingleExposure(length, "No. 1", three) ?? exactly("5 in");
  const limit = sheet.input(`${name}.mostExposure`, most, {
    label: `No. 1 shingles ${defaults.system === "metric" ? "406 mm" : "16 in"} long show at most, at this slope`,
    source: "International Residential Code, table R905.7.5",
    display: units.small,
  });
  if (!sold) return sheet.lay(`${name}.exposure`, limit, { label: "exposure of a course", display: units.small });
  const asSold = laySize(work, "soldExposure", "exposure at which a bundle is reckoned", sold, both("5 in"));
  return sheet.lay(`${name}.exposure`, least(asSold, limit), { label: "exposure of a course", display: units.small });
}

/** Area with the doubled course and waste, over what a bundle covers at this exposure. */
function layBundles(work: CoveringWork, exposure: Cell): Pick<CourseCells, "pieces" | "bundles"> {
  const { sheet, name, row, kind, offer, surface, assumed, units } = work;
  const sold = offer?.sheets.form === "courses" ? offer.sheets : undefined;
  const at = sold?.exposure ?? exactly(row.exposure?.[1] ?? "5 in");
  const thing = kind === "tile" ? "tile" : "bundle";
  const reckoned =
    sheet.find(`${name}.soldExposure`) ??
    (sold
      ? exposure
      : laySize(work, "soldExposure", `exposure at which a ${thing} is reckoned`, undefined, inEither(at)));
  const covers = sold
    ? sheet.catalog(`${name}.covers`, sold.covers, {
        label: `a ${thing} covers`,
        source: offer?.label ?? "price catalog",
      })
    : laySize(work, "covers", `a ${thing} covers`, undefined, {
        "inch-pound": row.covers ?? "25 ft2",
        metric: row.metric?.covers ?? "2.3 m2",
      });
  const width = laySize(
    work,
    "pieceWidth",
    "a strip, shingle or tile is reckoned as wide as",
    undefined,
    coverWidthOf(row, { "inch-pound": "12 in", metric: "300 mm" }),
  );
  refuseNothing(work, [reckoned, covers, width]);
  const doubled = row.doubledCourse
    ? surface.edges.eaves.map((edge) => times(count(edge.count), edge.length, exposure))
    : [];
  const laid = sheet.lay(`${name}.laidArea`, sum([surface.area, ...doubled]), {
    label: row.doubledCourse ? "area, the doubled course at the eaves included" : "area laid",
    display: units.area,
  });
  const pieces = sheet.lay(`${name}.pieces`, roundUp(over(laid, times(width, exposure))), { label: "pieces laid" });
  const waste = plus(number("1"), assumed.cell("covering.courseWaste"));
  const here =
    reckoned === exposure
      ? covers
      : sheet.lay(`${name}.coversLaid`, over(times(covers, exposure), reckoned), {
          label: `a ${thing} covers at this exposure`,
          display: units.area,
        });
  const bundles = sheet.lay(`${name}.bundles`, roundUp(over(times(laid, waste), here)), {
    label: `${thing}s, waste included`,
  });
  return { pieces, bundles };
}

/** A length as either system writes it: the same length. */
const inEither = ({ value }: Quantity): InEither => ({
  "inch-pound": `${value.dividedBy("25.4").toFixed()} in`,
  metric: `${value.toFixed()} mm`,
});

/** Nails of the covering itself, of the drip edge, and of ridge and hip caps. */
function layNails(work: CoveringWork, { pieces }: CourseCells, trims: ReturnType<typeof layTrims>): Need[] {
  const { row, kind, assumed, sheet, name, defaults } = work;
  const each = laySpread(work, "nailsEach", "nails or screws in one piece", row.fixing.each, row.fixing.from);
  const caps = (["ridge-cap", "hip-cap", "rake-trim"] as const).flatMap((edge) => {
    const trim = trims.get(edge);
    return trim && !trim.sheetScrews
      ? [times(trim.length, over(assumed.cell("covering.ridgeNails"), number("1 ft")))]
      : [];
  });
  const driven = sheet.lay(`${name}.nails`, roundUp(sum([times(pieces, each), ...caps])), {
    label: "nails or screws through the covering, ridge and hips included",
  });
  const drip = trims.get("drip-edge")?.woodScrews;
  const { fastener, label } = fixedWith(row.fixing.with, defaults.system);
  const length = NAIL_LENGTH[kind] ?? DRIP_NAIL;
  return [
    fastenerNeed(work, { fastener, label, driven, length }),
    ...(drip
      ? [
          fastenerNeed(work, {
            fastener: "roofing-nail",
            as: "drip-nail",
            label: "Drip-edge nails",
            driven: drip,
            length: DRIP_NAIL,
          }),
        ]
      : []),
  ];
}

/** Box nails go by the penny; where lengths are metric, ring-shank nails stand in for them. */
function fixedWith(
  kind: Fixing["with"],
  system: MeasureSystem,
): { readonly fastener: FastenerKind; readonly label: string } {
  if (kind === "deck-screw") return { fastener: "deck-screw", label: "Tile screws" };
  if (kind === "roofing-nail") return { fastener: "roofing-nail", label: "Roofing nails" };
  return { fastener: system === "metric" ? "ring-shank-nail" : "box-nail", label: "Shingle nails" };
}

/** Tile lies on battens, one a course and one more at the ridge, screwed at every rafter. */
function layBattens(
  work: CoveringWork,
  faces: readonly { readonly face: CoveringWork["surface"]["faces"][number]; readonly up: Cell }[],
): Need[] {
  const { sheet, name, assumed, units, offer, roof } = work;
  const rows = faces.map(({ face, up }) =>
    times(count(face.alike), plus(up, number("1")), over(plus(face.eave, face.top), number("2"))),
  );
  const length = sheet.lay(`${name}.battenLength`, times(sum(rows), plus(number("1"), assumed.cell("deck.waste"))), {
    label: "battens, one a course, waste included",
    display: units.long,
  });
  const offered = offer?.trims.find(({ kind }) => kind === "batten")?.length;
  const piece = laySize(work, "battenPiece", "length of a batten", offered, { "inch-pound": "8 ft", metric: "2.4 m" });
  refuseNothing(work, [piece]);
  const pieces = sheet.lay(`${name}.battens`, roundUp(over(length, piece)), { label: "battens" });
  const driven = roof.rows
    ? times(sum(faces.map(({ face, up }) => times(count(face.alike), plus(up, number("1"))))), roof.rows.rafters)
    : roundUp(over(length, roof.rafterSpace));
  return [
    partNeed(work, "batten", pieces, { pieceLength: piece, fitted: { edges: [], length } }),
    fastenerNeed(work, {
      fastener: "deck-screw",
      as: "batten-screw",
      label: "Batten screws",
      driven,
      length: BATTEN_SCREW,
    }),
  ];
}

/** Closes the eave below tile against birds. */
function birdStop(work: CoveringWork): Need[] {
  if (!work.row.edges.includes("eave-closure")) return [];
  const offered = work.offer?.closures.find(({ kind }) => kind === "inside")?.length;
  const strip = laySize(work, "closure.eave-closure", "length that an eave closure fills", offered, {
    "inch-pound": "36 in",
    metric: "1 m",
  });
  refuseNothing(work, [strip]);
  const pieces = layStrips(work, "eave-closure", work.surface.edges.eaves, strip);
  return [partNeed(work, "eave-closure", pieces, { pieceLength: strip })];
}
