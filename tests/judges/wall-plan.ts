/**
 * A wall's plane with what lies in it: holds pieces inside the wall's outline, openings free, layers without clashes, and the
 * whole of it covered. Inches and floats.
 */
export type Range = readonly [from: number, to: number];
export type Spot = readonly [across: number, up: number];
export interface Rect {
  readonly u: Range;
  readonly v: Range;
}

/** What a wall fills: level below, up to a line that may slope, with a corner at each peak. */
export interface Outline {
  readonly width: number;
  readonly bottom: number;
  readonly top: (u: number) => number;
  readonly peaks: readonly number[];
}

interface Piece {
  readonly layer: string;
  readonly u: Range;
  readonly low: number;
  /** Its upper end over a place; level or along the wall's own. */
  readonly high: (u: number) => number;
  readonly lap: number;
}

const SIXTY_FOURTH = 1 / 64;
const TINY = 1e-7;
/** Layers that rain sees: openings are cut out of them. */
const SKIN = new Set(["wall-boards", "wall-battens", "corner-boards"]);
const SAMPLES = 9;

const shared = (a: Range, b: Range): number => Math.min(a[1], b[1]) - Math.max(a[0], b[0]);

export class WallPlan {
  readonly found: string[] = [];
  readonly pieces: Piece[] = [];
  joints = 0;
  /** Boards that openings leave in parts which no plan cuts from the pieces laid. */
  short = 0;
  /** Openings whose frames have no room beside each other. */
  crowded = false;
  constructor(
    readonly name: string,
    readonly outline: Outline,
    readonly openings: readonly Rect[],
  ) {}

  same(what: string, mine: number, walked: number, within = SIXTY_FOURTH): void {
    this.truth(`${what}: laid ${mine}, walked ${walked}`, Math.abs(mine - walked) <= within);
  }
  within(what: string, wanted: number, most: number): void {
    this.truth(`${what} wants ${wanted} of ${most}`, wanted <= most + SIXTY_FOURTH);
  }
  truth(what: string, holds: boolean): void {
    if (!holds) this.found.push(`${this.name}: ${what}`);
  }
  private no(what: () => string): void {
    this.found.push(`${this.name}: ${what()}`);
  }

  /** The higher edge of what stands between two places. */
  longEdge(from: number, to: number): number {
    const { top, peaks } = this.outline;
    return Math.max(top(from), top(to), ...peaks.filter((peak) => peak > from && peak < to).map(top));
  }
  /** How wide the wall is at a height: by halving, from its highest place to either side. */
  widthAt(up: number): number {
    const { width, top, peaks } = this.outline;
    const summit = [0, width, ...peaks].reduce((a, b) => (top(b) > top(a) ? b : a));
    if (top(summit) < up) return 0;
    const edge = (end: number) => {
      let [out, into] = [end, summit];
      if (top(out) >= up - TINY) return out;
      for (let i = 0; i < 50; i++) {
        const middle = (out + into) / 2;
        if (top(middle) >= up) into = middle;
        else out = middle;
      }
      return into;
    };
    return edge(width) - edge(0);
  }
  /** Of a course whose end is cut aslant, two out of one piece. */
  meanWidth(from: number, to: number): number {
    const high = Math.min(to, this.longEdge(0, this.outline.width));
    const steps = 16;
    let sum = 0;
    for (let i = 0; i < steps; i++) sum += this.widthAt(from + ((i + 0.5) * (high - from)) / steps);
    return sum / steps;
  }
  /** Lengths of courses that openings take out over their full height. */
  offCourses(ups: readonly Range[], cover: number): number {
    let off = 0;
    for (const { u, v } of this.openings) {
      for (const [from] of ups) if (from >= v[0] - TINY && from + cover <= v[1] + TINY) off += u[1] - u[0];
    }
    return off;
  }

