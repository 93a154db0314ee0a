/** Structures at random in half inches, as requests say them: in inches or millimetres, straight or mirrored. */
import fc from "fast-check";
import { layCutList } from "../../src/estimate/pieces/cut-list.js";
import { displayUnits } from "../../src/estimate/quantity/display.js";
import { exactly } from "../../src/estimate/quantity/text.js";
import { Defaults } from "../../src/estimate/request/given.js";
import { type StructureShape, structure } from "../../src/estimate/request/structure-kinds.js";
import { Sheet } from "../../src/estimate/sheet/sheet.js";
import { postLine, type Sizes } from "../judges/frame-walker.js";
import { clearBays, stand } from "../judges/opening-walker.js";

/** Seed of every draw. */
export const SEED = 20_261_125;

/** Half inches, so that inches and millimetres are both exact. */
const half = (least: number, most: number) => fc.integer({ min: least * 2, max: most * 2 }).map((n) => n / 2);

/** Openings alike; from the boards' lower end to a window's sill. */
export interface OpeningDraw {
  readonly width: number;
  readonly height: number;
  readonly count: number;
  readonly sill: number | undefined;
}

/** The first side with openings, the left end without. */
export interface WallDraw {
  readonly boards: "vertical" | "board-and-batten" | "horizontal";
  readonly openings: readonly OpeningDraw[];
  /** What of the left end of a gable is boarded. */
  readonly part: "whole" | "below-plate" | "gable";
}

/** What the covering lies on; boards 6 in wide. */
export interface DeckDraw {
  readonly kind: "purlins" | "spaced-boards" | "solid-boards" | "sheets";
  readonly spacing: number;
  readonly closerRows: number;
}

/** A structure as it is drawn. */
export interface Draw {
  readonly sizes: Sizes;
  readonly wall: WallDraw | undefined;
  readonly floor: boolean;
  readonly slats: number | undefined;
  /** Lengths that a yard sells for every run, in inches; undefined where none is asked. */
  readonly sold: readonly number[] | undefined;
  readonly deck: DeckDraw;
  /** Lookouts apart up a rake, where the request says so. */
  readonly lookouts: number | undefined;
  /** A ridge beam, on king posts where the roof is high enough for them. */
  readonly beam: boolean;
}

/** Of the ridge of a gable, whatever else it is. */
export const RIDGE_DEPTH = 9;

const section = (thick: readonly [number, number], deep: readonly [number, number]) =>
  fc.record({ thick: half(...thick), deep: half(...deep) });

type Bayed = Pick<Sizes, "kind" | "span" | "post" | "bays" | "end"> & { readonly rafter: { readonly thick: number } };

/** The length with its bays, and ends that reach no further past the end posts than the bays behind them. */
function withBays<Rest extends Bayed>(drawn: Rest, longer: number, shares: readonly number[] | undefined) {
  // Commons at both ends of a ridge that is shorter than they are thick would stand in one another.
  const length = drawn.span + (drawn.kind === "hip" && longer <= drawn.rafter.thick ? 0 : longer);
  const unlike = shares && unlikeBays(length - drawn.post, shares.slice(0, drawn.bays), drawn.post);
  const bays = unlike ?? [(length - drawn.post) / drawn.bays];
  const behind = Math.floor(2 * Math.min(bays[0] as number, bays.at(-1) as number)) / 2;
  return { rest: { ...drawn, end: Math.min(drawn.end, behind) }, length, unlike, bays };
}

