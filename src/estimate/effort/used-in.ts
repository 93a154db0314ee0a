/**
 * In which stage of work a thing that is paid for is used up, so that a stage can say what it costs. What serves several
 * stages belongs to none of them. Stages by the last part of their cells' names.
 */
import type { EquipmentItem } from "../../catalog/offers/supplies.js";
import { BELOW_COVERING, type CoveringPart, type Need } from "../need.js";
import type { PieceGroup } from "../pieces/piece-group.js";
import type { ShoppingLine } from "../purchase/line.js";
import type { ServedLine } from "../purchase/shopping-list.js";
import { raisedIn } from "./building.js";

/**
 * What a route's work uses up, by the last part of its line's name. The current of the shop's machines is of dressing and
 * sanding, the fuel of hauling of logs and lumber: of no one stage.
 */
export const STAGE_OF_USE: Readonly<Record<string, string>> = {
  fuel: "saw",
  "fetching-fuel": "fetch",
  "two-stroke-oil": "saw",
  "bar-oil": "saw",
  chain: "saw",
  band: "saw",
  "circular-blade": "saw",
  "chain-sharpening": "sharpen",
  "band-sharpening": "sharpen",
  "circular-sharpening": "sharpen",
  files: "sharpen",
  "grinding-wheel": "sharpen",
  "planer-knife-sharpening": "dress",
  "planer-knives": "dress",
  "sanding-discs": "sand",
};

/** Hired or bought machines. What one stands on serves every stage aloft, a trailer logs and lumber: of no one stage. */
export const STAGE_OF_MACHINE: Readonly<Partial<Record<EquipmentItem, string>>> = {
  "chainsaw-mill": "saw",
  "manual-band-mill": "saw",
  "hydraulic-band-mill": "saw",
  "swing-blade-mill": "saw",
  chainsaw: "saw",
  winch: "getOut",
  planer: "dress",
  jointer: "dress",
  "table-saw": "dress",
  "track-saw": "dress",
  sander: "sand",
  auger: "dig",
};

/** Along the edges, over the covering. */
const TRIMS: ReadonlySet<CoveringPart> = new Set(["ridge-cap", "hip-cap", "rake-trim"]);
/** Below the covering. */
const DECKS: ReadonlySet<CoveringPart> = new Set(["sheathing", "deck"]);

/** The stage that uses up what every route needs; undefined where several do. @param groups - Of the structure. */
export function stageOfNeed({ item, joins }: Need, groups: readonly PieceGroup[]): string | undefined {
  switch (item.kind) {
    case "covering":
      if (BELOW_COVERING.has(item.part)) return "eaves";
      return TRIMS.has(item.part) ? "trim" : DECKS.has(item.part) ? "deck" : "roof";
    case "fastener":
      return joins ? stageOfJoints(joins, groups) : "roof";
    case "finish":
      return "finishFirst";
    case "consumable":
      return item.item === "end-sealer" ? "finishFirst" : "pour";
    case "service":
      return "dig";
  }
}

/** A joint is made when its piece is put up; undefined where the pieces go up in several stages. */
function stageOfJoints(joins: readonly string[], groups: readonly PieceGroup[]): string | undefined {
  const stages = new Set(groups.filter(({ name }) => joins.includes(name)).map((one) => raisedIn(one) ?? "eaves"));
  return stages.size === 1 ? [...stages][0] : undefined;
}

/** A line with the stage of the needs that it serves, where they are of one. */
export function atStage({ line, needs }: ServedLine, groups: readonly PieceGroup[]): ShoppingLine {
  const stages = new Set(needs.map((need) => stageOfNeed(need, groups)));
  return { ...line, stage: stages.size === 1 ? [...stages][0] : undefined };
}
