import { describe, expect, it } from "vitest";
import { demoCatalogs, demoNames } from "../../../src/api/demos.js";
import { planners } from "../../../src/api/planners.js";
import { terminalPage } from "../../../src/api/render/terminal.js";
import { COLUMNS } from "../../../src/api/render/terminal-lines.js";
import { type Estimate, estimate } from "../../../src/estimate/estimate.js";
import { readEstimateRequest } from "../../../src/estimate/request/request.js";
import { type Asking, demo } from "../helpers/posting.js";

function made(body: Asking): Estimate {
  const read = readEstimateRequest(body, demoCatalogs());
  if ("faults" in read) throw new Error(JSON.stringify(read.faults));
  return estimate(read.value, planners());
}

describe.each([...demoNames()])("the printed estimate of %s", (name) => {
  const one = made(demo(name));
  const lines = terminalPage(one).split("\n");

  it("keeps to the terminal's width and cuts no word off", () => {
    expect(lines.filter((line) => line.length > COLUMNS)).toEqual([]);
    expect(lines.filter((line) => line.includes("…"))).toEqual([]);
  });

  it("says what boards are left where logs are sawn, and only there", () => {
    const sawn = one.routes.mix.plan.sawing ?? one.routes.mill?.plan.sawing;
    const told = lines
      .join(" ")
      .replace(/\s+/g, " ")
      .match(/would still give, rough: \d+ of [\d/ ]+ × [\d/ ]+ (?:in|mm), /g);
    expect(told?.length ?? 0).toBe(sawn ? 1 : 0);
  });

  it("shows every line of the shopping list with its amount", () => {
    const text = lines.join(" ").replace(/\s+/g, " ");
    for (const line of [...one.common.lines, ...one.routes.mix.lines]) {
      expect(text).toContain(line.label.split(" ")[0]);
      const sign = { EUR: "€", GBP: "£" }[one.basis.catalog.currency as string] ?? "$";
      if (line.amount) expect(text).toContain(` ${sign}${line.amount.value.toFixed(2)} `);
    }
  });

  it("says when it is dry and done, in days that follow one another", () => {
    // Where an hour costs next to nothing, everything is milled, boards that dry included.
    const sign = { EUR: "€", GBP: "£" }[one.basis.catalog.currency as string] ?? "$";
    const body = demo(name);
    const drying = made({ ...body, labor: { ...body.labor, valueOfHour: `${sign}2/h` } });
    const text = terminalPage(drying).replace(/\s+/g, " ");
    const days =
      /stacked on day (\d+) and dry on day (\d+), after [\d.]+ weeks \(day (\d+) at best, day (\d+) at worst\)/.exec(
        text,
      );
    const [stacked, dry, soonest, latest] = (days?.slice(1).map(Number) ?? []) as [number, number, number, number];
    const done = Number(/all is done on day (\d+)/.exec(text)?.[1]);
    expect(stacked).toBeLessThanOrEqual(soonest);
    expect(soonest).toBeLessThanOrEqual(dry);
    expect(dry).toBeLessThanOrEqual(latest);
    expect(dry).toBeLessThanOrEqual(done);
  });

  it("has a row of the timeline for each stage that takes hours, none of them of nothing", () => {
    const bars = lines.slice(lines.findIndex((line) => line.startsWith("TIMELINE")) + 1);
    const { mix } = one.routes;
    const worked = [...mix.stages, ...one.common.stages].filter(({ value }) => value.gt(0));
    for (const { label } of worked)
      expect(bars.some((line) => line.toLowerCase().slice(3).startsWith(label.slice(0, 24)))).toBe(true);
    const hours = lines.slice(
      lines.findIndex((line) => line.startsWith("PERSON-HOURS")),
      lines.findIndex((line) => line.startsWith("TIMELINE")),
    );
    expect(hours.filter((line) => /^\S.*( 0\.0)+$/.test(line) && !/[1-9]/.test(line))).toEqual([]);
  });

  it("has hours and working days, alone and with the crew, that fit one another, and tells which stages may overlap", () => {
    const from = lines.findIndex((line) => line.startsWith("TIMELINE"));
    const bars = lines.slice(
      from,
      lines.findIndex((line) => line.startsWith("DRESSING")),
    );
    const rows = bars.flatMap((line) => {
      const figures = /^ *(\d+) \S.* (\d+) +([\d.]+) +([\d.]+) +([\d.]+) +([\d.]+) +(\d+) +(\d+|same day)$/.exec(line);
      return figures ? [figures.slice(1).map((text) => (text === "same day" ? Number(figures[7]) : Number(text)))] : [];
    });
    expect(rows.length).toBeGreaterThan(10);
    const daily = one.basis.sheet.in(one.basis.labor.hoursPerDay, "h/day").toNumber();
    for (const [, people = 0, alone = 0, crew = 0, daysAlone = 0, daysCrew = 0, start = 0, end = 0] of rows) {
      expect(Math.abs(alone - people * crew)).toBeLessThan(0.06 + 0.06 * people);
      expect(Math.abs(daysAlone - alone / daily)).toBeLessThan(0.07);
      expect(Math.abs(daysCrew - crew / daily)).toBeLessThan(0.07);
      expect(start).toBeLessThanOrEqual(end);
      expect(start).toBeGreaterThan(0);
    }
    const told = /Stages ([\dto ,and]+) overlap\./.exec(bars.join(" "))?.[1] ?? "";
    const spans = [...told.matchAll(/(\d+) to (\d+)/g)].map(
      ([, first, last]) => [Number(first), Number(last)] as const,
    );
    expect(spans.length).toBeGreaterThan(0);
    const together = (a: number, b: number) => spans.some(([first, last]) => first <= a && b <= last);
    for (const [i, row] of rows.slice(1).entries()) {
      // What begins a day before another one ends is told with it, and what begins a day after all is not.
      const ends = Math.max(...rows.slice(0, i + 1).map((one) => one[7] as number));
      if ((row[6] as number) < ends) expect([i + 1, together(i + 1, i + 2)]).toEqual([i + 1, true]);
      if ((row[6] as number) > ends) expect([i + 1, together(i + 1, i + 2)]).toEqual([i + 1, false]);
    }
  });

  it("has engine hours, sharpenings and loads beside the stages, and whole weeks", () => {
    const from = lines.findIndex((line) => line.startsWith("HOW MUCH OF IT"));
    const rows = lines.slice(from + 1, lines.indexOf("", from)).join("\n");
    const { mix } = one.routes;
    const round = (of: string) => one.basis.sheet.find(`${mix.plan.key}.${of}`)?.value.toFixed(0);
    expect(rows).toMatch(/^Loads to the site .*\d$/m);
    if (mix.milling) {
      expect(rows).toMatch(new RegExp(`^Loads from mill to stack .* ${round("loads")}$`, "m"));
      expect(rows).toMatch(new RegExp(`^Sharpenings .* ${round("sharpenings")}$`, "m"));
      expect(rows).toMatch(/^Engine hours of sawing .*\d h$/m);
    }
    expect(lines.join(" ")).not.toMatch(/after \d+\.\d+ weeks/);
  });

  it("names what the calendar waits for, and the day without it", () => {
    const text = lines.join(" ").replace(/\s+/g, " ");
    const { mix } = one.routes;
    const waits = /It waits for (.+) alone: bought, or used green .*? all would be done on day (\d+)\./.exec(text);
    expect(waits === null).toBe(mix.drying === undefined);
    if (waits) expect(Number(waits[2])).toBeLessThan(Number(/all is done on day (\d+)/.exec(text)?.[1]));
  });

  it("groups what is heavy: past four people it names an aid", () => {
    const from = lines.findIndex((line) => line.startsWith("HEAVY LIFTS"));
    const heavy = lines.slice(from + 1, lines.indexOf("", from));
    expect(heavy.length).toBeGreaterThan(0);
    expect(heavy.length).toBeLessThan(25);
    for (const line of heavy) expect(line).toMatch(/: ([234] people|cart, rollers or levers|winch, tractor or lift)$/);
    const caution = lines.join(" ");
    expect(caution).not.toMatch(/\((?:[5-9]|\d\d+) people\)/);
  });

  it("tells of each group who dresses it", () => {
    const text = lines.join(" ").replace(/\s+/g, " ");
    for (const { label } of one.basis.cutList.groups) expect(text).toContain(`- ${label}: `);
  });

  it("speaks in the project's measures of what can hurt", () => {
    const cautions = lines.slice(lines.indexOf("CAUTIONS"), lines.indexOf("NOTICES")).join(" ");
    expect(cautions).not.toMatch(one.basis.request.system === "metric" ? /\d (ft|lb|in)\b/ : /\d (m|mm|kg)\b/);
  });
});

it("names what has no price among the notices", () => {
  const one = made({ ...demo("orchard-shelter"), catalog: { name: "Empty", currency: "USD" } });
  const text = terminalPage(one);
  expect(one.routes.buy.unpriced).toBeGreaterThan(0);
  expect(text).toContain("no price");
  expect(one.verdict.doubt).toMatch(/^\d+ lines have no price yet \(.+; .+; .+; \d+ more\)/);
  expect(text).toMatch(/ {2}- .* has no price\./);
});
