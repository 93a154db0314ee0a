/** How a held plan joins the pieces of a stock order: told from the parts that it cuts, each of which says how long it is. */
import type { Had } from "./stock/joints.js";

/** Equal pieces that may be joined. */
interface Named {
  readonly name: string;
  readonly count: number;
  /** All of them, or none where no stick takes one whole. */
  readonly mostWhole: number;
  /** Names of the parts, way by way. */
  readonly names: readonly (readonly string[])[];
}

/** Tries of putting the parts together into pieces: more than any plan of our own takes. Assumption. */
const MOST_TRIES = 10_000;

/** As many whole as the plan cuts, where it joins some; parts that make no piece are left for the judge to find. */
export function heldAs({ name, count, mostWhole, names }: Named, cut: ReadonlyMap<string, number>): Had {
  const left = new Map([...new Set(names.flat())].map((part) => [part, cut.get(part) ?? 0]));
  if ([...left.values()].every((times) => times === 0)) return { whole: mostWhole, joined: [] };
  let tries = 0;
  const together = (): Had["joined"] | undefined => {
    const [next] = [...left].find(([, times]) => times > 0) ?? [];
    if (next === undefined) return [];
    for (const [way, parts] of names.entries()) {
      const most = parts.includes(next) ? Math.min(...parts.map((part) => left.get(part) ?? 0)) : 0;
      for (let times = most; times > 0 && tries < MOST_TRIES; times--) {
        tries++;
        for (const part of parts) left.set(part, (left.get(part) ?? 0) - times);
        const rest = together();
        if (rest) return [{ way, count: times }, ...rest];
        for (const part of parts) left.set(part, (left.get(part) ?? 0) + times);
      }
    }
    return undefined;
  };
  const joined = together() ?? [];
  const whole = Math.min(cut.get(name) ?? 0, mostWhole, count);
  return { whole, joined };
}
