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
