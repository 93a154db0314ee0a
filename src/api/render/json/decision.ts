/** Mill or buy, as JSON. */
import { z } from "zod";
import type { Comparison } from "../../../estimate/compare/decision.js";
import { type GroupSaving, rankedByHour } from "../../../estimate/compare/group-savings.js";
import type { RouteCells } from "../../../estimate/compare/route.js";
import type { Estimate } from "../../../estimate/estimate.js";
import { fixed } from "../../../estimate/quantity/decimal.js";
import { distinctRoutes } from "../routes.js";
import { decimalField, FigureSchema, figure, figureOrNull } from "./figures.js";
import { FrontierSchema, SearchSchema, shownMix, shownSearch } from "./mix-search.js";

const words = (describe: string) => z.array(z.string()).describe(describe);

const GroupReasonSchema = z
  .strictObject({
    group: z.string().describe("Name of the piece group."),
    side: z
      .enum(["mill", "buy", "both"])
      .describe("Whether it is milled or bought; both where some pieces are bought."),
    milled: decimalField("Pieces that come from the logs."),
    bought: decimalField("Pieces that are bought."),
    why: z.string().describe("Why, in a plain sentence or two."),
  })
  .meta({ id: "GroupReason", description: "One group: milled or bought, and why." });

const VerdictSchema = z
  .strictObject({
    headline: z.string().describe("What to mill and what to buy."),
    reasons: words("Why: cash, hours, whether the logs hold it, when it is dry."),
    changes: words(
      "What would make another way the best: an hour worth more or less, dearer lumber, the building office.",
    ),
    doubt: z.string().describe("What is least sure of all that it rests on."),
    first: z.string().describe("What to do before the first cut."),
    mill: words("Groups to mill, in words."),
    buy: words("Groups to buy, in words."),
    groups: z.array(GroupReasonSchema).describe("Why each group is milled or bought, in the order of the cut list."),
  })
  .meta({ id: "Verdict", description: "The decision in words." });

const ROUTE_KEYS = ["milled", "hired", "mixed", "bought"] as const;
/** Which route. */
export const routeField = (describe = "Name of the route.") => z.enum(ROUTE_KEYS).describe(describe);
export type RouteKey = (typeof ROUTE_KEYS)[number];

/** A plan's key, as answers name it; anything else is a bug. */
export function routeKey({ plan }: Pick<RouteCells, "plan">): RouteKey {
  const key = ROUTE_KEYS.find((known) => known === plan.key);
  if (!key) throw new Error(`no route is called ${plan.key}`);
  return key;
}

const RouteSchema = z
  .strictObject({
    route: routeField(),
    label: z.string().describe("In words."),
    mills: words("Names of the groups that it mills."),
    hired: z.boolean().describe("Whether a hired sawyer mills them."),
    cash: FigureSchema.describe("Everything that is paid, tax included."),
    hours: FigureSchema.describe("Person-hours in all."),
    elapsed: FigureSchema.describe("Hours with the crew."),
    total: FigureSchema.describe("Cash, and hours at the value of an hour."),
    unpriced: z.int().describe("Lines that have no price yet; their cost is not in the cash."),
  })
  .meta({ id: "RouteTotals", description: "What one route comes to." });

const ComparisonSchema = z
  .strictObject({
    cashSaved: FigureSchema.describe("Cash saved against buying everything; negative where it costs more."),
    extraHours: FigureSchema.describe("Person-hours more than buying everything takes."),
    payPerHour: FigureSchema.describe("Cash saved an extra hour; zero where there are no extra hours."),
  })
  .meta({ id: "RouteComparison", description: "A route against buying everything." });

const GroupSavingSchema = z
  .strictObject({
    group: z.string().describe("Name of the piece group."),
    label: z.string().describe("In words."),
    milled: z.boolean().describe("Whether the best mix mills it."),
    cashSaved: FigureSchema.describe(
      "What the best mix would cost more with this group bought: its cuts left out of the sawing plan, the lumber order planned anew. Where the mix buys it, the same of all milled.",
    ),
    extraHours: FigureSchema.describe("Person-hours that would be spared."),
    payPerHour: FigureSchema.describe("Cash saved an extra hour; zero where there are no extra hours."),
  })
  .meta({ id: "GroupSaving", description: "What milling one group is worth." });

const SharedSchema = z
  .strictObject({
    route: routeField("The route whose saving it makes up, with the groups that this one saws."),
    cash: FigureSchema.describe("Cash that no single group accounts for: set-up, packs, delivery."),
    hours: FigureSchema.describe("Hours that no single group accounts for."),
  })
  .meta({ id: "SharedSaving", description: "What groups share." });

