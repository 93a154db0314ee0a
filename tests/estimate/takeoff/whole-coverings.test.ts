/** Coverings other than panels on a gable, and every covering on a hip roof, worked by hand or held to published counts. */
import { describe, expect, it } from "vitest";
import { type CoveringKind, coveringKinds, UNDERLAYS } from "../../../src/catalog/coverings.js";
import type { CoveringOffer } from "../../../src/catalog/offers/covering.js";
import type { FaultError } from "../../../src/estimate/faults.js";
import { inUnit } from "../../../src/estimate/quantity/quantity.js";
import { exactly } from "../../../src/estimate/quantity/text.js";
import type { StructureShape } from "../../../src/estimate/request/structure-kinds.js";
import type { Cell } from "../../../src/estimate/sheet/expression.js";
import { coveredRoof } from "../../../src/estimate/takeoff/covered-roof.js";
import { type CoveringTakeoff, layCovering } from "../../../src/estimate/takeoff/covering.js";
import { type Given, laidPieces } from "./shelter.js";

type Roof = Exclude<StructureShape, { kind: "pieces" } | { kind: "pergola" }>;

const GABLE: Roof = { kind: "gable", span: "16 ft", length: "24 ft", slope: { rise: "5 in", run: "12 in" } };
const HIP: Roof = { ...GABLE, kind: "hip" } as Roof;

function covered(kind: CoveringKind, shape: Partial<Roof> = {}, given: Given = {}, offer?: CoveringOffer) {
  const base = shape.kind === "hip" ? HIP : shape.kind === "lean-to" ? ({ ...GABLE, kind: "lean-to" } as Roof) : GABLE;
  const laid = laidPieces({ ...base, covering: kind, ...shape } as Roof, given);
  const { sheet, assumed, defaults, units } = laid;
  const roof = coveredRoof(sheet, laid, units);
  if (!roof) throw new Error("no roof");
  const exposure = { climate: "outdoors", treated: false, tannin: false } as const;
  const takeoff = layCovering(sheet, { kind, roof, offer, exposure, assumed, defaults }, units);
  return { ...laid, takeoff };
}

type Covered = ReturnType<typeof covered>;
const find = ({ sheet }: Covered, name: string): Cell => {
  const cell = sheet.find(name);
  if (!cell) throw new Error(`no ${name}`);
  return cell;
};
const inches = (of: Covered, name: string) => of.sheet.in(find(of, name), "in").toDP(4).toString();
const value = (of: Covered, name: string) => find(of, name).value.toString();
const needs = ({ needs: all }: CoveringTakeoff) =>
  Object.fromEntries(all.map((need) => [need.name.replace(/^covering\./, ""), need.quantity.value.toString()]));
const feet2 = (of: Covered, name: string) => of.sheet.in(find(of, name), "ft2").toNumber();

