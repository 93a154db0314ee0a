import { describe, expect, it } from "vitest";
import { countedLogs, isMeasured, jobsCounted, withoutPending } from "../../../src/api/web/app/pending.js";

const whole = { name: "a", length: "9 ft", largeGirth: "50 in" };

describe("logs that wait", () => {
  it("are those at the end without a length or any thickness", () => {
    expect(isMeasured(whole)).toBe(true);
    expect(isMeasured({ length: "9 ft" })).toBe(false);
    expect(isMeasured({ smallDiameter: "9 in" })).toBe(false);
    expect(countedLogs({ logs: [whole, {}, whole, {}] })).toBe(3);
    expect(countedLogs({})).toBe(0);
  });

  it("are not sent; one before a measured log is, so that its fault is told at its own row", () => {
    expect(withoutPending({ logs: [{ name: "b" }, whole, { name: "c" }] })).toEqual({ logs: [{ name: "b" }, whole] });
    const request = { logs: [whole] };
    expect(withoutPending(request)).toBe(request);
  });
});

describe("timed jobs that wait", () => {
  it("are those at the end that lack how much or how long", () => {
    expect(jobsCounted({ jobs: [{ amount: "1 ft2", time: "1 h" }, { amount: "1 ft2" }] })).toBe(1);
    expect(jobsCounted({})).toBe(0);
  });
});
