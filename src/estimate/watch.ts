/** How far a long job has come, and whether anyone still waits for it. The core tells and asks; `api` knows who listens. */

/** A stage of a job, and how much of it is done. */
export interface Progress {
  /** What is being done, in words that can follow "now". */
  readonly stage: string;
  /** Which stage of the job it is, from 1; 0 while the job waits its turn. */
  readonly step: number;
  readonly steps: number;
  /** Parts of the stage that are done, of at most so many. */
  readonly done: number;
  readonly of: number;
}

/** Whoever waits for a job. */
export interface Watch {
  readonly report: (progress: Progress) => void;
  /** True once nobody waits any more. Asked often, so it must be cheap. */
  readonly stopped: () => boolean;
}

/** Nobody listens, nobody leaves. */
export const UNWATCHED: Watch = { report: () => {}, stopped: () => false };

/** Ends a job that nobody waits for any more. */
export class CalledOff extends Error {
  constructor() {
    super("The job was called off.");
    this.name = "CalledOff";
  }
}

/** The stages of one job, told to its watch as they come up. */
export class Stages<Name extends string> {
  private readonly names: readonly string[];
  private now: Name | undefined;
  readonly stopped = (): boolean => this.watch.stopped();

  /** @param words - Each stage's words, in the order of the work. */
  constructor(
    private readonly words: Readonly<Record<Name, string>>,
    private readonly watch: Watch,
  ) {
    this.names = Object.keys(words);
  }

  /**
   * A stage begins.
   * @throws CalledOff when nobody waits any more.
   */
  begin(name: Name): void {
    this.now = name;
    this.part(0, 1);
  }

  /**
   * So many parts of the present stage are done.
   * @throws CalledOff when nobody waits any more.
   */
  part(done: number, of: number): void {
    if (this.stopped()) throw new CalledOff();
    if (this.now === undefined) return;
    const step = this.names.indexOf(this.now) + 1;
    this.watch.report({ stage: this.words[this.now], step, steps: this.names.length, done, of });
  }
}
