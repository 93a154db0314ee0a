import { describe, expect, it } from "vitest";
import { tryOptimiser } from "../judges/optimiser-trial.js";

// With the tiny questions of the file beside it more than 10,000; in two files, so that both cores try them.
const SEEDS = 3_100;
const CHUNK = 500;
const chunks = Array.from({ length: Math.ceil(SEEDS / CHUNK) }, (_, i): [number, number] => [
  i * CHUNK,
  Math.min(SEEDS, (i + 1) * CHUNK),
]);

describe("the optimiser's plans for small questions with every switch", () => {
  it.each(chunks)(
    "can be sawn as drawn, cost what it says and no less than its bound: seeds %i to %i",
    (from, to) => {
      const { wrong, sawn } = tryOptimiser("small", from, to);
      expect(wrong).toEqual([]);
      expect(sawn).toBeGreaterThan((to - from) * 0.6);
    },
    120_000,
  );
});
