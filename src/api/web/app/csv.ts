/** Tables of the answer as CSV after RFC 4180. A text that a spreadsheet would run is made harmless by an apostrophe. */
import type { Estimate } from "./model.js";
import { multipliedOf } from "./words.js";

type Cell = string | number | null | undefined;

const NUMBER = /^-?\d+(\.\d+)?$/;

/** One cell: numbers as they are, texts in quotation marks where they need them. */
export function csvCell(value: Cell): string {
  const text = String(value ?? "");
  const safe = /^[=+\-@\t\r]/.test(text) && !NUMBER.test(text) ? `'${text}` : text;
  return /[",\r\n]/.test(safe) ? `"${safe.replaceAll('"', '""')}"` : safe;
}

/** Rows as one text; lines end in CR LF. */
export const csv = (rows: readonly (readonly Cell[])[]): string =>
  rows.map((row) => `${row.map(csvCell).join(",")}\r\n`).join("");

/** The cut list, a row for each piece group. */
export function cutListCsv({ cutList, decision }: Estimate): string {
  const reasons = new Map(decision.verdict.groups.map((group) => [group.group, group]));
  return csv([
    [
      "group",
      "label",
      "count",
      "finished section",
      "finished length",
      "rough section",
      "rough length",
      "from the logs",
      "bought",
      "marks",
    ],
    ...cutList.groups.map((group) => [
      group.name,
      group.label,
      group.count.value,
      group.finished.section,
      group.finished.length.marked,
      group.rough?.section,
      group.rough?.length.marked,
      reasons.get(group.name)?.milled,
      reasons.get(group.name)?.bought,
      group.marks.join(" "),
    ]),
  ]);
}

/** The shopping lists of all routes; lines that every route has say "every". */
export function shoppingCsv({ purchasing }: Estimate): string {
  const own = purchasing.routes.flatMap(({ route, departments }) =>
    departments.map((one) => ({ route: route as string, ...one })),
  );
  const shared = purchasing.shared.map((one) => ({ route: "every", ...one }));
  return csv([
    [
      "route",
      "department",
      "kind",
      "ask for",
      "quantity",
      "unit",
      "length each",
      "packs",
      "left over",
      "of them spare",
      "paid for",
      "in",
      "price",
      "price in",
      "amount",
      "currency",
      "to add",
    ],
    ...[...own, ...shared].flatMap(({ route, department, lines }) =>
      lines.map((line) => [
        route,
        department,
        line.share ? "share of cost" : "order",
        line.label,
        line.quantity.value,
        line.quantity.unit,
        line.each?.marked,
        line.packs?.map(({ label, count }) => `${count.value} x ${label}`).join("; "),
        line.leftOver?.value,
        line.spares?.value,
        multipliedOf(line)?.measure.value,
        multipliedOf(line)?.measure.unit,
        multipliedOf(line)?.price.value,
        multipliedOf(line)?.price.unit,
        line.amount?.value,
        line.amount?.unit,
        line.add,
      ]),
    ),
  ]);
}

/** The sheet, a row for each cell, with workings where the answer has them. */
export function sheetCsv(sheet: Estimate["sheet"]): string {
  const cells = sheet.blocks.flatMap((block) => [
    ...block.cells.map((cell) => ({ block: block.title, line: "", cell })),
    ...block.lines.flatMap((line) => line.cells.map((cell) => ({ block: block.title, line: line.title, cell }))),
  ]);
  return csv([
    ["block", "line", "cell", "label", "kind", "value", "unit", "low", "high", "working", "source"],
    ...cells.map(({ block, line, cell }) => [
      block,
      line,
      cell.name,
      cell.label,
      cell.kind,
      cell.value,
      cell.unit,
      cell.low,
      cell.high,
      cell.working,
      cell.source,
    ]),
  ]);
}
