/** How the sticks that are bought are cut: which pieces come out of which, and what is left over. */
import { Panel, type Shown } from "./figure.js";
import { Heads } from "./table-head.js";
import { inRuns, plain } from "./words.js";

type Stock = NonNullable<Shown["answer"]["purchasing"]["routes"][number]["stock"]>[number];

/** Stick by stick, for the route of the verdict. */
export function Sticks({ m, answer }: Shown) {
  const { purchasing, decision, cutList } = answer;
  const stock = purchasing.routes.find(({ route }) => route === decision.best)?.stock ?? [];
  if (stock.length === 0) return null;
  const labels = new Map(cutList.groups.map(({ name, label }) => [name, label.toLowerCase()]));
  return (
    <Panel m={m} name="sticks" title="Cutting what is bought" gist="which pieces come out of which stick">
      {stock.map((one) => (
        <StockCuts one={one} labels={labels} />
      ))}
    </Panel>
  );
}

interface StockProps {
  readonly one: Stock;
  /** Of piece groups. */
  readonly labels: ReadonlyMap<string, string>;
}

function StockCuts({ one: { label, cuts }, labels }: StockProps) {
  return (
    <section class="scroll" tabindex={0} aria-label={label}>
      <table class="cards sticks">
        <caption>{label}</caption>
        <Heads of={["Sticks", "Give, each", "Marks", "Left over of each"]} />
        <tbody>
          {cuts.map(({ stock, times, pieces, marks, offcut }) => (
            <tr>
              <th scope="row">{`${times} × ${stock}`}</th>
              <td data-head="Give, each">
                {pieces
                  .map(({ group, length, count }) => `${count} × ${length} ${labels.get(group) ?? plain(group)}`)
                  .join(", ")}
              </td>
              <td data-head="Marks">{marksOf(marks.flat())}</td>
              <td data-head="Left over of each">{offcut}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </section>
  );
}

/** Spares bear none. */
function marksOf(marks: readonly (string | null)[]): string {
  const named = marks.filter((mark) => mark !== null);
  const spare = marks.length - named.length;
  return [...inRuns(named), ...(spare > 0 ? [`${spare} spare`] : [])].join(", ");
}
