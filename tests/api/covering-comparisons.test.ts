import { describe, expect, it } from "vitest";
import type { z } from "zod";
import type { ComparisonSchema } from "../../src/api/render/json/covering-comparison.js";
import { coveringKinds } from "../../src/catalog/coverings.js";
import { type Asking, cellsOf, demo, estimated, post, refused } from "./helpers/posting.js";

type Comparison = z.output<typeof ComparisonSchema>;

async function compared(body: Asking, query = ""): Promise<Comparison> {
  const response = await post(`/v1/covering-comparisons${query}`, body);
  const json: unknown = await response.json();
  if (response.status !== 200) throw new Error(JSON.stringify(json));
  return json as Comparison;
}

const GABLE: Asking = {
  structure: { kind: "gable", span: "16 ft", length: "24 ft", slope: { rise: "5 in", run: "12 in" } },
  catalog: { demo: "orchard-yard" },
};

const beside = (one: Comparison["coverings"][number]) => {
  if (!one.compared) throw new Error(`${one.kind} is not compared`);
  return one.compared;
};

describe("one roof under all coverings", () => {
  it.each(["gable", "hip", "lean-to"] as const)("is priced to the last part from the demo's yard: %s", async (kind) => {
    const { coverings } = await compared({ ...GABLE, structure: { ...GABLE.structure, kind } as Asking["structure"] });
    expect(coverings.map((one) => one.kind).sort()).toEqual([...coveringKinds].sort());
    const unpriced = coverings.flatMap((one) => beside(one).lines.filter(({ amount }) => !amount));
    expect(unpriced).toEqual([]);
  });

  it.each([
    ["a gable", GABLE],
    [
      "a lean-to with boards 12 in apart and no closer rows",
      {
        structure: {
          ...{ kind: "lean-to", span: "8 ft", length: "24 ft", slope: { rise: "5 in", run: "12 in" } },
          deck: { spacing: "12 in", closerRows: 0 },
        },
        catalog: { demo: "orchard-yard" },
      },
    ],
    [
      "a hip in metres",
      {
        structure: { kind: "hip", span: "4.8 m", length: "7.2 m", slope: { rise: "125 mm", run: "300 mm" } },
        catalog: { demo: "ferry-yard" },
      },
    ],
  ] as [string, Asking][])("costs, weighs and takes the same whichever of them is built: %s", async (_, asking) => {
    const told = async (covering: string) => {
      const { coverings } = await compared({ ...asking, structure: { ...asking.structure, covering } } as Asking);
      const rows = coverings.map((one) => {
        const { cash, hours, weight } = beside(one);
        return [one.kind, [cash?.value, hours.value, weight.value, one.weight.value]] as const;
      });
      return Object.fromEntries(rows);
    };
    const onSteel = await told("ribbed-steel");
    for (const built of ["asphalt-shingles", "wood-shingles", "membrane"]) expect(await told(built)).toEqual(onSteel);
  });

  it.each(["wood-shingles", "asphalt-shingles"] as const)("lies on the boards of the takeoff: %s", async (covering) => {
    const structure = { ...GABLE.structure, covering, deck: { closerRows: 0 } } as Asking["structure"];
    const answer = await compared({ ...GABLE, structure }, "?include=sheet");
    const cells = [...cellsOf(answer as Parameters<typeof cellsOf>[0]).values()];
    const lengths = cells.filter(({ name }) => /^pieces\.deck-boards.*\.totalLength$/.test(name));
    const all = lengths.reduce((sum, { value }) => sum + Number(value), 0);
    expect(all).toBeGreaterThan(500);
    expect(Number(cells.find(({ name }) => name === "covering.deckLength")?.value)).toBeCloseTo(all, 3);
  });

  it("names coverings of a metric roof in metric measures", async () => {
    const structure = { kind: "gable", span: "5 m", length: "7 m", slope: { rise: "150 mm", run: "300 mm" } } as const;
    const { coverings } = await compared({ structure, catalog: { demo: "ferry-yard" } });
    const names = coverings.map((one) => one.name);
    expect(names).toContain("corrugated steel sheets, 76 × 18 mm");
    expect(names.filter((name) => /\d in\b/.test(name))).toEqual([]);
    const inches = (await compared(GABLE)).coverings.map((one) => one.name);
    expect(inches).toContain("corrugated steel sheets, 2 1/2 × 1/2 in");
  });

  it("stands in order: allowed ones first, then by cost for a year of life, which is cash over life", async () => {
    const { coverings } = await compared(GABLE);
    expect(coverings.map((one) => beside(one).rank)).toEqual(coverings.map((_, i) => i + 1));
    expect(coverings.map((one) => one.slope.allowed)).toEqual([...Array(10).fill(true), false]); // boards want 6 in 12
    const yearly = coverings.slice(0, 10).map((one) => Number(beside(one).yearly?.value));
    expect(yearly).toEqual([...yearly].sort((a, b) => a - b));
    for (const one of coverings) {
      const { cash, yearly: aYear } = beside(one);
      expect(Number(aYear?.value)).toBeCloseTo(Number(cash?.value) / Number(one.life.value), 1);
    }
  });

  it("sums its lines and their taxes to the cent", async () => {
    const { coverings } = await compared(GABLE);
    for (const one of coverings) {
      const { lines, taxes, cash } = beside(one);
      const cents = (value: string | undefined) => Math.round(Number(value) * 100);
      const all = [...lines.map(({ amount }) => amount?.value), ...taxes.map(({ value }) => value)];
      expect([one.kind, all.reduce((sum, value) => sum + cents(value), 0)]).toEqual([one.kind, cents(cash?.value)]);
    }
  });

  it("flags what the code does not allow, with its clause, and still estimates it", async () => {
    const flat = { kind: "gable", span: "16 ft", length: "24 ft", slope: { rise: "1 in", run: "12 in" } } as const;
    const { coverings } = await compared({ ...GABLE, structure: flat });
    const of = (kind: string) => coverings.find((one) => one.kind === kind);
    // International Residential Code, chapter 9: strips 2 in 12, shakes 3, tile 2 1/2, roll 1, membrane and seams 1/4.
    for (const [kind, clause] of [
      ["asphalt-shingles", "R905.2.2"],
      ["wood-shingles", "R905.7.2"],
      ["wood-shakes", "R905.8.2"],
      ["tile", "R905.3.2"],
    ] as const) {
      expect(of(kind)?.slope).toMatchObject({ allowed: false, reference: expect.stringContaining(clause) });
      expect(Number(of(kind)?.compared?.cash?.value)).toBeGreaterThan(500);
    }
    for (const kind of ["membrane", "standing-seam-steel", "mineral-roll", "ribbed-steel"]) {
      expect([kind, of(kind)?.slope.allowed]).toEqual([kind, true]);
    }
    expect(of("ribbed-steel")?.slope.lapsSealed).toBe(true);
    const allowed = coverings.map((one) => one.slope.allowed);
    expect(allowed.indexOf(false)).toBe(allowed.lastIndexOf(true) + 1);
  });

  it("has no cash where nothing has a price, and no cost a year where something has none", async () => {
    const { coverings } = await compared({ structure: GABLE.structure });
    for (const one of coverings)
      expect([one.kind, beside(one).cash, beside(one).yearly]).toEqual([one.kind, null, null]);
    const ferry = await compared({
      structure: { kind: "lean-to", span: "2.4 m", length: "7.2 m" },
      catalog: { demo: "ferry-yard" },
      options: { coverings: ["wood-shingles", "ribbed-steel"] },
    });
    const larch = ferry.coverings.find((one) => one.kind === "wood-shingles");
    expect(larch?.compared).toMatchObject({ complete: false, yearly: null, rank: 2 });
    expect(larch?.compared?.lines.find(({ label }) => label === "Shingles")).toMatchObject({ amount: null });
  });

  it("weighs and works the deck with its covering", async () => {
    const { coverings } = await compared(GABLE);
    for (const one of coverings) {
      expect(Number(beside(one).weight.value)).toBeGreaterThanOrEqual(Number(one.weight.value));
      expect(Number(beside(one).hours.value)).toBeGreaterThan(5);
    }
  });
});

