/**
 * Panels of a roof: sheets that run from eave to ridge or hip, screwed to purlins or held by hidden clips, with closures, lap
 * sealant and trim.
 */
import type { EdgePiece } from "../../catalog/coverings.js";
import { FaultError } from "../faults.js";
import type { Need } from "../need.js";
import { exactly, marked } from "../quantity/text.js";
import type { InEither } from "../request/given.js";
import { aside } from "../sheet/aside.js";
import {
  type Cell,
  count,
  least,
  minus,
  number,
  type Operand,
  over,
  plus,
  roundUp,
  sum,
  times,
} from "../sheet/expression.js";
import { layStrips as layClosure, layTrimLength, layTrims, type Trims, trimNeeds } from "./covering-edges.js";
import {
  type CoveringWork,
  coverWidthOf,
  fastenerNeed,
  type LaidCovering,
  laySize,
  laySpread,
  partNeed,
  refuseLongLap,
  refuseNothing,
} from "./covering-work.js";
import { layStrips, MOST_STRIPS, type StripCells, type StripSizes } from "./panel-strips.js";

/** Counts of all planes together. */
export interface PanelCells {
  readonly panels: Cell;
  readonly trims: Trims;
  readonly eaveClosures: Cell | undefined;
  readonly ridgeClosures: Cell | undefined;
  /** Length of sealed laps; absent where none are. */
  readonly sealant: Cell | undefined;
  /** Through sheets or trim into wood, and sheet to sheet; as driven, without spares. */
  readonly roofScrews: Cell;
  readonly stitchScrews: Cell;
  readonly clips: Cell | undefined;
}

/** Into purlins of at least 1 1/2 in, through two sheets, and through a clip: common practice. */
const ROOF_SCREW: InEither = { "inch-pound": "1 1/2 in", metric: "35 mm" };
const STITCH_SCREW: InEither = { "inch-pound": "7/8 in", metric: "22 mm" };
const CLIP_SCREW: InEither = { "inch-pound": "1 in", metric: "25 mm" };
const USUAL_WIDTH: InEither = { "inch-pound": "36 in", metric: "1000 mm" };
const USUAL_STEP: InEither = { "inch-pound": "1 in", metric: "1 cm" };

/** Lays panels, fixing, closures, sealant and trim. */
export function layPanels(work: CoveringWork): LaidCovering & { readonly panels: PanelCells } {
  const sizes = layPanelSizes(work);
  const planes = work.surface.faces.map((face) => {
    const across = work.sheet.lay(`${face.prefix}.across`, roundUp(over(face.eave, sizes.coverWidth)), {
      label: "panels across one slope",
    });
    if (face.shape === "hipped") refuseMany(work, across);
    return layStrips(work, face, across, sizes);
  });
  const trims = layTrims(work);
  const { sheet, name, row, slope } = work;
  const counts = planes.map((plane) => plane.panels);
  const panels = sheet.find(`${name}.panels`) ?? sheet.lay(`${name}.panels`, sum(counts), { label: "panels" });
  const fixing = layFixing(work, planes, trims);
  const closures = row.closures ? layClosures(work) : undefined;
  const sealant = slope.lapsSealed ? laySealant(work, planes) : undefined;
  const cells = { panels, trims, ...noClosures(closures), sealant, ...fixing };
  return {
    faces: planes.map(({ layout }) => layout),
    panels: cells,
    ...layTrimLength(work, trims),
    needs: panelNeeds(work, planes, cells, closures?.sizes),
  };
}

function layPanelSizes(work: CoveringWork): StripSizes {
  const { offer, row, sheet } = work;
  const panels = offer?.sheets.form === "panels" ? offer.sheets : undefined;
  const cut = panels?.sold.by === "cut-length" ? panels.sold : undefined;
  const longestSold = panels?.sold.by === "piece" ? panels.sold.lengths.at(-1)?.length : cut?.longest;
  const coverWidth = laySize(
    work,
    "coverWidth",
    "width that a panel covers",
    panels?.coverWidth,
    coverWidthOf(row, USUAL_WIDTH),
  );
  const cutStep = laySize(work, "cutStep", "panels are cut to whole", cut?.step, USUAL_STEP);
  const longest =
    longestSold &&
    laySize(work, "longestPanel", "longest panel", longestSold, { "inch-pound": "40 ft", metric: "12 m" });
  refuseNothing(work, [coverWidth, cutStep]);
  if (longest && aside(longest).lt(exactly("24 in").value)) {
    const least = work.defaults.system === "metric" ? "610 mm" : "24 in";
    const wrong = `The longest panel is ${sheet.onTape(longest)}: laps would eat it up.`;
    throw new FaultError([{ code: "cannot-build", at: offer?.at ?? "", wrong, cure: `Give ${least} or more.` }]);
  }
  const endLap = laySpread(work, "endLap", "end lap of panels", row.endLap ?? ["6 in", "9 in", "12 in"], row.from);
  if (longest) refuseLongLap(sheet, endLap, longest);
  return { coverWidth, cutStep, longest, endLap, reversible: row.reversible ?? false };
}

