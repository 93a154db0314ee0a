/** Machines on the terms on which they are had: hired by the day, bought for a share of their use, or paid for already. */
import { equipmentOffer } from "../../catalog/look-up.js";
import type { Price } from "../../catalog/offers/price.js";
import type { EquipmentItem } from "../../catalog/offers/supplies.js";
import { type QuantityText, toQuantity } from "../../catalog/reading.js";
import type { Basis } from "../basis.js";
import type { MillingCells } from "../effort/milling.js";
import { amountOf, layLine, priceCell, type ShoppingLine } from "../purchase/line.js";
import { greatest, minus, number, over, plus, roundUp, times } from "../sheet/expression.js";
import { plain } from "../sheet/sheet.js";
import type { FinishingCells } from "./finishing.js";

/** Machines of the shop that run with the hours of dressing; all others run with the mill. */
const SHOP_MACHINES: ReadonlySet<EquipmentItem> = new Set(["planer", "jointer", "table-saw", "sander"]);

/** Machines hired by the day or bought for a share of their use; a route without milling needs none of them. */
export function layHire(basis: Basis, key: string, milling: MillingCells, finishing: FinishingCells): ShoppingLine[] {
  const { sheet, request, pricing, catalog, labor } = basis;
  return (request.shop?.equipment ?? []).flatMap(({ item, terms, share }): ShoppingLine[] => {
    if (terms === "paid") return [];
    const offer = equipmentOffer(catalog, item);
    const name = `${key}.hire.${item}`;
    const label = `${terms === "hired" ? "Hire" : "Purchase less resale"}: ${"label" in offer ? offer.label : item}`;
    const none: Price = { kind: "unpriced", at: "", add: "add" in offer ? offer.add : `Add a price for ${item}.` };
    if (terms === "bought") return [layOwned(basis, name, label, item, share, offer, none)];
    const elapsed = SHOP_MACHINES.has(item)
      ? over(plus(finishing.dress, finishing.sand), labor.crew)
      : milling.millHours;
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
