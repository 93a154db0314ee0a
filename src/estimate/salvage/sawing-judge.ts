/**
 * The judge of sawing plans. Knows logs, saws and pieces, and nothing of how a plan is found: it makes the cuts one
 * after another, looks whether each piece is one of the parts that are left and is sound wood throughout, and counts.
 */
import { judgeCuts, type Parts } from "./sawing-judge-cuts.js";
import { Findings, problemFaults, quoted, readPlan, type TellLength } from "./sawing-judge-form.js";
import { isSound, isWood, keepsHeartRule } from "./sawing-judge-wood.js";
import type { Part } from "./sawing-parts.js";
import type { LogPlan, SawGroup, SawingPlan, SawingProblem, SawLog, SawnPiece } from "./sawing-problem.js";

/**
 * What is wrong with a plan: one sentence a violation, naming the log, cut or piece (numbered from 0 in the plan's own
 * order), at most 50. Empty when the plan can be sawn as drawn and makes, with what is bought, all that is wanted.
 *
 * Never throws and takes bounded time, whatever `plan` holds: plans come back in requests.
 * @param long - How lengths are told; in steps where nobody reads them.
 */
export function judgeSawingPlan(
  problem: SawingProblem,
  plan: SawingPlan,
  long: TellLength = (steps) => `${steps} steps`,
): string[] {
  const badQuestion = problemFaults(problem);
  if (badQuestion.length > 0) return badQuestion.slice(0, 50);
  const findings = new Findings(long);
  const read = readPlan(problem, plan, findings);
  const sawn = new Map<string, number>();
  for (const logPlan of read.logs) {
    if (findings.full) break;
    judgeLog(problem, logPlan, sawn, findings);
  }
  // Counts of a plan that could not be read in full would only repeat what has been said.
  if (findings.sentences.length === 0) judgeCounts(problem.groups, sawn, read.buy, findings);
  return findings.sentences;
}

function judgeLog(problem: SawingProblem, plan: LogPlan, sawn: Map<string, number>, findings: Findings): void {
  const log = problem.logs.find((one) => one.name === plan.log);
  if (log === undefined) {
    findings.add(`There is no log ${quoted(plan.log)}.`);
    return;
  }
  const parts = judgeCuts(log, plan.cuts, problem.shop, findings);
  const groups = new Map(problem.groups.map((group) => [group.name, group]));
  const taken = new Set<number>();
  for (const [index, piece] of plan.pieces.entries()) {
    if (findings.full) return;
    const at = `Log ${quoted(log.name)}, piece ${index} (${quoted(piece.group)})`;
    const say = (wrong: string) => findings.add(`${at}: ${wrong}.`);
    const group = groups.get(piece.group);
    if (group === undefined) say("there is no such group");
    else judgePiece({ problem, log, group, say, long: findings.long }, piece, parts, taken);
    sawn.set(piece.group, (sawn.get(piece.group) ?? 0) + 1);
  }
  judgeOverlap(log, plan.pieces, findings);
}

interface PieceCase {
  readonly problem: SawingProblem;
  readonly log: SawLog;
  readonly group: SawGroup;
  readonly say: (wrong: string) => void;
  readonly long: TellLength;
}

function judgePiece(about: PieceCase, piece: SawnPiece, parts: Parts, taken: Set<number>): void {
  const { log, group, say } = about;
  judgeSize(about, piece);
  if (group.species.length > 0 && !group.species.includes(log.species)) {
    say(`${log.species} does not serve, only ${group.species.join(", ")}`);
  }
  const stock = parts.get(piece.part);
  if (stock === undefined) say(`there is no part ${piece.part}`);
  else if (!stock.whole) say(`part ${piece.part} has been cut up`);
  else if (taken.has(piece.part)) say(`part ${piece.part} is another piece already`);
  else if (stock.wood !== undefined) judgePart(about, piece, stock.wood);
  taken.add(piece.part);
}

function judgeSize({ group, say, long }: PieceCase, piece: SawnPiece): void {
  const sides = [piece.x1 - piece.x0, piece.y1 - piece.y0];
  const lying = sides[0] === group.width && sides[1] === group.thickness;
  const standing = sides[0] === group.thickness && sides[1] === group.width;
  if (!lying && !standing) {
    say(`its section is ${sides.map(long).join(" × ")}, wanted is ${long(group.thickness)} × ${long(group.width)}`);
  }
  const length = piece.z1 - piece.z0;
  if (length !== group.length) say(`it is ${long(length)} long, wanted is ${long(group.length)}`);
}

function judgePart({ problem, log, group, say, long }: PieceCase, piece: SawnPiece, part: Part): void {
  const same =
    part.x.lo === piece.x0 &&
    part.x.hi === piece.x1 &&
    part.y.lo === piece.y0 &&
    part.y.hi === piece.y1 &&
    part.z.lo === piece.z0 &&
    part.z.hi === piece.z1;
  if (!same || part.bolt === undefined) {
    say(`it is not what the cuts leave as part ${piece.part}`);
    return;
  }
  const { deepestRip, thinnestSlab = 0 } = problem.shop;
  if (piece.y1 - piece.y0 > deepestRip && piece.x1 - piece.x0 < thinnestSlab) {
    say(`the mill ripped it to ${long(piece.x1 - piece.x0)}, it saws none under ${long(thinnestSlab)}`);
  }
  if (!isWood(log, part.bolt, part, group.wane)) say("it reaches outside the wood");
  if (!isSound(log, part.bolt, part)) say("it reaches into the rot");
  if (!keepsHeartRule(log, part.bolt, part, group, problem.shop)) {
    say(group.heart === "free" ? "it comes too near the pith" : "it does not box the pith in");
  }
}

/** Asked of the drawn boxes alone, so that a mistake in following the cuts cannot hide that wood is used twice. */
function judgeOverlap(log: SawLog, pieces: readonly SawnPiece[], findings: Findings): void {
  const inOrder = [...pieces.entries()].sort(([, a], [, b]) => a.z0 - b.z0);
  let open: (readonly [number, SawnPiece])[] = [];
  for (const [index, piece] of inOrder) {
    open = open.filter(([, other]) => other.z1 > piece.z0);
    for (const [earlier, other] of open) {
      if (findings.full) return;
      const apart = other.x1 <= piece.x0 || piece.x1 <= other.x0 || other.y1 <= piece.y0 || piece.y1 <= other.y0;
      if (!apart) findings.add(`Log ${quoted(log.name)}: pieces ${earlier} and ${index} overlap.`);
    }
    open.push([index, piece]);
  }
}

function judgeCounts(
  groups: readonly SawGroup[],
  sawn: ReadonlyMap<string, number>,
  buy: ReadonlyMap<string, number>,
  findings: Findings,
): void {
  for (const { name, count } of groups) {
    const made = sawn.get(name) ?? 0;
    const bought = buy.get(name) ?? 0;
    const short = Math.max(0, count - made);
    if (bought !== short) {
      findings.add(
        `Group ${quoted(name)}: ${made} sawn and ${bought} bought of ${count} wanted; ${short} must be bought.`,
      );
    }
  }
}
