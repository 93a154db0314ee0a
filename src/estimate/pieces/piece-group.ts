/** A piece group: equal pieces, the unit of mill-or-buy. Its sizes are cells; how it is made and finished is fixed. */
import type { Climate } from "../../catalog/fasteners.js";
import { type SectionText, toQuantity, toSection } from "../../catalog/reading.js";
import type { Decimal } from "../quantity/decimal.js";
import type { Quantity } from "../quantity/quantity.js";
import { exactly, parseSection, TextFault } from "../quantity/text.js";
import type { Defaults, InEither } from "../request/given.js";
import type { GroupSettings, Role } from "../request/structure.js";
import { type Cell, count, number, type Operand, plus, times } from "../sheet/expression.js";
import { plain, type Sheet } from "../sheet/sheet.js";
import { ROLE_DEFAULTS, type RoleDefaults } from "./roles.js";

/** How pieces are made; no branch of it is a number. */
export interface PieceRules {
  readonly species: readonly string[];
  readonly heart: "any" | "free" | "boxed";
  readonly wane: Quantity;
  readonly surface: "rough" | "dressed";
  readonly seasoning: "green" | "dried";
  readonly structural: boolean;
  readonly hiddenFaces: "none" | "one-wide" | "both-wide";
  readonly joint: RoleDefaults["joint"];
  /** What surrounds its fasteners, where that is not what surrounds the structure. */
  readonly exposure: Climate | undefined;
  /** As the user pinned it; `auto` leaves the choice to the estimate. */
  readonly source: "mill" | "buy" | "auto";
  /** Lumber offer that the user insists on. */
  readonly buyAs: string | undefined;
}

/** Finished section. */
export interface SectionCells {
  readonly thickness: Cell;
  readonly width: Cell;
}

/** Equal pieces: the unit of mill or buy. Lengths, volume and surface are cells. */
export interface PieceGroup extends SectionCells {
  readonly name: string;
  /** Where the user may say otherwise: JSON Pointer. */
  readonly at: string;
  readonly mark: string;
  readonly label: string;
  readonly role: Role;
  readonly rules: PieceRules;
  /** Finished: the shortest straight piece from which one is cut. */
  readonly length: Cell;
  readonly count: Cell;
  /** Members that all of its pieces are cut into, where one piece gives two; absent where each is one. */
  readonly members?: Cell | undefined;
  readonly totalLength: Cell;
  /** Actual wood of all pieces. */
  readonly volume: Cell;
  /** Faces of all pieces, hidden ones included. */
  readonly surface: Cell;
  /** What its pieces cross, apart, where that is not the common rafters. */
  readonly supportsApart?: Cell | undefined;
  /** Part of a run of several pieces, which meet over a support. */
  readonly spliced?: boolean | undefined;
  /** Part of a run, or the whole of it: cut over supports alone. */
  readonly inRun?: true;
  /** Rafters, joists or posts that each piece lies on, where its run or the user knows. */
  readonly crossings?: Operand | undefined;
  /** Runs that its pieces are joined into, of a group of the user's own. */
  readonly runs?: Cell | undefined;
  /** The user said how it is joined: hardware is laid for it without a frame, too. */
  readonly jointGiven?: true;
  /** Where its pieces begin in each of their runs, from the run's own beginning; absent of what is no run. */
  readonly begins?: readonly Cell[] | undefined;
  /** Thickness of the support over which two of its pieces meet end to end; absent where none do. */
  readonly meetsOver?: Cell | undefined;
  /** Posts that all pieces of its runs are bolted to, counted once. */
  readonly atPosts?: Cell | undefined;
  /** Part of a floor or a wall: it comes when the roof is on. */
  readonly encloses?: true;
  /** What each piece has to reach, where its length is not the one worked out; in the unit of its length. */
  readonly least?: Decimal | undefined;
  /** Width all along each piece that its neighbours cover, beside hidden wide faces: laps and the edges in them. */
  readonly covered?: Cell | undefined;
  /** Thickness of what lies between them and what they are fixed to, such as the boards below battens. */
  readonly over?: Cell | undefined;
  /** Of all its pieces, what boards or sheets lie on: edges and faces out of the finish's reach. */
  readonly contacts?: readonly Cell[] | undefined;
  /** The user said which faces lie hidden: nothing is worked out beside that. */
  readonly facesGiven?: true;
}

