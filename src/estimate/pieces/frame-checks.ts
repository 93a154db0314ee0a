/** What cannot be built of a frame on posts, by comparing effective values: room between posts, braces, rafters, tails. */
import type { Fault } from "../faults.js";
import { type Decimal, decimal } from "../quantity/decimal.js";
import { onTape } from "../quantity/text.js";
import type { Cell } from "../sheet/expression.js";
import type { Sheet } from "../sheet/sheet.js";
import type { PostBays, PostRow } from "./frame.js";
import { AT } from "./laying.js";
import { sideOf } from "./piece-group.js";

const ONE = decimal("1");

/** What is braced across a building: ties and end beams from post to post. */
export interface BracedAcross {
  readonly span: Cell;
  /** Absent where only the corners have posts. */
  readonly endBays: Cell | undefined;
  /** Two braces below each tie, two in every bay of an end, or one below each beam that a wall holds. */
  readonly pairs: "ties" | "every-bay" | "one";
}

/** Collects what cannot be built, by comparing effective values. */
export class FrameChecks {
  readonly faults: Fault[] = [];
  constructor(private readonly sheet: Sheet) {}

  /** Refuses a value that is not more than a limit, or than zero. */
  above(cell: Cell, limit: Cell | undefined, at: string, what: string, cure: string): void {
    if (this.sheet.decide(cell).gt(limit ? this.sheet.decide(limit) : 0)) return;
    const than = limit ? `${sideOf(limit)} (${this.sheet.onTape(limit)})` : "zero";
    this.refuse(at, `${what} (${this.sheet.onTape(cell)}) is not more than ${than}.`, cure);
  }

  refuse(at: string, wrong: string, cure: string): void {
    this.faults.push({ code: "cannot-build", at: `${AT}${at}`, wrong, cure });
  }

  /** Spacings and lengths that every frame divides by. */
  divisors(frame: Readonly<Record<"rafterSpacing" | "bays" | "longestPiece", Cell>>): void {
    this.above(frame.rafterSpacing, undefined, "/rafterSpacing", "The rafter spacing", "Give a spacing such as 24 in.");
    this.above(frame.bays, undefined, "/bays", "The number of bays", "Give one bay or more.");
    this.above(frame.longestPiece, undefined, "/longestPiece", "The longest piece", "Give a length such as 12 ft.");
  }

  /**
   * Posts that would stand in one another, and braces longer than the post or the beam that they stiffen.
   * @param braced - Whether the request says how long braces are: a usual leg keeps clear by itself.
   */
  bracing(
    frame: PostBays & Readonly<Record<"length" | "braceLeg", Cell>>,
    post: { readonly height: Cell; readonly width: Cell; readonly beamDepth: Cell; readonly across?: BracedAcross },
    braced: boolean,
  ): void {
    this.bracedAlong(frame, post, braced);
    const said = this.faults.some(({ at }) => at === `${AT}/braceLeg`);
    if (post.across) this.bracedAcross(frame.braceLeg, post.width, post.across, braced && !said);
  }

  /** Two rows of posts along the sides, their outer faces a span apart. @returns whether there is room between them. */
  rowsOfPosts(span: Cell, post: Cell): boolean {
    const [wide, posts] = [this.sheet.decide(span), this.sheet.decide(post).times(2)];
    if (wide.gt(posts)) return true;
    const two = onTape({ value: posts, unit: post.unit }, post.display);
    const wrong = `The span (${this.sheet.onTape(span)}) is not more than two posts are wide (${two}): those of the two sides would stand in one another.`;
    this.refuse("/span", wrong, "Give more span, or thinner posts.");
    return false;
  }

  private bracedAlong(
    frame: PostBays & Readonly<Record<"length" | "braceLeg", Cell>>,
    post: { readonly height: Cell; readonly width: Cell; readonly beamDepth: Cell },
    braced: boolean,
  ): void {
    const value = (cell: Cell): Decimal => this.sheet.decide(cell);
    const { bays, braceLeg } = frame;
    if (value(bays).lte(0)) return; // refused by itself
    const clear = this.clearBay(frame, post.width);
    if (clear === undefined || !braced) return;
    const like = (length: Decimal): string => onTape({ value: length, unit: braceLeg.unit }, braceLeg.display);
    const leg = this.sheet.onTape(braceLeg);
    const below = value(post.height).minus(value(post.beamDepth));
    if (value(braceLeg).gte(below)) {
      const wrong = `A brace's leg (${leg}) is not shorter than the post below the beam (${like(below)}).`;
      this.refuse("/braceLeg", wrong, "Give a shorter leg or a higher plate, or remove the braces.");
    }
    if (value(braceLeg).times(2).gt(clear)) {
      const wrong = `The legs of two braces (${leg} each) are longer than the clear bay between posts (${like(clear)}).`;
      this.refuse("/braceLeg", wrong, "Give a shorter leg or fewer bays, or remove the braces.");
    }
  }

  /** Posts across an end that would stand in one another, and braces of ties and end beams that would cross. */
  private bracedAcross(leg: Cell, post: Cell, { span, endBays, pairs }: BracedAcross, braced: boolean): void {
    const [wide, bays] = [this.sheet.decide(post), endBays ? this.sheet.decide(endBays) : ONE];
    const reach = this.sheet.decide(span).minus(wide);
    if (pairs !== "one" && !this.rowsOfPosts(span, post)) return;
    if (bays.lte(0) || reach.lte(0)) return; // refused by itself
    const endBay = reach.dividedBy(bays).minus(wide);
    if (endBays && endBay.lte(0)) {
      const wrong = `${this.sheet.onTape(endBays)} bays across ${this.sheet.onTape(span)} leave no room between posts (${this.sheet.onTape(post)} wide).`;
      this.refuse("/endBays", wrong, "Give fewer bays across the ends.");
      return;
    }
    const own = this.sheet.decide(leg);
    const clear = pairs === "every-bay" ? endBay : reach.minus(wide);
    const room = pairs === "one" ? clear : clear.dividedBy(2);
    if (!braced || (own.lte(room) && own.lte(endBay))) return;
    const say = (length: Decimal): string => onTape({ value: length, unit: leg.unit }, leg.display);
    const at = own.lte(room) ? endBay : clear;
    const wrong = `The legs of braces across the building (${say(own)} each) are longer than the room between posts there (${say(at)}).`;
    this.refuse("/braceLeg", wrong, "Give a shorter leg, or remove the braces.");
  }

