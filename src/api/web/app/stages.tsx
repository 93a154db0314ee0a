/** Where money and hours go: cost and hours by stage, cash by department, way beside way. */
import { Fig, Panel, type Shown } from "./figure.js";
import { type Estimate, hasPrices } from "./model.js";
import { Heads } from "./table-head.js";
import { type Amount, capital, said, wayOf } from "./words.js";

type Figure = Amount & { readonly cell: string };

/** What one way has in a row. */
interface Entry {
  readonly hours?: Figure;
  readonly cash?: Figure;
}

/** A row of such a table: an entry for each way that has one. */
interface Row {
  readonly label: string;
  readonly own: ReadonlyMap<string, Entry>;
  /** Lines that have no price, at most. */
  readonly unpriced: number;
}

interface Way {
  readonly route: string;
  readonly words: string;
  readonly sum: Entry;
}

interface TableProps extends Pick<Shown, "m"> {
  readonly caption: string;
  readonly head: string;
  readonly ways: readonly Way[];
  readonly rows: readonly Row[];
}

/** Both tables. */
export function Stages({ m, answer }: Shown) {
  const { effort, decision } = answer;
  const priced = hasPrices(answer);
  const ways = decision.routes.map((one) => ({ route: one.route as string, words: wayOf(one), one }));
  const cashOf = (one: (typeof ways)[number]["one"]): Entry => (priced ? { cash: one.cash } : {});
  return (
    <Panel
      m={m}
      name="hours"
      title="Where money and hours go"
      gist={`${said(effort.commonHours)} are the same either way`}
    >
      <Ways
        m={m}
        caption="Cost and hours by stage"
        head="Stage"
        ways={ways.map(({ one, ...way }) => ({ ...way, sum: { ...cashOf(one), hours: one.hours } }))}
        rows={stageRows(answer)}
      />
      <p class="hint">
        h: person-hours. A stage costs what it uses up, before tax: bought lumber where it is received, wear and fuel
        where they are spent.
      </p>
      <div class="off-wall">
        <Ways
          m={m}
          caption="Cash by department"
          head="Department"
          ways={ways.map(({ one, ...way }) => ({ ...way, sum: cashOf(one) }))}
          rows={cashRows(answer)}
        />
      </div>
    </Panel>
  );
}

function Ways({ m, caption, head, ways, rows }: TableProps) {
  const bar = rows.some(({ own }) => [...own.values()].some(({ hours }) => hours)) ? "hours" : "cash";
  const most = mostOf(rows, bar);
  return (
    <section class="scroll" tabindex={0} aria-label={caption}>
      <table class={`stages of-${ways.length}`}>
        <caption>{caption}</caption>
        <Heads of={[head, ...ways.map(({ words }) => ({ number: words }))]} />
        <tbody>
          {rows.map(({ label, own, unpriced }) => (
            <tr>
              <th scope="row">
                {label}
                {unpriced > 0 && (
                  <small class="fault"> {`${unpriced} ${unpriced === 1 ? "line has" : "lines have"} no price`}</small>
                )}
              </th>
              {ways.map(({ route }) => (
                <td class="number">
                  <Figures m={m} of={own.get(route)} none="–" />
                  <Bar share={Number(own.get(route)?.[bar]?.value ?? 0) / most} kind={route} />
                </td>
              ))}
            </tr>
          ))}
        </tbody>
        <tfoot>
          <tr>
            <th scope="row">In all</th>
            {ways.map(({ sum }) => (
              <td class="number">
                <Figures m={m} of={sum} none="not known" />
              </td>
            ))}
          </tr>
        </tfoot>
      </table>
    </section>
  );
}

/** What the longest bar stands for. Places only. */
function mostOf(rows: readonly Row[], bar: keyof Entry): number {
  const values = rows.flatMap(({ own }) => [...own.values()].map((entry) => Number(entry[bar]?.value ?? 0)));
  return Math.max(...values, 1);
}

