/**
 * Where the pieces of boarded walls lie, each as a figure in its wall's plane and a layer outward. Lengths and counts are taken
 * as laid; everything else is walked. So a board that is too short shows daylight below the plate, one too many a clash.
 *
 * Across the wall from the outer face of its first corner post, up from the post bases. Inches and floats.
 */
import { aslantMembers } from "./aslant-members.js";
import { centres, postLine, type Sizes, wallLine } from "./frame-walker.js";
import { gableOf } from "./gable-places.js";
import { type Range, type Rect, WallPlan } from "./wall-plan.js";
import {
  type AskedWalls,
  BACKING,
  BATTEN,
  BOARD,
  CLEARANCE,
  CORNER,
  coverOf,
  JAMB,
  LAP,
  type LaidWallGroup,
  places,
  RAIL,
  type Side,
  STUD,
  TINY,
} from "./wall-sizes.js";

/** The walls of a drawn structure: the first side with its openings, the left end, the gable above it. */
export function wallPlans(s: Sizes, asked: AskedWalls, groups: readonly LaidWallGroup[]): WallPlan[] {
  const leaning = s.kind === "lean-to" || s.kind === "ledger";
  const line = postLine(s);
  const outer = (at: number, i: number) => (i === 0 ? 0 : i === line.length - 1 ? s.length : at);
  const bays = s.unlike
    ? line.slice(1).map((at, i) => outer(at, i + 1) - outer(line[i] as number, i))
    : Array.from({ length: s.bays }, () => s.length / s.bays);
  const level: Range = [s.height, s.height];
  const first: Side = {
    ...{ name: leaning ? "low" : "near", width: s.length, heights: level, posts: line, bays, sizes: s },
  };
  const back = s.kind === "ledger" ? s.ledger : s.beam.thick;
  const left: Side = {
    name: "left",
    width: s.span,
    heights: leaning ? [s.height, s.height + ((s.span - back) * s.rise) / 12] : level,
    posts: wallLine(s.span, s.post, s.endBays),
    bays: Array.from({ length: s.endBays }, () => s.span / s.endBays),
    sizes: s,
  };
  const part = s.kind === "gable" ? asked.part : "below-plate";
  const closed = { ...asked, openings: [] };
  return [
    planOf(first, asked, groups),
    ...(part === "gable" ? [] : [planOf(left, closed, groups)]),
    ...(part === "below-plate" ? [] : [gableOf(s, closed, groups)]),
  ];
}

/** Openings side by side, each from a board's edge on; undefined where their frames have no room. */
function openingsOf({ width }: Side, { openings }: AskedWalls, cover: number): Rect[] | undefined {
  const found: Rect[] = [];
  let free = CORNER + JAMB;
  for (const { width: wide, height, count, sill } of openings) {
    for (let i = 0; i < count; i++) {
      const at = Math.ceil(free / cover - TINY) * cover;
      const low = CLEARANCE + (sill ?? 0);
      found.push({ u: [at, at + wide], v: [low, low + height] });
      free = at + wide + 2 * JAMB;
    }
  }
  return free - JAMB > width - CORNER ? undefined : found;
}

function planOf(side: Side, asked: AskedWalls, groups: readonly LaidWallGroup[]): WallPlan {
  const [low, high] = side.heights;
  const slope = (high - low) / side.width;
  const room = openingsOf(side, asked, coverOf(asked));
  const plan = new WallPlan(
    side.name,
    { width: side.width, bottom: CLEARANCE, top: (u) => low + slope * u, peaks: [] },
    room ?? [],
  );
  if (!room) plan.crowded = true;
  const own = (base: string) =>
    groups.filter(
      ({ name }) => name === `${base}-${side.name}` || new RegExp(`^${base}-${side.name}-(?:\\d+|lower)$`).test(name),
    );
  if (asked.boards === "horizontal") courses(plan, side, own);
  else uprights(plan, side, asked, own);
  corners(plan, side, own("corner-boards"));
  if (room) frames(plan, asked, own);
  return plan;
}

type Own = (base: string) => LaidWallGroup[];

