/** What the user pins to the mill: all of it is milled where the logs can hold it; else what lacks is told, and why, and what a pin loses. */
import fc from "fast-check";
import { describe, expect, it, vi } from "vitest";
import { planners } from "../../../src/api/planners.js";
import type { Estimate } from "../../../src/estimate/estimate.js";
import type { Decimal } from "../../../src/estimate/quantity/decimal.js";
import { planSawing } from "../../../src/estimate/salvage/plan-sawing.js";
import { demoBody, estimated } from "../../helpers/estimating.js";

vi.setConfig({ testTimeout: 120_000 });

const service = planners();

/** Rough pieces of a group that the mix buys; all of them where it saws none. */
function lacking({ routes: { mix, mill } }: Estimate, name: string): number {
  const wanted = mill?.plan.sawing?.problem.groups.find((group) => group.name === name)?.count ?? Number.NaN;
  const { sawing, milled } = mix.plan;
  return sawing && milled.has(name) ? (sawing.plan.buy[name] ?? 0) : wanted;
}

/** The same pieces planned with nothing beside them, and much work: what the logs hold of them at the least. */
function lackingAlone({ routes: { mill } }: Estimate, pinned: readonly string[]): Readonly<Record<string, number>> {
  const problem = mill?.plan.sawing?.problem;
  if (!problem) throw new Error("nothing may be milled");
  const groups = problem.groups.filter(({ name }) => pinned.includes(name));
  return planSawing({ ...problem, groups }, { work: 2000, seed: 1 }).plan.buy;
}

const SECTIONS = ["2 x 4 in", "2 x 6 in", "2 x 8 in", "4 x 4 in", "6 x 6 in", "1 x 6 in"];
const LENGTHS = ["4 ft", "6 ft", "7 ft 6 in", "9 ft"];
const group = fc.record({
  role: fc.constant("other"),
  count: fc.integer({ min: 1, max: 7 }),
  section: fc.constantFrom(...SECTIONS),
  length: fc.constantFrom(...LENGTHS),
  surface: fc.constantFrom("rough", "dressed"),
  source: fc.constantFrom("mill", "auto", "mill", "buy"),
});
const log = fc.record({
  species: fc.constant("eastern-white-pine"),
  length: fc.constantFrom("8 ft", "10 ft", "14 ft"),
  smallDiameter: fc.constantFrom("9 in", "14 in", "17 in"),
});

describe("a group that the user pins to the mill", () => {
  it("is milled whole wherever the logs can hold all that is pinned, and as far as they go elsewhere", () => {
    const seen = { whole: 0, short: 0 };
    fc.assert(
      fc.property(
        fc.array(group, { minLength: 2, maxLength: 4 }),
        fc.array(log, { minLength: 1, maxLength: 2 }),
        fc.constantFrom("$1/h", "$20/h", "$90/h"),
        (groups, logs, valueOfHour) => {
          const pieces = groups.map((one, i) => ({ ...one, name: `group-${i}` }));
          const pinned = pieces.flatMap(({ name, source }) => (source === "mill" ? [name] : []));
          if (pinned.length === 0) return;
          const made = estimated(
            {
              structure: { kind: "pieces", pieces },
              logs: logs.map((one, i) => ({ ...one, name: `log-${i}` })),
              catalog: { demo: "orchard-yard" },
              labor: { valueOfHour },
            },
            service,
          );
          const alone = lackingAlone(made, pinned);
          const { reasons } = made.verdict;
          if (Object.keys(alone).length === 0) {
            seen.whole++;
            expect(pinned.map((name) => [name, lacking(made, name)])).toEqual(pinned.map((name) => [name, 0]));
            expect(reasons.filter((one) => one.startsWith("You ask for"))).toEqual([]);
            return;
          }
          seen.short++;
          const total = (of: (name: string) => number) => pinned.reduce((sum, name) => sum + of(name), 0);
          if (pinned.length === 1)
            expect(total((name) => lacking(made, name))).toBeLessThanOrEqual(total((name) => alone[name] ?? 0));
          for (const name of pinned.filter((one) => lacking(made, one) > 0)) {
            const said = reasons.filter((one) => one.startsWith(`You ask for ${name} from the logs`));
            expect(said).toEqual([
              expect.stringMatching(/they give \d of \d, rejects made up for\. (?:Single logs|The|No log)/),
            ]);
          }
        },
      ),
      { seed: 20261127, numRuns: 16 },
    );
    expect(seen.whole).toBeGreaterThan(3);
    expect(seen.short).toBeGreaterThan(2);
  });

  it("keeps all rafters of the orchard shelter at the mill, in the frontier too, and tells what that loses", () => {
    const body = demoBody("orchard-shelter") as { structure: { groups: Record<string, object> } };
    const groups = { ...body.structure.groups, rafters: { ...body.structure.groups.rafters, source: "mill" } };
    const asked = { ...body, structure: { ...body.structure, groups }, options: { frontier: true } };
    const made = estimated(asked, service);
    expect(lacking(made, "rafters")).toBe(0);
    for (const { point } of made.searched?.frontier ?? []) {
      expect(point.plan?.milled.has("rafters")).toBe(true);
      expect(point.plan?.sawing?.plan.buy.rafters ?? 0).toBe(0);
    }
    const free = estimated(body, service);
    const lost = made.routes.mix.total.value.minus(free.routes.mix.total.value);
    expect(lost.gt(0)).toBe(true);
    const said = made.verdict.reasons.find((one) => one.startsWith("What you pin loses"));
    expect(said).toContain(`$${lost.toFixed(2)}, your hours counted`);
    expect(said).toMatch(/Group by group, as far as was tried, it loses: common rafters \$/);
    expect(made.verdict.groups.find(({ name }) => name === "rafters")?.why).toMatch(/asking for it loses \$[\d.]+/);
  });
});

