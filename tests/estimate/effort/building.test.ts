import { describe, expect, it } from "vitest";
import { raisedIn } from "../../../src/estimate/effort/building.js";
import { demoBody, estimated } from "../../helpers/estimating.js";

/** Hours that a list of pieces takes where all of it is bought, by stage of building. */
function commonHours(pieces: readonly object[], more: object = {}) {
  const { sheet } = estimated({ structure: { kind: "pieces", pieces }, ...more }).basis;
  return (stage: string) => {
    const cell = sheet.find(`common.hours.${stage}`) ?? sheet.find(`bought.hours.${stage}`);
    return cell ? sheet.in(cell, "person-h").toNumber() : Number.NaN;
  };
}

describe("building, against printed outputs", () => {
  it("sets 100 joists 2 × 10 × 20 ft with four people in about the textbook's 20 hours", () => {
    // Construction-estimating textbook, ch. 12: five joists, 167 board feet an hour. Amateurs are no faster, nor half as fast.
    const raise = commonHours([
      { name: "ceiling-joists", role: "rafter", count: 100, section: "2 x 10 in", length: "20 ft" },
    ]);
    expect(raise("rafters") / 4).toBeGreaterThanOrEqual(20);
    expect(raise("rafters") / 4).toBeLessThan(40);
  });

  it("makes and sets six posts 4 × 4 × 12 ft in about the day of two people of a labor sheet", () => {
    const of = commonHours([{ name: "posts", role: "post", count: 6, section: "4 x 4 in", length: "12 ft" }]);
    const all = of("join") + of("trialAssemble") + of("dismantle") + of("brace") + of("raise");
    expect(all).toBeGreaterThan(16 / 2);
    expect(all).toBeLessThan(16 * 1.5);
  });

  it("lays steel sheets about as fast as two people 20 sheets of 32 in × 8 ft a day (labor sheet)", () => {
    const { basis, takeoffs } = estimated(demoBody("orchard-shelter"));
    const squares = takeoffs.covering ? basis.sheet.in(takeoffs.covering.area, "square").toNumber() : Number.NaN;
    const cell = basis.sheet.find("common.hours.roof");
    const hours = cell ? basis.sheet.in(cell, "person-h").toNumber() : Number.NaN;
    const printed = 16 / ((20 * (32 / 12) * 8) / 100); // 3.75 h a square of wide sheets, laid with hand tools
    expect(hours / squares).toBeGreaterThan(printed / 2);
    expect(hours / squares).toBeLessThan(printed);
  });

  it("cuts and raises heavy timber in the 40 to 150 person-hours a thousand board feet of common practice", () => {
    const { basis, takeoffs } = estimated(demoBody("orchard-shelter"));
    const { sheet, cutList } = basis;
    const timber = cutList.groups.filter(({ role }) => ["post", "beam", "tie", "brace"].includes(role));
    const sum = (suffix: string) =>
      timber.reduce((total, { name }) => {
        const cell = sheet.find(`work.${name}.${suffix}`);
        return total + (cell ? sheet.in(cell, "person-h").toNumber() : 0);
      }, 0);
    const thousands = timber.reduce((total, { volume }) => total + sheet.in(volume, "mbf").toNumber(), 0);
    const rate = (sum("join") + sum("try") + sum("raise")) / thousands;
    expect(rate).toBeGreaterThan(40);
    expect(rate).toBeLessThan(150);
    expect(takeoffs.stages.length).toBeGreaterThan(5);
  });
});

describe("the stage in which a group is put up", () => {
  it.each(["wall-plates", "floor-sills", "bearers", "joists-of-mine"])(
    "follows what it is, not what the user calls it: a beam called %s is raised",
    (name) => {
      const of = commonHours([{ name, role: "beam", count: 4, section: "4 x 6 in", length: "12 ft" }]);
      expect(of("raise")).toBeGreaterThan(0);
      expect(of("enclose")).toBeNaN();
    },
  );

  it("is after the roof for the floor and the walls of a structure", () => {
    const body = demoBody("orchard-shelter");
    const structure = { ...(body.structure as object), floor: {}, walls: { sides: [{ side: "left" }] } };
    const { groups } = estimated({ ...body, structure }).basis.cutList;
    const later = groups.filter((group) => raisedIn(group) === "enclose").map(({ name }) => name);
    expect(later).toEqual(
      groups.map(({ name }) => name).filter((name) => /^(wall-|floor-|bearers|joists|corner-boards)/.test(name)),
    );
    expect(later.length).toBeGreaterThan(3);
  });
});

