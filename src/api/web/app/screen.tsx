/** The whole page below its head: the same on the server, where it is read, and in the browser, where it lives. */
import { memo } from "hono/jsx";
import { Advice } from "./advice.js";
import { Bar } from "./bar.js";
import { CellCard } from "./card.js";
import { Coverings } from "./coverings.js";
import { Drawings } from "./drawing.js";
import { Inputs } from "./inputs.js";
import { Logs } from "./logs.js";
import type { Model } from "./model.js";
import { Next } from "./next.js";
import { Pieces } from "./pieces.js";
import { Geometry } from "./rafter.js";
import { Sheet } from "./sheet.js";
import { Shopping } from "./shopping.js";
import { Stages } from "./stages.js";
import { State } from "./state.js";
import { Sticks } from "./sticks.js";
import { Routes, Verdict } from "./verdict.js";
import { WorkPanels } from "./work.js";

/** Everything. */
export function Screen({ m }: { readonly m: Model }) {
  return (
    <>
      <Bar m={m} />
      <State m={m} />
      <main id="main" class={m.status.is === "fresh" ? undefined : "stale"}>
        <div class="first">
          <Next m={m} />
          <Decided m={m} />
        </div>
        <Given m={m} />
        <Got m={m} />
      </main>
      <CellCard m={m} />
    </>
  );
}

interface Whole {
  readonly m: Model;
}

/** The verdict: with a new answer alone, not with every step on the way to it. */
const Decided = memo(
  ({ m }: Whole) => (m.answer ? <Verdict m={m} answer={m.answer} /> : null),
  alike("answer", "live"),
);

/** What the user gives. Calls under way and what is merely said leave it as it is. */
const Given = memo(
  ({ m }: Whole) => (
    <section class="give" id="give" aria-labelledby="give-head">
      <h2 id="give-head" class="side">
        What you have
      </h2>
      <fieldset class="bare" disabled={!m.live}>
        <legend class="spoken">Your project</legend>
        <Inputs m={m} />
      </fieldset>
    </section>
  ),
  alike("request", "problem", "answer", "sheet", "prices", "panels", "drawn", "live"),
);

/** What comes of it: drawn anew with a new answer, not with every keystroke. */
const Got = memo(
  ({ m }: Whole) => {
    const { answer } = m;
    return (
      <div class="get">
        {answer && (
          <>
            <Routes m={m} answer={answer} />
            <Stages m={m} answer={answer} />
            <WorkPanels m={m} answer={answer} />
            <Pieces m={m} answer={answer} />
            <Logs m={m} answer={answer} />
            <Shopping m={m} answer={answer} />
            <Sticks m={m} answer={answer} />
            <Coverings m={m} answer={answer} />
            <Drawings m={m} answer={answer} />
            <Geometry m={m} answer={answer} />
            <Advice m={m} answer={answer} />
            <Sheet m={m} />
          </>
        )}
      </div>
    );
  },
  alike("answer", "sheet", "sheetIsNew", "searched", "compared", "panels", "live"),
);

/** Whether two models are the same in all that a part of the page is drawn from. */
function alike(...keys: readonly (keyof Model)[]) {
  return (before: Readonly<Whole>, after: Readonly<Whole>): boolean =>
    keys.every((key) => before.m[key] === after.m[key]);
}
