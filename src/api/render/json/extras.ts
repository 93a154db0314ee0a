/** Boards that could still come out of what a plan leaves over, as JSON. */
import { z } from "zod";
import { measuredValue } from "../../../catalog/reading.js";
import type { Basis } from "../../../estimate/basis.js";
import { extrasOf, type OfLength } from "../../../estimate/extras.js";
import type { PlannedLogs } from "../../../estimate/plan.js";
import { trimmed } from "../../../estimate/quantity/decimal.js";
import { inUnit, quantity } from "../../../estimate/quantity/quantity.js";
import { marked, placesFor } from "../../../estimate/quantity/text.js";
import { unit } from "../../../estimate/quantity/unit.js";

const text = (describe: string) => z.string().describe(describe);

const LengthsSchema = z
  .array(z.strictObject({ length: text("Length."), count: z.int().describe("Boards of it.") }))
  .describe("By length, the longest first.");

export const ExtrasSchema = z
  .array(
    z
      .strictObject({
        section: text("Rough section, sawn full."),
        from: z
          .enum(["sawn", "unsawn"])
          .describe(
            "sawn: out of slabs, edges and offcuts of the bolts that the plan saws; unsawn: out of lengths of the same logs that it leaves.",
          ),
        asked: z.boolean().describe("Whether pieces that the logs are asked for are sawn to this section."),
        count: z.int().describe("Boards."),
        lengths: LengthsSchema,
        logs: z
          .array(z.strictObject({ log: text("Name of the log."), lengths: LengthsSchema }))
          .describe("Which logs give them, in the order of the plan."),
        lumber: measuredValue.describe("Wood in them, rough and full."),
      })
      .meta({ id: "ExtraBoards", description: "Boards of one section beyond what is wanted." }),
  )
  .describe(
    "Useful boards that could still come out of what is left of the logs used, sound and without wane, kerfs taken off: sections of the pieces, sections that the catalog sells, sawn full to their names, and boards an inch (25 mm) thick; from 3 ft (0.9 m) in whole feet (0.1 m). The board of most wood is taken from each part first; that is a rule, not a search. They are in no hours and no figure of the estimate.",
  );

/** Boards out of what a plan leaves. */
export function shownExtras(basis: Basis, sawing: PlannedLogs): z.output<typeof ExtrasSchema> {
  const { gridMm } = basis.sawing;
  const display = unit(basis.units.lumber);
  const shown = (lengths: readonly OfLength[]) =>
    lengths.map(({ steps, count }) => ({
      length: marked(quantity(gridMm.times(steps), "mm"), basis.request.system),
      count,
    }));
  return extrasOf(basis, sawing).map(({ section, leftIn, asked, count, lengths, logs, wood }) => ({
    section,
    from: leftIn,
    asked,
    count,
    lengths: shown(lengths),
    logs: logs.map((own) => ({ log: own.log, lengths: shown(own.lengths) })),
    lumber: {
      value: trimmed(inUnit(quantity(gridMm.pow(3).times(wood), "mm3"), display), placesFor(display)),
      unit: basis.units.lumber,
    },
  }));
}
