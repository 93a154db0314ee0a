import { describe, expect, it } from "vitest";
import { beginning } from "../../../src/api/web/app/structure.js";
import { request } from "../../helpers/estimating.js";

describe("walls of a structure", () => {
  const asked = (kind: string, walls: unknown) => () =>
    request({ structure: { kind, span: "8 ft", length: "12 ft", walls }, logs: [], catalog: { demo: "orchard-yard" } });

  it.each(["gable", "lean-to"])("of a %s begin with a side that it has", (kind) => {
    expect(asked(kind, beginning(kind, "walls"))).not.toThrow();
    expect(asked(kind, { sides: [{ side: kind === "gable" ? "high" : "near" }] })).toThrow("side");
  });
});
