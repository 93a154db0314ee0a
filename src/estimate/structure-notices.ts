/** Notices of a takeoff: what of the structure is left to others, or sold in another size than it is laid out in. */

import { coveringOffers } from "../catalog/look-up.js";
import { tanninOf, woodName } from "../catalog/species.js";
import type { Basis } from "./basis.js";
import { braceNotices } from "./brace-notices.js";
import { wordsFor } from "./default-notices.js";
import { pointer } from "./faults.js";
import type { Notice } from "./notice.js";
import type { PieceGroup } from "./pieces/piece-group.js";
import { Decimal, decimal } from "./quantity/decimal.js";
import { markedSmall } from "./quantity/text.js";
import { capital, listed, lowered } from "./quantity/words.js";
import type { GroupSettings } from "./request/structure.js";
import { aside } from "./sheet/aside.js";
import type { Cell } from "./sheet/expression.js";
import { unusedCounts } from "./takeoff/joint-faults.js";
import type { Takeoffs } from "./takeoffs.js";

/** All of them, in the order of the work. */
export function structureNotices(basis: Basis, takeoffs: Takeoffs): Notice[] {
  return [
    ...anyWoodNotices(basis),
    ...pierNotices(basis, takeoffs),
    ...bareJointNotices(basis, takeoffs),
    ...boughtRafterNotices(basis, takeoffs),
    ...longPieceNotices(basis),
    ...nailerNotices(basis),
    ...sheathingNotices(basis, takeoffs),
    ...braceNotices(basis),
    ...unusedNotices(basis, takeoffs),
  ];
}

/**
 * Groups that may come of any log, where some logs are of a wood that asks for better fasteners or is slower to work: it counts
 * for them on every route, since fasteners, moving and raising are taken off once.
 */
function anyWoodNotices({ groups, logs, hardness }: Basis): Notice[] {
  const open = groups.filter(({ group, millable }) => millable && group.rules.species.length === 0);
  const [first] = open;
  const woods = [...new Set(logs.map(({ species }) => species))];
  if (!first || woods.length < 2) return [];
  const slowness = (wood: string): Decimal => aside(hardness.get(wood) as Cell);
  const least = Decimal.min(...woods.map(slowness));
  const hard = woods.filter((wood) => tanninOf(wood) === "rich" || slowness(wood).gt(least));
  if (hard.length === 0 || hard.length === woods.length) return [];
  const labels = open.map(({ group }, i) => (i === 0 ? group.label : lowered(group.label))).join(", ");
  const text = `${capital(labels)}: may come of any log, so of ${listed(hard.map(woodName))} too. On every way, buying everything included, what holds them is chosen to last in that, and their moving and raising are counted as in the heaviest wood; cutting to length and joints each way has in its own. Give "species" to those that will be of another.`;
  return [{ code: "any-wood", text, at: first.group.at }];
}

/** Bases on precast blocks: each maker's block holds them in its own way. */
function pierNotices({ request: { structure } }: Basis, { fasteners }: Takeoffs): Notice[] {
  const onBases = fasteners?.lines.some(({ kind }) => kind === "post-base");
  if (structure.footings?.kind !== "precast" || !onBases) return [];
  const text =
    "Post bases on precast blocks: what fixes a base to its block comes with the block or is named by its maker, and is not taken off. A block that has a base of its own needs none of those listed.";
  return [{ code: "no-hardware", text, at: "/structure/footings/kind" }];
}

/** Pieces of a list whose joint nobody said: their hours are counted, their hardware is not. */
function bareJointNotices({ cutList: { frame, groups } }: Basis, { fasteners }: Takeoffs): Notice[] {
  if (frame) return [];
  const held = new Set(fasteners?.lines.flatMap((line) => line.groups));
  const bare = groups.filter(({ name, jointGiven }) => !held.has(name) && !jointGiven);
  const [first, ...others] = bare;
  if (!first) return [];
  const labels = [first.label, ...others.map(({ label }) => lowered(label))].join(", ");
  const who = bare.length === groups.length ? "All pieces" : labels;
  const text = `${who}: no bolts, screws or nails are taken off, for nothing says how they are joined. Give each its "joint".`;
  return [{ code: "no-hardware", text, at: first.at }];
}

/** Pieces that are taken off whole, however long: rails of a gable, and what hangs along a rake. */
const UNJOINED = /^(?:wall-rails-.*-gable|rake-fascia)/;

/**
 * Pieces longer than the longest: those of a run over a bay as long, which are joined over supports alone, and those that are
 * never joined.
 */
function longPieceNotices({ sheet, cutList: { groups } }: Basis): Notice[] {
  const longest = sheet.find("frame.longestPiece");
  if (!longest) return [];
  const long = groups.filter(({ length }) => aside(length).gt(aside(longest)));
  const say = (of: readonly PieceGroup[], why: string): Notice[] => {
    const [first, ...others] = of.map(({ label, length }) => `${label} of ${sheet.onTape(length)}`);
    if (first === undefined) return [];
    const names = [first, ...others.map(lowered)].join(", ");
    const text = `${names}: longer than the longest piece (${sheet.onTape(longest)}), ${why}`;
    return [{ code: "too-long", text, at: "/structure/longestPiece" }];
  };
  return [
    ...say(
      long.filter(({ inRun }) => inRun),
      "for they are joined over supports alone, and a bay is as long. Give more bays, or find pieces as long.",
    ),
    ...say(
      long.filter(({ name }) => UNJOINED.test(name)),
      'and taken off whole. Find pieces as long, or join them over a block and give the group\'s "length" and "count" yourself.',
    ),
  ];
}

