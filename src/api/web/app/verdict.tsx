/** The decision: in words, then routes side by side, then the hours stage by stage. */
import { Fig, Panel } from "./figure.js";
import type { Estimate, Model } from "./model.js";
import { capital, ROUTE_WORDS, said } from "./words.js";

interface Props {
  readonly m: Model;
  readonly answer: Estimate;
}

/** First on every screen. */
export function Verdict({ m, answer }: Props) {
  const { verdict, mix } = answer.decision;
  return (
    <section class="verdict" id="verdict" aria-labelledby="verdict-head">
      <p class="for">{answer.about.title ?? "Untitled project"}: mill it or buy it?</p>
      <h2 id="verdict-head">{verdict.headline}</h2>
      {mix && (
        <dl class="keys">
          <div>
            <dt>Saves</dt>
            <dd>
              <Fig m={m} of={mix.cashSaved} />
            </dd>
          </div>
          <div>
            <dt>Takes more work</dt>
            <dd>
              <Fig m={m} of={mix.extraHours} />
            </dd>
          </div>
          <div>
            <dt>Pays for that work</dt>
            <dd>
              <Fig m={m} of={mix.payPerHour} />
            </dd>
          </div>
        </dl>
      )}
      <ul class="reasons">
        {verdict.reasons.map((reason) => (
          <li>{reason}</li>
        ))}
      </ul>
      <p>
        <strong>Biggest doubt: </strong>
        {verdict.doubt}
      </p>
      <p>
        <strong>First: </strong>
        {verdict.first}
      </p>
    </section>
  );
}

/** Cash and hours of every route, the chosen one marked by a word and not only a colour. */
export function Routes({ m, answer }: Props) {
  const { routes, best } = answer.decision;
  return (
    <section aria-labelledby="routes-head">
      <h2 id="routes-head">Ways to get the wood</h2>
      <div class="routes">
        {routes.map((route) => (
          <article class={route.route === best ? "route best" : "route"}>
            <h3>
              {ROUTE_WORDS[route.route] ?? route.label}
              {route.route === best && <span class="mark">the verdict</span>}
            </h3>
            <dl>
              <dt>Cash</dt>
              <dd class="big">
                <Fig m={m} of={route.cash} />
              </dd>
              <dt>Work</dt>
              <dd>
                <Fig m={m} of={route.hours} />
              </dd>
              <dt>With the crew</dt>
              <dd>
                <Fig m={m} of={route.elapsed} />
              </dd>
              <dt>Cash and hours together</dt>
              <dd>
                <Fig m={m} of={route.total} />
              </dd>
              {route.unpriced > 0 && (
                <>
                  <dt>Not in the cash</dt>
                  <dd class="fault">{`${route.unpriced} ${route.unpriced === 1 ? "line has" : "lines have"} no price`}</dd>
                </>
              )}
            </dl>
          </article>
        ))}
      </div>
      <Plot answer={answer} />
    </section>
  );
}

const PLOT = { width: 640, height: 260, left: 70, right: 24, top: 18, bottom: 44 };

type Label = { readonly x: number; readonly y: number; readonly anchor: "start" | "middle" | "end" };

/** Where a point's name stands: on sides that differ, since points may lie close together. */
const LABELS: Readonly<Record<string, Label>> & { readonly mixed: Label } = {
  mixed: { x: 0, y: -18, anchor: "middle" },
  milled: { x: 6, y: 24, anchor: "end" },
  bought: { x: 14, y: 5, anchor: "start" },
};

