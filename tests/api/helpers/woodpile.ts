/** A small call for tests: stacks of boards. It has every part that a row can have. */
import { z } from "zod";
import { type AnyCall, body, call, json } from "../../../src/api/call.js";
import { FaultError } from "../../../src/estimate/faults.js";

const word = () => z.string().regex(/^[a-z]{1,8}$/);

const FlatSchema = z
  .strictObject({
    kind: z.literal("flat").describe("Stacked on stickers."),
    rows: z.int().min(1).max(50).describe("Rows of boards."),
  })
  .meta({ id: "TestFlat", description: "A flat stack." });

const CribSchema = z
  .strictObject({
    kind: z.literal("crib").describe("Stacked crosswise."),
    sides: z.int().min(3).max(8).default(4).describe("Sides of the crib."),
    roof: z.boolean().optional().describe("Whether it is covered."),
  })
  .meta({ id: "TestCrib", description: "A crib." });

const PileSchema = z
  .strictObject({
    name: word().describe("Name of the pile."),
    stack: z.discriminatedUnion("kind", [FlatSchema, CribSchema]).describe("How it is stacked."),
    boards: z
      .array(
        z.strictObject({
          length: z.int().min(1).max(20).describe("Length in feet."),
          count: z.int().min(1).max(99).default(1).describe("How many."),
        }),
      )
      .max(20)
      .default([])
      .describe("The boards."),
    labels: z.record(word(), word()).optional().describe("Names on the stack."),
  })
  .meta({ id: "TestPile", description: "A pile of boards." });

const AnswerSchema = z
  .strictObject({
    name: z.string().describe("Name of the pile."),
    feet: z.int().describe("Length of all boards, in feet."),
    shown: z.array(z.enum(["boards", "labels"])).describe("What was asked for beside it."),
  })
  .meta({ id: "TestPileAnswer", description: "What is in the pile." });

const example = { name: "shed", stack: { kind: "crib" as const }, boards: [{ length: 8, count: 3 }] };

/** Adds the boards up. A flat pile of 13 rows cannot be built. */
export const pileCall: AnyCall = call({
  method: "post",
  path: "/v1/piles",
  id: "measurePile",
  tag: "Estimating",
  summary: "Measure a pile",
  description: "Adds up the boards of a pile.",
  query: z.strictObject({
    include: z
      .array(z.enum(["boards", "labels"]))
      .default([])
      .describe("What to show beside the sum."),
    title: word().optional().describe("A title."),
  }),
  request: body({
    schema: PileSchema,
    examples: { crib: { summary: "A crib", value: example } },
    alsoReads: {
      "text/csv": {
        description: "A name and a length.",
        example: "shed,8",
        toJson: (text) => {
          const [name, length] = text.trim().split(",");
          if (!length) {
            return { faults: [{ code: "wrong-shape", at: "", wrong: "The line has one part.", cure: "Give two." }] };
          }
          return { value: { name, stack: { kind: "crib" }, boards: [{ length: Number(length) }] } };
        },
      },
    },
  }),
  streams: true,
  run: ({ body, query }, { report }) => {
    if (body.stack.kind === "flat" && body.stack.rows === 13) {
      const wrong = "Thirteen rows fall over.";
      throw new FaultError([{ code: "cannot-build", at: "/stack/rows", wrong, cure: "Give 12." }]);
    }
    report({ stage: "adding", step: 1, steps: 1, done: 1, of: 1 });
    const feet = body.boards.reduce((sum, board) => sum + board.length * board.count, 0);
    return { name: body.name, feet, shown: query.include };
  },
  faces: {
    "application/json": json({
      description: "The sum.",
      schema: AnswerSchema,
      example: { name: "shed", feet: 24, shown: [] },
      render: (answer) => answer,
    }),
    "text/csv": {
      description: "The sum as a line.",
      fileName: "pile.csv",
      render: ({ name, feet }) => `${name},${feet}\r\n`,
    },
    "application/octet-stream": {
      description: "The sum as a byte.",
      render: ({ feet }) => new Uint8Array([feet]),
    },
  },
});

/** Data by name, and a call that has a bug. */
export const shelfCall: AnyCall = call({
  method: "get",
  path: "/v1/shelves/{name}",
  id: "getShelf",
  tag: "Data",
  summary: "A shelf",
  description: "What is on a shelf.",
  parameters: { name: { description: "Name of the shelf.", example: "top" } },
  freshness: "data",
  run: ({ path }) => {
    if (path.name === "broken") throw new TypeError("secret inside");
    return `on ${path.name}`;
  },
  faces: { "text/plain": { description: "A line.", render: (line) => line } },
});

export const goodPile = { name: "shed", stack: { kind: "flat", rows: 2 }, boards: [{ length: 10 }] };