/** A limit in words: a section's side with the pieces that it is of, `the thickness of the low beams`. */
export function sideOf({ name, label }: Cell): string {
  const [kind, pieces] = name.split(".");
  return kind === "sections" && pieces ? `the ${label} of the ${pieces.replaceAll("-", " ")}` : label;
}

/** What derives a group: `settings` replace any of it. */
export interface GroupPlan {
  readonly name: string;
  readonly at: string;
  readonly label: string;
  readonly role: Role;
  readonly section: SectionCells;
  readonly length: Operand;
  readonly count: Operand;
  /** Members that all of its pieces are cut into, where one piece gives two. */
  readonly members?: Operand | undefined;
  readonly settings?: GroupSettings | undefined;
  /** Share of the wide faces that the finish reaches, where the structure knows better than the role. */
  readonly joint?: RoleDefaults["joint"];
  /** How it is made, where the structure knows better than the role. */
  readonly rules?: Partial<Pick<RoleDefaults, "surface" | "seasoning" | "hiddenFaces" | "structural">>;
  /** Two letters at most; the role's own letter where none is given. */
  readonly mark?: string;
  /** What its pieces cross, apart, where that is not the common rafters. */
  readonly supportsApart?: Cell | undefined;
  readonly spliced?: boolean | undefined;
  readonly crossings?: number | undefined;
  /** Where its pieces begin in each of their runs. */
  readonly begins?: readonly Operand[] | undefined;
  readonly meetsOver?: Cell | undefined;
  /** Part of a floor or a wall: it comes when the roof is on. */
  readonly encloses?: true;
  /** Width all along each piece that its neighbours cover. */
  readonly covered?: Operand | undefined;
  readonly over?: Cell | undefined;
  /** Boards or sheets lie on one of its edges, all along. */
  readonly edgeCovered?: true;
}

interface Units {
  readonly long: string;
  readonly small: string;
  readonly area: string;
  readonly lumber: string;
}

/**
 * Lays the section of a group, given or by default.
 * @param otherwise - Where none is given; the role's own.
 */
export function laySection(
  sheet: Sheet,
  name: string,
  role: Role,
  at: string,
  defaults: Defaults,
  given: SectionText | undefined,
  small: string,
  otherwise: InEither = ROLE_DEFAULTS[role].section,
): SectionCells {
  const section = given === undefined ? defaultSection(otherwise, at, defaults) : toSection(given);
  return {
    thickness: sheet.input(`sections.${name}.thickness`, section.thickness, { label: "thickness", display: small }),
    width: sheet.input(`sections.${name}.width`, section.width, { label: "width", display: small }),
  };
}

function defaultSection(otherwise: InEither, at: string, defaults: Defaults) {
  const text = otherwise[defaults.system];
  defaults.taken.push({
    at: `${at}/section`,
    value: text,
    why: "common practice; no statement that it carries the load",
  });
  const section = parseSection(text);
  if (section instanceof TextFault) throw new Error(section.wrong);
  return section;
}

