/** What the page holds in the browser: the request, its answer, what was before, and the call under way. */
import { askForEstimate, type Outcome } from "./asking.js";
import { askBeside } from "./beside.js";
import { fetchJson } from "./client.js";
import { COMPARED, panelsOver } from "./folds.js";
import { toFragment } from "./fragment.js";
import { isFields, type Json, valueAt, withValue } from "./json.js";
import type { Include, Model, Problem } from "./model.js";
import { withoutPending } from "./pending.js";
import { whenTyped } from "./typing.js";

/** Time without a keystroke after which a change is sent, in ms. */
const PAUSE = 450;
/** The same for the drawing, which comes fast. */
const DRAWING_PAUSE = 120;
/** Steps that can be taken back. */
const MOST_STEPS = 200;
/** Longest address that is sure to be kept by browsers and mail programs, in characters. Assumption. */
const LONGEST_FRAGMENT = 60_000;
/** What is asked for with every change; the whole sheet only when someone looks at it. */
const USUAL: readonly Include[] = ["workings", "plans", "drawings"];

/** Everything that is shown, without what can be done about it. */
export type Shown = Omit<Model, "acts" | "canUndo" | "canRedo">;

/** All that changes, outside of the drawing of it: a keystroke never waits for the page. */
export class Desk {
  private past: Json[] = [];
  private future: Json[] = [];
  private timer: ReturnType<typeof setTimeout> | undefined;
  private call: AbortController | undefined;
  private drawing: AbortController | undefined;
  private comparing: AbortController | undefined;
  private lastPlace = "";

  constructor(
    public shown: Shown,
    private readonly redraw: (model: Omit<Model, "acts">) => void,
  ) {}

  model(): Omit<Model, "acts"> {
    return { ...this.shown, canUndo: this.past.length > 0, canRedo: this.future.length > 0 };
  }

  put(change: Partial<Shown>): void {
    this.shown = { ...this.shown, ...change };
    this.redraw(this.model());
  }

  /** Takes another request. Keystrokes in one place are one step back; an empty place is a step of its own. */
  change(request: Json, place: string): void {
    if (place === "" || place !== this.lastPlace) this.past = [...this.past, this.shown.request].slice(-MOST_STEPS);
    this.lastPlace = place;
    this.future = [];
    this.put({
      request: place === "" ? request : searchedOnce(request, place),
      problem: place === "" ? this.shown.problem : without(this.shown.problem, place),
      ...{ status: { is: "waiting" }, said: "" },
    });
    this.soon(PAUSE);
    if (place === "" || place.startsWith("/structure")) this.drawSoon();
  }

  /** A step back, or forward again. */
  step(way: "undo" | "redo"): void {
    const [from, to] = way === "undo" ? ([this.past, this.future] as const) : ([this.future, this.past] as const);
    const request = from.pop();
    if (request === undefined) return;
    to.push(this.shown.request);
    this.lastPlace = "";
    this.put({ request, status: { is: "waiting" }, said: way === "undo" ? "Taken back." : "Done again." });
    this.soon(0);
    this.drawSoon();
  }

  /** Asks for an estimate after a pause, in the place of any call under way. */
  soon(pause: number): void {
    this.giveUp();
    this.timer = setTimeout(() => void this.estimate(), pause);
  }

  stop(): void {
    this.giveUp();
    this.put({ status: { is: "stopped" } });
  }

  private giveUp(): void {
    this.call?.abort();
    clearTimeout(this.timer);
  }

  private async estimate(): Promise<void> {
    const call = new AbortController();
    this.call = call;
    this.put({ status: { is: "working", stage: "asking", step: 0, steps: 0, done: 0, of: 1 } });
    const sent = withoutPending(this.shown.request);
    const outcome = await askForEstimate(sent, USUAL, {
      signal: call.signal,
      report: (progress) => call === this.call && this.put({ status: { is: "working", ...progress } }),
    });
    if (call.signal.aborted || call !== this.call) return;
    this.take(outcome, call.signal);
  }

