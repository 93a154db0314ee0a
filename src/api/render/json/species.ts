/** The woods as JSON: what the service reckons with, each value saying when it stands in for a missing one. */
import { z } from "zod";
import { measuredValue } from "../../../catalog/reading.js";
import type { SourceKey } from "../../../catalog/sources.js";
import {
  barkShare,
  dryingTime,
  greenDensity,
  type Known,
  SPECIES,
  shrinkage,
  TRADE_GROUPS,
  type TradeGroup,
} from "../../../catalog/species.js";
import type { Species } from "../../../catalog/species-table.js";
import { measured, SourcesSchema, sources } from "./measured.js";

const KnownSchema = z
  .strictObject({
    value: measuredValue.describe("The value that is reckoned with."),
    standIn: z.boolean().describe("True when the species has no published value and another stands in for it."),
    how: z.string().describe("How the value came about."),
  })
  .meta({ id: "KnownProperty", description: "A property of a wood, and how it is known." });

const tannin = () => z.enum(["rich", "some", "little"]).describe("How strongly it eats at plain steel when damp.");

const DryingSchema = z
  .strictObject({
    good: measuredValue.describe("Piled in good weather."),
    winter: measuredValue.describe("Piled in autumn or winter."),
    standIn: z.boolean().describe("True when no time is published for this species."),
  })
  .meta({ id: "DryingTime", description: "Calendar days until lumber 1 in thick is at about 20 % moisture." });

const SpeciesSchema = z
  .strictObject({
    id: z.string().describe("The name to use in requests."),
    name: z.string().describe("Common name."),
    latin: z.string().describe("Botanical name."),
    kind: z.enum(["softwood", "hardwood"]).describe("Conifer or broadleaf."),
    greenWeight: KnownSchema.describe("Weight of the green wood without bark."),
    radialShrinkage: KnownSchema.describe("From green to oven-dry, across the rings, as a share of the green size."),
    tangentialShrinkage: KnownSchema.describe("From green to oven-dry, along the rings, as a share of the green size."),
    bark: KnownSchema.describe("Volume of the bark as a share of the wood's."),
    drying: DryingSchema.describe("How long it dries."),
    decay: z
      .enum(["resistant", "moderate", "nonresistant"])
      .describe("Decay resistance of the heartwood; sapwood has none."),
    tannin: tannin(),
  })
  .meta({ id: "Species", description: "One wood." });

const TradeGroupSchema = z
  .strictObject({
    id: z.string().describe("The name to use in a price catalog."),
    name: z.string().describe("As yards write it."),
    members: z.array(z.string()).describe("Species that are sold under it, by id."),
    tannin: tannin(),
    source: z.string().describe("Key of the publication in `sources`."),
  })
  .meta({ id: "TradeGroup", description: "Woods that yards sell under one name." });

export const SpeciesListSchema = z
  .strictObject({
    species: z.array(SpeciesSchema).describe("Every wood that a log or a piece may be of."),
    tradeGroups: z.array(TradeGroupSchema).describe("Names under which lumber is sold."),
    sources: SourcesSchema,
  })
  .meta({ id: "SpeciesList", description: "The woods that the service knows." });

/** What the columns of the table cite. */
const CITED: readonly SourceKey[] = [
  ...(["wood-handbook", "navy-mo-312", "fia-species", "fpl-air-drying"] as const),
  ...(["en-350", "holzatlas", "common-practice"] as const),
];

/** All woods. */
export function speciesList(): z.output<typeof SpeciesListSchema> {
  return {
    species: SPECIES.map(shownSpecies),
    tradeGroups: TRADE_GROUPS.map(shownGroup),
    sources: sources([...CITED, ...TRADE_GROUPS.map((group) => group.source)]),
  };
}

function shownSpecies(row: Species): z.output<typeof SpeciesSchema> {
  const { id, name, latin, kind, decay, tannin } = row;
  const drying = dryingTime(row);
  return {
    ...{ id, name, latin, kind },
    greenWeight: shownProperty(greenDensity(row)),
    radialShrinkage: shownProperty(shrinkage(row, "radial")),
    tangentialShrinkage: shownProperty(shrinkage(row, "tangential")),
    bark: shownProperty(barkShare(row)),
    drying: { good: measured(drying.good), winter: measured(drying.winter), standIn: drying.fallback },
    ...{ decay, tannin },
  };
}

function shownProperty({ value, fallback, how }: Known): z.output<typeof KnownSchema> {
  return { value: measured(value), standIn: fallback, how };
}

function shownGroup({ id, name, members, tannin, source }: TradeGroup): z.output<typeof TradeGroupSchema> {
  return { id, name, members: [...members], tannin, source };
}
