/** What the structures of every kind share: piece groups with their settings, and the fields of a frame on posts. */
import { z } from "zod";
import { CLIMATES } from "../../catalog/fasteners.js";
import { lineField, nameField, quantityField, sectionField } from "../../catalog/reading.js";
import { speciesIds } from "../../catalog/species.js";
import { coveringField, deckField } from "./structure-deck.js";
import { floor } from "./structure-floor.js";
import { footings } from "./structure-footings.js";

const speciesId = z
  .enum(speciesIds as [string, ...string[]])
  .meta({ description: "Which wood. GET /v1/species lists them all.", examples: ["eastern-white-pine"] });

/** How a piece is joined, so that its hours and hardware are known. */
const JOINTS = [
  "post-top",
  "splice",
  "lap",
  "mortise",
  "plain-bolt",
  "birdsmouth",
  "two-seats",
  "level-seats",
  "hung",
  "lap-and-hang",
  "ledger",
  "joist",
  "bearer",
  "king-post",
  "ridge-cut",
  "brace",
  "crossing",
  "face",
  "ends",
  "none",
] as const;

/** Key of a joint. */
export type JointKind = (typeof JOINTS)[number];

const exposure = z.enum(CLIMATES);

const settings = {
  species: z
    .array(speciesId)
    .max(8)
    .optional()
    .meta({ description: "Species that serve for these pieces; any of the logs' where none is named." }),
  heart: z
    .enum(["any", "free", "boxed"])
    .optional()
    .meta({
      description:
        "any: wherever it falls; free: clear of the pith; boxed: the pith inside, as for posts and heavy beams.",
      examples: ["boxed"],
    }),
  wane: quantityField("in", {
    describe: "Wane allowed on each corner of a wide face.",
    example: "1/2 in",
    sign: "not-negative",
    most: "6 in",
  }).optional(),
  surface: z
    .enum(["rough", "dressed"])
    .optional()
    .meta({
      description: "rough: as sawn; dressed: straightened, jointed and planed to the finished section.",
      examples: ["dressed"],
    }),
  seasoning: z
    .enum(["green", "dried"])
    .optional()
    .meta({
      description:
        "green: built wet and left to season in place; dried: stacked and dried before dressing. Where nothing is said, it follows from the role; listed pieces of 4 in or 100 mm and more each way are green.",
      examples: ["dried"],
    }),
  structural: z
    .boolean()
    .optional()
    .meta({ description: "Carries the building: falls under the building office's rules for graded lumber." }),
  hiddenFaces: z
    .enum(["none", "one-wide", "both-wide"])
    .optional()
    .meta({
      description:
        "Wide faces that the finish does not reach, such as the top of a purlin under the sheets. Where nothing is said, it follows from what the pieces do, and the faces and edges that wall boards, floor boards or a closed deck lie on come off, too.",
      examples: ["one-wide"],
    }),
  joint: z
    .enum(JOINTS)
    .optional()
    .meta({
      description:
        "How they are joined, by their role where nothing is said. post-top: cut to bear its beam, and bracketed; splice: halved end to end; lap: halved over what bears it; mortise: mortise and tenon, pegged; plain-bolt: uncut, bolted to its neighbour; birdsmouth; two-seats: notched over two bearers; level-seats: uncut, level across two bearers; hung: birdsmouth and a hanger; lap-and-hang: one end lapped, one hung; ledger: lagged to a wall; joist, bearer: of a floor; king-post; ridge-cut: plumb cuts alone; brace: mitred at both ends; crossing, face: fixed where it crosses or lies flat; ends: fixed at both ends; none: cut to length.",
      examples: ["mortise"],
    }),
  exposure: exposure.optional().meta({
    description:
      "What surrounds these pieces and the fasteners in them, where that is not `exposure` of the structure.",
    examples: ["sheltered"],
  }),
  source: z
    .enum(["mill", "buy", "auto"])
    .optional()
    .meta({ description: "Pins the group to one route; auto leaves it to the estimate.", examples: ["auto"] }),
  buyAs: nameField("Name of the lumber offer to buy for it, whatever would be chosen otherwise.", "spf-2x6").optional(),
};

