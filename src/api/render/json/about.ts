/** What an answer says of itself. */
import { z } from "zod";
import type { Basis } from "../../../estimate/basis.js";

/** What only the service knows: versions and digests. */
export interface Provenance {
  readonly engine: string;
  readonly dataVersion: string;
  readonly requestDigest: string;
}

export const AboutSchema = z
  .strictObject({
    title: z.string().nullable().describe("Title of the request."),
    measure: z.enum(["inch-pound", "metric"]).describe("Measure system of the answer."),
    currency: z.string().describe("Currency of all money (ISO 4217)."),
    catalog: z.string().describe("Name of the price catalog."),
    catalogNote: z.string().nullable().describe("What the catalog says of its prices."),
    engine: z.string().describe("Version of the program."),
    dataVersion: z.string().describe("Digest of the trade data, default assumptions and demos that it ships."),
    requestDigest: z.string().describe("SHA-256 of the request, its keys sorted, in hexadecimal."),
    reproducible: z.literal(true).describe("The same request to the same version gives the same bytes."),
  })
  .meta({ id: "About", description: "Which request was answered, and by what." });

/** Says what was answered. */
export function about({ request, catalog }: Basis, of: Provenance): z.output<typeof AboutSchema> {
  return {
    title: request.title ?? null,
    measure: request.system,
    currency: catalog.currency,
    catalog: catalog.name,
    catalogNote: catalog.note ?? null,
    engine: of.engine,
    dataVersion: of.dataVersion,
    requestDigest: of.requestDigest,
    reproducible: true,
  };
}
