/** Near misses as JSON: a small change of the structure, what it drops, and what it saves. */
import { z } from "zod";
import { type Decimal, fixed } from "../../../estimate/quantity/decimal.js";
import { minorDigits } from "../../../estimate/quantity/unit.js";
import { decimalField } from "./figures.js";

/** One of them, as it was found. */
export interface FoundMiss {
  readonly at: string;
  readonly from: string;
  readonly to: string;
  readonly drops: readonly { readonly what: string; readonly from: string; readonly to: string }[];
  readonly cash: Decimal;
  readonly hours: Decimal;
  readonly text: string;
}

const DropSchema = z
  .strictObject({
    what: z.string().describe("What becomes fewer or shorter."),
    from: z.string().describe("As it is."),
    to: z.string().describe("After the change."),
  })
  .meta({ id: "NearMissDrop", description: "Something that a small change makes fewer or shorter." });

export const NearMissSchema = z
  .strictObject({
    at: z.string().describe("JSON Pointer of the field of the request to change."),
    from: z.string().describe("Its value now."),
    to: z.string().describe("Its value after the change; the request takes it as it is."),
    text: z.string().describe("All of it in words."),
    drops: z.array(DropSchema).describe("What becomes fewer or shorter."),
    saves: z
      .strictObject({ value: decimalField("Less cash."), unit: z.string().describe("Currency.") })
      .describe("Less cash where everything is bought; lines without a price are not counted."),
    hours: z
      .strictObject({
        value: decimalField("Fewer person-hours; less than zero if more."),
        unit: z.literal("person-h").describe("Person-hours."),
      })
      .describe("Fewer person-hours where everything is bought."),
  })
  .meta({
    id: "NearMiss",
    description: "A small change of the structure that drops a length, a panel, a row or a piece.",
  });

/** The most saving first. */
export function shownNearMisses(misses: readonly FoundMiss[], currency: string): z.output<typeof NearMissSchema>[] {
  return misses.map(({ at, from, to, text, drops, cash, hours }) => ({
    ...{ at, from, to, text },
    drops: drops.map((drop) => ({ ...drop })),
    saves: { value: fixed(cash, minorDigits(currency) ?? 2), unit: currency },
    hours: { value: fixed(hours, 2), unit: "person-h" as const },
  }));
}
