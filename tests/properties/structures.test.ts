/**
 * Valid structures at random, laid and walked: what the piece rules say of every group against what a walk through the frame
 * finds (tests/judges/frame-walker.ts), joints within 1/64 in, whole takeoffs of mirror images, and the same structure in
 * millimetres. A structure whose mirror image is the very same request is not laid twice.
 */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { CutList } from "../../src/estimate/pieces/cut-list.js";
import type { PieceGroup } from "../../src/estimate/pieces/piece-group.js";
import { type Laying, outside, placesOf, roofOver } from "../judges/frame-places.js";
import {
  boardsOver,
  boardsWithin,
  braceCount,
  centres,
  hipStick,
  jackPlaces,
  jackStick,
  lookoutsUp,
  polygonArea,
  postLine,
  postPlaces,
  rafterStick,
  roofPlanes,
  rowMiddles,
  type Sizes,
  wallLine,
} from "../judges/frame-walker.js";
import { hipRowsOf, tileRows } from "../judges/hip-rows-walker.js";
import { clearBays, railsOut, stand, studsOut } from "../judges/opening-walker.js";
import { wallPlans } from "../judges/wall-places.js";
import {
  bodyOf,
  type Draw,
  draw,
  inches,
  type Laid,
  laid,
  lookoutsApart,
  millimetres,
  type OpeningDraw,
  RIDGE_DEPTH,
  SEED,
  type WallDraw,
} from "./random-structure.js";
import { coveringOf, figuresBeside, type Takeoff, takenOff } from "./whole-takeoff.js";

/** Structures in all; 1,000 or more of each kind. */
const RUNS = 5000;

/** One of so many is mirrored at the prices of a yard. */
const PRICED = 50;

const SIXTY_FOURTH = 1 / 64;

/** Upper corner of a gable's ridge above the plates: rafters' upper edges, half the ridge before their line's end. */
function ridgeTop(s: Sizes, seat: number): number {
  const above = (s.rafter.deep * Math.hypot(12, s.rise) - seat * s.rise) / 12;
  return above + ((s.span / 2 - s.ridge / 2) * s.rise) / 12;
}

const MM = 25.4;
const lengthOf = (group: PieceGroup): number => group.length.value.toNumber() / MM;
const countOf = (group: PieceGroup): number => group.count.value.toNumber();
const named = (groups: CutList["groups"], base: string): PieceGroup[] =>
  groups.filter(({ name }) => name === base || name.startsWith(`${base}-`));
const total = (groups: readonly PieceGroup[]): number => groups.reduce((sum, g) => sum + countOf(g) * lengthOf(g), 0);
const pieces = (groups: readonly PieceGroup[]): number => groups.reduce((sum, g) => sum + countOf(g), 0);

/** Collects what differs, so that a failing structure shows all of it at once. */
class Differences {
  readonly found: string[] = [];
  /** Groups whose pieces or whose length, end to end, were walked. */
  readonly judged = new Set<string>();
  /** Ends of pieces that were found at what they meet. */
  ends = 0;
  /** What was placed in walls. */
  readonly walls = { pieces: 0, joints: 0, openings: 0, plans: 0, crowded: 0, short: 0 };
  /** Joints within runs that were found over a support, by run. */
  readonly joints = new Map<string, number>();
  /** Pieces of a group, or of all that share a name, against what a walk counts. */
  count(groups: CutList["groups"], base: string, walked: number): void {
    this.judged.add(base);
    this.same(`${base}, counted`, pieces(named(groups, base)), walked, 0);
  }
  /** The same, and how long each is. */
  sticks(groups: CutList["groups"], base: string, walked: number, length: number): void {
    this.count(groups, base, walked);
    for (const group of named(groups, base)) this.same(`one of ${base}`, lengthOf(group), length);
  }
  /** All pieces of a name, end to end. */
  whole(groups: CutList["groups"], base: string, walked: number, within = 0.1): void {
    this.judged.add(base);
    this.same(`${base}, end to end`, total(named(groups, base)), walked, within);
  }
  same(what: string, mine: number, walked: number, within = SIXTY_FOURTH): void {
    if (!(Math.abs(mine - walked) <= within)) this.found.push(`${what}: laid ${mine}, walked ${walked}`);
  }
  /** Two lists of words, the second what is expected. */
  alike(what: string, mine: readonly string[], other: readonly string[]): void {
    this.truth(`${what}: ${mine.length} lines in place of ${other.length}`, mine.length === other.length);
    for (const [i, line] of mine.entries()) {
      if (line !== other[i]) this.found.push(`${what}: ${line} in place of ${other[i]}`);
    }
  }
  truth(what: string, holds: boolean): void {
    if (!holds) this.found.push(what);
  }
}

/** Runs end to end: as long as the whole, and no piece longer than wished unless it spans a single bay. */
function checkRun(
  d: Differences,
  groups: readonly PieceGroup[],
  base: string,
  runs: number,
  whole: number,
  s: Sizes,
  bay: number,
) {
  const own = named(groups, base);
  d.whole(groups, base, runs * whole, SIXTY_FOURTH * runs);
  const reach = bay + 2 * Math.max(s.end, s.near, s.far) + s.post + s.rafter.thick + 2 * s.rafterSpacing;
  for (const group of own) {
    d.truth(`${group.name} is ${lengthOf(group)} long`, lengthOf(group) <= Math.max(s.longest, reach) + SIXTY_FOURTH);
  }
}

const widest = (places: readonly number[]) =>
  Math.max(0, ...places.slice(1).map((at, i) => at - (places[i] as number)));

