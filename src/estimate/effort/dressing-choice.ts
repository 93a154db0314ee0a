/** Which machine dresses a group, and why: read off the same limits as the hours, for showing. No formula hangs on it. */
import type { PieceGroup } from "../pieces/piece-group.js";
import type { Assumed } from "../request/assumed.js";
import { aside } from "../sheet/aside.js";
import { evaluate } from "../sheet/evaluate.js";
import { expressionOf, type Operand } from "../sheet/expression.js";
import { limitsOf, type Planer, planingOf, type RawPiece } from "./dressing.js";

/** How one group is dressed. */
export interface DressingChoice {
  readonly group: string;
  readonly by: "machine" | "hand" | "nobody";
  /** Several pieces in one slab, planed before they are ripped, or one at a time; by machine only. */
  readonly order?: "slab-first" | "piece-by-piece";
  /** From one face, or from both where the saw is too shallow; by machine only. */
  readonly rip?: "one-face" | "both-faces";
  /** Reasons, in words. */
  readonly because: readonly string[];
}

const valueNow = (operand: Operand) => evaluate(expressionOf(operand), aside);

/** Both measure the same, in the one unit in which it is held. */
const exceeds = (is: Operand, most: Operand): boolean => valueNow(is).gt(valueNow(most));

/** The choice for one group as it comes to the machines. */
export function dressingChoice(
  group: PieceGroup,
  raw: RawPiece,
  planer: Planer | undefined,
  assumed: Assumed,
): DressingChoice {
  const name = group.name;
  if (group.rules.surface !== "dressed") return { group: name, by: "nobody", because: ["it stays rough"] };
  if (planer === "none") return { group: name, by: "hand", because: ["there is no planer"] };
  const beyond = limitsOf(raw, assumed).filter(({ share }) => valueNow(share).gt(1));
  if (beyond.length > 0) return { group: name, by: "hand", because: beyond.map(({ because }) => because) };
  const { piece, slab, abreast } = planingOf(group, raw, assumed);
  const slabFirst = exceeds(piece, slab);
  const bothFaces = exceeds(raw.thickness, assumed.cell("dress.deepestRip"));
  return {
    group: name,
    by: "machine",
    order: slabFirst ? "slab-first" : "piece-by-piece",
    rip: bothFaces ? "both-faces" : "one-face",
    because: [
      "it goes through the planer",
      whyInOrder(valueNow(abreast).toNumber(), slabFirst),
      ...(bothFaces ? ["it is thicker than the saw cuts from one face"] : []),
    ],
  };
}

function whyInOrder(abreast: number, slabFirst: boolean): string {
  if (slabFirst) return `${abreast} in one slab take fewer passes before they are ripped`;
  return abreast > 1
    ? "a pass over sawn edges costs more than one slab for several would save"
    : "no two go through in one slab";
}
