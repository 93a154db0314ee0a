/**
 * Every covering on random roofs of every closed kind: counts against a walk over the roof (tests/judges/roof-walker.ts), areas
 * against the plan, nothing less than nothing, never less of anything on a longer roof, and the same in millimetres.
 */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { COVERINGS, type CoveringKind, coveringKinds } from "../../src/catalog/coverings.js";
import { type StructureShape, structure } from "../../src/estimate/request/structure-kinds.js";
import { coveredRoof } from "../../src/estimate/takeoff/covered-roof.js";
import { layCovering } from "../../src/estimate/takeoff/covering.js";
import { laidPieces } from "../estimate/takeoff/shelter.js";
import {
  areaByPlan,
  coveredPlanes,
  type Plane,
  purlinRows,
  type RoofSizes,
  reaches,
  rolledOut,
  screwsOf,
  sideBySide,
  upTo,
} from "../judges/roof-walker.js";

/** Roofs for each covering. */
const ROOFS = 60;
const SEED = 20_261_126;

const half = (least: number, most: number) => fc.integer({ min: least * 2, max: most * 2 }).map((n) => n / 2);

/** Sizes of what is laid, in inches; all pinned, so that the walk knows them without the tables. */
const laid = fc.record({
  cover: half(12, 40),
  exposure: half(4, 14),
  lap: half(1, 3),
  drip: half(0, 3),
  ridgeGap: half(0, 2),
});

const roofs: fc.Arbitrary<Drawn> = fc
  .record({
    kind: fc.constantFrom<RoofSizes["kind"]>("gable", "lean-to", "hip"),
    span: half(96, 260),
    longer: half(0, 150),
    rise: half(1, 14),
    eave: half(0, 24),
    end: half(0, 24),
    fascia: half(1, 2),
    purlinSpacing: half(12, 36),
    sheet: laid,
  })
  .map(({ longer, sheet, ...rest }) => {
    const { drip, ridgeGap } = sheet;
    // The commons of a hip are 2 in thick: a ridge is longer, or there is none.
    const sizes = {
      ...rest,
      length: rest.span + (rest.kind === "hip" && longer <= 2 ? 0 : longer),
      drip,
      ridgeGap,
      ridge: 2,
      purlin: 4,
    };
    return { sizes, sheet };
  });

interface Drawn {
  readonly sizes: RoofSizes;
  readonly sheet: { readonly cover: number; readonly exposure: number; readonly lap: number };
}

const MM = 25.4;
type Write = (inches: number) => string;
const inches: Write = (n) => `${n} in`;
const millimetres: Write = (n) => `${(n * 254) / 10} mm`;

function shapeOf(s: RoofSizes, covering: CoveringKind, write: Write): StructureShape {
  const fascia = { section: { thickness: write(s.fascia), width: write(6) } };
  const purlin = { section: { thickness: write(2), width: write(s.purlin) } };
  const of = { span: write(s.span), length: write(s.length), eaveHeight: write(144), bays: 3 };
  const roof = { slope: { rise: write(s.rise), run: write(12) }, purlinSpacing: write(s.purlinSpacing), covering };
  const ridge = { section: { thickness: write(s.ridge), width: write(8) } };
  // Skip sheathing would hide the purlins that screws are counted by.
  const deck = COVERINGS[covering].deck === "purlins" ? { deck: { kind: "purlins" } } : {};
  const [near, end] = [write(s.eave), write(s.end)];
  const shared = { ...of, ...roof, ...deck };
  const json = {
    gable: {
      kind: "gable",
      ...shared,
      overhang: { eave: near, gable: end },
      groups: { "eave-fascia": fascia, "rake-fascia": fascia, ridge, ...(deck.deck ? { purlins: purlin } : {}) },
    },
    "lean-to": {
      kind: "lean-to",
      ...shared,
      overhang: { low: near, high: near, end },
      groups: { "low-fascia": fascia, ...(deck.deck ? { purlins: purlin } : {}) },
    },
    hip: {
      kind: "hip",
      ...shared,
      overhang: { eave: near },
      groups: { "side-fascia": fascia, ridge, ...(deck.deck ? { "side-purlins": purlin } : {}) },
    },
  }[s.kind];
  return structure.parse(json);
}