/** Pieces of a run lie end to end from its beginning, and meet over the middle of a support. */
function checkJoints(
  d: Differences,
  own: readonly PieceGroup[],
  base: string,
  supports: readonly number[],
  from: number,
): void {
  const lying = own.flatMap((group) =>
    (group.begins ?? []).map((cell) => ({ at: cell.value.toNumber() / MM, length: lengthOf(group) })),
  );
  for (const group of own) {
    if (group.spliced && !group.begins) d.found.push(`${group.name}: nobody knows where its pieces begin`);
  }
  lying.sort((a, b) => a.at - b.at);
  let at = 0;
  for (const piece of lying) {
    d.same(`a piece of ${base} begins`, piece.at, at);
    const miss = Math.min(...supports.map((support) => Math.abs(support - (from + piece.at))));
    if (piece.at > 0) {
      d.truth(`${base} meet ${miss} in from a support`, miss <= SIXTY_FOURTH);
      d.joints.set(base, (d.joints.get(base) ?? 0) + 1);
    }
    at += piece.length;
  }
}

function checkFrame(d: Differences, { groups }: Laid, s: Sizes): void {
  const posts = postPlaces(s);
  const up = s.height - s.beam.deep;
  const rows =
    s.kind === "lean-to" || s.kind === "ledger"
      ? [...named(groups, "low-posts"), ...named(groups, "high-posts")]
      : named(groups, "posts");
  if (s.kind === "hip") d.same("posts", pieces(rows), posts.rows + posts.ends, 0);
  else {
    d.same("posts", pieces(rows), posts.rows, 0);
    if (s.kind !== "pergola") d.count(groups, "end-posts", posts.ends);
  }
  for (const base of ["posts", "low-posts", "high-posts"]) d.judged.add(base);
  d.same("height of a post", lengthOf(rows[0] as PieceGroup), up);
  checkAcross(d, groups, s);
  d.count(groups, "braces", braceCount(s));
  d.same("a brace", lengthOf(named(groups, "braces")[0] as PieceGroup), Math.hypot(s.brace, s.brace));
  const end = s.kind === "hip" ? 0 : s.end;
  const line = postLine(s);
  const bay = widest(line);
  const beams = s.kind === "lean-to" || s.kind === "ledger" ? (["low-beams"] as const) : (["beams"] as const);
  for (const base of beams) {
    checkRun(d, groups, base, base === "beams" ? 2 : 1, s.length + 2 * end, s, bay);
    checkJoints(d, named(groups, base), base, line, -end);
  }
  for (const base of ["high-beams", "bearers", "floor-ledger"]) {
    checkJoints(d, named(groups, base), base, line, base === "high-beams" ? -end : 0);
  }
  if (s.kind !== "hip") return;
  checkRun(d, groups, "end-beams", 2, s.span, s, (s.span - s.post) / s.endBays);
  checkJoints(d, named(groups, "end-beams"), "end-beams", wallLine(s.span, s.post, s.endBays), 0);
}

/** Beams across the ends, ties between them, and end posts below the former: by walking the row of posts. */
function checkAcross(d: Differences, groups: CutList["groups"], s: Sizes): void {
  const inner = postLine(s).length - 2;
  const leaning = s.kind === "lean-to" || s.kind === "ledger";
  if (s.kind === "gable") d.sticks(groups, "gable-beams", 2, s.span);
  if (leaning) d.sticks(groups, "end-beams", 2, s.span);
  if (s.kind === "gable" || s.kind === "hip") d.sticks(groups, "ties", inner, s.span);
  const across = s.kind === "hip" ? s.beam.deep : 7;
  if (s.kind !== "pergola")
    for (const one of named(groups, "end-posts")) d.same("an end post", lengthOf(one), s.height - across);
}

/** Straight slopes: rafters, rows, fascia, and where their ends come to lie. */
function checkSlopes(d: Differences, { groups, frame }: Laid, drawn: Draw): void {
  const { sizes: s, beam: onKings, deck } = drawn;
  if (frame?.kind !== "gable" && frame?.kind !== "lean-to") return;
  const lines = centres(s.length, s.rafter.thick, s.rafterSpacing, s.short);
  const whole = s.length + 2 * s.end;
  const bay = Math.max(...lines.slice(1).map((y, i) => y - (lines[i] as number)), 0);
  const slope = Math.hypot(12, s.rise) / 12;
  const top = s.kind === "gable" ? s.span / 2 - s.ridge / 2 : s.kind === "ledger" ? s.span - s.ledger : s.span + s.far;
  const sides = s.kind === "gable" ? [s.near, s.far] : [s.near];
  const rafters = named(groups, "rafters");
  d.count(groups, "rafters", sides.length * lines.length);
  d.count(groups, "fly-rafters", s.end >= s.rafter.thick ? 2 * sides.length : 0);
  const apart = lookoutsApart(drawn);
  const framed = apart !== undefined ? sides.map((tail) => lookoutsUp((top + tail) * slope, apart)) : [];
  const overlooking = named(groups, "lookouts");
  d.judged.add("lookouts");
  d.same(
    "lookouts",
    pieces(overlooking),
    framed.reduce((sum, up) => sum + 2 * up, 0),
    0,
  );
  // From the face of the first inner rafter to that of the fly rafter, at either end.
  const inner = [(lines[1] as number) - (lines[0] as number), (lines.at(-1) as number) - (lines.at(-2) as number)];
  const over = inner.reduce((sum, space) => sum + space + s.end - s.rafter.thick, 0);
  d.same(
    "lookouts, end to end",
    total(overlooking),
    framed.reduce((sum, up) => sum + up * over, 0),
    0.1,
  );
  const sticks = sides.map((tail) => rafterStick(s, -tail, top));
  for (const group of rafters)
    d.truth(
      `${group.name}, ${lengthOf(group)}, is none of ${sticks}`,
      sticks.some((stick) => Math.abs(stick - lengthOf(group)) < SIXTY_FOURTH),
    );
  d.same(
    "all rafters",
    total(rafters),
    sticks.reduce((sum, stick) => sum + stick * lines.length, 0),
    0.1,
  );
  const ups = sides.map((tail) => (top + tail) * slope);
  const rowsOf = (middles: (up: number) => readonly number[]) => ups.reduce((sum, up) => sum + middles(up).length, 0);
  const rows = rowMiddlesOf(drawn);
  if (deck.kind === "purlins") checkRun(d, groups, "purlins", rowsOf(rows.purlins), whole, s, bay);
  else if (deck.kind !== "sheets") checkRun(d, groups, "deck-boards", rowsOf(rows.boards), whole, s, bay);
  for (const base of [
    "purlins",
    "deck-boards",
    "ledger",
    "eave-fascia",
    "low-fascia",
    "high-fascia",
    ...(onKings ? [] : ["ridge"]),
  ]) {
    checkJoints(d, named(groups, base), base, lines, -s.end);
  }
  checkRun(d, groups, s.kind === "gable" ? "eave-fascia" : "low-fascia", sides.length, whole, s, bay);
  if (s.kind === "lean-to") checkRun(d, groups, "high-fascia", 1, whole, s, bay);
  if (s.kind === "lean-to") checkRun(d, groups, "high-beams", 1, whole, s, widest(postLine(s)));
  if (s.kind === "ledger") checkRun(d, groups, "ledger", 1, whole, s, bay);
  // Of 5 in: up to the peak of a gable, in front of its ridge's end; of a lean-to as far as its rafters.
  const peak = s.kind === "gable" ? s.span / 2 : top;
  d.whole(
    groups,
    "rake-fascia",
    sides.reduce((sum, tail) => sum + 2 * ((peak + tail) * slope + (5 * s.rise) / 12), 0),
  );
  d.count(groups, "rake-fascia", 2 * sides.length);
  if (s.kind === "gable") checkRun(d, groups, "ridge", 1, whole, s, onKings ? widest(postLine(s)) : bay);
  // From its upper end down its laid edge, a rafter comes to lie just at the tail, and its heel at the plate's corner.
  const edge = frame.rafter.edgeLength.value.toNumber() / MM;
  d.same("tail", top - edge / slope, -s.near);
  const seat = frame.rafter.seat.value.toNumber() / MM;
  const above = frame.rafter.heightAbovePlate.value.toNumber() / MM;
  d.same("upper edge above the plate", above, s.rafter.deep * slope - (seat * s.rise) / 12);
  if (frame.kind === "lean-to" && s.kind === "lean-to") {
    // The second heel is at the inner face of the high beam, on the line through the first.
    const heel = s.height + ((s.span - s.beam.thick) * s.rise) / 12;
    d.same("top of the high beam", frame.highHeight.value.toNumber() / MM, heel);
    d.same("high posts", lengthOf(named(groups, "high-posts")[0] as PieceGroup), heel - s.beam.deep);
  }
}

