import { describe, expect, it } from "vitest";
import { layDressing, layPlaner, type Planer, type RawPiece } from "../../../src/estimate/effort/dressing.js";
import { dressingChoice } from "../../../src/estimate/effort/dressing-choice.js";
import { exactly } from "../../../src/estimate/quantity/text.js";
import type { StructureShape } from "../../../src/estimate/request/structure-kinds.js";
import { number } from "../../../src/estimate/sheet/expression.js";
import { laidPieces } from "../takeoff/shelter.js";

interface Raw {
  readonly finished?: string;
  readonly length?: string;
  readonly thickness?: string;
  readonly width?: string;
  readonly weight?: string;
  readonly hardness?: string;
  readonly planer?: Planer;
  readonly tableSaw?: boolean;
  readonly surface?: "dressed" | "rough";
  readonly bought?: boolean;
}

/** A 10 ft board, 1 × 4 finished, of 30 lb, 1 3/8 × 4 1/2 in rough. */
function dressed(raw: Raw = {}) {
  const length = raw.length ?? "10 ft";
  const piece = {
    name: "board",
    count: 4,
    section: raw.finished ?? "1 x 4 in",
    length,
    surface: raw.surface ?? "dressed",
  };
  const { sheet, groups, assumed, units } = laidPieces({
    kind: "pieces",
    pieces: [piece],
  } as unknown as StructureShape);
  const [group] = groups;
  if (!group) throw new Error("no group");
  layPlaner(assumed, raw.planer);
  const input = (name: string, text: string) => sheet.input(`raw.${name}`, exactly(text));
  const rough: RawPiece = {
    thickness: input("thickness", raw.thickness ?? "1 3/8 in"),
    width: input("width", raw.width ?? "4 1/2 in"),
    length: input("length", length),
    weight: input("weight", raw.weight ?? "30 lb"),
    hardness: number(raw.hardness ?? "1"),
  };
  const machines = { planer: raw.planer, tableSaw: raw.tableSaw ?? true };
  const { each } = layDressing({ sheet, assumed, machines, units }, group, rough);
  const choice = dressingChoice(
    { group, raw: rough, comesDressed: raw.bought ?? false },
    { machines, assumed, system: "inch-pound" },
  );
  return { minutes: sheet.in(each, "person-min").toDecimalPlaces(4).toNumber(), choice };
}

describe("the jointer", () => {
  const apart = (raw: Raw) => dressed({ finished: "1 x 9 in", thickness: "1 3/8 in", weight: "30 lb", ...raw });

  it("leaves a piece wider than its 8 in to a saw along a guide, 4 ft a minute in place of 12", () => {
    const [narrow, wide] = [apart({ width: "8 in" }), apart({ width: "8 1/16 in" })];
    // Four passes over 10 ft: 40 ÷ 4 less 40 ÷ 12; both go through the planer one by one.
    expect(wide.minutes - narrow.minutes).toBeCloseTo(10 - 40 / 12, 3);
    expect(narrow.choice.because[0]).toMatch(/^jointer, rip saw and planer take them/);
    expect(wide.choice.because).toContain(
      "straightened by a saw along a guide: 8 1/16 in is wider than the jointer's 8 in",
    );
  });
});

