/** Whether a mix of sticks holds all pieces: a proof that it does not, a plan that shows it does, or neither. */
import type { LinearSolver } from "../../solver.js";
import { completed, divedPlan, piecesOf } from "./dive.js";
import { worthwhileFillings } from "./fillings.js";
import { improved } from "./improve.js";
import type { Mix, MixCut } from "./mix.js";
import type { Draft, NormalForm, Pattern } from "./normal-form.js";
import { type Demand, type Prices, Relaxation, worthOf } from "./relaxation.js";
import { searchCheaper } from "./search.js";
import { wholePlan } from "./whole-program.js";
import type { Work } from "./work.js";

/** What became of a mix. */
export type Packing =
  | { readonly kind: "packed"; readonly draft: Draft }
  /** With a cut that this mix and others like it break, or without one: this mix alone is proven too small. */
  | { readonly kind: "impossible"; readonly cut: MixCut | null }
  | { readonly kind: "unknown" };

/** What the packer builds on. */
export interface Yard {
  readonly form: NormalForm;
  /** Prices of the whole job, for choosing fillings worth a look. */
  readonly prices: Prices;
  /** Fillings met so far; grows. */
  readonly pool: Pattern[];
  readonly random: () => number;
  readonly solver: LinearSolver | undefined;
}

/** Fillings kept from one mix to the next, and handed to the engine at most. Assumptions, measured. */
const MOST_POOL = 2_000;
const MOST_FILLINGS = 8_000;

/** Dives disturbed at random, tries of improvement after each, and the work of the exact search. Assumptions. */
const DIVES = 4;
const TRIES = 25;
const EXACT = 60_000;

/** Tries to fill a mix with all pieces. What it spends depends on the mix; it stops when work is over. */
export function packMix(yard: Yard, mix: Mix, work: Work): Packing {
  const demand = { counts: yard.form.counts, available: mix.sticks };
  const cut = tooSmall(yard, demand, work);
  if (cut) return { kind: "impossible", cut };
  if (work.over) return { kind: "unknown" };
  return packed(yard, mix, demand, work);
}

/** Fewest pieces left out, in the relaxation: where they are proven to be more than none, the prices make a cut. */
function tooSmall({ form, pool }: Yard, demand: Demand, work: Work): MixCut | null {
  const bars = form.bars.map((bar, i) => ({ ...bar, price: 0, available: demand.available[i] as number }));
  const relaxation = relaxed({ ...form, bars, missing: 1 }, pool, work);
  const { prices, bound } = relaxation.solve(demand);
  remember(pool, relaxation);
  if (bound <= 0) return null;
  relaxation.knapsack.fill(prices.piece, demand.counts);
  return {
    holds: form.bars.map((bar) => relaxation.knapsack.value(bar.capacity)),
    need: prices.piece.reduce((sum, price, item) => sum + price * (demand.counts[item] as number), 0),
  };
}

function packed(yard: Yard, mix: Mix, demand: Demand, work: Work): Packing {
  const { random } = yard;
  const bars = yard.form.bars.map((bar, i) => ({ ...bar, available: mix.sticks[i] as number }));
  const form = { ...yard.form, bars, missing: mix.cost + 1 };
  const relaxation = relaxed(form, yard.pool, work);
  const { prices, bound } = relaxation.solve(demand);
  // Some bundles may not be needed at all, but a bound over the mix's cost means that pieces are left out.
  if (bound > mix.cost) return { kind: "impossible", cut: null };
  let engine = yard.solver !== undefined;
  for (let dive = 0; dive <= DIVES && !work.over; dive++) {
    const draft = divedPlan(relaxation, demand, work, dive > 0 ? random : undefined);
    remember(yard.pool, relaxation);
    relaxation.knapsack.fill(prices.piece, demand.counts);
    const place = { form, demand, prices, knapsack: relaxation.knapsack, bound: mix.cost };
    const better = improved(place, draft, work, random, TRIES);
    if (piecesOf(better.missing) === 0) return { kind: "packed", draft: better };
    if (!engine) continue;
    engine = false;
    const whole = packedByEngine(yard, form, mix, demand, work);
    if (whole) return whole;
  }
  return searched(form, prices, relaxation, mix, demand, work);
}

function searched(
  form: NormalForm,
  prices: Prices,
  { knapsack }: Relaxation,
  mix: Mix,
  demand: Demand,
  work: Work,
): Packing {
  knapsack.fill(prices.piece, demand.counts);
  const share = work.share(EXACT);
  const { draft, done } = searchCheaper(form, prices, knapsack, demand, mix.cost + 1, share);
  work.spend(share.used);
  if (draft && piecesOf(draft.missing) === 0) return { kind: "packed", draft };
  return done ? { kind: "impossible", cut: null } : { kind: "unknown" };
}

/** All fillings that a plan within the mix may use, where they are few enough to be complete; else those met so far. */
function packedByEngine(yard: Yard, form: NormalForm, mix: Mix, demand: Demand, work: Work): Packing | null {
  const { prices, pool, solver } = yard;
  if (!solver) return null;
  const { knapsack } = relaxed(form, [], work);
  knapsack.fill(prices.piece, demand.counts);
  const slack = mix.cost * prices.scale - worthOf(prices, demand);
  const all = worthwhileFillings({ form, prices, knapsack, counts: demand.counts, slack }, MOST_FILLINGS, work);
  const fillings = all ?? pool.filter(({ bar }) => (demand.available[bar] as number) > 0);
  const share = work.share(work.left / 2);
  const { draft, bound } = wholePlan(form, fillings, demand, true, solver, share);
  work.spend(share.used);
  if (draft) {
    const tidy = completed(form, demand, draft.cuts, work);
    if (piecesOf(tidy.missing) === 0) return { kind: "packed", draft: tidy };
  }
  return all && bound === Number.POSITIVE_INFINITY ? { kind: "impossible", cut: null } : null;
}

function relaxed(form: NormalForm, pool: readonly Pattern[], work: Work): Relaxation {
  const relaxation = new Relaxation(form, work);
  for (const pattern of pool) if ((form.bars[pattern.bar]?.available ?? 0) > 0) relaxation.add(pattern);
  return relaxation;
}

function remember(pool: Pattern[], relaxation: Relaxation): void {
  const known = new Set(pool.map(({ bar, take }) => `${bar}:${take.join()}`));
  for (const choice of relaxation.choices) {
    if (choice.bar >= 0 && !known.has(`${choice.bar}:${choice.take.join()}`)) pool.push(choice);
  }
  if (pool.length > MOST_POOL) pool.splice(0, pool.length - MOST_POOL);
}
