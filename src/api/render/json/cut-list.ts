/** The cut list as JSON: every piece group with its marks, finished and rough sizes, weight, and how it is made. */
import { z } from "zod";
import type { Basis } from "../../../estimate/basis.js";
import type { GroupBasis } from "../../../estimate/group-basis.js";
import { pieceMarks } from "../../../estimate/pieces/cut-list.js";
import type { PieceGroup, PieceRules } from "../../../estimate/pieces/piece-group.js";
import { type MeasureSystem, markedSection, markedSmall } from "../../../estimate/quantity/text.js";
import type { Cell } from "../../../estimate/sheet/expression.js";
import type { WeightTakeoff } from "../../../estimate/takeoff/weight.js";
import { FigureSchema, figure, figureOrNull, LengthSchema, lengthFigure } from "./figures.js";

const SizeSchema = z
  .strictObject({
    section: z.string().describe("Thickness × width, as it is said."),
    thickness: FigureSchema.describe("Thickness."),
    width: FigureSchema.describe("Width."),
    length: LengthSchema.describe("Length of the shortest straight piece that will do."),
  })
  .meta({ id: "PieceSize", description: "Size of one piece." });

const RulesSchema = z
  .strictObject({
    species: z.array(z.string()).describe("Species that serve; empty when any does."),
    heart: z.enum(["any", "free", "boxed"]).describe("Where the pith may be."),
    wane: z.string().describe("Wane allowed on each corner of a wide face."),
    surface: z.enum(["rough", "dressed"]).describe("As sawn, or dressed."),
    seasoning: z.enum(["green", "dried"]).describe("Built in wet, or dried first."),
    structural: z.boolean().describe("Whether it carries the building."),
    hiddenFaces: z.enum(["none", "one-wide", "both-wide"]).describe("Wide faces that no finish reaches."),
    joint: z.string().describe("How it is joined."),
    source: z.enum(["mill", "buy", "auto"]).describe("As the request pins it."),
  })
  .meta({ id: "PieceRules", description: "How pieces of a group are made." });

const WeightSchema = z
  .strictObject({
    green: FigureSchema.describe("One piece, green."),
    dry: FigureSchema.describe("One piece, dry."),
    lifted: FigureSchema.describe("One piece as it is raised."),
    people: FigureSchema.describe("People to lift it, by load alone."),
  })
  .meta({ id: "PieceWeight", description: "Weight of one piece." });

const BoughtAsSchema = z
  .strictObject({
    offer: z.string().nullable().describe("Name of the lumber offer that serves; null when none does."),
    label: z.string().nullable().describe("The offer in words."),
    differences: z.array(z.string()).describe("How the bought piece differs from what is wanted."),
    add: z.string().nullable().describe("What to add to the catalog; null when an offer serves."),
  })
  .meta({ id: "BoughtAs", description: "What is bought for a group." });

const GroupSchema = z
  .strictObject({
    name: z.string().describe("Name of the group."),
    label: z.string().describe("In words."),
    role: z.string().describe("What the pieces do."),
    count: FigureSchema.describe("Pieces."),
    marks: z.array(z.string()).describe("Marks to paint on the pieces."),
    finished: SizeSchema.describe("As built."),
    rough: SizeSchema.nullable().describe("As sawn; null when it is not milled."),
    begins: z
      .array(LengthSchema)
      .describe(
        "Where its pieces begin in each run that is spliced, from the run's left end; empty of what is no run.",
      ),
    spares: FigureSchema.nullable().describe("Rejects expected, which are sawn or bought besides."),
    notMilled: z.string().nullable().describe("Why it is not milled; null when it may be."),
    route: z.enum(["mill", "buy"]).nullable().describe("In the best mix; null where routes are not asked for."),
    boughtAs: BoughtAsSchema.describe("What is bought, where it is."),
    volume: FigureSchema.describe("Wood of all pieces, actual."),
    weight: WeightSchema.nullable().describe("Weight of one piece."),
    rules: RulesSchema.describe("How it is made."),
  })
  .meta({ id: "CutListGroup", description: "One piece group." });

export const CutListSchema = z
  .strictObject({
    pieces: FigureSchema.describe("Pieces in all."),
    volume: FigureSchema.describe("Wood in all, actual."),
    weightGreen: FigureSchema.describe("Weight of all pieces, green."),
    weightDry: FigureSchema.describe("Weight of all pieces, dry."),
    heaviest: FigureSchema.nullable().describe("Heaviest piece as it is raised."),
    personLoad: FigureSchema.describe("Load that one person carries."),
    groups: z.array(GroupSchema).describe("Piece groups, in the order of the work."),
  })
  .meta({ id: "CutList", description: "All pieces of the structure." });

/** @param milled - Groups that the best mix mills; undefined where nobody asked. */
export function shownCutList(
  basis: Basis,
  weights: WeightTakeoff,
  milled: ReadonlySet<string> | undefined,
): z.output<typeof CutListSchema> {
  const { sheet, cutList, groups } = basis;
  const marks = pieceMarks(sheet, cutList.groups);
  const show = (one: GroupBasis): z.output<typeof GroupSchema> => {
    const { name } = one.group;
    return {
      ...shownGroup(one, basis.request.system),
      marks: [...(marks.get(name) ?? [])],
      weight: shownWeight(weights, name),
      route: milled ? (milled.has(name) ? "mill" : "buy") : null,
    };
  };
  return {
    pieces: figure(cutList.pieceCount),
    volume: figure(cutList.volume),
    weightGreen: figure(weights.totalGreen),
    weightDry: figure(weights.totalDry),
    heaviest: figureOrNull(weights.heaviest),
    personLoad: figure(weights.load),
    groups: groups.map(show),
  };
}

function shownGroup({ group, millable, notMilled, substitution }: GroupBasis, system: MeasureSystem) {
  const offered = "offer" in substitution ? substitution : undefined;
  return {
    name: group.name,
    label: group.label,
    role: group.role,
    count: figure(group.count),
    finished: shownSize(group, system),
    rough: millable ? shownSize(millable.rough, system) : null,
    begins: (group.begins ?? []).map((cell) => lengthFigure(cell, system)),
    spares: millable ? figure(millable.spares) : null,
    notMilled: notMilled ?? null,
    boughtAs: {
      offer: offered?.offer.name ?? null,
      label: offered?.offer.label ?? null,
      differences: [...(offered?.differences ?? [])],
      add: "add" in substitution ? substitution.add : null,
    },
    volume: figure(group.volume),
    rules: shownRules(group.rules, system),
  };
}

type Sized = Readonly<Record<"thickness" | "width" | "length", Cell>>;

function shownSize({ thickness, width, length }: Sized | PieceGroup, system: MeasureSystem) {
  return {
    section: markedSection(thickness, width, system),
    thickness: figure(thickness),
    width: figure(width),
    length: lengthFigure(length, system),
  };
}

function shownRules(rules: PieceRules, system: MeasureSystem): z.output<typeof RulesSchema> {
  const { species, heart, surface, seasoning, structural, hiddenFaces, joint, source } = rules;
  const wane = markedSmall(rules.wane, system);
  return { species: [...species], heart, wane, surface, seasoning, structural, hiddenFaces, joint, source };
}

function shownWeight(weights: WeightTakeoff, name: string): z.output<typeof WeightSchema> | null {
  const line = weights.lines.find(({ group }) => group === name);
  if (!line) return null;
  const { green, dry, lifted, people } = line;
  return { green: figure(green), dry: figure(dry), lifted: figure(lifted), people: figure(people) };
}