function refuseMany({ sheet, offer }: CoveringWork, across: Cell): void {
  if (sheet.decide(across).lte(MOST_STRIPS)) return;
  const wrong = `A hipped slope takes ${sheet.onTape(across)} strips; the limit is ${MOST_STRIPS}.`;
  const cure = "Give wider panels, or estimate a part of the roof.";
  throw new FaultError([{ code: "too-large", at: offer?.at ?? "/structure", wrong, cure }]);
}

/** What holds panels, and trims on them. */
function layFixing(work: CoveringWork, planes: readonly StripCells[], trims: Trims) {
  const { sheet, name, row } = work;
  const isClipped = row.fixing.with === "panel-clip";
  const clips = isClipped ? layClips(work, planes) : undefined;
  const purlin = isClipped ? [] : [layPurlinScrews(work, planes)];
  const stitch = row.fixing.stitchEvery ? [layStitches(work, planes, row.fixing.stitchEvery)] : [];
  const wood = [...trims.values()].flatMap(({ woodScrews }) => woodScrews ?? []);
  const sheets = [...trims.values()].flatMap(({ sheetScrews }) => sheetScrews ?? []);
  const roofScrews = sheet.lay(`${name}.roofScrews`, sum([...purlin, ...wood]), { label: "screws into wood" });
  const stitchScrews = sheet.lay(`${name}.stitchScrews`, sum([...stitch, ...sheets]), {
    label: "screws sheet to sheet",
  });
  return { roofScrews, stitchScrews, clips };
}

/** Per panel and row, the end rows (eave, ridge, hips, end laps) closer. */
function layPurlinScrews(work: CoveringWork, planes: readonly StripCells[]): Cell {
  const { sheet, row, name, roof } = work;
  const { each, endRowFactor, from } = row.fixing;
  const perRow = laySpread(work, "screwsPerRow", "screws a panel and purlin row", each, from);
  const factor = endRowFactor
    ? laySpread(work, "endRowFactor", "times as many at eave, ridge and end laps", endRowFactor, from)
    : number("1");
  const one = number("1");
  const weighted = (rows: Operand, ends: Operand) => plus(minus(rows, ends), times(ends, factor));
  const screws = planes.map(({ layout: { face, across, up, strips } }) => {
    if (!strips) {
      const ends = sheet.lay(`${face.prefix}.endRows`, least(face.purlinRows, plus(up, one)), {
        label: "end rows of one slope",
      });
      return times(count(face.alike), across as Cell, perRow, weighted(face.purlinRows, ends));
    }
    const rows = strips.map((strip, i) => {
      const crossed = plus(roundUp(over(strip.reach, roof.purlinSpacing)), one);
      const label = `purlin rows under strip ${i + 1}, end rows by their factor`;
      return sheet.lay(`${face.prefix}.strip${i + 1}.rows`, weighted(crossed, least(crossed, plus(strip.up, one))), {
        label,
      });
    });
    return times(count(face.alike), perRow, sum(rows));
  });
  return sheet.lay(`${name}.purlinScrews`, screws.length === 1 ? (screws[0] as Operand) : sum(screws), {
    label: "screws through panels into purlins",
  });
}

/** In the middle of each space of a side lap. */
function layStitches({ sheet, name, defaults }: CoveringWork, planes: readonly StripCells[], every: string): Cell {
  const apart = defaults.system === "metric" ? marked(exactly(every), "metric") : every;
  const label = `stitches in one side lap, ${apart} apart`;
  const all = planes.flatMap(({ layout: { face, strips }, laps }) => {
    if (strips) return laps.map((lap) => times(count(face.alike), roundUp(over(lap.length, number(every)))));
    const inLap = sheet.lay(`${face.prefix}.stitchesInLap`, roundUp(over(face.slopeLength, number(every))), { label });
    return laps.map((lap) => times(count(face.alike), lap.count, inLap));
  });
  return sheet.lay(
    `${name}.lapStitches`,
    all.length === 0 ? number("0") : all.length === 1 ? (all[0] as Operand) : sum(all),
    {
      label: "stitches in side laps",
    },
  );
}

