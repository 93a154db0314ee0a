/** What to buy, as JSON: lines by department, taxes, totals, and how bought sticks are cut. */
import { z } from "zod";
import { DEPARTMENTS } from "../../../catalog/offers/price.js";
import type { Basis } from "../../../estimate/basis.js";
import type { RouteCells } from "../../../estimate/compare/route.js";
import type { Spending, SpentCells } from "../../../estimate/compare/spending.js";
import type { Estimate } from "../../../estimate/estimate.js";
import { explainStock, placedOn, squaredLength } from "../../../estimate/purchase/explain-stock.js";
import type { ShoppingLine } from "../../../estimate/purchase/line.js";
import { abreastOf, groupOnStick, stepsInMm } from "../../../estimate/purchase/lumber.js";
import { productOf } from "../../../estimate/purchase/product.js";
import { decimal, fixed } from "../../../estimate/quantity/decimal.js";
import { type MeasureSystem, marked, placesInFull } from "../../../estimate/quantity/text.js";
import { unit } from "../../../estimate/quantity/unit.js";
import { aside } from "../../../estimate/sheet/aside.js";
import type { Cell } from "../../../estimate/sheet/expression.js";
import { stickDrawing } from "../stick-drawing.js";
import { stickFields } from "./cut-pieces.js";
import { routeField, routeKey } from "./decision.js";
import {
  amount,
  decimalField,
  FigureSchema,
  figure,
  figureOrNull,
  LabeledSchema,
  LengthSchema,
  labeled,
  lengthFigure,
} from "./figures.js";
import type { MarkBook } from "./marks.js";

const PackSchema = z
  .strictObject({
    label: z.string().describe("What one pack is."),
    count: FigureSchema.describe("How many of it."),
  })
  .meta({ id: "PackCount", description: "Packs of one size." });

const AmountSchema = z
  .strictObject({
    value: decimalField("The value in `unit`, in as many places as the product takes."),
    unit: z.string().describe("The unit; empty for a plain number."),
  })
  .meta({ id: "Multiplied", description: "A number to multiply by hand." });

export const ProductSchema = z
  .strictObject({
    measure: AmountSchema.describe("What is paid for, in the unit that the price is by."),
    price: AmountSchema.describe("Of one such unit, exact, with the level of prices in it."),
  })
  .meta({ id: "Product", description: "Two numbers whose product, rounded once, is the amount to its last digit." });

export const LineSchema = z
  .strictObject({
    name: z.string().describe("What the names of its cells begin with."),
    label: z.string().describe("What to ask for."),
    quantity: FigureSchema.describe("How much is wanted: pieces, lengths, volumes; packs are below."),
    share: z
      .literal(true)
      .optional()
      .describe(
        "Wear, current or a machine's loss of value, in parts of one: it costs, but there is nothing to order. Absent elsewhere.",
      ),
    each: LengthSchema.optional().describe("Length of each piece, where they are cut to order; absent elsewhere."),
    packs: z
      .array(PackSchema)
      .optional()
      .describe("The packs that cost least; absent where it is not sold in packs, or none is needed."),
    leftOver: FigureSchema.optional().describe(
      "What the packs hold beyond that; absent where it is not sold in packs.",
    ),
    spares: FigureSchema.optional().describe("How many of them are spare, for defects; absent where none is."),
    price: FigureSchema.nullable().describe("Price of one; null where there is none, or where packs have prices."),
    amount: FigureSchema.nullable().describe("What it costs, before tax; null where no price is known."),
    product: ProductSchema.optional().describe(
      "What gives the amount when multiplied; absent where quantity and price as shown do, where packs have prices of their own, and where the amount is yours.",
    ),
    add: z.string().optional().describe("What to add to the catalog; absent on priced lines."),
  })
  .meta({ id: "ShoppingLine", description: "One line of a shopping list. No price is null, never zero." });

const DepartmentSchema = z
  .strictObject({
    department: z.enum(DEPARTMENTS).describe("Where it is found."),
    lines: z.array(LineSchema).describe("Its lines."),
  })
  .meta({ id: "ShoppingDepartment", description: "Lines of one department." });

const CutSchema = z
  .strictObject({
    stock: z.string().describe("Length that is bought."),
    times: z.int().describe("Sticks cut alike."),
    ...stickFields,
    offcut: z.string().describe("What is left of each stick."),
    drawing: z.string().optional().describe("With include=drawings: the stick and its cuts as an SVG image."),
  })
  .meta({ id: "StickCuts", description: "How sticks are cut." });

