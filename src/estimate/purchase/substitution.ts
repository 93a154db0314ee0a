/**
 * What is sold for what is wanted. A finished 2 × 6 milled from a log is full; the one from the yard measures
 * 1 1/2 × 5 1/2. Every such difference is put on record.
 */
import { type LumberOffer, lengthsOf } from "../../catalog/offers/lumber.js";
import type { PriceCatalog } from "../../catalog/price-catalog.js";
import { dressedSize } from "../../catalog/sections.js";
import { lasts, servesAs, woodName } from "../../catalog/species.js";
import type { WantedGroup } from "../pieces/laying.js";
import type { PieceGroup } from "../pieces/piece-group.js";
import { type Decimal, decimal, ZERO } from "../quantity/decimal.js";
import { quantity } from "../quantity/quantity.js";
import { type MeasureSystem, markedSection } from "../quantity/text.js";
import { unit } from "../quantity/unit.js";
import type { Cell } from "../sheet/expression.js";
import type { Sheet } from "../sheet/sheet.js";
import { cheapestBoard } from "./board-prices.js";
import { type RipLoss, type Ripped, rippedFrom } from "./ripped.js";

/** A group and the offer that serves for it. */
export interface Substitution {
  readonly group: PieceGroup;
  readonly offer: LumberOffer;
  /** How the bought piece differs from what was asked for; empty when it does not. */
  readonly differences: readonly string[];
  /** Sides on which it is larger than wanted and is ripped down; its smaller side is its thickness. */
  readonly larger: readonly ("thickness" | "width")[];
  /** Whether, ripped down where it is larger, it measures what is wanted: the same as one that is milled. */
  readonly alike: boolean;
  /** Pieces that are ripped side by side out of one stick: 1 of what is as large as wanted, and of all that bears. */
  readonly abreast: number;
  /** Sides of what a piece measures when it is ripped to what is wanted, as far as the stick has it; the smaller first, in millimetres. */
  readonly each: Sides;
}

/** A group for which nothing on offer serves. */
export interface NothingSold {
  readonly group: PieceGroup;
  /** What to add to the catalog, in a sentence. */
  readonly add: string;
}

/** What is on offer to choose from. */
interface Lumber extends Pick<PriceCatalog, "lumber"> {
  /** Comes off the end of every stick; where it is left out, lengths are not looked at. */
  readonly endTrim?: Cell;
}

/** Of a section, the smaller side first; in millimetres. */
type Sides = readonly [Decimal, Decimal];

/** How well an offer serves, the lower the better, compared from the first figure on. */
type Rank = readonly number[];

/**
 * Finds the offer for a group: its nominal name in either measure, else as thick by name and wider, else what is in fact as large, else the next
 * size up by name; for posts treated, or of a wood that lasts; for structure graded, whatever the
 * building office takes: what has no mark is seldom worth its price, finish and dressing, and `buyAs` names it.
 */
export function substitute(
  sheet: Sheet,
  group: PieceGroup,
  catalog: Lumber,
  { system, loss }: { readonly system: MeasureSystem; readonly loss: RipLoss },
): Substitution | NothingSold {
  const wanted = wantedSides(sheet, group);
  const insisted = group.rules.buyAs;
  const best = bestFor(sheet, group, catalog, system);
  const size = markedSection(lengthOf(wanted[0]), lengthOf(wanted[1]), system);
  if (!best) {
    const what = insisted ? `an offer called ${insisted}` : `a section of ${size} or larger`;
    return { group, add: `Add ${what} to the catalog's lumber, for ${group.label.toLowerCase()}.` };
  }
  const measured = sides(best.actual) as Sides;
  const larger = largerSides(measured, wanted);
  const alike = inFact(best, wanted);
  const ripped = rippedFrom(sheet, group, { wanted, measured, alike, named: dressedWidth(best, wanted) }, loss);
  const differences = differencesOf({ offer: best, group, wanted, ripped }, system);
  return { group, offer: best, differences, larger, alike, ...ripped };
}

/** The best offer for a group before its lengths are known; undefined where nothing serves. */
export const offerFor = (
  sheet: Sheet,
  group: WantedGroup,
  catalog: Lumber,
  system: MeasureSystem,
): LumberOffer | undefined => bestFor(sheet, group, catalog, system);

