/**
 * Look-up of woods, and what is worked out from their published properties: weight, shrinkage, drying time.
 * Where a table has no value, a stated stand-in is used and the answer says so; it is never silently filled.
 */

import { type Decimal, decimal, ONE } from "../estimate/quantity/decimal.js";
import { type Quantity, quantity } from "../estimate/quantity/quantity.js";
import { lowered } from "../estimate/quantity/words.js";
import type { SourceKey } from "./sources.js";
import { AMERICAN_SPECIES, EUROPEAN_SPECIES, type Species } from "./species-table.js";

/**
 * Woods that yards sell under one name. Specific gravity on oven-dry weight and volume.
 * Source: `nds` table 12.3.3A, from memory; for the last two it is the figure that
 * gives the mean density of `en-338` at 12 % (C24: 420, C16: 370 kg/m3) in `soldDensityAt`.
 */
export interface TradeGroup {
  readonly id: string;
  readonly name: string;
  readonly specificGravity: string;
  /** Species that are sold under the name, as far as this catalog knows them. */
  readonly members: readonly string[];
  readonly tannin: Species["tannin"];
  readonly source: SourceKey;
}

const group = (
  id: string,
  name: string,
  specificGravity: string,
  members: readonly string[],
  tannin: Species["tannin"] = "little",
  source: SourceKey = "nds",
): TradeGroup => ({ id, name, specificGravity, members, tannin, source });

/** Woods that are sold under one name, such as spruce-pine-fir. */
export const TRADE_GROUPS: readonly TradeGroup[] = [
  group("spruce-pine-fir", "spruce-pine-fir", "0.42", ["white-spruce", "engelmann-spruce"]),
  group("spruce-pine-fir-south", "spruce-pine-fir (south)", "0.36", ["white-spruce", "red-pine", "sitka-spruce"]),
  group("hem-fir", "hem-fir", "0.43", ["western-hemlock"]),
  group("douglas-fir-larch", "Douglas fir-larch", "0.50", ["douglas-fir-coast", "western-larch"], "some"),
  group("southern-pine", "southern pine", "0.55", ["loblolly-pine", "shortleaf-pine", "longleaf-pine"]),
  group("western-cedars", "western cedars", "0.36", ["western-redcedar", "incense-cedar", "yellow-cedar"], "rich"),
  group("redwood", "redwood", "0.37", ["redwood-old-growth", "redwood-young-growth"], "rich"),
  group("european-whitewood", "European whitewood, C24", "0.391", ["norway-spruce"], "little", "en-338"),
  group("european-redwood", "European redwood, C16", "0.343", ["scots-pine"], "little", "en-338"),
];

/** Every species, the American first. */
export const SPECIES: readonly Species[] = [...AMERICAN_SPECIES, ...EUROPEAN_SPECIES];

const ALL: ReadonlyMap<string, Species> = new Map(SPECIES.map((row) => [row.id, row]));
const GROUPS: ReadonlyMap<string, TradeGroup> = new Map(TRADE_GROUPS.map((row) => [row.id, row]));

/** The names that a log or a piece may use for its wood. */
export const speciesIds: readonly string[] = [...ALL.keys()];

/** The names under which a catalog may sell lumber: species, then trade groups. */
export const woodNames: readonly string[] = [...ALL.keys(), ...GROUPS.keys()];

/** A species by id. */
export const speciesOf = (id: string): Species | undefined => ALL.get(id);

/** A wood as people say it: its species or trade group by name. */
export const woodName = (id: string): string => (ALL.get(id) ?? GROUPS.get(id))?.name ?? id.replaceAll("-", " ");

/** True when lumber sold as `sold` may be used where `wanted` is asked for: the same wood, or a member of the group. */
export function servesAs(sold: string, wanted: string): boolean {
  return sold === wanted || (GROUPS.get(wanted)?.members.includes(sold) ?? false);
}

/** Whether its heartwood resists decay; of a trade group, whether that of all its woods does. */
export function lasts(wood: string): boolean {
  const members = SPECIES.filter(({ id }) => servesAs(id, wood));
  return members.length > 0 && members.every(({ decay }) => decay === "resistant");
}

/** Whether a wood's tannins call for stainless or hot-dip galvanized fasteners outdoors. */
export function tanninOf(id: string): Species["tannin"] | undefined {
  return (ALL.get(id) ?? GROUPS.get(id))?.tannin;
}