/** A ridge beam is spliced over king posts, one on each tie, from the ties' tops to its underside. */
function checkRidge(d: Differences, { groups, frame }: Laid, s: Sizes, onKings: boolean): void {
  if (frame?.kind !== "gable") return;
  const kings = named(groups, "king-posts");
  const room = ridgeTop(s, frame.rafter.seat.value.toNumber() / MM) - RIDGE_DEPTH;
  d.judged.add("king-posts");
  d.same("king posts", pieces(kings), onKings && room > 1e-7 ? postPlaces(s).rows / 2 : 0, 0);
  if (!onKings) return;
  for (const king of kings) d.same("a king post", lengthOf(king), room);
  const ridges = named(groups, "ridge");
  checkJoints(d, ridges, "ridge", postLine(s), -s.end);
}

function checkHip(d: Differences, { groups, frame }: Laid, drawn: Draw): void {
  const { sizes: s } = drawn;
  if (frame?.kind !== "hip") return;
  const run = s.span / 2;
  const ridgeLine = s.length - s.span;
  const commons = ridgeLine === 0 ? [0] : centres(ridgeLine, 0, s.rafterSpacing);
  d.count(groups, "rafters", 2 * commons.length);
  d.same("a common", lengthOf(named(groups, "rafters")[0] as PieceGroup), rafterStick(s, -s.near, run - s.ridge / 2));
  d.same(
    "an end common",
    lengthOf(named(groups, "end-rafters")[0] as PieceGroup),
    rafterStick(s, -s.near, run - s.rafter.thick / 2),
  );
  d.whole(groups, "ridge", ridgeLine + s.rafter.thick, SIXTY_FOURTH);
  d.count(groups, "hips", 4);
  for (const base of ["posts", "end-rafters"]) d.judged.add(base);
  d.same("a hip", lengthOf(named(groups, "hips")[0] as PieceGroup), hipStick(s));
  const places = jackPlaces(s);
  const jacks = named(groups, "jacks");
  d.count(groups, "jacks", 8 * places.length);
  for (const [i, place] of places.entries()) {
    const jack = jacks[i];
    if (jack) d.same(`jack ${i + 1}`, lengthOf(jack), jackStick(s, place));
  }
  // Its notch lets the hip's corners down to the planes of the commons' upper edges at the plate's corner.
  const { hip, rafter } = frame;
  const slope = s.rise / 12;
  const over = s.hip.deep * Math.hypot(1, slope / Math.SQRT2) - hip.notchPlumb.value.toNumber() / MM;
  const corner = over - 0; // upper edge of the hip's middle above the plate's corner
  const plane = rafter.heightAbovePlate.value.toNumber() / MM;
  // A corner of the hip's edge lies half its thickness off the middle, square to it: level −t/(2√2) in one slope's run.
  d.same("hip's corners in the roof plane", corner, plane - (s.hip.thick / 2 / Math.SQRT2) * slope);
  checkHipRows(d, groups, drawn);
  const middle = s.span / 2;
  const tails = [...places.map((place) => middle - place).reverse(), ...commons.map((y) => middle + y)];
  const all = [...tails, ...places.map((place) => s.length - middle + place)];
  const ends = [...places.map((place) => middle - place).reverse(), middle, ...places.map((place) => middle + place)];
  // Mitred round the corners, an inch thick.
  d.whole(groups, "side-fascia", 2 * (s.length + 2 * s.near + 2), SIXTY_FOURTH);
  d.whole(groups, "end-fascia", 2 * (s.span + 2 * s.near + 2), SIXTY_FOURTH);
  d.count(groups, "end-rafters", 2);
  checkJoints(d, named(groups, "side-fascia"), "side-fascia", all, -s.near - 1);
  checkJoints(d, named(groups, "end-fascia"), "end-fascia", ends, -s.near - 1);
}

