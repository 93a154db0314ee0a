import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { CoveringOffer } from "../../../src/catalog/offers/covering.js";
import { FaultError } from "../../../src/estimate/faults.js";
import { exactly } from "../../../src/estimate/quantity/text.js";
import type { GableShape } from "../../../src/estimate/request/structure-gable.js";
import type { Cell } from "../../../src/estimate/sheet/expression.js";
import { type CoveredRoof, coveredGable } from "../../../src/estimate/takeoff/covered-roof.js";
import { type CoveringTakeoff, layCovering } from "../../../src/estimate/takeoff/covering.js";
import type { FaceLayout } from "../../../src/estimate/takeoff/covering-work.js";
import type { PanelCells } from "../../../src/estimate/takeoff/panels.js";
import { type Given, type Laid, laidGable } from "./shelter.js";

const OUTDOORS = { climate: "outdoors", treated: false, tannin: false } as const;

interface Cover {
  readonly shape?: Partial<GableShape>;
  readonly given?: Given;
  readonly offer?: CoveringOffer;
  readonly roof?: (roof: CoveredRoof) => CoveredRoof;
  readonly kind?: "ribbed-steel" | "corrugated-steel" | "polycarbonate";
}

function covered({ shape, given, offer, roof = (same) => same, kind = "ribbed-steel" }: Cover = {}): Laid & Panelled {
  const laid = laidGable(shape, given);
  const { sheet, assumed, defaults, units, gable } = laid;
  const input = { kind, roof: roof(coveredGable(sheet, gable)), offer, exposure: OUTDOORS, assumed, defaults };
  const found = layCovering(sheet, input, units);
  const [layout] = found.faces;
  if (!found.panels || !layout?.across || !layout.pieceLength) throw new Error("no panels");
  const { face, across, up, pieceLength } = layout;
  return {
    ...{ ...laid, ...found, width: face.eave, slopeLength: face.slopeLength },
    panels: { ...found.panels, across, up, length: pieceLength },
  };
}

/** A covering of panels alike, with what one slope of it takes. */
interface Panelled extends CoveringTakeoff {
  readonly width: Cell;
  readonly slopeLength: Cell;
  readonly panels: PanelCells & Pick<FaceLayout, "up"> & { readonly across: Cell; readonly length: Cell };
}

const trimOf = ({ panels }: Panelled, kind: "ridge-cap" | "eave-trim" | "rake-trim") => {
  const found = panels.trims.get(kind);
  if (!found) throw new Error(`no ${kind}`);
  return found;
};

const priced = { kind: "unpriced", at: "/catalog", add: "a price" } as const;

/** Panels cut to length, trims of 10 ft 6 in: how yards sell them. */
const offer = (longest: string, step = "1 in"): CoveringOffer => ({
  name: "steel",
  label: "Ribbed steel",
  at: "/catalog/coverings/0",
  covering: "ribbed-steel",
  sheets: {
    form: "panels",
    coverWidth: exactly("36 in"),
    sold: {
      by: "cut-length",
      price: priced,
      shortest: exactly("3 ft"),
      longest: exactly(longest),
      step: exactly(step),
    },
  },
  trims: [{ kind: "ridge-cap", length: exactly("126 in"), price: priced }],
  closures: [],
});

const numbers = (cells: readonly Cell[]) => cells.map((cell) => cell.value.toString());
const inches = ({ sheet }: Laid, cell: Cell) => sheet.in(cell, "in").toString();
const needed = ({ needs }: CoveringTakeoff) =>
  Object.fromEntries(needs.map((need) => [need.name, need.quantity.value.toString()]));