export const DecisionSchema = z
  .strictObject({
    verdict: VerdictSchema.describe("First on every screen."),
    best: routeField("The route with the least total."),
    routes: z.array(RouteSchema).describe("Every route that was worked out, each once."),
    mill: ComparisonSchema.nullable().describe("Milling wherever the logs serve; null where nothing can be milled."),
    hired: ComparisonSchema.nullable().describe(
      "Milling by a hired sawyer; null where shop.sawyer asks for none, and where shop.mill is none: then `mill` is the sawyer's.",
    ),
    mix: ComparisonSchema.nullable().describe("The best mix; null where it is to buy everything."),
    groups: z
      .array(GroupSavingSchema)
      .describe("Group by group: leave one out of the sawing plan. A group that no plan saws is not listed."),
    ranking: words(
      "Names of the groups that the best mix mills by what milling each brings for an hour, all counted in its plan, the best first; what saves money at no extra hours comes before all. Where it mills none, of all milled.",
    ),
    rankingOfBought: words("The same of the groups that the best mix buys, all counted in the plan of all milled."),
    shared: SharedSchema.nullable().describe("With the groups that its route saws it makes up what that route saves."),
    search: SearchSchema.nullable().describe(
      "How the best mix was found; null where it was held or nothing can be milled.",
    ),
    frontier: z
      .array(FrontierSchema)
      .describe("With options.frontier: the best mixes found for every value of an hour, cheapest first; else empty."),
    breakEvenPrice: FigureSchema.nullable().describe(
      "Price of bought lumber before tax at which milling all and buying all cost the same, by the sections that the yard sells by: see `breakEvenMeasure`.",
    ),
    breakEvenMeasure: z
      .enum(["nominal", "actual", "both"])
      .nullable()
      .describe("Whether those sections are nominal or actual; both: nominal of some offers, actual of others."),
    priceNow: FigureSchema.nullable().describe("What the wood that milling replaces costs now, by the same measure."),
  })
  .meta({ id: "Decision", description: "Mill or buy." });

/** The decision of an estimate. */
export function shownDecision({
  basis,
  routes,
  decision,
  verdict,
  searched,
}: Estimate): z.output<typeof DecisionSchema> {
  const { mill, hired, mix, groups, shared, breakEven } = decision;
  return {
    verdict: {
      headline: verdict.headline,
      reasons: [...verdict.reasons],
      changes: [...verdict.changes],
      doubt: verdict.doubt,
      first: verdict.first,
      mill: [...verdict.mill],
      buy: [...verdict.buy],
      groups: verdict.groups.map(({ name, side, milled, bought, why }) => ({
        ...{ group: name, side, why },
        ...{ milled: fixed(milled, 0), bought: fixed(bought, 0) },
      })),
    },
    best: routeKey(routes.mix),
    routes: distinctRoutes(routes).map(shownRoute),
    mill: mill ? shownComparison(mill) : null,
    hired: hired ? shownComparison(hired) : null,
    mix: mix ? shownComparison(mix) : null,
    groups: groups.map((group) => shownSaving(group, routes.mix.plan.sawn.has(group.name))),
    ranking: rankedByHour(groups, shared?.route).map(({ name }) => name),
    rankingOfBought: shared?.route === routes.mill ? [] : rankedByHour(groups, routes.mill).map(({ name }) => name),
    shared: shared ? { route: routeKey(shared.route), cash: figure(shared.cash), hours: figure(shared.hours) } : null,
    search: searched ? shownSearch(searched, basis.catalog.currency) : null,
    frontier: (searched?.frontier ?? []).map((mix, i, all) =>
      shownMix(basis, mix, { before: all[i - 1], next: all[i + 1] }),
    ),
    breakEvenPrice: figureOrNull(breakEven?.price),
    breakEvenMeasure: breakEven?.measure ?? null,
    priceNow: figureOrNull(breakEven?.now),
  };
}

function shownRoute(route: RouteCells): z.output<typeof RouteSchema> {
  return {
    route: routeKey(route),
    label: route.plan.label,
    mills: [...route.plan.sawn],
    hired: route.plan.hired,
    cash: figure(route.cash),
    hours: figure(route.hours),
    elapsed: figure(route.elapsed),
    total: figure(route.total),
    unpriced: route.unpriced,
  };
}

function shownComparison({ cashSaved, extraHours, payPerHour }: Comparison): z.output<typeof ComparisonSchema> {
  return {
    cashSaved: figure(cashSaved),
    extraHours: figure(extraHours),
    payPerHour: figure(payPerHour),
  };
}

function shownSaving(saving: GroupSaving, milled: boolean): z.output<typeof GroupSavingSchema> {
  return { group: saving.name, label: saving.label, milled, ...shownComparison(saving) };
}
