/** A schedule of connections with their hardware, and the fasteners to buy. */

import { type CorrosionClassId, type Exposure, FASTENERS, type FastenerKind } from "../../catalog/fasteners.js";
import type { ItemOf, Need } from "../need.js";
import type { GableCells } from "../pieces/gable.js";
import type { PieceGroup } from "../pieces/piece-group.js";
import type { DisplayUnits } from "../quantity/display.js";
import type { Assumed } from "../request/assumed.js";
import type { Defaults } from "../request/given.js";
import { type Cell, minus, number, over, times } from "../sheet/expression.js";
import type { Sheet } from "../sheet/sheet.js";
import { layBolt } from "./bolts.js";
import { type Connection, type ConnectionInput, layConnections } from "./connections.js";
import { leastClass } from "./corrosion.js";
import { itemOf, layFastenerNeeds, sortOf } from "./fastener-needs.js";
import { type FittedHardware, splitByRoute } from "./fitted-hardware.js";
import { type Hardware, type HardwareItem, type LightFixing, layHardware } from "./hardware.js";
import { layPlacing } from "./placing.js";
import { hardwareOf } from "./recipes.js";
import type { ScheduleItem, ScheduleLine } from "./schedule.js";

/** Pieces, and what only the caller knows of them. */
export interface FastenersInput {
  readonly groups: readonly PieceGroup[];
  /** Where fasteners in a group's pieces must last. */
  readonly exposureOf: (group: PieceGroup) => Exposure;
  /** See `ConnectionInput`. */
  readonly gravityOf?: ConnectionInput["gravityOf"];
  /** Section as it stands in the building; see `ConnectionInput`. */
  readonly sectionOf?: ConnectionInput["sectionOf"];
  readonly boughtSectionOf?: ConnectionInput["boughtSectionOf"];
  /** Whether anybody knows what it costs. */
  readonly isPriced?: (item: ItemOf<"fastener">) => boolean;
  /** Pieces of how many runs share a section: see `ConnectionInput`. */
  readonly runs: Readonly<Record<string, number>>;
  /** What purlins and boards cross, apart. */
  readonly supportsApart: Cell | undefined;
  readonly light: LightFixing;
  /** See `Hardware`; so where nothing is said. */
  readonly poured?: boolean;
  readonly assumed: Assumed;
  readonly defaults: Defaults;
}

/** Facts that call for a caution; what to say is not decided here. */
export type FastenerCaution =
  /** Rafter ties hold against uplift: check their number and kind with the local code. */
  | { readonly code: "uplift"; readonly lines: readonly string[] }
  /** Wood rich in tannins, preservative-treated wood: nothing less than the class. */
  | { readonly code: "tannin" | "treated"; readonly lines: readonly string[]; readonly corrosion: CorrosionClassId }
  /** Salt air: nothing but stainless. */
  | { readonly code: "salt"; readonly lines: readonly string[] }
  /** Longer than any bolt in the shelves: threaded rod. */
  | { readonly code: "long-bolt"; readonly lines: readonly string[] }
  /** Pieces too narrow for the distances to their edges; too little wood to the end where two meet over a support. */
  | { readonly code: "edge-distance" | "end-distance"; readonly lines: readonly string[] };

/** Needs include spares; the schedule counts what is driven. */
export interface FastenersTakeoff {
  /** What all routes have alike. */
  readonly needs: readonly Need[];
  /** What each route needs for the pieces that it mills and those that it buys; undefined where they measure the same. */
  readonly fitted: FittedHardware | undefined;
  readonly lines: readonly ScheduleLine[];
  readonly cautions: readonly FastenerCaution[];
}

/** Lays the rafters' distance apart, as they stand: what purlins cross. */
export function layGableSupports(sheet: Sheet, { frame, roof, groups }: GableCells, units: DisplayUnits): Cell {
  const rafter = groups.find(({ name }) => name === "rafters");
  const reach = rafter ? minus(frame.length, rafter.thickness) : frame.length;
  return sheet.lay("fasteners.supportsApart", over(reach, minus(roof.rafterLines, number("1"))), {
    label: "rafters apart",
    display: units.small,
  });
}

