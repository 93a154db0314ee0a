/** When the work is done on the best way, and what is too heavy for one person. */
import { Panel, type Shown } from "./figure.js";
import type { Estimate } from "./model.js";
import { Heads } from "./table-head.js";
import { capital, plain, said } from "./words.js";

type Work = NonNullable<Estimate["effort"]["routes"][number]["work"]>;

/** Calendar and heavy loads of the verdict's way. */
export function WorkPanels({ m, answer }: Shown) {
  const { effort, decision } = answer;
  const route = effort.routes.find((one) => one.route === decision.best);
  if (!route?.work) return null;
  const { calendar, loads } = route.work;
  const labels = new Map([...effort.common, ...route.stages].map(({ stage, label }) => [stage, label]));
  const heavy = loads.filter(({ aid }) => aid !== null);
  return (
    <>
      <Panel
        m={m}
        name="calendar"
        title="When"
        gist={`${said(calendar.totalDays)} from the first log to the broom, ${said(calendar.crewDays)} of them at work`}
      >
        <p>
          {`At ${said(effort.hoursPerWeek)} with a crew of ${effort.crew.value}, stages overlap where they may and hands are free. One person alone works ${said(calendar.aloneDays)}.`}
        </p>
        <Timeline calendar={calendar} labels={labels} />
      </Panel>
      {heavy.length > 0 && (
        <Panel m={m} name="loads" title="Heavy lifts" gist={`${heavy.length} kinds are more than one person's load`}>
          <Heavy loads={heavy} />
        </Panel>
      )}
    </>
  );
}

interface TimelineProps {
  readonly calendar: Work["calendar"];
  readonly labels: ReadonlyMap<string, string>;
}

const PARTS = { green: ", green and bought", dried: ", dried" } as const;

/** A row for each stage, and one for the stack, in the order of their days. */
function Timeline({ calendar, labels }: TimelineProps) {
  const { stages, drying, totalDays } = calendar;
  const rows = stages.map(({ stage, part, startDay, endDay, people }) => ({
    ...{
      label: `${labels.get(stage) ?? plain(stage)}${part ? PARTS[part] : ""}`,
      from: startDay,
      to: endDay,
      people: people.value,
      kind: "mixed",
    },
  }));
  const dries = { label: "Drying in the stack, as it mostly goes", people: "–", kind: "milled" };
  const all = drying ? [...rows, { ...dries, from: drying.startDay, to: drying.likelyDay }] : rows;
  const sorted = all.toSorted((a, b) => Number(a.from.value) - Number(b.from.value));
  return (
    <section class="scroll" tabindex={0} aria-label="Calendar">
      <table class="calendar">
        <Heads of={["Stage", { number: "People" }, { number: "From day" }, { number: "to day" }]} />
        <tbody>
          {sorted.map(({ label, people, from, to, kind }) => (
            <tr>
              <th scope="row">
                {capital(label)}
                <Span from={Number(from.value)} to={Number(to.value)} of={Number(totalDays.value)} kind={kind} />
              </th>
              <td class="number">{people}</td>
              <td class="number">{from.value}</td>
              <td class="number">{to.value}</td>
            </tr>
          ))}
        </tbody>
      </table>
      {drying && (
        <p class="hint">
          {`Lumber may be dry from day ${drying.soonestDay.value} on if it is piled in good weather, or only on day ${drying.latestDay.value} if it is piled in autumn.`}
        </p>
      )}
    </section>
  );
}

interface SpanProps {
  readonly from: number;
  readonly to: number;
  readonly of: number;
  readonly kind: string;
}

/** Days of the whole as a bar. Places only; the days stand beside it. */
function Span({ from, to, of, kind }: SpanProps) {
  const place = (day: number) => Math.round((1000 * day) / (of || 1));
  return (
    <svg class="bar" viewBox="0 0 1000 4" preserveAspectRatio="none" aria-hidden="true">
      <rect class={kind} x={place(from)} width={Math.max(8, place(to) - place(from))} height="4" />
    </svg>
  );
}

/** What no crew lifts by hand needs no count of people. */
const liftOf = (people: number | null, aid: string | null): string =>
  people === null ? (aid ?? "an aid") : `${people} people`;

function Heavy({ loads }: { readonly loads: Work["loads"] }) {
  return (
    <section class="scroll" tabindex={0} aria-label="Heavy lifts">
      <table class="cards">
        <Heads of={["What", { number: "How many" }, { number: "Heaviest, green" }, { number: "Dry" }, "Lift with"]} />
        <tbody>
          {loads.map(({ kind, name, count, green, dry, people, aid }) => (
            <tr>
              <th scope="row">
                {kind === "piece" ? capital(plain(name)) : `${kind === "slab" ? "Slabs of" : "Log"} ${name}`}
              </th>
              <td class="number" data-head="How many">
                {kind === "piece" ? "one of the group" : count}
              </td>
              <td class="number" data-head="Heaviest, green">
                {said(green)}
              </td>
              <td class="number" data-head="Dry">
                {said(dry)}
              </td>
              <td data-head="Lift with">{liftOf(people, aid)}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </section>
  );
}
