/**
 * Valid requests at random: small gables and piece lists, a few logs, a part of a demo yard's prices, options.
 *
 * A request is drawn as plain numbers of inches and written in inches, in the millimetres that those inches are exactly,
 * or in round millimetres as a metric project would have them.
 */
import fc from "fast-check";
import { demoCatalog, groupNames } from "./estimating.js";

/** `exact-mm` keeps the inch-pound answer; `metric` rounds to whole millimetres and has a metric answer and yard. */
export type Writing = "inches" | "exact-mm" | "metric";

type Inches = number;
type Body = Record<string, unknown>;

interface LogDraw {
  readonly species: string;
  readonly length: Inches;
  readonly small: Inches;
  readonly grows: Inches | undefined;
  readonly sweep: "straight" | "some" | Inches;
  readonly dirty: boolean;
  readonly value: number | undefined;
}

interface GroupDraw {
  readonly role: string;
  readonly count: number;
  readonly thickness: Inches;
  readonly width: Inches;
  readonly length: Inches;
  readonly surface: "rough" | "dressed";
  readonly seasoning: "green" | "dried";
  readonly heart: "any" | "free" | "boxed";
}

interface GableDraw {
  readonly span: Inches;
  readonly length: Inches;
  readonly eaveHeight: Inches;
  readonly rise: Inches;
  readonly eave: Inches;
  readonly gable: Inches;
  readonly bays: number | undefined;
  readonly rafterSpacing: Inches;
  readonly purlinSpacing: Inches;
  readonly longestPiece: Inches;
  readonly rafterBays: "equal" | "short-last";
  readonly ridge: "board" | "beam";
  readonly covering: "ribbed-steel" | "none";
  readonly removed: readonly string[];
}

export interface RequestDraw {
  readonly structure: GableDraw | readonly GroupDraw[];
  readonly logs: readonly LogDraw[];
  /** Index of the catalog's entries that are kept, as shares of one; empty keeps nothing. */
  readonly kept: readonly boolean[];
  readonly mill: string;
  readonly tableSaw: string;
  readonly equipment: readonly { readonly item: string; readonly terms: string }[];
  readonly labor: { readonly value: number; readonly crew: number };
  readonly options: { readonly fallDown: string; readonly finish: string; readonly lightFixing: string };
  readonly ungraded: "yes" | "no" | "unknown";
  readonly ownLines: boolean;
  /** Which groups the mix mills, counted round; with that said, the search for the best mix is spared. */
  readonly milled: readonly boolean[];
}

/** Half inches, so that a text never has many digits. */
const inches = (least: number, most: number) => fc.integer({ min: least * 2, max: most * 2 }).map((n) => n / 2);

const logDraw: fc.Arbitrary<LogDraw> = fc.record({
  species: fc.constantFrom("eastern-white-pine", "black-locust", "european-larch", "white-oak"),
  length: inches(80, 200),
  small: inches(9, 20),
  grows: fc.option(inches(0, 4), { nil: undefined }),
  sweep: fc.oneof(fc.constantFrom("straight" as const, "some" as const), inches(0, 2)),
  dirty: fc.boolean(),
  value: fc.option(fc.integer({ min: 1, max: 90 }), { nil: undefined }),
});

const groupDraw: fc.Arbitrary<GroupDraw> = fc.record({
  role: fc.constantFrom("post", "beam", "tie", "rafter", "brace", "purlin", "fascia", "board", "other"),
  count: fc.integer({ min: 1, max: 14 }),
  thickness: fc.constantFrom(1, 1.5, 2, 3, 4, 6),
  width: fc.constantFrom(4, 5.5, 6, 8),
  length: inches(24, 150),
  surface: fc.constantFrom("rough", "dressed"),
  seasoning: fc.constantFrom("green", "dried"),
  heart: fc.constantFrom("any", "any", "free", "boxed"),
});

const gableDraw: fc.Arbitrary<GableDraw> = fc.record({
  span: inches(72, 288),
  length: inches(60, 300),
  eaveHeight: inches(72, 132),
  rise: inches(0, 14),
  eave: inches(0, 24),
  gable: fc.oneof(fc.constant(0), inches(0, 24)),
  bays: fc.option(fc.integer({ min: 1, max: 4 }), { nil: undefined }),
  rafterSpacing: inches(12, 40),
  purlinSpacing: inches(14, 40),
  longestPiece: inches(96, 240),
  rafterBays: fc.constantFrom("equal", "short-last"),
  ridge: fc.constantFrom("board", "beam"),
  covering: fc.constantFrom("ribbed-steel", "ribbed-steel", "none"),
  removed: fc.subarray(["braces", "ties", "eave-fascia", "rake-fascia", "gable-beams"], { maxLength: 2 }),
});

/** A request of a few pieces and logs. */
export const requestDraw: fc.Arbitrary<RequestDraw> = fc.record({
  structure: fc.oneof(
    { weight: 2, arbitrary: gableDraw },
    { weight: 1, arbitrary: fc.array(groupDraw, { minLength: 1, maxLength: 4 }) },
  ),
  logs: fc.array(logDraw, { maxLength: 5 }),
  kept: fc.oneof(fc.constant([true]), fc.array(fc.boolean(), { minLength: 7, maxLength: 13 })),
  mill: fc.constantFrom("chainsaw-mill", "manual-band-mill", "hydraulic-band-mill", "swing-blade-mill"),
  tableSaw: fc.constantFrom("table-saw", "none"),
  equipment: fc.uniqueArray(
    fc.record({
      item: fc.constantFrom("chainsaw-mill", "manual-band-mill", "planer", "jointer"),
      terms: fc.constantFrom("paid", "hired", "bought"),
    }),
    { maxLength: 3, selector: ({ item }) => item },
  ),
  labor: fc.record({ value: fc.integer({ min: 0, max: 60 }), crew: fc.integer({ min: 1, max: 4 }) }),
  options: fc.record({
    fallDown: fc.constantFrom("spares", "buy"),
    finish: fc.constantFrom("oil-stain", "paint", "none"),
    lightFixing: fc.constantFrom("screws", "nails"),
  }),
  ungraded: fc.constantFrom("yes", "yes", "unknown", "no"),
  ownLines: fc.boolean(),
  milled: fc.array(fc.boolean(), { minLength: 3, maxLength: 7 }),
});