describe("asphalt strips on a 16 × 24 ft gable at 5 in 12", () => {
  const roof = covered("asphalt-shingles");

  it("run from drip to ridge: (96 + 12 + 1 + 1/2) × 13/12 in", () => {
    expect(inches(roof, "covering.slopeLength")).toBe("118.625");
    expect(value(roof, "covering.courses")).toBe("24"); // 118.625 ÷ 5 = 23.7
  });

  it("take 80 strips and 320 nails to a square, as R905.2.6 counts them at 5 in", () => {
    // 2 × 314 × 118.625 ÷ (36 × 5) = 413.9
    expect(value(roof, "covering.pieces")).toBe("414");
    expect(roof.sheet.in(roof.takeoff.squares, "square").times(80).toNumber()).toBeCloseTo(413.87, 1);
    // 414 × 4, and four in each of 26.17 ft of ridge: 1,656 + 104.7
    expect(value(roof, "covering.nails")).toBe("1761");
  });

  it("take three bundles to a square with 7 % waste: 517.34 × 1.07 ÷ 33.33", () => {
    expect(needs(roof.takeoff).course).toBe("17");
  });

  it("have a starter at both eaves, drip edge all round, a ridge cap, and one layer of felt", () => {
    // Starter 628 in of 1,200; drip edge 628 + 474.5 in carried on: (1,102.5 − 4) ÷ 116 = 9.5; ridge 314 of 240.
    expect(needs(roof.takeoff)).toMatchObject({ "starter-strip": "1", "drip-edge": "10", "ridge-cap": "2" });
    expect(roof.takeoff.underlay?.layers).toBe(1);
    // 36 in strips that lap 2: 517.34 × 36 ÷ 34 × 1.05
    expect(feet2(roof, "covering.underlay")).toBeCloseTo(575.16, 1);
  });

  it("lie on boards edge to edge, which take the place of the purlins in the cut list", () => {
    const names = roof.groups.map(({ name }) => name);
    expect(names.filter((name) => name.startsWith("deck-boards"))).toEqual(["deck-boards-end", "deck-boards-middle"]);
    expect(names.some((name) => name.startsWith("purlins"))).toBe(false);
    expect(value(roof, "roof.deckRows")).toBe("20"); // 115.92 ÷ 6
  });

  it("have two layers of felt under 4 in 12, strips lapped 19 in of 36 (R905.1.1)", () => {
    const flat = covered("asphalt-shingles", { slope: { rise: "3 in", run: "12 in" } });
    expect(flat.takeoff.underlay?.layers).toBe(2);
    const ratio = feet2(flat, "covering.underlay") / feet2(flat, "covering.area");
    expect(ratio).toBeCloseTo((36 / 17) * 1.05, 6);
  });

  // Widely printed for strips 36 in long: 80 to a square at 5 in; 100 at 4 in and 89 at 4 1/2 in in older texts.
  it.each([
    ["5 in", 80],
    ["4 in", 100],
    ["4 1/2 in", 89],
  ])("at %s are %d to a square", (exposure, strips) => {
    const roof = covered("asphalt-shingles", {}, { overrides: { "covering.exposure": exposure } });
    const squares = roof.sheet.in(find(roof, "covering.laidArea"), "square").toNumber();
    expect(Math.round(find(roof, "covering.pieces").value.toNumber() / squares)).toBe(strips);
  });

  // Widely printed for strips 36 in long at 5 in, four nails each; those of the ridge's caps come on top.
  it("take 320 nails to a square", () => {
    const squares = roof.sheet.in(find(roof, "covering.laidArea"), "square");
    const caps = find(roof, "covering.nails").value.minus(find(roof, "covering.pieces").value.times(4));
    expect(caps.toNumber()).toBe(Math.ceil((314 / 12) * 4));
    const field = find(roof, "covering.nails").value.minus(caps);
    expect(Math.round(field.dividedBy(squares).toNumber())).toBe(320);
  });

  // Trade-journal field guide: squares that a roll of felt covers, single and half lapped, waste left out.
  it.each([
    ["felt-15", "5 in", 4],
    ["felt-15", "3 in", 2],
    ["felt-30", "5 in", 2],
    ["felt-30", "3 in", 1],
  ] as const)("lie on %s, of which a roll at %s in 12 covers %i squares", (felt, rise, squares) => {
    const roof = covered("asphalt-shingles", { slope: { rise, run: "12 in" } });
    const laid = feet2(roof, "covering.underlay") / feet2(roof, "covering.area") / 1.05;
    const [width, length] = [UNDERLAYS[felt].width, UNDERLAYS[felt].length].map((text) =>
      inUnit(exactly(text), "ft").toNumber(),
    );
    expect(Math.floor(((width as number) * (length as number)) / laid / 100)).toBe(squares);
  });

  it("below 2 in 12 are not allowed, and are taken off all the same", () => {
    const flat = covered("asphalt-shingles", { slope: { rise: "1 in", run: "12 in" } });
    expect(flat.takeoff.slope).toMatchObject({ allowed: false, reference: expect.stringContaining("R905.2.2") });
    expect(Number(needs(flat.takeoff).course)).toBeGreaterThan(10);
    expect(flat.takeoff.underlay?.layers).toBe(2);
  });
});

