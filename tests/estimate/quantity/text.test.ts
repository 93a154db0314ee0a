import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { decimal } from "../../../src/estimate/quantity/decimal.js";
import { inUnit, type Quantity, quantity } from "../../../src/estimate/quantity/quantity.js";
import {
  exactly,
  gauge,
  marked,
  markedSection,
  markedSmall,
  moneyText,
  onTape,
  parseQuantity,
  parseSection,
  placesFor,
  pretty,
  quote,
  readQuantity,
  shown,
  TextFault,
} from "../../../src/estimate/quantity/text.js";
import { unit } from "../../../src/estimate/quantity/unit.js";

function read(text: string, like: string): Quantity {
  const found = parseQuantity(text, unit(like));
  if (found instanceof TextFault) throw new Error(`${found.wrong} ${found.cure}`);
  return found;
}
const valueIn = (text: string, target: string): string => inUnit(read(text, target), target).toString();

describe("the value of an hour", () => {
  it.each(["$25", "25 $", "25 USD", "25 $/h", "$25/h", "25/h", "25 per hour", "25 an hour", "$25 an hour", "USD 25"])(
    "is what %s says",
    (text) => expect(valueIn(text, "USD/person-h")).toBe("25"),
  );

  it.each(["25", "25 h", "25 €", "€25/h", "25 $/m", "25 %", "$", "/h"])("is not what %s says", (text) =>
    expect(parseQuantity(text, unit("USD/person-h"))).toBeInstanceOf(TextFault),
  );

  it("is no price by anything else: money alone is no rate, a rate without money no price", () => {
    for (const [text, like] of [
      ["$25", "USD/ft"],
      ["25/h", "USD/ft"],
      ["25/ft", "USD/ft"],
      ["$25", "USD/h"],
    ] as const)
      expect(parseQuantity(text, unit(like))).toBeInstanceOf(TextFault);
  });
});

