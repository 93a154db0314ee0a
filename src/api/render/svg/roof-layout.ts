/** How each slope of a roof is covered, drawn square to the slope: panels or boards side by side, or courses up to the ridge. */

import { coveringName, coveringOf } from "../../../catalog/coverings.js";
import { type MeasureSystem, marked, markedSmall } from "../../../estimate/quantity/text.js";
import { capital } from "../../../estimate/quantity/words.js";
import type { Cell } from "../../../estimate/sheet/expression.js";
import type { CoveringTakeoff } from "../../../estimate/takeoff/covering.js";
import type { FaceLayout } from "../../../estimate/takeoff/covering-work.js";
import { type Drawn, drawnBoth } from "./card.js";
import { type Page, wholeArea } from "./paper.js";
import { mm } from "./subject.js";
import { type Point, View } from "./view.js";

/** One drawing for each slope; slopes that are alike are drawn once. */
export const roofLayouts = (covering: CoveringTakeoff, system: MeasureSystem): Drawn[] =>
  covering.faces.flatMap((layout) => drawnBoth(pageOf(covering, layout, system)));

const long = (cell: Cell, system: MeasureSystem): string => marked(cell, system).replace(/ mm$/, "");

function small(cell: Cell, system: MeasureSystem): string {
  return system === "metric" ? long(cell, system) : markedSmall(cell, system).replace(/ in$/, '"');
}

function pageOf(covering: CoveringTakeoff, layout: FaceLayout, system: MeasureSystem): Page {
  const { face } = layout;
  const name = coveringName(covering.kind, system);
  const alike = face.alike === 1 ? "one slope" : `${face.alike} slopes alike`;
  const title = `${capital(name)}: ${face.name === "slope" ? "the" : face.name} slope`;
  const { view, key } = drawnFace(covering, layout, system);
  const note = `Seen square to the slope, eave below; ${alike}. ${covering.slope.allowed ? "" : "Not allowed at this slope. "}${covering.slope.reason}`;
  return {
    name: `roof-${covering.kind}-${face.name}`,
    title,
    description: `${title}. ${key.join("; ")}. ${note}`,
    views: [{ view, area: wholeArea(1) }],
    key,
    notes: [note],
    system,
  };
}

interface Keyed {
  readonly view: View;
  readonly key: readonly string[];
}

function drawnFace(covering: CoveringTakeoff, layout: FaceLayout, system: MeasureSystem): Keyed {
  const view = new View();
  const slope = new Slope(layout.face);
  const key = layout.across
    ? drawStrips(view, slope, covering, layout, system)
    : drawCourses(view, slope, covering, layout, system);
  view.polygon(slope.outline, "cut", false);
  const { eave, slopeLength, top } = layout.face;
  view.chain("below", layout.across ? 1 : 0, 0, [[slope.eave, long(eave, system)]]);
  view.chain("left", 0, 0, [[slope.length, long(slopeLength, system)]]);
  if (slope.top > 0 && slope.corner > 0) view.chain("above", 0, slope.corner, [[slope.top, long(top, system)]]);
  return { view, key };
}

/** A slope in its own plane, in millimetres: x along the eave, y up the slope. */
class Slope {
  readonly eave: number;
  readonly top: number;
  readonly length: number;
  /** Level along the eave from a corner to below the ridge's end; none on a rectangle. */
  readonly corner: number;

  constructor(face: FaceLayout["face"]) {
    [this.eave, this.top, this.length] = [mm(face.eave), mm(face.top), mm(face.slopeLength)];
    this.corner = face.shape === "hipped" ? (this.eave - this.top) / 2 : 0;
  }

  get outline(): Point[] {
    return [
      [0, 0],
      [this.eave, 0],
      [this.eave - this.corner, this.length],
      [this.corner, this.length],
    ];
  }

  /** How high the slope is above a place of the eave. */
  height(x: number): number {
    if (this.corner === 0) return this.length;
    return Math.max(
      0,
      Math.min(this.length, (this.length * x) / this.corner, (this.length * (this.eave - x)) / this.corner),
    );
  }

  /** The part of the slope above a stretch of the eave. */
  strip(from: number, to: number): Point[] {
    const bends = [this.corner, this.eave - this.corner].filter((x) => x > from && x < to);
    const tops = [from, ...bends, to].map((x): Point => [x, this.height(x)]);
    return [[from, 0], [to, 0], ...tops.reverse()];
  }

