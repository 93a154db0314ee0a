import { describe, expect, it } from "vitest";
import { cuttingOf, type MillingCells, sharpeningsOf } from "../../../src/estimate/effort/milling.js";
import { displayUnits } from "../../../src/estimate/quantity/display.js";
import { exactly } from "../../../src/estimate/quantity/text.js";
import { Assumed } from "../../../src/estimate/request/assumed.js";
import { Defaults } from "../../../src/estimate/request/given.js";
import type { CutCells } from "../../../src/estimate/salvage/cut-cells.js";
import { layMill, type MillCells } from "../../../src/estimate/salvage/mill.js";
import { number } from "../../../src/estimate/sheet/expression.js";
import { plain, Sheet } from "../../../src/estimate/sheet/sheet.js";
import { demoBody, estimated } from "../../helpers/estimating.js";

interface Sawn {
  readonly area?: string;
  readonly dirty?: string;
  readonly narrow?: readonly [area: string, length: string];
  readonly wide?: readonly [area: string, length: string];
  readonly hardness?: string;
  readonly lumber?: string;
}

function yard(mill: "chainsaw-mill" | "manual-band-mill") {
  const sheet = new Sheet();
  const assumed = new Assumed(sheet);
  return {
    sheet,
    assumed,
    mill: layMill(
      { sheet, assumed, defaults: new Defaults("inch-pound"), units: displayUnits("inch-pound") },
      { mill },
    ),
  };
}

/** Only what the mill's pace reads. */
function cuts(sheet: Sheet, sawn: Sawn): CutCells {
  const pair = ([area, length] = ["0 ft2", "0 ft"] as readonly [string, string]) => ({
    area: number(area),
    length: number(length),
  });
  const face = {
    hardness: sheet.input("hardness", plain(sawn.hardness ?? "1")),
    area: number(sawn.area ?? "0 ft2"),
    dirtyArea: number(sawn.dirty ?? "0 ft2"),
    narrow: pair(sawn.narrow),
    wide: pair(sawn.wide),
  };
  const zero = number("0");
  const [kg, m3, h] = ["0 kg", "0 m3", "0 person-h"].map(number) as [
    ReturnType<typeof number>,
    ReturnType<typeof number>,
    ReturnType<typeof number>,
  ];
  return {
    ...{
      logsUsed: zero,
      bolts: zero,
      turns: zero,
      millCuts: zero,
      ripCuts: zero,
      guideCuts: zero,
      crosscuts: zero,
      pieces: zero,
    },
    ...{ getOut: h, prepare: h, logWeight: kg, pieceWeight: kg, pieceVolume: m3, logVolume: m3 },
    hardVolume: number(sawn.lumber ?? "0 bf"),
    faces: [face],
    rips: [],
  };
}

const minutes = (kind: "chainsaw-mill" | "manual-band-mill", sawn: Sawn): number => {
  const { sheet, mill } = yard(kind);
  return sheet
    .in(sheet.lay("cutting", cuttingOf(cuts(sheet, sawn), mill)), "min")
    .toDecimalPlaces(6)
    .toNumber();
};

describe("engine hours", () => {
  it("of a chain go by the face: 30 ft² at 1 1/2 ft² a minute is 20 min", () => {
    expect(minutes("chainsaw-mill", { area: "30 ft2" })).toBe(20);
  });

  // Manual band mill: 20 ft² a minute, fed at most at 20 ft a minute, back at 60.
  it("of a band in narrow cuts go by the feed, and back: 120 ft of 6 in cuts", () => {
    // 60 ft² ÷ 20 = 3 min are less than 120 ft ÷ 20 = 6 min; back 120 ÷ 60 = 2 min.
    expect(minutes("manual-band-mill", { narrow: ["60 ft2", "120 ft"] })).toBe(8);
  });

  it("of a band in wide cuts go by the face, and back: 60 ft of 18 in cuts", () => {
    // 90 ft² ÷ 20 = 4.5 min are more than 60 ft ÷ 20 = 3 min; back 60 ÷ 60 = 1 min.
    expect(minutes("manual-band-mill", { wide: ["90 ft2", "60 ft"] })).toBe(5.5);
  });

  it("are longer in hard wood while the blade cuts, not on the way back", () => {
    expect(minutes("chainsaw-mill", { area: "30 ft2", hardness: "1.5" })).toBe(30);
    expect(minutes("manual-band-mill", { wide: ["90 ft2", "60 ft"], hardness: "2" })).toBe(10);
  });
});

