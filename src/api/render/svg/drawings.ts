/** The drawings of a structure, in the order in which they are read. */
import type { Basis } from "../../../estimate/basis.js";
import type { RafterCells } from "../../../estimate/pieces/common-rafter.js";
import type { GableCells } from "../../../estimate/pieces/gable.js";
import type { HipCells } from "../../../estimate/pieces/hip.js";
import type { LeanToCells } from "../../../estimate/pieces/lean-to.js";
import type { OutlineCells } from "../../../estimate/pieces/outline.js";
import type { PergolaCells } from "../../../estimate/pieces/pergola.js";
import { type Drawn, drawnBoth } from "./card.js";
import { floorPage } from "./floor-page.js";
import { footingsPage } from "./footings-page.js";
import { gableElevation, gablePlan, gablePosts, gableSection } from "./gable-views.js";
import { hipElevation, hipPlan, hipPosts, hipSection } from "./hip-views.js";
import { leanToElevation, leanToPlan, leanToPosts, leanToSection } from "./lean-to-views.js";
import { type Page, wholeArea } from "./paper.js";
import type { PostPlan } from "./parts.js";
import { pergolaElevation, pergolaPlan, pergolaPosts, pergolaRafter, pergolaSection } from "./pergola-views.js";
import { piecesPages } from "./pieces-page.js";
import { type RafterDrawing, rafterPage } from "./rafter-page.js";
import { type Keyed, Subject } from "./subject.js";
import { wallPages } from "./wall-pages.js";

/** Each with a card of it for a narrow screen. */
export function drawingsOf(basis: Basis): Drawn[] {
  const { frame, outline } = basis.cutList;
  const subject = new Subject(basis);
  const framed = frame && outline ? framedPages(frame, outline, subject) : [];
  return [...framed, ...piecesPages(subject.listed, subject)].flatMap(drawnBoth);
}

type Frame = NonNullable<Basis["cutList"]["frame"]>;

function framedPages(frame: Frame, outline: OutlineCells, subject: Subject): Page[] {
  const posts = postsOf(frame, subject);
  return [
    ...pagesOf(frame, outline, subject),
    ...[footingsPage(posts, subject), floorPage(posts, subject)].flatMap((page) => page ?? []),
    ...wallPages(frame.walls, subject),
  ];
}

function postsOf(frame: Frame, subject: Subject): PostPlan {
  switch (frame.kind) {
    case "gable":
      return gablePosts(frame, subject);
    case "lean-to":
      return leanToPosts(frame, subject);
    case "hip":
      return hipPosts(frame, subject);
    case "pergola":
      return pergolaPosts(frame, subject);
  }
}

function pagesOf(frame: Frame, outline: OutlineCells, subject: Subject): readonly Page[] {
  switch (frame.kind) {
    case "gable":
      return gablePages(frame, outline, subject);
    case "lean-to":
      return leanToPages(frame, outline, subject);
    case "hip":
      return hipPages(frame, outline, subject);
    case "pergola":
      return pergolaPages(frame, outline, subject);
  }
}

/** What every kind is seen in, each with its note. */
interface Seen {
  readonly plan: readonly [Keyed, note: string];
  readonly elevation: readonly [Keyed, note: string];
  readonly section: readonly [Keyed, note: string];
}

/** @param of - What the titles go on with, such as "of a gable, 16' × 24'". */
function framePages(subject: Subject, of: string, { plan, elevation, section }: Seen): Page[] {
  return [
    keyed(subject, "plan", `Plan ${of}`, ...plan),
    keyed(subject, "elevation", `Elevation ${of}`, ...elevation),
    keyed(subject, "section", `Section ${of}`, ...section),
  ];
}

const AT_POSTS = "At a pair of posts. Timbers cut across are drawn heavy.";

function keyed(subject: Subject, name: string, title: string, { view, key }: Keyed, note: string): Page {
  const description = `${title}. ${note} ${key.join("; ")}.`;
  const views = [{ view, area: wholeArea(1) }];
  return { name, title, description, views, key, notes: [note], system: subject.system };
}

/** What the notes of a common rafter say beside its drawing. */
function rafterNotes(subject: Subject, cuts: RafterCells, run: string): string[] {
  return [
    `Plumb cuts ${subject.angle(cuts.slopeAngle)} off square. ${subject.small(cuts.unitLength)} of rafter for each ${run} of run; ${cuts.lineLength.label}: ${subject.long(cuts.lineLength)}. One degree off opens ${subject.small(cuts.gapAtOneDegree)}.`,
  ];
}

function commonRafter(
  subject: Subject,
  { rafter: cuts, rafterDepth: depth, frame }: GableCells | LeanToCells | HipCells,
  drawing: Pick<RafterDrawing, "name" | "title" | "upperEnd"> & Partial<Pick<RafterDrawing, "cuts" | "seatToSeat">>,
): Page {
  const { unitRise, unitRun } = frame;
  return rafterPage({
    ...{ subject, cuts, depth, unitRise, unitRun },
    squareTail: subject.asked.squareTail,
    seatToSeat: undefined,
    notes: rafterNotes(subject, cuts, subject.small(unitRun)),
    ...drawing,
  });
}

