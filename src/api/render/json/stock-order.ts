/** A stock plan by itself, as JSON. */
import { z } from "zod";
import { placedOn, type StickSteps, squaredLength } from "../../../estimate/purchase/explain-stock.js";
import { stepsInMm } from "../../../estimate/purchase/lumber.js";
import type { JoinedPieces } from "../../../estimate/purchase/stock-order.js";
import type { Joints, OrderLine, StockOrderPlan } from "../../../estimate/purchase/stock-order-plan.js";
import { trimmed } from "../../../estimate/quantity/decimal.js";
import { inUnit } from "../../../estimate/quantity/quantity.js";
import { marked } from "../../../estimate/quantity/text.js";
import { unit } from "../../../estimate/quantity/unit.js";
import { stockPlanShape } from "../../../estimate/request/held-plans.js";
import { stickDrawing } from "../stick-drawing.js";
import type { Provenance } from "./about.js";
import { decimalField, FigureSchema, figure, figureOrNull } from "./figures.js";
import { ProductSchema, shownProduct } from "./purchasing.js";
import { SheetSchema, shownSheet } from "./sheet.js";

/** What may be asked for beside the lean answer. */
export const STOCK_INCLUDES = ["drawings", "workings", "plan"] as const;
export type StockInclude = (typeof STOCK_INCLUDES)[number];

const LineSchema = z
  .strictObject({
    stock: z.string().describe("Length that is bought."),
    planned: FigureSchema.describe("Sticks that the plan takes, whole bundles."),
    spares: FigureSchema.describe(
      "Spare sticks for defects: that share of all, rounded up once, the longest first, which serve for any other.",
    ),
    quantity: FigureSchema.describe("Sticks to buy, those set aside for defects included."),
    price: FigureSchema.nullable().describe("Price of one; null where there is none."),
    amount: FigureSchema.nullable().describe("What they cost, before tax, rounded once; null without a price."),
    product: ProductSchema.optional().describe(
      "What gives the amount when multiplied; absent where quantity and price as shown do, and without a price.",
    ),
  })
  .meta({ id: "StickLine", description: "Sticks of one length to buy." });

const length = (describe: string) => z.string().describe(describe);

const CutSchema = z
  .strictObject({
    piece: z.string().describe("Name of the piece."),
    part: z
      .string()
      .nullable()
      .describe("Which part of it, where it is joined over a support; null where it is whole."),
    length: length("Its length."),
    from: length("Where it begins, from the squared end of the stick."),
    to: length("Where it ends; the kerf comes after it."),
  })
  .meta({ id: "StickCut", description: "One piece on a stick." });

const BoardSchema = z
  .strictObject({
    stock: z.string().describe("Which stick."),
    atHand: z.boolean().describe("Whether it lies at hand already."),
    times: z.int().describe("Sticks cut alike."),
    cuts: z.array(CutSchema).describe("Pieces in the order cut."),
    offcut: length("What is left of each stick."),
    drawing: z.string().optional().describe("With include=drawings: the stick as an SVG image."),
  })
  .meta({ id: "Board", description: "Sticks cut alike." });

const ShortSchema = z
  .strictObject({
    piece: z.string().describe("Name of the piece."),
    part: z.string().nullable().describe("Which part of it; null where it is whole."),
    count: z.int().describe("How many are left out."),
    why: z
      .enum(["too-long", "stock-lacks"])
      .describe("Too long for every stick, or the sticks that can be had are used up."),
    cure: z.string().describe("What would help."),
  })
  .meta({ id: "LeftOutPiece", description: "Pieces that the plan does not cut." });

const ProofSchema = z
  .strictObject({
    cost: FigureSchema.nullable().describe(
      "The plan's sticks at exact prices, those set aside for defects left out; null where none has a price, or nothing is cut.",
    ),
    bound: FigureSchema.nullable().describe(
      "No plan for the pieces that are cut costs less; null for a held plan, without prices, or where nothing is cut.",
    ),
    gap: decimalField("(cost − bound) ÷ cost.")
      .nullable()
      .describe("(cost − bound) ÷ cost; null where no bound is known."),
    proven: z
      .boolean()
      .describe("True when no plan for the pieces that are cut costs less; false where nothing is cut."),
    covers: z.string().describe("What the plan was compared with."),
  })
  .meta({ id: "StockProof", description: "How good the plan is known to be." });

