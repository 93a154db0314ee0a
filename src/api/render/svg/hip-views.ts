/** Plan, elevation and section of a hip roof. In plan `x` runs along the ridge, from the corner of the plates. */

import type { HipCells } from "../../../estimate/pieces/hip.js";
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
function sizesOf(hip: HipCells, subject: Subject) {
  const { frame, roof, layout, rafter: cuts } = hip;
  const part = (base: string) => subject.section(base) ?? NONE;
  const [span, length, run, over] = [mm(frame.span), mm(frame.length), mm(layout.run), mm(frame.eaveOverhang)];
  const ridge = part("ridge");
  const side: RafterSide = {
    slope: slopeOf(mm(frame.unitRise), mm(frame.unitRun)),
    depth: mm(hip.rafterDepth),
    overhang: over,
    upTo: span / 2 - ridge.t / 2,
    squareTail: subject.asked.squareTail,
    seats: [{ at: 0, level: mm(cuts.seat), plumb: mm(cuts.notchPlumb) }],
    above: mm(cuts.heightAbovePlate),
  };
  const bay = mm(baysOf(subject)[0] as Cell);
  return {
    ...{ span, length, run, over, ridge, side, bay },
    height: mm(frame.eaveHeight),
    leg: mm(frame.braceLeg),
    post: part("posts"),
    beam: part("beams"),
    tie: part("ties"),
    brace: part("braces"),
    rafter: part("rafters"),
    hip: part("hips"),
    jack: part("jacks"),
    purlin: part("side-purlins"),
    fascia: part("side-fascia"),
    /** Left faces along a side. */
    posts: postLines(subject),
    endBays: subject.count(frame.endBays),
    /** Centres of the commons, and of jacks from a corner. */
    commons: linesAlong(subject.count(layout.commons), mm(layout.commonSpace), length).map((x) => run + x),
    jacks: Array.from({ length: subject.count(layout.jackSpaces) - 1 }, (_, i) => run - (i + 1) * mm(layout.jackSpace)),
    rows: subject.section("side-purlins") ? subject.count(roof.purlinRows) : 0,
  };
}
type Sizes = ReturnType<typeof sizesOf>;

/** Its posts in plan. */
export const hipPosts = (hip: HipCells, subject: Subject): PostPlan => ({ ...sizesOf(hip, subject), farRow: true });

/** Rafters alone: purlins run level round all four sides. */
export function hipPlan(hip: HipCells, outline: OutlineCells, subject: Subject): Keyed {
  const s = sizesOf(hip, subject);
  const view = new View();
  planFrame(view, s);
  const fascia: Point = [-s.over - s.fascia.t, -s.over - s.fascia.t];
  view.box(fascia, [s.length - fascia[0], s.span - fascia[1]], "edge", false);
  view.box([-s.over, -s.over], [s.length + s.over, s.span + s.over], "fine", false);
  planRafters(view, s);
  planDimensions(view, hip, outline, subject);
  const key = new Key(subject, view);
  const [first = s.run] = s.commons;
  const jack = s.jacks[Math.floor(s.jacks.length / 2)] ?? s.run / 2;
  key.part("posts", [s.posts[1] ?? 0, s.post.t], [-5, 7]);
  key.part("beams", [s.length * 0.5, s.beam.t], [5, 8]);
  key.part("end-beams", [s.beam.t, s.span * 0.62], [6, 4]);
  key.part("ties", [(s.posts[1] ?? 0) + s.post.w / 2, s.span * 0.36], [-6, 3]);
  key.part("ridge", [s.length / 2, s.span / 2], [5, 9]);
  key.part("rafters", [s.commons[Math.floor(s.commons.length / 2)] ?? first, s.span * 0.3], [5, 4]);
  key.part("end-rafters", [s.length, s.span / 2], [14 + s.over / 60, 5]);
  key.part("hips", [s.length - s.run * 0.6, s.span - s.run * 0.6], [6, 5]);
  key.part("jacks", [jack, s.span - jack / 2], [7, 4]);
  key.part("side-fascia", [s.length * 0.8, -s.over], [8, -4]);
  key.part("end-fascia", [s.length + s.over, s.span * 0.12], [8, -4]);
  return { view, key: key.lines };
}

/** What stands below the rafters. */
function planFrame(view: View, s: Sizes): void {
  for (const x of s.posts.slice(1, -1)) {
    const from = x + (s.post.w - s.tie.t) / 2;
    view.box([from, 0], [from + s.tie.t, s.span], "hidden");
  }
  for (const y of [0, s.span - s.beam.t]) view.box([0, y], [s.length, y + s.beam.t], "fine", false);
  for (const x of [0, s.length - s.beam.t]) view.box([x, 0], [x + s.beam.t, s.span], "fine", false);
  postsInPlan(view, { ...s, farRow: true });
}

