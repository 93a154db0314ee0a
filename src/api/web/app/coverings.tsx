/** Roof coverings of the answer: the one that is built, with its slopes drawn, and all others beside it. */
import { CoveringTable } from "./covering-table.js";
import { Fig, Fold, Panel, type Shown } from "./figure.js";
import { COMPARED } from "./folds.js";
import { Picture, withCards } from "./picture.js";
import { capital, said } from "./words.js";

type Covering = Shown["answer"]["coverings"][number];

/** The covering as a full system, also where the slope forbids it. */
export function Coverings({ m, answer }: Shown) {
  const built = answer.coverings.find((one) => one.built) ?? answer.coverings[0];
  if (!built) return null;
  return (
    <Panel m={m} name="covering" title="Roof covering" gist={`${built.name}, ${said(built.area)}`}>
      <Built m={m} one={built} />
      {m.live && (
        <Fold m={m} name={COMPARED} title="Set all coverings side by side">
          <CoveringTable m={m} />
        </Fold>
      )}
    </Panel>
  );
}

function Built({ m, one }: { readonly m: Shown["m"]; readonly one: Covering }) {
  return (
    <article class="route">
      <h3>{capital(one.name)}</h3>
      <p class={one.slope.allowed ? undefined : "fault"}>
        {one.slope.allowed ? "" : "Not allowed. "}
        {one.slope.reason} <small>({one.slope.reference})</small>
      </p>
      <dl class="sums">
        <dt>Roof, edge to edge</dt>
        <dd>
          <Fig m={m} of={one.area} />
        </dd>
        {one.faces.map((face) => (
          <Slope m={m} one={one} face={face} />
        ))}
        {one.parts.map((part) => (
          <>
            <dt>{part.label}</dt>
            <dd>
              <Fig m={m} of={part.quantity} />
            </dd>
          </>
        ))}
        <dt>Trim to fit</dt>
        <dd>
          <Fig m={m} of={one.trimLength} text={one.trimLength.marked} />
        </dd>
        <dt>Weight</dt>
        <dd>
          <Fig m={m} of={one.weight} />
        </dd>
        <dt>Lasts</dt>
        <dd>
          <Fig m={m} of={one.life} />
        </dd>
      </dl>
      {withCards(one.drawings ?? []).map(({ page, card }) => (
        <Picture of={page} card={card} />
      ))}
    </article>
  );
}

interface SlopeProps {
  readonly m: Shown["m"];
  readonly one: Covering;
  readonly face: Covering["faces"][number];
}

/** How one slope is covered: panels side by side, or courses up to the ridge. */
function Slope({ m, one, face }: SlopeProps) {
  const where = one.faces.length > 1 ? `, ${face.name} slope` : "";
  return (
    <>
      <dt>
        {face.across ? "Side by side" : "Courses"}
        {where}
      </dt>
      <dd>
        <Fig m={m} of={face.across ?? face.up} /> of <Fig m={m} of={face.module} text={face.module.marked} />
        {face.pieceLength && (
          <>
            , <Fig m={m} of={face.pieceLength} text={face.pieceLength.marked} /> long
          </>
        )}
      </dd>
    </>
  );
}
