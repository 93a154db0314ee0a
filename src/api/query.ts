/** Query parameters: read into the call's strict object, lists split at commas, every fault named by parameter. */
import type { z } from "zod";
import { readShape } from "../catalog/reading.js";
import { type Fault, FaultError } from "../estimate/faults.js";
import { quote } from "../estimate/quantity/text.js";
import type { QuerySchema } from "./call.js";

/**
 * Reads the parameters.
 * @param schema - Undefined when the call takes none; then any parameter is a fault.
 * @throws FaultError, each fault placed at `?name`.
 */
export function readQuery(parameters: URLSearchParams, schema: QuerySchema<unknown> | undefined): unknown {
  if (!schema) {
    refuse([...new Set(parameters.keys())].map(untaken));
    return {};
  }
  const given: [string, unknown][] = [];
  const faults: Fault[] = [];
  for (const name of new Set(parameters.keys())) {
    const values = parameters.getAll(name);
    const field = Object.hasOwn(schema.shape, name) ? schema.shape[name] : undefined;
    if (field && isList(field)) given.push([name, values.flatMap((value) => value.split(","))]);
    else if (values.length > 1) faults.push(twice(name));
    else given.push([name, values[0]]);
  }
  const read = readShape(schema, Object.fromEntries(given));
  if ("faults" in read) faults.push(...read.faults.map(placed));
  refuse(faults);
  return "value" in read ? read.value : {};
}

/** True for a field that takes several values, whatever default or absence it allows. */
export function isList(field: z.core.$ZodType): boolean {
  const { type, innerType } = field._zod.def as { type: string; innerType?: z.core.$ZodType };
  return innerType ? isList(innerType) : type === "array";
}

function refuse(faults: readonly Fault[]): void {
  if (faults.length > 0) throw new FaultError(faults);
}

/** `/include/0`, a pointer into the object of parameters, becomes `?include`. */
function placed(fault: Fault): Fault {
  const name = (fault.at.split("/")[1] ?? "").replaceAll("~1", "/").replaceAll("~0", "~");
  return { ...fault, at: `?${name}` };
}

function untaken(name: string): Fault {
  const wrong = `This call takes no parameters, and ${quote(name)} is one.`;
  return { code: "unknown-field", at: `?${name}`, wrong, cure: "Leave it out." };
}

function twice(name: string): Fault {
  return { code: "duplicate-name", at: `?${name}`, wrong: `${quote(name)} is given twice.`, cure: "Give it once." };
}
