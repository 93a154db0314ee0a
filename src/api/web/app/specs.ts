/** How the server tells the form what may be asked for. Plain data: it travels in the page. */
import type { CsvColumn } from "../../../catalog/csv-columns.js";

interface Head {
  /** Key in the request. */
  readonly key: string;
  readonly label: string;
  /** A sentence: what is measured, and where. */
  readonly hint: string;
  /** What may be typed; empty when there is none. */
  readonly example: string;
  readonly required: boolean;
}

/** One thing that may be asked for. */
export type FieldSpec =
  | (Head & { readonly kind: "text"; readonly suggested: readonly string[] })
  | (Head & { readonly kind: "count" | "flag" | "list" })
  | (Head & { readonly kind: "choice"; readonly choices: readonly string[] })
  /** Fields below one key. */
  | (Head & { readonly kind: "group"; readonly fields: readonly FieldSpec[] })
  /** A list of things alike. */
  | (Head & { readonly kind: "rows"; readonly fields: readonly FieldSpec[] })
  /** Known keys that each hold a thing alike. */
  | (Head & {
      readonly kind: "table";
      readonly keys: readonly { readonly key: string; readonly label: string }[];
      readonly fields: readonly FieldSpec[];
    });

/** One kind of structure. */
export interface StructureSpec {
  readonly kind: string;
  readonly label: string;
  readonly fields: readonly FieldSpec[];
}

/** Every form of the page. */
export interface FormSpec {
  readonly structures: readonly StructureSpec[];
  readonly log: readonly FieldSpec[];
  readonly shop: readonly FieldSpec[];
  readonly labor: readonly FieldSpec[];
  readonly site: readonly FieldSpec[];
  readonly options: readonly FieldSpec[];
  readonly line: readonly FieldSpec[];
  /** One job that was timed. */
  readonly timedJob: readonly FieldSpec[];
  /** By the kind of row, as in `LAYOUTS`. */
  readonly prices: Readonly<Record<string, readonly PriceCell[]>>;
  readonly currencies: readonly string[];
}

/** One cell of a row of prices. */
export interface PriceCell {
  readonly column: CsvColumn;
  readonly required: boolean;
  /** Empty where any text may stand. */
  readonly choices: readonly string[];
  readonly example: string;
}
