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

/** What is joined: a group, and the wood of both of its ways. */
export interface Joined {
  readonly group: PieceGroup;
  /** How much slower its wood works than softwood, times, and the turning of one; as it is milled. */
  readonly hardness: Operand;
  readonly turn: Operand;
  /** The same as it is sold. */
  readonly sold: { readonly hardness: Operand; readonly turn: Operand };
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
 * and not layout and fit. Both ends are crosscut, and what is deeper than the saw is turned for it.
 * @param wood - How hard it is, times softwood, and the turning of one piece at one crosscut.
 */
export function jointTime(
  { members, count, rules }: PieceGroup,
  { hardness, turn }: Pick<Joined, "hardness" | "turn">,
  assumed: Assumed,
): Expression {
  const harder = plus(number("1"), times(assumed.cell("joint.byHardness"), minus(hardness, number("1"))));
  const cutting = times(assumed.cell(`joint.${rules.joint}`), harder, assumed.cell("pace"));
  return times(members ?? count, plus(cutting, times(number("2"), turn)));
}

/** Lays the joints of each group, by its name. */
export function layJoints(sheet: Sheet, groups: readonly Joined[], assumed: Assumed): ReadonlyMap<string, JointHours> {
  return new Map(
    groups.map((one) => {
      const { group, sold, millable } = one;
      sheet.title(`work.${group.name}`, group.label);
      const lay = (name: string, label: string, wood: Pick<Joined, "hardness" | "turn">): Cell =>
        sheet.lay(`work.${group.name}.${name}`, jointTime(group, wood, assumed), { label, display: "person-h" });
      if (!millable || (one.hardness === sold.hardness && one.turn === sold.turn)) {
        const only = lay("join", "cut its joints", millable ? one : sold);
        return [group.name, { milled: only, bought: only }] as const;
      }
      const milled = lay("join", "cut its joints, as milled", one);
      return [group.name, { milled, bought: lay("joinBought", "cut its joints, as bought", sold) }] as const;
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
