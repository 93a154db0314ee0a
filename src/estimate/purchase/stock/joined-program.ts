/**
 * Which pieces of an order are joined, and where, with how its sticks are cut: all ways as one program for an engine. Fewest pieces left
 * out, then fewest joined that a stick would take whole, then least cost, then fewest joints; equal pieces may be joined unlike.
 */
import type { Bounds, Column, IntegerProgram, LinearSolver } from "../../solver.js";
import { boundUp } from "../../solver.js";
import { worthwhileFillings } from "./fillings.js";
import type { Had, Parts, WaysToJoin } from "./joints.js";
import { Knapsack } from "./knapsack.js";
import { lengthBound, type NormalForm, normalForm, type Pattern } from "./normal-form.js";
import type { StockProblem } from "./problem.js";
import { type Prices, worthOf } from "./relaxation.js";
import { answered, programOf } from "./whole-program.js";
import { Work } from "./work.js";

/** Equal pieces and how each may be had: whole where a stick takes it, or joined. */
export interface JoinedRow {
  readonly length: number;
  readonly count: number;
  readonly join: WaysToJoin;
}

/** What the search of all ways came to. */
export interface JoinedAnswer {
  /** The rows as they are had; undefined where what is known is not bettered. */
  readonly had: readonly Had[] | undefined;
  /** Pieces left out: no fewer than are proven to be. */
  readonly left: number;
  /** With as many left out and as many whole, nothing costs less. */
  readonly boundMinor: number;
}

/** A plan that leaves nothing out and joins none that a stick takes whole. */
interface Known {
  readonly costMinor: number;
}

/** What the search may use. */
export interface JoinedOptions {
  readonly solver: LinearSolver;
  /** Counted, about a microsecond each. */
  readonly work: number;
  readonly stopped?: () => boolean;
}

/** Fillings and ways that the engine is handed at most. Assumptions, measured. */
const MOST_FILLINGS = 4_000;
const MOST_WAYS = 2_000;

/**
 * @param problem - With the sticks; its pieces are not looked at.
 * @param known - Where given, only what costs less is sought.
 * @returns undefined where there are too many ways, or the work did not do.
 */
export function joinedLeast(
  problem: StockProblem,
  rows: readonly JoinedRow[],
  known: Known | undefined,
  { solver, work: budget, stopped }: JoinedOptions,
): JoinedAnswer | undefined {
  if (rows.some(({ join }) => !join.all)) return undefined;
  const work = new Work(budget, stopped);
  const form = normalForm(problem, mostOf(rows));
  const all = rows.map((row) => choicesOf(form, row));
  if (form.bars.length === 0 || all.reduce((sum, { ways }) => sum + ways.length, 0) > MOST_WAYS) return undefined;
  const fillings = fillingsOf(form, all, known, work);
  return fillings && solvedRows(joinedProgram(form, fillings, all, known), { form, all, known }, solver, work);
}

/** No way to have these pieces costs less: their sheer length in as few parts as can be, at the best price by length. */
export function joinedBoundMinor(problem: StockProblem, rows: readonly JoinedRow[], had: readonly Had[]): number {
  const form = normalForm(problem, mostOf(rows));
  const counts = form.weights.map(() => 0);
  rows.forEach(({ length, join }, i) => {
    const { whole, joined } = had[i] as Had;
    const add = (each: number, times: number): void => {
      const item = form.lengths.indexOf(each);
      if (item >= 0) counts[item] = (counts[item] as number) + times;
    };
    add(length, whole);
    for (const { count } of joined) for (const part of join.ways[0] ?? []) add(part, count);
  });
  return lengthBound({ ...form, counts }) * form.moneyGrid;
}

/** As many of each length as may be cut. */
function mostOf(rows: readonly JoinedRow[]): ReadonlyMap<number, number> {
  const most = new Map<number, number>();
  const add = (length: number, count: number) => most.set(length, (most.get(length) ?? 0) + count);
  for (const { length, count, join } of rows) {
    add(length, count);
    const parts = new Map<number, number>();
    for (const way of join.ways)
      for (const part of new Set(way))
        parts.set(part, Math.max(parts.get(part) ?? 0, way.filter((other) => other === part).length));
    for (const [part, times] of parts) add(part, times * count);
  }
  return most;
}

