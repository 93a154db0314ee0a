/** One rafter as it is laid out on its stock, with its ends and its birdsmouths at a larger scale. */
import type { Cell } from "../../../estimate/sheet/expression.js";
import { PAGE, type Page, type PlacedView } from "./paper.js";
import { mm, type Subject } from "./subject.js";
import { type Point, View } from "./view.js";

/** How it is cut: a common rafter's cells, or a hip's. */
export interface Cuts {
  readonly edgeLength: Cell;
  readonly bodyLength: Cell;
  readonly tailLength: Cell;
  readonly plumbCut: Cell;
  readonly stockLength: Cell;
  readonly slopeAngle: Cell;
  readonly seat: Cell;
  readonly notchDepth: Cell;
  readonly notchPlumb: Cell;
  readonly heightAbovePlate?: Cell;
}

/** A rafter to be drawn. */
export interface RafterDrawing {
  readonly name: string;
  readonly title: string;
  readonly subject: Subject;
  readonly cuts: Cuts;
  readonly depth: Cell;
  readonly squareTail: boolean;
  /** Rise and run as they are set on the square. */
  readonly unitRise: Cell;
  readonly unitRun: Cell;
  /** Along the slope from the first birdsmouth to a second. */
  readonly seatToSeat: Cell | undefined;
  /** What the upper end meets. */
  readonly upperEnd: string;
  readonly notes: readonly string[];
}

/** Places along the rafter, from the left end of its stock, and across it, from its lower edge. */
function layOut({ cuts, depth, squareTail, seatToSeat }: RafterDrawing) {
  const [d, plumb, stock] = [mm(depth), mm(cuts.plumbCut), mm(cuts.stockLength)];
  // Rise for one of run; from the plumb cut, for the unit run is not the rafter's own business.
  const pitch = plumb / d;
  const [cos, sin] = [1 / Math.hypot(1, pitch), pitch / Math.hypot(1, pitch)];
  const tail = squareTail ? 0 : plumb;
  const heel = tail + mm(cuts.tailLength) - plumb;
  const seats = [heel, ...(seatToSeat ? [heel + mm(seatToSeat)] : [])];
  const [level, deep] = [mm(cuts.seat), mm(cuts.notchPlumb)];
  const notch = (at: number): Point[] => [
    [at, 0],
    [at + deep * sin, deep * cos],
    [at + level / cos, 0],
  ];
  const outline: Point[] = [[0, 0], ...seats.flatMap(notch), [stock - plumb, 0], [stock, d], [tail, d]];
  return { d, plumb, stock, tail, heel, seats, notch, outline, level, cos, sin };
}

export function rafterPage(drawing: RafterDrawing): Page {
  const { subject, cuts, title, name, squareTail } = drawing;
  const details = [headDetail(drawing), ...seatDetails(drawing), tailDetail(drawing)].toReversed();
  const width = PAGE.width / details.length;
  const whole: PlacedView = {
    view: wholeView(drawing),
    area: { x: 0, y: 14, width: PAGE.width, height: 62 },
    caption: "On its stock",
  };
  const [rise, run] = [subject.small(drawing.unitRise), subject.small(drawing.unitRun)];
  return {
    name,
    title,
    system: subject.system,
    description: `${title}: edge ${subject.long(cuts.edgeLength)}, from stock ${subject.long(cuts.stockLength)}, plumb cut ${subject.angle(cuts.slopeAngle)} off square, birdsmouth ${subject.small(cuts.seat)} level and ${subject.small(cuts.notchPlumb)} plumb, ${squareTail ? "square" : "plumb"} tail.`,
    views: [
      whole,
      ...details.map(({ view, caption, window }, i) => ({
        view,
        caption,
        window,
        area: { x: i * width, y: 78, width, height: 84 },
      })),
    ],
    key: [],
    notes: [
      `Framing square: ${run} on the blade and ${rise} on the tongue, both on the upper edge. Along the tongue is plumb, along the blade level.`,
      ...drawing.notes,
    ],
  };
}