describe("a ribbed steel roof on a 16 × 24 ft gable at 5 in 12", () => {
  // By hand. 5-12-13: a foot of run is 13 in of slope. Overhangs 12 in, fascia 1 in, drip 1 1/2 in, ridge gap 1 in.
  const roof = covered();

  it("reaches from rake fascia to rake fascia and from ridge to drip", () => {
    expect(inches(roof, roof.width)).toBe("314"); // 24 ft + 2 × 12 in + 2 × 1 in
    expect(inches(roof, roof.slopeLength)).toBe("118.625"); // (96 + 12 + 1 + 1.5 − 1) × 13/12
    expect(inches(roof, roof.gable.rafter.edgeLength)).not.toBe("118.625"); // the cut rafter is shorter: 115.92 in
  });

  it("is 517.34 ft² or 5.17 squares", () => {
    expect(roof.sheet.shown(roof.area)).toBe("517.34 ft²"); // 2 × 314 × 118.625 ÷ 144
    expect(roof.sheet.in(roof.squares, "square").toDP(4).toString()).toBe("5.1734");
  });

  it("takes nine panels a slope, cut to the next inch", () => {
    const { across, up, panels, length } = roof.panels;
    expect(numbers([across, up, panels])).toEqual(["9", "1", "18"]); // 314 ÷ 36 = 8.7
    expect(inches(roof, length)).toBe("119");
  });

  it("takes ridge cap, eave and rake trim in 10 ft pieces that lap 4 in", () => {
    const pieces = (["ridge-cap", "eave-trim", "rake-trim"] as const).map((kind) => trimOf(roof, kind).pieces);
    // ridge (314 − 4) ÷ 116 = 2.7; two eaves the same; four rakes of 118 5/8 in from a piece each
    expect(numbers(pieces)).toEqual(["3", "6", "4"]);
    expect(inches(roof, roof.trimLength)).toBe("1416.5"); // 314 + 2 × 314 + 4 × 118.625
  });

  it("is screwed at four a panel and row, twice that at eave and ridge, and stitched along the laps", () => {
    // Purlins: edge 115.92 less 4 in, over 24 in: five spaces, six rows. 18 panels × 4 × (4 + 2 × 2) = 576.
    expect(roof.sheet.find("covering.purlinScrews")?.value.toString()).toBe("576");
    // 8 laps × 2 slopes × 5 spaces of 24 in
    expect(roof.sheet.find("covering.lapStitches")?.value.toString()).toBe("80");
    // Trim every 18 in: eave 2 × 19 and rake 4 × 8 into wood; ridge 2 × 19 and rake 4 × 8 into sheets.
    expect(numbers([roof.panels.roofScrews, roof.panels.stitchScrews])).toEqual(["646", "150"]);
  });

  it("needs all of it, spare screws included, and no sealant", () => {
    expect(needed(roof)).toEqual({
      "covering.panel": "18",
      "covering.ridge-cap": "3",
      "covering.eave-trim": "6",
      "covering.rake-trim": "4",
      "covering.eave-closure": "18", // 9 strips of 36 in an eave
      "covering.ridge-closure": "18",
      "covering.roof-screw": "679", // 646 × 1.05 = 678.3
      "covering.stitch-screw": "158", // 150 × 1.05 = 157.5
    });
  });

  it("weighs 419 lb at 0.81 lb/ft²", () => {
    expect(roof.sheet.in(roof.weight, "lb").toDP(1).toString()).toBe("419"); // 0.81 × 517.337
  });
});

describe("roof screws", () => {
  // Panel trade practice: near 80 screws a square with purlins at 24 in; here on a slope long enough for ends to count little.
  it("come near 80 a square on a 24 ft slope", () => {
    const roof = covered({ shape: { span: "44 ft" } });
    const each = roof.sheet.find("covering.purlinScrews")?.value.dividedBy(roof.sheet.in(roof.squares, "square"));
    expect(each?.toNumber()).toBeGreaterThan(72);
    expect(each?.toNumber()).toBeLessThan(88);
  });
});

describe("the least slope", () => {
  const at = (rise: string, kind?: Cover["kind"]) =>
    covered({ shape: { slope: { rise, run: "12 in" } }, ...(kind && { kind }) });

  // International Residential Code, R905.10.2: lapped panels 3 in 12, with lap sealant 1/2 in 12.
  it.each([
    { rise: "3 in", allowed: true, lapsSealed: false },
    { rise: "2 31/32 in", allowed: true, lapsSealed: true },
    { rise: "1/2 in", allowed: true, lapsSealed: true },
    { rise: "15/32 in", allowed: false, lapsSealed: false },
  ])("is judged by the code at $rise in 12", ({ rise, ...verdict }) => {
    expect(at(rise).slope).toMatchObject({ ...verdict, reference: expect.stringContaining("R905.10.2") });
  });

  it("seals every side lap below 3 in 12, and only there", () => {
    const roof = at("2 in");
    const sealant = roof.needs.find((need) => need.name === "covering.lap-sealant")?.quantity as Cell;
    const laps = roof.slopeLength.value.times(16).times("1.05"); // 8 laps a slope, 5 % waste
    expect(sealant.value.toString()).toBe(laps.toString());
    expect(at("3 in").panels.sealant).toBeUndefined();
  });

  it("shows a roof that is too flat, with its reason, and still counts it", () => {
    const roof = at("0 in");
    expect(roof.slope.reason).toBe(
      "A slope of 0 in over 12 in is below the least slope, 1/2 in over 12 in, where the laps are sealed with lap sealant.",
    );
    expect(numbers([roof.panels.panels])).toEqual(["18"]);
  });

  it("compares rise × 12 with least × run, which thirds of a foot cannot upset", () => {
    expect(covered({ shape: { slope: { rise: "1 in", run: "4 in" } } }).slope).toMatchObject({
      allowed: true,
      lapsSealed: false,
    });
  });
});

