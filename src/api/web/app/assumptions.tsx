/** Assumptions: every rate and share with its range and source, to be replaced by what was measured. */

import { Field } from "./field.js";
import { Fold } from "./figure.js";
import { valueAt } from "./json.js";
import type { Model, SheetCell } from "./model.js";
import { cellsOf, ownPlace } from "./sheet.js";
import type { FieldSpec } from "./specs.js";
import { capital, said, typed } from "./words.js";

/** The whole question. */
export function Assumptions({ m }: { readonly m: Model }) {
  const all = cellsOf(m.answer?.sheet).filter((cell) => isAssumption(m, cell));
  const blocks = byBlock(all);
  return (
    <>
      <p class="hint">Each is a careful guess until you measure it. Clear the box and the guess comes back.</p>
      {[...blocks].map(([block, cells]) => {
        const own = cells.filter((cell) => valueAt(m.request, ownPlace(m, cell)) !== undefined).length;
        return (
          <Fold
            m={m}
            name={`assumed/${block}`}
            title={`${capital(words(block))}: ${cells.length}${own > 0 ? `, ${own} of them yours` : ""}`}
          >
            {cells.map((cell) => (
              <One m={m} cell={cell} />
            ))}
          </Fold>
        );
      })}
    </>
  );
}

/** By the first part of their names, in the order laid. */
function byBlock(cells: readonly SheetCell[]): Map<string, SheetCell[]> {
  const blocks = new Map<string, SheetCell[]>();
  for (const cell of cells) {
    const block = cell.name.split(".")[0] ?? "";
    blocks.set(block, [...(blocks.get(block) ?? []), cell]);
  }
  return blocks;
}

const isAssumption = (m: Model, cell: SheetCell): boolean =>
  cell.kind === "assumption" || ownPlace(m, cell).startsWith("/assumptions/");

/** What the blocks of names are about. */
const BLOCKS: Readonly<Record<string, string>> = {
  ...{ pace: "your pace", mill: "the mill", saw: "chainsaw and log", cut: "mill cuts by hand", sharpen: "sharpening" },
  ...{ getOut: "getting logs out", logs: "shape of logs", allowance: "sawing oversize", fallDown: "rejected pieces" },
  ...{ rate: "rates of work", carry: "carrying", cart: "carrying by cart", winch: "winching", tractor: "by tractor" },
  ...{
    stack: "stacking",
    drying: "drying",
    moisture: "moisture",
    dress: "dressing",
    sand: "sanding",
    shop: "the shop",
  },
  ...{ joint: "cutting joints", fastener: "fasteners", finish: "finish", covering: "covering", deck: "roof deck" },
  ...{ footing: "footings", move: "moving to the site", raise: "raising", buy: "buying lumber", priceLevel: "prices" },
};

const words = (block: string): string => BLOCKS[block] ?? block.replaceAll(/([A-Z])/g, " $1").toLowerCase();

function One({ m, cell }: { m: Model; cell: SheetCell }) {
  const place = ownPlace(m, cell);
  const own = valueAt(m.request, place) !== undefined;
  const high = cell.high && said({ value: cell.high, unit: cell.unit });
  const range = cell.low && high ? `, from ${cell.low} to ${high}` : "";
  const spec: FieldSpec = {
    key: cell.name,
    kind: "text",
    label: capital(cell.label),
    hint: [`${own ? "Yours" : "Assumed"}: ${said(cell)}${range}`, capital(cell.source ?? ""), cell.measure]
      .filter(Boolean)
      .join(". "),
    example: "",
    required: false,
    suggested: [],
  };
  return (
    <div class={own ? "assumed own" : "assumed"}>
      <Field m={m} spec={{ ...spec, example: typed(cell) }} pointer={place} />
    </div>
  );
}
