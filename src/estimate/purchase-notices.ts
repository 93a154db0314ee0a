/** Notices of what the best mix buys: spares that the yard has not, boards at hand that lie idle, fasteners sold in another size. */
import { toQuantity, toSection } from "../catalog/reading.js";
import type { Basis } from "./basis.js";
import type { CommonCells, RouteCells } from "./compare/route.js";
import { pointer } from "./faults.js";
import type { Notice } from "./notice.js";
import { isLike, sticksOf } from "./purchase/lumber.js";
import { ZERO } from "./quantity/decimal.js";
import { marked, markedSection } from "./quantity/text.js";
import { aside } from "./sheet/aside.js";

/** In the order of the shopping list. */
export function purchaseNotices(basis: Basis, mix: RouteCells, common: CommonCells): Notice[] {
  return [...spareNotices(basis, mix), ...idleBoards(basis, mix), ...differingLines(mix, common)];
}

/** Where fewer sticks can be had than the share for defects asks for; not where the user chose how many. */
function spareNotices({ assumed }: Basis, { plan, lines }: RouteCells): Notice[] {
  const share = aside(assumed.cell("buy.wastage"));
  return plan.stock.flatMap(({ question: { offer, problem }, plan: cuts }): Notice[] => {
    const used = sticksOf(cuts);
    const paid = problem.stocks.filter(({ owned }) => !owned);
    const cut = paid.reduce((sum, { name }) => sum + (used.get(name) ?? 0), 0);
    const own = lines.filter((line) => line.offer === offer.name);
    if (own.some(({ spares }) => spares?.kind === "override")) return [];
    const wanted = share.times(cut).toDecimalPlaces(9).ceil();
    const had = own.reduce((sum, { quantity }) => sum.plus(aside(quantity)), ZERO).minus(cut);
    if (had.gte(wanted)) return [];
    const text = `${offer.label}: of ${wanted.toFixed()} spare ${wanted.eq(1) ? "stick" : "sticks"} for defects ${had.lte(0) ? "none" : `only ${had.toFixed()}`} can be had, for the yard has no more. Look each over before you pay, or ask for a later delivery.`;
    return [{ code: "short", text }];
  });
}

/** Boards at hand of which the best mix cuts none. */
function idleBoards({ request: { atHand = [], system } }: Basis, { plan }: RouteCells): Notice[] {
  return atHand.flatMap((board, i): Notice[] => {
    const length = toQuantity(board.length, "ft");
    const name = `at hand, ${marked(length, system)}`;
    const cut = plan.stock.some(
      ({ question: { offer }, plan: cuts }) => isLike(board, offer) && (sticksOf(cuts).get(name) ?? 0) > 0,
    );
    if (cut) return [];
    const { thickness, width } = toSection(board.section);
    const which = `${board.count} at hand of ${markedSection(thickness, width, system)}, ${marked(length, system)}`;
    const text = `Nothing is cut from the ${which}: no piece that is bought has this section in this wood and treatment, none fits, or others serve.`;
    return [{ code: "unused", text, at: pointer("/atHand", i) }];
  });
}

/** Fasteners that are sold longer or better protected than wanted. */
function differingLines({ lines }: RouteCells, common: CommonCells): Notice[] {
  return [...common.lines, ...lines].flatMap(({ label, differences = [] }): Notice[] =>
    differences.length === 0 ? [] : [{ code: "substitution", text: `${label}: ${differences.join("; ")}.` }],
  );
}
