/**
 * Reading JSON at the door: fields for quantities and sections, and every fault of an input in one list.
 *
 * The schemas hold no transforms, so that the same schemas describe the API. `readShape` checks shape *and*
 * texts; after it, `toQuantity` and `toSection` cannot fail on what it let through.
 */
import { z } from "zod";
import { type Fault, pointer } from "../estimate/faults.js";
import type { Quantity } from "../estimate/quantity/quantity.js";
import { parseQuantity, parseSection, quote, TextFault } from "../estimate/quantity/text.js";
import { type Unit, unit } from "../estimate/quantity/unit.js";
import { children, fault, HIDDEN, MOST_FAULTS, NAME, partSchemas, shapeFaults } from "./shape-faults.js";

/** Currencies that prices may be given in (ISO 4217 codes with known minor units). */
export const CURRENCIES = [
  ...["AUD", "BRL", "CAD", "CHF", "CZK", "DKK", "EUR", "GBP", "INR"],
  ...["JPY", "MXN", "NOK", "NZD", "PLN", "SEK", "USD", "ZAR"],
] as const;

/** Code of a currency, ISO 4217. */
export type Currency = (typeof CURRENCIES)[number];

/** Stands for the catalog's own currency in the unit of a money field. */
const OWN_CURRENCY = "¤";

/** What a quantity field asks for beyond its unit. */
export interface Asked {
  /** One sentence for people: what is measured, and where. */
  readonly describe: string;
  /** A text that this field takes; for money without the currency sign: `4.85`. */
  readonly example: string;
  /** Which values make sense; more than zero unless said. */
  readonly sign?: "positive" | "not-negative" | "any";
  /** The smallest and the largest sensible value, with their units. */
  readonly least?: string;
  readonly most?: string;
}

interface Measure extends Asked {
  /** A unit of the dimension asked for, `¤` standing for the currency; `section` for two lengths. */
  readonly like: string;
}

/** What each quantity and section field measures, found by the schema object itself. */
const measures = z.registry<Measure>();

/** A value and its unit as two texts: the form in which every answer carries its quantities. */
export const measuredValue = z
  .strictObject({
    value: z
      .string()
      .max(32)
      .regex(/^-?(?:0|[1-9]\d{0,11})(?:\.\d{1,9})?$/)
      .meta({ description: "A plain decimal number as text, without exponent.", examples: ["523.12"] }),
    unit: z
      .string()
      .max(48)
      .meta({ description: "The unit; empty for a plain number.", examples: ["ft2"] }),
  })
  .meta({ id: "MeasuredValue", description: "A decimal with its unit.", examples: [{ value: "523.12", unit: "ft2" }] });

/** A quantity as a request writes it: text, or a value beside its unit. */
export type QuantityText = string | z.infer<typeof measuredValue>;

/** A section as a request writes it: `6 x 6 in`, or thickness and width. */
export type SectionText = string | { readonly thickness: QuantityText; readonly width: QuantityText };

const quantityText = () => z.union([z.string().min(1).max(64), measuredValue]);

/** A field for a quantity of the same dimension as `like`: a length for `ft`, a coverage for `ft2/gal`. */
export function quantityField(like: string, asked: Asked) {
  unit(like); // a typing error here throws when the module loads, not at the first request
  const field = quantityText().meta({ description: asked.describe, examples: [asked.example] });
  measures.add(field, { ...asked, like });
  return field;
}

/** A field for money in the catalog's currency, per a unit or for each. The example has no currency sign. */
export function moneyField(per: string, asked: Asked) {
  const example = `$${asked.example}${per && `/${per}`}`;
  const field = quantityText().meta({ description: asked.describe, examples: [example] });
  measures.add(field, { sign: "not-negative", ...asked, like: OWN_CURRENCY + (per && `/${per}`) });
  return field;
}

/** A field for a price: as `moneyField`, but null or absent means "unpriced", which is never zero. */
export function priceField(per: string, asked: Asked) {
  return moneyField(per, asked).nullable().optional().meta({ description: asked.describe });
}

/** Sides of a section: a saw leaves nothing thinner, no tree and no yard gives more. Assumptions. */
const SIDE = { least: "1/32 in", most: "4 ft" } as const;

/** A field for a section: thickness × width, as one text or as two quantities. */
export function sectionField(asked: Asked) {
  const side = (which: string) =>
    quantityField("in", { describe: `The ${which} of the section.`, example: "6 in", ...SIDE });
  const sides = z.strictObject({ thickness: side("thickness"), width: side("width") });
  const field = z
    .union([z.string().min(1).max(64), sides])
    .meta({ description: asked.describe, examples: [asked.example] });
  measures.add(field, { ...asked, like: "section" });
  return field;
}

