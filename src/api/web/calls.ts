/** The addresses of the web form: the page, its style, its mark and its script. */
import { type AnyCall, call } from "../call.js";
import { Refusal } from "../problem.js";
import { scripts } from "./bundle.js";
import { WEB_ICON, WEB_STYLE, webPage, workingsPage } from "./page.js";

/** What the form is made of. */
export const webCalls: readonly AnyCall[] = [
  call({
    method: "get",
    path: "/",
    id: "getForm",
    tag: "Pages",
    summary: "The web form",
    description: "A page to try the whole service by hand; it comes with a demo's answer and uses these calls alone.",
    freshness: "data",
    run: () => {
      // Built while the page is read; if that fails, the call for the script says so.
      scripts().catch(() => {});
      return webPage();
    },
    faces: { "text/html": { description: "A page that can be read without its script.", render: (page) => page } },
  }),
  call({
    method: "get",
    path: "/workings",
    id: "getDemoWorkings",
    tag: "Pages",
    hidden: true,
    summary: "Workings of the form's demo",
    description: "Every number of the demo that the form opens with, for browsers without scripts.",
    freshness: "data",
    run: () => workingsPage(),
    faces: { "text/html": { description: "A page without a script.", render: (page) => page } },
  }),
  call({
    method: "get",
    path: "/assets/web/style.css",
    id: "getFormStyle",
    tag: "Pages",
    hidden: true,
    summary: "Style of the form",
    description: "Style of the page at /.",
    freshness: "data",
    run: () => WEB_STYLE,
    faces: { "text/css": { description: "A style sheet.", render: (style) => style } },
  }),
  call({
    method: "get",
    path: "/assets/web/icon.svg",
    id: "getFormIcon",
    tag: "Pages",
    hidden: true,
    summary: "Mark of the form",
    description: "A log's end.",
    freshness: "data",
    run: () => WEB_ICON,
    faces: { "image/svg+xml": { description: "A drawing.", render: (icon) => icon } },
  }),
  call({
    method: "get",
    path: "/assets/web/{file}",
    id: "getFormScript",
    tag: "Pages",
    hidden: true,
    summary: "Script of the form",
    description: "Script of the page at /, in parts.",
    parameters: { file: { description: "Name of a part.", example: "main.js" } },
    freshness: "data",
    run: async ({ path }) => {
      const built = await scripts();
      const found = built.get(path.file ?? "");
      if (found !== undefined) return found;
      throw new Refusal("not-found", "The form has no such part.", { choices: [...built.keys()] });
    },
    faces: { "text/javascript": { description: "A module.", render: (script) => script } },
  }),
];
