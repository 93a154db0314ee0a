/** Reading and changing a request by JSON Pointer (RFC 6901). Every change makes a new value; nothing is altered. */

/** A request as the form holds it: JSON that has not been checked yet. */
export type Json = unknown;

/** An object of JSON. */
export type Fields = Readonly<Record<string, Json>>;

/** Whether a value is an object, not a list. */
export const isFields = (value: Json): value is Fields =>
  typeof value === "object" && value !== null && !Array.isArray(value);

const steps = (pointer: string): string[] =>
  pointer
    .split("/")
    .slice(1)
    .map((step) => step.replaceAll("~1", "/").replaceAll("~0", "~"));

/** A pointer one step further down. */
export const below = (pointer: string, ...keys: readonly (string | number)[]): string =>
  keys.reduce<string>((at, key) => `${at}/${String(key).replaceAll("~", "~0").replaceAll("/", "~1")}`, pointer);

/** What a pointer leads to; undefined where nothing is. */
export function valueAt(json: Json, pointer: string): Json {
  return steps(pointer).reduce<Json>((owner, key) => {
    if (Array.isArray(owner)) return owner[Number(key)];
    return isFields(owner) && Object.hasOwn(owner, key) ? owner[key] : undefined;
  }, json);
}

/** The list at a pointer; empty where there is none. */
export function listAt(json: Json, pointer: string): readonly Json[] {
  const found = valueAt(json, pointer);
  return Array.isArray(found) ? found : [];
}

/**
 * The same JSON with another value at a pointer.
 * @param value - undefined takes the value away; an object left empty goes too, a list's other items close ranks.
 */
export function withValue(json: Json, pointer: string, value: Json): Json {
  return changed(json, steps(pointer), value);
}

function changed(owner: Json, [key, ...rest]: readonly string[], value: Json): Json {
  if (key === undefined) return value;
  if (Array.isArray(owner)) return changedList(owner, key, rest, value);
  if (owner === undefined && value !== undefined && FIRST_ITEM.test(key)) return changedList([], key, rest, value);
  const fields = isFields(owner) ? owner : {};
  const next = changed(Object.hasOwn(fields, key) ? fields[key] : undefined, rest, value);
  const { [key]: _, ...others } = fields;
  if (next === undefined || (rest.length > 0 && value === undefined && isEmpty(next))) return others;
  return { ...fields, [key]: next };
}

/** No field of a request is called so: a list begins. */
const FIRST_ITEM = /^(-|0)$/;

function changedList(list: readonly Json[], key: string, rest: readonly string[], value: Json): Json {
  const index = key === "-" ? list.length : Number(key);
  const next = changed(list[index], rest, value);
  return next === undefined && rest.length === 0 ? list.toSpliced(index, 1) : list.toSpliced(index, 1, next ?? {});
}

const isEmpty = (value: Json): boolean => isFields(value) && Object.keys(value).length === 0;