describe("panels from a price catalog", () => {
  it("lap end to end where the slope is longer than the longest panel", () => {
    const roof = covered({ offer: offer("8 ft") });
    // (118.625 − 9) ÷ (96 − 9) = 1.26: two; each (118.625 + 9) ÷ 2 = 63.8 in, cut to 64
    expect(numbers([roof.panels.up, roof.panels.panels])).toEqual(["2", "36"]);
    expect(inches(roof, roof.panels.length)).toBe("64");
    // One of the six rows becomes an end row: 18 × 4 × (3 + 3 × 2)
    expect(roof.sheet.find("covering.purlinScrews")?.value.toString()).toBe("648");
  });

  it("are never cut longer than the longest by rounding up to a coarse step", () => {
    const roof = covered({ offer: offer("119.5 in", "6 in") });
    expect(numbers([roof.panels.up])).toEqual(["1"]);
    expect(inches(roof, roof.panels.length)).toBe("119.5");
  });

  it("take the catalog's trim lengths, and common ones where it has none", () => {
    const roof = covered({ offer: offer("40 ft") });
    expect(inches(roof, trimOf(roof, "ridge-cap").pieceLength)).toBe("126");
    expect(inches(roof, trimOf(roof, "eave-trim").pieceLength)).toBe("120");
    expect(roof.defaults.taken.map((taken) => taken.at)).toContain("/overrides/covering.trim.eave-trim");
  });

  it("are refused when too short to lap", () => {
    expect(() => covered({ offer: offer("20 in") })).toThrow(FaultError);
    const overrides = { "covering.endLap": "5 ft" };
    expect(() => covered({ offer: offer("8 ft"), given: { overrides } })).toThrow(/half of 96 in or more/);
    expect(() => covered({ given: { overrides: { "covering.trimLap": "60 in" } } })).toThrow(FaultError);
  });

  it("must have a width, a step and closures of more than nothing", () => {
    for (const name of ["coverWidth", "cutStep", "closure.eave-closure"]) {
      const overrides = { [`covering.${name}`]: "0 in" };
      expect(() => covered({ given: { overrides } })).toThrow(/Give more than zero/);
    }
  });
});

describe("trim", () => {
  // By hand: two runs of 10 ft 1 in from 10 ft pieces that lap 4 in take two pieces each when begun afresh, four in all;
  // with the offcut (9 ft 7 in) carried on, (242 − 4) ÷ 116 = 2.05: three.
  it("carries an offcut on to the next edge where that saves a piece", () => {
    const roof = covered({ roof: (gable) => gable, shape: { length: "95 in" } }); // 95 + 24 + 2 = 121 in
    expect(inches(roof, roof.width)).toBe("121");
    expect(numbers([trimOf(roof, "eave-trim").pieces])).toEqual(["3"]);
  });
});

describe("roofs compared", () => {
  const counts = (roof: CoveringTakeoff) => roof.needs.map((need) => need.quantity.value.toNumber());
  const feet = fc.integer({ min: 8, max: 60 });

  it("never need less of anything for being larger", () => {
    fc.assert(
      fc.property(feet, feet, fc.integer({ min: 0, max: 96 }), fc.boolean(), (span, length, more, isLonger) => {
        const longest = offer("12 ft");
        const shape = (extra: number) => ({
          span: `${span * 12 + (isLonger ? 0 : extra)} in`,
          length: `${length * 12 + (isLonger ? extra : 0)} in`,
          rafterSpacing: "10 ft",
          groups: { braces: { remove: true } } as const,
        });
        const [small, large] = [
          covered({ shape: shape(0), offer: longest }),
          covered({ shape: shape(more), offer: longest }),
        ];
        const pairs = counts(small).map((count, i) => [count, counts(large)[i] as number] as const);
        expect(pairs.filter(([before, after]) => after < before)).toEqual([]);
      }),
      { numRuns: 60 },
    );
  });

  it("are the same mirrored: a gable is two single slopes, but for the cap that they share", () => {
    const one = covered({
      roof: (gable) => ({ ...gable, planes: gable.planes.map((plane) => ({ ...plane, alike: 1 })) }),
    });
    const two = covered();
    const twice = ["panel", "eave-trim", "rake-trim", "eave-closure", "ridge-closure"].map(
      (part) => `covering.${part}`,
    );
    for (const part of twice) expect([part, Number(needed(one)[part]) * 2]).toEqual([part, Number(needed(two)[part])]);
    expect(one.area.value.times(2).toString()).toBe(two.area.value.toString());
  });

  it("are the same to the last digit when the same lengths are written in millimetres", () => {
    // 1 in = 25.4 mm by definition
    const metric = covered({
      shape: { span: "4876.8 mm", length: "7315.2 mm", slope: { rise: "127 mm", run: "304.8 mm" } },
    });
    const inch = covered();
    const values = (roof: Laid) => roof.sheet.cells.map((cell) => [cell.name, cell.value.toString()]);
    expect(values(metric)).toEqual(values(inch));
  });

  it("are cut to whole centimetres in a metric estimate", () => {
    const shape = { span: "4.8 m", length: "7.2 m", slope: { rise: "5 mm", run: "12 mm" } };
    const roof = covered({ shape, given: { system: "metric" } });
    const length = roof.sheet.in(roof.panels.length, "cm");
    expect(length.isInteger()).toBe(true);
    expect(roof.panels.length.value.gte(roof.slopeLength.value)).toBe(true);
    expect(roof.panels.length.value.minus(roof.slopeLength.value).lt(10)).toBe(true);
  });
});

