/**
 * Is there sound wood where a piece is drawn? Exact: whole numbers and fractions of them, no rounding error.
 *
 * Along a bolt [z0, z1] of a log of length L and sweep S the wood's centre leaves the straight sawing axis by
 * o(z) = (4 S (z − z0)(z1 − z) − S λ²/2) / L², λ = z1 − z0: a parabola, whose chord has been moved to the bulge by half
 * the bolt's own sweep s = S (λ/L)². Nobody knows how the bolt was turned on the mill, so a point at distance r from
 * the axis is wood at z only if r + |o(z)| ≤ d(z)/2. As |o| ≤ s/2, the circle of diameter d(z0) − s always passes.
 */
import type { Part, Span } from "./sawing-parts.js";
import type { SawGroup, SawLog, SawShop } from "./sawing-problem.js";

/** Diameter times L² at z = num/den: a whole number over den². */
function sureWood(log: SawLog, bolt: Span, num: bigint, den: bigint): readonly [bigint, bigint] {
  const length = BigInt(log.length);
  const taper = BigInt(log.largeDiameter - log.smallDiameter);
  const sweep = BigInt(log.sweep);
  const lambda = BigInt(bolt.hi - bolt.lo);
  const diameter = length * (BigInt(log.smallDiameter) * length * den + taper * num) * den;
  const bow =
    8n * sweep * (num - BigInt(bolt.lo) * den) * (BigInt(bolt.hi) * den - num) - sweep * lambda * lambda * den * den;
  return [diameter - (bow < 0n ? -bow : bow), den * den];
}

/**
 * Square of the diameter about the sawing axis that is wood all the way from `z.lo` to `z.hi`, rounded down to a whole
 * number (distances between grid points have whole squares). 0 when no wood is sure.
 *
 * d(z) − 2|o(z)| has its least value at an end of the stretch, or where its derivative vanishes about the bulge:
 * z = (z0 + z1)/2 − (d_l − d_s) L / (16 S). Where o changes sign it is largest, never least.
 */
export function sureDiameterSquared(log: SawLog, bolt: Span, z: Span): bigint {
  const candidates: (readonly [bigint, bigint])[] = [
    [BigInt(z.lo), 1n],
    [BigInt(z.hi), 1n],
  ];
  if (log.sweep > 0) {
    const den = 16n * BigInt(log.sweep);
    const slope = BigInt(log.largeDiameter - log.smallDiameter) * BigInt(log.length);
    const num = 8n * BigInt(log.sweep) * BigInt(bolt.lo + bolt.hi) - slope;
    if (num > BigInt(z.lo) * den && num < BigInt(z.hi) * den) candidates.push([num, den]);
  }
  const lengthSquared = BigInt(log.length) ** 2n;
  const squares = candidates.map(([num, den]) => {
    const [diameter, over] = sureWood(log, bolt, num, den);
    return diameter <= 0n ? 0n : diameter ** 2n / (lengthSquared * over) ** 2n;
  });
  return squares.sort((a, b) => (a < b ? -1 : 1))[0] ?? 0n;
}

/** Farthest that a section reaches from the axis along one direction, in half steps, with `wane` off both ends. */
function reach(span: Span, wane: number): bigint {
  const off = Math.min(2 * wane, span.hi - span.lo);
  return BigInt(Math.max(Math.abs(2 * span.lo + off), Math.abs(2 * span.hi - off)));
}

/**
 * Whether the section lies in the wood over its whole length. With wane each corner may lose a triangle whose legs on
 * the two faces are `wane` long, so eight points have to be wood instead of four; a circle is convex.
 */
export function isWood(log: SawLog, bolt: Span, part: Part, wane: number): boolean {
  const sure = sureDiameterSquared(log, bolt, part.z);
  const holds = (x: bigint, y: bigint) => x * x + y * y <= sure;
  return holds(reach(part.x, 0), reach(part.y, wane)) && holds(reach(part.x, wane), reach(part.y, 0));
}

/** A circle of diameter (num / L²) about the sawing axis. */
interface Core {
  readonly num: bigint;
  readonly lengthSquared: bigint;
}

/** `diameter` = over/L steps, widened by the bolt's sweep: the log's axis wanders by half of it to each side. */
function coreOf(log: SawLog, bolt: Span, over: number): Core {
  const lambda = BigInt(bolt.hi - bolt.lo);
  const length = BigInt(log.length);
  return {
    num: BigInt(over) * length + BigInt(log.sweep) * lambda * lambda,
    lengthSquared: length * length,
  };
}

function clearsCore(part: Part, core: Core): boolean {
  const gap = (span: Span) => BigInt(Math.max(span.lo, -span.hi, 0));
  const distanceSquared = gap(part.x) ** 2n + gap(part.y) ** 2n;
  return 4n * distanceSquared * core.lengthSquared ** 2n >= core.num ** 2n;
}

function containsCore(part: Part, core: Core): boolean {
  const least = BigInt(Math.min(-part.x.lo, part.x.hi, -part.y.lo, part.y.hi));
  return 2n * least * core.lengthSquared >= core.num;
}

/** Whether a part keeps clear of the rot: a cone about the log's axis, its widest place within the part, plus the sweep. */
export function isSound(log: SawLog, bolt: Span, part: Part): boolean {
  const { smallEnd, largeEnd } = log.rot;
  if (smallEnd === 0 && largeEnd === 0) return true;
  const at = (z: number) => smallEnd * log.length + (largeEnd - smallEnd) * z;
  return clearsCore(part, coreOf(log, bolt, Math.max(at(part.z.lo), at(part.z.hi))));
}

/** Whether a part keeps to its group's heart rule; the pith wanders with the sweep as the rot does. */
export function keepsHeartRule(log: SawLog, bolt: Span, part: Part, group: SawGroup, shop: SawShop): boolean {
  const pith = coreOf(log, bolt, shop.pith * log.length);
  if (group.heart === "free") return clearsCore(part, pith);
  return group.heart === "any" || containsCore(part, pith);
}
