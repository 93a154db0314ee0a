/** Numbers of the few highest of some worths, highest first, equal ones in order: what sorting them all would put in front, sooner. */
export function bestFew(worths: Float64Array, few: number): number[] {
  const best: number[] = [];
  for (let i = 0; i < worths.length; i++) {
    const worth = worths[i] as number;
    if (best.length >= few && !(worth > (worths[best[few - 1] as number] as number))) continue;
    let at = Math.min(best.length, few - 1);
    for (; at > 0 && (worths[best[at - 1] as number] as number) < worth; at--) best[at] = best[at - 1] as number;
    best[at] = i;
  }
  return best;
}
