/** The sheet: every cell of the estimate by block. */

import { sheetCsv } from "./csv.js";
import { Fold, Panel } from "./figure.js";
import { below, valueAt } from "./json.js";
import type { Estimate, Model, SheetCell } from "./model.js";
import { capital, said } from "./words.js";

/** Words for where a number comes from. */
export const KINDS: Readonly<Record<SheetCell["kind"], string>> = {
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
