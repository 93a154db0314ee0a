/** The form in a real Chromium: how heavy it is, when it can be read, and how soon an edit shows. */
import { gzipSync } from "node:zlib";
import { scripts } from "../../src/api/web/bundle.js";
import { webPage } from "../../src/api/web/page.js";
import { hasBrowser, openStage, type Stage, visit } from "../browser/browser.js";
import type { Measured } from "./run.js";

const kilobytes = (text: string): number => Number((gzipSync(text).length / 1000).toPrecision(3));

const atMost = (name: string, value: number, most: number, unit: string): Measured => ({
  ...{ name, unit, value, target: `≤ ${most} ${unit}` },
  holds: value <= most,
});

export async function bench(): Promise<Measured[]> {
  const packed = [...(await scripts()).values()].reduce((sum, text) => sum + kilobytes(text), 0);
  const page: Measured = {
    name: "page, packed",
    value: kilobytes(webPage()),
    unit: "KB",
    target: "reported",
    holds: true,
  };
  const weights = [atMost("scripts, packed", Number(packed.toPrecision(3)), 150, "KB"), page];
  if (!hasBrowser) return weights;
  const stage = await openStage();
  try {
    await opened(stage); // the first page starts the browser's own processes
    const views = [await opened(stage), await opened(stage), await opened(stage)];
    const redraws = await redrawn(stage, ["15 ft", "15 ft 6 in", "14 ft", "14 ft 6 in", "16 ft"]);
    return [
      ...weights,
      atMost("first useful view, median of 3", middle(views), 1000, "ms"),
      atMost("an edit redrawn after its answer came, median of 5", middle(redraws), 300, "ms"),
    ];
  } finally {
    await stage.close();
  }
}

const middle = (values: readonly number[]): number =>
  Math.round(values.toSorted((a, b) => a - b)[Math.floor(values.length / 2)] as number);

/** From the call for the page to its first paint, which has the verdict in it: the server drew it. In ms. */
async function opened(stage: Stage): Promise<number> {
  const v = await visit(stage);
  await v.page.waitForSelector("#verdict-head");
  const paint = await v.page.waitForFunction(
    () => performance.getEntriesByName("first-contentful-paint")[0]?.startTime,
  );
  const time = (await paint.jsonValue()) as number;
  await v.end();
  return time;
}

/** From an answer's last byte to the frame after the page has taken it, in ms, for each of several spans typed. */
async function redrawn(stage: Stage, spans: readonly string[]): Promise<number[]> {
  const v = await visit(stage);
  const times: number[] = [];
  for (const span of spans) {
    await v.page.waitForSelector("#at-structure-span:enabled");
    const painted = v.page.evaluate<number>(PAINTED_AT);
    await v.page.fill("#at-structure-span", span);
    const at = await painted;
    const came = await v.page.evaluate<number>(LAST_ANSWER_AT);
    times.push(at - came);
  }
  await v.end();
  return times;
}

/** In the page: when the frame after the next fresh answer is drawn. Text, since a compiled function brings helpers. */
const PAINTED_AT = `new Promise((resolve) => {
  let stale = false;
  const look = () => {
    const fresh = document.querySelector(".state.is-fresh") !== null;
    if (stale && fresh) return requestAnimationFrame(() => resolve(performance.now()));
    stale ||= !fresh;
    requestAnimationFrame(look);
  };
  look();
})`;

/** In the page: when the last byte of the newest answer came. */
const LAST_ANSWER_AT = `Math.max(...performance.getEntriesByType("resource")
  .filter(({ name }) => name.includes("/v1/estimates"))
  .map(({ responseEnd }) => responseEnd))`;
