/** The demos that ship with the service: price catalogs and requests, read once. All prices are invented. */
import { readdirSync, readFileSync } from "node:fs";
import { isRecord } from "../catalog/shape-faults.js";
import type { DemoList } from "./render/json/demos.js";

const FOLDER = new URL("../../demo-data/", import.meta.url);

interface Demos {
  readonly catalogs: ReadonlyMap<string, unknown>;
  readonly requests: ReadonlyMap<string, unknown>;
}

/** A catalog has a currency of its own, a request a structure; names are those of the files, in their order. */
function load(): Demos {
  const names = readdirSync(FOLDER)
    .filter((file) => file.endsWith(".json"))
    .map((file) => file.replace(/\.json$/, ""))
    .sort();
  const all = names.map((name) => [name, parsed(name)] as const);
  return {
    catalogs: new Map(all.filter(([, json]) => !("structure" in json))),
    requests: new Map(all.filter(([, json]) => "structure" in json)),
  };
}

function parsed(name: string): Record<string, unknown> {
  const json: unknown = JSON.parse(readFileSync(new URL(`${name}.json`, FOLDER), "utf8"));
  if (!isRecord(json)) throw new Error(`demo-data/${name}.json is no object`);
  return json;
}

const DEMOS = load();

/** Price catalogs that a request may name, as JSON. */
export const demoCatalogs = (): ReadonlyMap<string, unknown> => DEMOS.catalogs;

/** Names of the demo requests. */
export const demoNames = (): string[] => [...DEMOS.requests.keys()];

/** A demo request as JSON, ready to be posted; undefined when there is none of that name. */
export const demoRequest = (name: string): unknown => DEMOS.requests.get(name);

/** What there is. */
export function demoList(): DemoList {
  return {
    note: "Projects and prices are invented for demonstration; they are no real person's and no real supplier's.",
    demos: [...DEMOS.requests].map(([name, json]) => shownDemo(name, json as Demo)),
    catalogs: [...DEMOS.catalogs].map(([name, json]) => shownCatalog(name, json as Catalog)),
  };
}

interface Demo {
  readonly title?: string;
  readonly structure: { readonly kind: string };
  readonly catalog?: { readonly demo?: string };
}

function shownDemo(name: string, { title, structure, catalog }: Demo): DemoList["demos"][number] {
  return { name, title: title ?? name, structure: structure.kind, catalog: catalog?.demo ?? null };
}

interface Catalog {
  readonly name: string;
  readonly currency: string;
  readonly note?: string;
}

function shownCatalog(name: string, { name: title, currency, note }: Catalog): DemoList["catalogs"][number] {
  return { name, title, currency, note: note ?? null };
}
