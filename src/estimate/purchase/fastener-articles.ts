/**
 * Which fastener on offer serves which needs. Needs that take the same offer, cut alike, are one article: its packs are
 * bought for their sum.
 */
import { type CorrosionClassId, corrosionClassIds, type FastenerKind } from "../../catalog/fasteners.js";
import type { FastenerOffer } from "../../catalog/offers/fastener.js";
import type { PriceCatalog } from "../../catalog/price-catalog.js";
import type { Section } from "../../catalog/reading.js";
import type { Need, NeedItem } from "../need.js";
import { Decimal, decimal, ZERO } from "../quantity/decimal.js";
import { inUnit, quantity } from "../quantity/quantity.js";
import { pretty } from "../quantity/text.js";
import { wholeNumber } from "../quantity/whole.js";
import type { Cell } from "../sheet/expression.js";
import type { Sheet } from "../sheet/sheet.js";
import type { Pricing } from "./line.js";
import { leastCost, packLabel, type SizedPack } from "./pack-lines.js";
import { dearer } from "./price-order.js";
import { NEAR } from "./substitution.js";

type Item = Extract<NeedItem, { kind: "fastener" }>;

/** A need of fasteners. */
export type FastenerNeed = Need & { readonly item: Item };

/** Needs that one offer serves; without an offer a need by itself that nothing serves. */
export interface Article {
  readonly offer: FastenerOffer | undefined;
  /** Wanted pieces that are cut from one bought piece. */
  readonly each: number;
  readonly needs: readonly FastenerNeed[];
}

/** How well a class lasts. */
export const rank = (id: string): number => corrosionClassIds.indexOf(id as CorrosionClassId);

/** The article of each need of fasteners, in one object where needs share it. */
export function articlesFor(
  { sheet, minorDigits }: Pricing,
  catalog: PriceCatalog,
  needs: readonly Need[],
): ReadonlyMap<Need, Article> {
  const fasteners = needs.filter((need): need is FastenerNeed => need.item.kind === "fastener");
  const found = fasteners.map((need) => ({ need, serving: servingBest(sheet, catalog, need.item) }));
  const alike = grouped(found, ({ need, serving: { offers } }) =>
    offers.length === 0 ? need.name : offers.map(({ name }) => name).join(" "),
  );
  const chosen = alike.flatMap((some) => {
    const offer = cheapestFor(sheet, some, minorDigits);
    return some.map(({ need, serving: { length } }) => ({ need, offer, each: offer ? cutFrom(offer, length) : 1 }));
  });
  const articles = grouped(chosen, ({ need, offer, each }) => (offer ? `${offer.name} ${each}` : ` ${need.name}`));
  return new Map(
    articles.flatMap((some) => {
      const { offer, each } = some[0] as (typeof some)[number];
      const article: Article = { offer, each, needs: some.map(({ need }) => need) };
      return article.needs.map((need) => [need, article] as const);
    }),
  );
}

function grouped<T>(list: readonly T[], key: (one: T) => string): T[][] {
  const groups = new Map<string, T[]>();
  for (const one of list) groups.set(key(one), [...(groups.get(key(one)) ?? []), one]);
  return [...groups.values()];
}

interface Serving {
  /** By name. */
  readonly offers: readonly FastenerOffer[];
  /** What is wanted, where length matters. */
  readonly length: Decimal | undefined;
}

/** A nail or screw this many times as long as is wanted no longer serves: it comes through. Assumption. */
const TOO_LONG = decimal("1.5");

/** Whether an offer may stand in for a length. A bolt that is too long stands out beyond its nut, and a rod is cut. */
function servesLength({ kind, length: sold }: FastenerOffer, wanted: Decimal | undefined): boolean {
  if (!wanted || !sold) return true;
  const driven = /(nail|screw)$/.test(kind);
  return sold.value.gte(wanted) && (!driven || sold.value.lte(wanted.times(TOO_LONG)));
}

