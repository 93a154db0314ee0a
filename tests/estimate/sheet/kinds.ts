/** One sheet with a cell of every kind of node, each with its five readings worked by hand. */
import { decimal } from "../../../src/estimate/quantity/decimal.js";
import { exactly } from "../../../src/estimate/quantity/text.js";
import { unit } from "../../../src/estimate/quantity/unit.js";
import {
  arctangent,
  type Cell,
  greatest,
  least,
  minus,
  number,
  type Operand,
  over,
  plus,
  root,
  roundMoney,
  roundUp,
  type StepTable,
  square,
  steps,
  sum,
  tangent,
  times,
  when,
} from "../../../src/estimate/sheet/expression.js";
import type { Sheet } from "../../../src/estimate/sheet/sheet.js";

/** Cans of 1 and 5 gallons at $10 and $40: five single cans never pay. */
export const CANS: StepTable = {
  name: "cans",
  stepUnit: unit("gal"),
  columns: [
    { name: "cost", unit: unit("USD") },
    { name: "singles", unit: unit("") },
  ],
  rows: [
    { from: 1, columns: [decimal(10), decimal(1)] },
    { from: 2, columns: [decimal(20), decimal(2)] },
    { from: 3, columns: [decimal(30), decimal(3)] },
    { from: 4, columns: [decimal(40), decimal(0)] },
  ],
  beyond: { upTo: 5, size: 5, columns: [decimal(40), decimal(0)] },
};

/** What the five readings of a formula are. */
export interface Readings {
  readonly formula: Operand;
  readonly display?: string;
  /** Exact value in the display unit. */
  readonly value: string;
  readonly unit: string;
  readonly working: string;
  readonly workbook: string;
}

/** The cells that the formulas name. */
export function inputs(
  sheet: Sheet,
): Record<"rise" | "run" | "eave" | "area" | "price" | "count" | "paint" | "angle" | "fee", Cell> {
  return {
    rise: sheet.input("rise", exactly("9 in")),
    run: sheet.input("run", exactly("1 ft")),
    eave: sheet.input("eave", exactly("24 ft")),
    area: sheet.input("area", exactly("100 ft2")),
    price: sheet.catalog("price", exactly("$4.85/ft")),
    count: sheet.input("count", exactly("3")),
    paint: sheet.input("paint", exactly("8.2 gal")),
    angle: sheet.input("angle", exactly("45 deg")),
    fee: sheet.input("fee", exactly("$10")),
  };
}

