/** What the README shows of its two commands is what they print. */
import { execFileSync } from "node:child_process";
import { readFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { expect, it } from "vitest";
import { estimated } from "./api/helpers/posting.js";
import { demoBody, estimated as estimatedQuickly } from "./helpers/estimating.js";

const root = fileURLToPath(new URL("../", import.meta.url));
const readme = readFileSync(`${root}README.md`, "utf8");

it("prints with `npm run demo` every line that the README shows of it, in that order", () => {
  const printed = execFileSync(`${root}node_modules/.bin/tsx`, ["src/api/cli.ts", "demo"], {
    cwd: root,
    encoding: "utf8",
    maxBuffer: 1 << 26,
  }).split("\n");
  const shown = (/```text\n(VERDICT[\s\S]*?)```/.exec(readme)?.[1] ?? "").trimEnd().split("\n");
  expect(shown.length).toBeGreaterThan(20);
  let from = 0;
  const missing = shown.filter((line) => {
    if (line === "…") return false;
    const at = printed.indexOf(line, from);
    if (at >= 0) from = at + 1;
    return at < 0;
  });
  expect(missing).toEqual([]);
}, 120_000);

/** Whether everything of a part stands in the whole; an entry of a list, in any entry of it. */
function holds(whole: unknown, part: unknown): boolean {
  if (Array.isArray(part)) return part.every((one) => Array.isArray(whole) && whole.some((other) => holds(other, one)));
  if (typeof part !== "object" || part === null) return whole === part;
  return Object.entries(part).every(
    ([key, value]) =>
      typeof whole === "object" && whole !== null && holds((whole as Record<string, unknown>)[key], value),
  );
}

it("answers the README's curl with what the README shows", async () => {
  const asked =
    /curl [^\n]*\/v1\/estimates [^']*'content-type: application\/json' -d '([\s\S]*?)'\n/.exec(readme)?.[1] ?? "";
  const shown = /```json\n(\{\n {2}"decision"[\s\S]*?)```/.exec(readme)?.[1] ?? "";
  expect(holds({ a: [{ b: "1" }] }, { a: [{ b: "2" }] })).toBe(false);
  const answer = await estimated(JSON.parse(asked));
  const { headline } = answer.decision.verdict;
  expect(shown).toContain(`"headline": ${JSON.stringify(headline)}`);
  expect(holds(answer, JSON.parse(shown))).toBe(true);
}, 120_000);

it("takes the timed jobs that the README shows, two jobs of one rate and a count with people", () => {
  const list = /`"calibration": (\[[^`]*\])`/.exec(readme)?.[1] ?? "";
  const one = /`(\{ "rate": "joint[^`]*\})`/.exec(readme)?.[1] ?? "";
  const calibration = [...(JSON.parse(list) as object[]), JSON.parse(one) as object];
  const { sheet } = estimatedQuickly({ ...demoBody("orchard-shelter"), calibration }).basis;
  const range = (name: string, unit: string) => {
    const cell = sheet.find(name);
    return [cell?.range?.low, cell?.value, cell?.range?.high].map((value) =>
      sheet
        .in({ ...cell, value } as never, unit)
        .toDecimalPlaces(6)
        .toNumber(),
    );
  };
  // 41 ft² in 33 min and 28 in 19: 69 in 52, the slower job 1.242424, the faster 1.473684.
  expect(range("mill.rate", "ft2/min")).toEqual([1.242424, 1.326923, 1.473684]);
  // Three rafters by two people in 25 min; one job keeps the catalog's 0.15 to 0.5 h about 0.25.
  expect(range("joint.birdsmouth", "person-min")).toEqual([10, 16.666667, 33.333333]);
});
