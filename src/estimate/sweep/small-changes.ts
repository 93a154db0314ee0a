/** Small changes of a structure that its owner might not mind: a hand's breadth of overhang, a little less rise. */
import { pointer } from "../faults.js";
import type { Decimal } from "../quantity/decimal.js";
import { exactly } from "../quantity/text.js";
import { lowered } from "../quantity/words.js";
import type { EstimateRequest } from "../request/request.js";
import type { FrameShape, StructureShape } from "../request/structure-kinds.js";
import { aside } from "../sheet/aside.js";
import type { Cell } from "../sheet/expression.js";

/** One field of the structure, and how far it may be moved. */
interface MovableField {
  /** Cell that holds its value. */
  readonly cell: string;
  /** Steps through the structure's JSON. */
  readonly path: readonly string[];
  /** Which way saves, and in which steps. */
  readonly by: readonly [inch: string, metric: string];
  readonly steps: readonly number[];
  /** All steps are tried, and the one that saves most is told. */
  readonly bestOf?: boolean;
  /** Where the cell's own label does not say what it is of. */
  readonly label?: string;
  /** Pieces of the user's own whose length it is. */
  readonly pieces?: string;
}

const LESS = [-1, -2, -3, -4];
const EITHER = [-1, -2, 1, 2];
const BY_INCH = ["1 in", "20 mm"] as const;

const field = (
  cell: string,
  path: string,
  steps: readonly number[] = LESS,
  by: MovableField["by"] = BY_INCH,
): MovableField => ({ cell: `frame.${cell}`, path: path.split("."), steps, by });

/** Where runs are spliced: the lengths that yards sell, in whole feet or steps of 300 mm. */
const SPLICES: MovableField = {
  ...field("longestPiece", "longestPiece", [-4, -3, -2, -1, 1, 2, 3, 4, 6, 8], ["1 ft", "300 mm"]),
  bestOf: true,
};
const SIZE = [field("span", "span"), field("length", "length", [-1, -2, -4, -6]), SPLICES];
const SPACINGS = [field("rafterSpacing", "rafterSpacing", [1, 2])];
const ROOF = [
  ...SIZE,
  field("eaveHeight", "eaveHeight"),
  field("unitRise", "slope.rise", EITHER, ["1/2 in", "10 mm"]),
  ...SPACINGS,
  field("purlinSpacing", "purlinSpacing", [1, 2]),
];

const FIELDS: Readonly<Record<FrameShape["kind"], readonly MovableField[]>> = {
  gable: [
    ...ROOF,
    field("eaveOverhang", "overhang.eave"),
    field("farOverhang", "overhang.farEave"),
    field("gableOverhang", "overhang.gable"),
  ],
  "lean-to": [
    ...ROOF,
    field("lowOverhang", "overhang.low"),
    field("highOverhang", "overhang.high"),
    field("endOverhang", "overhang.end"),
  ],
  hip: [...ROOF, field("eaveOverhang", "overhang.eave")],
  pergola: [
    ...SIZE,
    field("height", "height"),
    ...SPACINGS,
    field("slatSpacing", "slatSpacing", [1, 2]),
    field("sideOverhang", "overhang.side"),
    field("endOverhang", "overhang.end"),
  ],
};

/** A request with one field moved. */
export interface SmallChange {
  /** JSON Pointer of the field. */
  readonly at: string;
  /** What it is, in words. */
  readonly label: string;
  /** Said in feet and inches, as lengths of a building are. */
  readonly long: boolean;
  /** Millimetres. */
  readonly from: Decimal;
  readonly to: Decimal;
  readonly request: EstimateRequest;
  /** See `MovableField`. */
  readonly bestOf: boolean;
  /** Pieces of the user's own that it shortens. */
  readonly pieces?: string;
}

/** Lengths of the user's own pieces: a little less may come out of a shorter stick. */
function ownLengths(shape: StructureShape): MovableField[] {
  const [list, own] =
    shape.kind === "pieces" ? (["pieces", shape.pieces] as const) : (["extraPieces", shape.extraPieces ?? []] as const);
  return own.map(({ name, label = name }, i) => ({
    cell: `pieces.${name}.length`,
    path: [list, String(i), "length"],
    by: BY_INCH,
    steps: LESS,
    label: `length of ${lowered(label)}`,
    pieces: name,
  }));
}

/**
 * All small changes of a request, field by field, the smallest of a field first. What is overridden or would come to less
 * than nothing is left alone.
 * @param find - Cells of the request as it is.
 */
export function smallChanges(request: EstimateRequest, find: (name: string) => Cell | undefined): SmallChange[][] {
  const shape = request.structure;
  const fields = [...(shape.kind === "pieces" ? [] : FIELDS[shape.kind]), ...ownLengths(shape)];
  return fields.flatMap(({ cell: name, path, by, steps, bestOf = false, label, pieces }) => {
    const cell = find(name);
    if (!cell || cell.kind === "override") return [];
    const step = exactly(by[request.system === "metric" ? 1 : 0]).value;
    const values = steps.map((count) => aside(cell).plus(step.times(count))).filter((value) => value.gt(0));
    const changes = values.map((to): SmallChange => {
      const structure = replaced(shape, path, { value: to.toFixed(), unit: "mm" }) as StructureShape;
      return {
        at: pointer("/structure", ...path),
        label: label ?? cell.label,
        long: cell.display.symbol === "ft" || cell.display.symbol === "m",
        from: aside(cell),
        to,
        request: { ...request, structure },
        bestOf,
        ...(pieces !== undefined && { pieces }),
      };
    });
    return changes.length > 0 ? [changes] : [];
  });
}

/** A copy of nested objects and lists with one value put in; objects on the way that are absent are made. */
function replaced(of: object, [step, ...rest]: readonly string[], value: unknown): object {
  if (step === undefined) return of;
  const inner = (of as Readonly<Record<string, unknown>>)[step];
  const put = rest.length === 0 ? value : replaced(typeof inner === "object" && inner ? inner : {}, rest, value);
  return Array.isArray(of) ? of.map((one, i) => (String(i) === step ? put : one)) : { ...of, [step]: put };
}
