import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { z } from "zod";
import type { StockOrderSchema } from "../../src/api/render/json/stock-order.js";
import { cellsOf, post, refused } from "./helpers/posting.js";

type Plan = z.output<typeof StockOrderSchema>;

async function planned(body: unknown, query = ""): Promise<Plan> {
  const response = await post(`/v1/stock-plans${query}`, body);
  const json: unknown = await response.json();
  if (response.status !== 200) throw new Error(JSON.stringify(json));
  return json as Plan;
}

const bought = ({ buy }: Plan) => Object.fromEntries(buy.map(({ stock, quantity }) => [stock, Number(quantity.value)]));

describe("an order without any price", () => {
  it("has no total and no cost, rather than nothing to pay", async () => {
    const answer = await planned({
      pieces: [{ name: "rail", count: 4, length: "5 ft" }],
      stocks: [{ length: "10 ft" }],
    });
    expect([answer.total, answer.plan.cost, answer.unpriced]).toEqual([null, null, 1]);
  });
});

describe("an order of which sticks take nothing, or not all", () => {
  const stocks = [{ length: "8 ft", price: "$5.00" }];

  it("has no total and proves nothing where nothing fits", async () => {
    const answer = await planned({ pieces: [{ name: "rail", count: 4, length: "9 ft" }], stocks });
    const { total, plan, notes, short } = answer;
    expect([total, plan.cost, plan.bound, plan.gap, plan.proven]).toEqual([null, null, null, null, false]);
    expect(notes.join(" ")).toContain("No stick takes any of the pieces");
    expect(short).toMatchObject([{ piece: "rail", count: 4 }]);
  });

  it("says that the total leaves out what is not cut", async () => {
    const pieces = [
      { name: "rail", count: 4, length: "9 ft" },
      { name: "post", count: 1, length: "7 ft" },
    ];
    const { total, notes } = await planned({ pieces, stocks });
    expect(total?.value).toBe("5.00");
    expect(notes.join(" ")).toContain("without the 4 pieces that are left out");
  });

  it("costs nothing where all of it comes from what is at hand", async () => {
    const pieces = [{ name: "post", count: 1, length: "7 ft" }];
    const { total, plan } = await planned({ pieces, stocks, leftovers: [{ length: "8 ft", count: 1 }] });
    expect([total?.value, plan.proven]).toEqual(["0.00", true]);
  });
});

describe("prices of another money than dollars", () => {
  const order = (price: string, more: object = {}) => ({
    pieces: [{ name: "a", count: 2, length: "2 m" }],
    stocks: [{ length: "3 m", price }],
    ...more,
  });

  it("say by themselves what they are in", async () => {
    const { total } = await planned(order("€12"));
    expect([total?.value, total?.unit]).toEqual(["24.00", "EUR"]);
    const named = await planned(order("12 GBP"));
    expect(named.total?.unit).toBe("GBP");
  });

  it("are refused beside a currency that says otherwise, and where they differ", async () => {
    expect((await refused(order("€12", { currency: "GBP" }), "/v1/stock-plans")).status).toBe(422);
    const mixed = {
      ...order("€12"),
      stocks: [
        { length: "3 m", price: "€12" },
        { length: "4 m", price: "£14" },
      ],
    };
    expect((await refused(mixed, "/v1/stock-plans")).status).toBe(422);
  });
});

