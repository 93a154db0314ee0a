/** A whole estimate as JSON: prints cells, workings and plans that exist, and works out nothing. */
import { z } from "zod";
import type { Estimate } from "../../../estimate/estimate.js";
import { pieceMarks } from "../../../estimate/pieces/cut-list.js";
import { heldPlans } from "../../../estimate/request/held-plans.js";
import { distinctRoutes } from "../routes.js";
import { AboutSchema, about, type Provenance } from "./about.js";
import { CautionsSchema, NoticesSchema, shownCautions, shownNotices } from "./advice.js";
import { CutListSchema, shownCutList } from "./cut-list.js";
import { DecisionSchema, shownDecision } from "./decision.js";
import { EffortSchema, shownEffort } from "./effort.js";
import { FinishSchema, shownFinish } from "./finish.js";
import { GeometrySchema, shownGeometry } from "./geometry.js";
import { JointsSchema, shownJoints } from "./joints.js";
import { MarkBook } from "./marks.js";
import { type FoundMiss, NearMissSchema, shownNearMisses } from "./near-misses.js";
import { PurchasingSchema, shownPurchasing } from "./purchasing.js";
import { RoofCoveringSchema, shownRoof } from "./roof.js";
import { SawingSchema, shownSawing } from "./sawing.js";
import { SheetSchema, shownSheet } from "./sheet.js";

/** What may be asked for beside the lean answer. */
export const INCLUDES = ["sheet", "workings", "plans", "drawings", "near-misses", "work", "extras"] as const;
export type Include = (typeof INCLUDES)[number];

export const EstimateSchema = z
  .strictObject({
    about: AboutSchema.describe("Which request was answered, and by what."),
    decision: DecisionSchema.describe("Mill or buy."),
    cutList: CutListSchema.describe("All pieces."),
    geometry: GeometrySchema.describe("What to set out."),
    sawing: SawingSchema.describe("Logs and how to saw them."),
    purchasing: PurchasingSchema.describe("Shopping lists."),
    coverings: z
      .array(RoofCoveringSchema)
      .describe(
        "The roof covering, or with options.coverings all that are compared, best first; empty where nothing is covered.",
      ),
    fasteners: JointsSchema.nullable().describe(
      "Connections; null where the structure is a list of pieces of which none says its joint.",
    ),
    finish: FinishSchema.describe("Faces and finish of the best route."),
    effort: EffortSchema.describe("Hours by stage."),
    nearMisses: z
      .array(NearMissSchema)
      .optional()
      .describe("With include=near-misses: small changes of the structure that save, the most saving first."),
    cautions: CautionsSchema,
    notices: NoticesSchema,
    sheet: SheetSchema.describe("The cells behind all figures."),
    heldPlans: heldPlans.optional().describe("With include=plans: the plans, in the form that a request takes back."),
  })
  .meta({ id: "Estimate", description: "A whole estimate. It never says that a structure is strong enough." });

/** The estimate with what was asked for beside it. */
export function shownEstimate(
  estimate: Estimate,
  provenance: Provenance,
  include: readonly Include[],
  misses?: readonly FoundMiss[],
): z.output<typeof EstimateSchema> {
  const { basis, takeoffs, routes } = estimate;
  const { system } = basis.request;
  const distinct = distinctRoutes(routes);
  const marks = pieceMarks(basis.sheet, basis.cutList.groups);
  // One book a route: what is sawn takes its marks first, what is bought the rest.
  const books = new Map(distinct.map((route) => [route, new MarkBook(marks)]));
  const marksOf = (route: (typeof distinct)[number]) => books.get(route) as MarkBook;
  return {
    about: about(basis, provenance),
    decision: shownDecision(estimate),
    cutList: shownCutList(basis, takeoffs.weights, routes.mix.plan.sawn),
    geometry: shownGeometry(basis, include.includes("drawings")),
    sawing: shownSawing(estimate, distinct, {
      marksOf,
      drawings: include.includes("drawings"),
      all: include.includes("work"),
      extras: include.includes("extras"),
    }),
    purchasing: shownPurchasing(estimate, distinct, {
      marksOf,
      all: include.includes("work"),
      drawings: include.includes("drawings"),
    }),
    coverings: shownRoof(
      { built: takeoffs.covering, compared: estimate.coverings },
      system,
      include.includes("drawings"),
    ),
    fasteners: shownJoints(takeoffs.fasteners, system),
    finish: shownFinish(routes.mix.finish.takeoff, { yearlyCost: routes.mix.finish.upkeep }),
    effort: shownEffort(estimate, distinct, include.includes("work")),
    ...(misses && { nearMisses: shownNearMisses(misses, basis.catalog.currency) }),
    cautions: shownCautions(estimate.cautions),
    notices: shownNotices(estimate.notices),
    sheet: shownSheet(basis.sheet, { whole: include.includes("sheet"), workings: include.includes("workings") }),
    ...(include.includes("plans") && { heldPlans: estimate.plans }),
  };
}
