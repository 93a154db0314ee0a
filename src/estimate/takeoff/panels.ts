/**
 * Panels of a roof: sheets that run from eave to ridge, screwed to purlins, with closures, lap sealant and trim.
 * All slopes are alike, so each is counted once.
 */
import type { Covering } from "../../catalog/coverings.js";
import type { DisplayUnits } from "../quantity/display.js";
import type { Assumed } from "../request/assumed.js";
import {
  type Cell,
  count,
  greatest,
  least,
  minus,
  number,
  over,
  plus,
  roundUp,
  sum,
  times,
} from "../sheet/expression.js";
import type { Sheet } from "../sheet/sheet.js";
import { type PanelClosure, type PanelSizes, type PanelTrim, refuseLongLap } from "./covering-sizes.js";
import { layTrim, type TrimCells } from "./roof-trim.js";

/** The sheeted surface that a strategy covers. */
export interface SheetedRoof {
  readonly slopes: 1 | 2;
  /** Along the eave, sheet edge to sheet edge. */
  readonly width: Cell;
  /** Along the slope, sheet edge to sheet edge. */
  readonly slopeLength: Cell;
  /** Rows of purlins under one slope. */
  readonly purlinRows: Cell;
  readonly lapsSealed: boolean;
}

/** Counts of all slopes together, but for `across` and `up`. */
export interface PanelCells {
  /** Panels side by side on one slope, and one after the other up it. */
  readonly across: Cell;
  readonly up: Cell;
  readonly length: Cell;
  readonly panels: Cell;
  readonly trims: Readonly<Record<PanelTrim, TrimCells>>;
  readonly closures: Readonly<Record<PanelClosure, Cell>> | undefined;
  /** Length of sealed laps; absent where none are. */
  readonly sealant: Cell | undefined;
  /** Through sheets or trim into wood, and sheet to sheet; as driven, without spares. */
  readonly roofScrews: Cell;
  readonly stitchScrews: Cell;
}

/** The covering, with its sizes. */
export interface PanelInput {
  readonly covering: Covering;
  readonly sizes: PanelSizes;
  readonly assumed: Assumed;
}

/** Lays panels, fixing, closures, sealant and trim. */
export function layPanels(sheet: Sheet, roof: SheetedRoof, input: PanelInput, units: DisplayUnits): PanelCells {
  const laid = layCuts(sheet, roof, input, units);
  const trims = layTrims(sheet, roof, input, units);
  const screws = layScrews(sheet, roof, laid, input);
  const all = Object.values(trims);
  const roofScrews = sheet.lay("covering.roofScrews", sum([screws.purlin, ...all.map((trim) => trim.woodScrews)]), {
    label: "screws into wood",
  });
  const stitchScrews = sheet.lay(
    "covering.stitchScrews",
    sum([...screws.stitch, ...all.map((trim) => trim.sheetScrews)]),
    { label: "screws sheet to sheet" },
  );
  return {
    ...laid,
    trims,
    closures: input.covering.closures ? layClosures(sheet, roof, input.sizes) : undefined,
    sealant: roof.lapsSealed ? laySealant(sheet, roof, laid, input.assumed, units) : undefined,
    roofScrews,
    stitchScrews,
  };
}

type Cuts = Pick<PanelCells, "across" | "up" | "length" | "panels"> & { readonly endLap: Cell };

/** How many panels, and how long: n of them with laps l cover s when each is (s + (n − 1) × l) ÷ n long. */
function layCuts(
  sheet: Sheet,
  { slopes, width, slopeLength }: SheetedRoof,
  { covering, sizes, assumed }: PanelInput,
  units: DisplayUnits,
): Cuts {
  const { coverWidth, cutStep, longestPanel } = sizes;
  const usual = covering.endLap ?? (["6 in", "9 in", "12 in"] as const);
  const endLap = assumed.spread("covering.endLap", "end lap of panels", usual, covering.from);
  if (longestPanel) refuseLongLap(sheet, endLap, longestPanel);
  const across = sheet.lay("covering.across", roundUp(over(width, coverWidth)), { label: "panels across one slope" });
  const needed = longestPanel
    ? greatest(number("1"), roundUp(over(minus(slopeLength, endLap), minus(longestPanel, endLap))))
    : number("1");
  const up = sheet.lay("covering.up", needed, { label: "panels up one slope" });
  const exact = over(plus(slopeLength, times(minus(up, number("1")), endLap)), up);
  const stepped = times(roundUp(over(exact, cutStep)), cutStep);
  // The step must not push a panel past the longest there is; the exact length never does.
  const length = sheet.lay("covering.panelLength", longestPanel ? least(stepped, longestPanel) : stepped, {
    label: "panel, cut to length",
    display: units.small,
  });
  const panels = sheet.lay("covering.panels", times(count(slopes), across, up), { label: "panels" });
  return { across, up, length, panels, endLap };
}

