/** The whole page below its head: the same on the server, where it is read, and in the browser, where it lives. */
import { Advice } from "./advice.js";
import { Bar } from "./bar.js";
import { Coverings } from "./coverings.js";
import { Drawings } from "./drawing.js";
import { Inputs } from "./inputs.js";
import { Logs } from "./logs.js";
import type { Model } from "./model.js";
import { Pieces } from "./pieces.js";
import { Geometry } from "./rafter.js";
import { CellCard, Sheet } from "./sheet.js";
import { Shopping } from "./shopping.js";
import { Stages } from "./stages.js";
import { State } from "./state.js";
import { Routes, Verdict } from "./verdict.js";
import { WorkPanels } from "./work.js";

/** Everything. */
export function Screen({ m }: { readonly m: Model }) {
  const { answer } = m;
  return (
    <>
      <Bar m={m} />
      <State m={m} />
      <main id="main">
        <div class={m.problem || m.status.is === "working" || m.status.is === "waiting" ? "first stale" : "first"}>
          {answer && <Verdict m={m} answer={answer} />}
        </div>
        <section class="give" aria-labelledby="give-head">
          <h2 id="give-head" class="side">
            What you have
          </h2>
          <fieldset class="bare" disabled={!m.live}>
            <legend class="spoken">Your project</legend>
            <Inputs m={m} />
          </fieldset>
        </section>
        <div class="get">
          {answer && (
            <>
              <Routes m={m} answer={answer} />
              <Stages m={m} answer={answer} />
              <WorkPanels m={m} answer={answer} />
              <Pieces m={m} answer={answer} />
              <Logs m={m} answer={answer} />
              <Shopping m={m} answer={answer} />
              <Coverings m={m} answer={answer} />
              <Drawings m={m} answer={answer} />
              <Geometry m={m} answer={answer} />
              <Advice m={m} answer={answer} />
              <Sheet m={m} />
            </>
          )}
        </div>
      </main>
      <CellCard m={m} />
    </>
  );
}
