/** How one measures what stands in a cell with a range: any assumption, whichever table it comes from. */
import { assumptionOf } from "./assumptions.js";
import { MILL_MEASURES } from "./mills.js";

/** Of coverings and finishes, by the last part of the cell's name: their figures stand in tables of their own. */
const BY_LAST_PART: Readonly<Record<string, string>> = {
  drip: "Hold a straightedge to a roof's eave and measure level from the fascia to the edge.",
  endLap: "Measure one lap on a roof, or read it off the maker's sheet.",
  sideLap: "Measure one lap on a roof, or read it off the maker's sheet.",
  screwsPerRow: "Count the screws of one piece in one row, or read it off the maker's sheet.",
  endRowFactor: "Count the screws of an eave row over those of a row in the field.",
  nailsEach: "Count the nails in one piece, or read it off the wrapper.",
  nailsApart: "Measure ten spaces along a lap; take a tenth.",
  clipsApart: "Measure ten spaces along a seam; take a tenth.",
  weightPerArea: "Weigh one piece and divide by the face that it covers.",
  life: "Ask owners near you when they laid such a roof, and when they laid it anew.",
  roughCoverage: "Brush one can of it on rough boards and measure the faces.",
  smoothCoverage: "Brush one can of it on planed boards and measure the faces.",
  secondCoat: "Brush the second coat of the same boards: the faces of a can, over those of the first coat.",
  recoatYears: "Note the years in which you coat the same wall.",
  betweenCoats: "Read it off the can; wait until it no longer sticks to a finger.",
};

/** A sentence; undefined where the cell is no assumption. A hired sawyer's figures are measured as those of a mill. */
export function measureOf(name: string): string | undefined {
  const own = assumptionOf(name)?.measure ?? MILL_MEASURES[name.replace(/^sawyer\./, "mill.")];
  if (own || !/^(coverings?|finish)\./.test(name)) return own;
  return BY_LAST_PART[name.split(".").at(-1) as string];
}
