/** Boards that the user has already: they are cut first where that saves, and cost nothing. */
import { z } from "zod";
import { treatmentField } from "../../catalog/offers/lumber.js";
import { countField, longField, MOST_SIZES } from "../../catalog/offers/price.js";
import { sectionField } from "../../catalog/reading.js";
import { woodNames } from "../../catalog/species.js";

const board = z
  .strictObject({
    section: sectionField({
      describe: "Section as it is sold or as it measures, thickness × width.",
      example: "2 x 6 in",
    }),
    length: longField("Its length.", "9 ft"),
    count: countField("How many.", 3),
    wood: z
      .enum(woodNames)
      .optional()
      .meta({
        description: "Species or trade group; any wood that is bought when absent.",
        examples: ["spruce-pine-fir"],
      }),
    treatment: treatmentField,
    surface: z
      .enum(["dressed", "rough"])
      .optional()
      .meta({ description: "How its faces are; as those of what is bought when absent.", examples: ["dressed"] }),
  })
  .meta({ id: "BoardAtHand", description: "Equal boards at hand, sound and of the grade that is wanted." });

/** Boards at hand as a request gives them. */
export const atHandShape = z.array(board).max(MOST_SIZES).meta({
  description:
    "Boards that you have already. They serve for what is bought in their section, wood and treatment, where that is dearest, on every route, and cost nothing.",
});

/** What `atHandShape` reads. */
export type BoardsAtHand = z.infer<typeof atHandShape>;
