/** Safety cautions and notices, each with the condition that raises it. Never a statement that anything is strong enough. */

/** What can hurt someone, or fail. */
export interface Caution {
  readonly code: string;
  readonly text: string;
  /** Regulation or publication. */
  readonly source: string;
}

/** What the reader of the estimate should know of how it was made: defaults, substitutions, missing prices. */
export interface Notice {
  readonly code: "default" | "substitution" | "unpriced" | "not-milled" | "short" | "removed";
  readonly text: string;
  /** JSON Pointer at which the request may say otherwise. */
  readonly at?: string;
}