/** A name that cells and references can use: lower case, digits and hyphens. */
export const nameField = (describe: string, example: string) =>
  z
    .string()
    .min(1)
    .max(64)
    .regex(NAME)
    .meta({ description: describe, examples: [example] });

/** A line of text for people: no control characters, and nothing that breaks the line or turns the order of what follows. */
export const lineField = (describe: string, example: string, most = 120) =>
  z
    .string()
    .min(1)
    .max(most)
    .regex(new RegExp(`^[^${HIDDEN}]*$`, "u"))
    .meta({ description: describe, examples: [example] });

/** How money is to be read, and where the input stands in the whole request. */
export interface ReadingContext {
  readonly currency?: Currency;
  /** JSON Pointer to the input. */
  readonly base?: string;
}

/**
 * Checks shape and texts together, so that one answer names all faults.
 * @returns the input, typed, or at most `MOST_FAULTS` faults.
 */
export function readShape<S extends z.ZodType>(
  schema: S,
  input: unknown,
  context: ReadingContext = {},
): { readonly value: z.infer<S> } | { readonly faults: readonly Fault[] } {
  const { base = "" } = context;
  const parsed = schema.safeParse(input);
  const faults = parsed.success ? [] : shapeFaults(schema, input, parsed.error.issues, base);
  gatherTextFaults(schema, input, base, context, faults);
  if (faults.length > 0) return { faults };
  if (!parsed.success) throw new Error("zod refused an input without naming an issue");
  return { value: parsed.data };
}

function gatherTextFaults(
  schema: z.core.$ZodType,
  input: unknown,
  at: string,
  context: ReadingContext,
  faults: Fault[],
): void {
  if (faults.length >= MOST_FAULTS || input === null || input === undefined || !holdsText(schema)) return;
  const inner = (schema._zod.def as { innerType?: z.core.$ZodType }).innerType;
  if (inner) {
    gatherTextFaults(inner, input, at, context, faults);
    return;
  }
  const measure = measures.get(schema);
  if (measure && isReadable(input, measure)) {
    const found = textFault(input as QuantityText, measure, at, context.currency);
    if (found) faults.push(found);
    return;
  }
  const { measured, words } = spokenOr(schema);
  if (measured && !words.includes(input as string)) {
    const measuredFaults: Fault[] = [];
    gatherTextFaults(measured, input, at, context, measuredFaults);
    faults.push(...measuredFaults.map((one) => ({ ...one, cure: `${one.cure} Or say ${words.join(" or ")}.` })));
    return;
  }
  for (const [key, part, value] of children(schema, input)) {
    gatherTextFaults(part, value, pointer(at, key), context, faults);
  }
}

/** Of a field that takes words or a quantity (`straight`, or `2 in`): the quantity, and the words. */
function spokenOr(schema: z.core.$ZodType): { readonly measured?: z.core.$ZodType; readonly words: readonly string[] } {
  const { options = [] } = schema._zod.def as { options?: readonly z.core.$ZodType[] };
  const measured = options.find((option) => measures.has(option));
  return measured ? { measured, words: options.flatMap((option) => wordsOf(option)) } : { words: [] };
}

const wordsOf = (schema: z.core.$ZodType): string[] =>
  Object.values((schema._zod.def as { entries?: Readonly<Record<string, string>> }).entries ?? {});

const isReadable = (input: unknown, { like }: Measure): boolean =>
  typeof input === "string" || (like !== "section" && measuredValue.safeParse(input).success);

const texts = new WeakMap<z.core.$ZodType, boolean>();

/** True where a quantity may lie in what the schema reads: held plans, the longest part of a request, have none. */
function holdsText(schema: z.core.$ZodType): boolean {
  const known = texts.get(schema);
  if (known !== undefined) return known;
  const holds = measures.get(schema) !== undefined || partSchemas(schema).some(holdsText);
  texts.set(schema, holds);
  return holds;
}