  /** A piece as it stands, up to a line. */
  lay(layer: string, u: Range, [low, high]: readonly [number, (u: number) => number], lap: number): void {
    for (const cut of this.cutRound(layer, { u, v: [low, this.longEdge(u[0], u[1])] })) {
      const upper = cut.v[1];
      this.pieces.push({ layer, u: cut.u, low: cut.v[0], high: (at) => Math.min(upper, high(at)), lap });
    }
  }
  /** A piece with level ends, below a slope cut along it. */
  level(layer: string, u: Range, v: Range, lap: number): void {
    const { top, width } = this.outline;
    const slopes = top(0) !== top(width);
    for (const cut of this.cutRound(layer, { u, v })) {
      const [low, upper] = cut.v;
      // Where the slope comes down to its lower edge, it ends.
      const from = slopes ? Math.max(cut.u[0], width - this.widthAt(low)) : cut.u[0];
      if (from >= cut.u[1] - TINY) continue;
      this.pieces.push({
        ...{ layer, u: [from, cut.u[1]], low, lap },
        high: slopes ? (at) => Math.max(low, Math.min(upper, top(at))) : () => upper,
      });
    }
  }
  /** A course as wide as the wall is at its lower edge, cut along the slopes. */
  course(v: Range, lap: number): void {
    const wide = this.widthAt(v[0]);
    const from = (this.outline.width - wide) / 2;
    const { top } = this.outline;
    this.pieces.push({
      ...{ layer: "wall-boards", u: [from, from + wide], low: v[0], lap },
      high: (at) => Math.max(v[0], Math.min(v[1], top(at))),
    });
  }
  /** Ends that must be inside the outline. */
  spots(what: string, ends: readonly Spot[], past: number): void {
    const { width, bottom, top } = this.outline;
    for (const [u, v] of ends) {
      const out = Math.max(-u, u - width, bottom - v, v - top(Math.min(width, Math.max(0, u)))) - past;
      if (out > SIXTY_FOURTH) this.no(() => `${what} is ${out} in outside`);
    }
  }

  /** Upright pieces of a level wall; those that an opening takes out whole leave what is above and below it. */
  upright(
    layer: string,
    columns: readonly Range[],
    cover: number,
    lap: number,
    laid: readonly { length: number; count: number }[],
  ): void {
    const { bottom, top } = this.outline;
    const length = laid[0]?.length ?? 0;
    this.same(`${layer} end`, bottom + length, top(0));
    const parts: number[] = [];
    for (const u of columns) {
      let from = bottom;
      const far = layer === "wall-battens" ? u[1] : u[0] + cover;
      const hole = this.openings.find((one) => u[0] >= one.u[0] - TINY && far <= one.u[1] + TINY);
      if (hole) {
        if (hole.v[0] > from + TINY) parts.push(hole.v[0] - from);
        if (hole.v[0] > from + TINY) this.lay(layer, u, [from, () => hole.v[0]], lap);
        from = hole.v[1];
      }
      const rest = bottom + length - from;
      if (rest > TINY) parts.push(rest);
      this.lay(layer, u, [from, () => bottom + length], lap);
    }
    const count = laid.reduce((sum, one) => sum + one.count, 0);
    const wanted = parts.reduce((a, b) => a + b, 0);
    if (!this.crowded) this.within(`${layer}, end to end,`, wanted, count * length);
    if (!this.crowded) this.truth(`${layer}: one less would do`, count === 1 || (count - 1) * length < wanted);
    this.short += Math.max(0, packed(parts, length) - count);
  }