/** How a row may be had, by places in the normal form. */
interface Choices {
  readonly count: number;
  /** Place of its length; −1 where no stick takes it whole. */
  readonly whole: number;
  readonly ways: readonly {
    readonly way: number;
    readonly parts: number;
    readonly takes: ReadonlyMap<number, number>;
  }[];
}

function choicesOf(form: NormalForm, { length, count, join }: JoinedRow): Choices {
  const places = new Map(form.lengths.map((each, item) => [each, item]));
  const ways = join.ways.flatMap((parts: Parts, way) => {
    const takes = new Map<number, number>();
    for (const part of parts) {
      const item = places.get(part);
      if (item === undefined) return [];
      takes.set(item, (takes.get(item) ?? 0) + 1);
    }
    return [{ way, parts: parts.length, takes }];
  });
  return { count, whole: places.get(length) ?? -1, ways };
}

/** May be had at all: others are too long whatever is done. */
const mayBeHad = ({ whole, ways }: Choices): boolean => whole >= 0 || ways.length > 0;

/** Whether it is whole in every plan that is sought. */
const staysWhole = ({ whole }: Choices, known: Known | undefined): boolean => known !== undefined && whole >= 0;

/** All fillings that a plan cheaper than the one known could use; undefined where there are too many. */
function fillingsOf(
  form: NormalForm,
  all: readonly Choices[],
  known: Known | undefined,
  work: Work,
): readonly Pattern[] | undefined {
  const prices = pricesByLength(form);
  const counts = form.weights.map(() => 0);
  const add = (takes: ReadonlyMap<number, number>, times: number): void => {
    for (const [item, each] of takes) counts[item] = (counts[item] as number) + each * times;
  };
  // The fewest joints take up least.
  for (const { whole, ways, count } of all)
    add(whole >= 0 ? new Map([[whole, 1]]) : (ways[0]?.takes ?? new Map()), count);
  const worth = worthOf(prices, { counts, available: form.bars.map((bar) => bar.available) });
  const slack = known ? (known.costMinor / form.moneyGrid - 1) * prices.scale - worth : Number.MAX_SAFE_INTEGER / 4;
  const knapsack = new Knapsack(form.weights, Math.max(...form.bars.map((bar) => bar.capacity)), work, form.counts);
  knapsack.fill(prices.piece, form.counts);
  return worthwhileFillings({ form, prices, knapsack, counts: form.counts, slack }, MOST_FILLINGS, work) ?? undefined;
}

/** Pieces at the best price by length of what never lacks, and what scarce sticks are worth beside it. */
function pricesByLength({ bars, weights }: NormalForm): Prices {
  const scale = 2 ** 20;
  const plenty = bars.filter((bar) => bar.available === Number.POSITIVE_INFINITY);
  const rate = plenty.length > 0 ? Math.min(...plenty.map((bar) => (bar.price * scale) / bar.capacity)) : 0;
  return {
    scale,
    piece: weights.map((weight) => Math.floor(weight * rate * (1 - 2 ** -40))),
    rent: bars.map((bar) =>
      bar.available === Number.POSITIVE_INFINITY ? 0 : Math.max(0, Math.ceil(bar.capacity * rate) - bar.price * scale),
    ),
  };
}

/** The program, and what each of its last columns stands for. */
interface JoinedProgram extends IntegerProgram {
  /** By row, the columns of those left out, whole, and joined way by way. */
  readonly places: readonly {
    readonly left: number;
    readonly whole: number | undefined;
    readonly ways: readonly number[];
  }[];
}

const NONE: Bounds = { lower: 0, upper: 0 };

/** Fillings and what they cost as in `wholePlan`; then the rows, each piece of which is whole, joined or left out. */
function joinedProgram(
  form: NormalForm,
  fillings: readonly Pattern[],
  all: readonly Choices[],
  known: Known | undefined,
): JoinedProgram {
  const demand = { counts: form.counts, available: form.bars.map((bar) => bar.available) };
  const base = programOf(form, fillings, demand);
  const rows = base.rows.map((row, i) => (i < form.weights.length ? { ...row, lower: 0 } : row));
  const columns: Column[] = [...base.columns];
  const add = (bounds: Bounds, entries: readonly (readonly [number, number])[]): number => {
    const [at, values] = [entries.map(([row]) => row), entries.map(([, value]) => value)];
    return columns.push({ cost: 0, ...bounds, rows: at, values }) - 1;
  };
  const places = all.map((choices) => {
    const { count, whole, ways } = choices;
    const upTo = { lower: 0, upper: count };
    const row = rows.push({ lower: count, upper: count }) - 1;
    const whence = (takes: ReadonlyMap<number, number>) => [
      ...[...takes].map(([item, n]) => [item, -n] as const),
      [row, 1] as const,
    ];
    const joins = staysWhole(choices, known) ? NONE : upTo;
    return {
      left: add(known && mayBeHad(choices) ? NONE : upTo, [[row, 1]]),
      whole: whole >= 0 ? add(upTo, whence(new Map([[whole, 1]]))) : undefined,
      ways: ways.map(({ takes }) => add(joins, whence(takes))),
    };
  });
  return { columns, rows, places };
}