/** Per panel and row, the end rows (eave, ridge, end laps) closer; stitches in the middle of each space of a side lap. */
function layScrews(sheet: Sheet, roof: SheetedRoof, cuts: Cuts, { covering, assumed }: PanelInput) {
  const { each, endRowFactor, stitchEvery, from } = covering.fixing;
  const perRow = assumed.spread("covering.screwsPerRow", "screws a panel and purlin row", each, from);
  const factor = endRowFactor
    ? assumed.spread("covering.endRowFactor", "times as many at eave, ridge and end laps", endRowFactor, from)
    : number("1");
  const ends = sheet.lay("covering.endRows", least(roof.purlinRows, plus(cuts.up, number("1"))), {
    label: "end rows of one slope",
  });
  const rows = plus(minus(roof.purlinRows, ends), times(ends, factor));
  const slopes = count(roof.slopes);
  const purlin = sheet.lay("covering.purlinScrews", times(slopes, cuts.across, perRow, rows), {
    label: "screws through panels into purlins",
  });
  if (!stitchEvery) return { purlin, stitch: [] };
  const inLap = sheet.lay("covering.stitchesInLap", roundUp(over(roof.slopeLength, number(stitchEvery))), {
    label: `stitches in one side lap, ${stitchEvery} apart`,
  });
  const stitch = sheet.lay("covering.lapStitches", times(slopes, minus(cuts.across, number("1")), inLap), {
    label: "stitches in side laps",
  });
  return { purlin, stitch: [stitch] };
}

/** Strips follow the profile rib by rib: no offcut begins the next edge. */
function layClosures(sheet: Sheet, { slopes, width }: SheetedRoof, { closure }: PanelSizes) {
  const lay = (kind: PanelClosure, label: string) =>
    sheet.lay(`covering.${kind}s`, times(count(slopes), roundUp(over(width, closure[kind]))), { label });
  return {
    "eave-closure": lay("eave-closure", "closure strips at the eave, under the sheets"),
    "ridge-closure": lay("ridge-closure", "closure strips at the ridge, over the sheets"),
  };
}

/** A bead along every side lap and end lap. */
function laySealant(sheet: Sheet, roof: SheetedRoof, { across, up }: Cuts, assumed: Assumed, units: DisplayUnits) {
  const one = number("1");
  const sides = times(minus(across, one), roof.slopeLength);
  const ends = times(minus(up, one), roof.width);
  const more = plus(one, assumed.cell("covering.sealantWaste"));
  return sheet.lay("covering.sealant", times(count(roof.slopes), plus(sides, ends), more), {
    label: "sealed laps, waste included",
    display: units.long,
  });
}

function layTrims(sheet: Sheet, roof: SheetedRoof, { sizes, assumed }: PanelInput, units: DisplayUnits) {
  const shared = { lap: assumed.cell("covering.trimLap"), screwsApart: assumed.cell("covering.trimScrews") };
  const lay = (kind: PanelTrim, label: string, runs: number, length: Cell, rows: { sheet: number; wood: number }) =>
    layTrim(sheet, { ...shared, name: `covering.${kind}`, label, runs, length, piece: sizes.trim[kind], rows }, units);
  for (const piece of Object.values(sizes.trim)) refuseLongLap(sheet, shared.lap, piece);
  const { slopes, width, slopeLength } = roof;
  // A single slope's cap is screwed to the sheets and to the wall or fascia behind it.
  const capRows = slopes === 2 ? { sheet: 2, wood: 0 } : { sheet: 1, wood: 1 };
  return {
    "ridge-cap": lay("ridge-cap", "Ridge cap", 1, width, capRows),
    "eave-trim": lay("eave-trim", "Eave trim", slopes, width, { sheet: 0, wood: 1 }),
    "rake-trim": lay("rake-trim", "Rake trim", 2 * slopes, slopeLength, { sheet: 1, wood: 1 }),
  };
}
