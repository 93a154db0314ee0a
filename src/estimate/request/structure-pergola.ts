/** Posts, beams and open rafters without a covering, as a request describes them. */
import { z } from "zod";
import { quantityField } from "../../catalog/reading.js";
import { alsoCalled } from "../../catalog/shape-faults.js";
import { FRAME_WORDS, frameFields, groupsField, level, overhangField, spanField, TALLEST } from "./structure.js";
import { FLOOR_GROUPS } from "./structure-floor.js";
import { WALL_GROUPS, wallsField } from "./structure-walls.js";

/** Groups that a pergola derives. */
export const PERGOLA_GROUPS = ["posts", "beams", "braces", "rafters", "slats"] as const;

/** Piece group of a pergola. */
export type PergolaGroup = (typeof PERGOLA_GROUPS)[number];

/** A pergola as a request describes it. */
export const pergola = z
  .strictObject({
    kind: z.literal("pergola").meta({ description: "Open rafters on two beams, nothing on top but slats." }),
    span: spanField("Level, across, between the outer faces of the beams.", "10 ft"),
    length: level("Level, along the beams, between the outer faces of the end posts.", "14 ft"),
    height: level("From the post base to the top of the beams.", "8 ft", TALLEST).optional(),
    ...frameFields,
    overhang: z
      .strictObject({
        side: overhangField("Level, from the outer face of a beam to the rafters' ends.", "18 in"),
        end: overhangField("Level, from the outer face of the end posts to the beams' ends.", "18 in"),
      })
      .optional()
      .meta({ description: "How far rafters and beams reach past the frame." }),
    slatSpacing: quantityField("in", {
      describe: "Slats on the rafters, centre to centre at most. Without it there are none.",
      example: "12 in",
      most: "10 ft",
    }).optional(),
    walls: wallsField,
    groups: groupsField([...PERGOLA_GROUPS, ...WALL_GROUPS, ...FLOOR_GROUPS]),
  })
  .meta({
    id: "PergolaStructure",
    description: "Posts, two beams, open rafters and slats.",
    examples: [{ kind: "pergola", span: "10 ft", length: "14 ft", slatSpacing: "12 in" }],
  });

alsoCalled(pergola, FRAME_WORDS);

/** What `pergola` reads. */
export type PergolaShape = z.infer<typeof pergola>;
