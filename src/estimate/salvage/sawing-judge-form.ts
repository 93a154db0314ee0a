/**
 * Is it a plan at all? Whatever came in with a request is read here as unknown, and only what has the right form,
 * in whole steps of the right grid and of a bearable size, goes on to be judged.
 */
import type { LogPlan, SawCut, SawingProblem, SawnPiece } from "./sawing-problem.js";

/** Most sentences that a judgement holds; the rest of a bad plan tells nobody anything new. */
const MOST_FAULTS = 50;
/**
 * Sizes that keep the judge's time bounded; assumptions. A plan: ten times 5,000 pieces from 200 logs. A log: 20 ft by
 * 3 ft, all in foot-long laths, is half of it.
 */
const MOST = { cuts: 200_000, pieces: 50_000, piecesOfLog: 10_000 };
/** Farthest coordinate, steps: 1 km in millimetres. Keeps products of two within exact whole numbers. */
const FARTHEST = 1_000_000;

/** A length in whole grid steps, as it is told. */
export type TellLength = (steps: number) => string;

/** Sentences found so far; further ones are dropped once it is full. */
export class Findings {
  readonly sentences: string[] = [];

  constructor(readonly long: TellLength) {}

  get full(): boolean {
    return this.sentences.length >= MOST_FAULTS;
  }

  add(sentence: string): void {
    if (!this.full) this.sentences.push(sentence);
  }
}

/** A plan of the right form: logs once each, by name; what is bought, by group. */
export interface ReadPlan {
  readonly logs: readonly LogPlan[];
  readonly buy: ReadonlyMap<string, number>;
}

/** A name as it is printed in a sentence: quoted, and no longer than a name has any reason to be. */
export function quoted(name: unknown): string {
  const text = typeof name === "string" ? name : typeof name;
  return `“${text.length > 60 ? `${text.slice(0, 60)}…` : text}”`;
}

/** The parts of a plan that can be judged. Everything else has been named in `findings`. */
export function readPlan(problem: SawingProblem, plan: unknown, findings: Findings): ReadPlan {
  const nothing: ReadPlan = { logs: [], buy: new Map() };
  if (!isRecord(plan) || !Array.isArray(plan.logs) || !isRecord(plan.buy)) {
    findings.add("This is not a sawing plan: it needs a list of logs and what to buy.");
    return nothing;
  }
  if (plan.gridMm !== problem.gridMm) {
    findings.add(
      `The plan is drawn on a grid of ${quoted(plan.gridMm)} mm, the logs are measured in ${problem.gridMm} mm.`,
    );
    return nothing;
  }
  if (isTooLarge(plan.logs, problem.logs.length)) {
    findings.add("The plan names more logs, cuts or pieces than a plan may hold.");
    return nothing;
  }
  return { logs: readLogs(plan.logs, findings), buy: readBuy(problem, plan.buy, findings) };
}

/** Faults of the question itself: no plan can be judged against a log that is not in whole steps. */
export function problemFaults(problem: SawingProblem): string[] {
  const numbers = (entry: object) => Object.values(entry).filter((value) => typeof value === "number");
  const whole = (entry: object) => numbers(entry).every((value) => isStep(value) && value >= 0);
  const bad = [
    ...problem.logs.filter((log) => !whole(log) || !whole(log.rot) || log.length === 0).map((log) => log.name),
    ...problem.groups.filter((group) => !whole(group)).map((group) => group.name),
    ...(whole(problem.shop) ? [] : ["shop"]),
  ];
  return bad.map((name) => `The question is not in whole steps of its grid: ${quoted(name)}.`);
}

function isTooLarge(logs: readonly unknown[], mostLogs: number): boolean {
  if (logs.length > mostLogs) return true;
  const counts = (key: "cuts" | "pieces") =>
    logs.map((entry) => {
      const list = isRecord(entry) ? entry[key] : undefined;
      return Array.isArray(list) ? list.length : 0;
    });
  const sum = (list: readonly number[]) => list.reduce((total, count) => total + count, 0);
  const pieces = counts("pieces");
  return sum(counts("cuts")) > MOST.cuts || sum(pieces) > MOST.pieces || Math.max(0, ...pieces) > MOST.piecesOfLog;
}

function readLogs(entries: readonly unknown[], findings: Findings): LogPlan[] {
  const seen = new Set<string>();
  const plans: LogPlan[] = [];
  for (const [index, entry] of entries.entries()) {
    const plan = readLog(entry, index, findings);
    if (plan === undefined) continue;
    if (seen.has(plan.log)) findings.add(`Log ${quoted(plan.log)} is sawn up twice.`);
    else plans.push(plan);
    seen.add(plan.log);
  }
  return plans;
}

function readLog(entry: unknown, index: number, findings: Findings): LogPlan | undefined {
  if (!isRecord(entry) || typeof entry.log !== "string" || !Array.isArray(entry.cuts) || !Array.isArray(entry.pieces)) {
    findings.add(`Entry ${index + 1} of the plan is not a log with its cuts and pieces.`);
    return undefined;
  }
  const badCut = entry.cuts.findIndex((cut) => !isCut(cut));
  if (badCut >= 0) findings.add(`Log ${quoted(entry.log)}, cut ${badCut}: not a cut in whole steps of the grid.`);
  const badPiece = entry.pieces.findIndex((piece) => !isPiece(piece));
  if (badPiece >= 0)
    findings.add(`Log ${quoted(entry.log)}, piece ${badPiece}: not a piece in whole steps of the grid.`);
  if (badCut >= 0 || badPiece >= 0) return undefined;
  return { log: entry.log, cuts: entry.cuts, pieces: entry.pieces };
}

function readBuy(problem: SawingProblem, buy: Record<string, unknown>, findings: Findings): Map<string, number> {
  const known = new Set(problem.groups.map((group) => group.name));
  const counts = new Map<string, number>();
  for (const name in buy) {
    if (findings.full) break;
    if (!Object.hasOwn(buy, name)) continue;
    const count = buy[name];
    if (!known.has(name)) findings.add(`The plan buys pieces of an unknown group, ${quoted(name)}.`);
    else if (!isStep(count) || count < 0) findings.add(`Group ${quoted(name)}: what is bought is not a whole number.`);
    else counts.set(name, count);
  }
  return counts;
}

function isRecord(value: unknown): value is Record<string, unknown> {
  return typeof value === "object" && value !== null && !Array.isArray(value);
}

function isStep(value: unknown): value is number {
  return typeof value === "number" && Number.isSafeInteger(value) && Math.abs(value) <= FARTHEST;
}

function isCut(cut: unknown): cut is SawCut {
  if (!isRecord(cut)) return false;
  const { tool, axis, part, lo, hi } = cut;
  const named = ["buck", "mill", "rip", "cross"].includes(tool as string) && ["x", "y", "z"].includes(axis as string);
  return named && [part, lo, hi].every(isStep);
}

function isPiece(piece: unknown): piece is SawnPiece {
  if (!isRecord(piece) || typeof piece.group !== "string") return false;
  return [piece.part, piece.x0, piece.x1, piece.y0, piece.y1, piece.z0, piece.z1].every(isStep);
}
