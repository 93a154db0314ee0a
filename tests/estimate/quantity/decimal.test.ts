import { Decimal as Library } from "decimal.js";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { Decimal, decimal, fixed, parseDecimal, trimmed } from "../../../src/estimate/quantity/decimal.js";

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

  it.each(["0", "14", "-14", "0.5", ".5", "-.5", "999999999999.123456789", "1,200", "-12,345.5", "1,234,567"])(
    "takes the plain numeral %s",
    (text) => {
      expect(parseDecimal(text)?.eq(text.replaceAll(",", ""))).toBe(true);
    },
  );

  it.each([
    ...[
      "",
      " 1",
      "1 ",
      "+1",
      "5.",
      "007",
      "1_000",
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
    const begin = performance.now();
    expect(parseDecimal("9".repeat(1_000_000))).toBeUndefined();
    expect(performance.now() - begin).toBeLessThan(20);
  });

  it("throws on a constant that is no finite number, and keeps exponents within sixty", () => {
    expect(() => decimal("NaN")).toThrow("not a finite decimal");
    expect(() => decimal("1e61")).toThrow("not a finite decimal");
    expect(new Decimal("1e-61").isZero()).toBe(true);
  });

  it("takes exact roots exactly, and others to forty digits", () => {
    const roots = ["225", "2.25", "0.000004", "1e40", "90"].map((of) => decimal(of).sqrt().toString());
    expect(roots.slice(0, 4)).toEqual(["15", "1.5", "0.002", "100000000000000000000"]);
    // OEIS A002193: 1.4142135623730950488016887242096980785696….
    expect(decimal(2).sqrt().toString()).toBe("1.41421356237309504880168872420969807857");
    expect(decimal(-1).sqrt().isNaN()).toBe(true);
    expect(decimal(0).sqrt().isZero()).toBe(true);
  });

  it("holds a quotient by zero and what comes of it to be no finite number", () => {
    const [endless, none] = [decimal(1).dividedBy(0), decimal(0).dividedBy(0)];
    expect([endless.toFixed(), endless.negated().toFixed(), none.toFixed()]).toEqual(["Infinity", "-Infinity", "NaN"]);
    expect([endless.plus(1), none.times("1e50"), endless.minus(endless)].map((of) => of.isFinite())).toEqual([
      false,
      false,
      false,
    ]);
    expect(Decimal.max(none, 1).isNaN() && Decimal.min(1, none).isNaN()).toBe(true);
    expect(none.lt(1) || none.gte(1) || none.eq(none)).toBe(false);
  });
});

/** The library's own arithmetic, set as ours: the judge of ours. */
const Judge = Library.clone({
  precision: 40,
  rounding: Library.ROUND_HALF_UP,
  maxE: 60,
  minE: -60,
  toExpPos: 61,
  toExpNeg: -61,
});
type Judged = InstanceType<typeof Judge>;

/** Short and long numerals, with zeros at their ends, close to powers of ten and far from them. */
const numeral = fc
  .tuple(
    fc.constantFrom("", "-"),
    fc.oneof(
      fc.bigInt({ min: 0n, max: 2000n }),
      fc.bigInt({ min: 0n, max: 2n ** 54n }),
      fc.bigInt({ min: 0n, max: 10n ** 45n }),
      fc.tuple(fc.integer({ min: 0, max: 42 }), fc.integer({ min: -2, max: 2 })).map(([n, off]) => {
        const near = 10n ** BigInt(n) + BigInt(off);
        return near < 0n ? 0n : near;
      }),
      fc.integer({ min: 0, max: 99999 }).map((n) => BigInt(n) * 10n ** 12n + 5n * 10n ** 11n),
    ),
    fc.integer({ min: -24, max: 12 }),
  )
  .map(([sign, digits, power]) => `${sign}${digits}e${power}`);

/** Without the sign that the library gives to a zero. */
const shown = (of: Judged): string => (of.isZero() ? "0" : of.toFixed());

describe("decimal arithmetic, against decimal.js", () => {
  const held = (name: string, ours: (a: Decimal, b: Decimal) => string, judged: (a: Judged, b: Judged) => string) =>
    it(name, () => {
      fc.assert(
        fc.property(numeral, numeral, (a, b) => {
          expect([a, b, ours(new Decimal(a), new Decimal(b))]).toEqual([a, b, judged(new Judge(a), new Judge(b))]);
        }),
        { numRuns: 3000 },
      );
    });

  held(
    "adds",
    (a, b) => a.plus(b).toFixed(),
    (a, b) => shown(a.plus(b)),
  );
  held(
    "takes off",
    (a, b) => a.minus(b).toFixed(),
    (a, b) => shown(a.minus(b)),
  );
  held(
    "multiplies",
    (a, b) => a.times(b).toFixed(),
    (a, b) => shown(a.times(b)),
  );
  held(
    "divides",
    (a, b) => (b.isZero() ? "" : a.dividedBy(b).toFixed()),
    (a, b) => (b.isZero() ? "" : shown(a.dividedBy(b))),
  );
  held(
    "divides what it has divided and multiplied before",
    (a, b) => (b.isZero() ? "" : a.dividedBy(b).times(b).plus(a).dividedBy(7).toFixed()),
    (a, b) => (b.isZero() ? "" : shown(a.dividedBy(b).times(b).plus(a).dividedBy(7))),
  );
  held(
    "divides without the rest",
    (a, b) => (b.isZero() ? "" : a.dividedToIntegerBy(b).toFixed()),
    (a, b) => (b.isZero() ? "" : shown(a.dividedToIntegerBy(b))),
  );
  held(
    "compares",
    (a, b) => `${a.cmp(b)} ${a.lt(b)} ${a.lte(b)} ${a.gt(b)} ${a.gte(b)} ${a.eq(b)} ${a.eq(a.times(1))}`,
    (a, b) => `${a.cmp(b)} ${a.lt(b)} ${a.lte(b)} ${a.gt(b)} ${a.gte(b)} ${a.eq(b)} ${a.eq(a.times(1))}`,
  );
  held(
    "finds the least and the greatest",
    (a, b) => `${Decimal.min(a, b)} ${Decimal.max(a, b)}`,
    (a, b) => `${shown(Judge.min(a, b))} ${shown(Judge.max(a, b))}`,
  );
  held(
    "rounds, up and down too",
    (a) => [a.toDecimalPlaces(0), a.toDecimalPlaces(3), a.ceil(), a.floor(), a.toSignificantDigits(5)].join(" "),
    (a) =>
      [a.toDecimalPlaces(0), a.toDecimalPlaces(3), a.ceil(), a.floor(), a.toSignificantDigits(5)].map(shown).join(" "),
  );
  held(
    "writes",
    (a) => [a.toFixed(), a.isZero() ? "" : a.toFixed(30), a.decimalPlaces(), a.isZero() ? 1 : a.precision()].join(" "),
    (a) => [shown(a), a.isZero() ? "" : a.toFixed(30), a.decimalPlaces(), a.precision()].join(" "),
  );
  held(
    "gives the nearest float",
    (a) => String(a.toNumber()),
    (a) => String(a.isZero() ? 0 : a.toNumber()),
  );
  held(
    "raises to a power and takes the root",
    (a) => `${a.pow(2)} ${a.pow(3)} ${a.abs().sqrt()} ${a.times(a).sqrt()}`,
    (a) => `${shown(a.times(a))} ${shown(a.pow(3))} ${shown(a.abs().sqrt())} ${shown(a.times(a).sqrt())}`,
  );
});
