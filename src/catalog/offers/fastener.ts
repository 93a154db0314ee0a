/** Fasteners on offer, in packs by count or by weight. */
import { z } from "zod";
import { pointer } from "../../estimate/faults.js";
import { inUnit, type Quantity } from "../../estimate/quantity/quantity.js";
import { wholeNumber } from "../../estimate/quantity/whole.js";
import {
  type CorrosionClassId,
  corrosionClassIds,
  FASTENERS,
  type FastenerKind,
  type FastenerSizing,
  fastenerKinds,
  nailShank,
  nailsPerPound,
  pennies,
  ROOFING_NAILS,
  shanksPerPound,
} from "../fasteners.js";
import { priceField, quantityField, type Section, sectionField, toQuantity, toSection } from "../reading.js";
import {
  commonFields,
  countField,
  fromField,
  MOST_SIZES,
  type Named,
  type OfferReading,
  type Price,
  slug,
  wordsOf,
} from "./price.js";

const packSchema = z
  .strictObject({
    count: countField("Pieces in the pack.", 50).optional(),
    weight: quantityField("lb", { describe: "Weight of the pack.", example: "5 lb" }).optional(),
    from: fromField("pack"),
    price: priceField("", { describe: "Price of the pack.", example: "21.97" }),
  })
  .meta({ id: "FastenerPack", description: "A pack by count or by weight; where both stand, the count rules." });

/** One fastener entry as JSON carries it. */
export const fastenerSchema = z
  .strictObject({
    ...commonFields,
    kind: z.enum(fastenerKinds).meta({ description: "What it is.", examples: ["hex-bolt"] }),
    penny: z
      .enum(pennies)
      .optional()
      .meta({ description: "Penny size of a nail.", examples: ["16d"] }),
    diameter: quantityField("in", { describe: "Shank diameter.", example: "1/2 in", most: "3 in" }).optional(),
    length: quantityField("in", { describe: "Length below the head.", example: "8 in", most: "120 in" }).optional(),
    fits: sectionField({ describe: "Actual section of the post it takes.", example: "5 1/2 x 5 1/2 in" }).optional(),
    finish: z.enum(corrosionClassIds).meta({ description: "Corrosion class.", examples: ["hot-dip-galvanized"] }),
    packs: z.array(packSchema).min(1).max(MOST_SIZES).meta({ description: "Packs on offer." }),
  })
  .meta({ id: "FastenerOffer", description: "One fastener in its packs." });

type FastenerInput = z.infer<typeof fastenerSchema>;

/** A pack: how many it holds, and its price. */
export interface FastenerPack {
  readonly pieces: number;
  /** Where the count comes from: the label, a printed table of nails, or the weight of the bare shank. */
  readonly countedBy: "label" | "table" | "shank";
  readonly weight?: Quantity;
  /** The price holds for so many packs and more; for any number where absent. */
  readonly from?: number;
  readonly price: Price;
}

/** A fastener that is sold in packs. */
export interface FastenerOffer extends Named {
  readonly kind: FastenerKind;
  readonly penny?: string;
  readonly diameter?: Quantity;
  readonly length?: Quantity;
  readonly fits?: Section;
  readonly finish: CorrosionClassId;
  readonly packs: readonly FastenerPack[];
}

/** What each way of telling sizes apart needs. */
const NEEDS: Readonly<Record<FastenerSizing, readonly ("penny" | "diameter" | "length" | "fits")[]>> = {
  penny: ["penny"],
  length: ["length"],
  diameter: ["diameter"],
  "diameter-length": ["diameter", "length"],
  section: ["fits"],
  none: [],
};