  private take(outcome: Outcome, call: AbortSignal): void {
    if ("answer" in outcome) {
      const { answer } = outcome;
      const searched = answer.decision.frontier.length > 0 ? answer : this.shown.searched;
      const { headline } = answer.decision.verdict;
      const news = headline === this.shown.answer?.decision.verdict.headline ? "" : headline;
      this.put({
        answer,
        searched,
        news,
        problem: undefined,
        sheetIsNew: false,
        drawn: undefined,
        status: { is: "fresh" },
      });
      void this.keep();
      if (this.wantsSheet()) void this.bringSheet();
      if (this.shown.panels.has(COMPARED)) void this.bringCompared();
      else this.shown = { ...this.shown, compared: undefined };
    } else if ("problem" in outcome) {
      const { problem } = outcome;
      this.put({ status: { is: "waiting" } });
      whenTyped(
        problem.faults.map(({ pointer = "" }) => pointer),
        call,
        () => this.refuse(problem),
      );
    } else if ("busy" in outcome) {
      this.put({ status: { is: "busy", seconds: outcome.busy } });
      this.timer = setTimeout(() => void this.estimate(), outcome.busy * 1000);
    } else this.put({ status: { is: "offline" } });
  }

  private refuse(problem: Problem): void {
    const panels = new Set(this.shown.panels);
    for (const { pointer = "" } of problem.faults) for (const panel of panelsOver(pointer)) panels.add(panel);
    const status =
      problem.faults.length > 0 ? ({ is: "refused" } as const) : ({ is: "broken", detail: problem.detail } as const);
    this.put({ problem, panels, status });
  }

  /** The address holds the request, so that a reload or a bookmark finds it again. */
  private async keep(): Promise<void> {
    const { request } = this.shown;
    const fragment = await toFragment(request);
    if (request !== this.shown.request) return;
    history.replaceState(null, "", fragment.length <= LONGEST_FRAGMENT ? `#${fragment}` : "#");
  }

  private wantsSheet(): boolean {
    return this.shown.panels.has("sheet") || this.shown.cell !== undefined;
  }

  /** Asks once more, with the plans held: the same answer, much sooner. */
  async bringSheet(): Promise<void> {
    const { request, answer } = this.shown;
    const sent = withoutPending(request);
    if (this.shown.sheetIsNew || !answer || this.shown.status.is !== "fresh") return;
    const held = isFields(sent) ? { ...sent, heldPlans: sent.heldPlans ?? answer.heldPlans } : sent;
    const signal = new AbortController().signal;
    const outcome = await askForEstimate(held, ["sheet", "workings"], { signal, report: () => {} });
    if (request !== this.shown.request) return;
    if ("answer" in outcome) this.put({ sheet: outcome.answer.sheet, sheetIsNew: true });
    else this.put({ said: "The workings did not come. Try again." });
  }

  /** Draws what is typed before it is estimated: takeoffs need no plans and no prices. What can't be drawn yet waits. */
  private drawSoon(): void {
    this.drawing?.abort();
    const call = new AbortController();
    this.drawing = call;
    setTimeout(async () => {
      const { request } = this.shown;
      if (call.signal.aborted) return;
      const { structure, options, overrides } = isFields(request) ? request : {};
      const found = await askBeside("makeTakeoffs", { structure, options, overrides }, ["drawings"], call.signal);
      if (call.signal.aborted || !found?.geometry || this.shown.status.is === "fresh") return;
      this.put({ drawn: found.geometry });
    }, DRAWING_PAUSE);
  }

  /** Sets the coverings side by side; those of before stand until they come. */
  async bringCompared(): Promise<void> {
    const { request, status } = this.shown;
    if (status.is !== "fresh") return;
    this.comparing?.abort();
    const call = new AbortController();
    this.comparing = call;
    const all = withValue(withoutPending(request), "/options/coverings", undefined);
    const compared = await askBeside("compareCoverings", all, ["workings"], call.signal);
    if (call.signal.aborted) return;
    this.put(compared ? { compared } : { said: "The other coverings did not come. Try again." });
  }

  /** Brings the prices that the request only names. */
  async bringPrices(): Promise<void> {
    const name = valueAt(this.shown.request, "/catalog/demo");
    if (typeof name !== "string" || this.shown.prices !== undefined) return;
    try {
      this.put({ prices: await fetchJson("getDemoCatalog", { path: { name } }) });
    } catch {
      this.put({ said: "The prices did not come: no network?" });
    }
  }
}

/** A problem without what it said of a place that has changed since; undefined where nothing is left of it. */
function without(problem: Problem | undefined, place: string): Problem | undefined {
  const faults = problem?.faults.filter(({ pointer = "" }) => pointer !== place && !pointer.startsWith(`${place}/`));
  return problem && faults && faults.length > 0 ? { ...problem, faults } : undefined;
}

/** Where a request asks for the mixes between. */
const MIXES = "/options/frontier";

/** Searching the mixes between is dear: it is done when asked for, and not again with every change after that. */
const searchedOnce = (request: Json, place: string): Json =>
  place === MIXES ? request : withValue(request, MIXES, undefined);