export const StockOrderSchema = z
  .strictObject({
    engine: z.string().describe("Version of the program."),
    requestDigest: z.string().describe("SHA-256 of the request, its keys sorted, in hexadecimal."),
    measure: z.enum(["inch-pound", "metric"]).describe("Measure system of the answer."),
    currency: z.string().describe("Currency of all money (ISO 4217)."),
    buy: z.array(LineSchema).describe("What to buy."),
    total: FigureSchema.nullable().describe(
      "Sum of the lines' amounts, before tax, of the pieces that are cut; null where none has a price, or nothing is cut.",
    ),
    unpriced: z.int().describe("Lines without a price; their cost is not in the total."),
    plan: ProofSchema.describe("How good the plan is known to be."),
    boards: z.array(BoardSchema).describe("How to cut them."),
    used: decimalField("A share.").describe(
      "Length of the pieces as a share of the length of the sticks that are cut.",
    ),
    short: z.array(ShortSchema).describe("Pieces that no stick is left for; empty where all are cut."),
    notes: z.array(z.string()).describe("What was taken, and what was left out."),
    sheet: SheetSchema.describe("The cells behind all figures."),
    heldPlan: stockPlanShape.optional().describe("With include=plan: the plan, in the form that an order takes back."),
  })
  .meta({ id: "StockOrderPlan", description: "What to buy and how to cut it." });

/** The plan with what was asked for beside it. */
export function shownStockOrder(
  plan: StockOrderPlan,
  { engine, requestDigest }: Provenance,
  include: readonly StockInclude[],
): z.output<typeof StockOrderSchema> {
  const { question, sheet, lines, total, planCost, bound, proof, proven } = plan;
  return {
    engine,
    requestDigest,
    measure: question.system,
    currency: question.currency,
    buy: lines.map(shownLine),
    total: figureOrNull(total),
    unpriced: lines.filter(({ amount }) => !amount).length,
    plan: {
      cost: figureOrNull(planCost),
      bound: figureOrNull(bound),
      gap: proof.gap ? proof.gap.toFixed() : null,
      proven,
      covers: proof.covers,
    },
    boards: plan.boards.map((board) => shownBoard(plan, board, include.includes("drawings"))),
    used: usedShare(plan),
    short: plan.short.map(({ name, count, why }) => ({
      ...pieceOf(plan, name),
      count,
      why,
      cure: cureOf(plan, name, why),
    })),
    notes: notesOf(plan),
    sheet: shownSheet(sheet, { whole: true, workings: include.includes("workings") }),
    ...(include.includes("plan") && { heldPlan: plan.plan.map((cut) => ({ ...cut, pieces: [...cut.pieces] })) }),
  };
}

const CURES = {
  "too-long":
    "Offer a longer stick, or say at which distance it has supports, closer than a stick is long, to be joined over.",
  "stock-lacks": "Offer more sticks that are long enough.",
} as const;

const WITHHELD =
  "Allow shorter parts (leastPart) or more joints (mostJoints): without these limits it could be joined; or offer sticks that take it whole.";

/** A length that is on offer without a price wants that first. */
function cureOf({ question }: StockOrderPlan, name: string, why: keyof typeof CURES): string {
  const { system, problem, endTrim, leftOut, withheld } = question;
  if (withheld.has(name)) return WITHHELD;
  const length = problem.pieces.find((piece) => piece.name === name)?.length ?? 0;
  const least = endTrim.value.plus(stepsInMm(system, length));
  const [priceless] = leftOut.filter((stick) => stick.length.value.gte(least));
  if (why === "too-long" && priceless) return `Give the price of the stick of ${marked(priceless.length, system)}.`;
  return CURES[why];
}

const shownLine = ({
  stock,
  planned,
  spares,
  quantity,
  price,
  amount,
  paid,
}: OrderLine): z.output<typeof LineSchema> => ({
  stock,
  planned: figure(planned),
  spares: figure(spares),
  quantity: figure(quantity),
  price: figureOrNull(price),
  amount: figureOrNull(amount),
  ...(paid && amount && shownProduct({ paid, amount, quantity, price })),
});

const pieceOf = ({ question }: StockOrderPlan, name: string) => {
  const { piece = name, part } = question.pieces.get(name) ?? {};
  return { piece, part: part ?? null };
};

const text = ({ question: { system } }: StockOrderPlan, steps: number): string =>
  marked({ value: stepsInMm(system, steps), unit: unit("mm") }, system);

