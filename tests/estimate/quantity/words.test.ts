import { expect, it } from "vitest";
import { decimal } from "../../../src/estimate/quantity/decimal.js";
import { about } from "../../../src/estimate/quantity/words.js";

it.each([
  ["12.5324", 1, "about 12.5"],
  ["12.5", 1, "12.5"],
  ["40", 0, "40"],
  ["40.2", 0, "about 40"],
  ["0.04", 1, "under 0.1"],
  ["-0.04", 1, "under 0.1"],
] as const)("%s hours to %i places are %s", (hours, places, words) => {
  expect(about(decimal(hours), places)).toBe(words);
});
