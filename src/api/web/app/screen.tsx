/** The whole page below its head: the same on the server, where it is read, and in the browser, where it lives. */
import { Assumptions } from "./assumptions.js";
import { idOf, Question } from "./field.js";
import { Panel } from "./figure.js";
import { isFields, listAt, valueAt } from "./json.js";
import { Advice, Coverings, Geometry, Pieces, Shopping } from "./lists.js";
import { LogTable } from "./log-table.js";
import { Logs } from "./logs.js";
import type { Model } from "./model.js";
import { Prices } from "./prices.js";
import { CellCard, Sheet } from "./sheet.js";
import { StructureForm } from "./structure.js";
import { Routes, Stages, Verdict } from "./verdict.js";

/** Everything. */
export function Screen({ m }: { readonly m: Model }) {
  const { answer } = m;
  return (
    <>
      <Bar m={m} />
      <State m={m} />
      <main id="main">
        <div class={m.problem || m.status.is === "working" || m.status.is === "waiting" ? "first stale" : "first"}>
          {answer && <Verdict m={m} answer={answer} />}
        </div>
        <section class="give" aria-labelledby="give-head">
          <h2 id="give-head" class="side">
            What you have
          </h2>
          <fieldset class="bare" disabled={!m.live}>
            <legend class="spoken">Your project</legend>
            <Inputs m={m} />
          </fieldset>
        </section>
        <div class="get">
          {answer && (
            <>
              <Routes m={m} answer={answer} />
              <Stages m={m} answer={answer} />
              <Pieces m={m} answer={answer} />
              <Logs m={m} answer={answer} />
              <Shopping m={m} answer={answer} />
              <Coverings m={m} answer={answer} />
              <Geometry m={m} answer={answer} />
              <Advice m={m} answer={answer} />
              <Sheet m={m} />
            </>
          )}
        </div>
      </main>
      <CellCard m={m} />
    </>
  );
}

function Bar({ m }: { readonly m: Model }) {
  return (
    <header class="bar-top">
      <p class="name">
        <svg viewBox="-10 -10 20 20" aria-hidden="true">
          <circle class="bark" r="9.5" />
          <circle class="wood" r="8" />
          <circle class="growth" r="5.4" />
          <circle class="growth" r="2.8" />
        </svg>
        <span>Boleworth</span>
      </p>
      <h1>Fallen logs, a shelter to build: mill the wood or buy it?</h1>
      <div class="tools">
        <label class="spoken" for="demo">
          Begin from
        </label>
        <select id="demo" disabled={!m.live} onInput={(event: Event) => begin(m, event.target as HTMLSelectElement)}>
          <option value="">Begin from…</option>
          <option value="-blank">a blank project</option>
          {m.demos.map(({ name, title }) => (
            <option value={name}>{`the demo “${title}”`}</option>
          ))}
        </select>
        <label class={m.live ? "button" : "button off"} for="open-file">
          Open a file
        </label>
        <input
          id="open-file"
          class="spoken"
          type="file"
          accept=".json,application/json"
          disabled={!m.live}
          onChange={(event: Event) => {
            const input = event.target as HTMLInputElement;
            const file = input.files?.[0];
            if (file) m.acts.openFile(file);
            input.value = "";
          }}
        />
        <button type="button" disabled={!m.live} onClick={m.acts.saveFile}>
          Save a file
        </button>
        <button type="button" disabled={!m.live} onClick={m.acts.copyLink}>
          Copy a link
        </button>
        <button type="button" disabled={!m.canUndo} onClick={m.acts.undo}>
          Undo
        </button>
        <button type="button" disabled={!m.canRedo} onClick={m.acts.redo}>
          Redo
        </button>
      </div>
    </header>
  );
}

function begin(m: Model, select: HTMLSelectElement): void {
  const { value } = select;
  select.value = "";
  if (value === "-blank") m.acts.open(BLANK);
  else if (value !== "") m.acts.openDemo(value);
}

/** Little is enough: a size, and the rest has defaults. */
const BLANK = { structure: { kind: "gable", span: "12 ft", length: "16 ft" }, logs: [] };

function State({ m }: { readonly m: Model }) {
  return (
    <div class={`state is-${m.status.is}`}>
      <p role="status" aria-live="polite">
        {stateWords(m)} {m.said}
      </p>
      {(m.status.is === "working" || m.status.is === "waiting") && (
        <>
          <progress
            aria-label="Estimating"
            max={m.status.is === "working" && m.status.done > 0 ? m.status.of : undefined}
            value={m.status.is === "working" && m.status.done > 0 ? m.status.done : undefined}
          />
          <button type="button" onClick={m.acts.cancel}>
            Cancel
          </button>
        </>
      )}
      {["offline", "busy", "stopped", "broken"].includes(m.status.is) && (
        <button type="button" onClick={m.acts.retry}>
          Try again
        </button>
      )}
      {m.problem && m.problem.faults.length > 0 && <Problem m={m} />}
      {!m.live && (
        <noscript>
          <p>This is a demo, worked out in full. To change it, switch on scripts; they come from this address alone.</p>
        </noscript>
      )}
    </div>
  );
}

