/** Roof coverings on offer: sheets, courses or rolls with their trims, closures, sealant and underlay. */
import { z } from "zod";
import { pointer } from "../../estimate/faults.js";
import type { Quantity } from "../../estimate/quantity/quantity.js";
import { type CoveringKind, coveringKinds } from "../coverings.js";
import { nameField, priceField, type QuantityText, quantityField, toQuantity } from "../reading.js";
import { type PricedLength, pricedLengths, readPricedLengths } from "./lumber.js";
import {
  type BulkPrice,
  bulkField,
  commonFields,
  countField,
  fromField,
  longField,
  MOST_SIZES,
  type Named,
  type OfferReading,
  type Price,
} from "./price.js";

/** Trims that a covering may be sold with. */
export const TRIMS = [
  "ridge-cap",
  "hip-cap",
  "eave-trim",
  "rake-trim",
  "drip-edge",
  "starter-strip",
  "batten",
] as const;

/** Key of a trim. */
export type TrimKind = (typeof TRIMS)[number];
/** Inside closures lie under the sheet at the eave, outside ones over it below the ridge cap. */
export const CLOSURES = ["inside", "outside"] as const;

/** Key of a closure strip. */
export type ClosureKind = (typeof CLOSURES)[number];

const panelSale = z
  .discriminatedUnion("by", [
    z.strictObject({
      by: z.literal("piece").meta({ description: "By the panel, in set lengths." }),
      lengths: pricedLengths,
    }),
    z.strictObject({
      by: z.literal("cut-length").meta({ description: "By length, cut to order." }),
      price: priceField("ft", { describe: "Price of a foot or metre of panel, cut to order.", example: "4.85" }),
      shortest: longField("Shortest panel that is cut.", "3 ft"),
      longest: longField("Longest panel that is cut.", "40 ft"),
      step: quantityField("in", { describe: "Lengths are cut to this step.", example: "1 in" }),
    }),
  ])
  .meta({ id: "PanelSale", description: "How panels are sold: in stock lengths, or cut to length." });

const roll = {
  width: quantityField("ft", { describe: "Width of the roll.", example: "3 ft", most: "60 ft" }),
  length: quantityField("ft", { describe: "Length of the roll.", example: "144 ft", most: "1000 ft" }),
  price: priceField("", { describe: "Price of a roll.", example: "32.00" }),
  bulk: bulkField("", { what: "roll", example: "29.50" }),
};

const coveringSale = z
  .discriminatedUnion("form", [
    z.strictObject({
      form: z.literal("panels").meta({ description: "Panels from eave to ridge." }),
      coverWidth: quantityField("in", { describe: "Width that one panel covers.", example: "36 in", most: "120 in" }),
      sold: panelSale,
    }),
    z.strictObject({
      form: z.literal("courses").meta({ description: "Courses that lap one another." }),
      covers: quantityField("ft2", { describe: "Roof area that one bundle covers.", example: "33.3 ft2" }),
      exposure: quantityField("in", { describe: "Exposure at which it covers that.", example: "5 in", most: "24 in" }),
      pieces: countField("Strips or shingles in a bundle, where they are counted.", 26).optional(),
      price: priceField("", { describe: "Price of a bundle.", example: "38.50" }),
      bulk: bulkField("", { what: "bundle", example: "35.00" }),
    }),
    z.strictObject({ form: z.literal("rolls").meta({ description: "Rolls." }), ...roll }),
    z.strictObject({
      form: z.literal("boards").meta({ description: "Boards." }),
      lumber: nameField("Name of the lumber entry whose boards are laid.", "pine-1x6"),
    }),
  ])
  .meta({ id: "CoveringSale", description: "The covering itself: panels, courses, rolls or boards." });

const trimSchema = z
  .strictObject({
    kind: z.enum(TRIMS).meta({ description: "Which trim.", examples: ["ridge-cap"] }),
    length: longField("Length of one piece.", "10 ft 6 in"),
    from: fromField("piece"),
    price: priceField("", { describe: "Price of one piece.", example: "36.50" }),
  })
  .meta({
    id: "TrimOffer",
    description:
      "One trim in its piece length; a kind that is sold in several lengths, or cheaper by the dozen, stands once for each.",
  });

const closureSchema = z
  .strictObject({
    kind: z.enum(CLOSURES).meta({
      description: "inside: under the sheet at the eave; outside: below the ridge cap.",
      examples: ["inside"],
    }),
    length: longField("Roof width that one strip fills.", "3 ft"),
    from: fromField("strip"),
    price: priceField("", { describe: "Price of one strip.", example: "2.10" }),
  })
  .meta({ id: "ClosureOffer", description: "A foam strip that follows the profile." });

const sealantSchema = z
  .strictObject({
    length: longField("Length that one roll or tube seals.", "50 ft"),
    price: priceField("", { describe: "Price of one roll or tube.", example: "14.90" }),
    bulk: bulkField("", { what: "roll or tube", example: "12.90" }),
  })
  .meta({ id: "SealantOffer", description: "Butyl tape or sealant for laps and closures." });