export const draw: fc.Arbitrary<Draw> = fc
  .record({
    kind: fc.constantFrom<Sizes["kind"]>("gable", "lean-to", "ledger", "hip", "pergola"),
    span: half(72, 300),
    longer: half(0, 400),
    height: half(72, 144),
    rise: half(1, 14),
    near: half(0, 30),
    far: half(0, 30),
    even: fc.boolean(),
    end: half(0, 30),
    bays: fc.integer({ min: 1, max: 6 }),
    shares: fc.option(fc.array(fc.integer({ min: 2, max: 7 }), { minLength: 6, maxLength: 6 }), { nil: undefined }),
    endBays: fc.integer({ min: 1, max: 3 }),
    rafterSpacing: half(12, 40),
    purlinSpacing: half(8, 40),
    longest: half(60, 240),
    short: fc.boolean(),
    square: fc.boolean(),
    brace: half(12, 36),
    post: half(4, 8),
    beam: section([3, 6], [6, 12]),
    rafter: section([1, 3], [4, 10]),
    hip: section([1, 4], [0, 4]),
    ridge: half(1, 3),
    ledger: half(1, 3),
    purlin: half(2, 6),
    endPurlin: half(2, 6),
    deck: fc.record({
      kind: fc.constantFrom<DeckDraw["kind"]>("purlins", "purlins", "spaced-boards", "solid-boards", "sheets"),
      spacing: half(7, 24),
      closerRows: fc.integer({ min: 0, max: 1 }),
    }),
    lookouts: fc.option(half(9, 30), { nil: undefined }),
    wall: fc.option(
      fc.record({
        boards: fc.constantFrom<WallDraw["boards"]>("vertical", "board-and-batten", "horizontal"),
        part: fc.constantFrom<WallDraw["part"]>("whole", "below-plate", "gable"),
        openings: fc.array(
          fc.record({
            width: half(8, 17),
            height: half(12, 48),
            count: fc.integer({ min: 1, max: 2 }),
            sill: fc.option(half(1, 20), { nil: undefined }),
          }),
          { maxLength: 2 },
        ),
      }),
      { nil: undefined },
    ),
    floor: fc.boolean(),
    slats: fc.option(half(6, 20), { nil: undefined }),
    onKings: fc.boolean(),
    sold: fc.option(fc.uniqueArray(fc.constantFrom(72, 96, 120, 144, 168, 192), { minLength: 1, maxLength: 4 }), {
      nil: undefined,
    }),
  })
  .map(({ longer, even, wall, floor, slats, hip, onKings, shares, sold, deck, lookouts, ...drawn }) => {
    const { rest, length, unlike, bays } = withBays(drawn, longer, shares);
    const alike = rest.kind === "hip" || even;
    const endBay = (rest.span - rest.post) / rest.endBays - rest.post;
    const across = { gable: 2 * endBay, "lean-to": 2 * endBay, ledger: 2 * endBay, hip: endBay, pergola: Infinity }[
      rest.kind
    ];
    const clearBay = Math.min(...bays.map((bay) => bay - rest.post), across, rest.span - 2 * rest.post);
    const sizes: Sizes = {
      ...rest,
      length,
      unlike,
      short: rest.short && lastSpace(length - rest.rafter.thick, rest.rafterSpacing) >= rest.rafter.thick,
      // Two braces meet in a bay or below a tie at most, in whole half inches.
      brace: Math.min(rest.brace, Math.floor(clearBay) / 2),
      far: alike ? rest.near : rest.far,
      // A square cut takes nothing of the bearing on either plate.
      square:
        rest.square && Math.min(rest.near, alike || rest.kind !== "gable" ? rest.near : rest.far) >= leastSquare(rest),
      // A hip is as deep as the commons or deeper.
      hip: { thick: hip.thick, deep: rest.rafter.deep + hip.deep },
    };
    const beam = onKings && rest.kind === "gable" && roomForRidge(rest) >= RIDGE_DEPTH;
    const flies = rest.end >= rest.rafter.thick && rest.kind !== "hip" && rest.kind !== "pergola";
    // Closer rows want room between purlins twice as near.
    const roomy = rest.purlinSpacing > 4 * Math.max(rest.purlin, rest.endPurlin);
    const closerRows = deck.kind === "spaced-boards" || (deck.kind === "purlins" && roomy) ? deck.closerRows : 0;
    return {
      ...{ sizes, floor, slats, beam, sold },
      // A post stands in an opening that is wider than every bay.
      wall:
        rest.kind === "pergola" || !wall
          ? undefined
          : { ...wall, openings: thatFit(wall.openings.filter(belowBeam(rest)), postLine(sizes), rest.post) },
      deck: rest.kind === "pergola" ? { ...deck, kind: "purlins", closerRows: 0 } : { ...deck, closerRows },
      lookouts: flies ? lookouts : undefined,
    };
  });

/** Level, from the plate's face to the foot of the square that falls from its corner on the rafter's upper edge. */
function leastSquare({ rise, rafter, beam }: Pick<Sizes, "rise" | "rafter" | "beam">): number {
  const angle = Math.atan2(rise, 12);
  const seat = Math.min(beam.thick, rafter.deep / 4 / Math.sin(angle));
  const corner = rafter.deep - seat * Math.sin(angle); // square to the rafter, from its upper edge
  return corner * Math.sin(angle) + 1e-6;
}

