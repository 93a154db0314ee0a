/** Takeoffs as JSON: what a structure takes, prices and routes apart. */
import { z } from "zod";
import type { Basis } from "../../../estimate/basis.js";
import type { Caution } from "../../../estimate/cautions.js";
import type { Need } from "../../../estimate/need.js";
import type { Notice } from "../../../estimate/notice.js";
import type { FinishTakeoff } from "../../../estimate/takeoff/finish.js";
import type { Takeoffs } from "../../../estimate/takeoffs.js";
import { AboutSchema, about, type Provenance } from "./about.js";
import { CautionsSchema, NoticesSchema, shownCautions, shownNotices } from "./advice.js";
import { CutListSchema, shownCutList } from "./cut-list.js";
import { FigureSchema, figure } from "./figures.js";
import { FinishSchema, shownFinish } from "./finish.js";
import { GeometrySchema, shownGeometry } from "./geometry.js";
import { JointsSchema, shownJoints } from "./joints.js";
import { type FoundMiss, NearMissSchema, shownNearMisses } from "./near-misses.js";
import { RoofCoveringSchema, shownRoof } from "./roof.js";
import { SheetSchema, shownSheet } from "./sheet.js";

/** What was taken off. */
export interface TakenOff {
  readonly basis: Basis;
  readonly takeoffs: Takeoffs;
  /** As asked for, whichever pieces are bought. */
  readonly finish: FinishTakeoff;
  /** For the pieces as laid out. */
  readonly hardware: readonly Need[];
  readonly cautions: readonly Caution[];
  readonly notices: readonly Notice[];
  /** Where they are asked for. */
  readonly misses?: readonly FoundMiss[];
}

/** What may be asked for beside the lean answer. */
export const TAKEOFF_INCLUDES = ["sheet", "workings", "drawings", "near-misses"] as const;
export type TakeoffInclude = (typeof TAKEOFF_INCLUDES)[number];

const NeedSchema = z
  .strictObject({
    name: z.string().describe("Name of the need."),
    label: z.string().describe("In words."),
    quantity: FigureSchema.describe("How much, waste and spares included; lumber is in the cut list."),
  })
  .meta({ id: "Need", description: "Something to be had, whoever sells it." });

export const TakeoffsSchema = z
  .strictObject({
    about: AboutSchema.describe("Which request was answered, and by what."),
    cutList: CutListSchema.describe("All pieces, with their weights."),
    geometry: GeometrySchema.describe("What to set out."),
    coverings: z.array(RoofCoveringSchema).describe("The roof covering; empty where nothing is covered."),
    fasteners: JointsSchema.nullable().describe(
      "Connections; null where the structure is a list of pieces of which none says its joint.",
    ),
    finish: FinishSchema.describe("Faces and finish."),
    needs: z.array(NeedSchema).describe("What has to be had beside the lumber."),
    cautions: CautionsSchema,
    notices: NoticesSchema,
    nearMisses: z
      .array(NearMissSchema)
      .optional()
      .describe("Small changes that save, the most saving first; there with include=near-misses."),
    sheet: SheetSchema.describe("The cells behind all figures."),
  })
  .meta({ id: "Takeoffs", description: "What a structure takes. It never says that it is strong enough." });

/** Takeoffs with what was asked for beside them. */
export function shownTakeoffs(
  { basis, takeoffs, finish, hardware, cautions, notices, misses }: TakenOff,
  provenance: Provenance,
  include: readonly TakeoffInclude[],
): z.output<typeof TakeoffsSchema> {
  const { system } = basis.request;
  return {
    about: about(basis, provenance),
    cutList: shownCutList(basis, takeoffs.weights, undefined),
    geometry: shownGeometry(basis, include.includes("drawings")),
    coverings: shownRoof({ built: takeoffs.covering, compared: [] }, system, include.includes("drawings")),
    fasteners: shownJoints(takeoffs.fasteners, system),
    finish: shownFinish(finish),
    needs: [...takeoffs.needs, ...hardware, ...finish.needs].map(({ name, label, quantity }) => ({
      name,
      label,
      quantity: figure(quantity),
    })),
    cautions: shownCautions(cautions),
    notices: shownNotices(notices),
    ...(misses && { nearMisses: shownNearMisses(misses, basis.catalog.currency) }),
    sheet: shownSheet(basis.sheet, { whole: include.includes("sheet"), workings: include.includes("workings") }),
  };
}
