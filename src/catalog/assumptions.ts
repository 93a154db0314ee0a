/**
 * Default assumptions: named numbers with low, likely and high, which the user may replace by name.
 *
 * They are starting points to be replaced by what one measures; `measure` says how. Where `source` names no publication
 * the figure is an assumption or common practice, and the answer says so. What depends on the kind of mill is in `mills.ts`.
 */
import type { SourceKey } from "./sources.js";
import { dryingTime, SPECIES } from "./species.js";
import type { Species } from "./species-table.js";

/** A named number that the user may replace: low, likely and high in one unit, and where it comes from. */
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
  readonly measure: string;
}

type Row = readonly [name: string, label: string, low: string, likely: string, high: string];
type Group = {
  readonly source: SourceKey;
  readonly part?: string;
  readonly measure: string;
  readonly rows: readonly Row[];
};

const squareRate = (kind: string, label: string, low: string, likely: string, high: string): Row => [
  `rate.roof-${kind}`,
  label,
  `${low} person-h/square`,
  `${likely} person-h/square`,
  `${high} person-h/square`,
];

/** Days in the stack, from piling in good weather to piling in autumn; the likely ones lie half way. */
const dryingRow = (species: Species): Row => {
  const { good, winter } = dryingTime(species);
  const [short, long] = [good.value, winter.value];
  const days = [short, short.plus(long).dividedBy(2), long].map((of) => `${of.toFixed()} day`);
  const label = `${species.name} of 1 in (25 mm) to about 20 %, air-dried`;
  return [`drying.${species.id}`, label, ...(days as [string, string, string])];
};

const drying = {
  source: "fpl-air-drying",
  measure:
    "Weigh a sample board of 1 in weekly until it loses no more; count the days from the stack. A moisture meter tells the 20 %.",
} as const;