  /** Between the posts of the shortest bay; undefined, and refused, where they would stand in one another. */
  private clearBay({ length, bays, firstBays }: PostBays & { readonly length: Cell }, post: Cell): Decimal | undefined {
    const value = (cell: Cell): Decimal => this.sheet.decide(cell);
    const [wide, reach] = [value(post), value(length).minus(value(post))];
    if (!firstBays) {
      const clear = reach.dividedBy(value(bays)).minus(wide);
      if (clear.gt(0)) return clear;
      const wrong = `${this.sheet.onTape(bays)} bays over ${this.sheet.onTape(length)} leave no room between posts (${this.sheet.onTape(post)} wide).`;
      this.refuse("/bays", wrong, "Give fewer bays.");
      return undefined;
    }
    if (!value(bays).eq(firstBays.length + 1)) {
      const wrong = `${firstBays.length} lengths and what they leave are ${firstBays.length + 1} bays, not ${this.sheet.onTape(bays)}.`;
      this.refuse("/bayLengths", wrong, "Give the lengths of all bays but the last.");
      return undefined;
    }
    const last = firstBays.reduce((left, bay) => left.minus(value(bay)), reach);
    const all = [...firstBays.map(value), last];
    const tight = all.findIndex((bay) => bay.lte(wide));
    if (tight < 0) return all.reduce((a, b) => (a.lte(b) ? a : b)).minus(wide);
    const left = onTape({ value: all[tight] as Decimal, unit: length.unit }, post.display);
    const wrong =
      tight < firstBays.length
        ? `Bay ${tight + 1} (${left}) is not longer than a post is wide (${this.sheet.onTape(post)}).`
        : last.lte(0)
          ? `These bays take up the whole ${this.sheet.onTape(length)}: nothing is left for the last one.`
          : `These bays leave ${left} of ${this.sheet.onTape(length)} for the last, between centres; a post is ${this.sheet.onTape(post)} wide.`;
    this.refuse(
      `/bayLengths/${Math.min(tight, firstBays.length - 1)}`,
      wrong,
      "Give shorter bays before it, or more length.",
    );
    return undefined;
  }

  /** Rafters nearer to one another than they are thick would stand in one place. */
  rafterRoom(spacing: Cell, thickness: Cell): void {
    if (this.sheet.decide(spacing).lte(0)) return; // refused by itself
    const cure = "Give a wider spacing or thinner rafters.";
    this.above(spacing, thickness, "/rafterSpacing", "The rafter spacing", cure);
  }

  /** Rafters that reach further past what bears them than they lie behind it: they would tip over it. */
  tipping(overhang: Cell, at: string, inside: Cell): void {
    if (this.sheet.decide(overhang).lte(this.sheet.decide(inside))) return;
    if (this.faults.some((fault) => fault.at === `${AT}${at}`)) return; // refused for its fall already
    const most = this.sheet.onTape(inside);
    const own = onTape({ value: this.sheet.decide(overhang), unit: overhang.unit }, inside.display);
    const wrong = `An overhang of ${own} is longer than the rafter is behind what bears it (${most}, level): it would tip.`;
    this.refuse(at, wrong, `Give at most ${most}.`);
  }

  /** Beams, ridge and purlins that reach further past the end posts than the bay behind these is long: they would tip over them. */
  endTipping(
    overhang: Cell,
    at: string,
    { length, bays, firstBays }: Pick<PostRow, "length" | "bays" | "firstBays">,
    postWidth: Cell,
  ): void {
    const reach = this.sheet.decide(length).minus(this.sheet.decide(postWidth));
    const first = firstBays?.map((bay) => this.sheet.decide(bay)) ?? [];
    const last = firstBays
      ? first.reduce((left, bay) => left.minus(bay), reach)
      : reach.dividedBy(this.sheet.decide(bays));
    const behind = [...first.slice(0, 1), last].reduce((a, b) => (a.lte(b) ? a : b));
    if (behind.lte(0) || this.sheet.decide(overhang).lte(behind)) return; // no bays are refused by themselves
    const most = onTape({ value: behind, unit: length.unit }, length.display);
    const own = onTape({ value: this.sheet.decide(overhang), unit: overhang.unit }, length.display);
    const wrong = `An overhang of ${own} past the end posts is longer than the bay behind them (${most}): beams and purlins would tip.`;
    this.refuse(at, wrong, `Give at most ${most}.`);
  }

  /** Tails that hang down to the ground. */
  tails(overhang: Cell, at: string, frame: Readonly<Record<"unitRise" | "unitRun" | "eaveHeight", Cell>>): void {
    const drop = this.sheet.decide(overhang).times(this.sheet.decide(frame.unitRise));
    if (drop.lt(this.sheet.decide(frame.eaveHeight).times(this.sheet.decide(frame.unitRun)))) return;
    const wrong = `At an overhang of ${this.sheet.onTape(overhang)} the rafter tails reach the ground.`;
    this.refuse(at, wrong, "Give a shorter overhang, a higher plate or a flatter roof.");
  }
}
