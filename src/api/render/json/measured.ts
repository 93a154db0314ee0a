/** Quantities, ranges and citations of the catalog as JSON: decimals as text beside their unit. */
import { z } from "zod";
import { measuredValue } from "../../../catalog/reading.js";
import { type Citation, SOURCES, type Source, type SourceKey } from "../../../catalog/sources.js";
import { trimmed } from "../../../estimate/quantity/decimal.js";
import { inUnit, type Quantity } from "../../../estimate/quantity/quantity.js";
import { exactly } from "../../../estimate/quantity/text.js";

/** A decimal with its unit, as it travels. */
export type Measured = z.output<typeof measuredValue>;

/** A quantity in the unit that it was written in, rounded to at most `places`. */
export function measured(of: Quantity, places = 6): Measured {
  const unit = of.written ?? of.unit;
  return { value: trimmed(inUnit(of, unit), places), unit: unit.symbol };
}

/** A text of the catalog's own tables. */
export const measuredText = (text: string): Measured => measured(exactly(text));

/** Low, likely and high. */
export const RangeSchema = z
  .strictObject({
    low: measuredValue.describe("As low as it reasonably comes."),
    likely: measuredValue.describe("The best guess."),
    high: measuredValue.describe("As high as it reasonably comes."),
  })
  .meta({ id: "Range", description: "A value that is not known exactly." });

/** Three texts of a table, in the order low, likely, high. */
export function range([low, likely, high]: readonly [string, string, string]): z.output<typeof RangeSchema> {
  return { low: measuredText(low), likely: measuredText(likely), high: measuredText(high) };
}

const HOW_KNOWN = ["seen", "memory", "common practice", "computed", "assumption"] as const;
const known = () =>
  z
    .enum(HOW_KNOWN)
    .describe("How far to trust it: seen in a copy, from memory of it, practice of the trade, computed, or a choice.");

/** Where one row comes from. */
export const CitationSchema = z
  .strictObject({
    source: z.string().describe("Key of the publication in `sources`."),
    part: z.string().nullable().describe("Table, section or clause; null when it is the source as a whole."),
    known: known(),
  })
  .meta({ id: "Citation", description: "Where a value comes from." });

/** A citation; how well it is known is the source's own, unless the row says otherwise. */
export function citation({ source, part, known }: Citation): z.output<typeof CitationSchema> {
  return { source, part: part ?? null, known: known ?? SOURCES[source].known };
}

const SourceSchema = z
  .strictObject({
    title: z.string().describe("Title."),
    publisher: z.string().describe("Who published it."),
    year: z.string().nullable().describe("Year or edition; null for a practice of the trade."),
    part: z.string().nullable().describe("The part that is used."),
    known: known(),
  })
  .meta({ id: "Source", description: "A publication that rows cite." });

/** The publications that a table cites, by key. */
export const SourcesSchema = z.record(z.string(), SourceSchema).describe("The publications cited, by key.");

/** The publications of these keys, in the order of their keys. */
export function sources(keys: Iterable<SourceKey>): z.output<typeof SourcesSchema> {
  return Object.fromEntries([...new Set(keys)].sort().map((key) => [key, shownSource(SOURCES[key])]));
}

function shownSource({ title, publisher, known, year, part }: Source): z.output<typeof SourceSchema> {
  return { title, publisher, year: year ?? null, part: part ?? null, known };
}