describe("dressing by hand, against a labor sheet", () => {
  /** Person-hours for one 2 × 4 × 18 ft without any machine, in softwood. */
  function byHand(): number {
    const { sheet } = estimated({
      structure: {
        kind: "pieces",
        pieces: [{ name: "lot", count: 10, section: "2 x 4 in", length: "18 ft", species: ["eastern-white-pine"] }],
      },
      logs: [{ name: "log", species: "eastern-white-pine", length: "20 ft", smallDiameter: "14 in" }],
      shop: { mill: "manual-band-mill", planer: "none" },
    }).basis;
    const cell = sheet.find("work.lot.dressEach");
    return cell ? sheet.in(cell, "person-h").toNumber() : Number.NaN;
  }

  it("is slower than planing alone, ten 2 × 4 × 18 ft a day, and faster than four a day with straightening", () => {
    expect(byHand()).toBeGreaterThan(8 / 10);
    expect(byHand()).toBeLessThan(8 / 4);
  });
});

describe("what building takes", () => {
  const posts = { name: "posts", role: "post", count: 8, section: "6 x 6 in", length: "8 ft" };

  it("goes with a group that is left out", () => {
    const gable = { kind: "gable", span: "16 ft", length: "24 ft", eaveHeight: "8 ft" };
    const hours = (structure: object) => {
      const found = estimated({ structure });
      return found.routes.buy.hours.value.toNumber();
    };
    expect(hours({ ...gable, groups: { braces: { remove: true } } })).toBeLessThan(hours(gable) - 10);
  });

  it("is the same on every route, so that it cancels in the comparison", () => {
    const { sheet } = estimated({ ...demoBody("orchard-shelter"), heldPlans: { milled: ["posts"] } }).basis;
    const shared = sheet.find("common.hours.total")?.value;
    for (const key of ["bought", "milled", "mixed"]) {
      const [all, own] = [sheet.find(`${key}.hours.total`)?.value, sheet.find(`${key}.hours.own`)?.value];
      expect(own && shared && all?.minus(own).minus(shared).abs().lt("1e-25")).toBe(true);
    }
  });

  it("is tried on the ground and taken apart again only where pieces are jointed", () => {
    const boards = commonHours([{ name: "boards", role: "board", count: 20, section: "1 x 8 in", length: "8 ft" }]);
    expect(boards("trialAssemble")).toBe(0);
    expect(commonHours([posts])("trialAssemble")).toBeGreaterThan(0);
  });

  it("needs no brush without a finish", () => {
    const brushing = (more: object) => {
      const { sheet } = estimated({ structure: { kind: "pieces", pieces: [posts] }, ...more }).basis;
      return sheet.find("bought.hours.finishFirst")?.value.toNumber();
    };
    expect(brushing({ options: { finish: "none" } })).toBeUndefined(); // not even a stage
    expect(brushing({})).toBeGreaterThan(0);
  });
});

describe("joints of one's own choice", () => {
  const made = (joint?: string) => {
    const groups = joint ? { posts: { joint }, ties: { joint } } : {};
    const { sheet, cutList } = estimated({
      structure: { kind: "gable", span: "12 ft", length: "16 ft", bays: 2, groups },
    }).basis;
    const hours = (name: string) => {
      const cell = sheet.find(name);
      return cell ? sheet.in(cell, "person-h").toNumber() : 0;
    };
    const count = (group: string) => cutList.groups.find(({ name }) => name === group)?.count.value.toNumber() ?? 0;
    return { hours, count, has: (name: string) => sheet.find(`fasteners.${name}.sites`) !== undefined };
  };

  it.each([
    ["mortise", "joint.mortise"],
    ["plain-bolt", "joint.plain-bolt"],
    ["lap", "joint.lap"],
  ])("take the hours of %s in the place of the post tops and laps", (joint, rate) => {
    const [usual, chosen] = [made(), made(joint)];
    const { hours, count } = chosen;
    const each = (group: string, was: string) => count(group) * (hours(rate) - usual.hours(was));
    expect(hours("bought.hours.join") - usual.hours("bought.hours.join")).toBeCloseTo(
      each("posts", "joint.post-top") + each("ties", "joint.lap"),
      9,
    );
  });

  it("leave every post its base, and bolt or peg what stands above it", () => {
    expect(["mortise", "plain-bolt", "lap"].every((joint) => made(joint).has("posts.post-base"))).toBe(true);
    expect([made("plain-bolt").has("posts.bolt"), made("plain-bolt").has("ties.bolt")]).toEqual([true, true]);
    expect([made("mortise").has("posts.post-top"), made("mortise").has("ties.lap")]).toEqual([false, false]);
  });
});