describe("a roof without fascia", () => {
  it("is covered from rafter to rafter", () => {
    const roof = covered({ shape: { groups: { "eave-fascia": { remove: true }, "rake-fascia": { remove: true } } } });
    expect(inches(roof, roof.width)).toBe("312");
    expect(roof.sheet.in(roof.slopeLength, "in").toDP(3).toString()).toBe("117.542"); // (108 + 1.5 − 1) × 13/12
  });
});

describe("a wider idea of a covering", () => {
  it("counts corrugated sheets by their own width and screws", () => {
    const roof = covered({ kind: "corrugated-steel" });
    expect(numbers([roof.panels.across])).toEqual(["14"]); // 314 ÷ 24 = 13.1
  });

  it("stays live: another drip or overlap changes panels without laying anew", () => {
    const roof = covered({ given: { overrides: { "covering.drip": "3 in", "covering.coverWidth": "30 in" } } });
    expect(roof.sheet.in(roof.slopeLength, "in").toString()).toBe("120.25"); // 1 1/2 in more, × 13/12
    expect(numbers([roof.panels.across])).toEqual(["11"]); // 314 ÷ 30 = 10.5
    for (const name of ["covering.drip", "covering.coverWidth", "covering.endLap"]) {
      expect([name, roof.sheet.isStructural(roof.sheet.find(name) as Cell)]).toEqual([name, false]);
    }
  });
});

// Cyclopedia of Architecture, Carpentry and Building (American Technical Society, about 1907), vol. 9, corrugated iron: pounds
// to the square as laid, ends lapping 6 in and sides one corrugation, so that a sheet 30 1/4 in wide before it is corrugated
// covers 24 in; No. 26 is 0.72 lb/ft2 flat, No. 24 is 0.88. Read in the text of a scan. Printed in whole pounds.
describe("corrugated sheets with end laps against a printed table", () => {
  const UP = 8;
  const ACROSS = 24;

  /** Sheets of one length to 100 square feet of roof, the last lap left out as the table does. */
  function toTheSquare(feet: number): number {
    const slope = UP * (feet - 0.5) + 0.5;
    const sheets = {
      form: "panels",
      coverWidth: exactly("24 in"),
      sold: { by: "piece", lengths: [{ length: exactly(`${feet} ft`), price: priced, bulk: [] }] },
    } as const;
    const roof = covered({
      kind: "corrugated-steel",
      given: {
        overrides: {
          "covering.width": `${ACROSS * 2} ft`,
          "covering.slopeLength": `${slope} ft`,
          "covering.endLap": "6 in",
        },
      },
      offer: { ...offer("20 ft"), covering: "corrugated-steel", sheets },
    });
    expect(inches(roof, roof.panels.length)).toBe(String(feet * 12));
    return (100 * Number(roof.panels.panels.value)) / (2 * ACROSS * 2 * (slope - 0.5));
  }

  it.each([
    ...[101, 99, 97, 97, 96, 95].map((pounds, i) => ({ gauge: 26, flat: 0.72, feet: 5 + i, pounds })),
    ...[123, 121, 119, 118, 117, 117].map((pounds, i) => ({ gauge: 24, flat: 0.88, feet: 5 + i, pounds })),
  ])("weigh what is printed: No. $gauge, $feet ft sheets, $pounds lb", ({ flat, feet, pounds }) => {
    const sheet = (flat * feet * 30.25) / 12;
    expect(Math.abs(toTheSquare(feet) * sheet - pounds)).toBeLessThan(1);
  });

  // The same, on roof trusses: 26 in wide after corrugating, covers 24 in with one lap.
  it("cover 24 in where nobody says otherwise", () => {
    const { sheet } = covered({ kind: "corrugated-steel" });
    expect(sheet.in(sheet.find("covering.coverWidth") as Cell, "in").toString()).toBe("24");
  });
});
