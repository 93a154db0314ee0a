/**
 * Fasteners: kinds, corrosion classes, nails by the pound, and bolt hardware.
 *
 * Nails: `tm-5-460` with sizes of `astm-f1667`. Inch bolts: `asme-b18`, UNC threads. Metric bolts: `iso-4014`. All from
 * memory. Every printed common-nail count lies 0 to 4 % above a plain steel cylinder of that size.
 */
import { type Decimal, decimal } from "../estimate/quantity/decimal.js";
import { inUnit, type Quantity, quantity } from "../estimate/quantity/quantity.js";
import { exactly, type MeasureSystem } from "../estimate/quantity/text.js";
import type { Citation } from "./sources.js";

/** What a yard sells to hold wood to wood, and sheets to wood; `size` says by what it is told apart. */
export const FASTENERS = {
  "common-nail": { name: "common nail", size: "penny" },
  "box-nail": { name: "box nail", size: "penny" },
  "finish-nail": { name: "finish nail", size: "penny" },
  "ring-shank-nail": { name: "ring-shank nail", size: "diameter-length" },
  "roofing-nail": { name: "roofing nail", size: "length" },
  "cap-nail": { name: "cap nail for underlay", size: "length" },
  "deck-screw": { name: "exterior wood screw", size: "diameter-length" },
  "structural-screw": { name: "structural wood screw", size: "diameter-length" },
  "roof-screw": { name: "roof screw with sealing washer, into wood", size: "diameter-length" },
  "stitch-screw": { name: "stitch screw with sealing washer, sheet to sheet", size: "diameter-length" },
  "panel-clip": { name: "hidden clip of a standing seam", size: "none" },
  "clip-screw": { name: "pancake-head screw through a clip", size: "diameter-length" },
  "hex-bolt": { name: "hexagon-head bolt", size: "diameter-length" },
  "carriage-bolt": { name: "carriage bolt", size: "diameter-length" },
  "lag-screw": { name: "lag screw", size: "diameter-length" },
  "threaded-rod": { name: "threaded rod", size: "diameter-length" },
  nut: { name: "hexagon nut", size: "diameter" },
  washer: { name: "wide washer", size: "diameter" },
  "post-base": { name: "post base", size: "section" },
  "joist-hanger": { name: "joist hanger", size: "section" },
  "rafter-tie": { name: "rafter tie against uplift", size: "none" },
  "angle-bracket": { name: "angle bracket", size: "none" },
} as const satisfies Readonly<Record<string, { readonly name: string; readonly size: FastenerSizing }>>;

/** By what one fastener of a kind is told from another. */
export type FastenerSizing = "penny" | "length" | "diameter" | "diameter-length" | "section" | "none";

/** Key of a fastener. */
export type FastenerKind = keyof typeof FASTENERS;

/** All kinds of fastener. */
export const fastenerKinds = Object.keys(FASTENERS) as readonly FastenerKind[];

/**
 * What surrounds a fastener, the mildest first. Service classes as of EN 1995-1-1, 2.3.1.3: 1 below about 12 % moisture in
 * the wood, 2 below about 20 %, 3 wetter. Salt air is corrosivity C5 of ISO 9223, where zinc loses 4.2 to 8.4 µm a year:
 * a hot-dip coating of 50 µm is gone in 6 to 12 years. All from memory.
 */
export const CLIMATES = ["dry", "sheltered", "outdoors", "salt"] as const;

/** Key of what surrounds a fastener. */
export type Climate = (typeof CLIMATES)[number];

/** Where a fastener is to last. */
export interface Exposure {
  readonly climate: Climate;
  /** In preservative-treated wood. */
  readonly treated: boolean;
  /** In wood rich in tannins. */
  readonly tannin: boolean;
}

interface CorrosionClass {
  readonly name: string;
  /** The harshest climate in which it lasts. */
  readonly upTo: Climate;
  readonly treated: boolean;
  readonly tannin: boolean;
  readonly from: Citation;
}

