import { describe, expect, it } from "vitest";
import { demoCatalogs } from "../../../../src/api/demos.js";
import type { Drawn } from "../../../../src/api/render/svg/card.js";
import { drawingsOf } from "../../../../src/api/render/svg/drawings.js";
import { leanToSection } from "../../../../src/api/render/svg/lean-to-views.js";
import { Subject } from "../../../../src/api/render/svg/subject.js";
import { type Basis, layBasis } from "../../../../src/estimate/basis.js";
import { pieceMarks } from "../../../../src/estimate/pieces/cut-list.js";
import type { Quantity } from "../../../../src/estimate/quantity/quantity.js";
import { marked, markedSmall, parseQuantity } from "../../../../src/estimate/quantity/text.js";
import { unit } from "../../../../src/estimate/quantity/unit.js";
import { readEstimateRequest } from "../../../../src/estimate/request/request.js";
import { Sheet } from "../../../../src/estimate/sheet/sheet.js";
import { layTakeoffs } from "../../../../src/estimate/takeoffs.js";
import { demo, post } from "../../helpers/posting.js";

const SLOPE = { rise: "5 in", run: "12 in" };
const STRUCTURES: Readonly<Record<string, object>> = {
  gable: { kind: "gable", span: "16 ft", length: "24 ft", slope: SLOPE },
  "steep gable": {
    kind: "gable",
    span: "30 ft",
    length: "90 ft",
    slope: { rise: "14 in", run: "12 in" },
    overhang: { eave: "6 in", farEave: "3 ft", gable: "0 in" },
    rafterBays: "short-last",
    endBays: 3,
  },
  "flat gable": {
    kind: "gable",
    span: "8 ft",
    length: "8 ft",
    slope: { rise: "0 in", run: "12 in" },
    rafterTail: "square",
  },
  "gable with a ridge beam": { kind: "gable", span: "16 ft", length: "24 ft", slope: SLOPE, ridge: "beam" },
  "metric gable": { kind: "gable", span: "5.2 m", length: "6.05 m", slope: { rise: "150 mm", run: "300 mm" } },
  "lean-to": { kind: "lean-to", span: "2.4 m", length: "7.2 m" },
  "lean-to on a wall": { kind: "lean-to", span: "6 ft", length: "9 ft", highSide: "ledger", overhang: { end: "0 in" } },
  "gable of unlike bays": {
    kind: "gable",
    span: "16 ft",
    length: "26 ft",
    slope: SLOPE,
    bayLengths: ["8 ft", "10 ft"],
  },
  hip: { kind: "hip", span: "16 ft", length: "24 ft", endBays: 2, slope: SLOPE },
  pyramid: { kind: "hip", span: "12 ft", length: "12 ft", slope: { rise: "9 in", run: "12 in" } },
  pergola: { kind: "pergola", span: "10 ft", length: "14 ft", slatSpacing: "12 in" },
  "walled gable": {
    kind: "gable",
    span: "12 ft",
    length: "20 ft",
    endBays: 2,
    footings: { frostDepth: "30 in" },
    floor: {},
    walls: {
      boards: "vertical",
      sides: [{ side: "near", openings: [{ width: "3 ft", height: "6 ft 6 in" }] }, { side: "far" }, { side: "left" }],
    },
  },
  "gable with its ends boarded": {
    kind: "gable",
    span: "16 ft",
    length: "24 ft",
    slope: { rise: "9 in", run: "12 in" },
    walls: {
      boards: "board-and-batten",
      sides: [
        { side: "near", openings: [{ width: "3 ft", height: "3 ft", sill: "3 ft" }] },
        { side: "left" },
        { side: "right", part: "gable" },
      ],
    },
  },
  "gable of level boards": {
    kind: "gable",
    span: "5 m",
    length: "6 m",
    walls: { boards: "horizontal", sides: [{ side: "left", openings: [{ width: "900 mm", height: "2 m" }] }] },
  },
  "walled lean-to": {
    kind: "lean-to",
    span: "2.4 m",
    length: "7.2 m",
    endBays: 2,
    footings: { frostDepth: "800 mm", kind: "precast" },
    walls: { boards: "horizontal", sides: [{ side: "low" }, { side: "left" }] },
  },
  "battened hip": {
    kind: "hip",
    span: "14 ft",
    length: "22 ft",
    footings: { frostDepth: "36 in" },
    floor: { gap: "0 in" },
    walls: {
      boards: "board-and-batten",
      sides: [{ side: "near", openings: [{ width: "4 ft", height: "3 ft", count: 2 }] }],
    },
  },
  "list of pieces": {
    kind: "pieces",
    pieces: [
      { name: "board", label: "The widest of all boards from the old barn behind the house" },
      ...Array.from({ length: 9 }, (_, i) => ({ name: `rail-${i}` })),
    ].map((piece, i) => ({ ...piece, section: `2 x ${12 - i} in`, length: `${14 - i} ft 3 in`, count: 1 + 7 * i })),
  },
  "bare pergola": { kind: "pergola", span: "3 m", length: "4 m", overhang: { side: "0 mm", end: "0 mm" } },
};

