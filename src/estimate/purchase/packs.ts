/**
 * Packs, cans and boxes of least cost, for every need at once: a step table from need to purchase.
 *
 * f(0) = 0, f(q) = min over packs k of price_k + f(max(0, q − size_k)); the covering form of the unbounded
 * knapsack (Gilmore and Gomory, 1966, "The theory and computation of knapsack functions"), whose answer becomes
 * periodic. Sizes are whole (screws; fifths of a gallon), prices are whole units of money, the minor one or a finer one.
 * Ties: fewer packs, then less surplus, then more of the pack that comes first by name.
 */

/** What is sold. A pack without a price (null) is never bought. */
export interface Pack {
  readonly name: string;
  /** Whole, 1 or more, in the unit of the need. */
  readonly size: number;
  /** Whole, 0 or more, in minor units of money or finer ones, the same for all packs. */
  readonly priceMinor: number | null;
}

/** Serves each need from `from` up to the next row's `from`, or up to the table's `reach`. */
export interface PackRow {
  readonly from: number;
  readonly costMinor: number;
  /** How many of each pack, in the order the packs were given. */
  readonly counts: readonly number[];
  /** What the packs hold together; surplus is this less the need. */
  readonly holds: number;
}

/** Least cost of any need: by row up to `reach`, by whole packs of `beyond` past it. Cost never falls as need grows. */
export interface PackTable {
  readonly packs: readonly Pack[];
  /** Ascending by `from`; the first is need 0, which buys nothing. */
  readonly rows: readonly PackRow[];
  readonly reach: number;
  /** For q > reach: k = ⌈(q − reach) ÷ size⌉ of this pack, and the row for q − k × size. */
  readonly beyond: { readonly pack: number; readonly size: number; readonly priceMinor: number };
  /** Largest need whose cost is proven least; null when all are. Past it the purchase still covers the need. */
  readonly exactUpTo: number | null;
}

/** A purchase for one need. */
export interface PackPurchase {
  readonly costMinor: number;
  readonly counts: readonly number[];
  readonly holds: number;
  readonly surplus: number;
}

/** Rows tried before the proof of the period is given up; assumption: more could neither be read nor put in a workbook. */
export const MOST_ROWS = 5_000;

/**
 * The step table of these packs, or null when none has a price.
 *
 * The table ends where the period is proven: once f(q) = price_b + f(q − size_b) has held, purchase and all, over a
 * stretch as long as the largest pack, it holds for ever, for each f(q) looks back no further than that.
 * It must come to that: with b of the best price per size, any size_b packs other than b contain a set whose size is a
 * multiple of size_b, and b replaces the set at no more cost.
 *
 * @param upTo - Where `MOST_ROWS` come before the proof (sizes without a common divisor and of nearly one price), the
 *   table ends at this need, or with its last row if that is sooner, and `exactUpTo` says where.
 * @throws RangeError on sizes or prices that are not whole or are out of range: a bug in the caller.
 */
export function packTable(packs: readonly Pack[], upTo: number): PackTable | null {
  packs.forEach(check);
  const priced = packs.flatMap((pack, index) => (pack.priceMinor === null ? [] : [{ ...pack, index }])) as Priced[];
  const best = bestValue(priced);
  if (!best) return null;
  const { rows, provenFrom } = growRows(sortByName(priced), best, packs.length);
  const covered = (rows.at(-1) as GrownRow).holds;
  // One whole best pack at least, so that what is left for the rows is never below zero.
  const reach = provenFrom === null ? Math.min(covered, Math.max(upTo, best.size)) : Math.max(provenFrom, best.size);
  return {
    packs,
    rows: rows.filter((row) => row.from <= reach).map(({ packs: _, ...row }) => row),
    reach,
    beyond: { pack: best.index, size: best.size, priceMinor: best.priceMinor },
    exactUpTo: provenFrom === null ? reach : null,
  };
}

/** The purchase for a whole need of 0 or more. */
export function leastCostPacks(table: PackTable, need: number): PackPurchase {
  if (!Number.isSafeInteger(need) || need < 0) throw new RangeError(`need ${need} is not a whole number of 0 or more`);
  const { beyond, reach } = table;
  const repeats = need > reach ? Math.ceil((need - reach) / beyond.size) : 0;
  const row = rowFor(table.rows, need - repeats * beyond.size);
  const holds = row.holds + repeats * beyond.size;
  return {
    costMinor: row.costMinor + repeats * beyond.priceMinor,
    counts: row.counts.map((count, pack) => (pack === beyond.pack ? count + repeats : count)),
    holds,
    surplus: holds - need,
  };
}

