import { describe, expect, it } from "vitest";
import { z } from "zod";
import {
  CURRENCIES,
  lineField,
  moneyField,
  nameField,
  priceField,
  quantityField,
  readShape,
  sectionField,
  toQuantity,
  toSection,
} from "../../src/catalog/reading.js";
import { alsoCalled, MOST_FAULTS } from "../../src/catalog/shape-faults.js";
import type { Fault } from "../../src/estimate/faults.js";
import { inUnit } from "../../src/estimate/quantity/quantity.js";
import { minorDigits } from "../../src/estimate/quantity/unit.js";

const schema = z.strictObject({
  length: quantityField("ft", { describe: "Length.", example: "14 ft", most: "100 ft" }).optional(),
  slack: quantityField("in", { describe: "Slack.", example: "1/4 in", sign: "not-negative" }).optional(),
  level: quantityField("in", { describe: "Level.", example: "-3 in", sign: "any" }).optional(),
  hours: quantityField("person-h", { describe: "Work.", example: "3 person-h" }).optional(),
  section: sectionField({ describe: "Section.", example: "2 x 6 in" }).optional(),
  cost: moneyField("ft", { describe: "Cost.", example: "4.85" }).optional(),
  price: priceField("", { describe: "Price.", example: "9.48" }),
  bow: z
    .union([z.enum(["straight", "some"]), quantityField("in", { describe: "Bow.", example: "1 in", most: "9 in" })])
    .optional()
    .meta({ examples: ["some"] }),
  kind: z.enum(["gable", "lean-to"]).optional(),
  many: z.array(z.int().min(1).max(9)).max(3).optional(),
  flag: z.boolean().optional(),
  name: nameField("Name.", "east-post").optional(),
  line: lineField("Line.", "anything").optional(),
  needed: z.string().meta({ examples: ["here"] }),
});

function faultsOf(input: object, currency: "USD" | "EUR" = "USD"): readonly Fault[] {
  const read = readShape(schema, { needed: "here", ...input }, { base: "/request", currency });
  return "faults" in read ? read.faults : [];
}

const only = (input: object) => {
  const faults = faultsOf(input);
  expect(faults).toHaveLength(1);
  return faults[0] as Fault;
};

