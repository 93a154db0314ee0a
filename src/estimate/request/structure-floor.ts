/** A floor of boards on joists, as a request describes it. */
import { z } from "zod";
import { quantityField } from "../../catalog/reading.js";

/** Groups of a floor. */
export const FLOOR_GROUPS = ["bearers", "floor-ledger", "joists", "floor-boards"] as const;

/** Piece group of a floor. */
export type FloorGroup = (typeof FLOOR_GROUPS)[number];

/** A floor as a request describes it. */
export const floor = z
  .strictObject({
    joistSpacing: quantityField("in", {
      describe: "Joists, centre to centre at most.",
      example: "16 in",
      most: "10 ft",
    }).optional(),
    gap: quantityField("in", {
      describe: "Between floor boards.",
      example: "1/4 in",
      sign: "not-negative",
      most: "4 in",
    }).optional(),
  })
  .meta({
    id: "Floor",
    description:
      "A floor over the whole frame: two bearers along it, joists across, boards along. Against a wall that carries the rafters a ledger takes the place of the bearer there.",
    examples: [{ joistSpacing: "16 in" }],
  });

/** What `floor` reads. */
export type FloorShape = z.infer<typeof floor>;