describe("what the trade writes", () => {
  // Worked by hand from 1 in = 25.4 mm (NIST Handbook 44, appendix C).
  it.each([
    ["1/64 in", "0.396875"],
    ["1/2 in", "12.7"],
    ["-1/2 in", "-12.7"],
    ['3/4"', "19.05"],
    ["9/8 in", "28.575"],
    ["2 1/4 in", "57.15"],
    ["2-1/4 in", "57.15"],
    ["-2 1/4 in", "-57.15"],
    ["12 in", "304.8"],
    ["12in", "304.8"],
    ["14 ft", "4267.2"],
    ["14'", "4267.2"],
    ["14 feet", "4267.2"],
    ["14.5 ft", "4419.6"],
    [`14' 6"`, "4419.6"],
    [`14'6"`, "4419.6"],
    [`14'-6"`, "4419.6"],
    ["14′ 6″", "4419.6"],
    ["14’ 6”", "4419.6"],
    ["14' 6''", "4419.6"],
    ["14 ft 6 in", "4419.6"],
    ["14' 6", "4419.6"],
    ["14 ft 6 1/2", "4432.3"],
    ["14½ ft", "4419.6"],
    ["14' 6½\"", "4432.3"],
    ["½ in", "12.7"],
    ["14.5 ft.", "4419.6"],
    ["14 ft. 6 in.", "4419.6"],
    ["14 feet 6 inches", "4419.6"],
    [`14' 6 1/2"`, "4432.3"],
    [`14'-6-1/2"`, "4432.3"],
    [`-14' 6 1/2"`, "-4432.3"],
    [`0' 1/64"`, "0.396875"],
    [`14' 6.5"`, "4432.3"],
    ["4.35 m", "4350"],
    ["95 mm", "95"],
    ["9.5 cm", "95"],
    ["1,200,000 mm", "1200000"],
    ["1,200.5 mm", "1200.5"],
    ["12 345 mm", "12345"],
    ["12\u202f345,5 mm", "12345.5"],
    ["4,35 m", "4350"],
    ["0,350 m", "350"],
    ["1.250,00 m", "1250000"],
    ["1,200 ft", "365760"],
    ["14 FT", "4267.2"],
    ["14 Ft 6 In", "4419.6"],
    ["95MM", "95"],
    ["6''", "152.4"],
    ["2 1\u20444 in", "57.15"],
    ["\u22122 1/4 in", "-57.15"],
    ["14 lf", "4267.2"],
    ["5/4 in", "31.75"],
    ["12/4 in", "76.2"],
    [".5 m", "500"],
    ["-.5 m", "-500"],
    ["  95   mm  ", "95"],
    ["3 yd", "2743.2"],
  ])("%s is exactly %s mm", (text, millimetres) => {
    expect(valueIn(text, "mm")).toBe(millimetres);
  });

  it.each([
    ["$4.85/ft", "USD/ft", "4.85"],
    ["$4.85 / ft", "USD/ft", "4.85"],
    ["$4.85 per ft", "USD/ft", "4.85"],
    ["4.85 USD/ft", "USD/ft", "4.85"],
    ["$58.20/ft", "USD/in", "4.85"],
    ["$4.85/lf", "USD/ft", "4.85"],
    ["$1/sf", "USD/ft2", "1"],
    ["$4.85/bd ft", "USD/bf", "4.85"],
    ["$3 each", "USD", "3"],
    ["$15 an hour", "USD/person-h", "15"],
    ["USD 4.85", "USD", "4.85"],
    ["US$4.85/ft", "USD/ft", "4.85"],
    ["CA$5.00", "CAD", "5"],
    ["NOK 812.00", "NOK", "812"],
    ["85¢", "USD", "0.85"],
    ["85 cents/ft", "USD/ft", "0.85"],
    ["$1,450", "USD", "1450"],
    ["\u2212$12.50", "USD", "-12.5"],
    ["€12,50", "EUR", "12.5"],
    ["1.250,00 €", "EUR", "1250"],
    ["120 BF", "bf", "120"],
    ["120 bd ft", "bf", "120"],
    ["120 bd. ft.", "bf", "120"],
    ["18 KG", "kg", "18"],
    ["100 ft^2", "ft2", "100"],
    ["100 square feet", "ft2", "100"],
    ["2 cubic yards", "ft3", "54"],
    ["2 persons", "people", "2"],
    ["1 h 30 min", "h", "1.5"],
    ["1 h 30 min", "person-h", "1.5"],
    ["14 h a week", "h/week", "14"],
    ["€12.50", "EUR", "12.5"],
    ["12.50 €", "EUR", "12.5"],
    ["-$1,450.50", "USD", "-1450.5"],
    ["$ 450", "USD", "450"],
    ["500 JPY", "JPY", "500"],
    ["$950/mbf", "USD/bf", "0.95"],
    ["150 ft2/gal", "ft2/gal", "150"],
    ["150 ft²/gal", "ft2/gal", "150"],
    ["150 sq ft/gal", "ft2/gal", "150"],
    ["12 %", "%", "12"],
    ["12%", "", "0.12"],
    ["0.12 %", "%", "0.12"],
    ["40 lb/ft3", "lb/ft3", "40"],
    ["12 sq ft", "ft2", "12"],
    ["1/2 gal", "qt", "2"],
    ["22.5 deg", "deg", "22.5"],
    ["22.5°", "deg", "22.5"],
    ["12 weeks", "day", "84"],
    ["3 each", "", "3"],
    ["3", "", "3"],
    ["1/2", "", "0.5"],
    ["2 people", "people", "2"],
    ["0.25 person-h/ft2", "person-h/ft2", "0.25"],
  ])("%s, in %s, is %s", (text, target, value) => {
    expect(valueIn(text, target)).toBe(value);
  });

  it("takes hours for person-hours where work is asked for, and nowhere else", () => {
    expect(valueIn("3 h", "person-h")).toBe("3");
    expect(valueIn("$18/h", "USD/person-h")).toBe("18");
    expect(valueIn("15 min/ft2", "person-min/ft2")).toBe("15");
    expect(read("3 h", "h").unit.symbol).toBe("h");
    expect(parseQuantity("3 person-h", unit("h"))).toBeInstanceOf(TextFault);
  });

  it("remembers the unit that was written", () => {
    expect(read("2 1/4 in", "mm").written?.symbol).toBe("in");
    expect(read(`14' 6"`, "mm").written?.symbol).toBe("ft");
    expect(read("12 %", "").written?.symbol).toBe("%");
  });
});

