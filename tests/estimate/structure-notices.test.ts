/** Fields of a structure that are given and not used are never dropped in silence. */
import { describe, expect, it } from "vitest";
import { layBasis } from "../../src/estimate/basis.js";
import { Watched } from "../../src/estimate/request/unread.js";
import { Sheet } from "../../src/estimate/sheet/sheet.js";
import { structureNotices } from "../../src/estimate/structure-notices.js";
import { layTakeoffs } from "../../src/estimate/takeoffs.js";
import { DEMOS, demoBody, request } from "../helpers/estimating.js";

function unused(body: object): string[] {
  const basis = layBasis(new Sheet(), request(body));
  const notices = structureNotices(basis, layTakeoffs(basis));
  return notices.flatMap(({ code, at }) => (code === "unused" && at ? [at.replace("/structure/", "")] : []));
}

const gable = { kind: "gable", span: "16 ft", length: "24 ft" };
const frost = { frostDepth: "30 in" };
const side = (more: object) => ({ walls: { gableLap: "2 in", sides: [{ side: "left", ...more }] } });

describe("a field that nothing in the structure asks for", () => {
  it.each([
    [{ deck: { spacing: "5 in" } }, ["deck/spacing"]],
    [{ covering: "wood-shingles", deck: { kind: "spaced-boards", spacing: "5 in" } }, []],
    [{ covering: "asphalt-shingles", deck: { closerRows: 1 } }, ["deck/closerRows"]],
    [{ covering: "asphalt-shingles", purlinSpacing: "2 ft" }, ["purlinSpacing"]],
    [{ covering: "ribbed-steel", deck: { kind: "sheets" }, purlinSpacing: "2 ft" }, []],
    [{ purlinSpacing: "2 ft" }, []],
    [
      { footings: { ...frost, kind: "precast", gravel: "4 in", tubeBelow: "1 ft" } },
      ["footings/tubeBelow", "footings/gravel"],
    ],
    [{ footings: { ...frost, gravel: "4 in", tubeBelow: "1 ft", form: "tube" } }, []],
    [{ footings: { ...frost, form: "none", tubeBelow: "1 ft" } }, ["footings/tubeBelow"]],
    [side({ part: "below-plate" }), ["walls/gableLap"]],
    [side({ part: "whole" }), []],
    [{ braceLeg: "2 ft", groups: { braces: { remove: true } } }, ["braceLeg"]],
    [{ groups: { "king-posts": { section: "4 x 4 in" }, posts: { section: "6 x 6 in" } } }, ["groups/king-posts"]],
    [{ groups: { braces: { joint: "mortise", exposure: "dry" } } }, ["groups/braces/exposure"]],
    [
      { extraPieces: [{ name: "shelf", count: 2, section: "1 x 8 in", length: "4 ft", crossings: 3, runs: 1 }] },
      ["extraPieces/0/crossings", "extraPieces/0/runs"],
    ],
  ])("is named: %j", (more, places) => {
    expect(unused({ structure: { ...gable, ...more } }).sort()).toEqual([...places].sort());
  });

  it("is in none of the demos", () => {
    expect(DEMOS.map((name) => unused(demoBody(name)))).toEqual(DEMOS.map(() => []));
  });
});

describe("a structure that does not come together as asked", () => {
  const said = (structure: object, code: string) => {
    const basis = layBasis(new Sheet(), request({ structure }));
    return structureNotices(basis, layTakeoffs(basis)).flatMap((one) => (one.code === code ? [one.text] : []));
  };

  it("tells of runs over bays longer than the longest piece", () => {
    const long = (bays: number) => said({ ...gable, length: "26 ft", bays, longestPiece: "12 ft" }, "too-long");
    expect(long(3)).toEqual([]);
    expect(long(2)[0]).toMatch(/^Plate beams of 14': longer than the longest piece \(12'\)/);
    expect(long(1)[0]).toMatch(/^Plate beams of 28'/);
  });

  // Bays of 24 ft less a post, in three: 7 ft 10 in, 7 ft 4 in clear. Below the beam, 8 in of 8 ft, there are 7 ft 4 in.
  it.each([
    // 6 ft stand 8 in from the posts, 4 in below the beam: 8 + 4 < 30.
    ["near", { width: "6 ft", height: "6 ft 8 in" }, true],
    // 3 ft stand 26 in from them: 26 + 4 = 30.
    ["near", { width: "3 ft", height: "6 ft 8 in" }, false],
    ["near", { width: "38 in", height: "6 ft 8 in" }, true],
    ["near", { width: "6 ft", height: "2 ft", sill: "2 ft" }, false],
    ["left", { width: "3 ft", height: "6 ft 8 in", from: "8 in" }, true],
    ["left", { width: "3 ft", height: "6 ft 8 in" }, false],
  ])("tells of braces through an opening: %s, %j", (name, opening, told) => {
    const walls = { clearance: "4 in", sides: [{ side: name, openings: [opening] }] };
    const shape = { ...gable, bays: 3, eaveHeight: "8 ft", braceLeg: "30 in", walls };
    expect(said(shape, "in-the-way").length).toBe(told ? 1 : 0);
    expect(said({ ...shape, groups: { braces: { remove: true } } }, "in-the-way")).toEqual([]);
  });
});

describe("a watched value", () => {
  it("is the same to whoever reads it, and knows what nobody read", () => {
    const given = { a: { b: 1, c: [{ d: 2, e: 3 }] }, f: { value: "1", unit: "in" }, g: { h: 1 }, i: undefined };
    const watched = new Watched(given);
    expect(watched.unread("")).toEqual(["/a", "/f", "/g"]);
    expect(watched.value.a.c.map(({ d }) => d)).toEqual([2]);
    expect(watched.value.f).toEqual(given.f);
    expect(watched.unread("")).toEqual(["/a/b", "/a/c/0/e", "/g"]);
    expect(watched.value).toEqual(given);
  });
});