/** Reads one entry that the schema has let through. */
export function readFastener(reading: OfferReading, entry: FastenerInput, at: string): FastenerOffer | undefined {
  const needs = NEEDS[FASTENERS[entry.kind].size];
  for (const need of needs.filter((field) => entry[field] === undefined)) {
    const cure = `Give ${needs.join(" and ")}.`;
    reading.fault(
      "missing-field",
      pointer(at, need),
      `A ${FASTENERS[entry.kind].name} is told apart by its ${need}.`,
      cure,
    );
  }
  const shank = entry.penny === undefined ? undefined : nailShank(entry.kind, entry.penny);
  if (needs.includes("penny") && entry.penny !== undefined && !shank) {
    const wrong = `No ${FASTENERS[entry.kind].name} of ${entry.penny} is in the nail table.`;
    reading.fault("unknown-name", pointer(at, "penny"), wrong, "Give a size that is made.");
  }
  const diameter = entry.diameter === undefined ? shank?.diameter : toQuantity(entry.diameter, "in");
  const length = entry.length === undefined ? shank?.length : toQuantity(entry.length, "in");
  const named = reading.named("fasteners", at, entry, madeName(entry));
  const sized = { ...(diameter && { diameter }), ...(length && { length }) };
  const packs = entry.packs.map((pack, index) =>
    readPack(
      reading,
      { ...pack, kind: entry.kind, penny: entry.penny },
      sized,
      pointer(at, "packs", index),
      named.label,
    ),
  );
  return {
    ...named,
    ...sized,
    kind: entry.kind,
    ...(entry.penny === undefined ? {} : { penny: entry.penny }),
    ...(entry.fits === undefined ? {} : { fits: toSection(entry.fits) }),
    finish: entry.finish,
    packs: packs.filter((pack) => pack !== undefined).sort((a, b) => a.pieces - b.pieces),
  };
}

function madeName(entry: FastenerInput): string {
  const sizes = [entry.diameter, entry.length].filter((side) => side !== undefined).map((side) => slug(wordsOf(side)));
  return [entry.kind, entry.penny, sizes.join("x"), entry.finish].filter(Boolean).join("-");
}

type PackInput = FastenerInput["packs"][number] & Pick<FastenerInput, "kind" | "penny">;

function readPack(
  reading: OfferReading,
  pack: PackInput,
  sized: { readonly diameter?: Quantity; readonly length?: Quantity },
  at: string,
  what: string,
): FastenerPack | undefined {
  const price = reading.price(pack.price, "", pointer(at, "price"), what);
  const weight = pack.weight === undefined ? undefined : toQuantity(pack.weight, "lb");
  const extra = { ...(weight ? { weight } : {}), ...(pack.from === undefined ? {} : { from: pack.from }), price };
  if (pack.count !== undefined) return { pieces: pack.count, countedBy: "label", ...extra };
  const found = weight && perPound(pack, sized);
  if (!weight || !found) {
    const wrong = weight ? "Nothing says how many pieces this weight holds." : "The pack has neither count nor weight.";
    reading.fault("missing-field", pointer(at, "count"), wrong, 'Give "count", as the label says it.');
    return undefined;
  }
  const pieces = wholeNumber(inUnit(weight, "lb").times(inUnit(found.rate, "1/lb")).floor());
  return { pieces, countedBy: found.by, ...extra };
}

function perPound(
  { kind, penny }: PackInput,
  { diameter, length }: { readonly diameter?: Quantity; readonly length?: Quantity },
): { readonly rate: Quantity; readonly by: "table" | "shank" } | undefined {
  const table = penny === undefined ? roofingNails(kind, length) : nailsPerPound(kind, penny);
  if (table) return { rate: table, by: "table" };
  // A screw's thread and head weigh too much of it for the bare shank to tell the count.
  return kind === "ring-shank-nail" && diameter && length
    ? { rate: shanksPerPound(diameter, length), by: "shank" }
    : undefined;
}

function roofingNails(kind: FastenerKind, length: Quantity | undefined): Quantity | undefined {
  if (kind !== "roofing-nail" || !length) return undefined;
  const row = Object.entries(ROOFING_NAILS).find(([inches]) => toQuantity(`${inches} in`, "in").value.eq(length.value));
  return row && toQuantity({ value: row[1], unit: "1/lb" }, "1/lb");
}
