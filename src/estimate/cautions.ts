/** Safety cautions, each with the condition that raises it. Never a statement that anything is strong enough. */

import { type Basis, mayBear } from "./basis.js";
import { type Means, meansFor } from "./effort/lifts.js";
import { type Decimal, ZERO } from "./quantity/decimal.js";
import { exactly, type MeasureSystem, marked, onTape } from "./quantity/text.js";
import { lowered } from "./quantity/words.js";
import { aside } from "./sheet/aside.js";
import type { Cell } from "./sheet/expression.js";
import type { Takeoffs } from "./takeoffs.js";

/** What can hurt someone, or fail. */
export interface Caution {
  readonly code: string;
  readonly text: string;
  /** Regulation or publication. */
  readonly source: string;
}

const liftedBy = ({ people, aid }: Means): string => (people === undefined ? aid : `${people} people`);

/**
 * Cautions that apply, the gravest first.
 * @param mills - Whether a route mills anything.
 */
export function cautionsOf(basis: Basis, takeoffs: Takeoffs, mills: boolean): Caution[] {
  const { cutList, groups } = basis;
  const bears = mayBear(basis).length > 0;
  const heavy = takeoffs.weights.heavyLifts.map(
    ({ group, people }) => `${named(basis, group)} (${liftedBy(meansFor(aside(people)))})`,
  );
  const notch = commonNotch(basis);
  const hipNotch = notchOfHips(basis);
  const crowded = crowdedJoints(takeoffs, "fits");
  const short = crowdedJoints(takeoffs, "endFits");
  const low = lowEave(basis);
  const inches = basis.request.system === "inch-pound";
  const tannin = takeoffs.fasteners?.cautions.some(({ code }) => code === "tannin");
  const treated = takeoffs.fasteners?.cautions.some(({ code }) => code === "treated");
  const salt = takeoffs.fasteners?.cautions.some(({ code }) => code === "salt");
  const say = (applies: unknown, code: keyof typeof CAUTIONS, more = ""): Caution[] =>
    applies ? [caution(code, basis.request.system, more)] : [];
  return [
    ...say(bears, "not-checked"),
    ...say(mills && bears && basis.request.site?.ungradedAccepted !== "yes", "ungraded"),
    ...say(takeoffs.covering && !takeoffs.covering.slope.allowed, "slope", takeoffs.covering?.slope.reason),
    ...say(cutList.frame?.roof, "wind-and-snow"),
    ...say(cutList.frame?.roof?.ridgeKind === "board", "thrust", tiedPairs(basis)),
    ...say(cutList.frame?.roof?.ridgeKind === "beam", "ridge-beam"),
    ...say(notch, "birdsmouth", notch && `Common rafters: ${notch}.`),
    ...say(hipNotch, "hip-notch", hipNotch && `${hipNotch}.`),
    ...say(ridgeTooShallow(basis), "ridge-depth"),
    ...say(
      groups.some(({ group }) => group.rules.joint === "ledger"),
      "ledger",
    ),
    ...say(cutList.frame, "bracing"),
    ...say(cutList.frame, "height"),
    ...say(low, "headroom", low),
    ...say(mills, "chainsaw"),
    ...say(mills, "storm-wood"),
    ...say(mills, "rip-saw"),
    ...say(heavy.length > 0, "lifting", `Over one person's load: ${heavy.join(", ")}.`),
    ...say(true, "dust"),
    ...say(takeoffs.finish.terms.kind !== "none", "rags"),
    ...say(crowded, "edge-distance", crowded && `${crowded}.`),
    ...say(short, "end-distance", short && `${short}.`),
    ...say(tannin, "tannin"),
    ...say(treated, "treated"),
    ...say(salt, "salt"),
    ...say(
      cutList.frame ?? takeoffs.footings,
      basis.request.catalog.currency === "USD" && inches ? "digging-us" : "digging",
    ),
    ...say(cutList.frame ?? takeoffs.footings, "frost"),
    ...say(cutList.frame, "power-lines"),
  ];
}

