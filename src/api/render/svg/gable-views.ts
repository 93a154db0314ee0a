/** Plan, elevation and section of a gable. In plan `x` runs along the building and `y` across it, from the frame's corner. */

import type { GableCells } from "../../../estimate/pieces/gable.js";
import type { OutlineCells } from "../../../estimate/pieces/outline.js";
import type { Cell } from "../../../estimate/sheet/expression.js";
import { floorInSection, floorKey } from "./floor-section.js";
import {
  bayChain,
  baysOf,
  besideEave,
  brace,
  each,
  endPosts,
  ground,
  jointMarks,
  linesAlong,
  lookoutsInPlan,
  moved,
  type PostPlan,
  postLines,
  postRow,
  postsInPlan,
  purlinsAcross,
  type RafterSide,
  rafterOutline,
  rowsUp,
  slopeOf,
  slopeTriangle,
} from "./parts.js";
import { Key, type Keyed, mm, NONE, type Subject } from "./subject.js";
import { type Point, View } from "./view.js";

/** Everything measured once, in millimetres. */
function sizesOf(gable: GableCells, subject: Subject) {
  const { frame, roof } = gable;
  const part = (base: string) => subject.section(base) ?? NONE;
  const [span, length, bay] = [mm(frame.span), mm(frame.length), mm(baysOf(subject)[0] as Cell)];
  const [rafter, ridge] = [part("rafters"), part("ridge")];
  const { shortLast, squareTail } = subject.asked;
  const side = (far: boolean): RafterSide => {
    const cuts = far ? gable.farRafter : gable.rafter;
    return {
      slope: slopeOf(mm(frame.unitRise), mm(frame.unitRun)),
      depth: mm(gable.rafterDepth),
      overhang: mm(far ? frame.farOverhang : frame.eaveOverhang),
      upTo: span / 2 - ridge.t / 2,
      squareTail,
      seats: [{ at: 0, level: mm(cuts.seat), plumb: mm(cuts.notchPlumb) }],
      above: mm(cuts.heightAbovePlate),
    };
  };
  return {
    ...{ span, length, bay, rafter, ridge, near: side(false), far: side(true) },
    end: mm(frame.gableOverhang),
    height: mm(frame.eaveHeight),
    leg: mm(frame.braceLeg),
    post: part("posts"),
    beam: part("beams"),
    tie: part("ties"),
    gableBeam: part("gable-beams"),
    brace: part("braces"),
    king: part("king-posts"),
    purlin: part("purlins"),
    lookout: part("lookouts"),
    fascia: part("eave-fascia"),
    /** Left faces of posts and of rafters. */
    posts: postLines(subject),
    rafters: linesAlong(
      subject.count(roof.rafterLines),
      mm(shortLast ? frame.rafterSpacing : gable.rafterSpace),
      length - rafter.t,
    ),
    endBays: frame.endBays ? subject.count(frame.endBays) : 1,
    farRow: true,
    rows: subject.section("purlins") ? subject.count(roof.purlinRows) : 0,
    farRows: subject.section("purlins") ? subject.count(gable.farPurlinRows) : 0,
  };
}
type Sizes = ReturnType<typeof sizesOf>;

/** Its posts in plan. */
export const gablePosts = (gable: GableCells, subject: Subject): PostPlan => sizesOf(gable, subject);

/** Rafters below the ridge, purlins above it: the frame, and what lies on it. */
export function gablePlan(gable: GableCells, outline: OutlineCells, subject: Subject): Keyed {
  const s = sizesOf(gable, subject);
  const view = new View();
  const [left, right, bottom, top] = [-s.end, s.length + s.end, -s.near.overhang, s.span + s.far.overhang];
  planFrame(view, s, left, right);
  const fly = s.end > 0 ? [left, right - s.rafter.t] : [];
  const [low, high] = [s.near.upTo, s.span - s.far.upTo];
  for (const x of [...s.rafters, ...fly]) {
    view.box([x, bottom], [x + s.rafter.t, low]);
    view.box([x, high], [x + s.rafter.t, top], "fine");
  }
  const lookout = lookoutsInPlan(view, subject, {
    from: bottom,
    up: low - bottom,
    ends: [left, right],
    rafters: s.rafters,
    thick: s.rafter.t,
    width: s.lookout.w,
  });
  const flat = 1 / s.far.slope.stretch;
  for (const from of rowsUp(s.farRows, mm(gable.farRafter.edgeLength), s.purlin.w)) {
    view.box([left, top - (from + s.purlin.w) * flat], [right, top - from * flat]);
    jointMarks(view, "purlins", subject, [left, top - (from + s.purlin.w) * flat, top - from * flat]);
  }
  view.box([left, low], [right, high]);
  jointMarks(view, "ridge", subject, [left, low, high]);
  for (const y of [0, s.span - s.beam.t]) jointMarks(view, "beams", subject, [left, y, y + s.beam.t]);
  view.box([left, bottom - s.fascia.t], [right, bottom]);
  view.box([left, top], [right, top + s.fascia.t]);
  postsInPlan(view, s);
  planDimensions(view, gable, outline, subject);
  const key = new Key(subject, view);
  const middle = s.rafters[Math.floor(s.rafters.length / 2)] ?? 0;
  const second = s.posts[1] ?? 0;
  key.part("posts", [second, s.post.t], [-5, 7]);
  key.part("beams", [s.length - s.bay * 0.6, s.beam.t], [4, 7]);
  key.part("gable-beams", [s.gableBeam.t, s.span * 0.38], [6, 4]);
  key.part("ties", [second + s.post.w / 2, s.span * 0.38], [5, 6]);
  key.part("rafters", [middle + s.rafter.t / 2, s.span * 0.28], [5, 6]);
  key.part("lookouts", [right - s.rafter.t - s.end / 2, lookout], [10, -6]);
  key.part("fly-rafters", [right - s.rafter.t / 2, s.span * 0.2], [8, 4]);
  key.part("ridge", [right, s.span / 2], [8, 0]);
  key.part("purlins", [right, s.span * 0.72], [8, 4]);
  key.part("eave-fascia", [right, bottom], [8, -4]);
  return { view, key: key.lines };
}

