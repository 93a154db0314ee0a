/**
 * Footings: a hole below every post, with gravel and concrete or a precast block, as needs and as work.
 * How deep and wide a footing must be is for the building office to say; nothing here states that it carries its post.
 */

import { type QuantityText, toQuantity } from "../../catalog/reading.js";
import type { Need } from "../need.js";
import type { PieceGroup } from "../pieces/piece-group.js";
import { wholesIn } from "../pieces/spacing.js";
import type { DisplayUnits } from "../quantity/display.js";
import type { Assumed } from "../request/assumed.js";
import type { Defaults, InEither } from "../request/given.js";
import type { FootingsShape } from "../request/structure-footings.js";
import {
  type Cell,
  greatest,
  least,
  number,
  type Operand,
  over,
  PI,
  plus,
  roundUp,
  square,
  sumOr,
  times,
} from "../sheet/expression.js";
import { plain, type Sheet } from "../sheet/sheet.js";

/** What footings are laid from. */
export interface FootingsInput {
  readonly shape: FootingsShape;
  /** Posts that stand on them. */
  readonly posts: readonly PieceGroup[];
  readonly assumed: Assumed;
  readonly defaults: Defaults;
}

/** Footings of all posts. Volumes are of all holes together; needs include what holes take beyond their size. */
export interface FootingsTakeoff {
  readonly needs: readonly Need[];
  readonly holes: Cell;
  /** From the ground to the bottom of the hole, gravel included. */
  readonly holeDepth: Cell;
  readonly diameter: Cell;
  readonly dug: Cell;
  /** Absent with precast blocks. */
  readonly concrete: Cell | undefined;
  readonly gravel: Cell;
  /** Form tube of one footing, and how many are ordered; absent where nothing stands out of the ground or no tube is wanted. */
  readonly tube: { readonly length: Cell; readonly ordered: Cell } | undefined;
  /** Person-hours, pace included. */
  readonly dig: Cell;
  readonly fill: Cell;
}

/** Footings stand at least so deep, frost or none: International Residential Code, R403.1.4. From memory. */
const LEAST_DEPTH = "12 in";
const AT = "/structure/footings";

/** Lays holes, what fills them, and the work. */
export function layFootings(sheet: Sheet, input: FootingsInput, units: DisplayUnits): FootingsTakeoff {
  const { assumed } = input;
  sheet.title("footings", "Footings");
  const sized = laySizes(sheet, input, units);
  const holes = layHoles(sheet, input);
  const round = over(times(PI, square(sized.diameter)), number("4"));
  const area = sheet.lay("footings.area", round, { label: "area of a hole", display: units.area });
  const all = (name: string, label: string, height: Operand) =>
    sheet.lay(`footings.${name}`, times(holes, area, height), { label, display: units.log });
  const dug = all("dug", "earth dug out", sized.holeDepth);
  const fill = plus(number("1"), assumed.cell("footing.waste"));
  const gravel = all("gravel", "gravel, what holes take more included", times(sized.gravel, fill));
  const concrete =
    sized.concrete && all("concrete", "concrete, what holes take more included", times(sized.concrete, fill));
  const bags = concrete && layBags(sheet, concrete, input);
  const common = { holes, dug, gravel, holeDepth: sized.holeDepth, diameter: sized.diameter };
  const tube = sized.above && layTube(sheet, { holes, above: sized.above, depth: sized.depth }, input, units);
  const hours = layHours(sheet, { ...common, concrete, bags }, input);
  return { ...common, concrete, tube, ...hours, needs: needsOf({ holes, gravel, concrete, bags, tube }, input) };
}

/** One below every post, unless the request says how many. */
function layHoles(sheet: Sheet, { shape, posts }: FootingsInput): Cell {
  if (shape.holes !== undefined) return sheet.input("footings.holes", plain(shape.holes), { label: "holes" });
  const counts = posts.map((group) => group.count);
  return sheet.lay("footings.holes", sumOr(counts, ""), { label: "holes, one a post" });
}

/** Heights of one hole. */
interface Sizes {
  readonly diameter: Cell;
  readonly depth: Cell;
  readonly holeDepth: Cell;
  readonly gravel: Cell;
  readonly concrete: Operand | undefined;
  /** Of poured concrete, what stands out of the ground. */
  readonly above: Cell | undefined;
}

function laySizes(sheet: Sheet, { shape, defaults }: FootingsInput, units: DisplayUnits): Sizes {
  const input = (name: string, label: string, given: QuantityText | undefined, otherwise: InEither) => {
    const field = name === "gravel-bed" ? "gravel" : name;
    const value = defaults.quantity(given, `${AT}/${field}`, otherwise, "common practice");
    return sheet.input(`footings.${name}`, value, { label, display: units.small });
  };
  const frost = sheet.input("footings.frostDepth", toQuantity(shape.frostDepth, "mm"), {
    label: "depth of frost",
    display: units.small,
  });
  const none = { "inch-pound": "0 in", metric: "0 mm" };
  const below = input("belowFrost", "deeper than frost by", shape.belowFrost, none);
  const diameter = input("diameter", "diameter of a hole", shape.diameter, { "inch-pound": "12 in", metric: "300 mm" });
  const lay = (name: string, label: string, formula: Operand) =>
    sheet.lay(`footings.${name}`, formula, { label, display: units.small });
  const depth = lay("depth", "ground to bottom of the footing", greatest(plus(frost, below), number(LEAST_DEPTH)));
  if (defaults.choice(shape.kind, `${AT}/kind`, "poured", "common practice") === "precast") {
    const holeDepth = lay("holeDepth", "ground to bottom of the hole", depth);
    return { diameter, depth, holeDepth, gravel: depth, concrete: undefined, above: undefined };
  }
  const four = { "inch-pound": "4 in", metric: "100 mm" };
  const above = input("aboveGround", "concrete above the ground", shape.aboveGround, four);
  const bed = input("gravel-bed", "gravel below the concrete", shape.gravel, four);
  const holeDepth = lay("holeDepth", "ground to bottom of the hole, gravel included", plus(depth, bed));
  return { diameter, depth, holeDepth, gravel: bed, concrete: plus(depth, above), above };
}