const irc: Citation = { source: "irc", part: "R317.3.1" };
// Within 300 ft of a salt-water shore, and wherever salt water reaches, nothing but stainless.
const ircSalt: Citation = { source: "irc", part: "R317.3.1; table R507.2.3, salt water" };
// Nails and screws to 4 mm: none in service class 1, Fe/Zn 12c in 2, Fe/Zn 25c in 3; heavier or stainless where it is worse.
const en1995: Citation = { source: "en-1995-1-1", part: "table 4.1" };
const ironStain: Citation = { source: "wood-handbook", part: "chapter 16, iron stain" };

/**
 * Corrosion classes from least to most lasting. Zinc as of `astm-a153`. Larger bolts and thick plates may have less below a
 * roof (`en-1995-1-1`, table 4.1); one class for all that holds a joint keeps unlike metals apart.
 */
export const CORROSION_CLASSES = {
  plain: { name: "plain steel", upTo: "dry", treated: false, tannin: false, from: ironStain },
  electroplated: {
    name: "electroplated zinc",
    upTo: "sheltered",
    treated: false,
    tannin: false,
    from: en1995,
  },
  // Some makers rate their coating for some treatments; which one a yard stocks nobody can tell from here.
  coated: {
    name: "polymer coating for outdoors",
    upTo: "outdoors",
    treated: false,
    tannin: false,
    from: { source: "common-practice", part: "the maker's rating decides" },
  },
  "hot-dip-galvanized": { name: "hot-dip galvanized", upTo: "outdoors", treated: true, tannin: true, from: irc },
  stainless: { name: "stainless steel", upTo: "salt", treated: true, tannin: true, from: ircSalt },
} as const satisfies Readonly<Record<string, CorrosionClass>>;

/** Key of a class of protection against rust. */
export type CorrosionClassId = keyof typeof CORROSION_CLASSES;

/** Classes of protection, the least first. */
export const corrosionClassIds = Object.keys(CORROSION_CLASSES) as readonly CorrosionClassId[];

/** True when the first climate asks for more than the second. */
export const harsher = (one: Climate, other: Climate): boolean => CLIMATES.indexOf(one) > CLIMATES.indexOf(other);

/** True when a class lasts everywhere that the exposure names. */
export function lasts(id: CorrosionClassId, exposure: Exposure): boolean {
  const row = CORROSION_CLASSES[id];
  const holds = (need: "treated" | "tannin") => !exposure[need] || row[need];
  return !harsher(exposure.climate, row.upTo) && holds("treated") && holds("tannin");
}

/** Shank diameter in inches and count to the pound. */
interface NailForm {
  readonly diameter: string;
  readonly perPound: string;
}

interface NailRow {
  readonly length: string;
  readonly common: NailForm;
  readonly box?: NailForm;
  readonly finish?: NailForm;
}

const nail = (diameter: string, perPound: string): NailForm => ({ diameter, perPound });

