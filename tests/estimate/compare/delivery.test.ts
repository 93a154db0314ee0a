/** The lorry: it comes with the roofing of every kind of roof, and for nothing where nothing needs it. */
import { describe, expect, it } from "vitest";
import { estimated } from "../../helpers/estimating.js";

const size = { length: "10 ft", eaveHeight: "7 ft", slope: { rise: "4 in", run: "12 in" } };
const KINDS: Readonly<Record<string, object>> = {
  gable: { ...size, span: "8 ft" },
  hip: { ...size, span: "8 ft" },
  "lean-to": { ...size, span: "6 ft" },
};

/** Everything from the logs: no lumber is bought, so that only the roofing can call the lorry. */
function milled(kind: string, covering: string) {
  const { routes, basis } = estimated({
    structure: { kind, ...KINDS[kind], covering },
    logs: [{ name: "pine", count: 24, species: "eastern-white-pine", length: "12 ft 6 in", smallDiameter: "18 in" }],
    catalog: { demo: "orchard-yard" },
  });
  const lumber = routes.mill?.lines.filter(({ department, name }) => department === "lumber" && name.includes(".buy."));
  expect(lumber?.map(({ label }) => label)).toEqual([]);
  const cells = routes.mill?.lines.filter(({ name }) => name.endsWith(".use.delivery")) ?? [];
  return cells.map(({ amount }) => amount && basis.sheet.shown(amount));
}

describe("the lorry", () => {
  it.each(Object.keys(KINDS))("comes with the roofing of a %s roof whose lumber is all milled", (kind) => {
    expect(milled(kind, "ribbed-steel")).toEqual(["95.00 USD"]);
  });

  it("does not come where neither roofing nor lumber is bought", () => {
    expect(milled("gable", "none")).toEqual([]);
  });
});
