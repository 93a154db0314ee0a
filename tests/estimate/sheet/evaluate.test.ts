import { describe, expect, it } from "vitest";
import { FaultError } from "../../../src/estimate/faults.js";
import { decimal } from "../../../src/estimate/quantity/decimal.js";
import { exactly } from "../../../src/estimate/quantity/text.js";
import { evaluateAgain, stepRow, stepValue } from "../../../src/estimate/sheet/evaluate.js";
import {
  type Comparison,
  minus,
  number,
  type Operand,
  over,
  plus,
  root,
  roundMoney,
  roundUp,
  square,
  times,
  when,
} from "../../../src/estimate/sheet/expression.js";
import { evaluateFloat } from "../../../src/estimate/sheet/float64.js";
import { Sheet } from "../../../src/estimate/sheet/sheet.js";
import { CANS } from "./kinds.js";

function value(formula: Operand, unit = ""): string {
  const sheet = new Sheet();
  return sheet.in(sheet.lay("answer", formula), unit).toString();
}
const float = (formula: Operand): number => evaluateFloat(formula as never, () => Number.NaN) as number;
/** x ÷ y × y: what is left of x after a division. */
const thereAndBack = (x: string, y: string): Operand => times(over(number(x), number(y)), number(y));

describe("rounding up", () => {
  it.each([
    ["a 24 ft eave over 2 ft panels is 12", roundUp(over(number("24 ft"), number("2 ft"))), "12"],
    ["a 24.001 ft eave over 2 ft panels is 13", roundUp(over(number("24.001 ft"), number("2 ft"))), "13"],
    ["(20 ÷ 3) × 3 is 20", roundUp(thereAndBack("20", "3")), "20"],
    ["7.2 m over 0.9 m is 8", roundUp(over(number("7.2 m"), number("0.9 m"))), "8"],
    ["nothing is nothing", roundUp(number("0")), "0"],
    ["less than nothing goes up towards nothing", roundUp(number("-2.5")), "-2"],
    ["six tenths of a billionth count", roundUp(plus(number("12"), times(number("0.000000001"), number("0.6")))), "13"],
    ["four tenths do not", roundUp(plus(number("12"), times(number("0.000000001"), number("0.4")))), "12"],
  ])("%s, in decimals and in floats", (_, formula, expected) => {
    expect(value(formula)).toBe(expected);
    expect(float(formula) + 0).toBe(Number(expected));
  });

  it("goes up to whole ones of the unit that is asked for", () => {
    const length = number("3.2 ft");
    expect(value(roundUp(length, "ft"), "ft")).toBe("4");
    expect(value(roundUp(length, "in"), "in")).toBe("39"); // 38.4 in
    expect(value(roundUp(length, "mm"), "mm")).toBe("976"); // 975.36 mm
    expect(value(roundUp(number("2.01 square"), "square"), "ft2")).toBe("300");
  });

  it("is not upset by the last digit of a float among many", () => {
    const share = (of: string) => float(roundUp(times(number(of), number("100000000"))));
    // 0.07 × 10⁸ is 7000000.000000001 in floats.
    expect(["0.068", "0.07", "0.139"].map(share)).toEqual([6_800_000, 7_000_000, 13_900_000]);
    expect(float(roundUp(times(number("0.1"), number("1000000"))))).toBe(100_000);
  });
});

describe("money", () => {
  it("is rounded half away from zero, to the minor unit", () => {
    const cents = (text: string, places = 2) => value(roundMoney(number(text), places), text.slice(-3));
    expect(["1.005 USD", "2.675 USD", "-1.005 USD", "1.0049 USD"].map((text) => cents(text))).toEqual([
      "1.01",
      "2.68",
      "-1.01",
      "1",
    ]);
    expect(cents("166.5 JPY", 0)).toBe("167");
  });

  it("keeps a half cent that stands before the tail of a division", () => {
    // 0.125 ÷ 13 × 13 is 0.12499999… or 0.125 by the luck of the last digit; all of these must go up.
    for (let y = 3; y < 400; y++) {
      expect([y, value(roundMoney(thereAndBack("0.125 USD", String(y)), 2), "USD")]).toEqual([y, "0.13"]);
      expect([y, float(roundMoney(thereAndBack("0.125 USD", String(y)), 2))]).toEqual([y, 0.13]);
    }
  });

  it("adds up, line by line, on a printed sheet", () => {
    const sheet = new Sheet();
    const lines = ["0.333 USD", "0.333 USD", "0.335 USD"].map((text, i) =>
      sheet.lay(`line.${i}`, roundMoney(number(text), 2)),
    );
    expect(sheet.in(sheet.lay("total", plus(...(lines as [never]))), "USD").toString()).toBe("1"); // 0.33 + 0.33 + 0.34
  });
});

