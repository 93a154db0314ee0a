import { createHash } from "node:crypto";
import { describe, expect, it } from "vitest";
import { digestOf, provenance } from "../../src/api/provenance.js";

describe("the digest of a request", () => {
  // RFC 8785, section 3.2.3: members sorted by the UTF-16 units of their names, no space between tokens.
  it("is the SHA-256 of the JSON with sorted keys and no space", () => {
    const canonical = '{"1":[{"a":null,"b":true}],"B":"\\n","a":0.5,"é":"€"}';
    const expected = createHash("sha256").update(canonical).digest("hex");
    expect(digestOf({ é: "€", a: 0.5, B: "\n", 1: [{ b: true, a: null }] })).toBe(expected);
  });

  it("goes into the answer with the version of program and data", () => {
    expect(provenance("abc")).toEqual({
      engine: expect.stringMatching(/^\d+\.\d+\.\d+$/),
      dataVersion: expect.stringMatching(/^[0-9a-f]{16}$/),
      requestDigest: "abc",
    });
  });
});
