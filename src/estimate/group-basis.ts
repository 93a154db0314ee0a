/** One piece group with both of its ways: as it is milled, rough size and dressing; and as what it is bought. */
import { type QuantityText, type Section, toQuantity } from "../catalog/reading.js";
import { woodName } from "../catalog/species.js";
import { laySanding, layTurning, type SandingCells } from "./effort/building.js";
import { type DressingCells, layDressing, machinesOf, type RawPiece } from "./effort/dressing.js";
import { laySoldWood } from "./effort/hardness.js";
import { layRipDown, type RipDownCells } from "./effort/rip-down.js";
import type { PieceGroup } from "./pieces/piece-group.js";
import type { Sold } from "./purchase/equal-offers.js";
import type { NothingSold, Substitution } from "./purchase/substitution.js";
import type { DisplayUnits } from "./quantity/display.js";
import type { Quantity } from "./quantity/quantity.js";
import type { Assumed } from "./request/assumed.js";
import type { EstimateRequest } from "./request/request.js";
import { layRoughSize, type RoughCells } from "./salvage/rough-size.js";
import type { WoodCells } from "./salvage/wood.js";
import { type Cell, greatest, minus, number, type Operand, over, roundUp, times } from "./sheet/expression.js";
import type { Sheet } from "./sheet/sheet.js";
import { UNKNOWN_WOOD } from "./takeoff/weight.js";

/** A group that the logs may serve. */
export interface MillableGroup {
  readonly rough: RoughCells;
  readonly spares: Cell;
  readonly dressing: DressingCells;
  readonly sanding: SandingCells;
}

/** One group with both of its ways. */
export interface GroupBasis {
  readonly group: PieceGroup;
  /** Absent where it may not be milled; then `bought` says why. */
  readonly millable: MillableGroup | undefined;
  readonly notMilled?: string;
  /** Weight of one piece as it is built in. */
  readonly weightEach: Cell;
  /** How much slower the hardest of the woods that it may be milled of works than softwood, times. */
  readonly hardness: Operand;
  /** What is sold for it: how much slower that works, its weight, and its turning; those of the milled where nothing is. */
  readonly sold: { readonly hardness: Operand; readonly weight: Cell; readonly turn: Cell };
  /** Person-time to turn one for each crosscut that is deeper than the saw. */
  readonly turn: Cell;
  /** As it comes to the machines; absent where it stays rough. */
  readonly raw: RawPiece | undefined;
  /** Dressing of one as milled, where it is sold rough and wanted dressed. */
  readonly soldRough: DressingCells | undefined;
  /** Ripping one down, where it is sold larger than wanted. */
  readonly ripDown: RipDownCells | undefined;
  readonly substitution: Substitution | NothingSold;
  /** As each of the offers that serve as well, the one that is bought among them. */
  readonly rivals: readonly Substitution[];
}

/** What a group is laid with. */
interface GroupLaying {
  readonly sheet: Sheet;
  readonly request: EstimateRequest;
  readonly units: DisplayUnits;
  readonly assumed: Assumed;
  /** By name. */
  readonly woods: ReadonlyMap<string, WoodCells>;
  /** How much slower each wood works than softwood, by its name. */
  readonly hardness: ReadonlyMap<string, Cell>;
  /** At which dried pieces are dressed. */
  readonly moisture: Cell;
}

/** The step in which the mill is set, where the request says it. */
function settingStep({ sheet, request, units }: GroupLaying): Cell | undefined {
  const step = request.shop?.settingStep;
  const name = "mill.settingStep";
  const lay = (text: QuantityText) =>
    sheet.input(name, toQuantity(text, "in"), { label: "step in which the mill is set", display: units.small });
  return sheet.find(name) ?? (step === undefined ? undefined : lay(step));
}

/** Lays both ways of a group; where it may not be milled, says why. */
export function layGroupBasis(group: PieceGroup, { substitution, rivals }: Sold, laying: GroupLaying): GroupBasis {
  const { sheet, request, units, assumed, woods, moisture } = laying;
  const machines = machinesOf(request.shop);
  const served = [...new Set((request.logs ?? []).map((log) => log.species))].filter(
    (id) => group.rules.species.length === 0 || group.rules.species.includes(id),
  );
  const cells = served.map((id) => woods.get(id) as WoodCells);
  const known = cells.length > 0 ? cells : group.rules.species.flatMap((id) => woods.get(id) ?? []);
  const weightEach = layWeightEach(group, known, laying);
  const turn = layTurning(sheet, group, weightEach, assumed);
  const dressed = group.rules.surface === "dressed";
  const comesRough = dressed && "offer" in substitution && substitution.offer.surface === "rough";
  const reason = whyNotMilled(group, request, cells.length > 0);
  const hardness = hardnessOf(group, laying);
  const sold =
    "offer" in substitution
      ? layAsSold(group, substitution.offer.species, laying)
      : { hardness, weight: weightEach, turn };
  const ripDown = comesRough
    ? undefined
    : layRippingDown(group, { substitution, hardness: sold.hardness }, known, laying);
  const common = { group, weightEach, hardness, sold, turn, substitution, rivals, ripDown };
  if (reason !== undefined) {
    const raw = dressed ? rawPiece(group, weightEach, sold.hardness) : undefined;
    const dressing = raw && comesRough ? layDressing({ ...laying, machines }, group, raw) : undefined;
    return { ...common, millable: undefined, notMilled: reason, raw, soldRough: dressing };
  }
  const grid = number(request.system === "metric" ? "1 mm" : "1/16 in");
  const allowances = {
    thickness: assumed.cell("allowance.thickness"),
    width: assumed.cell("allowance.width"),
    length: assumed.cell("allowance.length"),
    variation: assumed.cell("allowance.variation"),
    targetMoisture: moisture,
    grid,
    setting: settingStep(laying) ?? grid,
  };
  // The wood that shrinks most, where several serve: nobody knows yet which log a piece comes from.
  const shrinkage = sheet.lay(`rough.${group.name}.shrinkage`, greatest(...cells.map((wood) => wood.shrinkage)), {
    label: "shrinkage allowed for",
    display: "%",
  });
  const rough = layRoughSize(sheet, group, allowances, shrinkage, units);
  // To the nearest whole piece, half down: two beams want no third.
  const rejects = minus(times(group.count, assumed.cell("fallDown.share")), number("1/2"));
  const spares = sheet.lay(`rough.${group.name}.spares`, roundUp(greatest(rejects, number("0"))), {
    label: "rejects expected",
  });
  const raw = rawPiece(rough, weightEach, hardness);
  const dressing = layDressing({ ...laying, machines }, group, raw);
  const sanding = laySanding(sheet, group, assumed);
  const soldRough = comesRough ? dressing : undefined;
  const millable = { rough, spares, dressing, sanding };
  return { ...common, millable, raw: dressed ? raw : undefined, soldRough };
}

