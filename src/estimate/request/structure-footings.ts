/** What posts stand on, as a request describes it. */
import { z } from "zod";
import { quantityField } from "../../catalog/reading.js";

/** Footings as a request describes them. */
export const footings = z
  .strictObject({
    kind: z
      .enum(["poured", "precast"])
      .optional()
      .meta({
        description:
          "poured: concrete in the hole, up to the post base; precast: a bought pier block on a hole full of gravel.",
        examples: ["poured"],
      }),
    holes: z
      .int()
      .min(1)
      .max(5000)
      .optional()
      .meta({
        description:
          "How many holes, where it is not one below every post: pieces of the role `post`, and others joined by `post-top`.",
        examples: [6],
      }),
    frostDepth: quantityField("in", {
      describe: "How deep the ground freezes, as the building office says it; zero where it does not.",
      example: "36 in",
      sign: "not-negative",
      most: "10 ft",
    }),
    belowFrost: quantityField("in", {
      describe: "How much deeper than that the footing reaches.",
      example: "4 in",
      sign: "not-negative",
      most: "4 ft",
    }).optional(),
    diameter: quantityField("in", { describe: "Diameter of the hole.", example: "12 in", most: "4 ft" }).optional(),
    aboveGround: quantityField("in", {
      describe: "How far poured concrete stands out of the ground, in a tube.",
      example: "4 in",
      sign: "not-negative",
      most: "4 ft",
    }).optional(),
    form: z
      .enum(["tube", "none"])
      .optional()
      .meta({
        description:
          "What holds poured concrete above the ground: a bought tube as wide as the hole, or nothing that is bought.",
        examples: ["tube"],
      }),
    tubeBelow: quantityField("in", {
      describe: "How far the tube reaches below the ground, at most to the bottom of the concrete.",
      example: "12 in",
      sign: "not-negative",
      most: "10 ft",
    }).optional(),
    gravel: quantityField("in", {
      describe: "Gravel below poured concrete.",
      example: "4 in",
      sign: "not-negative",
      most: "2 ft",
    }).optional(),
    concrete: z
      .enum(["bags", "ready-mixed"])
      .optional()
      .meta({ description: "Dry mix in bags, or wet concrete by volume.", examples: ["bags"] }),
    digging: z
      .enum(["hand", "auger", "hired"])
      .optional()
      .meta({ description: "By hand, with an auger of one's own or on hire, or by someone paid.", examples: ["hand"] }),
  })
  .meta({
    id: "Footings",
    description:
      "A hole below every post, those among pieces of your own included. Without this nothing below the post bases is taken off.",
    examples: [{ frostDepth: "36 in", diameter: "12 in" }],
  });

/** What `footings` reads. */
export type FootingsShape = z.infer<typeof footings>;
