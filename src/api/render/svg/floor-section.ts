/** A floor in a section at a pair of posts: bearers bolted to their inner faces, joists on those, boards on the joists. */
import type { PostPlan } from "./parts.js";
import { type Key, mm, NONE, type Subject } from "./subject.js";
import type { View } from "./view.js";

/** Where a floor lies across the building, in millimetres: inner faces of its bearers' posts, or of the wall's ledger. */
export interface FloorAcross {
  /** From the outer face of the near posts to the bearer, and to the far one or the floor ledger. */
  readonly near: readonly [from: number, to: number];
  readonly far: readonly [from: number, to: number];
}

/** Bearers stand against the inner faces of the posts; where a wall takes the far posts' place, a ledger against the wall. */
export function floorAcross(
  { span, post, farRow }: Pick<PostPlan, "span" | "post" | "farRow">,
  subject: Subject,
): FloorAcross {
  const bearer = subject.section("bearers") ?? NONE;
  const ledger = subject.section("floor-ledger") ?? NONE;
  return {
    near: [post.t, post.t + bearer.t],
    far: farRow ? [span - post.t - bearer.t, span - post.t] : [span - ledger.t, span],
  };
}

/** Draws it from the posts' feet up, before the ground; nothing where there is no floor. */
export function floorInSection(view: View, at: Pick<PostPlan, "span" | "post" | "farRow">, subject: Subject): void {
  const [bearer, joist, board] = ["bearers", "joists", "floor-boards"].map((base) => subject.section(base) ?? NONE);
  if (!subject.known("floor.rows") || !bearer || !joist || !board) return;
  const { near, far } = floorAcross(at, subject);
  // At the posts a joist ends at their inner faces, on the bearers.
  const [from, to] = [at.post.t, at.farRow ? at.span - at.post.t : at.span];
  if (bearer.t > 0) view.cut([near[0], 0], [near[1], bearer.w]);
  if (far[1] > far[0]) view.cut([far[0], 0], [far[1], bearer.w]);
  view.box([from, bearer.w], [to, bearer.w + joist.w]);
  const rows = mm(subject.cell("floor.rows"));
  const gap = mm(subject.cell("frame.floorGap"));
  const width = mm(subject.known("sections.floor-boards.soldWidth") ?? subject.cell("sections.floor-boards.width"));
  const top = bearer.w + joist.w;
  for (let i = 0; i < rows; i++) {
    const [left, right] = [Math.max(from, i * (width + gap)), Math.min(to, i * (width + gap) + width)];
    if (right > left && board.t > 0) view.box([left, top], [right, top + board.t], "cut");
  }
}

/** Points at its parts. */
export function floorKey(key: Key, at: Pick<PostPlan, "span" | "post" | "farRow">, subject: Subject): void {
  if (!subject.known("floor.rows")) return;
  const { near, far } = floorAcross(at, subject);
  const [bearer, joist, board] = ["bearers", "joists", "floor-boards"].map((base) => subject.section(base) ?? NONE);
  if (!bearer || !joist || !board) return;
  key.part("bearers", [(near[0] + near[1]) / 2, bearer.w * 0.5], [9, -5]);
  key.part("floor-ledger", [(far[0] + far[1]) / 2, bearer.w * 0.5], [-9, -5]);
  key.part("joists", [at.span * 0.42, bearer.w + joist.w / 2], [6, -8]);
  key.part("floor-boards", [at.span * 0.6, bearer.w + joist.w + board.t], [6, 8]);
}