/** Between the ties and the upper corners of a ridge, which lie in the planes of the rafters' upper edges. */
function roomForRidge({ rise, rafter, beam, span, ridge }: Pick<Sizes, "rise" | "rafter" | "beam" | "span" | "ridge">) {
  const seat = Math.min(beam.thick, rafter.deep / 4 / Math.sin(Math.atan2(rise, 12)));
  const above = (rafter.deep * Math.hypot(12, rise) - seat * rise) / 12;
  return above + ((span - ridge) * rise) / 24;
}

/** Openings that end below the beam over the first side; boards begin 4 in above the post bases. */
const belowBeam =
  ({ height, beam }: Pick<Sizes, "height" | "beam">) =>
  (one: OpeningDraw): boolean =>
    4 + (one.sill ?? 0) + one.height <= height - beam.deep;

/** The first so many openings that have room between the posts, jambs and all. */
function thatFit(openings: readonly OpeningDraw[], posts: readonly number[], post: number): readonly OpeningDraw[] {
  const bays = clearBays(posts, post);
  for (let many = openings.length; many > 0; many--) {
    if (stand(bays, openings.slice(0, many))) return openings.slice(0, many);
  }
  return [];
}

/** What whole spaces leave for the last. */
const lastSpace = (reach: number, most: number): number => reach - (Math.ceil(reach / most) - 1) * most;

/** Bays in proportion, in half inches; undefined for a single one, and where posts would stand in one another. */
function unlikeBays(reach: number, shares: readonly number[], post: number): number[] | undefined {
  const all = shares.reduce((a, b) => a + b, 0);
  const first = shares.slice(0, -1).map((share) => Math.floor((2 * reach * share) / all) / 2);
  const bays = [...first, reach - first.reduce((a, b) => a + b, 0)];
  return bays.length > 1 && Math.min(...bays) >= post + 2 ? bays : undefined;
}

/** Inches as they are written in a request: in inches, or in the millimetres that those are exactly. */
export type Write = (inches: number) => string;
export const inches: Write = (n) => `${n} in`;
export const millimetres: Write = (n) => `${(n * 254) / 10} mm`;

/** Asked for just where the overhang asks for them by itself, too, so that no default stands between inches and millimetres. */
export const lookoutsApart = ({ sizes, lookouts }: Pick<Draw, "sizes" | "lookouts">): number | undefined =>
  lookouts ?? (sizes.end > 12 ? 24 : undefined);

