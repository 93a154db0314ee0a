/** The sheet: every cell of the estimate by block, and the card of one cell. */

import { sheetCsv } from "./csv.js";
import { Faults } from "./field.js";
import { Fold, Panel } from "./figure.js";
import { below, valueAt } from "./json.js";
import type { Estimate, Fault, Model, SheetCell } from "./model.js";
import { faultsAt } from "./model.js";
import { capital, said, typed } from "./words.js";

/** Words for where a number comes from. */
const KINDS: Readonly<Record<SheetCell["kind"], string>> = {
  input: "you said so",
  assumption: "assumed",
  catalog: "a price",
  formula: "worked out",
  planned: "planned",
  override: "yours",
};

/** Every cell of an answer's sheet. */
export const cellsOf = (sheet: Model["sheet"]): SheetCell[] =>
  (sheet?.blocks ?? []).flatMap((block) => [...block.cells, ...block.lines.flatMap(({ cells }) => cells)]);

const OLD_SHEET = "Bringing the workings anew; these are the ones of before.";

/** The whole sheet. */
export function Sheet({ m }: { readonly m: Model }) {
  const { sheet } = m;
  return (
    <Panel m={m} name="sheet" title="Every number" gist="with its working; put your own in its place">
      <p class="hint">
        Every number of this page has a working: press one, here or above, to see how it came about. Programs get the
        same with <code>?include=sheet,workings</code>.
      </p>
      {m.live && !m.sheetIsNew && <p>{sheet ? OLD_SHEET : "Bringing the workings…"}</p>}
      {!m.live && (
        <p>
          <a href="/workings">All numbers of this demo, with their workings</a>
        </p>
      )}
      {sheet && (
        <div class={m.sheetIsNew ? undefined : "old"}>
          <Blocks m={m} />
        </div>
      )}
      {sheet && m.sheetIsNew && (
        <p class="tools">
          <button type="button" onClick={() => m.acts.download("sheet.csv", sheetCsv(sheet))}>
            Save as CSV
          </button>
          <button type="button" onClick={() => m.acts.print(true)}>
            Print everything, these too
          </button>
        </p>
      )}
    </Panel>
  );
}

/** Names of all folds of a sheet. */
export const foldsOf = (sheet: Estimate["sheet"]): string[] =>
  sheet.blocks.flatMap((block) => [
    `sheet/${block.name}`,
    ...block.lines.map((line) => `sheet/${block.name}/${line.name}`),
  ]);

/** Blocks unfold to lines, lines to cells with their workings. */
export function Blocks({ m }: { readonly m: Model }) {
  return (
    <>
      {m.sheet?.blocks.map((block) => (
        <Fold m={m} name={`sheet/${block.name}`} title={capital(block.title)}>
          <Cells m={m} cells={block.cells} />
          {block.lines.map((line) => (
            <Fold m={m} name={`sheet/${block.name}/${line.name}`} title={capital(line.title)}>
              <Cells m={m} cells={line.cells} />
            </Fold>
          ))}
        </Fold>
      ))}
    </>
  );
}

function Cells({ m, cells }: { m: Model; cells: readonly SheetCell[] }) {
  if (cells.length === 0) return null;
  return (
    <dl class="cells">
      {cells.map((cell) => (
        <>
          <dt>
            {capital(cell.label)} <small class={`kind ${cell.kind}`}>{KINDS[cell.kind]}</small>
          </dt>
          <dd>
            {m.live ? (
              <button type="button" class="fig" aria-haspopup="dialog" onClick={() => m.acts.showCell(cell.name)}>
                {said(cell)}
              </button>
            ) : (
              <span class="fig">{said(cell)}</span>
            )}
            {cell.working && <p class="working">{cell.working}</p>}
            {cell.low !== undefined && cell.high !== undefined && (
              <p class="working">{`${cell.low} to ${cell.high} ${cell.unit}`}</p>
            )}
          </dd>
        </>
      ))}
    </dl>
  );
}

/** Where the user's own value for a cell goes: assumptions have a place of their own. */
export const ownPlace = (m: Model, cell: SheetCell): string =>
  cell.kind === "assumption" || valueAt(m.request, below("/assumptions", cell.name)) !== undefined
    ? below("/assumptions", cell.name)
    : below("/overrides", cell.name);

/** What is wrong with the user's own value; where it leads to a fault elsewhere, that. */
function cardFaults(m: Model, place: string): readonly Fault[] {
  const own = faultsAt(m, place);
  return own.length > 0 || valueAt(m.request, place) === undefined ? own : (m.problem?.faults ?? []);
}

