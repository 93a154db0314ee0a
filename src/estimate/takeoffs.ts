/** What all routes share: covering, fasteners, faces to finish, weights, the work of building, and the lines to order for them. */
import type { Climate, Exposure } from "../catalog/fasteners.js";
import type { FinishKind } from "../catalog/finishes.js";
import { boardsOf, coveringOffers, finishOffers } from "../catalog/look-up.js";
import { ovenDryGravity } from "../catalog/species.js";
import type { Basis } from "./basis.js";
import type { CommonCells } from "./compare/route.js";
import { layBuilding } from "./effort/building.js";
import { fuelAt } from "./effort/hauling.js";
import { type JointHours, layJoints } from "./effort/joints.js";
import { deckSheetsTime, layRoofHours } from "./effort/roofing.js";
import { atStage } from "./effort/used-in.js";
import { FaultError } from "./faults.js";
import type { Need } from "./need.js";
import { hangsOnWall } from "./pieces/cut-list.js";
import { USUAL_COVERING } from "./pieces/deck.js";
import { floorRuns } from "./pieces/floor.js";
import type { PieceGroup, SectionCells } from "./pieces/piece-group.js";
import { decideByNeed } from "./purchase/decide-by-need.js";
import { leastEach } from "./purchase/fastener-articles.js";
import { layShoppingList } from "./purchase/shopping-list.js";
import type { Decimal } from "./quantity/decimal.js";
import type { Quantity } from "./quantity/quantity.js";
import type { JointKind } from "./request/structure.js";
import { type Cell, greatest, number, type Operand, sumOr } from "./sheet/expression.js";
import type { LaidLine } from "./sheet/own-lines.js";
import { type BoughtRafter, layBoughtRafter } from "./takeoff/bought-rafters.js";
import { standsOnBase } from "./takeoff/connections.js";
import { exposureIn, harshest } from "./takeoff/corrosion.js";
import { coveredRoof } from "./takeoff/covered-roof.js";
import { type CoveringTakeoff, layCovering } from "./takeoff/covering.js";
import { type FastenersTakeoff, layFasteners, layGableSupports } from "./takeoff/fasteners.js";
import { endSealer, type FacesToFinish, type FinishTakeoff, layFaces, layFinish } from "./takeoff/finish.js";
import { layFittedNeeds } from "./takeoff/fitted-hardware.js";
import { refuseFootings } from "./takeoff/footing-room.js";
import { type FootingsTakeoff, layFootings } from "./takeoff/footings.js";
import { bearerFaults, jointFaults } from "./takeoff/joint-faults.js";
import { layWeights, UNKNOWN_WOOD, type WeightTakeoff } from "./takeoff/weight.js";

/** What every route needs alike: covering, fasteners, faces to finish, weights, their stages. */
export interface Takeoffs {
  readonly covering: CoveringTakeoff | undefined;
  /** Where the yard sells rafters shallower than they are laid out. */
  readonly boughtRafter: BoughtRafter | undefined;
  /** Absent of a list of pieces that says nothing of how they meet. */
  readonly fasteners: FastenersTakeoff | undefined;
  /** Absent where the request wants none. */
  readonly footings: FootingsTakeoff | undefined;
  readonly finish: FacesToFinish;
  readonly weights: WeightTakeoff;
  /** Those of the stages to which helpers come. */
  readonly raising: readonly Cell[];
  /** Beside the finish. */
  readonly needs: readonly Need[];
  /** Person-hours by stage that all routes share, in the order of the work. */
  readonly stages: readonly Cell[];
  /** Joints of each group, by its name, in the wood of either way. */
  readonly joints: ReadonlyMap<string, JointHours>;
  /** The first stage that comes after the joints, and the first after the finish. */
  readonly afterJoints: Cell;
  readonly afterFinish: Cell;
}

/** Lays all takeoffs. */
export function layTakeoffs(basis: Basis): Takeoffs {
  const { sheet, cutList } = basis;
  const covering = layRoofCovering(basis);
  const boughtRafter = layRaftersAsSold(basis);
  const fasteners = layConnected(basis);
  const footings = layBelowGround(basis);
  const finish = facesToFinish(basis);
  const weights = layAllWeights(basis);
  sheet.title("common", "Work on every way");
  const joints = layJoints(sheet, basis.groups, basis.assumed);
  const building = layBuilding(sheet, {
    groups: cutList.groups,
    lifted: new Map(weights.lines.map((line) => [line.group, line.lifted])),
    means: basis.mill.carry,
    deckSheets: covering && deckSheetsTime(covering, basis.assumed),
    assumed: basis.assumed,
  });
  const roofing = layRoofHours(sheet, basis.assumed, cutList.groups, covering);
  const needs = [
    ...[covering, fasteners, footings].flatMap((takeoff) => takeoff?.needs ?? []),
    ...(basis.request.options?.sealEnds ? [endSealer(sheet, cutList.groups, basis.assumed, basis.units)] : []),
    ...movingFuel(basis, building.move),
  ];
  decideByNeed(basis, needs);
  const stages = [
    ...(footings ? [footings.dig, footings.fill] : []),
    building.trialAssemble,
    building.dismantle,
    building.move,
    ...known(building.brace, building.raise, building.rafters, building.deck, roofing.eaves, roofing.roof),
    ...known(building.enclose, roofing.trim),
    building.cleanUp,
  ];
  return {
    covering,
    boughtRafter,
    fasteners,
    footings,
    finish,
    weights,
    raising: known(building.brace, building.raise, building.rafters),
    needs,
    stages,
    joints,
    afterJoints: building.trialAssemble,
    afterFinish: building.move,
  };
}