/** Last row that starts at or below the need. */
function rowFor(rows: readonly PackRow[], need: number): PackRow {
  let low = 0;
  let high = rows.length - 1;
  while (low < high) {
    const middle = (low + high + 1) >> 1;
    if ((rows[middle] as PackRow).from <= need) low = middle;
    else high = middle - 1;
  }
  return rows[low] as PackRow;
}

interface Priced {
  readonly name: string;
  readonly size: number;
  readonly priceMinor: number;
  /** Place in the caller's list. */
  readonly index: number;
}

/** A row while it grows; `packs` counts them all. */
interface GrownRow extends PackRow {
  readonly packs: number;
}

/**
 * One row after another. A purchase that is best for a need stays best up to all that it holds: what serves a greater
 * need serves the smaller one too. So each row ends at its `holds`, and the next need is one more.
 */
function growRows(byName: readonly Priced[], best: Priced, width: number) {
  const rows: GrownRow[] = [{ from: 0, costMinor: 0, counts: new Array<number>(width).fill(0), holds: 0, packs: 0 }];
  const window = Math.max(...byName.map((pack) => pack.size));
  const backs = byName.map((pack) => ({ pack, row: 0 }));
  let broken = 0;
  while (rows.length < MOST_ROWS) {
    const need = (rows.at(-1) as GrownRow).holds + 1;
    const options = backs.map((back): Option => {
      const { pack } = back;
      while ((rows[back.row] as GrownRow).holds < need - pack.size) back.row++;
      const onto = rows[back.row] as GrownRow;
      const { costMinor, holds, packs } = onto;
      return { onto, pack, costMinor: costMinor + pack.priceMinor, holds: holds + pack.size, packs: packs + 1 };
    });
    // On a full tie the first by name stays, which makes the counts the greatest in order of names.
    const row = rowOf(
      options.reduce((least, option) => (better(option, least) ? option : least)),
      need,
    );
    rows.push(row);
    if (!repeats(row, options[byName.indexOf(best)] as Option)) broken = row.holds;
    if (row.holds - broken >= window) return { rows, provenFrom: broken };
  }
  return { rows, provenFrom: null };
}

/** One pack more than an earlier row. */
interface Option extends Pick<GrownRow, "costMinor" | "holds" | "packs"> {
  readonly onto: GrownRow;
  readonly pack: Priced;
}

function better(a: Option, b: Option): boolean {
  if (a.costMinor !== b.costMinor) return a.costMinor < b.costMinor;
  if (a.packs !== b.packs) return a.packs < b.packs;
  return a.holds < b.holds;
}

function rowOf({ onto, pack, costMinor, holds, packs }: Option, from: number): GrownRow {
  const counts = onto.counts.slice();
  counts[pack.index] = (counts[pack.index] ?? 0) + 1;
  return { from, costMinor, counts, holds, packs };
}

/** Whether the row is this option, purchase and all. */
function repeats(row: GrownRow, { onto, pack, packs }: Option): boolean {
  return (
    row.packs === packs && row.counts.every((count, i) => count === (onto.counts[i] ?? 0) + (i === pack.index ? 1 : 0))
  );
}

/** Least price per size; of equals the largest, then the first by name. Products of money and size may pass 2^53. */
function bestValue(packs: readonly Priced[]): Priced | undefined {
  return sortByName(packs).reduce<Priced | undefined>((best, pack) => {
    if (!best) return pack;
    const difference = BigInt(pack.priceMinor) * BigInt(best.size) - BigInt(best.priceMinor) * BigInt(pack.size);
    return difference < 0n || (difference === 0n && pack.size > best.size) ? pack : best;
  }, undefined);
}

/** By code unit, not by locale: the same order on every machine. */
function sortByName(packs: readonly Priced[]): Priced[] {
  return packs.toSorted((a, b) => (a.name < b.name ? -1 : a.name > b.name ? 1 : a.index - b.index));
}

function check({ name, size, priceMinor }: Pack): void {
  if (!Number.isSafeInteger(size) || size < 1) throw new RangeError(`pack ${name}: size ${size} is not a whole number`);
  if (priceMinor === null || (Number.isSafeInteger(priceMinor) && priceMinor >= 0)) return;
  throw new RangeError(`pack ${name}: price ${priceMinor} is not a whole number of minor units`);
}
