/** Needs to lines of the shopping list, on a shelf that sells just what the case is about; added up by hand. */
import { describe, expect, it } from "vitest";
import type { Need } from "../../../src/estimate/need.js";
import type { Pricing } from "../../../src/estimate/purchase/line.js";
import { layShoppingList } from "../../../src/estimate/purchase/shopping-list.js";
import { exactly } from "../../../src/estimate/quantity/text.js";
import { plain, Sheet } from "../../../src/estimate/sheet/sheet.js";
import { demoBody, demoCatalog, estimated, request } from "../../helpers/estimating.js";

const catalogOf = (more: object) =>
  request({
    structure: {
      kind: "pieces",
      pieces: [{ name: "rails", role: "other", count: 1, section: "2 x 4 in", length: "7 ft" }],
    },
    catalog: { name: "A shelf", currency: "USD", ...more },
  }).catalog;

const pricingOn = (sheet: Sheet): Pricing => ({
  sheet,
  currency: "USD",
  minorDigits: 2,
  level: sheet.input("level", plain(1)),
});

const nut = (name: string, finish: string, packs: readonly object[]) => ({
  name,
  label: name,
  kind: "nut",
  diameter: "1/2 in",
  finish,
  packs,
});

/** Nuts that are wanted of a class, by name. */
type Wanted = readonly (readonly [name: string, corrosion: string, count: number])[];

function bought(fasteners: readonly object[], wanted: Wanted) {
  const sheet = new Sheet();
  const diameter = sheet.input("diameter", exactly("1/2 in"));
  const needs = wanted.map(([name, corrosion, count]): Need => {
    const quantity = sheet.input(`fasteners.order.${name}`, plain(count));
    const label = `Hexagon nut 1/2 in, ${corrosion.replaceAll("-", " ")} or better`;
    return {
      name: `fasteners.order.${name}`,
      label,
      quantity,
      item: { kind: "fastener", fastener: "nut", diameter, corrosion },
    };
  });
  const lines = layShoppingList(pricingOn(sheet), catalogOf({ fasteners }), needs, "inch-pound");
  return {
    sheet,
    told: lines.map(({ line }) => [
      line.label,
      line.packs?.map(({ label, count }) => `${count.value.toFixed()} × ${label}`).join(" + "),
      line.amount?.value.toFixed(2),
      line.leftOver?.value.toFixed(),
    ]),
    lines,
  };
}

describe("fasteners on the shopping list", () => {
  it("that come out of the same box are one need: 168 and 315 fit a box of 500, where apart they took three packs", () => {
    const fasteners = [
      nut("nuts", "hot-dip-galvanized", [
        { count: 100, price: "$7.48" },
        { count: 500, price: "$27.98" },
      ]),
    ];
    const { told, sheet, lines } = bought(fasteners, [
      ["hangers", "hot-dip-galvanized", 168],
      ["ties", "coated", 315],
    ]);
    expect(told).toEqual([
      ["Hexagon nut 1/2 in, hot dip galvanized or better (nuts)", "0 × box of 100 + 1 × box of 500", "27.98", "17"],
    ]);
    const need = lines[0]?.line.quantity;
    expect(need && sheet.workingLine(need)).toBe("fasteners.order.hangers + fasteners.order.ties = 168 + 315 = 483");
  });

  it("at a price below the cent are rounded once: 26 nuts at $0.085 are $2.21", () => {
    const { told } = bought([nut("nuts", "coated", [{ count: 1, price: "$0.085" }])], [["joints", "coated", 26]]);
    expect(told).toEqual([["Hexagon nut 1/2 in, coated or better (nuts)", "26 × loose", "2.21", "0"]]);
  });

  it("of two offers alike are the cheaper for the need, not the one with the cheapest piece", () => {
    // 30 pieces: a box of 100 at 10 cents a piece is $10.00, three of 10 at 20 cents are $6.00.
    const fasteners = [
      nut("big", "coated", [{ count: 100, price: "$10.00" }]),
      nut("small", "coated", [{ count: 10, price: "$2.00" }]),
    ];
    expect(bought(fasteners, [["joints", "coated", 30]]).told.map(([label]) => label)).toEqual([
      "Hexagon nut 1/2 in, coated or better (small)",
    ]);
    expect(bought(fasteners, [["joints", "coated", 60]]).told.map(([label]) => label)).toEqual([
      "Hexagon nut 1/2 in, coated or better (big)",
    ]);
  });

  it("with a price from 100 on are bought up to it where that is cheaper, and at it beyond", () => {
    const fasteners = [
      nut("nuts", "coated", [
        { count: 1, price: "$0.26" },
        { count: 1, from: 100, price: "$0.20" },
      ]),
    ];
    const of = (count: number) => bought(fasteners, [["joints", "coated", count]]).told[0]?.slice(1);
    // By hand: 76 × 0.26 = $19.76 is less than 100 × 0.20 = $20.00, 77 × 0.26 = $20.02 is more.
    expect(of(76)).toEqual(["76 × loose + 0 × loose", "19.76", "0"]);
    expect(of(77)).toEqual(["0 × loose + 100 × loose", "20.00", "23"]);
    expect(of(250)).toEqual(["0 × loose + 250 × loose", "50.00", "0"]);
    expect(of(12_345)).toEqual(["0 × loose + 12345 × loose", "2469.00", "0"]);
  });

  it("with a price from 100 on and boxes cost what trying every order by hand costs, for each need to 400", () => {
    const fasteners = [
      nut("nuts", "coated", [
        { count: 1, price: "$0.26" },
        { count: 1, from: 100, price: "$0.20" },
        { count: 50, price: "$9.70" },
      ]),
    ];
    const least = (need: number): number => {
      const boxes = Array.from({ length: 9 }, (_, i) => i);
      const loose = (count: number) => Math.min(26 * Math.max(0, count), 20 * Math.max(100, count));
      return Math.min(...boxes.map((count) => 970 * count + (count * 50 >= need ? 0 : loose(need - count * 50))));
    };
    const needs = Array.from({ length: 40 }, (_, i) => 10 * i + 3);
    const found = needs.map((need) => bought(fasteners, [["joints", "coated", need]]).lines[0]?.line.amount?.value);
    expect(found.map((amount) => amount?.times(100).toNumber())).toEqual(needs.map(least));
  });

  it("sold by the pound say so, and that the count is about", () => {
    const fasteners = [nut("nuts", "coated", [{ weight: "1 lb", count: 73, price: "$10.98" }])];
    expect(bought(fasteners, [["joints", "coated", 100]]).told[0]?.[1]).toBe("2 × 1 lb box, about 73");
  });

  it("without a price stay a line of their own that says what to add", () => {
    const { lines } = bought(
      [],
      [
        ["joints", "coated", 4],
        ["others", "stainless", 5],
      ],
    );
    expect(lines.map(({ line }) => [line.amount, line.add])).toEqual([
      [undefined, "Add hexagon nut 1/2 in, coated or better, to the catalog's fasteners."],
      [undefined, "Add hexagon nut 1/2 in, stainless or better, to the catalog's fasteners."],
    ]);
  });
});

