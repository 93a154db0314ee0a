/** The form in the browser: takes the page over from the server and keeps it in step with the request. */
import { useEffect, useState } from "hono/jsx";
import { render } from "hono/jsx/dom";
import { askForEstimate, type Outcome } from "./asking.js";
import { fromFragment, isPacked, toFragment } from "./fragment.js";
import { isFields, type Json, valueAt, withValue } from "./json.js";
import type { Acts, Model, Problem, Start } from "./model.js";
import { Screen } from "./screen.js";

/** Time without a keystroke after which a change is sent, in ms. */
const PAUSE = 450;
/** Steps that can be taken back. */
const MOST_STEPS = 200;
/** Longest address that is sure to be kept by browsers and mail programs, in characters. Assumption. */
const LONGEST_FRAGMENT = 60_000;

const start = JSON.parse(document.getElementById("start")?.textContent ?? "{}") as Start;

/** Panels of a phone start shut, so that the verdict is not buried below questions. */
const wide = matchMedia("(min-width: 60rem)").matches;
const OPEN = wide ? ["give-structure", "pieces", "hours", "sawing", "shopping", "cautions"] : ["cautions"];

type Shown = Omit<Model, "acts" | "canUndo" | "canRedo">;

/** Panels that are printed. */
const ON_PAPER = ["pieces", "hours", "sawing", "shopping", "covering", "rafter", "cautions"];

/** All that changes, outside of the drawing of it: a keystroke never waits for the page. */
class Desk {
  shown: Shown = {
    ...{ request: start.request, answer: start.answer, spec: start.spec, demos: start.demos, status: { is: "fresh" } },
    ...{ problem: undefined, sheet: undefined, cell: undefined, prices: undefined, said: "", live: true },
    panels: new Set(OPEN),
  };
  private past: Json[] = [];
  private future: Json[] = [];
  private timer: ReturnType<typeof setTimeout> | undefined;
  private call: AbortController | undefined;
  private lastPlace = "";
  /** What the card was opened from; gets the focus back. */
  private opener: HTMLElement | null = null;
  redraw: (model: Model) => void = () => {};

  model(): Model {
    return { ...this.shown, acts: this.acts, canUndo: this.past.length > 0, canRedo: this.future.length > 0 };
  }

  put(change: Partial<Shown>): void {
    this.shown = { ...this.shown, ...change };
    this.redraw(this.model());
  }

  /** Keystrokes in one field are one step back. */
  private change(request: Json, place: string): void {
    if (place === "" || place !== this.lastPlace) this.past = [...this.past, this.shown.request].slice(-MOST_STEPS);
    this.lastPlace = place;
    this.future = [];
    this.put({ request, status: { is: "waiting" }, said: "" });
    this.soon(PAUSE);
  }

  private soon(pause: number): void {
    this.call?.abort();
    clearTimeout(this.timer);
    this.timer = setTimeout(() => void this.estimate(), pause);
  }

  private async estimate(): Promise<void> {
    const call = new AbortController();
    this.call = call;
    this.put({ status: { is: "working", stage: "asking", done: 0, of: 1 } });
    const outcome = await askForEstimate(this.shown.request, ["workings", "plans"], {
      signal: call.signal,
      report: (progress) => call === this.call && this.put({ status: { is: "working", ...progress } }),
    });
    if (call.signal.aborted || call !== this.call) return;
    this.take(outcome);
  }

