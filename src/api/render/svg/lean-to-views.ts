/** Plan, elevation and section of a lean-to. In plan `y` runs up the slope from the low beam's outer face. */

import type { LeanToCells } from "../../../estimate/pieces/lean-to.js";
import type { OutlineCells } from "../../../estimate/pieces/outline.js";
import type { Cell } from "../../../estimate/sheet/expression.js";
import { floorInSection, floorKey } from "./floor-section.js";
import {
  bayChain,
  baysOf,
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
import { View } from "./view.js";

/** Everything measured once, in millimetres. */
function sizesOf(leanTo: LeanToCells, subject: Subject) {
  const { frame, roof, rafter: cuts } = leanTo;
  const part = (base: string) => subject.section(base) ?? NONE;
  const [span, length] = [mm(frame.span), mm(frame.length)];
  const rafter = part("rafters");
  const { shortLast, squareTail } = subject.asked;
  const [low, high] = [mm(frame.lowOverhang), frame.highOverhang ? mm(frame.highOverhang) : 0];
  const onPosts = leanTo.highSide === "posts";
  const upper = part(onPosts ? "high-beams" : "ledger");
  const seat = (at: number) => ({ at, level: mm(cuts.seat), plumb: mm(cuts.notchPlumb) });
  const side: RafterSide = {
    slope: slopeOf(mm(frame.unitRise), mm(frame.unitRun)),
    depth: mm(leanTo.rafterDepth),
    overhang: low,
    upTo: onPosts ? span + high : span - upper.t,
    squareTail,
    seats: [seat(0), ...(onPosts ? [seat(span - upper.t)] : [])],
    above: mm(cuts.heightAbovePlate),
  };
  return {
    ...{ span, length, low, high, rafter, side, onPosts, upper },
    bay: mm(baysOf(subject)[0] as Cell),
    end: mm(frame.endOverhang),
    height: mm(frame.eaveHeight),
    highHeight: mm(leanTo.highHeight),
    leg: mm(frame.braceLeg),
    post: part("low-posts"),
    beam: part("low-beams"),
    endBeam: part("end-beams"),
    endReach: endReach(leanTo, span),
    brace: part("braces"),
    purlin: part("purlins"),
    lookout: part("lookouts"),
    fascia: part("low-fascia"),
    posts: postLines(subject),
    space: shortLast ? frame.rafterSpacing : leanTo.rafterSpace,
    rafters: linesAlong(
      subject.count(roof.rafterLines),
      mm(shortLast ? frame.rafterSpacing : leanTo.rafterSpace),
      length - rafter.t,
    ),
    endBays: frame.endBays ? subject.count(frame.endBays) : 1,
    rows: subject.section("purlins") ? subject.count(roof.purlinRows) : 0,
  };
}
type Sizes = ReturnType<typeof sizesOf>;

/** How far the end beams reach: to the wall, or to the face of a ledger as low as they are. */
function endReach({ groups }: LeanToCells, span: number): number {
  const beams = groups.find(({ name }) => name === "end-beams");
  return beams ? Math.min(span, mm(beams.length)) : span;
}

/** Its posts in plan. */
export function leanToPosts(leanTo: LeanToCells, subject: Subject): PostPlan {
  const s = sizesOf(leanTo, subject);
  return { ...s, farRow: s.onPosts };
}

/** Rafters on the left, purlins on the right: the frame, and what lies on it. */
export function leanToPlan(leanTo: LeanToCells, outline: OutlineCells, subject: Subject): Keyed {
  const s = sizesOf(leanTo, subject);
  const view = new View();
  const [left, right, bottom, top] = [-s.end, s.length + s.end, -s.low, s.side.upTo];
  const middle = s.length / 2;
  planFrame(view, s, left, right);
  const fly = s.end > 0 ? [left, right - s.rafter.t] : [];
  for (const x of [...s.rafters, ...fly]) view.box([x, bottom], [x + s.rafter.t, top], x < middle ? "edge" : "fine");
  const lookout = lookoutsInPlan(view, subject, {
    from: bottom,
    up: top - bottom,
    ends: [left, right],
    rafters: s.rafters,
    thick: s.rafter.t,
    width: s.lookout.w,
  });
  const flat = 1 / s.side.slope.stretch;
  for (const from of rowsUp(s.rows, mm(leanTo.rafter.edgeLength), s.purlin.w)) {
    view.box([middle, bottom + from * flat], [right, bottom + (from + s.purlin.w) * flat]);
  }
  view.box([left, bottom - s.fascia.t], [right, bottom]);
  if (s.onPosts) view.box([left, top], [right, top + s.fascia.t]);
  postsInPlan(view, { ...s, farRow: s.onPosts });
  planDimensions(view, leanTo, outline, subject);
  const key = new Key(subject, view);
  const last = s.posts.at(-1) ?? 0;
  key.part("low-posts", [last, s.post.t], [-5, 7]);
  key.part("high-posts", [last, s.span - s.post.t], [-5, -6]);
  key.part("low-beams", [s.bay * 0.45, s.beam.t], [4, 7]);
  key.part("high-beams", [s.bay * 0.45, s.span - s.upper.t], [4, -7]);
  key.part("ledger", [s.bay * 0.45, s.span - s.upper.t], [4, -7]);
  key.part("end-beams", [s.endBeam.t, s.span * 0.5], [6, 4]);
  key.part("rafters", [(s.rafters[Math.floor(s.rafters.length / 3)] ?? 0) + s.rafter.t, s.span * 0.5], [5, 5]);
  key.part("lookouts", [left + s.rafter.t + s.end / 2, lookout], [-10, -6]);
  key.part("fly-rafters", [right - s.rafter.t / 2, s.span * 0.4], [8, -4]);
  key.part("purlins", [right, s.span * 0.6], [8, 4]);
  key.part("low-fascia", [right, bottom], [8, -4]);
  return { view, key: key.lines };
}

/** What stands below the rafters. */
function planFrame(view: View, s: Sizes, left: number, right: number): void {
  for (const from of [0, s.length - s.endBeam.t]) view.box([from, 0], [from + s.endBeam.t, s.endReach], "hidden");
  view.box([left, 0], [right, s.beam.t], "edge", false);
  view.box([left, s.span - s.upper.t], [right, s.span], "edge", false);
}

function planDimensions(view: View, leanTo: LeanToCells, outline: OutlineCells, subject: Subject): void {
  const { frame } = leanTo;
  const s = sizesOf(leanTo, subject);
  alongDimensions(view, leanTo, subject);
  const { shortLast } = subject.asked;
  const spaces = s.rafters.length - 1 - (shortLast ? 1 : 0);
  const rafters = `${each(spaces, "rafter bays", subject.small(s.space))}${shortLast ? ", the last bay less" : ""}`;
  view.chain("above", 0, s.rafter.t / 2, [[mm(s.space) * spaces, rafters]]);
  view.chain("left", 0, -s.low, [
    [s.low, subject.small(frame.lowOverhang)],
    [s.span, subject.long(frame.span)],
    ...(frame.highOverhang ? [[s.high, subject.small(frame.highOverhang)] as const] : []),
  ]);
  view.chain("left", 1, -s.low, [[mm(outline.width), subject.long(outline.width)]]);
}

/** Bays, frame and roof along the building. */
function alongDimensions(view: View, leanTo: LeanToCells, subject: Subject): void {
  const { frame, roof } = leanTo;
  const s = sizesOf(leanTo, subject);
  view.chain("below", 0, s.post.w / 2, bayChain(subject));
  const ends = [s.end, subject.small(frame.endOverhang)] as const;
  view.chain("below", 1, -s.end, [ends, [s.length, subject.long(frame.length)], ends]);
  if (s.end > 0) view.chain("below", 2, -s.end, [[mm(roof.length), subject.long(roof.length)]]);
}

/** The low side, before it is covered. */
export function leanToElevation(leanTo: LeanToCells, outline: OutlineCells, subject: Subject): Keyed {
  const s = sizesOf(leanTo, subject);
  const view = new View();
  const [left, right] = [-s.end, s.length + s.end];
  const under = s.height - s.beam.w;
  postRow(view, { ...s, under });
  view.box([left, under], [right, s.height]);
  jointMarks(view, "low-beams", subject, [left, under, s.height]);
  const { slope, above } = s.side;
  const tail = s.height + above - s.low * slope.pitch;
  const peak = s.height + above + s.side.upTo * slope.pitch;
  const fly = s.end > 0 ? [left, right - s.rafter.t] : [];
  for (const x of [...s.rafters, ...fly]) view.box([x, tail], [x + s.rafter.t, peak], "fine");
  const [cos, sin] = [1 / slope.stretch, slope.pitch / slope.stretch];
  for (const from of rowsUp(s.rows, mm(leanTo.rafter.edgeLength), s.purlin.w)) {
    view.box([left, tail + from * sin], [right, tail + (from + s.purlin.w) * sin + s.purlin.t * cos]);
  }
  view.box([left, tail - s.fascia.w], [right, tail]);
  jointMarks(view, "low-fascia", subject, [left, tail - s.fascia.w, tail]);
  ground(view, left, right);
  alongDimensions(view, leanTo, subject);
  view.chain("left", 0, 0, [[s.height, subject.long(leanTo.frame.eaveHeight)]]);
  view.chain("left", 1, 0, [[mm(outline.height), subject.long(outline.height)]]);
  const key = new Key(subject, view);
  key.part("low-posts", [s.post.w, s.height * 0.25], [7, 3]);
  key.part("low-beams", [s.length - s.post.w * 4, under], [-6, -9]);
  key.part("braces", [(s.posts[1] ?? 0) - s.leg * 0.6, under - s.leg * 0.5], [-5, -7]);
  key.part("low-fascia", [right, tail - s.fascia.w / 2], [8, -4]);
  key.part("purlins", [right, tail + (peak - tail) / 2], [8, 4]);
  return { view, key: key.lines };
}

/** Across the building, at its end. */
export function leanToSection(leanTo: LeanToCells, outline: OutlineCells, subject: Subject): Keyed {
  const s = sizesOf(leanTo, subject);
  const view = new View();
  const under = s.height - s.beam.w;
  const endUnder = s.height - s.endBeam.w;
  const up = (x: number) => s.height + s.side.above + x * s.side.slope.pitch;
  endPosts(view, { ...s, farRow: s.onPosts }, endUnder);
  view.box([0, 0], [s.post.t, under]);
  if (s.onPosts) view.box([s.span - s.post.t, 0], [s.span, s.highHeight - s.upper.w]);
  // Hung at the wall itself, below the ledger, or at the ledger of a flat roof.
  view.box([0, endUnder], [s.endReach, s.height]);
  if (s.brace.t > 0) {
    brace(view, [s.post.t, endUnder], s.leg, s.brace.w, 1);
    if (s.onPosts) brace(view, [s.span - s.post.t, endUnder], s.leg, s.brace.w, -1);
  }
  const footprint = { ...s, farRow: s.onPosts };
  floorInSection(view, footprint, subject);
  view.cut([0, under], [s.beam.t, s.height]);
  view.polygon(moved(rafterOutline(s.side), [0, s.height]));
  // A ledger's top is level with the rafters' upper edges, which hang at its face.
  const top = s.onPosts ? s.highHeight : up(s.span - s.upper.t);
  view.cut([s.span - s.upper.t, top - s.upper.w], [s.span, top]);
  for (const purlin of purlinsAcross(s.side, s.purlin, s.rows, mm(leanTo.rafter.edgeLength))) {
    view.polygon(moved(purlin, [0, s.height]));
  }
  view.box([-s.low - s.fascia.t, up(-s.low) - s.fascia.w], [-s.low, up(-s.low)]);
  const end = s.side.upTo;
  if (s.onPosts) view.box([end, up(end) - s.fascia.w], [end + s.fascia.t, up(end)]);
  else
    view.line(
      [
        [s.span, 0],
        [s.span, top * 1.08],
      ],
      "cut",
    );
  ground(view, -s.low, Math.max(s.span, end));
  sectionDimensions(view, leanTo, outline, subject);
  const key = new Key(subject, view);
  key.part("low-posts", [s.post.t / 2, s.height * 0.35], [8, 4]);
  key.part("high-posts", [s.span - s.post.t / 2, s.height * 0.35], [-8, 4]);
  key.part("low-beams", [s.beam.t / 2, s.height - s.beam.w * 0.7], [-9, -6]);
  key.part("high-beams", [s.span - s.upper.t / 2, s.highHeight - s.upper.w * 0.7], [9, -8]);
  key.part("ledger", [s.span - s.upper.t / 2, top - s.upper.w * 0.7], [-8, -8]);
  key.part("end-beams", [s.span * 0.5, s.height - s.endBeam.w / 2], [6, -8]);
  key.part("braces", [s.post.t + s.leg * 0.5, endUnder - s.leg * 0.4], [6, -6]);
  key.part("rafters", [s.span * 0.55, up(s.span * 0.55) - s.rafter.w * 0.6], [7, -7]);
  key.part("purlins", [s.span * 0.4, up(s.span * 0.4) + s.purlin.t / 2], [-7, 9]);
  key.part("low-fascia", [-s.low, up(-s.low) - s.fascia.w / 2], [-7, 6]);
  floorKey(key, footprint, subject);
  return { view, key: key.lines };
}

function sectionDimensions(view: View, leanTo: LeanToCells, outline: OutlineCells, subject: Subject): void {
  const { frame } = leanTo;
  const s = sizesOf(leanTo, subject);
  const eave = s.height + s.side.above - s.low * s.side.slope.pitch;
  slopeTriangle(
    view,
    [
      -s.low * 0.4,
      Math.max(
        mm(outline.height) - (s.span * s.side.slope.pitch) / 3,
        eave + (s.span / 8) * s.side.slope.pitch + s.span / 5,
      ),
    ],
    s.span / 8,
    s.side.slope,
    {
      rise: subject.small(frame.unitRise),
      run: subject.small(frame.unitRun),
    },
  );
  view.chain("below", 0, -s.low, [
    [s.low, subject.small(frame.lowOverhang)],
    [s.span, subject.long(frame.span)],
    ...(frame.highOverhang ? [[s.high, subject.small(frame.highOverhang)] as const] : []),
  ]);
  view.chain("below", 1, -s.low, [[mm(outline.width), subject.long(outline.width)]]);
  view.chain("left", 0, 0, [[s.height, subject.long(frame.eaveHeight)]]);
  view.chain("right", 0, 0, [[s.highHeight, subject.long(leanTo.highHeight)]]);
  view.chain("right", 1, 0, [[mm(outline.height), subject.long(outline.height)]]);
}
