/** Logs and sawing plans as JSON: what to do at the mill, log by log, in the order of the work. */
import { z } from "zod";
import { measuredValue } from "../../../catalog/reading.js";
import type { Basis } from "../../../estimate/basis.js";
import type { RouteCells } from "../../../estimate/compare/route.js";
import { decimal } from "../../../estimate/quantity/decimal.js";
import { type MeasureSystem, marked, markedSmall } from "../../../estimate/quantity/text.js";
import { unit } from "../../../estimate/quantity/unit.js";
import {
  type BoltSteps,
  explainSawing,
  type SlabSteps,
  type StripSteps,
} from "../../../estimate/salvage/explain-sawing.js";
import { missInWords } from "../../../estimate/salvage/miss-words.js";
import type { SoundLog } from "../../../estimate/salvage/sound-wood.js";
import { cutsFields, inRuns } from "./cut-pieces.js";
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

const StripSchema = z
  .strictObject({
    width: text("Rough width."),
    times: z.int().describe("Strips alike, side by side."),
    ...cutsFields,
  })
  .meta({ id: "Strip", description: "Strips ripped from a slab." });

const SlabSchema = z
  .strictObject({
    thickness: text("Rough thickness."),
    from: text("Lower face, above the sawing axis; negative below it."),
    to: text("Upper face, above the sawing axis."),
    onMill: z.boolean().describe("Whether it goes back on the mill to be ripped: it is deeper than the rip saw."),
    strips: z.array(StripSchema).describe("Side by side, equal neighbours together."),
  })
  .meta({ id: "Slab", description: "A slab, as it comes off the bolt." });

const BoltSchema = z
  .strictObject({
    from: text("Where it begins, from the log's small end."),
    to: text("Where it ends."),
    length: text("Its length."),
    opening: text("First cut: the lower edge of its kerf above the sawing axis."),
    cuts: z.int().describe("Cuts of the mill through the whole width."),
    turns: z.int().describe("Cants laid on the mill again."),
    slabs: z.array(SlabSchema).describe("From the top."),
  })
  .meta({ id: "Bolt", description: "A length bucked from a log, and how it is sawn." });

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
): z.output<typeof SawingSchema> {
  return {
    logs: shownLogs(basis),
    plans: routes.flatMap((route) => (route.plan.sawing ? [shownPlan(basis, route, marksOf(route))] : [])),
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

function shownPlan(basis: Basis, route: RouteCells, marks: MarkBook): z.output<typeof PlanSchema> {
  const { sheet, logs } = basis;
  const sawing = route.plan.sawing as NonNullable<RouteCells["plan"]["sawing"]>;
  const { problem, plan, proof } = sawing;
  const write = new Writer(problem.gridMm, basis.request.system, marks);
  const sawn = explainSawing(problem, plan).filter(({ bolts }) => bolts.length > 0);
  const used = new Set(sawn.map(({ log }) => log));
  return {
    route: routeKey(route),
    covers: proof.covers,
    work: sheet.cells.filter(({ name }) => name.startsWith(`${route.plan.key}.cuts.`)).map(labeled),
    logs: sawn.map(({ log, bolts }) => ({
      log,
      bolts: bolts.toSorted((a, b) => a.z0 - b.z0).map((bolt) => write.bolt(bolt)),
    })),
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

/** Whole grid steps as lengths that a person marks. */
class Writer {
  constructor(
    private readonly gridMm: string,
    private readonly system: MeasureSystem,
    private readonly marks: MarkBook,
  ) {}

  bolt({ z0, z1, opening, stackCuts, slabs, turns }: BoltSteps): z.output<typeof BoltSchema> {
    return {
      from: this.long(z0),
      to: this.long(z1),
      length: this.long(z1 - z0),
      opening: this.small(opening),
      cuts: stackCuts.length,
      turns,
      slabs: slabs.map((slab) => this.slab(slab)),
    };
  }

  private slab({ y0, y1, onMill, strips }: SlabSteps): z.output<typeof SlabSchema> {
    return {
      thickness: this.small(y1 - y0),
      from: this.small(y0),
      to: this.small(y1),
      onMill,
      strips: alike(strips).map((equal) => this.strips(equal)),
    };
  }

  private strips(equal: readonly StripSteps[]): z.output<typeof StripSchema> {
    const { x0, x1, pieces } = equal[0] as StripSteps;
    return {
      width: this.small(x1 - x0),
      times: equal.length,
      pieces: inRuns(pieces.map(({ group, length }) => ({ group, length: this.long(length) }))),
      marks: equal.map((strip) => strip.pieces.map(({ group }) => this.marks.next(group))),
    };
  }

  private long(steps: number): string {
    return marked({ value: decimal(this.gridMm).times(steps), unit: unit("mm") }, this.system);
  }

  private small(steps: number): string {
    return markedSmall({ value: decimal(this.gridMm).times(steps), unit: unit("mm") }, this.system);
  }
}

/** Equal neighbours together. */
function alike(strips: readonly StripSteps[]): StripSteps[][] {
  const key = ({ x0, x1, pieces }: StripSteps) => JSON.stringify([x1 - x0, pieces]);
  const found: StripSteps[][] = [];
  for (const strip of strips) {
    const last = found.at(-1);
    if (last?.[0] && key(last[0]) === key(strip)) last.push(strip);
    else found.push([strip]);
  }
  return found;
}