/** Steel-wire nails by penny. Finish nails are printed by wire gauge; the diameter here is that gauge's. */
export const NAILS: Readonly<Record<string, NailRow>> = {
  "2d": { length: "1", common: nail("0.072", "876"), box: nail("0.067", "1010"), finish: nail("0.058", "1351") },
  "3d": { length: "1 1/4", common: nail("0.08", "568"), box: nail("0.076", "635"), finish: nail("0.067", "807") },
  "4d": { length: "1 1/2", common: nail("0.099", "316"), box: nail("0.08", "473"), finish: nail("0.072", "584") },
  "5d": { length: "1 3/4", common: nail("0.099", "271"), box: nail("0.08", "406"), finish: nail("0.072", "500") },
  "6d": { length: "2", common: nail("0.113", "181"), box: nail("0.099", "236"), finish: nail("0.0915", "309") },
  "7d": { length: "2 1/4", common: nail("0.113", "161"), box: nail("0.099", "210") },
  "8d": { length: "2 1/2", common: nail("0.131", "106"), box: nail("0.113", "145"), finish: nail("0.099", "189") },
  "9d": { length: "2 3/4", common: nail("0.131", "96"), box: nail("0.113", "132") },
  "10d": { length: "3", common: nail("0.148", "69"), box: nail("0.128", "94"), finish: nail("0.113", "121") },
  "12d": { length: "3 1/4", common: nail("0.148", "63"), box: nail("0.128", "88") },
  "16d": { length: "3 1/2", common: nail("0.162", "49"), box: nail("0.135", "71"), finish: nail("0.1205", "90") },
  "20d": { length: "4", common: nail("0.192", "31"), box: nail("0.148", "52"), finish: nail("0.135", "62") },
  "30d": { length: "4 1/2", common: nail("0.207", "24"), box: nail("0.148", "46") },
  "40d": { length: "5", common: nail("0.225", "18"), box: nail("0.162", "35") },
  "50d": { length: "5 1/2", common: nail("0.244", "14") },
  "60d": { length: "6", common: nail("0.263", "11") },
};

/** Penny sizes of nails, the smallest first. */
export const pennies = Object.keys(NAILS);

/** Roofing nails, 11 gauge: length in inches and count to the pound. Memory, confidence low. */
export const ROOFING_NAILS: Readonly<Record<string, string>> = { "1": "255", "1 1/2": "180", "1 3/4": "150" };

const NAIL_FORMS = { "common-nail": "common", "box-nail": "box", "finish-nail": "finish" } as const;

/** The shank of a nail named by its penny, or undefined when no such nail is made. */
export function nailShank(kind: FastenerKind, penny: string): { diameter: Quantity; length: Quantity } | undefined {
  const found = nailForm(kind, penny);
  return found && { diameter: exactly(`${found[1].diameter} in`), length: exactly(`${found[0].length} in`) };
}

function nailForm(kind: FastenerKind, penny: string): readonly [NailRow, NailForm] | undefined {
  if (!Object.hasOwn(NAIL_FORMS, kind) || !Object.hasOwn(NAILS, penny)) return undefined;
  const row = NAILS[penny] as NailRow;
  const form = row[NAIL_FORMS[kind as keyof typeof NAIL_FORMS]];
  return form && [row, form];
}

/** Printed count of nails to the pound (unit 1/lb), or undefined when no such nail is in the table. */
export function nailsPerPound(kind: FastenerKind, penny: string): Quantity | undefined {
  const found = nailForm(kind, penny);
  return found && quantity(found[1].perPound, "1/lb");
}

/** Steel, lb/in³: 490 lb/ft³ (AISC), the figure behind the printed nail tables. */
const STEEL = decimal("0.2836");
/** π to 30 digits. */
const PI = decimal("3.14159265358979323846264338328");

/**
 * Count to the pound of a plain steel shank (unit 1/lb), for sizes that no table lists. Heads are left out, so the
 * count should be a little high; yet printed common-nail tables lie 0 to 4 % above even this.
 */
export function shanksPerPound(diameter: Quantity, length: Quantity): Quantity {
  const d = inUnit(diameter, "in");
  const pounds: Decimal = STEEL.times(PI).times(d).times(d).times(inUnit(length, "in")).dividedBy(4);
  return quantity(decimal(1).dividedBy(pounds), "1/lb");
}

/** Bolt hardware of one diameter. Lengths as text with unit. */
export interface BoltRow {
  readonly diameter: string;
  /** Length of one thread. */
  readonly pitch: readonly [num: string, den: string];
  readonly acrossFlats: string;
  readonly headHeight: string;
  readonly nutThickness: string;
  readonly washer: { readonly inside: string; readonly outside: string; readonly thickness: string };
}

