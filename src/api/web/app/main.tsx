/** The form in the browser: takes the page over from the server and keeps it in step with the request. */
import { useEffect, useState } from "hono/jsx";
import { render } from "hono/jsx/dom";
import { actsAt } from "./acts.js";
import { Desk } from "./desk.js";
import { OPEN_FIRST, OPEN_ON_PHONE } from "./folds.js";
import { fromFragment, isPacked } from "./fragment.js";
import { valueAt } from "./json.js";
import type { Model, Start } from "./model.js";
import { unfoldForPrinting } from "./printing.js";
import { Screen } from "./screen.js";

const start = JSON.parse(document.getElementById("start")?.textContent ?? "{}") as Start;
const wide = matchMedia("(min-width: 60rem)").matches;

let redraw: (model: Omit<Model, "acts">) => void = () => {};
const desk = new Desk(
  {
    ...{ request: start.request, answer: start.answer, spec: start.spec, demos: start.demos, status: { is: "fresh" } },
    ...{
      problem: undefined,
      sheet: undefined,
      cell: undefined,
      prices: undefined,
      said: "",
      news: "",
      cellsBefore: [],
      live: true,
    },
    ...{ compared: undefined, drawn: undefined, sheetIsNew: false, searched: start.answer },
    panels: new Set(wide ? OPEN_FIRST : OPEN_ON_PHONE),
  },
  (model) => redraw(model),
);
const acts = actsAt(desk);

/** Draws the desk, again with every change. */
function Page() {
  const [model, setModel] = useState(desk.model());
  redraw = setModel;
  const title = String(valueAt(model.request, "/title") ?? "");
  useEffect(() => {
    document.title = `${title || "Untitled project"}: mill it or buy it? – Boleworth`;
  }, [title]);
  useEffect(() => {
    const card = document.getElementById("card") as HTMLDialogElement | null;
    if (!card || card.open) return;
    card.showModal();
    card.addEventListener("close", () => acts.showCell(undefined));
  }, [model.cell]);
  return <Screen m={{ ...model, acts }} />;
}

/** A request in the address goes before the demo. Another fragment is a place on the page. */
async function openFragment(): Promise<void> {
  const fragment = location.hash.slice(1);
  if (!isPacked(fragment)) return;
  const request = await fromFragment(fragment);
  if (request !== undefined) acts.open(request);
  else acts.say("The address holds no project that can be read; this is the demo.");
}

/** A jump within the page leaves the address alone: it holds the project. */
function skipTo(event: Event): void {
  const link = (event.target as Element).closest?.("a.skip");
  const place = link && document.getElementById(link.getAttribute("href")?.slice(1) ?? "");
  if (!place) return;
  event.preventDefault();
  place.tabIndex = -1;
  place.focus();
}

const page = document.getElementById("page");
if (page) {
  render(<Page />, page);
  void openFragment();
  addEventListener("hashchange", () => void openFragment());
  unfoldForPrinting(desk);
  addEventListener("click", skipTo);
  addEventListener("online", () => desk.shown.status.is === "offline" && acts.retry());
}
