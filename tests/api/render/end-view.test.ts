import { beforeAll, describe, expect, it } from "vitest";
import { markRuns } from "../../../src/api/render/json/marks.js";
import { type Answer, demo, estimated } from "../helpers/posting.js";

describe("marks in a row", () => {
  it.each([
    { marks: ["R-01", "R-02", "R-03"], words: "R-01–03" },
    { marks: ["R-09", "R-10", "R-12"], words: "R-09–10, R-12" },
    { marks: ["R-01", "U-02", null], words: "R-01, U-02, spare" },
    { marks: [null, null], words: "2 spares" },
  ])("are written $words", ({ marks, words }) => {
    expect(markRuns(marks)).toBe(words);
  });
});

describe("the drawn bolts of an estimate", () => {
  let answer: Answer;
  let lean: Answer;
  beforeAll(async () => {
    answer = await estimated(demo("orchard-shelter"), "?include=drawings,work");
    lean = await estimated(demo("orchard-shelter"));
  });
  const boltsIn = ({ sawing }: Answer) => sawing.plans.flatMap(({ logs }) => logs.flatMap(({ bolts }) => bolts));
  const idsIn = (svg: string) => [...svg.matchAll(/ id="([^"]*)"/g)].map(([, id]) => id);

  it("come only where they are asked for", () => {
    expect(boltsIn(lean).filter(({ drawing }) => drawing !== undefined)).toEqual([]);
    expect(boltsIn(answer).every(({ drawing }) => drawing?.startsWith("<svg "))).toBe(true);
  });

  it("bear the mark of every piece sawn, and the height of every cut", () => {
    for (const { drawing = "", slabs, cutList } of boltsIn(answer)) {
      const words = [...drawing.matchAll(/<text[^>]*>([^<]*)<\/text>/g)].map(([, text]) => text);
      const labels = slabs.flatMap(({ strips }) => strips.flatMap(({ marks }) => marks.map(markRuns)));
      expect(words).toEqual(expect.arrayContaining(labels));
      for (const { order, height } of cutList) expect(words).toContain(`${order}: ${height.replace("-", "−")}`);
    }
  });

  it("have a title, a description and ids of their own, and nothing that a strict page forbids", () => {
    const svgs = boltsIn(answer).map(({ drawing = "" }) => drawing);
    const ids = svgs.flatMap(idsIn);
    expect(new Set(ids).size).toBe(ids.length);
    for (const svg of svgs) {
      const named = /aria-labelledby="(\S+) (\S+)"/.exec(svg)?.slice(1) ?? [];
      expect(idsIn(svg)).toEqual(expect.arrayContaining(named));
      expect(svg).toMatch(/<title id="[^"]+">[^<]+, bolt \d+ of \d+, seen from its small end<\/title>/);
      expect(svg).toMatch(/<desc id="[^"]+">[^<]*Slab 1, /);
      expect(svg).not.toMatch(/style|<script|NaN|Infinity|undefined|\de[+-]\d/);
    }
  });

  it("say the cuts in their order: each lower than the one before by what is written, the tally growing", () => {
    for (const { slabs, cutList, cuts, opening } of boltsIn(answer)) {
      expect(cutList.map(({ order }) => order)).toEqual(Array.from({ length: cuts }, (_, i) => i + 1));
      expect(cutList[0]).toMatchObject({ height: opening, drop: null, slab: null });
      expect(cutList.flatMap(({ slab }) => slab ?? [])).toEqual(slabs.map((_, i) => i + 1));
    }
    for (const { logs } of answer.sawing.plans) {
      const tally = logs.flatMap(({ bolts }) =>
        bolts.flatMap(({ slabs }) => slabs.map((slab) => Number(slab.tally.value))),
      );
      expect(tally).toEqual(tally.toSorted((a, b) => a - b));
    }
  });

  it("add up: the last tally is the rough lumber of the plan's own cells", () => {
    for (const { logs, work } of answer.sawing.plans) {
      const volumes = work.filter(({ cell }) => cell.includes(".cuts.volume-"));
      const sum = volumes.reduce((total, { value }) => total + Number(value), 0);
      const last = logs.at(-1)?.bolts.at(-1)?.slabs.at(-1)?.tally;
      expect(last?.unit).toBe("bf");
      expect(Math.abs(Number(last?.value) - sum)).toBeLessThan(0.05 * (volumes.length + 1)); // each rounded to 0.1 bf
    }
  });
});
