/** A floor from above: bearers along both sides, joists across them, boards drawn on the right half alone. */
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
  const far = ledger?.t ?? bearer.t;
  view.box([0, 0], [length, bearer.t]);
  view.box([0, span - far], [length, span]);
  const joists = linesAlong(mm(pieces), mm(space), length - joist.t);
  for (const x of joists) view.box([x, 0], [x + joist.t, span]);
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
  key.part("bearers", [length * 0.08, bearer.t / 2], [5, 9]);
  if (ledger) key.part("floor-ledger", [length * 0.08, span - far / 2], [5, -9]);
  key.part("joists", [(joists[2] ?? 0) + joist.t / 2, span * 0.6], [-6, 7]);
  key.part("floor-boards", [length * 0.8, span * 0.55], [7, 7]);
  const meet = "Boards are drawn on the right half alone; they meet over joists, bearers over posts.";
  const note = ledger ? `${meet} The floor ledger is lagged to the wall.` : meet;
  const title = "Floor";
  const views = [{ view, area: wholeArea(1) }];
  const description = `${title}. ${note} ${key.lines.join("; ")}.`;
  return { name: "floor", title, description, views, key: key.lines, notes: [note], system: subject.system };
}
