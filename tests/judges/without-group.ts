/** A sawing plan without one group: its pieces are gone, and every cut that frees no other piece. Shares nothing with the reckoning of shares. */
import type { LogPlan, SawingPlan } from "../../src/estimate/salvage/sawing-problem.js";

export function withoutGroup(plan: SawingPlan, group: string, wanted: number): SawingPlan {
  const logs = plan.logs.map((log) => logWithout(log, group)).filter(({ pieces }) => pieces.length > 0);
  return { ...plan, logs, buy: { ...plan.buy, [group]: wanted } };
}

function logWithout(log: LogPlan, group: string): LogPlan {
  const pieces = log.pieces.filter((piece) => piece.group !== group);
  const alive = new Set(pieces.map(({ part }) => part));
  for (let i = log.cuts.length - 1; i >= 0; i--) {
    const { part } = log.cuts[i] as LogPlan["cuts"][number];
    if (alive.has(2 * i + 1) || alive.has(2 * i + 2)) alive.add(part);
  }
  // A cut is needed where a piece still comes out of either of its parts. Parts are numbered anew by the cuts that stay.
  const renamed = new Map<number, number>([[0, 0]]);
  const cuts: LogPlan["cuts"][number][] = [];
  log.cuts.forEach((cut, i) => {
    if (!alive.has(2 * i + 1) && !alive.has(2 * i + 2)) return;
    renamed.set(2 * i + 1, 2 * cuts.length + 1);
    renamed.set(2 * i + 2, 2 * cuts.length + 2);
    cuts.push({ ...cut, part: renamed.get(cut.part) as number });
  });
  return { ...log, cuts, pieces: pieces.map((piece) => ({ ...piece, part: renamed.get(piece.part) as number })) };
}
