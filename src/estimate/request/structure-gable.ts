/** A gable roof on posts, as a request describes it. */
import { z } from "zod";
import { alsoCalled } from "../../catalog/shape-faults.js";
import {
  groupsField,
  level,
  lookoutSpacing,
  overhangField,
  ROOF_WORDS,
  rafterBays,
  roofFields,
  spanField,
} from "./structure.js";
import { FLOOR_GROUPS } from "./structure-floor.js";
import { WALL_GROUPS, wallsField } from "./structure-walls.js";

/**
 * Groups that a gable derives; `beams` and the like may fall into end and middle pieces, rafters into near
 * and far ones; those share settings.
 */
export const GABLE_GROUPS = [
  "posts",
  "end-posts",
  "beams",
  "gable-beams",
  "ties",
  "king-posts",
  "ridge",
  "rafters",
  "fly-rafters",
  "lookouts",
  "braces",
  "purlins",
  "deck-boards",
  "eave-fascia",
  "rake-fascia",
] as const;

/** Piece group of a gable structure. */
export type GableGroup = (typeof GABLE_GROUPS)[number];

/** A gable structure as a request describes it. */
export const gable = z
  .strictObject({
    kind: z.literal("gable").meta({ description: "A gable roof on posts." }),
    span: spanField("Level, across the building, between the outer faces of the plate beams.", "16 ft"),
    length: level("Level, along the ridge, between the outer faces of the end posts.", "24 ft"),
    ...roofFields,
    rafterBays,
    lookoutSpacing,
    overhang: z
      .strictObject({
        eave: overhangField("Level, from the outer face of the plate beam to the rafter tail."),
        farEave: overhangField("The same on the far side, where it differs."),
        gable: overhangField("Level, from the outer face of the end posts to the outer face of the fly rafters."),
      })
      .optional()
      .meta({ description: "How far the roof reaches past the frame." }),
    ridge: z
      .enum(["board", "beam"])
      .optional()
      .meta({
        description:
          "board: rafters lean on one another through it, and ties must hold their thrust; beam: it carries them.",
        examples: ["board"],
      }),
    walls: wallsField,
    groups: groupsField([...GABLE_GROUPS, ...WALL_GROUPS, ...FLOOR_GROUPS]),
  })
  .meta({
    id: "GableStructure",
    description: "An open gable shelter: posts, plate beams, ties, ridge, rafters, purlins and fascia.",
    examples: [{ kind: "gable", span: "16 ft", length: "24 ft", eaveHeight: "8 ft" }],
  });

alsoCalled(gable, ROOF_WORDS);

/** What `gable` reads. */
export type GableShape = z.infer<typeof gable>;
