/**
 * One route from nothing to finished lumber: some groups milled, the others bought. Every route is laid from this one
 * template, so that all-milled, all-bought, the mix and each leave-one-out are the same arithmetic on other plans.
 */

import { consumablePrice, equipmentOffer, servicePrice } from "../../catalog/look-up.js";
import { pieceCost } from "../../catalog/offers/lumber.js";
import type { Price } from "../../catalog/offers/price.js";
import type { EquipmentItem } from "../../catalog/offers/supplies.js";
import { type QuantityText, toQuantity } from "../../catalog/reading.js";
import type { Basis, GroupBasis } from "../basis.js";
import { layMilling, type MillingCells } from "../effort/milling.js";
import { amountOf, amountsOf, layLine, layTaxes, priceCell, type ShoppingLine } from "../purchase/line.js";
import { type BoughtPieces, type StockQuestion, sticksOf, uncut } from "../purchase/lumber.js";
import type { StockCut } from "../purchase/stock/problem.js";
import { unit } from "../quantity/unit.js";
import { type CutCells, layCuts, type MeasuredPlan } from "../salvage/cut-cells.js";
import {
  type Cell,
  greatest,
  minus,
  number,
  type Operand,
  over,
  type PlanProof,
  plus,
  roundUp,
  sumOr,
  times,
} from "../sheet/expression.js";
import { plain } from "../sheet/sheet.js";

/** The plans behind one route. */
export interface RoutePlan {
  readonly key: string;
  readonly label: string;
  readonly milled: ReadonlySet<string>;
  readonly sawing: (MeasuredPlan & { readonly proof: PlanProof }) | undefined;
  readonly bought: readonly BoughtPieces[];
  readonly stock: readonly {
    readonly question: StockQuestion;
    readonly plan: readonly StockCut[];
    readonly proof: PlanProof;
  }[];
  /** Groups of which pieces must be bought but nothing serves. */
  readonly unsold: readonly { readonly group: GroupBasis; readonly count: number; readonly add: string }[];
}

/** Costs and hours that every route has. */
export interface CommonCells {
  readonly lines: readonly ShoppingLine[];
  /** Person-hours of stages that both routes share. */
  readonly hours: Cell;
  /** The user's own lines of money, and of person-hours. */
  readonly own: readonly Cell[];
  readonly ownHours: readonly Cell[];
}

export interface RouteCells {
  readonly plan: RoutePlan;
  readonly cuts: CutCells | undefined;
  readonly milling: MillingCells | undefined;
  /** Person-hours by stage, own to the route, in the order of the work. */
  readonly stages: readonly Cell[];
  /** Own and common person-hours. */
  readonly hours: Cell;
  /** Elapsed with the crew. */
  readonly elapsed: Cell;
  readonly lines: readonly ShoppingLine[];
  readonly taxes: readonly Cell[];
  /** Bought lumber without tax. */
  readonly lumber: Cell;
  readonly cash: Cell;
  /** Cash and hours at the value of an hour. */
  readonly total: Cell;
  /** How many lines have no price, common ones included. */
  readonly unpriced: number;
}

/** Lays one route under its key. */
export function layRoute(basis: Basis, plan: RoutePlan, common: CommonCells): RouteCells {
  const { sheet, pricing, labor } = basis;
  const { key } = plan;
  sheet.title(key, plan.label);
  const cuts = plan.sawing && layCuts(basis, key, plan.sawing, plan.sawing.proof);
  const milling = cuts && layMilling(sheet, key, cuts, basis.mill, basis.assumed, basis.units);
  const lumberLines = layLumber(basis, plan);
  const finishing = layFinishing(basis, plan, lumberLines);
  const stages = [...(milling ? Object.values(milling.stages) : []), ...finishing.stages];
  const own = sheet.lay(`${key}.hours.own`, sumOr(stages, "person-h"), {
    label: "hours of this route alone",
    display: "person-h",
  });
  const hours = sheet.lay(`${key}.hours.total`, plus(own, common.hours), {
    label: "hours in all",
    display: "person-h",
  });
  const elapsed = layElapsed(basis, key, hours, milling);
  const lines = [
    ...lumberLines,
    ...layConsumables(basis, plan, milling, finishing),
    ...layHire(basis, plan, milling, finishing),
  ];
  const all = [...common.lines, ...lines];
  const lumber = sheet.lay(`${key}.lumber`, amountsOf(pricing, lumberLines), { label: "bought lumber, before tax" });
  const goods = sheet.lay(`${key}.goods`, amountsOf(pricing, all), { label: "all lines, before tax" });
  const taxes = layTaxes(pricing, key, basis.catalog.taxes, all);
  const forgone = logValue(basis, plan);
  const cash = sheet.lay(`${key}.cash`, plus(goods, ...taxes, ...(forgone ? [forgone] : []), ...common.own), {
    label: "cash",
  });
  const total = sheet.lay(`${key}.total`, plus(cash, times(hours, labor.valueOfHour)), {
    label: "cash and hours together",
  });
  const unpriced = all.filter(({ amount }) => !amount).length;
  return { plan, cuts, milling, stages, hours, elapsed, lines, taxes, lumber, cash, total, unpriced };
}