/** The finish of the pieces as they are asked for, whichever of them are bought. */
export function layFinishAsAsked(basis: Basis, { finish: { terms, lines } }: Takeoffs): FinishTakeoff {
  const finish = layFinish(basis.sheet, terms, lines, basis.units);
  decideByNeed(basis, finish.needs);
  return finish;
}

/** What is needed of hardware that is made for one size, for the pieces as laid out, whichever of them are bought. */
export function layHardwareAsLaidOut({ sheet, groups }: Basis, { fasteners }: Takeoffs): readonly Need[] {
  const counts = new Map(groups.map(({ group: { name, count } }) => [name, count]));
  const ofGroup = (name: string) => ({ milled: counts.get(name), count: counts.get(name) as Cell });
  return fasteners?.fitted ? layFittedNeeds(sheet, fasteners.fitted, ofGroup, "") : [];
}

/** Fuel of the means that brings the pieces to the site; none by hand, by cart, or by a winch that is wound by hand. */
function movingFuel(basis: Basis, move: Cell): Need[] {
  const { sheet, mill, units } = basis;
  const burnt = fuelAt(basis, mill.carry, move);
  if (!burnt) return [];
  const quantity = sheet.lay("common.moveFuel", burnt, { label: "fuel to move to the site", display: units.liquid });
  const item = { kind: "consumable", item: "fuel" } as const;
  return [{ name: "move.fuel", label: "Fuel to move to the site", item, quantity }];
}

const known = (...cells: readonly (Cell | undefined)[]): Cell[] => cells.flatMap((cell) => cell ?? []);

/** Prices the shared needs and sums the shared hours. */
export function layCommon(basis: Basis, takeoffs: Takeoffs, own: readonly LaidLine[]): CommonCells {
  const { sheet, pricing, catalog, request } = basis;
  const list = layShoppingList(pricing, catalog, takeoffs.needs, request.system);
  const lines = list.map((served) => atStage(served, basis.cutList.groups));
  const counted = (as: LaidLine["counts"]) => own.filter(({ counts }) => counts === as).map(({ cell }) => cell);
  const { raising, stages, joints, afterJoints, afterFinish, finish, footings } = takeoffs;
  const ownHours = counted("hours");
  const hours = sheet.lay("common.hours.total", sumOr([...stages, ...ownHours], "person-h"), {
    label: "hours on every way",
    display: "person-h",
  });
  const concrete = footings?.concrete && basis.assumed.cell("footing.cure");
  const fitted = takeoffs.fasteners?.fitted;
  const shared = { lines, hours, stages, joints, afterJoints, afterFinish, raising, concrete, finish, fitted };
  return { ...shared, own: counted("money"), ownHours };
}

function layRoofCovering(basis: Basis): CoveringTakeoff | undefined {
  const { sheet, request, cutList, catalog, assumed, defaults, units } = basis;
  const { structure } = request;
  const roof = coveredRoof(sheet, cutList, units);
  if (!roof || structure.kind === "pieces" || structure.kind === "pergola") return undefined;
  const kind = defaults.choice(
    structure.covering,
    "/structure/covering",
    USUAL_COVERING,
    "the commonest covering of open shelters",
  );
  if (kind === "none") return undefined;
  const found = coveringOffers(catalog, kind);
  const offer = found.kind === "offered" ? found.offers[0] : undefined;
  const lumber = boardsOf(catalog, offer);
  return layCovering(sheet, { kind, roof, offer, lumber, exposure: deckExposure(basis), assumed, defaults }, units);
}

/** What the fasteners of a covering stand in: the wood of purlins or deck boards, and the rain, whatever is dry below. */
export function deckExposure(basis: Basis): Exposure {
  const deck = basis.cutList.groups.filter(({ role, name }) => role === "purlin" || name.startsWith("deck-boards"));
  const climate = harshest(climateOf(basis) ?? "outdoors", "outdoors");
  return exposureIn({ woods: deck.flatMap((group) => woodsInUse(basis, group)), treated: false, climate });
}