const inchBolt = (
  diameter: string,
  threads: string,
  [flats, head, nut]: readonly [string, string, string],
  [inside, outside, thickness]: readonly [string, string, string],
): BoltRow => ({
  diameter: `${diameter} in`,
  pitch: ["1 in", threads],
  acrossFlats: `${flats} in`,
  headHeight: `${head} in`,
  nutThickness: `${nut} in`,
  washer: { inside: `${inside} in`, outside: `${outside} in`, thickness: `${thickness} in` },
});

/** Hex bolts, hex nuts, Type A wide washers. */
export const INCH_BOLTS: readonly BoltRow[] = [
  inchBolt("1/4", "20", ["7/16", "11/64", "7/32"], ["0.312", "0.734", "0.065"]),
  inchBolt("5/16", "18", ["1/2", "7/32", "17/64"], ["0.375", "0.875", "0.083"]),
  inchBolt("3/8", "16", ["9/16", "1/4", "21/64"], ["0.438", "1", "0.083"]),
  inchBolt("7/16", "14", ["5/8", "19/64", "3/8"], ["0.5", "1.25", "0.083"]),
  inchBolt("1/2", "13", ["3/4", "11/32", "7/16"], ["0.562", "1.375", "0.109"]),
  inchBolt("5/8", "11", ["15/16", "27/64", "35/64"], ["0.688", "1.75", "0.134"]),
  inchBolt("3/4", "10", ["1 1/8", "1/2", "41/64"], ["0.812", "2", "0.148"]),
  inchBolt("7/8", "9", ["1 5/16", "37/64", "3/4"], ["0.938", "2.25", "0.165"]),
  inchBolt("1", "8", ["1 1/2", "43/64", "55/64"], ["1.062", "2.5", "0.165"]),
];

const metricBolt = (
  diameter: string,
  pitch: string,
  [flats, head, nut]: readonly [string, string, string],
  [inside, outside, thickness]: readonly [string, string, string],
): BoltRow => ({
  diameter: `${diameter} mm`,
  pitch: [`${pitch} mm`, "1"],
  acrossFlats: `${flats} mm`,
  headHeight: `${head} mm`,
  nutThickness: `${nut} mm`,
  washer: { inside: `${inside} mm`, outside: `${outside} mm`, thickness: `${thickness} mm` },
});

/** Coarse-thread bolts M8 to M20 with wide washers for timber. */
export const METRIC_BOLTS: readonly BoltRow[] = [
  metricBolt("8", "1.25", ["13", "5.3", "6.8"], ["9", "28", "3"]),
  metricBolt("10", "1.5", ["16", "6.4", "8.4"], ["11", "34", "3"]),
  metricBolt("12", "1.75", ["18", "7.5", "10.8"], ["13.5", "44", "4"]),
  metricBolt("16", "2", ["24", "10", "14.8"], ["17.5", "56", "5"]),
  metricBolt("20", "2.5", ["30", "12.5", "18"], ["22", "72", "6"]),
];

/** The hardware of a bolt diameter, or undefined when it is in neither table. */
export function boltRow(diameter: Quantity): BoltRow | undefined {
  return [...INCH_BOLTS, ...METRIC_BOLTS].find((row) => exactly(row.diameter).value.eq(diameter.value));
}

const range = (unit: string, from: number, to: number, step: number) =>
  Array.from({ length: Math.round((to - from) / step) + 1 }, (_, i) => quantity(from + i * step, unit));

/**
 * Bolt lengths that are stocked: by 1/2 in to 6 in, by 1 in to 12 in, by 2 in to 24 in (stock steps; common practice);
 * metric by 10 mm to 160 mm, by 20 mm to 400 mm (ISO 888, memory).
 */
export const BOLT_LENGTHS: Readonly<Record<MeasureSystem, readonly Quantity[]>> = {
  "inch-pound": [...range("in", 1, 6, 0.5), ...range("in", 7, 12, 1), ...range("in", 14, 24, 2)],
  metric: [...range("mm", 30, 160, 10), ...range("mm", 180, 400, 20)],
};

/** Threads that should show past the nut (`nds`; trade practice). */
export const THREADS_PAST_NUT = 2;
