/**
 * Panels across one plane. On a rectangle all are alike. On a hipped plane each reaches as far up as the hip lets it: strip k
 * of width w, from one corner, up to the least of the whole slope S, S × k × w ÷ c and S × (E − (k − 1) × w) ÷ c, where E is
 * the eave and c the level length from a corner to the ridge's end. Both are similar triangles.
 */
import type { CutToLength } from "../need.js";
import type { Decimal } from "../quantity/decimal.js";
import {
  type Cell,
  count,
  greatest,
  least,
  minus,
  number,
  type Operand,
  over,
  plus,
  roundUp,
  times,
} from "../sheet/expression.js";
import type { CoveredFace } from "./covering-faces.js";
import type { CoveringWork, FaceLayout } from "./covering-work.js";

/** What panels or boards are cut from. */
export interface StripSizes {
  /** What one adds to the width covered. */
  readonly coverWidth: Cell;
  /** Lengths are whole steps of this. */
  readonly cutStep: Cell;
  /** Longest to be had; absent where nothing is known, and then there are no end laps. */
  readonly longest: Cell | undefined;
  readonly endLap: Cell;
  /** Of a hipped plane, the offcut of one strip serves another. */
  readonly reversible: boolean;
}

/** Panels or boards laid side by side, with their laps. */
export interface StripCells {
  readonly layout: FaceLayout;
  /** Panels or boards laid on all planes that are alike. */
  readonly panels: Cell;
  /** What is ordered for them. */
  readonly cuts: readonly CutToLength[];
  /** Length along the slope of each lap between two strips, on one plane. */
  readonly laps: readonly { readonly count: Operand; readonly length: Cell }[];
  /** End laps on one plane, as a length of the covering crossed by them. */
  readonly endLaps: Operand;
}

/** More strips than a cut list of a hipped plane can show. Assumption. */
export const MOST_STRIPS = 60;

/** Pieces up one strip, and their length: n of them with laps l reach r when each is (r + (n − 1) × l) ÷ n long. */
export function layUp(
  { sheet, units }: CoveringWork,
  name: { readonly up: string; readonly length: string; readonly what: string },
  reach: Operand,
  { longest, cutStep, endLap }: StripSizes,
) {
  const one = number("1");
  const needed = longest ? greatest(one, roundUp(over(minus(reach, endLap), minus(longest, endLap)))) : one;
  const up = sheet.lay(name.up, needed, { label: `${name.what}s up one slope` });
  const exact = over(plus(reach, times(minus(up, one), endLap)), up);
  const stepped = times(roundUp(over(exact, cutStep)), cutStep);
  // The step must not push a panel past the longest there is; the exact length never does.
  const length = sheet.lay(name.length, longest ? least(stepped, longest) : stepped, {
    label: `${name.what}, cut to length`,
    display: units.small,
  });
  return { up, length };
}

/** Lays the panels of a plane. @param across - Panels side by side on it. */
export function layStrips(work: CoveringWork, face: CoveredFace, across: Cell, sizes: StripSizes): StripCells {
  return face.shape === "hipped" ? hippedStrips(work, face, across, sizes) : equalStrips(work, face, across, sizes);
}

function equalStrips(work: CoveringWork, face: CoveredFace, across: Cell, sizes: StripSizes): StripCells {
  const { sheet } = work;
  const { prefix, alike, slopeLength, eave } = face;
  const name = { up: `${prefix}.up`, length: `${prefix}.panelLength`, what: "panel" };
  const { up, length } = layUp(work, name, slopeLength, sizes);
  const panels = sheet.lay(`${prefix}.panels`, times(count(alike), across, up), { label: "panels" });
  const one = number("1");
  return {
    layout: { face, across, up, module: sizes.coverWidth, pieceLength: length },
    panels,
    cuts: [{ length, count: panels }],
    laps: [{ count: minus(across, one), length: slopeLength }],
    endLaps: times(minus(up, one), eave),
  };
}

