/**
 * Useful boards that could still come out of what a sawing plan leaves over: waste slabs, edges, offcuts, and bolts of
 * the used logs that are not sawn.
 *
 * No search: from each part that is left, the board with the most wood is taken that fits its sound wood, in its longest
 * useful length; then the same from what that leaves. The cuts go on where the plan's own end, so that plan and extras
 * together are a plan that the judge can try.
 */

import { bestBoard, type Sought } from "./board-in-part.js";
import { layBolt, passesMill, ripTool } from "./bolt.js";
import { type Part, walkCuts } from "./cut-walk.js";
import type {
  LogPlan,
  SawCut,
  SawingPlan,
  SawingProblem,
  SawLog,
  SawnPiece,
  SawShop,
  SawTool,
} from "./sawing-problem.js";

/** Where an extra comes from: beside the plan's pieces, or from a length of a used log that the plan does not saw. */
export type LeftIn = "sawn" | "unsawn";

/** A board beyond the plan: `group` names the section sought; its box in grid steps, as of the plan's pieces. */
export interface ExtraBoard extends SawnPiece {
  readonly leftIn: LeftIn;
}

/** Extras of one log, and all of its cuts: the plan's, then those that free the extras. */
export interface ExtrasOfLog {
  readonly log: string;
  readonly cuts: readonly SawCut[];
  readonly boards: readonly ExtraBoard[];
}

/** Fills what is left of every log that the plan saws. */
export function extraBoards(problem: SawingProblem, plan: SawingPlan, sought: Sought): ExtrasOfLog[] {
  return plan.logs.flatMap((logPlan) => {
    const log = problem.logs.find(({ name }) => name === logPlan.log);
    return log === undefined || logPlan.pieces.length === 0
      ? []
      : [new Leftovers(log, problem.shop, logPlan, sought).fill()];
  });
}

/** A part with its number, and the bolt whose sawing axis it is drawn about. */
interface Left {
  readonly number: number;
  readonly part: Part;
  readonly bolt: readonly [z0: number, z1: number];
  readonly leftIn: LeftIn;
}

class Leftovers {
  private readonly cuts: SawCut[];
  private readonly boards: ExtraBoard[] = [];

  constructor(
    private readonly log: SawLog,
    private readonly shop: SawShop,
    private readonly plan: LogPlan,
    private readonly sought: Sought,
  ) {
    this.cuts = [...plan.cuts];
  }

  fill(): ExtrasOfLog {
    const { parts, bolts } = walkCuts(this.log, this.plan);
    const pieces = new Set(this.plan.pieces.map(({ part }) => part));
    for (const [number, part] of parts) {
      if (pieces.has(number) || isGone(part)) continue;
      const own = bolts[part.bolt];
      if (own === undefined) this.fillRound(number, part);
      else this.fillPart({ number, part, bolt: own, leftIn: "sawn" });
    }
    return { log: this.log.name, cuts: this.cuts, boards: this.boards };
  }

  /** A length not sawn: as long a bolt as the mill takes from its thicker end, then the rest. */
  private fillRound(number: number, part: Part): void {
    const { longestBolt, buckKerf } = this.shop;
    const [lo, hi] = part.z;
    if (hi - lo > longestBolt) {
      const [rest, bolt] = this.cut("buck", "z", { number, part }, hi - longestBolt - buckKerf, hi - longestBolt);
      this.fillRound(bolt.number, bolt.part);
      if (!isGone(rest.part)) this.fillRound(rest.number, rest.part);
    } else if (passesMill(layBolt(this.log, this.shop, lo, hi), this.shop)) {
      this.fillPart({ number, part, bolt: part.z, leftIn: "unsawn" });
    }
  }

  /** Cuts the best board out of a part, freeing it across, then along, then to length; fills what falls off. */
  private fillPart(left: Left): void {
    const { log, shop } = this;
    const board = bestBoard({ log, shop, bolt: left.bolt }, left.part, this.sought);
    if (board === null) return;
    const fallen: Left[] = [];
    let rest: Pick<Left, "number" | "part"> = left;
    const cutTo = (axis: "x" | "y" | "z", tool: SawTool, kerf: number) => {
      const [lo, hi] = board[axis];
      if (rest.part[axis][1] > hi) {
        const [below, above] = this.cut(tool, axis, rest, hi, hi + kerf);
        fallen.push({ ...left, ...above });
        rest = below;
      }
      if (rest.part[axis][0] < lo) {
        const [below, above] = this.cut(tool, axis, rest, lo - kerf, lo);
        fallen.push({ ...left, ...below });
        rest = above;
      }
    };
    cutTo("y", "mill", shop.millKerf);
    const { tool, kerf } = ripTool(shop, board.y[1] - board.y[0]);
    cutTo("x", tool, kerf);
    cutTo("z", "cross", shop.crossKerf);
    const { section, x, y, z } = board;
    const box = { x0: x[0], x1: x[1], y0: y[0], y1: y[1], z0: z[0], z1: z[1] };
    this.boards.push({ group: section.name, part: rest.number, ...box, leftIn: left.leftIn });
    for (const one of fallen) if (!isGone(one.part)) this.fillPart(one);
  }

  private cut(
    tool: SawTool,
    axis: SawCut["axis"],
    { number, part }: Pick<Left, "number" | "part">,
    lo: number,
    hi: number,
  ) {
    const index = this.cuts.length;
    this.cuts.push({ tool, axis, part: number, lo, hi });
    const side = (span: readonly [number, number]): Part => ({ ...part, [axis]: span });
    return [
      { number: 2 * index + 1, part: side([part[axis][0], lo]) },
      { number: 2 * index + 2, part: side([hi, part[axis][1]]) },
    ] as const;
  }
}

/** Whether a kerf has taken the whole of a part. */
function isGone({ x, y, z }: Part): boolean {
  return x[1] <= x[0] || y[1] <= y[0] || z[1] <= z[0];
}