function wantedSides(sheet: Sheet, { thickness, width }: WantedGroup): [Decimal, Decimal] {
  return [sheet.decide(thickness), sheet.decide(width)].sort((a, b) => a.cmp(b)) as [Decimal, Decimal];
}

function bestFor(sheet: Sheet, group: WantedGroup, catalog: Lumber, system: MeasureSystem): LumberOffer | undefined {
  const equals = equalOffers(sheet, group, catalog);
  if (equals.length < 2) return equals[0];
  return cheapestBoard({ sheet }, equals, system)?.offer ?? equals[0];
}

/** Offers that serve for a group better than all others, and equally well, by name; more than one where only money tells them apart. */
export function equalOffers(
  sheet: Sheet,
  group: WantedGroup | PieceGroup,
  { lumber, endTrim }: Lumber,
): readonly LumberOffer[] {
  const wanted = wantedSides(sheet, group);
  const insisted = group.rules.buyAs;
  const candidates = lumber.filter((offer) => (insisted ? offer.name === insisted : fits(offer, wanted)));
  const length = "length" in group && endTrim ? sheet.decide(group.length).plus(sheet.decide(endTrim)) : undefined;
  const ranks = candidates.map((offer) => [tooShort(offer, length), ...rankOf(offer, group, wanted)]);
  const least = ranks.reduce<Rank | undefined>((low, rank) => (low && compare(low, rank) <= 0 ? low : rank), undefined);
  return candidates
    .filter((_, i) => least && compare(ranks[i] as Rank, least) === 0)
    .toSorted((a, b) => (a.name < b.name ? -1 : 1));
}

/** As large as the wanted section by its name, or in fact. */
function fits(offer: LumberOffer, wanted: Sides): boolean {
  return (
    isNominally(offer, wanted) || isWider(offer, wanted) || asLarge(offer.section, wanted) || inFact(offer, wanted)
  );
}

const asLarge = (section: LumberOffer["section"], wanted: Sides): boolean =>
  sides(section).every((side, i) => side.gte(wanted[i] as Decimal));

/** Less than EN 336 lets any dressed side be off, and less than a saw holds: 1 1/2 in is 38 mm, 5 1/2 in is 140 mm. In mm. */
export const NEAR = decimal("0.5");

/** As large as it measures. */
const inFact = ({ actual }: LumberOffer, wanted: Sides): boolean =>
  sides(actual).every((side, i) => side.plus(NEAR).gte(wanted[i] as Decimal));

/** Sides on which a section is larger than wanted, so that it is ripped down; its smaller side is its thickness. */
const largerSides = (measured: readonly Decimal[], wanted: Sides): readonly ("thickness" | "width")[] =>
  (["thickness", "width"] as const).filter((_, i) => (measured[i] as Decimal).gt((wanted[i] as Decimal).plus(NEAR)));

/** The same in trade: 2 in is called 50 mm, 6 in 150 mm, at 25 mm to the inch. Common practice, no source. */
const sameName = (a: Decimal, b: Decimal): boolean =>
  a.eq(b) || a.times(25).eq(b.times("25.4")) || a.times("25.4").eq(b.times(25));

/** Width of what is sold by the name that is wanted, dressed as an offer is; undefined where that is no name of the offer's kind. */
function dressedWidth({ sizing, surface, seasoning }: LumberOffer, [thickness, width]: Sides): Decimal | undefined {
  if (sizing !== "nominal" || surface !== "dressed") return undefined;
  // 50 mm is called 2 in, at 25 mm to the inch.
  const names = ["25.4", "25"].map((inch) => ({
    thickness: quantity(thickness.dividedBy(inch), "in"),
    width: quantity(width.dividedBy(inch), "in"),
  }));
  return names.map((name) => dressedSize(name, seasoning)?.width.value).find((value) => value !== undefined);
}

/** Called as thick as is wanted, and wider: ripped down it measures no less than what is sold by the name that is wanted. */
function isWider(offer: LumberOffer, [thickness, width]: Sides): boolean {
  const [t, w] = sides(offer.section) as Sides;
  return sameName(t, thickness) && w.gt(width) && !sameName(w, width);
}

function isNominally(offer: LumberOffer, [thickness, width]: Sides): boolean {
  const [t, w] = sides(offer.section) as Sides;
  return sameName(t, thickness) && sameName(w, width);
}

