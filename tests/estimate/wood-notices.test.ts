/** What is told of the woods that the logs are of: any of them for an open group, and those that rot. */
import { describe, expect, it } from "vitest";
import { estimated } from "../helpers/estimating.js";

const log = (name: string, species: string) => ({ name, species, length: "9 ft", smallDiameter: "14 in", count: 3 });
const [pine, oak] = [log("pine", "eastern-white-pine"), log("oak", "white-oak")];

function told(
  code: string,
  { logs, posts = {}, structure = {} }: { logs: object[]; posts?: object; structure?: object },
) {
  const made = estimated({
    structure: {
      kind: "pieces",
      pieces: [
        { name: "posts", role: "post", count: 4, section: "6 x 6 in", length: "8 ft", source: "mill", ...posts },
        {
          name: "rails",
          role: "other",
          count: 4,
          section: "2 x 4 in",
          length: "8 ft",
          species: ["eastern-white-pine"],
        },
      ],
      ...structure,
    },
    logs,
    catalog: { demo: "orchard-yard" },
    labor: { valueOfHour: "$1/h" },
  });
  return made.notices.filter((notice) => notice.code === code).map(({ text, at }) => [text, at]);
}

describe("groups open to any wood", () => {
  it("are named where some logs are of a wood that is harder or eats steel, and none of the others", () => {
    const [[text, at] = []] = told("any-wood", { logs: [pine, oak] });
    expect(text).toMatch(/^Posts: may come of any log, so of white oak too\./);
    expect(at).toBe("/structure/pieces/0");
    expect(told("any-wood", { logs: [pine] })).toEqual([]);
    expect(told("any-wood", { logs: [oak] })).toEqual([]);
    expect(told("any-wood", { logs: [pine, oak], posts: { species: ["white-oak"] } })).toEqual([]);
  });
});

describe("posts milled out of wood that rots", () => {
  // Wood Handbook, table 14-1: heartwood of white oak resists decay, that of eastern white pine little or not.
  it("are told where rain reaches them", () => {
    expect(told("decay", { logs: [pine] })[0]?.[0]).toMatch(/^Posts: milled out of eastern white pine,/);
    expect(told("decay", { logs: [pine, oak], posts: { species: ["white-oak"] } })).toEqual([]);
    expect(told("decay", { logs: [pine], structure: { exposure: "sheltered" } })).toEqual([]);
    expect(told("decay", { logs: [pine], posts: { exposure: "dry" } })).toEqual([]);
    expect(told("decay", { logs: [pine], posts: { source: "buy" } })).toEqual([]);
  });
});
