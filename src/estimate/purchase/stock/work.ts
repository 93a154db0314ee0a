/** Counted work: a budget that stands in for time, so that the same problem gives the same plan on every machine. */
import { CalledOff } from "../../watch.js";

/** Counted work between two questions whether anyone still waits: some milliseconds. */
const ASK_EVERY = 5_000;

/** What a search may spend, and whether anyone still waits for it. */
export class Work {
  private spent = 0;
  private asked = 0;

  /** @param stopped - Asked now and then; where it says yes, `CalledOff` is thrown and no plan comes of it. */
  constructor(
    readonly budget: number,
    private readonly stopped?: () => boolean,
  ) {}

  /**
   * @param amount - One is about a microsecond of one core of 2024; assumption, measured in tests/bench/stock.
   * @throws CalledOff when nobody waits any more.
   */
  spend(amount: number): void {
    this.spent += amount;
    if (!this.stopped || this.spent - this.asked < ASK_EVERY) return;
    this.asked = this.spent;
    if (this.stopped()) throw new CalledOff();
  }

  get used(): number {
    return this.spent;
  }

  get left(): number {
    return Math.max(0, this.budget - this.spent);
  }

  get over(): boolean {
    return this.spent >= this.budget;
  }

  /** A part of what is left, at most `most`; what it spends is spent here too when `close` is called. */
  share(most: number): Work {
    return new Work(Math.min(this.left, most), this.stopped);
  }
}

/** Mulberry32, public domain (T. Ettinger): a seeded generator of numbers in [0, 1). */
export function seeded(seed: number): () => number {
  let state = seed;
  return () => {
    state = (state + 0x6d2b79f5) | 0;
    let t = Math.imul(state ^ (state >>> 15), 1 | state);
    t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t;
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296;
  };
}
