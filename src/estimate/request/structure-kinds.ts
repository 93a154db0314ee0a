/** What is to be built: a roof on posts of one kind or another, or a plain list of pieces. */
import { z } from "zod";
import { explicitPieces, exposureField } from "./structure.js";
import { footings } from "./structure-footings.js";
import { gable } from "./structure-gable.js";
import { hip } from "./structure-hip.js";
import { leanTo } from "./structure-lean-to.js";
import { pergola } from "./structure-pergola.js";

/** A structure that is nothing but a list of pieces. */
export const pieceList = z
  .strictObject({
    kind: z.literal("pieces").meta({ description: "No geometry: the pieces themselves." }),
    pieces: z.array(explicitPieces).min(1).max(60).meta({ description: "All piece groups." }),
    exposure: exposureField,
    footings: footings.optional(),
  })
  .meta({
    id: "PieceList",
    description: "A structure given as its pieces.",
    examples: [{ kind: "pieces", pieces: [{ name: "legs", count: 4, section: "4 x 4 in", length: "3 ft" }] }],
  });

/** What `pieceList` reads. */
export type PieceListShape = z.infer<typeof pieceList>;

/** A structure of any kind, told apart by `kind`. */
export const structure = z
  .discriminatedUnion("kind", [gable, leanTo, hip, pergola, pieceList])
  .meta({ id: "Structure", description: "What is to be built." });

/** What `structure` reads. */
export type StructureShape = z.infer<typeof structure>;
/** A structure that stands on posts. */
export type FrameShape = Exclude<StructureShape, PieceListShape>;