  private take(outcome: Outcome): void {
    if ("answer" in outcome) {
      this.put({ answer: outcome.answer, problem: undefined, sheet: undefined, status: { is: "fresh" } });
      void this.keep();
      if (this.wantsSheet()) void this.bringSheet();
    } else if ("problem" in outcome) this.refuse(outcome.problem);
    else if ("busy" in outcome) {
      this.put({ status: { is: "busy", seconds: outcome.busy } });
      this.timer = setTimeout(() => void this.estimate(), outcome.busy * 1000);
    } else if ("offline" in outcome) this.put({ status: { is: "offline" } });
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
  private async bringSheet(): Promise<void> {
    const { request, answer } = this.shown;
    if (this.shown.sheet || !answer || this.shown.status.is !== "fresh") return;
    const held = isFields(request) ? { ...request, heldPlans: request.heldPlans ?? answer.heldPlans } : request;
    const signal = new AbortController().signal;
    const outcome = await askForEstimate(held, ["sheet", "workings"], { signal, report: () => {} });
    if (request !== this.shown.request) return;
    if ("answer" in outcome) this.put({ sheet: outcome.answer.sheet });
    else this.put({ said: "The workings did not come. Try again." });
  }

  private async bringPrices(): Promise<void> {
    const name = valueAt(this.shown.request, "/catalog/demo");
    if (typeof name !== "string") return;
    try {
      const response = await fetch(`/v1/demo-catalogs/${encodeURIComponent(name)}`);
      if (response.ok) this.put({ prices: await response.json() });
    } catch {
      this.put({ said: "The prices did not come: no network?" });
    }
  }

  readonly acts: Acts = {
    edit: (pointer, value) => this.change(withValue(this.shown.request, pointer, value), pointer),
    undo: () => this.step("past", "future"),
    redo: () => this.step("future", "past"),
    cancel: () => {
      clearTimeout(this.timer);
      this.call?.abort();
      this.put({ status: { is: "stopped" } });
    },
    retry: () => this.soon(0),
    open: (request) => {
      this.put({ prices: undefined, problem: undefined });
      this.change(request, "");
      if (this.shown.panels.has("give-catalog")) void this.bringPrices();
    },
    openDemo: async (name) => {
      try {
        const response = await fetch(`/v1/demos/${encodeURIComponent(name)}`);
        if (response.ok) this.acts.open(await response.json());
      } catch {
        this.put({ status: { is: "offline" } });
      }
    },
    openFile: async (file) => {
      try {
        const request: unknown = JSON.parse(await file.text());
        if (!isFields(request)) throw new Error("no object");
        this.acts.open(request);
        this.put({ said: `${file.name} is open.` });
      } catch {
        this.put({ said: `${file.name} is no project of this page: it holds no JSON object.` });
      }
    },
    saveFile: () => {
      const title = String(valueAt(this.shown.request, "/title") ?? "project");
      const name =
        title
          .toLowerCase()
          .replaceAll(/[^a-z0-9]+/g, "-")
          .replaceAll(/^-|-$/g, "") || "project";
      this.acts.download(`${name}.json`, `${JSON.stringify(this.shown.request, null, 2)}\n`);
    },
    copyLink: async () => {
      const link = `${location.origin}/#${await toFragment(this.shown.request)}`;
      try {
        await navigator.clipboard.writeText(link);
        this.put({ said: "The link is copied. Whoever opens it sees this project." });
      } catch {
        history.replaceState(null, "", link);
        this.put({ said: "The link is in the address bar: copy it from there." });
      }
    },
    download: (name, text) => {
      const link = document.createElement("a");
      link.href = URL.createObjectURL(new Blob([text], { type: "application/octet-stream" }));
      link.download = name;
      link.click();
      setTimeout(() => URL.revokeObjectURL(link.href), 10_000);
    },
    showCell: (cell) => {
      if (cell !== undefined && this.shown.cell === undefined)
        this.opener = document.activeElement as HTMLElement | null;
      this.put({ cell });
      if (cell !== undefined) void this.bringSheet();
      else this.opener?.focus();
    },
    wantSheet: () => void this.bringSheet(),
    wantPrices: () => void this.bringPrices(),
    openPanel: (name, open) => {
      if (this.shown.panels.has(name) === open) return;
      const panels = new Set(this.shown.panels);
      if (open) panels.add(name);
      else panels.delete(name);
      this.put({ panels });
      if (open && name === "sheet") void this.bringSheet();
      if (open && name === "give-catalog" && this.shown.prices === undefined) void this.bringPrices();
    },
    say: (said) => this.put({ said }),
  };

  /** What hangs on the shop wall can't be unfolded there. */
  unfoldForPaper(): void {
    this.put({ panels: new Set([...this.shown.panels, ...ON_PAPER]) });
  }

  private step(from: "past" | "future", to: "past" | "future"): void {
    const request = this[from].at(-1);
    if (request === undefined) return;
    this[to] = [...this[to], this.shown.request];
    this[from] = this[from].slice(0, -1);
    this.lastPlace = "";
    this.put({ request, status: { is: "waiting" }, said: from === "past" ? "Taken back." : "Done again." });
    this.soon(0);
  }
}

/** Every fold that stands over a place of the request. */
function panelsOver(pointer: string): string[] {
  const steps = pointer.split("/").slice(1);
  const prefixes = steps.map((_, index) => `/${steps.slice(0, index + 1).join("/")}`);
  const top: Record<string, string> = { labor: "shop", site: "options", overrides: "own" };
  const first = steps[0] ?? "";
  return [`give-${top[first] ?? first}`, ...prefixes.flatMap((at) => [`more${at}`, `table${at}`])];
}

const desk = new Desk();

/** Draws the desk, again with every change. */
function Page() {
  const [model, setModel] = useState(desk.model());
  desk.redraw = setModel;
  useEffect(() => {
    const card = document.getElementById("card") as HTMLDialogElement | null;
    if (!card || card.open) return;
    card.showModal();
    card.addEventListener("close", () => desk.acts.showCell(undefined));
  }, [model.cell]);
  return <Screen m={model} />;
}

/** A request in the address goes before the demo. Another fragment is a place on the page. */
async function openFragment(): Promise<void> {
  const fragment = location.hash.slice(1);
  if (!isPacked(fragment)) return;
  const request = await fromFragment(fragment);
  if (request !== undefined) desk.acts.open(request);
  else desk.acts.say("The address holds no project that can be read; this is the demo.");
}

const page = document.getElementById("page");
if (page) {
  render(<Page />, page);
  void openFragment();
  addEventListener("hashchange", () => void openFragment());
  addEventListener("beforeprint", () => desk.unfoldForPaper());
  addEventListener("online", () => desk.shown.status.is === "offline" && desk.acts.retry());
}
