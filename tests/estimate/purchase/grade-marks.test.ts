/** What a grade mark, a wood that lasts, and the building office decide of what is bought. */
import { describe, expect, it } from "vitest";
import type { Estimate } from "../../../src/estimate/estimate.js";
import { DEMOS, demoBody, estimated } from "../../helpers/estimating.js";

const site = (body: object, ungradedAccepted: string): Estimate => estimated({ ...body, site: { ungradedAccepted } });

/** Names of what each group is bought as. */
const boughtAs = ({ routes }: Estimate): Record<string, string> =>
  Object.fromEntries(routes.buy.plan.bought.map(({ substitution: { group, offer } }) => [group.name, offer.name]));

/** A list on the demo's yard: graded fir, dry spruce and treated posts; full-sawn pine and locust without a mark. */
const list = (...pieces: object[]) => ({
  structure: { kind: "pieces", pieces: pieces.map((one) => ({ length: "8 ft", structural: true, ...one })) },
  catalog: { demo: "orchard-yard" },
});
const pine = { species: ["eastern-white-pine"] };
const rafters = { name: "rafters", role: "rafter", count: 8, section: "2 x 6 in", surface: "dressed" };
const beams = { name: "beams", role: "beam", count: 4, section: "4 x 8 in" };
const posts = { name: "posts", role: "post", count: 4, section: "6 x 6 in" };

describe("leave to use lumber without a grade mark", () => {
  const bodies: readonly (readonly [string, object])[] = [
    ...DEMOS.map((name) => [name, demoBody(name)] as const),
    ["a list of pine", list({ ...rafters, ...pine }, { ...beams, ...pine }, { ...posts, ...pine })],
    ["a list of any wood", list(rafters, beams, posts)],
  ];

  // It only widens the choice.
  it.each(bodies)("makes nothing dearer in %s", (_, body) => {
    const [yes, unknown] = [site(body, "yes"), site(body, "unknown")];
    expect(boughtAs(yes)).toEqual(boughtAs(unknown));
    for (const way of ["buy", "mix"] as const)
      expect(yes.routes[way].total.value.lte(unknown.routes[way].total.value)).toBe(true);
  });

  it("lets the user name what bears no mark", () => {
    const made = site(list({ ...beams, ...pine, buyAs: "pine-rough-4x8" }), "yes");
    expect(boughtAs(made)).toEqual({ beams: "pine-rough-4x8" });
  });
});

describe("posts", () => {
  it("are of a wood that lasts where that is wanted and bears no load, else treated", () => {
    const bought = (more: object) => boughtAs(estimated(list({ ...posts, ...more }))).posts;
    const locust = { species: ["black-locust"] };
    expect(bought({ ...locust, structural: false })).toBe("locust-6x6");
    expect(bought(locust)).toBe("treated-6x6"); // graded, where they bear
    expect(bought({ structural: false })).toBe("treated-6x6"); // the cheaper of two that serve
    expect(bought({ ...pine, structural: false })).toBe("treated-6x6"); // pine neither lasts nor is treated
  });
});
