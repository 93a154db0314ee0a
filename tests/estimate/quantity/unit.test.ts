import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { Decimal, decimal } from "../../../src/estimate/quantity/decimal.js";
import { inUnit, quantity } from "../../../src/estimate/quantity/quantity.js";
import {
  applyFactor,
  describeDimension,
  factorBetween,
  held,
  minorDigits,
  parseUnit,
  unit,
  unitOver,
  unitTimes,
} from "../../../src/estimate/quantity/unit.js";

const converted = (value: string, from: string, to: string): string => inUnit(quantity(value, from), to).toString();

describe("exact definitions", () => {
  // NIST Handbook 44 (2024), appendix C, tables of units: figures marked there as exact.
  it.each([
    ["1", "in", "mm", "25.4"],
    ["1", "ft", "m", "0.3048"],
    ["1", "yd", "m", "0.9144"],
    ["1", "mi", "m", "1609.344"],
    ["1", "in2", "mm2", "645.16"],
    ["1", "ft2", "m2", "0.09290304"],
    ["1", "in3", "mm3", "16387.064"],
    ["1", "gal", "in3", "231"],
    ["1", "qt", "in3", "57.75"],
    ["1", "gal", "L", "3.785411784"],
    ["1", "lb", "g", "453.59237"],
    ["1", "oz", "g", "28.349523125"],
    ["1", "t", "kg", "1000"],
  ])("%s %s is %s exactly: %s", (value, from, to, expected) => {
    expect(converted(value, from, to)).toBe(expected);
  });

  // NIST SP 811 (2008), appendix B.8, seven significant digits.
  it.each([
    ["ft3", "m3", "0.02831685"],
    ["lb/ft3", "kg/m3", "16.01846"],
    ["lb/ft2", "kg/m2", "4.882428"],
    ["lb/ft", "kg/m", "1.488164"],
    ["yd3", "m3", "0.7645549"],
    ["qt", "L", "0.9463529"],
  ])("1 %s rounds to the published factor in %s", (from, to, published) => {
    expect(inUnit(quantity(1, from), to).toSignificantDigits(7).toString()).toBe(published);
  });

  it("a board foot is a foot square and an inch thick, so twelve fill a cubic foot (PS 20-20, terminology)", () => {
    expect(converted("1", "ft3", "bf")).toBe("12");
    expect(converted("1", "bf", "in3")).toBe("144");
    expect(converted("1", "mbf", "bf")).toBe("1000");
  });

  it("a roofer's square is 100 square feet", () => {
    expect(converted("1", "square", "ft2")).toBe("100");
    expect(converted("250", "ft2", "square")).toBe("2.5");
  });

  it("holds a sixty-fourth of an inch without a remainder", () => {
    expect(quantity(decimal(1).dividedBy(64), "in").value.toString()).toBe("0.396875");
  });

  it("never takes a person-hour for an hour on the clock, nor a working hour for a calendar day", () => {
    expect(unit("person-h").dimension).not.toBe(unit("h").dimension);
    expect(unit("h").dimension).not.toBe(unit("day").dimension);
    expect(unitOver(unit("person-h"), unit("h")).dimension).toBe(unit("people").dimension);
  });

  it("keeps a rate in its own unit and everything else in the held one", () => {
    expect(quantity("4.85", "USD/ft").unit.symbol).toBe("USD/ft");
    expect(quantity("12", "%").value.toString()).toBe("0.12");
    expect(held(unit("ft2")).symbol).toBe("mm2");
    expect(held(unit("gal")).symbol).toBe("mm3");
    expect(held(unit("square")).symbol).toBe("mm2");
    expect(held(unit("person-min")).symbol).toBe("person-h");
    expect(held(unit("week")).symbol).toBe("day");
  });
});

