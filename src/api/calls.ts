/** The table of calls: one row a call. The document, the page at /docs and the routes are all made from it. */
import { z } from "zod";
import { priceCatalogSchema } from "../catalog/price-catalog.js";
import { estimateRequest } from "../estimate/request/request.js";
import { type AnyCall, call, json } from "./call.js";
import { demoCatalogs, demoList, demoNames, demoRequest } from "./demos.js";
import { DOCS_STYLE } from "./docs-style.js";
import { estimating } from "./estimating.js";
import { docsPage } from "./pages.js";
import { Refusal } from "./problem.js";
import { AssumptionListSchema, assumptionExample, assumptionList } from "./render/json/assumptions.js";
import { CoveringListSchema, coveringList } from "./render/json/coverings.js";
import { DemoListSchema } from "./render/json/demos.js";
import { SpeciesListSchema, speciesList } from "./render/json/species.js";
import { sawingPlans } from "./sawing-plans.js";
import { stockPlans } from "./stock-plans.js";
import { webCalls } from "./web/calls.js";

const HealthSchema = z
  .strictObject({ status: z.literal("ok").describe("Always ok: whoever is not, does not answer.") })
  .meta({ id: "Health", description: "Work may be sent." });

const QueueSchema = z
  .strictObject({
    workers: z.int().describe("Threads that compute estimates and plans."),
    underWay: z.int().describe("Jobs that they have begun."),
    waiting: z.int().describe("Jobs that wait for a thread."),
    mostWaiting: z.int().describe("Jobs that may wait; the next is refused with 503."),
    answered: z.int().describe("Jobs answered since the service started."),
    refused: z.int().describe("Jobs refused because too many were waiting."),
    calledOff: z.int().describe("Jobs whose caller went, or whose time was up."),
  })
  .meta({ id: "Queue", description: "Jobs of the worker threads." });

const AliveSchema = z
  .strictObject({
    status: z.literal("ok").describe("Always ok: whoever is not, does not answer."),
    queue: QueueSchema.nullable().describe("Jobs of the worker threads; null where there are none."),
  })
  .meta({ id: "Alive", description: "The service runs." });

const DocumentSchema = z
  .looseObject({ openapi: z.string().describe("Version of the format.") })
  .meta({ id: "OpenApiDocument", description: "An OpenAPI 3.1 document." });

const QUEUE_EXAMPLE = {
  ...{ workers: 2, underWay: 1, waiting: 0, mostWaiting: 32 },
  ...{ answered: 12, refused: 0, calledOff: 1 },
};

const operations: readonly AnyCall[] = [
  call({
    method: "get",
    path: "/healthz",
    id: "getHealth",
    tag: "Operations",
    summary: "Is it alive?",
    description: "Answers as long as the process runs, and says how many jobs its workers have.",
    run: (_, { service }) => ({ status: "ok" as const, queue: service.queue() ?? null }),
    faces: {
      "application/json": json({
        description: "It is.",
        schema: AliveSchema,
        example: { status: "ok", queue: QUEUE_EXAMPLE },
        render: (health) => health,
      }),
    },
  }),
  call({
    method: "get",
    path: "/readyz",
    id: "getReadiness",
    tag: "Operations",
    summary: "May work be sent?",
    description:
      "Answers 503 until every worker is loaded and warm, and from the moment that the service is told to stop; calls under way are still answered.",
    run: (_, { service }) => {
      const reason = service.notReady();
      if (reason !== undefined) throw new Refusal("overloaded", reason);
      return { status: "ok" as const };
    },
    faces: {
      "application/json": json({
        description: "It may.",
        schema: HealthSchema,
        example: { status: "ok" },
        render: (health) => health,
      }),
    },
  }),
  call({
    method: "get",
    path: "/metrics",
    id: "getMetrics",
    tag: "Operations",
    summary: "Counts and durations",
    description: "How many calls were answered, with which status, and how long they took, since the process started.",
    run: (_, { service }) => service.metrics.text(),
    faces: {
      "text/plain": { description: "The Prometheus text exposition format, 0.0.4.", render: (text) => text },
    },
  }),
];

