/** Notices of wood that is not yet dry: what is brushed green, and what waits for boards in the stack. */
import { FINISHES } from "../catalog/finishes.js";
import type { Basis } from "./basis.js";
import type { ComparedRoutes } from "./compare/decision.js";
import { driedGroups } from "./compare/schedule.js";
import type { Notice } from "./notice.js";
import { lowered } from "./quantity/words.js";
import type { Takeoffs } from "./takeoffs.js";

/** All of them, of the best mix. */
export const dryingNotices = (basis: Basis, takeoffs: Takeoffs, routes: ComparedRoutes): Notice[] => [
  ...greenFinish(basis, takeoffs, routes),
  ...openFrame(basis, takeoffs, routes),
];

/** Timbers that stay green are brushed before they are dry: what becomes of the finish, and what else one may do. */
function greenFinish(
  { groups }: Basis,
  {
    finish: {
      terms: { kind },
    },
  }: Takeoffs,
  { mix }: ComparedRoutes,
): Notice[] {
  if (kind === "none") return [];
  const green = groups.filter(({ group }) => group.rules.seasoning === "green" && mix.plan.sawn.has(group.name));
  if (green.length === 0) return [];
  const labels = green.map(({ group }, i) => (i === 0 ? group.label : lowered(group.label))).join(", ");
  const why = FINISHES[kind].primed ? "a film peels from wet wood" : "wet wood takes up little of it";
  const text = `${labels}: sawn from your logs and brushed while green, and ${why}. Where they may stand bare under the roof, brush them when their faces are dry; "seasoning": "dried" for a group has it wait in the stack first.`;
  return [{ code: "green-finish", text, at: "/options/finish" }];
}

/** Where fascia alone dries, the frame stands, and waits for its covering. */
function openFrame(basis: Basis, { covering }: Takeoffs, { mix }: ComparedRoutes): Notice[] {
  const dried = driedGroups(basis, mix);
  const [first] = dried;
  if (!covering || !first || dried.some(({ group }) => group.role !== "fascia")) return [];
  const lies = covering.trimBelow
    ? "the trim at the eaves lies on it and below the covering"
    : "the covering laps over it";
  const text = `The frame stands uncovered until the fascia is dry, for ${lies}. Bought fascia ("source": "buy" for its groups) lets the roof be laid at once.`;
  return [{ code: "open-frame", text, at: first.group.at }];
}
