import { describe, expect, it } from "vitest";
import { demoBody, estimated } from "../helpers/estimating.js";

const gable = { kind: "gable", span: "8 ft", length: "12 ft" };
const under = (structure: object) => estimated({ structure, catalog: { demo: "orchard-yard" } });

describe("a roof that the code does not allow", () => {
  // Asphalt shingles from 2 in 12: IRC R905.2.2.
  const forbidden = under({ ...gable, covering: "asphalt-shingles", slope: { rise: "1 in", run: "12 in" } });

  it("is named in the verdict, before all else that is to be done", () => {
    expect(forbidden.verdict.first).toMatch(/^The code does not allow this covering at this slope\. .*2 in over 12 in/);
  });

  it("is estimated all the same", () => {
    expect(forbidden.routes.buy.cash.value.gt(0)).toBe(true);
  });

  it("is not spoken of where the slope is enough", () => {
    const allowed = under({ ...gable, covering: "asphalt-shingles", slope: { rise: "4 in", run: "12 in" } });
    expect(allowed.verdict.first).not.toMatch(/slope/);
  });
});

describe("the caution of a plain ridge board", () => {
  it("counts the pairs that the list ties", () => {
    // The demo: 24 ft at 24 in are 13 pairs; two gable-end beams and two ties.
    const thrust = estimated(demoBody("orchard-shelter")).cautions.find(({ code }) => code === "thrust");
    expect(thrust?.text).toMatch(/This list has 4 for 13 pairs; the rest are not taken off\.$/);
  });
});

describe("coverings that are compared", () => {
  it("are told to weigh on one frame, from the lightest to the heaviest", () => {
    const coverings = ["ribbed-steel", "tile", "asphalt-shingles"];
    const found = estimated({ structure: gable, catalog: { demo: "orchard-yard" }, options: { coverings } });
    const weights = found.coverings.map(({ weight }) => found.basis.sheet.shown(weight));
    const caution = found.cautions.find(({ code }) => code === "roof-weight");
    const told = /weigh from (.+?) to (.+?)\. The frame/.exec(caution?.text ?? "")?.slice(1) ?? [];
    const pounds = (text: string) => Number(text.replace(" lb", ""));
    expect(told.map(pounds)).toEqual([Math.min(...weights.map(pounds)), Math.max(...weights.map(pounds))]);
    expect(under(gable).cautions.some(({ code }) => code === "roof-weight")).toBe(false);
  });
});

describe("notices of what is bought", () => {
  const leanTo = { kind: "lean-to", span: "8 ft", length: "16 ft" };
  const { notices } = estimated({ structure: leanTo, catalog: { demo: "orchard-yard" } });
  const texts = (code: string) => notices.filter((one) => one.code === code).map(({ text }) => text);

  it("are shared by groups that are bought as one thing and differ alike", () => {
    expect(texts("substitution").filter((text) => text.includes("2 x 6"))).toEqual([
      expect.stringMatching(/^Rafters, fly rafters, bought as 2 x 6 in .*measures 1 1\/2 × 5 1\/2 in\.$/),
    ]);
  });

  it("tell of posts whose bases are another size", () => {
    const [low, high] = texts("bought-size");
    expect(low).toMatch(/^Low posts: 3 are bought in another size .*5 1\/2 × 5 1\/2 in\)\. The post bases listed fit/);
    expect(high).toMatch(/^High posts: 3 are bought/);
  });
});
