/** Lists of the answer: pieces, what to buy, the covering, what to watch. */
import { cutListCsv, shoppingCsv } from "./csv.js";
import { Fig, Panel } from "./figure.js";
import type { Estimate, Model } from "./model.js";
import { capital, ROUTE_WORDS, said } from "./words.js";

interface Props {
  readonly m: Model;
  readonly answer: Estimate;
}

/** Saves a table as a file; nothing on the server, where there is no one to save it. */
function SaveTable({ m, name, text }: { readonly m: Model; readonly name: string; readonly text: () => string }) {
  return (
    <p class="tools">
      <button type="button" onClick={() => m.acts.download(name, text())}>
        Save as CSV
      </button>
    </p>
  );
}

/** Every piece group: size, how it is had, what milling it saves. */
export function Pieces({ m, answer }: Props) {
  const { cutList, decision } = answer;
  const savings = new Map(decision.groups.map((group) => [group.group, group]));
  return (
    <Panel
      m={m}
      name="pieces"
      title="Pieces"
      gist={`${said(cutList.pieces)} in ${cutList.groups.length} groups, ${said(cutList.volume)}`}
    >
      <section class="scroll" tabindex={0} aria-label="Pieces">
        <table class="cards">
          <thead>
            <tr>
              <th scope="col">Pieces</th>
              <th scope="col" class="number">
                How many
              </th>
              <th scope="col">Finished</th>
              <th scope="col">Sawn at</th>
              <th scope="col">Verdict</th>
              <th scope="col" class="number">
                Milling saves
              </th>
              <th scope="col" class="number">
                and takes
              </th>
              <th scope="col" class="number">
                One weighs
              </th>
            </tr>
          </thead>
          <tbody>
            {cutList.groups.map((group) => {
              const saving = savings.get(group.name);
              return (
                <tr>
                  <th scope="row">
                    {group.label} <span class="marks">{span(group.marks)}</span>
                  </th>
                  <td class="number" data-head="How many">
                    <Fig m={m} of={group.count} />
                  </td>
                  <td data-head="Finished">
                    {group.finished.section},{" "}
                    <Fig m={m} of={group.finished.length} text={group.finished.length.marked} />
                  </td>
                  <td data-head="Sawn at">
                    {group.rough ? `${group.rough.section}, ${group.rough.length.marked}` : (group.notMilled ?? "–")}
                  </td>
                  <td data-head="Verdict">
                    <span class={`way ${group.route ?? "buy"}`}>{group.route ?? "–"}</span>
                  </td>
                  <td class="number" data-head="Milling saves">
                    {saving ? <Fig m={m} of={saving.cashSaved} /> : "–"}
                  </td>
                  <td class="number" data-head="and takes">
                    {saving ? <Fig m={m} of={saving.extraHours} /> : "–"}
                  </td>
                  <td class="number" data-head="One weighs">
                    {group.weight ? <Fig m={m} of={group.weight.lifted} /> : "–"}
                  </td>
                </tr>
              );
            })}
          </tbody>
        </table>
      </section>
      <SaveTable m={m} name="cut-list.csv" text={() => cutListCsv(answer)} />
    </Panel>
  );
}

const span = (marks: readonly string[]): string =>
  marks.length > 1 ? `${marks[0]} to ${marks.at(-1)}` : (marks[0] ?? "");

/** What to order for the route of the verdict, by department. */
export function Shopping({ m, answer }: Props) {
  const { purchasing, decision } = answer;
  const route = purchasing.routes.find((one) => one.route === decision.best);
  if (!route) return null;
  const departments = [
    ...new Set([...route.departments, ...purchasing.shared].map(({ department }) => department)),
  ].map((department) => ({
    department,
    lines: [...route.departments, ...purchasing.shared]
      .filter((one) => one.department === department)
      .flatMap(({ lines }) => lines),
  }));
  return (
    <Panel
      m={m}
      name="shopping"
      title="Shopping list"
      gist={`${said(route.cash)} with tax${route.unpriced > 0 ? `, ${route.unpriced} lines without a price` : ""}`}
    >
      <p>{`For “${ROUTE_WORDS[route.route]}”. ${answer.about.catalogNote ?? ""}`}</p>
      {departments.map(({ department, lines }) => (
        <section class="scroll" tabindex={0} aria-label={capital(department)}>
          <table class="cards">
            <caption>{capital(department)}</caption>
            <thead>
              <tr>
                <th scope="col">Ask for</th>
                <th scope="col">Take</th>
                <th scope="col" class="number">
                  Costs
                </th>
              </tr>
            </thead>
            <tbody>
              {lines.map((line) => (
                <tr>
                  <th scope="row">
                    <span class="tick" aria-hidden="true" />
                    {line.label}
                  </th>
                  <td data-head="Take">
                    {line.packs.length > 0
                      ? line.packs.map(({ label, count }) => `${count.value} × ${label}`).join(", ")
                      : `${said(line.quantity)}${line.each ? ` of ${line.each.marked}` : ""}`}
                  </td>
                  <td class="number" data-head="Costs">
                    {line.amount ? (
                      <Fig m={m} of={line.amount} />
                    ) : (
                      <span class="fault">
                        <strong>No price.</strong> {line.add}
                      </span>
                    )}
                  </td>
                </tr>
              ))}
            </tbody>
          </table>
        </section>
      ))}
      <dl class="sums">
        {[...route.taxes, ...purchasing.own].map((line) => (
          <>
            <dt>{capital(line.label)}</dt>
            <dd>
              <Fig m={m} of={line} />
            </dd>
          </>
        ))}
        <dt>Cash in all</dt>
        <dd>
          <Fig m={m} of={route.cash} />
        </dd>
      </dl>
      <SaveTable m={m} name="shopping-list.csv" text={() => shoppingCsv(answer)} />
    </Panel>
  );
}

