/**
 * Trim along the edges of a roof: ridge and hip caps, eave and rake trim, drip edge, starter. Metal trim is made of pieces of
 * one length that lap where they meet, and is screwed along its whole length; caps of shingle or tile and strips are bought
 * by the length that a piece, bundle or roll covers.
 */
import type { Fitted } from "../need.js";
import type { DisplayUnits } from "../quantity/display.js";
import {
  type Cell,
  count,
  least,
  minus,
  number,
  type Operand,
  over,
  plus,
  roundUp,
  sum,
  times,
} from "../sheet/expression.js";
import type { Sheet } from "../sheet/sheet.js";
import type { Edge } from "./covering-faces.js";

/** One trim on a roof. */
export interface TrimPlan {
  /** Name of its block of cells. */
  readonly name: string;
  readonly label: string;
  /** Edges that carry it: one at least. */
  readonly edges: readonly Edge[];
  readonly piece: Cell;
  /** Absent where pieces butt, or their laps are in their covered length. */
  readonly lap?: Cell;
  /** Between screws or nails of one row. */
  readonly fixedApart?: Cell;
  /** Rows of screws along one edge: into the sheets, and into wood. */
  readonly rows: { readonly sheet: number; readonly wood: number };
}

/** One trim, all its edges together. */
export interface TrimCells {
  readonly pieces: Cell;
  readonly pieceLength: Cell;
  readonly fitted: Fitted;
  /** All edges, laps not counted: what is fitted. */
  readonly length: Cell;
  readonly sheetScrews: Cell | undefined;
  readonly woodScrews: Cell | undefined;
}

const runsOf = (edges: readonly Edge[]) => edges.reduce((all, edge) => all + edge.count, 0);

const added = (items: readonly Operand[]): Operand => (items.length === 1 ? (items[0] as Operand) : sum(items));

/**
 * Lays one trim. n pieces of length p with laps l reach n × (p − l) + l. Either every edge begins with a fresh piece, or
 * an offcut begins the next edge, with at most n − 1 laps over all of them: whichever takes fewer pieces.
 *
 * @param plan - `piece` must be longer than `lap`.
 */
export function layTrim(sheet: Sheet, plan: TrimPlan, units: DisplayUnits): TrimCells {
  const { name, label, edges, piece } = plan;
  sheet.title(name, label);
  const each = edges.map((edge) => times(count(edge.count), edge.length));
  const length = sheet.lay(`${name}.length`, added(each), { label: "length, all edges", display: units.long });
  const pieces = sheet.lay(`${name}.pieces`, piecesOf(plan, length), { label: "pieces" });
  const fitted: Fitted = { edges, length, ...(plan.lap && { lap: plan.lap }) };
  return { pieces, pieceLength: piece, fitted, length, ...layFixing(sheet, plan) };
}

function piecesOf({ edges, piece, lap }: TrimPlan, length: Cell): Operand {
  if (!lap) return roundUp(over(length, piece));
  const reach = minus(piece, lap);
  const fresh = edges.map((edge) => times(count(edge.count), roundUp(over(minus(edge.length, lap), reach))));
  if (runsOf(edges) === 1) return added(fresh);
  return least(added(fresh), roundUp(over(minus(length, lap), reach)));
}

/** One screw at either end of an edge, however short the trim. */
function layFixing(sheet: Sheet, { name, edges, fixedApart, rows }: TrimPlan) {
  if (!fixedApart) return { sheetScrews: undefined, woodScrews: undefined };
  const inRow = edges.map(({ length }, i) =>
    sheet.lay(`${name}.inRow${i === 0 ? "" : i + 1}`, plus(roundUp(over(length, fixedApart)), number("1")), {
      label: "screws in one row",
    }),
  );
  const screws = (into: "sheet" | "wood", words: string) =>
    sheet.lay(
      `${name}.${into}Screws`,
      added(edges.map((edge, i) => times(count(edge.count * rows[into]), inRow[i] as Cell))),
      { label: words },
    );
  return { sheetScrews: screws("sheet", "screws into the sheets"), woodScrews: screws("wood", "screws into wood") };
}
