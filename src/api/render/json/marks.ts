/** Hands out piece marks in the order of the work: to what is sawn first, then to what is bought. */

/** The marks of one route. What is sawn or bought beyond the count is a spare and bears none. */
export class MarkBook {
  private readonly given = new Map<string, number>();

  constructor(private readonly marks: ReadonlyMap<string, readonly string[]>) {}

  /** The next free mark of a group; null for a spare. */
  next(group: string): string | null {
    const at = this.given.get(group) ?? 0;
    this.given.set(group, at + 1);
    return this.marks.get(group)?.[at] ?? null;
  }
}

/** Marks of pieces that follow one another, runs shortened: `R-01–03, R-07`; what bears no mark is a spare. */
export function markRuns(marks: readonly (string | null)[]): string {
  const runs: { first: string; last: string; next: string }[] = [];
  let spares = 0;
  for (const mark of marks) {
    if (mark === null) spares++;
    else if (runs.at(-1)?.next === mark) Object.assign(runs.at(-1) as object, { last: mark, next: following(mark) });
    else runs.push({ first: mark, last: mark, next: following(mark) });
  }
  const words = runs.map(({ first, last }) => (first === last ? first : `${first}–${last.replace(/^.*-/, "")}`));
  const spare = spares === 0 ? [] : [spares === 1 ? "spare" : `${spares} spares`];
  return [...words, ...spare].join(", ");
}

/** `R-09` to `R-10`. */
function following(mark: string): string {
  return mark.replace(/\d+$/, (digits) => String(Number(digits) + 1).padStart(digits.length, "0"));
}
