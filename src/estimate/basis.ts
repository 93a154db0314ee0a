/**
 * What every route starts from: pieces, logs, mill, labor, rough sizes, and what the yard sells for each group. Laid once
 * on a scratch sheet to plan, and again, the same, on the sheet of the answer.
 */
import { servicePrice } from "../catalog/look-up.js";
import { lengthsOf } from "../catalog/offers/lumber.js";
import type { PriceCatalog } from "../catalog/price-catalog.js";
import { type Section, toQuantity } from "../catalog/reading.js";
import { woodName } from "../catalog/species.js";
import { laySanding, layTurning, type SandingCells } from "./effort/building.js";
import { type DressingCells, layDressing, layPlaner, machinesOf, type RawPiece } from "./effort/dressing.js";
import { layHardness } from "./effort/hardness.js";
import { layGetOut } from "./effort/hauling.js";
import { layPrepare } from "./effort/preparing.js";
import { layRipDown, type RipDownCells } from "./effort/rip-down.js";
import { type Fault, FaultError, pointer } from "./faults.js";
import { type CutList, layCutList } from "./pieces/cut-list.js";
import type { Site, WantedGroup } from "./pieces/laying.js";
import type { PieceGroup } from "./pieces/piece-group.js";
import type { SoldFor } from "./pieces/runs.js";
import type { Pricing } from "./purchase/line.js";
import type { CuttingRules } from "./purchase/lumber.js";
import { type NothingSold, offerFor, type Substitution, substitute } from "./purchase/substitution.js";
import { decimal } from "./quantity/decimal.js";
import { type DisplayUnits, displayUnits } from "./quantity/display.js";
import type { Quantity } from "./quantity/quantity.js";
import { exactly } from "./quantity/text.js";
import { minorDigits } from "./quantity/unit.js";
import { Assumed } from "./request/assumed.js";
import { Defaults } from "./request/given.js";
import type { EstimateRequest } from "./request/request.js";
import { withShopLimits } from "./request/shop-limits.js";
import { layMill, type MillCells } from "./salvage/mill.js";
import { type Feeding, feedingOf } from "./salvage/ripping.js";
import { layRoughSize, type RoughCells } from "./salvage/rough-size.js";
import type { SawingBasis } from "./salvage/sawing-question.js";
import { laySawyer, type SawyerTerms } from "./salvage/sawyer.js";
import { laySoundLog, type SoundLog } from "./salvage/sound-wood.js";
import { layWood, type WoodCells } from "./salvage/wood.js";
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
  /** How much slower the hardest of its woods works than softwood, times. */
  readonly hardness: Operand;
  /** Person-time to turn one for each crosscut that is deeper than the saw. */
  readonly turn: Cell;
  /** As it comes to the machines; absent where it stays rough. */
  readonly raw: RawPiece | undefined;
  /** Dressing of one as milled, where it is sold rough and wanted dressed. */
  readonly soldRough: DressingCells | undefined;
  /** Ripping one down, where it is sold larger than wanted. */
  readonly ripDown: RipDownCells | undefined;
  readonly substitution: Substitution | NothingSold;
}

/** Who works, for how long, and what an hour is worth. */
export interface LaborCells {
  readonly valueOfHour: Cell;
  readonly crew: Cell;
  /** People who come in addition on the days of raising. */
  readonly helpers: Cell;
  readonly hoursPerWeek: Cell;
  readonly hoursPerDay: Cell;
}

/** Everything that every route starts from. */
export interface Basis {
  readonly sheet: Sheet;
  readonly request: EstimateRequest;
  readonly catalog: PriceCatalog;
  readonly units: DisplayUnits;
  readonly defaults: Defaults;
  readonly assumed: Assumed;
  readonly cutList: CutList;
  readonly groups: readonly GroupBasis[];
  readonly woods: ReadonlyMap<string, WoodCells>;
  readonly logs: readonly SoundLog[];
  /** Person-time to get each log to the mill, by its name. */
  readonly getOut: ReadonlyMap<string, Cell>;
  /** Person-time to prepare each log, by its name. */
  readonly prepare: ReadonlyMap<string, Cell>;
  /** How much slower each wood works than softwood, by its name. */
  readonly hardness: ReadonlyMap<string, Cell>;
  readonly mill: MillCells;
  /** What goes over the table saw. */
  readonly feeding: Feeding;
  readonly labor: LaborCells;
  readonly sawing: SawingBasis;
  readonly pricing: Pricing;
  readonly cutting: CuttingRules;
  /** On which terms a hired sawyer mills; undefined where one mills oneself. */
  readonly sawyer: SawyerTerms | undefined;
  /** The same with a hired sawyer at the mill; absent where none is asked for. */
  readonly hired?: Basis;
}

