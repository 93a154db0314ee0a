/** Lumber on offer: one wood and section, in its lengths, priced by the piece, by length or by volume. */
import { z } from "zod";
import { pointer } from "../../estimate/faults.js";
import type { Quantity } from "../../estimate/quantity/quantity.js";
import { wholeNumber } from "../../estimate/quantity/whole.js";
import {
  priceField,
  quantityField,
  type Section,
  type SectionText,
  sectionField,
  toQuantity,
  toSection,
} from "../reading.js";
import { dressedSize, type Seasoning, usualSeasoning } from "../sections.js";
import { woodNames } from "../species.js";
import {
  type BulkPrice,
  bulkField,
  commonFields,
  countField,
  longField,
  MOST_SIZES,
  type Named,
  type OfferReading,
  type Price,
  type Priced,
  rateTimes,
  slug,
  volumeTimes,
  wordsOf,
} from "./price.js";

const stockLength = longField("A length on offer.", "12 ft");

/** How many of one length a yard has. */
export const availableField = z
  .int()
  .min(0)
  .max(100_000)
  .optional()
  .meta({ description: "How many can be had; any number when absent.", examples: [6] });

/** Preservative treatment of lumber. */
export const treatmentField = z
  .enum(["none", "above-ground", "ground-contact"])
  .optional()
  .meta({ description: "Preservative treatment; none when absent.", examples: ["ground-contact"] });

/** Stock pieces, each length with its own price. */
export const pricedLengths = z
  .array(
    z
      .strictObject({
        length: stockLength,
        price: priceField("", { describe: "Price of one piece of this length.", example: "9.48" }),
        bulk: bulkField("", { what: "length", example: "8.90" }),
        available: availableField,
      })
      .meta({ id: "PricedLength", description: "A stock length and the price of one piece." }),
  )
  .min(1)
  .max(MOST_SIZES)
  .meta({ description: "Lengths, each with the price of one piece." });

const lengthsOnOffer = z
  .union([
    z.array(stockLength).min(1).max(MOST_SIZES),
    z.strictObject({
      shortest: longField("Shortest length on offer.", "8 ft"),
      longest: longField("Longest length on offer.", "20 ft"),
      step: quantityField("ft", { describe: "Step from one length to the next.", example: "2 ft" }),
    }),
  ])
  .meta({ description: "Lengths on offer: a list, or shortest, longest and step.", examples: [["8 ft", "10 ft"]] });

const lumberSale = z
  .discriminatedUnion("by", [
    z.strictObject({
      by: z.literal("piece").meta({ description: "By the piece, in set lengths." }),
      lengths: pricedLengths,
    }),
    z.strictObject({
      by: z.literal("length").meta({ description: "By its length." }),
      price: priceField("ft", { describe: "Price of a foot or metre of length.", example: "1.85" }),
      bulk: bulkField("ft", { what: "length", example: "1.70" }),
      lengths: lengthsOnOffer,
    }),
    z.strictObject({
      by: z.literal("volume").meta({ description: "By its volume." }),
      price: priceField("bf", { describe: "Price of a board foot, or of a cubic metre.", example: "2.40" }),
      bulk: bulkField("bf", { what: "length", example: "2.20" }),
      measure: z.enum(["nominal", "actual"]).meta({
        description: "Whether volume is counted from the nominal or the actual section.",
        examples: ["nominal"],
      }),
      lengths: lengthsOnOffer,
    }),
  ])
  .meta({ id: "LumberSale", description: "How lumber is priced: by the piece, by length, or by volume." });

