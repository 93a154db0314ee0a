/**
 * Work is counted, never timed: the same question gets the same plan on a busy machine as on an idle one. Between two
 * units the caller may ask for an end, and is told how far the work has come.
 */

/** What the search is at. */
export type SawingStage = "relaxation" | "whole logs" | "improvement";

/** How far it has come; `done` never falls and ends at `of` or before, where the plan is proven. */
export interface SawingProgress {
  readonly stage: SawingStage;
  /** Units of work. */
  readonly done: number;
  readonly of: number;
}

/** What bounds, stops and watches a search. */
export interface WorkOptions {
  /** Units of work: about four stacks of slabs reckoned each. Some 10,000 to 20,000 take a second on a desk computer. */
  readonly work: number;
  /** Asked between units of work; true ends the search, and the answer is then not complete and not reproducible. */
  readonly shouldStop?: () => boolean;
  /** Told at each new stage, and each time that another hundredth of the work is done. Changes nothing. */
  readonly report?: (progress: SawingProgress) => void;
}

/** Counts work and says when to stop. */
export interface Budget {
  /** Adds work (stacks reckoned, pivots, labels) and says whether there is any left. */
  spend(work: number): boolean;
  readonly out: boolean;
  /** Work so far. */
  readonly used: number;
  /** Work that is left. */
  readonly left: number;
}

/** Counts work up to a limit. */
export class CountedWork implements Budget {
  used = 0;
  stopped = false;
  #stage: SawingStage = "relaxation";
  #reported = -1;

  constructor(readonly options: WorkOptions) {}

  /** Begins a stage. */
  enter(stage: SawingStage): void {
    this.#stage = stage;
    this.#tell();
  }

  spend(work: number): boolean {
    this.used += work;
    if (!this.stopped && this.options.shouldStop?.() === true) this.stopped = true;
    if (this.used - this.#reported >= this.options.work / 100) this.#tell();
    return !this.out;
  }

  get left(): number {
    return Math.max(0, this.options.work - this.used);
  }

  get out(): boolean {
    return this.stopped || this.used >= this.options.work;
  }

  /** The same work with an end of its own, after a share of what all is allowed. */
  part(share: number): Budget {
    const whole = this;
    const end = whole.used + share * whole.options.work;
    return {
      spend: (work) => whole.spend(work) && whole.used < end,
      get out() {
        return whole.out || whole.used >= end;
      },
      get used() {
        return whole.used;
      },
      get left() {
        return Math.max(0, Math.min(whole.left, end - whole.used));
      },
    };
  }

  #tell(): void {
    this.#reported = this.used;
    const { report, work } = this.options;
    report?.({ stage: this.#stage, done: Math.min(Math.round(this.used), work), of: work });
  }
}
