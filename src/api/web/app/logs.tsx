/** Logs of the answer: what comes out of each, and a picture of every bolt's end as it is sawn. */
import { Panel, type Shown } from "./figure.js";
import type { Estimate } from "./model.js";
import { Picture } from "./picture.js";
import { capital, plain, said, short } from "./words.js";

type Plan = Estimate["sawing"]["plans"][number];
type Log = Estimate["sawing"]["logs"][number];

/** The sawing plan of the verdict, log by log. */
export function Logs({ m, answer }: Shown) {
  const { sawing, decision } = answer;
  const plan = sawing.plans.find(({ route }) => route === decision.best) ?? sawing.plans[0];
  if (sawing.logs.length === 0) {
    return (
      <Panel m={m} name="sawing" title="Your logs" gist="none yet">
        <p>No logs yet, so everything is bought. Add what lies on the ground: a length and one thickness are enough.</p>
      </Panel>
    );
  }
  const labels = new Map(answer.cutList.groups.map(({ name, label }) => [name, label.toLowerCase()]));
  const isSawn = ({ name }: Log) => plan?.logs.some(({ log }) => log === name) ?? false;
  const sawn = sawing.logs.filter(isSawn);
  const left = sawing.logs.filter((log) => !isSawn(log));
  const gist = plan
    ? `${plan.logs.length} of ${sawing.logs.length} sawn`
    : `${sawing.logs.length}, none is worth sawing`;
  return (
    <Panel m={m} name="sawing" title="Your logs, and how to saw them" gist={gist}>
      {plan?.short.map(({ label, wanted, missing, why }) => (
        <p class="note">
          <strong>{`${label}: the logs lack ${missing} of ${wanted}.`}</strong> {why}
        </p>
      ))}
      <div class="logs">
        {sawn.map((log) => (
          <SawnLog log={log} plan={plan} labels={labels} />
        ))}
      </div>
      {left.length > 0 && (
        <section aria-labelledby="left-lying">
          <h3 id="left-lying">Left lying</h3>
          <ul class="left">
            {left.map((log) => (
              <li>
                <strong>{log.name}</strong>
                {`: ${logWords(log)}`}
              </li>
            ))}
          </ul>
        </section>
      )}
    </Panel>
  );
}

/** By the rule of the trade; in a metric project as what it is. */
const scaleOf = ({ scale, length }: Log): string =>
  length.unit === "m" ? said(scale.cubic) : `${said(short(scale.international))} by the International rule`;

const logWords = (log: Log): string =>
  `${plain(log.species)}, ${said(short(log.length))} sound, ${said(short(log.smallDiameter))} at the small end, ${scaleOf(log)}, ${said(short(log.weight))}`;

interface LogProps {
  readonly log: Log;
  readonly plan: Plan | undefined;
  /** Of piece groups. */
  readonly labels: ReadonlyMap<string, string>;
}

function SawnLog({ log, plan, labels }: LogProps) {
  const steps = plan?.logs.find((one) => one.log === log.name);
  const gives = steps?.yields.map(({ group, count, marks }) =>
    [count, labels.get(group) ?? plain(group), marks && `(${marks})`].filter(Boolean).join(" "),
  );
  return (
    <article class="log">
      <h3>{log.name}</h3>
      <p>{capital(logWords(log))}</p>
      <p>{`Gives ${gives?.join(", ")}.`}</p>
      {steps?.bolts.map((bolt, index) => (
        <BoltSteps
          bolt={bolt}
          title={`${log.name}, bolt ${index + 1} of ${steps.bolts.length}, seen from its small end`}
        >
          <h4>{`Bolt ${index + 1}: ${bolt.length}, from ${bolt.from} to ${bolt.to}`}</h4>
        </BoltSteps>
      ))}
    </article>
  );
}

interface BoltProps {
  readonly bolt: Plan["logs"][number]["bolts"][number];
  readonly title: string;
  readonly children: unknown;
}

/** Its end with the cuts in it, and slab by slab what comes off. */
function BoltSteps({ bolt, title, children }: BoltProps) {
  return (
    <section class="bolt">
      {bolt.drawing && <Picture of={{ title, svg: bolt.drawing }} />}
      <div>
        {children}
        <p>
          {`First cut ${bolt.opening} above the centre line; ${bolt.cuts} cuts`}
          {bolt.turns > 0 ? `, ${bolt.turns} turned` : ""}.
        </p>
        <ol>
          {bolt.slabs.map((slab) => (
            <li>
              {`${slab.thickness} slab: `}
              {slab.strips
                .map(({ width, times, marks }) => `${times > 1 ? `${times} × ` : ""}${width} wide (${marksOf(marks)})`)
                .join("; ")}
              {slab.onMill ? "; ripped on the mill" : ""}
            </li>
          ))}
        </ol>
      </div>
    </section>
  );
}

/** Marks of the pieces; what is sawn to make up for rejects has none. */
function marksOf(marks: readonly (readonly (string | null)[])[]): string {
  const all = marks.flat();
  const named = all.filter((mark) => mark !== null);
  const spare = all.length - named.length;
  return [...named, ...(spare > 0 ? [`${spare} spare`] : [])].join(", ");
}
