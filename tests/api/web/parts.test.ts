import { describe, expect, it } from "vitest";
import { beginning } from "../../../src/api/web/app/structure.js";
import { formSpec } from "../../../src/api/web/fields.js";
import { request } from "../../helpers/estimating.js";

describe("walls in the form", () => {
  const walled = formSpec().structures.flatMap(({ kind, fields }) => {
    const walls = fields.find(({ key }) => key === "walls");
    return walls?.kind === "group" ? [{ kind, walls }] : [];
  });
  const asked = (kind: string, walls: unknown) => () =>
    request({ structure: { kind, span: "8 ft", length: "12 ft", walls }, logs: [], catalog: { demo: "orchard-yard" } });

  it("are asked for of gables and lean-tos at least", () => {
    expect(walled.map(({ kind }) => kind)).toEqual(expect.arrayContaining(["gable", "lean-to"]));
  });

  it.each(walled)("of a $kind begin with a side that it has", ({ kind, walls }) => {
    const begun = beginning(walls) as { sides: { side: string }[] };
    expect(begun.sides).toHaveLength(1);
    expect(asked(kind, begun)).not.toThrow();
    expect(asked(kind, { sides: [{ side: "none" }] })).toThrow("side");
  });
});
