/** Drawings of the answer, to scale. They are images: nothing in them can act on the page. */
import { Panel, type Shown } from "./figure.js";
import { isFields, valueAt } from "./json.js";
import type { Drawn, Model } from "./model.js";
import { Picture, withCards } from "./picture.js";

/** The section as small screens show it. */
const CARD = "section-card";

const drawingsOf = (of: Drawn | null | undefined) => of?.drawings ?? [];

/** Beside the sizes: the section, which shows span, height, slope and overhang at once. It follows what is typed. */
export function SectionDrawing({ m }: { readonly m: Model }) {
  const kind = valueAt(m.request, "/structure/kind");
  const newest = m.drawn ?? m.answer?.geometry;
  const card = drawingsOf(newest?.kind === kind ? newest : undefined).find(({ name }) => name === CARD);
  if (card) return <Picture of={card} />;
  const waits = isFields(valueAt(m.request, "/structure")) && kind !== "pieces";
  return waits ? <p class="hint">The drawing comes as soon as the sizes can be read.</p> : null;
}

const gistOf = (kind: string): string =>
  kind === "pieces"
    ? "each piece and its section: to scale"
    : "plan, elevation, section, rafters, footings, floor, walls: to scale, with dimensions";

/** All of them, for setting out. */
export function Drawings({ m, answer }: Shown) {
  const drawings = withCards(drawingsOf(answer.geometry));
  if (drawings.length === 0) return null;
  return (
    <Panel m={m} name="drawings" title="Drawings" gist={gistOf(answer.geometry.kind)}>
      {drawings.map(({ page: one, card }) => (
        <section aria-label={one.title}>
          <Picture of={one} card={card} />
          <p class="tools">
            <button
              type="button"
              aria-label={`Save ${one.title} as SVG`}
              onClick={() => m.acts.download(`${one.name}.svg`, one.svg)}
            >
              Save as SVG
            </button>
          </p>
        </section>
      ))}
    </Panel>
  );
}
