/** Boarded walls, each seen from outside: boards or courses to scale, rails or studs behind them dashed, openings crossed. */
import type { WallSide } from "../../../estimate/pieces/frame.js";
import { type Page, wholeArea } from "./paper.js";
import { linesAlong } from "./parts.js";
import { Key, mm, type Subject } from "./subject.js";
import { type Point, View } from "./view.js";

/** One page for each side that is boarded. */
export function wallPages(sides: readonly WallSide[], subject: Subject): Page[] {
  return sides
    .filter(({ name }) => subject.known(`walls.${name}.boardLength`))
    .map((side) => {
      const wall = new Wall(side, subject);
      const view = new View();
      const boards = wall.upright ? uprightBoards(view, wall) : courses(view, wall);
      const openings = drawOpenings(view, wall);
      view.polygon(wall.outline, "cut", false);
      dimensions(view, wall);
      const key = new Key(subject, view, side.name);
      key.part("wall-boards", boards, [-7, 8]);
      if (wall.upright) {
        key.part("wall-battens", [wall.cover * 2 - wall.gap / 2, wall.bottom + wall.low * 0.75], [7, 9]);
        key.part("wall-rails", [wall.width * 0.93, wall.rows[1] ?? wall.bottom], [7, -6]);
      } else key.part("wall-studs", [wall.studs[0] ?? 0, wall.bottom + wall.low * 0.6], [7, 6]);
      const title = `Wall, ${side.label}`;
      const note = `Seen from outside.${openings ? " Openings are drawn side by side: where each stands is yours to say; boards are cut round it." : ""}`;
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

/** One wall measured once, in millimetres: `x` along it, `y` up from the posts' bases. */
class Wall {
  readonly width: number;
  readonly bottom: number;
  readonly cover: number;
  readonly board: number;
  /** Between boards; none where they lap. */
  readonly gap: number;
  readonly upright: boolean;
  readonly rows: readonly number[];
  readonly studs: readonly number[];

  constructor(
    readonly side: WallSide,
    readonly subject: Subject,
  ) {
    const known = (name: string) => subject.known(`walls.${side.name}.${name}`);
    this.width = mm(side.width);
    this.bottom = mm(subject.cell("frame.wallClearance"));
    this.cover = mm(subject.cell("walls.cover"));
    const lap = mm(subject.cell("frame.wallLap"));
    const battened = subject.section("wall-battens") !== undefined;
    // What the rows are counted by: as laid out, or as sold.
    this.board = this.cover + (battened ? -lap : lap);
    this.gap = battened ? lap : 0;
    const [rails, studs, lengths] = [known("rails"), known("studs"), known("lengths")];
    this.upright = rails !== undefined;
    this.rows = rails
      ? linesAlong(mm(rails), this.low / Math.max(1, mm(rails) - 1), this.low).map((y) => this.bottom + y)
      : [];
    const pieces = lengths ? mm(lengths) : 1;
    const between = studs ? (mm(studs) + 1) * pieces : 1;
    this.studs = Array.from({ length: between - 1 }, (_, i) => ((i + 1) * this.width) / between);
  }

  /** From the boards' lower end to their upper one, where the wall is lowest. */
  get low(): number {
    return Math.min(...this.side.heights.map(mm)) - this.bottom;
  }

  get outline(): Point[] {
    const [from, to] = this.side.heights.map(mm) as [number, number];
    return [
      [0, this.bottom],
      [this.width, this.bottom],
      [this.width, to],
      [0, from],
    ];
  }

  /** Upper end of the boards at a place. */
  top(x: number): number {
    const [from, to] = this.side.heights.map(mm) as [number, number];
    return from + ((to - from) * x) / this.width;
  }
}

/** @returns a place on a board. */
function uprightBoards(view: View, wall: Wall): Point {
  const count = Math.ceil((wall.width + wall.gap) / wall.cover - 1e-6);
  for (let i = 0; i < count; i++) {
    const [from, to] = [i * wall.cover, Math.min(wall.width, i * wall.cover + wall.board)];
    view.polygon(upright(wall, from, to), "edge");
  }
  for (const y of wall.rows) {
    view.line(
      [
        [0, y],
        [wall.width, y],
      ],
      "hidden",
    );
  }
  const batten = wall.subject.section("wall-battens");
  for (let i = 1; batten && i < count; i++) {
    const middle = i * wall.cover - wall.gap / 2;
    view.polygon(upright(wall, middle - batten.w / 2, middle + batten.w / 2), "edge");
  }
  return [wall.cover * 0.5, wall.bottom + wall.low * 0.6];
}

const upright = (wall: Wall, from: number, to: number): Point[] => [
  [from, wall.bottom],
  [to, wall.bottom],
  [to, wall.top(to)],
  [from, wall.top(from)],
];

/** Courses from the lower end up; below a slope the upper ones are cut aslant. @returns a place on a board. */
function courses(view: View, wall: Wall): Point {
  const [from, to] = [wall.top(0), wall.top(wall.width)];
  for (let y = wall.bottom + wall.cover; y < Math.max(from, to) - 1; y += wall.cover) {
    const reach = from === to ? 1 : Math.min(1, Math.max(0, (y - from) / (to - from)));
    const [left, right] = y <= Math.min(from, to) ? [0, 1] : from > to ? [0, reach] : [reach, 1];
    view.line(
      [
        [left * wall.width, y],
        [right * wall.width, y],
      ],
      "edge",
    );
  }
  for (const x of wall.studs) {
    view.line(
      [
        [x, wall.bottom],
        [x, wall.top(x)],
      ],
      "hidden",
    );
  }
  return [wall.width * 0.2, wall.bottom + wall.cover * 1.5];
}

/** Spread along the wall, doors from the boards' lower end. @returns whether there are any. */
function drawOpenings(view: View, { side, subject, width, bottom }: Wall): boolean {
  const found: { readonly wide: number; readonly high: number; readonly says: string }[] = [];
  for (let i = 1; ; i++) {
    const at = (name: string) => subject.known(`walls.${side.name}.opening${i}.${name}`);
    const [wide, high, count] = [at("width"), at("height"), at("count")];
    if (!wide || !high || !count) break;
    const one = { wide: mm(wide), high: mm(high), says: `${subject.long(wide)} × ${subject.long(high)}` };
    for (let n = 0; n < mm(count); n++) found.push(one);
  }
  const free = width - found.reduce((sum, { wide }) => sum + wide, 0);
  let x = free / (found.length + 1);
  for (const { wide, high, says } of found) {
    view.box([x, bottom], [x + wide, bottom + high], "cut");
    for (const [from, to] of [
      [bottom, bottom + high],
      [bottom + high, bottom],
    ] as const) {
      view.line(
        [
          [x, from],
          [x + wide, to],
        ],
        "fine",
      );
    }
    view.note([x + wide / 2, bottom + high * 0.7], says);
    x += wide + free / (found.length + 1);
  }
  return found.length > 0;
}

function dimensions(view: View, { side, subject, width, bottom, cover, upright: standing }: Wall): void {
  const [from, to] = side.heights;
  const each = subject.small(subject.cell("walls.cover"));
  if (standing) view.chain("above", 0, 0, [[cover, each]]);
  else view.chain("right", 0, bottom, [[cover, each]]);
  view.chain("below", 0, 0, [[width, subject.long(side.width)]]);
  const clear = subject.small(subject.cell("frame.wallClearance"));
  view.chain("left", 0, 0, [[bottom, clear]]);
  view.chain("left", 1, 0, [[mm(from), subject.long(from)]]);
  if (from !== to) view.chain("right", 1, 0, [[mm(to), subject.long(to)]]);
  view.line(
    [
      [0, 0],
      [width, 0],
    ],
    "cut",
  );
}
