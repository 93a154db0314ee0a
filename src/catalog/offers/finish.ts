/** Finishes on offer, in their cans. */
import { z } from "zod";
import { pointer } from "../../estimate/faults.js";
import type { Quantity } from "../../estimate/quantity/quantity.js";
import { type FinishKind, finishKinds, type Texture } from "../finishes.js";
import { priceField, type QuantityText, quantityField, toQuantity } from "../reading.js";
import { commonFields, fromField, MOST_SIZES, type Named, type OfferReading, type Price, wordsOf } from "./price.js";

const coverage = (texture: string) =>
  quantityField("ft2/gal", { describe: `First-coat coverage on ${texture} wood.`, example: "250 ft2/gal" }).optional();

const canSchema = z
  .strictObject({
    size: quantityField("gal", { describe: "Content of the can.", example: "5 gal", most: "60 gal" }),
    from: fromField("can"),
    price: priceField("", { describe: "Price of the can.", example: "219.00" }),
  })
  .meta({ id: "Can", description: "One size of can." });

/** One finish entry as JSON carries it. */
export const finishSchema = z
  .strictObject({
    ...commonFields,
    kind: z.enum(finishKinds).meta({ description: "What it is.", examples: ["oil-stain"] }),
    cans: z.array(canSchema).min(1).max(MOST_SIZES).meta({ description: "Cans on offer." }),
    coverage: z
      .strictObject({ smooth: coverage("smooth"), rough: coverage("rough-sawn") })
      .optional()
      .meta({ description: "The maker's coverage, in the place of the general one." }),
  })
  .meta({
    id: "FinishOffer",
    description:
      "One finish in its cans. Of several of a kind the cheapest for the job is bought, or what options.buyAs names.",
  });

/** A can: what it holds, and its price. */
export interface Can {
  readonly size: Quantity;
  /** The price holds for so many of it and more; for any number where absent. */
  readonly from?: number;
  readonly price: Price;
}

/** A finish that is sold in cans. */
export interface FinishOffer extends Named {
  readonly kind: FinishKind;
  /** Smallest first. */
  readonly cans: readonly Can[];
  /** The maker's first-coat coverage, where given. */
  readonly coverage: Partial<Readonly<Record<Texture, Quantity>>>;
}

/** Reads one entry that the schema has let through. */
export function readFinish(reading: OfferReading, entry: z.infer<typeof finishSchema>, at: string): FinishOffer {
  const named = reading.named("finishes", at, entry, entry.kind);
  const cans = entry.cans.map(({ size, from, price }, index) => ({
    size: toQuantity(size, "gal"),
    ...(from === undefined ? {} : { from }),
    price: reading.price(price, "", pointer(at, "cans", index, "price"), `${named.label}, ${wordsOf(size)}`),
  }));
  const given = (text: QuantityText | undefined) => text !== undefined && toQuantity(text, "ft2/gal");
  const [smooth, rough] = [given(entry.coverage?.smooth), given(entry.coverage?.rough)];
  return {
    ...named,
    kind: entry.kind,
    cans: cans.sort((a, b) => a.size.value.cmp(b.size.value)),
    coverage: { ...(smooth && { smooth }), ...(rough && { rough }) },
  };
}
