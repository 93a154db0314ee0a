/** A stick and its cuts as an SVG image, for the saw. Drawn in floats; the lengths written on it are exact. */

export interface StickPicture {
  readonly title: string;
  /** Length of the squared stick, in steps. */
  readonly whole: number;
  readonly cuts: readonly {
    readonly from: number;
    readonly to: number;
    readonly label: string;
    readonly length: string;
  }[];
}

const WIDTH = 960;
const HEIGHT = 56;
/** Below so many pixels a name would run over its neighbour. */
const ROOM = 60;

/** One image, with a text for who cannot see it. */
export function stickDrawing({ title, whole, cuts }: StickPicture): string {
  const scale = WIDTH / Math.max(1, whole);
  const x = (steps: number): string => (steps * scale).toFixed(1);
  const words = [title, ...cuts.map(({ label, length }) => `${label} ${length}`)].map(escaped);
  const boxes = cuts.map(({ from, to, label, length }) => {
    const middle = x((from + to) / 2);
    const box = `<rect x="${x(from)}" y="1" width="${x(to - from)}" height="54" fill="#f4e6c8" stroke="#4a3a1a"/>`;
    if ((to - from) * scale < ROOM) return `${box}<text x="${middle}" y="33">${escaped(length)}</text>`;
    return `${box}<text x="${middle}" y="25">${escaped(label)}</text><text x="${middle}" y="43">${escaped(length)}</text>`;
  });
  return [
    `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 ${WIDTH} ${HEIGHT}" role="img" aria-label="${words.join(", ")}">`,
    `<title>${words[0]}</title>`,
    `<rect x="0" y="1" width="${WIDTH}" height="54" fill="none" stroke="#4a3a1a" stroke-dasharray="4 3"/>`,
    `<g font-family="sans-serif" font-size="13" text-anchor="middle" fill="#1c1608">${boxes.join("")}</g>`,
    "</svg>",
  ].join("");
}

const escaped = (text: string): string =>
  text.replaceAll("&", "&amp;").replaceAll("<", "&lt;").replaceAll('"', "&quot;");
