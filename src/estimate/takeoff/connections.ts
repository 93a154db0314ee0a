/**
 * Connections of a structure, counted from its piece groups: which joint a group is cut for decides what holds it, its
 * pieces decide how often. Pieces of one run (end and middle purlins) share a section and are counted together.
 */
import type { Exposure } from "../../catalog/fasteners.js";
import type { PieceGroup, SectionCells } from "../pieces/piece-group.js";
import type { Decimal } from "../quantity/decimal.js";
import type { DisplayUnits } from "../quantity/display.js";
import type { Assumed } from "../request/assumed.js";
import type { JointKind } from "../request/structure.js";
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
  | "ledger"
  | "hanger"
  | "bearer-post"
  | "joist-seat"
  | "bolt"
  | "brace"
  | "rafter-plate"
  | "rafter-ridge"
  | "crossing"
  | "face"
  | "ends";

/** What a joint needs, and how many of it a piece has: a number, or its supports counted along its length. */
const AT_JOINT: Readonly<Record<JointKind, readonly (readonly [ConnectionKind, number | "supports" | "posts"])[]>> = {
  "post-top": [
    ["post-base", 1],
    ["post-top", 1],
  ],
  splice: [["splice", 1]],
  lap: [["lap", 2]],
  // Pegs are split from offcuts.
  mortise: [],
  "plain-bolt": [["bolt", 2]],
  birdsmouth: [
    ["rafter-plate", 1],
    ["rafter-ridge", 1],
  ],
  "two-seats": [["rafter-plate", 2]],
  "level-seats": [["rafter-plate", 2]],
  hung: [
    ["rafter-plate", 1],
    ["hanger", 1],
  ],
  "lap-and-hang": [
    ["lap", 1],
    ["hanger", 1],
  ],
  ledger: [["ledger", "supports"]],
  joist: [["joist-seat", 2]],
  bearer: [
    ["splice", 1],
    ["bearer-post", "posts"],
  ],
  // Foot on the tie, top below the ridge beam.
  "king-post": [["post-top", 2]],
  "ridge-cut": [["rafter-ridge", 1]],
  brace: [["brace", 2]],
  crossing: [["crossing", "supports"]],
  face: [["face", "supports"]],
  ends: [["ends", 2]],
  none: [],
};

const CONNECTION_WORDS: Readonly<Record<ConnectionKind, string>> = {
  "post-base": "at the foot",
  "post-top": "at the post top",
  splice: "at the splices",
  lap: "at the laps",
  bolt: "where it is bolted on",
  brace: "at their ends",
  "rafter-plate": "at the plate",
  "rafter-ridge": "at the upper end",
  ledger: "to the wall",
  hanger: "in hangers",
  "bearer-post": "to the posts",
  "joist-seat": "on the bearers",
  crossing: "at their supports",
  face: "at their backing",
  ends: "at both ends",
};

/** Connections whose hardware also goes through a post. */
const IN_POSTS: ReadonlySet<ConnectionKind> = new Set(["post-base", "post-top", "lap", "bolt", "bearer-post", "brace"]);

/** Connections whose hardware takes a piece of just one size. */
const ONE_SIZE: ReadonlySet<ConnectionKind> = new Set(["post-base", "hanger"]);

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
  /** The same of those that are bought, where its hardware is made for pieces of just one size, and they measure otherwise. */
  readonly ifBought?: SectionCells;
  /** Thickness of the post that the hardware goes through as well. */
  readonly behind?: Cell;
  /** Thickness of the boards between the pieces and what they are fixed to. */
  readonly over?: Cell;
  /** Wood between the fastener and the end of a piece, at most: half of what carries it and the next, or of the plate below. */
  readonly endRoom?: Cell;
  readonly exposure: Exposure;
  /** Specific gravity of what its threads and points bite in, the softest that may be used; undefined where none is known. */
  readonly gravity?: Decimal;
  /** Names of the piece groups. */
  readonly groups: readonly string[];
}

/** Pieces, and what only the caller knows of them. */
export interface ConnectionInput {
  readonly groups: readonly PieceGroup[];
  readonly exposureOf: (group: PieceGroup) => Exposure;
  /** Specific gravity, oven-dry, of the softest wood that a group may be made of. */
  readonly gravityOf?: ((group: PieceGroup) => Decimal | undefined) | undefined;
  /** Section as it stands in the building, where that is known to differ from what was asked for: posts that are bought. */
  readonly sectionOf?: ((group: PieceGroup) => SectionCells) | undefined;
  /** As bought, of a group that may be milled or bought and then measures otherwise; undefined of others. */
  readonly boughtSectionOf?: ((group: PieceGroup) => SectionCells | undefined) | undefined;
  /** Runs that the pieces of a section make: n pieces of r runs have n − r splices. One splice a piece where unknown. */
  readonly runs: Readonly<Record<string, number>>;
  /** Rafters apart, for what crosses them; absent without a frame. */
  readonly supportsApart: Cell | undefined;
  readonly assumed: Assumed;
  readonly units: DisplayUnits;
}

