/** A drawing of the service on the page: an image, so that nothing in it can act on the page. */

/** A drawing and what it is called. */
export interface Drawn {
  readonly title: string;
  readonly svg: string;
}

/** Its own size is written in it, so that nothing moves when it comes. Who can't see it hears its description. */
export function Picture({ of: { title, svg } }: { readonly of: Drawn }) {
  const [, width, height] = /viewBox="[-\d.]+ [-\d.]+ ([\d.]+) ([\d.]+)"/.exec(svg) ?? [];
  return (
    <figure class="drawing">
      <img
        src={`data:image/svg+xml,${encodeURIComponent(svg)}`}
        alt={described(title, svg)}
        width={width}
        height={height}
        loading="lazy"
      />
    </figure>
  );
}

/** A description that does not begin with the title gets it. */
function described(title: string, svg: string): string {
  const found = /<desc[^>]*>([^<]*)<\/desc>/.exec(svg)?.[1] ?? "";
  const words = found
    .replaceAll("&quot;", '"')
    .replaceAll("&lt;", "<")
    .replaceAll("&gt;", ">")
    .replaceAll("&amp;", "&");
  return words.startsWith(title) ? words : `${title}. ${words}`;
}