/** Rows by walking up the slope, laid again from their pieces: filled from hip to hip, and joined over rafters. */
function checkHipRows(d: Differences, groups: CutList["groups"], drawn: Draw): void {
  const { sizes: s, deck } = drawn;
  const edge = (s.span / 2 + s.near - s.ridge / 2) * (Math.hypot(12, s.rise) / 12);
  if (deck.kind === "solid-boards" || deck.kind === "spaced-boards") {
    // Planes stretch their plan; whole lengths are cut for it, with 8 % for what the hips take.
    const rows = rowMiddlesOf(drawn).boards(edge).length;
    const eaves = [s.length + 2 * s.near + s.length - s.span, s.span + 2 * s.near];
    const all = eaves.reduce((sum, both) => sum + rows * both, 0);
    d.count(groups, "deck-boards", Math.ceil((all * 1.08) / s.longest - 1e-7));
  }
  if (deck.kind !== "purlins") return;
  const width = Math.max(s.purlin, s.endPurlin);
  const lower = rowMiddlesOf(drawn)
    .purlins(edge)
    .map((middle) => middle - width / 2);
  for (const side of ["side", "end"] as const) {
    const base = `${side}-purlins`;
    const { rows, rafters } = hipRowsOf(s, side, lower);
    const stock = named(groups, base).map((group) => ({ length: lengthOf(group), count: countOf(group) / 2 }));
    d.judged.add(base);
    const tiled = tileRows(rows, rafters, stock);
    d.truth(`${base} fill their rows, joined over rafters`, tiled !== undefined);
    const joints = (tiled ?? []).reduce((sum, ends) => sum + ends.length - 2, 0);
    d.joints.set(base, joints);
  }
}

function checkPergola(d: Differences, { groups }: Laid, s: Sizes, slats: number | undefined): void {
  if (s.kind !== "pergola") return;
  const [length, width] = [s.length + 2 * s.end, s.span + 2 * s.near];
  const lines = centres(length, s.rafter.thick, s.rafterSpacing);
  d.count(groups, "rafters", lines.length);
  d.same("a rafter", lengthOf(named(groups, "rafters")[0] as PieceGroup), width);
  const rows = slats === undefined ? 0 : centres(width, 2, slats).length;
  d.whole(groups, "slats", rows * length, 0.1);
  checkJoints(d, named(groups, "slats"), "slats", lines, 0);
}

function checkFloor(d: Differences, { groups }: Laid, s: Sizes): void {
  d.count(groups, "joists", centres(s.length, 2, 17).length);
  const rows = boardsOver(s.span, 6.5, 6);
  d.whole(groups, "floor-boards", rows * s.length, 0.1);
  d.whole(groups, "bearers", (s.kind === "ledger" ? 1 : 2) * s.length, SIXTY_FOURTH);
  if (s.kind === "ledger") d.whole(groups, "floor-ledger", s.length, SIXTY_FOURTH);
  checkJoints(d, named(groups, "floor-boards"), "floor-boards", centres(s.length, 2, 17), 0);
}

function checkWall(d: Differences, { groups }: Laid, s: Sizes, wall: WallDraw): void {
  const first = s.kind === "lean-to" || s.kind === "ledger" ? "low" : "near";
  const high = s.height - 4;
  const own = named(groups, `wall-boards-${first}`);
  const cover = wall.boards === "board-and-batten" ? 8.5 : 7.5;
  const saved = (whole: (one: OpeningDraw) => number) =>
    wall.openings.reduce((sum, one) => sum + one.count * whole(one), 0);
  const rounded = (x: number) => Math.max(1, Math.ceil(x - 1e-7));
  const stood = stand(clearBays(postLine(s), s.post), wall.openings) ?? [];
  // Along bays of unlike lengths boards differ; openings come off the longest, where they leave any.
  const line = postLine(s);
  const wide = s.unlike
    ? line
        .slice(1)
        .map(
          (at, i) =>
            at -
            (line[i] as number) +
            (i === 0 || i === line.length - 2 ? (s.unlike?.length === 1 ? s.post : s.post / 2) : 0),
        )
    : [s.length];
  if (wall.boards === "horizontal" && s.unlike) {
    const courses = boardsOver(high, cover, 8);
    const rows = wide.flatMap((bay) =>
      Array.from(
        { length: Math.ceil(bay / s.longest - 1e-9) },
        (_, __, n = Math.ceil(bay / s.longest - 1e-9)) => bay / n,
      ),
    );
    const longest = Math.max(...rows);
    const off = saved((one) => coursesWithin(one, cover) * one.width) / longest;
    const lengths = [...new Set(rows.map((one) => one.toFixed(6)))];
    const counts = lengths.map(
      (one) => courses * rows.filter((row) => row.toFixed(6) === one).length - (one === longest.toFixed(6) ? off : 0),
    );
    d.same(
      "boards along bays",
      pieces(own),
      counts.reduce((sum, one) => sum + rounded(one), 0),
      0,
    );
    if (wall.openings.length === 0) d.same("boards along bays, end to end", total(own), courses * s.length, 0.1);
  } else if (wall.boards === "horizontal") {
    const length = lengthOf(own[0] as PieceGroup);
    const courses = boardsOver(high, cover, 8);
    const used = courses * s.length - saved((one) => coursesWithin(one, cover) * one.width);
    d.same("boards along", pieces(own), rounded(used / length), 0);
    d.same("boards end to end", Math.round(s.length / length) * length, s.length);
  } else {
    const across = boardsOver(s.length, cover, 8);
    const used = across * high - saved(({ width, height }) => boardsWithin(width, cover) * height);
    d.same("upright boards", pieces(own), rounded(used / high), 0);
    d.same("an upright board", lengthOf(own[0] as PieceGroup), high);
    const rails = centres(high, 0, 30).length;
    d.whole(groups, `wall-rails-${first}`, rails * s.length - railsOut(stood, { bays: rowBays(s, wide), high }));
    // A batten over the gap at an opening's edge stays; inside it those whose far edge it reaches go.
    const battened = (across - 1) * high - saved(({ width, height }) => boardsWithin(width - 0.75, cover) * height);
    if (wall.boards === "board-and-batten") d.count(groups, `wall-battens-${first}`, rounded(battened / high));
  }
  d.judged.add(`wall-boards-${first}`);
  if (wall.boards === "horizontal")
    checkStuds(d, groups, first, studsAlong(s, wide), studsOut(stood, { bays: rowBays(s, wide), high }), high);
  d.sticks(groups, `corner-boards-${first}`, 2, high);
  checkOpenings(d, groups, first, wall);
  checkEnd(d, groups, s, wall);
  const laidGroups = groups.map((group) => ({ name: group.name, length: lengthOf(group), count: countOf(group) }));
  for (const plan of wallPlans(s, wall, laidGroups)) {
    d.found.push(...plan.check());
    d.walls.plans += 1;
    d.walls.pieces += plan.pieces.length;
    d.walls.joints += plan.joints;
    d.walls.openings += plan.openings.length;
    if (plan.crowded) d.walls.crowded += 1;
    if (plan.short > 0) d.walls.short += 1;
  }
}

