/** What sets coverings side by side, as JSON: cost now and a year, hours, weight, the lines behind them. */
import { z } from "zod";
import type { ComparedCovering } from "../../../estimate/covering-comparison.js";
import type { MeasureSystem } from "../../../estimate/quantity/text.js";
import { DECK_KINDS } from "../../../estimate/request/structure-deck.js";
import { FigureSchema, figure, figureOrNull, LabeledSchema, labeled } from "./figures.js";
import { LineSchema, shownLine } from "./purchasing.js";

export const ComparedSchema = z
  .strictObject({
    rank: z.int().describe("1 is the best: allowed before not, wholly priced before not, then by cost a year of life."),
    cash: FigureSchema.nullable().describe(
      "Deck and covering as bought, with taxes; lines without a price are not in it. Null where no line has one.",
    ),
    complete: z.boolean().describe("Whether every line has a price."),
    yearly: FigureSchema.nullable().describe("The same for each year of its life; null where a line has no price."),
    hours: FigureSchema.describe("Person-hours for deck, covering and trim."),
    weight: FigureSchema.describe("Of deck, underlay and covering together."),
    deck: z.enum(DECK_KINDS).describe("What carries it."),
    lines: z.array(LineSchema).describe("What it takes, deck included; a line without a price has none, never zero."),
    taxes: z.array(LabeledSchema).describe("On its lines."),
  })
  .meta({ id: "ComparedCovering", description: "One covering beside the others." });

/** @param index - Its place among those compared, best first. */
export function shownCompared(
  one: ComparedCovering,
  index: number,
  system: MeasureSystem,
): z.output<typeof ComparedSchema> {
  return {
    rank: index + 1,
    cash: figureOrNull(one.cash),
    complete: one.unpriced === 0,
    yearly: figureOrNull(one.yearly),
    hours: figure(one.hours),
    weight: figure(one.weight),
    deck: one.deck.kind,
    lines: one.lines.map((line) => shownLine(line, system)),
    taxes: one.taxes.map(labeled),
  };
}
