/**
 * Numbers as people write them: `6.5`, `6 1/2`, `1,250.50`, `12 345`, `4,35`. What two readers would read in two ways is
 * refused, and both are named.
 */
import { type Decimal, decimal, parseDecimal } from "./decimal.js";
import type { Unit } from "./unit.js";

/** A number that may be meant in two ways, or in none: goes on after the text in quotation marks. */
export interface Unclear {
  readonly wrong: string;
  readonly cure: string;
}

/** Whether a number was refused with its cure. */
export const isUnclear = (found: Decimal | Unclear): found is Unclear => "wrong" in found;

/** Units and money of people whose comma parts thousands, and is never the decimal sign. */
const PART_THOUSANDS: ReadonlySet<string> = new Set(
  "in ft yd mi square gal qt bf mbf lb oz USD GBP AUD NZD INR JPY MXN".split(" "),
);
/** Units of people to half of whom a comma is the decimal sign. */
const METRIC: ReadonlySet<string> = new Set("mm cm m km L mL kg g t".split(" "));

/** Denominators that a rule is marked in. */
const MARKED: ReadonlySet<string> = new Set("2 4 8 16 32 64".split(" "));

/** Reads a number of a unit: what a comma in it says hangs on the unit. */
export function parseNumeral(text: string, of: Unit): Decimal | Unclear | undefined {
  const mixed = /^(-?)(?:(\d+)[ -])?(\d{1,5})\/(\d{1,5})$/.exec(text.trim());
  if (!mixed) return parseGrouped(text.trim(), of);
  const [, sign, whole, above, below] = mixed as unknown as [string, string, string | undefined, string, string];
  const unclear = fractionFault(whole, above, below);
  if (unclear) return unclear;
  const units = parseDecimal(whole ?? "0");
  if (!units) return undefined;
  const value = units.plus(decimal(above).dividedBy(below));
  return sign ? value.negated() : value;
}

function fractionFault(whole: string | undefined, above: string, below: string): Unclear | undefined {
  if (!MARKED.has(below.replace(/^0+/, ""))) {
    return {
      wrong: "has a fraction that no rule marks",
      cure: "Use halves, quarters, eighths, sixteenths, thirty-seconds or sixty-fourths, or a decimal.",
    };
  }
  if (BigInt(above) < BigInt(below)) return undefined;
  if (whole !== undefined) {
    return { wrong: `has ${above}/${below} behind a whole number`, cure: `Give a fraction below one, or a decimal.` };
  }
  // `61/2` for `6 1/2`: a lost space. `5/4` and `12/4` are thicknesses of the trade.
  const parts = /^(\d+)([13579]|\d[13579])$/.exec(above);
  if (!parts || BigInt(parts[2] as string) >= BigInt(below)) return undefined;
  const spaced = `${parts[1]} ${parts[2]}/${below}`;
  return {
    wrong: `may be ${spaced} or ${above} ÷ ${below}`,
    cure: `Give ${spaced} with a space, or ${decimal(above).dividedBy(below).toFixed()}.`,
  };
}

/** Digits, with or without signs that part thousands. */
function parseGrouped(text: string, of: Unit): Decimal | Unclear | undefined {
  const spaced = /^-?[1-9]\d{0,2}(?: \d{3})+(?:[.,]\d+)?$/.test(text) ? text.replaceAll(" ", "") : text;
  if (!spaced.includes(",")) return parseDecimal(spaced);
  const parted = /^-?[1-9]\d{0,2}(?:,\d{3})+(\.\d+)?$/.exec(spaced);
  if (parted && (parted[1] || spaced.indexOf(",") !== spaced.lastIndexOf(","))) {
    return parseDecimal(spaced.replaceAll(",", ""));
  }
  const thousands = partsThousands(of);
  if (parted && thousands) return parseDecimal(spaced.replaceAll(",", ""));
  const whole = spaced.replaceAll(",", "");
  // 1.250,00: the thousands parted by points.
  const point = /^-?[1-9]\d{0,2}(?:\.\d{3})+,\d+$/.test(spaced) ? spaced.replaceAll(".", "") : spaced;
  if (!/^-?\d*,\d+$/.test(point)) return undefined;
  const pointed = point.replace(",", ".");
  if (parted) return { wrong: `may be ${whole} or ${pointed}`, cure: `Give ${whole}, or ${pointed} with a point.` };
  if (thousands) return { wrong: "has a comma that parts no thousands", cure: `Give ${pointed} with a point.` };
  return parseDecimal(pointed);
}

const partsThousands = ({ parts }: Unit): boolean => {
  const names = [...parts.keys()];
  return names.some((name) => PART_THOUSANDS.has(name)) && !names.some((name) => METRIC.has(name));
};
