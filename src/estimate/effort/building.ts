/**
 * Work that all routes share, from fitting on the ground to cleaning up. Per group where it is a group's, so that a removed
 * group takes its work along.
 */
import type { PieceGroup } from "../pieces/piece-group.js";
import type { Assumed } from "../request/assumed.js";
import type { CarryMeans } from "../request/shop.js";
import type { Role } from "../request/structure.js";
import {
  type Cell,
  type Expression,
  greatest,
  least,
  minus,
  number,
  type Operand,
  over,
  plus,
  roundUp,
  sumOr,
  times,
  when,
} from "../sheet/expression.js";
import type { Sheet } from "../sheet/sheet.js";
import { layCarrying } from "./hauling.js";

/** Person-hours of building, by stage. */
export interface BuildingCells {
  readonly trialAssemble: Cell;
  readonly dismantle: Cell;
  readonly move: Cell;
  /** In the order of the work; a structure without posts or rafters has no stage for them. */
  readonly brace: Cell | undefined;
  readonly raise: Cell | undefined;
  readonly rafters: Cell | undefined;
  readonly deck: Cell | undefined;
  /** After the covering, below it. */
  readonly enclose: Cell | undefined;
  readonly cleanUp: Cell;
}

/** What building needs beside the groups. */
export interface BuildingInput {
  readonly groups: readonly PieceGroup[];
  /** Weight of one piece of a group as it is raised. */
  readonly lifted: ReadonlyMap<string, Cell>;
  readonly means: CarryMeans;
  /** Person-time for sheets of a deck, pace not yet applied; absent without any. */
  readonly deckSheets: Operand | undefined;
  readonly assumed: Assumed;
}

/** Stages in which groups are put up. */
type Raising = "raise" | "rafters" | "deck" | "enclose";

const RAISING: Readonly<Record<Raising, string>> = {
  raise: "raise posts, beams and other pieces",
  rafters: "set ridge and rafters",
  deck: "lay purlins, deck and boards",
  enclose: "lay the floor, board the walls",
};

const RAISED_IN: Readonly<Record<Exclude<Role, "fascia">, Raising>> = {
  post: "raise",
  beam: "raise",
  tie: "raise",
  brace: "raise",
  other: "raise",
  ridge: "rafters",
  rafter: "rafters",
  purlin: "deck",
  board: "deck",
};

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

/** Whether its joints are tried and marked on the ground before raising. */
export const isTried = ({ role }: PieceGroup): boolean => TRIED.has(role);

/**
 * Faces from which a crosscut is made: one where the saw is deep enough, two where it meets itself, else all four, and a
 * handsaw takes the core that is left.
 */
export function crosscutFaces(thinner: Operand, depth: Operand): Expression {
  const two = when(thinner, "above", depth, number("2"), number("1"));
  return when(thinner, "above", times(number("2"), depth), number("4"), two);
}

/**
 * Lays the turning of one piece at each crosscut, from as many faces as the saw's depth asks for. Nothing where one cut
 * goes through.
 */
export function layTurning(sheet: Sheet, group: PieceGroup, weight: Cell, assumed: Assumed, name = "turn"): Cell {
  const faces = crosscutFaces(least(group.thickness, group.width), assumed.cell("cut.depth"));
  const lifters = roundUp(over(weight, assumed.cell("carry.load")));
  return sheet.lay(
    `work.${group.name}.${name}`,
    times(minus(faces, number("1")), lifters, assumed.cell("cut.turn"), assumed.cell("pace")),
    { label: "turn one for each deep crosscut", display: "person-min" },
  );
}

