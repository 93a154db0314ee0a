/** The list of demos as JSON. */
import { z } from "zod";

export const DemoListSchema = z
  .strictObject({
    note: z.string().describe("What to know of the demos."),
    demos: z
      .array(
        z
          .strictObject({
            name: z.string().describe("Its name: GET /v1/demos/{name} answers the request."),
            title: z.string().describe("In words."),
            structure: z.string().describe("Kind of structure."),
            catalog: z.string().nullable().describe("Name of the demo catalog with its prices; null if it has none."),
          })
          .meta({ id: "Demo", description: "A demo project." }),
      )
      .describe("Requests that can be posted as they are."),
    catalogs: z
      .array(
        z
          .strictObject({
            name: z.string().describe('The name to use in requests: {"demo": name}.'),
            title: z.string().describe("Name of the supplier."),
            currency: z.string().describe("Currency (ISO 4217)."),
            note: z.string().nullable().describe("What the catalog says of its prices."),
          })
          .meta({ id: "DemoCatalogRow", description: "A demo price catalog." }),
      )
      .describe("Price catalogs that requests may name."),
  })
  .meta({ id: "DemoList", description: "Demo projects and catalogs." });
export type DemoList = z.output<typeof DemoListSchema>;