describe("dressing one piece", () => {
  // Joint 4 passes at 12 ft a minute: 10 × 4 ÷ 12 = 3.3333 min. Rip once at 12: 0.8333. Faces: 3/8 in off in passes of
  // 3/32 in are 4; two abreast (12 1/2 ÷ 4 1/2) make 4 ÷ 2 + 1 = 3. Edges 2 more: 10 × 5 ÷ 22 = 2.2727. Handling 4.
  it("is jointed, ripped and planed slab first where that takes fewer passes", () => {
    const { minutes, choice } = dressed();
    expect(minutes).toBeCloseTo(3.3333 + 0.8333 + 2.2727 + 4, 3);
    expect(choice).toMatchObject({ by: "machine", order: "slab-first", rip: "one-face" });
  });

  it("is planed piece by piece where only one fits: 4 passes, and 2 on the edges", () => {
    const { minutes, choice } = dressed({ finished: "1 x 6 in", width: "6 1/2 in" });
    expect(minutes).toBeCloseTo(3.3333 + 0.8333 + (10 * 6) / 22 + 4, 3);
    expect(choice).toMatchObject({ by: "machine", order: "piece-by-piece" });
  });

  it("is ripped from both faces past the saw's depth of 3 1/8 in", () => {
    const { minutes, choice } = dressed({ finished: "3 1/4 x 6 in", thickness: "3 1/2 in", width: "6 1/2 in" });
    // 1/4 in off in 3 passes; two rips at 10 ÷ 12 min.
    expect(minutes).toBeCloseTo(3.3333 + 2 * 0.8333 + (10 * 5) / 22 + 4, 3);
    expect(choice.rip).toBe("both-faces");
  });

  it("takes two people to handle past 51 lb", () => {
    expect(
      dressed({ finished: "1 x 6 in", width: "6 1/2 in", weight: "52 lb" }).minutes -
        dressed({ finished: "1 x 6 in", width: "6 1/2 in" }).minutes,
    ).toBeCloseTo(4, 6);
  });

  it.each([
    [{ weight: "101 lb" }, "too heavy to feed: 101 lb, at most 100 lb"],
    [{ width: "13 in" }, "too wide for the planer: 13 in, at most 12 1/2 in"],
    [{ length: "21 ft" }, "too long for the room at the machines: 21', at most 20'"],
    [{ finished: "6 x 6 in", thickness: "6 1/16 in" }, "too thick for the planer: 6 1/16 in, at most 6 in"],
  ] as const)("goes to hand tools, and says why: %o", (raw, because) => {
    const { choice } = dressed(raw);
    expect(choice.by).toBe("hand");
    expect(choice.because).toContain(because);
    // 15 ft² an hour, and never quicker than the machines.
    expect(dressed(raw).minutes).toBeGreaterThanOrEqual(dressed({ ...raw, planer: "none" }).minutes);
  });

  it("is all by hand without a planer: 2 × (1 + 4) in × 10 ft and two ends, at 15 ft² an hour", () => {
    const { minutes, choice } = dressed({ planer: "none" });
    expect(minutes).toBeCloseTo(((((2 * 5) / 12) * 10 + (2 * 4) / 144) / 15) * 60, 3);
    expect(choice).toEqual({ group: "board", by: "hand", crosscutFaces: 1, because: ["there is no planer"] });
  });

  it("fits a heavier and wider piece where the planer is a stationary one", () => {
    expect(dressed({ weight: "150 lb", width: "13 in", planer: "stationary-planer" }).choice.by).toBe("machine");
  });

  it("is nothing where the piece stays rough, or is bought dressed", () => {
    expect(dressed({ surface: "rough" })).toMatchObject({ minutes: 0, choice: { by: "nobody" } });
    expect(dressed({ bought: true }).choice).toMatchObject({ by: "nobody", because: ["they are bought dressed"] });
  });

  it("tells which limit is the nearest, and from how many faces the circular saw of 2 1/2 in cuts across", () => {
    expect(dressed().choice).toMatchObject({ crosscutFaces: 1 });
    expect(dressed().choice.because[0]).toBe(
      "jointer, rip saw and planer take them; nearest to its limit is the length, 10', at most 20'",
    );
    const { choice } = dressed({ finished: "6 x 8 in", surface: "rough" });
    // 2 × 2 1/2 in do not meet in 6 in: all round, and a handsaw through the inch that is left.
    expect(choice.crosscutFaces).toBe(4);
    expect(choice.because).toContain(
      "crosscut from all 4 faces: 6 in is deeper than twice the saw's 2 1/2 in, and a handsaw takes the core",
    );
  });

  it("takes hard wood longer, machine time only", () => {
    const [soft, hard] = [dressed().minutes, dressed({ hardness: "2" }).minutes];
    expect(hard - 4).toBeCloseTo(2 * (soft - 4), 3);
  });
});
