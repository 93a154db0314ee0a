/** Logs as they lie: a table with a row each; what few people measure unfolds below the row. */
import { LOG_FIRST, LOG_HEADS } from "./above.js";
import { Faults, Field, idOf } from "./field.js";
import { Fold } from "./figure.js";
import { below, isFields, type Json, listAt, valueAt } from "./json.js";
import { faultsAt, type Model } from "./model.js";
import { copyOf, freeName } from "./new-row.js";
import { PASTED, pastedLogs, pastedWords } from "./pasted-logs.js";
import { countedLogs } from "./pending.js";
import { Question } from "./question.js";
import { type Head, Heads } from "./table-head.js";
import { capital, plain } from "./words.js";

/** How each is written: in inches or in centimetres. */
function headsOf(m: Model): Head[] {
  const metric = valueAt(m.request, "/options/measure") === "metric";
  const notes: Readonly<Record<string, string>> = {
    length: metric ? "such as 3.8 m" : "such as 12 ft 6 in",
    smallDiameter: `such as ${metric ? "35 cm" : "14 in"}, over the bark`,
  };
  return LOG_FIRST.map((key) => {
    const [text = key, note] = [LOG_HEADS[key], notes[key]];
    return note === undefined ? text : { text, note };
  });
}

/** The whole question. */
export function LogTable({ m }: { readonly m: Model }) {
  const logs = listAt(m.request, "/logs");
  const counted = countedLogs(m.request);
  return (
    <>
      {logs.length === 0 && (
        <p class="note">No logs yet: everything will be bought. Length, wood and one thickness make a log.</p>
      )}
      <Faults faults={faultsAt(m, "/logs")} id="logs-fault" />
      {logs.length > 0 && (
        <table class="logtable" aria-label="Logs on the ground">
          <Heads of={headsOf(m)} />
          {logs.map((log, index) => (
            <LogRow m={m} log={log} index={index} logs={logs} waits={index >= counted} />
          ))}
        </table>
      )}
      <p class="tools">
        <button type="button" onClick={() => addLog(m)}>
          Add a log
        </button>
      </p>
      <Paste m={m} logs={logs} />
    </>
  );
}

/** Adds a row and leads to its length. */
export function addLog(m: Model): void {
  const logs = listAt(m.request, "/logs");
  m.acts.edit(`/logs/${logs.length}`, newLog(logs));
  m.acts.say("A row is added. It counts once it has a length and a thickness.");
  m.acts.goTo("give-logs", idOf(`/logs/${logs.length}/length`));
}

/** Most logs of a yard are of one wood: a new one takes the last one's. */
function newLog(logs: readonly Json[]): Json {
  const last = logs.at(-1);
  return { name: freeName("log", logs), species: isFields(last) ? last.species : "eastern-white-pine" };
}

interface LogRowProps {
  readonly m: Model;
  readonly log: Json;
  readonly index: number;
  readonly logs: readonly Json[];
  /** Not counted before it is measured. */
  readonly waits: boolean;
}

function LogRow({ m, log, index, logs, waits }: LogRowProps) {
  const at = below("/logs", index);
  const name = isFields(log) && typeof log.name === "string" ? log.name : `Log ${index + 1}`;
  const columns = LOG_FIRST.flatMap((key) => m.spec.log.filter((spec) => spec.key === key));
  const more = m.spec.log.filter(({ key }) => !(key in LOG_HEADS));
  return (
    <tbody id={idOf(at)} tabindex={-1}>
      <tr>
        {columns.map((spec) => (
          <td>
            <Field
              m={m}
              spec={{ ...spec, example: "" }}
              pointer={below(at, spec.key)}
              label={`${LOG_HEADS[spec.key]} of ${name}`}
              tight
              faultsBelow
            />
          </td>
        ))}
      </tr>
      <tr>
        <td colspan={columns.length}>
          {columns.map(({ key }) => (
            <Faults faults={faultsAt(m, below(at, key))} id={`${idOf(below(at, key))}-fault`} />
          ))}
          <Faults faults={faultsAt(m, at)} id={`${idOf(at)}-fault`} />
          {waits && <p class="hint">{`Not counted yet: give its length and one thickness. ${unitless(log)}`}</p>}
          <div class="rowtools">
            <Fold
              m={m}
              name={`more${at}`}
              title={gistOf(log)}
              spoken={`Wood, shape and flaws of ${name}: ${gistOf(log)}`}
            >
              <div class="grid">
                {more.map((spec) => (
                  <Question m={m} spec={spec} pointer={below(at, spec.key)} />
                ))}
              </div>
            </Fold>
            <button
              type="button"
              class="link"
              aria-label={`Duplicate ${name}`}
              onClick={() => m.acts.edit("/logs/-", copyOf(log, logs))}
            >
              Duplicate
            </button>
            <button type="button" class="link" aria-label={`Remove ${name}`} onClick={() => m.acts.edit(at, undefined)}>
              Remove
            </button>
          </div>
        </td>
      </tr>
    </tbody>
  );
}

/** A row that waits is not sent, so that what its bare numbers lack is said here. */
function unitless(log: Json): string {
  const bare = isFields(log)
    ? ["length", "smallDiameter"].flatMap((key) => (/^\s*\d+([.,]\d+)?\s*$/.test(String(log[key])) ? [log[key]] : []))
    : [];
  return bare.length === 0 ? "" : `“${bare.join("”, “")}” still needs its unit, such as ft, in, m or cm.`;
}

/** What else is known of a log, in a few words. */
function gistOf(log: Json): string {
  if (!isFields(log)) return "";
  const words = [
    typeof log.species === "string" ? plain(log.species) : "which wood?",
    log.smallGirth === undefined ? undefined : `${log.smallGirth} round`,
    log.largeDiameter === undefined ? undefined : `${log.largeDiameter} at the butt`,
    log.largeGirth === undefined ? undefined : `${log.largeGirth} round at the butt`,
    log.sweep === undefined
      ? undefined
      : ["straight", "some", "bad"].includes(String(log.sweep))
        ? SWEEP[String(log.sweep)]
        : `${log.sweep} of sweep`,
    log.bark === "inside" ? "measured inside the bark" : undefined,
    log.rot === undefined ? undefined : "rot",
    log.badEnds === undefined ? undefined : "bad ends",
    log.dirty === true ? "dirty" : undefined,
  ];
  return capital(words.filter((word) => word !== undefined).join(", "));
}

const SWEEP: Readonly<Record<string, string>> = { straight: "straight", some: "some sweep", bad: "bad sweep" };

function Paste({ m, logs }: { m: Model; logs: readonly Json[] }) {
  const take = () => {
    const box = document.getElementById("pasted-logs") as HTMLTextAreaElement;
    const pasted = pastedLogs(box.value, m.spec.log);
    if (pasted.logs.length > 0) m.acts.edit("/logs", [...logs, ...pasted.logs]);
    m.acts.say(pastedWords(pasted));
    box.value = "";
  };
  return (
    <Fold m={m} name="paste" title="Paste rows from a spreadsheet">
      <div class="field">
        <label for="pasted-logs">Rows</label>
        <textarea
          id="pasted-logs"
          rows={5}
          spellcheck={false}
          aria-describedby="pasted-hint"
          placeholder={"pine-9\teastern-white-pine\t12 ft 6 in\t14 in"}
        />
        <p class="hint" id="pasted-hint">
          {`In this order, or with a first row of column names: ${PASTED.join(", ")}.`}
        </p>
        <p class="tools">
          <button type="button" onClick={take}>
            Add these logs
          </button>
        </p>
      </div>
    </Fold>
  );
}
