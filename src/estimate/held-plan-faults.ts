/** Held plans that nothing of the estimate asks for: none is left unread in silence. */
import { type Fault, nearest, pointer } from "./faults.js";
import type { HeldPlans } from "./request/held-plans.js";

const AT = "/heldPlans";
const CURE = "Leave the held plans out, or send the request that they were made for.";

/**
 * Groups of a held mix that the structure has not, and a sawyer who is not asked for.
 * @param known - Names of the structure's groups.
 */
export function mixFaults(
  { milled = [], hired }: HeldPlans,
  known: ReadonlySet<string>,
  sawyer: object | undefined,
): Fault[] {
  const unknown = milled.flatMap((name, i): Fault[] => {
    const wrong = `The structure has no piece group called ${name.slice(0, 80)}.`;
    return known.has(name) ? [] : [misfit(pointer(AT, "milled", i), wrong, name, known)];
  });
  if (!hired || sawyer) return unknown;
  const at = pointer(AT, "hired");
  return [...unknown, { code: "held-plan-misfit", at, wrong: "The shop hires no sawyer.", cure: CURE }];
}

/**
 * Routes and offers of held plans that the estimate has no plan for.
 * @param asked - The plans that the estimate goes by, in the form in which they are handed back.
 */
export function unaskedPlans(held: HeldPlans, asked: HeldPlans): Fault[] {
  const { sawing = {}, stock = {} } = held;
  const known = asked.stock ?? {};
  const offers = Object.entries(stock).flatMap(([route, plans]) =>
    Object.hasOwn(known, route)
      ? unasked(plans, known[route] ?? {}, pointer(AT, "stock", route), "buys by an offer called")
      : [],
  );
  return [
    ...unasked(sawing, asked.sawing ?? {}, pointer(AT, "sawing"), "saws by a route called"),
    ...unasked(stock, known, pointer(AT, "stock"), "buys by a route called"),
    ...offers,
  ];
}

function unasked(given: object, asked: object, at: string, does: string): Fault[] {
  const known = new Set(Object.keys(asked));
  return Object.keys(given).flatMap((name) => {
    const wrong = `Nothing here ${does} ${name.slice(0, 120)}.`;
    return known.has(name) ? [] : [misfit(pointer(at, name), wrong, name, known)];
  });
}

function misfit(at: string, wrong: string, name: string, known: ReadonlySet<string>): Fault {
  const near = nearest(name, known);
  return { code: "held-plan-misfit", at, wrong, cure: near ? `Did you mean ${near}? ${CURE}` : CURE };
}
