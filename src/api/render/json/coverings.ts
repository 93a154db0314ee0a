/** The roof coverings as JSON. */
import { z } from "zod";
import { type Covering, type CoveringKind, coveringKinds, coveringOf } from "../../../catalog/coverings.js";
import { measuredValue } from "../../../catalog/reading.js";
import { CitationSchema, citation, measuredText, RangeSchema, range, SourcesSchema, sources } from "./measured.js";

const SlopeSchema = z
  .strictObject({
    rise: measuredValue.describe("Least rise on 12 in of run."),
    when: z.string().nullable().describe("What must be so for this slope; null when nothing must."),
    from: CitationSchema.describe("The clause."),
  })
  .meta({ id: "LeastSlope", description: "The least slope at which a covering is allowed." });

const UnderlaySchema = z
  .strictObject({
    fromRise: measuredValue.describe("From this rise on 12 in of run upwards."),
    layers: z.int().min(1).max(2).describe("Layers of underlay."),
  })
  .meta({ id: "UnderlayRule", description: "Layers of underlay by slope." });

const CoveringSchema = z
  .strictObject({
    kind: z.string().describe("The name to use in requests."),
    name: z.string().describe("In words."),
    form: z.enum(["panels", "courses", "rolls", "boards"]).describe("How it is counted."),
    slopes: z.array(SlopeSchema).describe("Least slopes, the most demanding first."),
    deck: z.enum(["purlins", "spaced-boards", "closed-deck"]).describe("What carries it."),
    supportEvery: RangeSchema.nullable().describe("Centres of purlins or boards; null where the deck says it."),
    underlay: z.array(UnderlaySchema).describe("Underlay by slope; empty when none is needed."),
    coverWidth: measuredValue.nullable().describe("Width one panel or board covers, unless the price catalog says."),
    exposure: RangeSchema.nullable().describe("Height of a course to the weather; null where grade and slope say it."),
    endLap: RangeSchema.nullable().describe("Lap of panels or rolls up the slope; null where there is none."),
    drip: RangeSchema.describe("How far it passes the fascia, level."),
    weight: RangeSchema.describe("Weight of the covering alone on the slope."),
    weightFrom: CitationSchema.describe("Where the weight comes from."),
    closures: z.boolean().describe("Whether ridge and eave need closures."),
    from: CitationSchema.describe("Where the rest of the row comes from."),
  })
  .meta({ id: "Covering", description: "One roof covering." });

export const CoveringListSchema = z
  .strictObject({
    coverings: z.array(CoveringSchema).describe("Every covering that a request may ask for."),
    sources: SourcesSchema,
  })
  .meta({ id: "CoveringList", description: "The roof coverings that the service knows." });

/** All coverings. */
export function coveringList(): z.output<typeof CoveringListSchema> {
  const rows = coveringKinds.map(coveringOf);
  return {
    coverings: coveringKinds.map((kind) => shownCovering(kind, coveringOf(kind))),
    sources: sources(rows.flatMap((row) => [row.from, row.weightFrom, ...row.slopes.map(({ from }) => from)].map(key))),
  };
}

const key = ({ source }: Covering["from"]) => source;

function shownCovering(kind: CoveringKind, row: Covering): z.output<typeof CoveringSchema> {
  const { name, form, deck, closures } = row;
  return {
    ...{ kind, name, form },
    slopes: row.slopes.map(({ rise, when = null, from }) => ({ rise: measuredText(rise), when, from: citation(from) })),
    deck,
    supportEvery: row.supportEvery ? range(row.supportEvery) : null,
    underlay: row.underlay.map(({ fromRise, layers }) => ({ fromRise: measuredText(fromRise), layers })),
    coverWidth: row.coverWidth === undefined ? null : measuredText(row.coverWidth),
    exposure: row.exposure ? range(row.exposure) : null,
    endLap: row.endLap ? range(row.endLap) : null,
    drip: range(row.drip),
    weight: range(row.weight),
    weightFrom: citation(row.weightFrom),
    closures,
    from: citation(row.from),
  };
}
