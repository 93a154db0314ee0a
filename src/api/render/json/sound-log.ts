/** A log as sound wood, as JSON. */
import { z } from "zod";
import { measuredValue } from "../../../catalog/reading.js";
import type { Basis } from "../../../estimate/basis.js";
import type { SoundLog } from "../../../estimate/salvage/sound-wood.js";
import { amount } from "./figures.js";

const text = (describe: string) => z.string().describe(describe);

const ScaleSchema = z
  .strictObject({
    international: measuredValue.describe("International 1/4-inch rule."),
    scribner: measuredValue.describe("Scribner rule."),
    doyle: measuredValue.describe("Doyle rule."),
    cubic: measuredValue.describe("Cubic volume by Smalian."),
  })
  .meta({ id: "LogScale", description: "What a log is reckoned to hold." });

export const LogSchema = z
  .strictObject({
    name: text("Name of the log; its cells are called logs.<name>.<…>."),
    species: text("Species."),
    dirty: z.boolean().describe("Whether its bark is gritty."),
    length: measuredValue.describe("Sound length."),
    smallDiameter: measuredValue.describe("Sound wood at the small end."),
    largeDiameter: measuredValue.describe("Sound wood at the large end."),
    sweep: measuredValue.describe("Sweep over the sound length."),
    rotSmall: measuredValue.describe("Rotten heart at the small end."),
    rotLarge: measuredValue.describe("Rotten heart at the large end."),
    bark: measuredValue.describe("Bark, one side."),
    scale: ScaleSchema.describe("By the log rules."),
    weight: measuredValue.describe("Green."),
    value: measuredValue.nullable().describe("What it would fetch; null where nothing was said."),
  })
  .meta({ id: "SoundLog", description: "A log as sound wood." });

/** Every log of the request. */
export function shownLogs({ logs }: Basis): z.output<typeof LogSchema>[] {
  return logs.map(shownLog);
}

function shownLog(log: SoundLog): z.output<typeof LogSchema> {
  const { name, species, dirty, scale } = log;
  return {
    ...{ name, species, dirty },
    length: amount(log.length),
    smallDiameter: amount(log.smallDiameter),
    largeDiameter: amount(log.largeDiameter),
    sweep: amount(log.sweep),
    rotSmall: amount(log.rotSmall),
    rotLarge: amount(log.rotLarge),
    bark: amount(log.bark),
    scale: {
      international: amount(scale.international),
      scribner: amount(scale.scribner),
      doyle: amount(scale.doyle),
      cubic: amount(scale.smalian),
    },
    weight: amount(log.weight),
    value: log.value ? amount(log.value) : null,
  };
}
