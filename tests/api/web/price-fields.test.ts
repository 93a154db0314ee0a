import { describe, expect, it } from "vitest";
import { priceCells } from "../../../src/api/web/price-fields.js";
import { CSV_COLUMNS, LAYOUTS } from "../../../src/catalog/csv-columns.js";

const cells = priceCells();
const cell = (kind: string, column: string) => cells[kind]?.find((one) => one.column === column);

describe("cells of a row of prices", () => {
  it("are there for every kind of row but the catalog's own, each a column of the file", () => {
    expect(Object.keys(cells)).toEqual(Object.keys(LAYOUTS).filter((kind) => kind !== "catalog"));
    for (const list of Object.values(cells)) for (const { column } of list) expect(CSV_COLUMNS).toHaveProperty(column);
  });

  it("say what is needed, what may be chosen, and how a price is written", () => {
    expect(cell("services", "item")).toMatchObject({ required: true });
    expect(cell("services", "item")?.choices).toContain("delivery");
    expect(cell("services", "price")).toMatchObject({ required: false, choices: [] });
    expect(cell("services", "price")?.example).toContain("$0.55/bf");
    expect(cell("services", "name")?.required).toBe(false);
    expect(cell("lumber piece", "length")?.required).toBe(true);
    expect(cell("lumber length", "length")?.required).toBe(false); // or shortest, longest and step
    expect(cell("lumber volume", "measure")?.choices).toEqual(["nominal", "actual"]);
    expect(cell("lumber piece", "grade_marked")?.choices).toEqual(["yes", "no"]);
    expect(cell("coverings trim", "kind")?.choices).toContain("ridge-cap");
  });
});
