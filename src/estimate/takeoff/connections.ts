/**
 * Connections of a structure, counted from its piece groups: which joint a group is cut for decides what holds it, its
 * pieces decide how often. Pieces of one run (end and middle purlins) share a section and are counted together.
 */
import type { Exposure } from "../../catalog/fasteners.js";
import type { PieceGroup, SectionCells } from "../pieces/piece-group.js";
import type { JointKind } from "../pieces/roles.js";
import type { Assumed } from "../request/assumed.js";
import {
  type Cell,
  count,
  greatest,
  minus,
  number,
  type Operand,
  over,
  plus,
  roundUp,
  sum,
  times,
} from "../sheet/expression.js";
import type { Sheet } from "../sheet/sheet.js";
import { together } from "./corrosion.js";

/** Places where hardware holds pieces together. */
export type ConnectionKind =
  | "post-base"
  | "post-top"
  | "splice"
  | "lap"
  | "brace"
  | "rafter-plate"
  | "rafter-ridge"
  | "crossing"
  | "face";

/** What a joint needs, and how many of it a piece has: a number, or its supports counted along its length. */
const AT_JOINT: Readonly<Record<JointKind, readonly (readonly [ConnectionKind, number | "supports"])[]>> = {
  "post-top": [
    ["post-base", 1],
    ["post-top", 1],
  ],
  splice: [["splice", 1]],
  lap: [["lap", 2]],
  birdsmouth: [
    ["rafter-plate", 1],
    ["rafter-ridge", 1],
  ],
  "two-seats": [["rafter-plate", 2]],
  "ridge-cut": [["rafter-ridge", 1]],
  brace: [["brace", 2]],
  crossing: [["crossing", "supports"]],
  face: [["face", "supports"]],
  none: [],
};

const CONNECTION_WORDS: Readonly<Record<ConnectionKind, string>> = {
  "post-base": "at the foot",
  "post-top": "at the post top",
  splice: "at the splices",
  lap: "at the laps",
  brace: "at their ends",
  "rafter-plate": "at the plate",
  "rafter-ridge": "at the ridge",
  crossing: "at their supports",
  face: "at their backing",
};

/** Connections whose hardware also goes through a post. */
const IN_POSTS: ReadonlySet<ConnectionKind> = new Set(["post-base", "post-top", "lap", "brace"]);

/** Equal connections of one sort of piece. */
export interface Connection {
  /** `purlins.crossing`. */
  readonly name: string;
  readonly label: string;
  readonly kind: ConnectionKind;
  readonly sites: Cell;
  /** Section of the pieces that are held. */
  readonly thickness: Cell;
  readonly width: Cell;
  readonly exposure: Exposure;
  /** Names of the piece groups. */
  readonly groups: readonly string[];
}

/** Pieces, and what only the caller knows of them. */
export interface ConnectionInput {
  readonly groups: readonly PieceGroup[];
  readonly exposureOf: (group: PieceGroup) => Exposure;
  /** Section as it stands in the building, where that is known to differ from what was asked for: posts that are bought. */
  readonly sectionOf?: ((group: PieceGroup) => SectionCells) | undefined;
  /** Runs that the pieces of a section make: n pieces of r runs have n − r splices. One splice a piece where unknown. */
  readonly runs: Readonly<Record<string, number>>;
  /** Rafters apart, for what crosses them. */
  readonly supportsApart: Cell;
  readonly assumed: Assumed;
}

/** Lays how many connections of each kind there are. */
export function layConnections(sheet: Sheet, input: ConnectionInput): Connection[] {
  const posts = input.groups.filter((group) => group.rules.joint === "post-top").map(input.exposureOf);
  return [...bySection(input.groups).values()].flatMap((groups) => {
    const first = groups[0] as PieceGroup;
    const own = groups.map(input.exposureOf);
    const section = input.sectionOf?.(first) ?? first;
    return AT_JOINT[first.rules.joint].map(([kind, each]) => {
      const name = `${baseOf(first)}.${kind}`;
      const label = `${labelOf(first)}, ${CONNECTION_WORDS[kind]}`;
      sheet.title(`fasteners.${name}`, label);
      const sites = sheet.lay(`fasteners.${name}.sites`, sitesOf(groups, kind, each, input), {
        label: "connections",
      });
      const exposure = together(IN_POSTS.has(kind) ? [...own, ...posts] : own);
      const { thickness, width } = section;
      return { name, label, kind, sites, thickness, width, exposure, groups: groups.map((group) => group.name) };
    });
  });
}

/** Groups that share their section's cells and their joint, in the order of the cut list. */
function bySection(groups: readonly PieceGroup[]): ReadonlyMap<string, readonly PieceGroup[]> {
  const found = new Map<string, PieceGroup[]>();
  for (const group of groups) {
    const key = `${group.thickness.name} ${group.rules.joint}`;
    found.set(key, [...(found.get(key) ?? []), group]);
  }
  return found;
}

/** `sections.purlins.thickness` belongs to the purlins, whatever their end pieces are called. */
const baseOf = (group: PieceGroup): string => group.thickness.name.split(".")[1] ?? group.name;

const labelOf = (group: PieceGroup): string => group.label.split(",")[0] ?? group.label;

function sitesOf(
  groups: readonly PieceGroup[],
  kind: ConnectionKind,
  each: number | "supports",
  { supportsApart, assumed, runs }: ConnectionInput,
): Operand {
  const one = number("1");
  if (each === "supports") {
    const apartOf = (group: PieceGroup) =>
      kind === "face" ? assumed.cell("fastener.faceEvery") : (group.supportsApart ?? supportsApart);
    // Both ends rest on a support: one more than the spaces between them.
    return sum(groups.map((group) => times(group.count, plus(roundUp(over(group.length, apartOf(group))), one))));
  }
  const all = sum(groups.map((group) => (each === 1 ? group.count : times(count(each), group.count))));
  const known = kind === "splice" ? runs[baseOf(groups[0] as PieceGroup)] : undefined;
  return known === undefined ? all : greatest(number("0"), minus(all, count(known)));
}