/** What stands below the rafters. */
function planFrame(view: View, s: Sizes, left: number, right: number): void {
  for (const [i, x] of s.posts.entries()) {
    const outer = i === 0 || i === s.posts.length - 1;
    const t = outer ? s.gableBeam.t : s.tie.t;
    const from = i === 0 ? x : outer ? x + s.post.w - t : x + (s.post.w - t) / 2;
    view.box([from, 0], [from + t, s.span], "hidden");
  }
  view.box([left, 0], [right, s.beam.t], "edge", false);
  view.box([left, s.span - s.beam.t], [right, s.span], "edge", false);
}

function planDimensions(view: View, gable: GableCells, outline: OutlineCells, subject: Subject): void {
  const { frame, roof } = gable;
  const s = sizesOf(gable, subject);
  view.chain("below", 0, s.post.w / 2, bayChain(subject));
  const ends = [s.end, subject.small(frame.gableOverhang)] as const;
  view.chain("below", 1, -s.end, [ends, [s.length, subject.long(frame.length)], ends]);
  if (s.end > 0) view.chain("below", 2, -s.end, [[mm(roof.length), subject.long(roof.length)]]);
  const { shortLast } = subject.asked;
  const space = shortLast ? frame.rafterSpacing : gable.rafterSpace;
  const spaces = s.rafters.length - 1 - (shortLast ? 1 : 0);
  const last = shortLast ? ", the last bay less" : "";
  const rafters = each(spaces, "rafter bays", subject.small(space));
  view.chain("above", 0, s.rafter.t / 2, [[mm(space) * spaces, `${rafters}${last}`]]);
  view.chain("left", 0, -s.near.overhang, [
    [s.near.overhang, subject.small(frame.eaveOverhang)],
    [s.span, subject.long(frame.span)],
    [s.far.overhang, subject.small(frame.farOverhang)],
  ]);
  view.chain("left", 1, -s.near.overhang, [[mm(outline.width), subject.long(outline.width)]]);
}

/** The near side, before it is covered. */
export function gableElevation(gable: GableCells, outline: OutlineCells, subject: Subject): Keyed {
  const s = sizesOf(gable, subject);
  const view = new View();
  const { frame, roof } = gable;
  const [left, right] = [-s.end, s.length + s.end];
  const under = s.height - s.beam.w;
  postRow(view, { ...s, under });
  view.box([left, under], [right, s.height]);
  jointMarks(view, "beams", subject, [left, under, s.height]);
  const { slope, above, overhang } = s.near;
  const tail = s.height + above - overhang * slope.pitch;
  const peak = s.height + above + s.near.upTo * slope.pitch;
  const fly = s.end > 0 ? [left, right - s.rafter.t] : [];
  for (const x of [...s.rafters, ...fly]) view.box([x, tail], [x + s.rafter.t, peak], "fine");
  const [cos, sin] = [1 / slope.stretch, slope.pitch / slope.stretch];
  for (const from of rowsUp(s.rows, mm(gable.rafter.edgeLength), s.purlin.w)) {
    view.box([left, tail + from * sin], [right, tail + (from + s.purlin.w) * sin + s.purlin.t * cos]);
  }
  view.box([left, tail - s.fascia.w], [right, tail]);
  jointMarks(view, "eave-fascia", subject, [left, tail - s.fascia.w, tail]);
  ground(view, left, right);
  view.chain("below", 0, s.post.w / 2, bayChain(subject));
  const ends = [s.end, subject.small(frame.gableOverhang)] as const;
  view.chain("below", 1, left, [ends, [s.length, subject.long(frame.length)], ends]);
  if (s.end > 0) view.chain("below", 2, left, [[mm(roof.length), subject.long(roof.length)]]);
  view.chain("left", 0, 0, [[s.height, subject.long(frame.eaveHeight)]]);
  view.chain("left", 1, 0, [[mm(outline.height), subject.long(outline.height)]]);
  const key = new Key(subject, view);
  key.part("posts", [s.post.w, s.height * 0.25], [7, 3]);
  key.part("beams", [right - s.end - s.post.w * 4, under], [-6, -9]);
  key.part("braces", [(s.posts[1] ?? 0) - s.leg * 0.6, under - s.leg * 0.5], [-5, -7]);
  key.part("eave-fascia", [right, tail - s.fascia.w / 2], [8, 0]);
  key.part("purlins", [right, tail + (peak - tail) / 2], [8, 4]);
  return { view, key: key.lines };
}

