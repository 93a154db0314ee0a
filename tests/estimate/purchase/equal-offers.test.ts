/** Of offers that serve equally well, the one by which the whole order costs least; every order added up by hand. */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { layBasis } from "../../../src/estimate/basis.js";
import { Sheet } from "../../../src/estimate/sheet/sheet.js";
import { estimated, request } from "../../helpers/estimating.js";

const offer = (name: string, lengths: readonly object[], more: object = {}) => ({
  name,
  label: name,
  species: "spruce-pine-fir",
  section: "2 x 4 in",
  sold: { by: "piece", lengths },
  ...more,
});
const rails = (count: number, name = "rails") => ({ name, role: "other", count, section: "2 x 4 in", length: "7 ft" });

const job = (lumber: readonly object[], pieces: readonly object[], wastage = "0 %") => ({
  structure: { kind: "pieces", pieces },
  catalog: { name: "A yard", currency: "USD", lumber },
  shop: { lumber: "fetched" },
  options: { finish: "none" },
  assumptions: { "buy.endTrim": "0 in", "buy.wastage": wastage },
});

/** What lumber is bought and costs. */
const billed = (body: object) =>
  estimated(body)
    .routes.buy.lines.filter(({ department }) => department === "lumber")
    .map(({ label, amount }) => `${label}: ${amount?.value.toFixed(2) ?? "no price"}`);

const total = (bill: readonly string[]): number =>
  bill.reduce((sum, line) => sum + Math.round(100 * Number(line.split(": ").at(-1))), 0);

/** The same; nothing is lost at the ends and nothing is spoiled. */
const told = (lumber: readonly object[], pieces: readonly object[], overrides: object = {}, wastage = "0 %") =>
  billed({ ...job(lumber, pieces, wastage), overrides });