/** Each covering as a full system, also where the slope forbids it. */
export function Coverings({ m, answer }: Props) {
  const [first] = answer.coverings;
  if (!first) return null;
  return (
    <Panel m={m} name="covering" title="Roof covering" gist={`${said(first.area)}, ${said(first.weight)}`}>
      <div class="routes">
        {answer.coverings.map((one) => (
          <article class="route">
            <h3>{capital(one.name)}</h3>
            <p class={one.slope.allowed ? undefined : "fault"}>
              {one.slope.allowed ? "" : "Not allowed. "}
              {one.slope.reason} <small>({one.slope.reference})</small>
            </p>
            <dl>
              <dt>Roof, edge to edge</dt>
              <dd>
                <Fig m={m} of={one.area} />
              </dd>
              {one.faces.map((face) => (
                <Slope key={face.name} m={m} one={one} face={face} />
              ))}
              {one.parts.map((part) => (
                <div key={part.name}>
                  <dt>{part.label}</dt>
                  <dd>
                    <Fig m={m} of={part.quantity} />
                  </dd>
                </div>
              ))}
              <dt>Trim to fit</dt>
              <dd>
                <Fig m={m} of={one.trimLength} text={one.trimLength.marked} />
              </dd>
              <dt>Weight</dt>
              <dd>
                <Fig m={m} of={one.weight} />
              </dd>
              <dt>Lasts</dt>
              <dd>
                <Fig m={m} of={one.life} />
              </dd>
            </dl>
          </article>
        ))}
      </div>
    </Panel>
  );
}

interface SlopeProps {
  readonly m: Props["m"];
  readonly one: Props["answer"]["coverings"][number];
  readonly face: Props["answer"]["coverings"][number]["faces"][number];
}

/** How one slope is covered: panels side by side, or courses up to the ridge. */
function Slope({ m, one, face }: SlopeProps) {
  const where = one.faces.length > 1 ? `, ${face.name} slope` : "";
  return (
    <>
      <dt>
        {face.across ? "Side by side" : "Courses"}
        {where}
      </dt>
      <dd>
        <Fig m={m} of={face.across ?? face.up} /> of <Fig m={m} of={face.module} text={face.module.marked} />
        {face.pieceLength && (
          <>
            , <Fig m={m} of={face.pieceLength} text={face.pieceLength.marked} /> long
          </>
        )}
      </dd>
    </>
  );
}

/** How to cut a common rafter, and what to set out. */
export function Geometry({ m, answer }: Props) {
  const { geometry } = answer;
  if (!geometry || !("rafter" in geometry)) return null;
  const { rafter } = geometry;
  const rows = [
    ["Along one edge, between plumb cuts", rafter.edgeLength],
    ["Straight piece to cut it from", rafter.stockLength],
    ["Birdsmouth: seat, level", rafter.seat],
    ["Birdsmouth: depth, square to the rafter", rafter.notchDepth],
    ["Height above the plate, plumb", rafter.heightAbovePlate],
    ["Gap when the saw is one degree off", rafter.gapAtOneDegree],
  ] as const;
  return (
    <Panel
      m={m}
      name="rafter"
      title="Cutting a rafter"
      gist={`${rafter.stockLength.marked}, ${said(rafter.slopeAngle)} plumb cut`}
    >
      <dl class="sums">
        <dt>Plumb cut, off square</dt>
        <dd>
          <Fig m={m} of={rafter.slopeAngle} />
        </dd>
        {rows.map(([label, length]) => (
          <>
            <dt>{label}</dt>
            <dd>
              <Fig m={m} of={length} text={length.marked} />
            </dd>
          </>
        ))}
      </dl>
    </Panel>
  );
}

/** Where someone can be hurt comes before what is merely worth knowing. */
export function Advice({ m, answer }: Props) {
  const { cautions, notices } = answer;
  return (
    <>
      <Panel
        m={m}
        name="cautions"
        title="Cautions"
        gist={`${cautions.length} to read before you start`}
        class="careful"
      >
        <ul class="cautions">
          {cautions.map(({ text, source }) => (
            <li>
              {text} <small>({source})</small>
            </li>
          ))}
        </ul>
      </Panel>
      <Panel
        m={m}
        name="notices"
        title="Taken for granted"
        gist={`${notices.length} notes: swaps, shortages, defaults`}
      >
        <ul>
          {notices.map(({ text }) => (
            <li>{capital(text)}</li>
          ))}
        </ul>
      </Panel>
    </>
  );
}