/** Pieces of one row, bay by bay. */
function rowBays(s: Sizes, wide: readonly number[]): { readonly length: number; readonly pieces: number }[] {
  const bays = s.unlike ? wide : Array.from({ length: s.bays }, () => s.length / s.bays);
  return bays.map((bay) => {
    const pieces = Math.ceil(bay / s.longest - 1e-9);
    return { length: bay / pieces, pieces };
  });
}

/** Whole studs, and what openings leave of those that they cut: from sill and header, 2 in thick, to the ends. */
function checkStuds(
  d: Differences,
  groups: CutList["groups"],
  first: string,
  all: number,
  cut: readonly { readonly of: OpeningDraw; readonly studs: number }[],
  high: number,
): void {
  const own = named(groups, `wall-studs-${first}`);
  const out = cut.reduce((sum, { studs }) => sum + studs, 0);
  d.judged.add(`wall-studs-${first}`);
  d.same(
    "studs that stand whole",
    pieces(own.filter((group) => Math.abs(lengthOf(group) - high) < 1e-6)),
    all - out,
    0,
  );
  const left = cut.map(({ of, studs }) => studs * Math.max(0, high - of.height - (of.sill === undefined ? 2 : 4)));
  d.same("studs, end to end", total(own), (all - out) * high + left.reduce((a, b) => a + b, 0), 0.1);
}

/** Courses of a pitch whose lower edge is at or above an opening's sill and whose upper one is below its head. */
function coursesWithin({ height, sill = 0 }: OpeningDraw, cover: number): number {
  let within = 0;
  for (let at = 0; at + cover <= sill + height + 1e-7; at += cover) if (at >= sill - 1e-7) within++;
  return within;
}

/** Studs every 30 in at most behind boards a bay long, or equal parts of one; one below each joint that no post carries. */
function studsAlong(s: Sizes, bays: readonly number[]): number {
  const equal = s.unlike ? bays : Array.from({ length: s.bays }, () => s.length / s.bays);
  return studsBehind(equal, postLine(s), s);
}

/** Walks along the boards of one course, from joint to joint. */
function studsBehind(bays: readonly number[], posts: readonly number[], s: Sizes): number {
  let [at, studs] = [0, 0];
  const whole = bays.reduce((a, b) => a + b, 0);
  for (const bay of bays) {
    let parts = 1;
    while (bay / parts > s.longest + 1e-7) parts++;
    for (let part = 0; part < parts; part++) {
      studs += centres(bay / parts, 0, 30).length - 2;
      at += bay / parts;
      const carried = posts.some((post) => Math.abs(post - at) < s.post / 2);
      if (!carried && at < whole - 1e-6) studs += 1;
    }
  }
  return studs;
}

/** Jambs beside every opening, a header over it; across both jambs, 2 in thick each. */
function checkOpenings(d: Differences, groups: CutList["groups"], first: string, { openings }: WallDraw): void {
  for (const [i, { width, height, count, sill }] of openings.entries()) {
    const frame = (base: string) =>
      groups.filter(({ name }) => name === `${base}-${first}${i === 0 ? "" : `-${i + 1}`}`);
    d.same("jambs", pieces(frame("opening-jambs")), 2 * count, 0);
    d.same("jambs, end to end", total(frame("opening-jambs")), 2 * count * height);
    // Below a window a sill as long as its header.
    d.same("headers and sills", total(frame("opening-headers")), count * (sill === undefined ? 1 : 2) * (width + 4));
  }
  for (const base of ["opening-jambs", "opening-headers"]) {
    d.judged.add(`${base}-${first}`);
    d.same(`all ${base}`, named(groups, `${base}-${first}`).length, openings.length, 0);
  }
}