/** Upright boards, and battens over their gaps; below a slope in pairs, from both ends to the middle. */
function uprights(plan: WallPlan, side: Side, asked: AskedWalls, own: Own): void {
  const cover = coverOf(asked);
  const [low, high] = side.heights;
  if (low !== high) {
    const across = places(0, side.width, cover);
    paired(plan, "wall-boards", across.length, cover, BOARD, own);
    if (asked.boards === "board-and-batten") paired(plan, "wall-battens", across.length - 1, cover, BATTEN, own);
  } else {
    const columns = places(0, side.width, cover);
    plan.upright("wall-boards", columns, cover, LAP, own("wall-boards"));
    if (asked.boards === "board-and-batten") {
      const gaps = columns.slice(1).map(([at]): Range => {
        const middle = at - LAP / 2;
        return [middle - BATTEN / 2, Math.min(side.width, middle + BATTEN / 2)];
      });
      plan.upright("wall-battens", gaps, cover, 0, own("wall-battens"));
    }
  }
  const mean = (low + high) / 2;
  const rows = centres(mean - CLEARANCE, 0, BACKING).length;
  // Flush with the boards' lower ends and with the plate; below a slope as high as it lets them, one aslant below the rafter.
  const apart = low === high ? (mean - CLEARANCE) / (rows - 1) : BACKING;
  const ups = Array.from({ length: low === high ? rows : Math.ceil((high - CLEARANCE) / BACKING) }, (_, i): Range => {
    const up = CLEARANCE + i * apart;
    return low === high && i === rows - 1 ? [up - RAIL, up] : [up, up + RAIL];
  });
  rowsOf(plan, side, "wall-rails", ups, own("wall-rails"));
}

/** Two and two out of one piece: long edge of one, short edge of the other. */
function paired(plan: WallPlan, base: string, count: number, cover: number, wide: number, own: Own): void {
  const { width, top, bottom } = plan.outline;
  const whole = (count - 1) * cover + wide;
  const from = (width - whole) / 2;
  const laid = own(base);
  const columns = Array.from({ length: count }, (_, i): Range => [from + i * cover, from + i * cover + wide]);
  const pieces = laid.reduce((sum, group) => sum + group.count, 0);
  const long = columns.map(([a, b]) => plan.longEdge(Math.max(0, a), Math.min(width, b)) - bottom);
  const members = aslantMembers(laid, long, 1);
  plan.same(`${base}, two out of one`, pieces, Math.max(1, members.pieces), 0);
  for (const [i, [left, right]] of columns.entries()) {
    const [a, b] = [Math.max(0, left), Math.min(width, right)];
    const most = members.most[i];
    if (most !== undefined) plan.within(`one of ${base} by itself`, long[i] as number, most);
    const partner = columns[count - 1 - i] as Range;
    const other = [Math.max(0, partner[0]), Math.min(width, partner[1])] as const;
    const rise = plan.longEdge(a, b) - bottom;
    const rest = plan.longEdge(other[0], other[1]) - bottom;
    const lean = Math.abs(top(b) - top(a));
    // The cut runs through the piece once: what leans of one is what leans of the other.
    const wanted = count - 1 - i === i ? rise : rise + rest - Math.min(lean, Math.abs(top(other[1]) - top(other[0])));
    if (most === undefined) for (const { length } of laid) plan.within(`a pair of ${base}`, wanted, length);
    plan.lay(base, [a, b], [bottom, top], wide === BOARD ? LAP : 0);
  }
}

/** Pieces end to end in every row; they meet over posts, or within a bay where one is longer than any piece. */
function rowsOf(plan: WallPlan, side: Side, base: string, ups: readonly Range[], laid: readonly LaidWallGroup[]) {
  const { longest, post } = side.sizes;
  const parts = side.bays.flatMap((bay) => {
    let n = 1;
    while (bay / n > longest + TINY) n++;
    return Array.from({ length: n }, (_, i) => ({ length: bay / n, inner: i < n - 1 }));
  });
  const [low, high] = side.heights;
  let used = 0;
  for (const [index, [from, to]] of ups.entries()) {
    let at = 0;
    for (const part of parts) {
      const cut = laid.find(({ length }) => Math.abs(length - part.length) <= 1 / 64);
      if (!cut) return void plan.found.push(`${side.name}: no ${base} is ${part.length} long`);
      const end = at + cut.length;
      plan.level(base, [at, end], [from, Math.min(to, Math.max(low, high))], base === "wall-boards" ? LAP : 0);
      if (!part.inner && end < side.width - 1 && index === 0) {
        const miss = Math.min(...side.posts.map((middle) => Math.abs(middle - end)));
        plan.truth(`${base} meet ${miss - post / 2} in beside a post`, miss < post / 2);
      }
      if (end < side.width - 1) plan.joints += 1;
      at = end;
    }
    plan.same(`a row of ${base} ends`, at, side.width);
    used += base === "wall-boards" ? plan.meanWidth(from, to) : plan.widthAt(from);
  }
  const all = laid.reduce((sum, { length, count }) => sum + length * count, 0);
  const off = base === "wall-boards" ? plan.offCourses(ups, BOARD - LAP) : 0;
  // Of openings that have no room, nothing is known of what they take out.
  // Rails that openings cut are counted by themselves, in the bays where they stand.
  if (!plan.crowded && (base === "wall-boards" || plan.openings.length === 0))
    plan.within(`${base}, end to end,`, used - off, all);
}

