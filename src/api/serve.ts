/** Listens, and stops without dropping a call. */
import type { Server } from "node:http";
import type { AddressInfo } from "node:net";
import { createAdaptorServer } from "@hono/node-server";

/** Milliseconds. Assumptions: a slow phone finishes its request, and a stop takes no longer than a restart may. */
const TIMES = { headers: 10_000, request: 30_000, keepAlive: 5_000, stop: 10_000 };
const MOST_HEADER_BYTES = 16 * 1024;

/** What is served, and where. */
export interface Serving {
  readonly fetch: (request: Request) => Response | Promise<Response>;
  /** 0 picks a free one. */
  readonly port: number;
  /** Every address of the machine when undefined. */
  readonly host?: string | undefined;
}

/** A service that listens. */
export interface Listening {
  readonly port: number;
  /**
   * Takes no new call and waits for those under way.
   * @returns false when some had to be cut off after 10 s.
   */
  stop(): Promise<boolean>;
}

/** @throws What Node says when the port cannot be had, such as EADDRINUSE. */
export async function serve({ fetch, port, host }: Serving): Promise<Listening> {
  const server = createAdaptorServer({
    fetch,
    serverOptions: {
      headersTimeout: TIMES.headers,
      requestTimeout: TIMES.request,
      keepAliveTimeout: TIMES.keepAlive,
      maxHeaderSize: MOST_HEADER_BYTES,
    },
  }) as Server;
  await new Promise<void>((resolve, reject) => {
    server.once("error", reject);
    server.listen({ port, ...(host !== undefined && { host }) }, resolve);
  });
  return { port: (server.address() as AddressInfo).port, stop: () => drained(server) };
}

function drained(server: Server): Promise<boolean> {
  return new Promise((resolve) => {
    let whole = true;
    const limit = setTimeout(() => {
      whole = false;
      server.closeAllConnections();
    }, TIMES.stop);
    server.close(() => {
      clearTimeout(limit);
      resolve(whole);
    });
    server.closeIdleConnections();
  });
}
