/** Drawings of the answer, to scale. They are images: nothing in them can act on the page. */
import { Panel, type Shown } from "./figure.js";
import { isFields, valueAt } from "./json.js";
import type { Estimate, Model } from "./model.js";

type Drawn = NonNullable<NonNullable<Estimate["geometry"]>["drawings"]>[number];

const drawingsOf = (answer: Estimate | undefined): readonly Drawn[] => answer?.geometry?.drawings ?? [];

/** Beside the sizes: the section, which shows span, height, slope and overhang at once. It follows every answer. */
export function SectionDrawing({ m }: { readonly m: Model }) {
  const kind = valueAt(m.request, "/structure/kind");
  const drawings = m.answer?.geometry?.kind === kind ? drawingsOf(m.answer) : [];
  const section = drawings.find(({ name }) => name === "section");
  if (section) return <Picture of={section} />;
  const waits = isFields(valueAt(m.request, "/structure")) && kind !== "pieces";
  return waits ? <p class="hint">The drawing comes with the next answer.</p> : null;
}

/** All of them, for setting out. */
export function Drawings({ m, answer }: Shown) {
  const drawings = drawingsOf(answer);
  if (drawings.length === 0) return null;
  return (
    <Panel m={m} name="drawings" title="Drawings" gist="plan, elevation, section, rafters: to scale, with dimensions">
      {drawings.map((one) => (
        <section aria-label={one.title}>
          <Picture of={one} />
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

/** Its own size is written in it, so that nothing moves when it comes. */
function Picture({ of: { title, svg } }: { readonly of: Drawn }) {
  const [, width, height] = /viewBox="0 0 ([\d.]+) ([\d.]+)"/.exec(svg) ?? [];
  const words = /<desc[^>]*>([^<]*)<\/desc>/.exec(svg)?.[1]?.replaceAll("&quot;", '"').replaceAll("&amp;", "&");
  return (
    <figure class="drawing">
      <img
        src={`data:image/svg+xml,${encodeURIComponent(svg)}`}
        alt={words ?? title}
        width={width}
        height={height}
        loading="lazy"
      />
    </figure>
  );
}
