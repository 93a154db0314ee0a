import { describe, expect, it } from "vitest";
import { FaultError } from "../../../src/estimate/faults.js";
import { Decimal, decimal } from "../../../src/estimate/quantity/decimal.js";
import { wholeNumber } from "../../../src/estimate/quantity/whole.js";

describe("a whole number of a decimal", () => {
  it.each(["0", "-3", "26", "9007199254740991"])("is %s itself", (text) => {
    expect(wholeNumber(decimal(text)).toString()).toBe(text);
  });

  it.each(["0.5", "25.999999999999999999", "-0.000000001"])("is refused of %s, which has a fraction", (text) => {
    expect(() => wholeNumber(decimal(text))).toThrow(/no whole number/);
  });

  it.each(["9007199254740992", "1e40"])(
    "of %s is a fault in what was asked, for no number holds it exactly",
    (text) => {
      expect(() => wholeNumber(decimal(text))).toThrow(FaultError);
    },
  );

  it("of what has no end is a fault, too", () => {
    expect(() => wholeNumber(new Decimal(Number.POSITIVE_INFINITY))).toThrow(FaultError);
  });
});
