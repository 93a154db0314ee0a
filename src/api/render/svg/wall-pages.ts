/** Boarded walls, each seen from outside: boards or courses to scale, rails or studs behind them dashed, openings crossed. */
import type { WallSide } from "../../../estimate/pieces/frame.js";
import { type Page, wholeArea } from "./paper.js";
import { Key, mm, type Subject } from "./subject.js";
import { type Point, View } from "./view.js";
import { besideOpenings, fromRight } from "./wall-holes.js";
import { boarded, Wall } from "./wall-measures.js";
import { drawOpenings } from "./wall-openings.js";

/** One page for each side that is boarded. */
export function wallPages(sides: readonly WallSide[], subject: Subject): Page[] {
  return sides
    .filter(({ name }) => boarded(subject, name) || boarded(subject, `${name}-gable`))
    .map((asLaid) => {
      const [from, to] = asLaid.heights;
      const side: WallSide = fromRight(asLaid.name) ? { ...asLaid, heights: [to, from] } : asLaid;
      const wall = new Wall(side, subject);
      const view = new View();
      const below = boarded(subject, side.name);
      const boards = drawBoards(view, wall, below);
      const openings = drawOpenings(view, wall);
      dimensions(view, wall);
      const key = new Key(subject, view, side.name);
      key.part("wall-boards", boards, [-7, 8]);
      if (below) key.part("corner-boards", [wall.corner / 2, wall.bottom + wall.low * 0.35], [-7, -8]);
      if (openings) {
        key.part("opening-jambs", openings.jamb, [-7, 6]);
        key.part("opening-headers", openings.header, [-6, -7]);
      }
      if (wall.upright && below) {
        key.part("wall-battens", [wall.cover * 2 - wall.gap / 2, wall.bottom + wall.low * 0.75], [7, 9]);
        key.part("wall-rails", clearOf(wall, wall.rows[1] ?? wall.bottom), [7, -6]);
      } else if (below) key.part("wall-studs", [wall.studs[0] ?? 0, wall.bottom + wall.low * 0.6], [7, 6]);
      const title = `Wall, ${side.label}`;
      const note = `Seen from outside.${openings ? ` ${placesOf(wall)}` : ""}`;
      const description = `${title}, ${subject.long(side.width)} wide. ${note} ${key.lines.join("; ")}.`;
      const views = [{ view, area: wholeArea(1) }];
      return {
        name: `wall-${side.name}`,
        title,
        description,
        views,
        key: key.lines,
        notes: [note],
        system: subject.system,
      };
    });
}

/** A place along a rail that no opening cuts. */
function clearOf(wall: Wall, y: number): Point {
  const shares = [0.93, 0.86, 0.79, 0.72, 0.5, 0.3, 0.1].map((share) => share * wall.width);
  const free = shares.find((at) => wall.holes.every(({ x }) => at < x[0] || at > x[1]));
  return [free ?? wall.width * 0.93, y];
}

/** Where openings stand, in words. */
function placesOf({ side, holes }: Wall): string {
  const corner = fromRight(side.name) ? "right" : "left";
  const each = holes.map(({ size, place }) => `${size} at ${place}`);
  return `Openings, from the ${corner} corner: ${each.join("; ")}. Boards are cut round them.`;
}

/** The wall below the plate where it is boarded, and over its upper end the gable. @returns a place on a board. */
function drawBoards(view: View, wall: Wall, below: boolean): Point {
  const lay = (of: Wall): Point => (of.upright ? uprightBoards(view, of) : courses(view, of));
  const at = below ? lay(wall) : undefined;
  if (below) {
    for (const x of [0, wall.width - wall.corner]) view.polygon(upright(wall, x, x + wall.corner), "edge");
    view.polygon(wall.outline, "cut", false);
  }
  const { gable } = wall;
  if (gable) {
    if (!gable.upright) view.polygon(gable.outline, "edge");
    lay(gable);
    view.polygon(gable.outline, "cut", false);
  }
  return at ?? [wall.width * 0.45, (gable ?? wall).bottom + (gable ?? wall).low * 0.6];
}

/** @returns a place on a board. */
function uprightBoards(view: View, wall: Wall): Point {
  const count = Math.ceil((wall.width + wall.gap) / wall.cover - 1e-6);
  // A gable is laid out from its middle.
  const first = wall.above ? (wall.width - count * wall.cover + wall.gap) / 2 : 0;
  for (let i = 0; i < count; i++) {
    const from = Math.max(0, first + i * wall.cover);
    view.polygon(upright(wall, from, Math.min(wall.width, first + i * wall.cover + wall.board)), "edge");
  }
  for (const y of wall.rows) {
    for (const [from, to] of besideOpenings(wall.holes, wall.across(y), y, true)) {
      view.line(
        [
          [from, y],
          [to, y],
        ],
        "hidden",
      );
    }
  }
  const batten = wall.subject.section("wall-battens");
  for (let i = 1; batten && i < count; i++) {
    const middle = first + i * wall.cover - wall.gap / 2;
    view.polygon(upright(wall, middle - batten.w / 2, middle + batten.w / 2), "edge");
  }
  return [wall.cover * 0.5, wall.bottom + wall.low * 0.6];
}

/** An upright board, its upper end along the roof: with a point where it lies below the peak. */
function upright(wall: Wall, from: number, to: number): Point[] {
  const middle = wall.width / 2;
  const point: Point[] = wall.above && from < middle && to > middle ? [[middle, wall.peak]] : [];
  return [[from, wall.bottom], [to, wall.bottom], [to, wall.top(to)], ...point, [from, wall.top(from)]];
}

/** Courses from the lower end up; below a slope the upper ones are cut aslant. @returns a place on a board. */
function courses(view: View, wall: Wall): Point {
  for (let y = wall.bottom + wall.cover; y < wall.peak - 1; y += wall.cover) {
    const [from, to] = wall.across(y);
    view.line(
      [
        [from, y],
        [to, y],
      ],
      "edge",
    );
  }
  for (const x of wall.studs) {
    for (const [from, to] of besideOpenings(wall.holes, [wall.bottom, wall.top(x)], x, false)) {
      view.line(
        [
          [x, from],
          [x, to],
        ],
        "hidden",
      );
    }
  }
  return [wall.width * 0.2, wall.bottom + wall.cover * 1.5];
}

function dimensions(view: View, { side, subject, width, bottom, cover, gable, upright: standing }: Wall): void {
  const [from, to] = side.heights;
  const each = subject.small(subject.cell("walls.cover"));
  if (standing) view.chain("above", 0, 0, [[cover, each]]);
  else view.chain("right", 0, bottom, [[cover, each]]);
  view.chain("below", 0, 0, [[width, subject.long(side.width)]]);
  const clear = subject.small(subject.cell("frame.wallClearance"));
  view.chain("left", 0, 0, [[bottom, clear]]);
  view.chain("left", 1, 0, [[mm(from), subject.long(from)]]);
  if (from !== to) view.chain("right", 1, 0, [[mm(to), subject.long(to)]]);
  if (gable) {
    const height = subject.cell(`walls.${side.name}-gable.height`);
    view.chain("right", 1, gable.bottom, [[mm(height), subject.long(height)]]);
  }
  view.line(
    [
      [0, 0],
      [width, 0],
    ],
    "cut",
  );
}
