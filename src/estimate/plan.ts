/**
 * Planning: the sawing and stock plans of every route, made anew or taken from the request and judged. Nothing is laid
 * on the answer's sheet here; plans come to it from outside.
 */

import type { Basis } from "./basis.js";
import type { RoutePlan } from "./compare/route.js";
import { FaultError, pointer } from "./faults.js";
import type { GroupBasis, MillableGroup } from "./group-basis.js";
import { dearPrice, isPinned, pinnedPrice, roughPrice, UNPRICED } from "./piece-price.js";
import { wholes } from "./pieces/laying.js";
import { type BoughtPieces, type StockQuestion, stepsOnTape, stockQuestions } from "./purchase/lumber.js";
import { gapOf } from "./purchase/money.js";
import type { StockCut, StockOutcome, StockProblem } from "./purchase/stock/problem.js";
import { judgeStockPlan } from "./purchase/stock-judge.js";
import { decimal, ZERO } from "./quantity/decimal.js";
import { quantity } from "./quantity/quantity.js";
import { marked } from "./quantity/text.js";
import { wholeNumber } from "./quantity/whole.js";
import type { HeldPlans } from "./request/held-plans.js";
import { type MeasuredPlan, measurePlan } from "./salvage/cut-cells.js";
import type { Learnt } from "./salvage/optimiser/learnt.js";
import { judgeSawingPlan } from "./salvage/sawing-judge.js";
import type { SawingPlan, SawingProblem } from "./salvage/sawing-problem.js";
import { type MilledGroup, sawingProblem } from "./salvage/sawing-question.js";
import { asideIn } from "./sheet/aside.js";
import type { PlanProof } from "./sheet/expression.js";

/** The optimisers, plugged in from outside so that any may be used. */
export interface Planners {
  /** @param learnt - From another plan for the same logs. */
  sawing(problem: SawingProblem, learnt?: Learnt): SawnOutcome;
  stock(problem: StockProblem): StockOutcome;
  /** For sawing plans of which there are several, the best to be chosen; `sawing` where there is none. */
  readonly quick?: Planners["sawing"];
  /** Quicker ones, for the many mixes that are only tried; the others where there are none. */
  readonly sketch?: Planners;
  /** For the one sawing plan that saws or buys piece by piece; `sawing` where there is none. */
  readonly joint?: Planners["sawing"];
  /** For the same at another value of an hour, from what was learnt of the logs; `joint` where there is none. */
  readonly onward?: Planners["sawing"];
}

/** A sawing plan and what is known of it. */
export interface SawnOutcome {
  readonly plan: SawingPlan;
  readonly proof: PlanProof;
  /** No plan that `proof.covers` costs less, cash and hours at the problem's wage; absent where nothing is proven. */
  readonly bound?: number;
  /** For another plan for the same logs. */
  readonly learnt?: Learnt;
}

/** Whether a group is milled or bought as a whole, as far as the logs go: what is sold for it has another measure. */
export function keptWhole({ request }: Basis, { substitution }: GroupBasis): boolean {
  return request.options?.mixedSizes !== true && "offer" in substitution && !substitution.alike;
}

/** The planners, told what was learnt of the logs. */
export function knowing(planners: Planners, learnt: Learnt | undefined): Planners {
  return { ...planners, sawing: (problem) => planners.sawing(problem, learnt) };
}

/** The same with the quick planner of logs. */
export function quickly(planners: Planners, learnt: Learnt | undefined): Planners {
  const { quick = planners.sawing } = planners;
  return knowing({ ...planners, sawing: quick }, learnt);
}

const HELD: PlanProof = { covers: "held from an earlier answer" };

/** Names of the groups that may be milled. */
export function millable(basis: Basis): string[] {
  return basis.groups.filter((one) => one.millable).map(({ group }) => group.name);
}

/** Keys of routes that mill whatever they can, at any price of what is bought. */
export const ALL_MILLED: ReadonlySet<string> = new Set(["milled", "hired"]);