describe("sharpenings", () => {
  const sharpened = (kind: "chainsaw-mill" | "manual-band-mill", sawn: Sawn): number => {
    const { sheet, mill, assumed } = yard(kind);
    const formula = sharpeningsOf(cuts(sheet, sawn), mill as MillCells, assumed);
    return sheet.in(sheet.lay("sharpenings", formula), "").toDecimalPlaces(6).toNumber();
  };

  it("of a chain come every 40 ft², twice as often in dirty bark, sooner in hard wood", () => {
    expect(sharpened("chainsaw-mill", { area: "120 ft2" })).toBe(3);
    expect(sharpened("chainsaw-mill", { area: "120 ft2", dirty: "40 ft2" })).toBe(4);
    expect(sharpened("chainsaw-mill", { area: "120 ft2", hardness: "1.5" })).toBe(4.5);
  });

  it("of a band come every 400 board feet", () => {
    expect(sharpened("manual-band-mill", { lumber: "1000 bf" })).toBe(2.5);
  });

  it("are filed by oneself on a chain, done by a service on a band, or as one says", () => {
    const of = (shop: Parameters<typeof layMill>[1]) => {
      const sheet = new Sheet();
      const mill = layMill(
        { sheet, assumed: new Assumed(sheet), defaults: new Defaults("metric"), units: displayUnits("metric") },
        shop,
      );
      return [mill.sharpening, mill.sharpen.name];
    };
    expect(of({ mill: "chainsaw-mill" })).toEqual(["self", "sharpen.chain"]);
    expect(of({ mill: "manual-band-mill" })).toEqual(["service", "sharpen.band"]);
    expect(of({ mill: "chainsaw-mill", sharpening: "service" })).toEqual(["service", "sharpen.change"]);
    expect(of({ mill: "manual-band-mill", sharpening: "self" })).toEqual(["self", "sharpen.bandGrind"]);
    expect(of({ mill: "swing-blade-mill" })).toEqual(["self", "sharpen.circular"]);
    expect(of({ mill: "swing-blade-mill", sharpening: "service" })).toEqual(["service", "sharpen.circularChange"]);
  });
});

describe("the clock of the mill", () => {
  /** Hours of the mill, those of set-up and sawing by its crew, and those of sharpening by one. */
  const clock = (shop: object) => {
    const { routes, basis } = estimated({ ...demoBody("orchard-shelter"), shop: { longestBolt: "18 ft", ...shop } });
    const milling = routes.mill?.milling as MillingCells;
    const [setUp, saw, sharpen] = (["setUp", "saw", "sharpen"] as const).map((of) =>
      basis.sheet.in(milling.stages[of], "person-h").toNumber(),
    ) as [number, number, number];
    const crew = basis.sheet.in(basis.mill.crew, "people").toNumber();
    return { mill: basis.sheet.in(milling.millHours, "h").toNumber(), cutting: (setUp + saw) / crew, sharpen };
  };

  it.each([
    { mill: "chainsaw-mill" },
    { mill: "chainsaw-mill", sharpening: "service" },
    { mill: "manual-band-mill" },
    { mill: "swing-blade-mill" },
  ])("goes on while one person sharpens on it, or changes what cuts: %j", (shop) => {
    const { mill, cutting, sharpen } = clock(shop);
    expect(sharpen).toBeGreaterThan(0.1);
    expect(mill).toBeCloseTo(cutting + sharpen, 9);
  });

  it("does not wait for a band that is ground while another one cuts", () => {
    const { mill, cutting } = clock({ mill: "manual-band-mill", sharpening: "self" });
    expect(mill).toBeCloseTo(cutting, 9);
  });
});

describe("a band mill all in", () => {
  it("has a feed and a way back; a chain mill has none", () => {
    expect(yard("chainsaw-mill").mill.feed).toBeUndefined();
    expect(yard("manual-band-mill").mill.feed?.value.eq(exactly("20 ft/min").value)).toBe(true);
  });
});
