/** The plan of a stock order: made by the optimiser or handed back and judged, then laid and priced. */
import { type Charged, chargedAmong } from "../../catalog/offers/price.js";
import { FaultError } from "../faults.js";
import { type Decimal, decimal, ZERO } from "../quantity/decimal.js";
import { quantity } from "../quantity/quantity.js";
import { minorDigits } from "../quantity/unit.js";
import type { StockOrder } from "../request/stock-order.js";
import { aside } from "../sheet/aside.js";
import { type Cell, type Operand, type PlanProof, roundMoney, sumOr, times } from "../sheet/expression.js";
import { Sheet } from "../sheet/sheet.js";
import { type LevelCell, layBought } from "./bulk.js";
import { explainStock, type StickSteps } from "./explain-stock.js";
import { layPrice } from "./line.js";
import { stepsOnTape, sticksOf, uncut } from "./lumber.js";
import { gapOf } from "./money.js";
import type { WantedPiece } from "./order-pieces.js";
import type { Paid } from "./product.js";
import { laySticks, type StickCells } from "./sticks.js";
import { type JoinedAnswer, type JoinedRow, joinedBoundMinor } from "./stock/joined-program.js";
import {
  better,
  chooseJoints,
  cutOf,
  hadAlike,
  leftOut,
  type Way,
  type Weighed,
  wholeFirst,
} from "./stock/joint-choice.js";
import type { ShortPiece, StockCut, StockLength, StockOutcome, StockProblem } from "./stock/problem.js";
import { type Completed, completed, leftOutWhole, type PlanStock } from "./stock-complete.js";
import { judgeStockPlan } from "./stock-judge.js";
import { type JoinedOrder, joinedOrder, type OrderQuestion, type Stick } from "./stock-order.js";

/** Sticks of one length to pay for. */
export interface OrderLine {
  readonly stock: string;
  /** Sticks that the plan cuts, whole bundles. */
  readonly planned: Cell;
  /** Those set aside for defects. */
  readonly spares: Cell;
  /** With those set aside for defects, and what is bought beyond them where a bulk price makes the greater number cheaper. */
  readonly quantity: Cell;
  readonly price: Cell | undefined;
  readonly amount: Cell | undefined;
  /** What the amount is the product of. */
  readonly paid?: Paid;
  /** What they would cost without those set aside. */
  readonly asPlanned: Operand | undefined;
}

/** What to buy for an order and how to cut it, with what is proven of it. */
export interface StockOrderPlan {
  readonly question: OrderQuestion;
  readonly sheet: Sheet;
  readonly lines: readonly OrderLine[];
  /** All priced lines, before tax; undefined where none of those to buy has a price, or nothing is cut. */
  readonly total: Cell | undefined;
  /** What the plan's own sticks cost, defects left out, and the least that any plan could. */
  readonly planCost: Cell | undefined;
  readonly bound: Cell | undefined;
  readonly proof: PlanProof;
  readonly proven: boolean;
  readonly boards: readonly StickSteps[];
  readonly short: readonly ShortPiece[];
  /** For `heldPlan` of a later order. */
  readonly plan: readonly StockCut[];
  readonly joints: Joints;
  /** Sticks that the share for defects asks for, and those that are bought beyond what is cut. */
  readonly spares: { readonly wanted: Decimal; readonly had: Decimal };
}

/** What plans an order. */
export interface OrderPlanner {
  readonly stock: PlanStock;
  /** All ways to join its pieces at once: `joinedLeast`, with an engine. */
  readonly joined: (
    problem: StockProblem,
    rows: readonly JoinedRow[],
    known: { readonly costMinor: number } | undefined,
  ) => JoinedAnswer | undefined;
}

interface Planned {
  readonly question: OrderQuestion;
  /** Undefined where the plan is held. */
  readonly outcome: StockOutcome | undefined;
  readonly plan: readonly StockCut[];
  readonly joints: Joints;
}

/** How the joints were sought: there are none to lay, or the plan is held; all ways at once; so many of them one by one. */
export type Joints = "none" | "all" | { readonly weighed: number };

/** Whole as far as there are sticks, the joints of the others where they cost least; or where the held plan has them. */
function plannedOrder(order: StockOrder, planner: OrderPlanner): Planned {
  const joined = joinedOrder(order);
  const { pieces, question } = joined;
  const { heldPlan: held } = order;
  if (held) {
    const cut = cutOf(held);
    const of = question(pieces.map((piece) => piece.held(cut)));
    return { question: of, outcome: undefined, plan: heldPlan(of, held), joints: "none" };
  }
  const made = (chosen: readonly Way[], work?: number): Weighed & Completed => {
    const had = chosen.map((way, i) => hadAlike(pieces[i] as WantedPiece, way));
    return { chosen, ...completed(joined, had, planner.stock, work) };
  };
  const first = made(wholeFirst(pieces));
  const choice = pieces.some(({ joints, mostWhole }) => joints > 0 && (mostWhole === 0 || leftOut(first) > 0));
  if (!choice) return { question: first.of, outcome: first.outcome, plan: first.outcome.plan, joints: "none" };
  return searched(joined, planner, first) ?? weighed(joined, first, made);
}

