/** A plan for all logs while it is being worked on: a pattern a log, what they make together, what that costs. */
import type { Job } from "./job.js";
import { type LogPattern, leftLying } from "./pattern-cost.js";

/** Patterns by log, in the order of the problem's logs. */
export class WholePlan {
  readonly patterns: LogPattern[];
  readonly made: Int32Array;
  #sawing = 0;

  constructor(readonly job: Job) {
    this.patterns = job.problem.logs.map(() => leftLying(job));
    this.made = new Int32Array(job.groups.length);
  }

  /** Sets the pattern of a log. */
  set(log: number, pattern: LogPattern): void {
    const old = this.patterns[log] as LogPattern;
    for (let j = 0; j < this.made.length; j++) {
      this.made[j] = (this.made[j] as number) + (pattern.made[j] as number) - (old.made[j] as number);
    }
    this.patterns[log] = pattern;
    this.#sawing = this.patterns.reduce((sum, { cost }) => sum + cost, 0);
  }

  /** Pieces that no pattern makes yet; below 0 where there are spare ones. */
  open(): number[] {
    return this.job.count.map((count, j) => count - (this.made[j] as number));
  }

  /** Sawing, and buying what is not sawn. */
  get cost(): number {
    return this.open().reduce((sum, open, j) => sum + Math.max(0, open) * (this.job.buy[j] as number), this.#sawing);
  }

  copy(): WholePlan {
    const copy = new WholePlan(this.job);
    for (const [log, pattern] of this.patterns.entries()) if (pattern.bolts.length > 0) copy.set(log, pattern);
    return copy;
  }
}
