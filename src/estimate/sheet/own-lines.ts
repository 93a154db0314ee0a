/**
 * The user's own lines (a crane day, a permit): plain arithmetic over cells already laid and over one another.
 * They are read, sorted by dependence and laid as cells `own.<name>`. Whatever is wrong with them is a fault.
 */
import { type Fault, type FaultCode, FaultError, pointer } from "../faults.js";
import { quote } from "../quantity/text.js";
import { minorDigits, type Unit, unit } from "../quantity/unit.js";
import { type Cell, type Expression, partsOf, roundMoney } from "./expression.js";
import { FormulaFault, type FormulaNode, namesIn, parseFormula } from "./own-formula.js";
import { buildFormula, HOURS_CURE, LineFault, mixesHours, moneyOf, OWN_PREFIX } from "./own-tree.js";
import type { Sheet } from "./sheet.js";

/** A line as the user writes it. */
export interface OwnLine {
  /** The cell is called `own.<name>`. */
  readonly name: string;
  /** Words for people. */
  readonly label: string;
  /** See `own-formula.ts`. */
  readonly formula: string;
  /** Section of the shopping list under which the line is shown. */
  readonly department?: string;
}

/** A line that has been read; `index` is its place in the request. */
export interface ReadLine {
  readonly line: OwnLine;
  readonly index: number;
  readonly tree: FormulaNode;
}

/** A line on the sheet, and the total that it belongs to. */
export interface LaidLine {
  readonly line: OwnLine;
  readonly cell: Cell;
  /** Money is rounded to its minor unit; hours are person-hours; the rest is a number for other lines to use. */
  readonly counts: "money" | "hours" | "other";
}

/** The lines on the sheet, in the order of the request, and what is wrong with the others. */
export interface OwnLinesResult {
  readonly cells: readonly LaidLine[];
  /** Ask when everything is laid: a name may be that of a cell that was laid later. */
  readonly faults: () => readonly Fault[];
}

/** How the lines are laid. */
export interface OwnLineOptions {
  /** JSON Pointer of the list of lines in the request. */
  readonly at?: string;
  /** ISO 4217 code of the estimate; a line of other money is refused. Any is taken where none is given. */
  readonly currency?: string;
}

/** Most lines of one request: an assumption of what a person writes. */
export const MOST_OWN_LINES = 200;

const LINE_NAME = /^[A-Za-z0-9](?:[A-Za-z0-9_-]{0,58}[A-Za-z0-9])?$/;

/** Reads the lines and puts them in an order in which each names only what comes before it. */
export function ownLines(lines: readonly OwnLine[], at = "/lines"): { lines: readonly ReadLine[]; faults: Fault[] } {
  if (lines.length > MOST_OWN_LINES) {
    const wrong = `There are ${lines.length} lines.`;
    return { lines: [], faults: [{ code: "too-large", at, wrong, cure: `Give at most ${MOST_OWN_LINES}.` }] };
  }
  const faults: Fault[] = [];
  const read = new Map<string, ReadLine>();
  const taken = new Set<string>();
  for (const [index, line] of lines.entries()) {
    const found = readLine(line, index, taken, at);
    taken.add(line.name);
    if ("tree" in found) read.set(line.name, found);
    else faults.push(found);
  }
  const sorted = sortByDependence(read, at);
  return { lines: sorted.lines, faults: [...faults, ...sorted.faults] };
}

function readLine(line: OwnLine, index: number, taken: ReadonlySet<string>, at: string): ReadLine | Fault {
  const fault = (code: FaultCode, field: string, wrong: string, cure: string): Fault => {
    return { code, at: pointer(at, index, field), wrong, cure };
  };
  if (!LINE_NAME.test(line.name)) {
    const cure = "Use up to 60 letters, digits, hyphens and underscores, such as crane-day.";
    return fault("wrong-shape", "name", `A line can't be called ${quote(line.name)}.`, cure);
  }
  if (taken.has(line.name)) {
    return fault("duplicate-name", "name", `Two lines are called ${line.name}.`, "Give each line a name of its own.");
  }
  const tree = parseFormula(line.formula);
  return tree instanceof FormulaFault ? fault("bad-formula", "formula", tree.wrong, tree.cure) : { line, index, tree };
}

/** Lines of one's own that a line names. */
function needs(line: ReadLine): readonly string[] {
  return namesIn(line.tree).flatMap((name) => (name.startsWith(OWN_PREFIX) ? [name.slice(OWN_PREFIX.length)] : []));
}

/** Depth first, in the order written. Lines in a circle are left out, with one fault a circle. */
function sortByDependence(lines: ReadonlyMap<string, ReadLine>, at: string) {
  const sorted: ReadLine[] = [];
  const faults: Fault[] = [];
  const done = new Set<string>();
  const path: string[] = [];
  const visit = (name: string): void => {
    const line = lines.get(name);
    if (!line || done.has(name)) return;
    const begin = path.indexOf(name);
    if (begin >= 0) {
      faults.push(circle(path.slice(begin), lines, at));
      return;
    }
    path.push(name);
    for (const other of needs(line)) visit(other);
    path.pop();
    done.add(name);
    sorted.push(line);
  };
  for (const name of lines.keys()) visit(name);
  return { lines: sorted, faults };
}