function textFault(text: QuantityText, measure: Measure, at: string, currency?: Currency): Fault | undefined {
  if (measure.like === "section") return sectionFault(text as string, at);
  if (measure.like.startsWith(OWN_CURRENCY) && !currency) return undefined; // the currency itself is at fault
  const like = unit(measure.like.replace(OWN_CURRENCY, currency ?? ""));
  const found = parseText(text, like);
  if (!(found instanceof TextFault)) return rangeFault(text, found, measure, at);
  const other = currency && foreignCurrency(text, measure, currency);
  if (other) {
    const cure = `Give it in ${currency}, such as ${moneyExample(measure, currency)}, or price everything in ${other}.`;
    return fault("currency-mix", at, `${given(text)} is in ${other}, and the other prices are in ${currency}.`, cure);
  }
  const example = currency ? moneyExample(measure, currency) : measure.example;
  const cure = like.plain || !found.cure.startsWith("Give a rate") ? found.cure : `Give a rate, such as ${example}.`;
  return fault(found.code, at, found.wrong, cure);
}

/** The other currency that a money text is in, when that is all that is wrong with it. */
function foreignCurrency(text: QuantityText, measure: Measure, own: Currency): Currency | undefined {
  if (!measure.like.startsWith(OWN_CURRENCY)) return undefined;
  const reads = (code: string) =>
    !(parseText(text, unit(measure.like.replace(OWN_CURRENCY, code))) instanceof TextFault);
  return CURRENCIES.find((code) => code !== own && reads(code));
}

const moneyExample = (measure: Measure, currency: Currency) =>
  measure.like.startsWith(OWN_CURRENCY)
    ? `${measure.example} ${measure.like.replace(OWN_CURRENCY, currency)}`
    : measure.example;

function rangeFault(text: QuantityText, found: Quantity, measure: Measure, at: string): Fault | undefined {
  const { sign = "positive", least, most } = measure;
  if (found.value.isNegative() && !found.value.isZero() && sign !== "any") {
    const cure = sign === "positive" ? "Give more than zero." : "Give zero or more.";
    return fault("out-of-range", at, `${given(text)} is negative.`, cure);
  }
  if (found.value.isZero() && sign === "positive") {
    return fault("out-of-range", at, `${given(text)} is zero.`, "Give more than zero.");
  }
  if (least !== undefined && found.value.lt(toQuantity(least, found.unit).value)) {
    return fault("out-of-range", at, `${given(text)} is less than makes sense here.`, `Give at least ${least}.`);
  }
  if (most !== undefined && found.value.gt(toQuantity(most, found.unit).value)) {
    return fault("out-of-range", at, `${given(text)} is more than makes sense here.`, `Give at most ${most}.`);
  }
  return undefined;
}

function sectionFault(text: string, at: string): Fault | undefined {
  const found = parseSection(text);
  if (found instanceof TextFault) return fault(found.code, at, found.wrong, found.cure);
  const sides = [found.thickness, found.width];
  if (!sides.every(({ value }) => value.isPositive() && !value.isZero())) {
    return fault("out-of-range", at, `${quote(text)} has no size.`, "Give both sides as more than zero.");
  }
  const [thinnest, widest] = [toQuantity(SIDE.least, "in"), toQuantity(SIDE.most, "in")];
  if (sides.some(({ value }) => value.lt(thinnest.value))) {
    const cure = `Give sides of at least ${SIDE.least}.`;
    return fault("out-of-range", at, `${quote(text)} is less than makes sense here.`, cure);
  }
  if (sides.some(({ value }) => value.gt(widest.value))) {
    const cure = `Give sides of at most ${SIDE.most}.`;
    return fault("out-of-range", at, `${quote(text)} is more than makes sense here.`, cure);
  }
  return undefined;
}

const given = (text: QuantityText) => quote(typeof text === "string" ? text : `${text.value} ${text.unit}`);

/** A quantity's text against a unit of the dimension asked for. */
export function parseText(text: QuantityText, like: Unit): Quantity | TextFault {
  return parseQuantity(typeof text === "string" ? text : `${text.value} ${text.unit}`, like);
}

/** As `parseText`, for a text that `readShape` has let through; throws on anything else: a bug. */
export function toQuantity(text: QuantityText, like: Unit | string): Quantity {
  const found = parseText(text, typeof like === "string" ? unit(like) : like);
  if (found instanceof TextFault) throw new Error(`${found.wrong} ${found.cure}`);
  return found;
}

/** Thickness × width; both are lengths, and keep the unit that they were written in. */
export interface Section {
  readonly thickness: Quantity;
  readonly width: Quantity;
}

/** A section that `readShape` has let through; throws on anything else: a bug. */
export function toSection(text: SectionText): Section {
  if (typeof text !== "string") {
    return { thickness: toQuantity(text.thickness, "in"), width: toQuantity(text.width, "in") };
  }
  const found = parseSection(text);
  if (found instanceof TextFault) throw new Error(`${found.wrong} ${found.cure}`);
  return found;
}
