/**
 * Where openings of a drawn wall stand by the rule, and what they cut of rails and studs: bays taken one by one, rows and studs
 * walked. Inches and floats.
 */
import { centres } from "./frame-walker.js";
import { BACKING, CLEARANCE, JAMB, RAIL, STUD, TINY } from "./wall-sizes.js";

/** Openings alike, as drawn. */
interface Alike {
  readonly width: number;
  readonly height: number;
  readonly count: number;
  readonly sill: number | undefined;
}

/** One of them in its bay, and where its clear width begins. */
export interface Stood {
  readonly of: Alike;
  readonly bay: number;
  readonly from: number;
  readonly alone: boolean;
}

/** Clear bays between posts, from the outer face of the first. */
export function clearBays(posts: readonly number[], post: number): [number, number][] {
  return posts.slice(1).map((middle, i) => [(posts[i] as number) + post / 2, middle - post / 2]);
}

/** Each in the middle of the widest free bay, or beside others where most is left; undefined where there is no room. */
export function stand(bays: readonly (readonly [number, number])[], openings: readonly Alike[]): Stood[] | undefined {
  const taken: Alike[][] = bays.map(() => []);
  const left = (i: number) => {
    const [from, to] = bays[i] as readonly [number, number];
    return (taken[i] as Alike[]).reduce((rest, { width }) => rest - width - 2 * JAMB, to - from);
  };
  const aside = (i: number) => Math.abs(i - (bays.length - 1) / 2);
  const widest = (among: readonly number[], least: number) => {
    const roomy = among.filter((i) => left(i) >= least - TINY);
    const most = Math.max(...roomy.map(left));
    return roomy.filter((i) => left(i) >= most - TINY).sort((a, b) => aside(a) - aside(b) || a - b)[0];
  };
  for (const of of openings) {
    for (let k = 0; k < of.count; k++) {
      const all = bays.map((_, i) => i);
      const free = all.filter((i) => taken[i]?.length === 0);
      const bay = widest(free, of.width + 2 * JAMB) ?? widest(all, of.width + 2 * JAMB) ?? widest(free, of.width);
      if (bay === undefined) return undefined;
      taken[bay]?.push(of);
    }
  }
  return taken.flatMap((own, bay) => {
    const [from, to] = bays[bay] as readonly [number, number];
    const gap = (to - from - own.reduce((sum, { width }) => sum + width, 0)) / (own.length + 1);
    let at = from;
    return own.map((of) => {
      const place = at + gap;
      at = place + of.width;
      return { of, bay, from: place, alone: own.length === 1 };
    });
  });
}

/** What is walked of a side: its rows of boards and rails bay by bay, and how high it is. */
interface Walked {
  /** Length of each bay's own pieces, and how many they are end to end. */
  readonly bays: readonly { readonly length: number; readonly pieces: number }[];
  readonly high: number;
}

/** Openings that cut one piece of a row, with that piece. */
function cutting(stood: readonly Stood[], { bays }: Walked) {
  const before = (bay: number) => bays.slice(0, bay).reduce((at, { length, pieces }) => at + length * pieces, 0);
  return stood.flatMap((one) => {
    const [bay, from] = [bays[one.bay], before(one.bay)];
    if (!one.alone || !bay || bay.pieces !== 1) return [];
    const rough = [one.from - JAMB, one.from + one.of.width + JAMB] as const;
    return rough[0] >= from - TINY && rough[1] <= from + bay.length + TINY
      ? [{ ...one, rough, begins: from, bay }]
      : [];
  });
}

/** Length of rails that they take out, all rows together. */
export function railsOut(stood: readonly Stood[], walked: Walked): number {
  const rows = centres(walked.high, 0, BACKING).length;
  let out = 0;
  for (const { of, rough, bay } of cutting(stood, walked)) {
    const low = of.sill === undefined ? CLEARANCE : CLEARANCE + of.sill - JAMB;
    const head = CLEARANCE + (of.sill ?? 0) + of.height + JAMB;
    for (let row = 0; row < rows; row++) {
      const up = CLEARANCE + (row * walked.high) / (rows - 1);
      const [under, over] = row === rows - 1 ? [up - RAIL, up] : [up, up + RAIL];
      if (under < head - TINY && over > low + TINY) out += Math.min(bay.length, rough[1] - rough[0]);
    }
  }
  return out;
}

/** Studs that they cut. */
export function studsOut(stood: readonly Stood[], walked: Walked): { readonly of: Alike; readonly studs: number }[] {
  return cutting(stood, walked).map(({ of, rough, begins, bay }) => {
    const places = centres(bay.length, 0, BACKING).slice(1, -1);
    return {
      of,
      studs: places.filter((u) => begins + u + STUD / 2 > rough[0] + TINY && begins + u - STUD / 2 < rough[1] - TINY)
        .length,
    };
  });
}
