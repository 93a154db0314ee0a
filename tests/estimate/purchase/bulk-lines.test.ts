/** Shingles, rolls, sheets, panels and boards at bulk prices, against trying every number by hand. */
import { describe, expect, it } from "vitest";
import { estimated } from "../../helpers/estimating.js";

interface Bulk {
  readonly from: number;
  readonly price: string;
}

/** A gable of so many feet under a covering that is sold so. */
const roofed = (covering: Record<string, unknown>, length: string, overrides: object = {}, lumber: object[] = []) =>
  estimated({
    structure: {
      kind: "gable",
      span: "12 ft",
      length,
      slope: { rise: "4 in", run: "12 in" },
      overhang: { eave: "12 in", gable: "0 in" },
      covering: covering.covering,
    },
    catalog: { name: "A shelf", currency: "USD", coverings: [{ name: "roof", ...covering }], lumber },
    overrides,
  });

/** Every number from the needed one to 200 is tried, each at the lowest price that holds for it. */
function byHand(needed: number, one: number, bulk: readonly Bulk[]): [number, number] {
  let best: [number, number] = [needed, Number.POSITIVE_INFINITY];
  for (let count = needed; count <= 200; count++) {
    const each = Math.min(one, ...bulk.map(({ from, price }) => (count >= from ? Number(price.slice(1)) : one)));
    const cost = Math.round(count * each * 100) / 100;
    if (cost < best[1]) best = [count, cost];
  }
  return best;
}

const lineOf = (estimate: ReturnType<typeof roofed>, part: string): [number, number] => {
  const line = estimate.common.lines.find(({ name }) => name === `order.covering.${part}`);
  return [line?.quantity.value.toNumber() ?? Number.NaN, line?.amount?.value.toNumber() ?? Number.NaN];
};

const numberOf = (estimate: ReturnType<typeof roofed>, name: string): number =>
  estimate.basis.sheet.find(name)?.value.toNumber() ?? Number.NaN;

describe("bundles, rolls, tubes and deck sheets at bulk prices", () => {
  const bulk = [
    { from: 12, price: "$33.00" },
    { from: 30, price: "$27.50" },
  ];
  const roll = { width: "3 ft", length: "72 ft", price: "$24.00", bulk: [{ from: 4, price: "$17.50" }] };
  const shingles = {
    covering: "asphalt-shingles",
    sheets: { form: "courses", covers: "33.3 ft2", exposure: "5 in", price: "$38.50", bulk },
    underlay: roll,
    sheathing: { width: "4 ft", length: "8 ft", price: "$31.00", bulk: [{ from: 15, price: "$26.00" }] },
  };

  it.each(["10 ft", "14 ft", "16 ft", "24 ft", "30 ft", "34 ft", "60 ft"])(
    "cost what trying every number costs over %s",
    (length) => {
      const found = roofed(shingles, length);
      expect(lineOf(found, "course")).toEqual(byHand(numberOf(found, "covering.bundles"), 38.5, bulk));
      expect(lineOf(found, "underlay")).toEqual(
        byHand(numberOf(found, "order.covering.underlay.rolls"), 24, roll.bulk),
      );
    },
  );

  it("say how many are left over where more are bought than needed, and at which price", () => {
    // 11 bundles at 38.50 are 423.50, twelve at 33.00 are 396.
    const found = roofed(shingles, "22 ft");
    const needed = numberOf(found, "covering.bundles");
    expect(needed).toBe(11);
    const line = found.common.lines.find(({ name }) => name === "order.covering.course");
    expect([line?.leftOver?.value.toNumber(), line?.price?.value.toNumber()]).toEqual([1, 33]);
  });

  it("follow the prices that the user puts in their place", () => {
    expect(lineOf(roofed(shingles, "22 ft", { "price.roof.course-from12": "$36.00" }), "course")).toEqual([11, 423.5]);
  });

  it("hold for membranes with their glue and tape as well", () => {
    const sheet = { width: "10 ft", length: "50 ft", price: "$310", bulk: [{ from: 2, price: "$150" }] };
    const membrane = {
      covering: "membrane",
      sheets: { form: "rolls", ...sheet },
      adhesive: { covers: "150 ft2", price: "$118.00", bulk: [{ from: 3, price: "$80.00" }] },
      sealant: { length: "20 ft", price: "$20.00", bulk: [{ from: 5, price: "$11.00" }] },
    };
    const found = roofed(membrane, "20 ft");
    expect(lineOf(found, "roll")).toEqual(byHand(numberOf(found, "covering.rolls"), 310, sheet.bulk));
    expect(lineOf(found, "adhesive")).toEqual(
      byHand(numberOf(found, "order.covering.adhesive.rolls"), 118, membrane.adhesive.bulk),
    );
    expect(lineOf(found, "lap-sealant")).toEqual(
      byHand(numberOf(found, "order.covering.lap-sealant.rolls"), 20, membrane.sealant.bulk),
    );
  });
});

describe("panels at bulk prices", () => {
  const panels = (rows: object[]) => ({
    covering: "ribbed-steel",
    sheets: { form: "panels", coverWidth: "36 in", sold: { by: "piece", lengths: rows } },
  });

  it("are bought in the longer length where its bulk price makes all of them cheaper", () => {
    const short = { length: "8 ft", price: "$30.00" };
    const long = { length: "10 ft", price: "$38.00", bulk: [{ from: 14, price: "$28.00" }] };
    // 20 ft at 3 ft a panel: 7 a slope, 14 in all. 14 × 30 = 420; 14 × 28 = 392.
    expect(lineOf(roofed(panels([short, long]), "20 ft"), "panel")).toEqual([14, 392]);
    // 5 a slope, 10 in all: 10 × 30 = 300; 14 of the long are 392.
    expect(lineOf(roofed(panels([short, long]), "12 ft"), "panel")).toEqual([10, 300]);
  });

  it("are planned anew at the price that the user puts in the place of the yard's", () => {
    const rows = [
      { length: "8 ft", price: "$30.00" },
      { length: "10 ft", price: "$38.00" },
    ];
    const changed = roofed(panels(rows), "20 ft", { "price.roof.8.piece": "$40.00" });
    expect(lineOf(changed, "panel")).toEqual([14, 14 * 38]);
  });
});
