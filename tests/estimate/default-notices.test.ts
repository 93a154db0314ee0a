import { describe, expect, it } from "vitest";
import { defaultsInWords } from "../../src/estimate/default-notices.js";
import { demoBody, estimated } from "../helpers/estimating.js";

const texts = (body: object): string[] => defaultsInWords(estimated(body).basis).map(({ text }) => text);

const pine = { species: "eastern-white-pine", length: "10 ft", smallDiameter: "12 in" };
const shelf = {
  kind: "pieces",
  pieces: [{ name: "shelves", role: "board", count: 1, section: "1 x 6 in", length: "5 ft" }],
};

describe("a default in words", () => {
  it("says what it is, its value and why, as a carpenter reads it", () => {
    const said = texts({ structure: { kind: "gable", span: "8 ft", length: "12 ft" } });
    expect(said).toContain("Length of a bay, at most: 8 ft (common practice).");
    expect(said).toContain("Overhang, eave: 12 in (common practice).");
    expect(said).toContain("Posts, section: 6 x 6 in (common practice; no statement that it carries the load).");
    expect(said).toContain("Bolt diameter: 1/2 in (common practice; no statement that it carries the load).");
  });

  it("of several logs names them all, once each", () => {
    const said = texts({
      structure: shelf,
      logs: [
        { name: "one", ...pine, count: 3 },
        { name: "two", ...pine, sweep: "straight" },
      ],
    });
    expect(said).toContain("Large diameter of one, two: by taper (the large end was not measured).");
    expect(said).toContain("Sweep of one: some (nobody said how crooked it is).");
  });

  it("says that the mill costs nothing where nobody names its terms", () => {
    const mill = /^Mill and machines: at hand and paid for/;
    const logs = [{ name: "one", ...pine }];
    expect(texts({ structure: shelf, logs }).filter((text) => mill.test(text))).toHaveLength(1);
    const paid = { equipment: [{ item: "chainsaw-mill", terms: "paid" }] };
    expect(texts({ structure: shelf, logs, shop: paid }).filter((text) => mill.test(text))).toEqual([]);
    expect(texts({ structure: shelf }).filter((text) => mill.test(text))).toEqual([]);
  });

  it("of no demo leaves a word that only a program would say", () => {
    for (const said of ["orchard-shelter", "ferry-bike-shed", "market-stall"].flatMap((name) =>
      texts(demoBody(name)),
    )) {
      expect(said).toMatch(/^[A-Z][^:]+: .+\.$/);
      expect(said).not.toMatch(/[a-z][A-Z]|^Taken/);
    }
  });
});
