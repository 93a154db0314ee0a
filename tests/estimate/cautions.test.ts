import { describe, expect, it } from "vitest";
import type { Basis } from "../../src/estimate/basis.js";
import { roofWeightCaution } from "../../src/estimate/cautions.js";
import { exactly } from "../../src/estimate/quantity/text.js";
import { sawLogs } from "../../src/estimate/sawn-logs.js";
import { Sheet } from "../../src/estimate/sheet/sheet.js";
import { demoBody, estimated, quickPlanners, request } from "../helpers/estimating.js";

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

describe("a list of pieces", () => {
  const sills = { name: "sills", count: 4, section: "8 x 8 in", length: "14 ft" };
  const logs = [{ name: "pine", species: "eastern-white-pine", length: "16 ft", smallDiameter: "16 in", count: 3 }];
  const listed = (piece: object) =>
    estimated({
      structure: { kind: "pieces", pieces: [{ ...sills, ...piece }] },
      logs,
      catalog: { demo: "orchard-yard" },
    });
  const codes = (piece: object) => listed(piece).cautions.map(({ code }) => code);

  it("that does not say whether it bears load has the cautions of what does, and the office is asked first", () => {
    const { cautions, verdict } = listed({});
    expect(cautions.map(({ code }) => code)).toEqual(expect.arrayContaining(["not-checked", "ungraded", "lifting"]));
    expect(cautions.find(({ code }) => code === "lifting")?.text).toMatch(/Over one person's load: sills \(/);
    expect(verdict.first).toMatch(/ask the building office/);
  });

  it("that says it bears none has not", () => {
    expect(codes({ structural: false })).not.toContain("not-checked");
    expect(codes({ role: "fascia" })).not.toContain("ungraded");
    expect(listed({ structural: false }).verdict.first).not.toMatch(/building office/);
  });

  it("that is sawn alone has them, too, in its own measures", () => {
    const metric = { structure: { kind: "pieces", pieces: [{ ...sills, length: "4 m" }] }, logs };
    const { cautions } = sawLogs(request(metric), quickPlanners);
    expect(cautions.map(({ code }) => code).slice(0, 2)).toEqual(["not-checked", "ungraded"]);
    expect(cautions.find(({ code }) => code === "lifting")?.text).toMatch(/^One person lifts 23 kg at best/);
  });
});

describe("coverings that are compared", () => {
  it("and weigh the same are told in one figure", () => {
    const sheet = new Sheet();
    const two = ["a", "b"].map((name) => sheet.input(name, exactly("455 lb")));
    expect(roofWeightCaution({ sheet } as unknown as Basis, two)[0]?.text).toMatch(
      /^Each of these roofs weighs 455 lb\. /,
    );
  });

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
    expect(texts("substitution").filter((text) => text.includes("bought as 2 x 6"))).toEqual([
      expect.stringMatching(/^Rafters, fly rafters, bought as 2 x 6 in .*measures 1 1\/2 × 5 1\/2 in\.$/),
    ]);
  });
});

describe("a pin to the mill without logs", () => {
  it("is told not to be kept, and nothing else that is bought", () => {
    const pieces = [
      { name: "beams", role: "beam", source: "mill", count: 2, section: "4 x 8 in", length: "8 ft" },
      { name: "rails", role: "other", count: 2, section: "2 x 4 in", length: "8 ft" },
    ];
    const { notices } = estimated({ structure: { kind: "pieces", pieces }, catalog: { demo: "orchard-yard" } });
    const told = notices.filter(({ code }) => code === "not-milled").map(({ text }) => text);
    expect(told).toEqual(["Beams: not milled, there are no logs."]);
  });
});

describe("a birdsmouth", () => {
  const said = (structure: object, as: string) => under(structure).cautions.find(({ code }) => code === as)?.text;
  const notched = (structure: object) => said(structure, "birdsmouth");
  const hip = { kind: "hip", span: "12 ft", length: "16 ft", slope: { rise: "8 in", run: "12 in" } };

  it("is warned of in hip rafters, too, where it takes more than a quarter of their depth", () => {
    // Commons of 6 in at their usual seat lose a quarter; hips no deeper than they are must come down further.
    const hips = (section: string) => said({ ...hip, groups: { hips: { section } } }, "hip-notch");
    expect(hips("2 x 6 in")).toMatch(/Hip rafters: .* of 6 in; /);
    // Jacks of 6 in are 6 × √(144 + 64) ÷ 12 = 7.211 deep, plumb; a hip of √(288 + 64) to √288 wants 6.523 for that, and no less.
    expect(hips("2 x 12 in")).toMatch(/ the jack rafters want them 6 9\/16 in deep\.$/);
    expect(said(gable, "hip-notch")).toBeUndefined();
    expect(notched(gable)).toBeUndefined();
  });

  it("is warned of in common rafters where the seat is too deep", () => {
    const steep = { ...gable, seat: "6 in", slope: { rise: "8 in", run: "12 in" } };
    expect(notched({ ...steep, groups: { beams: { section: "6 x 8 in" } } })).toMatch(/Common rafters: /);
  });
});

describe("what to do before digging", () => {
  const text = (body: object) =>
    estimated(body).cautions.flatMap(({ code, text }) => (code.startsWith("digging") ? [text] : []));

  it("names the number to call only where it is called: in the United States", () => {
    expect(text({ structure: gable, catalog: { demo: "orchard-yard" } })).toEqual([expect.stringMatching(/811/)]);
    expect(text(demoBody("ferry-bike-shed"))).toEqual([expect.stringMatching(/^((?!811).)*locating service\.$/)]);
    expect(text({ structure: gable, catalog: { demo: "market-yard" } })).toEqual([
      expect.stringMatching(/^((?!811).)*locating service\.$/),
    ]);
  });
});

describe("an eave that is lower than a person", () => {
  const low = (structure: object) => under(structure).cautions.find(({ code }) => code === "headroom")?.text;

  it("is spoken of with what is left below the beam", () => {
    // 6 ft less a beam of 8 in.
    expect(low({ ...gable, eaveHeight: "6 ft" })).toMatch(/5' 4"\.$/);
    expect(low({ ...gable, eaveHeight: "7 ft 2 in" })).toBeUndefined(); // 78 in: the height of a door
    expect(low({ kind: "pergola", span: "8 ft", length: "10 ft", height: "6 ft" })).toMatch(/5' 4"/);
  });
});

describe("the notice of tolerances", () => {
  const told = (demo: string) => estimated(demoBody(demo)).notices.find(({ code }) => code === "tolerance")?.text;

  it("gives what EN 336 permits of metric lumber that is bought, and of none in inches", () => {
    // Boards of 22 × 200 mm are bought as sawn: sides up to 100 mm and larger ones.
    expect(told("market-stall")).toContain(
      "as sawn by 1 mm under to 3 mm over, on larger sides 2 mm under to 4 mm over",
    );
    expect(told("orchard-shelter")).toBeUndefined();
  });
});
