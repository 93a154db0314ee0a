/**
 * Cutting the joints of each group, in the wood that it is milled of and in the one that is sold for it: harder wood is
 * slower. Each route takes of both as many as it mills and buys.
 */
import type { PieceGroup } from "../pieces/piece-group.js";
import type { Assumed } from "../request/assumed.js";
import {
  type Cell,
  type Expression,
  minus,
  number,
  type Operand,
  over,
  plus,
  sumOr,
  times,
} from "../sheet/expression.js";
import type { Sheet } from "../sheet/sheet.js";

/** What is joined: a group, the wood of both of its ways, and the turning of a piece at a deep crosscut. */
export interface Joined {
  readonly group: PieceGroup;
  /** How much slower its wood works than softwood, times; as it is milled, and as it is sold. */
  readonly hardness: Operand;
  readonly soldHardness: Operand;
  readonly turn: Cell;
  /** Absent where it can only be bought. */
  readonly millable?: unknown;
}

/** Person-hours of the joints of all pieces of a group, all milled or all bought; the same cell where the wood is as hard. */
export interface JointHours {
  readonly milled: Cell;
  readonly bought: Cell;
}

/**
 * Person-time of the joints of all pieces of a group. Harder wood than the rates are for is slower to cut, in the share that is cutting
 * and not layout and fit.
 * @param hardness - Of the wood, times that of softwood.
 */
export function jointTime(
  { group, turn }: Pick<Joined, "group" | "turn">,
  hardness: Operand,
  assumed: Assumed,
): Expression {
  const harder = plus(number("1"), times(assumed.cell("joint.byHardness"), minus(hardness, number("1"))));
  const cutting = times(assumed.cell(`joint.${group.rules.joint}`), harder, assumed.cell("pace"));
  return times(group.members ?? group.count, plus(cutting, times(number("2"), turn)));
}

/** Lays the joints of each group, by its name. */
export function layJoints(sheet: Sheet, groups: readonly Joined[], assumed: Assumed): ReadonlyMap<string, JointHours> {
  return new Map(
    groups.map((one) => {
      const { group, hardness, soldHardness, millable } = one;
      sheet.title(`work.${group.name}`, group.label);
      const lay = (name: string, label: string, of: Operand): Cell =>
        sheet.lay(`work.${group.name}.${name}`, jointTime(one, of, assumed), { label, display: "person-h" });
      if (!millable || hardness === soldHardness) {
        const only = lay("join", "cut its joints", millable ? hardness : soldHardness);
        return [group.name, { milled: only, bought: only }] as const;
      }
      const milled = lay("join", "cut its joints, as milled", hardness);
      return [group.name, { milled, bought: lay("joinBought", "cut its joints, as bought", soldHardness) }] as const;
    }),
  );
}

/** How many pieces of a group a route mills: undefined where none. */
interface Split {
  readonly one: { readonly group: PieceGroup };
  readonly milled: Cell | undefined;
}

/** Lays the stage of a route that cuts them. */
export function layJoining(
  sheet: Sheet,
  key: string,
  split: readonly Split[],
  joints: ReadonlyMap<string, JointHours>,
): Cell {
  const parts = split.flatMap(({ one: { group }, milled }): Operand[] => {
    const hours = joints.get(group.name);
    if (!hours) return [];
    if (!milled) return [hours.bought];
    if (milled === group.count || hours.milled === hours.bought) return [hours.milled];
    const share = over(milled, group.count);
    return [times(hours.milled, share), times(hours.bought, minus(number("1"), share))];
  });
  return sheet.lay(`${key}.hours.join`, sumOr(parts, "person-h"), { label: "cut joints", display: "person-h" });
}
