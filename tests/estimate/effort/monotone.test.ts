import { describe, expect, it } from "vitest";
import type { Estimate } from "../../../src/estimate/estimate.js";
import { decimal } from "../../../src/estimate/quantity/decimal.js";
import { evaluateAgain } from "../../../src/estimate/sheet/evaluate.js";
import type { Cell } from "../../../src/estimate/sheet/expression.js";
import { mulberry32 } from "../../bench/mulberry32.js";
import { demoBody, estimated } from "../../helpers/estimating.js";

const demo = estimated(demoBody("orchard-shelter"));
const { sheet } = demo.basis;

/** Figures of the same plans with some cells changed. */
function changed(values: Readonly<Record<string, string | number>>): (name: string) => number {
  const again = evaluateAgain(
    sheet.cells,
    new Map(Object.entries(values).map(([name, value]) => [name, decimal(value)])),
  );
  return (name) => again(sheet.find(name) as Cell).toNumber() ?? Number.NaN;
}

/** Values of a cell from a tenth to ten times of what it is. */
const scales = (name: string) =>
  [0.1, 0.5, 0.9, 1, 1.1, 1.7, 3, 10].map((times) => (sheet.find(name) as Cell).value.times(times).toFixed(12));

function rises(of: string, by: string): void {
  const found = scales(by).map((value) => changed({ [by]: value })(of));
  for (const [i, hours] of found.slice(1).entries())
    expect([by, hours >= (found[i] as number) - 1e-9]).toEqual([by, true]);
  expect([by, (found.at(-1) as number) > (found[0] as number)]).toEqual([by, true]);
}

describe("more work never takes less time", () => {
  it.each([
    ["more cuts", "milled.hours.saw", "milled.cuts.millCuts"],
    ["a larger face", "milled.hours.saw", "milled.cuts.millArea-eastern-white-pine"],
    ["dirtier bark", "milled.hours.sharpen", "milled.cuts.dirtyArea-eastern-white-pine"],
    ["more bolts", "milled.hours.setUp", "milled.cuts.bolts"],
    ["more rip cuts", "milled.hours.edge", "milled.cuts.ripCuts"],
    ["longer rips", "milled.hours.edge", "milled.cuts.ripLength-eastern-white-pine"],
    ["harder wood to rip", "milled.hours.edge", "wood.eastern-white-pine.hardness"],
    ["heavier slabs to rip", "milled.hours.edge", "wood.eastern-white-pine.greenDensity"],
    ["harder wood to joint", "milled.hours.join", "wood.black-locust.hardness"],
    ["harder wood to joint where it is bought", "bought.hours.join", "wood.southern-pine.hardness"],
    ["more pieces", "milled.hours.stack", "milled.cuts.pieces"],
    ["thicker logs to prepare", "milled.hours.prepare", "logs.pine-1-butt.soundLarge"],
    ["heavier timbers to raise", "common.hours.raise", "weight.posts.lifted"],
    ["more sawn edges", "milled.use.electricity.quantity", "milled.cuts.ripLength-eastern-white-pine"],
    ["a longer haul of logs", "milled.hours.getOut", "getOut.distance"],
    ["a longer walk to the stack", "milled.hours.carry", "carry.distance"],
    ["a longer way to the site", "common.hours.move", "move.distance"],
    ["heavier green wood", "milled.hours.carry", "wood.eastern-white-pine.greenDensity"],
    ["heavier logs", "milled.hours.getOut", "wood.eastern-white-pine.greenDensity"],
    ["heavier slabs", "milled.hours.saw", "wood.black-locust.greenDensity"],
    ["heavier pieces to dress", "work.rafters.dressEach", "work.rafters.weightEach"],
    ["heavier timbers to turn", "work.posts.turn", "work.posts.weightEach"],
    ["harder wood", "milled.hours.saw", "wood.black-locust.hardness"],
    ["harder wood to dress", "work.rafters.dressEach", "wood.eastern-white-pine.hardness"],
    ["deeper crosscuts", "bought.hours.join", "sections.posts.thickness"],
    ["longer pieces to dress", "work.rafters.dressEach", "rough.rafters.length"],
    ["thicker stock to dry", "milled.drying.likely", "rough.rafters.thickness"],
    ["pieces too heavy for the machines", "milled.hours.dressByHand", "work.rafters.weightEach"],
    ["larger rafters to raise", "common.hours.rafters", "sections.rafters.width"],
    ["wider purlins to lay", "common.hours.deck", "sections.purlins.width"],
    ["a longer structure", "common.hours.roof", "frame.length"],
    ["a slower pace", "mixed.hours.total", "pace"],
  ])("%s: %s", (_, of, by) => {
    rises(of, by);
  });
});

/** What makes work: cuts, distances, weights, hardness; more of each is more to do. */
const BURDENS =
  /^((milled|mixed)\.cuts\.|(getOut|carry|move)\.distance$|wood\..*\.(greenDensity|hardness)$|work\..*\.weightEach$|raise\.|joint\.|mill\.(setUp|turn|cutHandling)$|pace$)/;

