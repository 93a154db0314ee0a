/** The call that plans bought lengths by themselves: pieces and a yard's lengths in, what to buy and how to cut it out. */
import { z } from "zod";
import { CURRENCIES, readShape } from "../catalog/reading.js";
import { isRecord } from "../catalog/shape-faults.js";
import type { Fault } from "../estimate/faults.js";
import { planStockOrder, type StockOrderPlan } from "../estimate/purchase/stock-order-plan.js";
import { type StockOrder, stockOrderShape } from "../estimate/request/stock-order.js";
import { type AnyCall, body, call, json, type Read } from "./call.js";
import { answerExample } from "./examples.js";
import { orderPlanner } from "./planners.js";
import { digestOf, provenance } from "./provenance.js";
import { STOCK_INCLUDES, type StockInclude, StockOrderSchema, shownStockOrder } from "./render/json/stock-order.js";

interface Asked {
  readonly order: StockOrder;
  readonly digest: string;
}

interface Planned {
  readonly plan: StockOrderPlan;
  readonly digest: string;
}

function readOrder(input: unknown): Read<Asked> {
  const given = isRecord(input) ? input.currency : undefined;
  const currency = CURRENCIES.find((code) => code === given) ?? "USD";
  const read = readShape(stockOrderShape, input, { currency });
  const found = "faults" in read ? (readInOwn(input, read.faults) ?? read) : read;
  return "faults" in found ? found : { value: { order: found.value, digest: digestOf(input) } };
}

/** Where nothing says the currency, prices may: the one in which they all read. */
function readInOwn(input: unknown, faults: readonly Fault[]): { readonly value: StockOrder } | undefined {
  if (!isRecord(input) || input.currency !== undefined) return undefined;
  if (!faults.every(({ code }) => code === "currency-mix")) return undefined;
  for (const currency of CURRENCIES) {
    const read = readShape(stockOrderShape, { ...input, currency }, { currency });
    if (!("faults" in read)) return read;
  }
  return undefined;
}

const EXAMPLES: Readonly<Record<string, { summary: string; value: z.input<typeof stockOrderShape> }>> = {
  rafters: {
    summary: "Rafters and a fascia joined over rafters, two leftovers, three lengths",
    value: {
      pieces: [
        { name: "rafters", length: "9 ft 10 7/16 in", count: 6 },
        { name: "fascia", length: "24 ft", count: 1, supports: "24 in" },
      ],
      stocks: [
        { length: "10 ft", price: "$8.24" },
        { length: "12 ft", price: "$9.92", available: 4 },
        { length: "20 ft", price: "$19.60" },
      ],
      leftovers: [{ length: "10 ft", count: 2 }],
      kerf: "1/8 in",
      defects: "7 %",
    },
  },
  metric: {
    summary: "Millimetres, sold by the cubic metre in bundles of two",
    value: {
      pieces: [{ name: "joists", length: "2.85 m", count: 5 }],
      stocks: [{ length: "3 m" }, { length: "4.2 m" }, { length: "6 m" }],
      rate: { by: "volume", price: "620 EUR/m3", section: "45 x 145 mm", measure: "actual" },
      bundle: 2,
      currency: "EUR",
    },
  },
};

export const stockPlans: readonly AnyCall[] = [
  call({
    method: "post",
    path: "/v1/stock-plans",
    id: "makeStockPlan",
    tag: "Estimating",
    summary: "What to buy and how to cut it",
    description: [
      "Pieces of one section, the lengths on offer and their prices: the cheapest sticks to buy, how to cut each, and",
      "a bound that no plan beats. Sold by the piece, by length or by volume, in bundles, or lying at hand. A piece",
      "longer than every stick is joined only where it has supports. Amounts are rounded once, to the minor unit.",
    ].join(" "),
    query: z.strictObject({
      include: z
        .array(z.enum(STOCK_INCLUDES))
        .default([])
        .describe(
          "drawings: each stick as SVG; workings: formulas and sources of the cells; plan: the plan, to be held.",
        ),
    }),
    heavy: true,
    request: body({ schema: stockOrderShape, examples: EXAMPLES, read: readOrder }),
    run: async ({ body: { order, digest } }, { stopped }): Promise<Planned> => {
      const planner = await orderPlanner(stopped);
      return { plan: planStockOrder(order, planner), digest };
    },
    faces: {
      "application/json": json({
        description: "The plan.",
        schema: StockOrderSchema,
        example: answerExample<z.output<typeof StockOrderSchema>>("makeStockPlan"),
        render: ({ plan, digest }: Planned, { include }: { readonly include: readonly StockInclude[] }) =>
          shownStockOrder(plan, provenance(digest), include),
      }),
    },
  }),
];
