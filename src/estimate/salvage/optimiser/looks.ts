/** Kinds of look at a log, from quick ones to thorough ones, and which is to be next. */
import type { Effort } from "./effort.js";

/** From quick looks to thorough ones. Each kind gets a share of the work, so quick ones are by far the most. */
const LOOKS = [
  { steps: 12, labels: 0, plans: 0, bolts: 0, starts: 0, patient: false, most: 0 },
  { steps: 14, labels: 4, plans: 1, bolts: 1, starts: 12, patient: false, most: 60 },
  { steps: 16, labels: 6, plans: 2, bolts: 3, starts: 40, patient: false, most: 150 },
  { steps: 20, labels: 20, plans: 6, bolts: 8, starts: 100, patient: true, most: 1200 },
];
/**
 * How much the work of the thorough kind counts where there is room for several of its looks: it then has less than half
 * of another's share. Measured on the frozen problems.
 */
const THOROUGH_WEIGHT = 2.5;
const SEVERAL = 3;

/** Every other look takes so few steps only: it sees less, and something else. */
const FEW_STEPS = 5;

/** Hands out kinds of look so that each has had about the same work, weighted. */
export class Looks {
  readonly #work: number[];
  readonly #thorough: number;

  /** @param room - Work for all looks. */
  constructor(
    readonly chance: () => number,
    room: number,
  ) {
    // Where there is no room for several looks of a kind, it is left out.
    this.#work = LOOKS.filter(({ most }, i) => i === 0 || SEVERAL * most <= room).map((_, i) => i);
    this.#thorough = room > SEVERAL * (LOOKS.at(-1)?.most ?? 0) ? THOROUGH_WEIGHT : 1;
  }

  /** The kind that has had least; how far the limits count in its ranking is left to chance. */
  next(): { kind: number; effort: Effort } {
    const kind = this.#work.indexOf(Math.min(...this.#work));
    const shares = [[1, 1, 0, 0.5][Math.floor(this.chance() * 4)] as number];
    const look = LOOKS[kind] as (typeof LOOKS)[number];
    const steps = this.chance() < 0.5 ? look.steps : FEW_STEPS;
    return { kind, effort: { ...look, steps, shares, fresh: this.chance() < 0.15 } };
  }

  spent(kind: number, work: number): void {
    this.#work[kind] = (this.#work[kind] as number) + work * (kind === LOOKS.length - 1 ? this.#thorough : 1);
  }
}