/** Lays a group's cells: length, count, and what follows from them. */
export function layGroup(sheet: Sheet, plan: GroupPlan, units: Units): PieceGroup {
  const { name, label, settings = {} } = plan;
  const cell = (column: string): string => `pieces.${name}.${column}`;
  sheet.title(`pieces.${name}`, label);
  const { thickness, width } = plan.section;
  const length = settings.length
    ? sheet.input(cell("length"), toQuantity(settings.length, "mm"), { label: "length", display: units.long })
    : sheet.lay(cell("length"), plan.length, { label: "length", display: units.long });
  const pieces = settings.count
    ? sheet.input(cell("count"), plain(settings.count), { label: "pieces" })
    : sheet.lay(cell("count"), plan.count, { label: "pieces" });
  const totalLength = sheet.lay(cell("totalLength"), times(pieces, length), {
    label: "length of all",
    display: units.long,
  });
  const volume = sheet.lay(cell("volume"), times(totalLength, thickness, width), {
    label: "wood, actual",
    display: units.lumber,
  });
  const surface = sheet.lay(cell("surface"), surfaceOf(pieces, { thickness, width, length }), {
    label: "surface",
    display: units.area,
  });
  const mark = plan.mark ?? ROLE_DEFAULTS[plan.role].mark;
  const rules = rulesOf(plan);
  return {
    name,
    at: plan.at,
    mark,
    label,
    role: plan.role,
    rules,
    thickness,
    width,
    length,
    count: pieces,
    totalLength,
    volume,
    surface,
    ...(plan.supportsApart && { supportsApart: plan.supportsApart }),
    ...(plan.encloses && { encloses: plan.encloses }),
    // Of pieces of the user's own number or length nobody knows how many come out of each.
    ...(plan.members &&
      !settings.length &&
      !settings.count && { members: sheet.lay(cell("members"), plan.members, { label: "members cut out of them" }) }),
    ...(plan.over && { over: plan.over }),
    ...(plan.covered && {
      covered: sheet.lay(cell("covered"), plan.covered, { label: "covered by its neighbours", display: units.small }),
    }),
    ...(settings.hiddenFaces && { facesGiven: true as const }),
    ...(plan.edgeCovered &&
      !settings.hiddenFaces && { contacts: [layEdge(sheet, name, totalLength, thickness, units)] }),
    ...(plan.spliced && { spliced: true }),
    ...(plan.spliced !== undefined && { inRun: true as const }),
    ...(plan.meetsOver && { meetsOver: plan.meetsOver }),
    // A length of the user's own lies on as many as it reaches.
    ...(plan.crossings !== undefined && !settings.length && { crossings: count(plan.crossings) }),
    ...(!settings.length && !settings.count && layBegins(sheet, plan, units)),
  };
}

const layEdge = (sheet: Sheet, name: string, length: Cell, thickness: Cell, { area: display }: Units): Cell =>
  sheet.lay(`pieces.${name}.edges`, times(length, thickness), { label: "edges below boards or sheets", display });

/** Where pieces of a spliced run lie; those of a size or a number of the user's own lie wherever the user likes. */
function layBegins(sheet: Sheet, { name, spliced, begins }: GroupPlan, { long: display }: Units) {
  if (!spliced || !begins) return {};
  const lay = (at: Operand, i: number) =>
    sheet.lay(`pieces.${name}.begins${i + 1}`, at, { label: "begins, from the beginning of its run", display });
  return { begins: begins.map(lay) };
}

/** Four long faces and two ends of every piece. */
function surfaceOf(
  pieces: Operand,
  { thickness, width, length }: Readonly<Record<"thickness" | "width" | "length", Cell>>,
) {
  const girth = plus(thickness, width);
  return times(number("2"), pieces, plus(times(girth, length), times(thickness, width)));
}

/** How the pieces of a group are made: as given, else as the structure or the role has it. */
export function rulesOf(plan: Pick<GroupPlan, "role" | "rules" | "settings" | "joint">): PieceRules {
  const role = { ...ROLE_DEFAULTS[plan.role], ...plan.rules };
  const given = plan.settings ?? {};
  return {
    // A copy: the planners ask it millions of times, and the given one is watched for whether anyone reads it.
    species: [...(given.species ?? [])],
    heart: given.heart ?? role.heart,
    wane: given.wane === undefined ? exactly("0 in") : toQuantity(given.wane, "in"),
    surface: given.surface ?? role.surface,
    seasoning: given.seasoning ?? role.seasoning,
    structural: given.structural ?? role.structural,
    hiddenFaces: given.hiddenFaces ?? role.hiddenFaces,
    joint: given.joint ?? plan.joint ?? role.joint,
    exposure: given.exposure,
    source: given.source ?? "auto",
    buyAs: given.buyAs,
  };
}