/** The left end, without openings: level at its top, or below the slope of a lean-to; with the gable over it. */
function checkEnd(d: Differences, groups: CutList["groups"], s: Sizes, wall: WallDraw): void {
  const leaning = s.kind === "lean-to" || s.kind === "ledger";
  const low = s.height - 4;
  const { part } = s.kind === "gable" ? wall : { part: "below-plate" };
  if (part !== "below-plate") checkGable(d, groups, s, wall);
  if (part === "gable") return;
  const end = groups.find(({ name }) => name === "corner-boards-left-2");
  // How high the second end is, is judged with the posts below it.
  const high = leaning && end ? lengthOf(end) : low;
  const cover = wall.boards === "board-and-batten" ? 8.5 : 7.5;
  const whole = (x: number) => Math.max(1, Math.ceil(x - 1e-7));
  const each = s.endBays * Math.ceil(s.span / s.endBays / s.longest - 1e-9);
  if (leaning) d.judged.add("corner-boards-left");
  else d.sticks(groups, "corner-boards-left", 2, low);
  const own = (base: string) => {
    for (const name of [`${base}-left`, `${base}-left-lower`]) d.judged.add(name);
    return groups.filter(({ name }) => name === `${base}-left` || name === `${base}-left-lower`);
  };
  const boards = own("wall-boards");
  if (wall.boards === "horizontal") {
    const level = leaning ? Math.ceil(((low + high) / 2 + 0.25) / 7.5 - 1e-7) : boardsOver(low, 7.5, 8);
    d.same("boards across an end", pieces(boards), whole((level * s.span) / (s.span / each)), 0);
    const studs = own("wall-studs");
    const bays = Array.from({ length: s.endBays }, () => s.span / s.endBays);
    const behind = studsBehind(bays, wallLine(s.span, s.post, s.endBays), s);
    d.same("studs of an end", pieces(studs), leaning ? cutOut(studs, behind) : behind, 0);
  } else {
    const across = boardsOver(s.span, cover, 8);
    d.same("boards of an end", pieces(boards), leaning ? cutOut(boards, across) : across, 0);
    const heightAt = (x: number) => low + ((high - low) * x) / s.span;
    if (leaning) checkPairs(d, s, { across, cover, low, heightAt }, boards);
    const rails = groups.filter(({ name }) => name === "wall-rails-left");
    d.judged.add("wall-rails-left");
    d.same("rails of an end", total(rails), centres((low + high) / 2, 0, 30).length * s.span, 0.1);
    const battens = own("wall-battens");
    const gaps = Math.max(1, leaning ? cutOut(battens, across - 1) : across - 1);
    d.same("battens of an end", pieces(battens), wall.boards === "board-and-batten" ? gaps : 0, 0);
  }
}

interface Aslant {
  readonly across: number;
  readonly cover: number;
  readonly low: number;
  readonly heightAt: (x: number) => number;
}

/** Members below a slope that no piece holds two of come one by one, in two halves. */
const singly = (own: readonly PieceGroup[]): boolean => own.some(({ label }) => label.startsWith("Higher"));

/** Pieces that so many members below a slope are cut from. */
const cutOut = (own: readonly PieceGroup[], members: number): number =>
  singly(own) ? members : Math.ceil(members / 2);

/** Two out of one piece, as long as the longest of both, or each by itself where that is longer than any piece. */
function checkTwo(d: Differences, what: string, two: number, own: readonly PieceGroup[], longest: number): void {
  if (singly(own)) d.truth(`two ${what} would come out of ${longest}`, two > longest - 12);
  for (const group of singly(own) ? [] : own) {
    d.truth(`two ${what} want ${two}`, lengthOf(group) >= two - SIXTY_FOURTH);
    d.truth(`two ${what} are longer than ${longest}`, lengthOf(group) <= longest + SIXTY_FOURTH);
  }
}

/** Boards from the middle outwards, each but for the middle one with its partner: long edge of one, short edge of the other. */
function checkPairs(d: Differences, s: Sizes, { across, cover, heightAt }: Aslant, own: readonly PieceGroup[]): void {
  const first = (s.span - (across * cover + 8 - cover)) / 2;
  const places = Array.from({ length: across }, (_, i) => [first + i * cover, first + i * cover + 8] as const);
  const clear = (x: number) => heightAt(Math.min(s.span, Math.max(0, x)));
  const two = places.map(([left], i) => {
    const partner = places[across - 1 - i] as readonly [number, number];
    return clear(left) + clear(partner[1]);
  });
  checkTwo(d, "boards of an end", Math.max(...two), own, s.longest);
}

/** The triangle over the left end, board by board from its middle, or course by course from its foot. */
function checkGable(d: Differences, groups: CutList["groups"], s: Sizes, wall: WallDraw): void {
  const beam = groups.find(({ name }) => name.startsWith("beams"));
  const pitch = s.rise / 12;
  const run = s.span / 2;
  const seat = Math.min(
    beam ? beam.thickness.value.toNumber() / MM : 0,
    s.rafter.deep / (4 * (pitch / Math.hypot(1, pitch))),
  );
  const above = s.rafter.deep * Math.hypot(1, pitch) - seat * pitch;
  const low = above + 2;
  const peak = low + run * pitch;
  const heightAt = (x: number) => low + Math.max(0, run - Math.abs(x - run)) * pitch;
  const widthAt = (y: number) => (y <= low ? s.span : s.span - (2 * (y - low)) / pitch);
  const own = (base: string) => groups.filter(({ name }) => name.startsWith(`${base}-left-gable`));
  for (const base of ["wall-boards", "wall-battens", "wall-rails", "wall-studs"]) {
    for (const part of ["", "-lower"]) d.judged.add(`${base}-left-gable${part}`);
  }
  if (wall.boards === "horizontal") {
    let sum = 0;
    for (let y = 0; y === 0 || y + 0.5 < peak - 1e-7; y += 7.5) sum += widthAt(y);
    const each = Math.ceil(s.span / s.longest - 1e-9);
    d.same("courses of a gable", pieces(own("wall-boards")), Math.ceil(sum / (s.span / each) - 1e-7), 0);
    const studs = centres(s.span, 0, 30).slice(1, -1);
    d.same("studs of a gable", pieces(own("wall-studs")), cutOut(own("wall-studs"), studs.length), 0);
    const half = studs.filter((x) => x < run - 1e-7);
    const two = half.map((x, i) => heightAt(x) + heightAt(half[half.length - 1 - i] as number) - 4);
    checkTwo(d, "studs of a gable", Math.max(peak - 2, ...two), own("wall-studs"), s.longest);
    return;
  }
  const battened = wall.boards === "board-and-batten";
  const cover = battened ? 8.5 : 7.5;
  const across = boardsOver(s.span, cover, 8);
  const [boards, battens] = [own("wall-boards"), own("wall-battens")];
  d.same("boards of a gable", pieces(boards), cutOut(boards, across), 0);
  d.same("battens of a gable", pieces(battens), battened ? Math.max(1, cutOut(battens, across - 1)) : 0, 0);
  const first = (s.span - (across * cover + 8 - cover)) / 2;
  const half = Array.from({ length: across }, (_, i) => [first + i * cover, first + i * cover + 8] as const).filter(
    ([left, right]) => left + right < s.span - 1e-7,
  );
  const two = half.map(([, right], i) => {
    const partner = half[half.length - 1 - i] as readonly [number, number];
    const climb = (x: number) => low + Math.min(Math.max(0, x), run + 0.25) * pitch;
    return climb(right) + climb(partner[0]);
  });
  checkTwo(d, "boards of a gable", Math.max(...two), boards, s.longest);
  for (const group of boards) d.truth("and no more than a foot more", lengthOf(group) <= low + peak + 1);
  let rails = 0;
  for (let y = 30; y < peak - 1e-7; y += 30) rails += widthAt(y);
  d.same("rails of a gable", total(own("wall-rails")), rails, 0.1);
}

