/**
 * How fast this machine is now, against the one that the targets were set on: times of one run are read by it.
 *
 * Decimal operations a second that were measured on that machine, best of several runs, precision 34, operands of
 * 2 to 8 digits, decimal.js 10.6.0. A machine that is twice as slow at them is taken to be twice as slow at all work.
 */
import { type Decimal, decimal } from "../../src/estimate/quantity/decimal.js";

/** Million operations a second where the targets were set. */
const THERE = { add: 6.7, multiply: 5.2, divide: 0.73 } as const;

const OPERATIONS: Readonly<Record<keyof typeof THERE, (a: Decimal, b: Decimal) => Decimal>> = {
  add: (a, b) => a.plus(b),
  multiply: (a, b) => a.times(b),
  divide: (a, b) => a.dividedBy(b),
};

const OPERANDS = Array.from({ length: 64 }, (_, i) => decimal((i + 1) * 97.31).plus(decimal(i % 7)));
const ROUNDS = 400;
const REPEATS = 9;

/** Processor milliseconds of so many operations, the best of some repeats. */
function best(operation: (a: Decimal, b: Decimal) => Decimal): number {
  let least = Number.POSITIVE_INFINITY;
  for (let repeat = 0; repeat < REPEATS; repeat++) {
    const begin = process.cpuUsage();
    for (let round = 0; round < ROUNDS; round++) {
      const other = OPERANDS[(round * 7) % OPERANDS.length] as Decimal;
      for (const operand of OPERANDS) operation(operand, other);
    }
    const { user, system } = process.cpuUsage(begin);
    least = Math.min(least, (user + system) / 1000);
  }
  return least;
}

/** How many times slower than the machine of the targets: the geometric mean over addition, product and quotient. */
export function timesSlower(): number {
  const names = Object.keys(OPERATIONS) as (keyof typeof THERE)[];
  const ratios = names.map((name) => THERE[name] / ((ROUNDS * OPERANDS.length) / best(OPERATIONS[name]) / 1000));
  return ratios.reduce((product, ratio) => product * ratio, 1) ** (1 / ratios.length);
}