/** Connections whose pieces are too narrow, or end too near, for their fasteners, in words; empty where there are none. */
function crowdedJoints({ fasteners }: Takeoffs, by: "fits" | "endFits"): string {
  const lines = fasteners?.lines.filter(({ placing }) => placing?.[by] === false) ?? [];
  return lines.map(({ label }) => label).join("; ");
}

/** A group as people call it, within a sentence. */
export function named({ groups }: Basis, name: string): string {
  const label = groups.find(({ group }) => group.name === name)?.group.label ?? name;
  return lowered(label);
}

/** What to take care of at the mill alone. */
export function sawingCautions({ request: { system } }: Basis): Caution[] {
  const codes = ["not-checked", "ungraded", "chainsaw", "storm-wood", "rip-saw", "lifting", "dust"] as const;
  return codes.map((code) => caution(code, system));
}

function caution(code: keyof typeof CAUTIONS, system: MeasureSystem, more = ""): Caution {
  const [words, source] = CAUTIONS[code];
  const text = typeof words === "string" ? words : words[system];
  return { code, text: more ? `${text} ${more}` : text, source };
}

/** The notch of the common rafters where it is past a quarter of their depth, in words; empty where it is not. */
function commonNotch({ cutList: { frame } }: Basis): string {
  return frame?.rafter ? pastQuarter(frame.rafter.notchDepth, frame.rafterDepth) : "";
}

function pastQuarter(notch: Cell, depth: Cell): string {
  if (aside(notch).times(4).lte(aside(depth).times("1.0000001"))) return "";
  return `${tape(notch, aside(notch))} of ${tape(depth, aside(depth))}`;
}

const tape = ({ unit, display }: Cell, value: Decimal): string => onTape({ value, unit }, display);

/** The same of hips, with the least depth that still backs the plumb cuts of the jack rafters (IRC R802.3, from memory). */
function notchOfHips({ sheet, request, cutList: { frame } }: Basis): string {
  const [depth, diagonal] = [sheet.find("sections.hips.width"), sheet.find("hip.unitRun")];
  if (frame?.kind !== "hip" || !depth || !diagonal) return "";
  const notch = pastQuarter(frame.hip.notchDepth, depth);
  if (notch === "") return "";
  const plumb = aside(frame.rafterDepth).times(aside(frame.rafter.unitLength)).dividedBy(aside(frame.roof.unitRun));
  const least = plumb.times(aside(diagonal)).dividedBy(aside(frame.hip.unitLength));
  const step = exactly(request.system === "metric" ? "1 mm" : "1/16 in").value;
  const marked = onTape({ value: least.dividedBy(step).ceil().times(step), unit: depth.unit }, depth.display);
  return `Hip rafters: ${notch}; the jack rafters want them ${marked} deep`;
}

/** Clear height of a door, the least that people pass below without stooping: 78 in, IRC R311.2, from memory. */
const HEADROOM = "78 in";

/** What is left below the beams at the eave where that is less; empty where it is not. */
function lowEave({ request, cutList: { frame, groups } }: Basis): string {
  const beam = groups.find(({ role }) => role === "beam");
  if (!frame || !beam) return "";
  const top = frame.kind === "pergola" ? frame.frame.height : frame.frame.eaveHeight;
  const clear = aside(top).minus(aside(beam.width));
  if (clear.gte(exactly(HEADROOM).value)) return "";
  return `It is ${marked({ value: clear, unit: top.unit }, request.system)}.`;
}

/**
 * Where roofs are compared: the frame is the same under the lightest and the heaviest.
 * @param weights - Of deck, underlay and covering, one for each roof.
 */
export function roofWeightCaution({ sheet }: Basis, weights: readonly Cell[]): Caution[] {
  if (weights.length < 2) return [];
  const inOrder = weights.toSorted((a, b) => aside(a).cmp(aside(b)));
  const [least, most] = [inOrder[0], inOrder.at(-1)].map((cell) => sheet.shown(cell as Cell));
  const [text, source] = CAUTIONS["roof-weight"];
  const weigh = least === most ? `Each of these roofs weighs ${least}.` : `These roofs weigh from ${least} to ${most}.`;
  return [{ code: "roof-weight", text: `${weigh} ${text}`, source }];
}

