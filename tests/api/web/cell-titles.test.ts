import { describe, expect, it } from "vitest";
import { provenance } from "../../../src/api/provenance.js";
import { shownEstimate } from "../../../src/api/render/json/estimate.js";
import { titledCells } from "../../../src/api/web/app/cell-titles.js";
import { estimated } from "../../helpers/estimating.js";

const made = estimated({
  structure: { kind: "lean-to", span: "8 ft", length: "8 ft" },
  logs: [{ name: "a", species: "eastern-white-pine", length: "10 ft", smallDiameter: "14 in", count: 4 }],
  catalog: { demo: "orchard-yard" },
});
const { sheet } = shownEstimate(made, provenance("0".repeat(64)), ["sheet", "workings"]);
const cells = sheet.blocks.flatMap((block) => [...block.cells, ...block.lines.flatMap((line) => line.cells)]);

describe("cells that a working names", () => {
  it("say whose they are where two are called alike", () => {
    const saved = cells.find(({ name }) => name === "decision.mix.cashSaved");
    const titles = titledCells([sheet], new Set(saved?.working?.split(/[^\w.-]+/))).map(({ title }) => title);
    expect(titles.filter((title) => /: cash$/.test(title))).toHaveLength(2);
    expect(new Set(titles).size).toBe(titles.length);
  });

  it("are called by their own words alone where nothing else is", () => {
    const [hour] = titledCells([sheet], new Set(["labor.valueOfHour"]));
    const cell = cells.find(({ name }) => name === "labor.valueOfHour");
    expect(hour?.title.toLowerCase()).toBe(cell?.label.toLowerCase());
  });
});
