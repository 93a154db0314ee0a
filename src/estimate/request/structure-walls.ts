/** Boarded walls with openings, as a request describes them. */
import { z } from "zod";
import { quantityField } from "../../catalog/reading.js";

/** Groups of walls; each side has its own, such as `wall-boards-near`. */
export const WALL_GROUPS = [
  "wall-boards",
  "wall-battens",
  "wall-rails",
  "wall-studs",
  "opening-jambs",
  "opening-headers",
  "corner-boards",
] as const;

/** Piece group of walls. */
export type WallGroup = (typeof WALL_GROUPS)[number];

const size = (describe: string, example: string) => quantityField("ft", { describe, example, most: "60 ft" });

const opening = z
  .strictObject({
    width: size("Clear width.", "3 ft"),
    height: size("Clear height.", "6 ft 8 in"),
    sill: size("From the boards' lower end to a window's sill; a door has none.", "3 ft").optional(),
    from: quantityField("ft", {
      describe:
        "Along the wall to its nearer edge: on a side from the left end, on an end from the near or low side. Without it the opening stands in the middle of the widest bay that is free, the middle one of bays alike.",
      example: "4 ft",
      sign: "not-negative",
      most: "400 ft",
    }).optional(),
    count: z
      .int()
      .min(1)
      .max(50)
      .optional()
      .meta({ description: "How many alike.", examples: [1] }),
  })
  .meta({ id: "Opening", description: "A door or window in a wall.", examples: [{ width: "3 ft", height: "7 ft" }] });

/** What a request says of a door or window. */
export type OpeningShape = z.infer<typeof opening>;

/** Walls of a structure whose sides are called so. @param id - In the API's document. */
function wallsOf<Side extends string>(id: string, sides: readonly [Side, ...Side[]]) {
  return z
    .strictObject({
      boards: z
        .enum(["vertical", "board-and-batten", "horizontal"])
        .optional()
        .meta({ description: "How the boards run.", examples: ["board-and-batten"] }),
      lap: quantityField("in", {
        describe: "Lap of neighbouring boards; of board-and-batten the gap between them.",
        example: "1/2 in",
        sign: "not-negative",
        most: "6 in",
      }).optional(),
      clearance: quantityField("in", {
        describe: "From the post base to the lower end of the boards.",
        example: "4 in",
        sign: "not-negative",
        most: "10 ft",
      }).optional(),
      backing: quantityField("in", {
        describe: "Rails behind vertical boards, studs behind horizontal ones: centre to centre at most.",
        example: "36 in",
        most: "10 ft",
      }).optional(),
      gableLap: quantityField("in", {
        describe: "How far the boards of a gable reach down over those below the plate.",
        example: "2 in",
        sign: "not-negative",
        most: "2 ft",
      }).optional(),
      sides: z
        .array(
          z.strictObject({
            side: z.enum(sides).meta({ description: "Which side of the frame.", examples: [sides[0]] }),
            part: z
              .enum(["whole", "below-plate", "gable"])
              .optional()
              .meta({
                description:
                  "What is boarded of an end below a gable: all of it up to the rafters, the wall below the plate, or the gable alone. Other sides are boarded up to the plate.",
                examples: ["whole"],
              }),
            openings: z.array(opening).max(20).optional().meta({ description: "What is left open." }),
          }),
        )
        .min(1)
        .max(sides.length)
        .meta({ description: "Sides that are boarded.", examples: [[{ side: sides[0] }]] }),
    })
    .meta({ id, description: "Boarded sides; the rest stays open.", examples: [{ sides: [{ side: sides[0] }] }] });
}

/** Walls of a structure whose two long sides are alike. */
export const wallsField = wallsOf("Walls", ["near", "far", "left", "right"]).optional();

/** Walls of a lean-to, whose long sides are a low and a high one. */
export const leanToWallsField = wallsOf("LeanToWalls", ["low", "high", "left", "right"]).optional();

/** What a request says of the walls of a structure with these sides. */
export type WallsShape<Side extends string = string> = z.infer<ReturnType<typeof wallsOf<Side>>>;
