/** A sawing plan as JSON: what to do at the mill, log by log, in the order of the work; what comes of it, and what is short. */
import { z } from "zod";
import type { Basis } from "../../../estimate/basis.js";
import type { PlannedLogs } from "../../../estimate/plan.js";
import { trimmed } from "../../../estimate/quantity/decimal.js";
import { explainSawing } from "../../../estimate/salvage/explain-sawing.js";
import { missInWords } from "../../../estimate/salvage/miss-words.js";
import { BOARD_RULES, CUBIC_RULES, type YieldCells } from "../../../estimate/salvage/overrun.js";
import type { SawLog } from "../../../estimate/salvage/sawing-problem.js";
import { BoltSchema, BoltWriter } from "./bolt.js";
import { ExtrasSchema, shownExtras } from "./extras.js";
import { decimalField, FigureSchema, figure, figureOrNull, LabeledSchema, labeled } from "./figures.js";
import { type MarkBook, markRuns } from "./marks.js";

const text = (describe: string) => z.string().describe(describe);

const YieldsSchema = z
  .strictObject({
    group: text("Piece group."),
    count: z.int().describe("Pieces, spares among them."),
    marks: text("Their marks, runs shortened; what bears none is a spare."),
  })
  .meta({ id: "LogYield", description: "Pieces of one group that a log gives." });

const LogPlanSchema = z
  .strictObject({
    log: text("Name of the log."),
    yields: z.array(YieldsSchema).describe("Which pieces it supplies."),
    bolts: z.array(BoltSchema).describe("Its bolts, from the small end."),
  })
  .meta({ id: "LogSteps", description: "What is done with one log." });

const ShortSchema = z
  .strictObject({
    group: text("Name of the piece group."),
    label: text("In words."),
    wanted: z.int().describe("Pieces wanted from the logs, spares included."),
    missing: z.int().describe("Pieces that do not come out of the logs."),
    why: text("Which log comes nearest, and what it lacks."),
  })
  .meta({ id: "ShortGroup", description: "Pieces that have to be bought although their group is milled." });

const ScaledSchema = z
  .strictObject({
    rule: z.enum(["international", "scribner", "doyle", "smalian", "huber", "newton"]).describe("Which rule."),
    label: text("In words."),
    scale: FigureSchema.describe("What the logs that are sawn are reckoned to hold."),
    share: FigureSchema.nullable().describe(
      "Against a log rule the overrun: lumber sawn over scale, less one; negative where it is less. Of a cubic volume the part that becomes lumber. Null where the scale is nothing.",
    ),
  })
  .meta({ id: "ScaledBy", description: "Lumber sawn beside what the logs scale by one rule." });

const YieldSchema = z
  .strictObject({
    lumber: FigureSchema.describe("Lumber sawn, rough and full, spares included."),
    rules: z.array(ScaledSchema).describe("International 1/4-inch, Scribner, Doyle; Smalian, Huber, Newton."),
  })
  .meta({ id: "PlanYield", description: "What a plan gets out of its logs." });

/** Fields of every sawing plan. */
export const sawPlanFields = {
  covers: text("How good the plan is known to be, and among which plans."),
  gap: decimalField("")
    .nullable()
    .describe("Share of its cost by which the plan may at most be dearer than the best of those; null where unknown."),
  work: z.array(LabeledSchema).describe("What its cuts amount to."),
  yield: YieldSchema.describe("Lumber beside log scale."),
  logs: z.array(LogPlanSchema).describe("Logs that are sawn, with their cut lists."),
  unused: z.array(z.string()).describe("Logs that are left lying."),
  short: z.array(ShortSchema).describe("What the logs do not hold."),
  extras: ExtrasSchema.optional(),
};
const SawPlanSchema = z.strictObject(sawPlanFields);

/** A plan to be shown. */
export interface ShownPlan {
  readonly basis: Basis;
  /** Begins the names of its cells, and the ids within its images. */
  readonly key: string;
  readonly sawing: PlannedLogs;
  readonly yields: YieldCells;
  readonly marks: MarkBook;
  readonly drawings: boolean;
  /** Boards that could come out of what is left. */
  readonly extras: boolean;
}

/** The plan's own fields. */
export function shownSawPlan({
  basis,
  key,
  sawing,
  yields,
  marks,
  drawings,
  extras,
}: ShownPlan): z.output<typeof SawPlanSchema> {
  const { sheet, logs, request } = basis;
  const { problem, plan, proof } = sawing;
  const writer = new BoltWriter({ problem, system: request.system, marks, drawings: drawings ? key : undefined });
  const sawn = explainSawing(problem, plan).filter(({ bolts }) => bolts.length > 0);
  const used = new Set(sawn.map(({ log }) => log));
  return {
    covers: proof.covers,
    gap: proof.gap ? trimmed(proof.gap, 6) : null,
    work: sheet.cells.filter(({ name }) => name.startsWith(`${key}.cuts.`)).map(labeled),
    yield: shownYield(yields),
    logs: sawn.map(({ log, bolts }) => {
      const sawLog = problem.logs.find(({ name }) => name === log) as SawLog;
      const inOrder = bolts.toSorted((a, b) => a.z0 - b.z0);
      const written = inOrder.map((bolt, i) => writer.bolt(bolt, { log: sawLog, number: i + 1, of: bolts.length }));
      return { log, yields: yieldsOf(written), bolts: written };
    }),
    unused: logs.map(({ name }) => name).filter((name) => !used.has(name)),
    short: shownShort(basis, sawing),
    ...(extras && { extras: shownExtras(basis, sawing) }),
  };
}

function shownYield({ lumber, board, cubic }: YieldCells): z.output<typeof YieldSchema> {
  const rules = [...board, ...cubic].map(({ rule, scale, share }) => ({
    rule,
    label: { ...BOARD_RULES, ...CUBIC_RULES }[rule],
    scale: figure(scale),
    share: figureOrNull(share),
  }));
  return { lumber: figure(lumber), rules };
}

/** Pieces of a log by group, in the order in which they come up. */
function yieldsOf(bolts: readonly z.output<typeof BoltSchema>[]): z.output<typeof YieldsSchema>[] {
  const marks = new Map<string, (string | null)[]>();
  for (const { pieces, marks: strips } of bolts.flatMap(({ slabs }) => slabs.flatMap((slab) => slab.strips))) {
    const groups = pieces.flatMap(({ group, count }) => Array<string>(count).fill(group));
    for (const strip of strips) {
      for (const [i, group] of groups.entries()) marks.set(group, [...(marks.get(group) ?? []), strip[i] ?? null]);
    }
  }
  return [...marks].map(([group, own]) => ({ group, count: own.length, marks: markRuns(own) }));
}

function shownShort({ groups }: Basis, { problem, plan }: PlannedLogs): z.output<typeof ShortSchema>[] {
  return problem.groups.flatMap((wanted) => {
    const missing = plan.buy[wanted.name] ?? 0;
    const label = groups.find(({ group }) => group.name === wanted.name)?.group.label ?? wanted.name;
    const why = () => missInWords(problem, wanted);
    return missing === 0 ? [] : [{ group: wanted.name, label, wanted: wanted.count, missing, why: why() }];
  });
}