/** What the request says surrounds the whole structure; each group may say otherwise. */
const climateOf = ({ request: { structure } }: Basis): Climate | undefined => structure.exposure;

/**
 * What holds the pieces together: of a frame all, of a list of pieces those whose joint the request says, and the bases of
 * posts that it gives footings; posts that are joined by nothing stand on nothing else.
 */
function joined({ request: { structure }, cutList: { frame, groups } }: Basis): readonly PieceGroup[] {
  if (frame) return groups;
  return groups.flatMap((group): PieceGroup[] => {
    const loosePost = group.role === "post" && group.rules.joint === "none";
    if (group.jointGiven && !loosePost) return [group];
    if (!structure.footings || !standsOnBase(group)) return [];
    return [{ ...group, rules: { ...group.rules, joint: "none" } }];
  });
}

/** @throws FaultError where nobody can count the hardware of a joint. */
function refuseJoints({ request: { structure }, cutList: { groups } }: Basis): void {
  const [own, at] =
    structure.kind === "pieces"
      ? [structure.pieces, "/structure/pieces"]
      : [structure.extraPieces ?? [], "/structure/extraPieces"];
  const faults = [...jointFaults(own, at, structure.kind !== "pieces"), ...bearerFaults(groups)];
  if (faults.length > 0) throw new FaultError(faults);
}

function layConnected(basis: Basis): FastenersTakeoff | undefined {
  const { sheet, cutList, assumed, defaults, units } = basis;
  const { frame } = cutList;
  refuseJoints(basis);
  const groups = joined(basis);
  if (groups.length === 0) return undefined;
  const light = defaults.choice(
    basis.request.options?.lightFixing,
    "/options/lightFixing",
    "screws",
    "they can be taken out again",
  );
  const supportsApart = cutList.gable ? layGableSupports(sheet, cutList.gable, units) : frame?.rafterSpace;
  const around = defaults.choice(
    climateOf(basis),
    "/structure/exposure",
    "outdoors",
    "what stands in the weather rusts in the weather",
  );
  const exposureOf = (group: PieceGroup): Exposure =>
    exposureIn({
      woods: woodsInUse(basis, group),
      treated: isTreated(basis, group),
      climate: group.rules.exposure ?? around,
    });
  return layFasteners(
    sheet,
    {
      groups,
      exposureOf,
      gravityOf: (group) => gravityOf(basis, group),
      sectionOf: (group) => soldSection(basis, group) ?? group,
      boughtSectionOf: (group) => boughtSection(basis, group),
      isPriced: (item) => leastEach(sheet, basis.catalog, item) !== undefined,
      runs: frame ? { ...frame.runs, ...floorRuns(hangsOnWall(frame)) } : {},
      supportsApart,
      light,
      poured: basis.request.structure.footings?.kind !== "precast",
      assumed,
      defaults,
    },
    units,
  );
}

/** Rafters for which something shallower is sold, whatever the verdict: some may have to be bought. */
function layRaftersAsSold({ sheet, cutList: { frame }, groups, units }: Basis): BoughtRafter | undefined {
  const found = groups.find(({ group }) => group.role === "rafter" && group.name.startsWith("rafters"));
  if (!frame?.rafter || !frame.roof || !found || !("offer" in found.substitution)) return undefined;
  const { actual, label } = found.substitution.offer;
  if (actual.width.value.gte(sheet.decide(found.group.width))) return undefined;
  const { rafter, roof } = frame;
  return layBoughtRafter(sheet, { rafter, roof, depth: actual.width, offer: label }, units);
}

/** Joints whose connectors take a piece of just one size. */
const IN_CONNECTORS: ReadonlySet<JointKind> = new Set(["hung", "lap-and-hang"]);

/** Posts and hung pieces that can only be bought are as large as they come: bases, bolts and hangers follow. */
function soldSection(basis: Basis, group: PieceGroup): SectionCells | undefined {
  const fitted = group.role === "post" || IN_CONNECTORS.has(group.rules.joint);
  return fitted && soldOf(basis, group)?.only ? sectionAsBought(basis, group) : undefined;
}

/** As bought, of a group that may be milled, too, where that is another size. */
const boughtSection = (basis: Basis, group: PieceGroup): SectionCells | undefined =>
  soldOf(basis, group)?.only === false ? sectionAsBought(basis, group) : undefined;

