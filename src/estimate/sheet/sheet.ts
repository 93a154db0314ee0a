/**
 * The sheet: cells in the order they are laid. A cell's formula names only cells already laid, so the order of
 * laying is the order of evaluation, and an override is seen by everything laid after it.
 */
import { type Fault, FaultError, nearest, pointer } from "../faults.js";
import { type Decimal, ZERO } from "../quantity/decimal.js";
import { inUnit, type Quantity, quantity } from "../quantity/quantity.js";
import { onTape } from "../quantity/text.js";
import { type Unit, unit } from "../quantity/unit.js";
import { wholeNumber } from "../quantity/whole.js";
import { blamed, evaluateCell } from "./evaluate.js";
import { type Cell, type CellKind, cellsIn, expressionOf, type Operand, type PlanProof } from "./expression.js";
import { type OverrideText, type Replaced, valueInPlace } from "./overriding.js";
import { shownCell, type Working, workingOf, workingText } from "./working.js";

/** A low / likely / high assumption, in one unit. */
export interface Range {
  readonly low: Quantity;
  readonly likely: Quantity;
  readonly high: Quantity;
}

/** What may be said of a cell when it is laid. */
export interface CellNotes {
  /** Words for people; the name serves where none are given. */
  readonly label?: string;
  /** Unit in which people see it; the unit it was written in, or the held one, where none is given. */
  readonly display?: Unit | string;
  readonly source?: string;
  /** It may be put below zero; otherwise only where it is so by itself. */
  readonly signed?: boolean;
  /** Why the cell can't be overridden, and what may be instead. */
  readonly fixed?: { readonly why: string; readonly instead: string };
}

/** Most things of one kind that code counts out one by one: pieces, panels, rows. Assumption. */
export const MOST_COUNTED = 5000;

const NAME = /^[A-Za-z][A-Za-z0-9_-]*(?:\.[A-Za-z0-9_-]+)*$/;

/** Cells by name, in the order laid. A name is laid once; overrides act here. */
export class Sheet {
  readonly faults: Fault[] = [];
  private readonly byName = new Map<string, Cell>();
  /** Cells that code branched on, and all that they were worked out from, as far as it was traced. */
  private readonly decided = new Set<Cell>();
  private readonly structural = new Set<Cell>();
  private readonly titles = new Map<string, string>();
  private readonly used = new Set<string>();

  /** @param overrides - What the user puts in the place of cells, by name. */
  constructor(private readonly overrides: ReadonlyMap<string, OverrideText> = new Map()) {}

  /** All cells in the order laid. */
  get cells(): readonly Cell[] {
    return [...this.byName.values()];
  }

  /** How many cells there are. */
  get size(): number {
    return this.byName.size;
  }

  /** A value of the request. */
  input(name: string, value: Quantity, notes: CellNotes = {}): Cell {
    return this.put(draft("input", name, value, notes), notes);
  }

  /** A named number with low, likely and high, which the user may replace. */
  assumption(name: string, range: Range, notes: CellNotes = {}): Cell {
    const { low, likely, high } = range;
    const to = (q: Quantity): Decimal => inUnit(q, likely.unit);
    return this.put(draft("assumption", name, likely, notes, { range: { low: to(low), high: to(high) } }), notes);
  }

  /** A price or size of the user's catalog. */
  catalog(name: string, value: Quantity, notes: CellNotes = {}): Cell {
    return this.put(draft("catalog", name, value, notes), notes);
  }

  /** A number that an optimiser found. It is changed by holding another plan, never by an override. */
  planned(name: string, value: Quantity, proof: PlanProof, notes: CellNotes = {}): Cell {
    if (this.overrides.has(name)) {
      this.used.add(name);
      this.faults.push({
        code: "not-overridable",
        at: pointer("/overrides", name),
        wrong: `${name} comes from a plan.`,
        cure: "Hand back a held plan instead, or override what the plan was made from.",
      });
    }
    return this.add(draft("planned", name, value, notes, { proof }));
  }

  /**
   * A formula over cells already laid.
   * @throws Error when the name is already on the sheet or out of form: a bug in the caller.
   * @throws FaultError when it has no finite value: a division by zero, the root of less than nothing.
   */
  lay(name: string, operand: Operand, notes: CellNotes = {}): Cell {
    const expression = expressionOf(operand);
    return this.put(draft("formula", name, { value: ZERO, unit: expression.unit }, notes, { expression }), notes);
  }

