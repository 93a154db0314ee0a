import { describe, expect, it } from "vitest";
import { demoBody, estimated } from "../../helpers/estimating.js";

/** Hours to prepare one log of these measures inside its bark, and the face of its bark in square feet. */
function prepared(log: object) {
  const species = "eastern-white-pine";
  const { sheet } = estimated({
    ...demoBody("orchard-shelter"),
    logs: [
      { name: "log", species, length: "13 ft", smallDiameter: "13 in", largeDiameter: "13 in", bark: "inside", ...log },
    ],
  }).basis;
  const at = (name: string, unit: string) => sheet.in(sheet.find(`logs.log.${name}`) as never, unit).toNumber();
  return { hours: at("prepare", "person-h"), face: at("barkFace", "ft2"), bark: at("bark", "ft") };
}

describe("preparing a log", () => {
  it("takes 0.36 person-minutes a square foot of bark: the girth over bark times the length", () => {
    const { hours, face, bark } = prepared({});
    expect(face).toBeCloseTo(Math.PI * (13 / 12 + 2 * bark) * 13, 6);
    expect(hours).toBeCloseTo((face * 0.36) / 60, 6);
    // About 50 ft² of bark, for which it was 0.3 h a log.
    expect(hours).toBeGreaterThan(0.25);
    expect(hours).toBeLessThan(0.35);
  });

  it("takes twice as long for twice the length, and more for a thicker or a dirty log", () => {
    const { hours } = prepared({});
    expect(prepared({ length: "26 ft" }).hours).toBeCloseTo(2 * hours, 6);
    expect(prepared({ largeDiameter: "20 in" }).hours).toBeGreaterThan(hours);
    expect(prepared({ dirty: true }).hours).toBeCloseTo(1.5 * hours, 6);
  });
});
