/** Cautions and notices of the answer. */
import { Panel, type Shown } from "./figure.js";
import { capital } from "./words.js";

/** Where someone can be hurt comes before what is merely worth knowing. */
export function Advice({ m, answer }: Shown) {
  const { cautions, notices } = answer;
  return (
    <>
      <Panel
        m={m}
        name="cautions"
        title="Cautions"
        gist={`${cautions.length} to read before you start`}
        class="careful"
      >
        <ul class="cautions">
          {cautions.map(({ text, source }) => (
            <li>
              {text} <small>({source})</small>
            </li>
          ))}
        </ul>
      </Panel>
      <Panel
        m={m}
        name="notices"
        title="Taken for granted"
        gist={`${notices.length} notes: swaps, shortages, defaults`}
      >
        <ul>
          {notices.map(({ text }) => (
            <li>{capital(text)}</li>
          ))}
        </ul>
      </Panel>
    </>
  );
}
