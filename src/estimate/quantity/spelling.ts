/** What keyboards, telephones and word processors make of a quantity, in one spelling; pure text, nothing is read here. */

/** `12' 6`, `12 ft 6 1/2`: what follows feet is inches, marked or not. Never `12 ft2`, which is an area. */
const FEET_THEN_BARE = /^-?\d+(?:\s*['′’]\s*-?\s*|\s*(?:ft|feet|foot|FT|Ft)\s+)[\d./ -]*\d$/;

/** Fractions that a telephone writes as one sign. */
const VULGAR = new Map(
  ["½ 1/2", "¼ 1/4", "¾ 3/4", "⅛ 1/8", "⅜ 3/8", "⅝ 5/8", "⅞ 7/8", "⅓ 1/3", "⅔ 2/3"].map(
    (pair) => pair.split(" ") as [sign: string, spelled: string],
  ),
);

/** Dollars that say whose they are; a bare $ is of the United States. */
const DOLLARS = new Map(
  ["US$ USD", "CA$ CAD", "C$ CAD", "A$ AUD", "AU$ AUD", "NZ$ NZD", "R$ BRL"].map(
    (pair) => pair.split(" ") as [sign: string, code: string],
  ),
);

/** One spelling of what has several: `12½ ft.` as `12 1/2 ft`, `12' 6` as `12' 6"`, `−CA$5` as `-CAD 5`. */
export function plainly(text: string): string {
  const spelled = text
    // Spaces of every width; minus signs, and the slash of a fraction.
    .replace(/[\u00a0\u2007\u2009\u202f]/g, " ")
    .replace(/^\s*[\u2212\u2013]\s*(?=[\d.$€£A-Z¼-¾⅓-⅞])/, "-")
    .replace(/[\u2044\u2215]/g, "/")
    .replace(/(\d?)\s*([½¼¾⅛⅜⅝⅞⅓⅔])/g, (_, digit: string, sign: string) => `${digit}${digit && " "}${VULGAR.get(sign)}`)
    .replace(/(?<=[A-Za-z])\.(?=\s|\d|$)/g, "")
    .replace(/^(-?\s*)([A-Z]{1,2}\$)/, (all, sign: string, dollars: string) => {
      const code = DOLLARS.get(dollars);
      return code ? `${sign}${code} ` : all;
    });
  return FEET_THEN_BARE.test(spelled) ? `${spelled}"` : spelled;
}
