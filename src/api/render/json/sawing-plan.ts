/** A sawing plan by itself as JSON: pieces, logs, the plan and its hours. */
import { z } from "zod";
import { pieceMarks } from "../../../estimate/pieces/cut-list.js";
import { markedSection } from "../../../estimate/quantity/text.js";
import { sawingPlanShape } from "../../../estimate/request/held-plans.js";
import { placeInSawing } from "../../../estimate/request/sawing-request.js";
import { SAWING_KEY, type SawnLogs } from "../../../estimate/sawn-logs.js";
import { AboutSchema, about, type Provenance } from "./about.js";
import { CautionsSchema, NoticesSchema, shownCautions, shownNotices } from "./advice.js";
import { FigureSchema, figure, LabeledSchema, LengthSchema, labeled, lengthFigure } from "./figures.js";
import { MarkBook } from "./marks.js";
import { sawPlanFields, shownSawPlan } from "./saw-plan.js";
import { SheetSchema, shownSheet } from "./sheet.js";
import { LogSchema, shownLogs } from "./sound-log.js";

/** What may be asked for beside the lean answer. */
export const SAWING_INCLUDES = ["sheet", "workings", "plan", "drawings"] as const;
export type SawingInclude = (typeof SAWING_INCLUDES)[number];

const WantedSchema = z
  .strictObject({
    name: z.string().describe("Name of the group."),
    label: z.string().describe("In words."),
    count: FigureSchema.describe("Pieces."),
    marks: z.array(z.string()).describe("Marks to paint on the pieces."),
    finished: z.string().describe("Section as built."),
    rough: z.string().nullable().describe("Section as sawn; null where it is not milled."),
    length: LengthSchema.nullable().describe("Length as sawn; null where it is not milled."),
    spares: FigureSchema.nullable().describe("Rejects expected, sawn or bought besides; null where it is not milled."),
    notMilled: z.string().nullable().describe("Why it is not milled; null when it may be."),
  })
  .meta({ id: "WantedPieces", description: "One piece group that the logs are asked for." });

const HoursSchema = z
  .strictObject({
    stages: z.array(LabeledSchema).describe("Person-hours by stage, in the order of the work."),
    total: FigureSchema.describe("Person-hours in all."),
    mill: FigureSchema.describe("Hours at the mill, elapsed."),
  })
  .meta({ id: "MillingHours", description: "What the milling takes." });

const PlanSchema = z
  .strictObject(sawPlanFields)
  .meta({ id: "LogsPlan", description: "How the logs are sawn, what comes of them, and what is short." });

export const SawingPlanSchema = z
  .strictObject({
    about: AboutSchema.describe("Which request was answered, and by what."),
    pieces: z.array(WantedSchema).describe("What the logs are asked for."),
    logs: z.array(LogSchema).describe("Every log: its sound wood and its scale."),
    plan: PlanSchema.describe("The plan."),
    hours: HoursSchema.describe("What the milling takes."),
    cautions: CautionsSchema,
    notices: NoticesSchema,
    sheet: SheetSchema.describe("The cells behind all figures."),
    heldPlan: sawingPlanShape
      .optional()
      .describe("With include=plan: the plan in whole grid steps, in the form that a request takes back."),
  })
  .meta({ id: "SawnLogs", description: "Whether the logs hold the pieces, and how to saw them." });

/** The plan with what was asked for beside it. */
export function shownSawingPlan(
  sawn: SawnLogs,
  provenance: Provenance,
  include: readonly SawingInclude[],
): z.output<typeof SawingPlanSchema> {
  const { basis, sawing, yields, milling, hours } = sawn;
  const marks = new MarkBook(pieceMarks(basis.sheet, basis.cutList.groups));
  return {
    about: about(basis, provenance),
    pieces: shownWanted(sawn),
    logs: shownLogs(basis),
    plan: shownSawPlan({
      ...{ basis, key: SAWING_KEY, sawing, yields, marks },
      drawings: include.includes("drawings"),
      extras: true,
    }),
    hours: {
      stages: Object.values(milling.stages).map(labeled),
      total: figure(hours),
      mill: figure(milling.millHours),
    },
    cautions: shownCautions(sawn.cautions),
    notices: shownNotices(sawn.notices.map((one) => ({ ...one, ...(one.at && { at: placeInSawing(one.at) }) }))),
    sheet: shownSheet(basis.sheet, { whole: include.includes("sheet"), workings: include.includes("workings") }),
    ...(include.includes("plan") && { heldPlan: sawing.plan as z.output<typeof sawingPlanShape> }),
  };
}

function shownWanted({ basis }: SawnLogs): z.output<typeof WantedSchema>[] {
  const { system } = basis.request;
  const marks = pieceMarks(basis.sheet, basis.cutList.groups);
  return basis.groups.map(({ group, millable, notMilled }) => ({
    name: group.name,
    label: group.label,
    count: figure(group.count),
    marks: [...(marks.get(group.name) ?? [])],
    finished: markedSection(group.thickness, group.width, system),
    rough: millable ? markedSection(millable.rough.thickness, millable.rough.width, system) : null,
    length: millable ? lengthFigure(millable.rough.length, system) : null,
    spares: millable ? figure(millable.spares) : null,
    notMilled: notMilled ?? null,
  }));
}
