/** A request as the fragment of an address, which browsers never send: packed, in letters that need no escape. */
import type { Json } from "./json.js";

/** Marks the packing, so that another may come later. */
const MARK = "p1.";

/** Whether a fragment is a packed request, and not a place on the page. */
export const isPacked = (fragment: string): boolean => fragment.startsWith(MARK);

/** Packs a request. */
export async function toFragment(request: Json): Promise<string> {
  const bytes = await through(new TextEncoder().encode(JSON.stringify(request)), new CompressionStream("deflate-raw"));
  let text = "";
  for (const byte of bytes) text += String.fromCharCode(byte);
  return MARK + btoa(text).replaceAll("+", "-").replaceAll("/", "_").replace(/=+$/, "");
}

/** Unpacks a request; undefined where the fragment is none. */
export async function fromFragment(fragment: string): Promise<Json> {
  if (!isPacked(fragment)) return undefined;
  try {
    const text = atob(fragment.slice(MARK.length).replaceAll("-", "+").replaceAll("_", "/"));
    const bytes = Uint8Array.from(text, (char) => char.charCodeAt(0));
    return JSON.parse(new TextDecoder().decode(await through(bytes, new DecompressionStream("deflate-raw"))));
  } catch {
    return undefined;
  }
}

async function through(
  bytes: Uint8Array<ArrayBuffer>,
  stream: CompressionStream | DecompressionStream,
): Promise<Uint8Array> {
  const piped = new Blob([bytes]).stream().pipeThrough(stream);
  return new Uint8Array(await new Response(piped).arrayBuffer());
}
