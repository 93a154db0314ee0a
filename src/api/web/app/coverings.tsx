/** Roof coverings of the answer. */
import { Fig, Panel, type Shown } from "./figure.js";
import { capital, said } from "./words.js";

/** Each covering as a full system, also where the slope forbids it. */
export function Coverings({ m, answer }: Shown) {
  const [first] = answer.coverings;
  if (!first) return null;
  return (
    <Panel m={m} name="covering" title="Roof covering" gist={`${said(first.area)}, ${said(first.weight)}`}>
      <div class="routes">
        {answer.coverings.map((one) => (
          <article class="route">
            <h3>{capital(one.name)}</h3>
            <p class={one.slope.allowed ? undefined : "fault"}>
              {one.slope.allowed ? "" : "Not allowed. "}
              {one.slope.reason} <small>({one.slope.reference})</small>
            </p>
            <dl>
              <dt>Roof, edge to edge</dt>
              <dd>
                <Fig m={m} of={one.area} />
              </dd>
              {one.faces.map((face) => (
                <Slope key={face.name} m={m} one={one} face={face} />
              ))}
              {one.parts.map((part) => (
                <div key={part.name}>
                  <dt>{part.label}</dt>
                  <dd>
                    <Fig m={m} of={part.quantity} />
                  </dd>
                </div>
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
          </article>
        ))}
      </div>
    </Panel>
  );
}

interface SlopeProps {
  readonly m: Shown["m"];
  readonly one: Shown["answer"]["coverings"][number];
  readonly face: Shown["answer"]["coverings"][number]["faces"][number];
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
