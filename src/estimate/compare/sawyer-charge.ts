/** What a hired sawyer costs: the set-up, the hours or the board feet, and what is missing to the least charge. */
import { servicePrice } from "../../catalog/look-up.js";
import type { Basis } from "../basis.js";
import type { MillingCells } from "../effort/milling.js";
import { amountsOf, layLine, type ShoppingLine } from "../purchase/line.js";
import type { CutCells } from "../salvage/cut-cells.js";
import type { SawyerTerms } from "../salvage/sawyer.js";
import { greatest, minus, number, roundMoney } from "../sheet/expression.js";
import { plain } from "../sheet/sheet.js";

/** Lays the lines of a route that a hired sawyer mills; board feet are those of the rough lumber, as it measures. */
export function laySawyerCharge(
  basis: Basis,
  key: string,
  { milling, cuts }: { readonly milling: MillingCells; readonly cuts: CutCells },
  { charge, minimum }: SawyerTerms,
): ShoppingLine[] {
  const { sheet, pricing, catalog, units } = basis;
  const name = (item: string) => `${key}.use.${item}`;
  const line = (item: string, label: string) =>
    ({ name: name(item), department: "services", label, stage: "saw" }) as const;
  const once = sheet.find("sawyer.comes") ?? sheet.input("sawyer.comes", plain(1), { label: "set-ups of the sawyer" });
  const setUp = servicePrice(catalog, "milling-set-up");
  const item = charge === "hour" ? "milling-per-hour" : "milling-per-board-foot";
  const quantity =
    charge === "hour"
      ? milling.millHours
      : sheet.lay(`${name(item)}.quantity`, cuts.pieceVolume, { label: "rough lumber sawn", display: units.lumber });
  const lines = [
    layLine(pricing, line("milling-set-up", "Hired sawyer, set-up"), once, setUp, "milling-set-up"),
    layLine(pricing, line(item, "Hired sawyer, sawing"), quantity, servicePrice(catalog, item), item),
  ];
  if (!minimum) return lines;
  const missing = greatest(minus(minimum, amountsOf(pricing, lines)), number(`0 ${pricing.currency}`));
  const least = `${name("milling-minimum")}`;
  sheet.title(least, "Hired sawyer, up to the least charge");
  const amount = sheet.lay(`${least}.amount`, roundMoney(missing, pricing.minorDigits), { label: "amount" });
  return [...lines, { ...line("milling-minimum", "Hired sawyer, up to the least charge"), quantity: once, amount }];
}
