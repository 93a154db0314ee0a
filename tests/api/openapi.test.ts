import { readFileSync } from "node:fs";
import type { SchemaObject } from "openapi3-ts/oas31";
import { describe, expect, it } from "vitest";
import { z } from "zod";
import { body, call } from "../../src/api/call.js";
import { calls } from "../../src/api/calls.js";
import { describeCalls } from "../../src/api/openapi.js";
import { judgeBy } from "./helpers/conformance.js";
import { pileCall, shelfCall } from "./helpers/woodpile.js";

/** Every property of a schema with the path to it; a reference is described by what it refers to. */
function* propertiesOf(schema: unknown, path: string): Generator<[string, SchemaObject]> {
  if (typeof schema !== "object" || schema === null) return;
  for (const [key, value] of Object.entries(schema)) {
    if (key === "properties") {
      for (const [name, property] of Object.entries(value as Record<string, SchemaObject>))
        yield [`${path}/${name}`, property];
    }
    yield* propertiesOf(value, `${path}/${key}`);
  }
}

describe("the document of the service", () => {
  const document = describeCalls(calls);

  it("is what is kept beside the code", () => {
    const kept = JSON.parse(readFileSync(new URL("../../openapi/openapi.json", import.meta.url), "utf8"));
    expect(kept).toEqual(JSON.parse(JSON.stringify(document)));
  });

  it("describes every shape and every field", () => {
    const schemas = Object.entries(document.components?.schemas ?? {}) as [string, SchemaObject][];
    const silent = schemas.filter(([, schema]) => !schema.description).map(([name]) => name);
    const fields = [...propertiesOf(document.components?.schemas, "")];
    silent.push(...fields.filter(([, field]) => !field.description && !field.$ref).map(([path]) => path));
    expect(silent).toEqual([]);
    expect(fields.length).toBeGreaterThan(10);
  });

  it("says what every call and every parameter is for", () => {
    for (const row of calls) {
      expect([row.path, row.summary.length > 3, row.description.endsWith(".")]).toEqual([row.path, true, true]);
      for (const face of Object.values(row.faces)) expect(face.description).toMatch(/\.$/);
      for (const field of Object.values(row.query?.shape ?? {})) expect(field.description).toMatch(/\.$/);
      const parts = [...row.path.matchAll(/\{(\w+)\}/g)].map((match) => match[1]);
      expect(Object.keys(row.parameters ?? {})).toEqual(parts);
    }
  });

  it("has a name of its own for each call", () => {
    const ids = calls.map((row) => row.id);
    expect(new Set(ids).size).toBe(ids.length);
    const places = calls.map((row) => `${row.method} ${row.path}`);
    expect(new Set(places).size).toBe(places.length);
  });
});

describe("examples", () => {
  it.each([...calls, pileCall].map((row) => ({ row, name: `${row.method} ${row.path}` })))(
    "of $name validate by the document",
    ({ row }) => {
      const document = describeCalls([row, shelfCall]);
      const judge = judgeBy(document);
      if (row.request) expect(Object.keys(row.request.examples)).not.toEqual([]);
      for (const { value } of Object.values(row.request?.examples ?? {})) {
        expect(row.request?.read(value)).toHaveProperty("value");
        expect(judge.accepts(z.globalRegistry.get(row.request?.schema as z.ZodType)?.id as string, value)).toBe(true);
      }
      for (const face of Object.values(row.faces).filter(({ schema }) => schema)) {
        expect(judge.accepts(z.globalRegistry.get(face.schema as z.ZodType)?.id as string, face.example)).toBe(true);
      }
    },
  );
});

describe("a document", () => {
  const document = describeCalls([pileCall, shelfCall]);
  const shape = (name: string) => document.components?.schemas?.[name] as SchemaObject;

  it("tells requests, where a default may be left out, from answers, where all is stated", () => {
    const crib = shape("TestCrib");
    expect(crib.required).toEqual(["kind"]);
    expect(shape("TestPileAnswer").required).toEqual(["name", "feet", "shown"]);
  });

  it("maps the values of a discriminator to the shapes they pick", () => {
    const stack = shape("TestPile").properties?.stack as SchemaObject;
    expect(stack.discriminator).toEqual({
      propertyName: "kind",
      mapping: { flat: "#/components/schemas/TestFlat", crib: "#/components/schemas/TestCrib" },
    });
  });

  it("lists parameters, types and problems of a call", () => {
    const operation = document.paths?.["/v1/piles"]?.post;
    expect(operation?.parameters).toMatchObject([
      { name: "include", in: "query", style: "form", explode: false, required: false },
      { name: "title", in: "query", required: false },
    ]);
    expect(Object.keys(operation?.responses ?? {})).toEqual([
      "200",
      "400",
      "406",
      "413",
      "415",
      "422",
      "429",
      "500",
      "503",
    ]);
  });

  it("holds only the shapes that its calls use, in the order of their names", () => {
    expect(Object.keys(document.components?.schemas ?? {})).toEqual([
      "Fault",
      "Problem",
      "TestCrib",
      "TestFlat",
      "TestPile",
      "TestPileAnswer",
    ]);
  });

  it("is refused when one name would stand for two shapes", () => {
    const both = z
      .strictObject({ size: z.int().default(1).describe("A size.") })
      .meta({ id: "TestBoth", description: "Differs by direction." });
    const row = call({
      ...shelfCall,
      method: "post",
      request: body({ schema: both, examples: {} }),
      faces: { "application/json": { description: "It.", schema: both, render: (answer) => answer } },
    });
    expect(() => describeCalls([row])).toThrow("TestBoth differs as request and as answer");
  });
});
