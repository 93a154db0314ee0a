/** Cash against hours: the plot, and the mixes between milling all and buying all, where they were searched. */
import { Fig, type Shown } from "./figure.js";
import type { Estimate } from "./model.js";
import { Plot } from "./plot.js";
import { Heads } from "./table-head.js";
import { capital, plain, said } from "./words.js";

/** The whole part. */
export function Frontier({ m, answer }: Shown) {
  const { frontier, breakEvenPrice, search } = answer.decision;
  const stale = frontier.length === 0;
  return (
    <>
      <Plot answer={answer} />
      {breakEvenPrice && (
        <p>
          Milling all and buying all would cost the same with bought wood at <Fig m={m} of={breakEvenPrice} />, your
          hours counted.
        </p>
      )}
      {search && (
        <p class="hint">
          {`${search.tried} of ${search.possible} mixes were worked out whole. `}
          {search.least && `Proven: no mix comes to less than ${said(search.least)}, your hours counted.`}
        </p>
      )}
      {m.live && stale && (
        <p class="tools">
          <button type="button" onClick={() => m.acts.edit("/options/frontier", true)}>
            {m.mixes.length > 0 ? "Search the mixes again" : "Search the mixes between"}
          </button>
          {m.mixes.length > 0 && <span>Those below are of before your change.</span>}
        </p>
      )}
      {m.mixes.length > 0 && <Mixes answer={answer} mixes={m.mixes} stale={stale} />}
    </>
  );
}

interface MixesProps extends Pick<Shown, "answer"> {
  readonly mixes: Estimate["decision"]["frontier"];
  /** Of an answer before this one. */
  readonly stale: boolean;
}

/** A row for each mix of the frontier. */
function Mixes({ answer, mixes, stale }: MixesProps) {
  const labels = new Map(answer.cutList.groups.map(({ name, label }) => [name, label]));
  return (
    <section class={stale ? "scroll old" : "scroll"} tabindex={0} aria-label="Mixes between">
      <table class="cards">
        <caption>{`The best mix for every worth of an hour${stale ? ", before your change" : ""}`}</caption>
        <Heads of={["Where an hour is worth", { number: "Cash" }, { number: "Hours" }, "Mills"]} />
        <tbody>
          {mixes.map(({ mills, hired, cash, hours, fromWage }) => (
            <tr>
              <th scope="row">{`${said(fromWage)} or more`}</th>
              <td class="number" data-head="Cash">
                {said(cash)}
              </td>
              <td class="number" data-head="Hours">
                {said(hours)}
              </td>
              <td data-head="Mills">
                {mills.length > 0
                  ? capital(mills.map((name) => (labels.get(name) ?? plain(name)).toLowerCase()).join(", "))
                  : "Nothing"}
                {hired && ", by a sawyer"}
              </td>
            </tr>
          ))}
        </tbody>
      </table>
    </section>
  );
}