describe("panels of which a yard has only so many", () => {
  const catalog = demoCatalog("orchard-yard") as { coverings: { covering: string; sheets: Record<string, unknown> }[] };
  const withPanels = (available?: number) => {
    const lengths = [
      { length: "10 ft", price: "$30", ...(available === undefined ? {} : { available }) },
      { length: "16 ft", price: "$60" },
    ];
    const coverings = catalog.coverings
      .filter(({ covering }) => covering === "ribbed-steel")
      .slice(0, 1)
      .map((offer) => ({ ...offer, sheets: { ...offer.sheets, sold: { by: "piece", lengths } } }));
    return estimated({ ...demoBody("orchard-shelter"), catalog: { ...catalog, coverings } });
  };
  const panelsOf = (made: ReturnType<typeof estimated>) =>
    made.common.lines
      .filter(({ name }) => name.includes("panel"))
      .flatMap(({ amount }) => (amount ? [amount.value.toFixed()] : []));

  it("are cut from the next length where the shorter ones run out", () => {
    // Eighteen panels of 9' 11": all of 10 ft, or five of them and thirteen of 16 ft.
    expect(panelsOf(withPanels())).toEqual(["540"]);
    expect(panelsOf(withPanels(5))).toEqual(["930"]);
  });
});

describe("a screw that is sold longer than it is wanted", () => {
  const line = (length: string, fastener: "deck-screw" | "carriage-bolt" = "deck-screw") => {
    const sheet = new Sheet();
    const size = (name: string, text: string) => sheet.input(name, exactly(text));
    const item = {
      kind: "fastener",
      fastener,
      diameter: size("diameter", "5 mm"),
      length: size("length", "22.2 mm"),
      corrosion: "plain",
    } as const;
    const need: Need = { name: "fasteners.order.a", label: "Screw, plain", quantity: size("count", "10"), item };
    const packs = [{ count: 10, price: "$3" }];
    const offer = { name: "a", label: "A", kind: fastener, diameter: "5 mm", length, finish: "plain", packs };
    return layShoppingList(pricingOn(sheet), catalogOf({ fasteners: [offer] }), [need], "metric")[0]?.line;
  };
  const differences = (length: string) => line(length)?.differences;

  it("is told by what it is longer, but not where no tape shows it", () => {
    expect(differences("25 mm")).toEqual([expect.stringContaining("wanted, 25 mm is the next length sold: 3 mm more")]);
    expect(differences("22.4 mm")).toBeUndefined();
  });

  it("does not serve where it is more than half as long again; a bolt may stand out beyond its nut", () => {
    expect([line("33 mm")?.amount?.value.toFixed(2), line("34 mm")?.amount]).toEqual(["3.00", undefined]);
    expect(line("60 mm", "carriage-bolt")?.amount?.value.toFixed(2)).toBe("3.00");
  });
});
