/** Hours of the answer, stage by stage. */
import { Fig, Panel, type Shown } from "./figure.js";
import type { Estimate } from "./model.js";
import { capital, ROUTE_WORDS, said } from "./words.js";

interface StageRow {
  readonly stage: string;
  readonly label: string;
  readonly own: ReadonlyMap<string, Estimate["effort"]["common"][number]>;
}

/** Hours by stage: each route's own first, what all share after it. */
export function Stages({ m, answer }: Shown) {
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