describe("wood shingles", () => {
  // The Building Trades Pocketbook (International Textbook Co.), table for estimating shingles: how many cover 100 ft² at an
  // exposure, 4 in and 6 in wide. It rounds to ten or so: 3 % here.
  it.each([
    ["4 in", "4 in", 900],
    ["4 in", "5 in", 720],
    ["4 in", "6 in", 600],
    ["4 in", "7 in", 514],
    ["4 in", "8 in", 450],
    ["6 in", "4 in", 600],
    ["6 in", "5 in", 480],
    ["6 in", "6 in", 400],
    ["6 in", "7 in", 343],
    ["6 in", "8 in", 300],
  ])("%s wide at %s to the weather are %d to a square", (width, exposure, printed) => {
    const overrides = { "covering.pieceWidth": width, "covering.exposure": exposure };
    const roof = covered("wood-shingles", {}, { overrides });
    const squares = roof.sheet.in(find(roof, "covering.laidArea"), "square").toNumber();
    expect(Math.abs(find(roof, "covering.pieces").value.toNumber() / squares - printed)).toBeLessThan(1);
  });

  // Trade association of cedar shake and shingle makers: ft² that four bundles cover, by the exposure at which they cover 100;
  // from memory. Printed to half a square foot.
  it.each([
    ["16 in", "5 in", "3.5 in", 70],
    ["16 in", "5 in", "4 in", 80],
    ["16 in", "5 in", "6 in", 120],
    ["16 in", "5 in", "7 in", 140],
    ["18 in", "5.5 in", "4 in", 72.5],
    ["18 in", "5.5 in", "5 in", 90.5],
    ["18 in", "5.5 in", "6.5 in", 118],
    ["24 in", "7.5 in", "6 in", 80],
    ["24 in", "7.5 in", "6.5 in", 86.5],
  ])("%s long, reckoned at %s, cover at %s with four bundles %d ft²", (_length, full, exposure, printed) => {
    const overrides = { "covering.soldExposure": full, "covering.exposure": exposure };
    const roof = covered("wood-shingles", {}, { overrides });
    expect(Math.abs(4 * feet2(roof, "covering.coversLaid") - printed)).toBeLessThanOrEqual(0.5);
  });

  it("show 5 in from 4 in 12 up and 3 3/4 in below it (table R905.7.5), on a deck that then has no gaps", () => {
    const steep = covered("wood-shingles");
    const low = covered("wood-shingles", { slope: { rise: "3 in", run: "12 in" } });
    expect([inches(steep, "covering.exposure"), inches(low, "covering.exposure")]).toEqual(["5", "3.75"]);
    expect([steep, low].map(({ frame }) => frame?.roof?.deck.kind)).toEqual(["spaced-boards", "solid-boards"]);
  });

  it("cover 100 ft² with four bundles of 16 in at 5 in (NAVEDTRA 14044), 75 at 3 3/4", () => {
    const low = covered("wood-shingles", { slope: { rise: "3 in", run: "12 in" } });
    const bundles = (feet2(low, "covering.laidArea") * 1.07) / (25 * 0.75);
    expect(value(low, "covering.bundles")).toBe(String(Math.ceil(bundles)));
  });

  it("lie twice at the eave, with two nails each (R905.7.5)", () => {
    const roof = covered("wood-shingles");
    // Two eaves of 314 in once more, 5 in high: 21.8 ft²
    expect(feet2(roof, "covering.laidArea") - feet2(roof, "covering.area")).toBeCloseTo((2 * 314 * 5) / 144, 9);
    const nails = find(roof, "covering.nails").value.minus(find(roof, "covering.pieces").value.times(2)).toNumber();
    expect(nails).toBe(Math.ceil((314 / 12) * 4));
  });

  it("are carried by boards at the exposure, one more row next to eave and ridge", () => {
    const roof = covered("wood-shingles");
    // Half of 5 in has no room for a board of 4 in: two lie edge to edge at either end. (115.92 − 3 × 4) ÷ 5 = 20.8:
    // 21 spaces, 22 rows, and two closer ones.
    expect([value(roof, "roof.deckSpaces"), value(roof, "roof.deckRows")]).toEqual(["21", "24"]);
    const wide = { deck: { spacing: "5 in", closerRows: 0 } };
    expect(value(covered("wood-shingles", wide), "roof.deckRows")).toBe("24"); // (115.92 − 4) ÷ 5 = 22.4
    // Half of 10 in has: (115.92 − 4) ÷ 10 = 11.2, 12 spaces, 13 rows, and two halfway.
    const apart = { deck: { spacing: "10 in", closerRows: 1 } };
    expect(value(covered("wood-shingles", apart), "roof.deckRows")).toBe("15");
  });
});

