/** The sheet as blocks of lines of cells, the same for every face of an estimate. */
import { capital } from "../../estimate/quantity/words.js";
import type { Cell } from "../../estimate/sheet/expression.js";
import type { Sheet } from "../../estimate/sheet/sheet.js";

/** Cells that share a title. */
export interface Line {
  /** What the names of its cells begin with. */
  readonly name: string;
  readonly title: string;
  readonly cells: readonly Cell[];
}

/** Cells of its own, and lines of cells. */
export interface Block extends Line {
  readonly lines: readonly Line[];
}

interface Growing extends Line {
  readonly cells: Cell[];
}

/** Blocks of cells whose names have no title of their own. */
const GATHERED: Readonly<Record<string, readonly [block: string, title: string]>> = {
  own: ["own", "Your own lines"],
  price: ["prices", "Prices and terms"],
  tax: ["prices", "Prices and terms"],
  delivery: ["prices", "Prices and terms"],
  shop: ["prices", "Prices and terms"],
};
const REST = ["assumptions", "Assumptions"] as const;

/** All cells, blocks and lines in the order in which they were laid. */
export function blocksOf(sheet: Sheet): Block[] {
  const blocks = new Map<string, Growing & { readonly lines: Map<string, Growing> }>();
  for (const cell of sheet.cells) {
    const [name, title] = blockOf(sheet, cell);
    const block = blocks.get(name) ?? { name, title, cells: [], lines: new Map<string, Growing>() };
    blocks.set(name, block);
    const place = lineOf(sheet, cell);
    if (!place) {
      block.cells.push(cell);
      continue;
    }
    const line: Growing = block.lines.get(place.name) ?? { ...place, cells: [] };
    block.lines.set(place.name, line);
    line.cells.push(cell);
  }
  return [...blocks.values()].map((block) => ({ ...block, lines: [...block.lines.values()] }));
}

function blockOf(sheet: Sheet, cell: Cell): readonly [string, string] {
  const first = cell.name.split(".", 1)[0] as string;
  const title = sheet.titleOf(first);
  return title === undefined ? (GATHERED[first] ?? REST) : [first, title];
}

/** The longest titled beginning of the name; else its first two parts, where there are three. */
function lineOf(sheet: Sheet, cell: Cell): { readonly name: string; readonly title: string } | undefined {
  const parts = cell.name.split(".");
  for (let length = parts.length - 1; length > 1; length--) {
    const name = parts.slice(0, length).join(".");
    const title = sheet.titleOf(name);
    if (title !== undefined) return { name, title };
  }
  if (parts.length < 3) return undefined;
  return { name: parts.slice(0, 2).join("."), title: spoken(parts[1] as string) };
}

/** `eave-fascia` as words for people. */
const spoken = (part: string) => capital(part.replaceAll(/[-_]/g, " "));
