/** One roof under every covering, a row each, best first. */
import { Fig } from "./figure.js";
import type { Compared, Model } from "./model.js";
import { Heads } from "./table-head.js";
import { capital, plain } from "./words.js";

type Row = Compared["coverings"][number];

/** The table, once it has come. */
export function CoveringTable({ m }: { readonly m: Model }) {
  const { compared } = m;
  if (!compared) return <p>Bringing the other coverings…</p>;
  return (
    <section class="scroll" tabindex={0} aria-label="Coverings side by side">
      <table class="cards">
        <caption>The same roof under each, deck included; best first</caption>
        <Heads of={["Covering", ...HEADS.map((number) => ({ number }))]} />
        <tbody>
          {compared.coverings.map((one) => (
            <CoveringRow m={m} one={one} />
          ))}
        </tbody>
      </table>
      <p class="hint">
        Best is what the code allows at this slope, then what has a price for every part, then what costs least for each
        year it lasts. Upkeep and hours are not in the cost of a year.
      </p>
    </section>
  );
}

const HEADS = ["Costs now", "For each year", "Lasts", "Work", "Weighs"];

function CoveringRow({ m, one }: { readonly m: Model; readonly one: Row }) {
  const { compared } = one;
  if (!compared) return null;
  const { cash, yearly, hours, weight, deck, complete } = compared;
  const figures = [cash, yearly, one.life, hours, weight];
  return (
    <tr>
      <th scope="row">
        {capital(one.name)}
        {one.built && <span class="mark">on your roof</span>}
        <p class={one.slope.allowed ? "hint" : "fault"}>
          {one.slope.allowed ? "" : "Not allowed. "}
          {one.slope.reason} <small>({one.slope.reference})</small>
        </p>
        <p class="hint">
          {deck === "purlins" ? "On the purlins." : `On a deck of ${plain(deck)}.`}
          {!complete && <span class="fault"> Some parts have no price.</span>}
        </p>
        {!one.built && (
          <button
            type="button"
            aria-label={`Build with ${one.name}`}
            onClick={() => m.acts.edit("/structure/covering", one.kind)}
          >
            Build with it
          </button>
        )}
      </th>
      {figures.map((figure, index) => (
        <td class="number" data-head={HEADS[index]}>
          {figure ? <Fig m={m} of={figure} /> : <span class="fault">no price</span>}
        </td>
      ))}
    </tr>
  );
}
