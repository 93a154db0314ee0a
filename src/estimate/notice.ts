/** A notice: what the reader of an answer should know of how it was made. */

/** Defaults, substitutions, missing prices, fields and pieces that were left alone. */
export interface Notice {
  readonly code:
    | "default"
    | "substitution"
    | "bought-size"
    | "tolerance"
    | "unpriced"
    | "not-milled"
    | "mill-crew"
    | "short"
    | "no-hardware"
    | "green-finish"
    | "open-frame"
    | "unused"
    | "too-long"
    | "in-the-way"
    | "slim-log"
    | "any-wood"
    | "decay";
  readonly text: string;
  /** JSON Pointer at which the request may say otherwise. */
  readonly at?: string;
}
