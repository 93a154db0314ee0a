/** What beginners get wrong or overlook, and what the notices say of it. */
import { describe, expect, it } from "vitest";
import { estimated } from "../helpers/estimating.js";

const gable = { kind: "gable", span: "12 ft", length: "16 ft" };
const notices = (body: object, code: string) =>
  estimated(body).notices.flatMap((notice) => (notice.code === code ? [notice] : []));

describe("a log that is given in millimetres for centimetres", () => {
  const log = (smallDiameter: string) => ({ name: "l1", species: "european-larch", length: "4.3 m", smallDiameter });
  const said = (smallDiameter: string) => notices({ structure: gable, logs: [log(smallDiameter)] }, "slim-log");

  it("is told with its place", () => {
    expect(said("34 mm")).toEqual([expect.objectContaining({ at: "/logs/0", text: expect.stringContaining("unit") })]);
    expect(said("34 cm")).toEqual([]);
    const many = notices({ structure: gable, logs: [{ ...log("34 mm"), count: 18 }] }, "slim-log");
    expect(many.map(({ at }) => at)).toEqual(["/logs/0"]);
  });
});

describe("sheets that a price list has, where the deck is of boards by default", () => {
  const catalog = {
    ...{ name: "A yard", currency: "USD" },
    coverings: [
      {
        covering: "asphalt-shingles",
        sheets: { form: "courses", covers: "33.3 ft2", exposure: "5 in", price: "$40" },
        sheathing: { width: "4 ft", length: "8 ft", price: "$24" },
      },
    ],
  };
  const said = (more: object) =>
    notices({ structure: { ...gable, covering: "asphalt-shingles", ...more }, catalog }, "unused").filter(
      ({ at }) => at === "/structure/deck",
    );

  it("are spoken of, until somebody says what the deck is of", () => {
    expect(said({})).toHaveLength(1);
    expect(said({ deck: { kind: "solid-boards" } })).toEqual([]);
    expect(said({ deck: { kind: "sheets" } })).toEqual([]);
  });
});
