import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { shown } from "../../../src/estimate/quantity/text.js";
import { FormulaFault, type FormulaNode, namesIn, parseFormula } from "../../../src/estimate/sheet/own-formula.js";

/** Fully bracketed, so that it shows what binds to what. */
function spelled(node: FormulaNode | FormulaFault): string {
  if (node instanceof FormulaFault) throw new Error(`${node.wrong} ${node.cure}`);
  if (node.kind === "quantity") return shown(node.value, node.value.written);
  if (node.kind === "name") return node.name;
  if (node.kind === "negative") return `(-${spelled(node.of)})`;
  return `(${spelled(node.left)} ${node.kind} ${spelled(node.right)})`;
}

describe("a formula of one's own", () => {
  it.each([
    ["$450", "450.00 USD"],
    ["2 h", "2 h"],
    ["12.5 ft2", "12.5 ft²"],
    ["a + b * c", "(a plus (b times c))"],
    ["(a + b) * c", "((a plus b) times c)"],
    ["a − b − c", "((a minus b) minus c)"],
    ["a / b / c", "((a over b) over c)"],
    ["a ÷ b × c · d", "(((a over b) times c) times d)"],
    ["-a + -3 ft", "((-a) plus (-3 ft))"],
    ["--a", "(-(-a))"],
    ["2 * -a", "(2 times (-a))"],
    ["crew.days × $450 + 2 h × labor.value", "((crew.days times 450.00 USD) plus (2 h times labor.value))"],
  ])("%s is %s", (text, tree) => {
    expect(spelled(parseFormula(text))).toBe(tree);
  });

  it.each([
    ["150 ft2/gal", "150 ft²/gal"],
    ["150 ft2 per gal × a", "(150 ft²/gal times a)"],
    ["$4.85/ft × a", "(4.85 USD/ft times a)"],
    ["$4.85 per ft × a", "(4.85 USD/ft times a)"],
    ["$450 / crew.days", "(450.00 USD over crew.days)"],
    ["$450/crew.days", "(450.00 USD over crew.days)"],
    ["2 h/3", "(2 h over 3)"],
    ["12 ft / 3 ft", "(12 ft over 3 ft)"],
    ["2 h/roof.count", "(2 h over roof.count)"],
    ["5 sq ft + a", "(5 ft² plus a)"],
    ["12 % × a", "(12 % times a)"],
    ["12% × a", "(12 % times a)"],
    ["450 USD - own.x", "(450.00 USD minus own.x)"],
    ["1,200 ft", "1200 ft"],
  ])("a number takes the longest unit behind it: %s is %s", (text, tree) => {
    expect(spelled(parseFormula(text))).toBe(tree);
  });

  it.each([
    [`14' 6 1/2" + 3 in`, "(14.542 ft plus 3 in)"],
    [`14'-6" - 2 1/4 in`, "(14.5 ft minus 2.25 in)"],
    ["14 ft 6 in", "14.5 ft"],
    ["14 ft - 6 in", "(14 ft minus 6 in)"],
    ["1/2 in", "0.5 in"],
    ["1/3", "(1 over 3)"],
    [`3/4" × n`, "(0.75 in times n)"],
  ])("lengths and fractions are written as the trade does: %s is %s", (text, tree) => {
    expect(spelled(parseFormula(text))).toBe(tree);
  });

  it.each([
    ["roof.eave-length × 2", "(roof.eave-length times 2)"],
    ["own.3-crane × 2", "(own.3-crane times 2)"],
    ["a-b - c", "(a-b minus c)"],
    ["a - b", "(a minus b)"],
    ["a -b", "(a minus b)"],
    ["a- b", "(a minus b)"],
  ])("names hold dots and hyphens, so a minus sign wants spaces: %s is %s", (text, tree) => {
    expect(spelled(parseFormula(text))).toBe(tree);
  });

  it.each([
    ["", 1, "a value is missing at the end"],
    ["a +", 4, "a value is missing at the end"],
    ["a + × b", 5, "a value is missing"],
    ["(a + b", 7, "the bracket opened at character 1 is not closed"],
    ["a + b)", 6, "nothing can follow here"],
    ["f(a; b)", 2, "nothing can follow here"],
    ["2(a)", 2, "nothing can follow here"],
    ["3 roof", 3, "no sign stands before “roof”, and it is no unit"],
    ["5 furlong", 3, "no sign stands before “furlong”, and it is no unit"],
    ["3 x 4 ft", 3, "no sign stands before “x”"],
    ["1e5", 2, "no sign stands before “e5”"],
    ["0x10", 2, "no sign stands before “x10”"],
    ["1,20 ft", 1, "is no number"],
    ["1234567890123 m", 1, "is no number"],
    ["=SUM(A1)", 1, "a value is missing"],
    ["🌲", 1, "a value is missing"],
  ])("%j is refused at character %i", (text, at, wrong) => {
    const fault = parseFormula(text) as FormulaFault;
    expect(fault).toBeInstanceOf(FormulaFault);
    expect(fault.wrong).toContain(`cannot be read at character ${at}: `);
    expect(fault.wrong).toContain(wrong);
    expect(fault.cure).toMatch(/^(Give|Write|Close|Use) /);
  });

  it("is at most 500 characters long and 50 brackets deep", () => {
    expect(parseFormula(`${"a+".repeat(249)}aa`)).not.toBeInstanceOf(FormulaFault);
    expect(parseFormula(`${"a+".repeat(250)}a`)).toMatchObject({ wrong: "The formula has 501 characters." });
    expect(parseFormula(`${"(".repeat(50)}a${")".repeat(50)}`)).not.toBeInstanceOf(FormulaFault);
    expect(parseFormula(`${"(".repeat(51)}a${")".repeat(51)}`)).toMatchObject({
      wrong: expect.stringContaining("deeper"),
    });
    expect(parseFormula(`${"-".repeat(51)}a`)).toMatchObject({ wrong: expect.stringContaining("deeper") });
  });

  // What took exponential time would run into the test's own limit of time.
  it("never throws, and never hangs, whatever is written", () => {
    const near = fc.string({ unit: fc.constantFrom(..."ab.-+−×*÷/()0123 '\"$€%ftinhUSDper²,·"), maxLength: 520 });
    fc.assert(
      fc.property(fc.oneof(fc.string({ maxLength: 600 }), near), (text) => {
        const found = parseFormula(text);
        expect(found instanceof FormulaFault || namesIn(found).length >= 0).toBe(true);
      }),
      { numRuns: 2000 },
    );
    for (const hard of [
      "1 ".repeat(250),
      `1 ${"ft/".repeat(166)}`,
      "9".repeat(500),
      `14'${" ".repeat(490)}`,
      "1/".repeat(250),
    ]) {
      expect(parseFormula(hard)).toBeDefined();
    }
  });

  it("tells the names that it needs, each once, in the order written", () => {
    expect(namesIn(parseFormula("b × (a - b) + 2 h × c.d") as FormulaNode)).toEqual(["b", "a", "c.d"]);
  });
});
