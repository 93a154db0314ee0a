/** Pieces cut from a strip or a stick, with their marks. */
import { z } from "zod";

const RunSchema = z
  .strictObject({
    group: z.string().describe("Piece group."),
    length: z.string().describe("Length of one piece."),
    count: z.int().describe("Pieces one after the other."),
  })
  .meta({ id: "CutPieces", description: "Equal pieces one after the other." });

const StickRunSchema = RunSchema.extend({
  abreast: z.int().describe("Pieces that are ripped side by side out of each of them; 1 where none are."),
}).meta({ id: "StickPieces", description: "Equal lengths one after the other, each ripped into equal pieces." });

/** What comes off each of several equal strips or sticks. */
export const cutsFields = {
  pieces: z.array(RunSchema).describe("What comes off each, in the order cut."),
  marks: z.array(z.array(z.string().nullable())).describe("Piece marks, one list for each; null for a spare."),
};

/** Equal neighbours together. */
export function inRuns(pieces: readonly { readonly group: string; readonly length: string }[]) {
  const runs: z.output<typeof RunSchema>[] = [];
  for (const { group, length } of pieces) {
    const last = runs.at(-1);
    if (last?.group === group && last.length === length) last.count++;
    else runs.push({ group, length, count: 1 });
  }
  return runs;
}

/** The same of bought sticks, of which pieces may be ripped. */
export const stickFields = {
  ...cutsFields,
  pieces: z.array(StickRunSchema).describe("What comes off each, in the order cut."),
};
