/** What the estimate comes to, in plain words with its reasons. It reads the sheet; nothing on the sheet depends on it. */

/** First on every screen. */
export interface Verdict {
  /** What to mill and what to buy, in one sentence. */
  readonly headline: string;
  /** What that saves, for how many hours, against buying everything; whether the logs hold it; when it is dry; … */
  readonly reasons: readonly string[];
  /** What could turn it round. */
  readonly doubt: string;
  /** Before the first cut. */
  readonly first: string;
  /** Labels of the groups on each side. */
  readonly mill: readonly string[];
  readonly buy: readonly string[];
}
