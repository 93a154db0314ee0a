/**
 * Judges a stock plan without knowing how it was made. Plans come back in requests, so nothing about one is believed:
 * not its form, not its names, not its numbers.
 */
import type { StockLength, StockPiece, StockProblem } from "./stock/problem.js";

/** More would bury the reader, and a hostile plan could ask for a million. */
const MOST_MESSAGES = 20;

/** Beyond these a plan is refused unread. Assumption: a hundred times the largest job. */
const MOST_ROWS = 100_000;
const MOST_TIMES = 1_000_000;

/** A length in whole steps, as it is told: to the mark that holds, of what is wanted at least and of what there is at most. */
export type TellSteps = (steps: number, limit: "least" | "most") => string;

/** Pieces that come out of each row of a problem: so many out of each that is cut, and so many that are wanted in all. */
export type PiecesOf = (row: StockPiece) => { readonly each: number; readonly wanted: number };

const ONE_EACH: PiecesOf = ({ count }) => ({ each: 1, wanted: count });

/**
 * What is wrong with a plan, in sentences; empty when it is sound.
 *
 * Sound: every stick exists and there are enough of it; its pieces exist and fit with their kerfs after the ends are
 * trimmed; no piece is cut more often than it is wanted; none is left out that an unused stick could hold. Whether the
 * plan is cheap is not asked.
 *
 * @param plan - Rows of `{ stock, pieces, times }`, as far as anyone knows.
 * @param long - How lengths are told; in steps where nobody reads them.
 * @param pieces - How pieces are counted where several are ripped out of one.
 */
export function judgeStockPlan(
  problem: StockProblem,
  plan: unknown,
  long: TellSteps = (steps) => `${steps} steps`,
  pieces: PiecesOf = ONE_EACH,
): string[] {
  if (!Array.isArray(plan)) return ["The plan is not a list of sticks."];
  if (plan.length > MOST_ROWS) return [`The plan has ${plan.length} rows; ${MOST_ROWS} are read at most.`];
  const known = new Map(problem.pieces.map((piece) => [piece.name, piece]));
  const tally: Tally = { problem, known, pieces, long, cut: new Map(), used: new Map(), wrong: [] };
  for (const [index, row] of plan.entries()) {
    if (tally.wrong.length >= MOST_MESSAGES) break;
    judgeRow(tally, `Row ${index + 1}`, row);
  }
  if (tally.wrong.length === 0) judgeCounts(tally);
  if (tally.wrong.length === 0) judgeLeftOut(tally);
  return tally.wrong.slice(0, MOST_MESSAGES);
}

interface Tally {
  readonly problem: StockProblem;
  readonly known: ReadonlyMap<unknown, StockPiece>;
  readonly pieces: PiecesOf;
  readonly long: TellSteps;
  /** Pieces cut, by name. */
  readonly cut: Map<string, number>;
  /** Sticks used, by name. */
  readonly used: Map<string, number>;
  readonly wrong: string[];
}

function judgeRow({ problem, known, long, cut, used, wrong }: Tally, at: string, row: unknown): void {
  const { stock, pieces, times } = isRecord(row) ? row : {};
  const stick = problem.stocks.find((each) => each.name === stock);
  if (!stick) return void wrong.push(`${at}: no stock is called ${shown(stock)}.`);
  if (typeof times !== "number" || !Number.isInteger(times) || times < 1 || times > MOST_TIMES) {
    return void wrong.push(`${at}: ${shown(times)} is not a number of sticks.`);
  }
  if (!Array.isArray(pieces) || pieces.length === 0 || pieces.length > MOST_ROWS) {
    return void wrong.push(`${at}: a stick needs a list of pieces.`);
  }
  let length = 0;
  for (const name of pieces) {
    const piece = known.get(name);
    if (!piece) return void wrong.push(`${at}: no piece is called ${shown(name)}.`);
    length += piece.length;
    cut.set(piece.name, (cut.get(piece.name) ?? 0) + times);
  }
  used.set(stick.name, (used.get(stick.name) ?? 0) + times);
  length += (pieces.length - 1) * problem.kerf;
  const room = stick.length - problem.endTrim;
  if (length > room) {
    wrong.push(
      `${at}: the pieces and their kerfs take ${long(length, "least")}, and ${shown(stick.name)} has ${long(room, "most")}.`,
    );
  }
}

function judgeCounts({ problem, pieces, cut, used, wrong }: Tally): void {
  for (const stock of problem.stocks) {
    const sticks = used.get(stock.name) ?? 0;
    if (sticks > supply(problem, stock))
      wrong.push(`${sticks} of ${shown(stock.name)} used, ${supply(problem, stock)} to be had.`);
  }
  for (const piece of problem.pieces) {
    const made = cut.get(piece.name) ?? 0;
    const { each, wanted } = pieces(piece);
    if (made > piece.count) wrong.push(`${made * each} of ${shown(piece.name)} cut, ${wanted} wanted.`);
  }
}

/** A piece may be left out only when no stick that could hold it is left. */
function judgeLeftOut({ problem, pieces, cut, used, wrong }: Tally): void {
  const spare = problem.stocks.filter((stock) => (used.get(stock.name) ?? 0) < supply(problem, stock));
  for (const piece of problem.pieces) {
    const made = cut.get(piece.name) ?? 0;
    const { each, wanted } = pieces(piece);
    const stick = spare.find((one: StockLength) => one.length - problem.endTrim >= piece.length);
    if (made < piece.count && stick) {
      const more = Math.min(each, wanted - made * each);
      wrong.push(
        `${made * each} of ${wanted} ${shown(piece.name)} cut; ${shown(stick.name)} would hold ${more === 1 ? "one" : more} more.`,
      );
    }
  }
}

/** Sticks that can be had: whole bundles of what is sold. */
function supply({ bundle = 1 }: StockProblem, { available, owned }: StockLength): number {
  if (available === null) return Number.POSITIVE_INFINITY;
  return owned ? available : available - (available % bundle);
}

function isRecord(value: unknown): value is Record<string, unknown> {
  return typeof value === "object" && value !== null && !Array.isArray(value);
}

/** A value from outside, short enough to print. */
function shown(value: unknown): string {
  const text =
    typeof value === "string" ? `"${value}"` : typeof value === "number" ? String(value) : `a ${typeof value}`;
  return text.length > 60 ? `${text.slice(0, 60)}…` : text;
}
