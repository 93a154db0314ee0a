import { describe, expect, it } from "vitest";
import { demoBody, estimated } from "../../helpers/estimating.js";

const idle = (demo: string, more: object) =>
  estimated({ ...demoBody(demo), ...more }).notices.flatMap(({ code, text, at }) =>
    code === "unused" ? [[at, text]] : [],
  );

describe("an assumption that nothing asks for", () => {
  it("is named: the stall has no footings, and the shed no mortises", () => {
    expect(idle("market-stall", { assumptions: { "footing.waste": "33 %", pace: "110 %" } })).toEqual([
      [
        "/assumptions/footing.waste",
        "Concrete and gravel that holes take beyond their size, added: given, but nothing in this estimate asks for it.",
      ],
    ]);
    const timed = { rate: "joint.mortise", jobs: [{ amount: "3", time: "90 min" }] };
    expect(idle("ferry-bike-shed", { calibration: [timed] }).map(([at]) => at)).toEqual(["/calibration/0/rate"]);
  });

  it("is not one that only the bought or only the milled route asks for", () => {
    const assumptions = { "footing.waste": "33 %", "buy.sort": "1 person-min", "saw.dirtDulling": "2" };
    expect(idle("orchard-shelter", { assumptions })).toEqual([]);
  });
});
