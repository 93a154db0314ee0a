/**
 * How much a cell moves for a little more of each cell that it is worked out from: the chain rule, from the cell back to what it
 * hangs on, in one sweep and in floats. It ranks; figures that people read are worked out in decimals.
 *
 * Rounding is looked through, of a choice the branch that holds is followed, and a step table rises as its best pack does:
 * so a slope says what to expect of a change that is large beside one pack or one cent.
 */
import type { Factor } from "../quantity/unit.js";
import { TOLD_APART } from "./evaluate.js";
import type { Cell, Expression, Scaled } from "./expression.js";
import { evaluateFloat } from "./float64.js";

const DEGREE = Math.PI / 180;

const ratio = ({ num, den }: Factor): number => num.toNumber() / den.toNumber();

const floatValue = (expression: Expression): number =>
  evaluateFloat(expression, (cell) => cell.value.toNumber()) as number;

const scaledValue = ({ of, factor }: Scaled): number => floatValue(of) * ratio(factor);

/**
 * Slopes of a sum of weighted cells, by the cell that moves; cells that it does not hang on are absent.
 * @param cells - All that may be reached, in the order they were laid.
 * @param weights - What is summed: each cell and what it counts.
 */
export function slopesOf(cells: readonly Cell[], weights: ReadonlyMap<Cell, number>): Map<Cell, number> {
  const slopes = new Map(weights);
  for (let i = cells.length - 1; i >= 0; i--) {
    const cell = cells[i] as Cell;
    const slope = slopes.get(cell);
    if (slope && cell.expression && cell.kind !== "override") spread(cell.expression, slope, slopes);
  }
  return slopes;
}

/** Hands a node's slope on to the cells that it names. */
function spread(node: Expression, slope: number, slopes: Map<Cell, number>): void {
  if (node.kind === "cell") slopes.set(node.cell, (slopes.get(node.cell) ?? 0) + slope);
  for (const [part, by] of slopesInParts(node)) if (by !== 0) spread(part, slope * by, slopes);
}

/** How much a node moves for a little more of each of its parts. */
function slopesInParts(node: Expression): readonly (readonly [Expression, number])[] {
  switch (node.kind) {
    case "number":
    case "cell":
      return [];
    case "plus":
      return [
        [node.left, 1],
        [node.right, ratio(node.factor)],
      ];
    case "minus":
      return [
        [node.left, 1],
        [node.right, -ratio(node.factor)],
      ];
    case "times":
      return [
        [node.left, floatValue(node.right) * ratio(node.factor)],
        [node.right, floatValue(node.left) * ratio(node.factor)],
      ];
    case "over": {
      const below = floatValue(node.right);
      return [
        [node.left, ratio(node.factor) / below],
        [node.right, (-floatValue(node.left) * ratio(node.factor)) / below ** 2],
      ];
    }
    case "sum":
      return node.items.map(({ of, factor }) => [of, ratio(factor)]);
    case "least":
    case "greatest": {
      const { of, factor } = chosen(node.kind, node.items);
      return [[of, ratio(factor)]];
    }
    case "square":
      return [[node.of, 2 * floatValue(node.of) * ratio(node.factor)]];
    case "root": {
      const root = floatValue(node);
      return root > 0 ? [[node.of, 1 / (2 * root)]] : [];
    }
    case "roundUp":
    case "roundMoney":
      return [[node.of, 1]];
    case "arctangent":
      return [[node.of, ratio(node.factor) / (1 + scaledValue(node) ** 2) / DEGREE]];
    case "tangent":
      return [[node.of, ratio(node.factor) * DEGREE * (1 + floatValue(node) ** 2)]];
    case "when":
      return holds(node) ? [[node.yes, 1]] : [[node.otherwise.of, ratio(node.otherwise.factor)]];
    case "steps": {
      const { columns, size } = node.table.beyond;
      return [[node.need.of, ((columns[node.column]?.toNumber() ?? 0) / size) * ratio(node.need.factor)]];
    }
  }
}

/** The least or greatest item; the first of equals. */
const chosen = (kind: "least" | "greatest", items: readonly Scaled[]): Scaled =>
  items.reduce((best, item) => {
    const off = scaledValue(item) - scaledValue(best);
    return (kind === "least" ? off < 0 : off > 0) ? item : best;
  });

function holds({ comparison, left, right }: Extract<Expression, { kind: "when" }>): boolean {
  const [l, r] = [floatValue(left), scaledValue(right)];
  const near = Math.abs(l - r) <= Math.max(TOLD_APART.by, Math.max(Math.abs(l), Math.abs(r)) * TOLD_APART.share);
  return near ? comparison === "atLeast" : l > r;
}
