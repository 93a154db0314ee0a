/** The pieces along the edges of a roof that belong to a covering: which there are, on which edges, in which lengths. */
import type { EdgePiece } from "../../catalog/coverings.js";
import type { CoveringOffer } from "../../catalog/offers/covering.js";
import { FaultError, pointer } from "../faults.js";
import { BELOW_COVERING, type Need } from "../need.js";
import type { Quantity } from "../quantity/quantity.js";
import { exactly, shown } from "../quantity/text.js";
import { lowered } from "../quantity/words.js";
import type { InEither } from "../request/given.js";
import { aside } from "../sheet/aside.js";
import { type Cell, count, over, roundUp, sum, times } from "../sheet/expression.js";
import type { CoveredRoof } from "./covered-roof.js";
import type { Edge } from "./covering-faces.js";
import {
  type CoveringWork,
  type LaidCovering,
  laySize,
  partNeed,
  partWords,
  refuseLongLap,
  refuseNothing,
} from "./covering-work.js";
import { layTrim, type TrimCells } from "./roof-trim.js";

/** Trims of a covering, by kind; those for edges that the roof has not are absent. */
export type Trims = ReadonlyMap<EdgePiece, TrimCells>;

interface EdgeRule {
  /** Length of one piece, bundle or roll where the catalog has none: common practice. */
  readonly usual: InEither;
  /** Metal, lapped where pieces meet. */
  readonly lapped: boolean;
}

const METAL: InEither = { "inch-pound": "10 ft", metric: "2 m" };

const RULES: Readonly<Record<Exclude<EdgePiece, "ridge-closure" | "eave-closure">, EdgeRule>> = {
  "ridge-cap": { usual: METAL, lapped: true },
  "hip-cap": { usual: METAL, lapped: true },
  "eave-trim": { usual: METAL, lapped: true },
  "rake-trim": { usual: METAL, lapped: true },
  "drip-edge": { usual: METAL, lapped: true },
  "starter-strip": {
    usual: { "inch-pound": "100 ft", metric: "30 m" },
    lapped: false,
  },
};

/** Caps of shingle, by the bundle; ridge and rake tiles, each as far as it shows. Common practice. */
const SHINGLE_CAP: InEither = { "inch-pound": "20 ft", metric: "6 m" };
const RIDGE_TILE: InEither = { "inch-pound": "13.5 in", metric: "340 mm" };

/** A metal piece under this length laps more than it covers. Assumption. */
const SHORTEST = "24 in";

type TrimPiece = keyof typeof RULES;

/** Lays all trims; closures are not trims. */
export function layTrims(work: CoveringWork): Trims {
  const wanted = work.row.edges.filter((kind): kind is TrimPiece => Object.hasOwn(RULES, kind));
  const found = wanted.flatMap((kind) => {
    const edges = edgesOf(work, kind);
    return edges.length === 0 ? [] : [[kind, layOne(work, kind, edges)] as const];
  });
  return new Map(found);
}

function edgesOf({ surface: { edges } }: CoveringWork, kind: TrimPiece): readonly Edge[] {
  switch (kind) {
    case "ridge-cap":
      return edges.ridge;
    case "hip-cap":
      return edges.hips;
    case "rake-trim":
      return edges.rakes;
    case "drip-edge":
      return [...edges.eaves, ...edges.rakes];
    case "eave-trim":
    case "starter-strip":
      return edges.eaves;
  }
}

function layOne(work: CoveringWork, kind: TrimPiece, edges: readonly Edge[]): TrimCells {
  const { sheet, name, row, roof, assumed, units } = work;
  const rule = RULES[kind];
  const metal = rule.lapped && (row.form === "panels" || kind === "drip-edge");
  const usual = metal ? rule.usual : unlappedLength(work, kind, rule);
  const piece = laySize(
    work,
    `trim.${kind}`,
    `length of each piece of ${lowered(partWords(work, kind))}`,
    pieceLength(work.offer, kind),
    usual,
  );
  const plan = { name: `${name}.${kind}`, label: partWords(work, kind), edges, piece };
  if (!metal) {
    refuseNothing(work, [piece]);
    return layTrim(sheet, { ...plan, rows: { sheet: 0, wood: 0 } }, units);
  }
  refuseShort(work, kind, piece);
  const lap = assumed.cell("covering.trimLap");
  refuseLongLap(sheet, lap, piece);
  const fixedApart = assumed.cell(kind === "drip-edge" ? "covering.edgeNails" : "covering.trimScrews");
  return layTrim(sheet, { ...plan, lap, fixedApart, rows: rowsOf(kind, roof.upper) }, units);
}