/** One lumber entry as JSON carries it. */
export const lumberSchema = z
  .strictObject({
    ...commonFields,
    species: z.enum(woodNames).meta({ description: "Species or trade group.", examples: ["spruce-pine-fir"] }),
    section: sectionField({ describe: "Section by which it is sold, thickness × width.", example: "2 x 6 in" }),
    sizing: z
      .enum(["nominal", "actual"])
      .optional()
      .meta({
        description:
          "Whether the section is a nominal name or the real (full-sawn) size. Absent: inches nominal, mm actual.",
        examples: ["nominal"],
      }),
    actual: sectionField({
      describe: "Section as it measures. Absent: a nominal one is dressed as PS 20 says.",
      example: "1 1/2 x 5 1/2 in",
    }).optional(),
    surface: z
      .enum(["dressed", "rough"])
      .optional()
      .meta({ description: "Dressed when absent.", examples: ["dressed"] }),
    seasoning: z
      .enum(["dry", "green"])
      .optional()
      .meta({
        description: "Dry is at most 19 % moisture. Absent: dry, but green for inch timbers of 5 in and over.",
        examples: ["dry"],
      }),
    treatment: treatmentField,
    grade: commonFields.label.meta({ description: "Grade as marked.", examples: ["No. 2"] }),
    gradeMarked: z
      .boolean()
      .optional()
      .meta({ description: "Bears a grading agency's mark. Absent: yes when a grade is named.", examples: [true] }),
    bundle: countField("Sold only in bundles of this many pieces; prices stay per piece.", 10).optional(),
    sold: lumberSale,
  })
  .meta({ id: "LumberOffer", description: "One wood and section on offer, in its lengths." });

type LumberInput = z.infer<typeof lumberSchema>;

/** A stock length and the price of one piece. */
export interface PricedLength {
  readonly length: Quantity;
  readonly price: Price;
  /** Least number first. */
  readonly bulk: readonly BulkPrice[];
  /** How many can be had; any number where absent. */
  readonly available?: number;
}

/** How an offer is priced; lengths are sorted, shortest first. */
export type LumberSale =
  | { readonly by: "piece"; readonly lengths: readonly PricedLength[] }
  | {
      readonly by: "length";
      readonly price: Price;
      /** From so many of one length on. */
      readonly bulk: readonly BulkPrice[];
      readonly lengths: readonly Quantity[];
    }
  | {
      readonly by: "volume";
      readonly price: Price;
      /** From so many of one length on. */
      readonly bulk: readonly BulkPrice[];
      readonly measure: "nominal" | "actual";
      readonly lengths: readonly Quantity[];
    };

/** Lumber that is sold: section, wood, surface, state, and how it is priced. */
export interface LumberOffer extends Named {
  readonly species: string;
  /** As sold: nominal or actual, see `sizing`. */
  readonly section: Section;
  readonly sizing: "nominal" | "actual";
  /** As it measures. */
  readonly actual: Section;
  readonly surface: "dressed" | "rough";
  readonly seasoning: Seasoning;
  readonly treatment: "none" | "above-ground" | "ground-contact";
  readonly grade?: string;
  readonly gradeMarked: boolean;
  /** Pieces are bought in multiples of this. */
  readonly bundle: number;
  readonly sold: LumberSale;
}

/** Reads one entry that the schema has let through. */
export function readLumber(reading: OfferReading, entry: LumberInput, at: string): LumberOffer | undefined {
  const section = toSection(entry.section);
  const inInches = section.width.written?.symbol === "in" || section.width.written?.symbol === "ft";
  const sizing = entry.sizing ?? (inInches ? "nominal" : "actual");
  const surface = entry.surface ?? "dressed";
  const seasoning = entry.seasoning ?? (sizing === "nominal" ? usualSeasoning(section) : "dry");
  const actual = actualSection(reading, entry, { section, sizing, surface, seasoning }, at);
  const treatment = entry.treatment ?? "none";
  const made = [entry.species, slug(sectionWords(entry.section)), treatment === "none" ? "" : "treated"];
  const named = reading.named("lumber", at, entry, made.filter(Boolean).join("-"));
  const sold = readSale(reading, entry, sizing, pointer(at, "sold"), named.label);
  if (!actual || !sold) return undefined;
  return {
    ...named,
    species: entry.species,
    section,
    sizing,
    actual,
    surface,
    seasoning,
    treatment,
    ...(entry.grade === undefined ? {} : { grade: entry.grade }),
    gradeMarked: entry.gradeMarked ?? entry.grade !== undefined,
    bundle: entry.bundle ?? 1,
    sold,
  };
}