/** The mill runs at its own pace with its own people; everything else is shared by the crew. */
function layElapsed(basis: Basis, key: string, hours: Cell, milling: MillingCells | undefined): Cell {
  const { sheet, labor, mill } = basis;
  const formula = milling
    ? plus(milling.millHours, over(minus(hours, times(milling.millHours, mill.crew)), labor.crew))
    : over(hours, labor.crew);
  return sheet.lay(`${key}.elapsed`, formula, { label: "elapsed with the crew", display: "h" });
}

/** Sticks of each offer and length, as paid for; pieces that nothing serves are lines without a price. */
function layLumber(basis: Basis, plan: RoutePlan): ShoppingLine[] {
  const { sheet, pricing } = basis;
  const lines = plan.stock.flatMap(({ question, plan: cuts, proof }) => {
    const { offer, problem } = question;
    const sticks = [...sticksOf(problem, cuts)].map(([length, count]): ShoppingLine => {
      const slug = length.replaceAll(/[^0-9A-Za-z]+/g, "_").replaceAll(/^_|_$/g, "");
      const name = `${plan.key}.buy.${offer.name}-${slug}`;
      const planned = sheet.planned(`${name}.planned`, plain(count), proof, { label: "by the stock plan" });
      const spare = roundUp(minus(times(planned, plus(number("1"), basis.assumed.cell("buy.wastage"))), number("1/2")));
      const quantity = sheet.lay(`${name}.sticks`, greatest(spare, planned), { label: "stock lengths to buy" });
      const millimetres = question.lengths.get(length);
      if (!millimetres) throw new Error(`the stock plan buys a length that is not on offer: ${length}`);
      const price = pieceCost(offer, { value: millimetres, unit: unit("mm") });
      return layLine(
        pricing,
        { name, department: "lumber", label: `${offer.label}, ${length}` },
        quantity,
        price,
        `${offer.name}-${slug}`,
      );
    });
    const long = [...uncut(problem, cuts)].map(([group, count]): ShoppingLine => {
      const name = `${plan.key}.buy.${offer.name}-too_long-${group}`;
      const quantity = sheet.planned(`${name}.pieces`, plain(count), proof, {
        label: "pieces that no stock length holds",
      });
      const add = `Add a longer stock length of ${offer.label}.`;
      return { name, department: "lumber", label: `${offer.label}: too short for ${group}`, quantity, add };
    });
    return [...sticks, ...long];
  });
  const unsold = plan.unsold.map(({ group, count, add }): ShoppingLine => {
    const name = `${plan.key}.buy.unsold-${group.group.name}`;
    const quantity = sheet.input(`${name}.pieces`, plain(count), { label: "pieces" });
    return { name, department: "lumber", label: group.group.label, quantity, add };
  });
  return [...lines, ...unsold];
}

interface Finishing {
  readonly stages: readonly Cell[];
  /** Faces that are planed, and faces that are sanded at the milled pieces' rate. */
  readonly planed: Cell;
  readonly sanded: Cell;
  readonly dress: Cell;
  readonly sand: Cell;
  readonly buysLumber: boolean;
}

/** Dressing and sanding of milled pieces; fetching, sorting and light sanding of bought ones. */
function layFinishing(basis: Basis, plan: RoutePlan, lumberLines: readonly ShoppingLine[]): Finishing {
  const { sheet, assumed, units } = basis;
  const { key } = plan;
  const pace = assumed.cell("pace");
  const split = basis.groups.map((one) => ({
    one,
    milled: milledPieces(basis, plan, one),
    dressed: one.group.rules.surface === "dressed",
  }));
  const dressing = split.flatMap(({ one, milled }) =>
    milled && one.millable ? [times(milled, one.millable.dressing.each)] : [],
  );
  const planed = split.flatMap(({ one, milled, dressed }) =>
    milled && dressed && one.millable ? [times(milled, one.millable.dressing.surfaceEach)] : [],
  );
  const bought = split.flatMap(({ one, milled, dressed }) => (dressed ? [boughtSurface(one, milled)] : []));
  const light = times(sumOr(bought, "m2"), assumed.cell("sand.boughtShare"));
  const planedCell = sheet.lay(`${key}.planed`, sumOr(planed, "m2"), { label: "faces planed", display: units.area });
  const sanded = sheet.lay(`${key}.sanded`, plus(planedCell, light), {
    label: "faces sanded, bought ones by their share",
    display: units.area,
  });
  const hours = (name: string, label: string, formula: Operand) =>
    sheet.lay(`${key}.hours.${name}`, formula, { label, display: "person-h" });
  const dress = hours("dress", "dress to finished size", sumOr(dressing, "person-h"));
  const sand = hours("sand", "sand and ease edges", times(over(sanded, assumed.cell("rate.sand")), pace));
  const buysLumber = lumberLines.length > 0;
  const sticks = sumOr(
    lumberLines.map(({ quantity }) => quantity),
    "",
  );
  const fetching = buysLumber
    ? [
        hours("fetch", "fetch or receive lumber", times(assumed.cell("buy.fetch"), pace)),
        hours("sort", "sort and stack lumber", times(sticks, assumed.cell("buy.sort"), pace)),
      ]
    : [];
  return { stages: [...fetching, dress, sand], planed: planedCell, sanded, dress, sand, buysLumber };
}