describe("wood shakes on the same gable", () => {
  // Trade association of cedar shake and shingle makers: ft² that five bundles of 24 in shakes cover; from memory.
  it.each([
    ["7 1/2 in", 75],
    ["8 1/2 in", 85],
    ["10 in", 100],
  ])("at %s five bundles cover %d ft²", (exposure, printed) => {
    const roof = covered("wood-shakes", {}, { overrides: { "covering.exposure": exposure } });
    const bundles = (feet2(roof, "covering.laidArea") * 1.07) / (printed / 5);
    expect(value(roof, "covering.bundles")).toBe(String(Math.ceil(bundles)));
  });
});

describe("other coverings on the same gable", () => {
  it("tile: 16 1/2 × 13 in at 3 in head lap is 89 to a square, 13.5 courses of 12 in", () => {
    const roof = covered("tile");
    const perSquare = find(roof, "covering.pieces").value.dividedBy(roof.sheet.in(roof.takeoff.squares, "square"));
    // 100 ÷ (13.5 × 12 ÷ 144) = 88.9; roofs are said to take "about 90"
    expect(perSquare.toNumber()).toBeCloseTo(88.9, 0);
    // Concrete tile weighs 9 1/2 to 12 lb/ft² (trade journal)
    const each = find(roof, "covering.weightPerArea");
    expect(roof.sheet.in(each, "lb/ft2").toNumber()).toBeGreaterThanOrEqual(9.5);
    expect(roof.sheet.in(each, "lb/ft2").toNumber()).toBeLessThanOrEqual(12);
    expect(value(roof, "covering.courses")).toBe("9"); // (109 + 1.5) × 13/12 = 119.7; ÷ 13.5 = 8.9
  });

  it("mineral-surfaced roll: one roll of 3 × 36 ft to a square, before waste", () => {
    const roof = covered("mineral-roll");
    expect(value(roof, "covering.courses")).toBe("4"); // (118.625 − 2) ÷ 34 = 3.4
    const area = feet2(roof, "covering.area");
    const strips = roof.sheet.in(find(roof, "covering.stripLength"), "ft").toNumber();
    expect(strips).toBeCloseTo(8 * (314 / 12) + 314 / 12 / 3, 6); // four a slope, and 12 in of width along the ridge
    expect(area / 100).toBeLessThan(strips / 36);
  });

  it("membrane: glued to sheets, which are bought with it", () => {
    const roof = covered("membrane");
    expect(roof.groups.some(({ name }) => /purlin|deck/.test(name))).toBe(false);
    // 517.34 × 1.08 ÷ 32 = 17.5
    expect(needs(roof.takeoff)).toMatchObject({ sheathing: "18", "sheet-nail": "561" });
  });

  it("standing seam: clips along every panel, no screws through it", () => {
    const roof = covered("standing-seam-steel");
    expect(value(roof, "covering.across")).toBe("20"); // 314 ÷ 16
    // 118.625 ÷ 24 = 4.9: six clips a panel, 40 panels
    expect(value(roof, "covering.clips")).toBe("240");
    expect(roof.sheet.find("covering.purlinScrews")).toBeUndefined();
  });

  it("boards: 9 in wide, lapped 1 1/2 in on both neighbours", () => {
    const roof = covered("boards");
    expect(value(roof, "covering.across")).toBe("42"); // (314 − 1.5) ÷ 7.5 = 41.7
    expect(value(roof, "covering.boards")).toBe(String(2 * 42 + 2 * 2)); // and two along the ridge, in two lengths
  });

  it("refuses a deck that does not carry the covering, and names those that do", () => {
    const fault = (deck: NonNullable<Roof["deck"]>) => {
      try {
        covered("asphalt-shingles", { deck });
      } catch (error) {
        return (error as FaultError).faults[0];
      }
      return undefined;
    };
    expect(fault({ kind: "purlins" })).toMatchObject({
      code: "cannot-build",
      at: "/structure/deck/kind",
      cure: "Choose solid-boards or sheets, or leave it out.",
    });
    expect(fault({ kind: "sheets" })).toBeUndefined();
  });
});

