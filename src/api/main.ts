/** Reads the environment, serves the app, and stops without dropping a call. */
import type { Server } from "node:http";
import type { AddressInfo } from "node:net";
import { createAdaptorServer } from "@hono/node-server";
import { createApp } from "./app.js";
import { calls } from "./calls.js";

const DEFAULT_PORT = 8080;
/** Milliseconds. Assumptions: a slow phone finishes its request, and a stop takes no longer than a restart may. */
const TIMES = { headers: 10_000, request: 30_000, keepAlive: 5_000, stop: 10_000 };

let stopping = false;

/** A whole number of at most 65535; 0 picks a free port. */
function readPort(text: string | undefined): number | undefined {
  if (text === undefined || text === "") return DEFAULT_PORT;
  return /^\d{1,5}$/.test(text) && Number(text) <= 65_535 ? Number(text) : undefined;
}

function giveUp(message: string): void {
  process.stderr.write(`${message}\n`);
  process.exitCode = 1;
}

function serve(port: number, host: string | undefined): void {
  const app = createApp(calls, {
    log: (line) => process.stdout.write(`${JSON.stringify({ time: new Date().toISOString(), ...line })}\n`),
    notReady: () => (stopping ? "The service is being stopped." : undefined),
  });
  const server = createAdaptorServer({
    fetch: app.fetch,
    serverOptions: {
      headersTimeout: TIMES.headers,
      requestTimeout: TIMES.request,
      keepAliveTimeout: TIMES.keepAlive,
      maxHeaderSize: 16 * 1024,
    },
  }) as Server;
  server.once("error", (error: NodeJS.ErrnoException) => {
    const inUse = `Port ${port} is in use. Stop the other program, or choose another port: PORT=${port + 1} npm start`;
    giveUp(error.code === "EADDRINUSE" ? inUse : `Cannot listen on port ${port}: ${error.message}`);
  });
  server.listen({ port, ...(host && { host }) }, () => {
    const { port: actual } = server.address() as AddressInfo;
    process.stdout.write(`Boleworth serves at http://${host ?? "localhost"}:${actual} (calls: /docs)\n`);
  });
  process.once("SIGTERM", () => stop(server));
  process.once("SIGINT", () => stop(server));
}

/** Takes no new call, waits for those under way, and cuts them off when the time is up. */
function stop(server: Server): void {
  if (stopping) return;
  stopping = true;
  setTimeout(() => {
    server.closeAllConnections();
    process.exitCode = 1;
  }, TIMES.stop).unref();
  server.close();
  server.closeIdleConnections();
}

const port = readPort(process.env.PORT);
if (port === undefined) giveUp(`PORT is "${process.env.PORT}"; give a whole number from 0 to 65535.`);
else serve(port, process.env.HOST || undefined);
