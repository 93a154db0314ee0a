import { describe, expect, it } from "vitest";
import type { z } from "zod";
import { createApp } from "../../src/api/app.js";
import { calls } from "../../src/api/calls.js";
import { here } from "../../src/api/computing.js";
import { demoCatalogs, demoNames } from "../../src/api/demos.js";
import type { AssumptionListSchema } from "../../src/api/render/json/assumptions.js";
import { parsePriceCatalog } from "../../src/catalog/price-catalog.js";
import { estimated } from "./helpers/posting.js";

const app = createApp(calls, { computing: here(calls) });
const get = async (path: string) => (await app.request(path)).json() as Promise<Record<string, unknown>>;

describe("demos", () => {
  it("are listed with their catalogs, and the list says that prices are invented", async () => {
    const list = (await get("/v1/demos")) as { note: string; demos: { name: string }[]; catalogs: { name: string }[] };
    expect(list.note).toMatch(/invented/);
    expect(list.demos.map(({ name }) => name)).toEqual(expect.arrayContaining(["market-stall", "orchard-shelter"]));
    expect(list.catalogs.map(({ name }) => name)).toEqual(["ferry-yard", "market-yard", "orchard-yard"]);
  });

  it.each(demoNames())("%s can be posted as it is, and every line of it has a price", async (name) => {
    const { decision, about } = await estimated(await get(`/v1/demos/${name}`));
    expect(decision.routes.map(({ unpriced }) => unpriced)).toEqual(decision.routes.map(() => 0));
    expect(about.catalogNote).toMatch(/[Ii]nvented/);
  });

  it.each([...demoCatalogs()].map(([name, catalog]) => ({ name, catalog })))(
    "$name is a sound catalog",
    ({ catalog }) => {
      expect(parsePriceCatalog(catalog)).not.toHaveProperty("faults");
    },
  );

  it("that do not exist are not found, and those that do are named", async () => {
    const response = await app.request("/v1/demos/orchard");
    expect(response.status).toBe(404);
    expect(await response.json()).toMatchObject({ choices: demoNames() });
  });

  it.each(["ferry-bike-shed", "market-stall"])("%s is metric throughout, with a yard of its own", async (name) => {
    const { about, cutList } = await estimated(await get(`/v1/demos/${name}`));
    expect(about.measure).toBe("metric");
    expect(about.currency).not.toBe("USD");
    expect(cutList.groups.filter(({ finished }) => !/ mm$/.test(finished.section))).toEqual([]);
  });

  it("of the market stall buys most of its lumber", async () => {
    const { cutList } = await estimated(await get("/v1/demos/market-stall"));
    const bought = cutList.groups.filter(({ route }) => route === "buy");
    expect(bought.length).toBeGreaterThan(cutList.groups.length / 2);
    expect(bought.length).toBeLessThan(cutList.groups.length);
  });
});

describe("the list of assumptions", () => {
  it("has each name that an estimate lays as an assumption, with the same values", async () => {
    const list = (await get("/v1/assumptions")) as unknown as z.output<typeof AssumptionListSchema>;
    const mill = list.mills.find(({ kind }) => kind === "chainsaw-mill");
    const known = new Map([...list.assumptions, ...(mill?.assumptions ?? [])].map((row) => [row.name, row.values]));
    const answer = await estimated(await get("/v1/demos/orchard-shelter"), "?include=workings");
    const cells = answer.sheet.blocks.flatMap((block) => [
      ...block.cells,
      ...block.lines.flatMap((line) => line.cells),
    ]);
    const laid = cells.filter(({ kind }) => kind === "assumption");
    // Coverings, finishes and woods keep theirs in tables of their own.
    const elsewhere = /^(?:covering|finish|drying)\./;
    for (const { name, value, unit, low, high } of laid.filter(
      (cell) => known.has(cell.name) || !elsewhere.test(cell.name),
    )) {
      const values = known.get(name);
      expect([name, values?.low.value, values?.likely, values?.high.value]).toEqual([name, low, { value, unit }, high]);
    }
    expect(laid.length).toBeGreaterThan(60);
  });

  it("says of each where it comes from, and cites no source that it does not list", async () => {
    const list = (await get("/v1/assumptions")) as unknown as z.output<typeof AssumptionListSchema>;
    const rows = [...list.assumptions, ...list.mills.flatMap(({ assumptions }) => assumptions)];
    expect(rows.filter(({ from }) => !list.sources[from.source])).toEqual([]);
    expect(new Set(list.assumptions.map(({ name }) => name)).size).toBe(list.assumptions.length);
    expect(list.mills.map(({ kind }) => kind)).toContain("manual-band-mill");
  });
});
