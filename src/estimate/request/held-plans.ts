/** Plans that an answer gave and a request hands back. Their form is checked here, their sense by the judges. */
import { z } from "zod";

const step = z.int().min(-10_000_000).max(10_000_000);
const name = z.string().min(1).max(120);

const cut = z
  .strictObject({
    tool: z.enum(["buck", "mill", "rip", "cross"]).meta({ description: "Which saw." }),
    axis: z.enum(["x", "y", "z"]).meta({ description: "Across which axis the kerf lies." }),
    part: z
      .int()
      .min(0)
      .max(100_000)
      .meta({ description: "The part that is cut; cut i makes parts 2i + 1 and 2i + 2." }),
    lo: step.meta({ description: "Kerf from, grid steps." }),
    hi: step.meta({ description: "Kerf to, grid steps." }),
  })
  .meta({ id: "SawCut", description: "One through-cut." });

const piece = z
  .strictObject({
    group: name.meta({ description: "Piece group." }),
    part: z.int().min(0).max(100_000).meta({ description: "The part that it is." }),
    x0: step.meta({ description: "Left face, grid steps." }),
    x1: step.meta({ description: "Right face, grid steps." }),
    y0: step.meta({ description: "Lower face, grid steps." }),
    y1: step.meta({ description: "Upper face, grid steps." }),
    z0: step.meta({ description: "End nearer the small end, grid steps." }),
    z1: step.meta({ description: "End nearer the large end, grid steps." }),
  })
  .meta({ id: "SawnPiece", description: "A piece as a box in grid steps about its bolt's sawing axis." });

/** A sawing plan as an answer gives it and a request hands it back. */
export const sawingPlanShape = z
  .strictObject({
    gridMm: z
      .string()
      .max(12)
      .meta({ description: "Size of one grid step in millimetres.", examples: ["1.5875"] }),
    logs: z
      .array(
        z
          .strictObject({
            log: name.meta({ description: "Name of the log." }),
            cuts: z.array(cut).max(3000).meta({ description: "Cuts, in order." }),
            pieces: z.array(piece).max(1500).meta({ description: "Pieces." }),
          })
          .meta({ id: "LogPlan", description: "Cuts and pieces of one log." }),
      )
      .max(200)
      .meta({ description: "Logs that are sawn." }),
    buy: z.record(name, z.int().min(0).max(5000)).meta({ description: "Pieces short of the wanted count, by group." }),
  })
  .meta({ id: "SawingPlan", description: "Cuts of all logs, in whole grid steps." });

/** A stock plan as an answer gives it and a request hands it back. */
export const stockPlanShape = z
  .array(
    z
      .strictObject({
        stock: name.meta({ description: "Stock length that is cut." }),
        pieces: z.array(name).max(400).meta({ description: "Piece groups cut from one stick." }),
        times: z.int().min(1).max(5000).meta({ description: "Sticks cut alike." }),
      })
      .meta({ id: "StockCut", description: "Sticks cut alike." }),
  )
  .max(2000);

/** All plans that a request may hand back. */
export const heldPlans = z
  .strictObject({
    milled: z.array(name).max(80).optional().meta({ description: "Groups that the best mix mills." }),
    hired: z.boolean().optional().meta({ description: "Whether a hired sawyer mills them." }),
    sawing: z
      .strictObject({
        milled: sawingPlanShape.optional(),
        hired: sawingPlanShape.optional(),
        mixed: sawingPlanShape.optional(),
      })
      .optional()
      .meta({ description: "Sawing plans by route." }),
    stock: z
      .record(name, z.record(name, stockPlanShape))
      .optional()
      .meta({ description: "Stock plans by route and lumber offer." }),
    offers: z
      .array(name)
      .max(20)
      .optional()
      .meta({ description: "Coverings and finishes that were chosen where several of a kind are on offer." }),
  })
  .meta({ id: "HeldPlans", description: "Plans kept from an earlier answer instead of planned anew." });

/** What `heldPlans` reads. */
export type HeldPlans = z.infer<typeof heldPlans>;