/** How many pairs of rafters the list ties. */
function tiedPairs({ cutList: { groups } }: Basis): string {
  const rafters = groups.find(({ name }) => name === "rafters");
  if (!rafters) return "";
  const tied = groups.filter(({ role }) => role === "tie").reduce((sum, { count }) => sum.plus(aside(count)), ZERO);
  const pairs = aside(rafters.count).dividedToIntegerBy(2);
  if (tied.gte(pairs)) return "";
  return `This list has ${tied.toFixed()} for ${pairs.toFixed()} pairs; the rest are not taken off.`;
}

/** A ridge that is less deep than the plumb cut that leans on it. */
function ridgeTooShallow({ sheet, cutList: { frame, groups } }: Basis): boolean {
  const ridge = groups.find(({ role }) => role === "ridge");
  if (!frame?.rafter || !frame.roof || !ridge) return false;
  const { unitLength } = frame.rafter;
  const plumbCut = sheet.decide(frame.rafterDepth).times(sheet.decide(unitLength));
  return plumbCut.gt(sheet.decide(ridge.width).times(sheet.decide(frame.roof.unitRun)));
}

/**
 * What to say, in the project's measures where they matter, and on whose word. The numbers of sections are from memory
 * of the codes, but those of NIOSH, which were read.
 */
