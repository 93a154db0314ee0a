/** Calls beside the estimate: quick ones, for what is looked at while or after an estimate is made. */
import type { Calls, Problem } from "../../../../openapi/client-types.js";
import { type Answer, send } from "./client.js";
import { isFields, type Json, withValue } from "./json.js";

type Beside = "makeTakeoffs" | "compareCoverings";

/**
 * An answer to the request, or undefined where the service has none. These calls know fewer cells than an estimate:
 * overrides that they refuse are left out.
 * Never throws: who gave the call up gets nothing.
 */
export async function askBeside<I extends Beside>(
  id: I,
  request: Json,
  include: Calls[I]["query"]["include"],
  signal: AbortSignal,
): Promise<Answer<I> | undefined> {
  try {
    // What was typed may be wrong: then the estimate says so, field by field.
    const parts = (body: Json) => ({ query: { include }, body }) as unknown as Parameters<typeof send<I>>[1];
    const first = await send(id, parts(request), { signal });
    if (first.ok) return (await first.json()) as Answer<I>;
    if (first.status !== 422) return undefined;
    const fewer = withoutRefused(request, (await first.json()) as Problem);
    const second = fewer === undefined ? undefined : await send(id, parts(fewer), { signal });
    return second?.ok ? ((await second.json()) as Answer<I>) : undefined;
  } catch {
    return undefined;
  }
}

/** The request without the overrides that were refused; undefined where more is wrong than they. */
function withoutRefused(request: Json, { faults }: Problem): Json {
  const pointers = faults.map(({ pointer = "" }) => pointer);
  if (!isFields(request) || pointers.length === 0) return undefined;
  if (!pointers.every((pointer) => /^\/overrides\/[^/]+/.test(pointer))) return undefined;
  return pointers.reduce<Json>((json, pointer) => withValue(json, pointer, undefined), request);
}
