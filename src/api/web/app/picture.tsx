/** A drawing of the service on the page: an image, so that nothing in it can act on the page. */

/** A drawing and what it is called. */
export interface Drawn {
  readonly title: string;
  readonly svg: string;
}

interface PictureProps {
  readonly of: Drawn;
  /** Stands in its place where the screen is too narrow for its words. */
  readonly card?: Drawn | undefined;
}

/** Its own size is written in it, so that nothing moves when it comes. Who can't see it hears its description. */
export function Picture({ of: { title, svg }, card }: PictureProps) {
  const image = <img src={urlOf(svg)} alt={described(title, svg)} {...sizeOf(svg)} loading="lazy" />;
  return (
    <figure class="drawing">
      {card ? (
        <picture>
          <source media="(max-width: 44rem)" srcset={urlOf(card.svg)} {...sizeOf(card.svg)} />
          {image}
        </picture>
      ) : (
        image
      )}
    </figure>
  );
}

/** Pages of an answer, each with its card: of the same name, and `-card`. */
export function withCards<Named extends Drawn & { readonly name: string }>(
  drawings: readonly Named[],
): { readonly page: Named; readonly card: Named | undefined }[] {
  return drawings
    .filter(({ name }) => !name.endsWith("-card"))
    .map((page) => ({ page, card: drawings.find(({ name }) => name === `${page.name}-card`) }));
}

const urlOf = (svg: string): string => `data:image/svg+xml,${encodeURIComponent(svg)}`;

function sizeOf(svg: string) {
  const [, width, height] = /viewBox="[-\d.]+ [-\d.]+ ([\d.]+) ([\d.]+)"/.exec(svg) ?? [];
  return { width, height };
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