/** Cash against hours: down and to the left is better. Positions only; all figures stand in the table above. */
function Plot({ answer }: { readonly answer: Estimate }) {
  const { routes, best, frontier } = answer.decision;
  const points = routes.map(({ route, cash, hours }) => ({ route: route as string, cash, hours }));
  if (points.length < 2) return null;
  const all = [...points, ...frontier.map(({ cash, hours }) => ({ cash, hours }))];
  const x = scale(
    all.map(({ hours }) => Number(hours.value)),
    PLOT.left,
    PLOT.width - PLOT.right,
  );
  const y = scale(
    all.map(({ cash }) => Number(cash.value)),
    PLOT.height - PLOT.bottom,
    PLOT.top,
  );
  const at = ({ cash, hours }: (typeof all)[number]) => ({ x: x(Number(hours.value)), y: y(Number(cash.value)) });
  const line = frontier.map((point) => Object.values(at(point)).join(",")).join(" ");
  const words = points
    .map(({ route, cash, hours }) => `${ROUTE_WORDS[route]}: ${said(cash)}, ${said(hours)}`)
    .join("; ");
  return (
    <svg
      class="plot"
      viewBox={`0 0 ${PLOT.width} ${PLOT.height}`}
      role="img"
      aria-label={`Cash against hours. ${words}.`}
    >
      <path class="axis" d={`M${PLOT.left} ${PLOT.top}V${PLOT.height - PLOT.bottom}H${PLOT.width - PLOT.right}`} />
      <text x={PLOT.left} y={PLOT.height - 12}>
        more work →
      </text>
      <text x={PLOT.left - 8} y={PLOT.top + 10} text-anchor="end">
        dearer
      </text>
      <text x={PLOT.left - 8} y={PLOT.height - PLOT.bottom} text-anchor="end">
        cheaper
      </text>
      {line && <polyline class="frontier" points={line} />}
      {points.map((point) => {
        const { x: cx, y: cy } = at(point);
        const label = LABELS[point.route] ?? LABELS.mixed;
        return (
          <g class={point.route}>
            {point.route === best && <circle class="ring" cx={cx} cy={cy} r="12" />}
            <circle cx={cx} cy={cy} r="6" />
            <text x={cx + label.x} y={cy + label.y} text-anchor={label.anchor}>
              {ROUTE_WORDS[point.route]}
            </text>
          </g>
        );
      })}
    </svg>
  );
}

/** A linear scale with a margin of a fifth at both ends, where names have room. */
function scale(values: readonly number[], from: number, to: number): (value: number) => number {
  const low = Math.min(...values);
  const span = Math.max(...values) - low || 1;
  return (value) => Math.round(from + (to - from) * (0.2 + (0.6 * (value - low)) / span));
}

interface StageRow {
  readonly stage: string;
  readonly label: string;
  readonly own: ReadonlyMap<string, Estimate["effort"]["common"][number]>;
}

/** Hours by stage: each route's own first, what all share after it. */
export function Stages({ m, answer }: Props) {
  const { effort } = answer;
  const routes = effort.routes.map(({ route }) => route as string);
  const rows = stageRows(answer);
  const most = Math.max(...rows.flatMap(({ own }) => [...own.values()].map(({ hours }) => Number(hours.value))), 1);
  return (
    <Panel m={m} name="hours" title="Hours by stage" gist={`${said(effort.commonHours)} are the same either way`}>
      <section class="scroll" tabindex={0} aria-label="Hours by stage">
        <table class="stages">
          <thead>
            <tr>
              <th scope="col">Stage</th>
              {routes.map((route) => (
                <th scope="col" class="number">
                  {ROUTE_WORDS[route]}
                </th>
              ))}
            </tr>
          </thead>
          <tbody>
            {rows.map(({ label, own }) => (
              <tr>
                <th scope="row">{capital(label)}</th>
                {routes.map((route) => {
                  const stage = own.get(route);
                  return (
                    <td class="number">
                      {stage ? <Fig m={m} of={stage.hours} text={stage.hours.value} /> : "–"}
                      {stage && <Bar share={Number(stage.hours.value) / most} kind={route} />}
                    </td>
                  );
                })}
              </tr>
            ))}
          </tbody>
          <tfoot>
            <tr>
              <th scope="row">Person-hours in all</th>
              {effort.routes.map((route) => (
                <td class="number">
                  <Fig m={m} of={route.hours} text={route.hours.value} />
                </td>
              ))}
            </tr>
          </tfoot>
        </table>
      </section>
    </Panel>
  );
}

function stageRows({ effort }: Estimate): StageRow[] {
  const rows = new Map<string, { stage: string; label: string; own: Map<string, (typeof effort.common)[number]> }>();
  const put = (route: string, stage: (typeof effort.common)[number], key: string) => {
    const row = rows.get(key) ?? { stage: stage.stage, label: stage.label, own: new Map() };
    row.own.set(route, stage);
    rows.set(key, row);
  };
  for (const { route, stages } of effort.routes) for (const stage of stages) put(route, stage, stage.stage);
  for (const stage of effort.common) for (const { route } of effort.routes) put(route, stage, `common ${stage.stage}`);
  return [...rows.values()];
}

function Bar({ share, kind }: { readonly share: number; readonly kind: string }) {
  return (
    <svg class="bar" viewBox="0 0 100 4" preserveAspectRatio="none" aria-hidden="true">
      <rect class={kind} width={Math.max(1, Math.round(share * 100))} height="4" />
    </svg>
  );
}
