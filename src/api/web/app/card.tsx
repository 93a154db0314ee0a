/** The card of one cell: where its number comes from, what it is made of, and a value of one's own in its place. */
import { titledCells } from "./cell-titles.js";
import { Faults } from "./field.js";
import { valueAt } from "./json.js";
import { type Fault, faultsAt, type Model, type SheetCell } from "./model.js";
import { KINDS, ownPlace } from "./sheet.js";
import { capital, said, typed } from "./words.js";

/** With an own value another way may be the best, and what only the one before had is not laid any more. */
const gone = (fault: Fault): Fault => ({
  ...fault,
  wrong: "With your value another way is the best, and it does not have this number.",
  cure: "Take yours back, or change what it is made of.",
});

/** What is wrong with the user's own value; where it leads to a fault elsewhere, that. */
function cardFaults(m: Model, place: string): readonly Fault[] {
  const own = faultsAt(m, place).map((fault) => (fault.code === "unknown-name" ? gone(fault) : fault));
  return own.length > 0 || valueAt(m.request, place) === undefined ? own : (m.problem?.faults ?? []);
}

/** The card of one cell, over the page. */
export function CellCard({ m }: { readonly m: Model }) {
  if (m.cell === undefined) return null;
  const [found] = titledCells(sheetsOf(m), new Set([m.cell]));
  const cell = found?.cell;
  return (
    <dialog class="card" id="card" aria-labelledby="card-title">
      <h2 id="card-title">{found?.title ?? "A number"}</h2>
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

const sheetsOf = (m: Model) => [m.sheet, m.compared?.sheet];

/** A word that may name a cell. */
const NAME = /[A-Za-z][\w-]*(?:\.[\w-]+)*/g;

/** The cells that a working names, in words, each with its own card. */
function MadeOf({ m, cell }: { m: Model; cell: SheetCell }) {
  const named = new Set(cell.working?.match(NAME));
  named.delete(cell.name);
  const parts = titledCells(sheetsOf(m), named);
  if (parts.length === 0) return null;
  return (
    <dl class="sums">
      {parts.map(({ cell: part, title }) => (
        <>
          <dt>{title}</dt>
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

/** A working that is longer than this is folded: what it is made of stands below it in words. In characters. */
const LONG_WORKING = 240;

function Working({ text }: { readonly text: string }) {
  if (text.length <= LONG_WORKING) return <p class="working">{text}</p>;
  return (
    <details>
      <summary>The formula</summary>
      <p class="working">{text}</p>
    </details>
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
      {cell.working && <Working text={cell.working} />}
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
