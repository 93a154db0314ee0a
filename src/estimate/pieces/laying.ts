/** Laying the piece groups of a structure: one group, or one for each kind of piece in a run. */
import type { DisplayUnits } from "../quantity/display.js";
import type { Defaults, InEither } from "../request/given.js";
import type { GroupSettings, Role } from "../request/structure.js";
import { type Cell, count, type Operand } from "../sheet/expression.js";
import type { Sheet } from "../sheet/sheet.js";
import { type GroupPlan, layGroup, laySection, type PieceGroup, rulesOf, type SectionCells } from "./piece-group.js";
import { leastLength } from "./piece-reach.js";
import type { SoldFor } from "./run-cutting.js";
import type { LaidRun, RunPieces } from "./runs.js";

/** Where structures stand in the request: JSON Pointer. */
export const AT = "/structure";

/** What a kind of structure says of a group before it knows its size. */
export interface GroupKind {
  readonly role: Role;
  /** Section where nobody gives one; the role's own where absent. */
  readonly section?: InEither;
  /** Group whose given section it takes where it has none of its own. */
  readonly like?: string;
  readonly joint?: GroupPlan["joint"];
  readonly mark?: string;
  readonly rules?: GroupPlan["rules"];
  /** Part of a floor or a wall: it comes when the roof is on. */
  readonly encloses?: true;
  /** Boards or sheets lie on one of its edges, all along. */
  readonly edgeCovered?: true;
}

/** Settings of groups by name, as the request gives them. */
export type SettingsByGroup = Readonly<Record<string, GroupSettings | undefined>> | undefined;

/** A group as the yard is asked for it, before its lengths are known. */
export type WantedGroup = Pick<PieceGroup, "label" | "role" | "rules" | "thickness" | "width">;

/** What a structure is laid on. */
export interface Site {
  readonly sheet: Sheet;
  readonly defaults: Defaults;
  readonly units: DisplayUnits;
  /** What the yard has for the pieces of a run; absent where there is none to ask. */
  readonly sold?: (wanted: WantedGroup) => SoldFor;
}

/** Everything that laying one group needs beside its own plan. */
export interface Laying<Group extends string> {
  readonly sheet: Sheet;
  readonly units: DisplayUnits;
  readonly kinds: Readonly<Record<Group, GroupKind>>;
  readonly settings: SettingsByGroup;
  readonly sections: Readonly<Record<Group, SectionCells>>;
  readonly sold: Site["sold"];
}

/**
 * Lays the sections of all groups of a structure.
 * @param without - Groups that this one has not.
 */
export function laySections<Group extends string>(
  sheet: Sheet,
  kinds: Readonly<Record<Group, GroupKind>>,
  settings: SettingsByGroup,
  defaults: Defaults,
  units: DisplayUnits,
  without: ReadonlySet<Group> = new Set(),
): Laying<Group>["sections"] {
  const names = (Object.keys(kinds) as Group[]).filter((name) => !without.has(name));
  const lay = (name: Group): SectionCells => {
    const { role, like, section } = kinds[name];
    const given = settings?.[name]?.section ?? (like === undefined ? undefined : settings?.[like]?.section);
    return laySection(sheet, name, role, `${AT}/groups/${name}`, defaults, given, units.small, section);
  };
  return Object.fromEntries(names.map((name) => [name, lay(name)])) as Laying<Group>["sections"];
}

/** A count that code must branch on. */
export const wholes = (sheet: Sheet, cell: Cell): number => sheet.decideWhole(cell);

/** One group of equal pieces; none where its count is zero or the request removes it. */
export function one<Group extends string>(
  laying: Laying<Group>,
  name: Group,
  label: string,
  length: Operand,
  pieces: Operand,
): PieceGroup[] {
  return laid(laying, name, { name, label, length, count: pieces });
}

/** One group for each kind of piece of a run; only where there are several does the name say which. */
export function runGroups<Group extends string>(
  laying: Laying<Group>,
  base: Group,
  label: string,
  run: LaidRun,
  runs: number,
): PieceGroup[] {
  const kinds = run.kindsFrom(yardFor(laying, base, label));
  const spliced = kinds.reduce((pieces, kind) => pieces + kind.pieces, 0) > 1;
  return kinds.flatMap((kind, i) => {
    const place = kinds.length === 1 ? "" : placeOf(kind, i, kinds);
    const name = place ? `${base}-${place}` : base;
    const spoken = place ? `${label} (${place.replace("-", " ")})` : label;
    return laid(laying, base, {
      name,
      label: spoken,
      length: run.lengthOf(kind),
      count: count(kind.pieces * runs),
      spliced,
      crossings: kind.crossings,
      begins: run.beginsOf(kind),
      ...(spliced && { meetsOver: run.support }),
    });
  });
}

/** What the yard has for the runs of a group; undefined where there is none to ask. */
export function yardFor<Group extends string>(laying: Laying<Group>, base: Group, label: string): SoldFor | undefined {
  return laying.sold?.(wantedFor(laying, base, label));
}

function wantedFor<Group extends string>(
  { kinds, sections, settings }: Laying<Group>,
  base: Group,
  label: string,
): WantedGroup {
  const { role, joint, rules } = kinds[base];
  const plan = { role, settings: settings?.[base], ...(joint && { joint }), ...(rules && { rules }) };
  return { label, role, rules: rulesOf(plan), ...sections[base] };
}

function placeOf(kind: RunPieces, index: number, kinds: readonly RunPieces[]): string {
  const place = kind.first && kind.last ? "whole" : kind.first ? "end" : kind.last ? "last" : "middle";
  const same = kinds.filter((other, i) => i < index && other.first === kind.first && other.last === kind.last).length;
  return same === 0 ? place : `${place}-${same + 1}`;
}

/** Lays a group under a name of its own, with the settings and the section of its base. */
export function laid<Group extends string>(
  laying: Laying<Group>,
  base: Group,
  plan: Pick<
    GroupPlan,
    | "name"
    | "label"
    | "length"
    | "count"
    | "members"
    | "supportsApart"
    | "spliced"
    | "crossings"
    | "begins"
    | "meetsOver"
    | "covered"
    | "over"
  >,
): PieceGroup[] {
  const { sheet, sections, units, kinds } = laying;
  const settings = laying.settings?.[base];
  if (settings?.remove) return [];
  const { role, joint, mark, rules, encloses, edgeCovered } = kinds[base];
  const group: GroupPlan = {
    ...plan,
    at: `${AT}/groups/${base}`,
    role,
    section: sections[base],
    settings,
    ...(joint && { joint }),
    ...(mark && { mark }),
    ...(rules && { rules }),
    ...(encloses && { encloses }),
    ...(edgeCovered && { edgeCovered }),
  };
  const found = layGroup(sheet, group, units);
  if (sheet.decide(found.count).isZero()) return []; // fewer than none is refused with the cut list
  const least = leastLength(sheet, group);
  return [least ? { ...found, least } : found];
}