const StockSchema = z
  .strictObject({
    offer: z.string().describe("Name of the lumber offer."),
    label: z.string().describe("In words."),
    covers: z.string().describe("How good the plan is known to be."),
    gap: decimalField("A share.")
      .nullable()
      .describe("How far it may be from the least, as a share of its cost; null where that is not known."),
    cuts: z.array(CutSchema).describe("Sticks, those cut alike together."),
  })
  .meta({ id: "StockPlan", description: "How the sticks of one offer are cut." });

const SpentSchema = z
  .strictObject({
    department: z.enum(DEPARTMENTS).describe("Which one."),
    amount: FigureSchema.nullable().describe("Its priced lines, shared ones included, before tax; null where none is."),
    unpriced: z.int().describe("Its lines without a price; their cost is not in the amount."),
  })
  .meta({ id: "DepartmentSpending", description: "What one route pays in one department." });

const StageCostSchema = z
  .strictObject({
    stage: z.string().describe("Name of a stage of the effort: of `common`, or of the route's own."),
    amount: FigureSchema.nullable().describe("What it uses up, before tax; null where nothing of it has a price."),
    unpriced: SpentSchema.shape.unpriced,
  })
  .meta({ id: "StageCost", description: "What one stage of work costs in cash." });

const RouteSchema = z
  .strictObject({
    route: routeField(),
    departments: z.array(DepartmentSchema).describe("Its own lines; those of `shared` come on top."),
    spent: z
      .array(SpentSchema)
      .describe("By department; with taxes, the logs' value and money lines of your own it makes up the cash."),
    stages: z
      .array(StageCostSchema)
      .describe("The same by the stage that uses it up: what is not listed costs hours alone. See `ofNoStage`."),
    ofNoStage: z
      .array(SpentSchema)
      .describe("What serves several stages, by department; with `stages` it comes to the same as `spent`."),
    taxes: z.array(LabeledSchema).describe("On its own and the shared lines."),
    logValue: FigureSchema.nullable().describe("What the logs that it saws would have fetched."),
    lumber: FigureSchema.describe("Bought lumber, before tax."),
    cash: FigureSchema.describe("Own and shared lines, taxes, the logs' value and the money lines of your own."),
    unpriced: z.int().describe("Lines without a price, shared ones included; their cost is not in the cash."),
    stock: z
      .array(StockSchema)
      .nullable()
      .describe("How bought sticks are cut; null on routes other than the best, unless include=work asks for all."),
  })
  .meta({ id: "RoutePurchasing", description: "What one route buys." });

export const PurchasingSchema = z
  .strictObject({
    shared: z.array(DepartmentSchema).describe("Lines that every route has."),
    own: z.array(LabeledSchema).describe("Money lines of your own, on every route."),
    routes: z.array(RouteSchema).describe("Routes, each once."),
  })
  .meta({ id: "Purchasing", description: "The shopping lists." });

/** What of the stock plans is shown. */
interface StockView {
  readonly marksOf: (route: RouteCells) => MarkBook;
  /** Also how the sticks of other routes than the best are cut. */
  readonly all: boolean;
  readonly drawings: boolean;
}

/** Shopping lists and stock plans. */
export function shownPurchasing(
  { basis, common, spent, routes: { mix } }: Estimate,
  routes: readonly RouteCells[],
  view: StockView,
): z.output<typeof PurchasingSchema> {
  return {
    shared: byDepartment(common.lines, basis.request.system),
    own: common.own.map(labeled),
    routes: routes.map((route) => ({
      ...shownRoute(basis, route, view.all || route === mix ? view : undefined),
      ...shownSpending(spent.get(route.plan.key)),
    })),
  };
}

function byDepartment(lines: readonly ShoppingLine[], system: MeasureSystem): z.output<typeof DepartmentSchema>[] {
  return DEPARTMENTS.map((department) => ({
    department,
    lines: lines.filter((line) => line.department === department).map((line) => shownLine(line, system)),
  })).filter((department) => department.lines.length > 0);
}

/** One line with its packs, price and amount. */
export function shownLine(line: ShoppingLine, system: MeasureSystem): z.output<typeof LineSchema> {
  const packs = (line.packs ?? []).filter(({ count }) => !count.value.isZero());
  return {
    name: line.name,
    label: line.label,
    quantity: figure(line.quantity),
    ...(line.share && { share: true as const }),
    ...(line.each && { each: lengthFigure(line.each, system) }),
    ...(packs.length > 0 && { packs: packs.map(({ label, count }) => ({ label, count: figure(count) })) }),
    ...(line.leftOver && { leftOver: figure(line.leftOver) }),
    ...(line.spares && !aside(line.spares).isZero() && { spares: figure(line.spares) }),
    price: figureOrNull(line.price),
    amount: figureOrNull(line.amount),
    ...shownProduct(line),
    ...(!line.amount && line.add !== undefined && { add: line.add }),
  };
}

