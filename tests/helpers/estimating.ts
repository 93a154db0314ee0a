/** Requests read at the door and estimated with quick planners that need no engine. */
import { readdirSync, readFileSync } from "node:fs";
import { layBasis } from "../../src/estimate/basis.js";
import { type Estimate, estimate } from "../../src/estimate/estimate.js";
import type { Fault } from "../../src/estimate/faults.js";
import type { Planners } from "../../src/estimate/plan.js";
import { planStock } from "../../src/estimate/purchase/stock-plan.js";
import { type EstimateRequest, readEstimateRequest } from "../../src/estimate/request/request.js";
import { carefulSawyer } from "../../src/estimate/salvage/careful-sawyer.js";
import { Sheet } from "../../src/estimate/sheet/sheet.js";

/** Work that a test gives the stock planner: enough for a good plan, little enough for many requests. */
const STOCK_WORK = 20_000;

/** The careful sawyer's rule, and stock plans without the linear engine. */
export const quickPlanners: Planners = {
  sawing: (problem) => ({ plan: carefulSawyer(problem), proof: { covers: "a rule, no search" } }),
  stock: (problem) => planStock(problem, { work: STOCK_WORK }),
};

/** Requests that the service ships: every file of demo data that is no yard. */
export const DEMOS: readonly string[] = readdirSync(new URL("../../demo-data/", import.meta.url))
  .filter((file) => file.endsWith(".json") && !file.includes("yard"))
  .map((file) => file.replace(".json", ""))
  .sort();

const demoFile = (name: string): unknown =>
  JSON.parse(readFileSync(new URL(`../../demo-data/${name}.json`, import.meta.url), "utf8"));

const DEMO_CATALOGS = new Map([
  ["orchard-yard", demoFile("orchard-yard")],
  ["ferry-yard", demoFile("ferry-yard")],
  ["market-yard", demoFile("market-yard")],
]);

/** The body of a demo request, as it lies on disk. */
export const demoBody = (name: string): Record<string, unknown> => demoFile(name) as Record<string, unknown>;

/** The JSON of a price catalog that the service ships. */
export const demoCatalog = (name: string): Record<string, unknown> =>
  structuredClone(DEMO_CATALOGS.get(name)) as Record<string, unknown>;

/** A request that has passed the door. @throws Error with the faults where it has not. */
export function request(body: unknown): EstimateRequest {
  const read = readEstimateRequest(body, DEMO_CATALOGS);
  if ("faults" in read) throw new Error(faultLines(read.faults));
  return read.value;
}

/** The whole estimate of a request's JSON. */
export const estimated = (body: unknown, planners: Planners = quickPlanners): Estimate =>
  estimate(request(body), planners);

/** Names of the piece groups that a request comes to. */
export function groupNames(body: unknown): string[] {
  return layBasis(new Sheet(), request(body)).groups.map(({ group }) => group.name);
}

export const faultLines = (faults: readonly Fault[]): string =>
  faults.map(({ code, at, wrong }) => `${code} at ${at}: ${wrong}`).join("\n");

/** A log too thin for anything, so that logs may serve and give nothing. */
export const THIN_LOG = {
  name: "thin",
  species: "eastern-white-pine",
  length: "8 ft",
  smallDiameter: "5 in",
  largeDiameter: "6 in",
} as const;