/** The draw as the JSON of a request. */
export function written(draw: RequestDraw, writing: Writing): Body {
  const pen = penOf(writing);
  const catalog = partOf(demoCatalog(writing === "metric" ? "ferry-yard" : "orchard-yard"), draw.kept);
  const sign = catalog.currency === "EUR" ? "€" : "$";
  const body = {
    structure: structureOf(draw.structure, pen),
    logs: draw.logs.map((log, i) => logOf(log, i, pen, sign)),
    catalog,
    shop: { mill: draw.mill, tableSaw: draw.tableSaw, equipment: draw.equipment },
    labor: { valueOfHour: `${sign}${draw.labor.value}/h`, crew: draw.labor.crew },
    site: { ungradedAccepted: draw.ungraded },
    options: { ...draw.options, measure: writing === "metric" ? "metric" : "inch-pound" },
    lines: draw.ownLines ? ownLines(String(catalog.currency)) : [],
  };
  const milled = groupNames(body).filter((_, i) => draw.milled[i % draw.milled.length]);
  return { ...body, heldPlans: { milled } };
}

interface Pen {
  readonly length: (inches: Inches) => string;
  readonly section: (a: Inches, b: Inches) => string;
}

function penOf(writing: Writing): Pen {
  if (writing === "inches") return { length: (n) => `${n} in`, section: (a, b) => `${a} x ${b} in` };
  const millimetres = (n: Inches) => (writing === "exact-mm" ? Number((n * 25.4).toFixed(2)) : Math.round(n * 25));
  return {
    length: (n) => `${millimetres(n)} mm`,
    section: (a, b) => `${millimetres(a)} x ${millimetres(b)} mm`,
  };
}

function structureOf(draw: RequestDraw["structure"], pen: Pen): Body {
  if (!("span" in draw)) {
    const pieces = draw.map(({ thickness, width, length, ...rest }, i) => ({
      name: `lot-${i + 1}`,
      section: pen.section(thickness, width),
      length: pen.length(length),
      ...rest,
    }));
    return { kind: "pieces", pieces };
  }
  const { rise, eave, gable, bays, removed, rafterBays, ridge, covering, ...lengths } = draw;
  return {
    kind: "gable",
    ...Object.fromEntries(Object.entries(lengths).map(([name, n]) => [name, pen.length(n)])),
    slope: { rise: pen.length(rise), run: pen.length(12) },
    overhang: { eave: pen.length(eave), gable: pen.length(gable) },
    ...(bays === undefined ? {} : { bays }),
    rafterBays: lastSpace(lengths) < RAFTER ? "equal" : rafterBays,
    // A low roof has no room for a beam above the ties: that is refused, and not what is drawn here.
    ridge: ((draw.span / 2) * rise) / 12 < 5 ? "board" : ridge,
    covering,
    groups: Object.fromEntries(removed.map((name) => [name, { remove: true }])),
  };
}

/** Rafters by default, in inches or a little more. */
const RAFTER = 2;

/** What whole spaces leave of a length for the last: no less than a rafter is thick. */
function lastSpace({ length, rafterSpacing }: Pick<GableDraw, "length" | "rafterSpacing">): number {
  const reach = length - RAFTER;
  return reach - (Math.ceil(reach / rafterSpacing) - 1) * rafterSpacing;
}

function logOf(
  { species, length, small, grows, sweep, dirty, value }: LogDraw,
  i: number,
  pen: Pen,
  sign: string,
): Body {
  return {
    name: `log-${i + 1}`,
    species,
    length: pen.length(length),
    smallDiameter: pen.length(small),
    ...(grows === undefined ? {} : { largeDiameter: pen.length(small + grows) }),
    sweep: typeof sweep === "number" ? pen.length(sweep) : sweep,
    dirty,
    ...(value === undefined ? {} : { value: `${sign}${value}` }),
  };
}

const ownLines = (currency: string): Body[] => [
  { name: "permit", label: "Building permit", formula: `120 ${currency} + pieces.count * 0.35 ${currency}` },
  { name: "clearing", label: "Clear the site", formula: "labor.crew * 3 h" },
];

/** Keeps every entry of a yard's lists whose place, counted round, is marked as kept; no covering without its boards. */
function partOf(catalog: Body, kept: readonly boolean[]): Body {
  let place = 0;
  const keep = () => kept[place++ % kept.length] === true;
  const part = ([name, value]: [string, unknown]): [string, unknown] =>
    Array.isArray(value) && name !== "taxes" ? [name, value.filter(keep)] : [name, value];
  const left = Object.fromEntries(Object.entries(catalog).map(part)) as Body & Record<"lumber" | "coverings", Body[]>;
  const sold = new Set(left.lumber.map(({ name }) => name));
  const boards = ({ deck, sheets }: Body) => [deck, (sheets as Body).lumber].filter((name) => name !== undefined);
  return { ...left, coverings: left.coverings.filter((covering) => boards(covering).every((name) => sold.has(name))) };
}
