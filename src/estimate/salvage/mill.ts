/** The mill and the saws beside it, as cells: limits, kerfs, rates, wear. */
import { BLADES, type BladeKind, type Sharpening } from "../../catalog/blades.js";
import { type Mill, type MillKind, millOf, SAW_KERFS } from "../../catalog/mills.js";
import { type QuantityText, toQuantity } from "../../catalog/reading.js";
import type { DisplayUnits } from "../quantity/display.js";
import { exactly, type MeasureSystem } from "../quantity/text.js";
import type { Assumed } from "../request/assumed.js";
import type { Defaults } from "../request/given.js";
import type { CarryMeans, LogMeans, ShopShape } from "../request/shop.js";
import type { Cell } from "../sheet/expression.js";
import type { Sheet } from "../sheet/sheet.js";

/** Rates, capacities and wear of the mill. */
export interface MillCells {
  readonly kind: MillKind;
  readonly blade: BladeKind;
  readonly kerf: Cell;
  readonly ripKerf: Cell;
  readonly crossKerf: Cell;
  readonly buckKerf: Cell;
  readonly deepestRip: Cell;
  readonly longestBolt: Cell;
  /** Largest log, bark included. */
  readonly throat: Cell;
  /** Thinnest slab that the mill leaves between two cuts; 0 = any. */
  readonly thinnestSlab: Cell;
  /** Diameter about the axis that heart-free pieces keep clear of and boxed ones contain. */
  readonly pith: Cell;
  /** Cut face sawn in an hour of sawing. */
  readonly rate: Cell;
  /** Fastest feed and return along the log; absent on a chain mill, which goes by the face alone. */
  readonly feed: Cell | undefined;
  readonly back: Cell | undefined;
  readonly setUp: Cell;
  readonly turn: Cell;
  readonly cutHandling: Cell;
  /** People of one's own at the mill. */
  readonly crew: Cell;
  /** All at the mill, a hired sawyer included. */
  readonly hands: Cell;
  readonly fuel: Cell;
  /** Share of the fuel's volume; absent where there is no chain. */
  readonly barOil: Cell | undefined;
  /** Cut face, or lumber, between sharpenings. */
  readonly sharpenEvery: Cell;
  readonly bladeLife: Cell;
  /** Person-time of one sharpening, and whether the mill stands meanwhile. */
  readonly sharpen: Cell;
  readonly stopsToSharpen: boolean;
  /** Whether the user sharpens, or pays for it and only changes chain, band or blade. */
  readonly sharpening: Sharpening;
  /** How sawn pieces are carried, and how logs come to the mill. */
  readonly carry: CarryMeans;
  readonly getOut: LogMeans;
}

/** Heart centre kept out of, or boxed in, pieces that have a heart rule. Assumption of the sawing model. */
const PITH = { "inch-pound": "2 in", metric: "50 mm" } as const;
/** What a sawyer with a mill mostly brings. Common practice. */
export const USUAL_SAWYER: MillKind = "hydraulic-band-mill";
/** A longer bolt is more than a yard of hand tools turns. Assumption. */
const LONGEST = { "inch-pound": "18 ft", metric: "5.5 m" } as const;
/** A 10 in blade's depth of cut. Common practice. */
const DEEPEST_RIP = { "inch-pound": "3 in", metric: "75 mm" } as const;

/** No limit: where nothing is said a slab is as thin as its pieces. */
const THINNEST_SLAB = { "inch-pound": "0 in", metric: "0 mm" } as const;

/** A limit where nothing is said, in either measure system, and how it is shown; and what the request says of it. */
interface Otherwise {
  readonly texts: Readonly<Record<MeasureSystem, string>>;
  readonly display: string;
}
interface Given {
  readonly text: QuantityText | undefined;
  readonly at: string;
}

/** On what the mill is laid, and in whose units. */
export interface MillLaying {
  readonly sheet: Sheet;
  readonly assumed: Assumed;
  readonly defaults: Defaults;
  readonly units: DisplayUnits;
}

