/**
 * The planes of a roof as they are covered, sheet edge to sheet edge, and the edges round them.
 *
 * Past a fascia the covering drips; at rakes it ends with the fascia. On a hip roof it drips on all sides, so that a plane
 * grows by the same level reach at its eave and at either corner, and all planes together are the plan's area times the slope.
 */
import type { Covering } from "../../catalog/coverings.js";
import type { DisplayUnits } from "../quantity/display.js";
import type { Assumed } from "../request/assumed.js";
import { type Cell, count, minus, number, over, plus, root, square, sum, times } from "../sheet/expression.js";
import type { Sheet } from "../sheet/sheet.js";
import type { CoveredPlane, CoveredRoof } from "./covered-roof.js";

/** One plane as it is covered. */
export interface CoveredFace {
  readonly name: string;
  /** Prefix of its cells: that of the covering where all planes are alike. */
  readonly prefix: string;
  readonly alike: number;
  readonly shape: CoveredPlane["shape"];
  /** Along the eave, sheet edge to sheet edge. */
  readonly eave: Cell;
  /** Along the ridge or upper edge; zero where a plane comes to a point. */
  readonly top: Cell;
  /** Along the slope, sheet edge to sheet edge. */
  readonly slopeLength: Cell;
  /** Along the rafters' upper edge, where a deck lies. */
  readonly edgeLength: Cell;
  /** Of all planes that are alike. */
  readonly area: Cell;
  readonly purlinRows: Cell;
}

/** Edges of one length. */
export interface Edge {
  readonly count: number;
  readonly length: Cell;
}

/** All edges of a roof, as they are covered. */
export interface RoofEdges {
  readonly eaves: readonly Edge[];
  readonly rakes: readonly Edge[];
  /** Empty where a roof comes to a point; the upper edge of a single slope. */
  readonly ridge: readonly Edge[];
  readonly hips: readonly Edge[];
}

/** The roof's faces as a covering sees them. */
export interface CoveredSurface {
  readonly faces: readonly CoveredFace[];
  readonly edges: RoofEdges;
  readonly area: Cell;
  /** The same, in squares of 100 ft² where the project has them. */
  readonly squares: Cell;
}

/** What the surface is laid from. */
export interface SurfaceInput {
  /** Prefix of all cells of this covering. */
  readonly name: string;
  readonly row: Covering;
  readonly roof: CoveredRoof;
  readonly assumed: Assumed;
}

/** Lays faces and edges. */
export function laySurface(sheet: Sheet, input: SurfaceInput, units: DisplayUnits): CoveredSurface {
  const { name, row, roof, assumed } = input;
  const drip = assumed.spread(`${name}.drip`, "sheets past the eave, level", row.drip, row.from);
  const hipped = roof.planes.some(({ shape }) => shape === "hipped");
  const laid = hipped ? layHipped(sheet, { ...input, drip }, units) : layRectangles(sheet, { ...input, drip }, units);
  const area =
    sheet.find(`${name}.area`) ??
    sheet.lay(`${name}.area`, sum(laid.faces.map((face) => face.area)), {
      label: "roof area, sheet edge to sheet edge",
      display: units.area,
    });
  const squares = sheet.lay(`${name}.squares`, area, {
    label: "roof area that laying is counted by",
    display: units.area === "ft2" ? "square" : units.area,
  });
  return { ...laid, area, squares };
}

interface Laying extends SurfaceInput {
  readonly drip: Cell;
}

type Laid = Pick<CoveredSurface, "faces" | "edges">;

const prefixOf = ({ name, roof }: Laying, plane: CoveredPlane) =>
  roof.planes.length === 1 ? name : `${name}.${plane.name}`;

