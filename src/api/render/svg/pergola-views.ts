/** Plan, elevation, section and rafter of a pergola. In plan `x` runs along the beams, from the frame's corner. */

import type { OutlineCells } from "../../../estimate/pieces/outline.js";
import type { PergolaCells } from "../../../estimate/pieces/pergola.js";
import type { Cell } from "../../../estimate/sheet/expression.js";
import { floorInSection, floorKey } from "./floor-section.js";
import {
  bayChain,
  baysOf,
  each,
  ground,
  jointMarks,
  linesAlong,
  type PostPlan,
  postLines,
  postRow,
  postsInPlan,
} from "./parts.js";
import { Key, type Keyed, mm, NONE, type Subject } from "./subject.js";
import { View } from "./view.js";

/** Everything measured once, in millimetres. */
function sizesOf(pergola: PergolaCells, subject: Subject) {
  const { frame, topLength, topWidth } = pergola;
  const part = (base: string) => subject.section(base) ?? NONE;
  const [bay, space] = [mm(baysOf(subject)[0] as Cell), mm(pergola.rafterSpace)];
  const [rafter, slat] = [part("rafters"), part("slats")];
  const wide = mm(topWidth);
  const end = mm(frame.endOverhang);
  const rafters = linesAlong(subject.count(subject.cell("roof.rafters.lines")), space, mm(topLength) - rafter.t);
  const slats = frame.slatSpacing
    ? linesAlong(
        subject.count(subject.cell("roof.slats.lines")),
        mm(subject.cell("roof.slats.equalSpace")),
        wide - slat.w,
      )
    : [];
  return {
    ...{ bay, rafter, slat, end },
    span: mm(frame.span),
    length: mm(frame.length),
    side: mm(frame.sideOverhang),
    height: mm(frame.height),
    leg: mm(frame.braceLeg),
    post: part("posts"),
    beam: part("beams"),
    brace: part("braces"),
    posts: postLines(subject),
    rafters: rafters.map((x) => x - end),
    slats: slats.map((y) => y - mm(frame.sideOverhang)),
  };
}

/** Its posts in plan. */
export function pergolaPosts(pergola: PergolaCells, subject: Subject): PostPlan {
  return { ...sizesOf(pergola, subject), endBays: 1, farRow: true };
}

/** Slats are drawn on the right half alone, so that what lies below them is seen. */
export function pergolaPlan(pergola: PergolaCells, outline: OutlineCells, subject: Subject): Keyed {
  const s = sizesOf(pergola, subject);
  const { frame } = pergola;
  const view = new View();
  const [left, right, bottom, top] = [-s.end, s.length + s.end, -s.side, s.span + s.side];
  view.box([left, 0], [right, s.beam.t]);
  view.box([left, s.span - s.beam.t], [right, s.span]);
  for (const x of s.rafters) view.box([x, bottom], [x + s.rafter.t, top]);
  for (const y of s.slats) view.box([s.length / 2, y], [right, y + s.slat.w]);
  postsInPlan(view, { ...s, endBays: 1, farRow: true });
  alongDimensions(view, pergola, outline, subject);
  const spaces = s.rafters.length - 1;
  const rafters = each(spaces, "rafter bays", subject.small(pergola.rafterSpace));
  view.chain("above", 0, left + s.rafter.t / 2, [[spaces * mm(pergola.rafterSpace), rafters]]);
  const sides = [s.side, subject.small(frame.sideOverhang)] as const;
  view.chain("left", 0, bottom, [sides, [s.span, subject.long(frame.span)], sides]);
  view.chain("left", 1, bottom, [[mm(outline.width), subject.long(outline.width)]]);
  if (frame.slatSpacing) {
    const apart = subject.cell("roof.slats.equalSpace");
    const slats = each(s.slats.length - 1, "slat spaces", subject.small(apart));
    view.chain("right", 0, bottom + s.slat.w / 2, [[(s.slats.length - 1) * mm(apart), slats]]);
  }
  const key = new Key(subject, view);
  const first = s.posts[0] ?? 0;
  key.part("posts", [first + s.post.w, s.post.t], [5, 7]);
  key.part("beams", [left, s.span - s.beam.t / 2], [-4, 7]);
  key.part("rafters", [s.rafters[2] ?? left, s.span * 0.6], [4, 6]);
  key.part("slats", [s.length / 2, s.slats[Math.floor(s.slats.length / 2)] ?? 0], [-6, -5]);
  return { view, key: key.lines };
}

