/**
 * `npm run bench [topic]` prints a table; `npm run -s bench -- [topic] --json` prints a JSON array and nothing else.
 * Without a topic, all of them. Exit code 2 when it is asked for what there is not; a target that is missed is said
 * in the answer and is no failure, for machines differ.
 */
import { existsSync } from "node:fs";
import { fileURLToPath, pathToFileURL } from "node:url";

/** One figure and what it is held against. */
export interface Measured {
  readonly name: string;
  readonly value: number;
  readonly unit: string;
  /** In words: `≤ 1 ms`. */
  readonly target: string;
  /** Null where there is no target: such a row is a figure to read others by. */
  readonly holds: boolean | null;
}

/** Where each topic's `bench` is. A topic whose file is not there is not offered. */
const TOPICS: Readonly<Record<string, string>> = {
  sheet: "./sheet.ts",
  sawing: "./sawing/bench.ts",
  stock: "./stock/bench.ts",
  estimate: "./estimate.ts",
  frontier: "./frontier.ts",
  http: "./http.ts",
  form: "./form.ts",
};

const fileOf = (topic: string): string => fileURLToPath(new URL(TOPICS[topic] as string, import.meta.url));
const offered = (): string[] => Object.keys(TOPICS).filter((topic) => existsSync(fileOf(topic)));

async function measure(topic: string): Promise<Measured[]> {
  const { bench } = (await import(pathToFileURL(fileOf(topic)).href)) as { bench: () => Promise<Measured[]> };
  return (await bench()).map(({ name, value, unit, target, holds }) => ({ name, value, unit, target, holds }));
}

function table(rows: readonly Measured[]): string {
  const lines = rows.map((row) => [
    row.name,
    `${row.value} ${row.unit}`.trim(),
    row.target,
    row.holds === null ? "reported" : row.holds ? "holds" : "MISSED",
  ]);
  const widths = [0, 1, 2].map((column) => Math.max(...lines.map((line) => (line[column] as string).length)));
  return lines.map((line) => line.map((text, i) => text.padEnd(widths[i] ?? 0)).join("  ")).join("\n");
}

async function run(words: readonly string[]): Promise<number> {
  const json = words.includes("--json");
  const topics = words.filter((word) => word !== "--json");
  const unknown = topics.filter((topic) => !offered().includes(topic));
  if (unknown.length > 0) {
    const what = unknown.map((word) => `“${word}”`).join(", ");
    process.stderr.write(`There is no bench called ${what}. There are: ${offered().join(", ")}.\n`);
    return 2;
  }
  const rows: Measured[] = [];
  for (const topic of topics.length > 0 ? topics : offered()) rows.push(...(await measure(topic)));
  process.stdout.write(`${json ? JSON.stringify(rows) : table(rows)}\n`);
  return 0;
}

process.exitCode = await run(process.argv.slice(2));
