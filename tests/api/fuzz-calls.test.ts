/** Every call that computes, asked with its own examples and the demos, some of their values changed. */
import fc from "fast-check";
import type { OpenAPIObject } from "openapi3-ts/oas31";
import { describe, expect, it } from "vitest";
import { calls } from "../../src/api/calls.js";
import { describeCalls } from "../../src/api/openapi.js";
import type { Problem } from "../../src/api/problem.js";
import { DEMOS, demoBody } from "../helpers/estimating.js";
import { disturbed } from "./helpers/bodies.js";
import { judgeBy } from "./helpers/conformance.js";
import { post } from "./helpers/posting.js";

const document = describeCalls(calls);
const judge = judgeBy(document);

/** How often each is asked: the dear ones seldom. */
const RUNS: Readonly<Record<string, number>> = {
  "/v1/takeoffs": 300,
  "/v1/covering-comparisons": 80,
  "/v1/stock-plans": 200,
  "/v1/sawing-plans": 60,
  "/v1/estimates": 40,
};
const OF_DEMOS: readonly string[] = ["/v1/takeoffs", "/v1/covering-comparisons"];

/** Request bodies of a call that the document shows. */
function examplesOf({ paths = {} }: OpenAPIObject, path: string): unknown[] {
  const content = paths[path]?.post?.requestBody;
  const media = content && "content" in content ? content.content["application/json"] : undefined;
  return Object.values(media?.examples ?? {}).flatMap((one) => ("value" in one ? [one.value as unknown] : []));
}

describe("a request with some values changed", () => {
  it("is fuzzed for every call that computes", () => {
    const posting = Object.entries(document.paths ?? {}).flatMap(([path, { post: posted }]) => (posted ? [path] : []));
    expect(posting.sort()).toEqual(Object.keys(RUNS).sort());
  });

  it.each(Object.entries(RUNS))(
    "is answered by %s, or refused with places and cures, never with a 500",
    { timeout: 240_000 },
    async (path, numRuns) => {
      const demos = OF_DEMOS.includes(path) ? DEMOS.map(demoBody) : [];
      const statuses = new Set<number>();
      await fc.assert(
        fc.asyncProperty(disturbed([...examplesOf(document, path), ...demos]), async (body) => {
          const response = await post(path, body);
          statuses.add(response.status);
          expect([200, 422]).toContain(response.status);
          expect(await judge.responseFaults("post", path, response.clone())).toEqual([]);
          if (response.status === 200) return;
          const { faults } = (await response.json()) as Problem;
          expect(faults.length).toBeGreaterThan(0);
          for (const { wrong, cure } of faults) expect([wrong.length > 5, cure.length > 5]).toEqual([true, true]);
        }),
        { seed: 20261126, numRuns, endOnFailure: true },
      );
      expect([...statuses].sort()).toEqual([200, 422]);
    },
  );
});
