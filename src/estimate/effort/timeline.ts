/**
 * When each stage begins and ends, in days of the calendar. Stages go in the order of the work; a later one goes on beside
 * an earlier one where the two need not wait for each other and hands are free. What needs dry lumber lets the others pass
 * while it waits, and what has to set or dry (concrete, a coat of finish) holds up what comes after it.
 *
 * The stages of sawing go by turns, bolt by bolt, and end together: their time is that of the mill, or of all their hours
 * shared by the crew, or of the stage at which fewest have room, whichever is longest.
 */
import { Decimal, decimal, ZERO } from "../quantity/decimal.js";
import { BY_TURNS, goAlongside } from "./alongside.js";

/** One stage, in the order of the work. */
export interface StageWork {
  /** Last part of its cell's name. */
  readonly stage: string;
  readonly label: string;
  readonly personHours: Decimal;
  /** At work at once, at most: of the crew and of the helpers that come to it. */
  readonly people: Decimal;
  /** Those who come in addition to the crew; none where absent. */
  readonly helpers?: Decimal;
  /** Whether people of the mill are at it, as many as it takes. */
  readonly atMill: boolean;
  /** Whether it cannot begin before the lumber is dry. */
  readonly needsDry: boolean;
  /** Where pieces that need not dry go ahead of the others: which part of the stage it is. */
  readonly part?: "green" | "dried";
  /** Days from its last hour until the next stage may touch what it leaves. */
  readonly sets: Decimal;
}

/** What a timeline is made from. */
export interface TimelineInput {
  readonly stages: readonly StageWork[];
  /** Days in the stack; undefined where nothing dries. */
  readonly drying: Decimal | undefined;
  readonly crew: Decimal;
  readonly hoursPerWeek: Decimal;
}

/** One stage with its days. */
export interface TimedStage {
  readonly work: StageWork;
  readonly start: Decimal;
  readonly end: Decimal;
}

/** All stages of hours, by the day on which they begin, and the day of the last board in the stack. */
export interface Timeline {
  readonly stages: readonly TimedStage[];
  readonly stacked: Decimal | undefined;
}

const DAYS_A_WEEK = decimal(7);
/** What is left of a stage by the roundings of the divisions, in person-hours. */
const NOTHING = decimal("1e-20");

interface Job {
  readonly work: StageWork;
  /** Earlier jobs that it has to wait for. */
  readonly after: readonly Job[];
  left: Decimal;
  start: Decimal | undefined;
  end: Decimal | undefined;
  /** When what it leaves has set. */
  set: Decimal | undefined;
  /** Whether that day has come. */
  over: boolean;
}

/**
 * Stages of no hours are left out. Where a smaller crew would be done sooner, because a stage that is begun earlier holds
 * up another one, so many work and the others rest: more people never take longer.
 * @see R. L. Graham, Bounds on Multiprocessing Timing Anomalies (1969), on such plans.
 */
export function timelineOf(input: TimelineInput): Timeline {
  let best = withCrew(input, input.crew) as Finished;
  for (let fewer = input.crew.minus(1); fewer.gte(1); fewer = fewer.minus(1)) {
    best = withCrew(input, fewer, best.over) ?? best;
  }
  return best;
}

/** A timeline, and the day on which all is done and has set. */
interface Finished extends Timeline {
  readonly over: Decimal;
}

/** @param before - Days within which it has to be done; undefined where it is not. */
function withCrew(input: TimelineInput, crew: Decimal, before?: Decimal): Finished | undefined {
  const asked = new Map(
    input.stages.map((work) => {
      const all = crew.plus(work.helpers ?? ZERO);
      return [work.atMill ? work : { ...work, people: Decimal.min(work.people, all) }, work] as const;
    }),
  );
  const clock = new Clock({ ...input, stages: [...asked.keys()], crew });
  while (clock.open()) {
    if (before && clock.isPast(before)) return undefined;
    clock.goOn();
  }
  const { stages, ...told } = clock.told();
  if (before?.lte(told.over)) return undefined;
  return { ...told, stages: stages.map((one) => ({ ...one, work: asked.get(one.work) as StageWork })) };
}

/** The days of a job as they pass, from one event to the next. */
class Clock {
  private readonly jobs: readonly Job[];
  /** Person-hours a calendar day for one pair of hands. */
  private readonly daily: Decimal;
  private now = ZERO;
  private stacked: Decimal | undefined;

  constructor(private readonly input: TimelineInput) {
    this.daily = input.hoursPerWeek.dividedBy(DAYS_A_WEEK);
    const jobs: Job[] = [];
    for (const work of input.stages.filter(({ personHours }) => personHours.gt(0))) {
      const after = jobs.filter((before) => !goAlongside(before.work.stage, work.stage));
      const left = work.personHours;
      jobs.push({ work, after, left, start: undefined, end: undefined, set: undefined, over: false });
    }
    this.jobs = jobs;
  }

  open(): boolean {
    return this.jobs.some(({ end }) => !end);
  }

