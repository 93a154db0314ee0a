/** Openings of a boarded wall, drawn side by side with their frames: jambs as high as the opening, header and sill across. */
import { mm } from "./subject.js";
import type { Point, View } from "./view.js";
import type { Wall } from "./wall-measures.js";

interface Opening {
  readonly wide: number;
  readonly high: number;
  /** Above the boards' lower end; nothing of a door. */
  readonly sill: number | undefined;
  readonly says: string;
}

function openingsOf({ side, subject }: Wall): Opening[] {
  const found: Opening[] = [];
  for (let i = 1; ; i++) {
    const at = (name: string) => subject.known(`walls.${side.name}.opening${i}.${name}`);
    const [wide, high, count, sill] = [at("width"), at("height"), at("count"), at("sill")];
    if (!wide || !high || !count) return found;
    const says = `${subject.long(wide)} × ${subject.long(high)}`;
    const one = { wide: mm(wide), high: mm(high), sill: sill && mm(sill), says };
    for (let n = 0; n < mm(count); n++) found.push(one);
  }
}

/** Where a jamb and a header are drawn, to be pointed at. */
export interface DrawnFrame {
  readonly jamb: Point;
  readonly header: Point;
}

/** Spread along the wall, doors from the boards' lower end. @returns the first of them, where there are any. */
export function drawOpenings(view: View, wall: Wall): DrawnFrame | undefined {
  const found = openingsOf(wall);
  const thick = wall.subject.section("opening-jambs")?.t ?? 0;
  const head = wall.subject.section("opening-headers")?.t ?? 0;
  const gap = (wall.width - found.reduce((sum, { wide }) => sum + wide, 0)) / (found.length + 1);
  let x = gap;
  let drawn: DrawnFrame | undefined;
  for (const { wide, high, sill, says } of found) {
    const [from, to] = [wall.bottom + (sill ?? 0), wall.bottom + (sill ?? 0) + high];
    view.box([x, from], [x + wide, to], "cut");
    view.line(
      [
        [x, from],
        [x + wide, to],
      ],
      "fine",
    );
    view.line(
      [
        [x, to],
        [x + wide, from],
      ],
      "fine",
    );
    for (const left of [x - thick, x + wide]) view.box([left, from], [left + thick, to], "edge");
    view.box([x - thick, to], [x + wide + thick, to + head], "edge");
    if (sill !== undefined) view.box([x - thick, from - head], [x + wide + thick, from], "edge");
    view.note([x + wide / 2, from + high * 0.7], says);
    drawn ??= { jamb: [x - thick / 2, from + high * 0.25], header: [x + wide * 0.3, to + head / 2] };
    x += wide + gap;
  }
  return drawn;
}
