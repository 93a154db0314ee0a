/** The calls that estimate: a request in, its takeoffs or the whole estimate out. */
import { z } from "zod";
import { coveringKinds } from "../catalog/coverings.js";
import { type Basis, layBasis } from "../estimate/basis.js";
import { cautionsOf, roofWeightCaution } from "../estimate/cautions.js";
import { compareCoverings } from "../estimate/covering-comparison.js";
import { ESTIMATE_STAGES, type Estimate, estimate } from "../estimate/estimate.js";
import { FaultError } from "../estimate/faults.js";
import { defaultNotices } from "../estimate/notices.js";
import { withChosenFirst } from "../estimate/offer-choice.js";
import { blamingOverrides } from "../estimate/override-faults.js";
import { type EstimateRequest, estimateRequest, readEstimateRequest } from "../estimate/request/request.js";
import { Sheet } from "../estimate/sheet/sheet.js";
import { structureNotices } from "../estimate/structure-notices.js";
import { type NearMiss, nearMisses } from "../estimate/sweep/near-misses.js";
import { layFinishAsAsked, layHardwareAsLaidOut, layTakeoffs } from "../estimate/takeoffs.js";
import { Stages } from "../estimate/watch.js";
import { type AnyCall, body, call, json, type Read } from "./call.js";
import { demoCatalogs } from "./demos.js";
import { answerExample, COMPARISON_EXAMPLES, REQUEST_EXAMPLES } from "./examples.js";
import { planners } from "./planners.js";
import { digestOf, provenance } from "./provenance.js";
import {
  COMPARISON_INCLUDES,
  type Comparison,
  type ComparisonInclude,
  ComparisonSchema,
  shownComparison,
} from "./render/json/covering-comparison.js";
import { EstimateSchema, INCLUDES, type Include, shownEstimate } from "./render/json/estimate.js";
import {
  shownTakeoffs,
  TAKEOFF_INCLUDES,
  type TakenOff,
  type TakeoffInclude,
  TakeoffsSchema,
} from "./render/json/takeoffs.js";

/** A request and the digest of the JSON that it was read from. */
interface Asked {
  readonly request: EstimateRequest;
  readonly digest: string;
}

/** An estimate with that digest. */
interface Made {
  readonly made: Estimate;
  /** Where they are asked for. */
  readonly misses?: readonly NearMiss[];
  readonly digest: string;
}

/** Takeoffs with that digest. */
interface Taken {
  readonly taken: TakenOff;
  readonly digest: string;
}

/** A comparison with that digest. */
interface Compared {
  readonly compared: Comparison;
  readonly digest: string;
}

interface Including<Name> {
  readonly include: readonly Name[];
}

function readAsked(json: unknown): Read<Asked> {
  const read = readEstimateRequest(json, demoCatalogs());
  return "faults" in read ? read : { value: { request: read.value, digest: digestOf(json) } };
}

const form = body({ schema: estimateRequest, examples: REQUEST_EXAMPLES, read: readAsked });

const including = <Names extends readonly [string, ...string[]]>(names: Names, describe: string) =>
  z.strictObject({ include: z.array(z.enum(names)).default([]).describe(describe) });

/** Takes off what routes share, on a sheet of its own. */
function takeOff(asked: EstimateRequest, include: readonly TakeoffInclude[]): TakenOff {
  const taken = blamingOverrides(asked, () => laidOut(asked));
  return include.includes("near-misses") ? { ...taken, misses: nearMisses(withChosenFirst(asked), planners()) } : taken;
}

function laidOut(asked: EstimateRequest): TakenOff {
  const request = withChosenFirst(asked);
  const sheet = new Sheet(new Map(Object.entries(request.overrides ?? {})));
  const basis = layBasis(sheet, request);
  const takeoffs = layTakeoffs(basis);
  const finish = layFinishAsAsked(basis, takeoffs);
  const hardware = layHardwareAsLaidOut(basis, takeoffs);
  refuse(basis);
  const notices = [...structureNotices(basis, takeoffs), ...defaultNotices(basis)];
  return { basis, takeoffs, finish, hardware, cautions: cautionsOf(basis, takeoffs, false), notices };
}

/** Lays one roof under all coverings wanted. @throws FaultError where there is no roof. */
function compareRoof(asked: EstimateRequest): Comparison {
  const request = withChosenFirst(asked, asked.options?.coverings ?? coveringKinds);
  const sheet = new Sheet(new Map(Object.entries(request.overrides ?? {})));
  const basis = layBasis(sheet, request);
  const takeoffs = layTakeoffs(basis);
  const coverings = compareCoverings(basis, request.options?.coverings, takeoffs.covering);
  refuse(basis);
  const weights = coverings.map(({ weight }) => weight);
  const cautions = [...roofWeightCaution(basis, weights), ...cautionsOf(basis, takeoffs, false)];
  return { basis, coverings, cautions, notices: [...structureNotices(basis, takeoffs), ...defaultNotices(basis)] };
}

