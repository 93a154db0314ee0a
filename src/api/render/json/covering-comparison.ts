/** One roof under several coverings, as JSON. */
import { z } from "zod";
import type { Basis } from "../../../estimate/basis.js";
import type { Caution } from "../../../estimate/cautions.js";
import type { ComparedCovering } from "../../../estimate/covering-comparison.js";
import type { Notice } from "../../../estimate/notice.js";
import { AboutSchema, about, type Provenance } from "./about.js";
import { CautionsSchema, NoticesSchema, shownCautions, shownNotices } from "./advice.js";
import { RoofCoveringSchema, shownRoof } from "./roof.js";
import { SheetSchema, shownSheet } from "./sheet.js";

/** What may be asked for beside the lean answer. */
export const COMPARISON_INCLUDES = ["sheet", "workings", "drawings"] as const;
export type ComparisonInclude = (typeof COMPARISON_INCLUDES)[number];

export const ComparisonSchema = z
  .strictObject({
    about: AboutSchema.describe("Which request was answered, and by what."),
    coverings: z.array(RoofCoveringSchema).describe("Best first."),
    cautions: CautionsSchema,
    notices: NoticesSchema,
    sheet: SheetSchema.describe("The cells behind all figures."),
  })
  .meta({
    id: "CoveringComparison",
    description: "One roof under several coverings. It never says that it is strong enough.",
  });

/** What was compared. */
export interface Comparison {
  readonly basis: Basis;
  readonly coverings: readonly ComparedCovering[];
  readonly cautions: readonly Caution[];
  readonly notices: readonly Notice[];
}

/** The comparison with what was asked for beside it. */
export function shownComparison(
  { basis, coverings, cautions, notices }: Comparison,
  provenance: Provenance,
  include: readonly ComparisonInclude[],
): z.output<typeof ComparisonSchema> {
  return {
    about: about(basis, provenance),
    coverings: shownRoof({ built: undefined, compared: coverings }, basis.request.system, include.includes("drawings")),
    cautions: shownCautions(cautions),
    notices: shownNotices(notices),
    sheet: shownSheet(basis.sheet, { whole: include.includes("sheet"), workings: include.includes("workings") }),
  };
}
