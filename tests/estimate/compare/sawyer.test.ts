import { describe, expect, it } from "vitest";
import type { MixPoint } from "../../../src/estimate/compare/mix-point.js";
import type { RouteCells } from "../../../src/estimate/compare/route.js";
import { demoBody, estimated } from "../../helpers/estimating.js";

const body = demoBody("orchard-shelter");
const withSawyer = (sawyer: object, labor: object = {}) =>
  estimated({
    ...body,
    shop: { ...(body.shop as object), sawyer },
    labor: { ...(body.labor as object), ...labor },
    options: { frontier: true },
  });
const line = (route: RouteCells | undefined, item: string) =>
  route?.lines.find(({ name }) => name.endsWith(`.use.${item}`));

describe("a hired sawyer", () => {
  const made = withSawyer({ charge: "board-foot" });
  const { hired, mill, mix, buy } = made.routes;

  it("is paid the set-up and the rough board feet: 120 USD and 0.60 USD each", () => {
    const sawn = line(hired, "milling-per-board-foot");
    const feet = made.basis.sheet.in(sawn?.quantity as never, "bf");
    expect(feet.toNumber()).toBeGreaterThan(500);
    expect(sawn?.amount?.value.toFixed(2)).toBe(feet.times("0.60").toDecimalPlaces(2).toFixed(2));
    expect(line(hired, "milling-set-up")?.amount?.value.toNumber()).toBe(120);
  });

  it("brings fuel, blades and mill, and takes fewer of one's own hours at the mill", () => {
    const names = hired?.lines.map(({ name }) => name.split(".").slice(1).join(".")) ?? [];
    expect(names.filter((name) => /fuel|oil|chain|band|files|hire\./.test(name))).toEqual([]);
    const hours = (route: RouteCells | undefined, stage: string) =>
      route?.stages.find(({ name }) => name.endsWith(`.hours.${stage}`))?.value.toNumber() ?? Number.NaN;
    for (const stage of ["setUp", "saw"]) expect(hours(hired, stage)).toBeLessThan(hours(mill, stage));
    expect(hours(hired, "sharpen")).toBe(0);
    expect(hours(hired, "stack")).toBeGreaterThan(0);
  });

  it("saws with a thinner kerf: no less of the logs than one's own chain", () => {
    const short = (route: RouteCells | undefined) =>
      Object.values(route?.plan.sawing?.plan.buy ?? {}).reduce((sum, count) => sum + count, 0);
    expect(short(hired)).toBeLessThanOrEqual(short(mill));
  });

  it("by the hour is paid while the mill runs, and at least the least charge", () => {
    const hourly = withSawyer({ charge: "hour", minimum: "$5000" }).routes.hired;
    expect(line(hourly, "milling-per-hour")?.quantity).toBe(hourly?.milling?.millHours);
    const paid = ["milling-set-up", "milling-per-hour", "milling-minimum"].map(
      (item) => line(hourly, item)?.amount?.value.toNumber() ?? 0,
    );
    expect(paid.reduce((sum, amount) => sum + amount, 0)).toBeCloseTo(5000, 2);
  });

  it("stands in the mix where it pays, and the verdict says so", () => {
    for (const route of [buy, mill, hired]) {
      if (route) expect(mix.total.value.lte(route.total.value)).toBe(true);
    }
    const cheap = withSawyer({ charge: "hour" }, { valueOfHour: "$25/h" });
    expect(cheap.routes.mix.plan.hired).toBe(true);
    expect(cheap.verdict.headline).toContain("Have a hired sawyer mill");
    const held = estimated({
      ...body,
      shop: { ...(body.shop as object), sawyer: { charge: "hour" } },
      heldPlans: cheap.plans,
    });
    expect(held.routes.mix.cash.value.eq(cheap.routes.mix.cash.value)).toBe(true);
  });

  it("stands in the frontier where no other way is cheaper and quicker", () => {
    const frontier = made.searched?.frontier ?? [];
    expect(frontier.some(({ point }) => point.plan?.hired)).toBe(true);
    const total = ({ cash, hours }: Pick<MixPoint, "cash" | "hours">, wage: number) =>
      cash.plus(hours.times(wage)).toNumber();
    for (const wage of [0, 10, 20, 40, 100]) {
      const least = Math.min(...frontier.map(({ point }) => total(point, wage)));
      const routes = [buy, mill, hired].flatMap((route) =>
        route ? [{ cash: route.cash.value, hours: route.hours.value }] : [],
      );
      for (const route of routes) expect(least).toBeLessThanOrEqual(total(route, wage) + 1e-6);
    }
  });

  it("adds nothing where none is asked for", () => {
    const { routes, decision, basis } = estimated(body);
    expect([routes.hired, decision.hired, basis.sheet.find("sawyer.helpers")]).toEqual([
      undefined,
      undefined,
      undefined,
    ]);
  });
});

describe("the charge of a hired sawyer in the question that the sawing plan answers", () => {
  const problemOf = (sawyer: object, valueOfHour: string) =>
    withSawyer(sawyer, { valueOfHour }).routes.hired?.plan.sawing?.problem;

  it("by the hour is the price of the mill's hours beside one's own: $95 and one helper at $15", () => {
    // A bolt takes the same minutes to set up whoever pays: (95 + 15) against 95 alone.
    const [worth, free] = [problemOf({ charge: "hour" }, "$15/h"), problemOf({ charge: "hour" }, "$0/h")];
    for (const rate of ["boltHours", "millCutHours", "millHoursPerFt2"] as const)
      expect((worth?.rates[rate] ?? 0) / (free?.rates[rate] ?? 1)).toBeCloseTo(110 / 95, 9);
    // What is done without the mill costs nothing where an hour is worth nothing.
    for (const rate of ["logHours", "ripCutHours", "crosscutHours"] as const) expect(free?.rates[rate]).toBe(0);
  });

  it("by the board foot comes off what a bought piece costs: $0.60 for 144 cubic inches of rough wood", () => {
    const [paid, own] = [
      problemOf({ charge: "board-foot" }, "$0/h"),
      withSawyer({ charge: "hour" }, { valueOfHour: "$0/h" }),
    ];
    for (const group of paid?.groups ?? []) {
      const other = own.routes.hired?.plan.sawing?.problem.groups.find(({ name }) => name === group.name);
      const cubicInches = (group.thickness * group.width * group.length) / 16 ** 3;
      expect((other?.buy.cash ?? 0) - group.buy.cash).toBeCloseTo((cubicInches / 144) * 0.6, 9);
    }
    expect(paid?.groups.length).toBeGreaterThan(5);
  });
});

describe("a hired sawyer who does not pay", () => {
  it("is told of in the verdict, with what the way would come to", () => {
    const body = demoBody("orchard-shelter");
    const sawyer = { charge: "hour", minimum: "$2500" };
    const { routes, verdict } = estimated({ ...body, shop: { ...(body.shop as object), sawyer } });
    expect(routes.mix.plan.hired).toBe(false);
    const told = verdict.reasons.find((reason) => reason.startsWith("A hired sawyer"));
    expect(told).toContain(`$${routes.hired?.cash.value.toFixed(2)} and`);
  });
});
