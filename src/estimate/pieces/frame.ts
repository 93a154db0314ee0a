/** A frame on posts of any kind: its inputs, what runs along it, and what it tells the takeoffs. */
import { type QuantityText, toQuantity } from "../../catalog/reading.js";
import { FaultError } from "../faults.js";
import type { Decimal } from "../quantity/decimal.js";
import type { DisplayUnits } from "../quantity/display.js";
import { onTape } from "../quantity/text.js";
import type { Defaults } from "../request/given.js";
import type { FrameShape } from "../request/structure-kinds.js";
import {
  type Cell,
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
import { plain, type Sheet } from "../sheet/sheet.js";
import type { RafterCells } from "./common-rafter.js";
import { type Deck, rowsOf } from "./deck.js";
import { AT, wholes } from "./laying.js";
import type { PieceGroup } from "./piece-group.js";
import { type LaidRun, laidRun, shortened } from "./runs.js";
import type { SpacedCells } from "./spacing.js";

/** What the takeoffs need of the roof. Lengths along the slope are along the upper edge of the rafters. */
export interface RoofCells {
  readonly unitRise: Cell;
  readonly unitRun: Cell;
  /** Along the eave, from outer face to outer face of the fly rafters. */
  readonly length: Cell;
  /** Upper end to tail, one slope, along the rafter. */
  readonly slopeLength: Cell;
  /** Rows of purlins, or of screws through a deck in their place, up one slope. */
  readonly purlinRows: Cell;
  readonly purlinSpacing: Cell;
  readonly deck: Deck;
  readonly rafterLines: Cell;
  /** What the upper ends of the rafters lean on; a wall or a plate beam is none. */
  readonly ridgeKind: "board" | "beam" | "none";
}

/** One plane of the roof, on the upper edges of its rafters: a rectangle, a trapezoid, or a triangle where `top` is zero. */
export interface RoofFace {
  readonly name: string;
  /** How many planes are just so. */
  readonly alike: number;
  /** Level, along the tails. */
  readonly eave: Cell;
  /** Level, along the ridge line. */
  readonly top: Cell;
  /** Square to the eave, from the tails to the ridge line. */
  readonly slopeLength: Cell;
}

/** A wall that the frame offers to be boarded: up to the top of the plate beam. */
export interface WallSide {
  readonly name: string;
  readonly label: string;
  /** Level, between the outer faces of the corner posts. */
  readonly width: Cell;
  /** From the post base to the top of the beam, at either end; alike but under a single slope. */
  readonly heights: readonly [Cell, Cell];
  /** Between posts; absent where only the corners have some. */
  readonly bays: Cell | undefined;
  /** See `PostBays`. */
  readonly firstBays?: PostBays["firstBays"];
  /** The triangle between plate and rafters above it, where there is one. */
  readonly gable?: GableEnd;
  /** Posts whose outer faces are flush with it: how many, by their group. */
  readonly posts: Readonly<Record<string, Operand>>;
  /** Group of the beam at its top, flush as well; absent where there is none. */
  readonly beam?: string;
}

/** A gable above an end wall, up to the rafters' upper edges. */
export interface GableEnd extends Readonly<Record<"unitRise" | "unitRun", Cell>> {
  /** From the plate's top to the rafters' upper edges, at its outer face. */
  readonly abovePlate: Cell;
  /** From there to the peak. */
  readonly rise: Cell;
}

/** What every frame on posts tells the takeoffs. */
export interface LaidFrame {
  readonly kind: "gable" | "lean-to" | "hip" | "pergola";
  readonly groups: readonly PieceGroup[];
  /** The common rafter; a pergola's lie level. */
  readonly rafter: RafterCells | undefined;
  readonly rafterDepth: Cell;
  readonly roof: RoofCells | undefined;
  readonly faces: readonly RoofFace[];
  readonly walls: readonly WallSide[];
  /** Runs by section of what is spliced: two plate beams, one ridge. */
  readonly runs: Readonly<Record<string, number>>;
  /** Rows along straight slopes, purlins or boards: joined over rafters. Absent where rows shorten towards the ridge. */
  readonly rows?: LaidRun;
  /** Rafters apart, as they stand: what purlins and slats cross. */
  readonly rafterSpace: Cell;
  /** Level size of the whole, between outer faces. */
  readonly span: Cell;
  readonly length: Cell;
  readonly longestPiece: Cell;
}

/** Lays the size of a structure as inputs, with defaults on record. */
export class FrameInputs {
  constructor(
    readonly sheet: Sheet,
    private readonly defaults: Defaults,
    readonly units: DisplayUnits,
  ) {}

  /** A length that the request must give. */
  fixed(name: string, label: string, value: QuantityText): Cell {
    return this.sheet.input(`frame.${name}`, toQuantity(value, "mm"), { label, display: this.units.long });
  }

  /** A length with a default, in inches and in millimetres. */
  given(
    [name, label, display]: readonly [name: string, label: string, display: "long" | "small"],
    value: QuantityText | undefined,
    at: string,
    [inch, metric]: readonly [inch: string, metric: string],
  ): Cell {
    const either = { "inch-pound": inch, metric };
    const quantity = this.defaults.quantity(value, `${AT}${at}`, either, "common practice");
    return this.sheet.input(`frame.${name}`, quantity, { label, display: this.units[display] });
  }

  /** A length that stays absent where the request does not give it. */
  maybe(name: string, label: string, value: QuantityText | undefined): Cell | undefined {
    if (value === undefined) return undefined;
    return this.sheet.input(`frame.${name}`, toQuantity(value, "mm"), { label, display: this.units.small });
  }

  /** Bays across the ends, where there are posts between the corners. */
  endBays(given: number | undefined): Cell | undefined {
    if (given === undefined || given === 1) return undefined;
    return this.sheet.input("frame.endBays", plain(given), { label: "bays across each end" });
  }

  /**
   * The leg of a brace: as given, or the usual one, kept to a third of the bay, or of what is braced across the building, and
   * half the post where those are short.
   * Both limits are assumptions: common practice, no source.
   */
  braceLeg(
    given: QuantityText | undefined,
    frame: PostBays & Readonly<Record<"length" | "height", Cell>> & { readonly across?: Operand },
    usual: readonly [inch: string, metric: string],
  ): Cell {
    const label = "leg of a brace";
    if (given !== undefined) return this.given(["braceLeg", label, "small"], given, "/braceLeg", usual);
    const cell = this.given(["usualBraceLeg", "usual leg of a brace", "small"], undefined, "/braceLeg", usual);
    const { length, bays, firstBays, across } = frame;
    const third = firstBays
      ? over(least(...firstBays, minus(length, ...firstBays)), number("3"))
      : over(length, times(number("3"), greatest(bays, number("1"))));
    const acrossThird = across ? [over(across, number("3"))] : [];
    const leg = least(cell, third, ...acrossThird, over(frame.height, number("2")));
    return this.sheet.lay("frame.braceLeg", leg, { label, display: this.units.small });
  }

  /** Bays along a length: as given, or as many as keep each under the longest usual one. */
  bays(given: number | undefined, length: Cell, name = "bays", label = "bays between posts"): Cell {
    if (given !== undefined) return this.sheet.input(`frame.${name}`, plain(given), { label });
    const longest = name === "bays" ? "longestBay" : `${name}.longest`;
    const cell = this.given([longest, "longest bay", "long"], undefined, `/${name}`, ["8 ft", "2.4 m"]);
    return this.sheet.lay(`frame.${name}`, roundUp(over(length, cell)), { label });
  }

  /** The same, or the lengths of all bays but the last. @throws FaultError when `bays` says another number. */
  postBays({ bays, bayLengths }: Pick<FrameShape, "bays" | "bayLengths">, length: Cell): PostBays {
    if (!bayLengths) return { bays: this.bays(bays, length) };
    const found = bayLengths.length + 1;
    if (bays !== undefined && bays !== found) {
      const wrong = `${bayLengths.length} lengths and what they leave are ${found} bays, not ${bays}.`;
      const cure = "Give the lengths of all bays but the last, or leave bays out.";
      throw new FaultError([{ code: "cannot-build", at: `${AT}/bayLengths`, wrong, cure }]);
    }
    const firstBays = bayLengths.map((bay, i) =>
      this.sheet.input(`frame.bay${i + 1}`, toQuantity(bay, "mm"), {
        label: `bay ${i + 1}, posts apart, centres`,
        display: this.units.long,
      }),
    );
    return { bays: this.sheet.input("frame.bays", plain(found), { label: "bays between posts" }), firstBays };
  }
}

/** The leg that the request gives braces; what it takes out of the structure has none. */
export const braceLegOf = (shape: FrameShape): QuantityText | undefined =>
  shape.groups?.braces?.remove ? undefined : shape.braceLeg;

/** Posts along a side: how many bays, and how long they are where they differ. */
export interface PostBays {
  readonly bays: Cell;
  /** All bays but the last, centre to centre; absent where all are alike. */
  readonly firstBays?: readonly Cell[] | undefined;
}

/** A row of posts. */
export interface PostRow extends PostBays, Readonly<Record<"length" | "postWidth" | "longestPiece", Cell>> {
  readonly overhang?: Cell;
}

/**
 * Lays a run along a row of posts, spliced over them.
 * @param name - Prefix of its cells, such as `frame`.
 */
export function layPostRun(sheet: Sheet, name: string, run: PostRow, units: DisplayUnits): LaidRun {
  const half = over(run.postWidth, number("2"));
  const bays = layPostBays(sheet, name, run, units);
  const end = sheet.lay(`${name}.beamEnd`, run.overhang ? plus(half, run.overhang) : half, {
    label: "end post's centre to the beam's end",
    display: units.small,
  });
  const reach = sheet.decide(end);
  const supports = {
    bays,
    sizes:
      "kind" in bays ? repeated(sheet.decide(bays), wholes(sheet, run.bays)) : bays.map((bay) => sheet.decide(bay)),
    ends: { first: end, last: end },
    endSizes: { first: reach, last: reach },
    longest: sheet.decide(run.longestPiece),
  };
  return laidRun(supports, run.postWidth);
}

const repeated = (size: Decimal, count: number): Decimal[] => Array.from({ length: count }, () => size);

/** Posts apart: one cell for all bays alike, or one for each. The last takes what the others leave. */
export function layPostBays(sheet: Sheet, name: string, run: PostRow, { long: display }: DisplayUnits): Cell | Cell[] {
  const reach = minus(run.length, run.postWidth);
  const { firstBays } = run;
  if (!firstBays) return sheet.lay(`${name}.bay`, over(reach, run.bays), { label: "posts apart, centres", display });
  const last = sheet.lay(`${name}.lastBay`, minus(reach, ...firstBays), {
    label: `bay ${firstBays.length + 1}, posts apart, centres`,
    display,
  });
  return [...firstBays, last];
}

/** Whether an overhang has room for a fly rafter beside the end rafter; below that, boards and fascia carry the edge. */
export const roomForFly = (sheet: Sheet, overhang: Cell, thickness: Cell): boolean =>
  sheet.decide(overhang).gt(0) && sheet.decide(overhang).gte(sheet.decide(thickness));

/**
 * Lays a run over rafters, joined only on them: ridge, purlins, fascia.
 * @param name - Prefix of its cells, such as `roof`.
 */
export function layRafterRun(
  sheet: Sheet,
  name: string,
  run: {
    readonly lines: SpacedCells;
    readonly rafterSpacing: Cell;
    readonly rafterThickness: Cell;
    readonly overhang: Cell;
    readonly longestPiece: Cell;
    readonly short: boolean;
  },
  units: DisplayUnits,
): LaidRun {
  const { lines, rafterSpacing, short } = run;
  const bay = short ? rafterSpacing : lines.equalSpace;
  const first = sheet.lay(`${name}.runEnd`, plus(over(run.rafterThickness, number("2")), run.overhang), {
    label: "end rafter's centre to the roof's end",
    display: units.small,
  });
  const shortage = short
    ? sheet.lay(`${name}.shortage`, minus(times(lines.spaces, rafterSpacing), lines.reach), {
        label: "the last rafter bay is shorter by",
        display: units.small,
      })
    : undefined;
  const last = shortage
    ? sheet.lay(`${name}.lastEnd`, shortened(first, shortage), { label: "last end", display: units.small })
    : first;
  const supports = {
    bays: bay,
    sizes: repeated(sheet.decide(bay), wholes(sheet, lines.spaces)),
    ends: { first, last },
    endSizes: { first: sheet.decide(first), last: sheet.decide(last) },
    longest: sheet.decide(run.longestPiece),
  };
  return laidRun(supports, run.rafterThickness, roomForFly(sheet, run.overhang, run.rafterThickness));
}

/** One slope with its purlins. */
interface PurlinRows extends Readonly<Record<"slopeLength" | "spacing", Cell>> {
  readonly purlinWidth: Cell | Operand;
  readonly deck: Deck;
}

/** Rows of purlins up a slope, the outer ones flush with its ends. */
export function layPurlinRows(
  sheet: Sheet,
  { slopeLength, purlinWidth, spacing, deck }: PurlinRows,
  units: DisplayUnits,
  name = "roof",
): Cell {
  const reach = sheet.lay(`${name}.purlinReach`, minus(slopeLength, purlinWidth), {
    label: "eave purlin to ridge purlin, centres",
    display: units.long,
  });
  const spaces = sheet.lay(`${name}.purlinSpaces`, roundUp(over(reach, spacing)), { label: "purlin spaces" });
  const closer = deck.kind === "purlins" ? deck.closerRows : 0;
  if (deck.kind === "purlins") {
    const width = sheet.decide(slopeLength).minus(sheet.decide(reach));
    refuseTight(sheet, { width, reach, spacing, parts: sheet.decide(spaces).times(closer > 0 ? 2 : 1) });
  }
  return sheet.lay(`${name}.purlinRows`, rowsOf(spaces, closer), { label: "purlin rows, one slope" });
}

/** Purlins that would lie in one another; the closer rows at eave and ridge halve their spaces. */
function refuseTight(
  sheet: Sheet,
  { width, reach, spacing, parts }: Readonly<Record<"reach" | "spacing", Cell> & Record<"width" | "parts", Decimal>>,
): void {
  if (parts.lte(0)) return;
  const apart = sheet.decide(reach).dividedBy(parts);
  if (apart.gt(width)) return;
  const say = (value: Decimal): string => onTape({ value, unit: spacing.unit }, spacing.display);
  const wrong = `At a purlin spacing of ${sheet.onTape(spacing)} purlins of ${say(width)} lie ${say(apart)} apart, centres: in one another.`;
  const cure = "Give a wider spacing, fewer closer rows or narrower purlins.";
  throw new FaultError([{ code: "cannot-build", at: `${AT}/purlinSpacing`, wrong, cure }]);
}
