/** The demo's estimate in this process, against the floor of reading and writing the same bodies. */
import { readFileSync } from "node:fs";
import { demoCatalogs } from "../../src/api/demos.js";
import { planners } from "../../src/api/planners.js";
import { provenance } from "../../src/api/provenance.js";
import { shownEstimate } from "../../src/api/render/json/estimate.js";
import { type Estimate, estimate } from "../../src/estimate/estimate.js";
import { type EstimateRequest, readEstimateRequest } from "../../src/estimate/request/request.js";
import { evaluateAgain } from "../../src/estimate/sheet/evaluate.js";
import type { Measured } from "./run.js";

const DEMO = new URL("../../demo-data/orchard-shelter.json", import.meta.url);
const DIGEST = "0".repeat(64);

/** Parses and validates a body as the service does. */
function read(body: string): EstimateRequest {
  const found = readEstimateRequest(JSON.parse(body), demoCatalogs());
  if ("faults" in found) throw new Error(found.faults.map(({ wrong }) => wrong).join(" "));
  return found.value;
}

const shown = (made: Estimate) => shownEstimate(made, provenance(DIGEST), []);

/** Warm figures; the floor and the whole run in turn, so that a busy machine slows both. */
export async function bench(): Promise<Measured[]> {
  const json: object = JSON.parse(readFileSync(DEMO, "utf8"));
  const plan = planners();
  const first = estimate(read(JSON.stringify(json)), plan);
  const body = JSON.stringify({ ...json, heldPlans: first.plans });
  const answer = shown(first);
  const text = JSON.stringify(answer);
  const floor = () => read(body) && JSON.stringify(answer);
  const whole = () => JSON.stringify(shown(estimate(read(body), plan)));
  const laid = () => estimate(read(body), plan);
  const [floorTime, wholeTime, laidTime] = inTurn([floor, whole, laid], 60) as [number, number, number];
  const [planned] = inTurn([() => estimate(read(JSON.stringify(json)), plan)], 5) as [number];
  const { cells } = first.basis.sheet;
  // New decimals of the same value: cells are told apart by identity, so that every formula is evaluated.
  const changes = new Map(cells.filter((cell) => !cell.expression).map((cell) => [cell.name, cell.value.times(1)]));
  const [again] = inTurn([() => evaluateAgain(cells, changes)], 60) as [number];
  return [
    {
      name: "parse, validate, serialise (the floor)",
      value: round(floorTime),
      unit: "ms",
      target: "none",
      holds: null,
    },
    atMost("estimate with plans held, over the floor", wholeTime - floorTime, 5),
    {
      name: "of it: estimate without rendering",
      value: round(laidTime - floorTime),
      unit: "ms",
      target: "none",
      holds: null,
    },
    atMost("whole estimate, planned anew", planned, 1000),
    atMost(`600 of the demo's ${cells.length} cells in decimals`, (again * 600) / cells.length, 1),
    {
      name: "lean answer",
      value: Math.round(text.length / 1000),
      unit: "kB",
      target: "≤ 200 kB",
      holds: text.length <= 200_000,
    },
  ];
}

/** Median processor milliseconds of each, run in turn after warming up. */
function inTurn(works: readonly (() => unknown)[], times: number): number[] {
  for (const work of works) for (let i = 0; i < Math.ceil(times / 3); i++) work();
  const taken = works.map(() => [] as number[]);
  for (let i = 0; i < times; i++) {
    for (const [k, work] of works.entries()) {
      const begin = process.cpuUsage();
      work();
      const { user, system } = process.cpuUsage(begin);
      (taken[k] as number[]).push((user + system) / 1000);
    }
  }
  return taken.map((list) => list.sort((a, b) => a - b)[Math.floor(list.length / 2)] as number);
}

const round = (value: number): number => Number(value.toPrecision(3));

const atMost = (name: string, value: number, most: number): Measured => ({
  name,
  value: round(value),
  unit: "ms",
  target: `≤ ${most} ms`,
  holds: value <= most,
});