const limits = { length: "100 ft" };
const groupCount = z
  .int()
  .min(1)
  .max(5000)
  .meta({ description: "How many pieces.", examples: [12] });
const pieceLength = quantityField("ft", {
  describe: "Finished length of one piece.",
  example: "9 ft 4 in",
  least: "1/4 in",
  most: limits.length,
});
const pieceSection = sectionField({ describe: "Finished section, thickness × width.", example: "2 x 6 in" });

/** What a request may say of one piece group that the structure derives. */
export const groupSettings = z
  .strictObject({
    ...settings,
    section: pieceSection.optional(),
    count: groupCount.optional(),
    length: pieceLength.optional(),
    remove: z.literal(true).optional().meta({ description: "Leaves the group out of the structure." }),
  })
  .meta({
    id: "GroupSettings",
    description: "What is to differ from what the structure's rules derive for one piece group.",
    examples: [{ section: "2 x 8 in", species: ["eastern-white-pine"] }],
  });

/** What `groupSettings` reads. */
export type GroupSettings = z.infer<typeof groupSettings>;

/** What a piece does in a structure. */
export const ROLES = ["post", "beam", "tie", "ridge", "rafter", "brace", "purlin", "fascia", "board", "other"] as const;

/** Key of a role. */
export type Role = (typeof ROLES)[number];

/** A piece group that the user lists, beside or in the place of derived ones. */
export const explicitPieces = z
  .strictObject({
    name: nameField("Name of the group; unique.", "table-legs"),
    label: lineField("Words for people.", "Table legs", 60).optional(),
    role: z
      .enum(ROLES)
      .optional()
      .meta({ description: "What the pieces do; sets defaults.", examples: ["other"] }),
    count: groupCount,
    section: pieceSection,
    length: pieceLength,
    crossings: z
      .int()
      .min(1)
      .max(1000)
      .optional()
      .meta({
        description:
          "What each piece crosses, its ends included, so that its screws, nails or bolts can be counted: rafters, joists or posts below a board, posts beside a bearer. Wanted with the joints `crossing` and `bearer`; below a roof boards are counted over its rafters where it is left out.",
        examples: [5],
      }),
    runs: z
      .int()
      .min(1)
      .max(5000)
      .optional()
      .meta({
        description:
          "Runs into which the pieces are joined end to end, so that splices can be counted: 6 beams in 2 runs have 4. Wanted with the joint `splice`; where it is left out elsewhere every piece is a run of its own.",
        examples: [2],
      }),
    ...settings,
  })
  .meta({
    id: "ExplicitPieces",
    description: "Equal pieces, given as they are.",
    examples: [{ name: "shelf-boards", count: 6, section: "1 x 8 in", length: "5 ft" }],
  });

/** What `explicitPieces` reads. */
export type ExplicitPieces = z.infer<typeof explicitPieces>;

/** One optional settings field for each group that a kind of structure derives. */
export function groupsField<Group extends string>(names: readonly Group[]) {
  const fields = Object.fromEntries(names.map((name) => [name, groupSettings.optional()]));
  return z
    .strictObject(fields as Record<Group, z.ZodOptional<typeof groupSettings>>)
    .optional()
    .meta({ description: "Settings by piece group." });
}

/** A level length of the whole structure. */
export const level = (describe: string, example: string, limit = "400 ft") =>
  quantityField("ft", { describe, example, most: limit });

/** Across a building, where rafters and beams bear. Assumption: wider ones are no job of sticks on posts. */
export const spanField = (describe: string, example: string) => level(describe, example, "60 ft");

/** How far a roof reaches past its frame, level; may be zero. */
export const overhangField = (describe: string, example = "12 in") =>
  quantityField("in", { describe, example, sign: "not-negative", most: "12 ft" }).optional();

/** Slope of a roof. */
export const slope = z
  .strictObject({
    rise: quantityField("in", {
      describe: "Rise of the roof over `run`.",
      example: "5 in",
      sign: "any",
      most: "100 ft",
    }),
    run: quantityField("in", { describe: "Level length over which it rises.", example: "12 in", most: "100 ft" }),
  })
  .meta({
    id: "Slope",
    description: "Slope of the roof as rise over run, both as lengths.",
    examples: [{ rise: "5 in", run: "12 in" }],
  });