/**
 * Lays connections, their hardware, and what to buy.
 * @throws FaultError when the bolt diameter is in no table.
 */
export function layFasteners(sheet: Sheet, input: FastenersInput, units: DisplayUnits): FastenersTakeoff {
  sheet.title("fasteners", "Fasteners");
  const bolt = layBolt(sheet, input.defaults, units);
  const hardware = layHardware(sheet, { ...input, bolt, poured: input.poured ?? true }, units);
  const sizes = { boardScrew: hardware.boardScrew, units };
  const lines = layConnections(sheet, { ...input, units }).map((connection): ScheduleLine => {
    const recipe = hardwareOf(hardware, connection);
    const items = recipe.map((item) => layItem(sheet, connection, item));
    const placing = layPlacing(sheet, connection, recipe, sizes);
    const fitted = connection.ifBought && layFitted(sheet, { ...input, hardware }, connection, items);
    return { ...connection, items, ...(fitted && { fitted }), placing };
  });
  const { fitted, common } = splitByRoute(lines, input);
  return { needs: layFastenerNeeds(sheet, common, input), lines, fitted, cautions: cautionsOf(lines) };
}

/**
 * What is of another size where the pieces are bought; undefined where nothing is, or where one of the two has no price: what costs
 * nothing on one way alone would decide between them.
 */
function layFitted(
  sheet: Sheet,
  { hardware, isPriced }: { readonly hardware: Hardware } & Pick<FastenersInput, "isPriced">,
  connection: Connection,
  items: readonly ScheduleItem[],
): ScheduleLine["fitted"] {
  const bought = { ...connection, ...connection.ifBought, name: `${connection.name}.bought` };
  sheet.title(`fasteners.${bought.name}`, `${connection.label}, where they are bought`);
  const others = hardwareOf(hardware, bought).map((item) => layItem(sheet, bought, item));
  const told = (item: ScheduleItem) => `${sheet.decide(item.count).toFixed()} ${sortOf(sheet, item)}`;
  const [own, theirs] = [items, others].map((all) => new Set(all.map(told)));
  const only = (all: readonly ScheduleItem[], known: ReadonlySet<string> | undefined) =>
    all.filter((item) => !known?.has(told(item)));
  const fitted = { milled: only(items, theirs), bought: only(others, own) };
  const known = [...fitted.milled, ...fitted.bought].every((item) => isPriced?.(itemOf(item)));
  return known && fitted.milled.length > 0 ? fitted : undefined;
}

function layItem(sheet: Sheet, { name, sites, exposure }: Connection, item: HardwareItem): ScheduleItem {
  const { fastener, each, diameter, length, as = fastener } = item;
  const count = sheet.lay(`fasteners.${name}.${as}`, times(sites, each), { label: FASTENERS[fastener].name });
  const sized = { ...(diameter && { diameter }), ...(length && { length }) };
  return { fastener, count, ...sized, corrosion: leastClass(exposure) };
}

function cautionsOf(lines: readonly ScheduleLine[]): FastenerCaution[] {
  const named = (which: (line: ScheduleLine) => boolean) => lines.filter(which).map((line) => line.name);
  const has = (line: ScheduleLine, fastener: FastenerKind) => line.items.some((item) => item.fastener === fastener);
  const found: FastenerCaution[] = [
    { code: "uplift", lines: named((line) => has(line, "rafter-tie")) },
    { code: "edge-distance", lines: named((line) => line.placing?.fits === false) },
    { code: "end-distance", lines: named((line) => line.placing?.endFits === false) },
    { code: "salt", lines: named((line) => line.exposure.climate === "salt") },
    { code: "long-bolt", lines: named((line) => has(line, "threaded-rod") && line.kind !== "post-base") },
  ];
  for (const code of ["tannin", "treated"] as const) {
    const corrosion = leastClass({ climate: "outdoors", treated: false, tannin: false, [code]: true });
    found.push({ code, lines: named((line) => line.exposure[code]), corrosion });
  }
  return found.filter((caution) => caution.lines.length > 0);
}
