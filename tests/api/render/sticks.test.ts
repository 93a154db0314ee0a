/** How bought sticks are cut, as a drawing and as plain text. */
import { describe, expect, it } from "vitest";
import { provenance } from "../../../src/api/provenance.js";
import { shownEstimate } from "../../../src/api/render/json/estimate.js";
import { terminalPage } from "../../../src/api/render/terminal.js";
import { estimated } from "../../helpers/estimating.js";

const bought = estimated({
  structure: {
    kind: "pieces",
    pieces: [
      { name: "rails", role: "other", surface: "rough", count: 2, section: "2 x 4 in", length: "5 ft" },
      { name: "struts", role: "other", surface: "rough", count: 2, section: "2 x 4 in", length: "2 ft" },
    ],
  },
  catalog: {
    name: "A yard",
    currency: "USD",
    lumber: [
      {
        name: "spf",
        label: "SPF",
        species: "spruce-pine-fir",
        section: "2 x 4 in",
        sold: { by: "piece", lengths: [{ length: "8 ft", price: "$4.00" }] },
      },
    ],
  },
  options: { finish: "none" },
});

describe("how bought sticks are cut", () => {
  it("is drawn with include=drawings, each piece with its length, and left out of the lean answer", () => {
    const cutsOf = (include: "drawings"[]) =>
      shownEstimate(bought, provenance("0".repeat(64)), include).purchasing.routes.flatMap(({ stock }) =>
        (stock ?? []).flatMap(({ cuts }) => cuts),
      );
    const [drawn] = cutsOf(["drawings"]);
    expect(drawn?.drawing).toContain(`<title>2 × 8'</title>`);
    expect(drawn?.drawing).toContain("rails");
    expect(drawn?.drawing?.match(/<rect /g)).toHaveLength(3); // the stick, a rail and a strut
    expect(cutsOf([])[0]).not.toHaveProperty("drawing");
  });

  it("is a diagram to scale in a terminal: a rail takes five eighths of the stick, a strut a quarter", () => {
    const line = terminalPage(bought)
      .split("\n")
      .find((text) => text.includes("|") && text.includes("rails"));
    const [head = "", rail = "", strut = "", left = ""] = line?.split("|") ?? [];
    expect(head.trim()).toBe("2 × 8'");
    expect([rail.replaceAll("-", ""), strut.replaceAll("-", "")]).toEqual(["rails 5'", "struts 2'"]);
    expect(rail.length / strut.length).toBeCloseTo(2.5, 0);
    expect(left).toMatch(/^\.+$/);
    expect(line?.length).toBeLessThanOrEqual(100);
  });
});