/**
 * Specific gravity on oven-dry weight and volume, by which fasteners are judged; undefined of an unknown wood.
 * From the basic one (green volume): G / (1 − 0.265 G), Wood Handbook, chapter 4, at no moisture.
 */
export function ovenDryGravity(id: string): Decimal | undefined {
  const sold = GROUPS.get(id);
  if (sold) return decimal(sold.specificGravity);
  const basic = ALL.get(id)?.specificGravity[0];
  return basic ? decimal(basic).dividedBy(ONE.minus(decimal("0.265").times(basic))) : undefined;
}

/** A value with how it came about: as published, or by which stand-in. */
export interface Known {
  readonly value: Quantity;
  /** True when the species' own row has no value and the stand-in below was used. */
  readonly fallback: boolean;
  /** How it was found, in a sentence for the notices. */
  readonly how: string;
}

/** Weight of a cubic foot of water, lb (Wood Handbook, chapter 4). */
const WATER = decimal("62.4");
const LB_FT3 = "lb/ft3";
/** Fibre saturation, % (Wood Handbook, chapter 4): below it wood shrinks. */
const SATURATION = decimal(30);
const percentOf = (text: string): Decimal => decimal(text).dividedBy(100);

/** The row itself, and the relative that stands in for what it lacks. */
function withStandIn(species: Species): readonly Species[] {
  const relative = species.standIn === undefined ? undefined : ALL.get(species.standIn);
  return relative ? [species, relative] : [species];
}

/**
 * Weight of the green wood, without bark, in lb/ft3: the inventory's where it has one, else
 * 62.4 × specific gravity × (1 + moisture). Moisture: mean of heart- and sapwood, else the stand-in's.
 */
export function greenDensity(species: Species): Known {
  const [, , , weight] = species.inventory;
  if (weight !== null) {
    return { value: quantity(weight, LB_FT3), fallback: false, how: "Green weight of the forest inventory's table." };
  }
  const moisture = greenMoisture(species);
  const gravity = decimal(species.specificGravity[0] as string);
  const value = WATER.times(gravity).times(moisture.value.value.plus(1));
  return { ...moisture, value: quantity(value, LB_FT3), how: `Specific gravity with ${lowered(moisture.how)}` };
}

/** Green moisture, as a share of the oven-dry weight. */
function greenMoisture(species: Species): Known {
  for (const row of withStandIn(species)) {
    const fallback = row !== species;
    const of = fallback ? ` of ${row.name}, a near relative` : "";
    const [, inventory] = row.inventory;
    if (inventory !== null) return moistureOf([inventory], `Green moisture${of} in the forest inventory.`, fallback);
    const parts = row.greenMoisture.filter((part) => part !== null);
    if (parts.length > 0) return moistureOf(parts, `Green moisture${of}, mean of heart- and sapwood.`, fallback);
  }
  return moistureOf(["80"], "Green moisture taken as 80 %; an assumption.", true);
}

function moistureOf(parts: readonly string[], how: string, fallback: boolean): Known {
  const sum = parts.reduce((total, part) => total.plus(percentOf(part)), decimal(0));
  return { value: quantity(sum.dividedBy(parts.length), ""), fallback, how };
}

/**
 * Weight in lb/ft3 at a moisture content: oven-dry weight on green volume, times one plus moisture, over the volume
 * that shrinkage leaves. Above fibre saturation nothing shrinks.
 * @param moisture - As a share: 12 % is 0.12.
 */
export function densityAt(species: Species, moisture: Quantity): Known {
  const gravity = decimal(species.specificGravity[0] as string);
  const volumetric = volumetricShrinkage(species);
  const left = ONE.minus(volumetric.value.value.times(shrunkShare(moisture)));
  const value = WATER.times(gravity).times(moisture.value.plus(1)).dividedBy(left);
  return { ...volumetric, value: quantity(value, LB_FT3) };
}

/**
 * The same of a wood as yards name it: a species, or a trade group by its specific gravity; undefined of an unknown one.
 * A group's gravity is oven-dry; on green volume it is G / (1 + 0.265 G), for volume shrinks by 26.5 % of that (Wood Handbook, chapter 4).
 */
