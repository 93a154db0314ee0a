/**
 * The finish of one route: pieces that are milled keep the texture that is asked for, bought ones come as the yard dresses them.
 * Rough faces drink more, and take longer to brush.
 */
import type { Texture } from "../../catalog/finishes.js";
import type { Basis } from "../basis.js";
import { brushingTime, layBrushing } from "../effort/brushing.js";
import { coatsOf, type SettingCells } from "../effort/setting.js";
import { stageOfNeed } from "../effort/used-in.js";
import type { GroupBasis } from "../group-basis.js";
import type { ItemOf } from "../need.js";
import { decideByNeed } from "../purchase/decide-by-need.js";
import { type ShoppingLine, withTax } from "../purchase/line.js";
import { costInCans, layFinishLine } from "../purchase/shopping-list.js";
import { type Cell, minus, number, type Operand, over, sumOr, times } from "../sheet/expression.js";
import {
  type FacesToFinish,
  type FinishLine,
  type FinishTakeoff,
  layFinish,
  takenBy,
  textureOf,
} from "../takeoff/finish.js";
import type { SplitGroup } from "./finishing.js";

/** Faces, volume, cans and hours of a route's finish. */
export interface RouteFinish {
  /** As asked for. */
  readonly faces: FacesToFinish;
  readonly takeoff: FinishTakeoff;
  /** Person-hours of the first coat and of later ones; empty without a finish. */
  readonly stages: readonly Cell[];
  readonly lines: readonly ShoppingLine[];
  /** What a coat waits for; undefined without a finish. */
  readonly coat: SettingCells["coat"];
  /** Cost of re-coating, spread over the years between; absent without a finish or a price for it. */
  readonly upkeep: Cell | undefined;
}

/** How a piece that is bought comes: as asked for where that is smooth, or where nothing serves. */
export const boughtTexture = ({ group, substitution }: GroupBasis): Texture =>
  "offer" in substitution && substitution.offer.surface === "dressed" ? "smooth" : textureOf(group);

/** The same of each of the offers that serve as well. */
export const boughtTextures = (one: GroupBasis): Texture[] => [
  ...new Set([one.substitution, ...one.rivals].map((substitution) => boughtTexture({ ...one, substitution }))),
];

/** What the milled pieces of a group take of finish and of brushing beyond what they would take were they bought. */
export function finishBeyondBought(
  basis: Basis,
  one: GroupBasis,
  milled: Operand,
  finish: RouteFinish,
): { readonly hours: Operand; readonly cash: Operand } | undefined {
  const { sheet, assumed, pricing, catalog } = basis;
  const [own, bought] = [textureOf(one.group), boughtTexture(one)];
  const { faces } = finish;
  const shown = faces.lines.find(({ group }) => group === one.group.name)?.area;
  if (own === bought || !shown) return undefined;
  const area = over(times(shown, milled), one.group.count);
  const [more, less] = [own, bought].map((texture) => takenBy(sheet, faces.terms, texture, area));
  if (!more || !less) return undefined;
  const hours = minus(
    brushingTime(assumed, own, area, more.brushed),
    brushingTime(assumed, bought, area, less.brushed),
  );
  const cash = more.volumes.flatMap(({ kind, volume }, i) => {
    const item = { kind: "finish", finish: kind } as const;
    const line = lineOf(finish, kind);
    const other = less.volumes[i]?.volume;
    if (!line?.amount || !other) return [];
    const then = minus(line.quantity, minus(volume, other));
    const cost = costInCans(pricing, catalog, line, { item, volume: then });
    return cost ? [minus(line.amount, cost)] : [];
  });
  return { hours, cash: withTax(basis, "finishes", sumOr(cash, basis.pricing.currency)) };
}

/** Lays what the faces of a route take, under its key. */
export function layRouteFinish(
  basis: Basis,
  key: string,
  split: readonly SplitGroup[],
  faces: FacesToFinish,
): RouteFinish {
  const { sheet, assumed, units, pricing, catalog } = basis;
  const areas = new Map(faces.lines.map(({ group, area }) => [group, area]));
  const shown = split.flatMap((one) => facesOf(basis, key, one, areas.get(one.one.group.name) as Cell));
  const takeoff = layFinish(sheet, faces.terms, shown, units, `${key}.`);
  decideByNeed(basis, takeoff.needs);
  const lines = takeoff.needs.map((need) => ({
    ...layFinishLine(pricing, catalog, need, need.item as ItemOf<"finish">, `${key}.`),
    stage: stageOfNeed(need, []),
  }));
  const { betweenCoats } = takeoff;
  return {
    faces,
    takeoff,
    stages: layBrushing(sheet, key, takeoff, assumed),
    lines,
    coat: betweenCoats && { dries: betweenCoats, coats: coatsOf(takeoff) },
    upkeep: layUpkeepCost(basis, key, takeoff, lines),
  };
}

/** The line for a kind of finish; undefined where none is wanted. */
const lineOf = ({ takeoff, lines }: Pick<RouteFinish, "takeoff" | "lines">, kind: string): ShoppingLine | undefined =>
  lines[takeoff.needs.findIndex(({ item }) => item.kind === "finish" && item.finish === kind)];

/** Faces of a group's milled pieces, and of its bought ones where they come in another texture. */
function facesOf({ sheet, units }: Basis, key: string, { one, milled }: SplitGroup, area: Cell): FinishLine[] {
  const { name, count } = one.group;
  const [own, bought] = [textureOf(one.group), boughtTexture(one)];
  if (!milled || milled === count || own === bought) return [{ group: name, texture: milled ? own : bought, area }];
  const share = over(milled, count);
  const part = (texture: Texture, of: typeof share): FinishLine => {
    const label = `${texture} faces that show`;
    const cell = sheet.lay(`${key}.finish.${name}.${texture}`, times(area, of), { label, display: units.area });
    return { group: name, texture, area: cell };
  };
  return [part(own, share), part(bought, minus(number("1"), share))];
}

/** A later coating takes the same cans as the first, before tax; their cost is spread over the years between. */
function layUpkeepCost(
  { sheet }: Basis,
  key: string,
  takeoff: FinishTakeoff,
  lines: readonly ShoppingLine[],
): Cell | undefined {
  const { upkeep, kind } = takeoff;
  const amount = lineOf({ takeoff, lines }, kind)?.amount;
  if (!upkeep || !amount) return undefined;
  return sheet.lay(`${key}.finish.yearlyCost`, over(times(amount, number("1 year")), upkeep.recoatYears), {
    label: "cans of finish for upkeep, a year, before tax",
  });
}