const sorted = new WeakMap<LumberOffer["section"], readonly Decimal[]>();

/** Smaller side first; worked out once a section. */
function sides(section: LumberOffer["section"]): readonly Decimal[] {
  const known = sorted.get(section);
  if (known) return known;
  const { thickness, width } = section;
  const found = thickness.value.lte(width.value) ? [thickness.value, width.value] : [width.value, thickness.value];
  sorted.set(section, found);
  return found;
}

/** What no stick of is long enough comes after all that is. */
function tooShort(offer: LumberOffer, length: Decimal | undefined): 0 | 1 {
  const lengths = length ? lengthsOf(offer) : [];
  return length && lengths.length > 0 && lengths.every(({ value }) => value.lt(length)) ? 1 : 0;
}

function rankOf(offer: LumberOffer, group: WantedGroup, wanted: Sides): Rank {
  const { rules, role } = group;
  const treated = offer.treatment !== "none";
  const woodServes = rules.species.length === 0 || rules.species.some((wood) => servesAs(offer.species, wood));
  return [
    isNominally(offer, wanted) ? 0 : isWider(offer, wanted) ? 1 : inFact(offer, wanted) ? 2 : 3,
    (role === "post" ? treated || lasts(offer.species) : !treated) ? 0 : 1,
    rules.structural && !offer.gradeMarked ? 1 : 0,
    woodServes ? 0 : 1,
    (offer.surface === "dressed") === (rules.surface === "dressed") || rules.surface === "rough" ? 0 : 1,
  ];
}

function compare(a: Rank, b: Rank): number {
  const at = a.findIndex((figure, i) => figure !== b[i]);
  return at < 0 ? 0 : (a[at] as number) - (b[at] as number);
}

function differencesOf(
  {
    offer,
    group,
    wanted,
    ripped,
  }: {
    readonly offer: LumberOffer;
    readonly group: PieceGroup;
    readonly wanted: Sides;
    readonly ripped: Ripped;
  },
  system: MeasureSystem,
): string[] {
  const size = ([thin = ZERO, wide = ZERO]: readonly Decimal[]) =>
    markedSection(lengthOf(thin), lengthOf(wide), system);
  const measured = sides(offer.actual);
  const said: string[] = [];
  const larger = largerSides(measured, wanted).length > 0;
  if (larger || !inFact(offer, wanted)) {
    const down =
      ripped.abreast > 1 ? ` and is ripped into ${ripped.abreast} of ${size(ripped.each)}` : " and is ripped down";
    said.push(`${size(wanted)} wanted, the bought piece measures ${size(measured)}${larger ? down : ""}`);
  }
  const { species } = group.rules;
  if (species.length > 0 && !species.some((wood) => servesAs(offer.species, wood))) {
    said.push(`${species.map(woodName).join(" or ")} wanted, ${woodName(offer.species)} sold`);
  }
  if (group.rules.structural && !offer.gradeMarked) said.push("bears no grade mark");
  return [...said, ...treatmentOf(offer, group), ...conditionOf(offer, group)];
}

/** Posts are wanted treated for the ground, or of a wood that lasts there; nothing else is wanted treated. */
function treatmentOf({ treatment, species }: LumberOffer, { role }: PieceGroup): string[] {
  if (role !== "post") return treatment === "none" ? [] : ["preservative-treated, where untreated would do"];
  if (treatment === "ground-contact") return [];
  if (treatment === "above-ground") return ["treated for use above the ground only"];
  return lasts(species)
    ? [`not preservative-treated: the heartwood of ${woodName(species)} resists decay, its sapwood does not`]
    : ["not preservative-treated, as posts are wanted"];
}

/** How it comes: planed or as sawn, dry or green. */
function conditionOf({ surface, seasoning }: LumberOffer, { rules }: PieceGroup): string[] {
  const faces =
    surface === rules.surface
      ? []
      : [surface === "rough" ? "dressed wanted, sold rough: you dress it" : "rough wanted, sold dressed"];
  if ((seasoning === "dry") === (rules.seasoning === "dried")) return faces;
  return [
    ...faces,
    seasoning === "green" ? "dried wanted, sold green: it shrinks as it dries" : "sold dry, where green would do",
  ];
}

const lengthOf = (millimetres: Decimal) => ({ value: millimetres, unit: unit("mm") });