const isPublished = (species: Species): boolean => !dryingTime(species).fallback;

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
    part: "the way back included",
    measure:
      "Pace out the way, time five logs of known weight: minutes to rig, then distance over minutes; count who is at it.",
    rows: [
      ["getOut.distance", "from where a log lies to the mill", "50 ft", "150 ft", "500 ft"],
      ["getOut.hand.people", "people at a log that is rolled", "1 people", "2 people", "3 people"],
      ["getOut.hand.rig", "lever a log free, by hand", "10 person-min", "20 person-min", "40 person-min"],
      ["getOut.hand.pace", "rolling a log by hand", "4 ft/min", "10 ft/min", "20 ft/min"],
      ["getOut.hand.load", "log that is rolled by hand at that pace", "300 lb", "500 lb", "800 lb"],
      ["getOut.cart.people", "people at a log on an arch or cart", "1 people", "2 people", "3 people"],
      ["getOut.cart.rig", "lift a log's end on an arch or cart", "8 person-min", "15 person-min", "30 person-min"],
      ["getOut.cart.pace", "pulling a log on an arch or cart", "30 ft/min", "60 ft/min", "120 ft/min"],
      ["getOut.cart.load", "log that is pulled on it at that pace", "400 lb", "600 lb", "1000 lb"],
      ["getOut.winch.people", "people at a winch: one winds, one watches", "1 people", "2 people", "2 people"],
      ["getOut.winch.rig", "choke a log and rig the winch", "12 person-min", "25 person-min", "60 person-min"],
      ["getOut.winch.pace", "winching a log", "8 ft/min", "15 ft/min", "40 ft/min"],
      ["getOut.winch.load", "log that is winched at that pace", "800 lb", "1500 lb", "3000 lb"],
      ["getOut.tractor.people", "people at a tractor that drags a log", "1 people", "1 people", "2 people"],
      ["getOut.tractor.rig", "choke a log behind a tractor", "5 person-min", "10 person-min", "20 person-min"],
      ["getOut.tractor.pace", "dragging a log with a tractor", "80 ft/min", "150 ft/min", "300 ft/min"],
      ["getOut.tractor.load", "log that is dragged at that pace", "1000 lb", "2000 lb", "4000 lb"],
    ],
  },
  {
    source: "own-choice",
    part: "0.3 h (0.15 to 0.75) for a log of 14 in and 13 ft, which has 50 ft² of bark; half as much again where it is dirty",
    measure: "Time three logs from their arrival at the mill to ready for it, over their girth times their length.",
    rows: [
      [
        "rate.prepareLog",
        "scrape bark, clear rot and stones, by the face of the bark",
        "0.18 person-min/ft2",
        "0.36 person-min/ft2",
        "0.9 person-min/ft2",
      ],
      [
        "rate.prepareDirty",
        "the same, more for a dirty log",
        "0.06 person-min/ft2",
        "0.18 person-min/ft2",
        "0.6 person-min/ft2",
      ],
    ],
  },
  {
    source: "own-choice",
    measure: "Time the slabs of one log off the mill, over the log's weight.",
    rows: [
      [
        "saw.lift",
        "lift off what is sawn, by weight",
        "0.002 person-min/lb",
        "0.005 person-min/lb",
        "0.015 person-min/lb",
      ],
    ],
  },
  {
    source: "own-choice",
    part: "cutting takes effort as the wood is dense; the published rates are for softwood",
    measure: "Saw one cut in each wood; divide the minutes for a square foot.",
    rows: [["saw.softwood", "density, dry, up to which the rates hold", "28 lb/ft3", "32 lb/ft3", "36 lb/ft3"]],
  },
  {
    source: "common-practice",
    part: "table-saw hand feed, 1 to 2 in stock",
    measure: "Time one long rip cut; time ten cuts, handling included.",
    rows: [
      ["rate.ripFeed", "feed of a rip cut", "6 ft/min", "12 ft/min", "25 ft/min"],
      ["rate.ripHandling", "handling of a rip cut", "0.3 person-min", "0.7 person-min", "1.5 person-min"],
      ["rate.crosscut", "a crosscut, measuring included", "0.5 person-min", "1 person-min", "2 person-min"],
    ],
  },
  {
    source: "own-choice",
    part: "where one bought piece is ripped into several that are wanted dressed",
    measure: "Plane a ripped face until the saw marks are gone, and caliper it before and after.",
    rows: [["rip.planed", "planed off a ripped face", "1/64 in", "1/32 in", "1/16 in"]],
  },
  {
    source: "own-choice",
    part: "7 1/4 in hand-held circular saw",
    measure: "Time three end cuts through a timber that must be turned.",
    rows: [
      ["cut.depth", "depth of cut of the circular saw", "2.25 in", "2.5 in", "3.5 in"],
      [
        "cut.turn",
        "turn the piece, square round and meet the kerf",
        "0.3 person-min",
        "0.75 person-min",
        "2 person-min",
      ],
    ],
  },
  {
    source: "common-practice",
    part: "touch-up and wear of chains, bands and circular blades",
    measure: "Count files, wheels and blades over a season; time three sharpenings.",
    rows: [
      ["saw.dirtDulling", "cutting edges dull sooner in dirty bark, times", "1.3", "2", "3"],
      ["saw.bladesLost", "chains, bands or sets of tips lost to metal, a salvaged log", "0", "0.03", "0.15"],
      ["sharpen.chain", "file and joint a chain on the saw, each time", "0.2 person-h", "0.3 person-h", "0.5 person-h"],
      ["sharpen.change", "swap a chain for a sharpened one", "3 person-min", "6 person-min", "10 person-min"],
      ["sharpen.band", "change a band, each time", "0.1 person-h", "0.2 person-h", "0.4 person-h"],
      [
        "sharpen.bandGrind",
        "grind and set a band while another one cuts, and change it",
        "0.4 person-h",
        "0.75 person-h",
        "1.5 person-h",
      ],
      [
        "sharpen.circular",
        "grind the tips of a circular blade on the mill",
        "0.1 person-h",
        "0.2 person-h",
        "0.5 person-h",
      ],
      ["sharpen.circularChange", "change a circular blade", "0.1 person-h", "0.15 person-h", "0.3 person-h"],
      ["sharpen.perFile", "sharpenings by one file", "3", "6", "10"],
      ["sharpen.perWheel", "sharpenings by one grinding wheel", "10", "25", "60"],
      ["saw.twoStroke", "two-stroke oil in the fuel of a chainsaw", "2 %", "2 %", "2.5 %"],
    ],
  },
  {
    source: "common-practice",
    part: "wear in the shop",
    measure: "Count discs and knives over one job; read the meter before and after a day of dressing.",
    rows: [
      ["sand.perDisc", "sanded before a disc is worn", "15 ft2", "25 ft2", "40 ft2"],
      ["dress.perKnives", "planed before knives are sharpened", "1500 ft2", "3000 ft2", "6000 ft2"],
      ["dress.knifeLife", "sharpenings before knives are worn out", "5", "8", "12"],
      ["shop.power", "drawn by machines and dust extraction, mean of an hour at them", "0.5 kW", "1 kW", "2 kW"],
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
    measure: "Pace it out and time five walks, there and back; time ten loads up and down.",
    rows: [
      ["carry.distance", "from the mill to the stack", "50 ft", "100 ft", "300 ft"],
      ["carry.pace", "walking pace, mean of loaded and empty", "100 ft/min", "150 ft/min", "200 ft/min"],
      ["carry.handling", "pick up and put down, a load", "0.5 person-min", "1 person-min", "2 person-min"],
      ["cart.load", "load of a cart", "150 lb", "250 lb", "400 lb"],
      ["cart.pace", "pushing a cart, mean of loaded and empty", "80 ft/min", "120 ft/min", "180 ft/min"],
      ["cart.handling", "load and unload a cart", "2 person-min", "4 person-min", "8 person-min"],
      ["winch.load", "load of a sled behind a winch", "400 lb", "800 lb", "1500 lb"],
      ["winch.pace", "winching a sled, mean of loaded and empty", "15 ft/min", "30 ft/min", "60 ft/min"],
      ["winch.handling", "load, rig and unload a sled", "8 person-min", "15 person-min", "30 person-min"],
      ["tractor.load", "load of a trailer or forks", "600 lb", "1200 lb", "2500 lb"],
      ["tractor.pace", "driving in the yard, mean of loaded and empty", "150 ft/min", "250 ft/min", "400 ft/min"],
      ["tractor.handling", "load and unload a trailer", "8 person-min", "15 person-min", "30 person-min"],
    ],
  },
  {
    source: "own-choice",
    part: "a winch that is wound by hand burns none",
    measure: "Fill the tank, haul for a day, fill it again; divide by the hours at work, rigging and loading included.",
    rows: [
      ["winch.fuel", "fuel of a winch, an hour at work with it", "0 L/h", "0 L/h", "1 L/h"],
      ["tractor.fuel", "fuel of a tractor, an hour at work with it", "1.5 L/h", "3 L/h", "6 L/h"],
    ],
  },
  {
    source: "own-choice",
    measure: "Take the way to the yard and back, over what the car does on a gallon or litre with the trailer.",
    rows: [["buy.fetchFuel", "fuel for one trip to the yard and back", "0.5 gal", "1.5 gal", "4 gal"]],
  },
  {
    source: "own-choice",
    measure: "Time twenty pieces and their stickers onto the stack; time one barrow of slabs and its feet.",
    rows: [
      ["rate.stack", "stack, a piece", "0.5 person-min", "1 person-min", "2 person-min"],
      ["rate.sticker", "rip a sticker from a slab and lay it", "0.2 person-min", "0.5 person-min", "1 person-min"],
      ["stack.stickersApart", "between stickers", "12 in", "20 in", "24 in"],
      ["stack.width", "width of the stack", "3 ft", "4 ft", "5 ft"],
      ["rate.slabs", "clear slabs and sawdust away", "0.5 person-min/ft3", "1 person-min/ft3", "3 person-min/ft3"],
    ],
  },
  {
    source: "fpl-air-drying",
    part: "2 in stock takes two to four times as long",
    measure: "Weigh a sample board weekly, until it loses no more.",
    rows: [["drying.twoInch", "drying of stock of 2 in (51 mm), times that of 1 in (25 mm)", "2", "2.5", "4"]],
  },
  { ...drying, rows: SPECIES.filter(isPublished).map(dryingRow) },
  {
    ...drying,
    part: "of a wood that dries alike, or the widest range, since none is published for this one",
    rows: SPECIES.filter((species) => !isPublished(species)).map(dryingRow),
  },
  {
    source: "common-practice",
    part: "hand feed of jointer, table saw and planer",
    measure: "Time ten pieces through the machine, waiting included.",
    rows: [
      ["dress.jointFeed", "feed at the jointer", "8 ft/min", "12 ft/min", "20 ft/min"],
      ["dress.jointPasses", "jointer passes, face and edge together", "2", "4", "6"],
      ["dress.ripFeed", "feed when ripping to width", "6 ft/min", "12 ft/min", "25 ft/min"],
      ["dress.planeFeed", "feed at the planer", "16 ft/min", "22 ft/min", "26 ft/min"],
      ["dress.edgePasses", "planer passes on edges", "1", "2", "3"],
      ["dress.cutDepth", "planed off in a pass", "1/32 in", "3/32 in", "1/8 in"],
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
    measure: "Time one timber by hand: its faces in square feet over the hours; time one long rip along a guide.",
    rows: [
      ["dress.handRate", "dressing by hand-held tools", "8 ft2/person-h", "15 ft2/person-h", "30 ft2/person-h"],
      ["dress.handRipFeed", "feed of a rip by a hand-held circular saw on a guide", "2 ft/min", "4 ft/min", "8 ft/min"],
      ["rate.guide", "lay and clamp a guide for a rip cut", "1 person-min", "2 person-min", "5 person-min"],
    ],
  },
  {
    source: "own-choice",
    measure: "Measure the room in line with the machine, half of it behind; take twice the shorter half.",
    rows: [
      ["dress.heaviest", "heaviest piece that goes over the machines", "60 lb", "100 lb", "150 lb"],
      ["dress.widest", "widest piece that the planer takes", "12 in", "12.5 in", "13 in"],
      ["dress.jointerWidest", "widest piece that the jointer takes", "6 in", "8 in", "12 in"],
      ["dress.thickest", "thickest piece that the planer takes", "6 in", "6 in", "8 in"],
      ["dress.longest", "longest piece that the shop has room to feed", "12 ft", "20 ft", "30 ft"],
      ["dress.deepestRip", "deepest rip of the table saw", "2 in", "3.125 in", "3.5 in"],
    ],
  },
  {
    source: "common-practice",
    part: "5 or 6 in orbital, flat faces, one grit",
    measure: "Sand one board and measure it.",
    rows: [
      ["rate.sand", "sanding dressed faces", "25 ft2/person-h", "45 ft2/person-h", "80 ft2/person-h"],
      ["sand.boughtShare", "sanding that bought dressed lumber needs, of the same", "20 %", "40 %", "70 %"],
    ],
  },
  {
    source: "own-choice",
    measure: "Ease the edges of three pieces; for bought lumber, dress three pieces that came rough.",
    rows: [
      ["rate.ease", "easing edges by router or block plane", "200 ft/person-h", "450 ft/person-h", "900 ft/person-h"],
      ["dress.boughtShare", "dressing that lumber bought rough needs, of the same", "30 %", "60 %", "100 %"],
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
    source: "common-practice",
    part: "one feeds and one takes off; one tool to a pair of hands; one to each end of a load, two loads at a time",
    measure: "Count the machines, the tools and the places at which somebody would not wait for another.",
    rows: [
      ["room.machine", "people at saw, jointer and planer at once", "1 people", "2 people", "3 people"],
      ["room.tools", "people with hand-held tools at once: sanding, joints, trim", "1 people", "2 people", "4 people"],
      ["room.yard", "people who prepare logs, carry, stack and clear at once", "2 people", "4 people", "6 people"],
      ["room.ground", "people who dig, pour, brush or fit on the ground at once", "2 people", "4 people", "6 people"],
      ["room.raise", "people at one frame while it is raised", "4 people", "6 people", "10 people"],
      ["room.aloft", "people on rafters, roof and walls at once", "2 people", "4 people", "6 people"],
    ],
  },
  {
    source: "own-choice",
    measure: "Brush the second coat of the same ten pieces.",
    rows: [["finish.laterCoat", "time of a later coat, of the first", "60 %", "80 %", "100 %"]],
  },
  {
    source: "own-choice",
    measure: "Time three joints of the kind, layout included.",
    rows: [
      ["joint.post-top", "cut a post top for its beam", "0.4 person-h", "0.75 person-h", "1.5 person-h"],
      ["joint.splice", "cut one piece's share of the splices in a run", "0.2 person-h", "0.4 person-h", "0.8 person-h"],
      ["joint.lap", "cut both ends of a tie", "0.4 person-h", "0.8 person-h", "1.6 person-h"],
      [
        "joint.mortise",
        "cut, fit and peg the mortises and tenons of one piece",
        "0.8 person-h",
        "1.5 person-h",
        "3 person-h",
      ],
      ["joint.plain-bolt", "bore one piece for its bolts, both ends", "0.1 person-h", "0.2 person-h", "0.4 person-h"],
      ["joint.birdsmouth", "plumb cuts and birdsmouth of one rafter", "0.15 person-h", "0.25 person-h", "0.5 person-h"],
      ["joint.two-seats", "ends and two seats of one rafter", "0.15 person-h", "0.3 person-h", "0.6 person-h"],
      [
        "joint.level-seats",
        "square ends and marks of one level rafter",
        "0.05 person-h",
        "0.1 person-h",
        "0.2 person-h",
      ],
      ["joint.hung", "birdsmouth and plumb end of one rafter, hung", "0.2 person-h", "0.35 person-h", "0.7 person-h"],
      ["joint.lap-and-hang", "one lap and one hung end of a tie", "0.3 person-h", "0.6 person-h", "1.2 person-h"],
      ["joint.ledger", "fit one piece of a ledger to its wall", "0.3 person-h", "0.6 person-h", "1.2 person-h"],
      ["joint.joist", "ends of one joist", "0.05 person-h", "0.1 person-h", "0.2 person-h"],
      ["joint.bearer", "splice and post seats of one floor bearer", "0.3 person-h", "0.6 person-h", "1.2 person-h"],
      ["joint.king-post", "both ends of a king post", "0.25 person-h", "0.5 person-h", "1 person-h"],
      ["joint.ridge-cut", "plumb cuts of one rafter", "0.1 person-h", "0.15 person-h", "0.3 person-h"],
      ["joint.brace", "both ends of a brace", "0.25 person-h", "0.5 person-h", "1 person-h"],
      ["joint.crossing", "cut one purlin or board to length", "0.03 person-h", "0.05 person-h", "0.1 person-h"],
      ["joint.face", "cut one fascia or facing piece to fit", "0.1 person-h", "0.2 person-h", "0.4 person-h"],
      ["joint.ends", "fit one rail or stud between its ends", "0.1 person-h", "0.2 person-h", "0.4 person-h"],
      ["joint.none", "cut one piece to length", "0.03 person-h", "0.05 person-h", "0.1 person-h"],
      [
        "rate.trialAssemble",
        "fit and mark on the ground, a jointed piece",
        "0.1 person-h",
        "0.2 person-h",
        "0.4 person-h",
      ],
      ["rate.dismantle", "take apart again, a jointed piece", "0.03 person-h", "0.08 person-h", "0.2 person-h"],
    ],
  },
  {
    source: "own-choice",
    part: "the joint rates hold for softwood; sawing and paring take longer as the wood is dense, layout and fitting do not",
    measure: "Time one joint of a kind in two woods, its layout apart.",
    rows: [["joint.byHardness", "share of cutting a joint that goes by how hard the wood is", "30 %", "50 %", "70 %"]],
  },
  {
    source: "own-choice",
    measure: "Time the braces of one post, up and down.",
    rows: [
      ["rate.brace", "temporary braces of a post, up and down again", "0.15 person-h", "0.3 person-h", "0.6 person-h"],
    ],
  },
  {
    source: "own-choice",
    measure: "Pace out the way from the shop to the site.",
    rows: [["move.distance", "from the shop to where it stands", "30 ft", "80 ft", "300 ft"]],
  },
  {
    source: "own-choice",
    measure: "Time the last day on the site, over the board feet that stand there.",
    rows: [
      ["rate.cleanUp", "clean up the site, by the wood used", "1 person-h/mbf", "2.5 person-h/mbf", "6 person-h/mbf"],
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
    source: "own-choice",
    part: "the rates hold for wood as dense as softwood; lifting takes longer as a piece is heavier, fixing it does not",
    measure: "Time two pieces of one size in two woods, and weigh them.",
    rows: [["raise.byWeight", "share of raising that goes by the weight", "20 %", "50 %", "80 %"]],
  },
  {
    source: "common-practice",
    part: "light rafters; board roof sheathing; low ends of rafters and other pieces by practised crews: joists of an estimating textbook (chapter 12), wall studs of a trade article",
    measure: "Hours times the people, over the board feet fixed.",
    rows: [
      ["raise.rafters", "set ridge and rafters", "12 person-h/mbf", "30 person-h/mbf", "45 person-h/mbf"],
      ["raise.purlins", "lay purlins or boards", "12 person-h/mbf", "18 person-h/mbf", "26 person-h/mbf"],
      ["raise.other", "fit other pieces", "12 person-h/mbf", "30 person-h/mbf", "45 person-h/mbf"],
    ],
  },
  {
    source: "common-practice",
    part: "roofs without openings, laid by people who are new to it at the high end",
    measure: "Hours times the people for one slope, over its squares of 100 ft².",
    rows: [
      squareRate("ribbed-steel", "lay ribbed steel panels", "1.2", "2", "4"),
      squareRate("corrugated-steel", "lay corrugated sheets", "1.3", "2.2", "4"),
      squareRate("standing-seam-steel", "lay standing-seam panels", "2.5", "4", "7"),
      squareRate("polycarbonate", "lay polycarbonate sheets", "1.3", "2.2", "4"),
      squareRate("asphalt-shingles", "lay asphalt strip shingles", "1.2", "2", "4"),
      squareRate("wood-shingles", "lay wood shingles", "3", "4.5", "8"),
      squareRate("wood-shakes", "lay wood shakes with their felt", "2.5", "4", "7"),
      squareRate("tile", "lay tile on battens", "3.5", "5.5", "9"),
      squareRate("mineral-roll", "lay mineral-surfaced roll", "0.7", "1.2", "2"),
      squareRate("membrane", "lay a glued membrane", "1.5", "2.5", "5"),
      squareRate("boards", "lay roof boards, each second one over the joints", "2", "3.5", "6"),
      [
        "rate.underlay",
        "roll out and fix underlay, a layer",
        "0.2 person-h/square",
        "0.35 person-h/square",
        "0.7 person-h/square",
      ],
      [
        "rate.deckSheets",
        "lay and nail deck sheets",
        "0.8 person-h/square",
        "1.3 person-h/square",
        "2.5 person-h/square",
      ],
    ],
  },
  {
    source: "common-practice",
    part: "starting points; breakage, cutting at rakes and hips, end laps",
    measure: "Count what is over, broken or cut off when the roof is done, over what was bought.",
    rows: [
      ["covering.courseWaste", "shingles, tiles and rolls cut off or broken, added", "5 %", "7 %", "10 %"],
      ["covering.underlayWaste", "underlay in end laps and offcuts, added", "3 %", "5 %", "10 %"],
      ["covering.capNails", "cap nails in a square of underlay, a layer", "60", "80", "120"],
      ["covering.edgeNails", "nails along a drip edge, apart, as in R905.2.8.5", "10 in", "12 in", "12 in"],
      ["covering.ridgeNails", "nails or screws in a foot of ridge or hip cap", "2", "4", "5"],
      ["deck.waste", "deck boards and sheets cut off, added", "5 %", "8 %", "15 %"],
      [
        "deck.sheetNails",
        "nails in 32 ft² of deck sheet: 6 in apart at edges, 12 in between, rafters at 24 in (R602.3)",
        "33",
        "33",
        "45",
      ],
    ],
  },
  {
    source: "common-practice",
    part: "lapped steel panels",
    measure: "Take a tape to one eave, one ridge and one trim of a roof that you like.",
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
    measure: "Count them at one joint of the plan, or of the code's table that it follows.",
    rows: [
      ["fastener.rafterPlate", "toenails or toe screws, a rafter at its plate", "3", "3", "4"],
      ["fastener.rafterRidge", "toenails or toe screws, a rafter at the ridge", "3", "3", "4"],
      ["fastener.joistSeat", "toenails or toe screws, a joist on a bearer", "2", "3", "4"],
      ["fastener.crossing", "screws or nails, a purlin or board at a support", "2", "2", "3"],
      ["fastener.narrowCrossing", "screws or nails, a slat or batten at a support", "1", "1", "2"],
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
    measure: "Count them on the plan, or as whoever checks the frame asks for them.",
    rows: [
      ["fastener.baseBolts", "bolts through a post and its base", "1", "2", "2"],
      ["fastener.postTopBrackets", "angle brackets between a post top and its beam", "2", "2", "4"],
      ["fastener.bracketNails", "nails in an angle bracket", "8", "10", "12"],
      ["fastener.bearerBolts", "bolts through a floor bearer and a post", "1", "2", "2"],
      ["fastener.ledgerEvery", "lag screws of a ledger, apart, up and down in turn", "12 in", "16 in", "24 in"],
      ["fastener.hangerNails", "nails in a joist or rafter hanger", "8", "10", "14"],
      ["fastener.spliceBolts", "bolts in the splice of a timber", "2", "2", "4"],
      ["fastener.lightSplice", "screws or nails in the splice of a plank", "6", "8", "12"],
      ["fastener.lapScrews", "screws at one end of a tie of timber", "2", "2", "3"],
      ["fastener.lapBolts", "bolts at one end of a tie of planks, or of a piece that is bolted on", "1", "2", "2"],
      ["fastener.braceScrews", "screws at one end of a brace", "2", "2", "3"],
    ],
  },
  {
    source: "common-practice",
    part: "yield as printed on bags of concrete mix",
    measure: "Fill one hole and count the bags.",
    rows: [
      ["footing.bag80lb", "concrete from a bag of 80 lb", "0.55 ft3", "0.6 ft3", "0.6 ft3"],
      ["footing.bag25kg", "concrete from a bag of 25 kg", "11 L", "12 L", "12.5 L"],
      ["footing.waste", "concrete and gravel that holes take beyond their size, added", "5 %", "10 %", "25 %"],
    ],
  },
  {
    source: "common-practice",
    part: "lengths of cardboard form tubes, from memory; a yard may cut them",
    measure: "Ask the yard, or measure one.",
    rows: [
      ["footing.tube", "form tube as it is sold", "4 ft", "4 ft", "12 ft"],
      ["footing.tubeMetric", "form tube as it is sold, metric", "1 m", "1 m", "4 m"],
    ],
  },
  {
    source: "own-choice",
    part: "concrete of bags takes a frame after some days; its full strength is for the code to ask",
    measure: "Read it off the bag, or off the delivery note.",
    rows: [["footing.cure", "concrete sets before a frame stands on it", "1 day", "3 day", "7 day"]],
  },
  {
    source: "own-choice",
    measure: "Time one hole and one pour, and measure the hole.",
    rows: [
      ["rate.digHand", "dig a post hole by bar and spade", "1.5 ft3/person-h", "3 ft3/person-h", "5 ft3/person-h"],
      [
        "rate.digAuger",
        "bore a post hole with an auger, by depth",
        "4 person-min/ft",
        "8 person-min/ft",
        "20 person-min/ft",
      ],
      ["rate.footingSet", "set out, level and plumb one footing", "10 person-min", "20 person-min", "40 person-min"],
      ["rate.gravel", "shovel in gravel and tamp it", "1 person-min/ft3", "2 person-min/ft3", "5 person-min/ft3"],
      ["rate.mixBag", "mix and place a bag of concrete", "5 person-min", "8 person-min", "15 person-min"],
      [
        "rate.pourReady",
        "barrow and place ready-mixed concrete",
        "0.6 person-min/ft3",
        "1.5 person-min/ft3",
        "4 person-min/ft3",
      ],
    ],
  },
  {
    source: "own-choice",
    measure: "Time one side of trim over its length; one trip to the yard; thirty boards onto the stack.",
    rows: [
      ["rate.trim", "fit fascia and metal trim", "0.02 person-h/ft", "0.04 person-h/ft", "0.08 person-h/ft"],
      ["buy.receive", "order a delivery and be there for it", "0.25 person-h", "1 person-h", "2 person-h"],
      [
        "buy.unload",
        "unload and carry in bought lumber, a stock length",
        "0.3 person-min",
        "0.75 person-min",
        "2 person-min",
      ],
      ["buy.fetch", "fetch a load of lumber", "1 person-h", "2 person-h", "4 person-h"],
      ["buy.trailer", "load that one fetches", "600 lb", "1200 lb", "2500 lb"],
      ["buy.sort", "sort and stack bought lumber, a stock length", "0.5 person-min", "1 person-min", "2 person-min"],
    ],
  },
  {
    source: "own-choice",
    measure: "Count what is left over, set aside or lost when the job is done, over what was bought.",
    rows: [
      ["buy.endTrim", "cut off a stock length to square it, both ends together", "0 in", "0 in", "1 in"],
      ["buy.wastage", "bought stock lengths set aside for crook and splits", "3 %", "7 %", "15 %"],
      ["finish.waste", "finish lost in brush and can", "5 %", "8 %", "15 %"],
      ["finish.jointShare", "faces hidden where pieces meet", "0 %", "3 %", "6 %"],
      ["finish.endSealerCoverage", "coverage of end sealer", "75 ft2/gal", "100 ft2/gal", "150 ft2/gal"],
      ["fastener.spare", "fasteners lost, bent or left over, added", "3 %", "5 %", "10 %"],
    ],
  },
  {
    source: "own-choice",
    measure: "Add up the hours of three stages that you have done, over the hours that stand here for them.",
    rows: [
      ["pace", "pace of all work, by hand and at machines: 1 is a steady amateur, more is slower", "0.8", "1", "1.6"],
    ],
  },
  {
    source: "own-choice",
    measure: "Ask for three prices at the counter, over those of the catalog.",
    rows: [["priceLevel", "level of all prices against the catalog", "0.95", "1", "1.1"]],
  },
];

/** All assumptions, those of the mills included. */
export const ASSUMPTIONS: readonly Assumption[] = GROUPS.flatMap(({ rows, source, part, measure }) =>
  rows.map(([name, label, low, likely, high]) => ({
    name,
    label,
    low,
    likely,
    high,
    source,
    measure,
    ...(part === undefined ? {} : { part }),
  })),
);

const BY_NAME = new Map(ASSUMPTIONS.map((assumption) => [assumption.name, assumption]));

/** The assumption of a name; undefined where there is none. */
export const assumptionOf = (name: string): Assumption | undefined => BY_NAME.get(name);
