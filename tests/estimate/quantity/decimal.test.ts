import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { Decimal, decimal, fixed, parseDecimal, squareRoot, trimmed } from "../../../src/estimate/quantity/decimal.js";

describe("decimal", () => {
  it("rounds half away from zero, as a spreadsheet does", () => {
    const cents = (text: string) => fixed(decimal(text), 2);
    expect(["0.005", "1.005", "2.675", "-0.005", "-2.675"].map(cents)).toEqual([
      "0.01",
      "1.01",
      "2.68",
      "-0.01",
      "-2.68",
    ]);
    expect(["0.0049999", "-0.0049999", "2.6749999999"].map(cents)).toEqual(["0.00", "0.00", "2.67"]);
  });

  it("never writes a negative zero or an exponent", () => {
    expect(fixed(decimal("-0.001"), 2)).toBe("0.00");
    expect(trimmed(decimal("-0"), 3)).toBe("0");
    expect(trimmed(decimal("1e21"), 3)).toBe("1000000000000000000000");
    expect(trimmed(decimal("0.0000001"), 9)).toBe("0.0000001");
  });

  it("drops zeros at the end only where asked", () => {
    expect(fixed(decimal("12.5"), 2)).toBe("12.50");
    expect(trimmed(decimal("12.50"), 3)).toBe("12.5");
    expect(trimmed(decimal("1200"), 3)).toBe("1200");
  });

  it("adds and multiplies without a float's last digit", () => {
    expect(decimal("0.1").plus("0.2").eq("0.3")).toBe(true);
    expect(decimal("1.1").times("1.1").toString()).toBe("1.21");
  });

  it("keeps forty significant digits", () => {
    expect(decimal(1).dividedBy(3).toString()).toBe(`0.${"3".repeat(40)}`);
  });

  it.each(["0", "14", "-14", "0.5", ".5", "-.5", "999999999999.123456789"])("takes the plain numeral %s", (text) => {
    expect(parseDecimal(text)?.eq(text)).toBe(true);
  });

  it.each([
    ...[
      "",
      " 1",
      "1 ",
      "+1",
      "5.",
      "007",
      "1_000",
      "1,200",
      "1e3",
      "1E3",
      "0x1f",
      "0b11",
      "NaN",
      "Infinity",
      "-Infinity",
      "--1",
    ],
    ...["1,20", "12,34", "1,2345", ",200", "1,200,5", "1.2.3", "1.1234567891", "1234567890123", "٣", "１"],
  ])("refuses %j", (text) => {
    expect(parseDecimal(text)).toBeUndefined();
  });

  it("refuses an endless numeral without reading it", () => {
    expect(parseDecimal("9".repeat(1_000_000))).toBeUndefined();
  });

  it("throws on a constant that is no finite number, and keeps exponents within sixty", () => {
    expect(() => decimal("NaN")).toThrow("not a finite decimal");
    expect(() => decimal("1e61")).toThrow("not a finite decimal");
    expect(new Decimal("1e-61").isZero()).toBe(true);
  });

  it("takes exact roots exactly, and others to the last digit of decimal.js's own root", () => {
    const roots = ["225", "2.25", "0.000004", "1e40"].map((of) => squareRoot(decimal(of)).toString());
    expect(roots).toEqual(["15", "1.5", "0.002", "100000000000000000000"]);
    // OEIS A002193: 1.4142135623730950488016887242096980785696….
    expect(squareRoot(decimal(2)).toString()).toBe("1.41421356237309504880168872420969807857");
    expect(squareRoot(decimal(-1)).isNaN()).toBe(true);
    expect(squareRoot(decimal(0)).isZero()).toBe(true);
    const digits = fc.tuple(fc.bigInt({ min: 1n, max: 10n ** 45n }), fc.integer({ min: -25, max: 10 }));
    fc.assert(
      fc.property(digits, ([n, power]) => {
        const of = new Decimal(`${n}e${power}`);
        expect(squareRoot(of).toFixed()).toBe(of.sqrt().toFixed());
        const short = new Decimal(`${n % 10n ** 19n}e${power}`);
        expect(squareRoot(short.times(short)).eq(short)).toBe(true);
      }),
      { numRuns: 2000 },
    );
  });
});