describe("a stock plan", () => {
  it("buys and cuts what a builder would: two 8 ft from a 16 ft where the saw takes nothing", async () => {
    // 8 + 8 fills 16 ft; four 16 ft at 13.92 are 55.68, eight 8 ft at 7.20 would be 57.60.
    const order = {
      pieces: [{ name: "joists", length: "8 ft", count: 8 }],
      stocks: [
        { length: "8 ft", price: "$7.20" },
        { length: "16 ft", price: "$13.92" },
      ],
    };
    const free = await planned({ ...order, kerf: "0 in" });
    expect([bought(free), free.total?.value, free.plan.proven]).toEqual([{ "16'": 4 }, "55.68", true]);
    // With a kerf two do not come out of 16 ft.
    const sawn = await planned({ ...order, kerf: "1/8 in" });
    expect([bought(sawn), sawn.total?.value]).toEqual([{ "8'": 8 }, "57.60"]);
  });

  it("takes leftovers first, then what is cheapest within what can be had", async () => {
    const answer = await planned({
      pieces: [{ name: "rails", length: "5 ft", count: 5 }],
      stocks: [
        { length: "6 ft", price: "$4.00", available: 2 },
        { length: "8 ft", price: "$9.00" },
      ],
      leftovers: [{ length: "5 ft 2 in", count: 2 }],
    });
    expect(bought(answer)).toEqual({ "6'": 2, "8'": 1 });
    expect(answer.boards.find(({ atHand }) => atHand)?.times).toBe(2);
    expect(answer.total?.value).toBe("17.00");
  });

  it("is charged by board foot, nominal or actual, and buys whole bundles", async () => {
    // 2 × 6 nominal, 12 ft: 12 bf at 2.40 is 28.80; actual 1 1/2 × 5 1/2: 8.25 bf, 19.80.
    const order = (section: string, measure: string) => ({
      pieces: [{ name: "rafters", length: "11 ft", count: 5 }],
      stocks: [{ length: "12 ft" }],
      rate: { by: "volume", price: "$2.40/bf", section, measure },
      bundle: 4,
    });
    const nominal = await planned(order("2 x 6 in", "nominal"));
    expect([nominal.buy[0]?.price?.value, nominal.buy[0]?.quantity.value, nominal.total?.value]).toEqual([
      "28.80",
      "8",
      "230.40",
    ]);
    expect((await planned(order("1 1/2 x 5 1/2 in", "actual"))).total?.value).toBe("158.40");
  });

  it("shows the price of a stick by volume as money is, and reckons with all of its digits", async () => {
    // 2 × 3 in, 8 ft 4 in, are 4 1/6 bf: 8.33 at 2.00 a board foot, and three of them 25.00.
    const answer = await planned(
      {
        pieces: [{ name: "rails", length: "7 ft", count: 3 }],
        stocks: [{ length: "100 in" }],
        rate: { by: "volume", price: "$2.00/bf", section: "2 x 3 in", measure: "nominal" },
      },
      "?include=workings",
    );
    expect([answer.buy[0]?.price?.value, answer.total?.value]).toEqual(["8.33", "25.00"]);
    const { working, source } = cellsOf(answer).get(answer.buy[0]?.price?.cell ?? "") ?? {};
    expect([working, source]).toEqual([
      "2 USD/bf × 2 in × 3 in × 100 in ÷ 144 in3 per bf = 8.33 USD",
      "order, /stocks/0",
    ]);
  });

  it("buys more than it needs where a bulk price makes that cheaper, at prices of its own and by rate", async () => {
    // By hand: nine at 5.00 are 45.00, ten at 4.00 are 40.00.
    const pieces = [{ name: "rails", length: "7 ft", count: 9 }];
    const own = await planned({
      pieces,
      stocks: [{ length: "8 ft", price: "$5.00", bulk: [{ from: 10, price: "$4.00" }] }],
    });
    expect([bought(own), own.total?.value, own.plan.cost?.value, own.plan.proven]).toEqual([
      { "8'": 10 },
      "40.00",
      "40.00",
      true,
    ]);
    // 8 ft at 0.50 are 4.00; from ten on 0.40: 3.20. Nine cost 36.00, ten 32.00; eight 32.00 as well, and are fewer.
    const rate = { by: "length", price: "$0.50/ft", bulk: [{ from: 10, price: "$0.40/ft" }] };
    const byRate = (count: number) =>
      planned({ pieces: [{ name: "rails", length: "7 ft", count }], stocks: [{ length: "8 ft" }], rate });
    expect(bought(await byRate(9))).toEqual({ "8'": 10 });
    expect(bought(await byRate(8))).toEqual({ "8'": 8 });
  });

  it("finds spares in what a bundle leaves over, and does not say that they lack", async () => {
    const { buy, notes, total } = await planned({
      pieces: [
        { name: "a", length: "9 ft 6 in", count: 26 },
        { name: "b", length: "7 ft 6 in", count: 10 },
      ],
      stocks: [
        { length: "8 ft", price: "$3.98" },
        { length: "10 ft", price: "$5.28" },
      ],
      bundle: 10,
      defects: "7 %",
    });
    // 3 of 36 are wanted, and 4 of 30 ten-footers lie over: 30 × 5.28 and 10 × 3.98.
    expect(buy.map(({ stock, quantity }) => [stock, quantity.value]).sort()).toEqual([
      ["10'", "30"],
      ["8'", "10"],
    ]);
    expect(total?.value).toBe("198.20");
    expect(notes.join(" ")).not.toMatch(/the yard|no more|lack/);
  });

  it("asks for the price of a stick that would be long enough, not for a longer one", async () => {
    const pieces = [{ name: "rail", length: "9 ft", count: 1 }];
    const { short } = await planned({ pieces, stocks: [{ length: "8 ft", price: "$5.00" }, { length: "10 ft" }] });
    expect(short).toMatchObject([{ why: "too-long", cure: "Give the price of the stick of 10'." }]);
  });

  it("joins a piece over its supports only, and says which part is which", async () => {
    const fascia = { name: "fascia", length: "26 ft 2 in", count: 2 };
    const stocks = [{ length: "16 ft", price: "$20" }];
    const whole = await planned({ pieces: [fascia], stocks });
    expect(whole.short).toMatchObject([{ piece: "fascia", part: null, count: 2, why: "too-long" }]);
    expect(whole.buy).toEqual([]);
    const joined = await planned({ pieces: [{ ...fascia, supports: "24 in" }], stocks });
    const cuts = joined.boards.flatMap(({ cuts, times }) => Array.from({ length: times }, () => cuts).flat());
    // Rafters every 2 ft: 14 ft and 12 ft 2 in.
    expect(new Set(cuts.map(({ part, length }) => `${part}: ${length}`))).toEqual(
      new Set([`1 of 2: 14'`, `2 of 2: 12' 2"`]),
    );
    expect([cuts.length, joined.short]).toEqual([4, []]);
  });

  it("lays joints where they cost least: 16 and 8 ft of 24 are cheaper than two of 12", async () => {
    const order = {
      pieces: [{ name: "fascia", length: "24 ft", count: 2, supports: "24 in" }],
      stocks: [
        { length: "8 ft", price: "$5.00" },
        { length: "16 ft", price: "$9.00" },
      ],
      endTrim: "0 in",
      kerf: "0 in",
    };
    // By hand: 12 + 12 takes two of 16 ft a piece, $36 in all; 16 + 8 one and a half, $27; 8 + 8 + 8 as many.
    const answer = await planned(order, "?include=plan");
    expect([bought(answer), answer.total?.value]).toEqual([{ "16'": 3 }, "27.00"]);
    expect(answer.plan).toMatchObject({
      proven: true,
      covers: expect.stringContaining("to join them over their supports"),
    });
    expect(answer.notes).toContain("Of fascia 2 are joined: 2 of 16' + 8'.");
    const again = await planned({ ...order, heldPlan: answer.heldPlan });
    expect([bought(again), again.boards]).toEqual([bought(answer), answer.boards]);
    // Where the yard has but one of 16 ft, both go in three: two eights from the sixteen, and four more.
    const few = await planned({ ...order, stocks: [order.stocks[0], { ...order.stocks[1], available: 1 }] });
    expect([few.short, few.total?.value]).toEqual([[], "29.00"]);
  });

  it("lets the last part reach over a space more where it ends short of the support, and lie on what is at hand", async () => {
    const joined = (length: string, supports: string, count: number) => [{ name: "purlin", length, count, supports }];
    const sold = (...lengths: [string, string][]) => lengths.map(([length, price]) => ({ length, price }));
    const trim = { endTrim: "0 in" };
    // By hand: 8 + 8 + 10 takes two of 8 out of 10 ft sticks and one whole: three a piece, twelve in all.
    const tail = await planned({
      ...{ pieces: joined("26 ft", "8 ft", 4), stocks: sold(["10 ft", "$9"], ["12 ft", "$11"]), ...trim },
    });
    expect(tail.total?.value).toBe("108.00");
    const stub = await planned({
      ...{ pieces: joined("16 ft 8 in", "4 ft", 1), stocks: sold(["8 ft 8 in", "$10"]), ...trim },
    });
    expect([stub.short, stub.total?.value]).toEqual([[], "20.00"]);
    // The leftover of 16 ft is longer than anything sold.
    const hand = await planned({
      ...{ pieces: joined("24 ft", "8 ft", 1), stocks: sold(["8 ft", "$10"]), ...trim },
      leftovers: [{ length: "16 ft", count: 1 }],
    });
    expect(hand.total?.value).toBe("10.00");
  });

  it("joins equal pieces unlike, and over more supports than it must, where that costs less", async () => {
    const order = {
      pieces: [
        { name: "purlin", length: "16 ft", count: 2, supports: "32 in" },
        { name: "rail", length: "58 in", count: 3 },
      ],
      stocks: [
        { length: "6 ft", price: "$5.77" },
        { length: "8 ft", price: "$8.11" },
      ],
      kerf: "1/8 in",
      endTrim: "0 in",
    };
    // By hand: four of 8 ft and three of 6 ft come to $49.75; six of 8 ft, three of them a rail and 32 in of the second purlin, to $48.66.
    const answer = await planned(order, "?include=plan");
    expect([bought(answer), answer.total?.value, answer.plan.proven]).toEqual([{ "8'": 6 }, "48.66", true]);
    expect(answer.notes).toContain(`Of purlin 2 are joined: 8' + 8', 8' + 2' 8" + 2' 8" + 2' 8".`);
    const again = await planned({ ...order, heldPlan: answer.heldPlan });
    expect([bought(again), again.boards]).toEqual([bought(answer), answer.boards]);
    // What the purlins need of 6 ft sticks by length alone is less: where there are too many ways, the bound is no more than that.
    const close = { ...order, pieces: [{ ...order.pieces[0], length: "52 ft", supports: "12 in" }, order.pieces[1]] };
    const many = await planned({ ...close, stocks: [...order.stocks, { length: "24 ft", price: "$30" }] });
    expect(many.notes.join(" ")).toMatch(/\d+ ways to lay the joints were weighed/);
    expect(Number(many.plan.bound?.value)).toBeLessThan(Number(many.total?.value));
    expect(many.plan.proven).toBe(false);
  });

  it("never pays more for joints than evenly laid ones cost, and leaves no piece out that those would not", async () => {
    const order = fc.record({
      feet: fc.integer({ min: 17, max: 44 }),
      apart: fc.constantFrom(16, 24, 36),
      count: fc.integer({ min: 1, max: 4 }),
      short: fc.integer({ min: 20, max: 110 }),
      prices: fc.tuple(
        fc.integer({ min: 300, max: 700 }),
        fc.integer({ min: 500, max: 900 }),
        fc.integer({ min: 800, max: 1600 }),
      ),
    });
    await fc.assert(
      fc.asyncProperty(order, async ({ feet, apart, count, short, prices }) => {
        const lengths = ["8 ft", "10 ft", "16 ft"];
        const stocks = lengths.map((length, i) => ({ length, price: `$${((prices[i] ?? 0) / 100).toFixed(2)}` }));
        const rails = { name: "rails", length: `${short} in`, count: 3 };
        const long = feet * 12;
        const joined = await planned({
          pieces: [{ name: "run", length: `${long} in`, count, supports: `${apart} in` }, rails],
          stocks,
          endTrim: "0 in",
        });
        expect(joined.short).toEqual([]);
        // As evenly as can be, in as few parts as can be, by hand: each part a piece of its own.
        const reach = Math.floor(192 / apart);
        const spaces = Math.ceil(long / apart);
        const parts = Math.ceil(spaces / reach);
        const ends = Array.from({ length: parts }, (_, i) =>
          Math.min(long, Math.ceil((spaces * (i + 1)) / parts) * apart),
        );
        const pieces = ends.map((end, i) => ({ name: `part-${i}`, length: `${end - (ends[i - 1] ?? 0)} in`, count }));
        const even = await planned({ pieces: [...pieces, rails], stocks, endTrim: "0 in" });
        if (even.short.length === 0) expect(Number(joined.total?.value)).toBeLessThanOrEqual(Number(even.total?.value));
        // Every joint lies on a support.
        const run = joined.boards.flatMap(({ cuts }) => cuts.filter(({ piece }) => piece === "run"));
        expect(new Set(run.map(({ part }) => part)).size).toBeGreaterThanOrEqual(parts);
      }),
      { numRuns: 6 },
    );
  });

  it("leaves a piece whole where a stick at hand takes it and that costs less, and joins the others", async () => {
    const order = {
      pieces: [{ name: "fascia", length: "20 ft", count: 3, supports: "24 in" }],
      stocks: [
        { length: "8 ft", price: "$6.00" },
        { length: "12 ft", price: "$10.00" },
      ],
      leftovers: [{ length: "20 ft 2 in", count: 2 }],
      kerf: "0 in",
      endTrim: "0 in",
    };
    // By hand: two whole from what lies at hand, the third 12 + 8; all three joined take three of each, or the long ones for some.
    const answer = await planned(order, "?include=plan");
    expect([bought(answer), answer.total?.value, answer.short]).toEqual([{ "8'": 1, "12'": 1 }, "16.00", []]);
    const whole = answer.boards.flatMap(({ cuts, times }) => cuts.filter(({ part }) => part === null).map(() => times));
    expect(whole.reduce((sum, times) => sum + times, 0)).toBe(2);
    const again = await planned({ ...order, heldPlan: answer.heldPlan });
    expect([bought(again), again.boards]).toEqual([bought(answer), answer.boards]);
    // A long stick of which the yard has but one is left whole just so; the other two are 40 ft, five times 8.
    const few = await planned({
      ...order,
      leftovers: [],
      stocks: [...order.stocks, { length: "20 ft", price: "$11.00", available: 1 }],
    });
    expect([bought(few), few.total?.value, few.short]).toEqual([{ "8'": 5, "20'": 1 }, "41.00", []]);
  });

  it("joins nothing that sticks take whole, however cheap it would be, unless the yard has too few of them", async () => {
    const order = (available: number) => ({
      pieces: [{ name: "fascia", length: "16 ft", count: 3, supports: "24 in" }],
      stocks: [
        { length: "8 ft", price: "$2.00" },
        { length: "16 ft", price: "$20.00", available },
      ],
      kerf: "0 in",
      endTrim: "0 in",
    });
    for (const available of [3, 50]) {
      const plenty = await planned(order(available));
      expect([bought(plenty), plenty.plan.proven, plenty.plan.bound?.value]).toEqual([{ "16'": 3 }, true, "60.00"]);
      expect([plenty.plan.covers, plenty.notes.join(" ")]).not.toContain("joint");
    }
    const few = await planned(order(2));
    expect([bought(few), few.short]).toEqual([{ "8'": 2, "16'": 2 }, []]);
    expect(few.notes.join(" ")).toContain("Of fascia 1 is joined for want of sticks that take them whole: 8' + 8'.");
    // A rail that may not be joined has the long stick; both fasciae make way.
    const beside = await planned({
      ...order(2),
      pieces: [...order(2).pieces, { name: "rail", length: "15 ft", count: 1 }],
    });
    expect([bought(beside), beside.short]).toEqual([{ "8'": 4, "16'": 2 }, []]);
  });

  it("cuts no part of a joined piece without the others where sticks run short, and says so", async () => {
    const fascia = { name: "fascia", length: "24 ft", count: 2, supports: "24 in" };
    const stocks = [{ length: "12 ft", price: "$10.00", available: 3 }];
    const answer = await planned({ pieces: [fascia], stocks, kerf: "0 in", endTrim: "0 in" }, "?include=plan");
    // Three sticks make one and a half: one is cut, of two sticks.
    expect([bought(answer), answer.short]).toMatchObject([
      { "12'": 2 },
      [{ piece: "fascia", part: null, count: 1, why: "stock-lacks" }],
    ]);
    expect(answer.notes.join(" ")).toContain("Of fascia 1 is left out whole");
    const again = await planned({ pieces: [fascia], stocks, kerf: "0 in", endTrim: "0 in", heldPlan: answer.heldPlan });
    expect([bought(again), again.short, again.boards]).toEqual([bought(answer), answer.short, answer.boards]);
  });

  it("has every joined piece whole or short, whatever the yard has", async () => {
    const row = fc.record({
      feet: fc.integer({ min: 9, max: 30 }),
      apart: fc.constantFrom(24, 36),
      count: fc.integer({ min: 1, max: 4 }),
    });
    const few = fc.tuple(
      fc.integer({ min: 0, max: 4 }),
      fc.integer({ min: 0, max: 4 }),
      fc.integer({ min: 0, max: 2 }),
    );
    let left = 0;
    await fc.assert(
      fc.asyncProperty(fc.array(row, { minLength: 1, maxLength: 2 }), few, async (rows, [a, b, c]) => {
        const pieces = rows.map(({ feet, apart, count }, i) => ({
          ...{ name: `run-${i}`, length: `${feet} ft`, supports: `${apart} in`, count },
        }));
        const answer = await planned({
          pieces,
          stocks: [
            { length: "8 ft", price: "$5.00", available: a },
            { length: "14 ft", price: "$9.00", available: b },
          ],
          leftovers: [{ length: "22 ft", count: c + 1 }],
        });
        for (const { name, count } of pieces) {
          const cut = new Map<string, number>();
          for (const { cuts, times } of answer.boards)
            for (const { piece, part } of cuts)
              if (piece === name) cut.set(part ?? "whole", (cut.get(part ?? "whole") ?? 0) + times);
          const short = answer.short.filter(({ piece }) => piece === name);
          expect(short.every(({ part }) => part === null)).toBe(true);
          const lacking = short.reduce((sum, one) => sum + one.count, 0);
          left += lacking;
          const whole = cut.get("whole") ?? 0;
          cut.delete("whole");
          // Of those joined in so many parts, each part as often as the others.
          let joined = 0;
          for (const parts of new Set([...cut.keys()].map((part) => Number(/of (\d+)/.exec(part)?.[1])))) {
            const times = [...cut].filter(([part]) => part.endsWith(`of ${parts}`)).map(([, each]) => each);
            expect([times.length, new Set(times).size]).toEqual([parts, 1]);
            joined += times[0] ?? 0;
          }
          expect(whole + joined + lacking).toBe(count);
        }
      }),
      { seed: 20261127, numRuns: 10 },
    );
    expect(left).toBeGreaterThan(3);
  });

  it("sets sticks aside for defects, and adds up to the cent", async () => {
    const answer = await planned({
      pieces: [{ name: "slats", length: "1.95 m", count: 31 }],
      stocks: [{ length: "2 m", price: "3.335 EUR" }],
      defects: "10 %",
      currency: "EUR",
    });
    // A tenth of 31 is 3.1, so four to spare; 35 × 3.335 = 116.725, half a cent up.
    expect([answer.buy[0]?.planned.value, answer.buy[0]?.quantity.value, answer.total?.value]).toEqual([
      "31",
      "35",
      "116.73",
    ]);
    expect([answer.plan.proven, answer.plan.bound?.value]).toEqual([true, "103.38"]);
  });

  it("says where the yard has too few for what is cut or spared, and does not call that too long", async () => {
    const pieces = [{ name: "rails", length: "7 ft", count: 5 }];
    const stocks = [{ length: "8 ft", price: "$5", available: 6 }];
    const few = await planned({ pieces, stocks, defects: "90 %" });
    expect(few.total?.value).toBe("30.00");
    expect(few.notes.join(" ")).toContain("Of 5 spare sticks for defects only 1 can be had");
    const bundled = await planned({ pieces, stocks, bundle: 50 });
    expect(bundled.short).toMatchObject([{ piece: "rails", count: 5, why: "stock-lacks" }]);
  });

  it("without a price plans the least length and counts no zero", async () => {
    const answer = await planned({
      pieces: [{ name: "rails", length: "5 ft", count: 2 }],
      stocks: [{ length: "8 ft" }, { length: "12 ft", price: null }],
    });
    expect(bought(answer)).toEqual({ "12'": 1 });
    expect([answer.buy[0]?.amount, answer.unpriced, answer.plan.bound, answer.plan.gap]).toEqual([null, 1, null, null]);
  });

  it("keeps joined pieces to a least part and a most of joints, and says what to allow where none is left", async () => {
    const fascia = { name: "fascia", length: "24 ft", count: 2, supports: "24 in" };
    const stocks = [
      { length: "8 ft", price: "$5.00" },
      { length: "12 ft", price: "$8.00" },
    ];
    const order = (limits: object) => ({ pieces: [{ ...fascia, ...limits }], stocks, kerf: "0 in", endTrim: "0 in" });
    // By hand: 8 + 8 + 8 is $15 a piece, 12 + 12 $16.
    expect((await planned(order({}))).total?.value).toBe("30.00");
    expect((await planned(order({ mostJoints: 1 }))).total?.value).toBe("32.00");
    expect((await planned(order({ leastPart: "9 ft" }))).total?.value).toBe("32.00");
    expect((await planned(order({ leastPart: "8 ft", mostJoints: 2 }))).total?.value).toBe("30.00");
    const none = await planned(order({ leastPart: "13 ft" }));
    expect(none.short).toMatchObject([
      { piece: "fascia", count: 2, why: "too-long", cure: expect.stringContaining("(leastPart)") },
    ]);
    // A plan that was made without the limits does not pass under them.
    const { heldPlan } = await planned(order({}), "?include=plan");
    const held = await refused({ ...order({ mostJoints: 1 }), heldPlan }, "/v1/stock-plans");
    expect(held.faults?.[0]).toMatchObject({ code: "held-plan-misfit", pointer: "/heldPlan" });
  });

  it("refuses a least part or a most of joints where nothing is joined", async () => {
    const pieces = [{ name: "fascia", length: "24 ft", count: 2, leastPart: "8 ft" }];
    const order = { pieces, stocks: [{ length: "12 ft", price: "$8.00" }] };
    expect((await refused(order, "/v1/stock-plans")).faults).toMatchObject([
      {
        code: "missing-field",
        pointer: "/pieces/0/supports",
        cure: expect.stringMatching(/supports, or leave out leastPart/),
      },
    ]);
  });

  it("comes back as it was from its own held plan", async () => {
    const order = {
      pieces: [
        { name: "a", length: "7 ft", count: 9 },
        { name: "b", length: "30 ft", count: 1, supports: "10 ft" },
      ],
      stocks: [
        { length: "14 ft 3 in", price: "$11" },
        { length: "20 ft", price: "$17" },
      ],
    };
    const first = await planned(order, "?include=plan");
    const again = await planned({ ...order, heldPlan: first.heldPlan });
    expect([again.buy, again.total, again.boards]).toEqual([first.buy, first.total, first.boards]);
    expect((await refused({ ...order, heldPlan: [] }, "/v1/stock-plans")).faults?.[0]).toMatchObject({
      code: "held-plan-misfit",
      pointer: "/heldPlan",
    });
  });

  it("tells what does not fit of a held plan as a tape shows it", async () => {
    const held = (measure: string) => ({
      pieces: [{ name: "a", length: measure === "metric" ? "2 m" : "7 ft", count: 3 }],
      stocks: [{ length: measure === "metric" ? "4 m" : "14 ft", price: "$11" }],
      kerf: "1/8 in",
      endTrim: "1 in",
      heldPlan: [{ stock: measure === "metric" ? "4000 mm" : "14'", pieces: ["a", "a"], times: 1 }],
    });
    const wrong = async (measure: string) => (await refused(held(measure), "/v1/stock-plans")).faults[0]?.wrong;
    expect(await wrong("inch-pound")).toBe(`Row 1: the pieces and their kerfs take 14' 0 1/8", and "14'" has 13' 11".`);
    expect(await wrong("metric")).toBe('Row 1: the pieces and their kerfs take 4004 mm, and "4000 mm" has 3974 mm.');
  });

  it("draws each stick on request, with words for who cannot see it", async () => {
    const { boards } = await planned(
      { pieces: [{ name: "rails", length: "5 ft", count: 1 }], stocks: [{ length: "8 ft", price: "$5" }] },
      "?include=drawings",
    );
    expect(boards[0]?.drawing).toContain(`aria-label="1 × 8', rails 5'"`);
  });

  it.each([
    [{ pieces: [{ name: "a", length: "5 ft", count: 1 }], stocks: [] }, "out-of-range", "/stocks"],
    [
      { pieces: [1, 2].map(() => ({ name: "a", length: "5 ft", count: 1 })), stocks: [{ length: "8 ft" }] },
      "duplicate-name",
      "/pieces/1/name",
    ],
    [
      { pieces: [{ name: "a", length: "5 ft", count: 1 }], stocks: [{ length: "8 ft" }, { length: "96 in" }] },
      "duplicate-name",
      "/stocks/1/length",
    ],
    [
      { pieces: ["a", "b"].map((name) => ({ name, length: "5 ft", count: 1500 })), stocks: [{ length: "8 ft" }] },
      "too-large",
      "/pieces",
    ],
    [
      { pieces: [{ name: "a", length: "5 ft", count: 1 }], stocks: [{ length: "0.001 in" }] },
      "out-of-range",
      "/stocks/0/length",
    ],
    [
      { pieces: [{ name: "a", length: "5 ft", count: 1 }], stocks: [{ length: "8 ft", price: "$99999999999" }] },
      "out-of-range",
      "/stocks/0/price",
    ],
    [
      { pieces: [{ name: "a", length: "5", count: 1 }], stocks: [{ length: "8 ft" }] },
      "not-a-quantity",
      "/pieces/0/length",
    ],
  ])("is refused where it makes no sense: %#", async (body, code, at) => {
    expect((await refused(body, "/v1/stock-plans")).faults?.map((fault) => [fault.code, fault.pointer])).toContainEqual(
      [code, at],
    );
  });

  it("adds up for any order: pieces cut and short are those wanted, amounts the total, cost at least the bound", async () => {
    const feet = fc.integer({ min: 8, max: 200 }).map((eighths) => `${eighths} in`);
    const order = fc.record({
      pieces: fc.uniqueArray(
        fc.record({ name: fc.stringMatching(/^[a-e]$/), length: feet, count: fc.integer({ min: 1, max: 9 }) }),
        {
          selector: ({ name }) => name,
          minLength: 1,
          maxLength: 4,
        },
      ),
      stocks: fc.uniqueArray(
        fc.record({
          length: feet,
          price: fc.integer({ min: 100, max: 3000 }).map((cents) => `$${(cents / 100).toFixed(2)}`),
          bulk: fc.constantFrom(
            [{ from: 4, price: "$1.10" }],
            [
              { from: 3, price: "$9" },
              { from: 7, price: "$6" },
            ],
          ),
        }),
        { selector: ({ length }) => length, minLength: 1, maxLength: 4 },
      ),
      defects: fc.constantFrom("0 %", "7 %", "30 %"),
      bundle: fc.integer({ min: 1, max: 3 }),
    });
    await fc.assert(
      fc.asyncProperty(order, async (body) => {
        const answer = await planned(body);
        const cells = cellsOf(answer);
        for (const { name, count } of body.pieces) {
          const cut = answer.boards.reduce(
            (sum, { cuts, times }) => sum + times * cuts.filter(({ piece }) => piece === name).length,
            0,
          );
          const short = answer.short.reduce((sum, one) => (one.piece === name ? sum + one.count : sum), 0);
          expect(cut + short).toBe(count);
        }
        const cents = (text: string | undefined) => Math.round(Number(text) * 100);
        const paid = answer.buy.reduce((sum, { amount }) => sum + cents(amount?.value), 0);
        if (answer.boards.length === 0) expect([answer.total, answer.plan.proven, paid]).toEqual([null, false, 0]);
        else expect(paid).toBe(cents(answer.total?.value));
        if (answer.plan.bound)
          expect(cents(answer.plan.bound.value)).toBeLessThanOrEqual(cents(answer.plan.cost?.value));
        for (const { quantity, planned: least } of answer.buy) {
          expect(Number(quantity.value)).toBeGreaterThanOrEqual(Number(least.value));
          expect(Number(quantity.value) % body.bundle).toBe(0);
          expect(cells.get(quantity.cell)?.value).toBe(quantity.value);
        }
      }),
      { numRuns: 60 },
    );
  });
});