/** One edge of each panel is clipped, at both ends and between. */
function layClips(work: CoveringWork, planes: readonly StripCells[]): Cell {
  const { sheet, name, row } = work;
  const apart = laySpread(
    work,
    "clipsApart",
    "clips along a seam, apart",
    row.fixing.apart ?? ["18 in", "24 in", "24 in"],
    row.fixing.from,
  );
  const along = (length: Operand) => plus(roundUp(over(length, apart)), number("1"));
  const all = planes.flatMap(({ layout: { face, across, strips } }) =>
    strips
      ? strips.map(({ reach }) => times(count(face.alike), along(reach)))
      : [times(count(face.alike), across as Cell, along(face.slopeLength))],
  );
  return sheet.lay(`${name}.clips`, all.length === 1 ? (all[0] as Operand) : sum(all), {
    label: "clips along the seams",
  });
}

/** Inside closures at the eaves; outside ones at the ridge, on both its sides, and on both sides of every hip. */
function layClosures(work: CoveringWork) {
  const { offer, row, surface, roof } = work;
  const usual = coverWidthOf(row, USUAL_WIDTH);
  const strip = (kind: "eave-closure" | "ridge-closure", side: "inside" | "outside") => {
    const offered = offer?.closures.find((each) => each.kind === side)?.length;
    return laySize(work, `closure.${kind}`, `width that one ${kind.replace("-", " ")} strip fills`, offered, usual);
  };
  const { edges } = surface;
  const slopes = roof.planes.reduce((all, plane) => all + plane.alike, 0);
  const sides = edges.hips.length > 0 ? 2 : slopes;
  const upper = edges.ridge.map((edge) => ({ ...edge, count: sides * edge.count }));
  const hips = edges.hips.map((edge) => ({ ...edge, count: 2 * edge.count }));
  const sizes = { eave: strip("eave-closure", "inside"), ridge: strip("ridge-closure", "outside") };
  refuseNothing(work, [sizes.eave, sizes.ridge]);
  return {
    sizes,
    // Panels of a hidden seam turn down at the eave and need none there.
    eave: row.fixing.with === "panel-clip" ? undefined : layClosure(work, "eave-closure", edges.eaves, sizes.eave),
    ridge: layClosure(work, "ridge-closure", [...upper, ...hips], sizes.ridge),
  };
}

type Closures = ReturnType<typeof layClosures>;

const noClosures = (closures: Closures | undefined) => ({
  eaveClosures: closures?.eave,
  ridgeClosures: closures?.ridge,
});

/** A bead along every side lap and end lap. */
function laySealant({ sheet, name, assumed, units }: CoveringWork, planes: readonly StripCells[]): Cell {
  const more = plus(number("1"), assumed.cell("covering.sealantWaste"));
  const all = planes.map(({ layout: { face }, laps, endLaps }) => {
    const sides = laps.map((lap) => times(lap.count, lap.length));
    return times(count(face.alike), sum([...sides, endLaps]), more);
  });
  return sheet.lay(`${name}.sealant`, all.length === 1 ? (all[0] as Operand) : sum(all), {
    label: "sealed laps, waste included",
    display: units.long,
  });
}

function panelNeeds(
  work: CoveringWork,
  planes: readonly StripCells[],
  cells: PanelCells,
  sizes: Closures["sizes"] | undefined,
): Need[] {
  const { clips, sealant, eaveClosures, ridgeClosures } = cells;
  const cuts = planes.flatMap((plane) => plane.cuts);
  const closure = (
    part: EdgePiece & ("eave-closure" | "ridge-closure"),
    pieces: Cell | undefined,
    length: Cell | undefined,
  ) => (pieces && length ? [partNeed(work, part, pieces, { pieceLength: length })] : []);
  const length = cuts.length === 1 ? cuts[0]?.length : undefined;
  const twoEach = clips && times(number("2"), clips);
  return [
    partNeed(work, "panel", cells.panels, { cuts, ...(length && { pieceLength: length }) }),
    ...trimNeeds(work, cells.trims),
    ...closure("eave-closure", eaveClosures, sizes?.eave),
    ...closure("ridge-closure", ridgeClosures, sizes?.ridge),
    ...(sealant ? [partNeed(work, "lap-sealant", sealant)] : []),
    ...(clips ? [fastenerNeed(work, { fastener: "panel-clip", label: "Panel clips", driven: clips })] : []),
    ...(twoEach
      ? [fastenerNeed(work, { fastener: "clip-screw", label: "Clip screws", driven: twoEach, length: CLIP_SCREW })]
      : []),
    fastenerNeed(work, { fastener: "roof-screw", label: "Roof screws", driven: cells.roofScrews, length: ROOF_SCREW }),
    fastenerNeed(work, {
      fastener: "stitch-screw",
      label: "Stitch screws",
      driven: cells.stitchScrews,
      length: STITCH_SCREW,
    }),
  ];
}