describe("drawings of a roof's slopes", () => {
  it("come when asked for, one for each kind of slope, with words for who cannot see them", async () => {
    const hip = { ...GABLE, structure: { ...GABLE.structure, kind: "hip" } as Asking["structure"] };
    const { coverings } = await compared(hip, "?include=drawings");
    for (const { kind, drawings } of coverings) {
      // Each on a page to scale, and on a card for a narrow screen.
      const slopes = [`roof-${kind}-side`, `roof-${kind}-end`];
      const names = slopes.flatMap((slope) => [slope, `${slope}-card`]);
      expect(drawings?.map(({ name }) => name).sort()).toEqual(names.sort());
      for (const { svg } of drawings ?? []) {
        expect(svg).toMatch(/^<svg[^>]*role="img"[^>]*aria-labelledby/);
        expect(svg).toMatch(/<title[^>]*>.+<\/title><desc[^>]*>.+<\/desc>/s);
        expect(svg).not.toMatch(/NaN|Infinity|undefined/);
        const colors = new Set([...svg.matchAll(/(?:fill|stroke)="(#[0-9a-f]+)"/g)].map(([, color]) => color));
        for (const color of colors) expect(["#000", "#fff"]).toContain(color);
      }
    }
    const lean = await compared(GABLE);
    expect(lean.coverings.every((one) => one.drawings === undefined)).toBe(true);
  });

  it("draw as many panels as are counted", async () => {
    const { coverings } = await compared({ ...GABLE, options: { coverings: ["ribbed-steel"] } }, "?include=drawings");
    const svg = coverings[0]?.drawings?.[0]?.svg ?? "";
    const quadrilaterals = svg.match(/<(?:polygon|path)[^>]*>/g)?.length ?? 0;
    expect(quadrilaterals).toBeGreaterThanOrEqual(Number(coverings[0]?.faces[0]?.across?.value) + 1);
  });
});

