/** Jobs that the user timed: the rate comes from them, with its spread, in the place of the assumed one. */
import { Faults, Field, idOf } from "./field.js";
import { below, isFields, type Json, listAt } from "./json.js";
import { faultsAt, type Model, type SheetCell } from "./model.js";
import { jobsCounted } from "./pending.js";
import { cellsOf } from "./sheet.js";
import type { FieldSpec } from "./specs.js";
import { capital, said, short } from "./words.js";

/** The whole question. */
export function Timed({ m }: { readonly m: Model }) {
  const rates = ratesOf(m);
  const timed = listAt(m.request, "/calibration");
  const taken = new Set(timed.map((one) => (isFields(one) ? one.rate : undefined)));
  // Acts when it is pressed: with an arrow key one looks through a list (WCAG 2.2, 3.2.2).
  const begin = () => {
    const select = document.getElementById("time-rate") as HTMLSelectElement;
    const rate = select.value;
    select.value = "";
    if (rate === "") return m.acts.say("Choose in the list what you timed.");
    m.acts.edit(below("/calibration", timed.length), { rate, jobs: [{}] });
    m.acts.goTo("", idOf(below("/calibration", timed.length, "jobs", 0, "amount")));
  };
  return (
    <>
      <p class="hint">
        Time a job once, and the estimate works at your pace: how much was done, and how long it took. Several jobs of
        one kind also give the spread.
      </p>
      <Faults faults={faultsAt(m, "/calibration")} id="at-calibration-fault" />
      {timed.map((one, index) => (
        <Rate m={m} one={one} at={below("/calibration", index)} cell={rates.find(({ name }) => name === rateOf(one))} />
      ))}
      <div class="field">
        <label for="time-rate">What did you time?</label>
        <select id="time-rate">
          <option value="">choose a kind of work</option>
          {rates
            .filter(({ name }) => !taken.has(name))
            .map(({ name, label }) => (
              <option value={name}>{capital(label)}</option>
            ))}
        </select>
      </div>
      <p class="tools">
        <button type="button" onClick={begin}>
          Put in a job of it
        </button>
      </p>
    </>
  );
}

const rateOf = (one: Json): string => (isFields(one) ? String(one.rate) : "");

/** A unit of time, or of people at work. */
const TIME = /^(person-)?(min|h|s)$/;

/** What has time in its unit can be timed. */
const ratesOf = (m: Model): SheetCell[] =>
  cellsOf(m.answer?.sheet).filter(
    ({ kind, name, unit }) =>
      (kind === "assumption" || listAt(m.request, "/calibration").some((one) => rateOf(one) === name)) &&
      unit.split("/").some((part) => TIME.test(part)),
  );

/** Measure of the amount: of `ft2/min` and of `person-min/ft2` it is `ft2`; empty where things are counted. */
export function amountUnit(unit: string): string {
  const [above = "", under = ""] = unit.split("/");
  return TIME.test(above) ? under : above;
}

interface RateProps {
  readonly m: Model;
  readonly one: Json;
  /** Of the calibration. */
  readonly at: string;
  readonly cell: SheetCell | undefined;
}

/** One kind of work with its jobs. */
function Rate({ m, one, at, cell }: RateProps) {
  const jobs = listAt(one, "/jobs");
  const title = cell ? capital(cell.label) : rateOf(one);
  const counted = jobsCounted(one);
  const unit = cell ? amountUnit(cell.unit) : "";
  return (
    <fieldset class="rows" id={idOf(at)} tabindex={-1}>
      <legend>{title}</legend>
      {cell && (
        <p class="hint">
          {counted > 0 ? "By your jobs: " : "Assumed: "}
          {said(short(cell))}
          {cell.low !== undefined &&
            cell.high !== undefined &&
            `, from ${short({ ...cell, value: cell.low }).value} to ${short({ ...cell, value: cell.high }).value}`}
          . {cell.measure}
        </p>
      )}
      <Faults faults={[...faultsAt(m, at), ...faultsAt(m, below(at, "rate"))]} id={`${idOf(at)}-fault`} />
      <Faults faults={faultsAt(m, below(at, "jobs"))} id={`${idOf(at)}-jobs-fault`} />
      {jobs.map((_, index) => (
        <Job
          m={m}
          at={below(at, "jobs", index)}
          unit={unit}
          title={`job ${index + 1} of ${title.toLowerCase()}`}
          alone={jobs.length === 1}
        />
      ))}
      {counted < jobs.length && <p class="hint">Not counted yet: give how much was done, and how long it took.</p>}
      <p class="tools">
        <button type="button" onClick={() => m.acts.edit(below(at, "jobs", jobs.length), {})}>
          Add another job
        </button>
        <button type="button" aria-label={`Remove ${title}`} onClick={() => m.acts.edit(at, undefined)}>
          Remove
        </button>
      </p>
    </fieldset>
  );
}

interface JobProps extends Pick<RateProps, "m" | "at"> {
  readonly unit: string;
  readonly title: string;
  /** The last one is removed with its rate. */
  readonly alone: boolean;
}

function Job({ m, at, unit, title, alone }: JobProps) {
  const fields = m.spec.timedJob.map((spec) => worded(spec, unit));
  return (
    <div class="job">
      {fields.map((spec) => (
        <Field m={m} spec={spec} pointer={below(at, spec.key)} spoken={`${spec.label}, ${title}`} />
      ))}
      {!alone && (
        <button type="button" class="link" aria-label={`Remove ${title}`} onClick={() => m.acts.edit(at, undefined)}>
          Remove
        </button>
      )}
    </div>
  );
}

/** What to type depends on the rate. */
function worded(spec: FieldSpec, unit: string): FieldSpec {
  if (spec.key !== "amount") return { ...spec, hint: "" };
  return { ...spec, label: unit === "" ? "How many" : "How much", example: unit === "" ? "6" : `40 ${unit}`, hint: "" };
}
