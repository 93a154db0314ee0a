/** A hip roof on posts, equally steep on all four sides, as a request describes it. */
import { z } from "zod";
import { alsoCalled } from "../../catalog/shape-faults.js";
import { groupsField, level, overhangField, ROOF_WORDS, rafterBays, roofFields, spanField } from "./structure.js";
import { FLOOR_GROUPS } from "./structure-floor.js";
import { WALL_GROUPS, wallsField } from "./structure-walls.js";

/** Groups that a hip roof derives; `jacks` and purlins fall into one group a length, which share settings. */
export const HIP_GROUPS = [
  "posts",
  "beams",
  "end-beams",
  "ties",
  "braces",
  "ridge",
  "rafters",
  "end-rafters",
  "hips",
  "jacks",
  "side-purlins",
  "end-purlins",
  "deck-boards",
  "side-fascia",
  "end-fascia",
] as const;

/** Piece group of a hip structure. */
export type HipGroup = (typeof HIP_GROUPS)[number];

/** A hip structure as a request describes it. */
export const hip = z
  .strictObject({
    kind: z.literal("hip").meta({ description: "A hip roof on posts, equally steep on all four sides." }),
    span: spanField("Level, across the building, between the outer faces of the plate beams.", "16 ft"),
    length: level("Level, along the ridge, between the outer faces of the end beams; the span or more.", "24 ft"),
    ...roofFields,
    rafterBays,
    overhang: z
      .strictObject({ eave: overhangField("Level, from the outer face of the beams to the rafter tails, all round.") })
      .optional()
      .meta({ description: "How far the roof reaches past the frame." }),
    walls: wallsField,
    groups: groupsField([...HIP_GROUPS, ...WALL_GROUPS, ...FLOOR_GROUPS]),
  })
  .meta({
    id: "HipStructure",
    description: "A hip roof: beams all round, ridge, common, hip and jack rafters.",
    examples: [{ kind: "hip", span: "16 ft", length: "24 ft", eaveHeight: "8 ft" }],
  });

alsoCalled(hip, ROOF_WORDS);

/** What `hip` reads. */
export type HipShape = z.infer<typeof hip>;
