/** Head of the page: what can be opened, saved and taken back. */
import type { Model } from "./model.js";

/** The bar. */
export function Bar({ m }: { readonly m: Model }) {
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
        <select id="demo" disabled={!m.live}>
          <option value="">New…</option>
          <option value="-blank">a blank project</option>
          {m.demos.map(({ name, title }) => (
            <option value={name}>{`the demo “${title}”`}</option>
          ))}
        </select>
        <button type="button" id="begin" disabled={!m.live} onClick={() => begin(m)}>
          Begin
        </button>
        <button type="button" disabled={!m.canUndo} onClick={m.acts.undo}>
          Undo
        </button>
        <button type="button" disabled={!m.canRedo} onClick={m.acts.redo}>
          Redo
        </button>
        <label class={m.live ? "button" : "button off"} for="open-file">
          Open file
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
          Save file
        </button>
        <button type="button" disabled={!m.live} onClick={m.acts.copyLink}>
          Copy link
        </button>
        <button type="button" disabled={!m.live} onClick={() => m.acts.print(false)}>
          Print
        </button>
      </div>
    </header>
  );
}

/** Acts when it is pressed: an arrow key in the list must not throw a project away (WCAG 2.2, 3.2.2). */
function begin(m: Model): void {
  const select = document.getElementById("demo") as HTMLSelectElement;
  const { value } = select;
  select.value = "";
  if (value === "") m.acts.say("Choose in the list what to begin from.");
  if (value === "-blank") m.acts.open(BLANK);
  else if (value !== "") m.acts.openDemo(value);
}

/** Little is enough: a size, and the rest has defaults. */
const BLANK = { structure: { kind: "gable", span: "12 ft", length: "16 ft" }, logs: [] };
