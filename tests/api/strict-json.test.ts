import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { NotJson, readJson } from "../../src/api/strict-json.js";
import { FaultError } from "../../src/estimate/faults.js";

const faultsIn = (text: string) => readJson(text).faults.map(({ code, at }) => ({ code, at }));
const thrownBy = (work: () => unknown): unknown => {
  try {
    return work();
  } catch (error) {
    return error;
  }
};
/** Names that both readers may keep; the rest are refused here on purpose. */
const ordinary = (key: string) => !(key in Object.prototype) && key !== "prototype";
const jsonText = fc
  .json({ maxDepth: 6 })
  .filter((text) => [...text.matchAll(/"(\w+)"\s*:/g)].every((match) => ordinary(match[1] as string)));

describe("reading JSON", () => {
  it("gives what JSON.parse gives for every JSON text", () => {
    fc.assert(
      fc.property(jsonText, fc.constantFrom(undefined, 1, "\t"), (text, indent) => {
        const spaced = JSON.stringify(JSON.parse(text), null, indent);
        expect(readJson(spaced)).toEqual({ value: JSON.parse(spaced), faults: [] });
      }),
      { seed: 7, numRuns: 500 },
    );
  });

  it("refuses exactly the broken texts that JSON.parse refuses", () => {
    const junk = fc.constantFrom(
      "{",
      "}",
      "[",
      "]",
      ",",
      ":",
      '"',
      "\\",
      "0",
      "-",
      ".",
      "e",
      "t",
      " ",
      "\n",
      "\u0000",
      "",
    );
    fc.assert(
      fc.property(jsonText, fc.nat(), fc.nat(2), junk, (text, where, drop, put) => {
        const at = where % (text.length + 1);
        const broken = text.slice(0, at) + put + text.slice(at + drop);
        const ours = thrownBy(() => readJson(broken)) instanceof NotJson;
        expect({ broken, refused: ours }).toEqual({
          broken,
          refused: thrownBy(() => JSON.parse(broken)) instanceof SyntaxError,
        });
      }),
      { seed: 11, numRuns: 3000 },
    );
  });

  it.each([
    { text: '{"a": 1,\n "b": }', says: "Line 2, column 7: expected a value." },
    { text: "[1 2]", says: 'Line 1, column 4: expected a comma or "]".' },
    { text: '{"a" 1}', says: 'Line 1, column 6: expected ":".' },
    { text: "{a: 1}", says: "Line 1, column 2: expected a name in double quotation marks." },
    { text: '"abc', says: "Line 1, column 5: expected the closing quotation mark." },
    { text: '"\\q"', says: "Line 1, column 1: expected a text whose escapes JSON knows." },
    { text: "1 1", says: "Line 1, column 3: expected the end of the text." },
    { text: "  ", says: "Line 1, column 3: expected a value." },
    { text: "NaN", says: "Line 1, column 1: expected a value." },
  ])("says where $text breaks off", ({ text, says }) => {
    expect(thrownBy(() => readJson(text))).toEqual(expect.objectContaining({ name: "NotJson", message: says }));
  });

  it("names every name given twice, however it is written", () => {
    expect(faultsIn('{"a":1,"b":[{"c":1,"\\u0063":2}],"a":3}')).toEqual([
      { code: "duplicate-name", at: "/b/0/c" },
      { code: "duplicate-name", at: "/a" },
    ]);
  });

  it.each(["__proto__", "constructor", "prototype", "toString", "hasOwnProperty"])("refuses the name %s", (name) => {
    const text = `{"a":{"${name}":{"polluted":true}}}`;
    expect(faultsIn(text)).toEqual([{ code: "unknown-field", at: `/a/${name}` }]);
    expect(readJson(text).value).toEqual({ a: {} });
    expect(({} as Record<string, unknown>).polluted).toBeUndefined();
  });

  it("refuses numbers that nobody can mean", () => {
    expect(faultsIn(`{"a":[1,${"9".repeat(1_900_000)}],"b":1e400,"c":-1e-5}`)).toEqual([
      { code: "out-of-range", at: "/a/1" },
      { code: "out-of-range", at: "/b" },
    ]);
  });

  it("refuses half a character", () => {
    expect(faultsIn('{"a":"\\ud83d"}')).toEqual([{ code: "wrong-shape", at: "/a" }]);
    expect(faultsIn('{"a":"\\ud83d\\ude00"}')).toEqual([]);
  });

  it("stops at 32 levels, however many follow", () => {
    expect(readJson("[".repeat(32) + "]".repeat(32)).faults).toEqual([]);
    const error = thrownBy(() => readJson("[".repeat(1_000_000)));
    expect(error).toBeInstanceOf(FaultError);
    expect((error as FaultError).faults).toEqual([expect.objectContaining({ code: "too-large", at: "/0".repeat(32) })]);
  });

  it("stops at 50,000 values", () => {
    expect(readJson(`[${"0,".repeat(49_998)}0]`).faults).toEqual([]);
    const error = thrownBy(() => readJson(`[${"0,".repeat(49_999)}0]`));
    expect((error as FaultError).faults).toEqual([expect.objectContaining({ code: "too-large" })]);
  });
});
