import { describe, expect, it } from "vitest";
import { demo, estimated, takenOff } from "./helpers/posting.js";

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

  it("come with takeoffs too, the same ones", async () => {
    const taken = await takenOff(request, "?include=near-misses");
    expect(taken.nearMisses?.length).toBeGreaterThan(0);
    expect(taken.nearMisses).toEqual((await estimated(request, "?include=near-misses")).nearMisses);
    expect((await takenOff(request)).nearMisses).toBeUndefined();
  }, 30_000);

  it("without any price are told by their hours", async () => {
    const { nearMisses = [] } = await takenOff({ structure: request.structure }, "?include=near-misses");
    expect(nearMisses.length).toBeGreaterThan(0);
    for (const { saves, hours, text } of nearMisses) {
      expect([Number(saves.value), Number(hours.value) > 0]).toEqual([0, true]);
      expect(text).toContain("nothing here has a price");
    }
  }, 30_000);

  // Runs of 26 ft over rafters 23.8 in apart: in pieces of 12 ft at most they are three, of 9 ft 1/4 in and 7 ft 11 1/4 in,
  // for which 10 ft and 8 ft are bought: $10 + $10 + $4. In pieces of 8 ft they are four, at $4 each.
  it("tell which longest piece saves most, by the lengths that are sold", async () => {
    const cheapEights = {
      by: "piece",
      lengths: [
        { length: "8 ft", price: "$4.00" },
        { length: "10 ft", price: "$10.00" },
        { length: "12 ft", price: "$13.00" },
      ],
    };
    const purlins = {
      ...request,
      catalog: {
        ...request.catalog,
        lumber: [{ ...request.catalog.lumber[0], name: "pine-2x4", section: "2 x 4 in", sold: cheapEights }],
      },
    };
    const { nearMisses = [] } = await takenOff(purlins, "?include=near-misses");
    const found = nearMisses.find(({ at }) => at === "/structure/longestPiece");
    // Pieces that nobody sells long enough cost nothing, and are no saving.
    expect(Number(found?.to.replace("'", ""))).toBeLessThanOrEqual(12);
    expect(found?.text).toContain("purlins from 8' stock instead of 10'");
    const bought = async (longestPiece: string) => {
      const { decision } = await estimated({ ...purlins, structure: { ...purlins.structure, longestPiece } });
      return Number(decision.routes.find(({ route }) => route === "bought")?.cash.value);
    };
    const [now, then] = [await bought("12 ft"), await bought(found?.to ?? "")];
    expect(now - then).toBeCloseTo(Number(found?.saves.value), 6);
    for (const other of ["7 ft", "9 ft", "10 ft", "11 ft"]) expect(await bought(other)).toBeGreaterThanOrEqual(then);
  }, 60_000);
});
