/** Names of the page's folds. */

/** Folds that are open when the page comes: those the question on the door is answered by. */
export const OPEN_FIRST: readonly string[] = ["give-structure", "pieces", "hours", "sawing", "shopping", "cautions"];

/** On a phone the verdict must not be buried below questions. */
export const OPEN_ON_PHONE: readonly string[] = ["cautions"];

/** The fold in which all coverings stand. */
export const COMPARED = "compare-coverings";

/** Folds that are printed. */
export const ON_PAPER: readonly string[] = [
  "pieces",
  "hours",
  "calendar",
  "dressing",
  "loads",
  "sawing",
  "shopping",
  "sticks",
  "covering",
  "drawings",
  "rafter",
  "cautions",
];

/** Places of the request that stand in a fold of another name. */
const HOME: Readonly<Record<string, string>> = { labor: "shop", site: "options", overrides: "own" };

/** Every fold that stands over a place of the request. */
export function panelsOver(pointer: string): string[] {
  const steps = pointer.split("/").slice(1);
  const prefixes = steps.map((_, index) => `/${steps.slice(0, index + 1).join("/")}`);
  const first = steps[0] ?? "";
  // A log's own columns stand in its row, above the fold.
  if (/^\/logs\/\d+\/(name|length|smallDiameter|count)$/.test(pointer)) return ["give-logs"];
  return [`give-${HOME[first] ?? first}`, ...prefixes.flatMap((at) => [`more${at}`, `table${at}`])];
}