function covered(kind: CoveringKind, { sizes, sheet: of }: Drawn, write: Write = inches) {
  const overrides = Object.fromEntries(
    Object.entries({
      drip: write(sizes.drip),
      coverWidth: write(of.cover),
      cutStep: write(1),
      exposure: write(of.exposure),
      soldExposure: write(5),
      pieceWidth: write(12),
      rollWidth: write(36),
      rollLength: write(600),
      boardWidth: write(12),
      sideLap: write(of.lap),
      endLap: write(6),
      screwsPerRow: "4",
      endRowFactor: "2",
      clipsApart: write(24),
    }).map(([name, value]) => [`covering.${name}`, value]),
  );
  const form = COVERINGS[kind].form;
  // Boards add what their lap leaves; the exposure of wood shingles is laid.
  if (form === "boards") delete overrides["covering.coverWidth"];
  const assumptions = { "covering.ridgeGap": write(sizes.ridgeGap), "covering.courseWaste": "10 %" };
  const taken = laidPieces(shapeOf(sizes, kind, write), { overrides, assumptions });
  const roof = coveredRoof(taken.sheet, taken, taken.units);
  if (!roof) throw new Error("no roof");
  const exposure = { climate: "outdoors", treated: false, tannin: false } as const;
  const { sheet, assumed, defaults, units } = taken;
  const takeoff = layCovering(sheet, { kind, roof, offer: undefined, exposure, assumed, defaults }, units);
  return { sheet, takeoff };
}

type Covered = ReturnType<typeof covered>;

class Differences {
  readonly found: string[] = [];
  same(what: string, mine: number | undefined, walked: number, within = 1e-6): void {
    if (mine === undefined || !(Math.abs(mine - walked) <= within * Math.max(1, Math.abs(walked))))
      this.found.push(`${what}: laid ${mine}, walked ${walked}`);
  }
}

const cellOf = ({ sheet }: Covered, name: string): number | undefined =>
  sheet.find(`covering.${name}`)?.value.toNumber();
const mm = (value: number | undefined): number | undefined => (value === undefined ? undefined : value / MM);

function checkPanels(d: Differences, mine: Covered, kind: CoveringKind, { sizes: s, sheet: of }: Drawn): void {
  const planes = coveredPlanes(s, true);
  let strips = 0;
  for (const [i, plane] of planes.entries()) {
    const count = sideBySide(plane.eave, of.cover);
    const face = mine.takeoff.faces[i];
    d.same(`panels across plane ${i + 1}`, face?.across?.value.toNumber(), count);
    strips += plane.alike * count;
    if (plane.eave !== plane.top) checkReaches(d, face, plane, of.cover, count);
    else d.same("length of a panel", mm(face?.pieceLength?.value.toNumber()), upTo(plane.up, 1));
  }
  const panels = cellOf(mine, "panels") ?? Number.NaN;
  const whole = s.kind !== "hip" || COVERINGS[kind].form !== "panels" || !("reversible" in COVERINGS[kind]);
  if (whole) d.same("panels", panels, strips);
  // Where offcuts serve, no more than one each, and no fewer than half.
  else if (panels > strips || panels < strips / 2) d.found.push(`panels ${panels} of ${strips} strips`);
  if (COVERINGS[kind].fixing.with === "panel-clip") {
    if (s.kind === "hip") return;
    const [plane] = planes as [Plane];
    const along = sideBySide(plane.up, 24) + 1;
    d.same("clips", cellOf(mine, "clips"), strips * along);
  } else if (s.kind !== "hip") {
    d.same("screws into purlins", cellOf(mine, "purlinScrews"), strips * screwsOf(purlinRows(s), 4));
  }
}

function checkReaches(
  d: Differences,
  face: Covered["takeoff"]["faces"][number] | undefined,
  plane: Plane,
  cover: number,
  count: number,
): void {
  for (const [i, reach] of reaches(plane, cover, count).entries()) {
    d.same(`strip ${i + 1} reaches`, mm(face?.strips?.[i]?.reach.value.toNumber()), reach);
  }
}

function checkCourses(d: Differences, mine: Covered, kind: CoveringKind, { sizes: s, sheet: of }: Drawn): void {
  const planes = coveredPlanes(s, false);
  for (const [i, plane] of planes.entries()) {
    d.same(`courses up plane ${i + 1}`, mine.takeoff.faces[i]?.up.value.toNumber(), sideBySide(plane.up, of.exposure));
  }
  const eaves = planes.reduce((sum, { alike, eave }) => sum + alike * eave, 0);
  const doubled = "doubledCourse" in COVERINGS[kind] ? eaves * of.exposure : 0;
  const area = areaByPlan(s, false) + doubled;
  d.same("pieces", cellOf(mine, "pieces"), Math.ceil(area / (12 * of.exposure) - 1e-9));
  const covers = (cellOf(mine, "covers") ?? Number.NaN) / MM / MM;
  d.same("bundles", cellOf(mine, "bundles"), Math.ceil((area * 1.1) / ((covers * of.exposure) / 5) - 1e-9));
}