/** Level boards, and the studs between and below their joints. */
function courses(plan: WallPlan, side: Side, own: Own): void {
  const [low, high] = side.heights;
  const ups = places(CLEARANCE, Math.max(low, high), BOARD - LAP);
  rowsOf(plan, side, "wall-boards", ups, own("wall-boards"));
  const { longest, post } = side.sizes;
  const studs: number[] = [];
  let at = 0;
  for (const bay of side.bays) {
    let n = 1;
    while (bay / n > longest + TINY) n++;
    const step = centres(bay / n, 0, BACKING);
    for (let part = 0; part < n; part++) {
      studs.push(...step.slice(1, -1).map((u) => at + u));
      at += bay / n;
      if (part < n - 1) studs.push(at);
    }
  }
  // Those that openings cut are counted by themselves, in the bays where they stand.
  const laid = own("wall-studs").filter(({ name }) => !/-\d+$/.test(name));
  const pairs = low !== high;
  const members = aslantMembers(
    laid,
    studs.map((u) => plan.outline.top(u) - CLEARANCE),
    1,
  );
  if (plan.openings.length === 0 && !plan.crowded) {
    plan.same(
      "studs",
      laid.reduce((sum, { count }) => sum + count, 0),
      pairs ? members.pieces : studs.length,
      0,
    );
  }
  for (const [i, u] of studs.entries()) {
    const length = laid[0]?.length ?? plan.outline.top(u) - CLEARANCE;
    const partner = studs[studs.length - 1 - i] as number;
    const up = plan.outline.top(u) - CLEARANCE;
    const most = members.most[i];
    if (most !== undefined) plan.within("a stud by itself", up, most);
    else if (pairs) plan.within("two studs", up + plan.outline.top(partner) - CLEARANCE, length);
    else plan.same("a stud ends", CLEARANCE + length, plan.outline.top(u));
    plan.lay("wall-studs", [u - STUD / 2, u + STUD / 2], [CLEARANCE, plan.outline.top], 0);
  }
  // Studs stand between the posts, flush with their outer faces.
  for (const u of studs) {
    const miss = Math.min(...side.posts.map((middle) => Math.abs(middle - u)));
    plan.truth(`a stud is ${miss} in from a post's middle`, miss >= post / 2 + STUD / 2 - TINY);
  }
}

/** Flush with both corners, over the boards. */
function corners(plan: WallPlan, { width, heights }: Side, laid: readonly LaidWallGroup[]): void {
  const ends: Range[] = [
    [0, CORNER],
    [width - CORNER, width],
  ];
  plan.same(
    "corner boards",
    laid.reduce((sum, { count }) => sum + count, 0),
    2,
    0,
  );
  for (const [i, u] of ends.entries()) {
    const one = laid[heights[0] === heights[1] ? 0 : i];
    plan.same("a corner board's long edge ends", CLEARANCE + (one?.length ?? 0), plan.longEdge(u[0], u[1]));
    plan.lay("corner-boards", u, [CLEARANCE, plan.outline.top], 0);
  }
}

/** Jambs beside every opening, across them a header and below a window a sill. */
function frames(plan: WallPlan, { openings }: AskedWalls, own: Own): void {
  let next = 0;
  for (const [i, { count, sill }] of openings.entries()) {
    const of = (base: string) =>
      own(base).find(({ name }) => (i === 0 ? !/-\d+$/.test(name) : name.endsWith(`-${i + 1}`)));
    const [jambs, headers] = [of("opening-jambs"), of("opening-headers")];
    if (!jambs || !headers) return void plan.found.push(`${plan.name}: opening ${i + 1} has no frame`);
    for (let k = 0; k < count; k++) {
      const { u, v } = plan.openings[next++] as Rect;
      for (const from of [u[0] - JAMB, u[1]]) {
        plan.level("opening-jambs", [from, from + JAMB], [v[0], v[0] + jambs.length], 0);
        plan.same("a jamb meets its header", v[0] + jambs.length, v[1]);
      }
      const across: Range = [u[0] - JAMB, u[0] - JAMB + headers.length];
      plan.same("a header ends over its jamb", across[1], u[1] + JAMB);
      // On the flat, so that it is as high as it is thick; over a door that is as high as the wall the plate is the header.
      plan.level("opening-headers", across, [v[1], Math.min(v[1] + JAMB, plan.outline.top(0))], 0);
      if (sill !== undefined) plan.level("opening-headers", across, [Math.max(CLEARANCE, v[0] - JAMB), v[0]], 0);
    }
  }
}
