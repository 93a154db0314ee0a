import { defineConfig } from "vitest/config";

export default defineConfig({
  test: {
    include: ["tests/**/*.test.ts"],
    testTimeout: 60_000,
    hookTimeout: 60_000,
    pool: "forks",
    // Both of two cores; by itself vitest leaves one idle.
    maxWorkers: 2,
    // Files of a worker share what they import: loading it anew took 0.7 s a file.
    isolate: false,
  },
});