/** A section's text, for a made name. */
function sectionWords(text: SectionText): string {
  if (typeof text === "string") return text;
  return `${wordsOf(text.thickness).replace(/ (?:in|mm)$/, "")} x ${wordsOf(text.width)}`;
}

type Sized = Pick<LumberOffer, "section" | "sizing" | "surface" | "seasoning">;

function actualSection(reading: OfferReading, entry: LumberInput, sized: Sized, at: string): Section | undefined {
  const { section, sizing, surface, seasoning } = sized;
  const name = `“${sectionWords(entry.section)}”`;
  if (entry.actual !== undefined) {
    const actual = toSection(entry.actual);
    const over = actual.thickness.value.gt(section.thickness.value) || actual.width.value.gt(section.width.value);
    if (sizing === "nominal" && over) {
      const cure = "Give the actual section no larger than the nominal one, thickness first.";
      reading.fault("out-of-range", pointer(at, "actual"), `The actual section is larger than ${name}.`, cure);
    }
    return actual;
  }
  if (sizing === "actual") return section;
  if (surface === "rough") {
    const cure = 'Give "actual" as it measures, or "sizing": "actual" when it is sawn to full size.';
    reading.fault("missing-field", pointer(at, "actual"), `Rough ${name} has no standard size.`, cure);
    return undefined;
  }
  const dressed = dressedSize(section, seasoning);
  if (!dressed) {
    const cure = 'Give "actual" as it measures, or "sizing": "actual" when the section is no nominal name.';
    reading.fault("unknown-name", pointer(at, "section"), `${name} is no nominal section of PS 20.`, cure);
  }
  return dressed;
}

function readSale(
  reading: OfferReading,
  { sold }: LumberInput,
  sizing: LumberOffer["sizing"],
  at: string,
  what: string,
): LumberSale | undefined {
  const place = pointer(at, "price");
  switch (sold.by) {
    case "piece":
      return { by: "piece", lengths: readPricedLengths(reading, sold.lengths, pointer(at, "lengths"), what) };
    case "length": {
      const lengths = readLengths(reading, sold.lengths, pointer(at, "lengths"));
      const bulk = reading.bulk(sold.bulk, "ft", pointer(at, "bulk"));
      return lengths && { by: "length", price: reading.price(sold.price, "ft", place, what), bulk, lengths };
    }
    case "volume": {
      if (sold.measure === "nominal" && sizing === "actual") {
        const cure = 'Give "measure": "actual", or sell the section by its nominal name.';
        reading.fault("cannot-build", pointer(at, "measure"), "A full-sawn section has no nominal volume.", cure);
      }
      const lengths = readLengths(reading, sold.lengths, pointer(at, "lengths"));
      const price = reading.price(sold.price, "bf", place, what);
      const bulk = reading.bulk(sold.bulk, "bf", pointer(at, "bulk"));
      return lengths && { by: "volume", price, bulk, measure: sold.measure, lengths };
    }
  }
}

/** Stock lengths with prices, shortest first; a length that stands twice is a fault. */
export function readPricedLengths(
  reading: OfferReading,
  lengths: z.infer<typeof pricedLengths>,
  at: string,
  what: string,
): PricedLength[] {
  const read = lengths.map((row, index) => {
    const price = reading.price(row.price, "", pointer(at, index, "price"), `${what}, ${wordsOf(row.length)}`);
    const bulk = reading.bulk(row.bulk, "", pointer(at, index, "bulk"));
    const limit = row.available === undefined ? {} : { available: row.available };
    return { length: toQuantity(row.length, "ft"), price, bulk, ...limit };
  });
  read.forEach(({ length }, index) => {
    if (read.findIndex((other) => other.length.value.eq(length.value)) < index) {
      reading.fault(
        "duplicate-name",
        pointer(at, index, "length"),
        "The same length is on offer twice.",
        "Keep one of them.",
      );
    }
  });
  return read.sort((a, b) => a.length.value.cmp(b.length.value));
}

