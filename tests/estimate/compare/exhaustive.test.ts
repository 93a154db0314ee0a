/** The best mix against every way there is to send whole groups to the mill or to the yard, each planned and laid by hand here. */
import { describe, expect, it, vi } from "vitest";
import { planners } from "../../../src/api/planners.js";
import { planRoute } from "../../../src/estimate/plan.js";
import { estimated } from "../../helpers/estimating.js";
import { laidJob, type Piece, piece, type Way, wayOf } from "./ways.js";

vi.setConfig({ testTimeout: 120_000 });

const service = planners();

/** All sets of groups, priced with the planners of the service and no search of mixes. */
function everySet(body: unknown, names: readonly string[]): Way[] {
  const { basis, common } = laidJob(body);
  return Array.from({ length: 2 ** names.length }, (_, set) => {
    const milled = new Set(names.filter((_, i) => Math.floor(set / 2 ** i) % 2 === 1));
    return wayOf(basis, planRoute(basis, `set${set}`, "", milled, service, undefined), common);
  });
}

const pine = { species: "eastern-white-pine" };

const JOBS: Readonly<Record<string, { readonly pieces: readonly Piece[]; readonly logs: readonly object[] }>> = {
  "rough timbers and boards": {
    pieces: [
      piece("beams", 2, "4 x 8 in", "10 ft", { surface: "rough" }),
      piece("boards", 8, "1 x 6 in", "6 ft"),
      piece("joists", 5, "2 x 6 in", "9 ft"),
    ],
    logs: [{ ...pine, name: "log", count: 2, length: "10 ft 6 in", smallDiameter: "15 in" }],
  },
  "more pieces than the log holds": {
    pieces: [
      piece("sleepers", 4, "6 x 6 in", "7 ft 6 in", { surface: "rough" }),
      piece("rails", 10, "2 x 4 in", "7 ft 6 in"),
      piece("slats", 6, "1 x 4 in", "7 ft 6 in"),
    ],
    logs: [{ ...pine, name: "log", length: "16 ft", smallDiameter: "13 in" }],
  },
  "one stick to share": {
    pieces: [
      piece("long", 1, "2 x 6 in", "9 ft"),
      piece("short", 1, "2 x 6 in", "5 ft"),
      piece("post", 1, "4 x 4 in", "6 ft"),
    ],
    logs: [{ ...pine, name: "log", length: "12 ft", smallDiameter: "9 in" }],
  },
};

describe("the best mix of a small job", () => {
  const cases = Object.keys(JOBS).flatMap((job) => ["$2/h", "$18/h"].map((worth) => [job, worth] as const));
  const equal: boolean[] = [];

  it.each(cases)(
    "(%s) is no dearer than any way there is at %s, nor cheaper than is proven possible",
    (job, valueOfHour) => {
      const { pieces, logs } = JOBS[job] as (typeof JOBS)[string];
      const body = {
        structure: { kind: "pieces", pieces },
        logs,
        catalog: { demo: "orchard-yard" },
        labor: { valueOfHour },
      };
      const made = estimated(body, service);
      const least = Math.min(
        ...everySet(
          body,
          pieces.map(({ name }) => name),
        ).map(({ total }) => total),
      );
      const total = made.routes.mix.total.value.toNumber();
      expect(total).toBeLessThanOrEqual(least + 0.005);
      expect(total).toBeGreaterThanOrEqual(made.searched?.bound?.least.toNumber() ?? Number.POSITIVE_INFINITY);
      // It is cheaper only where it saws some pieces of a group and buys the rest by choice.
      const { plan } = made.routes.mix;
      const splits = plan.bought.some(({ substitution }) => plan.sawn.has(substitution.group.name));
      if (!splits) expect(total).toBeGreaterThan(least * 0.995);
      equal.push(Math.abs(total - least) <= 0.005);
    },
  );

  it("is the cheapest of them in most cases, to the cent", () => {
    expect(equal.length).toBe(cases.length);
    expect(equal.filter(Boolean).length).toBeGreaterThan(cases.length / 2);
  });
});

describe("the best mix of a small job within limits", () => {
  const bodyOf = ({ pieces, logs }: (typeof JOBS)[string], options: object) => ({
    structure: { kind: "pieces", pieces },
    logs,
    catalog: { demo: "orchard-yard" },
    labor: { valueOfHour: "$9/h" },
    options,
  });
  const at = (values: readonly number[], share: number): number =>
    values.toSorted((a, b) => a - b)[Math.floor((values.length - 1) * share)] as number;
  const up = (value: number): string => (Math.ceil(value * 100) / 100).toFixed(2);

  it.each(Object.entries(JOBS))(
    "(%s) keeps them where any set of groups does, and is no dearer than the best of those that do",
    (_, job) => {
      const sets = everySet(
        bodyOf(job, {}),
        job.pieces.map(({ name }) => name),
      );
      const [cash, hours] = [sets.map((one) => one.cash), sets.map((one) => one.hours)];
      let bound = 0;
      for (const [most, long] of [
        [at(cash, 0), undefined],
        [at(cash, 0.4), undefined],
        [undefined, at(hours, 0)],
        [undefined, at(hours, 0.3)],
        [undefined, at(hours, 0.7)],
        [at(cash, 0.7), at(hours, 0.7)],
      ] as const) {
        const limits = {
          ...(most === undefined ? {} : { mostCash: `$${up(most)}` }),
          ...(long === undefined ? {} : { mostHours: `${up(long)} h` }),
        };
        const { mix } = estimated(bodyOf(job, limits), service).routes;
        const [mostCash, mostHours] = [most ?? Number.POSITIVE_INFINITY, long ?? Number.POSITIVE_INFINITY].map(
          (one) => one + 0.01,
        ) as [number, number];
        const keeping = sets.filter((one) => one.cash <= mostCash && one.hours <= mostHours);
        if (keeping.length === 0) continue;
        bound += keeping.length < sets.length ? 1 : 0;
        expect(mix.cash.value.toNumber()).toBeLessThanOrEqual(mostCash);
        expect(mix.hours.value.toNumber()).toBeLessThanOrEqual(mostHours);
        expect(mix.total.value.toNumber()).toBeLessThanOrEqual(Math.min(...keeping.map(({ total }) => total)) + 0.005);
      }
      expect(bound).toBeGreaterThan(3);
    },
  );

  it("says of a limit that nothing keeps what can be had, how much more that is, and that this mix comes nearest", () => {
    const job = JOBS["one stick to share"] as (typeof JOBS)[string];
    const told = (limit: string) => {
      const made = estimated(bodyOf(job, { mostCash: `$${limit}` }), service);
      return { least: made.routes.mix.cash.value, said: made.verdict.reasons[0] };
    };
    const { least, said } = told("5.00");
    expect(said).toBe(
      `It does not keep within your limit of $5.00: no mix found does. Of the mixes tried this one comes nearest, at $${least.toFixed(2)}, $${least.minus(5).toFixed(2)} more.`,
    );
    const below = least.minus(1);
    const share = least.dividedBy(below).minus(1).times(100).toDecimalPlaces(1, 0).toFixed();
    expect(told(below.toFixed(2)).said).toContain(`at $${least.toFixed(2)}, $1.00 (${share} %) more.`);
  });
});