/** Offers long and lasting enough. A longer bolt than asked for is waste and sticks out: of them only the shortest. */
function servingBest(sheet: Sheet, { fasteners }: PriceCatalog, item: Item): Serving {
  const value = (cell: Cell | undefined) => cell && sheet.decidePositive(cell);
  const [diameter, length] = [value(item.diameter), value(item.length)];
  const fits = item.fits?.map((cell) => sheet.decide(cell));
  const serving = fasteners.filter(
    (offer) =>
      offer.kind === (item.fastener as FastenerKind) &&
      rank(offer.finish) >= rank(item.corrosion) &&
      (!diameter || !offer.diameter || offer.diameter.value.eq(diameter)) &&
      servesLength(offer, length) &&
      (!offer.fits || fitsPost(offer.fits, fits)),
  );
  const long = ({ length: of }: FastenerOffer): Decimal => of?.value ?? ZERO;
  const least = serving.reduce<Decimal | undefined>((low, one) => (low?.lte(long(one)) ? low : long(one)), undefined);
  const shortest = serving.filter((one) => least && long(one).eq(least));
  return { offers: shortest.sort((a, b) => (a.name < b.name ? -1 : 1)), length };
}

/** The offer that costs least for all these needs together; of equals the first by name, what has no price last. */
function cheapestFor(
  sheet: Sheet,
  some: readonly { readonly need: FastenerNeed; readonly serving: Serving }[],
  minorDigits: number,
): FastenerOffer | undefined {
  const { offers, length } = (some[0] as (typeof some)[number]).serving;
  if (offers.length < 2) return offers[0];
  const wanted = some.reduce((all, { need }) => all.plus(sheet.decide(need.quantity)), ZERO);
  const costs = offers.map((offer) => ({
    offer,
    cost: leastCost(packsOf(offer, cutFrom(offer, length)), quantity(wanted, ""), minorDigits),
  }));
  return costs.sort((a, b) => dearer(a.cost, b.cost))[0]?.offer;
}

/** What one costs at the least: of the offers that serve, in the pack that is cheapest by the piece; undefined without a price. */
export function leastEach(sheet: Sheet, catalog: PriceCatalog, item: Item): Decimal | undefined {
  const { offers, length } = servingBest(sheet, catalog, item);
  const rates = offers.flatMap((offer) =>
    packsOf(offer, cutFrom(offer, length)).flatMap(({ holds, price }) =>
      price.kind === "priced" ? [price.amount.value.dividedBy(holds.value)] : [],
    ),
  );
  return rates.length > 0 ? Decimal.min(...rates) : undefined;
}

/** By their offer, and by how many pieces are cut from one: the same packs are always the same array. */
const packed = new WeakMap<FastenerOffer, Map<number, readonly SizedPack[]>>();

/** Packs of an offer, in pieces as they are wanted. What is sold by weight says so: its count is not sure to the piece. */
export function packsOf(offer: FastenerOffer, each: number): readonly SizedPack[] {
  const known = packed.get(offer) ?? new Map<number, readonly SizedPack[]>();
  packed.set(offer, known);
  const packs =
    known.get(each) ??
    offer.packs.map(({ pieces, weight, from, price }) => {
      const written = weight && (weight.written ?? weight.unit);
      const label = written
        ? `${inUnit(weight, written).toDecimalPlaces(3).toFixed()} ${pretty(written)} box, about ${pieces}`
        : packLabel(quantity(pieces, ""));
      const bulk = from === undefined ? {} : { from };
      return { label, holds: quantity(pieces * each, ""), price, ...bulk };
    });
  known.set(each, packs);
  return packs;
}

/** Threaded rod is bought long and cut to length; everything else is used as it comes. */
function cutFrom(offer: FastenerOffer, length: Decimal | undefined): number {
  if (offer.kind !== "threaded-rod" || !length || !offer.length) return 1;
  return Math.max(1, wholeNumber(offer.length.value.dividedToIntegerBy(length)));
}

/** A base takes a post of just its size, either way round; what differs by less than half a millimetre is the same to the trade. */
function fitsPost(offered: Section, wanted: readonly Decimal[] | undefined): boolean {
  const sides = [offered.thickness.value, offered.width.value].sort((a, b) => a.cmp(b));
  const post = [...(wanted ?? [])].sort((a, b) => a.cmp(b));
  return (
    post.length === 2 &&
    sides.every((side, i) =>
      side
        .minus(post[i] as Decimal)
        .abs()
        .lte(NEAR),
    )
  );
}
