/** A boarded wall measured once, in millimetres, for its drawing: `x` along it, `y` up from the posts' bases. */
import type { WallSide } from "../../../estimate/pieces/frame.js";
import type { Cell } from "../../../estimate/sheet/expression.js";
import { linesAlong } from "./parts.js";
import { mm, type Subject } from "./subject.js";
import type { Point } from "./view.js";
import { type Opening, openingsOf } from "./wall-holes.js";

/** Whether a side, or the gable above it, has boards. */
export const boarded = (subject: Subject, name: string): boolean =>
  subject.known(`walls.${name}.boardLength`) !== undefined;

/** One wall measured once, in millimetres: `x` along it, `y` up from the posts' bases. */
export class Wall {
  readonly width: number;
  /** Width of a corner board. */
  readonly corner: number;
  /** The same of the gable above, where that is boarded. */
  readonly gable: Wall | undefined;
  readonly bottom: number;
  readonly cover: number;
  readonly board: number;
  /** Between boards; none where they lap. */
  readonly gap: number;
  readonly upright: boolean;
  readonly rows: readonly number[];
  readonly studs: readonly number[];
  /** Openings, where they stand. */
  readonly holes: readonly Opening[];

  constructor(
    readonly side: WallSide,
    readonly subject: Subject,
    readonly above = false,
  ) {
    const name = above ? `${side.name}-gable` : side.name;
    const known = (cell: string) => subject.known(`walls.${name}.${cell}`);
    this.width = mm(side.width);
    const clearance = mm(subject.cell("frame.wallClearance"));
    this.bottom = above ? mm(side.heights[0]) - mm(subject.cell("frame.gableLap")) : clearance;
    this.corner = subject.section("corner-boards")?.w ?? 0;
    this.gable = !above && boarded(subject, `${side.name}-gable`) ? new Wall(side, subject, true) : undefined;
    this.cover = mm(subject.cell("walls.cover"));
    const lap = mm(subject.cell("frame.wallLap"));
    const battened = subject.section("wall-battens") !== undefined;
    // What the rows are counted by: as laid out, or as sold.
    this.board = this.cover + (battened ? -lap : lap);
    this.gap = battened ? lap : 0;
    const [rails, studs, lengths] = [known("rails"), known("studs"), known("lengths")];
    this.upright = ![side.name, `${side.name}-gable`].some((one) => subject.known(`walls.${one}.courses`));
    this.rows = railsOf(this, rails, mm(subject.cell("frame.wallBacking")));
    const pieces = lengths && !above ? mm(lengths) : 1;
    const between = studs ? (mm(studs) + 1) * pieces : 1;
    this.studs = Array.from({ length: between - 1 }, (_, i) => ((i + 1) * this.width) / between);
    this.holes = above ? [] : openingsOf(this);
  }

  /** Upper ends of the boards at either corner. */
  get ends(): [from: number, to: number] {
    const [from, to] = this.side.heights.map(mm) as [number, number];
    const above = this.above && this.side.gable ? mm(this.side.gable.abovePlate) : 0;
    return [from + above, to + above];
  }

  /** Upper end of the boards where they are highest. */
  get peak(): number {
    const rise = this.above && this.side.gable ? mm(this.side.gable.rise) : 0;
    return Math.max(...this.ends) + rise;
  }

  /** From the boards' lower end to their upper one, where the wall is lowest. */
  get low(): number {
    return Math.min(...this.ends) - this.bottom;
  }

  get outline(): Point[] {
    const [from, to] = this.ends;
    const peak: Point[] = this.above ? [[this.width / 2, this.peak]] : [];
    return [[0, this.bottom], [this.width, this.bottom], [this.width, to], ...peak, [0, from]];
  }

  /** Upper end of the boards at a place. */
  top(x: number): number {
    const [from, to] = this.ends;
    if (this.above) return this.peak - (Math.abs(x - this.width / 2) / (this.width / 2)) * (this.peak - from);
    return from + ((to - from) * x) / this.width;
  }

  /** Where a level line at a height begins and ends. */
  across(y: number): [from: number, to: number] {
    const [from, to] = this.ends;
    if (y <= Math.min(from, to)) return [0, this.width];
    if (this.above) {
      const half = (this.width / 2) * Math.max(0, (this.peak - y) / (this.peak - from));
      return [this.width / 2 - half, this.width / 2 + half];
    }
    const reach = from === to ? 1 : Math.min(1, Math.max(0, (y - from) / (to - from)));
    return from > to ? [0, reach * this.width] : [reach * this.width, this.width];
  }
}

/** Rails from the boards' lower ends up: of a gable those between plate and peak. */
function railsOf(wall: Wall, rails: Cell | undefined, backing: number): number[] {
  if (!rails) return [];
  if (wall.above) return Array.from({ length: mm(rails) }, (_, i) => wall.bottom + (i + 1) * backing);
  const [from, to] = wall.ends;
  const mean = (from + to) / 2 - wall.bottom;
  return linesAlong(mm(rails), mean / Math.max(1, mm(rails) - 1), mean).map((y) => wall.bottom + y);
}