/** Lays the mill by its type, and what the request says otherwise of it. */
export function layMill(laying: MillLaying, shop: ShopShape | undefined): MillCells {
  const { sheet, assumed, defaults } = laying;
  // Without a mill of one's own its cells are a hired sawyer's, or nobody's.
  const own = shop?.mill === "none" ? (shop.sawyer?.mill ?? USUAL_SAWYER) : shop?.mill;
  const kind = defaults.choice(own, "/shop/mill", "chainsaw-mill", "the commonest mill in a yard");
  const mill = millOf(kind);
  const blade = BLADES[mill.blade];
  const sharpening = shop?.sharpening ?? blade.usually;
  const renewal = blade.renewal[sharpening];
  sheet.title("mill", shop?.mill === "none" ? "Saws in the yard; no mill of one's own" : `Mill: ${mill.name}`);
  const crew = sheet.input("mill.crew", exactly(mill.crew), { label: "people at the mill" });
  return {
    ...{ kind, blade: mill.blade, crew, hands: crew, sharpening },
    ...layKerfs(laying, mill, shop),
    ...layLimits(laying, mill, shop),
    ...layPace(laying, mill),
    carry: defaults.choice(shop?.carry, "/shop/carry", "hand", "everybody has two"),
    getOut: defaults.choice(shop?.getOut, "/shop/getOut", "winch", "what most yards can borrow"),
    sharpen: assumed.cell(renewal.rate),
    stopsToSharpen: renewal.stopsMill,
  };
}

function layKerfs({ sheet, assumed, units }: MillLaying, mill: Mill, shop: ShopShape | undefined) {
  const kerfOf = (name: string, label: string, given: QuantityText | undefined, saw: keyof typeof SAW_KERFS) =>
    given === undefined
      ? assumed.spread(`mill.${name}`, label, SAW_KERFS[saw].kerf, SAW_KERFS[saw].from)
      : sheet.input(`mill.${name}`, toQuantity(given, "in"), { label, display: units.small });
  return {
    kerf: assumed.spread("mill.kerf", "kerf of the mill", mill.kerf, mill.from),
    ripKerf: kerfOf("ripKerf", "kerf of the rip saw", shop?.ripKerf, "table-saw"),
    crossKerf: kerfOf("crossKerf", "kerf of a crosscut", undefined, "crosscut-saw"),
    buckKerf: kerfOf("buckKerf", "kerf of a bucking cut", undefined, "bucking-chain"),
  };
}

/** What mill and saws take at most, and leave at least. */
function layLimits({ sheet, assumed, defaults, units }: MillLaying, mill: Mill, shop: ShopShape | undefined) {
  const { small, long } = units;
  const limit = (name: string, label: string, otherwise: Otherwise, given?: Given) =>
    sheet.input(
      `mill.${name}`,
      defaults.quantity(given?.text, given?.at ?? `/overrides/mill.${name}`, otherwise.texts, "common practice"),
      { label, display: otherwise.display },
    );
  const guided = "thickest slab that is edged along a guide, by the depth of the circular saw";
  const edged = "thickest slab that the rip saw edges";
  const rip = { text: shop?.deepestRip, at: "/shop/deepestRip" };
  const bolt = { text: shop?.longestBolt, at: "/shop/longestBolt" };
  return {
    deepestRip:
      shop?.tableSaw === "none"
        ? sheet.lay("mill.deepestRip", assumed.cell("cut.depth"), { label: guided, display: small })
        : limit("deepestRip", edged, { texts: DEEPEST_RIP, display: small }, rip),
    longestBolt: limit("longestBolt", "longest bolt handled", { texts: LONGEST, display: long }, bolt),
    throat: sheet.input("mill.throat", exactly(mill.largestLog), {
      label: "largest log, bark included",
      display: small,
    }),
    thinnestSlab: sheet.input(
      "mill.thinnestSlab",
      defaults.quantity(shop?.thinnestSlab, "/shop/thinnestSlab", THINNEST_SLAB, "no limit"),
      { label: "thinnest slab that the mill saws", display: small },
    ),
    pith: limit("pith", "heart centre", { texts: PITH, display: small }),
  };
}

/** How fast it saws, what it burns, and how long its edge lasts. */
function layPace({ assumed }: MillLaying, { pace, from, ...mill }: Mill) {
  const spread = (name: string, label: string, range: Parameters<Assumed["spread"]>[2]) =>
    assumed.spread(`mill.${name}`, label, range, from);
  return {
    rate: spread("rate", "cut face sawn, while sawing", pace.rate),
    feed: pace.by === "feed" ? spread("feed", "fastest feed, while sawing", pace.feed) : undefined,
    back: pace.by === "feed" ? spread("back", "return after a cut", pace.back) : undefined,
    setUp: spread("setUp", "first straight cut of a bolt", mill.setUp),
    turn: spread("turn", "turning a bolt or laying a cant again", mill.turn),
    cutHandling: spread("cutHandling", "clear the mill and reset it, a cut", mill.cutHandling),
    fuel: spread("fuel", "fuel while sawing", mill.fuel),
    barOil: mill.barOil && spread("barOil", "bar oil, share of the fuel", mill.barOil),
    sharpenEvery: spread("sharpenEvery", "sawn between sharpenings", mill.sharpenEvery),
    bladeLife: spread("bladeLife", "sharpenings before it is worn out", mill.bladeLife),
  };
}
