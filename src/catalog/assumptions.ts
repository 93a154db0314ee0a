/**
 * Default assumptions: named numbers with low, likely and high, which the user may replace by name.
 *
 * They are starting points to be replaced by what one measures; `measure` says how. Where `source` names no publication
 * the figure is an assumption or common practice, and the answer says so. What depends on the kind of mill is in `mills.ts`.
 */
import type { SourceKey } from "./sources.js";

export interface Assumption {
  /** Name of its cell. */
  readonly name: string;
  /** Words for people. */
  readonly label: string;
  readonly low: string;
  readonly likely: string;
  readonly high: string;
  readonly source: SourceKey;
  /** Table or section of the source. */
  readonly part?: string;
  /** How to replace it by one's own figure. */
  readonly measure?: string;
}

type Row = readonly [name: string, label: string, low: string, likely: string, high: string];
type Group = {
  readonly source: SourceKey;
  readonly part?: string;
  readonly measure?: string;
  readonly rows: readonly Row[];
};

const GROUPS: readonly Group[] = [
  {
    source: "own-choice",
    measure: "Measure both ends of a few logs.",
    rows: [
      ["logs.taper", "taper of a log, where only one end is measured", "0.08 in/ft", "0.125 in/ft", "0.2 in/ft"],
      ["logs.someSweep", "sweep meant by “some”", "0.5 in", "1 in", "2 in"],
      ["logs.badSweep", "sweep meant by “bad”", "2 in", "3 in", "5 in"],
    ],
  },
  {
    source: "common-practice",
    measure: "Caliper ten rough pieces against their finished size.",
    rows: [
      ["allowance.thickness", "left on the thickness for dressing", "1/8 in", "1/4 in", "3/8 in"],
      ["allowance.width", "left on the width for dressing; crook needs it", "1/8 in", "1/4 in", "3/8 in"],
      ["allowance.length", "left on the length for trimming", "2 in", "3 in", "6 in"],
    ],
  },
  {
    source: "pnw-gtr-544",
    part: "board thickness variation of six mills; the low figure is the industry's aim",
    measure: "Caliper one board every foot: largest less smallest.",
    rows: [["allowance.variation", "sawing variation", "0.03 in", "0.055 in", "0.12 in"]],
  },
  {
    source: "own-choice",
    measure: "A moisture meter, after drying.",
    rows: [["moisture.target", "moisture at which dried pieces are dressed", "12 %", "15 %", "19 %"]],
  },
  {
    source: "own-choice",
    measure: "Count rejects among the first fifty pieces.",
    rows: [["fallDown.share", "sawn pieces rejected for shake, knots or twist", "5 %", "12 %", "25 %"]],
  },
  {
    source: "own-choice",
    measure: "Time three logs from where they lie to where they are sawn.",
    rows: [
      ["rate.getOut", "get a log out to the mill, a log", "0.3 person-h", "0.75 person-h", "2 person-h"],
      ["rate.prepareLog", "scrape bark, clear rot and stones, a log", "0.15 person-h", "0.3 person-h", "0.75 person-h"],
    ],
  },
  {
    source: "common-practice",
    measure: "Time ten cuts without the sawing itself.",
    rows: [["rate.cutHandling", "lift off a slab and reset, a cut by the mill", "0.5 min", "1.5 min", "4 min"]],
  },
  {
    source: "common-practice",
    part: "table-saw hand feed, 1 to 2 in stock",
    measure: "Time one long rip cut.",
    rows: [
      ["rate.ripFeed", "feed of a rip cut", "6 ft/min", "12 ft/min", "25 ft/min"],
      ["rate.ripHandling", "handling of a rip cut", "0.3 person-min", "0.7 person-min", "1.5 person-min"],
      ["rate.crosscut", "a crosscut, measuring included", "0.5 person-min", "1 person-min", "2 person-min"],
    ],
  },
  {
    source: "common-practice",
    part: "mills of the yard: first straight cut of a bolt, turning, sharpening",
    measure: "Time three bolts before the first board comes off.",
    rows: [
      ["saw.dirtDulling", "cutting edges dull sooner in dirty bark, times", "1.3", "2", "3"],
      ["sharpen.chain", "file and joint a chain on the saw, each time", "0.2 person-h", "0.3 person-h", "0.5 person-h"],
      ["sharpen.band", "change a band, each time", "0.1 person-h", "0.2 person-h", "0.4 person-h"],
      ["sand.perDisc", "sanded before a disc is worn", "15 ft2", "25 ft2", "40 ft2"],
      ["dress.perKnives", "planed before knives are sharpened", "1500 ft2", "3000 ft2", "6000 ft2"],
    ],
  },
  {
    source: "niosh-lifting",
    part: "load constant, 51 lb for one person",
    measure: "Weigh what you are ready to carry all day.",
    rows: [["carry.load", "load that one person carries", "30 lb", "51 lb", "51 lb"]],
  },
  {
    source: "own-choice",
    measure: "Pace it out and time five walks.",
    rows: [
      ["carry.distance", "from the mill to the stack", "50 ft", "100 ft", "300 ft"],
      ["carry.pace", "walking pace, loaded one way", "100 ft/min", "150 ft/min", "200 ft/min"],
      ["carry.handling", "pick up and put down, a load", "0.5 person-min", "1 person-min", "2 person-min"],
      ["rate.stack", "stack on stickers, a piece", "0.5 person-min", "1 person-min", "2 person-min"],
      ["rate.slabs", "clear slabs and sawdust away", "0.5 person-min/ft3", "1 person-min/ft3", "3 person-min/ft3"],
    ],
  },
  {
    source: "common-practice",
    part: "hand feed of jointer, table saw and portable planer",
    measure: "Time ten pieces through the machine, waiting included.",
    rows: [
      ["dress.jointFeed", "feed at the jointer", "8 ft/min", "12 ft/min", "20 ft/min"],
      ["dress.jointPasses", "jointer passes, face and edge together", "2", "4", "6"],
      ["dress.ripFeed", "feed when ripping to width", "6 ft/min", "12 ft/min", "25 ft/min"],
      ["dress.planeFeed", "feed at the planer", "16 ft/min", "22 ft/min", "26 ft/min"],
      ["dress.planePasses", "planer passes, all faces together", "3", "5", "8"],
      [
        "dress.handling",
        "set-up and handling at all machines, a piece",
        "2 person-min",
        "4 person-min",
        "8 person-min",
      ],
    ],
  },
  {
    source: "own-choice",
    measure: "Time one timber by hand: its faces in square feet over the hours.",
    rows: [
      ["dress.handRate", "dressing by hand-held tools", "8 ft2/person-h", "15 ft2/person-h", "30 ft2/person-h"],
      ["dress.heaviest", "heaviest piece that goes over the machines", "60 lb", "100 lb", "150 lb"],
      ["dress.widest", "widest piece that the planer takes", "12 in", "12.5 in", "13 in"],
      ["dress.thickest", "thickest piece that the planer takes", "6 in", "6 in", "8 in"],
    ],
  },
  {
    source: "common-practice",
    part: "5 or 6 in orbital, flat faces, one grit",
    measure: "Sand one board and measure it.",
    rows: [
      [
        "rate.sand",
        "sanding and easing edges of dressed faces",
        "25 ft2/person-h",
        "45 ft2/person-h",
        "80 ft2/person-h",
      ],
      ["sand.boughtShare", "sanding that bought dressed lumber needs, of the same", "20 %", "40 %", "70 %"],
    ],
  },
  {
    source: "common-practice",
    part: "brush, boards and small sections",
    measure: "Brush one side of ten pieces.",
    rows: [
      [
        "rate.finishRough",
        "brushing finish on rough-sawn faces",
        "60 ft2/person-h",
        "100 ft2/person-h",
        "160 ft2/person-h",
      ],
      [
        "rate.finishSmooth",
        "brushing finish on smooth faces",
        "100 ft2/person-h",
        "150 ft2/person-h",
        "220 ft2/person-h",
      ],
    ],
  },
  {
    source: "own-choice",
    measure: "Time three joints of the kind, layout included.",
    rows: [
      ["joint.post-top", "cut a post top for its beam", "0.4 person-h", "0.75 person-h", "1.5 person-h"],
      ["joint.splice", "cut one piece's share of the splices in a run", "0.2 person-h", "0.4 person-h", "0.8 person-h"],
      ["joint.lap", "cut both ends of a tie", "0.4 person-h", "0.8 person-h", "1.6 person-h"],
      ["joint.birdsmouth", "plumb cuts and birdsmouth of one rafter", "0.15 person-h", "0.25 person-h", "0.5 person-h"],
      ["joint.ridge-cut", "plumb cuts of one rafter", "0.1 person-h", "0.15 person-h", "0.3 person-h"],
      ["joint.brace", "both ends of a brace", "0.3 person-h", "0.6 person-h", "1.2 person-h"],
      ["joint.crossing", "cut one purlin or board to length", "0.03 person-h", "0.05 person-h", "0.1 person-h"],
      ["joint.face", "cut one fascia or facing piece to fit", "0.1 person-h", "0.2 person-h", "0.4 person-h"],
      ["joint.none", "cut one piece to length", "0.03 person-h", "0.05 person-h", "0.1 person-h"],
      [
        "rate.trialAssemble",
        "fit and mark on the ground, a jointed piece",
        "0.1 person-h",
        "0.25 person-h",
        "0.5 person-h",
      ],
    ],
  },
  {
    source: "common-practice",
    part: "heavy timber without its joints",
    measure: "Hours of a raising day times the people, over the board feet raised.",
    rows: [
      ["raise.timber", "raise posts, beams, ties and braces", "15 person-h/mbf", "30 person-h/mbf", "60 person-h/mbf"],
    ],
  },
  {
    source: "common-practice",
    part: "light rafters; board roof sheathing",
    rows: [
      ["raise.rafters", "set ridge and rafters", "20 person-h/mbf", "30 person-h/mbf", "45 person-h/mbf"],
      ["raise.purlins", "lay purlins or boards", "12 person-h/mbf", "18 person-h/mbf", "26 person-h/mbf"],
      ["raise.other", "fit other pieces", "20 person-h/mbf", "30 person-h/mbf", "45 person-h/mbf"],
    ],
  },
  {
    source: "common-practice",
    part: "ribbed steel panels",
    rows: [
      [
        "rate.roof-ribbed-steel",
        "lay ribbed steel panels",
        "1.2 person-h/square",
        "2 person-h/square",
        "3.5 person-h/square",
      ],
    ],
  },
  {
    source: "common-practice",
    part: "lapped steel panels",
    rows: [
      ["covering.ridgeGap", "sheets stop short of the ridge's centre, level", "0.5 in", "1 in", "2 in"],
      ["covering.trimLap", "lap of trim pieces", "2 in", "4 in", "6 in"],
      ["covering.trimScrews", "screws along a trim, apart", "12 in", "18 in", "24 in"],
      ["covering.sealantWaste", "lap sealant cut off or laid anew, added", "3 %", "5 %", "10 %"],
    ],
  },
  {
    source: "common-practice",
    part: "rafter ends and crossings as in table R602.3(1) of the International Residential Code; steel by usual bases",
    rows: [
      ["fastener.rafterPlate", "toenails or toe screws, a rafter at its plate", "3", "3", "4"],
      ["fastener.rafterRidge", "toenails or toe screws, a rafter at the ridge", "3", "3", "4"],
      ["fastener.crossing", "screws or nails, a purlin or board at a support", "2", "2", "3"],
      ["fastener.face", "screws or nails, a fascia at its backing", "2", "2", "3"],
      ["fastener.faceEvery", "backing of a fascia, apart", "16 in", "24 in", "24 in"],
      ["fastener.tieNails", "nails in a rafter tie", "8", "10", "12"],
      ["fastener.plate", "steel of a post base, one side", "0.1 in", "0.125 in", "0.25 in"],
      ["fastener.anchorDepth", "depth of an anchor in concrete, as for sills (R403.1.6)", "7 in", "7 in", "10 in"],
    ],
  },
  {
    source: "own-choice",
    part: "no statement that it carries the load",
    rows: [
      ["fastener.baseBolts", "bolts through a post and its base", "1", "2", "2"],
      ["fastener.postTopBolts", "bolts through a post top and its beam", "1", "2", "2"],
      ["fastener.spliceBolts", "bolts in the splice of a timber", "2", "2", "4"],
      ["fastener.lightSplice", "screws or nails in the splice of a plank", "6", "8", "12"],
      ["fastener.lapBolts", "bolts at one end of a tie", "1", "2", "2"],
      ["fastener.braceScrews", "screws at one end of a brace", "2", "2", "3"],
    ],
  },
  {
    source: "own-choice",
    rows: [
      ["rate.trim", "fit fascia and metal trim", "0.02 person-h/ft", "0.04 person-h/ft", "0.08 person-h/ft"],
      ["buy.fetch", "fetch a load of lumber, or receive a delivery", "1 person-h", "2 person-h", "4 person-h"],
      ["buy.sort", "sort and stack bought lumber, a stock length", "0.5 person-min", "1 person-min", "2 person-min"],
      ["buy.endTrim", "cut off a stock length to square it, both ends together", "0 in", "0 in", "1 in"],
      ["buy.wastage", "bought stock lengths set aside for crook and splits", "3 %", "7 %", "15 %"],
      ["finish.waste", "finish lost in brush and can", "5 %", "8 %", "15 %"],
      ["finish.jointShare", "faces hidden where pieces meet", "0 %", "3 %", "6 %"],
      ["finish.endSealerCoverage", "coverage of end sealer", "75 ft2/gal", "100 ft2/gal", "150 ft2/gal"],
      ["fastener.spare", "fasteners lost, bent or left over, added", "3 %", "5 %", "10 %"],
      ["pace", "pace of all hand work: 1 is a steady amateur, more is slower", "0.8", "1", "1.6"],
      ["priceLevel", "level of all prices against the catalog", "0.95", "1", "1.1"],
    ],
  },
];

export const ASSUMPTIONS: readonly Assumption[] = GROUPS.flatMap(({ rows, source, part, measure }) =>
  rows.map(([name, label, low, likely, high]) => ({
    name,
    label,
    low,
    likely,
    high,
    source,
    ...(part === undefined ? {} : { part }),
    ...(measure === undefined ? {} : { measure }),
  })),
);

const BY_NAME = new Map(ASSUMPTIONS.map((assumption) => [assumption.name, assumption]));

export const assumptionOf = (name: string): Assumption | undefined => BY_NAME.get(name);