interface Asked {
  readonly form: NormalForm;
  readonly all: readonly Choices[];
  readonly known: Known | undefined;
}

/** One aim after the other, each kept while the next is sought. */
function solvedRows(
  program: JoinedProgram,
  { form, all, known }: Asked,
  solver: LinearSolver,
  work: Work,
): JoinedAnswer | undefined {
  const { places, columns } = program;
  const costOf = (at: (column: number) => number): readonly number[] => columns.map((_, column) => at(column));
  const weigh = (aim: readonly number[], values: readonly number[]) =>
    aim.reduce((sum, each, i) => sum + each * (values[i] as number), 0);
  const left = new Set(places.map((place) => place.left));
  const forWant = new Set(places.flatMap(({ ways }, i) => ((all[i] as Choices).whole >= 0 ? ways : [])));
  const parts = new Map(
    places.flatMap(({ ways }, i) => ways.map((column, k) => [column, all[i]?.ways[k]?.parts ?? 0])),
  );
  const money = columns.map(({ cost }) => cost);
  const kept: { aim: readonly number[]; most: number }[] = [];
  let found: readonly number[] | undefined;
  const seek = (aim: readonly number[]): { readonly bound: number } | undefined => {
    const answer = answered(withLimits(program, aim, kept), ONE, solver, work);
    if (!answer) return undefined;
    if (answer.values) {
      found = answer.values;
      kept.push({ aim, most: weigh(aim, answer.values) });
    }
    return { bound: answer.status === "infeasible" ? Number.POSITIVE_INFINITY : Math.max(0, boundUp(answer.bound, 1)) };
  };
  if (!known) {
    seek(costOf((column) => (left.has(column) ? 1 : 0)));
    if (forWant.size > 0) seek(costOf((column) => (forWant.has(column) ? 1 : 0)));
  }
  const least = seek(money);
  if (!least || (!found && !known)) return undefined;
  const before = known ? known.costMinor / form.moneyGrid : Number.POSITIVE_INFINITY;
  const boundMinor = Math.min(least.bound, before) * form.moneyGrid;
  if (!found || weigh(money, found) >= before) return { had: undefined, left: 0, boundMinor };
  seek(costOf((column) => parts.get(column) ?? 0));
  const values = found;
  const at = (column: number | undefined) => (column === undefined ? 0 : (values[column] as number));
  const had = places.map((place, i) => {
    const choices = all[i] as Choices;
    // What nothing can be done for is asked for all the same, so that it is told to be too long.
    if (!mayBeHad(choices)) return { whole: choices.count, joined: [] };
    const joined = place.ways.map((column, k) => ({ way: choices.ways[k]?.way as number, count: at(column) }));
    return { whole: at(place.whole), joined: joined.filter(({ count }) => count > 0) };
  });
  return { had, left: places.reduce((sum, place) => sum + at(place.left), 0), boundMinor };
}

/** Just under one piece, joint or unit of money. */
const ONE = 0.999;

/** With another aim, and none of those before it worse than it was found to be. */
function withLimits(
  { columns, rows }: IntegerProgram,
  aim: readonly number[],
  kept: readonly { readonly aim: readonly number[]; readonly most: number }[],
): IntegerProgram {
  return {
    columns: columns.map((column, i) => {
      const limits = kept.flatMap((one, k) =>
        one.aim[i] === 0 ? [] : [{ row: rows.length + k, value: one.aim[i] as number }],
      );
      return {
        ...column,
        cost: aim[i] as number,
        rows: [...column.rows, ...limits.map(({ row }) => row)],
        values: [...column.values, ...limits.map(({ value }) => value)],
      };
    }),
    rows: [...rows, ...kept.map(({ most }) => ({ lower: Number.NEGATIVE_INFINITY, upper: most }))],
  };
}
