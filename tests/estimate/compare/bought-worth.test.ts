/** What a bought piece adds at the least: added up by hand, and against what orders of a part of the pieces really cost. */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { layBasis } from "../../../src/estimate/basis.js";
import { boughtWorth } from "../../../src/estimate/compare/bought-worth.js";
import { piecesShort } from "../../../src/estimate/purchase/lumber.js";
import { ZERO } from "../../../src/estimate/quantity/decimal.js";
import { Sheet } from "../../../src/estimate/sheet/sheet.js";
import { estimated, request } from "../../helpers/estimating.js";

interface Rails {
  readonly name: string;
  readonly count: number;
  readonly length: string;
  readonly buyAs?: string;
}

const offer = (name: string, lengths: readonly object[], more: object = {}) => ({
  ...{ name, label: name, species: "spruce-pine-fir", section: "2 x 4 in", sold: { by: "piece", lengths } },
  ...more,
});

const job = (lumber: readonly object[], rails: readonly Rails[], wastage = "0 %") => ({
  structure: { kind: "pieces", pieces: rails.map((one) => ({ role: "other", section: "2 x 4 in", ...one })) },
  catalog: { name: "A yard", currency: "USD", lumber },
  shop: { lumber: "fetched" },
  options: { finish: "none" },
  assumptions: { "buy.endTrim": "0 in", "buy.wastage": wastage },
});

/** Money a piece, hours left out. */
const worthOf = (body: object) => boughtWorth(layBasis(new Sheet(), request(body)), ZERO);

describe("what a bought piece adds at the least", () => {
  const rails = { name: "rails", count: 10, length: "7 ft" };
  const plenty = offer("plenty", [{ length: "8 ft", price: "$4.00" }]);

  it("is the least of all offers that serve as well: of the cheap one there are two, so that ten are bought as the other", () => {
    const few = offer("few", [{ length: "8 ft", price: "$3.00", available: 2 }]);
    const body = job([plenty, few], [rails]);
    expect(estimated(body).routes.buy.lines.find(({ department }) => department === "lumber")?.label).toBe(
      "plenty, 8'",
    );
    expect(worthOf(body).get("rails")?.toNumber()).toBeCloseTo(3, 6);
    expect(
      worthOf(job([plenty, few], [{ ...rails, buyAs: "plenty" }]))
        .get("rails")
        ?.toNumber(),
    ).toBeCloseTo(4, 6);
  });

  it("leaves out what has no price, where something that serves as well has one", () => {
    expect(
      worthOf(job([plenty, offer("unpriced", [{ length: "8 ft" }])], [rails]))
        .get("rails")
        ?.toNumber(),
    ).toBeCloseTo(4, 6);
  });

  it("comes to no more than any order of a part of them, each group as any of its equal offers", () => {
    const lengths = ["6 ft", "8 ft", "10 ft", "14 ft", "16 ft"];
    const stick = fc.record({
      length: fc.constantFrom(...lengths),
      cents: fc.integer({ min: 200, max: 1500 }),
      available: fc.constantFrom(undefined, undefined, 3, 8),
    });
    const sold = fc.record({
      sticks: fc.uniqueArray(stick, { minLength: 1, maxLength: 3, selector: ({ length }) => length }),
      bundle: fc.constantFrom(undefined, undefined, 4),
    });
    const group = fc.record({
      inches: fc.integer({ min: 20, max: 110 }),
      count: fc.integer({ min: 1, max: 9 }),
      share: fc.integer({ min: 0, max: 9 }),
      as: fc.nat({ max: 2 }),
    });
    const draw = fc.record({
      offers: fc.array(sold, { minLength: 2, maxLength: 3 }),
      groups: fc.array(group, { minLength: 1, maxLength: 3 }),
      wastage: fc.constantFrom("0 %", "7 %", "40 %"),
    });
    let compared = 0;
    fc.assert(
      fc.property(draw, ({ offers, groups, wastage }) => {
        const lumber = offers.map(({ sticks, bundle }, i) =>
          offer(
            `offer-${i}`,
            sticks.map(({ length, cents, available }) => ({
              length,
              price: `$${(cents / 100).toFixed(2)}`,
              available,
            })),
            { bundle },
          ),
        );
        const rows = groups.map(({ inches, count }, i) => ({ name: `g${i}`, count, length: `${inches} in` }));
        const part = groups.flatMap(({ share, as }, i): Rails[] => {
          const row = rows[i] as Rails;
          const count = Math.min(share, row.count);
          return count > 0 ? [{ ...row, count, buyAs: `offer-${as % offers.length}` }] : [];
        });
        if (part.length === 0) return;
        const whole = layBasis(new Sheet(), request(job(lumber, rows, wastage)));
        const worth = boughtWorth(whole, ZERO);
        const { routes } = estimated(job(lumber, part, wastage));
        const { lines: all, plan } = routes.buy;
        if (plan.stock.some(({ question, plan: cuts }) => piecesShort(question, cuts).size > 0)) return;
        const rivals = new Map(
          whole.groups.map((one) => [one.group.name, new Set(one.rivals.map(({ offer: { name } }) => name))]),
        );
        if (!part.every(({ name, buyAs }) => rivals.get(name)?.has(buyAs as string))) return;
        compared++;
        const lines = all.filter(({ department }) => department === "lumber");
        const cost = lines.reduce((sum, { amount }) => sum.plus(amount?.value ?? 0), ZERO);
        const least = part.reduce((sum, { name, count }) => sum.plus((worth.get(name) ?? ZERO).times(count)), ZERO);
        expect(least.minus("0.01").lte(cost)).toBe(true);
      }),
      { seed: 20261127, numRuns: 120 },
    );
    expect(compared).toBeGreaterThan(30);
  });
});