/** The body of a request's structure, each default given, so that none stands between inches and millimetres. */
export function bodyOf(
  { sizes: s, wall, floor, slats, beam: onKings, deck, lookouts }: Draw,
  write: Write,
  mirror = false,
): StructureShape {
  const of = (thick: number, deep: number) => ({ section: { thickness: write(thick), width: write(deep) } });
  const [beam, rafter] = [of(s.beam.thick, s.beam.deep), of(s.rafter.thick, s.rafter.deep)];
  const post = of(s.post, s.post);
  const small = of(1, 5);
  const purlin = of(2, s.purlin);
  const thing = { tie: of(4, 7), brace: of(4, 4), ridge: of(s.ridge, RIDGE_DEPTH) };
  const shared = {
    span: write(s.span),
    length: write(s.length),
    ...(s.unlike
      ? { bayLengths: (mirror ? s.unlike.toReversed() : s.unlike).slice(0, -1).map(write) }
      : { bays: s.bays }),
    rafterSpacing: write(s.rafterSpacing),
    braceLeg: write(s.brace),
    longestPiece: write(s.longest),
    ...(floor ? { floor: { joistSpacing: write(17), gap: write(0.5) } } : {}),
  };
  const additions = {
    bearers: of(4, 6),
    joists: of(2, 6),
    "floor-boards": of(1, 6),
    ...(s.kind === "pergola"
      ? {}
      : {
          "wall-boards": of(1, 8),
          "wall-battens": of(1, 2),
          "wall-rails": of(2, 4),
          "wall-studs": of(2, 4),
          "opening-jambs": of(2, 4),
          "opening-headers": of(2, 4),
          "corner-boards": of(1, 4),
        }),
  };
  const sides =
    s.kind === "lean-to" || s.kind === "ledger"
      ? { first: "low", ends: ["left", "right"] }
      : { first: mirror ? "far" : "near", ends: ["left", "right"] };
  const roof = {
    ...shared,
    eaveHeight: write(s.height),
    endBays: s.endBays,
    slope: { rise: write(s.rise), run: write(12) },
    rafterTail: s.square ? "square" : "plumb",
    rafterBays: s.short ? "short-last" : "equal",
    purlinSpacing: write(s.purlinSpacing),
    deck: {
      kind: deck.kind,
      closerRows: deck.closerRows,
      ...(deck.kind === "spaced-boards" ? { spacing: write(deck.spacing) } : {}),
    },
    ...(wall
      ? {
          walls: {
            boards: wall.boards,
            lap: write(0.5),
            clearance: write(4),
            backing: write(30),
            gableLap: write(2),
            sides: [
              {
                side: sides.first,
                openings: wall.openings.map(({ width, height, count, sill }) => ({
                  ...{ width: write(width), height: write(height), count },
                  ...(sill === undefined ? {} : { sill: write(sill) }),
                })),
              },
              { side: sides.ends[mirror ? 1 : 0], ...(s.kind === "gable" ? { part: wall.part } : {}) },
            ],
          },
        }
      : {}),
  };
  const apart = lookoutsApart({ sizes: s, lookouts });
  const framed = apart === undefined ? {} : { lookoutSpacing: write(apart) };
  const json = {
    gable: {
      kind: "gable",
      ...roof,
      ...framed,
      ridge: onKings ? "beam" : "board",
      overhang: { eave: write(mirror ? s.far : s.near), farEave: write(mirror ? s.near : s.far), gable: write(s.end) },
      groups: {
        ...additions,
        "king-posts": of(4, 4),
        lookouts: of(2, 4),
        posts: post,
        "end-posts": post,
        beams: beam,
        "gable-beams": thing.tie,
        ties: thing.tie,
        ridge: thing.ridge,
        rafters: rafter,
        braces: thing.brace,
        purlins: purlin,
        "deck-boards": of(1, 6),
        "eave-fascia": small,
        "rake-fascia": small,
      },
    },
    "lean-to": {
      kind: "lean-to",
      ...roof,
      ...framed,
      highSide: s.kind === "ledger" ? "ledger" : "posts",
      overhang: { low: write(s.near), end: write(s.end), ...(s.kind === "ledger" ? {} : { high: write(s.far) }) },
      groups: {
        ...additions,
        lookouts: of(2, 4),
        "low-posts": post,
        "low-beams": beam,
        ledger: of(s.ledger, 8),
        "end-beams": thing.tie,
        braces: thing.brace,
        rafters: rafter,
        purlins: purlin,
        "deck-boards": of(1, 6),
        "low-fascia": small,
      },
    },
    hip: {
      kind: "hip",
      ...roof,
      overhang: { eave: write(s.near) },
      groups: {
        ...additions,
        posts: post,
        beams: beam,
        ties: thing.tie,
        braces: thing.brace,
        ridge: thing.ridge,
        rafters: rafter,
        hips: of(s.hip.thick, s.hip.deep),
        "side-purlins": purlin,
        "end-purlins": of(2, s.endPurlin),
        "deck-boards": of(1, 6),
        "side-fascia": small,
      },
    },
    pergola: {
      kind: "pergola",
      ...shared,
      height: write(s.height),
      overhang: { side: write(s.near), end: write(s.end) },
      ...(slats === undefined ? {} : { slatSpacing: write(slats) }),
      groups: { ...additions, posts: post, beams: beam, braces: thing.brace, rafters: rafter, slats: of(2, 2) },
    },
  }[s.kind === "ledger" ? "lean-to" : s.kind];
  return structure.parse(json);
}

/** The cut list of a body, by itself. @param sold - Lengths that a yard has for every run, in inches. */
export function laid(body: StructureShape, sold?: readonly number[], system: "inch-pound" | "metric" = "inch-pound") {
  const sheet = new Sheet();
  const lengths = sold?.map((inches) => exactly(`${inches} in`).value);
  const site = { sheet, defaults: new Defaults(system), units: displayUnits(system) };
  return { sheet, ...layCutList(lengths ? { ...site, sold: () => ({ lengths, mayMill: false }) } : site, body) };
}

/** A structure as laid. */
export type Laid = ReturnType<typeof laid>;
