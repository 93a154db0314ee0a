/** The call that plans logs by themselves: logs and pieces in, how to saw them and what is short out. */
import { z } from "zod";
import { FaultError } from "../estimate/faults.js";
import type { EstimateRequest } from "../estimate/request/request.js";
import { faultsInSawing, readSawingRequest, sawingRequest } from "../estimate/request/sawing-request.js";
import { SAWING_STAGES, type SawnLogs, sawLogs } from "../estimate/sawn-logs.js";
import { Stages, type Watch } from "../estimate/watch.js";
import { type AnyCall, body, call, json, type Read } from "./call.js";
import { demoCatalogs } from "./demos.js";
import { answerExample } from "./examples.js";
import { planners, wholeSawingWork } from "./planners.js";
import { digestOf, provenance } from "./provenance.js";
import { SAWING_INCLUDES, type SawingInclude, SawingPlanSchema, shownSawingPlan } from "./render/json/sawing-plan.js";

interface Asked {
  readonly request: EstimateRequest;
  readonly digest: string;
}

interface Planned {
  readonly sawn: SawnLogs;
  readonly digest: string;
}

const EXAMPLES: Readonly<Record<string, { summary: string; value: z.input<typeof sawingRequest> }>> = {
  shelf: {
    summary: "Six shelf boards from one log",
    value: {
      pieces: [{ name: "shelf-boards", role: "board", count: 6, section: "1 x 8 in", length: "5 ft" }],
      logs: [{ name: "pine-1", species: "eastern-white-pine", length: "10 ft 6 in", smallDiameter: "13 in" }],
      labor: { valueOfHour: "$10/h" },
    },
  },
  metric: {
    summary: "Posts and boards from two crooked larches with rot, on a band mill",
    value: {
      pieces: [
        { name: "posts", role: "post", count: 2, section: "140 x 140 mm", length: "2.4 m" },
        { name: "boards", role: "board", count: 12, section: "25 x 150 mm", length: "2.4 m" },
      ],
      logs: [
        {
          ...{ name: "larch", species: "european-larch", count: 2, length: "5.2 m", smallDiameter: "310 mm" },
          ...{ sweep: "30 mm", rot: { largeEnd: "60 mm" } },
        },
      ],
      shop: { mill: "manual-band-mill" },
      currency: "EUR",
    },
  },
};

function readAsked(input: unknown): Read<Asked> {
  const read = readSawingRequest(input, demoCatalogs());
  return "faults" in read ? read : { value: { request: read.value, digest: digestOf(input) } };
}

/** Plans; faults are placed as this request has its fields. */
function plan(request: EstimateRequest, watch: Watch): SawnLogs {
  const stages = new Stages(SAWING_STAGES, watch);
  try {
    const logs = (request.logs ?? []).reduce((sum, { count = 1 }) => sum + count, 0);
    return sawLogs(request, planners(stages, wholeSawingWork(logs)), stages);
  } catch (error) {
    throw error instanceof FaultError ? new FaultError(faultsInSawing(error.faults)) : error;
  }
}

export const sawingPlans: readonly AnyCall[] = [
  call({
    method: "post",
    path: "/v1/sawing-plans",
    id: "makeSawingPlan",
    tag: "Estimating",
    summary: "Do the logs hold it, and how are they sawn?",
    description: [
      "Logs, pieces and a mill: bolts, cuts in their order, slabs, strips and piece marks; what is short and which log",
      "came nearest; lumber beside log scale; hours. No prices are needed: without them every piece that the logs hold",
      "is sawn. The gap is to the best plan of the family that is named beside it.",
    ].join(" "),
    query: z.strictObject({
      include: z
        .array(z.enum(SAWING_INCLUDES))
        .default([])
        .describe(
          "sheet: every cell; workings: formulas, sources and ranges of the cells shown; plan: the plan, to be held; drawings: the end of every bolt as SVG.",
        ),
    }),
    heavy: true,
    streams: true,
    request: body({ schema: sawingRequest, examples: EXAMPLES, read: readAsked }),
    run: ({ body: { request, digest } }, watch): Planned => ({ sawn: plan(request, watch), digest }),
    faces: {
      "application/json": json({
        description: "The plan.",
        schema: SawingPlanSchema,
        example: answerExample<z.output<typeof SawingPlanSchema>>("makeSawingPlan"),
        render: ({ sawn, digest }: Planned, { include }: { readonly include: readonly SawingInclude[] }) =>
          shownSawingPlan(sawn, provenance(digest), include),
      }),
    },
  }),
];
