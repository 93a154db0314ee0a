/**
 * A schedule of connections with their hardware, and the fasteners to buy: equal ones are pooled over all connections
 * before spares are added and packs are chosen.
 */

import { type CorrosionClassId, type Exposure, FASTENERS, type FastenerKind } from "../../catalog/fasteners.js";
import type { Need } from "../need.js";
import type { GableCells } from "../pieces/gable.js";
import type { PieceGroup } from "../pieces/piece-group.js";
import type { DisplayUnits } from "../quantity/display.js";
import { markedSmall } from "../quantity/text.js";
import { capital } from "../quantity/words.js";
import type { Assumed } from "../request/assumed.js";
import type { Defaults } from "../request/given.js";
import { type Cell, minus, number, over, plus, roundUp, sum, times } from "../sheet/expression.js";
import type { Sheet } from "../sheet/sheet.js";
import { layBolt } from "./bolts.js";
import { type Connection, type ConnectionInput, layConnections } from "./connections.js";
import { leastClass } from "./corrosion.js";
import { type HardwareItem, type LightFixing, layHardware } from "./hardware.js";
import { layPlacing, type Placing } from "./placing.js";
import { hardwareOf } from "./recipes.js";

/** Pieces, and what only the caller knows of them. */
export interface FastenersInput {
  readonly groups: readonly PieceGroup[];
  /** Where fasteners in a group's pieces must last. */
  readonly exposureOf: (group: PieceGroup) => Exposure;
  /** See `ConnectionInput`. */
  readonly gravityOf?: ConnectionInput["gravityOf"];
  /** Section as it stands in the building; see `ConnectionInput`. */
  readonly sectionOf?: ConnectionInput["sectionOf"];
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

/** One sort of fastener of a connection, all connections of a line together. */
export interface ScheduleItem {
  readonly fastener: FastenerKind;
  readonly count: Cell;
  readonly diameter?: Cell;
  readonly length?: Cell;
  readonly corrosion: CorrosionClassId;
}

/** Equal connections with their hardware. */
export interface ScheduleLine extends Connection {
  readonly items: readonly ScheduleItem[];
  /** Undefined where all are driven aslant or through a connector. */
  readonly placing: Placing | undefined;
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
  readonly needs: readonly Need[];
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
  const lines = layConnections(sheet, { ...input, units }).map((connection) => {
    const items = hardwareOf(hardware, connection);
    return {
      ...connection,
      items: items.map((item) => layItem(sheet, connection, item)),
      placing: layPlacing(sheet, connection, items, sizes),
    };
  });
  return { needs: layNeeds(sheet, lines, input), lines, cautions: cautionsOf(lines) };
}

function layItem(sheet: Sheet, { name, sites, exposure }: Connection, item: HardwareItem): ScheduleItem {
  const { fastener, each, diameter, length, as = fastener } = item;
  const count = sheet.lay(`fasteners.${name}.${as}`, times(sites, each), { label: FASTENERS[fastener].name });
  const sized = { ...(diameter && { diameter }), ...(length && { length }) };
  return { fastener, count, ...sized, corrosion: leastClass(exposure) };
}

/** Bought to the piece: nobody loses a post base. */
const NO_SPARES: ReadonlySet<FastenerKind> = new Set(["post-base", "joist-hanger", "rafter-tie", "angle-bracket"]);

function layNeeds(sheet: Sheet, lines: readonly ScheduleLine[], { assumed, defaults }: FastenersInput): Need[] {
  const pools = new Map<string, (ScheduleItem & Pick<ScheduleLine, "groups">)[]>();
  for (const { groups, items } of lines) {
    for (const item of items) {
      const key = poolKey(sheet, item);
      pools.set(key, [...(pools.get(key) ?? []), { ...item, groups }]);
    }
  }
  return [...pools.values()].map((items): Need => {
    const joins = [...new Set(items.flatMap(({ groups }) => groups))];
    const { fastener, diameter, length, corrosion } = items[0] as ScheduleItem;
    const size = sizeText(sheet, [diameter, length], defaults.system);
    const name = freeName(sheet, `fasteners.order.${[fastener, slug(size), corrosion].filter(Boolean).join("_")}`);
    const what = [capital(FASTENERS[fastener].name), size].filter(Boolean).join(" ");
    const label = `${what}, ${corrosion.replaceAll("-", " ")}${corrosion === "stainless" ? "" : " or better"}`;
    const counts = items.map((item) => item.count);
    const driven = counts.length === 1 ? (counts[0] as Cell) : sum(counts);
    const withSpares = times(driven, plus(number("1"), assumed.cell("fastener.spare")));
    const quantity = sheet.lay(name, roundUp(NO_SPARES.has(fastener) ? driven : withSpares), {
      label: NO_SPARES.has(fastener) ? "to buy" : "to buy, spares included",
    });
    const sized =
      FASTENERS[fastener].size === "section" && diameter && length
        ? { fits: [diameter, length] as const }
        : { ...(diameter && { diameter }), ...(length && { length }) };
    sheet.title(name, label);
    return { name, label, item: { kind: "fastener", fastener, ...sized, corrosion }, quantity, joins };
  });
}

/** Two fasteners are the same when kind, sizes and class are. */
function poolKey(sheet: Sheet, { fastener, diameter, length, corrosion }: ScheduleItem): string {
  const exact = (cell: Cell | undefined) => (cell ? sheet.decide(cell).toFixed() : "");
  return [fastener, exact(diameter), exact(length), corrosion].join(" ");
}

/** `1/2 × 7 in`; hundredths of an inch where a gauge has no sixteenths. */
function sizeText(sheet: Sheet, sides: readonly (Cell | undefined)[], system: Defaults["system"]): string {
  const unit = system === "metric" ? "mm" : "in";
  const texts = sides
    .filter((side) => side !== undefined)
    .map((side) => {
      const value = sheet.decideIn(side, unit);
      const isMarked = system === "metric" ? value.isInteger() : value.times(16).isInteger();
      return isMarked
        ? markedSmall({ value: sheet.decide(side), unit: side.unit }, system).replace(/ (?:in|mm)$/, "")
        : value.toDecimalPlaces(3).toFixed();
    });
  return texts.length === 0 ? "" : `${texts.join(" × ")} ${unit}`;
}

/** Two sizes may differ by less than their words show. */
function freeName(sheet: Sheet, wanted: string): string {
  let name = wanted;
  for (let i = 2; sheet.find(name); i++) name = `${wanted}_${i}`;
  return name;
}

const slug = (size: string) =>
  size.replaceAll(" × ", "x").replaceAll("/", "-").replaceAll(".", "p").replaceAll(" ", "_");

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