const adhesiveSchema = z
  .strictObject({
    covers: quantityField("ft2", { describe: "Roof area that one can glues, both faces.", example: "300 ft2" }),
    price: priceField("", { describe: "Price of one can.", example: "118.00" }),
    bulk: bulkField("", { what: "can", example: "99.00" }),
  })
  .meta({ id: "AdhesiveOffer", description: "Bonding adhesive of a membrane." });

const many = <S extends z.ZodType>(of: S, describe: string) =>
  z.array(of).max(MOST_SIZES).optional().meta({ description: describe });

/** One covering entry as JSON carries it. */
export const coveringSchema = z
  .strictObject({
    ...commonFields,
    covering: z.enum(coveringKinds).meta({ description: "Kind of covering.", examples: ["ribbed-steel"] }),
    sheets: coveringSale,
    weight: quantityField("lb/ft2", {
      describe: "Weight as laid, where the maker says.",
      example: "0.8 lb/ft2",
    }).optional(),
    trims: many(trimSchema, "Trims of this covering."),
    closures: many(closureSchema, "Closure strips of this profile."),
    sealant: sealantSchema.optional(),
    underlay: z
      .strictObject({ label: commonFields.label, ...roll })
      .optional()
      .meta({ description: "Underlay that goes with this covering." }),
    adhesive: adhesiveSchema.optional(),
    deck: nameField(
      "Name of the lumber entry for the deck or the spaced boards: taken where coverings are compared, if it is of the section wanted.",
      "pine-1x6",
    ).optional(),
    sheathing: z
      .strictObject({ label: commonFields.label, ...roll })
      .optional()
      .meta({ description: "Sheets of plywood or the like for a closed deck: width, length and price of one." }),
  })
  .meta({
    id: "CoveringOffer",
    description:
      "One roof covering with what belongs to it. Of several of a kind the cheapest for the job is bought, or what options.buyAs names.",
  });

type CoveringInput = z.infer<typeof coveringSchema>;

/** Sheets cut to order: any length from shortest to longest, rounded up to the step. */
export interface CutLength {
  readonly by: "cut-length";
  readonly price: Price;
  readonly shortest: Quantity;
  readonly longest: Quantity;
  readonly step: Quantity;
}

/** A price of one, and what it falls to from a number on, the least number first. */
export interface BulkPriced {
  readonly price: Price;
  readonly bulk: readonly BulkPrice[];
}

/** A roll of underlay: what it covers, and its price. */
export interface Roll extends BulkPriced {
  readonly width: Quantity;
  readonly length: Quantity;
}

/** How a covering is sold: panels in lengths or cut to length, courses by what a bundle covers, rolls, or boards. */
export type CoveringSale =
  | {
      readonly form: "panels";
      readonly coverWidth: Quantity;
      readonly sold: { readonly by: "piece"; readonly lengths: readonly PricedLength[] } | CutLength;
    }
  | ({
      readonly form: "courses";
      readonly covers: Quantity;
      readonly exposure: Quantity;
      readonly pieces?: number;
    } & BulkPriced)
  | ({ readonly form: "rolls" } & Roll)
  | { readonly form: "boards"; readonly lumber: string };

/** A thing sold in pieces of one length. */
export interface LongPiece<Kind> {
  readonly kind: Kind;
  readonly length: Quantity;
  /** The price holds for so many pieces and more; for any number where absent. */
  readonly from?: number;
  readonly price: Price;
}

/** A covering that is sold, with its trims, closures, underlay and deck. */
export interface CoveringOffer extends Named {
  readonly covering: CoveringKind;
  readonly sheets: CoveringSale;
  readonly weight?: Quantity;
  readonly trims: readonly LongPiece<TrimKind>[];
  readonly closures: readonly LongPiece<ClosureKind>[];
  readonly sealant?: { readonly length: Quantity } & BulkPriced;
  readonly underlay?: Roll & { readonly label: string };
  readonly adhesive?: { readonly covers: Quantity } & BulkPriced;
  /** One sheet for a closed deck. */
  readonly sheathing?: Roll & { readonly label: string };
  /** Name of the lumber offer for the deck. */
  readonly deck?: string;
}