/** Sheets that the covering's price list has, below a deck that was taken to be of boards for nobody said. */
function sheathingNotices({ request: { structure, catalog } }: Basis, { covering }: Takeoffs): Notice[] {
  const asked = "deck" in structure ? structure.deck?.kind : undefined;
  if (!covering || asked !== undefined) return [];
  const found = coveringOffers(catalog, covering.kind);
  const sheets =
    found.kind === "offered"
      ? found.offers.find(({ sheathing }) => sheathing?.price.kind === "priced")?.sheathing
      : undefined;
  const { kind } = covering.work.roof.deck;
  if (!sheets || kind === "sheets" || kind === "purlins") return [];
  const text = `The deck is of boards where nobody says otherwise, and ${lowered(sheets.label)} of your price list are not used. They may cost less and take fewer hours: "deck": { "kind": "sheets" } takes them.`;
  return [{ code: "unused", text, at: "/structure/deck" }];
}

/** Level boards that end at the wall of a building, where no post of this structure stands. */
function nailerNotices({ request: { structure } }: Basis): Notice[] {
  if (structure.kind !== "lean-to" || structure.highSide !== "ledger" || structure.walls?.boards !== "horizontal")
    return [];
  const ends = structure.walls.sides.filter(({ side }) => side === "left" || side === "right");
  if (ends.length === 0) return [];
  const text =
    "Level boards of an end want a stud against the wall of the building, which is not taken off: how it is fixed and flashed hangs on that wall.";
  return [{ code: "no-hardware", text, at: "/structure/walls" }];
}

/** Fields of the structure that were given and changed nothing. */
function unusedNotices(basis: Basis, takeoffs: Takeoffs): Notice[] {
  const { structure } = basis.request;
  const counts =
    structure.kind === "pieces"
      ? unusedCounts(structure.pieces, "/structure/pieces")
      : unusedCounts(structure.extraPieces ?? [], "/structure/extraPieces");
  const held = new Set(takeoffs.fasteners?.lines.flatMap((line) => line.groups));
  const bare = basis.cutList.groups.flatMap(({ name, rules, at }) =>
    rules.exposure && !held.has(name) ? [pointer(at, "exposure")] : [],
  );
  const fields = basis.unread().filter((at) => !at.startsWith(GROUPS));
  const idle = [...fields, ...idlePurlins(basis), ...counts, ...new Set(bare)];
  return [
    ...idle.map((at) => [at, "given, but nothing in this structure asks for it."] as const),
    ...groupsNotLaid(basis).map(
      (at) => [at, "settings are given, but this structure has none of these pieces."] as const,
    ),
  ].map(([at, why]) => ({ code: "unused", text: `${capital(placeInWords(basis, at))}: ${why}`, at }));
}

const GROUPS = "/structure/groups/";

/** A field of pieces of the user's own by what they are called; any other by its own name. */
function placeInWords({ sheet, request: { structure } }: Basis, at: string): string {
  const [, list, index, field] = /^\/structure\/(pieces|extraPieces)\/(\d+)\/(\w+)$/.exec(at) ?? [];
  const own = structure.kind === "pieces" ? structure.pieces : structure.extraPieces;
  const pieces = list && own?.find((_, i) => String(i) === index);
  return pieces ? `${pieces.label ?? pieces.name}, ${field}` : wordsFor(at, sheet);
}

/** Purlins apart, on a roof without purlins whose covering is not fixed in their rows either. */
function idlePurlins({ sheet, request: { structure }, cutList: { frame } }: Basis): string[] {
  const spacing = sheet.find("frame.purlinSpacing");
  if (!("purlinSpacing" in structure) || !spacing || frame?.roof?.deck.kind === "purlins") return [];
  return sheet.dependents(spacing).every(({ name }) => /^(?:frame|roof)\./.test(name))
    ? ["/structure/purlinSpacing"]
    : [];
}

/** Settings of groups of which this structure has no piece, unless they take them out of it. */
function groupsNotLaid({ request: { structure }, cutList }: Basis): string[] {
  const settings: Readonly<Record<string, GroupSettings | undefined>> =
    structure.kind === "pieces" ? {} : (structure.groups ?? {});
  const laid = new Set(cutList.groups.map(({ at }) => at));
  return Object.entries(settings).flatMap(([name, given]) => {
    const at = `${GROUPS}${name}`;
    return given === undefined || given.remove || laid.has(at) ? [] : [at];
  });
}

/** Rafters that are sold shallower than laid out: what moves, and by how much. */
export function boughtRafterNotices({ sheet, groups, request }: Basis, { boughtRafter }: Takeoffs): Notice[] {
  const rafters = groups.find(({ group }) => group.role === "rafter")?.group;
  if (!boughtRafter || !rafters) return [];
  const { depth, lower, heightAbovePlate, notchShare } = boughtRafter;
  const marked = (cell: Cell): string => markedSmall({ value: aside(cell), unit: cell.unit }, request.system);
  const deep = aside(notchShare).gt(QUARTER) ? ", past the quarter that is advised" : "";
  const text = [
    `${rafters.label} are laid out ${marked(rafters.width)} deep and sold ${marked(depth)} deep.`,
    `Bought and cut with the same seat, their upper edges stand ${marked(heightAbovePlate)} above the plate, ${marked(lower)} lower,`,
    `and the birdsmouth takes ${sheet.shown(notchShare)} of their depth${deep}: mark them from the depth in hand.`,
  ].join(" ");
  return [{ code: "bought-size", text, at: rafters.at }];
}

const QUARTER = decimal("0.25");
