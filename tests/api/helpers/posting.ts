/** The service without a network: requests posted, answers parsed. */
import type { z } from "zod";
import { createApp } from "../../../src/api/app.js";
import { calls } from "../../../src/api/calls.js";
import { here } from "../../../src/api/computing.js";
import { demoRequest } from "../../../src/api/demos.js";
import type { Problem } from "../../../src/api/problem.js";
import type { EstimateSchema } from "../../../src/api/render/json/estimate.js";
import type { TakeoffsSchema } from "../../../src/api/render/json/takeoffs.js";
import type { estimateRequest } from "../../../src/estimate/request/request.js";

export type Answer = z.output<typeof EstimateSchema>;
export type Takeoffs = z.output<typeof TakeoffsSchema>;
export type Asking = z.input<typeof estimateRequest>;
export type Cell = Answer["sheet"]["blocks"][number]["cells"][number];

const app = createApp(calls, { computing: here(calls) });

/** Posts JSON and hands back the response as it is. */
export const post = (path: string, body: unknown): Promise<Response> =>
  Promise.resolve(
    app.request(path, {
      method: "POST",
      headers: { "Content-Type": "application/json" },
      body: JSON.stringify(body),
    }),
  );

/** An estimate; anything but 200 fails with the problem. */
export async function estimated(body: unknown, query = ""): Promise<Answer> {
  const response = await post(`/v1/estimates${query}`, body);
  const json: unknown = await response.json();
  if (response.status !== 200) throw new Error(JSON.stringify(json));
  return json as Answer;
}

/** Takeoffs; anything but 200 fails with the problem. */
export async function takenOff(body: unknown, query = ""): Promise<Takeoffs> {
  const response = await post(`/v1/takeoffs${query}`, body);
  const json: unknown = await response.json();
  if (response.status !== 200) throw new Error(JSON.stringify(json));
  return json as Takeoffs;
}

/** What a request is refused with. */
export async function refused(body: unknown, path = "/v1/estimates"): Promise<Problem> {
  const response = await post(path, body);
  const json = (await response.json()) as Problem;
  if (response.status === 200) throw new Error("the request was not refused");
  return json;
}

/** A demo request of one's own to change. */
export const demo = (name: string): Asking => structuredClone(demoRequest(name)) as Asking;

/** All cells of a sheet, by name. */
export function cellsOf(answer: { readonly sheet: Answer["sheet"] }): Map<string, Cell> {
  const cells = answer.sheet.blocks.flatMap((block) => [...block.cells, ...block.lines.flatMap((line) => line.cells)]);
  return new Map(cells.map((cell) => [cell.name, cell]));
}
