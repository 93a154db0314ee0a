/** Names of the page's folds. */
import { LOG_FIRST, ROW_FIRST, STRUCTURE_FIRST, STRUCTURE_PARTS, STRUCTURE_TABLES } from "./above.js";

/** Folds that are open when the page comes: those the question on the door is answered by. */
export const OPEN_FIRST: readonly string[] = ["give-structure", "pieces", "hours", "sawing", "shopping", "cautions"];

/** On a phone the verdict must not be buried below questions. */
export const OPEN_ON_PHONE: readonly string[] = ["cautions"];

/** The fold in which all coverings stand. */
export const COMPARED = "compare-coverings";

/** Folds that are printed for the shop wall: what to mind, to saw, to cut, to buy, and how long it takes. */
export const ON_THE_WALL: readonly string[] = ["cautions", "pieces", "sawing", "shopping", "sticks", "rafter", "hours"];

/** Folds that are printed where everything is asked for. */
export const ON_PAPER: readonly string[] = [
  ...ON_THE_WALL,
  ...["calendar", "dressing", "loads", "covering", "drawings", "notices"],
];

/** Places of the request that stand in a fold of another name. */
const HOME: Readonly<Record<string, string>> = { labor: "shop", site: "options", overrides: "own" };

/** Every fold that stands over a place of the request; one that the place stands above stays as it is. */
export function panelsOver(pointer: string): string[] {
  const steps = pointer.split("/").slice(1);
  const first = steps[0] ?? "";
  const folds = steps.flatMap((_, index) => {
    const at = `/${steps.slice(0, index + 1).join("/")}`;
    const [key, under] = steps.slice(index + 1);
    return standsAbove(at, key, under) ? [`table${at}`] : [`more${at}`, `table${at}`];
  });
  return [`give-${HOME[first] ?? first}`, ...folds];
}

const ROW = /\/\d+$/;

/** Whether what is at `key` of `at` is seen without its fold; no key means what is said of the whole. */
function standsAbove(at: string, key: string | undefined, under: string | undefined): boolean {
  if (key === undefined) return at === "/structure" || ROW.test(at);
  if (at === "/structure") {
    const apart =
      STRUCTURE_PARTS.has(key) || STRUCTURE_TABLES.has(key) || (under !== undefined && ROW.test(`/${under}`));
    return STRUCTURE_FIRST.has(key) || apart;
  }
  return /^\/logs\/\d+$/.test(at) ? LOG_FIRST.includes(key) : ROW_FIRST.has(key);
}
