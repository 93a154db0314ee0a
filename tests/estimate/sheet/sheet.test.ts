import { describe, expect, it } from "vitest";
import { exactly } from "../../../src/estimate/quantity/text.js";
import { evaluateAgain } from "../../../src/estimate/sheet/evaluate.js";
import { minus, number, over, plus, roundUp, times, when } from "../../../src/estimate/sheet/expression.js";
import type { OverrideText } from "../../../src/estimate/sheet/overriding.js";
import { plain, Sheet } from "../../../src/estimate/sheet/sheet.js";

/** A fence: posts on a spacing, rails by the foot, a price in the catalog, a plan of stock lengths. */
function fence(overrides: Record<string, OverrideText> = {}): Sheet {
  const sheet = new Sheet(new Map(Object.entries(overrides)));
  const length = sheet.input("fence.length", exactly("24 ft"), { label: "Length of the fence" });
  const spacing = sheet.input("fence.spacing", exactly("8 ft"));
  const price = sheet.catalog("price.rail", exactly("$1.25/ft"), { source: "price list" });
  const waste = sheet.assumption(
    "waste",
    { low: exactly("5 %"), likely: exactly("10 %"), high: exactly("20 %") },
    { source: "assumption" },
  );
  const posts = sheet.lay("fence.posts", plus(roundUp(over(length, spacing)), number("1")));
  const rails = sheet.lay("fence.rails", times(length, number("3"), plus(number("1"), waste)), { display: "ft" });
  sheet.planned("fence.bought", exactly("84 ft"), { bound: exactly("80 ft").value, covers: "stock lengths" });
  sheet.lay("cost.rails", times(rails, price));
  sheet.lay("cost.perPost", over(times(rails, price), posts));
  return sheet;
}
const shown = (sheet: Sheet, name: string): string => sheet.shown(sheet.find(name) as never);
const named = (sheet: Sheet, name: string) => sheet.find(name) as NonNullable<ReturnType<Sheet["find"]>>;

describe("laying", () => {
  it("keeps the order, the kinds, the words and the sources", () => {
    const sheet = fence();
    expect(sheet.cells.map((cell) => `${cell.name} ${cell.kind}`)).toEqual([
      "fence.length input",
      "fence.spacing input",
      "price.rail catalog",
      "waste assumption",
      "fence.posts formula",
      "fence.rails formula",
      "fence.bought planned",
      "cost.rails formula",
      "cost.perPost formula",
    ]);
    expect(named(sheet, "fence.length").label).toBe("Length of the fence");
    expect(named(sheet, "fence.posts").label).toBe("fence.posts");
    expect(named(sheet, "price.rail").source).toBe("price list");
    expect(named(sheet, "waste").range?.high.toString()).toBe("0.2");
    expect(named(sheet, "fence.bought").proof).toMatchObject({ covers: "stock lengths" });
  });

  it("comes to what is worked by hand", () => {
    const sheet = fence();
    expect(shown(sheet, "fence.posts")).toBe("4"); // 24 ÷ 8 = 3 spaces, 4 posts
    expect(shown(sheet, "fence.rails")).toBe("79.2 ft"); // 24 × 3 × 1.1
    expect(shown(sheet, "cost.rails")).toBe("99.00 USD"); // 79.2 × 1.25
    expect(sheet.workingLine(named(sheet, "cost.rails"))).toBe(
      "fence.rails × price.rail = 79.2 ft × 1.25 USD/ft = 99.00 USD",
    );
    expect(sheet.workingLine(named(sheet, "fence.length"))).toBe("24 ft");
    expect(sheet.working(named(sheet, "fence.length"))).toBeUndefined();
  });

  it("shows a value in the unit it was written in, or in the one asked for", () => {
    const sheet = new Sheet();
    expect(sheet.shown(sheet.input("a", exactly("30 in")))).toBe("30 in");
    expect(sheet.shown(sheet.input("b", exactly("30 in"), { display: "ft" }))).toBe("2.5 ft");
    expect(sheet.shown(sheet.lay("c", number("30 in")))).toBe("762 mm");
    expect(sheet.shown(sheet.input("d", plain("4")))).toBe("4");
  });

  it("refuses a name twice or out of form: a bug", () => {
    const sheet = fence();
    expect(() => sheet.lay("fence.posts", number("1"))).toThrow("laid twice");
    for (const name of ["", "1a", "a..b", "a.", ".a", "a b", "a−b", "é"]) {
      expect(() => sheet.lay(name, number("1"))).toThrow("can't be called");
    }
    expect(() => sheet.lay("a.1-b_c.D", number("1"))).not.toThrow();
  });

  it("keeps titles beside the cells", () => {
    const sheet = fence();
    sheet.title("fence", "The fence");
    expect(sheet.titleOf("fence")).toBe("The fence");
    expect(sheet.titleOf("roof")).toBeUndefined();
  });
});

