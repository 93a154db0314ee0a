/**
 * The columns of a catalog as CSV, and where each goes in the JSON form of the same catalog.
 *
 * One row is one thing with one price. Rows of a department that share a `name` belong to one entry: the first gives
 * its properties, each adds a length, a pack, a can or a part. Lists within a cell are divided by semicolons.
 */

/** How a cell's text becomes JSON. */
export type CellForm = "text" | "count" | "flag" | "list";

/** Column, then path in the entry, then form. */
export type Put = readonly [column: string, path: string, form?: CellForm];

/** Where the cells of a kind of row go. */
export interface Layout {
  /** Properties of the entry: the same in all its rows, or blank after the first. */
  readonly own: readonly Put[];
  /** A list of the entry that each row adds to. */
  readonly each?: {
    readonly into: string;
    readonly puts: readonly Put[];
    /** A row with `from` gives bulk prices of the item of the same length. */
    readonly bulk?: readonly Put[];
  };
  /** A list of bulk prices that each row with `from` adds to; its price is not the entry's own. */
  readonly bulk?: { readonly into: string; readonly puts: readonly Put[] };
}

/** Every column, with a sentence for the documentation. */
export const CSV_COLUMNS = {
  department: "lumber, fasteners, finishes, coverings, consumables, equipment, services, taxes, or catalog",
  name: "short name; rows of one department with the same name are one entry",
  label: "how the shelf calls it; for taxes and the catalog row, their name",
  part: "coverings only: sheets (when empty), trim, closure, sealant, underlay, adhesive or sheathing",
  species: "lumber: species or trade group",
  section: "lumber: thickness x width as sold",
  sizing: "lumber: nominal or actual",
  actual: "lumber: section as it measures",
  surface: "lumber: dressed or rough",
  seasoning: "lumber: dry or green",
  treatment: "lumber: none, above-ground or ground-contact",
  grade: "lumber: grade as marked",
  grade_marked: "lumber: yes or no",
  bundle: "lumber: pieces in a bundle",
  available: "lumber sold by piece, panels: how many of this length can be had",
  sold_by: "lumber: piece, length or volume; panels: piece or cut-length",
  measure: "lumber sold by volume: nominal or actual",
  covering: "coverings: kind of covering",
  form: "coverings, part sheets: panels, courses, rolls or boards",
  deck: "coverings: name of the lumber entry for the deck",
  lumber: "coverings of boards: name of the lumber entry",
  kind: "fasteners, finishes, trims, closures: which one",
  item: "consumables, equipment, services: which one",
  penny: "nails: penny size",
  diameter: "fasteners: shank diameter",
  length: "length of the piece, fastener, panel, trim or roll; a list where lumber is sold by length or volume",
  width: "rolls: width",
  fits: "post bases: actual section of the post",
  finish: "fasteners: corrosion class",
  cover_width: "panels: width that one covers",
  shortest: "cut to length or sold by length: shortest",
  longest: "cut to length or sold by length: longest",
  step: "cut to length or sold by length: step",
  covers: "courses: roof area of one bundle",
  exposure: "courses: exposure at which it covers that",
  pieces: "courses: strips or shingles in a bundle",
  count: "fasteners: pieces in the pack",
  weight: "fasteners: weight of the pack; coverings: weight as laid",
  from: "lumber, fasteners, finishes, coverings: the price holds for so many of it and more; a row beside that of the price of one",
  size: "finishes: content of the can",
  coverage_smooth: "finishes: the maker's coverage on smooth wood",
  coverage_rough: "finishes: the maker's coverage on rough wood",
  hire_per_day: "equipment: hire for a day",
  minimum_days: "equipment: shortest hire",
  purchase: "equipment: price to buy",
  resale: "equipment: what it sells for afterwards",
  rate: "taxes: rate in %",
  applies_to: "taxes: list of departments",
  price: "price; empty means unpriced",
  currency: "catalog row: currency of all prices",
  note: "catalog row: what to know about the prices",
} as const;

/** Name of a column of the price list as CSV. */
export type CsvColumn = keyof typeof CSV_COLUMNS;

const same = (...columns: readonly CsvColumn[]): Put[] => columns.map((column) => [column, column]);
const under = (path: string, ...columns: readonly CsvColumn[]): Put[] =>
  columns.map((column) => [column, `${path}.${column}`]);