/** Of one piece as it is built in, of the heaviest of the woods that serve, or of one that nobody named. */
function layWeightEach(group: PieceGroup, woods: readonly WoodCells[], { sheet, units }: GroupLaying): Cell {
  const [density, unknown] =
    group.rules.seasoning === "dried"
      ? (["dryDensity", UNKNOWN_WOOD.dry] as const)
      : (["greenDensity", UNKNOWN_WOOD.green] as const);
  const heaviest = woods.length > 0 ? greatest(...woods.map((wood) => wood[density])) : number(unknown);
  return sheet.lay(`work.${group.name}.weightEach`, times(over(group.volume, group.count), heaviest), {
    label: "weight of one piece as built in",
    display: units.mass,
  });
}

/** One piece in the wood that is sold: dry, as yards keep it; an assumption of what is sold green. */
function layAsSold(group: PieceGroup, species: string, laying: GroupLaying): GroupBasis["sold"] {
  const { sheet, units, assumed } = laying;
  const { density, hardness } = laySoldWood(laying, species);
  const weight = sheet.lay(`work.${group.name}.weightBought`, times(over(group.volume, group.count), density), {
    label: "weight of one piece as bought",
    display: units.mass,
  });
  return { hardness, weight, turn: layTurning(sheet, group, weight, assumed, "turnBought") };
}

/** Where it is sold larger than wanted; as heavy as the heaviest of the woods that serve. */
function layRippingDown(
  group: PieceGroup,
  { substitution, hardness }: { readonly substitution: Substitution | NothingSold; readonly hardness: Operand },
  woods: readonly WoodCells[],
  laying: GroupLaying,
): RipDownCells | undefined {
  if (!("offer" in substitution) || substitution.larger.length === 0) return undefined;
  const { sheet, request, units } = laying;
  const { offer, larger: sides } = substitution;
  const [thickness, width] = (["thickness", "width"] as const).map((side) =>
    sheet.catalog(`work.${group.name}.sold.${side}`, sideOf(offer.actual, side), {
      label: `${side} as sold`,
      display: units.small,
      source: offer.label,
    }),
  ) as [Cell, Cell];
  const density = woods.length > 0 ? greatest(...woods.map((wood) => wood.dryDensity)) : number(UNKNOWN_WOOD.dry);
  const weight = sheet.lay(`work.${group.name}.sold.weight`, times(thickness, width, group.length, density), {
    label: "weight as sold",
    display: units.mass,
  });
  const sold = rawPiece({ thickness, width, length: group.length }, weight, hardness);
  return layRipDown({ ...laying, machines: machinesOf(request.shop) }, group, { sold, sides });
}

/** The smaller side of a section is its thickness, whichever way round it is written. */
function sideOf({ thickness, width }: Section, side: "thickness" | "width"): Quantity {
  return thickness.value.lte(width.value) === (side === "thickness") ? thickness : width;
}

/** As it comes to the machines. @param size - Rough where it is milled. */
const rawPiece = (
  { thickness, width, length }: Pick<RoughCells, "thickness" | "width" | "length">,
  weight: Cell,
  hardness: Operand,
): RawPiece => ({ thickness, width, length, weight, hardness });

/** Of the hardest of the woods that serve: nobody knows yet which log a piece comes from. */
function hardnessOf({ rules: { species } }: PieceGroup, { request, hardness }: GroupLaying): Operand {
  const woods = species.length > 0 ? species : (request.logs ?? []).map((log) => log.species);
  const [first, ...others] = [...new Set(woods)].flatMap((id) => hardness.get(id) ?? []);
  if (!first) return number("1");
  return others.length > 0 ? greatest(first, ...others) : first;
}

function whyNotMilled(group: PieceGroup, request: EstimateRequest, woodServes: boolean): string | undefined {
  if ((request.logs ?? []).length === 0) return "there are no logs";
  if (request.shop?.mill === "none" && !request.shop.sawyer) return "there is no mill";
  if (group.rules.source === "buy") return "you chose to buy it";
  if (!woodServes) return `no log is ${group.rules.species.map(woodName).join(" or ")}`;
  if (group.rules.structural && request.site?.ungradedAccepted === "no") {
    return "the building office does not accept ungraded lumber for structural pieces";
  }
  return undefined;
}