/** All ways to join them at once; undefined where there are too many, or their plan is not found again. */
function searched(order: JoinedOrder, { stock, joined }: OrderPlanner, first: Completed): Planned | undefined {
  const known = leftOut(first) > 0 ? undefined : first.outcome;
  const answer = joined(first.of.problem, order.pieces, known);
  if (!answer) return undefined;
  const found = answer.had ? completed(order, answer.had, stock) : first;
  if (leftOut(found) > answer.left) return undefined;
  const { of, outcome } = known && known.costMinor <= found.outcome.costMinor ? first : found;
  return { question: of, outcome: boundBy(outcome, answer.boundMinor), plan: outcome.plan, joints: "all" };
}

/** Some ways one by one. */
function weighed(
  { pieces }: JoinedOrder,
  first: Weighed & Completed,
  made: (chosen: readonly Way[], work?: number) => Weighed & Completed,
): Planned {
  const { chosen, weighed: count } = chooseJoints(pieces, first, (each, work) => made(each, work).outcome);
  const last = chosen === first.chosen ? first : made(chosen);
  const { of, outcome } = better(pieces, last, first) ? last : first;
  const cut = cutOf(outcome.plan);
  const had = of.had.map((one, i) => ({ ...one, whole: cut.get(pieces[i]?.name ?? "") ?? 0 }));
  // Of the sheer length: no way to join them takes less.
  const bounded = boundBy(outcome, joinedBoundMinor(of.problem, pieces, had));
  return { question: of, outcome: bounded, plan: outcome.plan, joints: { weighed: count } };
}

/** With the bound that all ways to join the pieces have. */
function boundBy(outcome: StockOutcome, bound: number): StockOutcome {
  const boundMinor = Math.min(bound, outcome.costMinor);
  return { ...outcome, boundMinor, proven: boundMinor === outcome.costMinor };
}

/** @throws FaultError when the order makes no sense, or its held plan does not fit. */
export function planStockOrder(order: StockOrder, planner: OrderPlanner): StockOrderPlan {
  const { question, outcome, plan, joints } = plannedOrder(order, planner);
  const { problem } = question;
  const sheet = new Sheet();
  const covers = joints === "none" ? CUTS : `${CUTS}, and to join them over their supports`;
  // Nothing is proven of what a plan costs that cuts nothing.
  const judged = plan.length > 0 ? outcome : undefined;
  const proven = judged?.proven ?? false;
  const proof: PlanProof = {
    covers: outcome ? `${covers}${proven ? "; proven least" : ""}` : "held from an earlier answer",
    ...(judged && question.priced ? { gap: gapOf(judged) } : {}),
  };
  const short = outcome?.short ?? [...shortOf(question, plan), ...leftOutWhole(question)];
  return {
    question,
    sheet,
    ...layPurchase(sheet, question, plan, proof),
    bound: judged && question.priced ? layBound(sheet, question, judged.boundMinor, covers) : undefined,
    proof,
    proven,
    boards: explainStock(problem, plan),
    short,
    plan,
    joints,
  };
}

const CUTS = "all ways to cut these pieces from these lengths";

function heldPlan({ problem, system }: OrderQuestion, held: readonly StockCut[]): readonly StockCut[] {
  const wrong = judgeStockPlan(problem, held, stepsOnTape(system));
  if (wrong.length === 0) return held;
  throw new FaultError(
    wrong.slice(0, 5).map((sentence) => ({
      code: "held-plan-misfit",
      at: "/heldPlan",
      wrong: sentence.slice(0, 280),
      cure: "Leave the held plan out, or send the order that it was made for.",
    })),
  );
}

function shortOf({ problem }: OrderQuestion, plan: readonly StockCut[]): ShortPiece[] {
  const longest = Math.max(...problem.stocks.map(({ length }) => length)) - problem.endTrim;
  return [...uncut(problem, plan)].map(([name, count]) => {
    const piece = problem.pieces.find((one) => one.name === name);
    return { name, count, why: (piece?.length ?? 0) > longest ? "too-long" : "stock-lacks" };
  });
}