function planRafters(view: View, s: Sizes): void {
  const [half, low, high] = [s.rafter.t / 2, -s.over, s.span + s.over];
  const middle = s.span / 2;
  for (const x of s.commons) {
    view.box([x - half, low], [x + half, middle - s.ridge.t / 2]);
    view.box([x - half, middle + s.ridge.t / 2], [x + half, high]);
  }
  const [first, last] = [s.commons[0] ?? s.run, s.commons.at(-1) ?? s.run];
  view.box([first - half, middle - s.ridge.t / 2], [last + half, middle + s.ridge.t / 2]);
  view.box([low, middle - half], [first - half, middle + half]);
  view.box([last + half, middle - half], [s.length + s.over, middle + half]);
  const turned = (points: readonly Point[], x: boolean, y: boolean) =>
    view.polygon(points.map(([px, py]): Point => [x ? s.length - px : px, y ? s.span - py : py]));
  for (const x of [false, true]) {
    for (const y of [false, true]) {
      // At 45° the hip's faces stand half its thickness × √2 apart along either side.
      const h = (s.hip.t / 2) * Math.SQRT2;
      const [from, to] = [-s.over, s.run - half];
      turned(
        [
          [from, from],
          [from + h, from],
          [to, to - h],
          [to, to],
          [to - h, to],
          [from, from + h],
        ],
        x,
        y,
      );
      for (const at of s.jacks) {
        const j = s.jack.t / 2;
        turned(
          [
            [at - j, low],
            [at + j, low],
            [at + j, at + j - h],
            [at - j, at - j - h],
          ],
          x,
          y,
        );
        turned(
          [
            [low, at - j],
            [low, at + j],
            [at + j - h, at + j],
            [at - j - h, at - j],
          ],
          x,
          y,
        );
      }
    }
  }
}

function planDimensions(view: View, hip: HipCells, outline: OutlineCells, subject: Subject): void {
  const { frame, layout } = hip;
  const s = sizesOf(hip, subject);
  const { shortLast } = subject.asked;
  const commons = s.commons.length - 1;
  const jacks = subject.count(layout.jackSpaces) - (shortLast ? 1 : 0);
  const part = [jacks * mm(layout.jackSpace), each(jacks, "bays", subject.small(layout.jackSpace))] as const;
  const along = [commons * mm(layout.commonSpace), each(commons, "bays", subject.small(layout.commonSpace))] as const;
  view.chain("above", 0, s.run - part[0], [part, along, part]);
  alongDimensions(view, hip, subject);
  const over = [s.over, subject.small(frame.eaveOverhang)] as const;
  view.chain("left", 0, -s.over, [over, [s.span, subject.long(frame.span)], over]);
  view.chain("left", 1, -s.over, [[mm(outline.width), subject.long(outline.width)]]);
}

/** Bays, frame and roof along the ridge. */
function alongDimensions(view: View, hip: HipCells, subject: Subject): void {
  const { frame, roof } = hip;
  const s = sizesOf(hip, subject);
  view.chain("below", 0, s.post.w / 2, bayChain(subject));
  const over = [s.over, subject.small(frame.eaveOverhang)] as const;
  view.chain("below", 1, -s.over, [over, [s.length, subject.long(frame.length)], over]);
  if (s.over > 0) view.chain("below", 2, -s.over, [[mm(roof.length), subject.long(roof.length)]]);
}

/** The longer side, before it is covered. */
export function hipElevation(hip: HipCells, outline: OutlineCells, subject: Subject): Keyed {
  const s = sizesOf(hip, subject);
  const view = new View();
  const under = s.height - s.beam.w;
  postRow(view, { ...s, under });
  view.box([0, under], [s.length, s.height]);
  jointMarks(view, "beams", subject, [0, under, s.height]);
  const { slope, above } = s.side;
  const tail = s.height + above - s.over * slope.pitch;
  const peak = s.height + above + s.side.upTo * slope.pitch;
  const upTo = (x: number) => s.height + above + x * slope.pitch;
  for (const x of s.commons) view.box([x - s.rafter.t / 2, tail], [x + s.rafter.t / 2, peak], "fine");
  for (const at of s.jacks) {
    for (const x of [at, s.length - at]) view.box([x - s.jack.t / 2, tail], [x + s.jack.t / 2, upTo(at)], "fine");
  }
  const flat = 1 / slope.stretch;
  for (const from of rowsUp(s.rows, mm(hip.rafter.edgeLength), s.purlin.w)) {
    const y = tail + from * slope.pitch * flat;
    const inset = -s.over + from * flat;
    view.box([inset, y], [s.length - inset, y + s.purlin.w * slope.pitch * flat + s.purlin.t * flat]);
  }
  view.box([-s.over, tail - s.fascia.w], [s.length + s.over, tail]);
  jointMarks(view, "side-fascia", subject, [-s.over - s.fascia.t, tail - s.fascia.w, tail]);
  const roof: Point[] = [
    [-s.over, tail],
    [s.side.upTo, peak],
    [s.length - s.side.upTo, peak],
    [s.length + s.over, tail],
  ];
  view.polygon(roof, "edge", false);
  ground(view, -s.over, s.length + s.over);
  alongDimensions(view, hip, subject);
  view.chain("left", 0, 0, [[s.height, subject.long(hip.frame.eaveHeight)]]);
  view.chain("left", 1, 0, [[mm(outline.height), subject.long(outline.height)]]);
  const key = new Key(subject, view);
  key.part("posts", [s.post.w, s.height * 0.25], [7, 3]);
  key.part("beams", [s.length - s.post.w * 4, under], [-6, -9]);
  key.part("braces", [(s.posts[1] ?? 0) - s.leg * 0.6, under - s.leg * 0.5], [-5, -7]);
  key.part("hips", [s.length - s.run / 2, upTo(s.run / 2)], [7, 6]);
  key.part("side-purlins", [s.length / 2, tail + (peak - tail) * 0.45], [5, 14]);
  key.part("side-fascia", [s.length + s.over, tail - s.fascia.w / 2], [8, -4]);
  return { view, key: key.lines };
}

