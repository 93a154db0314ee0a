import { describe, expect, it } from "vitest";
import { blank, copyOf, freeName } from "../../../src/api/web/app/new-row.js";
import type { FieldSpec } from "../../../src/api/web/app/specs.js";

const head = { label: "", hint: "", example: "", required: false };
const named: readonly FieldSpec[] = [{ ...head, key: "name", kind: "text", suggested: [] }];

describe("a new row", () => {
  it("takes the first name of its own stem that is free, whatever others are called", () => {
    expect(freeName("log", [])).toBe("log-1");
    expect(freeName("log", [{ name: "log-1" }, { name: "row-2" }])).toBe("log-2");
    expect(freeName("log", [{ name: "log-2" }, {}, "x"])).toBe("log-1");
  });

  it("has a name only where rows have names", () => {
    expect(blank(named, [{ name: "row-1" }])).toEqual({ name: "row-2" });
    expect(blank([], [{ name: "row-1" }])).toEqual({});
  });

  it("like another keeps all but its name", () => {
    const oak = { name: "oak-3", length: "9 ft" };
    expect(copyOf(oak, [oak, { name: "oak-1" }])).toEqual({ name: "oak-2", length: "9 ft" });
    expect(copyOf({ share: "1" }, [])).toEqual({ share: "1" });
  });
});
