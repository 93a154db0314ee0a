/** The best mix of short lists beside the mixes that the same service finds where sides are pinned. */
import { describe, expect, it, vi } from "vitest";
import { planners } from "../../../src/api/planners.js";
import { aside } from "../../../src/estimate/sheet/aside.js";
import { estimated } from "../../helpers/estimating.js";
import { piece } from "./ways.js";

vi.setConfig({ testTimeout: 120_000 });

interface Job {
  readonly pieces: readonly ReturnType<typeof piece>[];
  readonly [key: string]: unknown;
}

/** The least total of all ways. */
function least({ pieces, ...rest }: Job, sources: readonly ("mill" | "buy" | undefined)[]): number {
  const wanted = pieces.map((one, i) => ({ ...one, ...(sources[i] && { source: sources[i] }) }));
  const { routes } = estimated(
    {
      structure: { kind: "pieces", pieces: wanted },
      catalog: { demo: "orchard-yard" },
      options: { finish: "none" },
      ...rest,
    },
    planners(),
  );
  const { buy, mill, hired, mix } = routes;
  return Math.min(
    ...[buy, mill, hired, mix].flatMap((route) => (route ? [Number(aside(route.total).toFixed(2))] : [])),
  );
}

const pine = (length: string, smallDiameter: string, name = "log") => ({
  ...{ name, species: "eastern-white-pine", length, smallDiameter },
});

describe("the best mix of a short list", () => {
  it("is no dearer than with pins: of what the logs lack the dearest is sawn first", () => {
    const job = {
      pieces: [
        piece("boards", 8, "1 x 8 in", "7 ft 2 in", { role: "board" }),
        piece("purlins", 2, "4 x 6 in", "6 ft 2 in", { role: "purlin" }),
        piece("short-boards", 4, "1 x 8 in", "6 ft 6 in", { role: "board" }),
        piece("legs", 5, "4 x 4 in", "5 ft"),
      ],
      logs: [pine("10 ft 6 in", "14 in")],
      labor: { valueOfHour: "0 USD/person-h" },
      shop: { sawyer: { charge: "board-foot", minimum: "$300" } },
    };
    expect(least(job, [])).toBeLessThanOrEqual(least(job, ["buy", "mill", "mill", "mill"]));
  });

  it("is no dearer than with pins: a mix that the careful sawyer's rule thinks dearer is planned, too", () => {
    const job = {
      pieces: [
        piece("joists", 4, "2 x 6 in", "8 ft 6 in"),
        piece("sills", 6, "6 x 6 in", "8 ft 6 in", { role: "purlin" }),
        piece("beams", 7, "4 x 6 in", "8 ft 6 in", { role: "beam" }),
      ],
      logs: [
        pine("8 ft 6 in", "14 in", "first"),
        pine("12 ft 6 in", "15 in", "second"),
        pine("14 ft 6 in", "11 in", "third"),
      ],
      labor: { valueOfHour: "8 USD/person-h" },
    };
    expect(least(job, [])).toBeLessThanOrEqual(least(job, ["mill", "buy", "mill"]));
  });

  it("is no dearer than what is found at another value of an hour: all comes from the logs, as far as they hold it", () => {
    const rough = { role: "other", surface: "rough" };
    const dressed = { role: "other", surface: "dressed" };
    const job = (hour: number): Job => ({
      pieces: [
        piece("planks", 9, "2 x 6 in", "4 ft", rough),
        piece("long-planks", 7, "2 x 8 in", "9 ft", rough),
        piece("plate", 1, "2 x 8 in", "11 ft", dressed),
        piece("treads", 7, "2 x 8 in", "4 ft", dressed),
        piece("posts", 2, "4 x 4 in", "4 ft", dressed),
      ],
      logs: [
        pine("8 ft", "17 in", "first"),
        pine("10 ft", "17 in", "second"),
        pine("14 ft", "9 in", "third"),
        pine("14 ft", "17 in", "fourth"),
      ],
      labor: { valueOfHour: `${hour} USD/person-h` },
      shop: { mill: "manual-band-mill" },
    });
    // About 25 hours of milling beside 22 with one plank bought and fetched.
    expect(least(job(8), []) - least(job(4), [])).toBeLessThan(4 * 30);
  });
});
