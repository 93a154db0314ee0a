/** What is bought of fasteners: equal ones are pooled over all connections, before spares are added and packs are chosen. */
import { type CorrosionClassId, FASTENERS, type FastenerKind } from "../../catalog/fasteners.js";
import type { ItemOf, Need } from "../need.js";
import { markedSmall } from "../quantity/text.js";
import { capital } from "../quantity/words.js";
import type { Assumed } from "../request/assumed.js";
import type { Defaults } from "../request/given.js";
import { type Cell, number, type Operand, plus, roundUp, sum, times } from "../sheet/expression.js";
import type { Sheet } from "../sheet/sheet.js";

/** Fasteners of one sort at one connection. */
export interface Driven {
  readonly fastener: FastenerKind;
  readonly count: Operand;
  readonly diameter?: Cell;
  readonly length?: Cell;
  readonly corrosion: CorrosionClassId;
  /** Names of the piece groups that they join. */
  readonly joins: readonly string[];
}

/** What makes one sort. */
type Sort = Pick<Driven, "fastener" | "diameter" | "length" | "corrosion">;

/** Bought to the piece: nobody loses a post base. */
const NO_SPARES: ReadonlySet<FastenerKind> = new Set(["post-base", "joist-hanger", "rafter-tie", "angle-bracket"]);

/** Whether spares of it are ordered. */
export const hasSpares = (fastener: FastenerKind): boolean => !NO_SPARES.has(fastener);

/** Lays what to buy. @param under - What the names of its cells begin with: nothing, or a route's key and a dot. */
export function layFastenerNeeds(
  sheet: Sheet,
  driven: readonly Driven[],
  { assumed, defaults }: { readonly assumed: Assumed; readonly defaults: Defaults },
  under = "",
): Need[] {
  const pools = new Map<string, Driven[]>();
  for (const one of driven) {
    const key = sortOf(sheet, one);
    pools.set(key, [...(pools.get(key) ?? []), one]);
  }
  return [...pools.values()].map((all): Need => {
    const joins = [...new Set(all.flatMap((one) => one.joins))];
    const { fastener, diameter, length, corrosion } = all[0] as Driven;
    const size = sizeText(sheet, [diameter, length], defaults.system);
    const wanted = `fasteners.order.${[fastener, slug(size), corrosion].filter(Boolean).join("_")}`;
    const name = freeName(sheet, wanted, under);
    const what = [capital(FASTENERS[fastener].name), size].filter(Boolean).join(" ");
    const label = `${what}, ${corrosion.replaceAll("-", " ")}${corrosion === "stainless" ? "" : " or better"}`;
    const counts = all.map(({ count }) => count);
    const needed = counts.length === 1 ? (counts[0] as Operand) : sum(counts);
    const withSpares = times(needed, plus(number("1"), assumed.cell("fastener.spare")));
    const quantity = sheet.lay(`${under}${name}`, roundUp(hasSpares(fastener) ? withSpares : needed), {
      label: hasSpares(fastener) ? "to buy, spares included" : "to buy",
    });
    sheet.title(`${under}${name}`, label);
    return { name, label, item: itemOf(all[0] as Driven), quantity, joins };
  });
}

/** As the catalog is asked for it: what is told apart by the piece that it takes has both sides of that. */
export function itemOf({ fastener, diameter, length, corrosion }: Sort): ItemOf<"fastener"> {
  const sized =
    FASTENERS[fastener].size === "section" && diameter && length
      ? { fits: [diameter, length] as const }
      : { ...(diameter && { diameter }), ...(length && { length }) };
  return { kind: "fastener", fastener, ...sized, corrosion };
}

/** Two fasteners are of one sort when kind, sizes and class are the same. */
export function sortOf(sheet: Sheet, { fastener, diameter, length, corrosion }: Sort): string {
  const exact = (cell: Cell | undefined) => (cell ? sheet.decide(cell).toFixed() : "");
  return [fastener, exact(diameter), exact(length), corrosion].join(" ");
}

/** `1/2 × 7 in`; hundredths of an inch where a gauge has no sixteenths. */
function sizeText(sheet: Sheet, sides: readonly (Cell | undefined)[], system: Defaults["system"]): string {
  const unit = system === "metric" ? "mm" : "in";
  const texts = sides
    .filter((side) => side !== undefined)
    .map((side) => {
      const value = sheet.decideIn(side, unit);
      const isMarked = system === "metric" ? value.isInteger() : value.times(16).isInteger();
      return isMarked
        ? markedSmall({ value: sheet.decide(side), unit: side.unit }, system).replace(/ (?:in|mm)$/, "")
        : value.toDecimalPlaces(3).toFixed();
    });
  return texts.length === 0 ? "" : `${texts.join(" × ")} ${unit}`;
}

/** Two sizes may differ by less than their words show. */
function freeName(sheet: Sheet, wanted: string, under: string): string {
  let name = wanted;
  for (let i = 2; sheet.find(`${under}${name}`); i++) name = `${wanted}_${i}`;
  return name;
}

const slug = (size: string) =>
  size.replaceAll(" × ", "x").replaceAll("/", "-").replaceAll(".", "p").replaceAll(" ", "_");
