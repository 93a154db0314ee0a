/** When the work is done on the best way, by which machine, and what is too heavy for one person. */
import { Panel, type Shown } from "./figure.js";
import type { Estimate } from "./model.js";
import { Heads } from "./table-head.js";
import { type Amount, capital, dateOf, plain, said } from "./words.js";

type Work = NonNullable<Estimate["effort"]["routes"][number]["work"]>;

/** Calendar and heavy loads of the verdict's way. */
export function WorkPanels({ m, answer }: Shown) {
  const { effort, decision } = answer;
  const route = effort.routes.find((one) => one.route === decision.best);
  if (!route?.work) return null;
  const { calendar, dressing, loads } = route.work;
  const groups = new Map(answer.cutList.groups.map(({ name, label }) => [name, label]));
  const labels = new Map([...effort.common, ...route.stages].map(({ stage, label }) => [stage, label]));
  const heavy = loads.filter(({ aid }) => aid !== null);
  return (
    <>
      <Panel
        m={m}
        name="calendar"
        title="When"
        gist={`${calendar.finishDate ? `done by ${dateOf(calendar.finishDate)}, ` : ""}${said(calendar.totalDays)} from the first log to the broom, ${said(calendar.crewDays)} of them at work`}
      >
        <p>
          {`At ${said(effort.hoursPerWeek)} with a crew of ${effort.crew.value}, stages overlap where they may and hands are free. One person alone works ${said(calendar.aloneDays)}.`}
        </p>
        <Timeline calendar={calendar} labels={labels} groups={groups} />
      </Panel>
      {dressing.length > 0 && (
        <Panel m={m} name="dressing" title="Dressing, machine by machine" gist="which one takes what, and why">
          <Dressing of={dressing} labels={groups} />
        </Panel>
      )}
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
  /** Labels of piece groups. */
  readonly groups: ReadonlyMap<string, string>;
}

const PARTS = { green: ", green and bought", dried: ", dried" } as const;

interface Bar {
  readonly label: string;
  readonly people: string;
  readonly from: Amount;
  readonly to: Amount;
  readonly dates: { readonly start: string; readonly end: string } | null;
  readonly kind: string;
  readonly hint: string;
}

/** A row for each stage, and one for the stack, in the order of their days. */
function Timeline({ calendar, labels, groups }: TimelineProps) {
  const { drying, totalDays, finishDate, waitsFor } = calendar;
  const sorted = barsOf(calendar, labels).toSorted((a, b) => Number(a.from.value) - Number(b.from.value));
  const dated = finishDate !== null;
  const ends = dated ? ["From", "To"] : ["From day", "To day"];
  return (
    <section class="scroll" tabindex={0} aria-label="Calendar">
      <table class="stages of-3 calendar" aria-label="When each stage begins and ends">
        <Heads of={["Stage", { number: "People" }, ...ends.map((number) => ({ number }))]} />
        <tbody>
          {sorted.map(({ label, people, from, to, dates, kind, hint }) => (
            <tr>
              <th scope="row">
                {capital(label)}
                <Span from={Number(from.value)} to={Number(to.value)} of={Number(totalDays.value)} kind={kind} />
                {hint && <small>{hint}</small>}
              </th>
              <td class="number">{people}</td>
              <Day day={from.value} date={dates?.start} />
              <Day day={to.value} date={dates?.end} />
            </tr>
          ))}
        </tbody>
      </table>
      {drying && (
        <p class="hint">
          {`Lumber may be dry from ${dayOf(drying.soonestDay, drying.dates?.soonest)} on if it is piled in good weather, or only on ${dayOf(drying.latestDay, drying.dates?.latest)} if it is piled in autumn.`}
        </p>
      )}
      {waitsFor && (
        <p class="hint">
          {`Only ${waitsFor.groups.map((name) => groups.get(name) ?? plain(name)).join(", ")} wait for that. Bought, or used green (seasoning in the group's rules), all would be done by ${dayOf(waitsFor.totalDays, waitsFor.finishDate ?? undefined)}.`}
        </p>
      )}
      {!dated && (
        <p class="hint">Days count from the start of the work. Give that a date under “Mill, tools, people”.</p>
      )}
    </section>
  );
}

/** The date, where the start has one, and the day. */
function Day({ day, date }: { readonly day: string; readonly date: string | undefined }) {
  return (
    <td class="number">
      {date ? (
        <>
          {dateOf(date)} <small>{`day ${day}`}</small>
        </>
      ) : (
        day
      )}
    </td>
  );
}

const dayOf = (day: Amount, date: string | undefined): string =>
  date ? `${dateOf(date)} (day ${day.value})` : `day ${day.value}`;

function barsOf({ stages, drying }: Work["calendar"], labels: ReadonlyMap<string, string>): Bar[] {
  const named = (stage: string) => labels.get(stage) ?? plain(stage);
  const bars = stages.map((one): Bar => {
    const { people, startDay: from, endDay: to, dates, setDay } = one;
    const sets = setDay && setDay.value !== to.value ? `dry or set on day ${setDay.value}` : "";
    const hint = [besideOf(one, stages, named), sets].filter(Boolean).join("; ");
    const label = `${named(one.stage)}${one.part ? PARTS[one.part] : ""}`;
    return { label, people: people.value, from, to, dates, kind: "mixed", hint };
  });
  if (!drying) return bars;
  const { startDay: from, likelyDay: to, dates } = drying;
  const span = dates && { start: dates.start, end: dates.likely };
  return [
    ...bars,
    { label: "Drying in the stack, as it mostly goes", people: "–", from, to, dates: span, kind: "milled", hint: "" },
  ];
}

type CalendarStage = Work["calendar"]["stages"][number];

/** Names told before the rest is counted. */
const TOLD = 2;

/** Which stages it overlaps; those of sawing, which share their days, go by turns. */
function besideOf(one: CalendarStage, all: readonly CalendarStage[], named: (stage: string) => string): string {
  const day = ({ value }: Amount) => Number(value);
  const others = all.filter((other) => other !== one);
  const same = others.filter(
    ({ startDay, endDay }) => startDay.value === one.startDay.value && endDay.value === one.endDay.value,
  );
  const over = others.filter(
    (other) => !same.includes(other) && day(other.startDay) < day(one.endDay) && day(one.startDay) < day(other.endDay),
  );
  if (same.length > 1 && day(one.startDay) < day(one.endDay)) return "by turns, bolt by bolt";
  const names = over.slice(0, TOLD).map(({ stage }) => named(stage));
  const more = over.length > TOLD ? ` and ${over.length - TOLD} more` : "";
  return names.length > 0 ? `beside: ${names.join("; ")}${more}` : "";
}

interface DressingProps {
  readonly of: Work["dressing"];
  /** Of piece groups. */
  readonly labels: ReadonlyMap<string, string>;
}

/** Said by what dresses it already. */
const ROUGH = "they stay rough";
const BY = { machine: "By machine", hand: "By hand", nobody: "Stays rough" } as const;
const ORDER = { "slab-first": "planed as a slab, then ripped", "piece-by-piece": "piece by piece" } as const;
const RIP = { "one-face": "ripped in one cut", "both-faces": "ripped from both faces" } as const;

/** Group by group: what dresses it, how, and why. */
function Dressing({ of, labels }: DressingProps) {
  return (
    <section class="scroll" tabindex={0} aria-label="Dressing">
      <table class="cards" aria-label="What dresses which pieces">
        <Heads of={["Pieces", "Dressed", "Why"]} />
        <tbody>
          {of.map(({ group, by, order, rip, because }) => (
            <tr>
              <th scope="row">{labels.get(group) ?? plain(group)}</th>
              <td data-head="Dressed">{[BY[by], order && ORDER[order], rip && RIP[rip]].filter(Boolean).join(", ")}</td>
              <td data-head="Why">{capital(because.filter((why) => why !== ROUGH).join("; "))}</td>
            </tr>
          ))}
        </tbody>
      </table>
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
      <table class="cards" aria-label="What is too heavy for one">
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
