import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { exactly } from "../../../src/estimate/quantity/text.js";
import { evaluateAgain } from "../../../src/estimate/sheet/evaluate.js";
import type { OverrideText } from "../../../src/estimate/sheet/overriding.js";
import { layOwnLines, MOST_OWN_LINES, type OwnLine, ownLines } from "../../../src/estimate/sheet/own-lines.js";
import { Sheet } from "../../../src/estimate/sheet/sheet.js";

/** A small estimate for the lines to name. */
function estimate(overrides: Record<string, OverrideText> = {}): Sheet {
  const sheet = new Sheet(new Map(Object.entries(overrides)));
  sheet.input("crew.days", exactly("3"));
  sheet.input("labor.value", exactly("$18/person-h"));
  sheet.input("roof.eave-length", exactly("26 ft"));
  sheet.input("roof.area", exactly("523.12 ft2"));
  sheet.input("crew.people", exactly("2 people"));
  sheet.input("nothing", exactly("0"));
  return sheet;
}

const line = (name: string, formula: string, more: Partial<OwnLine> = {}): OwnLine => ({
  name,
  label: name,
  formula,
  ...more,
});

/** The lines on a sheet on which nothing else is laid. */
function laid(...given: Parameters<typeof layOwnLines>) {
  const { cells, faults } = layOwnLines(...given);
  return { cells, faults: faults() };
}

/** What one line comes to, as people see it, and how it counts. */
function single(formula: string): string {
  const sheet = estimate();
  const { cells, faults } = laid(sheet, [line("x", formula)]);
  if (faults[0]) return `${faults[0].code}: ${faults[0].wrong} ${faults[0].cure}`;
  return `${cells[0]?.counts}: ${sheet.shown(cells[0]?.cell as never)}`;
}