function circle(names: readonly string[], lines: ReadonlyMap<string, ReadLine>, at: string): Fault {
  const path = [...names, names[0] as string].map((name) => OWN_PREFIX + name).join(" → ");
  return {
    code: "circular-lines",
    at: pointer(at, (lines.get(names[0] as string) as ReadLine).index, "formula"),
    wrong: `These lines refer to one another in a circle: ${path}.`,
    cure: "Let one of them do without the next.",
  };
}

/**
 * Lays the lines on the sheet, after everything that they may name.
 *
 * A line that names a faulty one is left out without a fault of its own. Never throws on what a user may write.
 */
export function layOwnLines(
  sheet: Sheet,
  lines: readonly OwnLine[],
  { at = "/lines", currency }: OwnLineOptions = {},
): OwnLinesResult {
  const read = ownLines(lines, at);
  const wrong: { readonly fault: LineFault; readonly index: number }[] = [];
  const laid = new Map<number, LaidLine>();
  const own = new Set(lines.map((line) => OWN_PREFIX + line.name));
  for (const one of read.lines) {
    if (needs(one).some((name) => own.has(OWN_PREFIX + name) && !sheet.find(OWN_PREFIX + name))) continue;
    const found = layLine(sheet, one, own, currency);
    if (found instanceof LineFault) wrong.push({ fault: found, index: one.index });
    else laid.set(one.index, found);
  }
  const cells = [...laid].sort(([a], [b]) => a - b).map(([, line]) => line);
  const told = ({ fault, index }: (typeof wrong)[number]): Fault => {
    const { code, wrong, cure } = laidLater(sheet, fault) ?? fault;
    return { code, at: pointer(at, index, "formula"), wrong, cure };
  };
  return { cells, faults: () => [...read.faults, ...wrong.map(told)] };
}

/** What is wrong where a line names a cell that is worked out from the lines, or beside them. */
function laidLater(sheet: Sheet, { code, unknown }: LineFault): Omit<Fault, "at"> | undefined {
  if (unknown === undefined || !sheet.find(unknown)) return undefined;
  const wrong = `The cell ${unknown} is worked out after your lines, which count in the totals of every route.`;
  return { code, wrong, cure: "Name cells of the structure, the pieces, the takeoffs, the logs, labor and prices." };
}

/** Lines that come to neither money nor hours of work and that no other line names: they would count for nothing. */
export function idleFaults(laid: readonly LaidLine[], lines: readonly OwnLine[], at: string): Fault[] {
  const named = new Set(ownLines(lines, at).lines.flatMap(needs));
  return laid.flatMap(({ line, cell, counts }): Fault[] => {
    if (counts !== "other" || named.has(line.name)) return [];
    const isTime = cell.unit.dimension === unit("h").dimension;
    const wrong = `The line ${line.name} comes to ${isTime ? "hours on the clock" : "no money and no hours"}, and no line names it.`;
    const cure = isTime ? HOURS_CURE : "Let it come to money or person-h, or name it in another line.";
    return [{ code: "wrong-dimension", at: pointer(at, lines.indexOf(line), "formula"), wrong, cure }];
  });
}

function layLine(
  sheet: Sheet,
  { line, tree }: ReadLine,
  own: ReadonlySet<string>,
  currency: string | undefined,
): LaidLine | LineFault {
  const name = OWN_PREFIX + line.name;
  if (sheet.find(name)) {
    return new LineFault("duplicate-name", `A cell is called ${name} already.`, "Give the line another name.");
  }
  const formula = buildFormula(tree, sheet, own);
  if (formula instanceof LineFault) return formula;
  if (mixesHours(formula.unit)) {
    const wrong = `The line comes out in ${formula.unit.symbol}: hours on the clock and hours of work are mixed.`;
    return new LineFault("wrong-dimension", wrong, HOURS_CURE);
  }
  const money = moneyOf(formula.unit);
  if (money !== undefined && currency !== undefined && money !== currency) {
    const wrong = `The line comes out in ${money}, and the estimate is in ${currency}.`;
    return new LineFault("currency-mix", wrong, `Give amounts in ${currency}.`);
  }
  const rounded = money === undefined ? formula : roundMoney(formula, minorDigits(money) ?? 2);
  try {
    const cell = sheet.lay(name, rounded, {
      label: line.label,
      display: displayOf(formula),
      source: "a line of your own",
    });
    const hours = formula.unit.dimension === unit("person-h").dimension;
    return { line, cell, counts: money !== undefined ? "money" : hours ? "hours" : "other" };
  } catch (error) {
    if (!(error instanceof FaultError)) throw error;
    const [fault] = error.faults as [Fault];
    return new LineFault(fault.code, fault.wrong, fault.cure);
  }
}

/** The first unit in the formula that measures what the line does: a sum of feet is shown in feet. */
function displayOf(formula: Expression): Unit {
  const shown = (node: Expression): Unit | undefined => {
    if (node.kind === "cell" || node.kind === "number") {
      const written = node.kind === "cell" ? node.cell.display : node.written;
      return written.dimension === formula.unit.dimension ? written : undefined;
    }
    for (const part of partsOf(node)) {
      const found = shown(part);
      if (found) return found;
    }
    return undefined;
  };
  return shown(formula) ?? formula.unit;
}
