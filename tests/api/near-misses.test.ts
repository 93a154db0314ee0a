import { describe, expect, it } from "vitest";
import { demo, estimated } from "./helpers/posting.js";

describe("near misses of an estimate", () => {
  // Two by six in three lengths: the inch of overhang that makes the rafters' stock 12 ft is the example of the sweep's test.
  const lengths = [8, 10, 12].map((feet) => ({ length: `${feet} ft`, price: `$${feet}.00` }));
  const request = {
    structure: {
      kind: "gable",
      span: "16 ft",
      length: "24 ft",
      slope: { rise: "5 in", run: "12 in" },
      overhang: { eave: "14 in", gable: "12 in" },
      bays: 3,
      covering: "none",
    },
    catalog: {
      name: "three lengths",
      currency: "USD",
      lumber: [
        {
          name: "pine-2x6",
          species: "eastern-white-pine",
          section: "2 x 6 in",
          sizing: "actual",
          seasoning: "dry",
          sold: { by: "piece", lengths },
        },
      ],
    },
    options: { finish: "none" },
  };

  it("come where they are asked for, and changing the request so saves what they say", async () => {
    const before = await estimated(request, "?include=near-misses");
    const miss = before.nearMisses?.find(({ at }) => at === "/structure/overhang/eave");
    expect(miss).toMatchObject({ from: "14 in", to: "13 in", saves: { unit: "USD" } });
    expect(miss?.text).toContain("rafters from 10' stock instead of 12'");
    const changed = structuredClone(request);
    changed.structure.overhang.eave = miss?.to ?? "";
    const after = await estimated(changed);
    const cash = (answer: typeof before) =>
      Number(answer.decision.routes.find(({ route }) => route === "bought")?.cash.value);
    expect(cash(before) - cash(after)).toBeCloseTo(Number(miss?.saves.value), 6);
    expect((after as { nearMisses?: unknown }).nearMisses).toBeUndefined();
  }, 30_000);

  it("of a list of pieces are none", async () => {
    expect((await estimated(demo("market-stall"), "?include=near-misses")).nearMisses).toEqual([]);
  }, 30_000);
});
