/** Trims in several lengths and at bulk prices, against trying every order by hand. */
import { describe, expect, it } from "vitest";
import type { FaultError } from "../../../src/estimate/faults.js";
import { estimated } from "../../helpers/estimating.js";

interface Row {
  readonly kind: string;
  readonly length: string;
  readonly price: string | null;
  readonly from?: number;
}

/** A gable 20 ft long with eaves of 20 ft and two rakes a slope, under steel with these trims and closures. */
const roofed = (trims: readonly Row[], closures: readonly Row[] = [], length = "20 ft") =>
  estimated({
    structure: {
      kind: "gable",
      span: "12 ft",
      length,
      slope: { rise: "4 in", run: "12 in" },
      overhang: { eave: "12 in", gable: "0 in" },
      covering: "ribbed-steel",
    },
    catalog: {
      name: "A shelf",
      currency: "USD",
      coverings: [
        {
          name: "steel",
          covering: "ribbed-steel",
          sheets: {
            form: "panels",
            coverWidth: "36 in",
            sold: { by: "cut-length", price: "$4.00/ft", shortest: "3 ft", longest: "40 ft", step: "1 in" },
          },
          trims,
          closures,
        },
      ],
    },
  });

const lineOf = (estimate: ReturnType<typeof roofed>, part: string) => {
  const line = estimate.common.lines.find(({ name }) => name === `order.covering.${part}`);
  const packs = (line?.packs ?? []).map(({ label, count }) => [label, count.value.toNumber()] as const);
  return {
    amount: line?.amount?.value.toNumber(),
    packs: Object.fromEntries(packs.filter(([, count]) => count > 0)),
    count: line?.quantity.value.toNumber(),
  };
};

const inches = (estimate: ReturnType<typeof roofed>, name: string): number =>
  (estimate.basis.sheet.find(name)?.value.toNumber() ?? Number.NaN) / 25.4;

/** Least cost of pieces that reach so far along one edge; every count of each length up to twelve. */
function byHand(pieces: readonly { readonly reach: number; readonly price: number }[], wanted: number): number {
  const [piece, ...rest] = pieces;
  if (!piece) return wanted <= 1e-9 ? 0 : Number.POSITIVE_INFINITY;
  const costs = Array.from({ length: 13 }, (_, n) => n * piece.price + byHand(rest, wanted - n * piece.reach));
  return Math.min(...costs);
}

