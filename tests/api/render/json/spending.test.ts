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
    readonly taxes: readonly { readonly value: string }[];
    readonly logValue: { readonly value: string } | null;
    readonly cash: { readonly value: string };
  }[];
}

interface Department {
  readonly department: string;
  readonly lines: readonly { readonly amount: { readonly value: string } | null }[];
}

/** Money in whole cents: sums of them are exact. */
const cents = (value: string): bigint => BigInt(value.replace(".", ""));
const sum = (values: readonly string[]): bigint => values.reduce((all, value) => all + cents(value), 0n);

async function purchasingOf(request: object): Promise<Purchasing> {
  const response = await post("/v1/estimates", request);
  expect(response.status).toBe(200);
  return ((await response.json()) as { purchasing: Purchasing }).purchasing;
}

describe("where the cash goes", () => {
  it.each(["orchard-shelter", "ferry-bike-shed", "market-stall"])(
    "adds up, department by department, to the lines and to the cash of every way of %s",
    async (name) => {
      const lines = [{ name: "crane", label: "Crane", formula: "2 * 90" }];
      const { routes, shared, own } = await purchasingOf({ ...demo(name), ...(name === "market-stall" && { lines }) });
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

  it("has no amount, and says so, where nothing has a price", async () => {
    const { catalog: _, ...bare } = demo("orchard-shelter") as Record<string, unknown>;
    const { routes } = await purchasingOf({ ...bare, logs: [] });
    for (const { spent } of routes) {
      expect(spent.map(({ amount }) => amount)).toEqual(spent.map(() => null));
      expect(spent.every(({ unpriced }) => unpriced > 0)).toBe(true);
    }
  });
});
