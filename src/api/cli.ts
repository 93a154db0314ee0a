/** The estimate in a terminal: the demo, or a file of one's own. With `main.ts` the only file that knows the process. */
import { readFileSync } from "node:fs";
import { isRecord } from "../catalog/shape-faults.js";
import { estimate } from "../estimate/estimate.js";
import { type Fault, FaultError } from "../estimate/faults.js";
import { readEstimateRequest } from "../estimate/request/request.js";
import { parsed, textOf } from "./body.js";
import { demoCatalogs, demoNames, demoRequest } from "./demos.js";
import { planners } from "./planners.js";
import { Refusal } from "./problem.js";
import { terminalPage } from "./render/terminal.js";

const USAGE = `Usage:
  npm run demo [NAME]          estimate a demo, orchard-shelter where none is named
  npm run estimate -- FILE     estimate a request of your own (JSON, as POST /v1/estimates takes it)
  npm run estimate -- FILE PRICES.csv [CURRENCY]
                               the same at the prices of a CSV table`;

/** Runs one command. @returns the exit code: 0 done, 1 the request has faults, 2 the call is wrong. */
function run(args: readonly string[]): number {
  try {
    return carryOut(args);
  } catch (error) {
    if (error instanceof FaultError) return refuse(error.faults);
    throw error;
  }
}

function carryOut([command, ...rest]: readonly string[]): number {
  if (command === "demo" && rest.length <= 1) return showDemo(rest[0] ?? "orchard-shelter");
  const [file, prices, currency] = rest;
  if (command === "estimate" && file && !prices) return show(readJson(file));
  if (command === "estimate" && file && prices && rest.length <= 3) return show(withPrices(file, prices, currency));
  process.stderr.write(`${USAGE}\n`);
  return 2;
}

function showDemo(name: string): number {
  const found = demoRequest(name);
  if (found !== undefined) return show(found);
  process.stderr.write(`No demo is called ${name}. There are ${demoNames().join(", ")}.\n`);
  return 2;
}

/** A request at the prices of a table, which take the place of its own. */
function withPrices(file: string, prices: string, currency: string | undefined): unknown {
  const request = readJson(file);
  return isRecord(request)
    ? { ...request, catalog: { csv: readText(prices), ...(currency && { currency }) } }
    : request;
}

/** The JSON of a file, as strictly as the service reads a body. */
const readJson = (path: string): unknown => unlessRefused(path, () => parsed(readText(path)));

const readText = (path: string): string => unlessRefused(path, () => textOf(readBytes(path), "file"));

/** A file that is no request ends the program with a plain sentence. */
function unlessRefused<T>(path: string, read: () => T): T {
  try {
    return read();
  } catch (error) {
    if (error instanceof Refusal) return giveUp(`${path} cannot be used. ${error.detail}`);
    throw error;
  }
}

function readBytes(path: string): Uint8Array {
  try {
    return readFileSync(path);
  } catch {
    return giveUp(`${path} cannot be read.`);
  }
}

function giveUp(why: string): never {
  process.stderr.write(`${why}\n`);
  process.exit(2);
}

function show(json: unknown): number {
  const read = readEstimateRequest(json, demoCatalogs());
  if ("faults" in read) return refuse(read.faults);
  // The mixes between are searched, as the form does at first, so that both tell the same values of an hour.
  const request = { ...read.value, options: { ...read.value.options, frontier: true } };
  process.stdout.write(terminalPage(estimate(request, planners())));
  return 0;
}

function refuse(faults: readonly Fault[]): number {
  const lines = faults.map(({ at, wrong, cure }) => `${at || "the request"}: ${wrong} ${cure}`);
  process.stderr.write(`${lines.join("\n")}\n`);
  return 1;
}

process.exitCode = run(process.argv.slice(2));
