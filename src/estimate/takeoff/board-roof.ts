/**
 * Boards as the only covering: up and down the slope, every second one laid over the edges of its neighbours. n boards of
 * width w that lap l on one another reach n × (w − l) + l. Two more cover the ridge, and two each hip.
 */

import type { LumberOffer } from "../../catalog/offers/lumber.js";
import { lengthsOf } from "../../catalog/offers/lumber.js";
import { FaultError } from "../faults.js";
import type { CutToLength } from "../need.js";
import type { InEither } from "../request/given.js";
import { type Cell, count, minus, number, type Operand, over, plus, roundUp, sum, times } from "../sheet/expression.js";
import type { CoveredFace, Edge } from "./covering-faces.js";
import {
  type CoveringWork,
  coverWidthOf,
  fastenerNeed,
  type LaidCovering,
  laySize,
  laySpread,
  partNeed,
  refuseLongLap,
  refuseNothing,
} from "./covering-work.js";
import { layStrips, layUp, MOST_STRIPS, type StripSizes } from "./panel-strips.js";

/** What a roof of boards takes. */
export interface BoardCells {
  readonly boards: Cell;
}

const SCREW: InEither = { "inch-pound": "3 in", metric: "75 mm" };
const STEP: InEither = { "inch-pound": "1 in", metric: "1 cm" };

/** Lays boards, ridge boards and screws. @param lumber - What the boards are cut from, where the catalog sells any. */
export function layBoardRoof(
  work: CoveringWork,
  lumber: LumberOffer | undefined,
): LaidCovering & { readonly boards: BoardCells } {
  const { sheet, name, row, surface, units } = work;
  const width = lumber
    ? sheet.catalog(`${name}.boardWidth`, lumber.actual.width, {
        label: "width of a board",
        display: units.small,
        source: lumber.label,
      })
    : laySize(
        work,
        "boardWidth",
        "width of a board",
        undefined,
        coverWidthOf(row, { "inch-pound": "9 in", metric: "225 mm" }),
      );
  const lap = laySpread(
    work,
    "sideLap",
    "lap of boards on their neighbours",
    row.sideLap ?? ["1 in", "1.5 in", "2 in"],
    row.from,
  );
  const endLap = laySpread(work, "endLap", "end lap of boards", row.endLap ?? ["2 in", "3 in", "4 in"], row.from);
  refuseNothing(work, [width]);
  refuseLongLap(sheet, lap, width);
  const coverWidth = sheet.lay(`${name}.coverWidth`, minus(width, lap), {
    label: "width that a board adds",
    display: units.small,
  });
  const cutStep = laySize(work, "cutStep", "boards are cut to whole", undefined, STEP);
  const longestSold = lumber && lengthsOf(lumber).at(-1);
  const longest = laySize(work, "longestPanel", "longest board", longestSold, { "inch-pound": "16 ft", metric: "5 m" });
  refuseLongLap(sheet, endLap, longest);
  const sizes: StripSizes = { coverWidth, cutStep, longest, endLap, reversible: true };
  const planes = surface.faces.map((face) => layStrips(work, face, layAcross(work, face, lap, coverWidth), sizes));
  const caps = layCaps(work, sizes);
  const all = [...planes.flatMap(({ cuts }) => cuts), ...caps];
  const boards = sheet.lay(`${name}.boards`, sum(all.map((cut) => cut.count)), {
    label: "boards, ridge and hips included",
  });
  const screws = layScrews(
    work,
    planes.map(({ layout }) => layout),
  );
  return {
    faces: planes.map(({ layout }) => layout),
    boards: { boards },
    needs: [
      partNeed(work, "board", boards, { cuts: all }),
      fastenerNeed(work, { fastener: "deck-screw", label: "Board screws", driven: screws, length: SCREW }),
    ],
    trimLength: sheet.lay(`${name}.trimLength`, capLength(surface.edges.ridge, surface.edges.hips), {
      label: "ridge and hips to fit",
      display: units.long,
    }),
  };
}

function layAcross({ sheet }: CoveringWork, face: CoveredFace, lap: Cell, coverWidth: Cell): Cell {
  const across = sheet.lay(`${face.prefix}.across`, roundUp(over(minus(face.eave, lap), coverWidth)), {
    label: "boards across one slope",
  });
  if (face.shape !== "hipped" || sheet.decide(across).lte(MOST_STRIPS)) return across;
  const wrong = `A hipped slope takes ${sheet.onTape(across)} boards; the limit is ${MOST_STRIPS}.`;
  const cure = "Give wider boards, or estimate a part of the roof.";
  throw new FaultError([{ code: "too-large", at: "/structure", wrong, cure }]);
}

/** Two boards along every ridge and hip. */
function layCaps(work: CoveringWork, sizes: StripSizes): CutToLength[] {
  const { sheet, name, surface } = work;
  return [...surface.edges.ridge, ...surface.edges.hips].map((edge, i) => {
    const cap = `${name}.cap${i + 1}`;
    const { up, length } = layUp(
      work,
      { up: `${cap}.up`, length: `${cap}.panelLength`, what: "cap board" },
      edge.length,
      sizes,
    );
    const pieces = sheet.lay(`${cap}.panels`, times(count(2 * edge.count), up), { label: "cap boards" });
    return { length, count: pieces };
  });
}

const capLength = (ridge: readonly Edge[], hips: readonly Edge[]): Operand =>
  sum([number("0 mm"), ...[...ridge, ...hips].map((edge) => times(count(edge.count), edge.length))]);

function layScrews(work: CoveringWork, layouts: LaidCovering["faces"]): Cell {
  const { sheet, name, row, roof } = work;
  const perRow = laySpread(work, "screwsPerRow", "screws a board and purlin row", row.fixing.each, row.fixing.from);
  const one = number("1");
  const all = layouts.map(({ face, across, strips }) =>
    strips
      ? times(
          count(face.alike),
          perRow,
          sum(strips.map(({ reach }) => plus(roundUp(over(reach, roof.purlinSpacing)), one))),
        )
      : times(count(face.alike), across as Cell, perRow, face.purlinRows),
  );
  return sheet.lay(`${name}.screws`, sum(all), { label: "screws through boards into purlins" });
}
