/** What the user gives, in folds. */
import { Assumptions } from "./assumptions.js";
import { idOf } from "./field.js";
import { Panel } from "./figure.js";
import { isFields, listAt, valueAt } from "./json.js";
import { LogTable } from "./log-table.js";
import type { Model } from "./model.js";
import { Part } from "./part.js";
import { Prices } from "./prices.js";
import { Question } from "./question.js";
import { StructureForm } from "./structure.js";
import { Timed } from "./timed.js";

/** All of it. */
export function Inputs({ m }: Whole) {
  const logs = listAt(m.request, "/logs");
  return (
    <>
      <Title m={m} />
      <Panel m={m} name="give-structure" title="The structure" gist={gistOf(m)}>
        <StructureForm m={m} />
      </Panel>
      <Panel
        m={m}
        name="give-logs"
        title="Logs on the ground"
        gist={logs.length === 0 ? "none yet" : logs.length === 1 ? "1 row" : `${logs.length} rows`}
      >
        <LogTable m={m} />
      </Panel>
      <Panel m={m} name="give-catalog" title="Prices" gist={m.answer?.about.catalog ?? "none yet"}>
        <Prices m={m} />
      </Panel>
      <Shop m={m} />
      <Options m={m} />
      <Lines m={m} />
      <Panel m={m} name="give-calibration" title="Jobs you timed" gist={timedGist(m)}>
        <Timed m={m} />
      </Panel>
      <Panel m={m} name="give-assumptions" title="Assumptions" gist="your pace, the saw's, the weather's">
        <Assumptions m={m} />
      </Panel>
      <Own m={m} />
    </>
  );
}

interface Whole {
  readonly m: Model;
}

function Title({ m }: Whole) {
  return (
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
  );
}

function Shop({ m }: Whole) {
  return (
    <Panel m={m} name="give-shop" title="Mill, tools, people">
      <div class="grid">
        {m.spec.shop.map((spec) =>
          spec.kind === "group" && spec.key === "sawyer" ? null : (
            <Question m={m} spec={spec} pointer={`/shop/${spec.key}`} />
          ),
        )}
        {m.spec.labor.map((spec) => (
          <Question m={m} spec={spec} pointer={`/labor/${spec.key}`} />
        ))}
      </div>
      {m.spec.shop.map((spec) =>
        spec.kind === "group" && spec.key === "sawyer" ? (
          <Part m={m} spec={{ ...spec, label: "A hired sawyer" }} pointer="/shop/sawyer" begin={SAWYER} />
        ) : null,
      )}
    </Panel>
  );
}

function Options({ m }: Whole) {
  return (
    <Panel m={m} name="give-options" title="Rules and measures" gist="building office, inch or metric, finish">
      <div class="grid">
        {m.spec.site.map((spec) => (
          <Question m={m} spec={spec} pointer={`/site/${spec.key}`} />
        ))}
        {m.spec.options
          // Coverings stand side by side with the one that is built, mixes are searched beside their plot.
          .filter(({ key }) => key !== "coverings" && key !== "frontier")
          .map((spec) => (
            <Question m={m} spec={spec} pointer={`/options/${spec.key}`} />
          ))}
      </div>
    </Panel>
  );
}

function Lines({ m }: Whole) {
  const { length } = listAt(m.request, "/lines");
  const head = { key: "lines", kind: "rows", label: "Lines", example: "", required: false } as const;
  const hint = "A crane day, a permit: money or hours on top of every way.";
  return (
    <Panel m={m} name="give-lines" title="Costs of your own" gist={length === 0 ? "a crane, a permit" : `${length}`}>
      <Question m={m} pointer="/lines" spec={{ ...head, hint, fields: m.spec.line }} />
    </Panel>
  );
}

function timedGist(m: Model): string {
  const { length } = listAt(m.request, "/calibration");
  return length === 0
    ? "your own pace in the place of a guess"
    : length === 1
      ? "1 kind of work"
      : `${length} kinds of work`;
}

/** A sawyer has to be paid somehow. */
const SAWYER = { charge: "board-foot" };

function gistOf(m: Model): string {
  const structure = valueAt(m.request, "/structure");
  if (!isFields(structure)) return "";
  return typeof structure.span === "string" ? `${structure.span} × ${structure.length}` : "";
}

/** What the user put in the place of the estimate's own numbers; nothing where that is nothing. */
function Own({ m }: Whole) {
  const rows = ["/overrides", "/assumptions"].flatMap((place) =>
    Object.entries((valueAt(m.request, place) as object | undefined) ?? {}).map(([name, value]) => ({
      name,
      at: `${place}/${name}`,
      words: typeof value === "string" ? value : JSON.stringify(value),
    })),
  );
  if (rows.length === 0) return null;
  return (
    <Panel m={m} name="give-own" title="Numbers of your own" gist={`${rows.length}`}>
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
    </Panel>
  );
}