describe("the user's own lines", () => {
  it.each([
    ["$450", "money: 450.00 USD"],
    ["crew.days × $450", "money: 1350.00 USD"],
    ["$0.333 × crew.days", "money: 1.00 USD"], // 0.999, to the cent
    ["-$100.005", "money: -100.01 USD"], // half a cent away from zero
    ["roof.area / 150 ft2/gal × $41.50/gal", "money: 144.73 USD"], // 523.12 ÷ 150 = 3.48746…, × 41.5 = 144.7298…
    ["500 JPY / 3", "money: 167 JPY"],
    ["2 person-h × labor.value", "money: 36.00 USD"],
    ["3 person-h + 30 person-min", "hours: 3.5 person-h"],
    ["16 person-h / 8 h", "other: 2 person-h/h"],
    ["2 h", "other: 2 h"],
    ["crew.people × 2 h", "hours: 4 person-h"],
    ["roof.eave-length + 18 in", "other: 27.5 ft"],
    ["18 in + roof.eave-length", "other: 330 in"],
    ["12 % × 50", "other: 600 %"],
    ["roof.area / (2 ft × 8 ft)", "other: 32.695"],
  ])("%s comes to %s", (formula, expected) => {
    expect(single(formula)).toBe(expected);
  });

  it("become cells that are live, shown with their working, and may be overridden", () => {
    const sheet = estimate({ "own.permit": "$75" });
    const { cells, faults } = laid(sheet, [
      line("crane", "crew.days × $450", { label: "Crane", department: "hire" }),
      line("permit", "$60"),
    ]);
    expect(faults).toEqual([]);
    const [crane, permit] = cells.map((one) => one.cell);
    expect(crane).toMatchObject({ name: "own.crane", label: "Crane", kind: "formula" });
    expect(cells[0]?.line.department).toBe("hire");
    expect(sheet.workingLine(crane as never)).toBe("toCent(crew.days × 450 USD) = toCent(3 × 450 USD) = 1350.00 USD");
    expect(permit).toMatchObject({ kind: "override" });
    expect(sheet.in(permit as never, "USD").toString()).toBe("75");
    expect(sheet.overrideFaults()).toEqual([]);
    const again = evaluateAgain(sheet.cells, new Map([["crew.days", exactly("5").value]]));
    expect(again(crane as never).toString()).toBe("2250");
  });

  it("may name one another in any order, and come back in the order given", () => {
    const sheet = estimate();
    const { cells, faults } = laid(sheet, [line("total", "own.a + own.b"), line("b", "own.a × 2"), line("a", "$10")]);
    expect(faults).toEqual([]);
    expect(cells.map((one) => `${one.line.name} ${sheet.shown(one.cell)}`)).toEqual([
      "total 30.00 USD",
      "b 20.00 USD",
      "a 10.00 USD",
    ]);
    expect(ownLines([line("total", "own.a"), line("a", "$10")]).lines.map((one) => one.line.name)).toEqual([
      "a",
      "total",
    ]);
  });

  it("refuses a circle with its path, and lays the lines outside it", () => {
    const sheet = estimate();
    const { cells, faults } = laid(sheet, [
      line("before", "own.a"),
      line("a", "own.b + $1"),
      line("b", "own.c × 2"),
      line("c", "own.a - $1"),
      line("free", "$5"),
      line("self", "own.self"),
      line("after", "own.a"),
    ]);
    expect(faults).toEqual([
      {
        code: "circular-lines",
        at: "/lines/1/formula",
        wrong: "These lines refer to one another in a circle: own.a → own.b → own.c → own.a.",
        cure: expect.any(String),
      },
      expect.objectContaining({
        code: "circular-lines",
        at: "/lines/5/formula",
        wrong: expect.stringContaining("own.self → own.self"),
      }),
    ]);
    expect(cells.map((one) => one.line.name)).toEqual(["free"]);
  });

  it.each([
    [
      "roof.eave-lenght × 2",
      "unknown-name: At character 1, no cell is called “roof.eave-lenght”. Did you mean roof.eave-length?",
    ],
    [
      "crew.days-1",
      "unknown-name: At character 1, no cell is called “crew.days-1”. Did you mean crew.days? A minus sign between names needs a space on either side.",
    ],
    [
      "$5 + zzzzzzzzzzzzzzzzzzz",
      "unknown-name: At character 6, no cell is called “zzzzzzzzzzzzzzzzzzz”. Take a name from the sheet of an estimate.",
    ],
    ["x", "unknown-name: At character 1, no cell is called “x”. Did you mean own.x?"],
    [
      "roof.eave-length + $5",
      `wrong-dimension: At character 18, a length and an amount of money in USD cannot be added. Give a length, such as 14 ft, 12' 6", 2 1/4 in or 95 mm, on both sides of the sign.`,
    ],
    [
      "2 h + 1 person-h",
      "wrong-dimension: At character 5, a time and an amount of work cannot be added. Write person-h for hours of work; h is an hour on the clock.",
    ],
    [
      "2 h × labor.value",
      "wrong-dimension: The line comes out in USD·h/person-h: hours on the clock and hours of work are mixed. Write person-h for hours of work; h is an hour on the clock.",
    ],
    [
      "$5 + €5",
      "currency-mix: At character 4, an amount of money in USD and an amount of money in EUR cannot be added.",
    ],
    ["$5/ft × €5", "currency-mix: At character 7, USD and EUR meet."],
    [
      "roof.area × roof.area × roof.area",
      "wrong-dimension: At character 23, the formula comes to mm6, which measures nothing.",
    ],
    ["$5 / nothing", "out-of-range: The cell own.x has no finite value (nothing = 0)."],
    ["$5 +", "bad-formula: “$5 +” cannot be read at character 5"],
  ])("%s is a fault, not a throw", (formula, expected) => {
    expect(single(formula)).toContain(expected);
  });

  it("refuses a value past the exponent fence", () => {
    expect(single(Array(9).fill("999999999999").join(" × "))).toContain("out-of-range");
  });

  it.each(["", "-a", "a-", "a b", "a.b", "a/b", "__proto__", "x".repeat(61), "é"])(
    "a line can't be called %j",
    (name) => {
      const { cells, faults } = laid(estimate(), [line(name, "$5")]);
      expect(cells).toEqual([]);
      expect(faults).toEqual([expect.objectContaining({ code: "wrong-shape", at: "/lines/0/name" })]);
    },
  );

  it("refuses a name twice, a name on the sheet already, and too many lines", () => {
    const sheet = estimate();
    sheet.input("own.taken", exactly("1"));
    const { cells, faults } = laid(sheet, [line("a", "$1"), line("a", "$2"), line("taken", "$3")], { at: "/x" });
    expect(cells.map((one) => one.line.formula)).toEqual(["$1"]);
    expect(faults.map((fault) => [fault.code, fault.at])).toEqual([
      ["duplicate-name", "/x/1/name"],
      ["duplicate-name", "/x/2/formula"],
    ]);
    const many = Array.from({ length: MOST_OWN_LINES + 1 }, (_, i) => line(`a${i}`, "$1"));
    expect(laid(estimate(), many).faults).toEqual([expect.objectContaining({ code: "too-large", at: "/lines" })]);
  });

  it("refuses money of another currency than the estimate's", () => {
    const { faults } = laid(estimate(), [line("a", "€5")], { currency: "USD" });
    expect(faults).toEqual([
      expect.objectContaining({
        code: "currency-mix",
        wrong: "The line comes out in EUR, and the estimate is in USD.",
      }),
    ]);
  });

  it("gives a line that names a faulty one no fault of its own", () => {
    const { cells, faults } = laid(estimate(), [line("a", "own.b"), line("b", "1 +"), line("c", "own.a × 2")]);
    expect(cells).toEqual([]);
    expect(faults.map((fault) => fault.at)).toEqual(["/lines/1/formula"]);
  });

  it("tells a line that names a cell laid after it so, when everything is laid", () => {
    const sheet = estimate();
    const { faults } = layOwnLines(sheet, [line("a", "mixed.cash × 10 %"), line("b", "mixed.cas × 10 %")]);
    sheet.input("mixed.cash", exactly("$100"));
    expect(faults().map(({ at, wrong, cure }) => [at, wrong, cure])).toEqual([
      [
        "/lines/0/formula",
        "The cell mixed.cash is worked out after your lines, which count in the totals of every route.",
        "Name cells of the structure, the pieces, the takeoffs, the logs, labor and prices.",
      ],
      ["/lines/1/formula", "At character 1, no cell is called “mixed.cas”.", expect.stringContaining("Take a name")],
    ]);
  });

  it("never throws, and every cell that it lays can be shown with its working", () => {
    const word = fc.constantFrom(
      ...[
        "crew.days",
        "labor.value",
        "roof.eave-length",
        "roof.area",
        "nothing",
        "own.b",
        "own.c",
        "$4.50/ft",
        "2 h",
        "3 person-h",
      ],
      ...["+", "-", "×", "÷", "(", ")", "-2", "12 %", "1/2 in", "$450", "€3", "5 gal", "1,000,000 mi"],
    );
    const formula = fc.array(word, { minLength: 1, maxLength: 12 }).map((words) => words.join(" "));
    fc.assert(
      fc.property(formula, formula, formula, (a, b, c) => {
        const sheet = estimate();
        const { cells, faults } = laid(sheet, [line("a", a), line("b", b), line("c", c)]);
        expect(cells.length + faults.length).toBeGreaterThan(0);
        for (const { cell } of cells) expect(sheet.workingLine(cell)).toContain(sheet.shown(cell));
        for (const fault of faults) expect(fault.cure).not.toBe("");
      }),
      { numRuns: 1000 },
    );
  });
});
