import { describe, expect, it } from "vitest";
import { type Asking, estimated, refused } from "./helpers/posting.js";

const SHELTER: Asking = {
  structure: { kind: "gable", span: "8 ft", length: "12 ft" },
  catalog: { demo: "orchard-yard" },
};

describe("re-coating", () => {
  it("costs the cans of one coating, spread over the years between, which a request may give", async () => {
    // Wood Handbook, table 16-5: semitransparent stain on rough wood lasts 4 to 8 years.
    const usual = await estimated(SHELTER);
    const often = await estimated({ ...SHELTER, assumptions: { "finish.recoatYears": "3 year" } });
    const cans = usual.purchasing.routes[0]?.departments
      .flatMap(({ lines }) => lines)
      .find(({ name }) => name === "bought.order.finish.finish")?.amount;
    expect(usual.finish.upkeep?.recoatYears.value).toBe("6");
    expect(Number(usual.finish.upkeep?.yearlyCost?.value)).toBeCloseTo(Number(cans?.value) / 6, 2);
    expect(Number(often.finish.upkeep?.yearlyCost?.value)).toBeCloseTo(Number(cans?.value) / 3, 2);
  });

  it("has no cost without a price, and none without a finish", async () => {
    const bare = await estimated({ ...SHELTER, options: { finish: "none" } });
    expect([bare.finish.upkeep, bare.finish.betweenCoats]).toEqual([null, null]);
    const { finish } = await estimated({ structure: SHELTER.structure });
    expect(finish.upkeep?.yearlyCost).toBeNull();
  });
});

describe("coats", () => {
  it("of penetrating stain follow wet on wet, 20 to 60 minutes on (Wood Handbook, chapter 16)", async () => {
    const { finish } = await estimated(SHELTER);
    const minutes = Number(finish.betweenCoats?.value);
    expect(finish.betweenCoats?.unit).toBe("min");
    expect(minutes >= 20 && minutes <= 60).toBe(true);
  });

  it("seal end grain where that is asked for, two ends to a piece", async () => {
    const sealed = await estimated({ ...SHELTER, options: { sealEnds: true } }, "?include=sheet");
    const lines = sealed.purchasing.shared.flatMap(({ lines }) => lines);
    expect(lines.some(({ name, amount }) => name === "order.finish.end-sealer" && amount !== null)).toBe(true);
    const wrong = await refused({ ...SHELTER, options: { sealEnds: "yes" } });
    expect(wrong.faults[0]?.pointer).toBe("/options/sealEnds");
  });
});
