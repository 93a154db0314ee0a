/** What is printed beside an amount, multiplied as a person would: in whole numbers, the point put back at the end. */
import { describe, expect, it } from "vitest";
import { terminalPage } from "../../../../src/api/render/terminal.js";
import { DEMOS, estimated as made } from "../../../helpers/estimating.js";
import { type Answer, type Asking, demo, estimated, post } from "../../helpers/posting.js";

type Line = Answer["purchasing"]["shared"][number]["lines"][number];

const linesOf = ({ purchasing: { shared, routes } }: Answer): Line[] =>
  [...shared, ...routes.flatMap(({ departments }) => departments)].flatMap(({ lines }) => lines);

/** Digits without the point, and how many stood behind it. */
function wholeOf(text: string): readonly [bigint, number] {
  const [whole = "", part = ""] = text.split(".");
  return [BigInt(whole + part), part.length];
}

/** To the cent, half away from zero. */
function multiplied(measure: string, price: string, inPerCent = false): string {
  const [[a, before], [b, behind]] = [wholeOf(measure), wholeOf(price)];
  const places = before + behind + (inPerCent ? 2 : 0);
  const cents = (a * b * 1000n) / 10n ** BigInt(places);
  const digits = String((cents + 5n) / 10n).padStart(3, "0");
  return `${digits.slice(0, -2)}.${digits.slice(-2)}`;
}

/** What is to be multiplied; where nothing is said, quantity and price. */
const factorsOf = ({ product, quantity, price }: Line) =>
  product ?? (price ? { measure: { value: quantity.value, unit: quantity.unit }, price } : undefined);

function productOf(line: Line): string {
  const { measure, price } = factorsOf(line) ?? {};
  return multiplied(measure?.value ?? "0", price?.value ?? "0", measure?.unit === "%");
}

describe.each(DEMOS)("the amounts of %s", (name) => {
  it("are the products that are shown beside them, on every route, at any level of prices", async () => {
    for (const level of ["1", "1.07"]) {
      const body: Asking = demo(name);
      const lines = linesOf(await estimated({ ...body, assumptions: { ...body.assumptions, priceLevel: level } }));
      const single = lines.filter(({ amount, packs }) => amount && !packs);
      expect(single.length).toBeGreaterThan(20);
      expect(single.filter((line) => !factorsOf(line))).toEqual([]);
      expect(single.some(({ product }) => product)).toBe(true);
      expect(single.map((line) => [line.name, productOf(line)])).toEqual(
        single.map((line) => [line.name, line.amount?.value]),
      );
    }
  });

  it("come of what is printed, too", () => {
    const text = terminalPage(made(demo(name))).replaceAll(/\s+/g, " ");
    const told = [
      ...text.matchAll(/([\d.]+)(?: (%))?[^\d%]{0,8} at [$€£]([\d.]+)(?: per \S+)?(?:, \d+ spare)? [$€£]([\d.]+)/g),
    ];
    expect(told.length).toBeGreaterThan(10);
    for (const [, measure = "", share, price = "", amount] of told)
      expect(multiplied(measure, price, share !== undefined)).toBe(amount);
  });
});

it("falls back on the price of one where that is the user's own", async () => {
  const body = demo("ferry-bike-shed");
  const all = linesOf(await estimated(body));
  const sold = all.find(({ price, product }) => price?.unit === "EUR" && product?.price.unit === "EUR/m3") as Line;
  const { cell, value } = sold.price as NonNullable<Line["price"]>;
  const each = `${value.slice(0, -1)}${value.endsWith("1") ? "2" : "1"}`;
  const own = { ...body, overrides: { ...body.overrides, [cell]: `${each} EUR` } };
  const line = linesOf(await estimated(own)).find(({ price }) => price?.cell === cell) as Line;
  expect([line.product, line.quantity.unit, line.price?.value]).toEqual([undefined, "", each]);
  expect(productOf(line)).toBe(line.amount?.value);
});

it("multiplies a stock order's rate by the board foot", async () => {
  const order = {
    pieces: [{ name: "joists", length: "11 ft 10 in", count: 7 }],
    stocks: [{ length: "12 ft" }, { length: "16 ft" }],
    rate: { by: "volume", price: "$2.373/bf", measure: "nominal", section: "2 x 6 in" },
  };
  const { buy } = (await (await post("/v1/stock-plans", order)).json()) as { buy: Line[] };
  // 2 × 6 in × 12 ft is 12 board feet.
  expect(buy.map(({ product }) => product)).toEqual([
    { measure: { value: "84", unit: "bf" }, price: { value: "2.373", unit: "USD/bf" } },
  ]);
  expect(buy.map(productOf)).toEqual(["199.33"]);
});
