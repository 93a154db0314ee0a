/** What a panel roof takes, as needs that a price catalog can be asked for. */
import type { CoveringKind } from "../../catalog/coverings.js";
import type { Exposure } from "../../catalog/fasteners.js";
import type { CoveringPart, Need } from "../need.js";
import type { DisplayUnits } from "../quantity/display.js";
import type { Assumed } from "../request/assumed.js";
import type { Defaults, InEither } from "../request/given.js";
import { type Cell, number, plus, roundUp, times } from "../sheet/expression.js";
import type { Sheet } from "../sheet/sheet.js";
import { leastClass } from "./corrosion.js";
import type { PanelSizes } from "./covering-sizes.js";
import type { PanelCells } from "./panels.js";

interface NeedsInput {
  readonly kind: CoveringKind;
  readonly panels: PanelCells;
  readonly sizes: PanelSizes;
  readonly exposure: Exposure;
  readonly assumed: Assumed;
  readonly defaults: Defaults;
}

/** Into purlins of at least 1 1/2 in, and through two sheets: common practice. */
const ROOF_SCREW: InEither = { "inch-pound": "1 1/2 in", metric: "35 mm" };
const STITCH_SCREW: InEither = { "inch-pound": "7/8 in", metric: "22 mm" };

const WORDS: Readonly<Record<CoveringPart, string>> = {
  panel: "Roof panels",
  "ridge-cap": "Ridge cap",
  "eave-trim": "Eave trim",
  "rake-trim": "Rake trim",
  "eave-closure": "Closure strips, eave",
  "ridge-closure": "Closure strips, ridge",
  "lap-sealant": "Lap sealant",
  underlay: "Underlay",
};

/** Lays what is still missing (spare screws) and lists the needs; pieces are counted, sealant is a length. */
export function coveringNeeds(sheet: Sheet, input: NeedsInput, units: DisplayUnits): Need[] {
  const { kind, panels, sizes } = input;
  const part = (of: CoveringPart, quantity: Cell, pieceLength?: Cell): Need => ({
    name: `covering.${of}`,
    label: WORDS[of],
    item: { kind: "covering", covering: kind, part: of, ...(pieceLength ? { pieceLength } : {}) },
    quantity,
  });
  const { trims, closures, sealant } = panels;
  const trim = (of: "ridge-cap" | "eave-trim" | "rake-trim") => part(of, trims[of].pieces, trims[of].pieceLength);
  const closure = (of: "eave-closure" | "ridge-closure") =>
    closures ? [part(of, closures[of], sizes.closure[of])] : [];
  return [
    part("panel", panels.panels, panels.length),
    trim("ridge-cap"),
    trim("eave-trim"),
    trim("rake-trim"),
    ...closure("eave-closure"),
    ...closure("ridge-closure"),
    ...(sealant ? [part("lap-sealant", sealant)] : []),
    screws(sheet, input, units, "roof-screw", "Roof screws", panels.roofScrews, ROOF_SCREW),
    screws(sheet, input, units, "stitch-screw", "Stitch screws", panels.stitchScrews, STITCH_SCREW),
  ];
}

/** Screws are asked for by length alone: gauges differ from maker to maker. */
function screws(
  sheet: Sheet,
  { exposure, assumed, defaults }: NeedsInput,
  units: DisplayUnits,
  fastener: "roof-screw" | "stitch-screw",
  label: string,
  driven: Cell,
  usual: InEither,
): Need {
  const name = `covering.${fastener}`;
  const at = `/overrides/${name}.length`;
  const length = sheet.input(`${name}.length`, defaults.quantity(undefined, at, usual, "common practice"), {
    label: "length",
    display: units.small,
  });
  const quantity = sheet.lay(
    `${name}.order`,
    roundUp(times(driven, plus(number("1"), assumed.cell("fastener.spare")))),
    { label: `${label.toLowerCase()}, spares included` },
  );
  return { name, label, item: { kind: "fastener", fastener, length, corrosion: leastClass(exposure) }, quantity };
}
