/** Useful boards that could still come out of what a plan leaves of its logs, by section: which, how many, how long. */
import type { Basis } from "./basis.js";
import type { PlannedLogs } from "./plan.js";
import { inUnit, type Quantity, quantity } from "./quantity/quantity.js";
import { markedSection } from "./quantity/text.js";
import type { Sought, SoughtSection } from "./salvage/board-in-part.js";
import { type ExtraBoard, extraBoards, type LeftIn } from "./salvage/extra-boards.js";
import { stepsUp } from "./salvage/sawing-question.js";

/** Boards of one length. */
export interface OfLength {
  readonly steps: number;
  readonly count: number;
}

/** Boards of one section, rough and full; lengths in grid steps, longest first. */
export interface Extras {
  readonly section: string;
  readonly leftIn: LeftIn;
  /** Whether pieces of the structure are sawn to this section. */
  readonly asked: boolean;
  readonly count: number;
  readonly lengths: readonly OfLength[];
  /** The logs that give them, in the order of the plan. */
  readonly logs: readonly { readonly log: string; readonly lengths: readonly OfLength[] }[];
  /** Grid cubes. */
  readonly wood: number;
}

/**
 * Boards an inch thick, by which lumber is reckoned, in the widths sold (PS 20-20, table 3), and 25 mm ones. Lengths
 * worth keeping are an assumption: from 3 ft in whole feet, from 0.9 m in tenths.
 */
const BOARDS = {
  "inch-pound": { unit: "in", thickness: "1", widths: ["4", "6", "8", "10", "12"], least: "36", step: "12" },
  metric: { unit: "mm", thickness: "25", widths: ["100", "150", "200", "250"], least: "900", step: "100" },
} as const;

/** Extras of a plan: those beside its pieces first, then those of lengths it leaves unsawn; within, the most wood first. */
export function extrasOf(basis: Basis, { problem, plan }: PlannedLogs): Extras[] {
  const { sought, labels } = soughtIn(basis, problem.groups);
  const asked = new Set(problem.groups.map(nameOf));
  const found = extraBoards(problem, plan, sought).flatMap(({ log, boards }) =>
    boards.map((board) => ({ ...board, log })),
  );
  return (["sawn", "unsawn"] as const).flatMap((leftIn) => {
    const rows = sought.sections.flatMap((section): Extras[] => {
      const boards = found.filter((board) => board.leftIn === leftIn && board.group === section.name);
      if (boards.length === 0) return [];
      const lengths = byLength(boards);
      const long = lengths.reduce((sum, { steps, count }) => sum + steps * count, 0);
      const logs = [...new Set(boards.map(({ log }) => log))].map((log) => ({
        log,
        lengths: byLength(boards.filter((board) => board.log === log)),
      }));
      const wood = section.thickness * section.width * long;
      const label = labels.get(section.name) as string;
      return [{ section: label, leftIn, asked: asked.has(section.name), count: boards.length, lengths, logs, wood }];
    });
    return rows.sort((a, b) => b.wood - a.wood);
  });
}

/** Sections that pieces are sawn to, that the catalog sells (by their names, sawn full), and boards; the most wood first. */
function soughtIn(
  basis: Basis,
  groups: PlannedLogs["problem"]["groups"],
): { sought: Sought; labels: Map<string, string> } {
  const { gridMm } = basis.sawing;
  const { system } = basis.request;
  const boards = BOARDS[system];
  const steps = (side: Quantity) => stepsUp(inUnit(side, "mm").dividedBy(gridMm));
  const of = (text: string) => steps(quantity(text, boards.unit));
  const sold = basis.catalog.lumber.map(({ section }) => [steps(section.thickness), steps(section.width)] as const);
  const usual = boards.widths.map((width) => [of(boards.thickness), of(width)] as const);
  const wanted = groups.map(({ thickness, width }) => [thickness, width] as const);
  const sections = new Map<string, SoughtSection>();
  for (const sides of [...wanted, ...sold, ...usual]) {
    const [thickness, width] = sides.toSorted((a, b) => a - b) as [number, number];
    sections.set(nameOf({ thickness, width }), { name: nameOf({ thickness, width }), thickness, width });
  }
  const ordered = [...sections.values()].sort(
    (a, b) => b.thickness * b.width - a.thickness * a.width || b.width - a.width,
  );
  const mm = (side: number) => quantity(gridMm.times(side), "mm");
  const label = ({ thickness, width }: SoughtSection) => markedSection(mm(thickness), mm(width), system);
  return {
    sought: { sections: ordered, least: of(boards.least), step: of(boards.step) },
    labels: new Map(ordered.map((section) => [section.name, label(section)])),
  };
}

const nameOf = ({ thickness, width }: Pick<SoughtSection, "thickness" | "width">): string => `${thickness} x ${width}`;

function byLength(boards: readonly ExtraBoard[]): Extras["lengths"] {
  const counts = new Map<number, number>();
  for (const { z0, z1 } of boards) counts.set(z1 - z0, (counts.get(z1 - z0) ?? 0) + 1);
  return [...counts].sort(([a], [b]) => b - a).map(([steps, count]) => ({ steps, count }));
}