/** Lays how many connections of each kind there are; a run of one piece has no splice. */
export function layConnections(sheet: Sheet, input: ConnectionInput): Connection[] {
  const posts = input.groups.filter(standsOnBase);
  const inPosts = posts.map(input.exposureOf);
  return [...bySection(input.groups).values()].flatMap((groups) => {
    const first = groups[0] as PieceGroup;
    const own = groups.map(input.exposureOf);
    const { thickness, width } = input.sectionOf?.(first) ?? first;
    return connectionsAt(first).flatMap(([kind, each]): Connection[] => {
      const name = `${baseOf(first)}.${kind}`;
      const words = first.rules.joint === "king-post" ? "at foot and top" : CONNECTION_WORDS[kind];
      const label = `${labelOf(groups)}, ${words}`;
      sheet.title(`fasteners.${name}`, label);
      const sites = sheet.lay(`fasteners.${name}.sites`, sitesOf(groups, kind, each, input), {
        label: "connections",
      });
      if (kind === "splice" && sheet.decide(sites).isZero()) return [];
      const exposure = together(IN_POSTS.has(kind) ? [...own, ...inPosts] : own);
      const behind = kind === "bearer-post" ? posts[0]?.width : undefined;
      const endRoom = layEndRoom(sheet, name, kind, groups, input);
      const names = groups.map((group) => group.name);
      const gravity = softest(IN_POSTS.has(kind) && posts.length > 0 ? posts : groups, input.gravityOf);
      const over = kind === "crossing" ? first.over : undefined;
      const ifBought = ONE_SIZE.has(kind) ? input.boughtSectionOf?.(first) : undefined;
      const more = {
        ...(over && { over }),
        ...(ifBought && { ifBought }),
        ...(behind && { behind }),
        ...(endRoom && { endRoom }),
        ...(gravity && { gravity }),
      };
      return [{ name, label, kind, sites, thickness, width, ...more, exposure, groups: names }];
    });
  });
}

const softest = (groups: readonly PieceGroup[], of: ConnectionInput["gravityOf"]): Decimal | undefined =>
  groups.reduce<Decimal | undefined>((least, group) => {
    const found = of?.(group);
    return found && (!least || found.lt(least)) ? found : least;
  }, undefined);

/** Connections at which pieces of a row end, each on its half of what carries both. */
const MEETING: ReadonlySet<ConnectionKind> = new Set(["crossing", "face", "ends", "bearer-post"]);

/** Half of the rafter, joist or post over which two pieces meet; half of the plate that a tie, flush outside, is halved over. */
function layEndRoom(
  sheet: Sheet,
  name: string,
  kind: ConnectionKind,
  groups: readonly PieceGroup[],
  { groups: all, units }: ConnectionInput,
): Cell | undefined {
  const lay = (carrier: Cell, label: string) =>
    sheet.lay(`fasteners.${name}.endRoom`, over(carrier, number("2")), { label, display: units.small });
  if (kind === "lap") {
    const plate = all.find((group) => group.role === "beam" && group.rules.joint === "splice");
    return plate && lay(plate.thickness, "to the end of a piece that is flush with the plate's outer face");
  }
  const carrier = MEETING.has(kind) ? groups.find(({ meetsOver }) => meetsOver)?.meetsOver : undefined;
  return carrier && lay(carrier, "to the end of a piece that meets the next over its support");
}

/** Posts, and whatever else is joined as one, stand on a base; king posts on their ties. */
export const standsOnBase = ({ role, rules }: Pick<PieceGroup, "role" | "rules">): boolean =>
  rules.joint === "post-top" || (role === "post" && rules.joint !== "king-post");

/** A post has a base, and one end at the top, however that is joined. */
function connectionsAt(group: PieceGroup): (typeof AT_JOINT)[JointKind] {
  const { joint } = group.rules;
  if (!standsOnBase(group) || joint === "post-top") return AT_JOINT[joint];
  return [["post-base", 1], ...AT_JOINT[joint].map(([kind]) => [kind, 1] as const)];
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

/** Without `(end)` or `(near side)` where several groups are counted together. */
function labelOf(groups: readonly PieceGroup[]): string {
  const label = groups[0]?.label.split(",")[0] ?? "";
  return groups.length > 1 ? label.replace(/ (?:\d+ )?\([^)]*\)$| \d+$/, "") : label;
}

/** What is fixed at so much apart, whatever it is fixed to. */
const EVERY: Partial<Readonly<Record<ConnectionKind, string>>> = {
  face: "fastener.faceEvery",
  ledger: "fastener.ledgerEvery",
};

function sitesOf(
  groups: readonly PieceGroup[],
  kind: ConnectionKind,
  each: number | "supports" | "posts",
  { supportsApart, assumed, runs }: ConnectionInput,
): Operand {
  const one = number("1");
  if (each === "supports") {
    const apartOf = (group: PieceGroup) =>
      EVERY[kind] ? assumed.cell(EVERY[kind]) : known(group.supportsApart ?? supportsApart, group);
    // Both ends rest on a support: one more than the spaces between them.
    const supportsOf = (group: PieceGroup): Operand =>
      kind === "crossing" && group.crossings !== undefined
        ? group.crossings
        : plus(roundUp(over(group.length, apartOf(group))), one);
    return sum(groups.map((group) => times(group.count, supportsOf(group))));
  }
  if (each === "posts") {
    const run = groups.find((group) => group.atPosts)?.atPosts;
    return run ?? sum(groups.map((group) => times(group.count, known(group.crossings, group))));
  }
  const members = groups.map((group) => group.members ?? group.count);
  const all = sum(members.map((of) => (each === 1 ? of : times(count(each), of))));
  const [first] = groups as [PieceGroup];
  const joined = kind === "splice" ? (first.runs ?? runs[baseOf(first)]) : undefined;
  if (joined === undefined) return all;
  return greatest(number("0"), minus(all, typeof joined === "number" ? count(joined) : joined));
}

/** What `jointFaults` has asked for. */
function known<T>(value: T | undefined, { name }: PieceGroup): T {
  if (value === undefined) throw new Error(`nobody knows what ${name} cross`);
  return value;
}
