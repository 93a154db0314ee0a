/** Cash against hours: the plot, and the mixes between milling all and buying all, where they were searched. */
import { Fig, type Shown } from "./figure.js";
import type { Estimate } from "./model.js";
import { Plot } from "./plot.js";
import { Heads } from "./table-head.js";
import { capital, moneyOf, plain, said } from "./words.js";

/** The whole part. */
export function Frontier({ m, answer }: Shown) {
  const { frontier, breakEvenPrice, breakEvenMeasure, priceNow, search } = answer.decision;
  return (
    <>
      <Plot answer={answer} />
      {breakEvenPrice && (
        <p>
          Milling all and buying all would cost the same with bought wood at <Fig m={m} of={breakEvenPrice} />, by{" "}
          {breakEvenMeasure === "both" ? "the nominal or actual sections" : `the ${breakEvenMeasure} sections`} that it
          is sold by, before tax and your hours counted
          {priceNow && (
            <>
              ; now it costs <Fig m={m} of={priceNow} />
            </>
          )}
          .
        </p>
      )}
      {search && (
        <p class="hint">
          {`${search.tried} of ${search.possible} mixes were worked out whole. `}
          {search.least && `Proven: no mix comes to less than ${said(search.least)}, your hours counted. `}
          {search.frontierGap &&
            `Where an hour is worth between ${moneyOf(search.frontierGap.from)} and ${moneyOf(search.frontierGap.to)}, no mix totals more than ${percentUp(search.frontierGap.gap)} less than the best of these.`}
        </p>
      )}
      {m.live && frontier.length === 0 && answer.decision.routes.length > 1 && (
        <p class="tools offer">
          <button type="button" onClick={() => m.acts.edit("/options/frontier", true)}>
            {m.searched ? "Search the mixes between again" : "Search the mixes between"}
          </button>
          <span class="hint">
            {m.searched ? "Those below are the ones of before your change." : "Takes some seconds."}
          </span>
        </p>
      )}
      {frontier.length > 0 ? <Mixes answer={answer} /> : m.searched && <Mixes answer={m.searched} old />}
    </>
  );
}

/** A share of four places in per cent, up to a tenth of one, on the digits themselves: no float comes between. */
function percentUp(share: string): string {
  const tenths = (BigInt(share.replace(".", "")) + 9n) / 10n;
  return `${tenths / 10n}.${tenths % 10n} %`;
}

interface MixesProps {
  readonly answer: Estimate;
  /** Whether they are those of an answer before. */
  readonly old?: boolean;
}

/** A row for each mix of the frontier. */
function Mixes({ answer, old = false }: MixesProps) {
  const labels = new Map(answer.cutList.groups.map(({ name, label }) => [name, label]));
  return (
    <section class={old ? "scroll old" : "scroll"} tabindex={0} aria-label="Mixes between">
      <table class="cards">
        <caption>
          The best mix for every worth of an hour{old && <strong class="before"> before your change</strong>}
        </caption>
        <Heads
          of={[
            "Where an hour is worth",
            { number: "Cash" },
            { number: "Hours" },
            "Mills",
            "Pieces, against the row above",
          ]}
        />
        <tbody>
          {answer.decision.frontier.map(({ mills, hired, cash, hours, fromWage, switches }) => (
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
              <td data-head="Against the row above">
                {switches
                  .map(
                    ({ group, milled, before }) =>
                      `${labels.get(group) ?? plain(group)}: ${milled} milled, before ${before}`,
                  )
                  .join("; ") || "–"}
              </td>
            </tr>
          ))}
        </tbody>
      </table>
    </section>
  );
}
