/** Keys whose fields stand above a fold, in plain sight: what most people fill in comes first, the rest unfolds. */

/** Of a structure: what everyone knows of a shelter before it is drawn. */
export const STRUCTURE_FIRST: ReadonlySet<string> = new Set([
  ...["span", "length", "height", "eaveHeight", "slope", "overhang", "bays", "covering", "pieces"],
]);

/** Of a structure: parts that are there or not. */
export const STRUCTURE_PARTS: ReadonlySet<string> = new Set(["footings", "floor", "walls"]);

/** Of a structure: a table with a fold of its own. */
export const STRUCTURE_TABLES: ReadonlySet<string> = new Set(["groups"]);

/** Of a row of any list. */
export const ROW_FIRST: ReadonlySet<string> = new Set([
  ...[
    "name",
    "label",
    "count",
    "section",
    "length",
    "species",
    "source",
    "item",
    "terms",
    "share",
    "formula",
    "remove",
  ],
]);

/** Of a log: what tells one from the next. */
export const LOG_FIRST: readonly string[] = ["name", "length", "smallDiameter", "count"];

/** How the columns of the table of logs are headed. */
export const LOG_HEADS: Readonly<Record<string, string>> = {
  name: "Log",
  length: "Length",
  smallDiameter: "Small end",
  count: "How many",
};