describe("coverings inside an estimate", () => {
  it("stand beside the one that is built, whose figures they do not move", async () => {
    const request = demo("orchard-shelter") as Asking;
    const plain = await estimated(request);
    const beside_ = await estimated(
      { ...request, options: { ...request.options, coverings: ["asphalt-shingles", "tile"] } },
      "?include=sheet",
    );
    expect(plain.coverings.map(({ kind, built, compared: other }) => [kind, built, other])).toEqual([
      ["ribbed-steel", true, null],
    ]);
    expect(beside_.coverings.map(({ kind, built }) => [kind, built])).toEqual([
      ["ribbed-steel", true],
      ["tile", false],
      ["asphalt-shingles", false],
    ]);
    expect(beside_.decision.verdict).toEqual(plain.decision.verdict);
    const cells = cellsOf(beside_);
    for (const one of beside_.coverings) {
      const names = [one.area, one.life, one.compared?.cash, one.compared?.yearly, one.compared?.hours].map(
        (figure) => figure?.cell ?? "",
      );
      for (const name of names) expect(cells.has(name), name).toBe(true);
    }
  });

  it("take another life or price by the name of their cell", async () => {
    const longer = {
      ...GABLE,
      options: { coverings: ["asphalt-shingles" as const] },
      overrides: { "coverings.asphalt-shingles.life": "30 year" },
    };
    const { coverings } = await compared(longer);
    const strips = coverings.find((one) => one.kind === "asphalt-shingles");
    expect(strips?.life.value).toBe("30");
  });
});

describe("a comparison that cannot be made", () => {
  it("is refused where there is no roof, or no such covering", async () => {
    const pergola = await refused(
      { structure: { kind: "pergola", span: "8 ft", length: "12 ft" } },
      "/v1/covering-comparisons",
    );
    expect(pergola.faults[0]).toMatchObject({ code: "cannot-build", pointer: "/structure/kind" });
    const thatch = await refused({ ...GABLE, options: { coverings: ["thatch"] } }, "/v1/covering-comparisons");
    expect(thatch.faults[0]?.pointer).toBe("/options/coverings/0");
  });
});
