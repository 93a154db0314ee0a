/** Logs as measured where they lie: length and one diameter or girth are enough. */
import { z } from "zod";
import { moneyField, nameField, quantityField } from "../../catalog/reading.js";
import { alsoCalled } from "../../catalog/shape-faults.js";
import { speciesIds } from "../../catalog/species.js";
import { type Fault, pointer } from "../faults.js";

/** Longest log that is taken: no loader carries a longer one out. Assumption. */
export const LONGEST_LOG = "120 ft";

const across = (describe: string, example: string) => quantityField("in", { describe, example, most: "8 ft" });
const along = (describe: string, example: string) =>
  quantityField("ft", { describe, example, sign: "not-negative", most: LONGEST_LOG });

/** A log as it is measured where it lies. */
export const logShape = z
  .strictObject({
    name: nameField("Name painted on the log; unique.", "pine-3-butt"),
    species: z.enum(speciesIds as [string, ...string[]]).meta({
      description: "Which wood. GET /v1/species lists them all.",
      examples: ["eastern-white-pine"],
    }),
    count: z
      .int()
      .min(1)
      .max(200)
      .optional()
      .meta({ description: "How many logs are just like this one.", examples: [2] }),
    length: quantityField("ft", {
      describe: "Whole length, flare and bad ends included.",
      example: "12 ft 6 in",
      most: LONGEST_LOG,
    }),
    smallDiameter: across("Diameter at the small end, the smaller of two crosswise.", "13 1/2 in").optional(),
    smallGirth: across("Girth at the small end, in the place of its diameter.", "42 in").optional(),
    largeDiameter: across("Diameter at the large end, above the flare.", "16 in").optional(),
    largeGirth: across("Girth at the large end, above the flare, in the place of its diameter.", "50 in").optional(),
    bark: z
      .enum(["over", "inside"])
      .optional()
      .meta({
        description: "Whether diameters and girths were taken over the bark or inside it; over where nothing is said.",
        examples: ["over"],
      }),
    sweep: z
      .union([
        z
          .enum(["straight", "some", "bad"])
          .meta({ description: "0, 1 or 3 in over the log's length.", examples: ["some"] }),
        quantityField("in", {
          describe: "Largest distance between the log's side and a string from end to end, on the hollow side.",
          example: "1 1/2 in",
          sign: "not-negative",
          most: "60 in",
        }),
      ])
      .optional()
      .meta({ description: "How crooked the log is.", examples: ["some", "1 1/2 in"] }),
    rot: z
      .strictObject({
        smallEnd: across("Diameter of the rotten heart at the small end.", "2 in").optional(),
        largeEnd: across("Diameter of the rotten heart at the large end.", "4 in").optional(),
      })
      .optional()
      .meta({ description: "Rotten or hollow heart; where one end is named, it tapers to nothing at the other." }),
    badEnds: z
      .strictObject({
        smallEnd: along("Length to cut off at the small end.", "6 in").optional(),
        largeEnd: along("Length to cut off at the large end.", "1 ft").optional(),
      })
      .optional()
      .meta({ description: "Split, burnt or dirty ends that are cut off before sawing." }),
    flare: along("Length of the butt flare: not sawn.", "1 ft").optional(),
    distance: quantityField("ft", {
      describe: "From where it lies to the mill.",
      example: "250 ft",
      sign: "not-negative",
      most: "26400 ft",
    }).optional(),
    dirty: z
      .boolean()
      .optional()
      .meta({ description: "Grit in the bark: dulls chain and band sooner.", examples: [false] }),
    value: moneyField("", { describe: "What the log would fetch if it were not sawn.", example: "25" }).optional(),
  })
  .meta({
    id: "Log",
    description: "One log, or several just like it.",
    examples: [{ name: "pine-1-butt", species: "eastern-white-pine", length: "12 ft 6 in", smallDiameter: "14 in" }],
  });

alsoCalled(logShape, { diameter: "smallDiameter", girth: "smallGirth", circumference: "smallGirth", wood: "species" });

/** What `logShape` reads. */
export type LogShape = z.infer<typeof logShape>;

/** What the schema alone can't see: a size at the small end, given once; names that differ. */
export function logFaults(logs: readonly LogShape[], at: string): Fault[] {
  const seen = new Set<string>();
  return logs.flatMap((log, i) => {
    const here = pointer(at, i);
    const faults: Fault[] = [];
    if (!log.smallDiameter && !log.smallGirth) {
      faults.push({
        code: "missing-field",
        at: here,
        wrong: `Nobody knows how thick ${log.name} is.`,
        cure: "Give smallDiameter or smallGirth.",
      });
    }
    for (const [diameter, girth] of [
      ["smallDiameter", "smallGirth"],
      ["largeDiameter", "largeGirth"],
    ] as const) {
      if (log[diameter] === undefined || log[girth] === undefined) continue;
      const wrong = `Both ${diameter} and ${girth} are given for ${log.name}.`;
      faults.push({ code: "wrong-shape", at: pointer(here, girth), wrong, cure: "Give one of them." });
    }
    if (seen.has(log.name)) {
      const wrong = `There is already a log called ${log.name}.`;
      faults.push({
        code: "duplicate-name",
        at: pointer(here, "name"),
        wrong,
        cure: "Give every log a name of its own.",
      });
    }
    seen.add(log.name);
    return faults;
  });
}