  /** Title of a block or line, for every name that begins with this prefix. */
  title(prefix: string, text: string): void {
    this.titles.set(prefix, text);
  }

  titleOf(prefix: string): string | undefined {
    return this.titles.get(prefix);
  }

  find(name: string): Cell | undefined {
    return this.byName.get(name);
  }

  /** Whether the user puts something in the place of a cell of this name, laid or not. */
  isOverridden(name: string): boolean {
    return this.overrides.has(name);
  }

  /** The effective value, for a branch in code. What it was worked out from becomes structural. */
  decide(cell: Cell): Decimal {
    this.decided.add(cell);
    return cell.value;
  }

  /** The same, of a formula that has no cell of its own, in its own unit. @param name - Said where it has no finite value. */
  decideOf(name: string, operand: Operand): Decimal {
    return evaluateCell(name, expressionOf(operand), (cell) => this.decide(cell));
  }

  /** As `decide`, in a unit: `decideIn(length, "ft")`. */
  decideIn(cell: Cell, target: string): Decimal {
    return inUnit({ value: this.decide(cell), unit: cell.unit }, target);
  }

  /**
   * As `decide`, of a count of things that are taken one by one.
   * @throws FaultError where it is not whole, below zero or more than anybody takes, which an override may bring about.
   */
  decideWhole(cell: Cell): number {
    const value = this.decide(cell);
    if (value.isInteger() && value.gte(0) && value.lte(MOST_COUNTED)) return wholeNumber(value);
    const shown = value.toDecimalPlaces(6).toFixed();
    const at = this.blame(cell);
    const what = `The cell ${cell.name} (${cell.label}) is ${shown}`;
    throw new FaultError([
      value.gt(MOST_COUNTED)
        ? { code: "too-large", at, wrong: `${what}; the limit is ${MOST_COUNTED}.`, cure: "Ask for fewer at a time." }
        : {
            code: "out-of-range",
            at,
            wrong: `${what}, which is no count.`,
            cure: "Override counts with whole numbers.",
          },
    ]);
  }

  /** As `decide`, of a length that something is cut to. @throws FaultError where there is none, which an override may bring about. */
  decidePositive(cell: Cell): Decimal {
    const value = this.decide(cell);
    if (value.gt(0)) return value;
    const wrong = `The cell ${cell.name} (${cell.label}) is ${shownCell(cell)}.`;
    throw new FaultError([{ code: "out-of-range", at: this.blame(cell), wrong, cure: "It must be more than zero." }]);
  }

  /** JSON Pointer to what the user put in the place of this cell or of one that it was worked out from; "" where nothing was. */
  blame(cell: Cell): string {
    return blamed([cell], (one) => one.value);
  }

  /** True when a branch in code depends on the cell, so that changing it needs a new estimate. */
  isStructural(cell: Cell): boolean {
    // Traced when somebody asks: most estimates never do.
    for (const root of this.decided) this.markStructural(root);
    this.decided.clear();
    return this.structural.has(cell);
  }

  /** The exact value in a unit, for showing and testing; no branch may depend on it. */
  in(cell: Cell, target: string): Decimal {
    return inUnit({ value: cell.value, unit: cell.unit }, target);
  }

  shown(cell: Cell): string {
    return shownCell(cell);
  }

  /** For sentences: a length as it is marked on wood, anything else as `shown`. */
  onTape(cell: Cell): string {
    return onTape({ value: cell.value, unit: cell.unit }, cell.display);
  }

  working(cell: Cell): Working | undefined {
    return workingOf(cell);
  }

  workingLine(cell: Cell): string {
    const working = workingOf(cell);
    return working ? workingText(working) : shownCell(cell);
  }

  /** Every cell whose value may change when this one does, in the order laid. */
  dependents(cell: Cell): readonly Cell[] {
    const moved = new Set<Cell>([cell]);
    for (const later of this.byName.values()) {
      if (later.kind === "override") continue; // what the user put there stays
      if (later.expression && cellsIn(later.expression).some((part) => moved.has(part))) moved.add(later);
    }
    moved.delete(cell);
    return [...moved];
  }