/** 1/16 in, or 1 mm: steps in which mills are set. */
const GRID_MM = { "inch-pound": "1.5875", metric: "1" } as const;

/** Lays everything before the routes. @throws FaultError when the structure can't be built or a log is no log. */
export function layBasis(sheet: Sheet, request: EstimateRequest): Basis {
  const units = displayUnits(request.system);
  const defaults = new Defaults(request.system);
  const limits = withShopLimits(request.shop, request.assumptions);
  const assumed = new Assumed(sheet, limits.given, request.calibration, request.system);
  assumed.faults.push(...limits.faults);
  const { catalog } = request;
  const labor = layLabor(sheet, request, defaults);
  const site: Site = { sheet, defaults, units, sold: (wanted) => soldFor(wanted, { sheet, request, assumed }) };
  const cutList = layCutList(site, request.structure);
  const moisture = assumed.cell("moisture.target");
  const woods = layWoods(sheet, request, cutList, moisture, defaults, units);
  const logs = layLogs(sheet, request, woods, assumed, defaults, units);
  sheet.title("wood", "Woods");
  sheet.title("logs", "Logs: sound wood and scale");
  sheet.title("rough", "Rough sizes");
  sheet.title("work", "Work by piece group");
  const mill = layMill({ sheet, assumed, defaults, units }, request.shop);
  const digits = minorDigits(catalog.currency) ?? 2;
  const pricing: Pricing = {
    sheet,
    currency: catalog.currency,
    minorDigits: digits,
    level: assumed.cell("priceLevel"),
  };
  const hardness = layHardness(sheet, assumed, woods);
  const getOut = layGetOut(sheet, assumed, mill.getOut, logs);
  const prepare = layPrepare(sheet, assumed, logs, units);
  layPlaner(assumed, request.shop?.planer);
  const { tableSaw } = machinesOf(request.shop);
  const groups = cutList.groups.map((group) =>
    layGroupBasis(group, { sheet, request, catalog, units, assumed, woods, hardness, moisture }),
  );
  const basis: Basis = {
    sheet,
    request,
    catalog,
    units,
    defaults,
    assumed,
    cutList,
    groups,
    woods,
    logs,
    getOut,
    prepare,
    hardness,
    mill,
    feeding: feedingOf({ sheet, assumed, woods, gridMm: GRID_MM[request.system], tableSaw }),
    labor,
    pricing,
    sawing: {
      sheet,
      gridMm: decimal(GRID_MM[request.system]),
      logs,
      mill,
      wage: labor.valueOfHour,
      getOut: [...getOut.values()],
      prepare: [...prepare.values()],
      ripHandling: assumed.cell("rate.ripHandling"),
      ripFeed: assumed.cell(tableSaw ? "rate.ripFeed" : "dress.handRipFeed"),
      crosscut: assumed.cell("rate.crosscut"),
    },
    cutting: {
      pricing,
      system: request.system,
      kerf: mill.crossKerf,
      endTrim: assumed.cell("buy.endTrim"),
      atHand: request.atHand ?? [],
    },
    sawyer: undefined,
  };
  return shopsSawyer(basis);
}

/** What the yard has for the pieces of a run, the trim of their ends taken off; nothing for those that are pinned to the mill. */
function soldFor(
  wanted: WantedGroup,
  { sheet, request, assumed }: Pick<Basis, "sheet" | "request" | "assumed">,
): SoldFor {
  const { source, species } = wanted.rules;
  const logs = request.logs ?? [];
  const mayMill = source !== "buy" && logs.some((log) => species.length === 0 || species.includes(log.species));
  if (source === "mill") return { lengths: [], mayMill };
  const trim = sheet.decide(assumed.cell("buy.endTrim"));
  const offer = offerFor(sheet, wanted, request.catalog);
  if (!offer) return { lengths: [], mayMill };
  const board = { width: offer.actual.width, of: offer.name };
  return { lengths: lengthsOf(offer).map(({ value }) => value.minus(trim)), board, mayMill };
}