describe("what is refused, with what is wrong and what would be right", () => {
  it.each([
    ...["14", "0", "-3", "1/2", "1,200", "2 1/4"].map((text) => [text, "has no unit", "not-a-quantity"]),
    ...["NaN", "Infinity", "-Infinity ft", "NaN ft", "1e3 ft", "1E3 ft", "0x1f ft", "0b11 ft", "+5 ft", "5. ft"].map(
      (text) => [text, "is not a number with a unit", "not-a-quantity"],
    ),
    ...[
      "",
      " ",
      "ft",
      "five ft",
      "5 furlong",
      "5 ft ft",
      "5 ft/",
      "- 5 ft",
      "007 ft",
      "14ft6",
      "14-6",
      "1 hr 30",
      "950 USD/M",
    ].map((text) => [text, "is not a number with a unit", "not-a-quantity"]),
    ...["5 constructor", "5 __proto__", "1.1234567891 ft", "1234567890123 ft", "٣ ft", "5 USD/EUR", "$5/€"].map(
      (text) => [text, "is not a number with a unit", "not-a-quantity"],
    ),
    ...["1/3 in", "6 1/3 in", `14' 6 1/3"`, "1/128 in", "1/0 in", "1/12 ft"].map((text) => [
      text,
      "has a fraction that no rule marks",
      "not-a-quantity",
    ]),
    // A comma parts thousands to some and is the decimal sign to others; a lost space makes a wholly other length.
    ...[
      ["4,350 m", "may be 4350 or 4.350"],
      ["1,250 mm", "may be 1250 or 1.250"],
      ["€1,250/m", "may be 1250 or 1.250"],
      ["EUR 1,250/m", "may be 1250 or 1.250"],
      ["$1,250/m", "may be 1250 or 1.250"],
      ["1,250 h", "may be 1250 or 1.250"],
      ["4,35 ft", "has a comma that parts no thousands"],
      [`14' 61/2"`, "may be 6 1/2 or 61 ÷ 2"],
      ["13/8 in", "may be 1 3/8 or 13 ÷ 8"],
      ["61/2 in", "may be 6 1/2 or 61 ÷ 2"],
      ["6 3/2 in", "has 3/2 behind a whole number"],
      [`14' 65"`, "has 12 inches or more behind feet"],
      [`14' 120"`, "has 12 inches or more behind feet"],
      [`14' 12"`, "has 12 inches or more behind feet"],
      [`14.5' 6"`, "has parts of a foot beside inches"],
      ["1 h 60 min", "has 60 minutes behind hours"],
    ].map(([text, wrong]) => [text as string, wrong as string, "not-a-quantity"]),
    ["5 ft2", "is an area", "wrong-dimension"],
    ["5 lb", "is a mass", "wrong-dimension"],
    ["12 %", "is a plain number", "wrong-dimension"],
    ["$5", "is an amount of money in USD", "wrong-dimension"],
    ["$5/ft", "is a rate in USD/ft", "wrong-dimension"],
    ["5 deg", "is an angle", "wrong-dimension"],
  ])("%j for a length", (text, wrong, code) => {
    expect(parseQuantity(text as string, unit("mm"))).toMatchObject({
      code,
      wrong: expect.stringContaining(wrong as string),
      cure: expect.stringMatching(/^(Give|Use) ./),
    });
  });

  it.each(["0.6", "60", " 1/2 "])("a bare %s for a share, which may be meant in two ways", (text) => {
    expect(parseQuantity(text, unit("%"))).toMatchObject({
      code: "not-a-quantity",
      wrong: expect.stringContaining("has no unit"),
      cure: "Give a percentage, such as 12 %.",
    });
  });

  it("names both currencies where one is meant and another is given", () => {
    expect(parseQuantity("€12", unit("USD"))).toMatchObject({
      code: "wrong-dimension",
      wrong: "“€12” is an amount of money in EUR.",
      cure: "Give an amount of money in USD, such as 12.50 USD.",
    });
  });

  it("reads nothing of an endless text, and quotes little of it", () => {
    for (const text of [
      "9".repeat(2_000_000),
      `${"9".repeat(2_000_000)} ft`,
      "1/".repeat(500_000),
      " ".repeat(500_000),
    ]) {
      const found = parseQuantity(text, unit("mm"));
      expect(found).toBeInstanceOf(TextFault);
      expect((found as TextFault).wrong.length).toBeLessThan(100);
    }
  });

  it("quotes without control characters, reversals of the writing direction or halves of a sign", () => {
    expect(quote("a\u0000b\u001bc\u202ed\u0085")).toBe("“a\ufffdb\ufffdc\ufffdd\ufffd”");
    expect(quote(`${"x".repeat(47)}🌲`)).toBe(`“${"x".repeat(47)}\ufffd…”`);
  });

  it("never throws, whatever is written", () => {
    const likes = ["mm", "USD", "ft2/gal", "", "person-h", "deg"].map(unit);
    const near = fc.string({ unit: fc.constantFrom(..."0123456789 '\"/.,-$€%²ftinmkgalUSDper·*1") });
    fc.assert(
      fc.property(fc.oneof(fc.string(), near), fc.constantFrom(...likes), (text, like) => {
        const found = parseQuantity(text, like);
        if (!(found instanceof TextFault)) expect(found.value.isFinite()).toBe(true);
      }),
      { numRuns: 2000 },
    );
  });
});

