/** Health, readiness and metrics: the only clock of the service. */
import type { OpenAPIObject } from "openapi3-ts/oas31";

/** Jobs under way and waiting, and how many may be. */
export interface Queue {
  readonly workers: number;
  readonly underWay: number;
  readonly waiting: number;
  readonly mostWaiting: number;
  /** Since the service started: jobs answered, refused because the queue was full, and called off. */
  readonly answered: number;
  readonly refused: number;
  readonly calledOff: number;
}

/** What calls may ask of the service that they run in. */
export interface Service {
  readonly metrics: Metrics;
  /** The description of all calls. */
  readonly document: () => OpenAPIObject;
  /** Why no new work should be sent here; undefined when it may be. */
  readonly notReady: () => string | undefined;
  /** Jobs of the workers; undefined where there are none. */
  readonly queue: () => Queue | undefined;
}

/** One line of the log. */
export type Log = (line: Readonly<Record<string, unknown>>) => void;

/** Seconds on a clock that only goes forward, from an arbitrary start. */
function clockSeconds(): number {
  return performance.now() / 1000;
}

/** Upper bounds of the duration buckets in seconds, from a page to a long estimate. Assumption. */
const BUCKETS = [0.005, 0.025, 0.1, 0.5, 2, 10, 60] as const;

interface Durations {
  /** Calls at or under each bound of `BUCKETS`. */
  readonly within: number[];
  seconds: number;
  count: number;
}

/**
 * Counts and durations of calls, written in the Prometheus text exposition format 0.0.4.
 * Paths are those of the table of calls, never what the caller wrote, so that the number of series is bounded.
 */
export class Metrics {
  private readonly calls = new Map<string, number>();
  private readonly durations = new Map<string, Durations>();
  private underWay = 0;

  /** @param queue - Jobs of the workers, if there are any. */
  constructor(private readonly queue: () => Queue | undefined = () => undefined) {}

  /** A call begins. @returns What ends it: the row's path, and the status it was answered with. */
  begin(method: string): (path: string, status: number) => number {
    const start = clockSeconds();
    this.underWay++;
    return (path, status) => {
      this.underWay--;
      const seconds = clockSeconds() - start;
      this.observe(method, path, status, seconds);
      return seconds;
    };
  }

  private observe(method: string, path: string, status: number, seconds: number): void {
    const labels = `method="${KNOWN_METHODS.has(method) ? method : "other"}",path="${path}"`;
    const withStatus = `${labels},status="${status}"`;
    this.calls.set(withStatus, (this.calls.get(withStatus) ?? 0) + 1);
    const durations = this.durations.get(labels) ?? { within: BUCKETS.map(() => 0), seconds: 0, count: 0 };
    this.durations.set(labels, durations);
    for (const [index, bound] of BUCKETS.entries()) {
      if (seconds <= bound) durations.within[index] = (durations.within[index] ?? 0) + 1;
    }
    durations.seconds += seconds;
    durations.count++;
  }

  /** All series, sorted by label. */
  text(): string {
    const lines = [
      "# HELP boleworth_calls_under_way Calls being answered.",
      "# TYPE boleworth_calls_under_way gauge",
      `boleworth_calls_under_way ${this.underWay}`,
      "# HELP boleworth_calls_total Calls answered.",
      "# TYPE boleworth_calls_total counter",
      ...sorted(this.calls).map(([labels, count]) => `boleworth_calls_total{${labels}} ${count}`),
      "# HELP boleworth_call_seconds Time from the first byte read to the answer.",
      "# TYPE boleworth_call_seconds histogram",
      ...sorted(this.durations).flatMap(([labels, durations]) => histogram(labels, durations)),
      ...queueLines(this.queue()),
    ];
    return `${lines.join("\n")}\n`;
  }
}

function queueLines(queue: Queue | undefined): string[] {
  if (!queue) return [];
  const { workers, underWay, waiting, mostWaiting, answered, refused, calledOff } = queue;
  const series = (name: string, type: string, help: string, ...values: (string | number)[]) => [
    `# HELP boleworth_${name} ${help}`,
    `# TYPE boleworth_${name} ${type}`,
    ...values.map((value) => (typeof value === "number" ? `boleworth_${name} ${value}` : `boleworth_${name}${value}`)),
  ];
  return [
    ...series("workers", "gauge", "Worker threads.", workers),
    ...series("jobs_under_way", "gauge", "Jobs that a worker has begun.", underWay),
    ...series("jobs_waiting", "gauge", "Jobs that wait for a worker.", waiting),
    ...series("jobs_waiting_most", "gauge", "Jobs that may wait; the next is refused with 503.", mostWaiting),
    ...series(
      "jobs_total",
      "counter",
      "Jobs that have ended, by how.",
      `{outcome="answered"} ${answered}`,
      `{outcome="called-off"} ${calledOff}`,
      `{outcome="refused"} ${refused}`,
    ),
  ];
}

const KNOWN_METHODS = new Set(["GET", "HEAD", "POST", "OPTIONS", "PUT", "PATCH", "DELETE"]);

function histogram(labels: string, { within, seconds, count }: Durations): string[] {
  const name = "boleworth_call_seconds";
  return [
    ...BUCKETS.map((bound, index) => `${name}_bucket{${labels},le="${bound}"} ${within[index]}`),
    `${name}_bucket{${labels},le="+Inf"} ${count}`,
    `${name}_sum{${labels}} ${seconds.toFixed(6)}`,
    `${name}_count{${labels}} ${count}`,
  ];
}

function sorted<T>(series: ReadonlyMap<string, T>): [string, T][] {
  return [...series].sort(([a], [b]) => (a < b ? -1 : 1));
}