type Multiplied = Parameters<typeof productOf>[0] & { readonly quantity: Cell; readonly price?: Cell | undefined };
type Shown = ReturnType<typeof amount>;

/** The product that an amount is, where quantity and price as they are shown are not that already. */
export function shownProduct(line: Multiplied): { product?: z.output<typeof ProductSchema> } {
  const product = productOf(line);
  if (!product) return {};
  const [currency = ""] = product.price.unit.symbol.split("/");
  const measure = { value: product.measure.value.toFixed(), unit: product.measure.unit.symbol };
  const places = placesInFull(product.price.value, currency);
  const price = { value: fixed(product.price.value, places), unit: product.price.unit.symbol };
  return saysItself(line) ? {} : { product: { measure, price } };
}

/** Whether quantity times price, as they are shown, is the amount that is shown. */
function saysItself({ quantity, price, amount: sum }: Multiplied): boolean {
  if (!price || !sum) return false;
  const [much, each, all] = [quantity, price, sum].map(amount) as [Shown, Shown, Shown];
  const places = placesInFull(decimal(all.value), all.unit);
  const alike = each.unit === (much.unit === "" ? all.unit : `${all.unit}/${much.unit}`);
  return alike && decimal(much.value).times(each.value).toDecimalPlaces(places).eq(all.value);
}

/** Sums by department and by stage. */
function shownSpending(spending: Spending | undefined): Pick<ShownRoute, SpendingKeys> {
  const { departments = [], stages = [], ofNoStage = [] } = spending ?? {};
  const shown = <Name extends string>({ amount, unpriced }: SpentCells<Name>) => ({
    amount: figureOrNull(amount),
    unpriced,
  });
  return {
    spent: departments.map((one) => ({ department: one.name, ...shown(one) })),
    stages: stages.map((one) => ({ stage: one.name, ...shown(one) })),
    ofNoStage: ofNoStage.map((one) => ({ department: one.name, ...shown(one) })),
  };
}

type ShownRoute = z.output<typeof RouteSchema>;
type SpendingKeys = "spent" | "stages" | "ofNoStage";

function shownRoute(basis: Basis, route: RouteCells, view: StockView | undefined): Omit<ShownRoute, SpendingKeys> {
  const { sheet, request } = basis;
  return {
    route: routeKey(route),
    departments: byDepartment(route.lines, request.system),
    taxes: route.taxes.map(labeled),
    logValue: figureOrNull(sheet.find(`${route.plan.key}.logValue`)),
    lumber: figure(route.lumber),
    cash: figure(route.cash),
    unpriced: route.unpriced,
    stock: view ? route.plan.stock.map((stock) => shownStock(stock, request.system, writing(view, route))) : null,
  };
}

interface StockWriting {
  readonly marks: MarkBook;
  readonly drawings: boolean;
}

const writing = ({ marksOf, drawings }: StockView, route: RouteCells): StockWriting => ({
  marks: marksOf(route),
  drawings,
});

function shownStock(
  { question, plan, proof }: RouteCells["plan"]["stock"][number],
  system: MeasureSystem,
  { marks, drawings }: StockWriting,
): z.output<typeof StockSchema> {
  const long = (steps: number) => marked({ value: stepsInMm(system, steps), unit: unit("mm") }, system);
  return {
    offer: question.offer.name,
    label: question.offer.label,
    covers: proof.covers,
    gap: proof.gap ? proof.gap.toFixed() : null,
    cuts: explainStock(question.problem, plan).map(({ stock, times, pieces, offcut }) => ({
      stock,
      times,
      ...(drawings && {
        drawing: stickDrawing({
          title: `${times} × ${stock}`,
          whole: squaredLength(question.problem, stock),
          cuts: placedOn({ stock, times, pieces, offcut }, question.problem.kerf).map(({ group, from, to }) => ({
            ...{ from, to, label: groupOnStick(question, group), length: long(to - from) },
          })),
        }),
      }),
      pieces: pieces.map(({ group, length, count }) => {
        const abreast = abreastOf(question, group);
        return { group, length: long(length), count, abreast };
      }),
      marks: Array.from({ length: times }, () =>
        pieces.flatMap(({ group, count }) =>
          Array.from({ length: count * abreastOf(question, group) }, () => marks.next(group)),
        ),
      ),
      offcut: long(offcut),
    })),
  };
}
