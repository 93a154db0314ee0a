import { describe, expect, it } from "vitest";
import type { FinishKind } from "../../../src/catalog/finishes.js";
import type { FinishOffer } from "../../../src/catalog/offers/finish.js";
import { exactly } from "../../../src/estimate/quantity/text.js";
import type { ExplicitPieces } from "../../../src/estimate/request/structure.js";
import type { Cell } from "../../../src/estimate/sheet/expression.js";
import { endSealer, layFaces, layFinish } from "../../../src/estimate/takeoff/finish.js";
import { type Given, laidGable, laidPieces } from "./shelter.js";

interface Finished {
  readonly kind?: FinishKind | "none";
  readonly offer?: FinishOffer;
  readonly sealEnds?: boolean;
  readonly given?: Given;
}

function finished(pieces: ExplicitPieces[], { kind = "oil-stain", offer, sealEnds = false, given }: Finished = {}) {
  const laid = laidPieces({ kind: "pieces", pieces }, given);
  const { sheet, groups, assumed, units } = laid;
  const lines = layFaces(sheet, groups, assumed, units);
  const sealer = sealEnds ? [endSealer(sheet, groups, assumed, units)] : [];
  return { ...laid, sealer, ...layFinish(sheet, { kind, offer, assumed }, lines, units) };
}

/** Nothing in joints and nothing spilled, so that a figure can be checked by hand. */
const BARE: Given = { assumptions: { "finish.jointShare": "0 %", "finish.waste": "0 %" } };
const board = (more: Partial<ExplicitPieces> = {}): ExplicitPieces => ({
  name: "boards",
  count: 10,
  section: "1 x 6 in",
  length: "12 ft",
  ...more,
});
const feet = ({ sheet }: ReturnType<typeof finished>, cell: Cell) => sheet.in(cell, "ft2").toDP(4).toString();

describe("the faces that a finish reaches", () => {
  // Common formula: 2 × (t + w) × L ÷ 12 + 2 × t × w ÷ 144, in, in, ft: 14 + 0.0833 ft² for one 1 × 6 in board of 12 ft.
  it("are four sides and two ends", () => {
    const laid = finished([board()], { given: BARE });
    expect(feet(laid, laid.area.smooth)).toBe("140.8333");
    expect(feet(laid, laid.area.rough)).toBe("0");
  });

  it.each([
    ["one-wide" as const, "80.8333"], // 10 × 6 ft² less
    ["both-wide" as const, "20.8333"],
  ])("leave hidden faces out: %s", (hiddenFaces, area) => {
    const laid = finished([board({ hiddenFaces })], { given: BARE });
    expect(feet(laid, laid.area.smooth)).toBe(area);
  });

  it("are rough where pieces stay as sawn, and smaller by what joints hide", () => {
    const laid = finished([board({ surface: "rough" })], { given: { assumptions: { "finish.jointShare": "5 %" } } });
    expect([feet(laid, laid.area.rough), feet(laid, laid.area.smooth)]).toEqual(["133.7917", "0"]); // 140.8333 × 0.95
  });
});

