/** SVG as text: elements, places and words. */

type Attributes = Readonly<Record<string, string | number>>;

/** A place on paper, to a hundredth of a millimetre. */
const place = (value: number): string => String(Math.round(value * 100) / 100 + 0);

/** Words that cannot be taken for marks. */
export const words = (text: string): string =>
  text.replaceAll("&", "&amp;").replaceAll("<", "&lt;").replaceAll(">", "&gt;").replaceAll('"', "&quot;");

/** One element; numbers among its attributes are rounded as places. */
export function element(name: string, attributes: Attributes, ...content: readonly string[]): string {
  const written = Object.entries(attributes).map(
    ([key, value]) => ` ${key}="${typeof value === "number" ? place(value) : words(value)}"`,
  );
  const open = `<${name}${written.join("")}`;
  return content.length === 0 ? `${open}/>` : `${open}>${content.join("")}</${name}>`;
}
