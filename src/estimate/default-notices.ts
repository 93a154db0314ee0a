/** What was taken where the request is silent, in words: what it is, its value, and why that. */

import type { Basis } from "./basis.js";
import { capital } from "./quantity/words.js";
import type { TakenDefault } from "./request/given.js";
import type { Sheet } from "./sheet/sheet.js";

/** Fields whose own names do not say to a carpenter what they hold. */
const SPOKEN: Readonly<Record<string, string>> = {
  "/structure/bays": "Length of a bay, at most",
  "/labor/valueOfHour": "Value of an hour of your own work",
  "/labor/crew": "People at the mill",
  "/labor/helpers": "Helpers at the raising",
  "/labor/hoursPerWeek": "Hours a week",
  "/labor/hoursPerDay": "Hours a day",
  "/shop/getOut": "Logs got out by",
  "/shop/carry": "Wood carried by",
  "/shop/deepestRip": "Deepest rip of the saw in the shop",
  "/shop/thinnestSlab": "Thinnest slab that the mill saws",
  "/shop/longestBolt": "Longest bolt that the mill takes",
  "/structure/footings/form": "What holds concrete above the ground",
  "/structure/footings/tubeBelow": "Form tubes below the ground, at most",
  "/options/lightFixing": "What holds purlins, fascia and light splices",
};

/** A default in words, and the JSON Pointer at which the request may say otherwise. */
export interface DefaultInWords {
  readonly text: string;
  readonly at: string;
}

/** Lists of the request whose entries have names: the pointer of a field, taken apart. */
const OF_ONE = /^\/(logs|structure\/(?:pieces|extraPieces))\/(\d+)\/(.+)$/;

/** All defaults taken, in the order taken; logs and listed pieces of which the same was taken share one. */
export function defaultsInWords(basis: Basis): DefaultInWords[] {
  const { defaults, sheet, request } = basis;
  const shared = new Map<string, { first: TakenDefault; names: string[] }>();
  for (const one of defaults.taken) {
    const [, list = "", index, field] = OF_ONE.exec(one.at) ?? [];
    const key = JSON.stringify([list, field ?? one.at, one.value, one.why]);
    const entry = shared.get(key) ?? { first: one, names: [] };
    shared.set(key, entry);
    const name = namesIn(request, list).find((_, i) => String(i) === index);
    if (name !== undefined && !entry.names.includes(name)) entry.names.push(name);
  }
  const taken = [...shared.values()].map(({ first: { at, value, why }, names }) => {
    const of = names.length > 0 ? ` of ${names.join(", ")}` : "";
    return { text: `${capital(wordsFor(at, sheet))}${of}: ${value} (${why.replace(/\.$/, "")}).`, at };
  });
  return [...taken, ...machinesAtHand(basis)];
}

/** Names of the entries of a list, as the user wrote them. */
function namesIn({ logs = [], structure }: Basis["request"], list: string): readonly string[] {
  const pieces = structure.kind === "pieces" ? structure.pieces : (structure.extraPieces ?? []);
  return (list === "logs" ? logs : list === "" ? [] : pieces).map(({ name }) => name);
}

/** A mill on no terms costs nothing: that is said, where there is something to mill. */
function machinesAtHand({ request: { shop, logs = [] }, hired }: Basis): DefaultInWords[] {
  if (shop?.equipment || logs.length === 0 || hired || shop?.mill === "none") return [];
  const text = "Mill and machines: at hand and paid for, so they cost nothing here (no terms are named).";
  return [{ text, at: "/shop/equipment" }];
}

/** What lies at a pointer, in words: the label of a cell, or the names of the fields on the way. */
export function wordsFor(at: string, sheet: Sheet): string {
  const spoken = SPOKEN[at];
  if (spoken) return spoken;
  const [, part, ...fields] = at.split("/");
  if (part === "overrides") return cellWords(fields.join("/"), sheet);
  if (OF_ONE.test(at)) return split(fields.slice(part === "logs" ? 1 : 2));
  if (fields[0] === "groups") return split([fields[1] as string, ...fields.slice(2)]);
  return part === "structure" || part === "options" ? split(fields) : split([part as string, ...fields]);
}

/** A cell's label; that of a wood's property does not say which wood. */
function cellWords(name: string, sheet: Sheet): string {
  const wood = /^wood\.[^.]+/.exec(name)?.[0];
  const label = sheet.find(name)?.label ?? name;
  return wood ? `${sheet.titleOf(wood) ?? wood}, ${label}` : label;
}

/** `["overhang", "eave"]` as «overhang, eave»; `largeDiameter` as «large diameter». */
const split = (fields: readonly string[]): string =>
  fields
    .map((field) =>
      field
        .replaceAll("-", " ")
        .replace(/(?<=[a-z])[A-Z]/g, " $&")
        .toLowerCase(),
    )
    .join(", ");
