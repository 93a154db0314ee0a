/**
 * Speed of the sheet, on one of some six hundred cells such as a gable shelter's: lines of pieces with rough sizes,
 * saw cuts, weights, fasteners and prices, packs by step table, and totals.
 */
import { Decimal, decimal } from "../../src/estimate/quantity/decimal.js";
import { exactly } from "../../src/estimate/quantity/text.js";
import { unit } from "../../src/estimate/quantity/unit.js";
import { evaluateAgain } from "../../src/estimate/sheet/evaluate.js";
import {
  type Cell,
  greatest,
  minus,
  number,
  over,
  plus,
  root,
  roundMoney,
  roundUp,
  type StepTable,
  square,
  steps,
  sum,
  times,
  when,
} from "../../src/estimate/sheet/expression.js";
import { evaluateDraws } from "../../src/estimate/sheet/float64.js";
import { Sheet } from "../../src/estimate/sheet/sheet.js";
import { mulberry32 } from "./mulberry32.js";
import type { Measured } from "./run.js";

/** Boxes of 50, 250 and 1000 screws; rows as a planner would make them. */
const BOXES: StepTable = {
  name: "boxes",
  stepUnit: unit(""),
  columns: [{ name: "cost", unit: unit("USD") }],
  rows: Array.from({ length: 20 }, (_, i) => ({
    from: 1 + i * 50,
    columns: [decimal(Math.min(9.5 * ((i % 5) + 1), 38) + 38 * Math.floor(i / 5))],
  })),
  beyond: { upTo: 1000, size: 1000, columns: [decimal("139")] },
};

/** Low, likely and high of what is not known for sure; the names that a draw varies. */
const ASSUMPTIONS: readonly (readonly [string, string, string, string])[] = [
  ["kerf", "0.08 in", "0.11 in", "0.25 in"],
  ["allowance.thickness", "0.125 in", "0.25 in", "0.375 in"],
  ["allowance.width", "0.125 in", "0.25 in", "0.375 in"],
  ["trim", "2 in", "3 in", "6 in"],
  ["shrinkage", "4 %", "6 %", "8 %"],
  ["falldown", "5 %", "12 %", "25 %"],
  ["sawing.rate", "30 ft2/h", "60 ft2/h", "120 ft2/h"],
  ["crew", "1 people", "2 people", "2 people"],
  ["density", "26 lb/ft3", "36 lb/ft3", "48 lb/ft3"],
  ["pace", "80 %", "100 %", "160 %"],
  ["coverage", "120 ft2/gal", "150 ft2/gal", "200 ft2/gal"],
  ["screws.spacing", "10 in", "12 in", "14 in"],
];

type Known = (name: string) => Cell;

/** One group of equal pieces: twenty-three cells. */
function layGroup(sheet: Sheet, known: Known, line: string, index: number) {
  const lay = (name: string, ...more: Parameters<Sheet["lay"]> extends [string, ...infer R] ? R : never) =>
    sheet.lay(`${line}.${name}`, ...more);
  const count = sheet.input(`${line}.count`, exactly(String(4 + (index % 9))));
  const run = sheet.input(`${line}.run`, exactly(`${6 + (index % 7)} ft`));
  const rise = sheet.input(`${line}.rise`, exactly(`${30 + index} in`));
  const thickness = sheet.input(`${line}.thickness`, exactly("1 1/2 in"));
  const width = sheet.input(`${line}.width`, exactly(`${4 + (index % 5)} in`));
  const price = sheet.catalog(`${line}.price`, exactly(`$${1 + index / 8}/ft`));
  const length = lay("length", root(plus(square(run), square(rise))), { display: "ft" });
  const keep = known("keep");
  const roughThickness = lay("roughThickness", over(plus(thickness, known("allowance.thickness")), keep), {
    display: "in",
  });
  const roughWidth = lay("roughWidth", over(plus(width, known("allowance.width")), keep), { display: "in" });
  const roughLength = lay("roughLength", plus(length, known("trim")), { display: "ft" });
  const spares = lay("spares", roundUp(times(count, known("falldown"))));
  const sawn = lay("sawn", plus(count, spares));
  const volume = lay("volume", times(roughThickness, roughWidth, roughLength, sawn), { display: "bf" });
  const cutArea = lay("cutArea", times(number("2"), plus(roughThickness, roughWidth), roughLength, sawn), {
    display: "ft2",
  });
  const sawHours = lay("sawHours", times(over(cutArea, known("sawing.rate")), known("pace")), { display: "h" });
  const work = lay("work", times(sawHours, known("crew")), { display: "person-h" });
  const dust = lay("dust", times(cutArea, known("kerf")), { display: "ft3" });
  const weight = lay("weight", times(over(volume, sawn), known("density")), { display: "lb" });
  const heavy = lay("carriers", when(weight, "above", number("80 lb"), number("2"), number("1")));
  const faces = lay("faces", times(number("2"), plus(thickness, width), length, count), { display: "ft2" });
  const screws = lay("screws", times(roundUp(over(length, known("screws.spacing"))), count, number("2")));
  const amount = lay("amount", roundMoney(times(price, roundUp(times(length, count), "ft")), 2));
  const limit = lay("longest", greatest(length, roughLength), { display: "ft" });
  return { volume, work, dust, heavy, faces, screws, amount, limit };
}