/** Plans one route. @throws FaultError when a held plan does not fit. */
export function planRoute(
  basis: Basis,
  key: string,
  label: string,
  milled: ReadonlySet<string>,
  planners: Planners,
  held: HeldPlans | undefined,
): RoutePlan {
  const chosen = basis.groups.filter(({ group, millable }) => millable && milled.has(group.name));
  const sawing = chosen.length > 0 ? planSawing(basis, key, chosen, planners, sawingOf(held, key)) : undefined;
  const wanted = basis.groups
    .map((one) => ({ one, count: piecesToBuy(basis, one, milled, sawing?.plan) }))
    .filter(({ count }) => count > 0);
  const bought: BoughtPieces[] = wanted.flatMap(({ one: { substitution }, count }) =>
    "offer" in substitution ? [{ substitution, count }] : [],
  );
  const unsold = wanted.flatMap(({ one, count }) =>
    "add" in one.substitution ? [{ group: one, count, add: one.substitution.add }] : [],
  );
  const stock = stockQuestions(basis.cutting, bought).map((question) =>
    planStockOf(question, key, planners, held?.stock?.[key]?.[question.offer.name]),
  );
  const all = new Set(
    wanted.flatMap(({ one, count }) => (basis.sheet.decide(one.group.count).lte(count) ? [one.group.name] : [])),
  );
  const sawn = new Set([...milled].filter((name) => !all.has(name)));
  const hired = basis.sawyer !== undefined && sawing !== undefined;
  return { key, label, hired, milled, sawn, sawing, bought, stock, unsold };
}

type HeldSawing = NonNullable<NonNullable<HeldPlans["sawing"]>["milled"]>;

/** A sawing plan with its question, its measures and what is known of it. */
export type PlannedLogs = MeasuredPlan & { readonly proof: PlanProof };

/**
 * Plans the logs for every group that may be milled; where a piece has a price, it is left to be bought if that is cheaper.
 * @throws FaultError when a held plan does not fit.
 */
export function planLogs(basis: Basis, key: string, planners: Planners, held: HeldSawing | undefined): PlannedLogs {
  const chosen = basis.groups.filter((one) => one.millable);
  return planSawing(basis, key, chosen, planners, held);
}

function sawingOf(held: HeldPlans | undefined, key: string): HeldSawing | undefined {
  const plans: Readonly<Record<string, HeldSawing | undefined>> = held?.sawing ?? {};
  return plans[key];
}

function planSawing(
  basis: Basis,
  key: string,
  chosen: readonly GroupBasis[],
  planners: Planners,
  held: SawingPlan | undefined,
): PlannedLogs {
  // Where a route mills whatever it can, what the logs lack is to be what costs least. What is sold in another measure is
  // bought where the logs lack it, never because that is cheaper; what the user pins to the mill comes before all else.
  const priced = (one: GroupBasis): Priced => {
    if (held !== undefined) return "whole";
    if (isPinned(one)) return "pinned";
    if (ALL_MILLED.has(key)) return "dear";
    return keptWhole(basis, one) ? "whole" : "as sold";
  };
  const groups = chosen.map((one) => milledGroup(basis, one, one.millable as MillableGroup, priced(one)));
  const problem = sawingProblem(basis.sawing, groups);
  if (held) {
    const { gridMm } = basis.sawing;
    const length = (steps: number) => marked(quantity(gridMm.times(steps), "mm"), basis.request.system);
    const wrong = judgeSawingPlan(problem, held, length);
    if (wrong.length > 0) throw misfit(pointer("/heldPlans/sawing", key), wrong);
    return { ...measurePlan(problem, held), proof: HELD };
  }
  const { plan, proof } = planners.sawing(problem);
  return { ...measurePlan(problem, plan), proof };
}

/**
 * At which price a piece of a group may be bought: as it is sold; at one that nobody pays, all groups alike; the same, the dearest
 * first; or before all others.
 */
type Priced = "as sold" | "whole" | "dear" | "pinned";