const CAUTIONS = {
  "not-checked": [
    "Nothing here says that a member, a joint or a footing is strong enough. Have them checked against the local code, and by a licensed engineer where the code asks for one.",
    "IRC R301; common practice",
  ],
  ungraded: [
    "Lumber sawn from your logs bears no grade mark. Many codes ask for one, or for an inspector's certificate, on load-bearing pieces; some places allow native lumber in accessory buildings.",
    "IRC R502.1.1, R802.1.1",
  ],
  "roof-weight": [
    "The frame is the same under all of them: have it checked for the one that you choose, above all for tiles and slates.",
    "IRC R301.4, R905.3",
  ],
  slope: ["The covering is not allowed at this slope.", "IRC chapter 9"],
  "wind-and-snow": [
    "An open roof catches wind from below and keeps its snow: tie roof to frame to footing, and ask for the local wind and ground snow loads.",
    "IRC R301, R802.11; ASCE 7",
  ],
  thrust: [
    "A plain ridge board carries nothing: the rafters push the plates apart, and ties across every pair must hold them, or a ridge beam must carry the roof.",
    "IRC R802",
  ],
  birdsmouth: [
    "The birdsmouth takes more than a quarter of the rafter's depth: use a shallower seat or a deeper rafter.",
    "common practice, no source",
  ],
  "hip-notch": [
    "A hip is notched so deep that its upper edges meet the planes of the rafters: the deeper it is, the more it loses, here past a quarter of its depth. Bear it below the corner on a post or a block; one that is milled need be no deeper than the jack rafters want.",
    "common practice, no source",
  ],
  "ridge-depth": [
    "The ridge is less deep than the plumb cut of the rafters that lean on it: use a deeper ridge.",
    "IRC R802.3",
  ],
  ledger: [
    "A ledger hands its load to the wall behind it. Ask the owner of that building and the building office whether the wall may carry it, and how it must be fixed and flashed; find its framing before you bore.",
    "IRC R507.9, from memory; common practice",
  ],
  bracing: [
    "Brace posts and frames in both directions while raising, until the permanent braces and the roof deck are in.",
    "NDS 2.1; truss-bracing guides",
  ],
  height: [
    {
      "inch-pound":
        "At 6 ft and more above the ground use fall protection; a ladder's foot stands out a quarter of its working length and its rails 3 ft above the landing.",
      metric:
        "At 1.8 m and more above the ground use fall protection; a ladder's foot stands out a quarter of its working length and its rails 0.9 m above the landing.",
    },
    "29 CFR 1926.501, 1926.1053",
  ],
  chainsaw: [
    "A chainsaw kicks back and kills. Train, wear leg, eye, head and ear protection, keep a second person on site, wedge the kerf, never stand where a log can roll.",
    "29 CFR 1910.266; FAO chainsaw-milling handbooks",
  ],
  "storm-wood": [
    "Wind-thrown trees hold tension, and root plates stand up again: leave those to trained cutters. Scan salvaged logs for metal.",
    "extension storm-clean-up sheets",
  ],
  "rip-saw": ["Rip with guard, riving knife and anti-kickback fingers, and a push stick.", "29 CFR 1910.213(c)"],
  lifting: [
    {
      "inch-pound": "One person lifts 51 lb at best, close to the body. Use more people, a cart, rollers or a winch.",
      metric: "One person lifts 23 kg at best, close to the body. Use more people, a cart, rollers or a winch.",
    },
    "NIOSH 94-110, load constant",
  ],
  dust: ["Wood dust harms the lungs: extract it and wear a respirator.", "NIOSH recommended limit, 1 mg/m³"],
  rags: [
    "Rags wet with oil finish catch fire by themselves: put them in water in a sealed metal can.",
    "Wood Handbook, chapter 16",
  ],
  "ridge-beam": [
    "A ridge beam carries half of the roof to its king posts, and they load the ties in their middles: have beam, king posts and ties sized for it, or stand the king posts on posts of their own.",
    "IRC R802.4.4",
  ],
  "edge-distance": [
    "These pieces are too narrow for the usual distances between their fasteners and their edges, and may split: take thinner or fewer fasteners, or wider pieces.",
    "NDS 2018, 12.1 and tables 12.5.1",
  ],
  "end-distance": [
    "Where pieces meet over one support, or end flush with the plate that they are halved over, their fasteners stand nearer to the ends than is usual even in bored holes, and may split them: bore pilot holes and drive aslant, nail a cleat beside the support, or let the pieces run past it.",
    "NDS 2018, tables 12.5.1; commentary, table C12.1.6.6",
  ],
  tannin: [
    "Woods rich in tannin stain and eat plain steel: use hot-dip galvanized or stainless fasteners.",
    "Wood Handbook, chapter 16",
  ],
  treated: [
    "Preservative-treated wood wants hot-dip galvanized or stainless fasteners; never burn it, and keep its dust off skin and lungs.",
    "IRC R317.3.1; EPA consumer sheets",
  ],
  salt: [
    "Salt air eats zinc in a few years: fasteners and connectors want stainless steel, of a grade that the maker names for the sea (1.4401 or 316). Keep it apart from galvanized steel, which it eats, too. Ask what panels and trim are coated with.",
    "IRC table R507.2.3; ISO 9223, C5",
  ],
  digging: [
    "Have buried pipes and cables located some days before digging footings: ask their owners, or the local locating service.",
    "common practice, no source",
  ],
  "digging-us": ["Call 811 some days before digging footings, to have buried services located.", "US 811"],
  headroom: [
    {
      "inch-pound":
        "People will strike their heads at the eave: below the beam there is less than the 78 in of a door.",
      metric: "People will strike their heads at the eave: below the beam there is less than the 1.98 m of a door.",
    },
    "IRC R311.2",
  ],
  frost: [
    "Footings must reach below the frost and stand on undisturbed ground: ask the building office how deep and how wide.",
    "IRC R403.1.4",
  ],
  "power-lines": [
    {
      "inch-pound": "Keep people, ladders and long pieces 10 ft from overhead lines.",
      metric: "Keep people, ladders and long pieces 3 m from overhead lines.",
    },
    "29 CFR 1926.1408, table A",
  ],
} as const satisfies Record<string, readonly [text: string | Readonly<Record<MeasureSystem, string>>, source: string]>;