describe("what pins lose under a limit", () => {
  it("counts no way beyond it: of the market stall £45 an hour and little cash leave buying everything out", () => {
    const body = demoBody("market-stall");
    const unpinned = JSON.parse(JSON.stringify(body, (key, value) => (key === "source" ? undefined : value)));
    const within = (asked: Record<string, unknown>) =>
      estimated({ ...asked, labor: { valueOfHour: "£45/h" }, options: { mostCash: "£903.98" } }, service);
    const [pinned, free] = [within(body), within(unpinned)].map(({ routes, verdict }) => ({
      total: routes.mix.total.value,
      reasons: verdict.reasons,
    })) as [{ total: Decimal; reasons: readonly string[] }, { total: Decimal }];
    expect(pinned.total.gt(free.total)).toBe(true);
    const said = pinned.reasons.find((one) => one.startsWith("What you pin loses"));
    expect(said).toContain(`loses £${pinned.total.minus(free.total).toFixed(2)}, your hours counted: left open`);
  });
});

describe("a mix that a hired sawyer mills because so the logs lack least of what is pinned", () => {
  it("is said to be dearer than one's own milling, by how much, and for which pieces", () => {
    const piece = (name: string, count: number, section: string, length: string) => ({
      ...{ name, count, section, length, role: "other", source: "mill" },
    });
    const { routes, verdict } = estimated(
      {
        structure: {
          kind: "pieces",
          pieces: [
            piece("shelves", 3, "1 x 6 in", "5 ft"),
            piece("rails", 2, "2 x 4 in", "7 ft 6 in"),
            piece("slats", 6, "1 x 6 in", "5 ft"),
          ],
        },
        logs: [{ name: "log", species: "eastern-white-pine", length: "10 ft 6 in", smallDiameter: "12 in" }],
        catalog: { demo: "orchard-yard" },
        labor: { valueOfHour: "$1/h" },
        shop: { sawyer: { charge: "board-foot", minimum: "$300" } },
        options: { finish: "none" },
      },
      service,
    );
    const { mix, mill } = routes;
    expect(mix.plan.hired).toBe(true);
    const less = mix.total.value.minus(mill?.total.value ?? 0);
    expect(less.gt(100)).toBe(true);
    const said = verdict.reasons.filter((one) => one.includes("less than this mix"));
    expect(said).toEqual([
      `Milled wherever the logs serve, it comes to $${less.toFixed(2)} less than this mix, your hours counted, but the logs then give fewer of what you ask for from them, which goes first: slats (1).`,
    ]);
  });
});

describe("a group that the user pins to the yard", () => {
  it("is told what milling it would save", () => {
    const body = demoBody("orchard-shelter") as { structure: { groups: Record<string, object> } };
    const groups = { ...body.structure.groups, beams: { ...body.structure.groups.beams, source: "buy" } };
    const made = estimated({ ...body, structure: { ...body.structure, groups } });
    const loses = made.verdict.reasons.find((one) => one.startsWith("What you pin loses"));
    expect(loses).toMatch(/plate beams.* \$\d/);
  });
});

