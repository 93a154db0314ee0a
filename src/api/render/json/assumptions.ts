/** The default assumptions as JSON: those of the catalog, and those that depend on the mill. */
import { z } from "zod";
import { ASSUMPTIONS, type Assumption } from "../../../catalog/assumptions.js";
import { MILL_MEASURES, type MillKind, millKinds, millOf, SAW_KERFS } from "../../../catalog/mills.js";
import { measuredValue } from "../../../catalog/reading.js";
import type { Citation } from "../../../catalog/sources.js";
import { displayUnits } from "../../../estimate/quantity/display.js";
import { Assumed } from "../../../estimate/request/assumed.js";
import { Defaults } from "../../../estimate/request/given.js";
import { layMill } from "../../../estimate/salvage/mill.js";
import type { Cell } from "../../../estimate/sheet/expression.js";
import { Sheet } from "../../../estimate/sheet/sheet.js";
import {
  CitationSchema,
  citation,
  measured,
  measuredText,
  RangeSchema,
  range,
  SourcesSchema,
  sources,
} from "./measured.js";

const AssumptionSchema = z
  .strictObject({
    name: z.string().describe("The name to use in requests."),
    label: z.string().describe("In words."),
    values: RangeSchema.describe("Low, likely, high."),
    from: CitationSchema.describe("Where it comes from."),
    measure: z.string().nullable().describe("How to replace it by a figure of your own; null where nothing is said."),
  })
  .meta({ id: "Assumption", description: "A named number that a request may replace." });

const MillSchema = z
  .strictObject({
    kind: z.string().describe("The name to use in requests."),
    name: z.string().describe("In words."),
    blade: z.enum(["chain", "band", "circular"]).describe("What it saws with."),
    crew: measuredValue.describe("People at the mill."),
    widestCut: measuredValue.describe("Widest cut."),
    largestLog: measuredValue.describe("Largest diameter at the log's large end, bark included."),
    longestLog: measuredValue.describe("Longest log."),
    output: RangeSchema.describe("Lumber an hour with everything, to check the rates by; no estimate uses it."),
    assumptions: z.array(AssumptionSchema).describe("Assumptions of this mill and of the saws beside it."),
  })
  .meta({ id: "Mill", description: "A kind of mill, with the assumptions that depend on it." });

export const AssumptionListSchema = z
  .strictObject({
    assumptions: z.array(AssumptionSchema).describe("Assumptions whatever the mill. Coverings have their own."),
    mills: z.array(MillSchema).describe("Every kind of mill."),
    sources: SourcesSchema,
  })
  .meta({ id: "AssumptionList", description: "The default assumptions." });

/** All assumptions. */
export function assumptionList(): z.output<typeof AssumptionListSchema> {
  return listOf(
    ASSUMPTIONS,
    millKinds.map((kind) => ({ kind, rows: millAssumptions(kind) })),
  );
}

/** The first of each. */
export function assumptionExample(): z.output<typeof AssumptionListSchema> {
  const [kind] = millKinds as [MillKind];
  return listOf(ASSUMPTIONS.slice(0, 1), [{ kind, rows: millAssumptions(kind).slice(0, 1) }]);
}

function listOf(
  assumptions: readonly Assumption[],
  mills: readonly { readonly kind: MillKind; readonly rows: readonly MillRow[] }[],
): z.output<typeof AssumptionListSchema> {
  const cited = [...assumptions, ...mills.flatMap(({ rows }) => rows.map(({ from }) => from))];
  return {
    assumptions: assumptions.map(shownAssumption),
    mills: mills.map(({ kind, rows }) => shownMill(kind, rows)),
    sources: sources(cited.map(({ source }) => source)),
  };
}

function shownAssumption(row: Assumption): z.output<typeof AssumptionSchema> {
  const { name, label, low, likely, high, source, part, measure } = row;
  const from = citation(part === undefined ? { source } : { source, part });
  return { name, label, values: range([low, likely, high]), from, measure };
}

interface MillRow {
  readonly cell: Cell;
  readonly from: Citation;
}

/** Kerfs that belong to other saws than the mill. */
const SAW_OF: Readonly<Record<string, keyof typeof SAW_KERFS>> = {
  "mill.ripKerf": "table-saw",
  "mill.crossKerf": "crosscut-saw",
  "mill.buckKerf": "bucking-chain",
};

/** As they are laid: names, words and ranges cannot differ from those of an estimate. */
function millAssumptions(kind: MillKind): MillRow[] {
  const sheet = new Sheet();
  layMill(
    { sheet, assumed: new Assumed(sheet), defaults: new Defaults("inch-pound"), units: displayUnits("inch-pound") },
    { mill: kind },
  );
  const own = sheet.cells.filter((cell) => cell.kind === "assumption" && cell.name.startsWith("mill."));
  return own.map((cell) => {
    const saw = SAW_OF[cell.name];
    return { cell, from: saw ? SAW_KERFS[saw].from : millOf(kind).from };
  });
}

function shownMill(kind: MillKind, rows: readonly MillRow[]): z.output<typeof MillSchema> {
  const { name, blade, crew, widestCut, largestLog, longestLog, output } = millOf(kind);
  return {
    ...{ kind, name, blade },
    crew: measuredText(crew),
    widestCut: measuredText(widestCut),
    largestLog: measuredText(largestLog),
    longestLog: measuredText(longestLog),
    output: range(output),
    assumptions: rows.map(shownRow),
  };
}

function shownRow({ cell, from }: MillRow): z.output<typeof AssumptionSchema> {
  const { low, high } = cell.range ?? { low: cell.value, high: cell.value };
  const [least, likely, most] = [low, cell.value, high].map((value) =>
    measured({ value, unit: cell.unit, written: cell.display }),
  ) as [ReturnType<typeof measured>, ReturnType<typeof measured>, ReturnType<typeof measured>];
  return {
    name: cell.name,
    label: cell.label,
    values: { low: least, likely, high: most },
    from: citation(from),
    measure: MILL_MEASURES[cell.name] ?? null,
  };
}