/** Planes of the roof: counted faces against the corners of the walk. */
function checkArea(d: Differences, { frame }: Laid, s: Sizes): void {
  const walked = roofPlanes(s).reduce((sum, plane) => sum + polygonArea(plane), 0);
  const mine = (frame?.faces ?? []).reduce((sum, face) => {
    const [eave, top, up] = [face.eave, face.top, face.slopeLength].map((cell) => cell.value.toNumber() / MM) as [
      number,
      number,
      number,
    ];
    return sum + (face.alike * (eave + top) * up) / 2;
  }, 0);
  d.same("roof area, square inches", mine, walked, 1e-6 * Math.max(1, walked));
}

/** Every piece where it lies, its corners inside what the structure takes up, its ends at what they meet. */
function checkPlaces(d: Differences, { groups }: Laid, drawn: Draw): void {
  const { sizes: s, slats, wall } = drawn;
  const rows = rowMiddlesOf(drawn);
  const more: Laying = {
    ridgeDeep: RIDGE_DEPTH,
    slats: slats ?? 1,
    lookouts: lookoutsApart(drawn) ?? 1,
    purlinRows: (up) => ({ middles: rows.purlins(up), width: s.purlin }),
    boardRows: (up) => ({ middles: rows.boards(up), width: BOARD }),
  };
  for (const group of groups) {
    const { name, begins } = group;
    const at = { name, length: lengthOf(group), begins: begins?.map((cell) => cell.value.toNumber() / MM) ?? [0] };
    const pieces = placesOf(s, at, more);
    if (!pieces) {
      // Purlins of a hip are laid out again by their rows, its deck boards are cut to fit, walls stand between posts.
      const known = /^(?:side|end)-purlins/.test(name) || (s.kind === "hip" && name === "deck-boards");
      d.truth(`nobody knows where ${name} lie`, known || (wall !== undefined && inWall(s, group)));
      continue;
    }
    d.same(`${name}, laid one by one`, pieces.length, countOf(group), 0);
    for (const piece of pieces) {
      const out = outside(s, piece);
      if (out > SIXTY_FOURTH) d.found.push(`${name} are ${out} in outside the structure`);
      for (const miss of piece.misses) {
        if (Math.abs(miss) > SIXTY_FOURTH) d.found.push(`${name} end ${miss} in from where they should`);
      }
      d.ends += piece.misses.length;
    }
  }
}

/** Upright pieces of a wall end below the plate, or below the slope; those along it between the corners. */
function inWall(s: Sizes, group: PieceGroup): boolean {
  const { name, label } = group;
  const length = lengthOf(group) / (label.startsWith("Paired") ? 2 : 1);
  const end = /-(?:left|right)/.test(name);
  const peak = roofOver(s, end && s.kind !== "gable" ? s.span : s.span / 2, s.length / 2);
  if (/^(?:wall-rails|opening-headers)/.test(name)) return length <= (end ? s.span : s.length) + SIXTY_FOURTH;
  if (/^wall-boards/.test(name) && length <= (end ? s.span : s.length) + SIXTY_FOURTH) return true;
  return /^(?:wall-|corner-|opening-)/.test(name) && length <= (end ? peak : s.height - CLEARANCE) + SIXTY_FOURTH;
}

/** Boards of a deck, and how far boards of a wall begin above the post bases. */
const BOARD = 6;
const CLEARANCE = 4;

/** Middles of rows up so long a slope. */
const rowMiddlesOf = ({ sizes: s, deck }: Draw) => ({
  purlins: (up: number) => {
    const width = s.kind === "hip" ? Math.max(s.purlin, s.endPurlin) : s.purlin;
    return rowMiddles(up, width, s.purlinSpacing, deck.closerRows);
  },
  boards: (up: number) =>
    deck.kind === "spaced-boards"
      ? rowMiddles(up, BOARD, deck.spacing, deck.closerRows)
      : Array.from({ length: Math.ceil(up / BOARD - 1e-7) }, (_, i) => (i + 0.5) * BOARD),
});

function sameTakeoff(d: Differences, mirrored: Takeoff, straight: Takeoff): void {
  d.alike("mirrored groups", mirrored.groups, straight.groups);
  d.alike("mirrored orders", mirrored.orders, straight.orders);
  d.alike("mirrored figures", figuresBeside(mirrored, straight), figuresBeside(straight, mirrored));
}

