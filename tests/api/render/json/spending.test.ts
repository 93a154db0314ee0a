import { describe, expect, it } from "vitest";
import { demo, post } from "../../helpers/posting.js";

interface Purchasing {
  readonly own: readonly { readonly value: string }[];
  readonly shared: readonly Department[];
  readonly routes: readonly {
    readonly route: string;
    readonly departments: readonly Department[];
    readonly spent: readonly {
      readonly department: string;
      readonly amount: { readonly cell: string; readonly value: string } | null;
      readonly unpriced: number;
    }[];
    readonly stages: readonly {
      readonly stage: string;
      readonly amount: { readonly value: string } | null;
      readonly unpriced: number;
    }[];
    readonly ofNoStage: Purchasing["routes"][number]["spent"];
    readonly taxes: readonly { readonly value: string }[];
    readonly logValue: { readonly value: string } | null;
    readonly cash: { readonly value: string };
  }[];
}

interface Department {
  readonly department: string;
  readonly lines: readonly { readonly name: string; readonly amount: { readonly value: string } | null }[];
}

/** Money in whole cents: sums of them are exact. */
const cents = (value: string): bigint => BigInt(value.replace(".", ""));
const sum = (values: readonly string[]): bigint => values.reduce((all, value) => all + cents(value), 0n);

type Route = Purchasing["routes"][number];

interface Answer {
  readonly purchasing: Purchasing;
  readonly effort: { readonly common: Stages; readonly routes: readonly { readonly stages: Stages }[] };
}
type Stages = readonly { readonly stage: string }[];

const answers = new Map<string, Promise<Answer>>();

/** Asked once for all that is checked of it. */
function answerTo(request: object): Promise<Answer> {
  const key = JSON.stringify(request);
  const answer = answers.get(key) ?? askedFor(request);
  answers.set(key, answer);
  return answer;
}

async function askedFor(request: object): Promise<Answer> {
  const response = await post("/v1/estimates", request);
  expect(response.status).toBe(200);
  return (await response.json()) as Answer;
}

const purchasingOf = async (request: object): Promise<Purchasing> => (await answerTo(request)).purchasing;

describe("where the cash goes", () => {
  it.each(["orchard-shelter", "ferry-bike-shed", "market-stall"])(
    "adds up, department by department, to the lines and to the cash of every way of %s",
    async (name) => {
      const lines = [{ name: "crane", label: "Crane", formula: "2 * £90" }];
      const { routes, shared, own } = await purchasingOf({ ...demo(name), ...(name === "market-stall" && { lines }) });
      expect(own.map(({ value }) => value)).toEqual(name === "market-stall" ? ["180.00"] : []);
      for (const { departments, spent, taxes, logValue, cash } of routes) {
        const amounts = spent.flatMap(({ amount }) => amount?.value ?? []);
        const rest = [...taxes, ...own, ...(logValue ? [logValue] : [])].map(({ value }) => value);
        expect(sum([...amounts, ...rest])).toBe(cents(cash.value));
        for (const { department, amount } of spent) {
          const priced = [...departments, ...shared]
            .filter((one) => one.department === department)
            .flatMap((one) => one.lines.flatMap((line) => line.amount?.value ?? []));
          expect(amount ? cents(amount.value) : 0n).toBe(sum(priced));
        }
      }
    },
  );

  it.each(["orchard-shelter", "ferry-bike-shed", "market-stall"])(
    "comes to the same by the stage that uses things up, and what serves several, on every way of %s",
    async (name) => {
      const { purchasing, effort } = await answerTo(demo(name));
      const stages = [...effort.common, ...effort.routes.flatMap((route) => route.stages)].map(({ stage }) => stage);
      for (const route of purchasing.routes) {
        const valued = (of: readonly { readonly amount: { readonly value: string } | null }[]) =>
          of.flatMap(({ amount }) => amount?.value ?? []);
        const all = [...valued(route.stages), ...valued(route.ofNoStage)];
        expect(sum(all)).toBe(sum(valued(route.spent)));
        for (const { stage } of route.stages) expect(stages).toContain(stage);
      }
    },
  );

  it("puts lumber where it is received, wear where it wears, concrete into the ground, and trim along the edges", async () => {
    const { purchasing } = await answerTo(demo("orchard-shelter"));
    const { stages, departments, ofNoStage } = purchasing.routes.find(({ route }) => route === "mixed") as Route;
    const lines = [...departments, ...purchasing.shared].flatMap((one) => one.lines);
    const of = (...names: readonly RegExp[]) =>
      sum(lines.flatMap(({ name, amount }) => (amount && names.some((one) => one.test(name)) ? [amount.value] : [])));
    const cost = (stage: string) => cents(stages.find((one) => one.stage === stage)?.amount?.value ?? "0.00");
    expect(cost("fetch")).toBe(of(/\.buy\./, /delivery$/));
    expect(cost("saw")).toBe(of(/use\.(fuel|two-stroke-oil|bar-oil|chain)$/, /hire\.chainsaw-mill$/));
    expect(cost("sharpen")).toBe(of(/files$/));
    expect(cost("pour")).toBe(of(/footings\./));
    expect(cost("eaves")).toBeGreaterThanOrEqual(of(/eave-trim$/));
    expect(cost("trim")).toBe(of(/(ridge-cap|rake-trim)$/));
    expect(cost("roof")).toBe(of(/(panel|closure|roof-screw|stitch-screw)$/));
    expect(ofNoStage.map(({ department }) => department)).toEqual(["fasteners", "consumables"]);
  });

  it("has no amount, and says so, where nothing has a price", async () => {
    const { catalog: _, ...bare } = demo("orchard-shelter") as Record<string, unknown>;
    const { routes } = await purchasingOf({ ...bare, logs: [] });
    for (const { spent, stages } of routes) {
      expect(stages.every(({ amount }) => amount === null)).toBe(true);
      expect(spent.map(({ amount }) => amount)).toEqual(spent.map(() => null));
      expect(spent.every(({ unpriced }) => unpriced > 0)).toBe(true);
    }
  });
});
