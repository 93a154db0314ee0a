/** The demo's frontier of cash against hours: what it takes beyond the estimate that goes with it, warm, and whether it is one. */
import { readFileSync } from "node:fs";
import { demoCatalogs } from "../../src/api/demos.js";
import { planners } from "../../src/api/planners.js";
import { type Estimate, estimate } from "../../src/estimate/estimate.js";
import { judgeStockPlan } from "../../src/estimate/purchase/stock-judge.js";
import { type EstimateRequest, readEstimateRequest } from "../../src/estimate/request/request.js";
import { judgeSawingPlan } from "../../src/estimate/salvage/sawing-judge.js";
import type { Measured } from "./run.js";

const DEMO = new URL("../../demo-data/orchard-shelter.json", import.meta.url);
const TIMES = 5;

function read(json: object): EstimateRequest {
  const found = readEstimateRequest(json, demoCatalogs());
  if ("faults" in found) throw new Error(found.faults.map(({ wrong }) => wrong).join(" "));
  return found.value;
}

/** Median processor milliseconds of each, in turn; the first runs warm up. */
export async function bench(): Promise<Measured[]> {
  const json: Record<string, unknown> = JSON.parse(readFileSync(DEMO, "utf8"));
  const plain = read(json);
  const asked = read({ ...json, options: { ...(json.options as object), frontier: true } });
  const [without, withIt]: [number[], number[]] = [[], []];
  let made = estimate(asked, planners());
  estimate(plain, planners());
  for (let i = 0; i < TIMES; i++) {
    without.push(timed(() => estimate(plain, planners())));
    withIt.push(
      timed(() => {
        made = estimate(asked, planners());
      }),
    );
  }
  const more = median(withIt) - median(without);
  const wrong = faultsOf(made);
  return [
    {
      name: "frontier beyond the estimate",
      value: Math.round(more),
      unit: "ms",
      target: "≤ 1000 ms",
      holds: more <= 1000,
    },
    count("points of the frontier", made.searched?.frontier.length ?? 0, "≥ 2", (n) => n >= 2),
    count("points that are no judged plan, dominated or out of order", wrong, "0", (n) => n === 0),
  ];
}

function faultsOf({ searched }: Estimate): number {
  const frontier = searched?.frontier ?? [];
  return frontier.filter(({ point, fromWage }, i) => {
    const before = frontier[i - 1];
    const { sawing, stock = [] } = point.plan ?? {};
    const judged = [
      ...(sawing ? judgeSawingPlan(sawing.problem, sawing.plan) : []),
      ...stock.flatMap(({ question, plan }) => judgeStockPlan(question.problem, plan)),
    ];
    const inOrder =
      !before ||
      (point.cash.gt(before.point.cash) && point.hours.lt(before.point.hours) && fromWage.gt(before.fromWage));
    return !point.plan || judged.length > 0 || !inOrder;
  }).length;
}

const count = (name: string, value: number, target: string, holds: (value: number) => boolean): Measured => ({
  name,
  value,
  unit: "",
  target,
  holds: holds(value),
});

function timed(work: () => unknown): number {
  const begin = process.cpuUsage();
  work();
  const { user, system } = process.cpuUsage(begin);
  return (user + system) / 1000;
}

const median = (list: readonly number[]): number =>
  list.toSorted((a, b) => a - b)[Math.floor(list.length / 2)] as number;