/** With the hired sawyer that the request asks for. */
function shopsSawyer(basis: Basis): Basis {
  const { sheet, request, mill, assumed, units, catalog } = basis;
  const shape = request.shop?.sawyer;
  if (!shape) return basis;
  const hired = laySawyer(sheet, shape, mill, { assumed, units, currency: catalog.currency });
  const price = servicePrice(catalog, shape.charge === "hour" ? "milling-per-hour" : "milling-per-board-foot");
  const amount = price.kind === "priced" ? price.amount : undefined;
  const charge = amount && (shape.charge === "hour" ? { perHour: amount } : { perVolume: amount });
  const sawing = { ...basis.sawing, mill: hired.mill, ...(charge ? { charge } : {}) };
  const bySawyer = { ...basis, mill: hired.mill, sawing, sawyer: hired.terms };
  return request.shop?.mill === "none" ? bySawyer : { ...basis, hired: bySawyer };
}

/** The basis on which a plan is laid: that of the hired sawyer for what the sawyer mills. */
export const basisOf = (basis: Basis, { hired }: { readonly hired: boolean }): Basis =>
  hired && basis.hired ? basis.hired : basis;

/** Value of an hour where the request is silent, in units of the catalog's currency. Assumption. */
const VALUE_OF_HOUR = "20";

function layLabor(sheet: Sheet, request: EstimateRequest, defaults: Defaults): LaborCells {
  const { labor } = request;
  const { currency } = request.catalog;
  sheet.title("labor", "Labor");
  const rate = `${currency}/person-h`;
  const each = (text: string) => ({ "inch-pound": text, metric: text });
  const value = labor?.valueOfHour
    ? toQuantity(labor.valueOfHour, rate)
    : defaults.quantity(
        undefined,
        "/labor/valueOfHour",
        each(`${VALUE_OF_HOUR} ${rate}`),
        "an assumption; say what an hour is worth to you",
      );
  const crew = defaults.choice(labor?.crew, "/labor/crew", 2, "nobody should mill or raise alone");
  const helpers = defaults.choice(labor?.helpers, "/labor/helpers", 2, "timbers are raised by four or more");
  const rated = (name: "hoursPerWeek" | "hoursPerDay", label: string, otherwise: string) =>
    sheet.input(`labor.${name}`, defaults.quantity(labor?.[name], `/labor/${name}`, each(otherwise), "an assumption"), {
      label,
    });
  return {
    valueOfHour: sheet.input("labor.valueOfHour", value, { label: "value of an hour of one's own" }),
    crew: sheet.input("labor.crew", exactly(`${crew} people`), { label: "crew" }),
    helpers: sheet.input("labor.helpers", exactly(`${helpers} people`), { label: "helpers on the days of raising" }),
    hoursPerWeek: rated("hoursPerWeek", "hours a week", "12 h/week"),
    hoursPerDay: rated("hoursPerDay", "hours a day", "6 h/day"),
  };
}

/** Woods of logs and of groups that name one, each once, in the order they come up. */
function layWoods(
  sheet: Sheet,
  request: EstimateRequest,
  cutList: CutList,
  moisture: Cell,
  defaults: Defaults,
  units: DisplayUnits,
): ReadonlyMap<string, WoodCells> {
  const ids = [
    ...(request.logs ?? []).map((log) => log.species),
    ...cutList.groups.flatMap((group) => group.rules.species),
  ];
  const at = { value: sheet.decide(moisture), unit: moisture.unit };
  return new Map([...new Set(ids)].map((id) => [id, layWood(sheet, id, at, defaults, units)]));
}

