/** The service as a process: environment, log, and an end without dropped calls. */
import { availableParallelism } from "node:os";
import { createApp } from "./app.js";
import { calls } from "./calls.js";
import { Pool } from "./pool.js";
import { type Listening, serve } from "./serve.js";
import { scripts } from "./web/bundle.js";
import { webPage } from "./web/page.js";

const DEFAULT_PORT = 8080;
/** Heavy calls that may wait for a worker; at a second each the last is answered within the time of a call. Assumption. */
const MOST_WAITING = 32;

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

function whyNot(error: NodeJS.ErrnoException, port: number): string {
  if (error.code !== "EADDRINUSE") return `Cannot listen on port ${port}: ${error.message}`;
  return `Port ${port} is in use. Stop the other program, or choose another port: PORT=${port + 1} npm start`;
}

async function start(port: number, host: string | undefined): Promise<void> {
  const pool = new Pool({ workers: Math.max(2, availableParallelism()), mostWaiting: MOST_WAITING });
  const app = createApp(calls, {
    computing: pool,
    log: (line) => process.stdout.write(`${JSON.stringify({ time: new Date().toISOString(), ...line })}\n`),
    notReady: () => {
      if (stopping) return "The service is being stopped.";
      return pool.isWarm() ? undefined : "The workers are still being loaded.";
    },
  });
  webPage(); // the first visitor does not wait for the demo to be worked out, nor for the script
  await scripts();
  const listening = await serve({ fetch: app.fetch, port, host });
  for (const signal of ["SIGTERM", "SIGINT"] as const) process.once(signal, () => stop(listening, pool));
  process.stdout.write(`Boleworth serves at http://${host ?? "localhost"}:${listening.port} (calls: /docs)\n`);
}

async function stop(listening: Listening, pool: Pool): Promise<void> {
  if (stopping) return;
  stopping = true;
  if (!(await listening.stop())) giveUp("Some calls took too long and were cut off.");
  await pool.close();
}

const port = readPort(process.env.PORT);
if (port === undefined) giveUp(`PORT is "${process.env.PORT}"; give a whole number from 0 to 65535.`);
else start(port, process.env.HOST || undefined).catch((error) => giveUp(whyNot(error, port)));
