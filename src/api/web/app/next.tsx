/** What a verdict still needs, each with the button that leads there. Gone once there is enough. */
import { isFields, listAt, valueAt } from "./json.js";
import { addLog } from "./log-table.js";
import { hasPrices, type Model } from "./model.js";
import { countedLogs } from "./pending.js";
import { plain } from "./words.js";

/** The list; nothing where logs and prices are both there. */
export function Next({ m }: { readonly m: Model }) {
  const logs = countedLogs(m.request);
  const wrong = wrongLogs(m);
  const waiting = listAt(m.request, "/logs").length - logs;
  const priced = valueAt(m.request, "/catalog") !== undefined;
  const answered = m.status.is === "fresh" || (m.answer && hasPrices(m.answer));
  if (!m.live || (logs > 0 && priced && answered)) return null;
  return (
    <section class="next" aria-labelledby="next-head">
      <h2 id="next-head">Three things make a verdict</h2>
      <ol>
        <li>
          <p>
            <strong>What you want to build.</strong> {`Now ${structureWords(m)}.`}
          </p>
          <button type="button" onClick={() => m.acts.goTo("give-structure", "at-structure-kind")}>
            Change it
          </button>
        </li>
        <li>
          <p>
            <strong>Your logs.</strong>{" "}
            {logs > 0 ? rows(logs, wrong) : "None yet: length, wood and one thickness each."}
            {waiting > 0 && " One waits for its length and a thickness."}
          </p>
          {waiting === 0 && (
            <button type="button" onClick={() => addLog(m)}>
              Add a log
            </button>
          )}
        </li>
        <li>
          <p>
            <strong>Prices.</strong>{" "}
            {priced ? "They are there." : "None yet. Begin with invented ones and put in yours."}
          </p>
          {!priced && (
            <button type="button" onClick={() => usePrices(m)}>
              Use invented prices
            </button>
          )}
        </li>
      </ol>
    </section>
  );
}

function usePrices(m: Model): void {
  m.acts.edit("/catalog", INVENTED);
  m.acts.goTo("", "verdict-head");
}

/** Prices to begin with, marked as invented wherever they are shown. */
export const INVENTED = { demo: "orchard-yard" };

function rows(count: number, wrong: number): string {
  const good = count - wrong;
  const counted = good === 0 ? "" : good === 1 ? "One row is counted. " : `${good} rows are counted. `;
  return counted + (wrong === 0 ? "" : wrong === 1 ? "One needs a correction." : `${wrong} need a correction.`);
}

/** Rows that the service can't read. */
function wrongLogs(m: Model): number {
  const rows = m.problem?.faults.flatMap(({ pointer = "" }) => /^\/logs\/(\d+)/.exec(pointer)?.[1] ?? []);
  return new Set(rows).size;
}

function structureWords(m: Model): string {
  const structure = valueAt(m.request, "/structure");
  if (!isFields(structure)) return "nothing";
  const kind = structure.kind === "pieces" ? "a list of pieces" : `a ${plain(String(structure.kind))}`;
  return typeof structure.span === "string" ? `${kind}, ${structure.span} × ${structure.length}` : kind;
}