/**
 * A form tube as wide as the hole holds the concrete above the ground, and reaches some way into the hole, which is its own form
 * further down: common practice. As many as can be are cut from one tube as it is sold; a longer one is joined.
 */
function layTube(
  sheet: Sheet,
  { holes, above, depth }: Readonly<Record<"holes" | "above" | "depth", Cell>>,
  { shape, assumed, defaults }: FootingsInput,
  units: DisplayUnits,
): FootingsTakeoff["tube"] {
  if (sheet.decide(above).isZero()) return undefined;
  const form = defaults.choice(shape.form, `${AT}/form`, "tube", "keeps concrete round and plumb above the ground");
  if (form === "none") return undefined;
  const small = { display: units.small };
  const usual = { "inch-pound": "12 in", metric: "300 mm" };
  const given = defaults.quantity(shape.tubeBelow, `${AT}/tubeBelow`, usual, "common practice");
  const below = sheet.input("footings.tubeBelow", given, { label: "form tube below the ground, at most", ...small });
  const length = sheet.lay("footings.tubeLength", plus(above, least(below, depth)), {
    label: "form tube of one footing",
    ...small,
  });
  const stock = assumed.cell(defaults.system === "metric" ? "footing.tubeMetric" : "footing.tube");
  const joined = roundUp(over(length, stock));
  const fromOne = greatest(wholesIn(stock, length), number("1"));
  const needed = roundUp(over(times(holes, joined), fromOne));
  return { length, ordered: sheet.lay("footings.tubes", needed, { label: "form tubes as they are sold" }) };
}

/** Bags for all holes together; absent where concrete comes mixed. */
function layBags(sheet: Sheet, concrete: Cell, { shape, assumed, defaults }: FootingsInput): Cell | undefined {
  const bought = defaults.choice(shape.concrete, `${AT}/concrete`, "bags", "a few holes are less than a load");
  if (bought !== "bags") return undefined;
  const each = assumed.cell(defaults.system === "metric" ? "footing.bag25kg" : "footing.bag80lb");
  return sheet.lay("footings.bags", roundUp(over(concrete, each)), { label: "bags of concrete mix" });
}

interface Filled {
  readonly holes: Cell;
  readonly gravel: Cell;
  readonly concrete: Cell | undefined;
  readonly bags: Cell | undefined;
}

function layHours(
  sheet: Sheet,
  { holes, dug, holeDepth, gravel, concrete, bags }: Filled & Readonly<Record<"dug" | "holeDepth", Cell>>,
  { shape, assumed, defaults }: FootingsInput,
): Pick<FootingsTakeoff, "dig" | "fill"> {
  const hours = (name: string, label: string, formula: Operand) =>
    sheet.lay(`common.hours.${name}`, times(formula, assumed.cell("pace")), { label, display: "person-h" });
  const by = defaults.choice(shape.digging, `${AT}/digging`, "hand", "needs no machine");
  const digging: Record<typeof by, () => Operand> = {
    hand: () => over(dug, assumed.cell("rate.digHand")),
    auger: () => times(holes, holeDepth, assumed.cell("rate.digAuger")),
    hired: () => number("0 person-h"),
  };
  const placing = bags
    ? [times(bags, assumed.cell("rate.mixBag"))]
    : concrete
      ? [times(concrete, assumed.cell("rate.pourReady"))]
      : [];
  const set = times(holes, assumed.cell("rate.footingSet"));
  const filling = plus(set, times(gravel, assumed.cell("rate.gravel")), ...placing);
  return { dig: hours("dig", "dig post holes", digging[by]()), fill: hours("pour", "set and fill footings", filling) };
}

function needsOf(
  { holes, gravel, concrete, bags, tube }: Filled & Pick<FootingsTakeoff, "tube">,
  { shape }: FootingsInput,
): Need[] {
  const need = (item: string, label: string, quantity: Cell): Need => {
    return { name: `footings.${item}`, label, item: { kind: "consumable", item }, quantity };
  };
  const bored: Need = {
    name: "footings.post-hole-auger",
    label: "Boring of post holes",
    item: { kind: "service", item: "post-hole-auger" },
    quantity: holes,
  };
  return [
    ...(bags ? [need("concrete-bag", "Concrete mix, bags", bags)] : []),
    ...(concrete && !bags ? [need("concrete", "Ready-mixed concrete", concrete)] : []),
    ...(concrete ? [] : [need("pier-block", "Precast pier blocks", holes)]),
    ...(tube ? [need("form-tube", "Form tubes", tube.ordered)] : []),
    need("gravel", "Gravel", gravel),
    ...(shape.digging === "hired" ? [bored] : []),
  ];
}
