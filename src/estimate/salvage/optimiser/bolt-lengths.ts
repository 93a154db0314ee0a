/** Lengths that a bolt may have: sums of the lengths of pieces. */
import type { SawGroup, SawingProblem } from "../sawing-problem.js";

/**
 * All sums of piece lengths with crosscuts between, up to the mill's longest bolt and the longest log. Where they are
 * too many, sums of fewer pieces go first, so that single lengths are always there, and of the sums of most pieces some
 * spread evenly from short to long.
 */
export function boltLengths({ shop, logs }: SawingProblem, groups: readonly SawGroup[], most: number) {
  const longest = Math.min(shop.longestBolt, Math.max(0, ...logs.map((log) => Math.floor(log.length))));
  const singles = [...new Set(groups.map((group) => group.length))].sort((a, b) => a - b);
  const reached = new Set<number>();
  let layer = new Set([-shop.crossKerf]);
  let all = true;
  while (layer.size > 0 && all) {
    const next = new Set<number>();
    for (const from of layer) {
      for (const length of singles) {
        const sum = from + shop.crossKerf + length;
        if (sum <= longest && !reached.has(sum)) next.add(sum);
      }
    }
    const room = reached.size > 0 ? most - reached.size : next.size;
    all = next.size <= room;
    for (const sum of spread([...next], room)) reached.add(sum);
    layer = next;
  }
  return { lengths: [...reached].sort((a, b) => a - b), all };
}

/** No more than `room` of some sums, evenly from the shortest to the longest. */
function spread(sums: readonly number[], room: number): number[] {
  if (sums.length <= room) return [...sums];
  const sorted = [...sums].sort((a, b) => a - b);
  return Array.from(
    { length: Math.max(0, room) },
    (_, i) => sorted[Math.floor(((i + 1) * sorted.length) / room) - 1] as number,
  );
}

/** For length i and group j at [i × groups + j]: the largest length left beside such a piece; -1 none, -2 too short. */
export function lengthsBefore(
  { shop }: SawingProblem,
  groups: readonly SawGroup[],
  lengths: readonly number[],
): Int32Array {
  const before = lengths.flatMap((length) =>
    groups.map((group) => {
      if (group.length > length) return -2;
      const rest = length - group.length - shop.crossKerf;
      let i = -1;
      while (i + 1 < lengths.length && (lengths[i + 1] as number) <= rest) i++;
      return i;
    }),
  );
  return Int32Array.from(before);
}