function shownBoard(plan: StockOrderPlan, board: StickSteps, drawn: boolean): z.output<typeof BoardSchema> {
  const { problem, sticks } = plan.question;
  const placed = placedOn(board, problem.kerf);
  const cuts = placed.map(({ group, from, to }) => ({
    ...pieceOf(plan, group),
    length: text(plan, to - from),
    from: text(plan, from),
    to: text(plan, to),
  }));
  return {
    stock: board.stock,
    atHand: sticks.get(board.stock)?.owned ?? false,
    times: board.times,
    cuts,
    offcut: text(plan, board.offcut),
    ...(drawn && {
      drawing: stickDrawing({
        title: `${board.times} × ${board.stock}`,
        whole: squaredLength(problem, board.stock),
        cuts: placed.map(({ group, from, to }) => ({ from, to, label: group, length: text(plan, to - from) })),
      }),
    }),
  };
}

/** Pieces over sticks, by length, to a tenth of a percent. */
function usedShare({ question: { problem }, boards }: StockOrderPlan): string {
  const lengthOf = (name: string) => problem.stocks.find((one) => one.name === name)?.length ?? 0;
  const sticks = boards.reduce((sum, { stock, times }) => sum + times * lengthOf(stock), 0);
  const inPieces = boards.reduce(
    (sum, { pieces, times }) => sum + times * pieces.reduce((all, { length: long, count }) => all + long * count, 0),
    0,
  );
  return sticks === 0 ? "0" : trimmed(stepsInMm("metric", inPieces).dividedBy(stepsInMm("metric", sticks)), 3);
}

function notesOf({ question, joints, spares, proven, short, plan }: StockOrderPlan): string[] {
  const { system, kerf, endTrim, priced, leftOut } = question;
  const small = (of: typeof kerf) =>
    `${trimmed(inUnit(of, system === "metric" ? "mm" : "in"), 4)} ${system === "metric" ? "mm" : "in"}`;
  return [
    `Kerf ${small(kerf)}; ${small(endTrim)} cut off each stick to square it.`,
    ...shortNotes(short, plan.length === 0),
    ...(priced ? [] : ["No length has a price: the plan takes the least length of sticks."]),
    ...jointNotes(joints, proven),
    ...[...question.joined].map(([piece, joined]) => joinedNote(question, piece, joined)),
    ...[...question.leftOutWhole].flatMap(([piece, { count, mayBeJoined }]) =>
      mayBeJoined
        ? [
            `Of ${piece} ${count} ${count === 1 ? "is" : "are"} left out whole: sticks lack for some of the parts, and none is cut without the others.`,
          ]
        : [],
    ),
    ...(spares.had.lt(spares.wanted)
      ? [
          `Of ${spares.wanted.toFixed()} spare sticks for defects only ${spares.had.toFixed()} can be had: there are no more at the yard.`,
        ]
      : []),
    ...leftOut.map(({ length: of }) => `Left out for want of a price: ${marked(of, system)}.`),
  ];
}

function shortNotes(short: StockOrderPlan["short"], nothing: boolean): string[] {
  if (nothing) return ["No stick takes any of the pieces: there is nothing to buy, and no total."];
  const count = short.reduce((sum, one) => sum + one.count, 0);
  if (count === 0) return [];
  return [
    `What the sticks cost is without the ${count === 1 ? "piece that is" : `${count} pieces that are`} left out.`,
  ];
}

function jointNotes(joints: Joints, proven: boolean): string[] {
  if (joints === "none") return [];
  if (joints === "all")
    return [
      proven
        ? "Joints may lie over any support, as far as the order lets them: of all ways to lay them, with the fewest joined that a stick would take whole, the cheapest is taken, of equals the one with the fewest joints."
        : "Joints may lie over any support, as far as the order lets them: of all ways to lay them the cheapest that was found is taken. Others may cost less, but no less than the bound.",
    ];
  if (joints.weighed === 0) return [];
  return [
    `${joints.weighed} ways to lay the joints were weighed, all pieces of a name alike; of those with the fewest joined the cheapest is taken. Others may cost less, but no less than the bound.`,
  ];
}

/** `Of fascia 3 are joined: 2 of 16' + 8', 12' + 12'.` */
function joinedNote({ system }: StockOrderPlan["question"], piece: string, { forWant, ways }: JoinedPieces): string {
  const all = ways.reduce((sum, { count }) => sum + count, 0);
  const told = ways.map(({ count, parts }) => {
    const lengths = parts.map((steps) => marked({ value: stepsInMm(system, steps), unit: unit("mm") }, system));
    return `${count > 1 ? `${count} of ` : ""}${lengths.join(" + ")}`;
  });
  const want = forWant ? " for want of sticks that take them whole" : "";
  return `Of ${piece} ${all} ${all === 1 ? "is" : "are"} joined${want}: ${told.join(", ")}.`;
}
