/** Where the holes of the footings are dug, in plan, and one of them cut through. */

import { type Page, sideBySide } from "./paper.js";
import { bayChain, type PostPlan, postCentres } from "./parts.js";
import { mm, type Subject } from "./subject.js";
import { type Point, View } from "./view.js";

/** Of the page's width, the part that the plan takes. */
const PLAN_SHARE = 0.62;

/** Undefined where the structure has no footings. */
export function footingsPage(posts: PostPlan, subject: Subject): Page | undefined {
  const diameter = subject.known("footings.diameter");
  if (!diameter) return undefined;
  const poured = subject.known("footings.gravel-bed") !== undefined;
  const tube = subject.known("footings.tubeLength");
  const key = [
    "Holes, one below each post",
    ...(poured ? ["Concrete", "Gravel, tamped"] : ["Gravel, tamped, up to a precast block"]),
    "The ground",
    ...(tube ? [`Form tube, ${subject.small(tube)}`] : []),
  ];
  const note =
    "Set out the posts' outer faces, then the centres of the holes. How deep and how wide is for the building office to say.";
  return {
    name: "footings",
    title: "Footings",
    description: `Plan of the holes and one of them cut through. ${subject.small(diameter)} across. ${note}`,
    views: sideBySide(1, PLAN_SHARE, [
      { view: holesPlan(posts, subject), caption: "Plan" },
      { view: oneHole(posts, subject), caption: "One of them" },
    ]),
    key,
    notes: [note],
    system: subject.system,
  };
}

function holesPlan(posts: PostPlan, subject: Subject): View {
  const view = new View();
  const { span, length, post } = posts;
  const radius = mm(subject.cell("footings.diameter")) / 2;
  for (const [x, y] of postCentres(posts)) {
    view.polygon(circle([x, y], radius));
    view.box([x - post.w / 2, y - post.w / 2], [x + post.w / 2, y + post.w / 2], "cut", false);
  }
  view.box([0, 0], [length, span], "center", false);
  view.chain("below", 0, post.w / 2, bayChain(subject));
  view.chain("below", 1, 0, [[length, subject.long(subject.cell("frame.length"))]]);
  view.chain("left", 0, 0, [[span, subject.long(subject.cell("frame.span"))]]);
  const [first] = postCentres(posts);
  if (first) view.point(1, [first[0] + radius * 0.7, first[1] + radius * 0.7], [8, 8]);
  return view;
}

/** The post's base is at no height; the ground lies below it by what the concrete stands out. */
function oneHole({ post }: PostPlan, subject: Subject): View {
  const view = new View();
  const diameter = subject.cell("footings.diameter");
  const depth = subject.cell("footings.depth");
  const [above, bed] = [subject.known("footings.aboveGround"), subject.known("footings.gravel-bed")];
  const [half, deep] = [mm(diameter) / 2, mm(depth)];
  const out = above ? mm(above) : 0;
  const gravel = bed ? mm(bed) : 0;
  const floor = -out - deep;
  view.line(
    [
      [-half * 2.4, -out],
      [half * 2.4, -out],
    ],
    "cut",
  );
  view.box([-half, floor], [half, 0], "cut");
  if (gravel > 0) {
    view.box([-half, floor - gravel], [half, floor], "edge");
    for (let i = 1; i < 6; i++) view.polygon(circle([-half + (i * half) / 3, floor - gravel / 2], half / 9), "fine");
  }
  view.box([-post.w / 2, 0], [post.w / 2, half * 1.5], "edge");
  view.chain("right", 0, floor - gravel, [
    [gravel, bed ? subject.small(bed) : ""],
    [deep, subject.small(depth)],
    [out, above ? subject.small(above) : ""],
  ]);
  view.chain("below", 0, -half, [[mm(diameter), subject.small(diameter)]]);
  view.point(2, [0, floor + deep * 0.4], [-12, 3]);
  if (gravel > 0) view.point(3, [-half * 0.5, floor - gravel / 2], [-10, -3]);
  view.point(gravel > 0 ? 4 : 3, [-half * 2, -out], [-2, 8]);
  tubeAround(view, half, subject);
  return view;
}

/** Both walls of the form tube, outside the concrete. */
function tubeAround(view: View, half: number, subject: Subject): void {
  const tube = subject.known("footings.tubeLength");
  if (!tube) return;
  const wall = half / 12;
  for (const [left, right] of [[-half - wall, -half] as const, [half, half + wall] as const]) {
    view.box([left, -mm(tube)], [right, 0], "edge");
  }
  view.point(5, [half + wall, -mm(tube) * 0.7], [10, -3]);
}

const CORNERS = 32;

function circle([x, y]: Point, radius: number): Point[] {
  return Array.from({ length: CORNERS }, (_, i): Point => {
    const turn = (2 * Math.PI * i) / CORNERS;
    return [x + radius * Math.cos(turn), y + radius * Math.sin(turn)];
  });
}
