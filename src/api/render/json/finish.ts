/** Faces and finish as JSON. */
import { z } from "zod";
import { FINISHES } from "../../../catalog/finishes.js";
import type { Cell } from "../../../estimate/sheet/expression.js";
import type { FinishTakeoff } from "../../../estimate/takeoff/finish.js";
import { FigureSchema, figure, figureOrNull } from "./figures.js";

const FacesSchema = z
  .strictObject({
    rough: FigureSchema.describe("As sawn; drinks more."),
    smooth: FigureSchema.describe("Planed."),
  })
  .meta({ id: "FacesByTexture", description: "Faces by texture." });

const UpkeepSchema = z
  .strictObject({
    recoatYears: FigureSchema.describe("Years from one coating to the next."),
    yearlyVolume: FigureSchema.describe("Finish a year."),
    yearlyArea: FigureSchema.describe("Faces a year."),
    yearlyCost: FigureSchema.nullable()
      .optional()
      .describe("Cans a year, before tax; null without a price. Estimates alone have it: takeoffs have no prices."),
  })
  .meta({ id: "FinishUpkeep", description: "Re-coating, spread over the years." });

const LineSchema = z
  .strictObject({
    group: z.string().describe("Piece group."),
    texture: z.enum(["rough", "smooth"]).describe("Texture of its faces."),
    area: FigureSchema.describe("Faces of all its pieces that show."),
  })
  .meta({ id: "FinishLine", description: "Faces of one piece group." });

export const FinishSchema = z
  .strictObject({
    kind: z.string().describe("Kind of finish; none leaves the wood bare."),
    name: z.string().nullable().describe("In words; null without a finish."),
    area: FacesSchema.describe("Faces that show."),
    brushed: FacesSchema.describe("Faces times coats."),
    volume: FigureSchema.nullable().describe("Finish with waste; null without a finish."),
    upkeep: UpkeepSchema.nullable().describe("Null without a finish."),
    betweenCoats: FigureSchema.nullable().describe("From one coat to the next; null without a finish."),
    lines: z.array(LineSchema).describe("Group by group."),
  })
  .meta({ id: "FinishTakeoff", description: "Faces, coats and finish." });

/** Faces and finish of all pieces. @param priced - What upkeep costs a year, where prices are known at all. */
export function shownFinish(
  finish: FinishTakeoff,
  priced?: { readonly yearlyCost: Cell | undefined },
): z.output<typeof FinishSchema> {
  const { kind, area, brushed, volume, upkeep, lines } = finish;
  return {
    kind,
    name: kind === "none" ? null : FINISHES[kind].name,
    area: { rough: figure(area.rough), smooth: figure(area.smooth) },
    brushed: { rough: figure(brushed.rough), smooth: figure(brushed.smooth) },
    volume: figureOrNull(volume),
    upkeep: upkeep
      ? {
          recoatYears: figure(upkeep.recoatYears),
          yearlyVolume: figure(upkeep.yearlyVolume),
          yearlyArea: figure(upkeep.yearlyArea),
          ...(priced && { yearlyCost: figureOrNull(priced.yearlyCost) }),
        }
      : null,
    betweenCoats: figureOrNull(finish.betweenCoats),
    lines: lines.map(({ group, texture, area }) => ({ group, texture, area: figure(area) })),
  };
}