type LengthsInput = Extract<LumberInput["sold"], { by: "length" }>["lengths"];

function readLengths(reading: OfferReading, input: LengthsInput, at: string): Quantity[] | undefined {
  if (Array.isArray(input)) {
    const read = input.map((text) => toQuantity(text, "ft")).sort((a, b) => a.value.cmp(b.value));
    return read.filter((length, index) => !read[index - 1]?.value.eq(length.value));
  }
  const [shortest, longest, step] = [input.shortest, input.longest, input.step].map((text) =>
    toQuantity(text, "ft"),
  ) as [Quantity, Quantity, Quantity];
  if (shortest.value.gt(longest.value)) {
    const cure = "Give shortest and longest the right way round.";
    reading.fault("out-of-range", pointer(at, "longest"), "The longest length is shorter than the shortest.", cure);
    return undefined;
  }
  const steps = wholeNumber(longest.value.minus(shortest.value).dividedToIntegerBy(step.value));
  if (steps >= MOST_SIZES) {
    const cure = `Give a larger step; at most ${MOST_SIZES} lengths are taken.`;
    reading.fault("too-large", pointer(at, "step"), `This step makes ${steps + 1} lengths.`, cure);
    return undefined;
  }
  return Array.from({ length: steps + 1 }, (_, i) => ({
    ...shortest,
    value: shortest.value.plus(step.value.times(i)),
  }));
}

/** Lengths that an offer comes in, shortest first. */
export function lengthsOf(offer: LumberOffer): readonly Quantity[] {
  return offer.sold.by === "piece" ? offer.sold.lengths.map(({ length }) => length) : offer.sold.lengths;
}

/** How many of a length can be had; null = any number. */
export function availableOf({ sold }: LumberOffer, length: Quantity): number | null {
  if (sold.by !== "piece") return null;
  return sold.lengths.find((each) => each.length.value.eq(length.value))?.available ?? null;
}

/** The price of one piece of a length; exact, not rounded to the cent. A length that is not on offer has no price. */
export function pieceCost(offer: LumberOffer, length: Quantity): Price {
  const { sold } = offer;
  if (sold.by === "piece") {
    const row = sold.lengths.find((each) => each.length.value.eq(length.value));
    const place = pointer(offer.at, "sold", "lengths");
    return row?.price ?? { kind: "unpriced", at: place, add: `Add this length of ${offer.label}.` };
  }
  return sold.price.kind === "unpriced" ? sold.price : costAt(offer, sold.price, length);
}

/** The same from a number of pieces of that length on. */
export function pieceBulk(offer: LumberOffer, length: Quantity): readonly BulkPrice[] {
  const { sold } = offer;
  if (sold.by === "piece") return sold.lengths.find((each) => each.length.value.eq(length.value))?.bulk ?? [];
  return sold.bulk.map(({ from, price }) => ({ from, price: costAt(offer, price, length) }));
}

function costAt({ sold, section, actual }: LumberOffer, { amount, at }: Priced, length: Quantity): Priced {
  if (sold.by !== "volume") return { kind: "priced", amount: rateTimes(amount, length), at };
  const sides = sold.measure === "nominal" ? section : actual;
  return { kind: "priced", amount: volumeTimes(amount, sold.measure, sides, length), at };
}

/** The lengths of an offer with their prices. */
export function pricedLengthsOf(offer: LumberOffer): readonly PricedLength[] {
  if (offer.sold.by === "piece") return offer.sold.lengths;
  return offer.sold.lengths.map((length) => ({
    length,
    price: pieceCost(offer, length),
    bulk: pieceBulk(offer, length),
  }));
}
