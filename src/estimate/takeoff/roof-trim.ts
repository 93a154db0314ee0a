/**
 * Metal trim of a roof: ridge cap, eave trim, rake trim. Each is made of pieces of one length that lap where they meet,
 * and is screwed along its whole length.
 */
import type { DisplayUnits } from "../quantity/display.js";
import { type Cell, count, least, minus, number, over, plus, roundUp, times } from "../sheet/expression.js";
import type { Sheet } from "../sheet/sheet.js";

/** One trim on a roof. */
export interface TrimPlan {
  /** Name of its block of cells. */
  readonly name: string;
  readonly label: string;
  /** How many edges carry it. */
  readonly runs: number;
  /** Of one edge. */
  readonly length: Cell;
  readonly piece: Cell;
  readonly lap: Cell;
  /** Between screws of one row. */
  readonly screwsApart: Cell;
  /** Rows of screws along one run: into the sheets, and into the fascia. */
  readonly rows: { readonly sheet: number; readonly wood: number };
}

/** One trim, all its edges together. */
export interface TrimCells {
  readonly pieces: Cell;
  readonly pieceLength: Cell;
  /** All edges, laps not counted: what is fitted. */
  readonly length: Cell;
  readonly sheetScrews: Cell;
  readonly woodScrews: Cell;
}

/**
 * Lays one trim. n pieces of length p with laps l reach n × (p − l) + l. Either every edge begins with a fresh piece, or
 * an offcut begins the next edge, with at most n − 1 laps over all of them: whichever takes fewer pieces.
 *
 * @param plan - `piece` must be longer than `lap`.
 */
export function layTrim(sheet: Sheet, plan: TrimPlan, units: DisplayUnits): TrimCells {
  const { name, label, piece, lap, rows } = plan;
  const runs = count(plan.runs);
  sheet.title(name, label);
  const length = sheet.lay(`${name}.length`, times(runs, plan.length), {
    label: "length, all edges",
    display: units.long,
  });
  const reach = minus(piece, lap);
  const fresh = times(runs, roundUp(over(minus(plan.length, lap), reach)));
  const carriedOn = roundUp(over(minus(length, lap), reach));
  const pieces = sheet.lay(`${name}.pieces`, plan.runs === 1 ? fresh : least(fresh, carriedOn), { label: "pieces" });
  // One at either end, however short the trim.
  const inRow = sheet.lay(`${name}.inRow`, plus(roundUp(over(plan.length, plan.screwsApart)), number("1")), {
    label: "screws in one row",
  });
  const screws = (into: "sheet" | "wood", words: string) =>
    sheet.lay(`${name}.${into}Screws`, times(count(plan.runs * rows[into]), inRow), { label: words });
  return {
    pieces,
    pieceLength: piece,
    length,
    sheetScrews: screws("sheet", "screws into the sheets"),
    woodScrews: screws("wood", "screws into wood"),
  };
}