/** Of eaves and beams. Assumption: higher ones want scaffolds and a crane. */
export const TALLEST = "24 ft";

const eaveHeight = level("From the post base to the top of the plate beam at the eave.", "8 ft", TALLEST);

/** What surrounds the whole. */
export const exposureField = exposure.optional().meta({
  description:
    "What surrounds the structure: it decides how its fasteners are protected against rust. dry: in a dry room (service class 1 of EN 1995-1-1), plain steel; sheltered: aired, but no rain reaches it (class 2), zinc-plated; outdoors: rained on (class 3), coated for outdoors, and what is taken where nothing is said; salt: in reach of salt water or within 300 ft (90 m) of its shore (IRC table R507.2.3; C5 of ISO 9223), stainless. Treated wood, and wood rich in tannin that gets damp, ask for hot-dip galvanized at least. Fasteners of the covering are always rained on.",
  examples: ["salt"],
});

/** Fields of every frame on posts. */
export const frameFields = {
  bays: z
    .int()
    .min(1)
    .max(100)
    .optional()
    .meta({ description: "Spaces between posts along each side.", examples: [3] }),
  bayLengths: z
    .array(level("One bay, from the centre of a post to the centre of the next.", "8 ft"))
    .min(1)
    .max(99)
    .optional()
    .meta({
      description:
        "Where bays differ: the length of each but the last, centre to centre of posts, in order along the building. The last takes what is left of the length.",
      examples: [["8 ft", "12 ft"]],
    }),
  rafterSpacing: quantityField("in", {
    describe: "Centre to centre, along the plate, at most.",
    example: "24 in",
    most: "20 ft",
  }).optional(),
  braceLeg: quantityField("in", {
    describe: "From the corner of post and beam to the brace's foot, along either.",
    example: "30 in",
    most: "10 ft",
  }).optional(),
  longestPiece: quantityField("ft", {
    describe: "Runs along the building are made of pieces no longer than this.",
    example: "12 ft",
    least: "1 ft",
    most: "60 ft",
  }).optional(),
  exposure: exposureField,
  footings: footings.optional(),
  floor: floor.optional(),
  extraPieces: z.array(explicitPieces).max(60).optional().meta({ description: "Piece groups of your own." }),
};

/** What else the trade calls fields of a frame. */
export const FRAME_WORDS = { width: "span", spacing: "rafterSpacing" } as const;

/** What else the trade calls fields of a frame below a roof. */
export const ROOF_WORDS = { ...FRAME_WORDS, pitch: "slope", height: "eaveHeight", roofing: "covering" } as const;

/** Fields of every frame below a sloping roof. */
export const roofFields = {
  ...frameFields,
  eaveHeight: eaveHeight.optional(),
  slope: slope.optional(),
  rafterTail: z
    .enum(["plumb", "square"])
    .optional()
    .meta({
      description: "How the tail is cut: plumb, or square to the rafter. Either way the overhang is to its upper edge.",
      examples: ["plumb"],
    }),
  seat: quantityField("in", {
    describe: "Level depth of the birdsmouth's seat.",
    example: "3 1/2 in",
    most: "24 in",
  }).optional(),
  purlinSpacing: quantityField("in", {
    describe: "Centre to centre, along the slope, at most.",
    example: "24 in",
    most: "10 ft",
  }).optional(),
  covering: coveringField,
  deck: deckField,
  endBays: z
    .int()
    .min(1)
    .max(100)
    .optional()
    .meta({ description: "Spaces between posts across each end.", examples: [1] }),
};

/** Lookouts that carry the fly rafters. */
export const lookoutSpacing = quantityField("in", {
  describe:
    "Lookouts that carry the fly rafters, centre to centre up the rake at most. Without it they are laid where the overhang there is more than 12 in (305 mm).",
  example: "24 in",
  most: "10 ft",
}).optional();

/** How rafters that stand along a plate share it out. */
export const rafterBays = z
  .enum(["equal", "short-last"])
  .optional()
  .meta({
    description: "equal: all rafter bays alike; short-last: the given spacing, and what is left over in the last bay.",
    examples: ["equal"],
  });