function layPurchase(
  sheet: Sheet,
  question: OrderQuestion,
  plan: readonly StockCut[],
  proof: PlanProof,
): Pick<StockOrderPlan, "lines" | "total" | "planCost" | "spares"> {
  const { problem, currency, defects } = question;
  sheet.title("stock", "Sticks to buy");
  const spoiled = sheet.input("stock.defects", defects, { label: "sticks set aside for defects", display: "%" });
  const used = sticksOf(plan);
  const paid = problem.stocks.flatMap((stock) => {
    const cut = used.get(stock.name) ?? 0;
    return stock.owned || cut === 0 ? [] : [{ ...stock, cut }];
  });
  const sticks = laySticks(
    sheet,
    { bundle: problem.bundle ?? 1, spoiled, proof },
    paid.map(({ name, cut, length, available }) => ({ name: prefixOf(name), cut, length, available })),
  );
  const lines = paid.map((stock, i) => layLine(sheet, question, stock, sticks[i] as StickCells));
  const spares = {
    // Of all sticks that are paid for and cut; rounded up as on the sheet.
    wanted: aside(spoiled)
      .times(paid.reduce((sum, { cut }) => sum + cut, 0))
      .toDecimalPlaces(9)
      .ceil(),
    // What lies over in a bundle is spare as well.
    had: paid.reduce((sum, { cut }, i) => sum.plus(aside((sticks[i] as StickCells).quantity)).minus(cut), ZERO),
  };
  // What is cut from sticks at hand alone costs nothing; nothing cut has no price.
  if (plan.length === 0 || (lines.length > 0 && lines.every(({ price }) => !price)))
    return { lines, spares, total: undefined, planCost: undefined };
  const digits = minorDigits(currency) ?? 2;
  const each = lines.flatMap(({ asPlanned }) => asPlanned ?? []);
  const total = sumOr(
    lines.flatMap(({ amount }) => amount ?? []),
    currency,
  );
  return {
    lines,
    spares,
    total: sheet.lay("stock.total", total, { label: "all sticks, before tax" }),
    planCost: sheet.lay("stock.planCost", roundMoney(sumOr(each, currency), digits), {
      label: "the plan's sticks, without those set aside",
    }),
  };
}

/** `9' 10 7/16"` to `stock.9ft_10_7_16in`: feet and inches stay apart. */
const prefixOf = (name: string): string =>
  `stock.${name
    .replaceAll("'", "ft")
    .replaceAll('"', "in")
    .replaceAll(/[^0-9A-Za-z]+/g, "_")}`;

function layLine(
  sheet: Sheet,
  { problem, currency, sticks }: OrderQuestion,
  { name, available }: StockLength,
  { planned, spares, quantity: needed }: StickCells,
): OrderLine {
  const slug = prefixOf(name);
  sheet.title(slug, name);
  const stick = sticks.get(name) as Stick;
  const levels = layPrices(sheet, slug.slice(6), name, stick);
  const lots = { bundle: problem.bundle ?? 1, available };
  const bought = layBought({ sheet }, slug, needed, levels, lots);
  const without = layBought({ sheet }, `${slug}.without`, planned, levels, lots);
  const asPlanned = without && times(without.quantity, without.price);
  if (!bought)
    return {
      stock: name,
      planned,
      spares,
      quantity: needed,
      price: undefined,
      amount: undefined,
      asPlanned: undefined,
    };
  const { quantity: count, price } = bought;
  const amount = roundMoney(times(count, price), minorDigits(currency) ?? 2);
  return {
    stock: name,
    planned,
    spares,
    quantity: count,
    price,
    amount: sheet.lay(`${slug}.amount`, amount, { label: "amount" }),
    paid: { measure: count, price, charged: chargedOf(stick) },
    asPlanned,
  };
}

/** Which of a stick's prices come of the order's rate. */
const chargedOf = ({ price, bulk }: Stick): Charged[] =>
  chargedAmong([...(price ? [price] : []), ...bulk.map((lower) => lower.price)]);

function layPrices(sheet: Sheet, slug: string, name: string, { price, bulk, at }: Stick): LevelCell[] {
  if (!price) return [];
  const source = `order, ${at}`;
  return [
    { from: 1, price: layPrice(sheet, slug, price, { label: `price of ${name}`, source }) },
    ...bulk.map(({ from, price: lower }) => {
      const label = `price of ${name}, from ${from} on`;
      return { from, price: layPrice(sheet, `${slug}-from${from}`, lower, { label, source }) };
    }),
  ];
}

/** Rounded down to the minor unit: a bound may be too low, never too high. */
function layBound(sheet: Sheet, { currency, moneyDigits }: OrderQuestion, boundMinor: number, covers: string): Cell {
  const exact = decimal(boundMinor).dividedBy(decimal(10).pow(moneyDigits));
  const value = quantity(exact.toDecimalPlaces(minorDigits(currency) ?? 2, 1), currency);
  return sheet.planned("stock.bound", value, { covers }, { label: "no plan for these pieces costs less than" });
}