describe("units as written", () => {
  it.each([
    ["ft²", "ft2"],
    ["sq ft", "ft2"],
    ["$/ft", "USD/ft"],
    ["€/m²", "EUR/m2"],
    ["£", "GBP"],
    ["USD per person-h", "USD/person-h"],
    ["hours", "h"],
    ["gallons", "gal"],
    ["MBF", "mbf"],
    ["1/ft", "1/ft"],
    ["each", ""],
    ["USD/each", "USD"],
    ["ft·ft", "ft2"],
    ["ft*ft/ft", "ft"],
  ])("%s is read as %s", (text, symbol) => {
    expect(parseUnit(text)?.symbol).toBe(symbol);
  });

  it.each([
    "",
    "/",
    "ft/",
    "/ft",
    "ft//in",
    "furlong",
    "constructor",
    "__proto__",
    "USD/EUR",
    "$·€",
    "ft4",
    "ft-2",
    "2",
  ])("%j is no unit", (text) => {
    expect(parseUnit(text)).toBeUndefined();
  });

  it("refuses a long chain of units whose factor would pass the exponent fence", () => {
    expect(parseUnit("km2·km2·km2·km2·km2·km/mm2/mm2/mm2/mm2/mm2")).toBeUndefined();
    expect(parseUnit("ft·".repeat(10_000))).toBeUndefined();
  });

  it("still tells units alike after thousands of invented ones", () => {
    const before = unit("USD/ft");
    const symbols = ["ft", "in", "mm", "m", "lb", "kg", "h", "gal", "L", "day", "USD", "kWh"];
    for (const a of symbols)
      for (const b of symbols)
        for (const c of symbols)
          for (const d of ["bf", "yd", "cm"]) {
            parseUnit(`${a}/${b}/${c}/${d}`);
          }
    expect(factorBetween(before, unit("USD/ft")).isOne).toBe(true);
    expect(converted("1", "USD/in", "USD/ft")).toBe("12");
  });

  it("throws where two currencies meet, or two things are compared that differ", () => {
    expect(() => unitTimes(unit("USD"), unit("EUR"))).toThrow("two currencies");
    expect(() => factorBetween(unit("ft"), unit("USD"))).toThrow("ft is not USD");
    expect(() => unit("furlong")).toThrow("no such unit");
  });

  it("knows the minor unit of a currency (ISO 4217)", () => {
    expect(["USD", "EUR", "JPY", "ft"].map(minorDigits)).toEqual([2, 2, 0, undefined]);
  });

  it("gives an example that can be written, for every plain thing that may be asked for", () => {
    for (const symbol of ["mm", "m2", "L", "kg", "h", "person-h", "deg", "day", "people", "kWh", "USD", "JPY"]) {
      const example = /such as (-?[\d.]+ [^\s,]+)/.exec(describeDimension(unit(symbol)))?.[1] as string;
      expect(parseUnit(example.split(" ")[1] as string)?.dimension).toBe(unit(symbol).dimension);
    }
    expect(describeDimension(unit("JPY"))).toContain("12 JPY");
  });
});

const SYMBOLS = ["ft", "in", "mm", "m", "lb", "kg", "h", "person-h", "USD", "gal", "bf", "deg", "week", "kW", "people"];
const anyUnit = fc
  .array(fc.tuple(fc.constantFrom(...SYMBOLS), fc.constantFrom(1, -1)), { maxLength: 4 })
  .map((parts) =>
    parts.reduce(
      (sum, [symbol, sign]) => (sign > 0 ? unitTimes(sum, unit(symbol)) : unitOver(sum, unit(symbol))),
      unit(""),
    ),
  );

describe("unit algebra", () => {
  it("a ÷ b × b is a, and a × b is b × a", () => {
    fc.assert(
      fc.property(anyUnit, anyUnit, (a, b) => {
        expect(unitTimes(unitOver(a, b), b).symbol).toBe(a.symbol);
        expect(unitTimes(a, b).symbol).toBe(unitTimes(b, a).symbol);
        expect(unitOver(a, a).symbol).toBe("");
      }),
    );
  });

  it("what is held measures the same, and the factor there and back is one", () => {
    fc.assert(
      fc.property(anyUnit, (a) => {
        const home = held(a);
        expect(home.dimension).toBe(a.dimension);
        const [there, back] = [factorBetween(a, home), factorBetween(home, a)];
        expect(there.num.eq(back.den) && there.den.eq(back.num)).toBe(true);
        const value = new Decimal("12345.678");
        const error = applyFactor(applyFactor(value, there), back).minus(value).abs();
        expect(error.lte("1e-30")).toBe(true);
      }),
    );
  });

  it("factors of a chain multiply: a to b to c is a to c", () => {
    const lengths = fc.constantFrom(...["mm", "cm", "m", "km", "in", "ft", "yd", "mi"].map(unit));
    fc.assert(
      fc.property(lengths, lengths, lengths, (a, b, c) => {
        const [ab, bc, ac] = [factorBetween(a, b), factorBetween(b, c), factorBetween(a, c)];
        expect(ab.num.times(bc.num).times(ac.den).eq(ac.num.times(ab.den).times(bc.den))).toBe(true);
      }),
    );
  });
});