/** Lays hours by stage over all groups. */
export function layBuilding(sheet: Sheet, input: BuildingInput): BuildingCells {
  const { groups, assumed } = input;
  const pace = assumed.cell("pace");
  const each = (
    name: string,
    label: string,
    of: readonly PieceGroup[],
    formula: (group: PieceGroup) => ReturnType<typeof times>,
  ) => of.map((group) => sheet.lay(`work.${group.name}.${name}`, formula(group), { label, display: "person-h" }));
  const hours = (name: string, label: string, formula: Operand) =>
    sheet.lay(`common.hours.${name}`, formula, { label, display: "person-h" });
  const total = (name: string, label: string, cells: readonly Cell[]) => hours(name, label, sumOr(cells, "person-h"));
  for (const group of groups) sheet.title(`work.${group.name}`, group.label);
  const fitted = (stage: Raising): Cell | undefined => {
    const of = groups.filter((group) => raisedIn(group) === stage);
    const sheets = stage === "deck" && input.deckSheets ? [times(input.deckSheets, pace)] : [];
    if (of.length + sheets.length === 0) return undefined;
    const own = each("raise", "put up", of, (group) =>
      times(group.volume, assumed.cell(RAISE[group.role]), heavierOf(group, input), pace),
    );
    return hours(stage, RAISING[stage], sumOr([...own, ...sheets], "person-h"));
  };
  const tried = groups.filter(isTried);
  const counted = (of: readonly PieceGroup[]) =>
    sumOr(
      of.map((group) => group.count),
      "",
    );
  const posts = groups.filter((group) => group.role === "post");
  return {
    trialAssemble: total(
      "trialAssemble",
      "trial-assemble and mark",
      each("try", "fit and mark on the ground", tried, (group) =>
        times(group.count, assumed.cell("rate.trialAssemble"), pace),
      ),
    ),
    dismantle: hours("dismantle", "take apart again", times(counted(tried), assumed.cell("rate.dismantle"), pace)),
    move: hours("move", "move to the site", times(movingOf(sheet, input), pace)),
    brace:
      posts.length > 0
        ? hours("brace", "brace while raising", times(counted(posts), assumed.cell("rate.brace"), pace))
        : undefined,
    raise: fitted("raise"),
    rafters: fitted("rafters"),
    deck: fitted("deck"),
    enclose: fitted("enclose"),
    cleanUp: hours(
      "cleanUp",
      "clean up",
      times(
        sumOr(
          groups.map((group) => group.volume),
          "m3",
        ),
        assumed.cell("rate.cleanUp"),
        pace,
      ),
    ),
  };
}

/** The stage in which a group is put up; undefined of fascia, which is fitted with the eave trim. */
export function raisedIn({ role, encloses }: PieceGroup): Raising | undefined {
  if (role === "fascia") return undefined;
  return encloses ? "enclose" : RAISED_IN[role];
}

/** Wood denser than the rates are for is slower to lift into place, in the share that goes by weight. */
function heavierOf({ name, volume, count }: PieceGroup, { lifted, assumed }: BuildingInput): Operand {
  const one = lifted.get(name);
  if (!one) return number("1");
  const usual = times(volume, assumed.cell("saw.softwood"));
  const heavier = greatest(number("1"), over(times(count, one), usual));
  return plus(number("1"), times(assumed.cell("raise.byWeight"), minus(heavier, number("1"))));
}

/** Loads of all pieces from the shop to where they are raised. */
function movingOf(sheet: Sheet, { groups, lifted, means, assumed }: BuildingInput): Operand {
  const { load, each } = layCarrying({ sheet, assumed }, "work.move", means, assumed.cell("move.distance"));
  const weights = groups.flatMap((group) => {
    const one = lifted.get(group.name);
    return one ? [times(group.count, one)] : [];
  });
  const loads = sheet.lay("common.loads", roundUp(over(sumOr(weights, "kg"), load)), { label: "loads to the site" });
  return times(loads, each);
}

/** Sanding of one group as milled, and the easing of its edges; nothing for what stays rough. */
export interface SandingCells {
  readonly sand: Cell;
  readonly ease: Operand;
}

/** Lays the sanding of one group. Bought lumber comes with its edges eased. */
export function laySanding(sheet: Sheet, group: PieceGroup, assumed: Assumed): SandingCells {
  const nothing = number("0 person-h");
  const dressed = group.rules.surface === "dressed";
  const sand = dressed ? times(over(group.surface, assumed.cell("rate.sand")), assumed.cell("pace")) : nothing;
  const ease = dressed ? times(easing(group.totalLength, assumed), assumed.cell("pace")) : nothing;
  return {
    sand: sheet.lay(`work.${group.name}.sand`, sand, { label: "sand, as milled", display: "person-h" }),
    ease,
  };
}

/** Four long edges. @param length - Of all pieces. */
export const easing = (length: Operand, assumed: Assumed): Operand =>
  over(times(number("4"), length), assumed.cell("rate.ease"));
