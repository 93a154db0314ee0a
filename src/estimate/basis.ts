/**
 * What every route starts from: pieces, logs, mill, labor, rough sizes, and what the yard sells for each group. Laid once
 * on a scratch sheet to plan, and again, the same, on the sheet of the answer.
 */
import { servicePrice } from "../catalog/look-up.js";
import { lengthsOf } from "../catalog/offers/lumber.js";
import type { PriceCatalog } from "../catalog/price-catalog.js";
import { layPlaner, machinesOf } from "./effort/dressing.js";
import { layHardness } from "./effort/hardness.js";
import { layGetOut } from "./effort/hauling.js";
import { layPrepare } from "./effort/preparing.js";
import { type GroupBasis, layGroupBasis } from "./group-basis.js";
import { type LaborCells, layLabor } from "./labor.js";
import { layLogs, layWoods } from "./logs-at-hand.js";
import { type CutList, layCutList } from "./pieces/cut-list.js";
import type { Site, WantedGroup } from "./pieces/laying.js";
import type { SoldFor } from "./pieces/run-cutting.js";
import { substitutions } from "./purchase/equal-offers.js";
import type { Pricing } from "./purchase/line.js";
import type { CuttingRules } from "./purchase/lumber.js";
import type { PlanOrder } from "./purchase/planned-once.js";
import { offerFor, substitute } from "./purchase/substitution.js";
import { triedPlanner } from "./purchase/tried-orders.js";
import { type Decimal, decimal } from "./quantity/decimal.js";
import { type DisplayUnits, displayUnits } from "./quantity/display.js";
import { quantity } from "./quantity/quantity.js";
import { minorDigits } from "./quantity/unit.js";
import { Assumed } from "./request/assumed.js";
import { Defaults } from "./request/given.js";
import type { EstimateRequest } from "./request/request.js";
import { withShopLimits } from "./request/shop-limits.js";
import type { ExplicitPieces } from "./request/structure.js";
import { Watched } from "./request/unread.js";
import { layMill, type MillCells } from "./salvage/mill.js";
import { type Feeding, feedingOf } from "./salvage/ripping.js";
import type { SawingBasis } from "./salvage/sawing-question.js";
import { laySawyer, type SawyerTerms } from "./salvage/sawyer.js";
import type { SoundLog } from "./salvage/sound-wood.js";
import type { WoodCells } from "./salvage/wood.js";
import type { Cell } from "./sheet/expression.js";
import type { Sheet } from "./sheet/sheet.js";

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
  /** Fields of the structure that nothing has asked for so far: JSON Pointers. */
  readonly unread: () => readonly string[];
  /** The same with a hired sawyer at the mill; absent where none is asked for. */
  readonly hired?: Basis;
}

/** 1/16 in, or 1 mm: steps in which mills are set. */
const GRID_MM = { "inch-pound": "1.5875", metric: "1" } as const;

/**
 * Lays everything before the routes.
 * @param yard - What there is for the pieces of a run; asked of the catalog where it is left out.
 * @throws FaultError when the structure can't be built or a log is no log.
 */
export function layBasis(sheet: Sheet, asked: EstimateRequest, yard?: Site["sold"]): Basis {
  const structure = new Watched(asked.structure);
  const request = { ...asked, structure: structure.value };
  const units = displayUnits(request.system);
  const defaults = new Defaults(request.system);
  const limits = withShopLimits(request.shop, request.assumptions);
  const assumed = new Assumed(sheet, limits.given, request.calibration, request.system);
  assumed.faults.push(...limits.faults);
  const { catalog } = request;
  const labor = layLabor(sheet, request, defaults);
  const inCatalog: Site["sold"] = (wanted) => soldFor(wanted, { sheet, request, assumed });
  const site: Site = { sheet, defaults, units, sold: yard ?? inCatalog };
  const cutList = layCutList(site, request.structure);
  const moisture = assumed.cell("moisture.target");
  const woods = layWoods({ sheet, request, defaults, units }, cutList, moisture);
  const logs = layLogs({ sheet, request, defaults, units, assumed }, woods);
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
  const cutting: CuttingRules = {
    pricing,
    system: request.system,
    kerf: mill.crossKerf,
    endTrim: assumed.cell("buy.endTrim"),
    spoiled: assumed.cell("buy.wastage"),
    tried: triedOf(asked),
    atHand: request.atHand ?? [],
  };
  const loss = { kerf: mill.ripKerf, planed: () => assumed.cell("rip.planed") };
  const sold = substitutions(cutting, cutList.groups, catalog.lumber, (group, lumber) =>
    substitute(sheet, group, { lumber, endTrim: cutting.endTrim }, { system: request.system, loss }),
  );
  const laying = { sheet, request, units, assumed, woods, hardness, moisture };
  const groups = cutList.groups.map((group, i) => layGroupBasis(group, sold[i] as (typeof sold)[number], laying));
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
    cutting,
    sawyer: undefined,
    unread: () => structure.unread("/structure"),
  };
  return shopsSawyer(basis);
}

/** By request: all of its sheets choose among equal offers, and try the same orders for it. */
const tried = new WeakMap<EstimateRequest, PlanOrder>();

function triedOf(request: EstimateRequest): PlanOrder {
  const plan = tried.get(request) ?? triedPlanner();
  tried.set(request, plan);
  return plan;
}

/** What the yard has for the pieces of a run, the trim of their ends taken off; nothing for those that are pinned to the mill. */
export function soldFor(
  wanted: WantedGroup,
  { sheet, request, assumed }: Pick<Basis, "sheet" | "request" | "assumed">,
): SoldFor {
  const { source, species } = wanted.rules;
  const logs = request.logs ?? [];
  const mayMill = source !== "buy" && logs.some((log) => species.length === 0 || species.includes(log.species));
  if (source === "mill") return { lengths: [], mayMill };
  const trim = sheet.decide(assumed.cell("buy.endTrim"));
  const offer = offerFor(sheet, wanted, request.catalog, request.system);
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

/** The same where an hour is worth something else, for plans that are made for it; what is laid already keeps its own. @param name - Of the cell. */
export function atHour(basis: Basis, worth: Decimal, name: string): Basis {
  const { sheet, labor, hired } = basis;
  const valueOfHour = sheet.input(name, quantity(worth, labor.valueOfHour.unit));
  const at = (one: Basis): Basis => ({
    ...one,
    labor: { ...one.labor, valueOfHour },
    sawing: { ...one.sawing, wage: valueOfHour },
  });
  return hired ? { ...at(basis), hired: at(hired) } : at(basis);
}

/** Groups that bear load, or may: of a list, those of which nothing is said. Nobody here knows what they are built into. */
export function mayBear({ request: { structure }, groups }: Basis): readonly GroupBasis[] {
  const unsaid = structure.kind === "pieces" ? structure.pieces.filter(saysNothing) : [];
  const names = new Set(unsaid.map(({ name }) => name));
  return groups.filter(({ group }) => group.rules.structural || names.has(group.name));
}

const saysNothing = ({ structural, role = "other" }: ExplicitPieces): boolean =>
  structural === undefined && role === "other";
