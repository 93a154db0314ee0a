/** The shopping list of the answer. */
import { shoppingCsv } from "./csv.js";
import { Fig, Panel, SaveTable, type Shown } from "./figure.js";
import { hasPrices } from "./model.js";
import { Heads } from "./table-head.js";
import { capital, said, wayOf } from "./words.js";

/** What to order for the route of the verdict, by department. */
export function Shopping({ m, answer }: Shown) {
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
    <Panel m={m} name="shopping" title="Shopping list" gist={gistOf(route, hasPrices(answer))}>
      <p>{`For “${wayOf(decision.routes.find((one) => one.route === route.route) ?? route)}”. ${answer.about.catalogNote ?? ""}`}</p>
      {departments.map(({ department, lines }) => (
        <section class="scroll" tabindex={0} aria-label={capital(department)}>
          <table class="cards">
            <caption>{capital(department)}</caption>
            <Heads of={["Ask for", "Take", { number: "Costs" }]} />
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
        <dd>{hasPrices(answer) ? <Fig m={m} of={route.cash} /> : "not known"}</dd>
      </dl>
      <SaveTable m={m} name="shopping-list.csv" text={() => shoppingCsv(answer)} />
    </Panel>
  );
}

function gistOf({ cash, unpriced }: Shown["answer"]["purchasing"]["routes"][number], priced: boolean): string {
  if (!priced) return "no prices yet";
  const lacks = unpriced === 1 ? ", 1 line without a price" : `, ${unpriced} lines without a price`;
  return `${said(cash)} with tax${unpriced > 0 ? lacks : ""}`;
}