function basisOf(structure: object): Basis {
  const read = readEstimateRequest({ structure }, demoCatalogs());
  if ("faults" in read) throw new Error(JSON.stringify(read.faults));
  const basis = layBasis(new Sheet(), read.value);
  layTakeoffs(basis);
  return basis;
}

describe("the section of a lean-to on a wall", () => {
  it("has end beams as long as the list has them: to the wall, below its ledger", () => {
    const basis = basisOf(STRUCTURES["lean-to on a wall"] as object);
    const { frame, outline, groups } = basis.cutList;
    if (frame?.kind !== "lean-to" || !outline) throw new Error("no lean-to");
    const { view } = leanToSection(frame, outline, new Subject(basis));
    const beam = groups.find(({ name }) => name === "end-beams");
    const [length, top] = [beam?.length.value.toNumber(), frame.frame.eaveHeight.value.toNumber()];
    expect(length).toBeCloseTo(6 * 304.8, 6);
    const boxes = view.shapes.map(({ points }) => JSON.stringify(points.slice(2)));
    expect(boxes).toContain(
      JSON.stringify([
        [length, top],
        [0, top],
      ]),
    );
  });
});

describe("the birdsmouth of a rafter, at a larger scale", () => {
  it.each([
    { kind: "hip", span: "4.2 m", length: "6 m" },
    { kind: "gable", span: "16 ft", length: "24 ft", slope: SLOPE },
  ])("is drawn from foot to toe: $kind", (structure) => {
    const pages = drawingsOf(basisOf(structure)).filter(({ name }) => /rafter$/.test(name));
    const seen = pages.map(({ svg }) => {
      const [, detail] = [
        ...svg.matchAll(/<rect x="([\d.]+)"[^>]* width="([\d.]+)"[^>]*\/><\/clipPath><g[^>]*><path d="([^"]*)"/g),
      ];
      if (!detail) throw new Error("no detail of a birdsmouth");
      const [left, width] = [Number(detail[1]), Number(detail[2])];
      // The outline begins at the stock's corner; then come foot, inner corner and toe.
      const across = (detail[3] as string)
        .slice(1)
        .split("L")
        .map((point) => Number(point.split(" ")[0]));
      return across.slice(1, 4).every((x) => x >= left && x <= left + width);
    });
    expect(seen).toEqual(structure.kind === "hip" ? [true, true] : [true]);
  });
});

/** One mark of an SVG: name, attributes, and the words right after it. */
interface Mark {
  readonly name: string;
  readonly attributes: Readonly<Record<string, string>>;
  readonly words: string;
}

