/** Logs as they lie, a row each; rows can be copied, pasted from a spreadsheet, or read from what was pasted. */
import { Faults, Field, idOf } from "./field.js";
import { below, isFields, type Json, listAt } from "./json.js";
import { faultsAt, type Model } from "./model.js";
import { blank, copyOf } from "./new-row.js";
import { Question } from "./question.js";
import type { FieldSpec } from "./specs.js";

const COLUMNS = ["name", "species", "count", "length", "smallDiameter", "largeDiameter", "sweep"];

/** Columns of a pasted table when its first row has no heads. */
const PASTED = ["name", "species", "length", "smallDiameter", "largeDiameter", "sweep", "count"];

/** The whole question. */
export function LogTable({ m }: { readonly m: Model }) {
  const logs = listAt(m.request, "/logs");
  const columns = COLUMNS.flatMap((key) => m.spec.log.filter((spec) => spec.key === key));
  const more = m.spec.log.filter(({ key }) => !COLUMNS.includes(key));
  const add = () => m.acts.edit(`/logs/${logs.length}`, newLog(m.spec.log, logs));
  return (
    <>
      {logs.length === 0 && (
        <p class="note">No logs yet: everything will be bought. Length, wood and one thickness make a log.</p>
      )}
      <Faults faults={faultsAt(m, "/logs")} id="logs-fault" />
      <ol class="logrows">
        {logs.map((log, index) => (
          <LogRow m={m} log={log} index={index} columns={columns} more={more} logs={logs} />
        ))}
      </ol>
      <p class="tools">
        <button type="button" onClick={add}>
          Add a log
        </button>
      </p>
      <Paste m={m} logs={logs} />
    </>
  );
}

/** Most logs of a yard are of one wood: a new one takes the last one's. */
function newLog(spec: readonly FieldSpec[], logs: readonly Json[]): Json {
  const last = logs.at(-1);
  const name = (blank(spec, logs) as { name: string }).name.replace("row", "log");
  return { name, species: isFields(last) ? last.species : "eastern-white-pine" };
}

interface LogRowProps {
  readonly m: Model;
  readonly log: Json;
  readonly index: number;
  readonly columns: readonly FieldSpec[];
  readonly more: readonly FieldSpec[];
  readonly logs: readonly Json[];
}

function LogRow({ m, log, index, columns, more, logs }: LogRowProps) {
  const at = below("/logs", index);
  const name = isFields(log) && typeof log.name === "string" ? log.name : `Log ${index + 1}`;
  const panel = `more${at}`;
  const open = m.panels.has(panel);
  return (
    <li id={idOf(at)} tabindex={-1}>
      <fieldset class="grid bare" aria-label={name}>
        {columns.map((spec) => (
          <Field m={m} spec={{ ...spec, hint: "" }} pointer={below(at, spec.key)} />
        ))}
      </fieldset>
      <Faults faults={faultsAt(m, at)} id={`${idOf(at)}-fault`} />
      <div class="tools">
        <button
          type="button"
          aria-label={`Duplicate ${name}`}
          onClick={() => m.acts.edit("/logs/-", copyOf(log, logs))}
        >
          Duplicate
        </button>
        <button type="button" aria-label={`Remove ${name}`} onClick={() => m.acts.edit(at, undefined)}>
          Remove
        </button>
        <details
          open={open}
          onToggle={(event: Event) => m.acts.openPanel(panel, (event.target as HTMLDetailsElement).open)}
        >
          <summary aria-label={`Girth, rot and bad ends of ${name}`}>Girth, rot, bad ends</summary>
          {open && (
            <div class="grid">
              {more.map((spec) => (
                <Question m={m} spec={spec} pointer={below(at, spec.key)} />
              ))}
            </div>
          )}
        </details>
      </div>
    </li>
  );
}

function Paste({ m, logs }: { m: Model; logs: readonly Json[] }) {
  const panel = "paste";
  const take = () => {
    const box = document.getElementById("pasted-logs") as HTMLTextAreaElement;
    const rows = pastedLogs(box.value, m.spec.log);
    if (rows.length > 0) m.acts.edit("/logs", [...logs, ...rows]);
    m.acts.say(rows.length > 0 ? `${rows.length} logs added.` : "Nothing was pasted.");
    box.value = "";
  };
  return (
    <details
      class="sub"
      open={m.panels.has(panel)}
      onToggle={(event: Event) => m.acts.openPanel(panel, (event.target as HTMLDetailsElement).open)}
    >
      <summary>Paste rows from a spreadsheet</summary>
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
    </details>
  );
}

/**
 * Logs from tab- or semicolon-separated rows, or comma-separated ones. What can't be read stays as it is, and the
 * service says at its field what is wrong with it.
 */
export function pastedLogs(text: string, spec: readonly FieldSpec[]): Json[] {
  const lines = text.split(/\r?\n/).filter((line) => line.trim() !== "");
  const separator = lines.some((line) => line.includes("\t"))
    ? "\t"
    : lines.some((line) => line.includes(";"))
      ? ";"
      : ",";
  const rows = lines.map((line) =>
    line.split(separator).map((cell) =>
      cell
        .trim()
        .replace(/^"(.*)"$/, "$1")
        .replaceAll('""', '"'),
    ),
  );
  const known = new Map(spec.map(({ key, label }) => [key.toLowerCase(), { key, label }]));
  const heads = rows[0]?.map((cell) => known.get(cell.toLowerCase().replaceAll(/[^a-z]/g, ""))?.key);
  const hasHeads = heads?.includes("name") || heads?.includes("length");
  const keys = hasHeads ? (heads ?? []) : PASTED;
  return (hasHeads ? rows.slice(1) : rows).map((cells) =>
    Object.fromEntries(
      cells.flatMap((cell, index) => {
        const key = keys[index];
        return key === undefined || cell === "" ? [] : [[key, pastedCell(key, cell)]];
      }),
    ),
  );
}

function pastedCell(key: string, cell: string): Json {
  if (key === "count") return /^\d+$/.test(cell) ? Number(cell) : cell;
  if (key === "species") return cell.toLowerCase().replaceAll(/\s+/g, "-");
  if (key === "dirty") return /^(yes|true|1)$/i.test(cell);
  return cell;
}