interface FiguresProps extends Pick<Shown, "m"> {
  readonly of: Entry | undefined;
  /** Said where there is neither. */
  readonly none: string;
}

/** Hours and cash, side by side where there is room. */
function Figures({ m, of: { hours, cash } = {}, none }: FiguresProps) {
  if (!hours && !cash) return none;
  return (
    <span class="pair">
      <span>{hours && <Fig m={m} of={hours} text={`${hours.value}\u00a0h`} />}</span>
      <span>{cash && <Fig m={m} of={cash} />}</span>
    </span>
  );
}

/** Rows by name. */
class Rows {
  private readonly rows = new Map<string, { label: string; own: Map<string, Entry>; unpriced: number }>();

  put(key: string, label: string, route: string, entry: { [Part in keyof Entry]: Figure | null }, unpriced = 0): void {
    const row = this.rows.get(key) ?? { label: capital(label), own: new Map<string, Entry>(), unpriced: 0 };
    const known = Object.fromEntries(Object.entries(entry).filter(([, figure]) => figure)) as Entry;
    row.own.set(route, { ...row.own.get(route), ...known });
    row.unpriced = Math.max(row.unpriced, unpriced);
    this.rows.set(key, row);
  }

  /** Those of an order first, the others as they were put; a stage that takes nothing on any way is left away. */
  all(order: readonly string[] = []): Row[] {
    const rank = (key: string): number => (order.includes(key) ? order.indexOf(key) : order.length);
    const rows = [...this.rows].toSorted(([a], [b]) => rank(a) - rank(b)).map(([, row]) => row);
    return rows.filter(
      ({ own, unpriced }) =>
        unpriced > 0 ||
        [...own.values()].some(({ hours, cash }) => Number(hours?.value ?? 0) !== 0 || cash !== undefined),
    );
  }
}

/** Stages in the order of the work; then what belongs to no one stage, and taxes. */
function stageRows({ effort, purchasing }: Estimate): Row[] {
  const rows = new Rows();
  for (const { route, stages } of effort.routes)
    for (const { stage, label, hours } of stages) rows.put(stage, label, route, { hours });
  for (const { route } of effort.routes)
    for (const { stage, label, hours } of effort.common) rows.put(stage, label, route, { hours });
  for (const { route, stages } of purchasing.routes)
    for (const { stage, amount, unpriced } of stages) rows.put(stage, stage, route, { cash: amount }, unpriced);
  for (const { route } of effort.routes)
    for (const line of effort.own) rows.put(line.cell, line.label, route, { hours: line });
  for (const { route, ofNoStage } of purchasing.routes)
    for (const { department, amount, unpriced } of ofNoStage)
      rows.put(`rest ${department}`, `${department} for several stages`, route, { cash: amount }, unpriced);
  putOnTop(rows, purchasing);
  return rows.all(effort.order);
}

/** Departments, then what comes on top of all lines. */
function cashRows({ purchasing }: Estimate): Row[] {
  const rows = new Rows();
  for (const { route, spent } of purchasing.routes)
    for (const { department, amount, unpriced } of spent)
      rows.put(department, department, route, { cash: amount }, unpriced);
  putOnTop(rows, purchasing);
  return rows.all();
}

/** Taxes, what the logs would have fetched, and money lines of one's own. */
function putOnTop(rows: Rows, { routes, own }: Estimate["purchasing"]): void {
  for (const { route, taxes, logValue } of routes) {
    for (const tax of taxes) rows.put(`tax ${tax.label}`, tax.label, route, { cash: tax });
    if (logValue) rows.put("logs", "what the logs would have fetched", route, { cash: logValue });
    for (const line of own) rows.put(line.cell, line.label, route, { cash: line });
  }
}

function Bar({ share, kind }: { readonly share: number; readonly kind: string }) {
  if (share <= 0) return null;
  return (
    <svg class="bar" viewBox="0 0 100 4" preserveAspectRatio="none" aria-hidden="true">
      <rect class={kind} width={Math.max(1, Math.round(share * 100))} height="4" />
    </svg>
  );
}