describe("a choice", () => {
  const chosen = (left: Operand, comparison: Comparison, right: Operand): string => {
    const formula = when(left, comparison, right, number("1"), number("0"));
    expect(float(formula)).toBe(Number(value(formula)));
    return value(formula);
  };

  it("tells at least from above where both are equal, in any unit", () => {
    expect(chosen(number("12 in"), "atLeast", number("1 ft"))).toBe("1");
    expect(chosen(number("12 in"), "above", number("1 ft"))).toBe("0");
    expect(chosen(number("12.001 in"), "above", number("1 ft"))).toBe("1");
    expect(chosen(number("11.999 in"), "atLeast", number("1 ft"))).toBe("0");
    expect(chosen(number("-2"), "above", number("-3"))).toBe("1");
  });

  it("takes the tail of a division for nothing", () => {
    for (let y = 2; y < 400; y++) {
      expect([y, chosen(thereAndBack("20 ft", String(y)), "atLeast", number("20 ft"))]).toEqual([y, "1"]);
      expect([y, chosen(thereAndBack("20 ft", String(y)), "above", number("20 ft"))]).toEqual([y, "0"]);
    }
  });

  it("works out only the side that is chosen", () => {
    const guarded = when(number("0"), "above", number("0"), over(number("1"), number("0")), number("7"));
    expect(value(guarded)).toBe("7");
  });
});

describe("a step table", () => {
  // Worked by hand from cans of 1 gal at $10 and 5 gal at $40.
  it.each([
    [-3, 0],
    [0, 0],
    [1, 10],
    [2, 20],
    [3, 30],
    [4, 40],
    [5, 40],
    [6, 50],
    [8, 70],
    [9, 80],
    [10, 80],
    [11, 90],
    [1001, 8010],
    [1_000_000_004, 8_000_000_040],
  ])("%i gal cost $%i", (need, cost) => {
    expect(stepValue(CANS, 0, need).toNumber()).toBe(cost);
  });

  it("gives the row of a need, and none for nothing", () => {
    expect(stepRow(CANS, 4)?.from).toBe(4);
    expect(stepRow(CANS, 5)?.from).toBe(4);
    expect(stepRow(CANS, 0)).toBeUndefined();
  });

  it("never costs less for more, whole repeats included", () => {
    const costs = Array.from({ length: 60 }, (_, need) => stepValue(CANS, 0, need).toNumber());
    expect(costs.every((cost, i) => i === 0 || cost >= (costs[i - 1] as number))).toBe(true);
  });
});

describe("exactness", () => {
  it("divides last, so that a slope without a finite decimal leaves nothing: 18 ft at 16 in 12 is 30 ft", () => {
    const unitLength = root(plus(square(number("16 in")), square(number("12 in"))));
    expect(value(over(times(number("18 ft"), unitLength), number("12 in")), "ft")).toBe("30");
  });

  it("converts a rate by one ratio of whole numbers: 523.12 ft² over 150 ft²/gal", () => {
    expect(value(over(number("523.12 ft2"), number("150 ft2/gal")), "gal")).toMatch(
      /^3\.4874666666666666666666666666666/,
    );
    expect(value(times(number("$4.85/ft"), number("26 ft 6 in")), "USD")).toBe("128.525");
    // A seventh of a gallon is 33 in³ (231 ÷ 7), though its quotient does not end before the conversion.
    for (let n = 1; n < 40; n++) {
      expect(value(over(number(`${n} ft2`), number("7 ft2/gal")), "in3")).toBe(String(33 * n));
    }
  });
});

describe("what has no finite value", () => {
  const wrong = (lay: () => unknown): string => {
    try {
      lay();
    } catch (error) {
      if (error instanceof FaultError) return `${error.faults[0]?.code}: ${error.faults[0]?.wrong}`;
      throw error;
    }
    return "nothing is wrong";
  };

  it("is a fault that names the cell and what it was worked out from", () => {
    const sheet = new Sheet();
    const spacing = sheet.input("spacing", exactly("0 ft"));
    const eave = sheet.input("eave", exactly("24 ft"));
    expect(wrong(() => sheet.lay("bays.count", over(eave, spacing)))).toBe(
      "out-of-range: The cell bays.count has no finite value (eave = 24 ft, spacing = 0 ft).",
    );
    expect(wrong(() => sheet.lay("side", root(minus(number("1 ft2"), number("2 ft2")))))).toContain("The cell side");
    expect(sheet.find("bays.count")).toBeUndefined();
  });

  it("is the same fault when a sheet is evaluated again", () => {
    const sheet = new Sheet();
    const spacing = sheet.input("spacing", exactly("2 ft"));
    sheet.lay("bays.count", over(number("24 ft"), spacing));
    expect(wrong(() => evaluateAgain(sheet.cells, new Map([["spacing", decimal(0)]])))).toBe(
      "out-of-range: The cell bays.count has no finite value (spacing = 0 ft).",
    );
  });

  it("is what passes the exponent fence", () => {
    const sheet = new Sheet();
    let cell = sheet.input("a0", exactly("999999999999"));
    const grow = () => {
      for (let i = 1; i < 9; i++) cell = sheet.lay(`a${i}`, square(cell));
    };
    expect(wrong(grow)).toContain("out-of-range: The cell a3 has no finite value");
  });
});