describe("texts in our own tables", () => {
  it("are read as anything else, and throw on a typing error", () => {
    expect(exactly("2 1/4 in").value.toString()).toBe("57.15");
    expect(() => exactly("2 1/3 in")).toThrow("not a quantity");
    expect(() => exactly("2 furlong")).toThrow("not a quantity");
  });

  it("are read without a dimension in mind where none is asked for", () => {
    expect(readQuantity("$450")).toMatchObject({ unit: { symbol: "USD" } });
    expect(readQuantity("2 furlong")).toMatchObject({ code: "not-a-quantity" });
    expect(readQuantity("1/3 in")).toMatchObject({ wrong: expect.stringContaining("no rule marks") });
  });
});

describe("sections", () => {
  it.each([
    ["2 x 6 in", "50.8", "152.4"],
    ["1 1/2 in × 3 1/2 in", "38.1", "88.9"],
    ["1 1/2 × 3 1/2 in", "38.1", "88.9"],
    ["45 x 145 mm", "45", "145"],
    ["45X145 mm", "45", "145"],
    ["3/4 x 5 1/2 in", "19.05", "139.7"],
    ["50 mm × 6 in", "50", "152.4"],
    ["2 X 6 IN", "50.8", "152.4"],
    ["2 by 6 in", "50.8", "152.4"],
  ])("%s is read thickness first", (text, thickness, width) => {
    const found = parseSection(text);
    if (found instanceof TextFault) throw new Error(found.wrong);
    expect([found.thickness.value.toString(), found.width.value.toString()]).toEqual([thickness, width]);
  });

  it.each(["2 x 6", "2x6", "2 in", "2 x 6 x 8 in", "x 6 in", "2 x in", "2 x 6 lb", `2 x ${"6".repeat(99)} in`, ""])(
    "%j is no section",
    (text) => {
      expect(parseSection(text)).toMatchObject({
        wrong: expect.stringContaining("is not a section"),
        cure: expect.stringContaining("2 x 6 in"),
      });
    },
  );
});

