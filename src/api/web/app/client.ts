/** The calls of the service, typed after its document: what is not in the document can't be asked for. */
import { CALLS, type Calls } from "../../../../openapi/client-types.js";

/** Name of a call. */
type Id = keyof Calls;

/** What goes into a call; what it does not take can't be given. */
type Parts<I extends Id> = {
  readonly [Part in "path" | "query" | "body" as Calls[I][Part] extends undefined ? never : Part]: Calls[I][Part];
};

/** What comes out of a call as JSON. */
export type Answer<I extends Id> = Calls[I]["answer"];

/** Sends a call to the service that the page came from. Rejects when it can't be reached, or the signal fires. */
export function send<I extends Id>(id: I, parts: Parts<I>, init: RequestInit = {}): Promise<Response> {
  const { method, path } = CALLS[id];
  const { path: places = {}, query = {}, body } = parts as { path?: Words; query?: Lists; body?: unknown };
  const filled = path.replaceAll(/\{(\w+)\}/g, (_, name: string) => encodeURIComponent(places[name] ?? ""));
  const asked = Object.entries(query).map(([key, list]) => `${key}=${list.join(",")}`);
  const address = asked.length > 0 ? `${filled}?${asked.join("&")}` : filled;
  if (body === undefined) return fetch(address, { method, ...init });
  const headers = { "Content-Type": "application/json", ...init.headers };
  return fetch(address, { method, body: JSON.stringify(body), ...init, headers });
}

type Words = Readonly<Record<string, string>>;
type Lists = Readonly<Record<string, readonly string[]>>;

/** A call's answer; undefined where the service refused it. Rejects when the service can't be reached. */
export async function fetchJson<I extends Id>(id: I, parts: Parts<I>): Promise<Answer<I> | undefined> {
  const response = await send(id, parts);
  return response.ok ? ((await response.json()) as Answer<I>) : undefined;
}
