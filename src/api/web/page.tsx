/** The page at `/`, drawn with a demo's answer in it: readable and printable before any script has come. */
import { readFileSync } from "node:fs";
import { raw } from "hono/html";
import { estimate } from "../../estimate/estimate.js";
import { readEstimateRequest } from "../../estimate/request/request.js";
import { demoCatalogs, demoList, demoRequest } from "../demos.js";
import { planners } from "../planners.js";
import { digestOf, provenance } from "../provenance.js";
import { shownEstimate } from "../render/json/estimate.js";
import { OPEN_FIRST } from "./app/folds.js";
import type { Acts, Model, Start } from "./app/model.js";
import { Screen } from "./app/screen.js";
import { Blocks, foldsOf } from "./app/sheet.js";
import { formSpec } from "./fields.js";

/** The demo that the page opens with. */
const DEMO = "orchard-shelter";

/** Parts of the style, in the order in which they are read: a later rule of the same weight wins. */
const STYLE = ["base", "controls", "page", "questions", "answers", "plot", "narrow", "print"] as const;

/** Style of the page: one file to fetch, so that nothing moves when a second one comes. */
export const WEB_STYLE = STYLE.map((part) => readFileSync(new URL(`style/${part}.css`, import.meta.url), "utf8")).join(
  "",
);

let pages: { readonly form: string; readonly workings: string } | undefined;

/** The page at `/`. Its demo never changes while the process runs, so it is worked out once. */
export const webPage = (): string => drawn().form;

/** Every number of the demo with its working, for who has no scripts; with them, the form brings its own. */
export const workingsPage = (): string => drawn().workings;

function drawn(): NonNullable<typeof pages> {
  pages ??= draw();
  return pages;
}

function draw(): NonNullable<typeof pages> {
  const request = opening();
  const read = readEstimateRequest(request, demoCatalogs());
  if ("faults" in read) throw new Error(`the demo ${DEMO} has faults`);
  const made = estimate(read.value, planners());
  const shown = (include: Parameters<typeof shownEstimate>[2]) =>
    shownEstimate(made, provenance(digestOf(request)), include);
  const demos = demoList().demos.map(({ name, title }) => ({ name, title }));
  const start: Start = { request, answer: shown(["workings", "plans", "drawings"]), spec: formSpec(), demos };
  const model = still(start);
  const form = (
    <Page title="Boleworth: mill it or buy it?">
      <script type="module" src="/assets/web/main.js" />
      <div id="page">
        <Screen m={model} />
      </div>
      <script type="application/json" id="start">
        {raw(inScript(start))}
      </script>
    </Page>
  );
  const { sheet } = shown(["sheet", "workings"]);
  const workings = (
    <Page title="Boleworth: every number of the demo">
      <main id="main" class="alone">
        <h1>Every number of the demo, with its working</h1>
        <p>
          <a href="/">Back to the demo</a>
        </p>
        <Blocks m={{ ...model, sheet, panels: new Set(foldsOf(sheet)) }} />
      </main>
    </Page>
  );
  return { form: `<!doctype html>${form}`, workings: `<!doctype html>${workings}` };
}

/** The demo with its frontier searched: the first look is at all there is. */
function opening(): object {
  const demo = demoRequest(DEMO) as { readonly options?: object };
  return { ...demo, options: { ...demo.options, frontier: true } };
}

const nothing = (): void => {};
const ACTS: Acts = {
  ...{ edit: nothing, undo: nothing, redo: nothing, cancel: nothing, retry: nothing, open: nothing, openDemo: nothing },
  ...{ openFile: nothing, saveFile: nothing, copyLink: nothing, print: nothing, download: nothing, showCell: nothing },
  ...{ wantSheet: nothing, wantPrices: nothing, openPanel: nothing, goTo: nothing, say: nothing },
};

/** The model as it stands before anything can be done. */
const still = (start: Start): Model => ({
  ...start,
  ...{ problem: undefined, status: { is: "fresh" }, sheet: undefined, cell: undefined, prices: undefined },
  ...{ compared: undefined, drawn: undefined, sheetIsNew: false, searched: undefined },
  ...{
    panels: new Set(OPEN_FIRST),
    said: "",
    news: "",
    cellsBefore: [],
    canUndo: false,
    canRedo: false,
    live: false,
    acts: ACTS,
  },
});

function Page({ title, children }: { readonly title: string; readonly children?: unknown }) {
  return (
    <html lang="en">
      <head>
        <meta charset="utf-8" />
        <meta name="viewport" content="width=device-width, initial-scale=1" />
        <meta name="color-scheme" content="light dark" />
        <title>{title}</title>
        <meta
          name="description"
          content="From fallen logs and a shelter to build: what to mill, what to buy, and why."
        />
        <link rel="icon" href="/assets/web/icon.svg" type="image/svg+xml" />
        <link rel="stylesheet" href="/assets/web/style.css" />
      </head>
      <body>
        <a class="skip" href="#main">
          To the answer
        </a>
        <a class="skip" href="#give">
          To your project
        </a>
        {children}
        <footer>
          <p>
            Boleworth never says that a structure is strong enough: ask the local code and a licensed engineer. For
            programs: <a href="/docs">all calls</a>. Nothing you type is kept by the service.
          </p>
        </footer>
      </body>
    </html>
  );
}

/** JSON that no text in it can end early. */
const inScript = (value: unknown): string => JSON.stringify(value).replaceAll("<", "\\u003c");

/** A log's end: the mark of the page. */
export const WEB_ICON = `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 32 32"><circle cx="16" cy="16" r="15" fill="#5b3a21"/><circle cx="16" cy="16" r="12.5" fill="#e3b778"/><circle cx="16" cy="16" r="8" fill="none" stroke="#a8743a" stroke-width="1.5"/><circle cx="16" cy="16" r="3.5" fill="none" stroke="#a8743a" stroke-width="1.5"/></svg>`;
