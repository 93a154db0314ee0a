/** What can be done to the page: buttons and boxes call these. */
import { fetchJson } from "./client.js";
import type { Desk } from "./desk.js";
import { COMPARED } from "./folds.js";
import { toFragment } from "./fragment.js";
import { isFields, type Json, valueAt, withValue } from "./json.js";
import type { Acts } from "./model.js";

/** All of them, done at one desk. */
export function actsAt(desk: Desk): Acts {
  const open = (request: Json): void => {
    desk.put({ prices: undefined, problem: undefined });
    desk.change(request, "");
    if (desk.shown.panels.has("give-catalog")) void desk.bringPrices();
  };
  return {
    edit: (pointer, value) => desk.change(edited(desk.shown.request, pointer, value), pointer),
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
    if (cell !== undefined && desk.shown.cell === undefined) opener = document.activeElement as HTMLElement | null;
    desk.put({ cell });
    if (cell !== undefined) void desk.bringSheet();
    else opener?.focus();
  };
}

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
  desk.put({ panels });
  if (open && name === "sheet") void desk.bringSheet();
  if (open && name === COMPARED) void desk.bringCompared();
  if (open && name === "give-catalog") void desk.bringPrices();
}