function layLogs(
  sheet: Sheet,
  request: EstimateRequest,
  woods: ReadonlyMap<string, WoodCells>,
  assumed: Assumed,
  defaults: Defaults,
  units: DisplayUnits,
): SoundLog[] {
  const assumptions = {
    taper: assumed.cell("logs.taper"),
    someSweep: assumed.cell("logs.someSweep"),
    badSweep: assumed.cell("logs.badSweep"),
  };
  refuseManyLogs(request);
  const faults: Fault[] = [];
  const logs: SoundLog[] = [];
  for (const [i, log] of (request.logs ?? []).entries()) {
    const wood = woods.get(log.species) as WoodCells;
    const laying = { sheet, wood, assumed: assumptions, defaults, units, currency: request.catalog.currency };
    for (let copy = 1; copy <= (log.count ?? 1); copy++) {
      const name = log.count === undefined ? log.name : `${log.name}-${copy}`;
      const found = laySoundLog(laying, log, name, pointer("/logs", i));
      if ("length" in found && "name" in found) logs.push(found);
      else faults.push(...(found as readonly Fault[]));
    }
  }
  if (faults.length > 0) throw new FaultError(faults);
  return logs;
}

/** As many as the sawing model was measured with. */
const MOST_LOGS = 200;

/** Asked before any is laid: the counts of a short request may come to thousands. */
function refuseManyLogs({ logs = [] }: EstimateRequest): void {
  const count = logs.reduce((sum, log) => sum + (log.count ?? 1), 0);
  if (count <= MOST_LOGS) return;
  const wrong = `There are ${count} logs; the limit is ${MOST_LOGS}.`;
  const cure = "Leave out logs that are too small or too far.";
  throw new FaultError([{ code: "too-large", at: "/logs", wrong, cure }]);
}

interface GroupLaying
  extends Pick<Basis, "sheet" | "request" | "catalog" | "units" | "assumed" | "woods" | "hardness"> {
  readonly moisture: Cell;
}

function layGroupBasis(group: PieceGroup, laying: GroupLaying): GroupBasis {
  const { sheet, request, catalog, units, assumed, woods, moisture } = laying;
  const machines = machinesOf(request.shop);
  const substitution = substitute(sheet, group, catalog, request.system);
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
  const ripDown = comesRough ? undefined : layRippingDown(group, substitution, known, laying);
  const common = { group, weightEach, hardness: hardnessOf(group, laying), turn, substitution, ripDown };
  if (reason !== undefined) {
    const raw = dressed ? rawPiece(group, group, weightEach, laying) : undefined;
    const dressing = raw && comesRough ? layDressing({ ...laying, machines }, group, raw) : undefined;
    return { ...common, millable: undefined, notMilled: reason, raw, soldRough: dressing };
  }
  const allowances = {
    thickness: assumed.cell("allowance.thickness"),
    width: assumed.cell("allowance.width"),
    length: assumed.cell("allowance.length"),
    variation: assumed.cell("allowance.variation"),
    targetMoisture: moisture,
    grid: number(request.system === "metric" ? "1 mm" : "1/16 in"),
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
  const raw = rawPiece(group, rough, weightEach, laying);
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

/** Where it is sold larger than wanted; of the heaviest of the woods that serve. */
function layRippingDown(
  group: PieceGroup,
  substitution: Substitution | NothingSold,
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
  const sold = rawPiece(group, { thickness, width, length: group.length }, weight, laying);
  return layRipDown({ ...laying, machines: machinesOf(request.shop) }, group, { sold, sides });
}

/** The smaller side of a section is its thickness, whichever way round it is written. */
function sideOf({ thickness, width }: Section, side: "thickness" | "width"): Quantity {
  return thickness.value.lte(width.value) === (side === "thickness") ? thickness : width;
}

/** As it comes to the machines, in the hardest of the woods that serve. @param size - Rough where it is milled. */
function rawPiece(
  group: PieceGroup,
  { thickness, width, length }: Pick<RoughCells, "thickness" | "width" | "length">,
  weight: Cell,
  laying: GroupLaying,
): RawPiece {
  return { thickness, width, length, weight, hardness: hardnessOf(group, laying) };
}

/** Of the hardest of the woods that serve: nobody knows yet which log a piece comes from. */
function hardnessOf({ rules: { species } }: PieceGroup, { request, hardness }: GroupLaying): Operand {
  const woods = species.length > 0 ? species : (request.logs ?? []).map((log) => log.species);
  const factors = [...new Set(woods)].flatMap((id) => hardness.get(id) ?? []);
  return factors.length > 0 ? greatest(...factors) : number("1");
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