/** Width and height of the whole, as they stand in the drawings. */
function checkOutline(d: Differences, { outline, frame }: Laid, s: Sizes): void {
  if (!outline || !frame) return;
  const size = (of: keyof typeof outline) => outline[of].value.toNumber() / MM;
  const past = {
    gable: s.near + s.far,
    "lean-to": s.near + s.far,
    ledger: s.near,
    hip: 2 * s.near,
    pergola: 2 * s.near,
  };
  d.same("width of the roof", size("width"), s.span + past[s.kind]);
  d.same("length of the roof", size("length"), s.length + 2 * (s.kind === "hip" ? s.near : s.end));
  if (frame.kind === "pergola") {
    d.same("height of the rafters", size("height"), s.height + s.rafter.deep);
    return;
  }
  const upTo = { gable: s.span / 2, hip: s.span / 2, "lean-to": s.span + s.far, ledger: s.span - s.ledger, pergola: 0 };
  const seat = frame.rafter.seat.value.toNumber() / MM;
  const above = (s.rafter.deep * Math.hypot(12, s.rise)) / 12 - (seat * s.rise) / 12;
  d.same("height of the rafters", size("height"), s.height + (upTo[s.kind] * s.rise) / 12 + above);
}

/** Runs whose pieces meet over posts, rafters or joists. */
const JOINED = [
  ...["beams", "low-beams", "high-beams", "bearers", "purlins", "eave-fascia", "low-fascia", "high-fascia", "ridge"],
  ...["floor-boards", "floor-ledger", "side-fascia", "end-fascia", "slats", "ledger", "end-beams", "deck-boards"],
  ...["side-purlins", "end-purlins"],
];

/** Groups that no walk has counted or measured. */
function unjudged({ groups }: Laid, { judged }: Differences): string[] {
  return groups
    .map(({ name }) => name)
    .filter((name) => ![...judged].some((base) => name === base || name.startsWith(`${base}-`)));
}

/** Lengths and areas to the last digit, beside the order. */
function toTheDigit({ groups, frame, outline, volume }: Laid): string[] {
  const cells = [
    volume,
    ...groups.flatMap((group) => [group.length, group.surface, group.volume]),
    ...(frame?.faces ?? []).flatMap(({ eave, top, slopeLength }) => [eave, top, slopeLength]),
    ...(outline ? [outline.width, outline.length, outline.height] : []),
  ];
  return cells.map((cell) => `${cell.name} ${cell.value.toFixed()}`);
}

describe("structures at random", () => {
  it(`agree with a walk, with their mirror images and with themselves in millimetres, ${RUNS} times`, {
    timeout: 1_200_000,
  }, () => {
    const kinds = new Map<string, number>();
    const joints = new Map<string, number>();
    let [run, unlike, ends] = [0, 0, 0];
    const mirrors = { laid: 0, figures: 0, orders: 0 };
    const coverings = new Set<string>();
    const walls = { pieces: 0, joints: 0, openings: 0, plans: 0, crowded: 0, short: 0 };
    fc.assert(
      fc.property(draw, (drawn) => {
        const { sizes, wall, floor, slats, beam, sold } = drawn;
        run += 1;
        const [straight, mirrored] = [bodyOf(drawn, inches), bodyOf(drawn, inches, true)];
        const whole = takenOff(straight, drawn);
        const mine = whole.laid;
        const d = new Differences();
        checkFrame(d, mine, sizes);
        checkSlopes(d, mine, drawn);
        checkRidge(d, mine, sizes, beam);
        checkHip(d, mine, drawn);
        checkPergola(d, mine, sizes, slats);
        checkArea(d, mine, sizes);
        checkPlaces(d, mine, drawn);
        checkOutline(d, mine, sizes);
        if (floor) checkFloor(d, mine, sizes);
        if (wall) checkWall(d, mine, sizes, wall);
        if (sizes.unlike) unlike += 1;
        kinds.set(sizes.kind, (kinds.get(sizes.kind) ?? 0) + 1);
        ends += d.ends;
        for (const each of Object.keys(walls) as (keyof typeof walls)[]) walls[each] += d.walls[each];
        for (const [base, found] of d.joints) joints.set(base, (joints.get(base) ?? 0) + found);
        for (const name of unjudged(mine, d)) d.found.push(`nobody counted ${name}`);
        d.alike("in millimetres", toTheDigit(laid(bodyOf(drawn, millimetres), sold, "metric")), toTheDigit(mine));
        // Some are their own mirror images: a pergola, or a hip, of equal bays without a wall.
        if (JSON.stringify(straight) !== JSON.stringify(mirrored)) {
          if (run % PRICED > 0) sameTakeoff(d, takenOff(mirrored, drawn), whole);
          else sameTakeoff(d, takenOff(mirrored, drawn, "priced"), takenOff(straight, drawn, "priced"));
          mirrors.laid += 1;
          mirrors.figures += whole.cells.size;
          mirrors.orders += whole.orders.length;
          coverings.add(coveringOf(drawn));
        }
        if (d.found.length > 0) throw new Error(d.found.join("\n"));
      }),
      { numRuns: RUNS, seed: SEED },
    );
    expect([...kinds.keys()].sort()).toEqual(["gable", "hip", "lean-to", "ledger", "pergola"]);
    for (const count of kinds.values()) expect(count).toBeGreaterThan(900);
    expect(unlike).toBeGreaterThan(700);
    expect(ends).toBeGreaterThan(100_000);
    expect(walls.pieces).toBeGreaterThan(300_000);
    expect(walls.joints).toBeGreaterThan(100_000);
    expect(walls.openings).toBeGreaterThan(3000);
    // Openings whose frames have no room beside each other, and offcuts beside openings that do not come together.
    expect(walls.crowded).toBeLessThan(0.01 * walls.plans);
    expect(walls.short).toBeLessThan(0.04 * walls.plans);
    expect(mirrors.laid).toBeGreaterThan(0.8 * RUNS);
    expect(mirrors.figures).toBeGreaterThan(300 * mirrors.laid);
    expect(mirrors.orders).toBeGreaterThan(15 * mirrors.laid);
    expect(coverings.size).toBe(8);
    // A check of joints that finds none to check says nothing.
    for (const base of JOINED) expect([base, (joints.get(base) ?? 0) > 300]).toEqual([base, true]);
  });
});