  /** Of every cell that a formula names, the cells with such a formula: one step of `dependents`, in the order laid. */
  users(): ReadonlyMap<Cell, readonly Cell[]> {
    const users = new Map<Cell, Cell[]>();
    for (const later of this.byName.values()) {
      if (later.kind === "override" || !later.expression) continue;
      for (const part of cellsIn(later.expression)) {
        const known = users.get(part);
        if (known) known.push(later);
        else users.set(part, [later]);
      }
    }
    return users;
  }

  /**
   * Faults of overrides that name no cell. Ask when everything is laid.
   * @param otherwise - What a cell of that name is called here, where it may have another.
   */
  overrideFaults(otherwise: (name: string) => string = (name) => name): Fault[] {
    const unknown = [...this.overrides.keys()].filter((name) => !this.used.has(name));
    return unknown.map((name) => {
      const other = otherwise(name);
      const near = this.byName.has(other) ? other : nearest(other, this.byName.keys());
      return {
        code: "unknown-name",
        at: pointer("/overrides", name),
        wrong: `No cell is called ${name.slice(0, 80)}.`,
        cure: near ? `Did you mean ${near}?` : "Take a name from the sheet of an estimate.",
      };
    });
  }

  /** Lays a cell with its effective value: what the user put in its place, or else its own. */
  private put(cell: Draft, notes: CellNotes): Cell {
    const put = this.override(cell, notes);
    if (put) cell.kind = "override";
    cell.value = put ?? ownValue(cell);
    return this.add(cell);
  }

  private override(laid: Cell, notes: CellNotes): Decimal | undefined {
    const text = this.overrides.get(laid.name);
    if (text === undefined) return undefined;
    this.used.add(laid.name);
    const at = pointer("/overrides", laid.name);
    if (notes.fixed) {
      const { why: wrong, instead: cure } = notes.fixed;
      this.faults.push({ code: "not-overridable", at, wrong, cure });
      return undefined;
    }
    const replaced: Replaced = { ...laid, value: unlessFault(laid), signed: notes.signed ?? false };
    const found = valueInPlace(text, replaced);
    if (!("wrong" in found)) return found;
    this.faults.push({ code: found.code, at, wrong: found.wrong, cure: found.cure });
    return undefined;
  }

  private add(cell: Cell): Cell {
    if (!NAME.test(cell.name)) throw new Error(`a cell can't be called ${cell.name}`);
    const before = this.byName.size;
    this.byName.set(cell.name, cell);
    if (this.byName.size === before) throw new Error(`the cell ${cell.name} is laid twice`);
    return cell;
  }

  private markStructural(cell: Cell): void {
    if (this.structural.has(cell)) return;
    this.structural.add(cell);
    if (cell.expression) for (const part of cellsIn(cell.expression)) this.markStructural(part);
  }
}

/** A cell that is being laid. */
type Draft = { -readonly [Key in keyof Cell]: Cell[Key] };

/**
 * A cell with every field in its place, those that it lacks undefined: with cells of one shape a takeoff takes two thirds of
 * the time that it takes with cells put together from parts.
 */
function draft(kind: CellKind, name: string, given: Quantity, notes: CellNotes, more: Partial<Cell> = NOTHING): Draft {
  const { label = name, display = given.written ?? given.unit, source, fixed } = notes;
  return {
    name,
    label,
    kind,
    unit: given.unit,
    display: typeof display === "string" ? unit(display) : display,
    value: given.value,
    expression: more.expression,
    source,
    range: more.range,
    fixed: fixed && true,
    proof: more.proof,
  };
}

const NOTHING: Partial<Cell> = {};

/** What the cell is without an override: what was given, or what its formula comes to. */
function ownValue({ name, expression, value }: Cell): Decimal {
  return expression ? evaluateCell(name, expression, effective) : value;
}

const effective = (cell: Cell): Decimal => cell.value;

/** A value beneath an override; undefined where it has none, which the override then mends. */
function unlessFault(laid: Cell): Decimal | undefined {
  try {
    return ownValue(laid);
  } catch (error) {
    if (error instanceof FaultError) return undefined;
    throw error;
  }
}

/** A plain number as a quantity. */
export function plain(value: number | string | Decimal): Quantity {
  return quantity(value, "");
}
