/** Where money and hours go: cash by department, hours by stage, way beside way. */
import { Fig, Panel, type Shown } from "./figure.js";
import { type Estimate, hasPrices } from "./model.js";
import { Heads } from "./table-head.js";
import { type Amount, capital, said, wayOf } from "./words.js";

type Figure = Amount & { readonly cell: string };

/** A row of such a table: one figure for each way that has it. */
interface Row {
  readonly label: string;
  readonly own: ReadonlyMap<string, Figure>;
  /** Lines that have no price, where it is money. */
  readonly unpriced?: number;
}

interface TableProps extends Pick<Shown, "m"> {
  readonly caption: string;
  readonly head: string;
  readonly ways: readonly { readonly route: string; readonly words: string; readonly sum: Figure | undefined }[];
  readonly rows: readonly Row[];
  readonly foot: string;
  readonly text: (figure: Figure) => string;
}

/** Both tables. */
export function Stages({ m, answer }: Shown) {
  const { effort, decision } = answer;
  const ways = decision.routes.map((one) => ({ route: one.route as string, words: wayOf(one), one }));
  return (
    <Panel
      m={m}
      name="hours"
      title="Where money and hours go"
      gist={`${said(effort.commonHours)} are the same either way`}
    >
      <Ways
        m={m}
        caption="Cash by department"
        head="Department"
        ways={ways.map(({ one, ...way }) => ({ ...way, sum: hasPrices(answer) ? one.cash : undefined }))}
        rows={cashRows(answer)}
        foot="Cash in all"
        text={said}
      />
      <Ways
        m={m}
        caption="Person-hours by stage"
        head="Stage"
        ways={ways.map(({ one, ...way }) => ({ ...way, sum: one.hours }))}
        rows={stageRows(answer)}
        foot="Person-hours in all"
        text={({ value }) => value}
      />
    </Panel>
  );
}

function Ways({ m, caption, head, ways, rows, foot, text }: TableProps) {
  const most = Math.max(...rows.flatMap(({ own }) => [...own.values()].map(({ value }) => Number(value))), 1);
  return (
    <section class="scroll" tabindex={0} aria-label={caption}>
      <table class={`stages of-${ways.length}`}>
        <caption>{caption}</caption>
        <Heads of={[head, ...ways.map(({ words }) => ({ number: words }))]} />
        <tbody>
          {rows.map(({ label, own, unpriced = 0 }) => (
            <tr>
              <th scope="row">
                {label}
                {unpriced > 0 && (
                  <small class="fault"> {`${unpriced} ${unpriced === 1 ? "line has" : "lines have"} no price`}</small>
                )}
              </th>
              {ways.map(({ route }) => {
                const figure = own.get(route);
                return (
                  <td class="number">
                    {figure ? <Fig m={m} of={figure} text={text(figure)} /> : "–"}
                    {figure && <Bar share={Number(figure.value) / most} kind={route} />}
                  </td>
                );
              })}
            </tr>
          ))}
        </tbody>
        <tfoot>
          <tr>
            <th scope="row">{foot}</th>
            {ways.map(({ sum }) => (
              <td class="number">{sum ? <Fig m={m} of={sum} text={text(sum)} /> : "not known"}</td>
            ))}
          </tr>
        </tfoot>
      </table>
    </section>
  );
}

/** Rows by name, in the order in which they are first put. */
class Rows {
  private readonly rows = new Map<string, { label: string; own: Map<string, Figure>; unpriced: number }>();

  put(key: string, label: string, route: string, figure: Figure | null, unpriced = 0): void {
    const row = this.rows.get(key) ?? { label: capital(label), own: new Map(), unpriced: 0 };
    if (figure) row.own.set(route, figure);
    row.unpriced = Math.max(row.unpriced, unpriced);
    this.rows.set(key, row);
  }

  all(): Row[] {
    return [...this.rows.values()];
  }
}

/** Departments, then what comes on top of all lines. */
function cashRows({ purchasing }: Estimate): Row[] {
  const { routes, own } = purchasing;
  const rows = new Rows();
  for (const { route, spent } of routes)
    for (const { department, amount, unpriced } of spent) rows.put(department, department, route, amount, unpriced);
  for (const { route, taxes, logValue } of routes) {
    for (const tax of taxes) rows.put(`tax ${tax.label}`, tax.label, route, tax);
    if (logValue) rows.put("logs", "what the logs would have fetched", route, logValue);
    for (const line of own) rows.put(line.cell, line.label, route, line);
  }
  return rows.all();
}

/** Each way's own stages first, what all share after them. */
function stageRows({ effort }: Estimate): Row[] {
  const rows = new Rows();
  for (const { route, stages } of effort.routes)
    for (const { stage, label, hours } of stages) rows.put(stage, label, route, hours);
  for (const { route } of effort.routes) {
    for (const { stage, label, hours } of effort.common) rows.put(`common ${stage}`, label, route, hours);
    for (const line of effort.own) rows.put(line.cell, line.label, route, line);
  }
  return rows.all();
}

function Bar({ share, kind }: { readonly share: number; readonly kind: string }) {
  return (
    <svg class="bar" viewBox="0 0 100 4" preserveAspectRatio="none" aria-hidden="true">
      <rect class={kind} width={Math.max(1, Math.round(share * 100))} height="4" />
    </svg>
  );
}