/** As it stands where it is bought, ripped down where it is sold larger; undefined where that is as it is laid out. */
function sectionAsBought(basis: Basis, group: PieceGroup): SectionCells | undefined {
  const { sheet, units } = basis;
  const sold = soldOf(basis, group);
  if (!sold || sold.alike) return undefined;
  const { actual, name } = sold.offer;
  const sides = [actual.thickness, actual.width].sort((a, b) => a.value.cmp(b.value)) as [Quantity, Quantity];
  const isThin = sheet.decide(group.thickness).lte(sheet.decide(group.width));
  const side = (of: "thickness" | "width"): Cell => {
    const smaller = (of === "thickness") === isThin;
    if (sold.larger.includes(smaller ? "thickness" : "width")) return group[of];
    return sheet.catalog(`fasteners.${group.name}.sold.${of}`, sides[smaller ? 0 : 1], {
      label: `${of} of ${name} as sold`,
      display: units.small,
    });
  };
  return { thickness: side("thickness"), width: side("width") };
}

/** Footings below all posts, those of one's own included. */
function layBelowGround({ sheet, request, cutList, assumed, defaults, units }: Basis): FootingsTakeoff | undefined {
  const shape = request.structure.footings;
  if (!shape) return undefined;
  const posts = cutList.groups.filter(standsOnBase);
  if (posts.length === 0 && shape.holes === undefined) {
    const wrong = "Nothing stands on these footings: no piece is a post.";
    const cure = 'Give posts the role "post", or say how many "holes" there are.';
    throw new FaultError([{ code: "cannot-build", at: "/structure/footings", wrong, cure }]);
  }
  const footings = layFootings(sheet, { shape, posts, assumed, defaults }, units);
  refuseFootings(sheet, footings, posts, cutList.frame);
  return footings;
}

/** Woods that a group may be made of: what it asks for, else any of the logs'. */
function woodsOf({ request }: Basis, group: PieceGroup): readonly string[] {
  return group.rules.species.length > 0
    ? group.rules.species
    : [...new Set((request.logs ?? []).map((log) => log.species))];
}

/** What a group is bought as, and whether it can only be bought. */
function soldOf({ groups }: Basis, group: PieceGroup) {
  const found = groups.find((one) => one.group.name === group.name);
  return found && "offer" in found.substitution ? { ...found.substitution, only: !found.millable } : undefined;
}

/** Every wood that its fasteners may come to stand in: what is sold, and where the logs may serve what is asked of them. */
function woodsInUse(basis: Basis, group: PieceGroup): readonly string[] {
  const sold = soldOf(basis, group);
  return [...(sold ? [sold.offer.species] : []), ...(sold?.only ? [] : woodsOf(basis, group))];
}

/** Of the softest wood that a group may be made of; of one that is only bought, what is sold. */
function gravityOf(basis: Basis, group: PieceGroup): Decimal | undefined {
  const sold = soldOf(basis, group);
  const all = (sold?.only ? [sold.offer.species] : woodsOf(basis, group)).flatMap((wood) => ovenDryGravity(wood) ?? []);
  return all.reduce<Decimal | undefined>((least, one) => (least?.lte(one) ? least : one), undefined);
}

/** Where the bought piece is preservative-treated, its fasteners must last in it. */
function isTreated(basis: Basis, group: PieceGroup): boolean {
  const sold = soldOf(basis, group);
  return sold !== undefined && sold.offer.treatment !== "none";
}

function facesToFinish(basis: Basis): FacesToFinish {
  const { sheet, request, cutList, catalog, assumed, defaults, units } = basis;
  const kind = defaults.choice(request.options?.finish, "/options/finish", "oil-stain", "common on outdoor timber");
  const offerOf = (wanted: FinishKind) => {
    const found = finishOffers(catalog, wanted);
    return found.kind === "offered" ? found.offers[0] : undefined;
  };
  const offer = kind === "none" ? undefined : offerOf(kind);
  return {
    terms: { kind, offer, primerOffer: offerOf("primer"), assumed },
    lines: layFaces(sheet, cutList.groups, assumed, units),
  };
}

function layAllWeights(basis: Basis): WeightTakeoff {
  const { sheet, cutList, assumed, woods, units } = basis;
  const heaviest = (group: PieceGroup, of: "green" | "dry"): Cell => {
    const cells = woodsOf(basis, group).flatMap((id) => woods.get(id) ?? []);
    const density = cells.map((wood) => (of === "green" ? wood.greenDensity : wood.dryDensity));
    const formula: Operand = density.length === 0 ? number(UNKNOWN_WOOD[of]) : greatest(...density);
    return sheet.lay(`weight.${group.name}.${of}Density`, formula, { label: `${of} density`, display: units.density });
  };
  const densitiesOf = (group: PieceGroup) => ({ green: heaviest(group, "green"), dry: heaviest(group, "dry") });
  return layWeights(sheet, { groups: cutList.groups, densitiesOf, assumed }, units);
}