  /** What openings leave of a figure: below and above one, and beside it. */
  private cutRound(layer: string, whole: Rect): Rect[] {
    if (!SKIN.has(layer)) return [whole];
    let left = [whole];
    for (const { u, v } of this.openings) {
      left = left.flatMap((one): Rect[] => {
        if (shared(one.u, u) <= TINY || shared(one.v, v) <= TINY) return [one];
        const beside: Range = [Math.max(one.v[0], v[0]), Math.min(one.v[1], v[1])];
        return [
          { u: one.u, v: [one.v[0], v[0]] as const },
          { u: one.u, v: [v[1], one.v[1]] as const },
          { u: [one.u[0], u[0]] as const, v: beside },
          { u: [u[1], one.u[1]] as const, v: beside },
        ].filter((rest) => rest.u[1] - rest.u[0] > TINY && rest.v[1] - rest.v[0] > TINY);
      });
    }
    return left;
  }

  /** Everything inside, nothing in an opening or in a neighbour, no daylight between. */
  check(): string[] {
    const byLayer = new Map<string, Piece[]>();
    for (const piece of this.pieces) {
      const { u, low, high, layer } = piece;
      this.spots(
        layer,
        [
          [u[0], low],
          [u[1], low],
          [u[0], high(u[0])],
          [u[1], high(u[1])],
        ],
        0,
      );
      byLayer.set(layer, [...(byLayer.get(layer) ?? []), piece]);
      if (!SKIN.has(layer) && !layer.startsWith("opening-")) continue;
      for (const hole of this.openings) {
        const into = Math.min(shared(u, hole.u), shared([low, Math.max(high(u[0]), high(u[1]))], hole.v));
        if (into > SIXTY_FOURTH) this.no(() => `${layer} reach ${into} in into an opening`);
      }
    }
    for (const own of byLayer.values()) this.clashes(own);
    this.daylight();
    return this.found;
  }
  private clashes(own: readonly Piece[]): void {
    const row = own
      .map((piece) => ({ ...piece, peak: Math.max(piece.high(piece.u[0]), piece.high(piece.u[1])) }))
      .sort((a, b) => a.u[0] - b.u[0]);
    for (const [i, a] of row.entries()) {
      for (let k = i + 1; k < row.length; k++) {
        const b = row[k] as (typeof row)[number];
        // Those that begin past this one's end are its neighbours' business.
        if (b.u[0] > a.u[1] - a.lap) break;
        const across = Math.min(a.u[1], b.u[1]) - b.u[0];
        if (across <= a.lap + SIXTY_FOURTH) continue;
        const up = Math.min(a.peak, b.peak) - Math.max(a.low, b.low);
        if (up > a.lap + SIXTY_FOURTH) this.no(() => `two of ${a.layer} clash by ${across} by ${up}`);
      }
    }
  }
  /** Places all over the wall: each behind a board, a batten or a corner board, or in an opening. */
  private daylight(): void {
    const { width, bottom, top } = this.outline;
    const skin = this.pieces.filter(({ layer }) => SKIN.has(layer));
    for (let i = 0; i < SAMPLES; i++) {
      for (let k = 0; k < SAMPLES; k++) {
        // Uneven steps, so that places do not fall in step with boards.
        const u = width * (((i + 0.5) / SAMPLES + k * 0.137) % 1);
        const v = bottom + 0.02 + ((k + 0.5) / SAMPLES) * (top(u) - bottom - 0.04);
        if (this.openings.some((hole) => shared([u, u], hole.u) >= 0 && shared([v, v], hole.v) >= 0)) continue;
        const dark = skin.some(
          (one) =>
            u >= one.u[0] - TINY && u <= one.u[1] + TINY && v >= one.low - TINY && v <= one.high(u) + SIXTY_FOURTH,
        );
        if (!dark) this.no(() => `daylight at ${u}, ${v}`);
      }
    }
  }
}

/** Pieces of one length that parts are cut from, the longest first. */
function packed(parts: readonly number[], length: number): number {
  const left: number[] = [];
  for (const part of parts.toSorted((a, b) => b - a)) {
    const at = left.findIndex((rest) => rest >= part - TINY);
    if (at < 0) left.push(length - part);
    else left[at] = (left[at] as number) - part;
  }
  return left.length;
}
