import { describe, expect, it } from "vitest";
import { Assumed } from "../../../src/estimate/request/assumed.js";
import type { CalibrationShape } from "../../../src/estimate/request/calibration.js";
import { Sheet } from "../../../src/estimate/sheet/sheet.js";

type Jobs = CalibrationShape["jobs"];
const FROM = { source: "common-practice" } as const;

function timed(rate: string, jobs: Jobs, given = {}) {
  const sheet = new Sheet();
  const assumed = new Assumed(sheet, given, [{ rate, jobs }]);
  return { sheet, assumed };
}

/** A catalog rate as the jobs make it, in its own unit. */
function rated(rate: string, jobs: Jobs) {
  const { sheet, assumed } = timed(rate, jobs);
  const cell = rate === "mill.rate" ? millRate(assumed) : assumed.cell(rate);
  expect(assumed.faults).toEqual([]);
  const shown = (value = cell.value) =>
    sheet
      .in({ ...cell, value }, cell.unit.symbol)
      .toDecimalPlaces(6)
      .toNumber();
  return { low: shown(cell.range?.low), likely: shown(), high: shown(cell.range?.high), source: cell.source };
}

const millRate = (assumed: Assumed) =>
  assumed.spread("mill.rate", "cut face", ["0.6 ft2/min", "1.5 ft2/min", "3 ft2/min"], FROM);

const faultsOf = (rate: string, jobs: Jobs, given = {}) => {
  const { assumed } = timed(rate, jobs, given);
  millRate(assumed);
  assumed.cell("rate.trim");
  assumed.cell("carry.load");
  return [...assumed.faults, ...assumed.unknownFaults()].map(({ code, at }) => `${code} ${at}`);
};

describe("a rate that was timed", () => {
  it("is all that was done over all the time, its spread the slowest and the fastest job", () => {
    // 41 + 24 = 65 ft² in 33 + 12 = 45 min; 41 ÷ 33 = 1.242424, 24 ÷ 12 = 2.
    const jobs = [
      { amount: "41 ft2", time: "33 min" },
      { amount: "24 ft2", time: "12 min" },
    ];
    expect(rated("mill.rate", jobs)).toEqual({ low: 1.242424, likely: 1.444444, high: 2, source: "jobs timed by you" });
  });

  it("keeps the catalog's spread about a single job", () => {
    // 30 ft² in half an hour is 1 ft² a minute; 0.6 ÷ 1.5 and 3 ÷ 1.5 of it.
    expect(rated("mill.rate", [{ amount: "30 ft2", time: "0.5 h" }])).toMatchObject({ low: 0.4, likely: 1, high: 2 });
  });

  it("is turned round where the catalog gives hours for one: two people, five ties, three hours", () => {
    const jobs = [{ amount: "5", time: "3 h", people: 2 }];
    expect(rated("joint.lap", jobs).likely).toBe(1.2);
    expect(rated("joint.lap", [{ amount: "5", time: "6 person-h" }]).likely).toBe(1.2);
  });

  it("takes person-hours a foot, and metric amounts", () => {
    expect(rated("rate.trim", [{ amount: "100 ft", time: "5 h" }]).likely).toBe(0.05);
    // 3.048 m are 10 ft.
    expect(rated("rate.trim", [{ amount: "3.048 m", time: "30 min" }]).likely).toBe(0.05);
  });

  it.each([
    ["an unknown name", "mill.ratt", [{ amount: "3 ft2", time: "3 min" }], "unknown-name /calibration/0/rate"],
    ["what has no time", "carry.load", [{ amount: "3 lb", time: "3 min" }], "wrong-dimension /calibration/0/rate"],
    ["no amount", "mill.rate", [{ amount: "0 ft2", time: "3 min" }], "out-of-range /calibration/0/jobs/0/amount"],
    ["a negative time", "mill.rate", [{ amount: "3 ft2", time: "-3 min" }], "out-of-range /calibration/0/jobs/0/time"],
    [
      "a length for a face",
      "mill.rate",
      [{ amount: "3 ft", time: "3 min" }],
      "wrong-dimension /calibration/0/jobs/0/amount",
    ],
    ["no unit of time", "mill.rate", [{ amount: "3 ft2", time: "3" }], "not-a-quantity /calibration/0/jobs/0/time"],
    ["a mistaken unit", "mill.rate", [{ amount: "3 ft2", time: "30 h" }], "out-of-range /calibration/0"],
  ])("is refused with %s", (_, rate, jobs, fault) => {
    expect(faultsOf(rate, jobs)).toEqual([fault]);
  });

  it("is refused beside an assumption of the same name", () => {
    const jobs = [{ amount: "30 ft2", time: "30 min" }];
    expect(faultsOf("mill.rate", jobs, { "mill.rate": "2 ft2/min" })).toEqual(["duplicate-name /calibration/0/rate"]);
  });
});
