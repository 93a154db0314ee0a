import { describe, expect, it } from "vitest";
import { panelsOver } from "../../../src/api/web/app/folds.js";

describe("folds over a place of the request", () => {
  it.each([
    { at: "/structure/span", more: [] },
    { at: "/structure", more: [] },
    { at: "/structure/footings/frostDepth", more: [] },
    { at: "/structure/postSpacing", more: ["more/structure"] },
    { at: "/structure/extra/0/length", more: ["more/structure/extra"] },
    { at: "/structure/extra/0/grade", more: ["more/structure/extra", "more/structure/extra/0"] },
    { at: "/structure/groups/posts/section", more: [] },
    { at: "/logs/0/smallDiameter", more: [] },
    { at: "/logs/0", more: [] },
    { at: "/logs/0/rot/smallEnd", more: ["more/logs/0"] },
  ])("open only where the place is inside: $at", ({ at, more }) => {
    const open = panelsOver(at).filter((name) => name.startsWith("more"));
    expect(open).toEqual(expect.arrayContaining(more));
    // Names below a field that is none of a fold stand for no fold.
    expect(open.filter((name) => FOLDS.test(name))).toEqual(more);
  });

  it("name the table that holds the place, and the panel where it stands under another name", () => {
    expect(panelsOver("/structure/groups/posts/section")).toContain("table/structure/groups");
    expect(panelsOver("/labor/valueOfHour")).toContain("give-shop");
    expect(panelsOver("/overrides/rafter.seat")).toContain("give-own");
  });
});

/** Folds that there are. */
const FOLDS = /^more\/(structure|structure\/extra|structure\/extra\/0|logs\/0)$/;