describe("the volume of a finish", () => {
  // Wood Handbook, chapter 16: oil stain 200 to 400 ft²/gal smooth, 100 to 200 saw-textured, and there two coats.
  const gallons = (laid: ReturnType<typeof finished>) =>
    laid.sheet
      .in(laid.volume as Cell, "gal")
      .toDP(4)
      .toString();

  it("is one coat at 300 ft²/gal on smooth faces", () => {
    expect(gallons(finished([board()], { given: BARE }))).toBe("0.4694"); // 140.8333 ÷ 300
  });

  it("is two coats on rough faces, the second going 1.35 times as far", () => {
    // 140.8333 ÷ 150 + 140.8333 ÷ (150 × 1.35)
    expect(gallons(finished([board({ surface: "rough" })], { given: BARE }))).toBe("1.6344");
  });

  it("is larger by what stays in brush and can", () => {
    const laid = finished([board()], {
      given: { assumptions: { "finish.jointShare": "0 %", "finish.waste": "10 %" } },
    });
    expect(gallons(laid)).toBe("0.5164"); // 0.46944 × 1.1
  });

  it("follows the coverage on the maker's can where the catalog has it", () => {
    const offer: FinishOffer = {
      name: "stain",
      label: "Stain",
      at: "/catalog/finishes/0",
      kind: "oil-stain",
      cans: [],
      coverage: { smooth: exactly("250 ft2/gal") },
    };
    expect(gallons(finished([board()], { given: BARE, offer }))).toBe("0.5633"); // 140.8333 ÷ 250
  });

  it("has no part for coats that the user strikes out", () => {
    const overrides = { "finish.smoothCoats": "0" };
    expect(gallons(finished([board()], { given: { ...BARE, overrides } }))).toBe("0");
  });

  // Wood Handbook, table 16-5: paint is a primer and two topcoats.
  it("comes after a primer below paint, and three coats are brushed", () => {
    const laid = finished([board()], { kind: "paint", given: BARE });
    expect(laid.needs.map((need) => need.item)).toEqual([
      { kind: "finish", finish: "primer" },
      { kind: "finish", finish: "paint" },
    ]);
    expect(
      laid.sheet
        .in(laid.needs[0]?.quantity as Cell, "gal")
        .toDP(4)
        .toString(),
    ).toBe("0.3521"); // ÷ 400
    expect(gallons(laid)).toBe("0.6129"); // 140.8333 ÷ 400 × (1 + 1 ÷ 1.35)
    expect(feet(laid, laid.brushed.smooth)).toBe("422.5");
  });
});

describe("upkeep", () => {
  // Wood Handbook, table 16-5: semitransparent stain on saw-textured wood lasts 4 to 8 years; the middle is 6.
  it("spreads a whole coating over the years that it lasts", () => {
    const laid = finished([board({ surface: "rough" })], { given: BARE });
    const { recoatYears, yearlyVolume } =
      laid.upkeep ??
      (() => {
        throw new Error("no upkeep");
      })();
    expect(laid.sheet.in(recoatYears, "year").toString()).toBe("6");
    expect(laid.sheet.in(yearlyVolume, "gal").toDP(4).toString()).toBe("0.2724"); // 1.6344 ÷ 6
  });
});

describe("no finish", () => {
  it("needs nothing and brushes nothing, yet knows the faces", () => {
    const laid = finished([board()], { kind: "none", given: BARE });
    expect(laid.needs).toEqual([]);
    expect([laid.volume, laid.upkeep]).toEqual([undefined, undefined]);
    expect([feet(laid, laid.area.smooth), feet(laid, laid.brushed.smooth)]).toEqual(["140.8333", "0"]);
  });
});

describe("end grain", () => {
  it("is sealed where that is wished: two ends a piece", () => {
    const laid = finished([board({ count: 144 })], { kind: "none", sealEnds: true, given: BARE });
    // 144 boards × 2 × 6 in² = 12 ft², at 100 ft²/gal
    expect(laid.sealer).toMatchObject([{ item: { kind: "consumable", item: "end-sealer" } }]);
    expect(laid.sheet.in(laid.sealer[0]?.quantity as Cell, "gal").toString()).toBe("0.12");
  });
});

describe("a gable", () => {
  it("leaves the tops of its purlins bare, and takes rough and smooth apart", () => {
    const laid = laidGable();
    const { sheet, groups, assumed, units } = laid;
    const lines = layFaces(sheet, groups, assumed, units);
    const textures = Object.fromEntries(lines.map((line) => [line.group, line.texture]));
    expect(textures).toMatchObject({ posts: "rough", rafters: "smooth", "purlins-end": "rough" });
    const purlins = groups.find(({ name }) => name === "purlins-end") as (typeof groups)[number];
    const line = lines.find(({ group }) => group === "purlins-end") as (typeof lines)[number];
    // 2 × 4 in: of 12 in of girth 8 are open, ends included; 3 % in joints
    const sides = purlins.totalLength.value.times(203.2).plus(purlins.count.value.times(2 * 50.8 * 101.6));
    expect(line.area.value.toDP(9).toString()).toBe(sides.times("0.97").toDP(9).toString());
  });
});
