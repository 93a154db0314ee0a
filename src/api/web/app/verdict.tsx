/** The decision: in words, then the routes side by side. */
import { idOf } from "./field.js";
import { Fig, type Shown } from "./figure.js";
import { Frontier } from "./frontier.js";
import { hasPrices } from "./model.js";
import { Told } from "./told.js";
import { plain, wayOf } from "./words.js";

/** First on every screen. Its head stays the same element, so that a cursor that is on it stays there. */
export function Verdict({ m, answer }: Shown) {
  const { verdict } = answer.decision;
  const priced = hasPrices(answer);
  return (
    <section class="verdict" id="verdict" aria-labelledby="verdict-head">
      <p class="for">{answer.about.title ?? "Untitled project"}: mill it or buy it?</p>
      <h2 id="verdict-head" tabindex={-1}>
        {priced ? verdict.headline : "No verdict yet: nothing has a price."}
      </h2>
      {priced ? (
        <Reasons m={m} answer={answer} />
      ) : (
        <p>What it takes is worked out all the same: pieces, hours, and what comes out of the logs.</p>
      )}
      <p>
        <strong>First: </strong>
        {verdict.first}
      </p>
    </section>
  );
}

/** Group by group, a sentence each; then by what an hour of milling them brings. */
function WhyEach({ m, answer }: Shown) {
  const { verdict, ranking, rankingOfBought } = answer.decision;
  const labels = new Map(answer.cutList.groups.map(({ name, label }) => [name, label]));
  const named = (group: string) => labels.get(group) ?? plain(group);
  const listed = (groups: readonly string[]) => groups.map((group) => named(group).toLowerCase()).join(", ");
  if (verdict.groups.length === 0) return null;
  return (
    <details class="why">
      <summary>Why, group by group</summary>
      <dl>
        {verdict.groups.map(({ group, side, why }) => (
          <>
            <dt>
              {named(group)} <span class={`way ${side === "buy" ? "buy" : "mill"}`}>{SIDES[side]}</span>
            </dt>
            <dd>
              <Told m={m} answer={answer} text={why} group={group} />
            </dd>
          </>
        ))}
      </dl>
      {ranking.length > 1 && <p>{`By what an hour of milling each brings, best first: ${listed(ranking)}.`}</p>}
      {rankingOfBought.length > 1 && (
        <p>{`Of those bought, milled with everything else: ${listed(rankingOfBought)}.`}</p>
      )}
    </details>
  );
}

const SIDES = { mill: "mill", buy: "buy", both: "mill, and buy the rest" } as const;

/** Where mixed sizes are allowed. */
const MIXED = idOf("/options/mixedSizes");

/** Why, in figures and in words. */
function Reasons({ m, answer }: Shown) {
  const { verdict, mix } = answer.decision;
  return (
    <>
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
      <p class={m.live ? "hint" : "hint not-yet"}>Press any number to see what it is made of.</p>
      <div class="beside">
        <div class="stack">
          <ul class="reasons">
            {verdict.reasons.map((reason) => (
              <li>
                <Told m={m} answer={answer} text={reason} />
              </li>
            ))}
          </ul>
          <p>
            <strong>Biggest doubt: </strong>
            <Told m={m} answer={answer} text={verdict.doubt} />
          </p>
        </div>
        {verdict.changes.length > 0 && (
          <section aria-labelledby="changes-head">
            <h3 id="changes-head">What would change it</h3>
            <ul class="reasons">
              {verdict.changes.map((change) => (
                <li>
                  <Told m={m} answer={answer} text={change} />
                  {m.live && /allow mixed sizes/.test(change) && (
                    <>
                      {" "}
                      <button type="button" class="link" onClick={() => m.acts.goTo("give-options", MIXED)}>
                        To its box
                      </button>
                    </>
                  )}
                </li>
              ))}
            </ul>
          </section>
        )}
      </div>
      <WhyEach m={m} answer={answer} />
    </>
  );
}

/** Cash and hours of every route, the chosen one marked by a word and not only a colour. */
export function Routes({ m, answer }: Shown) {
  const { routes, best } = answer.decision;
  return (
    <section aria-labelledby="routes-head">
      <h2 id="routes-head">Ways to get the wood</h2>
      <div class="routes">
        {routes.map((route) => (
          <article class={route.route === best && hasPrices(answer) ? "route best" : "route"}>
            <h3>
              {wayOf(route)}
              {route.route === best && hasPrices(answer) && <span class="mark">the verdict</span>}
            </h3>
            <dl>
              <dt>Cash</dt>
              <dd class="big">{hasPrices(answer) ? <Fig m={m} of={route.cash} /> : "not known"}</dd>
              <dt>Work</dt>
              <dd>
                <Fig m={m} of={route.hours} />
              </dd>
              <dt>By the clock</dt>
              <dd>
                <Fig m={m} of={route.elapsed} />
              </dd>
              {hasPrices(answer) && (
                <>
                  <dt>Cash + hours</dt>
                  <dd>
                    <Fig m={m} of={route.total} />
                  </dd>
                </>
              )}
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
      {hasPrices(answer) && (
        <div class="off-wall">
          <Frontier m={m} answer={answer} />
        </div>
      )}
    </section>
  );
}