describe("a trim sold in several lengths", () => {
  const kinds = ["ridge-cap", "eave-trim", "rake-trim"];
  const sold = [
    { feet: 8, price: 21 },
    { feet: 10, price: 27.5 },
    { feet: 12, price: 31 },
  ];
  const trims = kinds.flatMap((kind) =>
    sold.map(({ feet, price }) => ({ kind, length: `${feet} ft`, price: `$${price.toFixed(2)}` })),
  );

  it.each(["13 ft", "20 ft", "26 ft", "31 ft 5 in"])(
    "costs over %s what trying every order by hand costs",
    (length) => {
      const estimate = roofed(trims, [], length);
      const lap = inches(estimate, "covering.trimLap");
      const pieces = sold.map(({ feet, price }) => ({ reach: feet * 12 - lap, price }));
      // One ridge; two eaves; two rakes a slope: each afresh, or offcuts used along the next.
      for (const [kind, runs] of [
        ["ridge-cap", 1],
        ["eave-trim", 2],
        ["rake-trim", 4],
      ] as const) {
        const all = inches(estimate, `covering.${kind}.length`);
        const afresh = runs * byHand(pieces, all / runs - lap);
        expect([kind, lineOf(estimate, kind).amount]).toEqual([
          kind,
          Number(Math.min(afresh, byHand(pieces, all - lap)).toFixed(2)),
        ]);
      }
    },
  );

  it("is told piece by piece, and reaches", () => {
    const estimate = roofed(trims);
    const { packs, amount } = lineOf(estimate, "ridge-cap");
    const feet = Object.entries(packs).map(
      ([label, count]) => [Number(label.replace(/'.*| ft.*/, "")), count] as const,
    );
    const pieces = feet.reduce((sum, [, count]) => sum + count, 0);
    const lap = inches(estimate, "covering.trimLap");
    const reached = feet.reduce((sum, [each, count]) => sum + each * 12 * count, 0) - (pieces - 1) * lap;
    expect(reached).toBeGreaterThanOrEqual(inches(estimate, "covering.ridge-cap.length"));
    expect(amount).toBe(
      feet.reduce(
        (sum, [each, count]) => sum + (sold.find((one) => one.feet === each)?.price ?? Number.NaN) * count,
        0,
      ),
    );
  });

  it("costs no more than in the first length alone", () => {
    const only = lineOf(roofed(trims.filter(({ length }) => length === "8 ft")), "ridge-cap");
    expect(lineOf(roofed(trims), "ridge-cap").amount).toBeLessThanOrEqual(only.amount as number);
  });

  it("too short for its laps is refused in whichever row it stands", () => {
    const short = [...trims, { kind: "ridge-cap", length: "12 in", price: "$1.00" }];
    try {
      roofed(short);
      expect.unreachable();
    } catch (error) {
      expect((error as FaultError).faults[0]?.at).toBe("/catalog/coverings/0/trims/9/length");
      expect((error as FaultError).faults[0]?.wrong).toMatch(/ridge cap is 12 in: laps would eat it up/);
    }
  });
});

describe("a trim that is cheaper from a number on", () => {
  const row = { kind: "eave-trim", length: "10 ft", price: "$20.00" };

  it("is bought at that price where so many are needed or it pays to take so many", () => {
    const single = lineOf(roofed([row]), "eave-trim");
    expect(single).toMatchObject({ count: 5, amount: 100 });
    const bulk = (from: number) => lineOf(roofed([row, { ...row, price: "$15.00", from }]), "eave-trim").amount;
    expect(bulk(5)).toBe(75);
    // Six at 15 are 90, less than five at 20; seven at 15 are more.
    expect(bulk(6)).toBe(90);
    expect(bulk(7)).toBe(100);
  });

  it("without any price asks for one", () => {
    const none = roofed([
      { ...row, price: null },
      { ...row, price: null, from: 5 },
    ]).common.lines.find(({ name }) => name === "order.covering.eave-trim");
    expect(none?.amount).toBeUndefined();
    expect(none?.add).toMatch(/Add a price in USD for/);
  });
});

describe("closures", () => {
  it("of two lengths are refused: strips begin afresh at every edge", () => {
    const strips = [
      { kind: "inside", length: "3 ft", price: "$2.00" },
      { kind: "inside", length: "4 ft", price: "$2.50" },
    ];
    expect(() => roofed([], strips)).toThrow();
  });
});

describe("a can that is cheaper from a number on", () => {
  const coated = (cans: readonly object[]) =>
    estimated({
      structure: {
        kind: "pieces",
        pieces: [
          { name: "boards", role: "other", count: 90, section: "2 x 6 in", length: "10 ft", surface: "dressed" },
        ],
      },
      catalog: { name: "A shelf", currency: "USD", finishes: [{ name: "stain", kind: "oil-stain", cans }] },
      options: { finish: "oil-stain" },
    }).routes.buy.lines.find(({ department }) => department === "finishes");

  it("is bought at that price", () => {
    const plain = coated([{ size: "1 gal", price: "$40.00" }]);
    const count = plain?.packs?.[0]?.count.value.toNumber() ?? 0;
    expect(count).toBeGreaterThan(3);
    const bulk = coated([
      { size: "1 gal", price: "$40.00" },
      { size: "1 gal", price: "$30.00", from: count },
    ]);
    expect(bulk?.amount?.value.toNumber()).toBe(count * 30);
  });
});
