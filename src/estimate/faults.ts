/**
 * Every fault a request can have, in one list. Faults are values: they are collected and reported
 * together, each with its place and its cure. Bugs throw.
 */

/** Codes, each with the class of fault it is. `api/problem.ts` maps the class to an HTTP status. */
export const FAULT_CODES = {
  "not-a-quantity": "The text is not a number with a unit, as the trade writes it.",
  "wrong-dimension": "The unit measures something else than what is asked for here.",
  "out-of-range": "The value is beyond what is sensible or possible here.",
  "wrong-shape": "The value has the wrong type or form.",
  "unknown-field": "No such field exists here.",
  "missing-field": "A required field is absent.",
  "duplicate-name": "The same name is used twice where names must differ.",
  "unknown-name": "The name refers to nothing that exists.",
  "circular-lines": "Lines of your own refer to one another in a circle.",
  "bad-formula": "The arithmetic of a line of your own cannot be read.",
  "cannot-build": "The parts cannot be put together as described.",
  "too-large": "The work asked for is over a limit.",
  "held-plan-misfit": "A held plan does not fit the request that it came with.",
  "not-overridable": "This cell cannot be overridden.",
  "currency-mix": "Money of two currencies meets in one estimate.",
} as const;

/** Code of a fault, as the service documents it. */
export type FaultCode = keyof typeof FAULT_CODES;

/** One fault of a request. */
export interface Fault {
  readonly code: FaultCode;
  /** JSON Pointer (RFC 6901) into the request; "" is the request itself. */
  readonly at: string;
  /** What is wrong, in a sentence, with the value that was given. */
  readonly wrong: string;
  /** What would be right, in a sentence. */
  readonly cure: string;
}

/** Carries faults up to the door; thrown only where a fault ends the work at once. */
export class FaultError extends Error {
  constructor(readonly faults: readonly Fault[]) {
    super(faults.map((fault) => `${fault.at || "/"}: ${fault.wrong} ${fault.cure}`).join("\n"));
    this.name = "FaultError";
  }
}

/** Escapes one step of a JSON Pointer (RFC 6901, section 3). */
export function pointer(base: string, ...steps: readonly (string | number)[]): string {
  return base + steps.map((step) => `/${String(step).replaceAll("~", "~0").replaceAll("/", "~1")}`).join("");
}

/** Nearest of the known names by edit distance, or undefined when nothing is near enough to suggest. */
export function nearest(name: string, known: Iterable<string>): string | undefined {
  const wanted = name.slice(0, 64).toLowerCase();
  let best: string | undefined;
  let bestDistance = Math.max(2, Math.ceil(wanted.length / 3)) + 1;
  for (const candidate of known) {
    const distance = editDistance(wanted, candidate.toLowerCase(), bestDistance);
    if (distance < bestDistance) {
      best = candidate;
      bestDistance = distance;
    }
  }
  return best;
}

/** So many of the known names, the fewest edits first, of equals in the order given. */
export function likest(name: string, known: readonly string[], count: number): string[] {
  const wanted = name.slice(0, 64).toLowerCase();
  const distances = new Map(known.map((one) => [one, editDistance(wanted, one.toLowerCase(), MOST_EDITS)]));
  return known.toSorted((a, b) => (distances.get(a) ?? 0) - (distances.get(b) ?? 0)).slice(0, count);
}

/** More edits than any two names are apart. */
const MOST_EDITS = 999;

/** Levenshtein distance, given up at `limit`. */
function editDistance(a: string, b: string, limit: number): number {
  if (Math.abs(a.length - b.length) >= limit) return limit;
  let row = Array.from({ length: b.length + 1 }, (_, i) => i);
  for (let i = 1; i <= a.length; i++) {
    const next = [i];
    for (let j = 1; j <= b.length; j++) {
      const cost = a[i - 1] === b[j - 1] ? 0 : 1;
      next.push(Math.min((row[j] ?? 0) + 1, (next[j - 1] ?? 0) + 1, (row[j - 1] ?? 0) + cost));
    }
    row = next;
  }
  return row[b.length] ?? limit;
}
