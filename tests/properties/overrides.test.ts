/**
 * Every cell that may be overridden, put below zero, to nothing and to a million of its unit: an answer, or a fault with
 * its place; never a bug. What is refused leaves the sheet as it is, so all cells are put below zero in one request;
 * nothing and a million change what is laid, and are tried one by one on a sample.
 */
import { describe, expect, it, vi } from "vitest";
import { layBasis } from "../../src/estimate/basis.js";
import { FaultError } from "../../src/estimate/faults.js";
import type { Cell } from "../../src/estimate/sheet/expression.js";
import { Sheet } from "../../src/estimate/sheet/sheet.js";
import { layCommon, layTakeoffs } from "../../src/estimate/takeoffs.js";
import { demoCatalog, estimated, request } from "../helpers/estimating.js";

vi.setConfig({ testTimeout: 240_000 });

const catalog = { demo: "orchard-yard" };
const pieces = [{ name: "rails", section: "2 x 6 in", length: "9 ft", count: 4 }];
const log = { name: "pine", species: "eastern-white-pine", length: "12 ft 6 in", smallDiameter: "14 in" };

const list = { structure: { kind: "pieces", pieces }, logs: [log], catalog };
const shed = {
  structure: { kind: "gable", span: "12 ft", length: "16 ft", footings: { frostDepth: "3 ft" }, floor: {} },
  catalog,
};
const hip = { structure: { kind: "hip", span: "12 ft", length: "16 ft" }, catalog };

/** Takeoffs and their prices, without routes. */
function takenOff(body: Readonly<Record<string, unknown>>): Sheet {
  const asked = request(body);
  const sheet = new Sheet(new Map(Object.entries(asked.overrides ?? {})));
  const basis = layBasis(sheet, asked);
  layCommon(basis, layTakeoffs(basis), []);
  const faults = [...basis.assumed.faults, ...sheet.faults, ...sheet.overrideFaults()];
  if (faults.length > 0) throw new FaultError(faults);
  return sheet;
}

const whole = (body: Readonly<Record<string, unknown>>): Sheet => estimated(body).basis.sheet;

const put = (cell: Cell, value: string) => ({ [cell.name]: { value, unit: cell.display.symbol } });

/** The faults of a request, none where it is answered; anything else thrown is a bug, and fails the test. */
function faultsOf(lay: () => unknown): FaultError["faults"] {
  try {
    lay();
    return [];
  } catch (error) {
    if (error instanceof FaultError) return error.faults;
    throw error;
  }
}

describe.each([
  { what: "a list of pieces with logs, estimated", body: list, lay: whole, every: 13 },
  { what: "a gable on footings with a floor, taken off", body: shed, lay: takenOff, every: 31 },
  { what: "a hip, taken off", body: hip, lay: takenOff, every: 31 },
])("overrides of $what", ({ body, lay, every }) => {
  const sheet = lay(body);
  const cells = sheet.cells.filter(({ kind, fixed }) => kind !== "planned" && !fixed);

  it("refuse every cell that is put below zero, unless it is so by itself", () => {
    const wanted = cells.filter(({ value }) => value.gte(0));
    const overrides = Object.assign({}, ...wanted.map((cell) => put(cell, "-1"))) as object;
    const refused = faultsOf(() => lay({ ...body, overrides }));
    expect(wanted.length).toBeGreaterThan(250);
    expect(new Set(refused.map(({ at }) => at))).toEqual(new Set(wanted.map(({ name }) => `/overrides/${name}`)));
  });

  it("with nothing or a million give an answer, or faults with their places", () => {
    const tries = cells.flatMap((cell) => ["0", "1000000"].map((value) => ({ cell, value })));
    const sample = tries.filter((_, i) => i % every === 0);
    expect(sample.length).toBeGreaterThan(25);
    let answered = 0;
    for (const { cell, value } of sample) {
      const overrides = put(cell, value);
      const faults = faultsOf(() => lay({ ...body, overrides }));
      if (faults.length === 0) answered += 1;
      for (const { at } of faults) expect(at, `${cell.name}: ${value} ${cell.display.symbol}`).not.toBe("");
    }
    expect(answered).toBeGreaterThan(10);
  });
});

describe("an override", () => {
  const refusal = (overrides: Record<string, string>, body: object = list) =>
    faultsOf(() => whole({ ...body, overrides })).map(({ code, at }) => `${code} ${at}`);

  it.each<[string, string]>([
    ["rough.rails.spares", "0.5"],
    ["delivery.loads", "1.5"],
    ["pieces.rails.count", "3.5"],
    ["tax.1.rate", "-50 %"],
    ["priceLevel", "-1"],
    ["priceLevel", "1000"],
    ["labor.hoursPerWeek", "-3 h/week"],
    ["buy.wastage", "-50 %"],
    ["bought.cash", "$100.005"],
  ])("of %s can't be %s", (name, value) => {
    expect(refusal({ [name]: value })).toEqual([`out-of-range /overrides/${name}`]);
  });

  it("of an amount that is rounded to cents takes cents, and a price finer ones", () => {
    expect(refusal({ "bought.cash": "$100.05", "price.spf-2x6-10": "$9.1234" })).toEqual([]);
  });

  it("of a count is held to a limit before anything is counted out", () => {
    const panels = faultsOf(() => takenOff({ ...shed, overrides: { "covering.up": "1000000" } }));
    expect(panels).toEqual([
      expect.objectContaining({
        code: "too-large",
        at: "/overrides/covering.up",
        wrong: expect.stringMatching(/There are \d+ panels or boards of the covering; the limit is 5000\./),
      }),
    ]);
  });
});

describe("panels of a catalog that are too narrow", () => {
  it("are refused with their number and the limit, before any is planned", () => {
    const yard = demoCatalog("orchard-yard") as { coverings: { sheets: { coverWidth?: string } }[] };
    for (const { sheets } of yard.coverings) if (sheets.coverWidth) sheets.coverWidth = "0.1 in";
    const body = { structure: { kind: "gable", span: "60 ft", length: "400 ft" }, catalog: yard };
    expect(faultsOf(() => takenOff(body))).toEqual([expect.objectContaining({ code: "too-large" })]);
  });
});