describe("what is shown", () => {
  it.each([
    ["14.5417 ft", `14' 6 1/2"`],
    ["0.5 in", `1/2"`],
    ["11.99 in", "1'"],
    ["143.97 in", "12'"],
    ["9.75 in", `9 3/4"`],
    ["12.03125 in", `1' 0 1/16"`], // 12 1/32 in: the half sixteenth goes up
    ["-12.03125 in", `-1' 0 1/16"`], // … away from zero
    ["-0.001 in", `0"`],
    ["0 in", `0"`],
    ["-18 in", `-1' 6"`],
  ])("%s is marked %s, to the nearest sixteenth", (text, mark) => {
    expect(marked(exactly(text), "inch-pound")).toBe(mark);
  });

  it("a metric length is marked to the nearest millimetre, halves away from zero", () => {
    const mark = (text: string) => marked(exactly(text), "metric");
    expect(["4.35 m", "0.5 mm", "-0.5 mm", "-0.4 mm", "1 in"].map(mark)).toEqual([
      "4350 mm",
      "1 mm",
      "-1 mm",
      "0 mm",
      "25 mm",
    ]);
  });

  it("a section is said without feet", () => {
    expect(markedSmall(exactly("13.5 in"), "inch-pound")).toBe("13 1/2 in");
    expect(markedSection(exactly("1.5 in"), exactly("3.5 in"), "inch-pound")).toBe("1 1/2 × 3 1/2 in");
    expect(markedSection(exactly("45 mm"), exactly("145 mm"), "metric")).toBe("45 × 145 mm");
  });

  it("money keeps its minor unit, other zeros at the end are dropped, and no zero is negative", () => {
    expect(shown(exactly("$12.5"), unit("USD"))).toBe("12.50 USD");
    expect(shown(exactly("1200.4 JPY"), unit("JPY"))).toBe("1200 JPY");
    expect(shown(exactly("523.120 ft2"), unit("ft2"))).toBe("523.12 ft²");
    expect(shown(exactly("-0.0001 ft"), unit("ft"))).toBe("0 ft");
    expect(shown(exactly("-0.001 USD"), unit("USD"))).toBe("0.00 USD");
    expect(shown(exactly("0.12"), unit("%"))).toBe("12 %");
  });
});

const DISPLAYS = [
  ...["ft", "in", "mm", "m", "ft2", "m2", "ft3", "bf", "gal", "L", "lb", "kg", "h", "person-h", "deg", "%", "day"],
  ...["USD", "EUR", "USD/ft", "EUR/m2", "ft2/gal", "person-h/ft2", "lb/ft3", "1/ft", "", "people", "kWh"],
].map(unit);

describe("round trips", () => {
  it("what is shown is taken in again, off by no more than the rounding shown", () => {
    const cents = fc.integer({ min: -1e9, max: 1e9 });
    fc.assert(
      fc.property(cents, fc.constantFrom(...DISPLAYS), (n, display) => {
        const given = quantity(decimal(n).dividedBy(7919), display);
        const back = read(shown(given, display), display.symbol);
        const half = decimal(10).pow(-placesFor(display)).dividedBy(2);
        expect(inUnit(back, display).minus(inUnit(given, display)).abs().lte(half.plus("1e-30"))).toBe(true);
        expect(shown(back, display)).toBe(shown(given, display));
      }),
    );
  });

  it("money as sentences write it is taken in again, to the minor unit", () => {
    const currency = fc.constantFrom("USD", "CAD", "AUD", "EUR", "GBP", "NOK", "JPY");
    fc.assert(
      fc.property(fc.integer({ min: -1e12, max: 1e12 }), currency, (cents, of) => {
        const given = decimal(cents).dividedBy(100);
        const back = read(moneyText(given, of), of);
        expect(back.value.eq(given.toDecimalPlaces(of === "JPY" ? 0 : 2))).toBe(true);
      }),
    );
  });

  it("a value written with its own digits comes back the same", () => {
    const digits = fc.integer({ min: -1e14, max: 1e14 });
    fc.assert(
      fc.property(digits, fc.integer({ min: 0, max: 9 }), fc.constantFrom(...DISPLAYS), (n, places, display) => {
        const value = decimal(n)
          .dividedBy(decimal(10).pow(places + 3))
          .toDecimalPlaces(9);
        const text = `${value.toFixed()} ${pretty(display)}`.trim();
        const back = read(text, display.symbol);
        expect(inUnit(back, display).minus(value).abs().lte("1e-25")).toBe(true);
        expect(back.written?.symbol).toBe(display.symbol);
      }),
    );
  });

  it("a marked length is taken in again, within 1/32 in or half a millimetre", () => {
    fc.assert(
      fc.property(fc.integer({ min: -1e8, max: 1e8 }), (n) => {
        const given = quantity(decimal(n).dividedBy(997), "mm");
        const inches = read(marked(given, "inch-pound"), "mm");
        expect(inches.value.minus(given.value).abs().lte("0.79375")).toBe(true); // 25.4 mm ÷ 32
        expect(marked(inches, "inch-pound")).toBe(marked(given, "inch-pound"));
        const metric = read(marked(given, "metric"), "mm");
        expect(metric.value.minus(given.value).abs().lte("0.5")).toBe(true);
      }),
    );
  });

  it("every sixty-fourth of an inch is read exactly", () => {
    for (let n = 1; n < 64; n++) {
      expect(read(`5 ${n}/64 in`, "mm").value.eq(decimal(n).times("0.396875").plus("127"))).toBe(true);
    }
  });
});

