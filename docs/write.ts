/** Writes docs/reference.md from the records that the service itself reads; with --check, fails when it is out of date. */
import { readFileSync, writeFileSync } from "node:fs";
import { calls } from "../src/api/calls.js";
import { ASSUMPTIONS } from "../src/catalog/assumptions.js";
import { MILLS, type Mill } from "../src/catalog/mills.js";
import { SOURCES } from "../src/catalog/sources.js";
import { FAULT_CODES } from "../src/estimate/faults.js";

const file = new URL("reference.md", import.meta.url);

/** A table row; bars inside a cell are escaped. */
const row = (cells: readonly string[]): string => `| ${cells.map((cell) => cell.replaceAll("|", "\\|")).join(" | ")} |`;

function table(head: readonly string[], rows: readonly (readonly string[])[]): string {
  return [row(head), row(head.map(() => "---")), ...rows.map(row)].join("\n");
}

function assumptions(): string {
  return table(
    ["name", "what", "low", "likely", "high", "source", "measure your own"],
    ASSUMPTIONS.map(({ name, label, low, likely, high, source, part, measure }) => {
      const from = SOURCES[source].known === "assumption" ? "assumption" : SOURCES[source].title;
      return [`\`${name}\``, label, low, likely, high, part ? `${from}; ${part}` : from, measure ?? ""];
    }),
  );
}

function mills(): string {
  const rows = Object.entries(MILLS as Readonly<Record<string, Mill>>);
  return table(
    ["kind", "what", "kerf", "cut face while sawing", "set-up of a bolt", "sharpened every", "fuel", "largest log"],
    rows.map(([kind, mill]) => [
      `\`${kind}\``,
      mill.name,
      mill.kerf.join(" – "),
      mill.pace.rate.join(" – "),
      mill.setUp.join(" – "),
      mill.sharpenEvery.join(" – "),
      mill.fuel.join(" – "),
      mill.largestLog,
    ]),
  );
}

const text = `# Reference

Written by \`npm run docs\` from the records that the service reads. Low, likely and high are starting points, to be replaced
by what you measure: give them under \`assumptions\` by name.

## Calls

${table(
  ["call", "what"],
  calls
    .filter((call) => !call.hidden)
    .map(({ method, path, summary }) => [`\`${method.toUpperCase()} ${path}\``, summary]),
)}

## Assumptions

${assumptions()}

## Mills

Their cells are called \`mill.kerf\`, \`mill.rate\`, \`mill.setUp\` and so on. All rates are common practice.

${mills()}

## Faults

Every fault names its place in the request, what is wrong and what would be right.

${table(
  ["code", "what"],
  Object.entries(FAULT_CODES).map(([code, meaning]) => [`\`${code}\``, meaning]),
)}
`;

if (process.argv.includes("--check")) {
  if (readFileSync(file, "utf8") !== text) {
    process.stderr.write("docs/reference.md is out of date: run npm run docs.\n");
    process.exitCode = 1;
  }
} else writeFileSync(file, text);