function alongDimensions(view: View, pergola: PergolaCells, outline: OutlineCells, subject: Subject): void {
  const s = sizesOf(pergola, subject);
  view.chain("below", 0, s.post.w / 2, bayChain(subject));
  const ends = [s.end, subject.small(pergola.frame.endOverhang)] as const;
  view.chain("below", 1, -s.end, [ends, [s.length, subject.long(pergola.frame.length)], ends]);
  if (s.end > 0) view.chain("below", 2, -s.end, [[mm(outline.length), subject.long(outline.length)]]);
}

/** Along the beams. */
export function pergolaElevation(pergola: PergolaCells, outline: OutlineCells, subject: Subject): Keyed {
  const s = sizesOf(pergola, subject);
  const view = new View();
  const [left, right] = [-s.end, s.length + s.end];
  const under = s.height - s.beam.w;
  postRow(view, { ...s, under });
  view.box([left, under], [right, s.height]);
  jointMarks(view, "beams", subject, [left, under, s.height]);
  const top = s.height + s.rafter.w;
  for (const x of s.rafters) view.box([x, s.height], [x + s.rafter.t, top]);
  if (s.slats.length > 0) view.box([left, top], [right, top + s.slat.t]);
  ground(view, left, right);
  alongDimensions(view, pergola, outline, subject);
  heights(view, pergola, outline, subject);
  const key = new Key(subject, view);
  key.part("posts", [s.post.w, s.height * 0.25], [7, 3]);
  key.part("beams", [right, under + s.beam.w / 2], [8, -6]);
  key.part("braces", [s.post.w + s.leg * 0.5, under - s.leg * 0.4], [6, -6]);
  key.part("rafters", [right, s.height + s.rafter.w / 2], [8, 2]);
  key.part("slats", [right, top + s.slat.t / 2], [6, 8]);
  return { view, key: key.lines };
}

/** Across the beams, at a pair of posts. */
export function pergolaSection(pergola: PergolaCells, outline: OutlineCells, subject: Subject): Keyed {
  const s = sizesOf(pergola, subject);
  const { frame } = pergola;
  const view = new View();
  const under = s.height - s.beam.w;
  const [left, right, top] = [-s.side, s.span + s.side, s.height + s.rafter.w];
  for (const x of [0, s.span - s.post.t]) view.box([x, 0], [x + s.post.t, under]);
  const footprint = { ...s, farRow: true };
  floorInSection(view, footprint, subject);
  for (const x of [0, s.span - s.beam.t]) view.cut([x, under], [x + s.beam.t, s.height]);
  view.box([left, s.height], [right, top]);
  for (const x of s.slats) view.cut([x, top], [x + s.slat.w, top + s.slat.t]);
  ground(view, left, right);
  const sides = [s.side, subject.small(frame.sideOverhang)] as const;
  view.chain("below", 0, left, [sides, [s.span, subject.long(frame.span)], sides]);
  view.chain("below", 1, left, [[mm(outline.width), subject.long(outline.width)]]);
  heights(view, pergola, outline, subject);
  const key = new Key(subject, view);
  key.part("posts", [s.post.t / 2, s.height * 0.4], [8, 4]);
  key.part("beams", [s.beam.t, s.height - s.beam.w * 0.6], [8, -6]);
  key.part("rafters", [s.span / 2, s.height + s.rafter.w / 2], [5, -9]);
  key.part("slats", [right - s.slat.w / 2, top + s.slat.t / 2], [7, 6]);
  floorKey(key, footprint, subject);
  return { view, key: key.lines };
}

function heights(view: View, pergola: PergolaCells, outline: OutlineCells, subject: Subject): void {
  view.chain("left", 0, 0, [[mm(pergola.frame.height), subject.long(pergola.frame.height)]]);
  view.chain("left", 1, 0, [[mm(outline.height), subject.long(outline.height)]]);
}

/** One rafter, level on both beams, cut square at both ends. */
export function pergolaRafter(pergola: PergolaCells, outline: OutlineCells, subject: Subject): Keyed {
  const s = sizesOf(pergola, subject);
  const { frame } = pergola;
  const view = new View();
  const [left, right] = [-s.side, s.span + s.side];
  for (const x of [0, s.span - s.beam.t]) view.cut([x, -s.beam.w], [x + s.beam.t, 0]);
  view.box([left, 0], [right, s.rafter.w]);
  const sides = [s.side, subject.small(frame.sideOverhang)] as const;
  view.chain("above", 0, left, [sides, [s.span, subject.long(frame.span)], sides]);
  view.chain("above", 1, left, [[mm(outline.width), subject.long(outline.width)]]);
  view.chain("left", 0, 0, [[s.rafter.w, subject.small(pergola.rafterDepth)]]);
  const key = new Key(subject, view);
  key.part("rafters", [s.span / 2, s.rafter.w / 2], [6, -14]);
  key.part("beams", [s.beam.t, -s.beam.w / 2], [9, -6]);
  return { view, key: key.lines };
}