function baseSheet(groups: number): Sheet {
  const sheet = new Sheet();
  for (const [name, low, likely, high] of ASSUMPTIONS) {
    sheet.assumption(name, { low: exactly(low), likely: exactly(likely), high: exactly(high) });
  }
  sheet.lay("keep", minus(number("1"), sheet.find("shrinkage") as Cell));
  const wage = sheet.input("labor.value", exactly("$18/person-h"));
  const lines = Array.from({ length: groups }, (_, i) =>
    layGroup(sheet, (name) => sheet.find(name) as Cell, `piece.${i}`, i),
  );
  const total = (name: string, cells: readonly Cell[], display: string) =>
    sheet.lay(`total.${name}`, sum(cells), { display });
  const column = (pick: (line: (typeof lines)[number]) => Cell) => lines.map(pick);
  total(
    "volume",
    column((l) => l.volume),
    "bf",
  );
  total(
    "dust",
    column((l) => l.dust),
    "ft3",
  );
  const work = total(
    "work",
    column((l) => l.work),
    "person-h",
  );
  const amount = total(
    "amount",
    column((l) => l.amount),
    "USD",
  );
  const screws = total(
    "screws",
    column((l) => l.screws),
    "",
  );
  const boxes = sheet.lay("boxes.cost", steps(screws, BOXES, 0));
  const paint = sheet.lay(
    "paint",
    over(
      total(
        "faces",
        column((l) => l.faces),
        "ft2",
      ),
      sheet.find("coverage") as Cell,
    ),
    { display: "gal" },
  );
  const cans = sheet.lay("cans.cost", roundMoney(times(roundUp(paint, "gal"), number("$41.50/gal")), 2));
  sheet.lay("total.longest", greatest(...column((l) => l.limit)), { display: "ft" });
  sheet.lay("total.carriers", greatest(...column((l) => l.heavy)));
  sheet.lay("total.cash", sum([amount, boxes, cans]));
  sheet.lay("total.value", roundMoney(times(work, wage), 2));
  return sheet;
}

/** The bench's sheet: 12 assumptions, 25 groups of 23 cells, and 15 more: 602 cells in all. */
export const benchSheet = (): Sheet => baseSheet(25);

/** Triangular draws of every assumption, seeded. */
function sampled(cells: readonly Cell[], draws: number): Map<string, Float64Array> {
  const random = mulberry32(20_240_501);
  return new Map(
    cells.flatMap((cell) => {
      if (!cell.range) return [];
      const [low, high] = [cell.range.low.toNumber(), cell.range.high.toNumber()];
      return [
        [
          cell.name,
          Float64Array.from({ length: draws }, () => low + ((random() + random()) / 2) * (high - low)),
        ] as const,
      ];
    }),
  );
}

/**
 * Processor time of one run in milliseconds: the median of some batches, after one to warm up. Not the clock's time,
 * which on a machine that others use says more about them.
 */
function median(batches: number, runs: number, work: () => void): number {
  const batch = (): number => {
    const begin = process.cpuUsage();
    for (let i = 0; i < runs; i++) work();
    const { user, system } = process.cpuUsage(begin);
    return (user + system) / 1000 / runs;
  };
  for (let i = 0; i < 3; i++) batch();
  const times = Array.from({ length: batches }, batch);
  return times.sort((a, b) => a - b)[Math.floor(batches / 2)] as number;
}

/** Processor time on one core, warm. */
export async function bench(): Promise<Measured[]> {
  const { cells } = benchSheet();
  // Every leaf is put in anew, so that every formula is worked out.
  const leaves = cells.filter((cell) => !cell.expression);
  const changes = new Map(leaves.map((cell) => [cell.name, new Decimal(cell.value)]));
  const evaluated = median(15, 80, () => evaluateAgain(cells, changes));
  const samples = sampled(cells, 10_000);
  const drawn = median(7, 2, () => evaluateDraws(cells, samples));
  const laid = median(7, 10, () => benchSheet());
  return [
    { name: `${cells.length} cells in decimals`, ...figure(evaluated, 1) },
    { name: `10,000 draws of ${cells.length} cells`, ...figure(drawn, 200) },
    { name: `laying ${cells.length} cells anew`, ...figure(laid, 20) },
  ];
}

const figure = (value: number, most: number) => ({
  value: Number(value.toPrecision(3)),
  unit: "ms",
  target: `≤ ${most} ms`,
  holds: value <= most,
});