function milledGroup(
  basis: Basis,
  one: GroupBasis,
  { rough, spares, dressing }: MillableGroup,
  priced: Priced,
): MilledGroup {
  const sawn = basis.request.options?.fallDown === "buy" ? undefined : spares;
  const bought = roughPrice(basis, one);
  const cash = { "as sold": bought, whole: UNPRICED, dear: dearPrice(bought), pinned: pinnedPrice(bought) }[priced];
  // A bought piece is dressed already: that saves the hours that a sawn one takes.
  const saved = priced === "as sold" ? asideIn(dressing.each, "person-h") : ZERO;
  const group = { group: one.group, rough, spares: sawn, buy: { cash, hours: saved.negated() } };
  return priced === "pinned" ? { ...group, pinned: true } : group;
}

/** Rough pieces of a group that are wanted from the logs: with spares, where rejects are not bought. */
export function roughWanted({ sheet, request }: Basis, { group, millable }: GroupBasis): number {
  const spares = millable && request.options?.fallDown !== "buy" ? wholes(sheet, millable.spares) : 0;
  return wholes(sheet, group.count) + spares;
}

/**
 * Pieces of a group that a route buys. Of a milled group: the share of the wanted pieces that the plan is short of, or,
 * where no spares are sawn, the rejects expected.
 */
function piecesToBuy(basis: Basis, one: GroupBasis, milled: ReadonlySet<string>, plan: SawingPlan | undefined): number {
  const count = wholes(basis.sheet, one.group.count);
  const { millable, group } = one;
  if (!millable || !plan || !milled.has(group.name)) return count;
  const spares = wholes(basis.sheet, millable.spares);
  const buysRejects = basis.request.options?.fallDown === "buy";
  const short = plan.buy[group.name] ?? 0;
  const missing = wholeNumber(
    decimal(count * short)
      .dividedBy(roughWanted(basis, one))
      .ceil(),
  );
  return Math.min(count, missing + (buysRejects ? Math.min(spares, count - missing) : 0));
}

/** Plans the sticks of one offer. @throws FaultError when a held plan does not fit. */
export function planStockOf(
  question: StockQuestion,
  key: string,
  planners: Planners,
  held: readonly StockCut[] | undefined,
): RoutePlan["stock"][number] {
  const { problem, offer } = question;
  if (held) {
    const wrong = judgeStockPlan(problem, held, stepsOnTape(question.system), ({ name }) => {
      const { substitution, count } = question.bought.get(name) as BoughtPieces;
      return { each: substitution.abreast, wanted: count };
    });
    if (wrong.length > 0) throw misfit(pointer("/heldPlans/stock", key, offer.name), wrong);
    return { question, plan: held, proof: HELD };
  }
  const outcome = planners.stock(problem);
  const proof: PlanProof = {
    gap: gapOf(outcome),
    covers: outcome.proven
      ? "all ways to cut these pieces from these lengths; proven least"
      : "all ways to cut these pieces from these lengths",
  };
  return { question, plan: outcome.plan, proof };
}

function misfit(at: string, wrong: readonly string[]): FaultError {
  return new FaultError(
    wrong.slice(0, 5).map((sentence) => ({
      code: "held-plan-misfit",
      at,
      wrong: sentence.slice(0, 280),
      cure: "Leave the held plan out, or send the request that it was made for.",
    })),
  );
}

/** The plans of routes in the form in which a request may hand them back. */
export function heldForm(routes: readonly RoutePlan[], { milled, hired }: RoutePlan): HeldPlans {
  const sawing = routes.flatMap(({ key, sawing }) => (sawing ? [[key, sawing.plan] as const] : []));
  const stock = routes.map(
    ({ key, stock }) =>
      [key, Object.fromEntries(stock.map(({ question, plan }) => [question.offer.name, plan]))] as const,
  );
  return {
    milled: [...milled],
    ...(hired ? { hired } : {}),
    sawing: Object.fromEntries(sawing),
    stock: Object.fromEntries(stock),
  } as HeldPlans;
}
