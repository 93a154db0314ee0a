/** The types that the form's client is held to. */
import { describe, expect, it } from "vitest";
import type { z } from "zod";
import { CALLS, type Estimate, type Problem } from "../../openapi/client-types.js";
import { clientTypes } from "../../openapi/typescript.js";
import { calls } from "../../src/api/calls.js";
import type { Problem as Sent } from "../../src/api/problem.js";
import type { EstimateSchema } from "../../src/api/render/json/estimate.js";

/** Compiles only while each type that is sent can be read as the document's. */
const asRead = (estimate: z.output<typeof EstimateSchema>, problem: Sent): [Estimate, Problem] => [estimate, problem];

const described = (schemas: Record<string, unknown>, paths = {}) => clientTypes({ paths, components: { schemas } });

describe("types of the document", () => {
  it("can hold what the service sends", () => {
    expect(asRead).toHaveLength(2); // the compiler has checked it
  });

  it.each([
    { schema: { type: "string" }, type: "string" },
    { schema: { type: ["integer", "null"] }, type: "number | null" },
    { schema: { enum: ["a", 1, true] }, type: '"a" | 1 | true' },
    { schema: { type: "array", items: { $ref: "#/components/schemas/Log" } }, type: "readonly Log[]" },
    {
      schema: { type: "array", items: { anyOf: [{ type: "string" }, { type: "null" }] } },
      type: "readonly (string | null)[]",
    },
    { schema: { type: "array", items: { type: "array", items: {} } }, type: "readonly (readonly unknown[])[]" },
    {
      schema: { type: "object", additionalProperties: { type: "number" } },
      type: "{ readonly [key: string]: number }",
    },
    {
      schema: {
        type: "object",
        additionalProperties: false,
        required: ["a"],
        properties: { a: { const: 1 }, "b-c": { type: "boolean" } },
      },
      type: '{\n  readonly a: 1;\n  readonly "b-c"?: boolean | undefined;\n}',
    },
  ])("say $type", ({ schema, type }) => {
    expect(described({ Shape: schema })).toContain(`export type Shape = ${type};\n`);
  });

  it("can't be ended early by a description", () => {
    expect(described({ Shape: { type: "string", description: "a */ b" } })).toContain("/** a *\\/ b */");
  });

  it("name every call that answers in JSON, where the service has it", () => {
    const answering = calls.filter(({ hidden, faces }) => !hidden && "application/json" in faces);
    const rows = answering.map(({ id, method, path }) => [id, { method: method.toUpperCase(), path }]);
    expect(CALLS).toEqual(Object.fromEntries(rows));
  });
});
