/** For what the stack is waited: pieces that are sawn, not those that the logs lack. */
import { describe, expect, it } from "vitest";
import { estimated } from "../../helpers/estimating.js";

const boards = {
  ...{ name: "boards", role: "board", count: 3, section: "25 x 150 mm", length: "2 m" },
  ...{ surface: "rough", seasoning: "dried" },
};
const thick = {
  ...{ name: "thick", role: "rafter", count: 1, section: "100 x 250 mm", length: "4.5 m" },
  ...{ surface: "dressed", seasoning: "dried" },
};

/** One log of 2.3 m, which holds no rafter of 4.5 m. */
const waits = (...pieces: readonly object[]) =>
  estimated({
    structure: { kind: "pieces", pieces },
    logs: [{ name: "a", species: "european-larch", length: "2.3 m", smallDiameter: "30 cm" }],
    catalog: { demo: "ferry-yard" },
    labor: { valueOfHour: "1 EUR/h" },
    options: { finish: "none" },
  }).routes.mix.drying?.likely.value.toFixed(6);

describe("the wait for the stack", () => {
  it("is none for pieces of which the logs give none", () => {
    expect(waits(boards, thick)).toBe(waits(boards));
    expect(waits(thick)).toBeUndefined();
  });
});