function stateWords({ status, problem, answer }: Model): string {
  switch (status.is) {
    case "fresh":
      return answer ? "Up to date." : "";
    case "waiting":
      return "Your change is noted.";
    case "working":
      return `Working it out: ${status.stage}.`;
    case "stopped":
      return "Stopped. What is shown is the answer of before.";
    case "offline":
      return "The service can't be reached: no network? What you typed is kept here.";
    case "busy":
      return `The service is busy. It is asked again in ${status.seconds} seconds.`;
    case "refused":
      return `${problem?.faults.length === 1 ? "One thing needs" : `${problem?.faults.length ?? "Some"} things need`} a correction; below is the answer of before.`;
    case "broken":
      return `That went wrong: ${status.detail}`;
  }
}

/** Everything that is wrong, each leading to its field. */
function Problem({ m }: { readonly m: Model }) {
  return (
    <div class="faults" role="alert">
      <ul>
        {m.problem?.faults.map(({ pointer = "", wrong, cure }) => (
          <li>
            <button type="button" class="link" onClick={() => goTo(m, pointer)}>
              {wrong}
            </button>{" "}
            {cure}
          </li>
        ))}
      </ul>
    </div>
  );
}

/** The field of a fault, or the nearest thing above it that can be seen. */
function goTo(m: Model, pointer: string): void {
  for (let at = pointer; at !== ""; at = at.slice(0, at.lastIndexOf("/"))) {
    const found = document.getElementById(idOf(at));
    if (!found) continue;
    found.focus();
    found.scrollIntoView({ block: "center" });
    return;
  }
  const name = pointer.split("/").at(-1) ?? "";
  if (/^\/(overrides|assumptions)\//.test(pointer)) m.acts.showCell(name);
}

function Inputs({ m }: { readonly m: Model }) {
  const logs = listAt(m.request, "/logs");
  const count = (key: string) => Object.keys((valueAt(m.request, key) as object | undefined) ?? {}).length;
  const changed = count("/overrides") + count("/assumptions");
  return (
    <>
      <div class="field">
        <label for="at-title">What you call it</label>
        <input
          id="at-title"
          type="text"
          maxlength={80}
          value={String(valueAt(m.request, "/title") ?? "")}
          onInput={(event: Event) => m.acts.edit("/title", (event.target as HTMLInputElement).value || undefined)}
        />
      </div>
      <Panel m={m} name="give-structure" title="The structure" gist={gistOf(m)}>
        <StructureForm m={m} />
      </Panel>
      <Panel
        m={m}
        name="give-logs"
        title="Logs on the ground"
        gist={logs.length === 0 ? "none yet" : `${logs.length} rows`}
      >
        <LogTable m={m} />
      </Panel>
      <Panel m={m} name="give-catalog" title="Prices" gist={m.answer?.about.catalog ?? "none yet"}>
        <Prices m={m} />
      </Panel>
      <Panel m={m} name="give-shop" title="Mill, tools, people">
        <div class="grid">
          {m.spec.shop.map((spec) => (
            <Question m={m} spec={spec} pointer={`/shop/${spec.key}`} />
          ))}
          {m.spec.labor.map((spec) => (
            <Question m={m} spec={spec} pointer={`/labor/${spec.key}`} />
          ))}
        </div>
      </Panel>
      <Panel m={m} name="give-options" title="Rules and measures" gist="building office, inch or metric, finish">
        <div class="grid">
          {m.spec.site.map((spec) => (
            <Question m={m} spec={spec} pointer={`/site/${spec.key}`} />
          ))}
          {m.spec.options.map((spec) => (
            <Question m={m} spec={spec} pointer={`/options/${spec.key}`} />
          ))}
        </div>
      </Panel>
      <Panel m={m} name="give-lines" title="Costs of your own" gist={`${listAt(m.request, "/lines").length}`}>
        <Question
          m={m}
          pointer="/lines"
          spec={{
            key: "lines",
            kind: "rows",
            label: "Lines",
            hint: "A crane day, a permit: money or hours on top of every way.",
            example: "",
            required: false,
            fields: m.spec.line,
          }}
        />
      </Panel>
      <Panel m={m} name="give-assumptions" title="Assumptions" gist="your pace, the saw's, the weather's">
        <Assumptions m={m} />
      </Panel>
      {changed > 0 && (
        <Panel m={m} name="give-own" title="Numbers of your own" gist={`${changed}`}>
          <Own m={m} />
        </Panel>
      )}
    </>
  );
}

function gistOf(m: Model): string {
  const structure = valueAt(m.request, "/structure");
  if (!isFields(structure)) return "";
  return typeof structure.span === "string" ? `${structure.span} × ${structure.length}` : "";
}

/** What the user put in the place of the estimate's own numbers. */
function Own({ m }: { readonly m: Model }) {
  const rows = ["/overrides", "/assumptions"].flatMap((place) =>
    Object.entries((valueAt(m.request, place) as object | undefined) ?? {}).map(([name, value]) => ({
      name,
      at: `${place}/${name}`,
      words: typeof value === "string" ? value : JSON.stringify(value),
    })),
  );
  return (
    <ul class="owns">
      {rows.map(({ name, at, words }) => (
        <li id={idOf(at)} tabindex={-1}>
          <code>{name}</code> {words}{" "}
          <button type="button" aria-label={`Take back ${name}`} onClick={() => m.acts.edit(at, undefined)}>
            Take back
          </button>
        </li>
      ))}
    </ul>
  );
}