function wholeView(drawing: RafterDrawing): View {
  const { subject, cuts, seatToSeat } = drawing;
  const at = layOut(drawing);
  const view = new View();
  view.box([0, 0], [at.stock, at.d], "hidden");
  view.polygon(at.outline);
  for (const seat of at.seats)
    view.line(
      [
        [seat, 0],
        [seat + at.plumb, at.d],
      ],
      "center",
    );
  view.chain("above", 0, at.tail, [
    [mm(cuts.tailLength), subject.long(cuts.tailLength)],
    [mm(cuts.bodyLength), subject.long(cuts.bodyLength)],
  ]);
  view.chain("above", 1, at.tail, [[mm(cuts.edgeLength), subject.long(cuts.edgeLength)]]);
  if (seatToSeat) view.chain("below", 0, at.heel, [[mm(seatToSeat), subject.long(seatToSeat)]]);
  view.chain("below", seatToSeat ? 1 : 0, 0, [[at.stock, subject.long(cuts.stockLength)]]);
  view.chain("left", 0, 0, [[at.d, subject.small(drawing.depth)]]);
  return view;
}

interface Detail {
  readonly view: View;
  readonly caption: string;
  readonly window: readonly [Point, Point];
}

/** A part of the rafter somewhat longer than it is deep. @param plumb - Which a plumb cut there takes. */
function around(x: number, d: number, plumb = 0): readonly [Point, Point] {
  const half = d * 0.85 + Math.max(0, plumb - d / 2) / 2;
  return [
    [x - half, -d * 0.1],
    [x + half, d * 1.1],
  ];
}

function outlined(drawing: RafterDrawing): View {
  const view = new View();
  view.polygon(layOut(drawing).outline);
  return view;
}

function headDetail(drawing: RafterDrawing): Detail {
  const { subject, cuts, upperEnd } = drawing;
  const at = layOut(drawing);
  const view = outlined(drawing);
  const corner = at.stock - at.plumb;
  const middle: Point = [at.stock - at.plumb / 2, at.d / 2];
  view.line(
    [
      [at.stock, 0],
      [at.stock, at.d],
    ],
    "hidden",
  );
  view.line(
    [
      [corner, 0],
      [at.stock, 0],
    ],
    "hidden",
  );
  view.chain("below", 0, corner, [[at.plumb, subject.small(cuts.plumbCut)]]);
  view.note(middle, `plumb, ${subject.angle(cuts.slopeAngle)}`, [-3, 1], "end");
  view.note(middle, `against ${upperEnd}`, [-3, -3], "end");
  return { view, caption: "Upper end", window: around(at.stock - at.plumb / 2, at.d, at.plumb) };
}

function tailDetail(drawing: RafterDrawing): Detail {
  const { subject, cuts, squareTail } = drawing;
  const at = layOut(drawing);
  const view = outlined(drawing);
  if (squareTail) {
    view.note([at.d * 0.55, at.d * 0.5], "square");
  } else {
    view.line(
      [
        [0, 0],
        [0, at.d],
      ],
      "hidden",
    );
    view.line(
      [
        [0, at.d],
        [at.tail, at.d],
      ],
      "hidden",
    );
    view.chain("above", 0, 0, [[at.plumb, subject.small(cuts.plumbCut)]]);
    view.note([at.plumb / 2, at.d / 2], `plumb, ${subject.angle(cuts.slopeAngle)}`, [3, 0], "start");
  }
  return { view, caption: "Tail", window: around(at.tail, at.d, at.plumb) };
}

/** Both birdsmouths are cut alike; the first one is drawn. */
function seatDetails(drawing: RafterDrawing): Detail[] {
  const { subject, cuts, seatToSeat } = drawing;
  const at = layOut(drawing);
  const view = outlined(drawing);
  const [foot, inner, toe] = at.notch(at.heel) as [Point, Point, Point];
  // Below a flat hip the notch is longer than the rafter is deep.
  const along = toe[0] - foot[0];
  view.line([foot, toe], "hidden");
  view.line([inner, [at.heel + at.plumb, at.d]], "center");
  view.note([(foot[0] + toe[0]) / 2, 0], `seat ${subject.small(cuts.seat)} level`, [0, -4.5]);
  view.chain("right", 0, 0, [[inner[1], `${subject.small(cuts.notchDepth)}`]]);
  const above = cuts.heightAbovePlate;
  if (above) view.note([at.heel + at.plumb * 0.7, at.d * 0.7], `${subject.small(above)} plumb`, [3, -1], "start");
  view.note([foot[0], 0], `${subject.small(cuts.notchPlumb)} plumb`, [-1.5, 2], "end");
  const caption = seatToSeat ? "Birdsmouth, both alike" : "Birdsmouth";
  return [{ view, caption, window: around(at.heel + along / 2, at.d, along - at.d / 2) }];
}
