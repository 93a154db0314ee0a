/** Printing: what is folded on the screen lies open on paper, and is folded again after it. */
import type { Desk } from "./desk.js";
import { ON_PAPER, ON_THE_WALL } from "./folds.js";
import { foldsOf } from "./sheet.js";

/** Names what is printed to the style, on the root of the page; absent for the shop wall. */
const ALL = "all";

/** Unfolds what is printed, however printing was asked for. */
export function unfoldForPrinting(desk: Desk): void {
  let before: ReadonlySet<string> | undefined;
  addEventListener("beforeprint", () => {
    before ??= desk.shown.panels;
    const { sheet } = desk.shown;
    const all = document.documentElement.dataset.print === ALL;
    const numbers = all && sheet ? ["sheet", ...foldsOf(sheet)] : [];
    desk.put({ panels: new Set([...before, ...(all ? ON_PAPER : ON_THE_WALL), ...numbers]) });
  });
  addEventListener("afterprint", () => {
    delete document.documentElement.dataset.print;
    if (before) desk.put({ panels: before });
    before = undefined;
  });
}

/** Opens the browser's own dialog; with every number once they have come. */
export async function print(desk: Desk, all: boolean): Promise<void> {
  if (all) {
    document.documentElement.dataset.print = ALL;
    await desk.bringSheet();
  }
  window.print();
}