describe("what the user's pins lose", () => {
  /** Amounts of the sentence: of all pins, then of each. */
  function losses(made: Estimate): { readonly all: number; readonly each: readonly number[] } | undefined {
    const said = made.verdict.reasons.find((one) => one.startsWith("What you pin loses"));
    const [, all, parts = ""] =
      said?.match(/loses [$£]([\d.]+), .*?(?:Group by group, as far as was tried, it loses: (.*)\.)?$/) ?? [];
    return all === undefined
      ? undefined
      : { all: Number(all), each: [...parts.matchAll(/[$£]([\d.]+)/g)].map(([, n]) => Number(n)) };
  }

  const pinnedTo = (demo: string, pins: Readonly<Record<string, string>>): Estimate => {
    const body = demoBody(demo) as { structure: { groups?: Record<string, object>; pieces?: { name: string }[] } };
    const { groups, pieces } = body.structure;
    const named = (name: string) => (pins[name] ? { source: pins[name] } : {});
    const changed = pieces
      ? { pieces: pieces.map((one) => ({ ...one, ...named(one.name) })) }
      : {
          groups: {
            ...groups,
            ...Object.fromEntries(Object.keys(pins).map((name) => [name, { ...groups?.[name], ...named(name) }])),
          },
        };
    return estimated({ ...body, structure: { ...body.structure, ...changed } }, service);
  };

  it.each([
    ["market-stall", {}],
    ["market-stall", { "roof-boards": "buy" }],
    ["market-stall", { "long-rails": "mill" }],
    ["orchard-shelter", { beams: "buy" }],
    ["orchard-shelter", { rafters: "mill", beams: "buy" }],
  ])("is for none of them more than for all of them together: %s with %o", (demo, pins) => {
    const told = losses(pinnedTo(demo, pins));
    expect(told?.each.length).toBeGreaterThan(0);
    for (const one of told?.each ?? []) expect(one).toBeLessThanOrEqual(told?.all ?? 0);
  });

  it("is nothing where the mix that keeps the only pin is cheaper than what was found without it", () => {
    expect(losses(pinnedTo("market-stall", { "sign-board": "mill" }))).toBeUndefined();
  });

  it("counts the ways that stand beside the mix, which need not keep them", () => {
    const piece = { role: "board", section: "1 x 8 in", joint: "none", structural: false };
    const { routes, verdict } = estimated(
      {
        structure: {
          kind: "pieces",
          pieces: [
            { ...piece, name: "long", count: 8, length: "7 ft 2 in", source: "buy" },
            {
              ...piece,
              name: "rails",
              count: 2,
              section: "4 x 6 in",
              role: "purlin",
              length: "6 ft 2 in",
              source: "mill",
            },
            { ...piece, name: "short", count: 4, length: "6 ft 6 in", source: "mill" },
            { ...piece, name: "posts", count: 5, section: "4 x 4 in", role: "other", length: "5 ft", source: "mill" },
          ],
        },
        logs: [{ name: "log", species: "eastern-white-pine", length: "10 ft 6 in", smallDiameter: "14 in" }],
        catalog: { demo: "orchard-yard" },
        shop: { sawyer: { charge: "board-foot", minimum: "$300" } },
        labor: { valueOfHour: "0 USD/person-h" },
        options: { finish: "none" },
      },
      service,
    );
    const ends = [routes.buy, routes.mill].flatMap((route) => (route ? [route.total.value.toNumber()] : []));
    const told = Object.values(verdict).flat().join(" ");
    const open = /left open, the best mix found comes to \$(\d+\.\d\d)/.exec(told)?.[1];
    expect(Math.min(...ends)).toBeLessThan(routes.mix.total.value.toNumber());
    expect(Number(open)).toBeLessThanOrEqual(Math.min(...ends) + 0.005);
  });

  it("is told for one of two pins nearly as what the request without it comes to", () => {
    const gable = (groups: object) =>
      estimated(
        {
          structure: { kind: "gable", span: "12 ft", length: "16 ft", groups },
          logs: [
            { name: "pine", species: "eastern-white-pine", length: "12 ft 6 in", smallDiameter: "14 in", count: 5 },
          ],
          catalog: { demo: "orchard-yard" },
        },
        service,
      );
    const total = ({ routes: { mix } }: Estimate) => mix.total.value.toNumber();
    const [posts, fascia] = [{ posts: { source: "mill" } }, { "eave-fascia": { source: "buy" } }];
    const made = gable({ ...posts, ...fascia });
    const loses = total(made) - total(gable(fascia));
    expect(loses).toBeGreaterThan(300);
    const [told = 0] = losses(made)?.each ?? [];
    expect(told / loses).toBeGreaterThan(0.9);
    expect(told / loses).toBeLessThan(1.1);
  });

  it("of the only pin to the mill is what all pins lose", () => {
    const told = losses(pinnedTo("orchard-shelter", { rafters: "mill" }));
    expect(told?.each).toEqual([told?.all]);
  });
});
