/** What covers a roof, and what carries the covering, as a request describes it. */
import { z } from "zod";
import { coveringKinds } from "../../catalog/coverings.js";
import { quantityField } from "../../catalog/reading.js";

/** The covering of a roof. */
export const coveringField = z
  .enum([...coveringKinds, "none"] as const)
  .optional()
  .meta({
    description:
      "The roof covering that is taken off. One that the code does not allow at this slope is estimated all the same, and flagged.",
    examples: ["ribbed-steel"],
  });

/** What may lie between rafters and covering. */
export const DECK_KINDS = ["purlins", "spaced-boards", "solid-boards", "sheets"] as const;

/** Key of a deck. */
export type DeckKind = (typeof DECK_KINDS)[number];

/** What carries the covering. */
export const deckField = z
  .strictObject({
    kind: z
      .enum(DECK_KINDS)
      .optional()
      .meta({
        description:
          "purlins: flat over the rafters; spaced-boards: with gaps, for wood shingles; solid-boards: edge to edge; sheets: plywood or the like, bought with the covering. The usual one of the covering where nothing is said.",
        examples: ["solid-boards"],
      }),
    spacing: quantityField("in", {
      describe: "Spaced boards, centre to centre along the slope, at most. Purlins have `purlinSpacing`.",
      example: "5 in",
      most: "48 in",
    }).optional(),
    closerRows: z
      .int()
      .min(0)
      .max(6)
      .optional()
      .meta({
        description: "So many spaces next to the eave, and next to the ridge, have one more row in their middle.",
        examples: [1],
      }),
  })
  .meta({ id: "Deck", description: "What carries the roof covering.", examples: [{ kind: "solid-boards" }] })
  .optional();

/** What a request says of the deck. */
export type DeckShape = z.infer<typeof deckField>;
