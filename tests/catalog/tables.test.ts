import { readdirSync, readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { FINISHES, finishKinds, SECOND_COAT, type Spread } from "../../src/catalog/finishes.js";
import { MACHINES } from "../../src/catalog/machines.js";
import { MILLS, millKinds, millOf, SAW_KERFS } from "../../src/catalog/mills.js";
import { SOURCES } from "../../src/catalog/sources.js";
import { inUnit } from "../../src/estimate/quantity/quantity.js";
import { exactly } from "../../src/estimate/quantity/text.js";

const rises = ([low, likely, high]: Spread) =>
  exactly(low).value.lte(exactly(likely).value) && exactly(likely).value.lte(exactly(high).value);

describe("finishes", () => {
  // Wood Handbook ch. 16 prints stain coverage both ways: 200 to 400 ft²/gal is 4.9 to 9.8 m²/L, 100 to 200 is 2.4 to 4.9.
  it.each([
    ["smooth", 0, "4.9"],
    ["smooth", 2, "9.8"],
    ["rough", 0, "2.5"],
    ["rough", 2, "4.9"],
  ] as const)("cover the metric figure too: oil stain, %s, %i, %s m²/L", (texture, end, printed) => {
    const found = inUnit(exactly(FINISHES["oil-stain"].coverage[texture][end]), "m2/L");
    // 100 ft²/gal is 2.454: the Handbook prints 2.4, cut rather than rounded.
    expect(found.toFixed(1)).toBe(printed);
  });

  it("drink more on rough wood than on smooth, and run from low to high", () => {
    for (const kind of finishKinds) {
      const { smooth, rough } = FINISHES[kind].coverage;
      expect(rises(smooth) && rises(rough)).toBe(true);
      for (const i of [0, 1, 2] as const) expect(exactly(rough[i]).value.lt(exactly(smooth[i]).value)).toBe(true);
    }
    expect(rises(SECOND_COAT)).toBe(true);
  });
});

describe("mills and machines", () => {
  it("have spreads that run from low to high, in units of their kind", () => {
    for (const kind of millKinds) {
      const { kerf, output, fuel, barOil, sharpenEvery, bladeLife, pace } = millOf(kind);
      const feeds = pace.by === "feed" ? [pace.feed, pace.back] : [];
      for (const spread of [kerf, output, fuel, sharpenEvery, bladeLife, pace.rate, ...feeds])
        expect(rises(spread)).toBe(true);
      if (barOil) expect(rises(barOil)).toBe(true);
      expect(inUnit(exactly(kerf[1]), "in").lt("0.5")).toBe(true);
    }
    for (const machine of Object.values(MACHINES)) expect(rises(machine.feed)).toBe(true);
    for (const { kerf } of Object.values(SAW_KERFS)) expect(rises(kerf)).toBe(true);
  });

  // Small-scale Forestry 8:367-379 (2009): a mobile mill sawed 0.3 to 2.8 m³ of lumber in a working hour.
  it("saw, all in, within what was measured on a mobile band mill", () => {
    const [low, , high] = MILLS["hydraulic-band-mill"].output;
    expect(inUnit(exactly(low), "m3/h").gte("0.3")).toBe(true);
    expect(inUnit(exactly(high), "m3/h").lte("2.8")).toBe(true);
  });

  it("are ordered by kerf as everyone knows: band, swing blade, chain", () => {
    const kerf = (kind: keyof typeof MILLS) => exactly(MILLS[kind].kerf[1]).value;
    expect(kerf("manual-band-mill").lt(kerf("swing-blade-mill"))).toBe(true);
    expect(kerf("swing-blade-mill").lt(kerf("chainsaw-mill"))).toBe(true);
  });
});

describe("bibliography", () => {
  const folder = new URL("../../src/catalog/", import.meta.url);
  const texts = readdirSync(folder, { recursive: true, encoding: "utf8" })
    .filter((name) => name.endsWith(".ts") && name !== "sources.ts")
    .map((name) => readFileSync(new URL(name, folder), "utf8"));

  it("lists no source that nothing cites", () => {
    const cited = (key: string) => texts.some((text) => text.includes(`"${key}"`) || text.includes(`\`${key}\``));
    expect(Object.keys(SOURCES).filter((key) => !cited(key))).toEqual([]);
  });

  it("says of each source how it is known", () => {
    for (const source of Object.values(SOURCES)) {
      expect(["seen", "memory", "common practice", "computed", "assumption"]).toContain(source.known);
      expect(source.title.length).toBeGreaterThan(5);
    }
  });
});
