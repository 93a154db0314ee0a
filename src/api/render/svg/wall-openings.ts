/** Openings of a boarded wall drawn with their frames: jambs as high as the opening, header and sill across. */
import type { Point, View } from "./view.js";
import type { Wall } from "./wall-measures.js";

/** Where a jamb and a header are drawn, to be pointed at. */
export interface DrawnFrame {
  readonly jamb: Point;
  readonly header: Point;
}

/** Doors from the boards' lower end. @returns the first of them, where there are any. */
export function drawOpenings(view: View, wall: Wall): DrawnFrame | undefined {
  const thick = wall.subject.section("opening-jambs")?.t ?? 0;
  const head = wall.subject.section("opening-headers")?.t ?? 0;
  let drawn: DrawnFrame | undefined;
  for (const { x, y, window, size } of wall.holes) {
    const [[left, right], [from, to]] = [x, y];
    view.box([left, from], [right, to], "cut");
    view.line(
      [
        [left, from],
        [right, to],
      ],
      "fine",
    );
    view.line(
      [
        [left, to],
        [right, from],
      ],
      "fine",
    );
    for (const jamb of [left - thick, right]) view.box([jamb, from], [jamb + thick, to], "edge");
    view.box([left - thick, to], [right + thick, to + head], "edge");
    if (window) view.box([left - thick, from - head], [right + thick, from], "edge");
    const wide = right - left;
    view.note([left + wide / 2, from + (to - from) * 0.7], size);
    drawn ??= { jamb: [left - thick / 2, from + (to - from) * 0.25], header: [left + wide * 0.3, to + head / 2] };
  }
  return drawn;
}
