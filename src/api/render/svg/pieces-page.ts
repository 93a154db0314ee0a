/** Pieces that one has listed oneself, group by group: how long each is, and beside it its section at a larger scale. */
import type { PieceGroup } from "../../../estimate/pieces/piece-group.js";
import { type Page, sideBySide } from "./paper.js";
import { mm, type Subject } from "./subject.js";
import { View } from "./view.js";

/** As many rows as leave room for words between them. */
const GROUPS_A_PAGE = 8;

/** Characters of a label for which a card has room. */
const LONGEST_LABEL = 24;

/** Of the page's width, the part that the lengths take. */
const LENGTHS_SHARE = 0.72;

const NOTE = "Where the pieces go is not said, so each stands by itself. Ends are drawn square.";

/** None where nothing is listed. */
export function piecesPages(groups: readonly PieceGroup[], subject: Subject): Page[] {
  const pages = Math.ceil(groups.length / GROUPS_A_PAGE);
  return Array.from({ length: pages }, (_, i) => {
    const own = groups.slice(i * GROUPS_A_PAGE, (i + 1) * GROUPS_A_PAGE);
    const [name, title] = pages === 1 ? ["pieces", "Pieces"] : [`pieces-${i + 1}`, `Pieces (${i + 1} of ${pages})`];
    return onePage(own, { name, title }, subject);
  });
}

function onePage(groups: readonly PieceGroup[], called: Pick<Page, "name" | "title">, subject: Subject): Page {
  const key = groups.map((group) => subject.wordsOf(group.label, [group]));
  return {
    ...called,
    description: `${called.title}, each to scale. ${NOTE} ${key.join("; ")}.`,
    views: sideBySide(1, LENGTHS_SHARE, [
      { view: lengths(groups, subject), caption: "One of each, its wide face" },
      { view: sections(groups, subject), caption: "Sections" },
    ]),
    key,
    notes: [NOTE],
    system: subject.system,
  };
}

/** From the top, with how many there are and how long above each. */
function lengths(groups: readonly PieceGroup[], subject: Subject): View {
  const view = new View();
  const wordsRoom = 0.07 * Math.max(...groups.map(({ length }) => mm(length)));
  let foot = 0;
  for (const [i, { label, length, width, count }] of groups.entries()) {
    const top = foot - wordsRoom;
    foot = top - mm(width);
    view.box([0, foot], [mm(length), top]);
    view.note([0, top], `${short(label)}: ${subject.count(count)} of ${subject.long(length)}`, [0, 1.2], "start");
    view.point(i + 1, [0, (foot + top) / 2], [-5, 0]);
  }
  return view;
}

/** The key has all of it. */
const short = (label: string): string => (label.length > LONGEST_LABEL ? `${label.slice(0, LONGEST_LABEL)}…` : label);

/** In the same order, cut across, thickness level and width upright. */
function sections(groups: readonly PieceGroup[], subject: Subject): View {
  const view = new View();
  const apart = 0.4 * Math.max(...groups.map(({ width }) => mm(width)));
  let foot = 0;
  for (const [i, { thickness, width }] of groups.entries()) {
    foot -= apart + mm(width);
    view.cut([0, foot], [mm(thickness), foot + mm(width)]);
    const size = `${subject.small(thickness)} × ${subject.small(width)}`;
    view.note([mm(thickness), foot + mm(width) / 2], size, [2, -1], "start");
    view.point(i + 1, [0, foot + mm(width) / 2], [-5, 0]);
  }
  return view;
}
