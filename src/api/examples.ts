/**
 * Examples for the document: small requests, written by hand, and the service's own answers to them, written by
 * `npm run openapi` with every list cut to its first entry.
 */
import { readFileSync } from "node:fs";
import type { z } from "zod";
import type { estimateRequest } from "../estimate/request/request.js";

/** Folder of the answers, a file each, named as the call. */
export const ANSWERS = new URL("./answers/", import.meta.url);

/** What a call answers to its first example; a test asks again and validates it. */
export function answerExample<Answer>(call: string): Answer {
  return JSON.parse(readFileSync(new URL(`${call}.json`, ANSWERS), "utf8")) as Answer;
}

type RequestExamples = Readonly<Record<string, { summary: string; value: z.input<typeof estimateRequest> }>>;

/** Requests of an estimate, and of takeoffs. */
export const REQUEST_EXAMPLES: RequestExamples = {
  pieces: {
    summary: "A list of pieces, one log, demo prices",
    value: {
      title: "Six shelf boards",
      structure: {
        kind: "pieces",
        pieces: [
          { name: "shelf-boards", label: "Shelf boards", role: "board", count: 6, section: "1 x 8 in", length: "5 ft" },
        ],
      },
      logs: [{ name: "pine-1", species: "eastern-white-pine", length: "10 ft 6 in", smallDiameter: "13 in" }],
      catalog: { demo: "orchard-yard" },
      labor: { valueOfHour: "$6/h" },
      options: { finish: "none" },
    },
  },
  gable: {
    summary: "A small gable shelter, everything bought; all else by default",
    value: { structure: { kind: "gable", span: "8 ft", length: "12 ft" }, catalog: { demo: "orchard-yard" } },
  },
};

/** Requests of a comparison of coverings. */
export const COMPARISON_EXAMPLES: RequestExamples = {
  gable: {
    summary: "A gable of 16 × 24 ft under steel, strips and cedar",
    value: {
      structure: { kind: "gable", span: "16 ft", length: "24 ft", slope: { rise: "5 in", run: "12 in" } },
      catalog: { demo: "orchard-yard" },
      options: { coverings: ["ribbed-steel", "asphalt-shingles", "wood-shingles"] },
    },
  },
  all: {
    summary: "A metric lean-to under every covering that the service knows",
    value: {
      structure: { kind: "lean-to", span: "2.4 m", length: "7.2 m", slope: { rise: "75 mm", run: "300 mm" } },
      catalog: { demo: "ferry-yard" },
    },
  },
};
