/**
 * Can the cuts be made, one after another, with the saws of this shop?
 */
import { type Findings, quoted, type TellLength } from "./sawing-judge-form.js";
import { across, extent, isFlat, type Part, split, wholeLog } from "./sawing-parts.js";
import type { SawCut, SawLog, SawShop } from "./sawing-problem.js";

/** Parts by number. `wood` that is undefined is known to be there, but what it looks like cannot be told after a bad cut. */
interface Standing {
  readonly wood: Part | undefined;
  readonly whole: boolean;
}

/** What lies there after the last cut; parts that a later cut has divided stay known as such. */
export type Parts = ReadonlyMap<number, Standing>;

/** What is wrong with one cut goes here. */
interface CutCase {
  readonly say: (wrong: string) => void;
  readonly long: TellLength;
}

/** Makes every cut of a log in order, and names each that cannot be made. */
export function judgeCuts(log: SawLog, cuts: readonly SawCut[], shop: SawShop, findings: Findings): Parts {
  const parts = new Map<number, Standing>([[0, { wood: wholeLog(log), whole: true }]]);
  for (const [index, cut] of cuts.entries()) {
    if (findings.full) break;
    const say = (wrong: string) => findings.add(`Log ${quoted(log.name)}, cut ${index} (${cut.tool}): ${wrong}.`);
    const stock = parts.get(cut.part);
    const wood = stock?.whole ? stock.wood : undefined;
    if (stock === undefined) say(`part ${cut.part} does not exist yet`);
    else if (!stock.whole) say(`part ${cut.part} has been cut already`);
    if (wood !== undefined) judgeCut(log, cut, wood, shop, { say, long: findings.long });
    if (stock !== undefined) parts.set(cut.part, { wood: stock.wood, whole: false });
    const [lower, upper] = wood !== undefined && fitsAxis(cut) ? split(wood, cut) : [undefined, undefined];
    // A kerf that trims an end leaves nothing beyond it, so there is no such part.
    if (lower !== undefined || wood === undefined) parts.set(2 * index + 1, { wood: lower, whole: true });
    if (upper !== undefined || wood === undefined) parts.set(2 * index + 2, { wood: upper, whole: true });
  }
  return parts;
}

function fitsAxis(cut: SawCut): boolean {
  const alongLog = cut.tool === "mill" || cut.tool === "rip";
  return alongLog ? cut.axis !== "z" : cut.axis === "z";
}

function judgeCut(log: SawLog, cut: SawCut, stock: Part, shop: SawShop, about: CutCase): void {
  const { say } = about;
  judgeKerf(cut, stock, shop, about);
  if (!fitsAxis(cut)) say(`this saw does not cut square to ${cut.axis}`);
  else if (cut.tool === "buck") judgeBuck(stock, say);
  else if (cut.tool === "cross") judgeCrosscut(stock, say);
  else judgeLengthwise(log, cut, stock, shop, about);
}

function judgeKerf(cut: SawCut, stock: Part, shop: SawShop, { say, long }: CutCase): void {
  const kerf = { buck: shop.buckKerf, mill: shop.millKerf, rip: shop.ripKerf, cross: shop.crossKerf }[cut.tool];
  if (cut.hi - cut.lo < kerf) say(`the kerf is ${long(cut.hi - cut.lo)} wide, the saw takes ${long(kerf)}`);
  const { lo, hi } = stock[cut.axis];
  // Half a kerf may run out past an end or a face: that is how a last sliver is trimmed.
  if (cut.hi <= lo || cut.lo >= hi)
    say(`it misses part ${cut.part}, which runs from ${edge(lo, long)} to ${edge(hi, long)}`);
  else if (cut.lo <= lo && cut.hi >= hi) say(`it leaves nothing of part ${cut.part}`);
}

/** Where a part ends: from its sawing axis, or from the small end. */
const edge = (at: number, long: TellLength): string => (Number.isFinite(at) ? long(at) : "the bark");

function judgeBuck(stock: Part, say: (wrong: string) => void): void {
  if (stock.bolt !== undefined) say("only a round log is bucked, and this part has been sawn lengthwise");
}

function judgeCrosscut(stock: Part, say: (wrong: string) => void): void {
  if (!isFlat(stock.x) || !isFlat(stock.y)) say("only a strip with four sawn faces is crosscut");
}

function judgeLengthwise(log: SawLog, cut: SawCut, stock: Part, shop: SawShop, about: CutCase): void {
  const { say, long } = about;
  if (cut.axis === "z") return;
  const depth = extent(stock[across(cut.axis)]);
  if (cut.tool === "mill" && cut.axis === "y") judgeLayers(cut, stock, shop, about);
  if (cut.tool === "rip" && depth > shop.deepestRip) {
    const found = Number.isFinite(depth) ? `${long(depth)} thick` : "still round";
    say(`the stock is ${found}, the rip saw cuts ${long(shop.deepestRip)}`);
  }
  if (stock.bolt === undefined) judgeBolt(log, stock, shop, about);
}

/** A layer with a sawn face on both sides, be it wanted or waste, is no thinner than the mill leaves one. */
function judgeLayers(cut: SawCut, stock: Part, { thinnestSlab = 0 }: SawShop, { say, long }: CutCase): void {
  for (const layer of [cut.lo - stock.y.lo, stock.y.hi - cut.hi]) {
    if (layer > 0 && layer < thinnestSlab)
      say(`it leaves a slab of ${long(layer)}, the mill saws none under ${long(thinnestSlab)}`);
  }
}

/** Asked once a bolt, at its first lengthwise cut. */
function judgeBolt(log: SawLog, stock: Part, shop: SawShop, { say, long }: CutCase): void {
  const length = extent(stock.z);
  if (length > shop.longestBolt) say(`the bolt is ${long(length)} long, the mill takes ${long(shop.longestBolt)}`);
  const taper = log.largeDiameter - log.smallDiameter;
  const thickest = Math.max(taper * stock.z.lo, taper * stock.z.hi);
  const overBark = (log.smallDiameter + 2 * log.bark) * log.length + thickest; // times the log's length, to stay whole
  if (shop.throat > 0 && overBark > shop.throat * log.length)
    say("the bolt's large end does not pass the mill's throat");
}
