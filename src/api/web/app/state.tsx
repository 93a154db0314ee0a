/** Where the answer stands: up to date, under way, refused, out of reach. */
import { idOf } from "./field.js";
import type { Model, Progress } from "./model.js";

/** One line that is always there, so that nothing moves, and what needs a correction. */
export function State({ m }: { readonly m: Model }) {
  return (
    <section class={`state is-${m.status.is}`} aria-label="State of the answer">
      <p aria-hidden="true">
        {stateWords(m)} {m.said}
      </p>
      <p role="status" class="spoken">
        {spokenWords(m)} {m.said} {m.status.is === "fresh" && m.news}
      </p>
      {(m.status.is === "working" || m.status.is === "waiting") && (
        <>
          <progress
            aria-label="Estimating"
            max={m.status.is === "working" && m.status.steps > 0 ? m.status.steps : 1}
            value={m.status.is === "working" && m.status.steps > 0 ? come(m.status) : 0}
          />
          <button type="button" onClick={m.acts.cancel}>
            Cancel
          </button>
        </>
      )}
      {m.live && m.status.is === "fresh" && m.answer && (
        <button type="button" class="link" onClick={() => m.acts.goTo("", "verdict-head")}>
          To the verdict
        </button>
      )}
      {["offline", "busy", "stopped", "broken"].includes(m.status.is) && (
        <button type="button" onClick={m.acts.retry}>
          Try again
        </button>
      )}
      {m.problem && m.problem.faults.length > 0 && <Problem m={m} />}
      {!m.live && (
        <noscript>
          <p>This is a demo, worked out in full. To change it, switch on scripts; they come from this address alone.</p>
        </noscript>
      )}
    </section>
  );
}

/** Steps behind, and the share of the one under way. A bar's place, no figure. */
const come = ({ step, done, of }: Progress): number => step - 1 + (of > 0 ? Math.min(1, done / of) : 0);

function stateWords({ status, problem, answer }: Model): string {
  switch (status.is) {
    case "fresh":
      return answer ? "Up to date." : "";
    case "waiting":
      return "Your change is noted; below is still the answer of before.";
    case "working":
      return status.steps > 0
        ? `Step ${status.step} of ${status.steps}: ${status.stage}.`
        : `Working it out: ${status.stage}.`;
    case "stopped":
      return "Stopped. What is shown is the answer of before.";
    case "offline":
      return "The service can't be reached: no network? What you typed is kept here.";
    case "busy":
      return `The service is busy. It is asked again in ${status.seconds} seconds.`;
    case "refused":
      return `${problem?.faults.length === 1 ? "One thing needs" : `${problem?.faults.length ?? "Some"} things need`} a correction; below is the answer of before.`;
    case "broken":
      return `That went wrong: ${status.detail}`;
  }
}

/** The same for who listens: the start and the end of a calculation, not every step of it, nor every keystroke. */
function spokenWords(m: Model): string {
  if (m.status.is === "waiting") return "";
  return m.status.is === "working" ? "Working it out." : stateWords(m);
}

/** Everything that is wrong, each leading to its field. */
function Problem({ m }: { readonly m: Model }) {
  return (
    <div class="faults" role="alert">
      <ul>
        {m.problem?.faults.map(({ pointer = "", wrong, cure }) => (
          <li>
            <button type="button" class="link" onClick={() => goTo(m, pointer)}>
              {wrong}
            </button>{" "}
            {cure}
          </li>
        ))}
      </ul>
    </div>
  );
}

/** The field of a fault, or the nearest thing above it that can be seen. */
function goTo(m: Model, pointer: string): void {
  for (let at = pointer; at !== ""; at = at.slice(0, at.lastIndexOf("/"))) {
    const found = document.getElementById(idOf(at));
    if (!found) continue;
    found.focus();
    found.scrollIntoView({ block: "center" });
    return;
  }
  const name = pointer.split("/").at(-1) ?? "";
  if (/^\/(overrides|assumptions)\//.test(pointer)) m.acts.showCell(name);
}