describe("quantities at the door", () => {
  it.each([
    [{ length: "14' 6\"" }],
    [{ length: { value: "4.35", unit: "m" } }],
    [{ slack: "0 in" }],
    [{ level: "-3 in" }],
    [{ hours: "3 h" }],
    [{ section: "45 x 145 mm" }],
    [{ section: { thickness: "2 in", width: { value: "6", unit: "in" } } }],
    [{ cost: "$4.85/ft" }],
    [{ cost: "4.85 USD/m" }],
    [{ price: "$9.48" }],
    [{ price: null }],
    [{ bow: "some" }],
    [{ bow: "1 1/2 in" }],
    [{}],
  ])("are taken as the trade writes them: %j", (input) => {
    expect(faultsOf(input)).toEqual([]);
  });

  it.each([
    [{ length: "14" }, "not-a-quantity", "/request/length", "has no unit"],
    [{ length: "14 lb" }, "wrong-dimension", "/request/length", "is a mass"],
    [{ length: 14 }, "wrong-shape", "/request/length", "The value 14 has no unit"],
    [{ length: null }, "wrong-shape", "/request/length", "The value null"],
    [{ length: "-3 ft" }, "out-of-range", "/request/length", "is negative"],
    [{ length: "0 ft" }, "out-of-range", "/request/length", "is zero"],
    [{ length: "101 ft" }, "out-of-range", "/request/length", "more than makes sense"],
    [{ length: { value: "1e99", unit: "ft" } }, "wrong-shape", "/request/length/value", "“1e99”"],
    [{ length: { value: "3" } }, "missing-field", "/request/length/unit", "“unit” is absent"],
    [{ slack: "-1/4 in" }, "out-of-range", "/request/slack", "is negative"],
    [{ section: "2 x 0 in" }, "out-of-range", "/request/section", "has no size"],
    [{ section: "999999 x 4 in" }, "out-of-range", "/request/section", "more than makes sense"],
    [{ section: { thickness: "2 in", width: "5 ft" } }, "out-of-range", "/request/section/width", "more than"],
    [{ section: "2 by 6" }, "not-a-quantity", "/request/section", "is not a section"],
    [{ section: { value: "2", unit: "in" } }, "missing-field", "/request/section/thickness", "is absent"],
    [{ cost: "€4.85/ft" }, "currency-mix", "/request/cost", "is in EUR, and the other prices are in USD"],
    [{ cost: "$4.85" }, "wrong-dimension", "/request/cost", "an amount of money"],
    [{ price: "$-9" }, "not-a-quantity", "/request/price", "“$-9”"],
    [{ price: "-$9" }, "out-of-range", "/request/price", "is negative"],
    [{ kind: "gabel" }, "unknown-name", "/request/kind", "“gabel”"],
    [{ kind: 3 }, "wrong-shape", "/request/kind", "The value 3"],
    [{ many: [1, 2, 3, 4] }, "too-large", "/request/many", "The list has 4 entries"],
    [{ many: [0] }, "out-of-range", "/request/many/0", "outside the limit"],
    [{ many: [1.5] }, "wrong-shape", "/request/many/0", "The value 1.5"],
    [{ many: {} }, "wrong-shape", "/request/many", "An object"],
    [{ flag: "yes" }, "wrong-shape", "/request/flag", "“yes”"],
    [{ name: "East Post" }, "wrong-shape", "/request/name", "“East Post”"],
    [{ line: "a\u0007b" }, "wrong-shape", "/request/line", "a\ufffdb"],
    [{ section: "1/64 x 2 in" }, "out-of-range", "/request/section", "less than makes sense"],
    [{ section: { thickness: "1 in", width: "0.5 mm" } }, "out-of-range", "/request/section/width", "less than"],
    // Turns the order of all that is printed after it.
    [{ line: "a\u202eb" }, "wrong-shape", "/request/line", "a\ufffdb"],
    [{ line: "x".repeat(121) }, "out-of-range", "/request/line", "121 characters"],
    [{ bow: "3 kg" }, "wrong-dimension", "/request/bow", "is a mass"],
    [{ bow: "crooked" }, "not-a-quantity", "/request/bow", "“crooked”"],
    [{ bow: "10 in" }, "out-of-range", "/request/bow", "more than makes sense"],
    [{ bow: { value: "3", unit: "kg" } }, "wrong-dimension", "/request/bow", "is a mass"],
    [{ bow: 3 }, "wrong-shape", "/request/bow", "The value 3"],
    [{ needed: undefined }, "missing-field", "/request/needed", "“needed” is absent"],
    [{ lenght: "3 ft" }, "unknown-field", "/request/lenght", "no field “lenght”"],
  ] as const)("are refused with code, place and value: %j", (input, code, at, wrong) => {
    const faults = faultsOf(input);
    expect(faults[0]).toMatchObject({ code, at });
    expect(faults[0]?.wrong).toContain(wrong);
    expect(faults[0]?.cure.length).toBeGreaterThan(5);
  });

  it("name the nearest known key, and the example of the field", () => {
    expect(only({ lenght: "3 ft" }).cure).toBe("Did you mean “length”?");
    expect(only({ needed: 3 }).cure).toBe('Give text, such as "here".');
    expect(only({ cost: "4 kg" }).cure).toBe("Give a rate, such as 4.85 USD/ft.");
    expect(faultsOf({ cost: "4 kg" }, "EUR")[0]?.cure).toBe("Give a rate, such as 4.85 EUR/ft.");
    expect(only({ bow: "crooked" }).cure).toMatch(/^Give a length, .* Or say straight or some\.$/);
    expect(only({ bow: 3 }).cure).toBe("Give text with its unit.");
    expect(only({ bow: false }).cure).toBe('Give text, such as "some".');
    expect(only({ kind: "gabel" }).cure).toBe("Did you mean “gable”? Give one of: gable, lean-to.");
  });

  it("name the character that nobody sees, and where it stands", () => {
    const hidden = { line: "a\u{1f332}\u202eb", name: "pine\u20281" };
    expect(faultsOf(hidden).map(({ wrong }) => wrong)).toEqual([
      "Character 5 of “pine\ufffd1” is U+2028, which cannot stand in a line of text.",
      "Character 3 of “a\u{1f332}\ufffdb” is U+202E, which cannot stand in a line of text.",
    ]);
  });

  it("name the name that a text could be", () => {
    expect(only({ name: " Pine 1" }).cure).toBe("Give lower-case letters, digits and hyphens, such as pine-1.");
    expect(only({ name: "\u6728" }).cure).toMatch(/such as [a-z-]+\.$/);
  });

  it("name the field that the trade calls otherwise, with what it takes", () => {
    const roof = z.strictObject({ slope: quantityField("in", { describe: "Slope.", example: "5 in" }).optional() });
    alsoCalled(roof, { pitch: "slope" });
    const read = readShape(z.strictObject({ roofs: z.array(roof.optional()) }), { roofs: [{ pitch: 5, toString: 1 }] });
    expect("faults" in read && read.faults.map(({ cure }) => cure)).toEqual([
      'It is called “slope” here. Give text, such as "5 in".',
      "Known here: slope.",
    ]);
  });

  it("are those of the form whose keys are named, not of the form with the fewest faults", () => {
    const either = z.strictObject({
      catalog: z.union([
        z.strictObject({ demo: z.string() }),
        z.strictObject({
          name: z.string(),
          currency: z.enum(["USD"]),
          rows: z.array(z.strictObject({ a: z.string() })),
        }),
      ]),
    });
    const at = (catalog: object) => {
      const read = readShape(either, { catalog });
      return "faults" in read ? read.faults.map((one) => one.at) : [];
    };
    const rows = [{}, {}, { b: 1 }];
    expect(at({ name: "Mine", currency: "USD", rows })).toEqual([
      ...["/catalog/rows/0/a", "/catalog/rows/1/a", "/catalog/rows/2/a", "/catalog/rows/2/b"],
    ]);
    expect(at({ demo: 3, colour: "red" })).toEqual(["/catalog/demo", "/catalog/colour"]);
  });

  it("are all reported together, shape and texts in one answer", () => {
    const codes = faultsOf({ length: "14", section: 3, lenght: "x", cost: "€1/ft" }).map(({ code }) => code);
    expect([...codes].sort()).toEqual(["currency-mix", "not-a-quantity", "unknown-field", "wrong-shape"]);
  });

  it("stop being counted at the limit, however many there are", () => {
    const unknown = Object.fromEntries(Array.from({ length: 5000 }, (_, i) => [`k${i}`, 1]));
    expect(faultsOf(unknown)).toHaveLength(MOST_FAULTS);
  });

  it("refuse a __proto__ key as any unknown one", () => {
    const input = JSON.parse('{"needed":"here","__proto__":{"length":"3 ft"}}');
    const read = readShape(schema, input);
    expect("faults" in read && read.faults).toMatchObject([{ code: "unknown-field", at: "/__proto__" }]);
  });

  it("come back exact, and a bug throws rather than guesses", () => {
    expect(inUnit(toQuantity("14' 6 1/2\"", "ft"), "in").toFixed()).toBe("174.5");
    expect(inUnit(toSection({ thickness: "2 in", width: "6 in" }).width, "mm").toFixed()).toBe("152.4");
    expect(() => toQuantity("14", "ft")).toThrow(/no unit/);
    expect(() => toSection("3")).toThrow(/not a section/);
  });

  it("can be described: the schema holds nothing that JSON Schema cannot say", () => {
    const described = z.toJSONSchema(schema, { io: "input" }) as { properties: Record<string, object> };
    expect(described.properties.length).toMatchObject({ description: "Length.", examples: ["14 ft"] });
  });

  it("know every currency's minor unit", () => {
    expect(CURRENCIES.map(minorDigits)).not.toContain(undefined);
  });
});
