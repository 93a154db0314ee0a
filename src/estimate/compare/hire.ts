/** Machines on the terms on which they are had: hired by the day, bought for a share of their use, or paid for already. */
import { equipmentOffer } from "../../catalog/look-up.js";
import type { Price } from "../../catalog/offers/price.js";
import type { EquipmentItem } from "../../catalog/offers/supplies.js";
import { type QuantityText, toQuantity } from "../../catalog/reading.js";
import type { Basis } from "../basis.js";
import type { MillingCells } from "../effort/milling.js";
import { peopleAt, stageOf } from "../effort/room.js";
import { STAGE_OF_MACHINE } from "../effort/used-in.js";
import { amountOf, layLine, priceCell, type ShoppingLine } from "../purchase/line.js";
import type { CarryMeans } from "../request/shop.js";
import { type Cell, greatest, isNothing, minus, number, over, roundUp, sum, times, when } from "../sheet/expression.js";
import { plain } from "../sheet/sheet.js";

/** Stages at which a machine is at work, by the last part of their cells' names; the mill runs by its own clock. */
const AT_WORK: Readonly<Record<Exclude<EquipmentItem, MillItem>, readonly string[]>> = {
  winch: ["getOut", "carry"],
  tractor: ["getOut", "carry"],
  trailer: ["getOut", "carry", "fetch"],
  planer: ["dress"],
  jointer: ["dress"],
  "table-saw": ["edge", "dress"],
  "track-saw": ["edge", "cut", "dressByHand"],
  sander: ["sand"],
  scaffold: ["brace", "raise", "rafters", "deck", "eaves", "roof", "trim"],
  lift: ["brace", "raise", "rafters", "deck", "eaves", "roof", "trim"],
  auger: ["dig"],
};

const MILLS_AND_SAWS = [
  "chainsaw-mill",
  "manual-band-mill",
  "hydraulic-band-mill",
  "swing-blade-mill",
  "chainsaw",
] as const satisfies readonly EquipmentItem[];
type MillItem = (typeof MILLS_AND_SAWS)[number];
/** Mills and their saws run by the clock of the mill. */
export const isMill = (item: EquipmentItem): item is MillItem => MILLS_AND_SAWS.some((mill) => mill === item);

/** Which means of carrying also brings the pieces to the site. */
const MOVES: Partial<Record<EquipmentItem, CarryMeans>> = { winch: "winch", tractor: "tractor", trailer: "tractor" };

/** A route's own stages with the common ones. */
export interface HireStages {
  readonly stages: readonly Cell[];
  readonly milling: MillingCells | undefined;
  /** Those of them to which helpers come. */
  readonly raising: readonly Cell[];
}

/**
 * Machines hired by the day or bought for a share of their use: on each route as long as the stages last at which they are
 * at work, and nothing where there are none.
 */
export function layHire(basis: Basis, key: string, work: HireStages): ShoppingLine[] {
  const { sheet, request, pricing, catalog, labor } = basis;
  return (request.shop?.equipment ?? []).flatMap(({ item, terms, share }): ShoppingLine[] => {
    // The sawyer brings the mill.
    if (terms === "paid" || (basis.sawyer && isMill(item))) return [];
    const elapsed = hoursOf(basis, item, work);
    const name = `${key}.hire.${item}`;
    const hours = elapsed && sheet.lay(`${name}.hours`, elapsed, { label: "hours at work", display: "h" });
    if (!hours) return [];
    const offer = equipmentOffer(catalog, item);
    const label = `${terms === "hired" ? "Hire" : "Purchase less resale"}: ${"label" in offer ? offer.label : item}`;
    const none: Price = { kind: "unpriced", at: "", add: "add" in offer ? offer.add : `Add a price for ${item}.` };
    const stage = STAGE_OF_MACHINE[item];
    if (terms === "bought")
      return [{ ...layOwned(basis, { name, label, item, hours, share, offer, none }), stage, share: true }];
    const least =
      "minimumDays" in offer
        ? (sheet.find(`price.${item}.minimumDays`) ??
          sheet.catalog(`price.${item}.minimumDays`, offer.minimumDays, { label: "shortest hire" }))
        : number("1 day");
    const whole = greatest(roundUp(over(hours, labor.hoursPerDay), "day"), least);
    const days = sheet.lay(`${name}.days`, when(hours, "above", number("0 h"), whole, number("0 day")), {
      label: "days hired",
      display: "day",
    });
    const price = "hirePerDay" in offer ? offer.hirePerDay : none;
    return [layLine(pricing, { name, department: "equipment", label, stage }, days, price, `${item}.hire`)];
  });
}

/** Hours by the clock for which a machine is at work: helpers are there for the raising; undefined where it has no stage. */
function hoursOf(basis: Basis, item: EquipmentItem, { stages, milling, raising }: HireStages) {
  if (isMill(item)) return milling?.millHours;
  const { mill } = basis;
  const moving = MOVES[item] === mill.carry ? ["move"] : [];
  const names = new Set([...AT_WORK[item], ...moving]);
  const at = stages.filter((cell) => names.has(stageOf(cell)) && !isNothing(cell));
  const parts = at.map((cell) => over(cell, peopleAt(basis, stageOf(cell), raising.includes(cell))));
  return parts.length > 0 ? sum(parts) : undefined;
}

/** A machine that is bought, and sold again. */
interface OwnedMachine {
  readonly name: string;
  readonly label: string;
  readonly item: EquipmentItem;
  /** By the clock, at work on this route; none costs nothing. */
  readonly hours: Cell;
  /** Of its expected use; all of it where nothing is said. */
  readonly share: QuantityText | undefined;
  readonly offer: ReturnType<typeof equipmentOffer>;
  /** What to say where the catalog has no price. */
  readonly none: Price;
}

function layOwned(
  { sheet, pricing }: Basis,
  { name, label, item, hours, share, offer, none }: OwnedMachine,
): ShoppingLine {
  const expected =
    sheet.find(`shop.${item}.share`) ??
    sheet.input(`shop.${item}.share`, share === undefined ? plain(1) : toQuantity(share, "%"), {
      label: "share of its expected use",
      display: "%",
    });
  const use = sheet.lay(`${name}.use`, when(hours, "above", number("0 h"), expected, number("0")), {
    label: "share of its expected use, where it is used",
    display: "%",
  });
  const price = "purchase" in offer ? offer.purchase : none;
  const cell = priceCell(pricing, `${item}.purchase`, price, label);
  if (!cell || !("purchase" in offer))
    return { name, department: "equipment", label, quantity: use, add: price.kind === "unpriced" ? price.add : "" };
  const resale =
    offer.resale &&
    (sheet.find(`price.${item}.resale`) ?? sheet.catalog(`price.${item}.resale`, offer.resale, { label: "resale" }));
  sheet.title(name, label);
  const loss = resale ? sheet.lay(`${name}.loss`, minus(cell, resale), { label: "purchase less resale" }) : cell;
  const amount = sheet.lay(`${name}.amount`, amountOf(pricing, times(loss, use)), { label: "amount" });
  const paid = { measure: use, price: loss, level: pricing.level };
  return { name, department: "equipment", label, quantity: use, price: loss, amount, paid };
}
