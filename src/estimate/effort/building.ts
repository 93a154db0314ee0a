/** Work that both routes share: joints, trial assembly, raising. Per group, so that a removed group takes its work along. */
import type { PieceGroup } from "../pieces/piece-group.js";
import type { Assumed } from "../request/assumed.js";
import type { Role } from "../request/structure.js";
import { type Cell, number, over, sumOr, times } from "../sheet/expression.js";
import type { Sheet } from "../sheet/sheet.js";

export interface BuildingCells {
  readonly join: Cell;
  readonly trialAssemble: Cell;
  readonly raise: Cell;
}

const RAISE: Readonly<Record<Role, string>> = {
  post: "raise.timber",
  beam: "raise.timber",
  tie: "raise.timber",
  brace: "raise.timber",
  ridge: "raise.rafters",
  rafter: "raise.rafters",
  purlin: "raise.purlins",
  board: "raise.purlins",
  fascia: "raise.other",
  other: "raise.other",
};

/** Pieces whose joints are tried and marked on the ground before raising. */
const TRIED: ReadonlySet<Role> = new Set(["post", "beam", "tie", "brace"]);

/** Lays hours by stage over all groups. Fascia is fitted with the trim. */
export function layBuilding(sheet: Sheet, groups: readonly PieceGroup[], assumed: Assumed): BuildingCells {
  const pace = assumed.cell("pace");
  const each = (
    name: string,
    label: string,
    of: readonly PieceGroup[],
    formula: (group: PieceGroup) => ReturnType<typeof times>,
  ) => of.map((group) => sheet.lay(`work.${group.name}.${name}`, formula(group), { label, display: "person-h" }));
  const total = (name: string, label: string, cells: readonly Cell[]) =>
    sheet.lay(`common.hours.${name}`, sumOr(cells, "person-h"), { label, display: "person-h" });
  for (const group of groups) sheet.title(`work.${group.name}`, group.label);
  const raised = groups.filter((group) => group.role !== "fascia");
  return {
    join: total(
      "join",
      "cut joints",
      each("join", "cut its joints", groups, (group) =>
        times(group.count, assumed.cell(`joint.${group.rules.joint}`), pace),
      ),
    ),
    trialAssemble: total(
      "trialAssemble",
      "trial-assemble and mark",
      each(
        "try",
        "fit and mark on the ground",
        groups.filter((g) => TRIED.has(g.role)),
        (group) => times(group.count, assumed.cell("rate.trialAssemble"), pace),
      ),
    ),
    raise: total(
      "raise",
      "raise the frame",
      each("raise", "raise", raised, (group) => times(group.volume, assumed.cell(RAISE[group.role]), pace)),
    ),
  };
}

/** Sanding of one group as milled; nothing for what stays rough. */
export function laySanding(sheet: Sheet, group: PieceGroup, assumed: Assumed): Cell {
  const formula =
    group.rules.surface === "dressed"
      ? times(over(group.surface, assumed.cell("rate.sand")), assumed.cell("pace"))
      : number("0 person-h");
  return sheet.lay(`work.${group.name}.sand`, formula, {
    label: "sand and ease edges, as milled",
    display: "person-h",
  });
}