describe("overrides", () => {
  it.each<[string, OverrideText, string, string]>([
    ["fence.length", "32 ft", "fence.posts", "5"], // an input, as text: 4 spaces
    ["fence.length", { value: "9.6", unit: "m" }, "fence.posts", "5"], // beside its unit: 31.5 ft, 4 spaces
    ["waste", "20 %", "fence.rails", "86.4 ft"], // an assumption: 72 × 1.2
    ["waste", { value: "0.2", unit: "" }, "fence.rails", "86.4 ft"],
    ["price.rail", "$2/ft", "cost.rails", "158.40 USD"], // a catalog price: 79.2 × 2
    ["price.rail", { value: "24", unit: "USD/yd" }, "cost.rails", "633.60 USD"], // $8 a foot
    ["fence.rails", "100 ft", "cost.rails", "125.00 USD"], // a formula
    ["fence.posts", { value: "9", unit: "" }, "cost.perPost", "11.00 USD"],
  ])("%s as %j makes %s %s", (name, text, seen, expected) => {
    const sheet = fence({ [name]: text });
    expect([...sheet.faults, ...sheet.overrideFaults()]).toEqual([]);
    expect(named(sheet, name).kind).toBe("override");
    expect(shown(sheet, seen)).toBe(expected);
  });

  it("keep the formula or the range beneath, for taking the override back", () => {
    const sheet = fence({ "fence.posts": "9" });
    expect(named(sheet, "fence.posts").expression?.kind).toBe("plus");
    expect(named(fence({ waste: "15 %" }), "waste").range?.high.toString()).toBe("0.2");
  });

  it.each<[string, OverrideText, string]>([
    ["fence.length", "$5", "wrong-dimension"],
    ["fence.length", "32", "not-a-quantity"],
    ["fence.length", "NaN ft", "not-a-quantity"],
    ["fence.length", { value: "5", unit: "furlong" }, "not-a-quantity"],
    ["fence.length", { value: "5", unit: "lb" }, "wrong-dimension"],
    ["fence.length", { value: "1e9", unit: "ft" }, "not-a-quantity"],
    ["fence.posts", "5 ft", "wrong-dimension"],
    ["price.rail", "$5", "wrong-dimension"],
    ["price.rail", "€5/ft", "wrong-dimension"],
  ])("%s as %j is a fault at its place, and the sheet's own value stays", (name, text, code) => {
    const sheet = fence({ [name]: text });
    expect(sheet.faults).toEqual([
      { code, at: `/overrides/${name}`, wrong: expect.any(String), cure: expect.stringMatching(/^(Give|Use) ./) },
    ]);
    expect(named(sheet, name).value.eq(named(fence(), name).value)).toBe(true);
    expect(sheet.overrideFaults()).toEqual([]);
  });

  it("that name no cell are faults, with the nearest name", () => {
    const sheet = fence({ "fence.lenght": "5 ft", "zz/~": "1" });
    expect(sheet.overrideFaults()).toEqual([
      {
        code: "unknown-name",
        at: "/overrides/fence.lenght",
        wrong: "No cell is called fence.lenght.",
        cure: "Did you mean fence.length?",
      },
      expect.objectContaining({ at: "/overrides/zz~1~0", cure: "Take a name from the sheet of an estimate." }),
    ]);
  });

  it("cannot take the place of what a plan found", () => {
    const sheet = fence({ "fence.bought": "1 ft" });
    expect(sheet.faults).toEqual([
      expect.objectContaining({
        code: "not-overridable",
        at: "/overrides/fence.bought",
        cure: expect.stringContaining("held plan"),
      }),
    ]);
    expect(shown(sheet, "fence.bought")).toBe("84 ft");
    expect(sheet.overrideFaults()).toEqual([]);
  });
});

