/**
 * A floor from above: bearers along the inner faces of both rows of posts, joists across them, boards drawn on the right half
 * alone. A joist that meets a post ends at its inner face, on the bearer.
 */
import { floorAcross } from "./floor-section.js";
import { type Page, wholeArea } from "./paper.js";
import { each, linesAlong, type PostPlan, postsInPlan } from "./parts.js";
import { Key, mm, NONE, type Subject } from "./subject.js";
import { View } from "./view.js";

/** Undefined where the structure has none. */
export function floorPage(posts: PostPlan, subject: Subject): Page | undefined {
  const rows = subject.known("floor.rows");
  const space = subject.known("floor.joists.equalSpace");
  const pieces = subject.known("floor.joists.lines");
  if (!rows || !space || !pieces) return undefined;
  const { span, length } = posts;
  const part = (base: string) => subject.section(base) ?? NONE;
  const [bearer, joist] = [part("bearers"), part("joists")];
  const ledger = subject.section("floor-ledger");
  const view = new View();
  const { near, far } = floorAcross(posts, subject);
  for (const [from, to] of [near, far]) view.box([0, from], [length, to]);
  const joists = linesAlong(mm(pieces), mm(space), length - joist.t);
  const meets = (x: number) => posts.posts.some((face) => x < face + posts.post.w && face < x + joist.t);
  for (const x of joists) {
    const [from, to] = meets(x) ? [near[0], posts.farRow ? far[1] : span] : [0, span];
    for (const [low, high] of betweenEndPosts(posts, [x, x + joist.t], [from, to]))
      view.box([x, low], [x + joist.t, high]);
  }
  const gap = mm(subject.cell("frame.floorGap"));
  const width = mm(subject.known("sections.floor-boards.soldWidth") ?? subject.cell("sections.floor-boards.width"));
  for (let i = 0; i < mm(rows); i++) {
    const y = i * (width + gap);
    view.box([length / 2, y], [length, Math.min(span, y + width)]);
  }
  postsInPlan(view, posts);
  view.chain("below", 0, joist.t / 2, [
    [mm(space) * (joists.length - 1), each(joists.length - 1, "joist bays", subject.small(space))],
  ]);
  view.chain("below", 1, 0, [[length, subject.long(subject.cell("frame.length"))]]);
  view.chain("left", 0, 0, [[span, subject.long(subject.cell("frame.span"))]]);
  const key = new Key(subject, view);
  key.part("bearers", [length * 0.08, near[0] + bearer.t / 2], [5, 9]);
  if (ledger) key.part("floor-ledger", [length * 0.08, span - ledger.t / 2], [5, -9]);
  key.part("joists", [(joists[2] ?? 0) + joist.t / 2, span * 0.6], [-6, 7]);
  key.part("floor-boards", [length * 0.8, span * 0.55], [7, 7]);
  const meet = [
    "Bearers are bolted to the inner faces of the posts and meet at posts; a joist that meets a post ends at its inner face, on the",
    "bearer; at posts between the corners of an end a cleat holds it. Boards, drawn on the right half alone, are notched round posts.",
  ];
  const notes = ledger ? [...meet, "The floor ledger is lagged to the wall."] : meet;
  const note = notes.join(" ");
  const title = "Floor";
  const views = [{ view, area: wholeArea(1) }];
  const description = `${title}. ${note} ${key.lines.join("; ")}.`;
  return { name: "floor", title, description, views, key: key.lines, notes, system: subject.system };
}

/** What the posts between the corners of an end leave of a joist that meets them. */
function betweenEndPosts(
  { span, length, post, endBays }: PostPlan,
  [left, right]: readonly [number, number],
  [from, to]: readonly [number, number],
): (readonly [number, number])[] {
  if (left >= post.t && right <= length - post.t) return [[from, to]];
  const between = linesAlong(endBays + 1, (span - post.w) / endBays, span).slice(1, -1);
  const lows = [from, ...between.map((y) => y + post.w)];
  return lows.map((low, i) => [low, between[i] ?? to] as const);
}