/** How many pieces of a group come from the logs: all, or as many as the plan has. */
export function milledPieces({ sheet }: Basis, plan: RoutePlan, { group }: GroupBasis): Cell | undefined {
  if (!plan.milled.has(group.name) || !plan.sawing) return undefined;
  const bought = plan.bought.find((one) => one.substitution.group.name === group.name)?.count ?? 0;
  const unsold = plan.unsold.find((one) => one.group.group.name === group.name)?.count ?? 0;
  if (bought + unsold === 0) return group.count;
  const pieces = sheet.decide(group.count).minus(bought + unsold);
  const name = `${plan.key}.sawn.${group.name}`;
  return (
    sheet.find(name) ??
    sheet.planned(name, plain(pieces), plan.sawing.proof, {
      label: `${group.label}, from the logs`,
    })
  );
}

function boughtSurface({ group }: GroupBasis, milled: Cell | undefined): Operand {
  if (!milled) return group.surface;
  if (milled === group.count) return number("0 m2");
  return over(times(group.surface, minus(group.count, milled)), group.count);
}

/** Fuel, oil, wear and discs, each priced in its own unit. */
function layConsumables(
  basis: Basis,
  plan: RoutePlan,
  milling: MillingCells | undefined,
  finishing: Finishing,
): ShoppingLine[] {
  const { sheet, pricing, catalog, assumed, mill } = basis;
  const { key } = plan;
  const line = (item: Parameters<typeof consumablePrice>[1], label: string, quantity: Cell) =>
    layLine(
      pricing,
      { name: `${key}.use.${item}`, department: "consumables", label },
      quantity,
      consumablePrice(catalog, item),
      item,
    );
  const discs = sheet.lay(`${key}.use.sanding-discs.quantity`, over(finishing.sanded, assumed.cell("sand.perDisc")), {
    label: "discs worn",
  });
  const lines = [line("sanding-discs", "Sanding discs", discs)];
  if (milling) {
    const chain = mill.blade === "chain";
    lines.push(line("fuel", "Fuel", milling.fuel));
    if (milling.barOil) lines.push(line("bar-oil", "Bar oil", milling.barOil));
    lines.push(line(chain ? "chain" : "band", chain ? "Ripping chain, wear" : "Band, wear", milling.blades));
    // A chain is filed on the saw, in hours; a band goes to the sharpener, for money.
    if (!chain) lines.push(line("band-sharpening", "Sharpening of bands", milling.sharpenings));
    const knives = sheet.lay(
      `${key}.use.planer-knife-sharpening.quantity`,
      over(finishing.planed, assumed.cell("dress.perKnives")),
      { label: "sharpenings" },
    );
    lines.push(line("planer-knife-sharpening", "Sharpening of planer knives", knives));
  }
  if (finishing.buysLumber) {
    const once =
      sheet.find("delivery.loads") ?? sheet.input("delivery.loads", plain(1), { label: "deliveries of lumber" });
    const name = `${key}.use.delivery`;
    lines.push(
      layLine(
        pricing,
        { name, department: "services", label: "Delivery of lumber" },
        once,
        servicePrice(catalog, "delivery"),
        "delivery",
      ),
    );
  }
  return lines;
}

/** Machines of the shop that run with the hours of dressing; all others run with the mill. */
const SHOP_MACHINES: ReadonlySet<EquipmentItem> = new Set(["planer", "jointer", "table-saw", "sander"]);

/** Machines hired by the day or bought for a share of their use; a route without milling needs none of them. */
function layHire(
  basis: Basis,
  plan: RoutePlan,
  milling: MillingCells | undefined,
  finishing: Finishing,
): ShoppingLine[] {
  const { sheet, request, pricing, catalog, labor } = basis;
  if (!milling) return [];
  return (request.shop?.equipment ?? []).flatMap(({ item, terms, share }): ShoppingLine[] => {
    if (terms === "paid") return [];
    const offer = equipmentOffer(catalog, item);
    const name = `${plan.key}.hire.${item}`;
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

/** What the logs that are sawn would have fetched. */
function logValue(basis: Basis, plan: RoutePlan): Cell | undefined {
  const used = new Set(plan.sawing?.measures.logs.filter((log) => log.boltsSawn > 0).map((log) => log.log));
  const values = basis.logs.flatMap((log) => (used.has(log.name) && log.value ? [log.value] : []));
  if (values.length === 0) return undefined;
  return basis.sheet.lay(`${plan.key}.logValue`, sumOr(values, basis.pricing.currency), {
    label: "value of the logs used",
  });
}
