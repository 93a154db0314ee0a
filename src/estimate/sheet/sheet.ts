/**
 * The sheet: cells in the order they are laid. A cell's formula names only cells already laid, so the order of
 * laying is the order of evaluation, and an override is seen by everything laid after it.
 */
import { type Fault, FaultError, nearest, pointer } from "../faults.js";
import { type Decimal, ZERO } from "../quantity/decimal.js";
import { inUnit, type Quantity, quantity } from "../quantity/quantity.js";
import { onTape, parseQuantity, TextFault } from "../quantity/text.js";
import { describeDimension, parseUnit, type Unit, unit } from "../quantity/unit.js";
import { wholeNumber } from "../quantity/whole.js";
import { evaluateCell } from "./evaluate.js";
import { type Cell, type CellKind, cellsIn, expressionOf, type Operand, type PlanProof } from "./expression.js";
import { shownCell, type Working, workingOf, workingText } from "./working.js";

/** What the user wrote for a cell: `"14 ft"`, or a value beside its unit. */
export type OverrideText = string | { readonly value: string; readonly unit: string };

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
}

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

  /** A value of the request. */
  input(name: string, value: Quantity, notes: CellNotes = {}): Cell {
    return this.leaf("input", name, value, notes);
  }

  /** A named number with low, likely and high, which the user may replace. */
  assumption(name: string, range: Range, notes: CellNotes = {}): Cell {
    const { low, likely, high } = range;
    const to = (q: Quantity): Decimal => inUnit(q, likely.unit);
    return this.leaf("assumption", name, likely, notes, { range: { low: to(low), high: to(high) } });
  }

  /** A price or size of the user's catalog. */
  catalog(name: string, value: Quantity, notes: CellNotes = {}): Cell {
    return this.leaf("catalog", name, value, notes);
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
    return this.add({
      kind: "planned",
      name,
      unit: value.unit,
      value: value.value,
      proof,
      ...this.told(name, value, notes),
    });
  }

  /**
   * A formula over cells already laid.
   * @throws Error when the name is already on the sheet or out of form: a bug in the caller.
   * @throws FaultError when it has no finite value: a division by zero, the root of less than nothing.
   */
  lay(name: string, operand: Operand, notes: CellNotes = {}): Cell {
    const expression = expressionOf(operand);
    const told = this.told(name, { value: ZERO, unit: expression.unit }, notes);
    const put = this.override(name, expression.unit);
    const value = put ?? evaluateCell(name, expression, (cell) => cell.value);
    return this.add({ kind: put ? "override" : "formula", name, unit: expression.unit, value, expression, ...told });
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

  /** As `decide`, of a count. @throws FaultError where the value is not whole, which an override may bring about. */
  decideWhole(cell: Cell): number {
    const value = this.decide(cell);
    if (value.isInteger()) return wholeNumber(value);
    throw new FaultError([
      {
        code: "out-of-range",
        at: cell.kind === "override" ? pointer("/overrides", cell.name) : "",
        wrong: `The cell ${cell.name} (${cell.label}) is ${value.toDecimalPlaces(6).toFixed()}, which is no whole number.`,
        cure: "Override counts with whole numbers only.",
      },
    ]);
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

  /** Faults of overrides that name no cell. Ask when everything is laid. */
  overrideFaults(): Fault[] {
    const unknown = [...this.overrides.keys()].filter((name) => !this.used.has(name));
    return unknown.map((name) => {
      const near = nearest(name, this.byName.keys());
      return {
        code: "unknown-name",
        at: pointer("/overrides", name),
        wrong: `No cell is called ${name.slice(0, 80)}.`,
        cure: near ? `Did you mean ${near}?` : "Take a name from the sheet of an estimate.",
      };
    });
  }

  private leaf(kind: CellKind, name: string, given: Quantity, notes: CellNotes, more: Partial<Cell> = {}): Cell {
    const told = this.told(name, given, notes);
    const put = this.override(name, given.unit);
    return this.add({
      kind: put ? "override" : kind,
      name,
      unit: given.unit,
      value: put ?? given.value,
      ...told,
      ...more,
    });
  }

  private told(name: string, given: Quantity, notes: CellNotes): Pick<Cell, "label" | "display" | "source"> {
    const display =
      typeof notes.display === "string" ? unit(notes.display) : (notes.display ?? given.written ?? given.unit);
    return { label: notes.label ?? name, display, ...(notes.source === undefined ? {} : { source: notes.source }) };
  }

  private override(name: string, like: Unit): Decimal | undefined {
    if (this.overrides.size === 0) return undefined;
    const text = this.overrides.get(name);
    if (text === undefined) return undefined;
    this.used.add(name);
    const found = readOverride(text, like);
    if (found instanceof TextFault) {
      this.faults.push({ code: found.code, at: pointer("/overrides", name), wrong: found.wrong, cure: found.cure });
      return undefined;
    }
    return inUnit(found, like);
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

function readOverride(text: OverrideText, like: Unit): Quantity | TextFault {
  const written = typeof text === "string" ? text : `${text.value} ${text.unit}`.trim();
  if (like.dimension === "" && typeof text !== "string" && text.unit === "") return parseQuantity(text.value, like);
  if (typeof text !== "string" && !parseUnit(text.unit) && text.unit !== "") {
    return new TextFault(
      "not-a-quantity",
      `There is no unit “${text.unit.slice(0, 24)}”.`,
      `Give ${describeDimension(like)}.`,
    );
  }
  return parseQuantity(written, like);
}

/** A plain number as a quantity. */
export function plain(value: number | string | Decimal): Quantity {
  return quantity(value, "");
}