/** Reads one entry that the schema has let through. */
export function readCovering(reading: OfferReading, entry: CoveringInput, at: string): CoveringOffer | undefined {
  const named = reading.named("coverings", at, entry, entry.covering);
  const sheets = readSheets(reading, entry.sheets, pointer(at, "sheets"), named.label);
  const long = <Kind extends string>(rows: readonly LongInput<Kind>[] | undefined, field: string) =>
    (rows ?? []).map((row, index) => ({
      kind: row.kind,
      length: toQuantity(row.length, "ft"),
      ...(row.from === undefined ? {} : { from: row.from }),
      price: reading.price(row.price, "", pointer(at, field, index, "price"), `${named.label}, ${row.kind}`),
    }));
  const { sealant, underlay, adhesive, sheathing } = entry;
  refuseUnlike(reading, entry, at);
  const adhesivePrice = reading.price(adhesive?.price, "", pointer(at, "adhesive", "price"), `glue of ${named.label}`);
  const sealantPrice = reading.price(sealant?.price, "", pointer(at, "sealant", "price"), `sealant of ${named.label}`);
  const underlayPlace = pointer(at, "underlay");
  return (
    sheets && {
      ...named,
      covering: entry.covering,
      sheets,
      ...(entry.weight === undefined ? {} : { weight: toQuantity(entry.weight, "lb/ft2") }),
      trims: long(entry.trims, "trims"),
      closures: long(entry.closures, "closures"),
      ...(sealant
        ? {
            sealant: {
              length: toQuantity(sealant.length, "ft"),
              price: sealantPrice,
              bulk: reading.bulk(sealant.bulk, "", pointer(at, "sealant", "bulk")),
            },
          }
        : {}),
      ...(underlay
        ? {
            underlay: {
              ...readRoll(reading, underlay, underlayPlace, "underlay"),
              label: underlay.label ?? "underlay",
            },
          }
        : {}),
      ...(adhesive
        ? {
            adhesive: {
              covers: toQuantity(adhesive.covers, "ft2"),
              price: adhesivePrice,
              bulk: reading.bulk(adhesive.bulk, "", pointer(at, "adhesive", "bulk")),
            },
          }
        : {}),
      ...(sheathing
        ? {
            sheathing: {
              ...readRoll(reading, sheathing, pointer(at, "sheathing"), "a deck sheet"),
              label: sheathing.label ?? "deck sheets",
            },
          }
        : {}),
      ...(entry.deck === undefined ? {} : { deck: entry.deck }),
    }
  );
}

/** Strips of a closure begin afresh at every edge, so they are taken off in one length. */
function refuseUnlike(reading: OfferReading, { closures = [] }: CoveringInput, at: string): void {
  closures.forEach(({ kind, length }, index) => {
    const first = closures.find((other) => other.kind === kind);
    if (!first || toQuantity(first.length, "ft").value.eq(toQuantity(length, "ft").value)) return;
    const wrong = `The ${kind} closures come in two lengths.`;
    reading.fault("out-of-range", pointer(at, "closures", index, "length"), wrong, "Give the one that you would buy.");
  });
}

interface LongInput<Kind> {
  readonly kind: Kind;
  readonly length: QuantityText;
  readonly from?: number | undefined;
  readonly price?: QuantityText | null | undefined;
}

type RollInput = Pick<Extract<CoveringInput["sheets"], { form: "rolls" }>, "width" | "length" | "price" | "bulk">;

function readRoll(reading: OfferReading, input: RollInput, at: string, what: string): Roll {
  return {
    width: toQuantity(input.width, "ft"),
    length: toQuantity(input.length, "ft"),
    price: reading.price(input.price, "", pointer(at, "price"), what),
    bulk: reading.bulk(input.bulk, "", pointer(at, "bulk")),
  };
}

function readSheets(
  reading: OfferReading,
  input: CoveringInput["sheets"],
  at: string,
  what: string,
): CoveringSale | undefined {
  switch (input.form) {
    case "panels": {
      const sold = readPanels(reading, input.sold, pointer(at, "sold"), what);
      return sold && { form: "panels", coverWidth: toQuantity(input.coverWidth, "in"), sold };
    }
    case "courses":
      return {
        form: "courses",
        covers: toQuantity(input.covers, "ft2"),
        exposure: toQuantity(input.exposure, "in"),
        ...(input.pieces === undefined ? {} : { pieces: input.pieces }),
        price: reading.price(input.price, "", pointer(at, "price"), `a bundle of ${what}`),
        bulk: reading.bulk(input.bulk, "", pointer(at, "bulk")),
      };
    case "rolls":
      return { form: "rolls", ...readRoll(reading, input, at, what) };
    case "boards":
      return { form: "boards", lumber: input.lumber };
  }
}

type PanelInput = Extract<CoveringInput["sheets"], { form: "panels" }>["sold"];

function readPanels(reading: OfferReading, sold: PanelInput, at: string, what: string) {
  if (sold.by === "piece") {
    return { by: "piece", lengths: readPricedLengths(reading, sold.lengths, pointer(at, "lengths"), what) } as const;
  }
  const [shortest, longest] = [toQuantity(sold.shortest, "ft"), toQuantity(sold.longest, "ft")];
  if (shortest.value.gt(longest.value)) {
    const cure = "Give shortest and longest the right way round.";
    reading.fault("out-of-range", pointer(at, "longest"), "The longest panel is shorter than the shortest.", cure);
    return undefined;
  }
  const price = reading.price(sold.price, "ft", pointer(at, "price"), what);
  return { by: "cut-length", price, shortest, longest, step: toQuantity(sold.step, "in") } as const;
}
