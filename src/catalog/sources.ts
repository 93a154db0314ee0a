/**
 * The bibliography. Tables and assumptions cite these keys, with the table or section beside them.
 *
 * `known` says how far a value under this key may be trusted: `seen` was read in a copy, `memory` was recalled from
 * the named publication, `common practice` has none and is a starting point, `computed` is our own arithmetic,
 * `assumption` is a choice.
 */

export type HowKnown = "seen" | "memory" | "common practice" | "computed" | "assumption";

/** A publication: what it is, and where it can be read. */
export interface Source {
  readonly title: string;
  readonly publisher: string;
  /** Year or edition; absent where the source is a practice. */
  readonly year?: string;
  /** The part that is used. */
  readonly part?: string;
  readonly known: HowKnown;
}

const source = (known: HowKnown, title: string, publisher: string, year?: string, part?: string): Source => ({
  title,
  publisher,
  known,
  ...(year === undefined ? {} : { year }),
  ...(part === undefined ? {} : { part }),
});

/** The bibliography: every key that a row or an assumption cites. */
export const SOURCES = {
  "ps-20": source(
    "seen",
    "American Softwood Lumber Standard, PS 20-20",
    "National Institute of Standards and Technology",
    "2020",
    "table 3 (sizes), board measure",
  ),
  "wood-handbook": source(
    "memory",
    "Wood Handbook: Wood as an Engineering Material, FPL-GTR-190 and FPL-GTR-282",
    "USDA Forest Products Laboratory",
    "2010, 2021",
    "tables 4-1, 4-3, 5-3a, 5-3b, 13-5, 14-1; chapters 4, 13, 16",
  ),
  "navy-mo-312": source(
    "seen",
    "Wood Protection, NAVFAC MO-312",
    "US Navy, Naval Facilities Engineering Command",
    undefined,
    "table 2-1, comparative decay resistance of heartwood",
  ),
  "fia-species": source(
    "seen",
    "Forest Inventory and Analysis reference species table; basis: Research Note NRS-38",
    "USDA Forest Service",
    "2009",
    "specific gravity, green moisture, bark volume",
  ),
  "fpl-air-drying": source(
    "memory",
    "Air Drying of Lumber, FPL-GTR-117; Technical Note 233",
    "USDA Forest Products Laboratory",
    "1999",
    "1 in lumber to about 20 % moisture; confidence medium",
  ),
  nds: source(
    "memory",
    "National Design Specification for Wood Construction, with Supplement",
    "American Wood Council",
    "2018",
    "table 12.3.3A; section 12.1.3; supplement 3.1.3",
  ),
  "en-338": source("memory", "EN 338, Structural timber: Strength classes", "CEN", "2016", "mean densities"),
  "en-350": source(
    "memory",
    "EN 350, Durability of wood and wood-based products",
    "CEN",
    "2016",
    "annex B, mean density at 12 % and durability class; confidence medium",
  ),
  "en-336": source(
    "seen",
    "EN 336, Structural timber: Sizes, permitted deviations",
    "CEN",
    "2013",
    "tolerance classes 1 and 2, seen in the knowledge sheet on timber sizes and tolerances of Timber Development UK",
  ),
  holzatlas: source(
    "memory",
    "R. Wagenführ, Holzatlas",
    "Fachbuchverlag Leipzig",
    "2007",
    "shrinkage; confidence medium",
  ),
  irc: source(
    "memory",
    "International Residential Code, chapter 9",
    "International Code Council",
    "2018, 2021",
    "R905 (roof coverings), R317.3.1 (fasteners in treated wood), table R507.2.3 (fasteners near salt water)",
  ),
  "en-1995-1-1": source(
    "memory",
    "EN 1995-1-1, Eurocode 5: Design of timber structures, general",
    "CEN",
    "2004",
    "2.3.1.3 (service classes), table 4.1 (protection of fasteners against corrosion)",
  ),
  "asce-7": source(
    "memory",
    "Minimum Design Loads, ASCE/SEI 7",
    "American Society of Civil Engineers",
    "2016",
    "commentary table C3.1-1, dead loads",
  ),
  "estimating-text": source(
    "seen",
    "Construction-estimating textbook",
    "as reprinted online",
    undefined,
    "chapter 14, asphalt shingles",
  ),
  "nahb-life": source(
    "seen",
    "Study of Life Expectancy of Home Components",
    "National Association of Home Builders",
    "2007",
    "roofing, as quoted by home inspectors",
  ),
  "tile-article": source("seen", "Roofing with concrete tile", "trade journal", undefined, "weights, battens"),
  "roll-goods": source("seen", "Field guide to asphalt shingles", "trade journal", undefined, "felt rolls"),
  "galvanized-gauge": source(
    "memory",
    "Manufacturers' standard gauge for galvanized sheet",
    "American Iron and Steel Institute",
    undefined,
    "weight per square foot by gauge",
  ),
  "tm-5-460": source(
    "memory",
    "Carpentry and Building Construction, TM 5-460 and FM 5-426",
    "US Army",
    undefined,
    "table of common, box and finish nails",
  ),
  "astm-f1667": source("memory", "ASTM F1667, Driven fasteners: nails, spikes and staples", "ASTM", "2018", "sizes"),
  "astm-a153": source(
    "memory",
    "ASTM A153 and A653, hot-dip zinc coating",
    "ASTM",
    undefined,
    "hardware; connectors G185",
  ),
  "asme-b18": source(
    "memory",
    "ASME B18.2.1 (bolts), B18.2.2 (nuts), B18.22.1 (washers)",
    "American Society of Mechanical Engineers",
    undefined,
    "hex bolts, hex nuts, Type A wide washers",
  ),
  "iso-4014": source(
    "memory",
    "ISO 4014 (bolts), ISO 4032 (nuts), DIN 440 and ISO 7094 (wide washers)",
    "ISO, DIN",
    undefined,
    "coarse-thread sizes M8 to M20",
  ),
  "small-scale-forestry": source(
    "seen",
    "Small-scale Forestry 8:367-379 and 12:389-401, abstracts",
    "Springer",
    "2009, 2013",
    "recovery and output of small mills",
  ),
  "pnw-gtr-544": source(
    "seen",
    "Lumber recovery of six south-central Alaska sawmills, PNW-GTR-544",
    "USDA Forest Service, Pacific Northwest Research Station",
    "2002",
    "recovery factor, overrun, thickness variation",
  ),
  "niosh-lifting": source(
    "seen",
    "Applications Manual for the Revised NIOSH Lifting Equation, 94-110",
    "US National Institute for Occupational Safety and Health",
    "1994, revised 2021",
    "load constant, 51 lb (23 kg)",
  ),
  "sawmill-studies": source("memory", "Sawmill improvement studies", "USDA Forest Service", undefined, "kerfs"),
  "common-practice": source("common practice", "Practice of the trade; replace by own records", "none"),
  "own-choice": source("assumption", "A choice of this catalog", "this catalog"),
} as const satisfies Readonly<Record<string, Source>>;

/** A key of the bibliography. */
export type SourceKey = keyof typeof SOURCES;

/** Where a row comes from: a key, and the table or section within it. */
export interface Citation {
  readonly source: SourceKey;
  readonly part?: string;
  /** How this row is known, when that differs from the source as a whole. */
  readonly known?: HowKnown;
}