/** The card of one cell, over the page. */
export function CellCard({ m }: { readonly m: Model }) {
  if (m.cell === undefined) return null;
  const named = ({ name }: SheetCell) => name === m.cell;
  const cell = cellsOf(m.sheet).find(named) ?? cellsOf(m.compared?.sheet).find(named);
  return (
    <dialog class="card" id="card" aria-labelledby="card-title">
      <h2 id="card-title">{cell ? capital(cell.label) : "A number"}</h2>
      {cell ? (
        <CardBody m={m} cell={cell} />
      ) : (
        <p>{m.sheet ? "This answer does not show it any more." : "Bringing its working…"}</p>
      )}
      <p class="tools">
        {m.cellsBefore.length > 0 && (
          <button type="button" onClick={() => m.acts.showCell(m.cellsBefore.at(-1))}>
            Back
          </button>
        )}
        <button type="button" id="close-card" onClick={() => m.acts.showCell(undefined)}>
          Close
        </button>
      </p>
    </dialog>
  );
}

/** A word that may name a cell. */
const NAME = /[A-Za-z][\w-]*(?:\.[\w-]+)*/g;

/** The cells that a working names, in words, each with its own card. */
function MadeOf({ m, cell }: { m: Model; cell: SheetCell }) {
  const named = new Set(cell.working?.match(NAME));
  named.delete(cell.name);
  const parts = [...cellsOf(m.sheet), ...cellsOf(m.compared?.sheet)].filter(({ name }) => named.delete(name));
  if (parts.length === 0) return null;
  return (
    <dl class="sums">
      {parts.map((part) => (
        <>
          <dt>{capital(part.label)}</dt>
          <dd>
            <button type="button" class="fig" onClick={() => m.acts.showCell(part.name)}>
              {said(part)}
            </button>
          </dd>
        </>
      ))}
    </dl>
  );
}

/** Where the number of an open card stands. */
function cardWords({ status, sheetIsNew }: Model): string {
  if (status.is === "waiting" || status.is === "working") return "Working it out…";
  if (status.is === "offline") return "The service can't be reached; your value is kept.";
  return sheetIsNew || status.is !== "fresh" ? "" : "Bringing its working…";
}

function CardBody({ m, cell }: { m: Model; cell: SheetCell }) {
  const place = ownPlace(m, cell);
  const own = valueAt(m.request, place);
  const faults = cardFaults(m, place);
  const submit = (event: Event) => {
    event.preventDefault();
    const text = (document.getElementById("own-value") as HTMLInputElement).value.trim();
    m.acts.edit(place, text === "" ? undefined : text);
  };
  const takeBack = () => {
    m.acts.edit(place, undefined);
    // The button goes with what it takes back.
    document.getElementById("own-value")?.focus();
  };
  return (
    <>
      <p class={m.sheetIsNew ? "big" : "big old"}>{said(cell)}</p>
      <p>
        {capital(KINDS[cell.kind])}
        {cell.structural ? "; the estimate branches on it" : ""}. Its name: <code>{cell.name}</code>
      </p>
      {cell.working && <p class="working">{cell.working}</p>}
      <MadeOf m={m} cell={cell} />
      {cell.low !== undefined && cell.high !== undefined && (
        <p>{`Hardly below ${cell.low}, hardly above ${said({ value: cell.high, unit: cell.unit })}.`}</p>
      )}
      {cell.source && <p>Source: {cell.source}</p>}
      {cell.covers && <p>How good: {cell.covers}</p>}
      {cell.kind === "planned" && <p>A plan made it. Change the plan's inputs to change it.</p>}
      {cell.name.startsWith("coverings.") && <p>Build with this covering to put your own value in its place.</p>}
      {cell.kind !== "planned" && !cell.name.startsWith("coverings.") && (
        <form onSubmit={submit} class={faults.length > 0 ? "field wrong" : "field"}>
          <label for="own-value">Your own value, with its unit</label>
          <input
            id="own-value"
            type="text"
            autocomplete="off"
            value={typeof own === "string" ? own : typed(cell)}
            aria-describedby={faults.length > 0 ? "own-fault" : undefined}
            aria-invalid={faults.length > 0 ? "true" : undefined}
          />
          <Faults faults={faults} id="own-fault" />
          <p role="status">{cardWords(m)}</p>
          <p class="tools">
            <button type="submit" class="main">
              Use my value
            </button>
            {own !== undefined && (
              <button type="button" onClick={takeBack}>
                Take mine back
              </button>
            )}
          </p>
        </form>
      )}
    </>
  );
}
