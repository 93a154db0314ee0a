/** Dressing and sanding of milled pieces; fetching, sorting, cutting and light sanding of bought ones. */
import type { Basis } from "../basis.js";
import { easing } from "../effort/building.js";
import { type BoughtWork, layBuying } from "../effort/buying.js";
import type { DressingCells } from "../effort/dressing.js";
import type { GroupBasis } from "../group-basis.js";
import type { ShoppingLine } from "../purchase/line.js";
import { type Cell, minus, type Operand, over, plus, sumOr, times } from "../sheet/expression.js";

/** A group, and how many of its pieces a route mills: undefined where it is bought. */
export interface SplitGroup {
  readonly one: GroupBasis;
  readonly milled: Cell | undefined;
}

/** Dressing, sanding and finishing of a route: hours and faces. */
export interface FinishingCells {
  /** Person-hours, in the order of the work. */
  readonly stages: readonly Cell[];
  /** Faces that go through the planer, and faces that are sanded at the rate of those dressed from rough. */
  readonly planed: Cell;
  readonly sanded: Cell;
  readonly dress: Cell;
  readonly dressByHand: Cell;
  readonly sand: Cell;
  readonly buysLumber: boolean;
  /** To fetch lumber; absent where none is fetched. */
  readonly trips: Cell | undefined;
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
    ? layBuying(basis, key, { bought: split.flatMap(boughtWork), sticks, lumber: request.shop?.lumber })
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
  const sanding = plus(over(faces.sanded, assumed.cell("rate.sand")), easing(easedLength(split), assumed));
  const sand = hours("sand", "sand and ease edges", times(sanding, pace));
  const fetching = buying ? [buying.fetch, buying.sort, buying.cut] : [];
  return {
    stages: [...fetching, dress, dressByHand, sand],
    ...faces,
    dress,
    dressByHand,
    sand,
    buysLumber,
    trips: buying?.trips,
  };
}

function layFaces(
  { sheet, assumed }: Basis,
  key: string,
  split: readonly SplitGroup[],
  units: { readonly area: string },
): { readonly planed: Cell; readonly sanded: Cell } {
  const dressed = split.filter(({ one }) => one.group.rules.surface === "dressed");
  const faces = (of: (one: SplitGroup) => readonly Operand[]) => sumOr(dressed.flatMap(of), "m2");
  const planed = sheet.lay(`${key}.planed`, faces(planedFaces), {
    label: "faces that go through the planer",
    display: units.area,
  });
  const own = faces((one) => ownPieces(one).map(({ pieces, surfaceEach }) => times(pieces, surfaceEach)));
  const bought = faces((one) => comesSmooth(one).map((pieces) => surfaceOf(one.one, pieces)));
  const sanded = sheet.lay(`${key}.sanded`, plus(own, times(bought, assumed.cell("sand.boughtShare"))), {
    label: "faces sanded, those bought smooth by their share",
    display: units.area,
  });
  return { planed, sanded };
}

/** Of milled pieces and of those bought rough, where machines dress them; the sawn faces of those that are ripped down. */
function planedFaces({ one, milled }: SplitGroup): Operand[] {
  const { millable, soldRough, ripDown } = one;
  return [
    ...(milled && millable ? [times(milled, millable.dressing.planedEach)] : []),
    ...boughtPieces({ one, milled }).flatMap((pieces) =>
      [soldRough, ripDown].flatMap((work) => (work ? [times(pieces, work.planedEach)] : [])),
    ),
  ];
}

/** Pieces that are dressed from rough: milled, or bought so. They are sanded all over, and their edges eased. */
function ownPieces({ one, milled }: SplitGroup): { readonly pieces: Operand; readonly surfaceEach: Operand }[] {
  const { millable, soldRough } = one;
  const bought = soldRough ? boughtPieces({ one, milled }) : [];
  return [
    ...(milled && millable ? [{ pieces: milled, surfaceEach: millable.dressing.surfaceEach }] : []),
    ...bought.map((pieces) => ({ pieces, surfaceEach: (soldRough as DressingCells).surfaceEach })),
  ];
}

/** Bought pieces that come with smooth faces and eased edges. */
const comesSmooth = (split: SplitGroup): Operand[] => (split.one.soldRough ? [] : boughtPieces(split));

const surfaceOf = ({ group }: GroupBasis, pieces: Operand): Operand =>
  pieces === group.count ? group.surface : over(times(group.surface, pieces), group.count);

/** Length of the pieces that are dressed from rough. */
function easedLength(split: readonly SplitGroup[]): Operand {
  return sumOr(
    split
      .filter(({ one }) => one.group.rules.surface === "dressed")
      .flatMap((one) => ownPieces(one).map(({ pieces }) => times(pieces, one.one.group.length))),
    "m",
  );
}

/** How many pieces of a group are bought; empty where none is. */
function boughtPieces({ one: { group }, milled }: SplitGroup): Operand[] {
  if (milled === group.count) return [];
  return [milled ? minus(group.count, milled) : group.count];
}

function boughtWork(split: SplitGroup): BoughtWork[] {
  const { group, sold, soldRough: dressing, ripDown } = split.one;
  const { turn, weight } = sold;
  return boughtPieces(split).map((pieces) => ({ group, pieces, turn, weight, dressing, ripDown }));
}
