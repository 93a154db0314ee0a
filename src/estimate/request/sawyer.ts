/** A hired sawyer, as one more way to have the groups milled. */
import { z } from "zod";
import { millKinds } from "../../catalog/mills.js";
import { moneyField } from "../../catalog/reading.js";

/** What a request says of a hired sawyer. */
export const sawyerShape = z
  .strictObject({
    charge: z.enum(["hour", "board-foot"]).meta({
      description:
        "By which the sawyer is paid, beside the set-up: milling-per-hour while the mill runs, or milling-per-board-foot of rough lumber as it measures; prices stand in the catalog's services.",
      examples: ["board-foot"],
    }),
    mill: z
      .enum(millKinds)
      .optional()
      .meta({ description: "Mill that the sawyer brings.", examples: ["hydraulic-band-mill"] }),
    helpers: z
      .int()
      .min(1)
      .max(5)
      .optional()
      .meta({ description: "People of your own who help at the mill; 1 when absent.", examples: [1] }),
    minimum: moneyField("", { describe: "Least charge for set-up and sawing together.", example: "350" }).optional(),
  })
  .meta({
    id: "Sawyer",
    description: "A hired sawyer with a mill, compared with milling yourself and with buying.",
    examples: [{ charge: "board-foot" }],
  });
/** The same, typed. */
export type SawyerShape = z.infer<typeof sawyerShape>;