describe("of offers that serve equally well", () => {
  it("a bundle of 20 at $4.00 each is not bought for two pieces where one by one they cost $4.50", () => {
    const yard = [
      offer("bundled", [{ length: "8 ft", price: "$4.00" }], { bundle: 20 }),
      offer("single", [{ length: "8 ft", price: "$4.50" }]),
    ];
    expect(told(yard, [rails(2)])).toEqual(["single, 8': 9.00"]);
    // 18 singles are $81.00, the bundle $80.00.
    expect(told(yard, [rails(18)])).toEqual(["bundled, 8': 80.00"]);
  });

  it("spares count in whole bundles and bulk prices, as they are bought", () => {
    // Ten rails and a spare: two bundles of ten at $4.00 are $80.00, eleven singles $49.50.
    const bundles = [
      offer("bundled", [{ length: "8 ft", price: "$4.00" }], { bundle: 10 }),
      offer("single", [{ length: "8 ft", price: "$4.50" }]),
    ];
    expect(told(bundles, [rails(10)], {}, "7 %")).toEqual(["single, 8': 49.50"]);
    expect(told(bundles, [rails(10)])).toEqual(["bundled, 8': 40.00"]);
    // Eight and a spare: nine at $4.00 are $36.00, eleven at $3.00 from eleven on $33.00.
    const bulk = [
      offer("flat", [{ length: "8 ft", price: "$4.00" }]),
      offer("eleven", [{ length: "8 ft", price: "$5.00", bulk: [{ from: 11, price: "$3.00" }] }]),
    ];
    expect(told(bulk, [rails(8)], {}, "7 %")).toEqual(["eleven, 8': 33.00"]);
  });

  it("the bulk price decides where so many are wanted: 12 at $4.00 from ten on against $5.00", () => {
    const yard = [
      offer("flat", [{ length: "8 ft", price: "$5.00" }]),
      offer("by-ten", [{ length: "8 ft", price: "$5.50", bulk: [{ from: 10, price: "$4.00" }] }]),
    ];
    expect(told(yard, [rails(2)])).toEqual(["flat, 8': 10.00"]);
    expect(told(yard, [rails(12)])).toEqual(["by-ten, 8': 48.00"]);
  });

  it("one that is too short is none, however cheap by the foot", () => {
    const yard = [
      offer("short", [{ length: "6 ft", price: "$2.00" }]),
      offer("long", [{ length: "8 ft", price: "$5.00" }]),
    ];
    expect(told(yard, [rails(2)])).toEqual(["long, 8': 10.00"]);
  });

  it("a long stick that is half wasted counts in whole: 13 ft at $0.45 a foot against 8 ft at $0.50", () => {
    const yard = [
      offer("a-long", [{ length: "13 ft", price: "$5.85" }]),
      offer("b-short", [{ length: "8 ft", price: "$4.00" }]),
    ];
    expect(told(yard, [rails(3)])).toEqual(["b-short, 8': 12.00"]);
  });

  it("groups that have the same choice share a bundle: three and three alone would take singles at $7.00", () => {
    const yard = [
      offer("six", [{ length: "8 ft", price: "$4.00" }], { bundle: 6 }),
      offer("single", [{ length: "8 ft", price: "$7.00" }]),
    ];
    expect(told(yard, [rails(3)])).toEqual(["single, 8': 21.00"]);
    expect(told(yard, [rails(3), rails(3, "posts")])).toEqual(["six, 8': 24.00"]);
  });

  it("groups that share but some of their offers share a bundle, too: three of pine or fir with three of pine alone", () => {
    const yard = [
      offer("eight", [{ length: "8 ft", price: "$4.00" }], { bundle: 8, species: "eastern-white-pine" }),
      offer("single", [{ length: "8 ft", price: "$5.00" }], { species: "douglas-fir-larch" }),
    ];
    const pine = { ...rails(3, "posts"), species: ["eastern-white-pine"] };
    // Alone: three singles are $15.00, a bundle for the others $32.00. The bundle serves both.
    expect(told(yard, [rails(3)])).toEqual(["single, 8': 15.00"]);
    expect(told(yard, [rails(3), pine])).toEqual(["eight, 8': 32.00"]);
    // Nine want two bundles, or a bundle and three singles: $64.00 or $47.00.
    expect(told(yard, [rails(3), { ...pine, count: 6 }])).toEqual(["eight, 8': 32.00", "single, 8': 15.00"]);
  });

  it("a board at hand counts once, whichever offers it is like", () => {
    const yard = [
      offer("long", [{ length: "16 ft", price: "$9.00" }]),
      offer("short", [{ length: "8 ft", price: "$6.00" }]),
    ];
    const bill = billed({
      ...job(yard, [rails(2), rails(1, "posts")]),
      atHand: [{ section: "2 x 4 in", length: "8 ft", count: 1 }],
    });
    // One of three comes of the board; the other two are one stick of 16 ft.
    expect(bill).toEqual(["long, 16': 9.00", "long, at hand, 8': 0.00"]);
  });

  it("the choice is that of all choices tried by hand, on yards and groups drawn at random", () => {
    const sold = fc.record({
      cents: fc.uniqueArray(fc.integer({ min: 300, max: 1500 }), { minLength: 2, maxLength: 2 }),
      bundle: fc.constantFrom(undefined, 3, 6),
      pine: fc.boolean(),
    });
    const wanted = fc.record({
      count: fc.integer({ min: 1, max: 5 }),
      feet: fc.integer({ min: 2, max: 9 }),
      pine: fc.boolean(),
    });
    const draw = fc.record({
      offers: fc.array(sold, { minLength: 2, maxLength: 3 }),
      groups: fc.array(wanted, { minLength: 2, maxLength: 3 }),
    });
    let chosen = 0;
    fc.assert(
      fc.property(draw, ({ offers, groups }) => {
        const yard = offers.map(({ cents, bundle, pine }, i) => {
          const lengths = cents.map((price, j) => ({
            length: `${10 + 4 * j} ft`,
            price: `$${(price / 100).toFixed(2)}`,
          }));
          return offer(`offer-${i}`, lengths, { bundle, species: pine ? "eastern-white-pine" : "douglas-fir-larch" });
        });
        const rows = groups.map(({ count, feet, pine }, i) => ({
          ...{ ...rails(count, `g${i}`), length: `${feet} ft` },
          ...(pine && { species: ["eastern-white-pine"] }),
        }));
        const cost = (pieces: readonly object[]) => total(billed(job(yard, pieces)));
        const options = layBasis(new Sheet(), request(job(yard, rows))).groups.map(({ rivals }) =>
          rivals.map((one) => one.offer.name),
        );
        const all = options.reduce<readonly (readonly string[])[]>(
          (before, names) => before.flatMap((some) => names.map((name) => [...some, name])),
          [[]],
        );
        if (all.length < 2) return;
        chosen++;
        const least = Math.min(...all.map((names) => cost(rows.map((row, i) => ({ ...row, buyAs: names[i] })))));
        expect(cost(rows)).toBe(least);
      }),
      { seed: 20261127, numRuns: 30 },
    );
    expect(chosen).toBeGreaterThan(20);
  });

  it("the user's own price is reckoned with, on either side", () => {
    const yard = [
      offer("cheap", [{ length: "8 ft", price: "$4.00" }]),
      offer("dear", [{ length: "8 ft", price: "$5.00" }]),
    ];
    const price = (value: string) => ({ value, unit: "USD" });
    expect(told(yard, [rails(2)])).toEqual(["cheap, 8': 8.00"]);
    expect(told(yard, [rails(2)], { "price.cheap-8": price("6") })).toEqual(["dear, 8': 10.00"]);
    expect(told(yard, [rails(2)], { "price.dear-8": price("3") })).toEqual(["dear, 8': 6.00"]);
  });
});
