/** Cautions and notices as JSON. */
import { z } from "zod";
import type { Caution } from "../../../estimate/cautions.js";
import type { Notice } from "../../../estimate/notice.js";

const CautionSchema = z
  .strictObject({
    code: z.string().describe("Which caution."),
    text: z.string().describe("What can hurt someone, or fail."),
    source: z.string().describe("Regulation or publication."),
  })
  .meta({ id: "Caution", description: "Something that can hurt someone, or fail." });

const NoticeSchema = z
  .strictObject({
    code: z
      .enum([
        "default",
        "substitution",
        "bought-size",
        "tolerance",
        "unpriced",
        "not-milled",
        "mill-crew",
        "short",
        "no-hardware",
        "green-finish",
        "open-frame",
        "unused",
        "too-long",
        "in-the-way",
        "slim-log",
        "any-wood",
        "decay",
      ])
      .describe("What kind of notice it is."),
    text: z.string().describe("What to know of how the estimate was made."),
    pointer: z.string().nullable().describe("JSON Pointer at which the request may say otherwise; null if nowhere."),
  })
  .meta({ id: "Notice", description: "What to know of how the estimate was made." });

export const CautionsSchema = z.array(CautionSchema).describe("Safety, the gravest first.");
export const NoticesSchema = z.array(NoticeSchema).describe("Defaults taken, substitutions, what has no price.");

/** Cautions, the gravest first. */
export function shownCautions(cautions: readonly Caution[]): z.output<typeof CautionsSchema> {
  return cautions.map(({ code, text, source }) => ({ code, text, source }));
}

/** Notices, in the order in which they matter. */
export function shownNotices(notices: readonly Notice[]): z.output<typeof NoticesSchema> {
  return notices.map(({ code, text, at }) => ({ code, text, pointer: at ?? null }));
}
