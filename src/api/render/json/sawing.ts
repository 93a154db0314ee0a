/** Logs and sawing plans as JSON: what to do at the mill, log by log, in the order of the work. */
import { z } from "zod";
import { measuredValue } from "../../../catalog/reading.js";
import type { Basis } from "../../../estimate/basis.js";
import type { RouteCells } from "../../../estimate/compare/route.js";
import { explainSawing } from "../../../estimate/salvage/explain-sawing.js";
import { missInWords } from "../../../estimate/salvage/miss-words.js";
import type { SawLog } from "../../../estimate/salvage/sawing-problem.js";
import type { SoundLog } from "../../../estimate/salvage/sound-wood.js";
import { BoltSchema, BoltWriter } from "./bolt.js";
import { routeField, routeKey } from "./decision.js";
import { amount, LabeledSchema, labeled } from "./figures.js";
import type { MarkBook } from "./marks.js";

const text = (describe: string) => z.string().describe(describe);

const ScaleSchema = z
  .strictObject({
    international: measuredValue.describe("International 1/4-inch rule."),
    scribner: measuredValue.describe("Scribner rule."),
    doyle: measuredValue.describe("Doyle rule."),
    cubic: measuredValue.describe("Cubic volume by Smalian."),
  })
  .meta({ id: "LogScale", description: "What a log is reckoned to hold." });

const LogSchema = z
  .strictObject({
    name: text("Name of the log; its cells are called logs.<name>.<…>."),
    species: text("Species."),
    dirty: z.boolean().describe("Whether its bark is gritty."),
    length: measuredValue.describe("Sound length."),
    smallDiameter: measuredValue.describe("Sound wood at the small end."),
    largeDiameter: measuredValue.describe("Sound wood at the large end."),
    sweep: measuredValue.describe("Sweep over the sound length."),
    rotSmall: measuredValue.describe("Rotten heart at the small end."),
    rotLarge: measuredValue.describe("Rotten heart at the large end."),
    bark: measuredValue.describe("Bark, one side."),
    scale: ScaleSchema.describe("By the log rules."),
    weight: measuredValue.describe("Green."),
    value: measuredValue.nullable().describe("What it would fetch; null where nothing was said."),
  })
  .meta({ id: "SoundLog", description: "A log as sound wood." });

const LogPlanSchema = z
  .strictObject({
    log: text("Name of the log."),
    bolts: z.array(BoltSchema).describe("Its bolts, from the small end."),
  })
  .meta({ id: "LogSteps", description: "What is done with one log." });

const ShortSchema = z
  .strictObject({
    group: text("Name of the piece group."),
    label: text("In words."),
    wanted: z.int().describe("Pieces wanted from the logs, spares included."),
    missing: z.int().describe("Pieces that do not come out of the logs."),
    why: text("What the nearest log lacks."),
  })
  .meta({ id: "ShortGroup", description: "Pieces that have to be bought although their group is milled." });

const PlanSchema = z
  .strictObject({
    route: routeField(),
    covers: text("How good the plan is known to be."),
    work: z.array(LabeledSchema).describe("What its cuts amount to."),
    logs: z.array(LogPlanSchema).describe("Logs that are sawn, with their cut lists."),
    unused: z.array(z.string()).describe("Logs that are left lying."),
    short: z.array(ShortSchema).describe("What the logs do not hold."),
  })
  .meta({ id: "RouteSawing", description: "The sawing plan of one route." });

export const SawingSchema = z
  .strictObject({
    logs: z.array(LogSchema).describe("Every log: its sound wood and its scale."),
    plans: z.array(PlanSchema).describe("One plan for each route that mills."),
  })
  .meta({ id: "Sawing", description: "Logs and how to saw them." });

/** Logs, and the plan of each route that has one. */
export function shownSawing(
  basis: Basis,
  routes: readonly RouteCells[],
  marksOf: (route: RouteCells) => MarkBook,
  drawings: boolean,
): z.output<typeof SawingSchema> {
  return {
    logs: shownLogs(basis),
    plans: routes.flatMap((route) => (route.plan.sawing ? [shownPlan(basis, route, marksOf(route), drawings)] : [])),
  };
}

function shownLogs({ logs }: Basis): z.output<typeof LogSchema>[] {
  return logs.map(shownLog);
}

function shownLog(log: SoundLog): z.output<typeof LogSchema> {
  const { name, species, dirty, scale } = log;
  return {
    ...{ name, species, dirty },
    length: amount(log.length),
    smallDiameter: amount(log.smallDiameter),
    largeDiameter: amount(log.largeDiameter),
    sweep: amount(log.sweep),
    rotSmall: amount(log.rotSmall),
    rotLarge: amount(log.rotLarge),
    bark: amount(log.bark),
    scale: {
      international: amount(scale.international),
      scribner: amount(scale.scribner),
      doyle: amount(scale.doyle),
      cubic: amount(scale.smalian),
    },
    weight: amount(log.weight),
    value: log.value ? amount(log.value) : null,
  };
}

function shownPlan(basis: Basis, route: RouteCells, marks: MarkBook, drawings: boolean): z.output<typeof PlanSchema> {
  const { sheet, logs } = basis;
  const sawing = route.plan.sawing as NonNullable<RouteCells["plan"]["sawing"]>;
  const { problem, plan, proof } = sawing;
  const { system } = basis.request;
  const writer = new BoltWriter({ problem, system, marks, drawings: drawings ? routeKey(route) : undefined });
  const sawn = explainSawing(problem, plan).filter(({ bolts }) => bolts.length > 0);
  const used = new Set(sawn.map(({ log }) => log));
  return {
    route: routeKey(route),
    covers: proof.covers,
    work: sheet.cells.filter(({ name }) => name.startsWith(`${route.plan.key}.cuts.`)).map(labeled),
    logs: sawn.map(({ log, bolts }) => {
      const sawLog = problem.logs.find(({ name }) => name === log) as SawLog;
      const place = (i: number) => ({ log: sawLog, number: i + 1, of: bolts.length });
      return { log, bolts: bolts.toSorted((a, b) => a.z0 - b.z0).map((bolt, i) => writer.bolt(bolt, place(i))) };
    }),
    unused: logs.map(({ name }) => name).filter((name) => !used.has(name)),
    short: shownShort(basis, sawing),
  };
}

function shownShort(
  { groups }: Basis,
  { problem, plan }: Pick<NonNullable<RouteCells["plan"]["sawing"]>, "problem" | "plan">,
): z.output<typeof ShortSchema>[] {
  return problem.groups.flatMap((wanted) => {
    const missing = plan.buy[wanted.name] ?? 0;
    const label = groups.find(({ group }) => group.name === wanted.name)?.group.label ?? wanted.name;
    const why = () => missInWords(problem, wanted);
    return missing === 0 ? [] : [{ group: wanted.name, label, wanted: wanted.count, missing, why: why() }];
  });
}
