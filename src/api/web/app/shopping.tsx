/** The shopping list of the answer: what to order by department, and apart from it what only wears down. */
import { shoppingCsv } from "./csv.js";
import { Fig, Panel, SaveTable, type Shown } from "./figure.js";
import { hasPrices } from "./model.js";
import { Heads } from "./table-head.js";
import { capital, multipliedOf, priceInFull, said, wayOf } from "./words.js";

type Line = Shown["answer"]["purchasing"]["shared"][number]["lines"][number];

/** What to order for the route of the verdict, by department. */
export function Shopping({ m, answer }: Shown) {
  const { purchasing, decision } = answer;
  const route = purchasing.routes.find((one) => one.route === decision.best);
  if (!route) return null;
  const all = [...route.departments, ...purchasing.shared];
  // In the order in which what is spent is listed: that of a shopping list.
  const departments = route.spent.map(({ department }) => ({
    department,
    lines: all.filter((one) => one.department === department).flatMap(({ lines }) => lines),
  }));
  const shares = departments.flatMap(({ lines }) => lines.filter(({ share }) => share));
  return (
    <Panel m={m} name="shopping" title="Shopping list" gist={gistOf(route, hasPrices(answer))}>
      <p>{`For “${wayOf(decision.routes.find((one) => one.route === route.route) ?? route)}”. ${answer.about.catalogNote ?? ""}`}</p>
      {answer.notices
        .filter(({ code }) => code === "bought-size" || code === "short")
        .map(({ text }) => (
          <p class="note">{capital(text)}</p>
        ))}
      {departments.map(({ department, lines }) => (
        <Lines
          m={m}
          title={capital(department)}
          heads={["Ask for", "Take", "Costs"]}
          lines={lines.filter(({ share }) => !share)}
        />
      ))}
      {shares.length > 0 && (
        <>
          <Lines
            m={m}
            title="Worn and used up: nothing to order"
            heads={["What", "How much of it", "Costs"]}
            lines={shares}
          />
          <p class="hint">
            Parts of a blade’s or a tool’s life, current, and what a machine loses in value. It is in the cash all the
            same.
          </p>
        </>
      )}
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
        <dd>{hasPrices(answer) ? <Fig m={m} of={route.cash} /> : "not known"}</dd>
      </dl>
      <SaveTable m={m} name="shopping-list.csv" text={() => shoppingCsv(answer)} />
    </Panel>
  );
}

interface LinesProps extends Pick<Shown, "m"> {
  readonly title: string;
  readonly heads: readonly [string, string, string];
  readonly lines: readonly Line[];
}

/** One table; orders have a box to tick. */
function Lines({ m, title, heads: [what, take, costs], lines }: LinesProps) {
  if (lines.length === 0) return null;
  return (
    <section class="scroll" tabindex={0} aria-label={title}>
      <table class="cards shop">
        <caption>{title}</caption>
        <Heads of={[what, take, { number: costs }]} />
        <tbody>
          {lines.map((line) => (
            <tr>
              <th scope="row">
                {!line.share && <span class="tick" aria-hidden="true" />}
                {line.label}
              </th>
              <td data-head={take}>{takeOf(line)}</td>
              <td class="number" data-head={costs}>
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
  );
}

/** Packs, where it is sold in packs; what comes singly is counted, with what it is paid for and the price of that. */
function takeOf(line: Line): string {
  const { packs, quantity, each, leftOver, spares } = line;
  if (!packs) {
    const counted = `${said(quantity)}${each ? ` of ${each.marked}` : ""}`;
    const product = multipliedOf(line);
    const alike = product?.measure.unit === quantity.unit;
    const measure = product && (alike ? said(product.measure) : `${counted}, ${said(product.measure)}`);
    const spare = spares ? `, ${said(spares)} of them spare` : "";
    return `${product ? `${measure} at ${priceInFull(product.price)}` : counted}${spare}`;
  }
  const taken = packs.map(({ label, count }) => (label === "loose" ? count.value : `${count.value} × ${label}`));
  const over = leftOver && Number(leftOver.value) !== 0 ? `; left over ${said(leftOver)}` : "";
  return `${taken.join(", ")}${over}`;
}

function gistOf({ cash, unpriced }: Shown["answer"]["purchasing"]["routes"][number], priced: boolean): string {
  if (!priced) return "no prices yet";
  const lacks = unpriced === 1 ? ", 1 line without a price" : `, ${unpriced} lines without a price`;
  return `${said(cash)} with tax${unpriced > 0 ? lacks : ""}`;
}
