/** Dressing and sanding of milled pieces; fetching, sorting, cutting and light sanding of bought ones. */
import type { Basis, GroupBasis } from "../basis.js";
import { easing } from "../effort/building.js";
import { type BoughtWork, layBuying } from "../effort/buying.js";
import type { ShoppingLine } from "../purchase/line.js";
import { type Cell, minus, number, type Operand, over, plus, sumOr, times } from "../sheet/expression.js";

/** A group, and how many of its pieces a route mills: undefined where it is bought. */
export interface SplitGroup {
  readonly one: GroupBasis;
  readonly milled: Cell | undefined;
}

/** Dressing, sanding and finishing of a route: hours and faces. */
export interface FinishingCells {
  /** Person-hours, in the order of the work. */
  readonly stages: readonly Cell[];
  /** Faces that are planed, and faces that are sanded at the milled pieces' rate. */
  readonly planed: Cell;
  readonly sanded: Cell;
  readonly dress: Cell;
  readonly dressByHand: Cell;
  readonly sand: Cell;
  readonly buysLumber: boolean;
}

/** Lays the stages between sawn or bought lumber and pieces ready to be joined. */
export function layFinishing(
  basis: Basis,
  key: string,
  split: readonly SplitGroup[],
  lumberLines: readonly ShoppingLine[],
): FinishingCells {
  const { sheet, assumed, units, request } = basis;
  const pace = assumed.cell("pace");
  const hours = (name: string, label: string, formula: Operand) =>
    sheet.lay(`${key}.hours.${name}`, formula, { label, display: "person-h" });
  const faces = layFaces(basis, key, split, units);
  const buysLumber = lumberLines.length > 0;
  const sticks = sumOr(
    lumberLines.map(({ quantity }) => quantity),
    "",
  );
  const buying = buysLumber
    ? layBuying(sheet, key, split.flatMap(boughtWork), sticks, request.shop?.lumber, assumed)
    : undefined;
  const dressing = (by: "byMachine" | "byHand", bought: Operand | undefined) => {
    const own = split.flatMap(({ one, milled }) =>
      milled && one.millable ? [times(milled, one.millable.dressing[by])] : [],
    );
    return sumOr([...own, ...(bought ? [bought] : [])], "person-h");
  };
  const dress = hours("dress", "dress to finished size by machine", dressing("byMachine", buying?.dress));
  const dressByHand = hours(
    "dressByHand",
    "dress by hand what the machines do not take",
    dressing("byHand", buying?.dressByHand),
  );
  const sanding = plus(over(faces.sanded, assumed.cell("rate.sand")), easing(milledLength(split), assumed));
  const sand = hours("sand", "sand and ease edges", times(sanding, pace));
  const fetching = buying ? [buying.fetch, buying.sort, buying.cut] : [];
  return { stages: [...fetching, dress, dressByHand, sand], ...faces, dress, dressByHand, sand, buysLumber };
}

function layFaces(
  { sheet, assumed }: Basis,
  key: string,
  split: readonly SplitGroup[],
  units: { readonly area: string },
): { readonly planed: Cell; readonly sanded: Cell } {
  const dressed = split.filter(({ one }) => one.group.rules.surface === "dressed");
  const own = dressed.flatMap(({ one, milled }) =>
    milled && one.millable ? [times(milled, one.millable.dressing.surfaceEach)] : [],
  );
  const planed = sheet.lay(`${key}.planed`, sumOr(own, "m2"), { label: "faces planed", display: units.area });
  const bought = sumOr(
    dressed.map(({ one, milled }) => boughtShare(one.group.surface, one, milled, "0 m2")),
    "m2",
  );
  const sanded = sheet.lay(`${key}.sanded`, plus(planed, times(bought, assumed.cell("sand.boughtShare"))), {
    label: "faces sanded, bought ones by their share",
    display: units.area,
  });
  return { planed, sanded };
}

/** Length of the dressed pieces that are milled: bought ones come with their edges eased. */
function milledLength(split: readonly SplitGroup[]): Operand {
  return sumOr(
    split.flatMap(({ one: { group }, milled }) =>
      milled && group.rules.surface === "dressed" ? [times(milled, group.length)] : [],
    ),
    "m",
  );
}

/** Of something that all pieces of a group have together, the share of the bought ones. */
function boughtShare(whole: Operand, { group }: GroupBasis, milled: Cell | undefined, nothing: string): Operand {
  if (!milled) return whole;
  if (milled === group.count) return number(nothing);
  return over(times(whole, minus(group.count, milled)), group.count);
}

function boughtWork({ one, milled }: SplitGroup): BoughtWork[] {
  if (milled === one.group.count) return [];
  const pieces = milled ? minus(one.group.count, milled) : one.group.count;
  return [
    { group: one.group, pieces, turn: one.turn, weight: one.weightEach, dressing: one.soldRough, ripDown: one.ripDown },
  ];
}
