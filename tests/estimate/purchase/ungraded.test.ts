/** What a grade mark, and a wood that lasts, decide of what is bought. */
import { describe, expect, it } from "vitest";
import { estimated } from "../../helpers/estimating.js";

/** Names of what each group is bought as, from the demo's yard: graded fir and treated posts, full-sawn pine and locust without a mark. */
function boughtAs(pieces: readonly object[], ungradedAccepted: string): Record<string, string> {
  const made = estimated({
    structure: { kind: "pieces", pieces },
    catalog: { demo: "orchard-yard" },
    site: { ungradedAccepted },
  });
  return Object.fromEntries(
    made.routes.buy.plan.bought.map(({ substitution: { group, offer } }) => [group.name, offer.name]),
  );
}

const beam = { name: "beams", role: "beam", count: 4, section: "4 x 8 in", length: "9 ft", structural: true };
const post = { name: "posts", role: "post", count: 4, section: "6 x 6 in", length: "8 ft", structural: true };

describe("lumber without a grade mark", () => {
  it("is bought for structure only where the building office takes it, and then in the wood that is wanted", () => {
    const pine = { ...beam, species: ["eastern-white-pine"] };
    expect(boughtAs([pine], "unknown")).toEqual({ beams: "fir-4x8" });
    expect(boughtAs([pine], "no")).toEqual({ beams: "fir-4x8" });
    expect(boughtAs([pine], "yes")).toEqual({ beams: "pine-rough-4x8" });
  });

  it("is then what costs least where no wood is wanted: 4 × 8 of fir and of pine beside each other", () => {
    // The yard's pine is sold by the board foot, the fir by the foot; the cheaper is told by the estimate of each.
    const total = (buyAs: string) =>
      estimated({
        structure: { kind: "pieces", pieces: [{ ...beam, buyAs }] },
        catalog: { demo: "orchard-yard" },
        site: { ungradedAccepted: "yes" },
      }).routes.buy.lumber.value.toNumber();
    const cheaper = total("fir-4x8") <= total("pine-rough-4x8") ? "fir-4x8" : "pine-rough-4x8";
    expect(boughtAs([beam], "yes")).toEqual({ beams: cheaper });
  });
});

describe("posts", () => {
  it("are of a wood that lasts where that is wanted and may be taken, else treated", () => {
    const locust = { ...post, species: ["black-locust"] };
    expect(boughtAs([locust], "unknown")).toEqual({ posts: "treated-6x6" });
    expect(boughtAs([locust], "yes")).toEqual({ posts: "locust-6x6" });
    expect(boughtAs([post], "yes")).toEqual({ posts: "treated-6x6" });
    // Pine neither lasts nor is treated.
    expect(boughtAs([{ ...post, species: ["eastern-white-pine"] }], "yes")).toEqual({ posts: "treated-6x6" });
  });
});