describe("any mixture of more cuts, longer hauls, heavier pieces and harder wood", () => {
  // More lumber from the same logs is less waste to clear.
  const burdens = sheet.cells
    .map(({ name }) => name)
    .filter((name) => BURDENS.test(name) && !name.includes(".cuts.volume-"));
  // What grows too heavy goes from the machines to the hands: the two are taken together, in the totals.
  const stages = sheet.cells
    .map(({ name }) => name)
    .filter((name) => /^(milled|mixed|common)\.hours\./.test(name) && !name.endsWith(".dress"));

  it("never takes less time in any stage of any route", () => {
    expect(burdens.length).toBeGreaterThan(50);
    expect(stages.length).toBeGreaterThan(35);
    const chance = mulberry32(20);
    const light = changed({});
    for (let round = 0; round < 40; round++) {
      const more = burdens.filter(() => chance() < 0.2).map((name) => [name, (1 + 3 * chance()).toFixed(3)] as const);
      const values = more.map(([name, times]) => [name, (sheet.find(name) as Cell).value.times(times).toFixed(12)]);
      const heavy = changed(Object.fromEntries(values));
      for (const stage of stages)
        expect([round, stage, heavy(stage) >= light(stage) - 1e-9]).toEqual([round, stage, true]);
    }
  });
});

describe("more hands never take longer", () => {
  it.each(["labor.crew", "labor.helpers"])("%s, elapsed", (name) => {
    for (const route of ["bought", "milled", "mixed"]) {
      const found = [1, 2, 3, 4, 8].map((people) => changed({ [name]: people })(`${route}.elapsed`));
      for (const [i, hours] of found.slice(1).entries()) expect(hours).toBeLessThanOrEqual(found[i] as number);
      expect(found.at(-1)).toBeLessThan(found[0] as number);
    }
  });

  it("hurry no stage past the people who have room at it: one at a chain, two at the planer", () => {
    for (const stage of ["sharpen", "dress", "sand", "join"]) {
      const alone = demo.routes.mill?.stages.concat(demo.common.stages).find(({ name }) => name.endsWith(`.${stage}`));
      expect([stage, alone?.value.gt(0)]).toEqual([stage, true]);
    }
    // Nothing but what has room for more than six is quicker with twenty than with six, and nothing is.
    expect(changed({ "labor.crew": 20, "labor.helpers": 0 })("milled.elapsed")).toBe(
      changed({ "labor.crew": 6, "labor.helpers": 0 })("milled.elapsed"),
    );
    const dressing = (crew: number) => {
      const at = changed({ "labor.crew": crew });
      return at("milled.elapsed") - changed({ "labor.crew": crew, "milled.hours.dress": 0 })("milled.elapsed");
    };
    const dressed = demo.routes.mill?.stages.find(({ name }) => name === "milled.hours.dress");
    const hours = dressed?.value.toNumber() ?? 0;
    expect(hours).toBeGreaterThan(0);
    for (const crew of [2, 3, 8]) expect(dressing(crew)).toBeCloseTo(hours / 2, 9);
    expect(dressing(1)).toBeCloseTo(hours, 9);
  });

  it("with more room at a stage never take longer", () => {
    const elapsed = [1, 2, 3, 6].map((people) => changed({ "labor.crew": 6, "room.tools": people })("mixed.elapsed"));
    for (const [i, hours] of elapsed.slice(1).entries()) expect(hours).toBeLessThan(elapsed[i] as number);
  });

  it("nor do they change the person-hours", () => {
    expect(changed({ "labor.crew": 5, "labor.helpers": 7 })("mixed.hours.total")).toBe(
      changed({})("mixed.hours.total"),
    );
  });
});

describe("stages", () => {
  const sum = (cells: readonly Cell[]) => cells.reduce((total, cell) => total + cell.value.toNumber(), 0);

  it("add up to the hours of each route", () => {
    const { routes, common }: Estimate = demo;
    for (const route of [routes.buy, routes.mix, ...(routes.mill ? [routes.mill] : [])]) {
      expect(sum(route.stages) + sum(common.stages) + sum(common.ownHours)).toBeCloseTo(
        route.hours.value.toNumber(),
        9,
      );
    }
  });

  it("appear once: no route has a stage of its own that is also common", () => {
    const last = (cell: Cell) => cell.name.split(".").at(-1);
    const common = new Set(demo.common.stages.map(last));
    expect(common.size).toBe(demo.common.stages.length);
    for (const route of [demo.routes.buy, demo.routes.mix, ...(demo.routes.mill ? [demo.routes.mill] : [])]) {
      expect(new Set(route.stages.map(last)).size).toBe(route.stages.length);
      expect(route.stages.map(last).filter((name) => common.has(name))).toEqual([]);
    }
  });

  it("that both routes share leave the comparison as it is", () => {
    const shared = ["rate.trialAssemble", "rate.dismantle", "rate.brace", "raise.timber"];
    const more = ["rate.roof-ribbed-steel", "rate.trim", "rate.cleanUp", "move.distance"];
    const names = [
      "decision.mill.extraHours",
      "decision.mill.payPerHour",
      "decision.mix.extraHours",
      "decision.mix.cashSaved",
    ];
    for (const name of [...shared, ...more]) {
      const [asItWas, slower] = [changed({}), changed({ [name]: scales(name).at(-1) as string })];
      expect(slower("common.hours.total")).not.toBe(asItWas("common.hours.total"));
      for (const figure of names) expect(slower(figure)).toBeCloseTo(asItWas(figure), 9);
    }
  });
});