/** Reads the SVG as XML would be: throws where a mark is not closed or closed by another. */
function marksOf(svg: string): Mark[] {
  const open: string[] = [];
  const found: Mark[] = [];
  for (const [, close, name = "", attributes = "", single, words = ""] of svg.matchAll(
    /<(\/?)([A-Za-z]+)((?: [\w-]+="[^"<]*")*)(\/?)>([^<]*)/g,
  )) {
    if (close) {
      if (open.pop() !== name) throw new Error(`</${name}> closes nothing`);
      continue;
    }
    if (!single) open.push(name);
    const pairs = [...attributes.matchAll(/([\w-]+)="([^"]*)"/g)].map(([, key, value]) => [key, value] as const);
    found.push({ name, attributes: Object.fromEntries(pairs), words });
  }
  expect(open).toEqual([]);
  expect(svg.replaceAll(/<\/?[A-Za-z]+(?: [\w-]+="[^"<]*")*\/?>/g, "")).not.toMatch(/[<>]|&(?!amp;|lt;|gt;|quot;)/);
  return found;
}

const plain = (words: string) => words.replaceAll("&quot;", '"').replaceAll("&lt;", "<").replaceAll("&amp;", "&");

/** Where words stand on the page, roughly: half as wide as high, a letter. */
interface Box {
  readonly words: string;
  readonly x0: number;
  readonly x1: number;
  readonly y0: number;
  readonly y1: number;
}

function boxesOf(svg: string): Box[] {
  return marksOf(svg)
    .filter(({ name, words }) => name === "text" && words.length > 0)
    .map(({ attributes, words }) => {
      const said = plain(words);
      const size = Number(attributes["font-size"]);
      const [x, y, wide] = [Number(attributes.x), Number(attributes.y), said.length * size * 0.5];
      const anchor = attributes["text-anchor"] ?? "start";
      const from = anchor === "middle" ? -wide / 2 : anchor === "end" ? -wide : 0;
      const box = attributes.transform
        ? { x0: x - size * 0.75, x1: x, y0: y - wide / 2, y1: y + wide / 2 }
        : { x0: x + from, x1: x + from + wide, y0: y - size * 0.75, y1: y };
      return { words: said, ...box };
    });
}

const drawnOf = (structure: object): Drawn[] => drawingsOf(basisOf(structure));

describe.each(Object.entries(STRUCTURES))("the drawings of a %s", (_, structure) => {
  const basis = basisOf(structure);
  const drawings = drawingsOf(basis);
  const isList = basis.request.structure.kind === "pieces";

  it("are plan, elevation, section and rafter, or the pieces of a list, each well formed, with a title and a description", () => {
    const all = isList ? ["pieces-1", "pieces-2"] : ["plan", "elevation", "section", "rafter"];
    expect(drawings.map(({ name }) => name)).toEqual(expect.arrayContaining(all));
    for (const { svg, title } of drawings) {
      const marks = marksOf(svg);
      expect(marks.find(({ name }) => name === "title")?.words).toBe(title.replaceAll('"', "&quot;"));
      expect(marks.find(({ name }) => name === "desc")?.words.length).toBeGreaterThan(20);
      expect(svg).not.toMatch(/NaN|Infinity|undefined/);
      const ids = marks.flatMap(({ attributes }) => attributes.id ?? []);
      expect(new Set(ids).size).toBe(ids.length);
    }
  });

  it("are each on a card too, small enough for a phone to show its words", () => {
    const names = drawings.map(({ name }) => name);
    const cards = drawings.filter(({ name }) => name.endsWith("-card"));
    expect(cards.map(({ name }) => name)).toEqual(
      names.filter((name) => !name.endsWith("-card")).map((name) => `${name}-card`),
    );
    for (const { svg } of cards) {
      const width = Number(/viewBox="0 0 ([\d.]+)/.exec(svg)?.[1]);
      const smallest = Math.min(...marksOf(svg).flatMap(({ attributes }) => Number(attributes["font-size"] ?? 99)));
      // 328 px are left beside the margins of a screen of 360 px; a column of 25 rem is wider.
      expect((smallest / width) * 328).toBeGreaterThan(10);
    }
    if (isList) return;
    const card = cards.find(({ name }) => name === "section-card")?.svg ?? "";
    const span = "span" in structure ? parseQuantity(String(structure.span), unit("mm")) : undefined;
    const words = marked(span as Quantity, basis.request.system).replace(" mm", "");
    expect(marksOf(card).map((mark) => plain(mark.words))).toContain(words);
  });

  it("need no color: all is black or white", () => {
    for (const { svg } of drawings) {
      const colors = marksOf(svg).flatMap(({ attributes: { fill, stroke } }) => [fill, stroke]);
      expect(colors.filter((color) => color && !["#000", "#fff", "none"].includes(color))).toEqual([]);
    }
  });

  it("keep their words on the page and off one another", () => {
    for (const { name, svg } of drawings) {
      const boxes = boxesOf(svg);
      const [width, height] = (/viewBox="0 0 ([\d.]+) ([\d.]+)"/.exec(svg) ?? []).slice(1).map(Number) as [
        number,
        number,
      ];
      const off = boxes.filter(({ x0, x1, y0, y1 }) => x0 < 0 || x1 > width || y0 < 0 || y1 > height);
      expect(off.map(({ words }) => `${name}: ${words}`)).toEqual([]);
      const over = boxes.flatMap((a, i) =>
        boxes
          .slice(i + 1)
          .filter((b) => a.x0 < b.x1 && b.x0 < a.x1 && a.y0 < b.y1 && b.y0 < a.y1)
          .map((b) => `${name}: ${a.words} over ${b.words}`),
      );
      expect(over).toEqual([]);
    }
  });

  it("print no length that is not a cell of the sheet", () => {
    const { system } = basis.request;
    const known = new Set(
      basis.sheet.cells
        .filter(({ unit }) => unit.symbol === "mm")
        .flatMap(({ value, unit }) => [marked({ value, unit }, system), markedSmall({ value, unit }, system)])
        .map((text) => text.replace(/ (?:mm|in)$/, "").replace(/"$/, "")),
    );
    for (const { svg } of drawings) {
      // Dimensions alone: words in the middle of a line, or turned; above a listed piece how many there are and how long.
      const dimensions = marksOf(svg)
        .filter(
          ({ name, attributes, words }) =>
            name === "text" &&
            attributes["font-size"] === "3" &&
            (attributes["text-anchor"] === "middle" || / of \d/.test(words)),
        )
        .map(({ words }) => plain(words));
      expect(dimensions.length).toBeGreaterThan(1);
      const lengths = dimensions
        .flatMap((words) => words.split(" × "))
        .map((words) =>
          words
            .replace(/^(?:.*: \d+|\d+ .*) of /, "")
            .replace(/,.*$/, "")
            .replace(/"$/, ""),
        );
      expect(
        lengths.filter((length) => length !== "square" && !length.startsWith("seat ") && !known.has(length)),
      ).toEqual([]);
    }
  });
});

describe("a drawing", () => {
  /** Corners of the closed shapes of a drawing with a stroke of that width, in millimetres of paper. */
  const shapesOf = (svg: string, width: string) =>
    marksOf(svg)
      .filter(({ name, attributes }) => name === "path" && attributes["stroke-width"] === width)
      .map(({ attributes }) => (attributes.d ?? "").match(/-?[\d.]+/g)?.map(Number) ?? []);

  it("is to scale: posts of 6 in, 7 ft 10 in apart, at a quarter inch to the foot", () => {
    const drawings = drawnOf({ ...STRUCTURES.gable, bays: 3, overhang: { eave: "12 in", gable: "12 in" } });
    const svg = drawings.find(({ name }) => name === "plan")?.svg ?? "";
    expect(plain(svg)).toContain(`Scale 1/4" = 1'.`);
    const posts = shapesOf(svg, ".6").filter(({ length }) => length === 8);
    expect(posts).toHaveLength(8);
    const lefts = [...new Set(posts.map(([x = 0]) => x))].toSorted((a, b) => a - b);
    const wide = (posts[0]?.[2] ?? 0) - (posts[0]?.[0] ?? 0);
    expect(wide).toBeCloseTo(152.4 / 48, 1);
    // Outer faces 24 ft apart, posts 6 in wide: three bays of 7 ft 10 in.
    for (const [i, x] of lefts.slice(1).entries()) expect(x - (lefts[i] ?? 0)).toBeCloseTo((94 * 25.4) / 48, 1);
  });

  it("cuts the rafter as a square would: 5 in 12 leans by 22.62°, a seat of 3 7/8 in is level to it", () => {
    const svg = drawnOf({ ...STRUCTURES.gable }).find(({ name }) => name === "rafter")?.svg ?? "";
    const outline = shapesOf(svg, ".3").find(({ length }) => length === 14) as number[];
    const [x0 = 0, y0 = 0, x1 = 0, y1 = 0, x2 = 0, y2 = 0, x3 = 0, y3 = 0] = outline;
    expect(y0).toBe(y1); // the lower edge, from the tail to the birdsmouth
    expect(x1).toBeGreaterThan(x0);
    const angle = (dx: number, dy: number) => (Math.atan2(dy, dx) * 180) / Math.PI;
    // Read to a hundredth of a millimetre in a notch of two: about a degree.
    expect(Math.abs(angle(y1 - y2, x2 - x1) - 22.62)).toBeLessThan(1);
    expect(Math.abs(angle(x3 - x2, y3 - y2) - 22.62)).toBeLessThan(1);
  });

  it("digs a hole below every post, centre on centre, and boards a wall as wide as it is taken off", () => {
    const drawings = drawnOf(STRUCTURES["walled gable"] as object);
    const svg = (name: string) => drawings.find((one) => one.name === name)?.svg ?? "";
    // Round holes have 32 corners; three bays of two rows, and a post between the corners of either end.
    const holes = shapesOf(svg("footings"), ".3").filter(({ length }) => length === 64);
    const posts = shapesOf(svg("footings"), ".6").filter(({ length }) => length === 8);
    expect(holes).toHaveLength(10);
    const middle = (shape: readonly number[], of: 0 | 1) => {
      const along = shape.filter((_, i) => i % 2 === of);
      return (Math.min(...along) + Math.max(...along)) / 2;
    };
    for (const hole of holes)
      expect(
        posts.some((post) => [0, 1].every((of) => Math.abs(middle(post, of as 0) - middle(hole, of as 0)) < 0.02)),
      ).toBe(true);
    // Boards of 8 in that lap by 1/2 in on a side of 20 ft: 239 1/2 in ÷ 7 1/2 in = 31.9, so 32.
    // Beside them a corner board at either end.
    expect(shapesOf(svg("wall-far"), ".3").filter(({ length }) => length === 8)).toHaveLength(32 + 2);
    expect(plain(svg("wall-near"))).toContain("3' × 6' 6");
    expect(plain(svg("wall-far"))).not.toContain("Openings");
    expect(plain(svg("floor"))).toContain("joist bays of");
    for (const part of ["Floor bearers", "Joists", "Floor boards"]) expect(plain(svg("section"))).toContain(part);
    // Pieces are narrower one way than the other; joists run across, which is upwards here, and boards along.
    const box = (shape: readonly number[]) => {
      const [xs, ys] = [shape.filter((_, i) => i % 2 === 0), shape.filter((_, i) => i % 2 === 1)];
      return [Math.min(...xs), Math.min(...ys), Math.max(...xs), Math.max(...ys)] as const;
    };
    const boxes = (weight: string) =>
      shapesOf(svg("floor"), weight)
        .filter(({ length }) => length === 8)
        .map(box);
    const joists = boxes(".3").filter(([left, low, right, high]) => high - low > 4 * (right - left));
    const stand = boxes(".6");
    expect([joists.length > 10, stand.length]).toEqual([true, 10]);
    for (const [left, low, right, high] of joists) {
      const inside = stand.filter(
        (p) => left < p[2] - 0.02 && p[0] < right - 0.02 && low < p[3] - 0.02 && p[1] < high - 0.02,
      );
      expect(inside).toEqual([]);
    }
  });

  it("shows each of unlike bays with its length, and where the pieces of a plate meet", () => {
    const of = (name: string) =>
      plain(drawnOf(STRUCTURES["gable of unlike bays"] as object).find((one) => one.name === name)?.svg ?? "");
    // 26 ft less a post of 6 in: 25 ft 6 in between outer centres.
    for (const name of ["plan", "elevation"])
      for (const bay of ["8'", "10'", "7' 6\""]) expect(of(name)).toContain(bay);
    expect(of("plan")).not.toContain("bays of 8'");
  });

  it("lists pieces of one's own to scale, beside a frame too: 9 ft of 6 in at half an inch to the foot", () => {
    const own = { name: "rail", section: "2 x 6 in", length: "9 ft", count: 2 };
    const drawings = drawnOf({ ...STRUCTURES.gable, extraPieces: [own] });
    const page = drawings.find(({ name }) => name === "pieces")?.svg ?? "";
    expect(marksOf(page).map(({ words }) => plain(words))).toEqual(
      expect.arrayContaining([
        `One of each, its wide face, 1/2" = 1'`,
        `rail: 2 of 9'`,
        `2" × 6"`,
        "Sections, half size",
      ]),
    );
    const [face] = shapesOf(page, ".3");
    const [xs, ys] = [0, 1].map((of) => (face as number[]).filter((_, i) => i % 2 === of)) as [number[], number[]];
    const reach = (of: number[]) => Math.max(...of) - Math.min(...of);
    expect(reach(xs)).toBeCloseTo(9 * 12.7, 1);
    expect(reach(ys)).toBeCloseTo(12.7 / 2, 1);
    expect(drawnOf(STRUCTURES.gable as object).map(({ name }) => name)).not.toContain("pieces");
  });

  it("speaks of slats where a pergola has some", () => {
    const plan = (name: string) =>
      plain(drawnOf(STRUCTURES[name] as object).find((one) => one.name === "plan")?.svg ?? "");
    expect(plan("pergola")).toContain("Slats are drawn on the right half alone");
    expect(plan("bare pergola")).not.toContain("Slats are drawn");
  });

  it("shows the king posts below a ridge beam", () => {
    const section = drawnOf(STRUCTURES["gable with a ridge beam"] as object).find(({ name }) => name === "section");
    expect(plain(section?.svg ?? "")).toContain("King post");
  });

  it("speaks of purlins only where there are some", () => {
    const kinds = ["gable", "lean-to", "hip"];
    const plans = (more: object) =>
      kinds.map((kind) => {
        const structure = { kind, span: "12 ft", length: "20 ft", slope: SLOPE, covering: "asphalt-shingles", ...more };
        return drawnOf(structure).find(({ name }) => name === "plan")?.svg ?? "";
      });
    expect(plans({ deck: { kind: "solid-boards" } }).map((svg) => /purlin/i.test(svg))).toEqual([false, false, false]);
    expect(plans({ covering: "ribbed-steel" }).map((svg) => /purlin/i.test(svg))).toEqual([true, true, true]);
  });

  it("keys a wall by the boards of that wall alone", () => {
    const basis = basisOf(STRUCTURES["walled gable"] as object);
    const marks = pieceMarks(basis.sheet, basis.cutList.groups);
    const pages = drawingsOf(basis).filter(({ name }) => /^wall-(near|far|left)$/.test(name));
    expect(pages).toHaveLength(3);
    for (const { name, svg } of pages) {
      const boards = name.replace("wall-", "wall-boards-");
      const own = [...(marks.get(boards) ?? []), ...(marks.get(`${boards}-gable`) ?? [])];
      const said = /Wall boards, [^;]*?(WB-\d+) to (WB-\d+)/.exec(svg)?.slice(1);
      expect(said).toEqual([own[0], own.at(-1)]);
    }
  });

  it("shows the posts between the corners of an end", () => {
    const fine = (structure: object) =>
      shapesOf(drawnOf(structure).find(({ name }) => name === "section")?.svg ?? "", ".13").filter(
        ({ length }) => length === 8,
      ).length;
    const gable = { ...STRUCTURES.gable };
    expect(fine({ ...gable, endBays: 3 }) - fine({ ...gable, endBays: 1 })).toBe(2);
  });

  it("is on both calls, where it is asked for", async () => {
    const request = demo("ferry-bike-shed");
    const response = await post("/v1/takeoffs?include=drawings", request);
    const { geometry } = (await response.json()) as { geometry: { drawings: Drawn[] } };
    const names = "plan elevation section rafter footings wall-low wall-left wall-right".split(" ");
    expect(geometry.drawings.map(({ name }) => name)).toEqual(names.flatMap((name) => [name, `${name}-card`]));
    const without = (await (await post("/v1/takeoffs", request)).json()) as { geometry: object };
    expect(without.geometry).not.toHaveProperty("drawings");
  });
});