  /** Where a level line runs across the slope. */
  across(y: number): readonly [Point, Point] {
    const in_ = this.length === 0 ? 0 : (this.corner * y) / this.length;
    return [
      [in_, y],
      [this.eave - in_, y],
    ];
  }
}

/** As many widths as fit beside one another in figures. */
const MOST_WIDTHS = 14;

function drawStrips(
  view: View,
  slope: Slope,
  { kind, form }: CoveringTakeoff,
  layout: FaceLayout,
  system: MeasureSystem,
): string[] {
  const { across, up, module, pieceLength, strips } = layout;
  const width = mm(module);
  const count = across ? mm(across) : 0;
  const thing = form === "boards" ? "Board" : "Panel";
  const edges = Array.from({ length: count + 1 }, (_, i) => Math.min(slope.eave, i * width));
  for (let i = 0; i < count; i++) view.polygon(slope.strip(edges[i] as number, edges[i + 1] as number), "edge");
  drawEndLaps(view, slope, layout, edges);
  const last = slope.eave - (count - 1) * width;
  const widths = edges
    .slice(1)
    .map((_, i): readonly [number, string] => [
      i === count - 1 ? last : width,
      i === count - 1 ? "" : small(module, system),
    ]);
  view.chain("below", 0, 0, count <= MOST_WIDTHS ? widths : [[width, small(module, system)]]);
  const middle = ((strips ? Math.floor(count / 2) : 0) + 1 / 2) * width;
  view.point(1, [middle, slope.height(middle) / 2], [-9, 9]);
  if (!strips && pieceLength) {
    const pieces = mm(up) > 1 ? `${mm(up)} up the slope, end laps dashed` : "eave to ridge in one piece";
    return [
      `${thing}, covers ${small(module, system)}, ${small(pieceLength, system)} long; ${count} across, ${pieces}`,
    ];
  }
  const reuse = coveringOf(kind).reversible || form === "boards" ? "; offcuts of the hips serve again" : "";
  const words = `${thing}s from the left, each covers ${small(module, system)}, cut to length before the slant${reuse}`;
  const lengths = (strips ?? []).map(({ length }) => small(length, system));
  if (count > MOST_WIDTHS) return [`${words}: ${lengths.join(", ")}`];
  lengths.forEach((length, i) => {
    view.note([((edges[i] as number) + (edges[i + 1] as number)) / 2, 0], length, [0, 3]);
  });
  return [`${words}; lengths stand above the eave`];
}

function drawEndLaps(view: View, slope: Slope, { up, strips }: FaceLayout, edges: readonly number[]): void {
  for (let i = 0; i + 1 < edges.length; i++) {
    const pieces = strips ? mm((strips[i] as NonNullable<FaceLayout["strips"]>[number]).up) : mm(up);
    const reach = strips ? mm((strips[i] as NonNullable<FaceLayout["strips"]>[number]).reach) : slope.length;
    for (let k = 1; k < pieces; k++) {
      const y = (reach * k) / pieces;
      view.line(
        [
          [edges[i] as number, y],
          [edges[i + 1] as number, y],
        ],
        "hidden",
      );
    }
  }
}

function drawCourses(
  view: View,
  slope: Slope,
  covering: CoveringTakeoff,
  layout: FaceLayout,
  system: MeasureSystem,
): string[] {
  const height = mm(layout.module);
  const count = mm(layout.up);
  for (let i = 1; i < count; i++) {
    const y = i * height;
    if (y < slope.length) view.line(slope.across(y), "fine");
  }
  view.chain("right", 0, 0, [[Math.min(height, slope.length), small(layout.module, system)]]);
  view.point(1, [slope.eave / 2, Math.min(height, slope.length) / 2], [12, 14]);
  const thing = covering.form === "rolls" ? "Strips" : "Courses";
  const shown = covering.form === "rolls" ? "covers" : "shows";
  const doubled = coveringOf(covering.kind).doubledCourse ? "; the first is laid twice" : "";
  return [`${thing} from the eave up: ${count}, each ${shown} ${small(layout.module, system)}${doubled}`];
}
