import { describe, expect, it } from "vitest";
import type { Sought } from "../../../src/estimate/salvage/board-in-part.js";
import { carefulSawyer } from "../../../src/estimate/salvage/careful-sawyer.js";
import { extraBoards } from "../../../src/estimate/salvage/extra-boards.js";
import { planSawing } from "../../../src/estimate/salvage/plan-sawing.js";
import { judgeSawingPlan } from "../../../src/estimate/salvage/sawing-judge.js";
import { layLogPlan } from "../../../src/estimate/salvage/sawing-pattern.js";
import type { SawGroup, SawingPlan, SawingProblem, SawLog } from "../../../src/estimate/salvage/sawing-problem.js";
import { type Kind, randomSawingProblem } from "../../judges/sawing-problems.js";

/** Inches and feet on the grid of a question, as rough sizes are: rounded up. */
function soughtIn({ gridMm, groups }: SawingProblem): Sought {
  const steps = (inches: number) => Math.ceil((inches * 25.4) / Number(gridMm) - 1e-9);
  const boards = [12, 10, 8, 6, 4].map((width) => ({ name: `1 x ${width}`, thickness: steps(1), width: steps(width) }));
  return {
    sections: [...groups, ...boards].map(({ name, thickness, width }) => ({ name: `extra ${name}`, thickness, width })),
    least: steps(24),
    step: steps(12),
  };
}

/** Plan and extras as one plan of one question, in which every extra is a group's piece: for the judge. */
function together(
  problem: SawingProblem,
  plan: SawingPlan,
): { problem: SawingProblem; plan: SawingPlan; extras: number } {
  const sought = soughtIn(problem);
  const extras = extraBoards(problem, plan, sought);
  const groups = new Map<string, SawGroup>();
  const logs = plan.logs.map((logPlan) => {
    const own = extras.find(({ log }) => log === logPlan.log);
    const boards = (own?.boards ?? []).map(({ leftIn: _, ...board }) => {
      const section = sought.sections.find(({ name }) => name === board.group);
      if (section === undefined) throw new Error(`no section ${board.group}`);
      const length = board.z1 - board.z0;
      const name = `${board.group}, ${length}`;
      const count = (groups.get(name)?.count ?? 0) + 1;
      groups.set(name, {
        ...{ name, thickness: section.thickness, width: section.width, length, count },
        ...{ species: [], heart: "any", wane: 0, buy: { cash: 0, hours: 0 } },
      });
      return { ...board, group: name };
    });
    return { ...logPlan, cuts: own?.cuts ?? logPlan.cuts, pieces: [...logPlan.pieces, ...boards] };
  });
  const count = extras.reduce((sum, { boards }) => sum + boards.length, 0);
  return {
    problem: { ...problem, groups: [...problem.groups, ...groups.values()] },
    plan: { ...plan, logs },
    extras: count,
  };
}

/** A straight, sound log of 10 ft, 12 in through, on a grid of 1/16 in, and one 8 × 8 in timber boxed in its middle. */
function squared(): { problem: SawingProblem; plan: SawingPlan } {
  const shape = { length: 1920, smallDiameter: 192, largeDiameter: 192, sweep: 0, bark: 0 };
  const log = { name: "L", species: "pine", ...shape, rot: { smallEnd: 0, largeEnd: 0 } };
  const size = { thickness: 128, width: 128, length: 1920, count: 1, species: [], wane: 0 };
  const timber: SawGroup = { name: "timber", ...size, heart: "any", buy: { cash: 100, hours: 0 } };
  const { shop, rates } = randomSawingProblem(0, { size: "tiny", switches: false });
  const saws = {
    ...shop,
    millKerf: 4,
    ripKerf: 2,
    crossKerf: 2,
    buckKerf: 6,
    deepestRip: 24,
    longestBolt: 4000,
    throat: 0,
  };
  const bolt = {
    z0: 0,
    z1: 1920,
    slabs: [{ y0: -64, thickness: 128, strips: [{ x0: -64, width: 128, pieces: [timber] }] }],
  };
  const plan = { gridMm: "1.5875", logs: [layLogPlan(log, saws, [bolt])], buy: {} };
  return { problem: { gridMm: "1.5875", logs: [log], groups: [timber], shop: saws, rates }, plan };
}

describe("boards out of what a plan leaves", () => {
  it.each<[number, Kind, "rule" | "search"]>([
    [1000, { size: "tiny", switches: true }, "rule"],
    [700, { size: "small", switches: true }, "rule"],
    [60, { size: "medium", switches: true }, "rule"],
    [25, { size: "small", switches: true }, "search"],
  ])(
    "can be sawn with it, as the judge sees it: %i random questions, %o, by %s",
    { timeout: 60_000 },
    (seeds, kind, by) => {
      let found = 0;
      for (let seed = 0; seed < seeds; seed += 1) {
        const question = randomSawingProblem(seed, kind);
        const base = by === "rule" ? carefulSawyer(question) : planSawing(question, { work: 500, seed: 1 }).plan;
        const whole = together(question, base);
        expect(judgeSawingPlan(whole.problem, whole.plan), `seed ${seed}`).toEqual([]);
        found += whole.extras;
      }
      expect(found).toBeGreaterThan(seeds);
    },
  );

  it("are one 1 × 4 beside each face of an 8 × 8 in out of 12 in of wood", () => {
    // Beyond the kerf, 4 1/4 in from the axis, a board an inch thick has its outer face at 5 1/4 in: the chord there is
    // 2 √(6² − 5.25²) = 5.81 in, enough for 4 in, too little for 6.
    const { problem, plan } = squared();
    expect(judgeSawingPlan(problem, plan)).toEqual([]);
    const sections = [
      { name: "1 x 6", thickness: 16, width: 96 },
      { name: "1 x 4", thickness: 16, width: 64 },
    ];
    const [found] = extraBoards(problem, plan, { sections, least: 384, step: 192 });
    const told = found?.boards.map(({ group, z0, z1, leftIn }) => [group, z1 - z0, leftIn]);
    expect(told).toEqual(Array(4).fill(["1 x 4", 1920, "sawn"]));
  });

  it("come out of the length of a used log that is not sawn, in bolts that the mill takes", () => {
    const { problem, plan } = squared();
    const shop = { ...problem.shop, longestBolt: 1920 };
    const long = { ...(problem.logs[0] as SawLog), length: 1920 + 6 + 1000 };
    const slab = { y0: -64, thickness: 128, strips: [{ x0: -64, width: 128, pieces: problem.groups }] };
    const logs = [layLogPlan(long, shop, [{ z0: 1006, z1: 2926, slabs: [slab] }])];
    const asked = { ...problem, shop, logs: [long] };
    expect(judgeSawingPlan(asked, { ...plan, logs })).toEqual([]);
    const [found] = extraBoards(asked, { ...plan, logs }, { sections: problem.groups, least: 384, step: 192 });
    // 1,000 steps hold 5 ft of the timber's own section.
    expect(found?.boards.map(({ z0, z1, leftIn }) => [z1 - z0, leftIn])).toEqual([[960, "unsawn"]]);
  });
});
