/** What a stock plan is asked for: pieces, the lengths on offer with their prices, leftovers, saw and waste. */
import { z } from "zod";
import { availableField } from "../../catalog/offers/lumber.js";
import { bulkField, countField, longField, MOST_SIZES } from "../../catalog/offers/price.js";
import { CURRENCIES, nameField, priceField, quantityField, sectionField } from "../../catalog/reading.js";
import { stockPlanShape } from "./held-plans.js";

/** Rows of pieces; and pieces in all, joints counted. As many as the optimiser was measured with, and some more. */
const MOST_ROWS = 200;

/** Pieces that one order may ask for. */
export const MOST_PIECES = 2000;

const piece = z
  .strictObject({
    name: nameField("Name of the equal pieces.", "rafters"),
    length: longField("Finished length of one.", "9 ft 10 in"),
    count: z
      .int()
      .min(1)
      .max(MOST_PIECES)
      .meta({ description: "How many.", examples: [26] }),
    supports: quantityField("ft", {
      describe:
        "Distance of the supports below it, the first at its end: a piece longer than every stick is joined over them, and so are as few as can be found of those for which there are too few sticks that take them whole. Without it no piece is joined; where sticks take all pieces whole none is, even if joined ones cost less: leave a stick out that is not to be bought.",
      example: "8 ft",
      most: "100 ft",
    }).optional(),
    leastPart: quantityField("ft", {
      describe:
        "Where it is joined, no part is shorter. Common practice, no source: twice the distance of the supports, so that each part lies on three. Any part where absent.",
      example: "16 ft",
      most: "100 ft",
    }).optional(),
    mostJoints: z
      .int()
      .min(1)
      .max(100)
      .optional()
      .meta({ description: "Where it is joined, it has no more joints. Any number where absent.", examples: [2] }),
  })
  .meta({ id: "WantedPiece", description: "Equal pieces that are wanted." });

const stock = z
  .strictObject({
    length: longField("A length on offer.", "12 ft"),
    price: priceField("", {
      describe: "Price of one of this length; without it the rate holds, where there is one.",
      example: "9.92",
    }),
    bulk: bulkField("", { what: "length", example: "9.20" }),
    available: availableField,
  })
  .meta({ id: "StockOnOffer", description: "A length that is sold." });

const rate = z
  .discriminatedUnion("by", [
    z.strictObject({
      by: z.literal("length").meta({ description: "By its length." }),
      price: priceField("ft", { describe: "Price of a foot or metre of length.", example: "1.85" }),
      bulk: bulkField("ft", { what: "length", example: "1.70" }),
    }),
    z.strictObject({
      by: z.literal("volume").meta({ description: "By its volume." }),
      price: priceField("bf", { describe: "Price of a board foot, or of a cubic metre.", example: "2.40" }),
      bulk: bulkField("bf", { what: "length", example: "2.20" }),
      section: sectionField({ describe: "Section that the volume is counted from.", example: "2 x 6 in" }),
      measure: z.enum(["nominal", "actual"]).meta({
        description: "nominal: board measure, less than 1 in counted as 1 in; actual: thickness × width × length.",
        examples: ["nominal"],
      }),
    }),
  ])
  .meta({ id: "StockRate", description: "A price by length or by volume, for lengths without a price of their own." });

/** Pieces to cut and lengths to cut them from, as a request gives them. */
export const stockOrderShape = z
  .strictObject({
    pieces: z.array(piece).min(1).max(MOST_ROWS).meta({ description: "What is wanted, of one section." }),
    stocks: z.array(stock).min(1).max(MOST_SIZES).meta({ description: "Lengths on offer." }),
    rate: rate.optional(),
    leftovers: z
      .array(
        z
          .strictObject({ length: longField("Its length.", "5 ft"), count: countField("How many.", 2) })
          .meta({ id: "Leftover", description: "Sticks that lie at hand; they cost nothing." }),
      )
      .max(MOST_SIZES)
      .optional()
      .meta({ description: "What lies at hand already." }),
    kerf: quantityField("in", {
      describe: "Lost at each crosscut.",
      example: "1/8 in",
      most: "2 in",
      sign: "not-negative",
    }).optional(),
    endTrim: quantityField("in", {
      describe: "Cut off each stick to square it, both ends together, that kerf included.",
      example: "1 in",
      most: "24 in",
      sign: "not-negative",
    }).optional(),
    defects: quantityField("%", {
      describe:
        "Bought sticks set aside for crook, splits and knots: that share of all, rounded up once, is bought beside them, of the longest lengths.",
      example: "7 %",
      most: "90 %",
      sign: "not-negative",
    }).optional(),
    bundle: countField("Sold only in bundles of this many of a length; prices stay those of one.", 4).optional(),
    currency: z
      .enum(CURRENCIES)
      .optional()
      .meta({
        description: "Currency of the prices (ISO 4217); when absent that in which they all are written, else USD.",
        examples: ["USD"],
      }),
    measure: z
      .enum(["inch-pound", "metric"])
      .optional()
      .meta({
        description: "Measure system of the answer; that of the first piece's length where nothing is said.",
        examples: ["inch-pound"],
      }),
    heldPlan: stockPlanShape.optional().meta({ description: "The plan of an earlier answer, kept." }),
  })
  .meta({ id: "StockOrder", description: "Pieces to cut from bought lengths, all of one section." });

/** What `stockOrderShape` reads. */
export type StockOrder = z.infer<typeof stockOrderShape>;
