/** A single slope on two rows of posts, or on one row and a ledger, as a request describes it. */
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
import { leanToWallsField, WALL_GROUPS } from "./structure-walls.js";

/** Groups that a lean-to derives. */
export const LEAN_TO_GROUPS = [
  "low-posts",
  "high-posts",
  "end-posts",
  "low-beams",
  "high-beams",
  "ledger",
  "end-beams",
  "braces",
  "rafters",
  "fly-rafters",
  "lookouts",
  "purlins",
  "deck-boards",
  "low-fascia",
  "high-fascia",
  "rake-fascia",
] as const;

/** Piece group of a lean-to. */
export type LeanToGroup = (typeof LEAN_TO_GROUPS)[number];

/** A lean-to as a request describes it. */
export const leanTo = z
  .strictObject({
    kind: z.literal("lean-to").meta({ description: "One slope, on two rows of posts or against a wall." }),
    span: spanField(
      "Level, down the slope, from the outer face of the low plate beam to that of the high one, or to the wall.",
      "8 ft",
    ),
    length: level("Level, along the eave, between the outer faces of the end posts.", "24 ft"),
    ...roofFields,
    rafterBays,
    lookoutSpacing,
    highSide: z
      .enum(["posts", "ledger"])
      .optional()
      .meta({
        description: "What carries the upper ends of the rafters: a beam on posts, or a ledger on a wall.",
        examples: ["posts"],
      }),
    overhang: z
      .strictObject({
        low: overhangField("Level, from the outer face of the low plate beam to the rafter tail."),
        high: overhangField("Level, from the outer face of the high plate beam to the upper end; none at a wall."),
        end: overhangField("Level, from the outer face of the end posts to the outer face of the fly rafters."),
      })
      .optional()
      .meta({ description: "How far the roof reaches past the frame." }),
    walls: leanToWallsField,
    groups: groupsField([...LEAN_TO_GROUPS, ...WALL_GROUPS, ...FLOOR_GROUPS]),
  })
  .meta({
    id: "LeanToStructure",
    description: "A single slope: low and high posts and beams, rafters over both, purlins and fascia.",
    examples: [{ kind: "lean-to", span: "8 ft", length: "24 ft", eaveHeight: "7 ft" }],
  });

alsoCalled(leanTo, ROOF_WORDS);

/** What `leanTo` reads. */
export type LeanToShape = z.infer<typeof leanTo>;