describe("what depends on what", () => {
  const names = (cells: readonly { name: string }[]): string[] => cells.map((cell) => cell.name);

  it("tells every cell that may move, in the order laid", () => {
    const sheet = fence();
    expect(names(sheet.dependents(named(sheet, "waste")))).toEqual(["fence.rails", "cost.rails", "cost.perPost"]);
    expect(names(sheet.dependents(named(sheet, "fence.spacing")))).toEqual(["fence.posts", "cost.perPost"]);
    expect(names(sheet.dependents(named(sheet, "cost.perPost")))).toEqual([]);
  });

  it("stops at an override", () => {
    const sheet = fence({ "fence.rails": "100 ft" });
    expect(names(sheet.dependents(named(sheet, "waste")))).toEqual([]);
    expect(names(sheet.dependents(named(sheet, "fence.rails")))).toEqual(["cost.rails", "cost.perPost"]);
  });

  it("a decision makes structural whatever it was worked out from, and nothing else", () => {
    const sheet = fence();
    expect(sheet.decide(named(sheet, "fence.posts")).toString()).toBe("4");
    expect(names(sheet.cells.filter((cell) => sheet.isStructural(cell)))).toEqual([
      "fence.length",
      "fence.spacing",
      "fence.posts",
    ]);
    expect(sheet.decideIn(named(sheet, "fence.rails"), "in").toString()).toBe("950.4");
    expect(sheet.isStructural(named(sheet, "waste"))).toBe(true);
    expect(sheet.isStructural(named(sheet, "price.rail"))).toBe(false);
    expect(sheet.isStructural(named(sheet, "cost.rails"))).toBe(false);
  });

  it("looking at a value is no decision", () => {
    const sheet = fence();
    sheet.in(named(sheet, "fence.posts"), "");
    sheet.shown(named(sheet, "fence.posts"));
    expect(sheet.cells.some((cell) => sheet.isStructural(cell))).toBe(false);
  });
});

describe("evaluating again", () => {
  it.each([
    ["fence.length", "31.7 ft"],
    ["fence.spacing", "5 ft"],
    ["price.rail", "0.99 USD/ft"],
    ["waste", "17.5 %"],
    ["fence.posts", "11"],
    ["fence.rails", "12.34 m"],
  ])("with %s changed to %s is the same as laying anew", (name, text) => {
    const anew = fence({ [name]: text });
    const sheet = fence();
    const again = evaluateAgain(sheet.cells, new Map([[name, named(anew, name).value]]));
    for (const cell of sheet.cells)
      expect([cell.name, again(cell).toFixed()]).toEqual([cell.name, named(anew, cell.name).value.toFixed()]);
  });

  it("leaves an override and a planned cell as they are", () => {
    const sheet = fence({ "fence.rails": "100 ft" });
    const again = evaluateAgain(sheet.cells, new Map([["fence.length", exactly("99 ft").value]]));
    expect(again(named(sheet, "fence.rails")).eq(exactly("100 ft").value)).toBe(true);
    expect(again(named(sheet, "fence.bought")).eq(exactly("84 ft").value)).toBe(true);
    expect(again(named(sheet, "fence.posts")).toString()).toBe("14"); // 12.4 spaces, 13, and one post more
  });
});

describe("workings", () => {
  const working = (formula: Parameters<Sheet["lay"]>[1], sheet: Sheet, display: string): string => {
    return sheet.working(sheet.lay("answer", formula, { display }))?.formula as string;
  };

  it("bracket what would otherwise be read another way", () => {
    const sheet = new Sheet();
    const [a, b, c] = ["a", "b", "c"].map((name) => sheet.input(name, exactly("2"))) as [never, never, never];
    const formulas = [
      minus(a, plus(b, c)),
      minus(minus(a, b), c),
      over(a, times(b, c)),
      over(over(a, b), c),
      times(plus(a, b), c),
      times(a, over(b, c)),
      plus(a, minus(b, c)),
    ];
    expect(formulas.map((formula, i) => sheet.working(sheet.lay(`answer${i}`, formula))?.formula)).toEqual([
      "a − (b + c)",
      "a − b − c",
      "a ÷ (b × c)",
      "a ÷ b ÷ c",
      "(a + b) × c",
      "a × (b ÷ c)",
      "a + b − c",
    ]);
  });

  it("name a factor only where units differ", () => {
    const sheet = new Sheet();
    const eave = sheet.input("eave", exactly("24 ft"));
    const [lap, price] = [sheet.input("lap", exactly("3 in")), sheet.input("price", exactly("$2/ft"))];
    expect(working(plus(eave, eave), sheet, "ft")).toBe("eave + eave");
    const other = new Sheet();
    for (const cell of [eave, lap, price])
      other.input(cell.name, { value: cell.value, unit: cell.unit, written: cell.display });
    const [e, l, p] = other.cells as [never, never, never];
    expect(working(times(p, l), other, "USD")).toBe("price × lap ÷ 12 in per ft");
    const metric = new Sheet();
    metric.input("eave", exactly("24 ft"));
    expect(working(metric.cells[0] as never, metric, "m")).toBe("eave × 0.3048 m per ft");
    expect([e, l].length).toBe(2);
  });

  it("write a choice with both its sides", () => {
    const sheet = new Sheet();
    const span = sheet.input("span", exactly("11 ft"));
    expect(working(when(span, "above", number("10 ft"), number("2"), number("1")), sheet, "")).toBe(
      "if(span > 10 ft; 2; 1)",
    );
  });
});