const data: readonly AnyCall[] = [
  call({
    method: "get",
    path: "/v1/assumptions",
    id: "getAssumptions",
    tag: "Data",
    summary: "The assumptions",
    description:
      "Every named number that a request may replace: low, likely and high, its source, and how to measure one's own.",
    freshness: "data",
    run: assumptionList,
    faces: {
      "application/json": json({
        description: "All assumptions, and those of each kind of mill.",
        schema: AssumptionListSchema,
        example: assumptionExample(),
        render: (list) => list,
      }),
    },
  }),
  call({
    method: "get",
    path: "/v1/species",
    id: "getSpecies",
    tag: "Data",
    summary: "The woods",
    description:
      "Weight, shrinkage, bark, drying time, decay and tannin of every wood, and the names yards sell under.",
    freshness: "data",
    run: speciesList,
    faces: {
      "application/json": json({
        description: "All woods.",
        schema: SpeciesListSchema,
        example: { ...speciesList(), species: speciesList().species.slice(0, 1) },
        render: (list) => list,
      }),
    },
  }),
  call({
    method: "get",
    path: "/v1/coverings",
    id: "getCoverings",
    tag: "Data",
    summary: "The roof coverings",
    description: "Least slope, deck, underlay, laps and weight of every covering, each with its source.",
    freshness: "data",
    run: coveringList,
    faces: {
      "application/json": json({
        description: "All coverings.",
        schema: CoveringListSchema,
        example: { ...coveringList(), coverings: coveringList().coverings.slice(0, 1) },
        render: (list) => list,
      }),
    },
  }),
];

const demos: readonly AnyCall[] = [
  call({
    method: "get",
    path: "/v1/demos",
    id: "getDemos",
    tag: "Data",
    summary: "The demos",
    description: "Demo projects that can be posted as they are, and demo price catalogs. All prices are invented.",
    freshness: "data",
    run: demoList,
    faces: {
      "application/json": json({
        description: "All demos.",
        schema: DemoListSchema,
        example: demoList(),
        render: (list) => list,
      }),
    },
  }),
  call({
    method: "get",
    path: "/v1/demos/{name}",
    id: "getDemo",
    tag: "Data",
    summary: "A demo",
    description: "The request of a demo project, ready to be posted to /v1/estimates. All prices are invented.",
    parameters: { name: { description: "Name of the demo.", example: "market-stall" } },
    freshness: "data",
    run: ({ path }) => {
      const name = path.name as string;
      const found = demoRequest(name);
      if (found !== undefined) return found as z.output<typeof estimateRequest>;
      throw new Refusal("not-found", `No demo is called ${name.slice(0, 60)}.`, { choices: demoNames() });
    },
    faces: {
      "application/json": json({
        description: "A request.",
        schema: estimateRequest,
        example: demoRequest("market-stall") as z.output<typeof estimateRequest>,
        render: (request) => request,
      }),
    },
  }),
  call({
    method: "get",
    path: "/v1/demo-catalogs/{name}",
    id: "getDemoCatalog",
    tag: "Data",
    summary: "A demo price catalog",
    description: "Prices that a request may name, in full: to be changed and handed back inline. All are invented.",
    parameters: { name: { description: "Name of the catalog.", example: "orchard-yard" } },
    freshness: "data",
    run: ({ path }) => {
      const name = path.name as string;
      const found = demoCatalogs().get(name);
      if (found !== undefined) return found as z.output<typeof priceCatalogSchema>;
      const choices = [...demoCatalogs().keys()];
      throw new Refusal("not-found", `No demo catalog is called ${name.slice(0, 60)}.`, { choices });
    },
    faces: {
      "application/json": json({
        description: "A price catalog.",
        schema: priceCatalogSchema,
        example: { name: "Prices", currency: "USD" },
        render: (catalog) => catalog,
      }),
    },
  }),
];

const pages: readonly AnyCall[] = [
  call({
    method: "get",
    path: "/docs",
    id: "getDocs",
    tag: "Pages",
    summary: "This page",
    description: "All calls, shapes, problems and faults, to be read by people.",
    freshness: "data",
    run: (_, { service }) => docsPage(service.document()),
    faces: { "text/html": { description: "A page without scripts.", render: (page) => page } },
  }),
  call({
    method: "get",
    path: "/assets/docs.css",
    id: "getDocsStyle",
    tag: "Pages",
    hidden: true,
    summary: "Style of the page",
    description: "Style of the page at /docs.",
    freshness: "data",
    run: () => DOCS_STYLE,
    faces: { "text/css": { description: "A style sheet.", render: (style) => style } },
  }),
  call({
    method: "get",
    path: "/openapi.json",
    id: "getDocument",
    tag: "Pages",
    summary: "All calls, for programs",
    description: "The same as /docs, as an OpenAPI 3.1 document.",
    freshness: "data",
    run: (_, { service }) => service.document(),
    faces: {
      "application/json": json({
        description: "An OpenAPI 3.1 document.",
        schema: DocumentSchema,
        example: { openapi: "3.1.0" },
        render: (document: { openapi: string }) => ({ ...document }),
      }),
    },
  }),
];

/** Every call of the service, in the order in which they are shown. */
export const calls: readonly AnyCall[] = [
  ...estimating,
  ...sawingPlans,
  ...stockPlans,
  ...data,
  ...demos,
  ...operations,
  ...pages,
  ...webCalls,
];