/** Across the ridge, at a pair of posts. */
export function hipSection(hip: HipCells, outline: OutlineCells, subject: Subject): Keyed {
  const s = sizesOf(hip, subject);
  const view = new View();
  const [under, tieUnder] = [s.height - s.beam.w, s.height - s.tie.w];
  const up = (x: number) => s.height + s.side.above + x * s.side.slope.pitch;
  endPosts(view, { ...s, farRow: true }, under);
  for (const x of [0, s.span - s.post.t]) view.box([x, 0], [x + s.post.t, under]);
  if (s.tie.t > 0) {
    view.box([0, tieUnder], [s.span, s.height]);
    if (s.brace.t > 0) {
      brace(view, [s.post.t, tieUnder], s.leg, s.brace.w, 1);
      brace(view, [s.span - s.post.t, tieUnder], s.leg, s.brace.w, -1);
    }
  }
  const footprint = { ...s, farRow: true };
  floorInSection(view, footprint, subject);
  for (const mirrored of [false, true]) {
    const x = mirrored ? s.span : 0;
    const sign = mirrored ? -1 : 1;
    view.cut([Math.min(x, x + sign * s.beam.t), under], [Math.max(x, x + sign * s.beam.t), s.height]);
    view.polygon(moved(rafterOutline(s.side), [x, s.height], mirrored));
    for (const purlin of purlinsAcross(s.side, s.purlin, s.rows, mm(hip.rafter.edgeLength))) {
      view.polygon(moved(purlin, [x, s.height], mirrored));
    }
    const out = [x - sign * s.over, x - sign * (s.over + s.fascia.t)];
    view.box([Math.min(...out), up(-s.over) - s.fascia.w], [Math.max(...out), up(-s.over)]);
  }
  const peak = up(s.side.upTo);
  view.cut([s.span / 2 - s.ridge.t / 2, peak - s.ridge.w], [s.span / 2 + s.ridge.t / 2, peak]);
  ground(view, -s.over, s.span + s.over);
  sectionDimensions(view, hip, outline, subject);
  const key = new Key(subject, view);
  key.part("posts", [s.post.t / 2, s.height * 0.4], [8, 4]);
  key.part("beams", [s.beam.t / 2, s.height - s.beam.w * 0.7], [-9, -5]);
  key.part("ties", [s.span * 0.5, s.height - s.tie.w / 2], [6, -8]);
  key.part("braces", [s.post.t + s.leg * 0.5, tieUnder - s.leg * 0.4], [6, -6]);
  key.part("rafters", [s.span * 0.3, up(s.span * 0.3) - s.rafter.w * 0.6], [8, -9]);
  key.part("ridge", [s.span / 2, peak - s.ridge.w * 0.8], [4, -9]);
  key.part("side-purlins", [s.span * 0.28, up(s.span * 0.28) + s.purlin.t / 2], [-7, 8]);
  key.part("side-fascia", [-s.over, up(-s.over) - s.fascia.w / 2], [-7, 6]);
  floorKey(key, footprint, subject);
  return { view, key: key.lines };
}

function sectionDimensions(view: View, hip: HipCells, outline: OutlineCells, subject: Subject): void {
  const { frame, layout } = hip;
  const s = sizesOf(hip, subject);
  const peak = mm(outline.height);
  const eave = peak - (s.run + s.over) * s.side.slope.pitch;
  const corner: Point = [s.span + s.over * 0.4, besideEave(peak, eave, s.span, s.side.slope)];
  const said = { rise: subject.small(frame.unitRise), run: subject.small(frame.unitRun) };
  slopeTriangle(view, corner, s.span / 9, s.side.slope, said);
  view.chain("below", 0, 0, [[s.run, subject.long(layout.run)]]);
  const over = [s.over, subject.small(frame.eaveOverhang)] as const;
  view.chain("below", 1, -s.over, [over, [s.span, subject.long(frame.span)], over]);
  if (s.over > 0) view.chain("below", 2, -s.over, [[mm(outline.width), subject.long(outline.width)]]);
  view.chain("left", 0, 0, [[s.height, subject.long(frame.eaveHeight)]]);
  view.chain("left", 1, 0, [[mm(outline.height), subject.long(outline.height)]]);
}
