/** A mill that takes more people than the crew has. */
import { describe, expect, it } from "vitest";
import { demoBody, estimated } from "../helpers/estimating.js";

const told = (labor: object, shop: object) => {
  const made = estimated({ ...demoBody("orchard-shelter"), labor, shop });
  return { made, said: made.notices.filter(({ code }) => code === "mill-crew").map(({ text }) => text) };
};

describe("a mill for two", () => {
  it("is said to want one more person than a crew of one, for as long as it runs", () => {
    const { made, said } = told({ crew: 1 }, { mill: "manual-band-mill" });
    const { mix, mill } = made.routes;
    const hours = (mix.plan.sawing ? mix : mill)?.milling?.millHours;
    expect(said).toHaveLength(1);
    expect(said[0]).toContain("the days count on one more person");
    expect(said[0]).toContain(made.basis.sheet.shown(hours as never));
  });

  it("is nothing to tell a crew of two, nor of a mill for one", () => {
    expect(told({ crew: 2 }, { mill: "manual-band-mill" }).said).toEqual([]);
    expect(told({ crew: 1 }, { mill: "chainsaw-mill" }).said).toEqual([]);
  });
});
