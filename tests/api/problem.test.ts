import { describe, expect, it } from "vitest";
import { PROBLEMS, ProblemSchema, problemHeaders, problemOf, Refusal } from "../../src/api/problem.js";
import { FAULT_CODES, type FaultCode, FaultError } from "../../src/estimate/faults.js";

const faultOf = (code: FaultCode, at = "/a") => ({ code, at, wrong: "It is wrong.", cure: "Mend it." });

describe("problems", () => {
  it.each(Object.keys(FAULT_CODES) as FaultCode[])("answers 422 to the fault %s", (code) => {
    const problem = problemOf(new FaultError([faultOf(code)]), "id");
    expect(problem.status).toBe(422);
    expect(ProblemSchema.safeParse(problem).success).toBe(true);
  });

  it("is named for the gravest of its faults", () => {
    const both = [faultOf("cannot-build"), faultOf("wrong-shape")];
    expect(problemOf(new FaultError(both), "id").type).toBe("/docs#problem-invalid-request");
    expect(problemOf(new FaultError([faultOf("too-large")]), "id").type).toBe("/docs#problem-too-much-work");
  });

  it("lists 50 faults, counts them all, and cuts long texts without halving a character", () => {
    const long = { ...faultOf("wrong-shape"), wrong: `${"x".repeat(298)}😀 and more` };
    const problem = problemOf(new FaultError(Array.from({ length: 70 }, () => long)), "id");
    expect(problem.faults).toHaveLength(50);
    expect(problem.detail).toBe("There are 70 faults. The first 50 are listed.");
    expect(problem.faults[0]?.wrong).toBe(`${"x".repeat(298)}…`);
  });

  it("says which methods are taken and when to try again in headers", () => {
    const wrongMethod = new Refusal("method-not-allowed", "No.", { choices: ["GET", "HEAD"] });
    expect(problemHeaders(wrongMethod)).toEqual({ Allow: "GET, HEAD" });
    expect(problemHeaders(new Refusal("overloaded", "Busy.", { retryAfter: 3 }))).toEqual({ "Retry-After": "3" });
    expect(problemHeaders(new Error("bug"))).toEqual({});
  });

  it("answers 503 when a call was given up, and 500 to what it does not know", () => {
    const late = new DOMException("late", "TimeoutError");
    expect(problemOf(late, "id")).toMatchObject({ status: 503 });
    expect(problemHeaders(late)).toEqual({ "Retry-After": "2" });
    for (const thrown of [new Error("x"), "text", undefined, null, { faults: [] }]) {
      expect(problemOf(thrown, "id").status).toBe(500);
    }
  });

  it("has a title for each, told apart by type", () => {
    const titles = Object.values(PROBLEMS).map(({ title }) => title);
    expect(new Set(titles).size).toBe(titles.length);
  });
});