/** Across the building, at a pair of posts. */
export function gableSection(gable: GableCells, outline: OutlineCells, subject: Subject): Keyed {
  const s = sizesOf(gable, subject);
  const view = new View();
  const { frame } = gable;
  const under = s.height - s.beam.w;
  const tieUnder = s.height - s.tie.w;
  endPosts(view, s, s.height - s.gableBeam.w);
  view.box([0, 0], [s.post.t, under]);
  view.box([s.span - s.post.t, 0], [s.span, under]);
  view.box([0, tieUnder], [s.span, s.height]);
  if (s.brace.t > 0) {
    brace(view, [s.post.t, tieUnder], s.leg, s.brace.w, 1);
    brace(view, [s.span - s.post.t, tieUnder], s.leg, s.brace.w, -1);
  }
  const footprint = { ...s, farRow: true };
  floorInSection(view, footprint, subject);
  view.cut([0, under], [s.beam.t, s.height]);
  view.cut([s.span - s.beam.t, under], [s.span, s.height]);
  const peak = s.height + s.near.above + s.near.upTo * s.near.slope.pitch;
  for (const [side, origin, mirrored, rows, cuts] of [
    [s.near, 0, false, s.rows, gable.rafter],
    [s.far, s.span, true, s.farRows, gable.farRafter],
  ] as const) {
    view.polygon(moved(rafterOutline(side), [origin, s.height], mirrored));
    for (const purlin of purlinsAcross(side, s.purlin, rows, mm(cuts.edgeLength))) {
      view.polygon(moved(purlin, [origin, s.height], mirrored));
    }
    const tail = s.height + side.above - side.overhang * side.slope.pitch;
    const fascia = [-side.overhang - s.fascia.t, -side.overhang].map((x) => (mirrored ? s.span - x : x));
    view.box([Math.min(...fascia), tail - s.fascia.w], [Math.max(...fascia), tail]);
  }
  if (s.king.t > 0) view.box([(s.span - s.king.w) / 2, s.height], [(s.span + s.king.w) / 2, peak - s.ridge.w]);
  view.cut([s.span / 2 - s.ridge.t / 2, peak - s.ridge.w], [s.span / 2 + s.ridge.t / 2, peak]);
  ground(view, -s.near.overhang, s.span + s.far.overhang);
  const eave = s.height + s.far.above - s.far.overhang * s.far.slope.pitch;
  const beside: Point = [s.span + s.far.overhang * 0.4, besideEave(peak, eave, s.span, s.near.slope)];
  slopeTriangle(view, beside, s.span / 9, s.near.slope, {
    rise: subject.small(frame.unitRise),
    run: subject.small(frame.unitRun),
  });
  view.chain("below", 0, 0, [[s.span / 2, subject.long(subject.cell("roof.run"))]]);
  view.chain("below", 1, -s.near.overhang, [
    [s.near.overhang, subject.small(frame.eaveOverhang)],
    [s.span, subject.long(frame.span)],
    [s.far.overhang, subject.small(frame.farOverhang)],
  ]);
  view.chain("below", 2, -s.near.overhang, [[mm(outline.width), subject.long(outline.width)]]);
  view.chain("left", 0, 0, [[s.height, subject.long(frame.eaveHeight)]]);
  view.chain("left", 1, 0, [[mm(outline.height), subject.long(outline.height)]]);
  const key = new Key(subject, view);
  const up = (x: number) => s.height + s.near.above + x * s.near.slope.pitch;
  key.part("posts", [s.post.t / 2, s.height * 0.4], [8, 4]);
  key.part("beams", [s.beam.t / 2, s.height - s.beam.w * 0.7], [-9, -5]);
  key.part("ties", [s.span * 0.5, s.height - s.tie.w / 2], [6, -8]);
  key.part("braces", [s.post.t + s.leg * 0.5, tieUnder - s.leg * 0.4], [6, -6]);
  key.part("rafters", [s.span * 0.3, up(s.span * 0.3) - s.rafter.w * 0.6], [8, -9]);
  key.part("ridge", [s.span / 2, peak - s.ridge.w * 0.8], [4, -9]);
  key.part("king-posts", [s.span / 2 + s.king.w / 2, s.height + (peak - s.height) * 0.3], [10, 1]);
  key.part("purlins", [s.span * 0.28, up(s.span * 0.28) + s.purlin.t / 2], [-7, 8]);
  key.part("eave-fascia", [-s.near.overhang, up(-s.near.overhang) - s.fascia.w / 2], [-7, 6]);
  floorKey(key, footprint, subject);
  return { view, key: key.lines };
}
