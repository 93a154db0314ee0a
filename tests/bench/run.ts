/**
 * `npm run bench [topic]` prints a table; `npm run -s bench -- [topic] --json` prints a JSON array and nothing else.
 * Without a topic, all of them. Exit code 2 when it is asked for what there is not; a target that is missed is said
 * in the answer and is no failure, for machines differ.
 */
import { existsSync } from "node:fs";
import { fileURLToPath, pathToFileURL } from "node:url";
import { timesSlower } from "./machine.js";

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

/** A row as it is told: one that is missed in time also with the time that the machine of the targets would take. */
interface Told extends Measured {
  readonly atTargetsSpeed?: number;
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

/** The rows of a topic, with how slow this machine was about them: the faster of two readings, before and after. */
async function measure(topic: string): Promise<Told[]> {
  const { bench } = (await import(pathToFileURL(fileOf(topic)).href)) as { bench: () => Promise<Measured[]> };
  const before = timesSlower();
  const rows = await bench();
  const slower = Math.min(before, timesSlower());
  const machine = `${topic}: this machine beside the one of the targets, in decimals`;
  return [
    { name: machine, value: short(slower), unit: "times slower", target: "", holds: null },
    ...rows.map(({ name, value, unit, target, holds }) => ({
      ...{ name, value, unit, target, holds },
      ...((unit === "ms" || unit === "s") && holds === false && { atTargetsSpeed: short(value / slower) }),
    })),
  ];
}

const short = (value: number): number => Number(value.toPrecision(3));

/** Whether a target of time is kept at the speed that it was set for. */
const holdsThere = ({ target, atTargetsSpeed }: Told): boolean =>
  atTargetsSpeed !== undefined && atTargetsSpeed <= Number(target.match(/≤ ([\d.]+)/)?.[1]);

function verdict(row: Told): string {
  if (row.holds !== false) return row.holds === null ? "reported" : "holds";
  if (row.atTargetsSpeed === undefined) return "MISSED";
  const there = `${row.atTargetsSpeed} ${row.unit} at the speed of the targets`;
  return holdsThere(row) ? `missed here; ${there}: holds` : `MISSED; ${there}`;
}

function table(rows: readonly Told[]): string {
  const lines = rows.map((row) => [row.name, `${row.value} ${row.unit}`.trim(), row.target, verdict(row)]);
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
  const rows: Told[] = [];
  for (const topic of topics.length > 0 ? topics : offered()) rows.push(...(await measure(topic)));
  process.stdout.write(`${json ? JSON.stringify(rows) : table(rows)}\n`);
  return 0;
}

process.exitCode = await run(process.argv.slice(2));
