/**
 * What every offer shares: a price or the absence of one, a name, a label, and the context of reading them.
 */
import { z } from "zod";
import { type Fault, type FaultCode, pointer } from "../../estimate/faults.js";
import { inUnit, type Quantity, quantity } from "../../estimate/quantity/quantity.js";
import { minorDigits, unit, unitOver } from "../../estimate/quantity/unit.js";
import {
  type Currency,
  lineField,
  moneyField,
  nameField,
  type QuantityText,
  quantityField,
  type Section,
  toQuantity,
} from "../reading.js";
import { boardFeet, boardMeasure } from "../sections.js";
import { fault, MOST_FAULTS } from "../shape-faults.js";

/** Departments of a supplier, in the order of a shopping list. */
export const DEPARTMENTS = [
  "lumber",
  "fasteners",
  "finishes",
  "coverings",
  "consumables",
  "equipment",
  "services",
] as const;

/** Key of a department. */
export type Department = (typeof DEPARTMENTS)[number];

/** A price, with the place in the catalog that it was read from. */
export interface Priced {
  readonly kind: "priced";
  /** Money, or money per unit in the unit that it was given in. */
  readonly amount: Quantity | Charged;
  readonly at: string;
}

/** No price is known; never to be taken as zero. */
export interface Unpriced {
  readonly kind: "unpriced";
  readonly at: string;
  /** What to add to the catalog, in a sentence. */
  readonly add: string;
}

/** A price, or the plain statement that there is none and what to add. */
export type Price = Priced | Unpriced;

/** Caps on lists, so that no catalog can ask for endless work. Assumptions. */
export const MOST_OFFERS = 400;

/** Sizes, lengths or packs that one offer may list. */
export const MOST_SIZES = 40;

/** Fields that every offer has. */
export const commonFields = {
  name: nameField("A short name for cells and references; made from the entry when absent.", "spf-2x6").optional(),
  label: lineField("How the supplier's shelf or list calls it.", "2 x 6 SPF No. 2, S-DRY").optional(),
};

/** A whole number of things. */
export const countField = (describe: string, example: number) =>
  z
    .int()
    .min(1)
    .max(100_000)
    .meta({ description: describe, examples: [example] });

/** Bulk breaks up to here are planned exactly. Assumption: more would be a pack of its own. */
const MOST_BREAK = 500;

/** From how many of it on a price holds. @param what - `pack`, `can`, `piece`. */
export const fromField = (what: string) =>
  z
    .int()
    .min(2)
    .max(MOST_BREAK)
    .optional()
    .meta({
      description: `The price holds only for so many of this ${what} and more, as for 10 and up.`,
      examples: [10],
    });

/** Bulk prices of what has one price: each holds for all of it where so many and more are bought. */
export const bulkField = (per: string, { what, example }: { readonly what: string; readonly example: string }) =>
  z
    .array(
      z.strictObject({
        from: fromField(what)
          .unwrap()
          .meta({ description: "So many and more.", examples: [20] }),
        price: moneyField(per, { describe: "Price that then holds for all of them.", example }),
      }),
    )
    .min(1)
    .max(MOST_SIZES)
    .optional()
    .meta({
      description: `Bulk prices: what the price is where so many of one ${what} and more are bought. More are bought than needed where that costs less.`,
      examples: [[{ from: 20, price: example }]],
    });

/** A bulk price: it holds for all where so many and more are bought. */
export interface BulkPrice {
  readonly from: number;
  readonly price: Priced;
}

/** A length along the grain, a panel, or a trim: at most 100 ft. */
export const longField = (describe: string, example = "10 ft") =>
  quantityField("ft", { describe, example, most: "100 ft" });

/** Name, shelf label and place of an offer in its typed form. */
export interface Named {
  readonly name: string;
  readonly label: string;
  /** JSON Pointer to the entry. */
  readonly at: string;
}

/** By what yards that price in other money than dollars sell what is priced by the foot, gallon or pound. */
const METRIC_PER: Readonly<Record<string, string>> = { ft: "m", ft2: "m2", bf: "m3", gal: "L", lb: "kg" };

/** How a price is asked for: `USD/gal`, `EUR/L`; either is taken. */
export function priceUnit(currency: Currency, per: string): string {
  if (per === "") return currency;
  return `${currency}/${currency === "USD" ? per : (METRIC_PER[per] ?? per)}`;
}

/** Collects faults while offers are read; one for each catalog. */
export class OfferReading {
  readonly faults: Fault[] = [];
  private readonly taken = new Map<string, Set<string>>();

  constructor(
    readonly currency: Currency,
    readonly base: string,
  ) {}

  fault(code: FaultCode, at: string, wrong: string, cure: string): void {
    if (this.faults.length < MOST_FAULTS) this.faults.push(fault(code, at, wrong, cure));
  }

