/** Which form of the answer the caller wants (RFC 9110, section 12.5.1). */

interface MediaRange {
  /** In lower case: a type, all of one kind (`text` and an asterisk), or two asterisks for anything. */
  readonly type: string;
  /** From 0, never, to 1, gladly. */
  readonly quality: number;
}

/**
 * Picks one of the media types on offer.
 * @param accept - The Accept header; absent or empty means that anything will do.
 * @param offered - In our order of preference, which breaks ties.
 * @returns undefined when none is acceptable.
 */
export function chooseType(accept: string | undefined, offered: readonly string[]): string | undefined {
  if (!accept?.trim()) return offered[0];
  const ranges = accept.split(",").flatMap(readRange);
  let best: { type: string; quality: number } | undefined;
  for (const type of offered) {
    const quality = qualityOf(type, ranges);
    if (quality > (best?.quality ?? 0)) best = { type, quality };
  }
  return best?.type;
}

/** The type alone: in lower case and without parameters. */
export function essence(mediaType: string): string {
  return (mediaType.split(";", 1)[0] as string).trim().toLowerCase();
}

/** A range that cannot be read counts as not sent. */
function readRange(text: string): MediaRange[] {
  const type = essence(text);
  if (!/^[\w!#$&^.+-]+\/[\w!#$&^.+-]+$|^[\w!#$&^.+-]+\/\*$|^\*\/\*$/.test(type)) return [];
  const weight = /;\s*q\s*=\s*([^;\s]*)/i.exec(text)?.[1] ?? "1";
  return /^(?:0(?:\.\d{0,3})?|1(?:\.0{0,3})?)$/.test(weight) ? [{ type, quality: Number(weight) }] : [];
}

/** The most exact range that covers the type decides, even against a wider one that likes it better. */
function qualityOf(offered: string, ranges: readonly MediaRange[]): number {
  const type = essence(offered);
  for (const wanted of [type, type.replace(/\/.*/, "/*"), "*/*"]) {
    const matching = ranges.filter((range) => range.type === wanted);
    if (matching.length > 0) return Math.max(...matching.map((range) => range.quality));
  }
  return 0;
}