/** Sheets reach over both fascias and drip past the eave; panels stop short of the ridge's centre. */
function layRectangles(sheet: Sheet, laying: Laying, units: DisplayUnits): Laid {
  const { name, roof } = laying;
  const first = roof.planes[0] as CoveredPlane;
  const none = number("0 in");
  const width = sheet.lay(`${name}.width`, plus(first.eave, times(number("2"), roof.rakeFascia ?? none)), {
    label: "along the eave, sheet edge to sheet edge",
    display: units.long,
  });
  const faces = roof.planes.map((plane): CoveredFace => {
    const prefix = prefixOf(laying, plane);
    const slopeLength = laySlopeLength(sheet, laying, plane, units);
    const area = sheet.lay(`${prefix}.area`, times(count(plane.alike), width, slopeLength), {
      label: "roof area, sheet edge to sheet edge",
      display: units.area,
    });
    const { name, alike, shape, edgeLength, purlinRows } = plane;
    return { name, prefix, alike, shape, eave: width, top: width, slopeLength, edgeLength, area, purlinRows };
  });
  const slopes = roof.planes.reduce((all, { alike }) => all + alike, 0);
  const rakes = faces.map(({ alike, slopeLength }) => ({ count: 2 * alike, length: slopeLength }));
  return {
    faces,
    edges: { eaves: [{ count: slopes, length: width }], rakes, ridge: [{ count: 1, length: width }], hips: [] },
  };
}

function laySlopeLength(sheet: Sheet, laying: Laying, plane: CoveredPlane, units: DisplayUnits): Cell {
  const { row, roof, assumed, drip } = laying;
  const prefix = prefixOf(laying, plane);
  const past = plus(plane.overhang, roof.eaveFascia ?? number("0 in"), drip);
  // Cut at the ridge on a hip roof, where sheets are cut at the hips as well.
  const gap = row.form === "panels" && plane.shape === "rectangle";
  const level = sheet.lay(`${prefix}.pastPlate`, gap ? minus(past, assumed.cell("covering.ridgeGap")) : past, {
    label: gap ? "sheets past the plate face, less the gap at the ridge, level" : "covering past the plate face, level",
    display: units.small,
  });
  return sheet.lay(`${prefix}.slopeLength`, plus(plane.lineLength, over(times(level, roof.unitLength), roof.unitRun)), {
    label: "along the slope, sheet edge to sheet edge",
    display: units.long,
  });
}

function layHipped(sheet: Sheet, laying: Laying, units: DisplayUnits): Laid {
  const { name, roof, drip } = laying;
  const faces = roof.planes.map((plane): CoveredFace => {
    const prefix = prefixOf(laying, plane);
    const slopeLength = laySlopeLength(sheet, laying, plane, units);
    const past = plus(roof.eaveFascia ?? number("0 in"), drip);
    const eave = sheet.lay(`${prefix}.eave`, plus(plane.eave, times(number("2"), past)), {
      label: "along the eave, sheet edge to sheet edge",
      display: units.long,
    });
    const middle = over(plus(eave, plane.top), number("2"));
    const area = sheet.lay(`${prefix}.area`, times(count(plane.alike), middle, slopeLength), {
      label: "area of both, sheet edge to sheet edge",
      display: units.area,
    });
    const { name, alike, shape, edgeLength, purlinRows, top } = plane;
    return { name, prefix, alike, shape, eave, top, slopeLength, edgeLength, area, purlinRows };
  });
  const side = faces[0] as CoveredFace;
  // Level from the corner to the ridge's end, square to the eave and along it alike.
  const corner = over(minus(side.eave, side.top), number("2"));
  const hip = sheet.lay(`${name}.hipLength`, root(plus(square(corner), square(side.slopeLength))), {
    label: "one hip, corner to ridge, along the slope",
    display: units.long,
  });
  const ridge = sheet.decide(side.top).gt(0) ? [{ count: 1, length: side.top }] : [];
  const eaves = faces.map(({ alike, eave }) => ({ count: alike, length: eave }));
  return { faces, edges: { eaves, rakes: [], ridge, hips: [{ count: 4, length: hip }] } };
}
