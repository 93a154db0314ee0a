/** Digests by which an answer names its request, the program and the data behind it. */
import { createHash } from "node:crypto";
import about from "../../package.json" with { type: "json" };
import { ASSUMPTIONS } from "../catalog/assumptions.js";
import { COVERINGS } from "../catalog/coverings.js";
import { BOLT_LENGTHS, CORROSION_CLASSES, FASTENERS, INCH_BOLTS, METRIC_BOLTS, NAILS } from "../catalog/fasteners.js";
import { FINISHES } from "../catalog/finishes.js";
import { MACHINES } from "../catalog/machines.js";
import { MILLS, SAW_KERFS } from "../catalog/mills.js";
import { SOURCES } from "../catalog/sources.js";
import { SPECIES, TRADE_GROUPS } from "../catalog/species.js";
import { demoCatalogs } from "./demos.js";
import type { Provenance } from "./render/json/about.js";

/** SHA-256 of a JSON value in hexadecimal: its keys sorted, so that their order does not count (as RFC 8785). */
export function digestOf(json: unknown): string {
  return createHash("sha256").update(canonical(json)).digest("hex");
}

function canonical(node: unknown): string {
  if (typeof node === "bigint") return `"${node}"`; // units of the tables hold their size as whole numbers
  if (typeof node !== "object" || node === null) return JSON.stringify(node) ?? "null";
  if (Array.isArray(node)) return `[${node.map(canonical).join(",")}]`;
  const members = Object.entries(node).filter(([, value]) => value !== undefined);
  const sorted = members.sort(([a], [b]) => (a < b ? -1 : 1));
  return `{${sorted.map(([key, value]) => `${JSON.stringify(key)}:${canonical(value)}`).join(",")}}`;
}

/** Tables and demo prices; what changes an answer without a change of the program's version. */
const DATA_VERSION = digestOf({
  ...{ ASSUMPTIONS, COVERINGS, CORROSION_CLASSES, FASTENERS, NAILS, INCH_BOLTS, METRIC_BOLTS, BOLT_LENGTHS },
  ...{ FINISHES, MACHINES, MILLS, SAW_KERFS, SOURCES, SPECIES, TRADE_GROUPS },
  demoCatalogs: Object.fromEntries(demoCatalogs()),
}).slice(0, 16);

/** Where the answer to a request comes from. @param requestDigest - Of the request's JSON, by `digestOf`. */
export function provenance(requestDigest: string): Provenance {
  return { engine: about.version, dataVersion: DATA_VERSION, requestDigest };
}