  /** The place of one entry of a department. */
  place(department: Department, index: number): string {
    return pointer(this.base, department, index);
  }

  /**
   * A price per unit, or the absence of one.
   * @param per - Unit below the line; empty for the price of one.
   * @param what - What is priced, for the sentence that asks for it.
   */
  price(text: QuantityText | null | undefined, per: string, at: string, what: string): Price {
    if (text === null || text === undefined) {
      return { kind: "unpriced", at, add: `Add a price in ${priceUnit(this.currency, per)} for ${what}.` };
    }
    return { kind: "priced", amount: toQuantity(text, per ? `${this.currency}/${per}` : this.currency), at };
  }

  /** Bulk prices as they were written. A number that stands twice is a fault. */
  bulk(
    rows: readonly { readonly from: number; readonly price: QuantityText }[] | undefined,
    per: string,
    at: string,
  ): BulkPrice[] {
    const read = (rows ?? []).map(({ from, price }, index) => {
      const place = pointer(at, index, "price");
      const amount = toQuantity(price, per ? `${this.currency}/${per}` : this.currency);
      return { from, price: { kind: "priced", amount, at: place } as const };
    });
    read.forEach(({ from }, index) => {
      if (read.findIndex((other) => other.from === from) === index) return;
      const wrong = `Two prices hold from ${from} on.`;
      this.fault("duplicate-name", pointer(at, index, "from"), wrong, "Keep one of them.");
    });
    return read.sort((a, b) => a.from - b.from);
  }

  /** The given name, or one made from the entry and told apart by a number. A given name may stand once only. */
  named(
    department: Department,
    at: string,
    entry: { name?: string | undefined; label?: string | undefined },
    made: string,
  ): Named {
    const taken = this.taken.get(department) ?? new Set<string>();
    this.taken.set(department, taken);
    if (entry.name !== undefined && taken.has(entry.name)) {
      const cure = `Give each entry of ${department} a name of its own.`;
      this.fault("duplicate-name", pointer(at, "name"), `The name “${entry.name}” is used twice.`, cure);
    }
    let name = entry.name ?? made;
    for (let i = 2; entry.name === undefined && taken.has(name); i++) name = `${made}-${i}`;
    taken.add(name);
    return { name, label: entry.label ?? name.replaceAll("-", " "), at };
  }
}

/** A text as part of a made name: lower case, digits, hyphens. */
export function slug(text: string): string {
  const plain = text
    .toLowerCase()
    .replace(/ (?:in|mm)$/, "")
    .replaceAll(/\s*[x×]\s*/g, "x");
  return (
    plain
      .replaceAll(/[^a-z0-9]+/g, "-")
      .replaceAll(/^-+|-+$/g, "")
      .slice(0, 56) || "entry"
  );
}

/** A quantity's text in one line, as it was given. */
export const wordsOf = (text: QuantityText): string => (typeof text === "string" ? text : `${text.value} ${text.unit}`);

/** Money that comes of a rate: it may have more digits than money is written with. */
export interface Charged extends Quantity {
  readonly rate: Quantity;
  /** What the rate is charged on, as a product. */
  readonly on: readonly Quantity[];
  /** The same in the unit below the rate's. */
  readonly much: Quantity;
}

/** Those of some amounts that come of a rate. */
export const chargedAmong = (amounts: readonly (Quantity | Charged)[]): Charged[] =>
  amounts.flatMap((amount) => ("rate" in amount ? [amount] : []));

/**
 * Money from a rate and what it is charged on, in whatever unit of the right dimension; exact, not rounded.
 * @param on - The lengths that it is the product of, where it is a volume.
 */
export function rateTimes(rate: Quantity, much: Quantity, on: readonly Quantity[] = [much]): Charged {
  const currency = [...rate.unit.parts.keys()].find((part) => minorDigits(part) !== undefined);
  if (currency === undefined) throw new Error(`${rate.unit.symbol} is no price`);
  const below = unitOver(unit(currency), rate.unit);
  const charged = { value: inUnit(much, below), unit: below };
  return { ...quantity(rate.value.times(charged.value), currency), rate, on, much: charged };
}

/**
 * The same by volume: of a section by its name in board measure, thickness counted as 1 in at least; or of one as it measures.
 */
export function volumeTimes(
  rate: Quantity,
  measure: "nominal" | "actual",
  section: Section,
  length: Quantity,
): Charged {
  if (measure === "nominal") return rateTimes(rate, boardFeet(section, length), boardMeasure(section, length));
  const { thickness, width } = section;
  const volume = quantity(thickness.value.times(width.value).times(length.value), "mm3");
  return rateTimes(rate, volume, [thickness, width, length]);
}
