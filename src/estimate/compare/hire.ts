/** Machines on the terms on which they are had: hired by the day, bought for a share of their use, or paid for already. */
import { equipmentOffer } from "../../catalog/look-up.js";
import type { Price } from "../../catalog/offers/price.js";
import type { EquipmentItem } from "../../catalog/offers/supplies.js";
import { type QuantityText, toQuantity } from "../../catalog/reading.js";
import type { Basis } from "../basis.js";
import type { SiteHours } from "../effort/building.js";
import type { MillingCells } from "../effort/milling.js";
import { amountOf, layLine, priceCell, type ShoppingLine } from "../purchase/line.js";
import { greatest, minus, number, type Operand, over, plus, roundUp, sum, sumOr, times } from "../sheet/expression.js";
import { plain } from "../sheet/sheet.js";
import type { FinishingCells } from "./finishing.js";

/** What a machine is hired for: the hours for which it runs decide the days. */
type Job = "mill" | "logs" | "shop" | "aloft" | "digging";

const JOBS: Readonly<Record<EquipmentItem, Job>> = {
  "chainsaw-mill": "mill",
  "manual-band-mill": "mill",
  "hydraulic-band-mill": "mill",
  "swing-blade-mill": "mill",
  chainsaw: "mill",
  winch: "logs",
  trailer: "logs",
  planer: "shop",
  jointer: "shop",
  "table-saw": "shop",
  "track-saw": "shop",
  sander: "shop",
  scaffold: "aloft",
  lift: "aloft",
  auger: "digging",
};

/**
 * Machines hired by the day or bought for a share of their use. Without milling no route needs any but those of the
 * building site: from raising to the last trim for what one stands on, while holes are dug for the auger.
 */
export function layHire(
  basis: Basis,
  key: string,
  milling: MillingCells | undefined,
  finishing: FinishingCells,
  site: SiteHours,
): ShoppingLine[] {
  const { sheet, request, pricing, catalog, labor } = basis;
  return (request.shop?.equipment ?? []).flatMap(({ item, terms, share }): ShoppingLine[] => {
    const elapsed = hoursOf(basis, JOBS[item], milling, finishing, site);
    if (terms === "paid" || !elapsed) return [];
    // The sawyer brings the mill.
    if (basis.sawyer && JOBS[item] === "mill") return [];
    const offer = equipmentOffer(catalog, item);
    const name = `${key}.hire.${item}`;
    const label = `${terms === "hired" ? "Hire" : "Purchase less resale"}: ${"label" in offer ? offer.label : item}`;
    const none: Price = { kind: "unpriced", at: "", add: "add" in offer ? offer.add : `Add a price for ${item}.` };
    if (terms === "bought") return [layOwned(basis, name, label, item, share, offer, none)];
    const least =
      "minimumDays" in offer
        ? (sheet.find(`price.${item}.minimumDays`) ??
          sheet.catalog(`price.${item}.minimumDays`, offer.minimumDays, { label: "shortest hire" }))
        : number("1 day");
    const days = sheet.lay(`${name}.days`, greatest(roundUp(over(elapsed, labor.hoursPerDay), "day"), least), {
      label: "days hired",
      display: "day",
    });
    const price = "hirePerDay" in offer ? offer.hirePerDay : none;
    return [layLine(pricing, { name, department: "equipment", label }, days, price, `${item}.hire`)];
  });
}

/** Hours by the clock for which a machine is at work; undefined where the route has no such work. */
function hoursOf(
  { labor }: Basis,
  job: Job,
  milling: MillingCells | undefined,
  { dress, sand }: FinishingCells,
  site: SiteHours,
): Operand | undefined {
  if (job === "digging") return site.digging.length > 0 ? over(sum(site.digging), labor.crew) : undefined;
  if (job === "aloft") {
    const together = over(sumOr(site.raising, "person-h"), plus(labor.crew, labor.helpers));
    return plus(together, over(sumOr(site.aloft, "person-h"), labor.crew));
  }
  if (!milling) return undefined;
  if (job === "mill") return milling.millHours;
  return over(job === "shop" ? plus(dress, sand) : plus(milling.stages.getOut, milling.stages.carry), labor.crew);
}

function layOwned(
  basis: Basis,
  name: string,
  label: string,
  item: EquipmentItem,
  share: QuantityText | undefined,
  offer: ReturnType<typeof equipmentOffer>,
  none: Price,
): ShoppingLine {
  const { sheet, pricing } = basis;
  const use =
    sheet.find(`shop.${item}.share`) ??
    sheet.input(`shop.${item}.share`, share === undefined ? plain(1) : toQuantity(share, "%"), {
      label: "share of its expected use",
      display: "%",
    });
  const price = "purchase" in offer ? offer.purchase : none;
  const cell = priceCell(pricing, `${item}.purchase`, price, label);
  if (!cell || !("purchase" in offer))
    return { name, department: "equipment", label, quantity: use, add: price.kind === "unpriced" ? price.add : "" };
  const resale =
    offer.resale &&
    (sheet.find(`price.${item}.resale`) ?? sheet.catalog(`price.${item}.resale`, offer.resale, { label: "resale" }));
  const loss = resale ? minus(cell, resale) : cell;
  sheet.title(name, label);
  const amount = sheet.lay(`${name}.amount`, amountOf(pricing, times(loss, use)), { label: "amount" });
  return { name, department: "equipment", label, quantity: use, price: cell, amount };
}