export function soldDensityAt(id: string, moisture: Quantity): Known | undefined {
  const species = ALL.get(id);
  if (species) return densityAt(species, moisture);
  const sold = GROUPS.get(id);
  if (!sold) return undefined;
  const byGravity = decimal("0.265");
  const gravity = decimal(sold.specificGravity).dividedBy(ONE.plus(byGravity.times(sold.specificGravity)));
  const left = ONE.minus(byGravity.times(gravity).times(shrunkShare(moisture)));
  const value = WATER.times(gravity).times(moisture.value.plus(1)).dividedBy(left);
  return {
    value: quantity(value, LB_FT3),
    fallback: false,
    how: "Specific gravity of the woods sold under that name.",
  };
}

/** Share of the whole shrinkage reached at a moisture: (30 − M) ÷ 30, between 0 and 1 (Wood Handbook, chapter 4). */
function shrunkShare(moisture: Quantity): Decimal {
  const percent = moisture.value.times(100);
  if (percent.gte(SATURATION)) return decimal(0);
  return SATURATION.minus(percent).dividedBy(SATURATION);
}

/** Rule of the Wood Handbook, chapter 4: a wood's volume shrinks by about 26.5 % of its green specific gravity. */
function volumetricShrinkage(species: Species): Known {
  const published = species.shrinkage[2];
  if (published !== null) return asShare(published, false, "Volumetric shrinkage as published.");
  const estimate = decimal("26.5").times(species.specificGravity[0] as string);
  return asShare(estimate.toFixed(), true, "Volumetric shrinkage as 26.5 % of the specific gravity.");
}

const asShare = (percent: string, fallback: boolean, how: string): Known => ({
  value: quantity(percentOf(percent), ""),
  fallback,
  how,
});

/** Direction across the grain in which wood moves. */
export type GrainDirection = "radial" | "tangential";

/** Shrinkage that is assumed where nothing is published: the largest tangential figure of the softwood rows. */
const CAUTIOUS = { radial: "5.1", tangential: "9.1" } as const;

/**
 * Shrinkage from green to oven-dry, as a share of the green size. Where the row has none: from its movement
 * coefficient C as 30 C ÷ (1 + 20 C), else the stand-in's, else a cautious figure. The coefficient is a change per
 * point at 10 % moisture, 20 points below fibre saturation; so turned round, table 13-5 gives table 4-3 to its tenth.
 */
export function shrinkage(species: Species, direction: GrainDirection): Known {
  const column = direction === "radial" ? 0 : 1;
  for (const row of withStandIn(species)) {
    const of = row === species ? "" : ` of ${row.name}, a near relative`;
    const published = row.shrinkage[column];
    if (published !== null) return asShare(published, row !== species, `Published ${direction} shrinkage${of}.`);
    const coefficient = row.movement[column];
    if (coefficient !== null) {
      const share = SATURATION.times(coefficient).dividedBy(ONE.plus(decimal(20).times(coefficient)));
      return asShare(share.times(100).toFixed(6), true, `From the ${direction} movement coefficient${of}.`);
    }
  }
  return asShare(CAUTIOUS[direction], true, `No ${direction} shrinkage is published; a cautious figure.`);
}

/** Bark volume as a share of wood volume. Without a row, 15 %: the middle of the softwood rows; an assumption. */
export function barkShare(species: Species): Known {
  for (const row of withStandIn(species)) {
    const bark = row.inventory[2];
    if (bark !== null) return asShare(bark, row !== species, "Bark volume in the forest inventory's table.");
  }
  return asShare("15", true, "Bark volume taken as 15 % of the wood; an assumption.");
}

/** Days of air drying for 1 in lumber to about 20 %, good season and winter. */
export interface DryingTime {
  readonly good: Quantity;
  readonly winter: Quantity;
  readonly fallback: boolean;
}

/** Published days, else the stand-in's, else the widest range of the table's rows of that kind. */
export function dryingTime(species: Species): DryingTime {
  const found = withStandIn(species).find((row) => row.dryingDays !== null);
  const [good, winter] = found?.dryingDays ?? (species.kind === "softwood" ? ["60", "200"] : ["70", "200"]);
  return { good: quantity(good, "day"), winter: quantity(winter, "day"), fallback: found !== species };
}