  isPast(day: Decimal): boolean {
    return this.now.gte(day);
  }

  /** To the next moment at which a stage ends, or something is dry or has set. */
  goOn(): void {
    const hands = this.handsNow();
    const ends = [...hands].map(([{ left }, people]) => left.dividedBy(people.times(this.daily)));
    const waits = this.waits();
    if (ends.length + waits.length === 0) {
      // Only what needs dry lumber is left, and nothing was stacked that would have to dry.
      this.stacked = this.now.minus(this.input.drying ?? ZERO);
      return;
    }
    const step = Decimal.min(...ends, ...waits);
    for (const [job, people] of hands) {
      job.start ??= this.now;
      job.left = job.left.minus(people.times(this.daily).times(step));
    }
    this.now = this.now.plus(step);
    for (const [job] of hands) this.endIfDone(job);
    for (const job of this.jobs) job.over ||= job.set?.lte(this.now) ?? false;
    const turns = this.jobs.filter(({ work }) => BY_TURNS.has(work.stage));
    if (turns.length > 0 && turns.every(({ end }) => end)) this.stacked ??= this.now;
  }

  private endIfDone(job: Job): void {
    if (job.left.gt(NOTHING)) return;
    job.end = this.now;
    job.set = this.now.plus(job.work.sets);
  }

  told(): Finished {
    const over = Decimal.max(ZERO, ...this.jobs.flatMap(({ set }) => set ?? []));
    const stages = this.jobs.map(({ work, start, end }) => ({ work, start: start as Decimal, end: end as Decimal }));
    return { stages: stages.toSorted((a, b) => a.start.cmp(b.start)), stacked: this.stacked, over };
  }

  /** Hands at each stage that goes on now: what comes before sawing, sawing, what is begun, the order of the work. */
  private handsNow(): Map<Job, Decimal> {
    const dry = this.isDry();
    const ready = this.jobs.filter((job) => !job.end && mayGoOn(job, dry));
    const sawing = ready.findIndex(({ work }) => BY_TURNS.has(work.stage));
    // Logs that are got out meanwhile leave nobody for the mill.
    const turns = sawing === 0 ? ready.filter(({ work }) => BY_TURNS.has(work.stage)) : [];
    const hands = byTurns(turns, this.input.crew);
    let free = this.input.crew.minus(ownHands(hands, this.input.crew));
    const rest = ready.filter(({ work }) => !BY_TURNS.has(work.stage));
    for (const job of [...rest.filter(({ start }) => start), ...rest.filter(({ start }) => !start)]) {
      const own = Decimal.min(job.work.people, this.input.crew, free);
      if (own.lte(NOTHING)) continue;
      free = free.minus(own);
      // Helpers come along with the crew that they help.
      hands.set(job, own.times(Decimal.max(job.work.people.dividedBy(this.input.crew), 1)));
    }
    return hands;
  }

  private isDry(): boolean {
    const { drying } = this.input;
    return !drying || (this.stacked?.plus(drying).lte(this.now) ?? false);
  }

  /** Days until something is dry, or has set. */
  private waits(): Decimal[] {
    const { drying } = this.input;
    const dry = drying && this.stacked ? [this.stacked.plus(drying)] : [];
    const set = this.jobs.flatMap((job) => (job.over ? [] : (job.set ?? [])));
    return [...dry, ...set].filter((day) => day.gt(this.now)).map((day) => day.minus(this.now));
  }
}

const mayGoOn = ({ work, start, after }: Job, dry: boolean): boolean =>
  (dry || !work.needsDry) && (start !== undefined || after.every((job) => job.over || (job.work.needsDry && !dry)));

/** All end together: after the hours of the mill, of all shared by the crew, or of the stage with the least room. */
function byTurns(turns: readonly Job[], crew: Decimal): Map<Job, Decimal> {
  const total = (jobs: readonly Job[]) => jobs.reduce((sum, { left }) => sum.plus(left), ZERO);
  const atMill = turns.filter(({ work }) => work.atMill);
  const mill = atMill.reduce((sum, { left, work }) => sum.plus(left.dividedBy(work.people)), ZERO);
  const own = atMill.reduce((sum, { left, work }) => sum.plus(left.times(ownShare(work, crew))), ZERO);
  const others = total(turns.filter(({ work }) => !work.atMill));
  const slowest = turns.map(({ left, work }) => left.dividedBy(work.people));
  const hours = Decimal.max(mill, own.plus(others).dividedBy(crew), ...slowest);
  return new Map(turns.map((job) => [job, job.left.dividedBy(hours)]));
}

/** Hands of the crew: of the mill's people those beyond it come from elsewhere. */
const ownShare = ({ people, atMill }: StageWork, crew: Decimal): Decimal =>
  atMill ? Decimal.min(people, crew).dividedBy(people) : decimal(1);

const ownHands = (hands: ReadonlyMap<Job, Decimal>, crew: Decimal): Decimal =>
  [...hands].reduce((sum, [{ work }, people]) => sum.plus(people.times(ownShare(work, crew))), ZERO);
