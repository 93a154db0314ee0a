/** An answer of /v1/stock-plans for the document, its lists cut to their first entry. */
import type { z } from "zod";
import type { StockOrderSchema } from "./render/json/stock-order.js";

export const STOCK_PLAN_EXAMPLE: z.output<typeof StockOrderSchema> = {
  engine: "0.1.0",
  requestDigest: "322c02b3eabda7b7569eaed166fc0c399a57335ac0b8cef512049ef547e56a99",
  measure: "inch-pound",
  currency: "USD",
  buy: [
    {
      stock: "10'",
      planned: { cell: "stock.10ft.planned", value: "4", unit: "" },
      quantity: { cell: "stock.10ft.sticks", value: "4", unit: "" },
      price: { cell: "price.10ft", value: "8.24", unit: "USD" },
      amount: { cell: "stock.10ft.amount", value: "32.96", unit: "USD" },
    },
  ],
  total: { cell: "stock.total", value: "52.80", unit: "USD" },
  unpriced: 0,
  plan: {
    cost: { cell: "stock.planCost", value: "52.80", unit: "USD" },
    bound: { cell: "stock.bound", value: "52.80", unit: "USD" },
    gap: "0",
    proven: true,
    covers: "all ways to cut these pieces from these lengths; proven least",
  },
  boards: [
    {
      stock: "12'",
      atHand: false,
      times: 1,
      cuts: [{ piece: "fascia", part: "1 of 2", length: "12'", from: '0"', to: "12'" }],
      offcut: '0"',
    },
  ],
  used: "0.991",
  short: [],
  notes: ["Kerf 0.125 in; 0 in cut off each stick to square it."],
  sheet: {
    whole: true,
    blocks: [
      {
        name: "stock",
        title: "Sticks to buy",
        cells: [
          { name: "stock.defects", label: "sticks set aside for defects", kind: "input", value: "7", unit: "%" },
          { name: "stock.total", label: "all sticks, before tax", kind: "formula", value: "52.80", unit: "USD" },
          {
            name: "stock.planCost",
            label: "the plan's sticks, without those set aside",
            kind: "formula",
            value: "52.80",
            unit: "USD",
          },
          {
            name: "stock.bound",
            label: "no plan for these pieces costs less than",
            kind: "planned",
            value: "52.80",
            unit: "USD",
          },
        ],
        lines: [
          {
            name: "stock.10ft",
            title: "10'",
            cells: [
              { name: "stock.10ft.planned", label: "sticks that the plan cuts", kind: "planned", value: "4", unit: "" },
              { name: "stock.10ft.cut", label: "of them cut", kind: "planned", value: "4", unit: "" },
              { name: "stock.10ft.sticks", label: "sticks to buy", kind: "formula", value: "4", unit: "" },
              { name: "stock.10ft.amount", label: "amount", kind: "formula", value: "32.96", unit: "USD" },
            ],
          },
        ],
      },
    ],
  },
};