describe("a gable whose eaves differ", () => {
  const roof = covered("ribbed-steel", { overhang: { eave: "12 in", farEave: "48 in", gable: "12 in" } });

  it("is covered slope by slope: panels of 119 and 158 in", () => {
    // (96 + 48 + 1 + 1.5 − 1) × 13/12 = 157.6
    expect(inches(roof, "covering.near.slopeLength")).toBe("118.625");
    expect(inches(roof, "covering.far.slopeLength")).toBe("157.625");
    expect(
      roof.takeoff.faces.map(({ pieceLength }) => pieceLength && roof.sheet.in(pieceLength, "in").toString()),
    ).toEqual(["119", "158"]);
    expect(value(roof, "covering.panels")).toBe("18");
    const area = (314 * (118.625 + 157.625)) / 144;
    expect(feet2(roof, "covering.area")).toBeCloseTo(area, 9);
  });
});

describe("a hip roof of 16 × 24 ft at 5 in 12", () => {
  it.each(coveringKinds)("is as large under %s as the gable's plan of the same size: plan area × 13/12", (kind) => {
    const roof = covered(kind, { kind: "hip" });
    // Sheets end with fascia and drip on all four sides, so the plan is that much larger all round.
    const drip = roof.sheet.in(find(roof, "covering.drip"), "in").toNumber();
    const past = 12 + 1 + drip;
    const plan = ((192 + 2 * past) * (288 + 2 * past)) / 144;
    expect(feet2(roof, "covering.area")).toBeCloseTo((plan * 13) / 12, 8);
  });

  it("has hips as long as the steel square says: 17.69 in to a foot of run at 5 in 12", () => {
    // NAVEDTRA 14044, framing square: length of hip per foot of run at 5 in 12: 17.69 in.
    const roof = covered("ribbed-steel", { kind: "hip" });
    const run = (192 / 2 + 12 + 1 + 1.5) / 12;
    expect(roof.sheet.in(find(roof, "covering.hipLength"), "in").toNumber() / run).toBeCloseTo(17.69, 2);
  });

  it("is cut into strips that no strip leaves bare: each reaches as far as the hip at its longer edge", () => {
    const roof = covered("ribbed-steel", { kind: "hip" });
    const [side, end] = roof.takeoff.faces;
    for (const layout of [side, end]) {
      if (!layout?.strips) throw new Error("no strips");
      const { face, strips } = layout;
      const [E, T, S] = [face.eave, face.top, face.slopeLength].map((cell) => roof.sheet.in(cell, "in").toNumber()) as [
        number,
        number,
        number,
      ];
      const height = (x: number) => S * Math.min(1, (2 * x) / (E - T), (2 * (E - x)) / (E - T));
      strips.forEach((strip, i) => {
        const from = i * 36;
        const to = Math.min(E, from + 36);
        // The highest of many points across the strip
        const most = Math.max(...Array.from({ length: 73 }, (_, k) => height(from + ((to - from) * k) / 72)));
        const reach = roof.sheet.in(strip.reach, "in").toNumber();
        expect(reach).toBeGreaterThanOrEqual(most - 1e-9);
        expect(reach - most).toBeLessThan(S / 20); // the apex may fall between two of the points
        expect(roof.sheet.in(strip.length, "in").toNumber() - reach).toBeLessThan(1);
      });
    }
  });

  it("uses the offcuts of hips where sheets lap alike on both edges, and not where their ribs have a hand", () => {
    const ordered = (kind: CoveringKind) => {
      const { takeoff, sheet } = covered(kind, { kind: "hip" }, { overrides: { "covering.coverWidth": "36 in" } });
      const item = takeoff.needs.find(({ name }) => name === "covering.panel")?.item;
      const cuts = item?.kind === "covering" ? (item.cuts ?? []) : [];
      return cuts.reduce((all, cut) => all + sheet.in(cut.length, "in").toNumber() * cut.count.value.toNumber(), 0);
    };
    // By hand, 36 in wide: a hip of 110.5 in cuts strips at 36, 72 and 108 in from the left corner, each slanting by
    // 119.7 × 36 ÷ 110.5 = 39 in. Three on either side of the roof pair as two and one with its twin: 3 a pair of slopes; from
    // the right two whole ones each, 2. Sides and ends alike: 10 panels less the slant that they share.
    expect(ordered("ribbed-steel") - ordered("corrugated-steel")).toBe(390);
    // What is ordered covers the roof whatever is saved.
    const roof = covered("corrugated-steel", { kind: "hip" });
    expect(ordered("corrugated-steel") * 36).toBeGreaterThan(feet2(roof, "covering.area") * 144);
  });

  it("of boards has a deck of boards cut from one length, rows times the middle of each slope", () => {
    const roof = covered("asphalt-shingles", { kind: "hip" });
    const group = roof.groups.find(({ name }) => name === "deck-boards");
    // Edges of faces: (26 ft × 18 ft plan) × 13/12 = 507 ft² of rafters; 20 rows of 6 in are 10 ft of 9.66.
    const length = roof.sheet.in(find(roof, "roof.deckLength"), "ft").toNumber();
    expect(length).toBeGreaterThan((507 / 0.5) * 1.08);
    expect(length).toBeLessThan((507 / 0.5) * 1.08 * 1.06);
    expect(group && roof.sheet.in(group.length, "ft").toString()).toBe("12");
  });
});