/** @throws FaultError with all that is wrong in assumptions and overrides. */
function refuse({ assumed, sheet }: Basis): void {
  const faults = [...assumed.faults, ...assumed.unknownFaults(), ...sheet.faults, ...sheet.overrideFaults()];
  if (faults.length > 0) throw new FaultError(faults);
}

/** What estimates. */
export const estimating: readonly AnyCall[] = [
  call({
    method: "post",
    path: "/v1/estimates",
    id: "makeEstimate",
    tag: "Estimating",
    summary: "Mill or buy: the whole estimate",
    description: [
      "Works out pieces, sawing plans, hours, shopping lists and prices for milling, for buying and for the best mix.",
      "Line amounts are rounded once, to the currency's minor unit; totals are sums of rounded lines. A line without a",
      "price is null, never zero. What comes out goes in: a cell's value and unit as an override under its name, and",
      "heldPlans as they are.",
    ].join(" "),
    query: including(
      INCLUDES,
      "sheet: every cell; workings: formulas, sources and ranges of the cells shown; plans: the plans, to be held; work: calendar, dressing, loads and cut lists of every route, not of the best alone; extras: boards that could still come out of what each sawing plan leaves of its logs; drawings: plan, elevation, section and rafters, the end of every bolt and every bought stick with its cuts, as SVG; near-misses: small changes of the structure that save, which takes half as long again.",
    ),
    request: form,
    heavy: true,
    streams: true,
    run: ({ body: { request, digest }, query: { include } }, watch): Made => {
      const stages = new Stages(ESTIMATE_STAGES, watch);
      const made = blamingOverrides(request, () => estimate(request, planners(stages), stages));
      return include.includes("near-misses")
        ? { made, digest, misses: nearMisses(request, planners(stages)) }
        : { made, digest };
    },
    faces: {
      "application/json": json({
        description: "The estimate.",
        schema: EstimateSchema,
        example: answerExample<z.output<typeof EstimateSchema>>("makeEstimate"),
        render: ({ made, digest, misses }: Made, { include }: Including<Include>) =>
          shownEstimate(made, provenance(digest), include, misses),
      }),
    },
  }),
  call({
    method: "post",
    path: "/v1/takeoffs",
    id: "makeTakeoffs",
    tag: "Estimating",
    summary: "What a structure takes",
    description: [
      "Pieces, geometry, covering, fasteners, finish and weights; only the structure is needed, and no prices.",
      "Overrides may name the cells of these alone; lines of your own, held plans and coverings to compare are not",
      "looked at.",
    ].join(" "),
    query: including(
      TAKEOFF_INCLUDES,
      "sheet: every cell; workings: formulas, sources and ranges of the cells shown; drawings: plan, elevation, section and rafters as SVG; near-misses: small changes of the structure that save, by the catalog's prices or, without any, in hours.",
    ),
    request: form,
    // Near misses are priced, which takes too long for the thread that answers.
    heavyWhen: ({ include }) => include.includes("near-misses"),
    run: ({ body: { request, digest }, query: { include } }): Taken => ({ taken: takeOff(request, include), digest }),
    faces: {
      "application/json": json({
        description: "The takeoffs.",
        schema: TakeoffsSchema,
        example: answerExample<z.output<typeof TakeoffsSchema>>("makeTakeoffs"),
        render: ({ taken, digest }: Taken, { include }: Including<TakeoffInclude>) =>
          shownTakeoffs(taken, provenance(digest), include),
      }),
    },
  }),
  call({
    method: "post",
    path: "/v1/covering-comparisons",
    id: "compareCoverings",
    tag: "Estimating",
    summary: "Which roof: coverings side by side",
    description: [
      "One roof under several coverings, each a whole system with its deck as bought: cost now, cost for each year of its",
      "life, hours, weight, and whether the code allows it at this slope, with the clause. Best first: allowed ones, then",
      "wholly priced ones, then by cost a year. Names of coverings stand in options.coverings; all where it is left out.",
      "A part without a price is a line without an amount, never zero. Overrides may name the cells of takeoffs and of",
      "coverings.<kind>; the covering that the structure has keeps its own, under covering.",
    ].join(" "),
    query: including(
      COMPARISON_INCLUDES,
      "sheet: every cell; workings: formulas, sources and ranges of the cells shown; drawings: each slope with its panels or courses as SVG.",
    ),
    request: body({ schema: estimateRequest, examples: COMPARISON_EXAMPLES, read: readAsked }),
    run: ({ body: { request, digest } }): Compared => ({
      compared: blamingOverrides(request, () => compareRoof(request)),
      digest,
    }),
    faces: {
      "application/json": json({
        description: "The coverings.",
        schema: ComparisonSchema,
        example: answerExample<z.output<typeof ComparisonSchema>>("compareCoverings"),
        render: ({ compared, digest }: Compared, { include }: Including<ComparisonInclude>) =>
          shownComparison(compared, provenance(digest), include),
      }),
    },
  }),
];
