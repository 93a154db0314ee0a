/** Fuel, oil, wear, discs and current, each priced in its own unit; and the delivery of what is bought. */
import { BLADES } from "../../catalog/blades.js";
import { consumablePrice, servicePrice } from "../../catalog/look-up.js";
import type { Basis } from "../basis.js";
import { fuelAt } from "../effort/hauling.js";
import type { MillingCells } from "../effort/milling.js";
import { STAGE_OF_USE } from "../effort/used-in.js";
import { layLine, type ShoppingLine } from "../purchase/line.js";
import type { CutCells } from "../salvage/cut-cells.js";
import { type Cell, isNothing, number, type Operand, over, plus, sum, times } from "../sheet/expression.js";
import { plain } from "../sheet/sheet.js";
import type { FinishingCells } from "./finishing.js";
import { laySawyerCharge } from "./sawyer-charge.js";

type Item = Parameters<typeof consumablePrice>[1];

/** Work of a route that uses things up. */
export interface UsingWork {
  readonly milling: MillingCells | undefined;
  readonly cuts: CutCells | undefined;
  readonly finishing: FinishingCells;
  /** Lines that every route has. */
  readonly common: readonly ShoppingLine[];
}

/** Whether the lorry comes whichever way the lumber is had: with roofing, or with boards that every route buys. */
export const bringsRoofing = (common: readonly ShoppingLine[]): boolean =>
  common.some(({ department }) => department === "coverings" || department === "lumber");

/** Lays a route's lines of what is used up. */
export function layConsumables(
  basis: Basis,
  key: string,
  { milling, finishing, cuts, common }: UsingWork,
): ShoppingLine[] {
  const { sheet, assumed } = basis;
  const line = (item: Item, label: string, used: Cell, name: string = item): ShoppingLine =>
    layUsed(basis, { name: `${key}.use.${name}`, item, label }, used);
  const used: LayUse = (item, [label, words], amount, display = "") =>
    line(item, label, sheet.lay(`${key}.use.${item}.quantity`, amount, { label: words, display }));
  const atMachines = over(
    // The table saw in the yard draws as well.
    plus(finishing.dress, finishing.dressByHand, finishing.sand, ...(milling ? [milling.stages.edge] : [])),
    number("1 people"),
  );
  return [
    used(
      "sanding-discs",
      ["Sanding discs, wear", "discs worn down, in parts of one"],
      over(finishing.sanded, assumed.cell("sand.perDisc")),
    ),
    used("electricity", ["Electricity", "drawn in the shop"], times(atMachines, assumed.cell("shop.power")), "kWh"),
    ...(milling
      ? [
          ...(basis.sawyer && cuts
            ? laySawyerCharge(basis, key, { milling, cuts }, basis.sawyer)
            : layMillWear(basis, milling, line, used)),
        ]
      : []),
    ...layKnives(basis, finishing, used),
    ...layHaulingFuel(basis, key, { milling, finishing }, line),
    ...((finishing.buysLumber || bringsRoofing(common)) && basis.request.shop?.lumber !== "fetched"
      ? [layDelivery(basis, key, finishing.buysLumber)]
      : []),
  ];
}

/** What is used up in parts of one, or comes out of the wall. */
const SHARES: ReadonlySet<Item> = new Set([
  ...(["sanding-discs", "chain", "band", "circular-blade", "files", "grinding-wheel"] as const),
  ...(["planer-knife-sharpening", "planer-knives", "electricity"] as const),
]);

function layUsed(
  { pricing, catalog }: Basis,
  { name, item, label }: { readonly name: string; readonly item: Item; readonly label: string },
  used: Cell,
): ShoppingLine {
  const stage = STAGE_OF_USE[name.slice(name.lastIndexOf(".") + 1)];
  const line = {
    name,
    department: "consumables",
    label,
    stage,
    share: SHARES.has(item),
  } as const;
  return layLine(pricing, line, used, consumablePrice(catalog, item), item);
}

type LayLine = (item: Item, label: string, used: Cell, name?: string) => ShoppingLine;
/** @param told - Label of the line, and of its quantity. */
type LayUse = (item: Item, told: readonly [string, string], amount: Operand, display?: string) => ShoppingLine;

/** What the user sharpens takes hours, and files or wheels; what a service sharpens costs money. */
function layMillWear({ mill, assumed }: Basis, milling: MillingCells, line: LayLine, use: LayUse): ShoppingLine[] {
  const { item, worn, plural, service, tool } = BLADES[mill.blade];
  return [
    line("fuel", "Fuel", milling.fuel),
    ...(milling.twoStroke ? [line("two-stroke-oil", "Two-stroke oil", milling.twoStroke)] : []),
    ...(milling.barOil ? [line("bar-oil", "Bar oil", milling.barOil)] : []),
    line(item, worn, milling.blades),
    mill.sharpening === "service"
      ? line(service, `Sharpening of ${plural}`, milling.sharpenings)
      : use(tool.item, [tool.worn, "worn down, in parts of one"], over(milling.sharpenings, assumed.cell(tool.each))),
  ];
}

/** Sharpened so often, and then replaced; on whichever route the planer runs. */
function layKnives({ assumed, request }: Basis, { planed }: FinishingCells, use: LayUse): ShoppingLine[] {
  if (request.shop?.planer === "none" || isNothing(planed)) return [];
  const sharpenings = over(planed, assumed.cell("dress.perKnives"));
  return [
    use("planer-knife-sharpening", ["Sharpening of planer knives, wear", "sharpenings, in parts of one"], sharpenings),
    use(
      "planer-knives",
      ["Planer knives, wear", "sets worn out, in parts of one"],
      over(sharpenings, assumed.cell("dress.knifeLife")),
    ),
  ];
}

/** Of winch or tractor while logs come out and lumber is carried, and of the car that fetches lumber; each where it burns any. */
function layHaulingFuel(
  basis: Basis,
  key: string,
  { milling, finishing: { trips } }: Pick<UsingWork, "milling" | "finishing">,
  line: LayLine,
): ShoppingLine[] {
  const { sheet, assumed, mill, units } = basis;
  const burnt = (name: string, label: string, of: readonly (Operand | undefined)[]): ShoppingLine[] => {
    const parts = of.flatMap((part) => part ?? []);
    if (parts.length === 0) return [];
    const quantity = sheet.lay(`${key}.use.${name}.quantity`, sum(parts), { label: "fuel", display: units.liquid });
    return [line("fuel", label, quantity, name)];
  };
  const people = assumed.cell(`getOut.${mill.getOut}.people`);
  return [
    ...burnt("hauling-fuel", "Fuel to get logs out and carry", [
      milling && fuelAt(basis, mill.getOut, milling.stages.getOut, people),
      milling && fuelAt(basis, mill.carry, milling.stages.carry),
    ]),
    ...burnt("fetching-fuel", "Fuel to fetch lumber", [trips && times(trips, assumed.cell("buy.fetchFuel"))]),
  ];
}

/** @param lumber - Whether it brings any: then it is paid when that is received. */
function layDelivery({ sheet, pricing, catalog }: Basis, key: string, lumber: boolean): ShoppingLine {
  const once = sheet.find("delivery.loads") ?? sheet.input("delivery.loads", plain(1), { label: "deliveries" });
  const line = {
    name: `${key}.use.delivery`,
    department: "services",
    label: "Delivery",
    stage: lumber ? "fetch" : undefined,
  } as const;
  return layLine(pricing, line, once, servicePrice(catalog, "delivery"), "delivery");
}