describe("a lean-to", () => {
  it.each(coveringKinds)("takes off %s", (kind) => {
    const roof = covered(kind, { kind: "lean-to" });
    expect(roof.takeoff.faces.map(({ face }) => face.alike)).toEqual([1]);
    for (const { name, quantity } of roof.takeoff.needs) expect([name, quantity.value.gt(0)]).toEqual([name, true]);
  });
});

describe("the upper edge of a single slope", () => {
  const labels = (highSide: "posts" | "ledger") =>
    covered("ribbed-steel", { kind: "lean-to", highSide } as Partial<Roof>).takeoff.needs.map(({ label }) => label);

  it("has a flashing, and no ridge, whether it is free or against a wall", () => {
    expect(labels("posts")).toEqual(expect.arrayContaining(["High-side flashing", "Closure strips, high side"]));
    expect(labels("ledger")).toEqual(expect.arrayContaining(["Headwall flashing", "Closure strips, headwall"]));
    for (const side of ["posts", "ledger"] as const) expect(labels(side).join()).not.toMatch(/ridge/i);
    expect(covered("ribbed-steel").takeoff.needs.map(({ label }) => label)).toContain("Ridge cap");
  });
});

describe("a covering of set exposure", () => {
  it("takes the bundle's own area at the exposure that it is sold for", () => {
    const price = { kind: "unpriced", at: "/catalog", add: "a price" } as const;
    const offer: CoveringOffer = {
      name: "strips",
      label: "Strips",
      at: "/catalog/coverings/0",
      covering: "asphalt-shingles",
      sheets: { form: "courses", covers: exactly("3 m2"), exposure: exactly("140 mm"), price, bulk: [] },
      trims: [],
      closures: [],
    };
    const roof = covered("asphalt-shingles", {}, {}, offer);
    const area = roof.sheet.in(find(roof, "covering.area"), "m2").times("1.07").dividedBy(3);
    expect(value(roof, "covering.bundles")).toBe(area.ceil().toString());
  });
});
