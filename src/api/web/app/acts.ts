/** What can be done to the page: buttons and boxes call these. */
import { fetchJson } from "./client.js";
import type { Desk, Shown } from "./desk.js";
import { COMPARED } from "./folds.js";
import { toFragment } from "./fragment.js";
import { isFields, type Json, valueAt, withValue } from "./json.js";
import type { Acts } from "./model.js";
import { print } from "./printing.js";

/** All of them, done at one desk. */
export function actsAt(desk: Desk): Acts {
  const open = (request: Json): void => {
    desk.put({ prices: undefined, problem: undefined, searched: undefined });
    desk.change(request, "");
    if (desk.shown.panels.has("give-catalog")) void desk.bringPrices();
  };
  return {
    edit: (pointer, value) => {
      desk.change(edited(desk.shown.request, pointer, value), pointer);
      if (pointer === MEASURE) desk.put({ said: OTHER_MEASURES });
    },
    undo: () => desk.step("undo"),
    redo: () => desk.step("redo"),
    cancel: () => desk.stop(),
    retry: () => desk.soon(0),
    open,
    openDemo: async (name) => {
      try {
        const request = await fetchJson("getDemo", { path: { name } });
        if (request) open(request);
      } catch {
        desk.put({ status: { is: "offline" } });
      }
    },
    openFile: async (file) => {
      const request = await readProject(file);
      if (request) open(request);
      const words = request ? "is open." : "is no project of this page: it holds no JSON object.";
      desk.put({ said: `${file.name} ${words}` });
    },
    saveFile: () => download(fileName(desk.shown.request), `${JSON.stringify(desk.shown.request, null, 2)}\n`),
    copyLink: () => copyLink(desk),
    print: (all) => void print(desk, all),
    download,
    showCell: cellCard(desk),
    wantSheet: () => void desk.bringSheet(),
    wantPrices: () => void desk.bringPrices(),
    openPanel: (name, isOpen) => openPanel(desk, name, isOpen),
    goTo: (panel, id) => {
      if (panel !== "") openPanel(desk, panel, true);
      focusSoon(id);
    },
    say: (said) => desk.put({ said }),
  };
}

/** Where the measure system is chosen, and what that does besides. */
const MEASURE = "/options/measure";
const OTHER_MEASURES = "What you typed stays as it is; sizes that you left open are now usual ones of this measure.";

/** Parts whose mere presence counts: a floor without a word about its joists is still a floor. */
const PRESENT = /^\/structure\/(floor|footings|walls)\/[^/]+$/;

function edited(request: Json, pointer: string, value: Json): Json {
  const next = withValue(request, pointer, value);
  if (value !== undefined || !PRESENT.test(pointer)) return next;
  const part = pointer.slice(0, pointer.lastIndexOf("/"));
  return valueAt(next, part) === undefined ? withValue(next, part, {}) : next;
}

async function readProject(file: File): Promise<Json> {
  try {
    const request: unknown = JSON.parse(await file.text());
    return isFields(request) ? request : undefined;
  } catch {
    return undefined;
  }
}

function fileName(request: Json): string {
  const title = String(valueAt(request, "/title") ?? "");
  const stem = title
    .toLowerCase()
    .replaceAll(/[^a-z0-9]+/g, "-")
    .replaceAll(/^-|-$/g, "");
  return `${stem || "project"}.json`;
}

function download(name: string, text: string): void {
  const link = document.createElement("a");
  link.href = URL.createObjectURL(new Blob([text], { type: "application/octet-stream" }));
  link.download = name;
  link.click();
  setTimeout(() => URL.revokeObjectURL(link.href), 10_000);
}

async function copyLink(desk: Desk): Promise<void> {
  const link = `${location.origin}/#${await toFragment(desk.shown.request)}`;
  try {
    await navigator.clipboard.writeText(link);
    desk.put({ said: "The link is copied. Whoever opens it sees this project." });
  } catch {
    history.replaceState(null, "", link);
    desk.put({ said: "The link is in the address bar: copy it from there." });
  }
}

/** Opens the card of a cell, shuts it, and gives the focus back to what it was opened from. */
function cellCard(desk: Desk): Acts["showCell"] {
  let opener: HTMLElement | null = null;
  return (cell) => {
    const before = desk.shown.cell;
    if (cell !== undefined && before === undefined) opener = document.activeElement as HTMLElement | null;
    // Figures of an answer before are no answer to a question of now.
    desk.put({ cell, cellsBefore: cellsBefore(desk.shown, cell), ...older(desk) });
    // What led here may be gone with its card.
    if (cell !== undefined && before !== undefined) document.getElementById("close-card")?.focus();
    if (cell !== undefined) void desk.bringSheet();
    else opener?.focus();
  };
}

/** The way back from a card: one step shorter where it is taken. */
function cellsBefore({ cell, cellsBefore: before }: Shown, next: string | undefined): readonly string[] {
  if (next === undefined || cell === undefined || next === cell) return [];
  return next === before.at(-1) ? before.slice(0, -1) : [...before, cell];
}

/** Takes away a sheet that nobody is looking at and that is not this answer's. */
const older = ({ shown }: Desk) =>
  shown.sheetIsNew || shown.cell !== undefined || shown.panels.has("sheet") ? {} : { sheet: undefined };

/** Frames that an element may take to appear. */
const MOST_FRAMES = 60;

/** Puts the cursor on an element as soon as it can take it: it may not be drawn yet, or lie in a shut fold. */
function focusSoon(id: string, frames = MOST_FRAMES): void {
  const found = document.getElementById(id);
  const shut = found?.closest<HTMLDetailsElement>("details:not([open])");
  if (shut) shut.open = true;
  found?.focus({ preventScroll: true });
  if (found && found === document.activeElement) found.scrollIntoView({ block: "center" });
  else if (frames > 0) requestAnimationFrame(() => focusSoon(id, frames - 1));
}

function openPanel(desk: Desk, name: string, open: boolean): void {
  if (desk.shown.panels.has(name) === open) return;
  const panels = new Set(desk.shown.panels);
  if (open) panels.add(name);
  else panels.delete(name);
  desk.put({ panels, ...(open && name === "sheet" ? older(desk) : {}) });
  if (open && name === "sheet") void desk.bringSheet();
  if (open && name === COMPARED) void desk.bringCompared();
  if (open && name === "give-catalog") void desk.bringPrices();
}