function gablePages(gable: GableCells, outline: OutlineCells, subject: Subject): Page[] {
  const of = `of a gable, ${subject.long(gable.span)} × ${subject.long(gable.length)}`;
  const { rafter, farRafter } = gable;
  const unlike = rafter !== farRafter;
  const upperEnd = `the ridge ${gable.roof.ridgeKind}`;
  const shown = subject.section("purlins") ? "Rafters below the ridge line, purlins on them above it" : "Rafters";
  const plan = `${shown}; posts, beams and ties lie underneath.`;
  const pages = [
    ...framePages(subject, of, {
      plan: [gablePlan(gable, outline, subject), plan],
      elevation: [gableElevation(gable, outline, subject), "The side along the eave, before it is covered."],
      section: [gableSection(gable, outline, subject), AT_POSTS],
    }),
    commonRafter(subject, gable, {
      name: "rafter",
      title: unlike ? "Common rafter, near side" : "Common rafter",
      upperEnd,
    }),
  ];
  if (!unlike) return pages;
  const far = { ...gable, rafter: farRafter };
  return [...pages, commonRafter(subject, far, { name: "far-rafter", title: "Common rafter, far side", upperEnd })];
}

function leanToPages(leanTo: LeanToCells, outline: OutlineCells, subject: Subject): Page[] {
  const of = `of a lean-to, ${subject.long(leanTo.span)} × ${subject.long(leanTo.length)}`;
  const shown = subject.section("purlins") ? "Rafters on the left, purlins on them on the right" : "Rafters";
  const plan = `${shown}; posts and beams lie underneath.`;
  const { seatToSeat } = leanTo;
  return [
    ...framePages(subject, of, {
      plan: [leanToPlan(leanTo, outline, subject), plan],
      elevation: [leanToElevation(leanTo, outline, subject), "The low side, before it is covered."],
      section: [leanToSection(leanTo, outline, subject), "At the end. Timbers cut across are drawn heavy."],
    }),
    commonRafter(subject, leanTo, {
      name: "rafter",
      title: "Rafter",
      upperEnd: seatToSeat ? "the high fascia" : "the ledger",
      seatToSeat,
    }),
  ];
}

function hipPages(hip: HipCells, outline: OutlineCells, subject: Subject): Page[] {
  const of = `of a hip roof, ${subject.long(hip.span)} × ${subject.long(hip.length)}`;
  const shown = subject.section("side-purlins") ? "Rafters; purlins run level round all four sides." : "Rafters.";
  const plan = `${shown} Posts, beams and ties lie underneath.`;
  return [
    ...framePages(subject, of, {
      plan: [hipPlan(hip, outline, subject), plan],
      elevation: [hipElevation(hip, outline, subject), "The longer side, before it is covered."],
      section: [hipSection(hip, outline, subject), AT_POSTS],
    }),
    commonRafter(subject, hip, { name: "rafter", title: "Common rafter", upperEnd: "the ridge board" }),
    hipRafter(hip, subject),
  ];
}

function hipRafter({ frame, hip, jacks }: HipCells, subject: Subject): Page {
  const run = subject.small(frame.unitRun);
  return rafterPage({
    name: "hip-rafter",
    title: "Hip rafter",
    subject,
    cuts: hip,
    depth: subject.cell("sections.hips.width"),
    squareTail: false,
    unitRise: frame.unitRise,
    unitRun: subject.cell("hip.unitRun"),
    seatToSeat: undefined,
    upperEnd: "the commons",
    notes: [
      `Both ends have two cheeks that meet on the centre line: across the upper edge ${run} on one arm of the square and ${subject.small(hip.sideCut)} on the other.`,
      `Back the upper edge ${subject.angle(hip.backingAngle)} to either side, or set the hip ${subject.small(hip.drop)} lower, plumb. ${subject.small(hip.unitLength)} of hip for each ${run} of common run.`,
      `Jacks stand ${subject.small(jacks.space)} apart, each ${subject.small(jacks.difference)} shorter than the next; their side cut: ${run} and ${subject.small(jacks.sideCut)}, ${subject.angle(jacks.sideAngle)} from the edge.`,
    ],
  });
}

function pergolaPages(pergola: PergolaCells, outline: OutlineCells, subject: Subject): Page[] {
  const of = `of a pergola, ${subject.long(pergola.span)} × ${subject.long(pergola.length)}`;
  const slats = pergola.frame.slatSpacing ? "Slats are drawn on the right half alone. " : "";
  const plan = `${slats}Posts and beams lie underneath.`;
  const rafter = pergolaRafter(pergola, outline, subject);
  return [
    ...framePages(subject, of, {
      plan: [pergolaPlan(pergola, outline, subject), plan],
      elevation: [pergolaElevation(pergola, outline, subject), "Along the beams."],
      section: [pergolaSection(pergola, outline, subject), AT_POSTS],
    }),
    keyed(subject, "rafter", "Rafter of a pergola", rafter, "Level on both beams, cut square at both ends."),
  ];
}