const NAMES = same("name", "label");
const LUMBER: readonly Put[] = [
  ...NAMES,
  ...same("species", "section", "sizing", "actual", "surface", "seasoning", "treatment", "grade"),
  ["grade_marked", "gradeMarked", "flag"],
  ["bundle", "bundle", "count"],
  ["sold_by", "sold.by"],
];
const LUMBER_RATE: readonly Put[] = [
  ["length", "sold.lengths", "list"],
  ...under("sold.lengths", "shortest", "longest", "step"),
  ["price", "sold.price"],
];
const SHEETS: readonly Put[] = [...NAMES, ...same("covering", "weight", "deck"), ["form", "sheets.form"]];
const PANELS: readonly Put[] = [...SHEETS, ["cover_width", "sheets.coverWidth"], ["sold_by", "sheets.sold.by"]];
const PRICED_LENGTH = same("length", "price");
const LONG_PIECE: readonly Put[] = [...same("kind"), ...PRICED_LENGTH, ["from", "from", "count"]];
const STOCK_LENGTH: readonly Put[] = [...PRICED_LENGTH, ["available", "available", "count"]];
const PART: readonly Put[] = same("name");
const BULK: readonly Put[] = [["from", "from", "count"], ...same("price")];
const bulkOf = (owner: string) => ({ into: `${owner}.bulk`, puts: BULK });

/** Layouts by department; lumber and coverings by the cells named in `layoutKey` too. */
export const LAYOUTS: Readonly<Record<string, Layout>> = {
  catalog: { own: [["label", "name"], ...same("currency", "note")] },
  taxes: { own: [["label", "name"], ...same("rate"), ["applies_to", "appliesTo", "list"]] },
  "lumber piece": { own: LUMBER, each: { into: "sold.lengths", puts: STOCK_LENGTH, bulk: BULK } },
  "lumber length": { own: [...LUMBER, ...LUMBER_RATE], bulk: bulkOf("sold") },
  "lumber volume": { own: [...LUMBER, ...LUMBER_RATE, ...under("sold", "measure")], bulk: bulkOf("sold") },
  fasteners: {
    own: [...NAMES, ...same("kind", "penny", "diameter", "length", "fits", "finish")],
    each: { into: "packs", puts: [["count", "count", "count"], ["from", "from", "count"], ...same("weight", "price")] },
  },
  finishes: {
    own: [...NAMES, ...same("kind"), ["coverage_smooth", "coverage.smooth"], ["coverage_rough", "coverage.rough"]],
    each: { into: "cans", puts: [["from", "from", "count"], ...same("size", "price")] },
  },
  "coverings sheets panels piece": {
    own: PANELS,
    each: { into: "sheets.sold.lengths", puts: STOCK_LENGTH, bulk: BULK },
  },
  "coverings sheets panels cut-length": {
    own: [...PANELS, ...under("sheets.sold", "shortest", "longest", "step", "price")],
  },
  "coverings sheets courses": {
    own: [...SHEETS, ...under("sheets", "covers", "exposure", "price"), ["pieces", "sheets.pieces", "count"]],
    bulk: bulkOf("sheets"),
  },
  "coverings sheets rolls": {
    own: [...SHEETS, ...under("sheets", "width", "length", "price")],
    bulk: bulkOf("sheets"),
  },
  "coverings sheets boards": { own: [...SHEETS, ...under("sheets", "lumber")] },
  "coverings trim": { own: PART, each: { into: "trims", puts: LONG_PIECE } },
  "coverings closure": { own: PART, each: { into: "closures", puts: LONG_PIECE } },
  "coverings sealant": { own: [...PART, ...under("sealant", "length", "price")], bulk: bulkOf("sealant") },
  "coverings adhesive": { own: [...PART, ...under("adhesive", "covers", "price")], bulk: bulkOf("adhesive") },
  "coverings sheathing": {
    own: [...PART, ...under("sheathing", "label", "width", "length", "price")],
    bulk: bulkOf("sheathing"),
  },
  "coverings underlay": {
    own: [...PART, ...under("underlay", "label", "width", "length", "price")],
    bulk: bulkOf("underlay"),
  },
  consumables: { own: [...NAMES, ...same("item", "price")] },
  services: { own: [...NAMES, ...same("item", "price")] },
  equipment: {
    own: [
      ...NAMES,
      ...same("item", "purchase", "resale"),
      ["hire_per_day", "hirePerDay"],
      ["minimum_days", "minimumDays"],
    ],
  },
};

/** Cells that decide which layout a row has, in order, with the value that an empty cell means. */
export const LAYOUT_CELLS: ReadonlyMap<string, readonly (readonly [CsvColumn, string?])[]> = new Map([
  ["lumber", [["sold_by", "piece"]]],
  ["coverings", [["part", "sheets"], ["form"], ["sold_by"]]],
]);
