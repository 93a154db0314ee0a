/** What a drawing asks of the structure: cells as millimetres to draw by, and as the words that stand in it. */
import type { Basis } from "../../../estimate/basis.js";
import { pieceMarks } from "../../../estimate/pieces/cut-list.js";
import type { PieceGroup } from "../../../estimate/pieces/piece-group.js";
import { type MeasureSystem, marked, markedSection, markedSmall, shown } from "../../../estimate/quantity/text.js";
import type { Cell } from "../../../estimate/sheet/expression.js";
import type { View } from "./view.js";

/** Finished section, in millimetres. */
export interface Section {
  readonly t: number;
  readonly w: number;
}

/** What the structure has none of is drawn without size. */
export const NONE: Section = { t: 0, w: 0 };

/** To draw by; what is read in a drawing comes from the cell itself. */
export const mm = (cell: Cell): number => cell.value.toNumber();

export class Subject {
  readonly system: MeasureSystem;
  private readonly marks: ReadonlyMap<string, readonly string[]>;

  constructor(private readonly basis: Basis) {
    this.system = basis.request.system;
    this.marks = pieceMarks(basis.sheet, basis.cutList.groups);
  }

  /** Whether rafter tails are cut square, and whether the last rafter bay is what is left over. */
  get asked(): { readonly squareTail: boolean; readonly shortLast: boolean } {
    const { structure } = this.basis.request;
    const shape = structure.kind === "pieces" || structure.kind === "pergola" ? {} : structure;
    return {
      squareTail: "rafterTail" in shape && shape.rafterTail === "square",
      shortLast: "rafterBays" in shape && shape.rafterBays === "short-last",
    };
  }

  /** A length of the building as it is marked; millimetres bare, for the page says so. */
  long(cell: Cell): string {
    return marked({ value: cell.value, unit: cell.unit }, this.system).replace(/ mm$/, "");
  }

  /** A length across a piece as it is marked. */
  small(cell: Cell): string {
    const { value, unit } = cell;
    return this.system === "metric" ? this.long(cell) : markedSmall({ value, unit }, this.system).replace(/ in$/, '"');
  }

  angle(cell: Cell): string {
    return shown({ value: cell.value, unit: cell.unit }, cell.display).replace(/ deg$/, "°");
  }

  /** A whole number of the sheet that says how often something is drawn. */
  count(cell: Cell): number {
    return cell.value.toNumber();
  }

  cell(name: string): Cell {
    const found = this.basis.sheet.find(name);
    if (!found) throw new Error(`there is no cell ${name} to draw by`);
    return found;
  }

  /** Undefined where the structure has nothing of the kind. */
  known(name: string): Cell | undefined {
    return this.basis.sheet.find(name);
  }

  /** Pieces that share a section's cells: `beams` are end and middle beams. @param place - Of one wall alone, such as `left`. */
  groupsOf(base: string, place?: string): PieceGroup[] {
    const { groups } = this.basis.cutList;
    const all = groups.filter(({ thickness }) => thickness.name === `sections.${base}.thickness`);
    return place === undefined ? all : all.filter(({ name }) => `${name}-`.startsWith(`${base}-${place}-`));
  }

  /** Groups that the request lists itself, whole or beside a frame. */
  get listed(): readonly PieceGroup[] {
    const { structure } = this.basis.request;
    const own = structure.kind === "pieces" ? structure.pieces : (structure.extraPieces ?? []);
    const names = new Set(own.map(({ name }) => name));
    return this.basis.cutList.groups.filter(({ name }) => names.has(name));
  }

  /** Undefined where the structure has none of them. */
  section(base: string): Section | undefined {
    const group = this.groupsOf(base)[0];
    return group && { t: mm(group.thickness), w: mm(group.width) };
  }

  /** `Posts, 6 × 6 in, P-01 to P-08`. */
  words(base: string, place?: string): string {
    const groups = this.groupsOf(base, place);
    // Of several lengths of a kind the words of the first say which; here they stand for all.
    const label = (groups[0] as PieceGroup).label.replace(/ \(.*\)$/, "").replace(/ \d+$/, "");
    return this.wordsOf(label, groups);
  }

  /** The same of groups of one section, under a name. */
  wordsOf(label: string, groups: readonly PieceGroup[]): string {
    const [first] = groups as readonly [PieceGroup];
    const marks = groups.flatMap(({ name }) => this.marks.get(name) ?? []);
    const { unit } = first.thickness;
    const size = markedSection({ value: first.thickness.value, unit }, { value: first.width.value, unit }, this.system);
    const range = marks.length > 1 ? `${marks[0]} to ${marks.at(-1)}` : marks[0];
    return `${label}, ${size}, ${range}`;
  }
}

/** A view and the words for the numbers in it. */
export interface Keyed {
  readonly view: View;
  readonly key: readonly string[];
}

/** The key of a page, filled as parts are pointed at. */
export class Key {
  readonly lines: string[] = [];
  constructor(
    private readonly subject: Subject,
    private readonly view: View,
    /** The wall that it is the key of. */
    private readonly place?: string,
  ) {}

  /** Points at a part, if the structure has it. */
  part(base: string, at: readonly [number, number], away: readonly [number, number]): void {
    if (this.subject.groupsOf(base, this.place).length === 0) return;
    this.lines.push(this.subject.words(base, this.place));
    this.view.point(this.lines.length, at, away);
  }
}
