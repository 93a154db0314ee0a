/** Which of several finishes and coverings is bought, on a yard that sells just what the case is about. */
import { describe, expect, it } from "vitest";
import type { FaultError } from "../../src/estimate/faults.js";
import { estimated } from "../helpers/estimating.js";

const stain = (name: string, price: string | null, more: object = {}) => ({
  name,
  label: name,
  kind: "oil-stain",
  cans: [{ size: "1 gal", price }],
  ...more,
});

const coatedWith = (
  finishes: readonly object[],
  more: { readonly buyAs?: string[]; readonly heldPlans?: object } = {},
) =>
  estimated({
    ...(more.heldPlans ? { heldPlans: more.heldPlans } : {}),
    structure: {
      kind: "pieces",
      pieces: [{ name: "boards", role: "other", count: 40, section: "2 x 6 in", length: "10 ft", surface: "dressed" }],
    },
    catalog: { name: "A shelf", currency: "USD", finishes },
    options: { finish: "oil-stain", ...(more.buyAs ? { buyAs: more.buyAs } : {}) },
  })
    .routes.buy.lines.filter(({ department }) => department === "finishes")
    .map(({ label, packs, amount }) => [
      label.replace(/^.*\(/, "("),
      packs?.map(({ count }) => count.value.toFixed()).join(),
      amount?.value.toFixed(2),
    ]);

describe("of several finishes of a kind", () => {
  it("the cheaper is bought wherever it stands in the catalog", () => {
    const [dear, cheap] = [stain("dear", "$40.00"), stain("cheap", "$10.00")];
    const [line] = coatedWith([dear, cheap]);
    expect(line?.[0]).toBe("(cheap)");
    expect(coatedWith([cheap, dear])).toEqual([line]);
  });

  it("the cheaper for the faces to be coated is bought, not the cheaper can", () => {
    // Four times the coverage at twice the price of a can.
    const far = stain("far", "$20.00", { coverage: { smooth: "400 ft2/gal", rough: "400 ft2/gal" } });
    const near = stain("near", "$10.00", { coverage: { smooth: "100 ft2/gal", rough: "100 ft2/gal" } });
    expect(coatedWith([near, far])[0]?.[0]).toBe("(far)");
  });

  it("one without a price is bought only where no other has one, and equals by name", () => {
    expect(coatedWith([stain("a", null), stain("b", "$90.00")])[0]?.[0]).toBe("(b)");
    expect(coatedWith([stain("z", "$9.00"), stain("y", "$9.00")])[0]?.[0]).toBe("(y)");
  });
});

describe("what is named is bought in the place of the cheapest", () => {
  const shelf = [stain("dear", "$40.00"), stain("cheap", "$10.00")];
  const refused = (more: Parameters<typeof coatedWith>[1]) => {
    try {
      coatedWith(shelf, more);
    } catch (error) {
      return (error as FaultError).faults.map(({ code, at, cure }) => [code, at, cure]);
    }
    return [];
  };

  it("by the user", () => {
    expect(coatedWith(shelf, { buyAs: ["dear"] })[0]?.[0]).toBe("(dear)");
  });

  it("by held plans, unless the user names another", () => {
    expect(coatedWith(shelf, { heldPlans: { offers: ["dear"] } })[0]?.[0]).toBe("(dear)");
    expect(coatedWith(shelf, { heldPlans: { offers: ["dear"] }, buyAs: ["cheap"] })[0]?.[0]).toBe("(cheap)");
  });

  it("or refused, where the catalog has it not", () => {
    expect(refused({ buyAs: ["cheep"] })).toEqual([["unknown-name", "/options/buyAs/0", "Did you mean cheap?"]]);
    expect(refused({ heldPlans: { offers: ["gone with the wind"] } })[0]?.slice(0, 2)).toEqual([
      "held-plan-misfit",
      "/heldPlans/offers/0",
    ]);
  });
});

describe("of several coverings of a kind", () => {
  const steel = (name: string, price: string) => ({
    name,
    label: name,
    covering: "ribbed-steel",
    sheets: {
      form: "panels",
      coverWidth: "36 in",
      sold: { by: "cut-length", price, shortest: "3 ft", longest: "40 ft", step: "1 in" },
    },
  });
  const gableOf = (coverings: readonly object[]) => ({
    structure: {
      kind: "gable",
      span: "12 ft",
      length: "16 ft",
      slope: { rise: "4 in", run: "12 in" },
      covering: "ribbed-steel",
    },
    catalog: { name: "A shelf", currency: "USD", coverings },
  });
  const roofed = (coverings: readonly object[]) =>
    estimated(gableOf(coverings)).common.lines.find(({ name }) => name.endsWith("panels") || name.endsWith("panel"));

  it("what a plan chose is among what it hands back", () => {
    const shelf = [steel("heavy", "$6.00/ft"), steel("light", "$3.00/ft")];
    expect(estimated(gableOf(shelf)).plans.offers).toEqual(["light"]);
  });

  it("the cheaper is bought wherever it stands in the catalog, and the line says which", () => {
    const [dear, cheap] = [steel("heavy", "$6.00/ft"), steel("light", "$3.00/ft")];
    const line = roofed([dear, cheap]);
    expect(line?.label).toBe("Roof panels (light)");
    expect(roofed([cheap, dear])?.amount?.value).toEqual(line?.amount?.value);
  });
});