describe("a length on a tape", () => {
  const in_ = (text: string, symbol: string, limit?: "least" | "most") => onTape(exactly(text), unit(symbol), limit);

  it("is told to the sixteenth of an inch or the millimetre; what is less than a mark, as it is", () => {
    expect([in_("6.364 in", "in"), in_("9 in", "ft"), in_("6.3 mm", "mm"), in_("4.3501 m", "m")]).toEqual([
      "6 3/8 in",
      `9"`,
      "6 mm",
      "4.35 m",
    ]);
    expect([in_("0.01 in", "in"), in_("0 in", "in"), in_("0.4 mm", "mm")]).toEqual(["0.01 in", "0 in", "0.4 mm"]);
    expect(onTape({ value: decimal("3"), unit: unit("") })).toBe("3");
  });

  it("goes up for what is the least and down for what is the most, so that who does as told passes", () => {
    expect([in_("6.364 in", "in", "least"), in_("6.364 in", "in", "most")]).toEqual(["6 3/8 in", "6 5/16 in"]);
    expect([in_("6.3 mm", "mm", "least"), in_("6.3 mm", "mm", "most")]).toEqual(["7 mm", "6 mm"]);
    expect([in_("6 1/2 in", "in", "least"), in_("6 1/2 in", "in", "most")]).toEqual(["6 1/2 in", "6 1/2 in"]);
  });
});

describe("a gauge or a drill", () => {
  it("is said in sixty-fourths or as the decimals that it is; in millimetres to the tenth", () => {
    const said = ["0.234375 in", "0.148 in", "0.25 in", "1 1/2 in"].map((text) => gauge(exactly(text), "inch-pound"));
    expect(said).toEqual(["15/64 in", "0.148 in", "1/4 in", "1 1/2 in"]);
    expect([gauge(exactly("4.8 mm"), "metric"), gauge(exactly("12 mm"), "metric")]).toEqual(["4.8 mm", "12 mm"]);
  });
});

describe("money as people write it", () => {
  it.each([
    ["4060.69", "USD", "$4060.69"],
    ["-12.5", "USD", "−$12.50"],
    ["-0.001", "USD", "$0.00"],
    ["12345.005", "EUR", "€12\u202f345.01"],
    ["1234567.8", "GBP", "£1\u202f234\u202f567.80"],
    ["812", "NOK", "812.00 NOK"],
    ["1999.5", "JPY", "2000 JPY"],
  ])("writes %s %s as %s", (value, currency, words) => {
    expect(moneyText(decimal(value), currency)).toBe(words);
  });
});