function unlappedLength({ kind }: CoveringWork, piece: TrimPiece, rule: EdgeRule): InEither {
  if (kind === "tile") return RIDGE_TILE;
  return piece === "starter-strip" ? rule.usual : SHINGLE_CAP;
}

/** A single slope's cap is screwed to the sheets and to the wall or fascia behind it. */
function rowsOf(kind: TrimPiece, upper: CoveredRoof["upper"]): { readonly sheet: number; readonly wood: number } {
  if (kind === "hip-cap") return { sheet: 2, wood: 0 };
  if (kind === "ridge-cap") return upper === "ridge" ? { sheet: 2, wood: 0 } : { sheet: 1, wood: 1 };
  return kind === "rake-trim" ? { sheet: 1, wood: 1 } : { sheet: 0, wood: 1 };
}

/** A hip is capped with what caps the ridge where no hip cap is sold. */
export function pieceLength(offer: CoveringOffer | undefined, kind: EdgePiece): Quantity | undefined {
  const found = offer?.trims.find((each) => each.kind === kind)?.length;
  return found ?? (kind === "hip-cap" ? pieceLength(offer, "ridge-cap") : undefined);
}

/** A refusal lays no formula, so it reads values without making their cells structural. */
function refuseShort({ sheet, offer }: CoveringWork, kind: TrimPiece, cell: Cell): void {
  const least = exactly(SHORTEST).value;
  const trims = offer?.trims ?? [];
  const short = trims.find((each) => each.kind === kind && each.length.value.lt(least));
  if (aside(cell).gte(least) && !short) return;
  const said = short ? shown(short.length, short.length.written) : sheet.onTape(cell);
  const wrong = `The ${cell.label} is ${said}: laps would eat it up.`;
  const cure = `Give ${SHORTEST} or more.`;
  throw new FaultError([
    {
      code: "cannot-build",
      at:
        short && offer
          ? pointer(offer.at, "trims", trims.indexOf(short), "length")
          : (offer?.at ?? "/catalog/coverings"),
      wrong,
      cure,
    },
  ]);
}

/** Trims as needs, in the order of the row. */
export const trimNeeds = (work: CoveringWork, trims: Trims): Need[] =>
  [...trims].map(([kind, { pieces, pieceLength: length, fitted }]) =>
    partNeed(work, kind as TrimPiece, pieces, { pieceLength: length, fitted }),
  );

/** Length of all trims, and of those below the covering: what is fitted. A starter is laid with the courses. */
export function layTrimLength(
  { sheet, name, units }: CoveringWork,
  trims: Trims,
): Pick<LaidCovering, "trimLength" | "trimBelow"> {
  const fitted = [...trims].filter(([kind]) => kind !== "starter-strip");
  const below = fitted.filter(([kind]) => BELOW_COVERING.has(kind)).map(([, trim]) => trim.length);
  const lay = (of: string, label: string, lengths: readonly Cell[]) =>
    sheet.lay(`${name}.${of}`, sum(lengths), { label, display: units.long });
  const lengths = fitted.map(([, trim]) => trim.length);
  const trimLength = lay("trimLength", "trim to fit", lengths);
  if (below.length === 0) return { trimLength };
  const all = below.length === fitted.length;
  return { trimLength, trimBelow: all ? trimLength : lay("trimBelow", "of it, below the covering", below) };
}

/** Strips of one width along edges, each edge begun afresh: closures follow the profile rib by rib. */
export function layStrips(
  { sheet, name, roof }: CoveringWork,
  kind: "eave-closure" | "ridge-closure",
  edges: readonly Edge[],
  strip: Cell,
): Cell {
  const each = edges.map((edge) => times(count(edge.count), roundUp(over(edge.length, strip))));
  const upper = { ridge: "ridge and hips", edge: "the high side", wall: "the wall" }[roof.upper];
  const label =
    kind === "eave-closure"
      ? "closure strips at the eave, under the sheets"
      : `closure strips at ${upper}, over the sheets`;
  return sheet.lay(`${name}.${kind}s`, each.length === 1 ? (each[0] as (typeof each)[number]) : sum(each), { label });
}