/** Every kind, by its name in the tree. Values by hand; 3-4-5 triangles and whole quotients where that can be. */
export function everyKind(sheet: Sheet): Record<string, Readings> {
  const { rise, run, eave, area, price, count, paint, angle, fee } = inputs(sheet);
  return {
    number: { formula: number("8 in"), value: "8", unit: "in", display: "in", working: "8 in", workbook: "8" },
    cell: {
      formula: rise,
      value: "0.75",
      unit: "ft",
      display: "ft",
      working: "rise ÷ 12 in per ft = 9 in ÷ 12 in per ft = 0.75 ft",
      workbook: "(rise/12)",
    },
    plus: {
      formula: plus(run, rise),
      value: "1.75",
      unit: "ft",
      display: "ft",
      working: "run + rise ÷ 12 in per ft = 1 ft + 9 in ÷ 12 in per ft = 1.75 ft",
      workbook: "(run+(rise/12))",
    },
    minus: {
      formula: minus(run, plus(rise, number("1 in"))),
      value: "2",
      unit: "in",
      display: "in",
      working: "run × 12 in per ft − (rise + 1 in) = 1 ft × 12 in per ft − (9 in + 1 in) = 2 in",
      workbook: "((run*12)-(rise+1))",
    },
    times: {
      formula: times(price, eave),
      value: "116.4",
      unit: "USD",
      display: "USD",
      working: "price × eave = 4.85 USD/ft × 24 ft = 116.40 USD",
      workbook: "(price*eave)",
    },
    over: {
      formula: over(area, times(eave, number("2"))),
      value: "25",
      unit: "in",
      display: "in",
      working: "area ÷ (eave × 2) × 12 in per ft = 100 ft² ÷ (24 ft × 2) × 12 in per ft = 25 in",
      workbook: "((area/(eave*2))*12)",
    },
    sum: {
      formula: sum([run, eave, rise]),
      value: "25.75",
      unit: "ft",
      display: "ft",
      working: "run + eave + rise ÷ 12 in per ft = 1 ft + 24 ft + 9 in ÷ 12 in per ft = 25.75 ft",
      workbook: "SUM(run,eave,(rise/12))",
    },
    least: {
      formula: least(run, rise),
      value: "9",
      unit: "in",
      display: "in",
      working: "least(run × 12 in per ft; rise) = least(1 ft × 12 in per ft; 9 in) = 9 in",
      workbook: "MIN((run*12),rise)",
    },
    greatest: {
      formula: greatest(run, rise),
      value: "12",
      unit: "in",
      display: "in",
      working: "greatest(run × 12 in per ft; rise) = greatest(1 ft × 12 in per ft; 9 in) = 12 in",
      workbook: "MAX((run*12),rise)",
    },
    square: {
      formula: square(rise),
      value: "81",
      unit: "in2",
      display: "in2",
      working: "rise² = (9 in)² = 81 in²",
      workbook: "(rise^2)",
    },
    root: {
      formula: root(plus(square(rise), square(run))),
      value: "15",
      unit: "in",
      display: "in",
      working: "√(rise² + run² × 144 in2 per ft2) = √((9 in)² + (1 ft)² × 144 in2 per ft2) = 15 in",
      workbook: "SQRT(((rise^2)+((run^2)*144)))",
    },
    roundUp: {
      formula: roundUp(rise, "ft"),
      value: "1",
      unit: "ft",
      display: "ft",
      working: "roundUp(rise ÷ 12 in per ft) = roundUp(9 in ÷ 12 in per ft) = 1 ft",
      workbook: "CEILING(ROUND((rise/12),9),1)",
    },
    roundMoney: {
      formula: roundMoney(over(fee, count), 2),
      value: "3.33",
      unit: "USD",
      display: "USD",
      working: "toCent(fee ÷ count) = toCent(10.00 USD ÷ 3) = 3.33 USD",
      workbook: "ROUND((fee/count),2)",
    },
    arctangent: {
      formula: arctangent(over(run, run)),
      value: "45",
      unit: "deg",
      display: "deg",
      working: "arctan(run ÷ run) = arctan(1 ft ÷ 1 ft) = 45 deg",
      workbook: "DEGREES(ATAN((run/run)))",
    },
    tangent: {
      formula: tangent(angle),
      value: "1",
      unit: "",
      display: "",
      working: "tan(angle) = tan(45 deg) = 1",
      workbook: "TAN(RADIANS(angle))",
    },
    when: {
      formula: when(rise, "atLeast", run, rise, number("1 in")),
      value: "1",
      unit: "in",
      display: "in",
      working: "if(rise ≥ run × 12 in per ft; rise; 1 in) = if(9 in ≥ 1 ft × 12 in per ft; 9 in; 1 in) = 1 in",
      workbook: "IF(rise>=(run*12),rise,1)",
    },
    // 8.2 gal are 9: one five, and four more, for which a five costs no more than four singles.
    steps: {
      formula: steps(paint, CANS, 0),
      value: "80",
      unit: "USD",
      display: "USD",
      working: "cans[cost](paint) = cans[cost](8.2 gal) = 80.00 USD",
      workbook:
        "(LOOKUP(CEILING(ROUND(paint,9),1)-MAX(0,CEILING((CEILING(ROUND(paint,9),1)-5)/5,1))*5,{-1E9,1,2,3,4},{0,10,20,30,40})+MAX(0,CEILING((CEILING(ROUND(paint,9),1)-5)/5,1))*40)",
    },
  };
}