function checkRolls(d: Differences, mine: Covered, kind: CoveringKind, { sizes: s, sheet: of }: Drawn): void {
  const planes = coveredPlanes(s, false);
  const cover = 36 - of.lap;
  let length = 0;
  for (const [i, plane] of planes.entries()) {
    const count = sideBySide(plane.up, cover, 36);
    d.same(`strips up plane ${i + 1}`, mine.takeoff.faces[i]?.up.value.toNumber(), count);
    length += plane.alike * rolledOut(plane, cover, count);
  }
  if (kind === "mineral-roll") {
    const [side] = planes as [Plane];
    const corner = (side.eave - side.top) / 2;
    const hips = s.kind === "hip" ? 4 * Math.hypot(corner, side.up) : 0;
    const ridge = s.kind === "hip" ? s.length - s.span : side.eave;
    length += ((ridge + hips) * 12) / 36;
  }
  d.same("strips in all", mm(cellOf(mine, "stripLength")), length);
  d.same("rolls", cellOf(mine, "rolls"), Math.ceil((length * 1.1) / (600 - 6) - 1e-9));
}

function checkBoards(d: Differences, mine: Covered, { sizes: s, sheet: of }: Drawn): void {
  for (const [i, plane] of coveredPlanes(s, false).entries()) {
    const count = sideBySide(plane.eave, 12 - of.lap, 12);
    d.same(`boards across plane ${i + 1}`, mine.takeoff.faces[i]?.across?.value.toNumber(), count);
  }
}

const quantities = ({ takeoff }: Covered): Map<string, number> =>
  new Map(takeoff.needs.map(({ name, quantity }) => [name, quantity.value.toNumber()]));

describe.each(coveringKinds)("%s on roofs at random", (kind) => {
  it(`is counted as a walk over the roof counts it, ${ROOFS} times`, { timeout: 120_000 }, () => {
    const seen = new Set<string>();
    fc.assert(
      fc.property(roofs, (drawn) => {
        const mine = covered(kind, drawn);
        const d = new Differences();
        const { form } = COVERINGS[kind];
        d.same("area", mine.takeoff.area.value.toNumber() / MM / MM, areaByPlan(drawn.sizes, form === "panels"));
        if (form === "panels") checkPanels(d, mine, kind, drawn);
        if (form === "courses") checkCourses(d, mine, kind, drawn);
        if (form === "rolls") checkRolls(d, mine, kind, drawn);
        if (form === "boards") checkBoards(d, mine, drawn);
        for (const [name, quantity] of quantities(mine)) {
          if (!(quantity >= 0)) d.found.push(`${name} is ${quantity}`);
        }
        seen.add(drawn.sizes.kind);
        expect(d.found).toEqual([]);
      }),
      { numRuns: ROOFS, seed: SEED },
    );
    expect(seen.size).toBe(3);
  });

  it("never takes less of anything on a longer roof, and more area", { timeout: 120_000 }, () => {
    fc.assert(
      fc.property(roofs, half(1, 60), (drawn, more) => {
        const { length, span, kind: of } = drawn.sizes;
        const grew = of === "hip" && length === span ? more + 2 : more;
        const longer = { ...drawn, sizes: { ...drawn.sizes, length: length + grew } };
        const [less, grown] = [covered(kind, drawn), covered(kind, longer)];
        const now = quantities(grown);
        // Which offcuts of a hip serve which other strip changes with the length, so their pieces may be one fewer.
        const paired = drawn.sizes.kind === "hip" && "reversible" in COVERINGS[kind] ? /\.panel$/ : /^$/;
        const boards = drawn.sizes.kind === "hip" ? /\.board$/ : /^$/;
        const fewer = [...quantities(less)].filter(
          ([name, quantity]) => !paired.test(name) && !boards.test(name) && (now.get(name) ?? 0) < quantity - 1e-9,
        );
        expect(fewer).toEqual([]);
        expect(grown.takeoff.area.value.gt(less.takeoff.area.value)).toBe(true);
      }),
      { numRuns: ROOFS / 3, seed: SEED + 1 },
    );
  });

  it("is the same in the millimetres that its inches are", { timeout: 120_000 }, () => {
    fc.assert(
      fc.property(roofs, (drawn) => {
        expect(quantities(covered(kind, drawn, millimetres))).toEqual(quantities(covered(kind, drawn)));
      }),
      { numRuns: ROOFS / 3, seed: SEED + 2 },
    );
  });
});