function hippedStrips(work: CoveringWork, face: CoveredFace, across: Cell, sizes: StripSizes): StripCells {
  const { sheet, units } = work;
  const { prefix, alike, slopeLength, eave, top } = face;
  const { coverWidth } = sizes;
  const n = sheet.decideWhole(across);
  const corner = sheet.lay(`${prefix}.corner`, over(minus(eave, top), number("2")), {
    label: "corner to the ridge's end, level along the eave",
    display: units.long,
  });
  const strips = Array.from({ length: n }, (_, i) => {
    const strip = `${prefix}.strip${i + 1}`;
    const fromLeft = over(times(slopeLength, count(i + 1), coverWidth), corner);
    const fromRight = over(times(slopeLength, minus(eave, times(count(i), coverWidth))), corner);
    const reach = sheet.lay(`${strip}.reach`, least(slopeLength, fromLeft, fromRight), {
      label: `strip ${i + 1} reaches up the slope`,
      display: units.long,
    });
    const name = { up: `${strip}.up`, length: `${strip}.panelLength`, what: "panel" };
    return { reach, ...layUp(work, name, reach, sizes) };
  });
  const counts = strips.map(({ up }, i) =>
    sheet.lay(`${prefix}.strip${i + 1}.panels`, times(count(alike), up), { label: "panels" }),
  );
  const panels = sheet.lay(
    `${prefix}.panels`,
    counts.slice(1).reduce<Operand>((all, next) => plus(all, next), counts[0] as Cell),
    {
      label: "panels",
    },
  );
  const own = strips.map(({ length }, i) => ({ length, count: counts[i] as Cell }));
  const plan = { work, face, sizes, corner, strips };
  return {
    layout: { face, across, up: (strips[Math.floor(n / 2)] as (typeof strips)[number]).up, module: coverWidth, strips },
    panels,
    cuts: sizes.reversible ? pairedCuts(plan, own) : own,
    laps: strips.slice(1).map(({ reach }, i) => ({
      count: number("1"),
      length: sheet.lay(`${prefix}.lap${i + 1}`, least(reach, (strips[i] as (typeof strips)[number]).reach), {
        label: `lap ${i + 1} along the slope`,
        display: units.long,
      }),
    })),
    endLaps: strips.reduce<Operand>(
      (all, { up }) => plus(all, times(minus(up, number("1")), coverWidth)),
      number("0 mm"),
    ),
  };
}

interface HippedPlan {
  readonly work: CoveringWork;
  readonly face: CoveredFace;
  readonly sizes: StripSizes;
  readonly corner: Cell;
  readonly strips: readonly { readonly reach: Cell; readonly up: Cell; readonly length: Cell }[];
}

/**
 * Strips that a hip cuts from edge to edge leave an offcut with the same slant, which serves another strip of that hand when
 * it is turned end for end. Two of them come out of one panel as long as both, less the slant that they share. The longest is
 * paired with the shortest; a strip left over is paired with its twin on the plane that is alike.
 */
function pairedCuts({ work, face, sizes, corner, strips }: HippedPlan, own: readonly CutToLength[]): CutToLength[] {
  const { sheet, units } = work;
  const [width, hip, eave] = [sizes.coverWidth, corner, face.eave].map((cell) => sheet.decide(cell)) as [
    Decimal,
    Decimal,
    Decimal,
  ];
  const longest = sizes.longest && sheet.decide(sizes.longest);
  // Thirds of a foot do not end: a corner is met to nine places, as in every rounding up.
  const beforeHip = (length: Decimal): boolean => length.minus(hip).toDecimalPlaces(9).lte(0);
  const slant = sheet.lay(`${face.prefix}.slant`, over(times(face.slopeLength, sizes.coverWidth), corner), {
    label: "slant of a hip across one panel",
    display: units.small,
  });
  const whole = strips.map((_, i) => i);
  const left = whole.filter((i) => beforeHip(width.times(i + 1)));
  const right = whole.filter((i) => beforeHip(eave.minus(width.times(i))) && eave.gte(width.times(i + 1))).reverse();
  const paired = new Set<number>();
  const cuts: CutToLength[] = [];
  const pair = (a: number, b: number): void => {
    const [one, other] = [own[a], own[b]] as [CutToLength, CutToLength];
    const length = sheet.decide(one.length).plus(sheet.decide(other.length)).minus(sheet.decide(slant));
    if (
      (longest && length.gt(longest)) ||
      !sheet.decide(one.count).eq(face.alike) ||
      !sheet.decide(other.count).eq(face.alike)
    )
      return;
    const name = `${face.prefix}.pair${a + 1}-${b + 1}`;
    paired.add(a).add(b);
    cuts.push({
      length: sheet.lay(`${name}.panelLength`, minus(plus(one.length, other.length), slant), {
        label: `strips ${a + 1} and ${b + 1}, cut from one panel`,
        display: units.small,
      }),
      count: sheet.lay(`${name}.panels`, over(one.count, count(a === b ? 2 : 1)), { label: "panels" }),
    });
  };
  for (const hand of [left, right]) {
    for (let i = 0; i < Math.ceil(hand.length / 2); i++) {
      const [a, b] = [hand[i], hand[hand.length - 1 - i]] as [number, number];
      if (a !== b || face.alike === 2) pair(a, b);
    }
  }
  return [...cuts, ...own.filter((_, i) => !paired.has(i))];
}
