/** Written from openapi.json by `npm run openapi`: change the calls, not this file. */

/** Which request was answered, and by what. */
export type About = {
  readonly title: string | null;
  readonly measure: "inch-pound" | "metric";
  readonly currency: string;
  readonly catalog: string;
  readonly catalogNote: string | null;
  readonly engine: string;
  readonly dataVersion: string;
  readonly requestDigest: string;
  readonly reproducible: true;
};

/** Bonding adhesive of a membrane. */
export type AdhesiveOffer = {
  readonly covers: string | MeasuredValue;
  readonly price?: string | MeasuredValue | null | undefined;
  readonly bulk?: readonly ({
    readonly from: number;
    readonly price: string | MeasuredValue;
  })[] | undefined;
};

/** The service runs. */
export type Alive = {
  readonly status: "ok";
  readonly queue: Queue | null;
};

/** A named number that a request may replace. */
export type Assumption = {
  readonly name: string;
  readonly label: string;
  readonly values: Range;
  readonly from: Citation;
  readonly measure: string | null;
};

/** The default assumptions. */
export type AssumptionList = {
  readonly assumptions: readonly Assumption[];
  readonly mills: readonly Mill[];
  readonly sources: { readonly [key: string]: Source };
};

/** One figure, or low, likely and high, each with its unit. */
export type AssumptionValue = string | MeasuredValue | {
  readonly low: string | MeasuredValue;
  readonly likely: string | MeasuredValue;
  readonly high: string | MeasuredValue;
};

/** Sticks cut alike. */
export type Board = {
  readonly stock: string;
  readonly atHand: boolean;
  readonly times: number;
  readonly cuts: readonly StickCut[];
  readonly offcut: string;
  readonly drawing?: string | undefined;
};

/** Equal boards at hand, sound and of the grade that is wanted. */
export type BoardAtHand = {
  readonly section: string | {
    readonly thickness: string | MeasuredValue;
    readonly width: string | MeasuredValue;
  };
  readonly length: string | MeasuredValue;
  readonly count: number;
  readonly wood?: "western-redcedar" | "northern-white-cedar" | "yellow-cedar" | "incense-cedar" | "port-orford-cedar" | "eastern-redcedar" | "atlantic-white-cedar" | "redwood-old-growth" | "redwood-young-growth" | "douglas-fir-coast" | "western-larch" | "tamarack" | "western-hemlock" | "eastern-hemlock" | "sitka-spruce" | "white-spruce" | "engelmann-spruce" | "eastern-white-pine" | "western-white-pine" | "ponderosa-pine" | "loblolly-pine" | "shortleaf-pine" | "longleaf-pine" | "red-pine" | "white-oak" | "northern-red-oak" | "black-locust" | "black-walnut" | "red-alder" | "sugar-maple" | "red-maple" | "yellow-poplar" | "white-ash" | "american-chestnut" | "european-larch" | "scots-pine" | "norway-spruce" | "european-oak" | "douglas-fir-europe" | "sweet-chestnut" | "robinia" | "spruce-pine-fir" | "spruce-pine-fir-south" | "hem-fir" | "douglas-fir-larch" | "southern-pine" | "western-cedars" | "redwood" | "european-whitewood" | "european-redwood" | undefined;
  readonly treatment?: "none" | "above-ground" | "ground-contact" | undefined;
  readonly surface?: "dressed" | "rough" | undefined;
};

/** A length bucked from a log, and how it is sawn. */
export type Bolt = {
  readonly from: string;
  readonly to: string;
  readonly length: string;
  readonly smallDiameter: string;
  readonly sweep: string;
  readonly opening: string;
  readonly cuts: number;
  readonly cutList: readonly MillCut[];
  readonly turns: number;
  readonly face: MeasuredValue;
  readonly slabs: readonly Slab[];
  readonly drawing?: string | undefined;
};

/** What is bought for a group. */
export type BoughtAs = {
  readonly offer: string | null;
  readonly label: string | null;
  readonly differences: readonly string[];
  readonly add: string | null;
};

/** A plain timeline in days from the start, and in dates where the start has one. */
export type Calendar = {
  readonly stages: readonly CalendarStage[];
  readonly drying: DryDays | null;
  readonly waitsFor: {
    readonly groups: readonly string[];
    readonly totalDays: MeasuredValue;
    readonly finishDate: string | null;
  } | null;
  readonly totalDays: MeasuredValue;
  readonly finishDate: string | null;
  readonly crewDays: MeasuredValue;
  readonly aloneDays: MeasuredValue;
};

/** One bar of the timeline. */
export type CalendarStage = {
  readonly stage: string;
  readonly part?: "green" | "dried" | undefined;
  readonly people: MeasuredValue;
  readonly crewHours: MeasuredValue;
  readonly startDay: MeasuredValue;
  readonly endDay: MeasuredValue;
  readonly setDay: MeasuredValue | null;
  readonly dates: {
    readonly start: string;
    readonly end: string;
  } | null;
  readonly whileDrying: boolean;
  readonly aloneHours?: MeasuredValue | undefined;
  readonly aloneDays?: MeasuredValue | undefined;
  readonly crewDays?: MeasuredValue | undefined;
  readonly alongside?: readonly string[] | undefined;
};

/** A rate as you timed it, in the place of the catalog's. */
export type Calibration = {
  readonly rate: string;
  readonly jobs: readonly TimedJob[];
};

/** One size of can. */
export type Can = {
  readonly size: string | MeasuredValue;
  readonly from?: number | undefined;
  readonly price?: string | MeasuredValue | null | undefined;
};

/** Something that can hurt someone, or fail. */
export type Caution = {
  readonly code: string;
  readonly text: string;
  readonly source: string;
};

/** One number of the estimate. */
export type Cell = {
  readonly name: string;
  readonly label: string;
  readonly kind: "input" | "assumption" | "catalog" | "formula" | "planned" | "override";
  readonly value: string;
  readonly unit: string;
  readonly structural?: true | undefined;
  readonly working?: string | undefined;
  readonly usedBy?: readonly string[] | undefined;
  readonly source?: string | undefined;
  readonly low?: string | undefined;
  readonly high?: string | undefined;
  readonly measure?: string | undefined;
  readonly covers?: string | undefined;
};

/** Where a value comes from. */
export type Citation = {
  readonly source: string;
  readonly part: string | null;
  readonly known: "seen" | "memory" | "common practice" | "computed" | "assumption";
};

/** A foam strip that follows the profile. */
export type ClosureOffer = {
  readonly kind: "inside" | "outside";
  readonly length: string | MeasuredValue;
  readonly from?: number | undefined;
  readonly price?: string | MeasuredValue | null | undefined;
};

/** One covering beside the others. */
export type ComparedCovering = {
  readonly rank: number;
  readonly cash: Figure | null;
  readonly complete: boolean;
  readonly yearly: Figure | null;
  readonly hours: Figure;
  readonly weight: Figure;
  readonly deck: "purlins" | "spaced-boards" | "solid-boards" | "sheets";
  readonly lines: readonly ShoppingLine[];
  readonly taxes: readonly LabeledFigure[];
};

/** What milling, dressing, drying and footings use up. */
export type ConsumableOffer = {
  readonly name?: string | undefined;
  readonly label?: string | undefined;
  readonly item: "fuel" | "bar-oil" | "two-stroke-oil" | "end-sealer";
  readonly price?: string | MeasuredValue | null | undefined;
} | {
  readonly name?: string | undefined;
  readonly label?: string | undefined;
  readonly item: "chain" | "files" | "chain-sharpening" | "band" | "band-sharpening" | "circular-blade" | "circular-sharpening" | "grinding-wheel" | "planer-knives" | "planer-knife-sharpening" | "sanding-discs" | "stickers" | "concrete-bag" | "pier-block" | "form-tube";
  readonly price?: string | MeasuredValue | null | undefined;
} | {
  readonly name?: string | undefined;
  readonly label?: string | undefined;
  readonly item: "electricity";
  readonly price?: string | MeasuredValue | null | undefined;
} | {
  readonly name?: string | undefined;
  readonly label?: string | undefined;
  readonly item: "concrete" | "gravel";
  readonly price?: string | MeasuredValue | null | undefined;
};

/** Engine hours, sharpenings, loads, stickers or trips of a stage. */
export type CountedWork = {
  readonly stage: string;
  readonly label: string;
  readonly amount: MeasuredValue;
};

/** Shingles, shakes or tiles. */
export type Courses = {
  readonly exposure: LengthFigure;
  readonly pieces: Figure;
  readonly bundles: Figure;
};

/** One slope, and how it is covered. */
export type CoveredSlope = {
  readonly name: string;
  readonly alike: number;
  readonly shape: "rectangle" | "hipped";
  readonly eave: LengthFigure;
  readonly top: LengthFigure;
  readonly slopeLength: LengthFigure;
  readonly area: Figure;
  readonly across: Figure | null;
  readonly up: Figure;
  readonly module: LengthFigure;
  readonly pieceLength: LengthFigure | null;
  readonly strips: readonly RoofStrip[];
};

/** One roof covering. */
export type Covering = {
  readonly kind: string;
  readonly name: string;
  readonly form: "panels" | "courses" | "rolls" | "boards";
  readonly slopes: readonly LeastSlope[];
  readonly deck: "purlins" | "spaced-boards" | "closed-deck";
  readonly supportEvery: Range | null;
  readonly underlay: readonly UnderlayRule[];
  readonly coverWidth: MeasuredValue | null;
  readonly exposure: Range | null;
  readonly endLap: Range | null;
  readonly drip: Range;
  readonly weight: Range;
  readonly weightFrom: Citation;
  readonly closures: boolean;
  readonly from: Citation;
};

/** One roof under several coverings. It never says that it is strong enough. */
export type CoveringComparison = {
  readonly about: About;
  readonly coverings: readonly RoofCovering[];
  readonly cautions: readonly Caution[];
  readonly notices: readonly Notice[];
  readonly sheet: Sheet;
};

/** The roof coverings that the service knows. */
export type CoveringList = {
  readonly coverings: readonly Covering[];
  readonly sources: { readonly [key: string]: Source };
};

/** One roof covering with what belongs to it. Of several of a kind the cheapest for the job is bought, or what options.buyAs names. */
export type CoveringOffer = {
  readonly name?: string | undefined;
  readonly label?: string | undefined;
  readonly covering: "ribbed-steel" | "corrugated-steel" | "standing-seam-steel" | "asphalt-shingles" | "wood-shingles" | "wood-shakes" | "tile" | "mineral-roll" | "membrane" | "polycarbonate" | "boards";
  readonly sheets: CoveringSale;
  readonly weight?: string | MeasuredValue | undefined;
  readonly trims?: readonly TrimOffer[] | undefined;
  readonly closures?: readonly ClosureOffer[] | undefined;
  readonly sealant?: SealantOffer | undefined;
  readonly underlay?: {
    readonly label?: string | undefined;
    readonly width: string | MeasuredValue;
    readonly length: string | MeasuredValue;
    readonly price?: string | MeasuredValue | null | undefined;
    readonly bulk?: readonly ({
      readonly from: number;
      readonly price: string | MeasuredValue;
    })[] | undefined;
  } | undefined;
  readonly adhesive?: AdhesiveOffer | undefined;
  readonly deck?: string | undefined;
  readonly sheathing?: {
    readonly label?: string | undefined;
    readonly width: string | MeasuredValue;
    readonly length: string | MeasuredValue;
    readonly price?: string | MeasuredValue | null | undefined;
    readonly bulk?: readonly ({
      readonly from: number;
      readonly price: string | MeasuredValue;
    })[] | undefined;
  } | undefined;
};

/** The covering itself: panels, courses, rolls or boards. */
export type CoveringSale = {
  readonly form: "panels";
  readonly coverWidth: string | MeasuredValue;
  readonly sold: PanelSale;
} | {
  readonly form: "courses";
  readonly covers: string | MeasuredValue;
  readonly exposure: string | MeasuredValue;
  readonly pieces?: number | undefined;
  readonly price?: string | MeasuredValue | null | undefined;
  readonly bulk?: readonly ({
    readonly from: number;
    readonly price: string | MeasuredValue;
  })[] | undefined;
} | {
  readonly form: "rolls";
  readonly width: string | MeasuredValue;
  readonly length: string | MeasuredValue;
  readonly price?: string | MeasuredValue | null | undefined;
  readonly bulk?: readonly ({
    readonly from: number;
    readonly price: string | MeasuredValue;
  })[] | undefined;
} | {
  readonly form: "boards";
  readonly lumber: string;
};

/** Prices as the text of a CSV table. */
export type CsvCatalog = {
  readonly csv: string;
  readonly currency?: "AUD" | "BRL" | "CAD" | "CHF" | "CZK" | "DKK" | "EUR" | "GBP" | "INR" | "JPY" | "MXN" | "NOK" | "NZD" | "PLN" | "SEK" | "USD" | "ZAR" | undefined;
  readonly name?: string | undefined;
};

/** All pieces of the structure. */
export type CutList = {
  readonly pieces: Figure;
  readonly volume: Figure;
  readonly weightGreen: Figure;
  readonly weightDry: Figure;
  readonly heaviest: Figure | null;
  readonly personLoad: Figure;
  readonly groups: readonly CutListGroup[];
};

/** One piece group. */
export type CutListGroup = {
  readonly name: string;
  readonly label: string;
  readonly role: string;
  readonly count: Figure;
  readonly marks: readonly string[];
  readonly finished: PieceSize;
  readonly rough: PieceSize | null;
  readonly begins: readonly LengthFigure[];
  readonly spares: Figure | null;
  readonly notMilled: string | null;
  readonly route: "mill" | "buy" | null;
  readonly boughtAs: BoughtAs;
  readonly volume: Figure;
  readonly weight: PieceWeight | null;
  readonly rules: PieceRules;
};

/** Equal pieces one after the other. */
export type CutPieces = {
  readonly group: string;
  readonly length: string;
  readonly count: number;
};

/** Mill or buy. */
export type Decision = {
  readonly verdict: Verdict;
  readonly best: "milled" | "hired" | "mixed" | "bought";
  readonly routes: readonly RouteTotals[];
  readonly mill: RouteComparison | null;
  readonly hired: RouteComparison | null;
  readonly mix: RouteComparison | null;
  readonly groups: readonly GroupSaving[];
  readonly ranking: readonly string[];
  readonly rankingOfBought: readonly string[];
  readonly shared: SharedSaving | null;
  readonly search: MixSearch | null;
  readonly frontier: readonly FrontierMix[];
  readonly breakEvenPrice: Figure | null;
  readonly breakEvenMeasure: "nominal" | "actual" | "both" | null;
  readonly priceNow: Figure | null;
};

/** What carries the roof covering. */
export type Deck = {
  readonly kind?: "purlins" | "spaced-boards" | "solid-boards" | "sheets" | undefined;
  readonly spacing?: string | MeasuredValue | undefined;
  readonly closerRows?: number | undefined;
};

/** A demo project. */
export type Demo = {
  readonly name: string;
  readonly title: string;
  readonly structure: string;
  readonly catalog: string | null;
};

/** Prices that the service ships, invented for its demos. */
export type DemoCatalog = {
  readonly demo: string;
};

/** A demo price catalog. */
export type DemoCatalogRow = {
  readonly name: string;
  readonly title: string;
  readonly currency: string;
  readonly note: string | null;
};

/** Demo projects and catalogs. */
export type DemoList = {
  readonly note: string;
  readonly demos: readonly Demo[];
  readonly catalogs: readonly DemoCatalogRow[];
};

/** What one route pays in one department. */
export type DepartmentSpending = {
  readonly department: "lumber" | "fasteners" | "finishes" | "coverings" | "consumables" | "equipment" | "services";
  readonly amount: Figure | null;
  readonly unpriced: number;
};

/** A drawing to scale, with dimensions. */
export type Drawing = {
  readonly name: string;
  readonly title: string;
  readonly svg: string;
};

/** Which machine dresses a group, and why. */
export type DressingChoice = {
  readonly group: string;
  readonly by: "machine" | "hand" | "nobody";
  readonly order: "slab-first" | "piece-by-piece" | null;
  readonly rip: "one-face" | "both-faces" | null;
  readonly crosscutFaces: number;
  readonly because: readonly string[];
};

/** Days from the start on which lumber is stacked and dry. */
export type DryDays = {
  readonly startDay: MeasuredValue;
  readonly soonestDay: MeasuredValue;
  readonly likelyDay: MeasuredValue;
  readonly latestDay: MeasuredValue;
  readonly dates: {
    readonly start: string;
    readonly soonest: string;
    readonly likely: string;
    readonly latest: string;
  } | null;
};

/** Calendar days until lumber 1 in thick is at about 20 % moisture. */
export type DryingTime = {
  readonly good: MeasuredValue;
  readonly winter: MeasuredValue;
  readonly standIn: boolean;
};

/** Calendar time in the stack, to about 20 % moisture. */
export type DryingWeeks = {
  readonly soonest: Figure;
  readonly likely: Figure;
  readonly latest: Figure;
};

/** Hours by stage. */
export type Effort = {
  readonly valueOfHour: Figure;
  readonly crew: Figure;
  readonly helpers: Figure;
  readonly hoursPerWeek: Figure;
  readonly hoursPerDay: Figure;
  readonly order: readonly string[];
  readonly common: readonly Stage[];
  readonly own: readonly LabeledFigure[];
  readonly commonHours: Figure;
  readonly routes: readonly RouteEffort[];
};

/** A machine that the work needs, and on which terms it is had. */
export type Equipment = {
  readonly item: "chainsaw-mill" | "manual-band-mill" | "hydraulic-band-mill" | "swing-blade-mill" | "chainsaw" | "planer" | "jointer" | "table-saw" | "track-saw" | "sander" | "winch" | "tractor" | "trailer" | "scaffold" | "lift" | "auger";
  readonly terms: "paid" | "hired" | "bought";
  readonly share?: string | MeasuredValue | undefined;
};

/** A machine to hire or to buy. */
export type EquipmentOffer = {
  readonly name?: string | undefined;
  readonly label?: string | undefined;
  readonly item: "chainsaw-mill" | "manual-band-mill" | "hydraulic-band-mill" | "swing-blade-mill" | "chainsaw" | "planer" | "jointer" | "table-saw" | "track-saw" | "sander" | "winch" | "tractor" | "trailer" | "scaffold" | "lift" | "auger";
  readonly hirePerDay?: string | MeasuredValue | null | undefined;
  readonly minimumDays?: string | MeasuredValue | undefined;
  readonly purchase?: string | MeasuredValue | null | undefined;
  readonly resale?: string | MeasuredValue | undefined;
};

/** A whole estimate. It never says that a structure is strong enough. */
export type Estimate = {
  readonly about: About;
  readonly decision: Decision;
  readonly cutList: CutList;
  readonly geometry: Geometry;
  readonly sawing: Sawing;
  readonly purchasing: Purchasing;
  readonly coverings: readonly RoofCovering[];
  readonly fasteners: FastenerSchedule | null;
  readonly finish: FinishTakeoff;
  readonly effort: Effort;
  readonly nearMisses?: readonly NearMiss[] | undefined;
  readonly cautions: readonly Caution[];
  readonly notices: readonly Notice[];
  readonly sheet: Sheet;
  readonly heldPlans?: HeldPlans | undefined;
};

/** A structure, the logs at hand and local prices. */
export type EstimateRequest = {
  readonly title?: string | undefined;
  readonly structure: Structure;
  readonly logs?: readonly Log[] | undefined;
  readonly atHand?: readonly BoardAtHand[] | undefined;
  readonly catalog?: DemoCatalog | CsvCatalog | PriceCatalog | undefined;
  readonly currency?: "AUD" | "BRL" | "CAD" | "CHF" | "CZK" | "DKK" | "EUR" | "GBP" | "INR" | "JPY" | "MXN" | "NOK" | "NZD" | "PLN" | "SEK" | "USD" | "ZAR" | undefined;
  readonly shop?: Shop | undefined;
  readonly labor?: Labor | undefined;
  readonly site?: {
    readonly ungradedAccepted?: "yes" | "no" | "unknown" | undefined;
  } | undefined;
  readonly assumptions?: { readonly [key: string]: AssumptionValue } | undefined;
  readonly calibration?: readonly Calibration[] | undefined;
  readonly overrides?: { readonly [key: string]: string | MeasuredValue } | undefined;
  readonly lines?: readonly OwnLine[] | undefined;
  readonly heldPlans?: HeldPlans | undefined;
  readonly options?: Options | undefined;
};

/** Equal pieces, given as they are. */
export type ExplicitPieces = {
  readonly name: string;
  readonly label?: string | undefined;
  readonly role?: "post" | "beam" | "tie" | "ridge" | "rafter" | "brace" | "purlin" | "fascia" | "board" | "other" | undefined;
  readonly count: number;
  readonly section: string | {
    readonly thickness: string | MeasuredValue;
    readonly width: string | MeasuredValue;
  };
  readonly length: string | MeasuredValue;
  readonly crossings?: number | undefined;
  readonly runs?: number | undefined;
  readonly species?: readonly ("western-redcedar" | "northern-white-cedar" | "yellow-cedar" | "incense-cedar" | "port-orford-cedar" | "eastern-redcedar" | "atlantic-white-cedar" | "redwood-old-growth" | "redwood-young-growth" | "douglas-fir-coast" | "western-larch" | "tamarack" | "western-hemlock" | "eastern-hemlock" | "sitka-spruce" | "white-spruce" | "engelmann-spruce" | "eastern-white-pine" | "western-white-pine" | "ponderosa-pine" | "loblolly-pine" | "shortleaf-pine" | "longleaf-pine" | "red-pine" | "white-oak" | "northern-red-oak" | "black-locust" | "black-walnut" | "red-alder" | "sugar-maple" | "red-maple" | "yellow-poplar" | "white-ash" | "american-chestnut" | "european-larch" | "scots-pine" | "norway-spruce" | "european-oak" | "douglas-fir-europe" | "sweet-chestnut" | "robinia")[] | undefined;
  readonly heart?: "any" | "free" | "boxed" | undefined;
  readonly wane?: string | MeasuredValue | undefined;
  readonly surface?: "rough" | "dressed" | undefined;
  readonly seasoning?: "green" | "dried" | undefined;
  readonly structural?: boolean | undefined;
  readonly hiddenFaces?: "none" | "one-wide" | "both-wide" | undefined;
  readonly joint?: "post-top" | "splice" | "lap" | "mortise" | "plain-bolt" | "birdsmouth" | "two-seats" | "level-seats" | "hung" | "lap-and-hang" | "ledger" | "joist" | "bearer" | "king-post" | "ridge-cut" | "brace" | "crossing" | "face" | "ends" | "none" | undefined;
  readonly exposure?: "dry" | "sheltered" | "outdoors" | "salt" | undefined;
  readonly source?: "mill" | "buy" | "auto" | undefined;
  readonly buyAs?: string | undefined;
};

/** Boards of one section beyond what is wanted. */
export type ExtraBoards = {
  readonly section: string;
  readonly from: "sawn" | "unsawn";
  readonly asked: boolean;
  readonly count: number;
  readonly lengths: readonly {
    readonly length: string;
    readonly count: number;
  }[];
  readonly logs: readonly {
    readonly log: string;
    readonly lengths: readonly {
      readonly length: string;
      readonly count: number;
    }[];
  }[];
  readonly lumber: MeasuredValue;
};

/** Faces by texture. */
export type FacesByTexture = {
  readonly rough: Figure;
  readonly smooth: Figure;
};

/** Where the hardware must last: what `corrosion` follows from. */
export type FastenerExposure = {
  readonly climate: "dry" | "sheltered" | "outdoors" | "salt";
  readonly treated: boolean;
  readonly tannin: boolean;
};

/** One fastener in its packs. */
export type FastenerOffer = {
  readonly name?: string | undefined;
  readonly label?: string | undefined;
  readonly kind: "common-nail" | "box-nail" | "finish-nail" | "ring-shank-nail" | "roofing-nail" | "cap-nail" | "deck-screw" | "structural-screw" | "roof-screw" | "stitch-screw" | "panel-clip" | "clip-screw" | "hex-bolt" | "carriage-bolt" | "lag-screw" | "threaded-rod" | "nut" | "washer" | "post-base" | "joist-hanger" | "rafter-tie" | "angle-bracket";
  readonly penny?: "2d" | "3d" | "4d" | "5d" | "6d" | "7d" | "8d" | "9d" | "10d" | "12d" | "16d" | "20d" | "30d" | "40d" | "50d" | "60d" | undefined;
  readonly diameter?: string | MeasuredValue | undefined;
  readonly length?: string | MeasuredValue | undefined;
  readonly fits?: string | {
    readonly thickness: string | MeasuredValue;
    readonly width: string | MeasuredValue;
  } | undefined;
  readonly finish: "plain" | "electroplated" | "coated" | "hot-dip-galvanized" | "stainless";
  readonly packs: readonly FastenerPack[];
};

/** A pack by count or by weight; where both stand, the count rules. */
export type FastenerPack = {
  readonly count?: number | undefined;
  readonly weight?: string | MeasuredValue | undefined;
  readonly from?: number | undefined;
  readonly price?: string | MeasuredValue | null | undefined;
};

/** What holds the pieces together. No statement that it is enough. */
export type FastenerSchedule = {
  readonly lines: readonly ScheduleLine[];
};

/** One fault of a request: where, what is wrong, and what would be right. */
export type Fault = {
  readonly code: "not-a-quantity" | "wrong-dimension" | "out-of-range" | "wrong-shape" | "unknown-field" | "missing-field" | "duplicate-name" | "unknown-name" | "circular-lines" | "bad-formula" | "cannot-build" | "too-large" | "held-plan-misfit" | "not-overridable" | "currency-mix";
  readonly pointer?: string | undefined;
  readonly parameter?: string | undefined;
  readonly wrong: string;
  readonly cure: string;
};

/** A number of the sheet, with its unit and the name of its cell. */
export type Figure = {
  readonly cell: string;
  readonly value: string;
  readonly unit: string;
};

/** Faces of one piece group. */
export type FinishLine = {
  readonly group: string;
  readonly texture: "rough" | "smooth";
  readonly area: Figure;
};

/** One finish in its cans. Of several of a kind the cheapest for the job is bought, or what options.buyAs names. */
export type FinishOffer = {
  readonly name?: string | undefined;
  readonly label?: string | undefined;
  readonly kind: "oil-stain" | "water-repellent" | "solid-stain" | "paint" | "primer";
  readonly cans: readonly Can[];
  readonly coverage?: {
    readonly smooth?: string | MeasuredValue | undefined;
    readonly rough?: string | MeasuredValue | undefined;
  } | undefined;
};

/** Faces, coats and finish. */
export type FinishTakeoff = {
  readonly kind: string;
  readonly name: string | null;
  readonly area: FacesByTexture;
  readonly brushed: FacesByTexture;
  readonly volume: Figure | null;
  readonly upkeep: FinishUpkeep | null;
  readonly betweenCoats: Figure | null;
  readonly lines: readonly FinishLine[];
};

/** Re-coating, spread over the years. */
export type FinishUpkeep = {
  readonly recoatYears: Figure;
  readonly yearlyVolume: Figure;
  readonly yearlyArea: Figure;
  readonly yearlyCost?: Figure | null | undefined;
};

/** A floor over the whole frame: two bearers along it, joists across, boards along. Against a wall that carries the rafters a ledger takes the place of the bearer there. */
export type Floor = {
  readonly joistSpacing?: string | MeasuredValue | undefined;
  readonly gap?: string | MeasuredValue | undefined;
};

/** A hole below every post, those among pieces of your own included. Without this nothing below the post bases is taken off. */
export type Footings = {
  readonly kind?: "poured" | "precast" | undefined;
  readonly holes?: number | undefined;
  readonly frostDepth: string | MeasuredValue;
  readonly belowFrost?: string | MeasuredValue | undefined;
  readonly diameter?: string | MeasuredValue | undefined;
  readonly aboveGround?: string | MeasuredValue | undefined;
  readonly form?: "tube" | "none" | undefined;
  readonly tubeBelow?: string | MeasuredValue | undefined;
  readonly gravel?: string | MeasuredValue | undefined;
  readonly concrete?: "bags" | "ready-mixed" | undefined;
  readonly digging?: "hand" | "auger" | "hired" | undefined;
};

/** The size of a gable. */
export type Frame = {
  readonly span: LengthFigure;
  readonly length: LengthFigure;
  readonly eaveHeight: LengthFigure;
  readonly rise: LengthFigure;
  readonly run: LengthFigure;
  readonly eaveOverhang: LengthFigure;
  readonly farOverhang: LengthFigure;
  readonly gableOverhang: LengthFigure;
  readonly bays: Figure;
  readonly postPairs: Figure;
  readonly rafterSpacing: LengthFigure;
  readonly purlinSpacing: LengthFigure;
  readonly braceLeg: LengthFigure;
  readonly longestPiece: LengthFigure;
};

/** How much better than the frontier any mix could be. */
export type FrontierGap = {
  readonly from: MeasuredValue;
  readonly to: MeasuredValue;
  readonly gap: string;
};

/** The best mix over a stretch of values of an hour. */
export type FrontierMix = {
  readonly mills: readonly string[];
  readonly hired: boolean;
  readonly cash: MeasuredValue;
  readonly hours: MeasuredValue;
  readonly fromWage: MeasuredValue;
  readonly toWage: MeasuredValue | null;
  readonly switches: readonly FrontierSwitch[];
};

/** A group that changes sides, or some of whose pieces do. */
export type FrontierSwitch = {
  readonly group: string;
  readonly milled: string;
  readonly before: string;
};

/** A gable. */
export type GableGeometry = {
  readonly kind: "gable";
  readonly frame: Frame;
  readonly rafter: RafterCuts;
  readonly roof: RoofFrame;
  readonly farRafter: RafterCuts | null;
  readonly drawings?: readonly Drawing[] | undefined;
};

/** An open gable shelter: posts, plate beams, ties, ridge, rafters, purlins and fascia. */
export type GableStructure = {
  readonly kind: "gable";
  readonly span: string | MeasuredValue;
  readonly length: string | MeasuredValue;
  readonly bays?: number | undefined;
  readonly bayLengths?: readonly (string | MeasuredValue)[] | undefined;
  readonly rafterSpacing?: string | MeasuredValue | undefined;
  readonly braceLeg?: string | MeasuredValue | undefined;
  readonly longestPiece?: string | MeasuredValue | undefined;
  readonly exposure?: "dry" | "sheltered" | "outdoors" | "salt" | undefined;
  readonly footings?: Footings | undefined;
  readonly floor?: Floor | undefined;
  readonly extraPieces?: readonly ExplicitPieces[] | undefined;
  readonly eaveHeight?: string | MeasuredValue | undefined;
  readonly slope?: Slope | undefined;
  readonly rafterTail?: "plumb" | "square" | undefined;
  readonly seat?: string | MeasuredValue | undefined;
  readonly purlinSpacing?: string | MeasuredValue | undefined;
  readonly covering?: "ribbed-steel" | "corrugated-steel" | "standing-seam-steel" | "asphalt-shingles" | "wood-shingles" | "wood-shakes" | "tile" | "mineral-roll" | "membrane" | "polycarbonate" | "boards" | "none" | undefined;
  readonly deck?: Deck | undefined;
  readonly endBays?: number | undefined;
  readonly rafterBays?: "equal" | "short-last" | undefined;
  readonly lookoutSpacing?: string | MeasuredValue | undefined;
  readonly overhang?: {
    readonly eave?: string | MeasuredValue | undefined;
    readonly farEave?: string | MeasuredValue | undefined;
    readonly gable?: string | MeasuredValue | undefined;
  } | undefined;
  readonly ridge?: "board" | "beam" | undefined;
  readonly walls?: Walls | undefined;
  readonly groups?: {
    readonly posts?: GroupSettings | undefined;
    readonly "end-posts"?: GroupSettings | undefined;
    readonly beams?: GroupSettings | undefined;
    readonly "gable-beams"?: GroupSettings | undefined;
    readonly ties?: GroupSettings | undefined;
    readonly "king-posts"?: GroupSettings | undefined;
    readonly ridge?: GroupSettings | undefined;
    readonly rafters?: GroupSettings | undefined;
    readonly "fly-rafters"?: GroupSettings | undefined;
    readonly lookouts?: GroupSettings | undefined;
    readonly braces?: GroupSettings | undefined;
    readonly purlins?: GroupSettings | undefined;
    readonly "deck-boards"?: GroupSettings | undefined;
    readonly "eave-fascia"?: GroupSettings | undefined;
    readonly "rake-fascia"?: GroupSettings | undefined;
    readonly "wall-boards"?: GroupSettings | undefined;
    readonly "wall-battens"?: GroupSettings | undefined;
    readonly "wall-rails"?: GroupSettings | undefined;
    readonly "wall-studs"?: GroupSettings | undefined;
    readonly "opening-jambs"?: GroupSettings | undefined;
    readonly "opening-headers"?: GroupSettings | undefined;
    readonly "corner-boards"?: GroupSettings | undefined;
    readonly bearers?: GroupSettings | undefined;
    readonly "floor-ledger"?: GroupSettings | undefined;
    readonly joists?: GroupSettings | undefined;
    readonly "floor-boards"?: GroupSettings | undefined;
  } | undefined;
};

/** What to set out. */
export type Geometry = GableGeometry | LeanToGeometry | HipGeometry | PergolaGeometry | ListGeometry;

/** One group: milled or bought, and why. */
export type GroupReason = {
  readonly group: string;
  readonly side: "mill" | "buy" | "both";
  readonly milled: string;
  readonly bought: string;
  readonly why: string;
};

/** What milling one group is worth. */
export type GroupSaving = {
  readonly group: string;
  readonly label: string;
  readonly milled: boolean;
  readonly cashSaved: Figure;
  readonly extraHours: Figure;
  readonly payPerHour: Figure;
};

/** What is to differ from what the structure's rules derive for one piece group. */
export type GroupSettings = {
  readonly species?: readonly ("western-redcedar" | "northern-white-cedar" | "yellow-cedar" | "incense-cedar" | "port-orford-cedar" | "eastern-redcedar" | "atlantic-white-cedar" | "redwood-old-growth" | "redwood-young-growth" | "douglas-fir-coast" | "western-larch" | "tamarack" | "western-hemlock" | "eastern-hemlock" | "sitka-spruce" | "white-spruce" | "engelmann-spruce" | "eastern-white-pine" | "western-white-pine" | "ponderosa-pine" | "loblolly-pine" | "shortleaf-pine" | "longleaf-pine" | "red-pine" | "white-oak" | "northern-red-oak" | "black-locust" | "black-walnut" | "red-alder" | "sugar-maple" | "red-maple" | "yellow-poplar" | "white-ash" | "american-chestnut" | "european-larch" | "scots-pine" | "norway-spruce" | "european-oak" | "douglas-fir-europe" | "sweet-chestnut" | "robinia")[] | undefined;
  readonly heart?: "any" | "free" | "boxed" | undefined;
  readonly wane?: string | MeasuredValue | undefined;
  readonly surface?: "rough" | "dressed" | undefined;
  readonly seasoning?: "green" | "dried" | undefined;
  readonly structural?: boolean | undefined;
  readonly hiddenFaces?: "none" | "one-wide" | "both-wide" | undefined;
  readonly joint?: "post-top" | "splice" | "lap" | "mortise" | "plain-bolt" | "birdsmouth" | "two-seats" | "level-seats" | "hung" | "lap-and-hang" | "ledger" | "joist" | "bearer" | "king-post" | "ridge-cut" | "brace" | "crossing" | "face" | "ends" | "none" | undefined;
  readonly exposure?: "dry" | "sheltered" | "outdoors" | "salt" | undefined;
  readonly source?: "mill" | "buy" | "auto" | undefined;
  readonly buyAs?: string | undefined;
  readonly section?: string | {
    readonly thickness: string | MeasuredValue;
    readonly width: string | MeasuredValue;
  } | undefined;
  readonly count?: number | undefined;
  readonly length?: string | MeasuredValue | undefined;
  readonly remove?: true | undefined;
};

/** Work may be sent. */
export type Health = {
  readonly status: "ok";
};

/** What a log, a slab or a piece weighs, and who lifts it. */
export type HeavyLoad = {
  readonly kind: "log" | "slab" | "piece";
  readonly name: string;
  readonly count: number;
  readonly green: MeasuredValue;
  readonly dry: MeasuredValue;
  readonly people: number | null;
  readonly aid: "helpers" | "cart, rollers or levers" | "winch, tractor or lift" | null;
};

/** Plans kept from an earlier answer instead of planned anew. */
export type HeldPlans = {
  readonly milled?: readonly string[] | undefined;
  readonly hired?: boolean | undefined;
  readonly sawing?: {
    readonly milled?: SawingPlan | undefined;
    readonly hired?: SawingPlan | undefined;
    readonly mixed?: SawingPlan | undefined;
  } | undefined;
  readonly stock?: { readonly [key: string]: { readonly [key: string]: readonly StockCut[] } } | undefined;
  readonly offers?: readonly string[] | undefined;
};

/** The hip rafter. */
export type HipCuts = {
  readonly unitLength: LengthFigure;
  readonly lineLength: LengthFigure;
  readonly edgeLength: LengthFigure;
  readonly plumbCut: LengthFigure;
  readonly stockLength: LengthFigure;
  readonly slopeAngle: Figure;
  readonly backingAngle: Figure;
  readonly drop: LengthFigure;
  readonly seat: LengthFigure;
  readonly notchDepth: LengthFigure;
  readonly notchPlumb: LengthFigure;
  readonly sideCut: LengthFigure;
};

/** The size of a hip roof. */
export type HipFrame = {
  readonly span: LengthFigure;
  readonly length: LengthFigure;
  readonly eaveHeight: LengthFigure;
  readonly rise: LengthFigure;
  readonly run: LengthFigure;
  readonly eaveOverhang: LengthFigure;
  readonly ridgeLine: LengthFigure;
  readonly bays: Figure;
  readonly endBays: Figure;
  readonly commonsApart: LengthFigure;
  readonly jacksApart: LengthFigure;
};

/** A hip roof. */
export type HipGeometry = {
  readonly kind: "hip";
  readonly frame: HipFrame;
  readonly rafter: RafterCuts;
  readonly roof: RoofFrame;
  readonly endRafter: RafterCuts;
  readonly hip: HipCuts;
  readonly jacks: JackCuts;
  readonly drawings?: readonly Drawing[] | undefined;
};

/** A hip roof: beams all round, ridge, common, hip and jack rafters. */
export type HipStructure = {
  readonly kind: "hip";
  readonly span: string | MeasuredValue;
  readonly length: string | MeasuredValue;
  readonly bays?: number | undefined;
  readonly bayLengths?: readonly (string | MeasuredValue)[] | undefined;
  readonly rafterSpacing?: string | MeasuredValue | undefined;
  readonly braceLeg?: string | MeasuredValue | undefined;
  readonly longestPiece?: string | MeasuredValue | undefined;
  readonly exposure?: "dry" | "sheltered" | "outdoors" | "salt" | undefined;
  readonly footings?: Footings | undefined;
  readonly floor?: Floor | undefined;
  readonly extraPieces?: readonly ExplicitPieces[] | undefined;
  readonly eaveHeight?: string | MeasuredValue | undefined;
  readonly slope?: Slope | undefined;
  readonly rafterTail?: "plumb" | "square" | undefined;
  readonly seat?: string | MeasuredValue | undefined;
  readonly purlinSpacing?: string | MeasuredValue | undefined;
  readonly covering?: "ribbed-steel" | "corrugated-steel" | "standing-seam-steel" | "asphalt-shingles" | "wood-shingles" | "wood-shakes" | "tile" | "mineral-roll" | "membrane" | "polycarbonate" | "boards" | "none" | undefined;
  readonly deck?: Deck | undefined;
  readonly endBays?: number | undefined;
  readonly rafterBays?: "equal" | "short-last" | undefined;
  readonly overhang?: {
    readonly eave?: string | MeasuredValue | undefined;
  } | undefined;
  readonly walls?: Walls | undefined;
  readonly groups?: {
    readonly posts?: GroupSettings | undefined;
    readonly beams?: GroupSettings | undefined;
    readonly "end-beams"?: GroupSettings | undefined;
    readonly ties?: GroupSettings | undefined;
    readonly braces?: GroupSettings | undefined;
    readonly ridge?: GroupSettings | undefined;
    readonly rafters?: GroupSettings | undefined;
    readonly "end-rafters"?: GroupSettings | undefined;
    readonly hips?: GroupSettings | undefined;
    readonly jacks?: GroupSettings | undefined;
    readonly "side-purlins"?: GroupSettings | undefined;
    readonly "end-purlins"?: GroupSettings | undefined;
    readonly "deck-boards"?: GroupSettings | undefined;
    readonly "side-fascia"?: GroupSettings | undefined;
    readonly "end-fascia"?: GroupSettings | undefined;
    readonly "wall-boards"?: GroupSettings | undefined;
    readonly "wall-battens"?: GroupSettings | undefined;
    readonly "wall-rails"?: GroupSettings | undefined;
    readonly "wall-studs"?: GroupSettings | undefined;
    readonly "opening-jambs"?: GroupSettings | undefined;
    readonly "opening-headers"?: GroupSettings | undefined;
    readonly "corner-boards"?: GroupSettings | undefined;
    readonly bearers?: GroupSettings | undefined;
    readonly "floor-ledger"?: GroupSettings | undefined;
    readonly joists?: GroupSettings | undefined;
    readonly "floor-boards"?: GroupSettings | undefined;
  } | undefined;
};

/** What all jack rafters share. */
export type JackCuts = {
  readonly difference: LengthFigure;
  readonly sideCut: LengthFigure;
  readonly sideAngle: Figure;
};

/** A property of a wood, and how it is known. */
export type KnownProperty = {
  readonly value: MeasuredValue;
  readonly standIn: boolean;
  readonly how: string;
};

/** A number of the sheet with its words. */
export type LabeledFigure = {
  readonly label: string;
  readonly cell: string;
  readonly value: string;
  readonly unit: string;
};

/** People and what their time is worth. */
export type Labor = {
  readonly valueOfHour?: string | MeasuredValue | undefined;
  readonly crew?: number | undefined;
  readonly helpers?: number | undefined;
  readonly hoursPerWeek?: string | MeasuredValue | undefined;
  readonly hoursPerDay?: string | MeasuredValue | undefined;
  readonly startDate?: string | undefined;
};

/** The size of a lean-to. */
export type LeanToFrame = {
  readonly span: LengthFigure;
  readonly length: LengthFigure;
  readonly lowHeight: LengthFigure;
  readonly highHeight: LengthFigure;
  readonly rise: LengthFigure;
  readonly run: LengthFigure;
  readonly lowOverhang: LengthFigure;
  readonly highOverhang: LengthFigure | null;
  readonly endOverhang: LengthFigure;
  readonly bays: Figure;
};

/** A single slope. */
export type LeanToGeometry = {
  readonly kind: "lean-to";
  readonly highSide: "posts" | "ledger";
  readonly frame: LeanToFrame;
  readonly rafter: RafterCuts;
  readonly roof: RoofFrame;
  readonly drawings?: readonly Drawing[] | undefined;
};

/** A single slope: low and high posts and beams, rafters over both, purlins and fascia. */
export type LeanToStructure = {
  readonly kind: "lean-to";
  readonly span: string | MeasuredValue;
  readonly length: string | MeasuredValue;
  readonly bays?: number | undefined;
  readonly bayLengths?: readonly (string | MeasuredValue)[] | undefined;
  readonly rafterSpacing?: string | MeasuredValue | undefined;
  readonly braceLeg?: string | MeasuredValue | undefined;
  readonly longestPiece?: string | MeasuredValue | undefined;
  readonly exposure?: "dry" | "sheltered" | "outdoors" | "salt" | undefined;
  readonly footings?: Footings | undefined;
  readonly floor?: Floor | undefined;
  readonly extraPieces?: readonly ExplicitPieces[] | undefined;
  readonly eaveHeight?: string | MeasuredValue | undefined;
  readonly slope?: Slope | undefined;
  readonly rafterTail?: "plumb" | "square" | undefined;
  readonly seat?: string | MeasuredValue | undefined;
  readonly purlinSpacing?: string | MeasuredValue | undefined;
  readonly covering?: "ribbed-steel" | "corrugated-steel" | "standing-seam-steel" | "asphalt-shingles" | "wood-shingles" | "wood-shakes" | "tile" | "mineral-roll" | "membrane" | "polycarbonate" | "boards" | "none" | undefined;
  readonly deck?: Deck | undefined;
  readonly endBays?: number | undefined;
  readonly rafterBays?: "equal" | "short-last" | undefined;
  readonly lookoutSpacing?: string | MeasuredValue | undefined;
  readonly highSide?: "posts" | "ledger" | undefined;
  readonly overhang?: {
    readonly low?: string | MeasuredValue | undefined;
    readonly high?: string | MeasuredValue | undefined;
    readonly end?: string | MeasuredValue | undefined;
  } | undefined;
  readonly walls?: LeanToWalls | undefined;
  readonly groups?: {
    readonly "low-posts"?: GroupSettings | undefined;
    readonly "high-posts"?: GroupSettings | undefined;
    readonly "end-posts"?: GroupSettings | undefined;
    readonly "low-beams"?: GroupSettings | undefined;
    readonly "high-beams"?: GroupSettings | undefined;
    readonly ledger?: GroupSettings | undefined;
    readonly "end-beams"?: GroupSettings | undefined;
    readonly braces?: GroupSettings | undefined;
    readonly rafters?: GroupSettings | undefined;
    readonly "fly-rafters"?: GroupSettings | undefined;
    readonly lookouts?: GroupSettings | undefined;
    readonly purlins?: GroupSettings | undefined;
    readonly "deck-boards"?: GroupSettings | undefined;
    readonly "low-fascia"?: GroupSettings | undefined;
    readonly "high-fascia"?: GroupSettings | undefined;
    readonly "rake-fascia"?: GroupSettings | undefined;
    readonly "wall-boards"?: GroupSettings | undefined;
    readonly "wall-battens"?: GroupSettings | undefined;
    readonly "wall-rails"?: GroupSettings | undefined;
    readonly "wall-studs"?: GroupSettings | undefined;
    readonly "opening-jambs"?: GroupSettings | undefined;
    readonly "opening-headers"?: GroupSettings | undefined;
    readonly "corner-boards"?: GroupSettings | undefined;
    readonly bearers?: GroupSettings | undefined;
    readonly "floor-ledger"?: GroupSettings | undefined;
    readonly joists?: GroupSettings | undefined;
    readonly "floor-boards"?: GroupSettings | undefined;
  } | undefined;
};

/** Boarded sides; the rest stays open. */
export type LeanToWalls = {
  readonly boards?: "vertical" | "board-and-batten" | "horizontal" | undefined;
  readonly lap?: string | MeasuredValue | undefined;
  readonly clearance?: string | MeasuredValue | undefined;
  readonly backing?: string | MeasuredValue | undefined;
  readonly gableLap?: string | MeasuredValue | undefined;
  readonly sides: readonly ({
    readonly side: "low" | "high" | "left" | "right";
    readonly part?: "whole" | "below-plate" | "gable" | undefined;
    readonly openings?: readonly Opening[] | undefined;
  })[];
};

/** The least slope at which a covering is allowed. */
export type LeastSlope = {
  readonly rise: MeasuredValue;
  readonly when: string | null;
  readonly from: Citation;
};

/** Pieces that the plan does not cut. */
export type LeftOutPiece = {
  readonly piece: string;
  readonly part: string | null;
  readonly count: number;
  readonly why: "too-long" | "stock-lacks";
  readonly cure: string;
};

/** Sticks that lie at hand; they cost nothing. */
export type Leftover = {
  readonly length: string | MeasuredValue;
  readonly count: number;
};

/** A length of the sheet, also as a person marks it. */
export type LengthFigure = {
  readonly cell: string;
  readonly value: string;
  readonly unit: string;
  readonly marked: string;
};

/** A list of pieces: where they go is not said. */
export type ListGeometry = {
  readonly kind: "pieces";
  readonly drawings?: readonly Drawing[] | undefined;
};

/** One log, or several just like it. */
export type Log = {
  readonly name: string;
  readonly species: "western-redcedar" | "northern-white-cedar" | "yellow-cedar" | "incense-cedar" | "port-orford-cedar" | "eastern-redcedar" | "atlantic-white-cedar" | "redwood-old-growth" | "redwood-young-growth" | "douglas-fir-coast" | "western-larch" | "tamarack" | "western-hemlock" | "eastern-hemlock" | "sitka-spruce" | "white-spruce" | "engelmann-spruce" | "eastern-white-pine" | "western-white-pine" | "ponderosa-pine" | "loblolly-pine" | "shortleaf-pine" | "longleaf-pine" | "red-pine" | "white-oak" | "northern-red-oak" | "black-locust" | "black-walnut" | "red-alder" | "sugar-maple" | "red-maple" | "yellow-poplar" | "white-ash" | "american-chestnut" | "european-larch" | "scots-pine" | "norway-spruce" | "european-oak" | "douglas-fir-europe" | "sweet-chestnut" | "robinia";
  readonly count?: number | undefined;
  readonly length: string | MeasuredValue;
  readonly smallDiameter?: string | MeasuredValue | undefined;
  readonly smallGirth?: string | MeasuredValue | undefined;
  readonly largeDiameter?: string | MeasuredValue | undefined;
  readonly largeGirth?: string | MeasuredValue | undefined;
  readonly bark?: "over" | "inside" | undefined;
  readonly sweep?: "straight" | "some" | "bad" | string | MeasuredValue | undefined;
  readonly rot?: {
    readonly smallEnd?: string | MeasuredValue | undefined;
    readonly largeEnd?: string | MeasuredValue | undefined;
  } | undefined;
  readonly badEnds?: {
    readonly smallEnd?: string | MeasuredValue | undefined;
    readonly largeEnd?: string | MeasuredValue | undefined;
  } | undefined;
  readonly flare?: string | MeasuredValue | undefined;
  readonly distance?: string | MeasuredValue | undefined;
  readonly dirty?: boolean | undefined;
  readonly value?: string | MeasuredValue | undefined;
};

/** Cuts and pieces of one log. */
export type LogPlan = {
  readonly log: string;
  readonly cuts: readonly SawCut[];
  readonly pieces: readonly SawnPiece[];
};

/** What a log is reckoned to hold. */
export type LogScale = {
  readonly international: MeasuredValue;
  readonly scribner: MeasuredValue;
  readonly doyle: MeasuredValue;
  readonly cubic: MeasuredValue;
};

/** What is done with one log. */
export type LogSteps = {
  readonly log: string;
  readonly yields: readonly LogYield[];
  readonly bolts: readonly Bolt[];
};

/** Pieces of one group that a log gives. */
export type LogYield = {
  readonly group: string;
  readonly count: number;
  readonly marks: string;
};

/** How the logs are sawn, what comes of them, and what is short. */
export type LogsPlan = {
  readonly covers: string;
  readonly gap: string | null;
  readonly work: readonly LabeledFigure[];
  readonly yield: PlanYield;
  readonly logs: readonly LogSteps[];
  readonly unused: readonly string[];
  readonly short: readonly ShortGroup[];
  readonly extras?: readonly ExtraBoards[] | undefined;
};

/** One wood and section on offer, in its lengths. */
export type LumberOffer = {
  readonly name?: string | undefined;
  readonly label?: string | undefined;
  readonly species: "western-redcedar" | "northern-white-cedar" | "yellow-cedar" | "incense-cedar" | "port-orford-cedar" | "eastern-redcedar" | "atlantic-white-cedar" | "redwood-old-growth" | "redwood-young-growth" | "douglas-fir-coast" | "western-larch" | "tamarack" | "western-hemlock" | "eastern-hemlock" | "sitka-spruce" | "white-spruce" | "engelmann-spruce" | "eastern-white-pine" | "western-white-pine" | "ponderosa-pine" | "loblolly-pine" | "shortleaf-pine" | "longleaf-pine" | "red-pine" | "white-oak" | "northern-red-oak" | "black-locust" | "black-walnut" | "red-alder" | "sugar-maple" | "red-maple" | "yellow-poplar" | "white-ash" | "american-chestnut" | "european-larch" | "scots-pine" | "norway-spruce" | "european-oak" | "douglas-fir-europe" | "sweet-chestnut" | "robinia" | "spruce-pine-fir" | "spruce-pine-fir-south" | "hem-fir" | "douglas-fir-larch" | "southern-pine" | "western-cedars" | "redwood" | "european-whitewood" | "european-redwood";
  readonly section: string | {
    readonly thickness: string | MeasuredValue;
    readonly width: string | MeasuredValue;
  };
  readonly sizing?: "nominal" | "actual" | undefined;
  readonly actual?: string | {
    readonly thickness: string | MeasuredValue;
    readonly width: string | MeasuredValue;
  } | undefined;
  readonly surface?: "dressed" | "rough" | undefined;
  readonly seasoning?: "dry" | "green" | undefined;
  readonly treatment?: "none" | "above-ground" | "ground-contact" | undefined;
  readonly grade?: string | undefined;
  readonly gradeMarked?: boolean | undefined;
  readonly bundle?: number | undefined;
  readonly sold: LumberSale;
};

/** How lumber is priced: by the piece, by length, or by volume. */
export type LumberSale = {
  readonly by: "piece";
  readonly lengths: readonly PricedLength[];
} | {
  readonly by: "length";
  readonly price?: string | MeasuredValue | null | undefined;
  readonly bulk?: readonly ({
    readonly from: number;
    readonly price: string | MeasuredValue;
  })[] | undefined;
  readonly lengths: readonly (string | MeasuredValue)[] | {
    readonly shortest: string | MeasuredValue;
    readonly longest: string | MeasuredValue;
    readonly step: string | MeasuredValue;
  };
} | {
  readonly by: "volume";
  readonly price?: string | MeasuredValue | null | undefined;
  readonly bulk?: readonly ({
    readonly from: number;
    readonly price: string | MeasuredValue;
  })[] | undefined;
  readonly measure: "nominal" | "actual";
  readonly lengths: readonly (string | MeasuredValue)[] | {
    readonly shortest: string | MeasuredValue;
    readonly longest: string | MeasuredValue;
    readonly step: string | MeasuredValue;
  };
};

/** A decimal with its unit. */
export type MeasuredValue = {
  readonly value: string;
  readonly unit: string;
};

/** A kind of mill, with the assumptions that depend on it. */
export type Mill = {
  readonly kind: string;
  readonly name: string;
  readonly blade: "chain" | "band" | "circular";
  readonly crew: MeasuredValue;
  readonly widestCut: MeasuredValue;
  readonly largestLog: MeasuredValue;
  readonly longestLog: MeasuredValue;
  readonly output: Range;
  readonly assumptions: readonly Assumption[];
};

/** One cut of the mill through the whole width. */
export type MillCut = {
  readonly order: number;
  readonly height: string;
  readonly drop: string | null;
  readonly slab: number | null;
};

/** What the milling takes. */
export type MillingHours = {
  readonly stages: readonly LabeledFigure[];
  readonly total: Figure;
  readonly mill: Figure;
};

/** How well the best mix is searched. */
export type MixSearch = {
  readonly tried: number;
  readonly possible: number;
  readonly covers: string;
  readonly least: MeasuredValue | null;
  readonly gap: string | null;
  readonly bestFrom: MeasuredValue | null;
  readonly bestTo: MeasuredValue | null;
  readonly buyingFrom: MeasuredValue | null;
  readonly mixedSizesSave: MeasuredValue | null;
  readonly frontierGap: FrontierGap | null;
  readonly leastCovers: string | null;
};

/** A number to multiply by hand. */
export type Multiplied = {
  readonly value: string;
  readonly unit: string;
};

/** A small change of the structure that drops a length, a panel, a row or a piece. */
export type NearMiss = {
  readonly at: string;
  readonly from: string;
  readonly to: string;
  readonly text: string;
  readonly drops: readonly NearMissDrop[];
  readonly saves: {
    readonly value: string;
    readonly unit: string;
  };
  readonly hours: {
    readonly value: string;
    readonly unit: "person-h";
  };
};

/** Something that a small change makes fewer or shorter. */
export type NearMissDrop = {
  readonly what: string;
  readonly from: string;
  readonly to: string;
};

/** Something to be had, whoever sells it. */
export type Need = {
  readonly name: string;
  readonly label: string;
  readonly quantity: Figure;
};

/** What to know of how the estimate was made. */
export type Notice = {
  readonly code: "default" | "substitution" | "bought-size" | "tolerance" | "unpriced" | "not-milled" | "mill-crew" | "short" | "no-hardware" | "green-finish" | "open-frame" | "unused" | "too-long" | "in-the-way" | "slim-log" | "any-wood" | "decay";
  readonly text: string;
  readonly pointer: string | null;
};

/** An OpenAPI 3.1 document. */
export type OpenApiDocument = {
  readonly openapi: string;
  readonly [key: string]: unknown;
};

/** A door or window in a wall. */
export type Opening = {
  readonly width: string | MeasuredValue;
  readonly height: string | MeasuredValue;
  readonly sill?: string | MeasuredValue | undefined;
  readonly from?: string | MeasuredValue | undefined;
  readonly count?: number | undefined;
};

/** How the estimate is made. */
export type Options = {
  readonly measure?: "inch-pound" | "metric" | undefined;
  readonly fallDown?: "spares" | "buy" | undefined;
  readonly finish?: "oil-stain" | "water-repellent" | "solid-stain" | "paint" | "primer" | "none" | undefined;
  readonly coverings?: readonly ("ribbed-steel" | "corrugated-steel" | "standing-seam-steel" | "asphalt-shingles" | "wood-shingles" | "wood-shakes" | "tile" | "mineral-roll" | "membrane" | "polycarbonate" | "boards")[] | undefined;
  readonly buyAs?: readonly string[] | undefined;
  readonly sealEnds?: boolean | undefined;
  readonly mostCash?: string | MeasuredValue | undefined;
  readonly mostHours?: string | MeasuredValue | undefined;
  readonly frontier?: boolean | undefined;
  readonly mixedSizes?: boolean | undefined;
  readonly lightFixing?: "screws" | "nails" | undefined;
};

/** A line of your own: money is added to the cash of every route, person-hours to its hours. */
export type OwnLine = {
  readonly name: string;
  readonly label: string;
  readonly formula: string;
};

/** Packs of one size. */
export type PackCount = {
  readonly label: string;
  readonly count: Figure;
};

/** How panels are sold: in stock lengths, or cut to length. */
export type PanelSale = {
  readonly by: "piece";
  readonly lengths: readonly PricedLength[];
} | {
  readonly by: "cut-length";
  readonly price?: string | MeasuredValue | null | undefined;
  readonly shortest: string | MeasuredValue;
  readonly longest: string | MeasuredValue;
  readonly step: string | MeasuredValue;
};

/** Panels with their fixing and trim. */
export type Panels = {
  readonly count: Figure;
  readonly trims: readonly RoofTrim[];
  readonly eaveClosures: Figure | null;
  readonly ridgeClosures: Figure | null;
  readonly sealant: Figure | null;
  readonly roofScrews: Figure;
  readonly stitchScrews: Figure;
  readonly clips: Figure | null;
};

/** The size of a pergola. */
export type PergolaFrame = {
  readonly span: LengthFigure;
  readonly length: LengthFigure;
  readonly height: LengthFigure;
  readonly topWidth: LengthFigure;
  readonly topLength: LengthFigure;
  readonly bays: Figure;
  readonly raftersApart: LengthFigure;
};

/** A pergola. */
export type PergolaGeometry = {
  readonly kind: "pergola";
  readonly frame: PergolaFrame;
  readonly drawings?: readonly Drawing[] | undefined;
};

/** Posts, two beams, open rafters and slats. */
export type PergolaStructure = {
  readonly kind: "pergola";
  readonly span: string | MeasuredValue;
  readonly length: string | MeasuredValue;
  readonly height?: string | MeasuredValue | undefined;
  readonly bays?: number | undefined;
  readonly bayLengths?: readonly (string | MeasuredValue)[] | undefined;
  readonly rafterSpacing?: string | MeasuredValue | undefined;
  readonly braceLeg?: string | MeasuredValue | undefined;
  readonly longestPiece?: string | MeasuredValue | undefined;
  readonly exposure?: "dry" | "sheltered" | "outdoors" | "salt" | undefined;
  readonly footings?: Footings | undefined;
  readonly floor?: Floor | undefined;
  readonly extraPieces?: readonly ExplicitPieces[] | undefined;
  readonly overhang?: {
    readonly side?: string | MeasuredValue | undefined;
    readonly end?: string | MeasuredValue | undefined;
  } | undefined;
  readonly slatSpacing?: string | MeasuredValue | undefined;
  readonly walls?: Walls | undefined;
  readonly groups?: {
    readonly posts?: GroupSettings | undefined;
    readonly beams?: GroupSettings | undefined;
    readonly braces?: GroupSettings | undefined;
    readonly rafters?: GroupSettings | undefined;
    readonly slats?: GroupSettings | undefined;
    readonly "wall-boards"?: GroupSettings | undefined;
    readonly "wall-battens"?: GroupSettings | undefined;
    readonly "wall-rails"?: GroupSettings | undefined;
    readonly "wall-studs"?: GroupSettings | undefined;
    readonly "opening-jambs"?: GroupSettings | undefined;
    readonly "opening-headers"?: GroupSettings | undefined;
    readonly "corner-boards"?: GroupSettings | undefined;
    readonly bearers?: GroupSettings | undefined;
    readonly "floor-ledger"?: GroupSettings | undefined;
    readonly joists?: GroupSettings | undefined;
    readonly "floor-boards"?: GroupSettings | undefined;
  } | undefined;
};

/** A structure given as its pieces. */
export type PieceList = {
  readonly kind: "pieces";
  readonly pieces: readonly ExplicitPieces[];
  readonly exposure?: "dry" | "sheltered" | "outdoors" | "salt" | undefined;
  readonly footings?: Footings | undefined;
};

/** How pieces of a group are made. */
export type PieceRules = {
  readonly species: readonly string[];
  readonly heart: "any" | "free" | "boxed";
  readonly wane: string;
  readonly surface: "rough" | "dressed";
  readonly seasoning: "green" | "dried";
  readonly structural: boolean;
  readonly hiddenFaces: "none" | "one-wide" | "both-wide";
  readonly joint: string;
  readonly source: "mill" | "buy" | "auto";
};

/** Size of one piece. */
export type PieceSize = {
  readonly section: string;
  readonly thickness: Figure;
  readonly width: Figure;
  readonly length: LengthFigure;
};

/** Weight of one piece. */
export type PieceWeight = {
  readonly green: Figure;
  readonly dry: Figure;
  readonly lifted: Figure;
  readonly people: Figure;
};

/** Hole and distances, as multiples of the diameter (NDS, from memory); as they are marked. */
export type Placing = {
  readonly hole: string | null;
  readonly pilot: string | null;
  readonly edge: string;
  readonly end: string;
  readonly boredEnd: string | null;
  readonly endRoom: string | null;
  readonly endFits: boolean;
  readonly apart: string;
  readonly leastWidth: string;
  readonly fits: boolean;
};

/** What a plan gets out of its logs. */
export type PlanYield = {
  readonly lumber: Figure;
  readonly rules: readonly ScaledBy[];
};

/** What a local supplier sells, and at which price. */
export type PriceCatalog = {
  readonly name: string;
  readonly note?: string | undefined;
  readonly currency: "AUD" | "BRL" | "CAD" | "CHF" | "CZK" | "DKK" | "EUR" | "GBP" | "INR" | "JPY" | "MXN" | "NOK" | "NZD" | "PLN" | "SEK" | "USD" | "ZAR";
  readonly lumber?: readonly LumberOffer[] | undefined;
  readonly fasteners?: readonly FastenerOffer[] | undefined;
  readonly finishes?: readonly FinishOffer[] | undefined;
  readonly coverings?: readonly CoveringOffer[] | undefined;
  readonly consumables?: readonly ConsumableOffer[] | undefined;
  readonly equipment?: readonly EquipmentOffer[] | undefined;
  readonly services?: readonly ServiceOffer[] | undefined;
  readonly taxes?: readonly Tax[] | undefined;
};

/** A stock length and the price of one piece. */
export type PricedLength = {
  readonly length: string | MeasuredValue;
  readonly price?: string | MeasuredValue | null | undefined;
  readonly bulk?: readonly ({
    readonly from: number;
    readonly price: string | MeasuredValue;
  })[] | undefined;
  readonly available?: number | undefined;
};

/** Problem details after RFC 9457, with one entry a fault. */
export type Problem = {
  readonly type: string;
  readonly title: string;
  readonly status: number;
  readonly detail: string;
  readonly instance?: string | undefined;
  readonly choices?: readonly string[] | undefined;
  readonly faults: readonly Fault[];
};

/** Two numbers whose product, rounded once, is the amount to its last digit. */
export type Product = {
  readonly measure: Multiplied;
  readonly price: Multiplied;
};

/** The shopping lists. */
export type Purchasing = {
  readonly shared: readonly ShoppingDepartment[];
  readonly own: readonly LabeledFigure[];
  readonly routes: readonly RoutePurchasing[];
};

/** Jobs of the worker threads. */
export type Queue = {
  readonly workers: number;
  readonly underWay: number;
  readonly waiting: number;
  readonly mostWaiting: number;
  readonly answered: number;
  readonly refused: number;
  readonly calledOff: number;
};

/** The common rafter. */
export type RafterCuts = {
  readonly unitLength: LengthFigure;
  readonly lineLength: LengthFigure;
  readonly edgeLength: LengthFigure;
  readonly plumbCut: LengthFigure;
  readonly stockLength: LengthFigure;
  readonly slopeAngle: Figure;
  readonly seat: LengthFigure;
  readonly notchDepth: LengthFigure;
  readonly notchPlumb: LengthFigure;
  readonly heightAbovePlate: LengthFigure;
  readonly gapAtOneDegree: LengthFigure;
};

/** A value that is not known exactly. */
export type Range = {
  readonly low: MeasuredValue;
  readonly likely: MeasuredValue;
  readonly high: MeasuredValue;
};

/** One roof covering as a full system. */
export type RoofCovering = {
  readonly kind: string;
  readonly name: string;
  readonly form: "panels" | "courses" | "rolls" | "boards";
  readonly slope: SlopeVerdict;
  readonly faces: readonly CoveredSlope[];
  readonly area: Figure;
  readonly squares: Figure;
  readonly weight: Figure;
  readonly trimLength: LengthFigure;
  readonly life: Figure;
  readonly underlayLayers: number;
  readonly panels: Panels | null;
  readonly courses: Courses | null;
  readonly parts: readonly RoofPart[];
  readonly built: boolean;
  readonly compared: ComparedCovering | null;
  readonly drawings?: readonly Drawing[] | undefined;
};

/** The roof above the frame. */
export type RoofFrame = {
  readonly length: LengthFigure;
  readonly slopeLength: LengthFigure;
  readonly rafterLines: Figure;
  readonly purlinRows: Figure;
  readonly ridge: "board" | "beam" | "none";
};

/** Something that the covering takes, whoever sells it. */
export type RoofPart = {
  readonly name: string;
  readonly label: string;
  readonly quantity: Figure;
};

/** One strip of a hipped slope. */
export type RoofStrip = {
  readonly reach: LengthFigure;
  readonly up: Figure;
  readonly length: LengthFigure;
};

/** Metal trim of one kind. */
export type RoofTrim = {
  readonly kind: string;
  readonly length: LengthFigure;
  readonly pieces: Figure;
  readonly pieceLength: LengthFigure;
};

/** A route against buying everything. */
export type RouteComparison = {
  readonly cashSaved: Figure;
  readonly extraHours: Figure;
  readonly payPerHour: Figure;
};

/** Hours of one route. */
export type RouteEffort = {
  readonly route: "milled" | "hired" | "mixed" | "bought";
  readonly stages: readonly Stage[];
  readonly hours: Figure;
  readonly elapsed: Figure;
  readonly millHours: Figure | null;
  readonly drying: DryingWeeks | null;
  readonly work: Work | null;
};

/** What one route buys. */
export type RoutePurchasing = {
  readonly route: "milled" | "hired" | "mixed" | "bought";
  readonly departments: readonly ShoppingDepartment[];
  readonly spent: readonly DepartmentSpending[];
  readonly stages: readonly StageCost[];
  readonly ofNoStage: readonly DepartmentSpending[];
  readonly taxes: readonly LabeledFigure[];
  readonly logValue: Figure | null;
  readonly lumber: Figure;
  readonly cash: Figure;
  readonly unpriced: number;
  readonly stock: readonly StockPlan[] | null;
};

/** The sawing plan of one route. */
export type RouteSawing = {
  readonly route: "milled" | "hired" | "mixed" | "bought";
  readonly covers: string;
  readonly gap: string | null;
  readonly work: readonly LabeledFigure[];
  readonly yield: PlanYield;
  readonly logs: readonly LogSteps[];
  readonly unused: readonly string[];
  readonly short: readonly ShortGroup[];
  readonly extras?: readonly ExtraBoards[] | undefined;
};

/** What one route comes to. */
export type RouteTotals = {
  readonly route: "milled" | "hired" | "mixed" | "bought";
  readonly label: string;
  readonly mills: readonly string[];
  readonly hired: boolean;
  readonly cash: Figure;
  readonly hours: Figure;
  readonly elapsed: Figure;
  readonly total: Figure;
  readonly unpriced: number;
};

/** One through-cut. */
export type SawCut = {
  readonly tool: "buck" | "mill" | "rip" | "cross";
  readonly axis: "x" | "y" | "z";
  readonly part: number;
  readonly lo: number;
  readonly hi: number;
};

/** Logs and how to saw them. */
export type Sawing = {
  readonly logs: readonly SoundLog[];
  readonly plans: readonly RouteSawing[];
};

/** How the plan is made. */
export type SawingOptions = {
  readonly measure?: "inch-pound" | "metric" | undefined;
  readonly fallDown?: "spares" | "buy" | undefined;
};

/** Cuts of all logs, in whole grid steps. */
export type SawingPlan = {
  readonly gridMm: string;
  readonly logs: readonly LogPlan[];
  readonly buy: { readonly [key: string]: number };
};

/** Logs at hand, pieces wanted, and the mill. */
export type SawingRequest = {
  readonly title?: string | undefined;
  readonly pieces: readonly ExplicitPieces[];
  readonly logs: readonly Log[];
  readonly shop?: SawingShop | undefined;
  readonly labor?: Labor | undefined;
  readonly assumptions?: { readonly [key: string]: AssumptionValue } | undefined;
  readonly calibration?: readonly Calibration[] | undefined;
  readonly overrides?: { readonly [key: string]: string | MeasuredValue } | undefined;
  readonly currency?: "AUD" | "BRL" | "CAD" | "CHF" | "CZK" | "DKK" | "EUR" | "GBP" | "INR" | "JPY" | "MXN" | "NOK" | "NZD" | "PLN" | "SEK" | "USD" | "ZAR" | undefined;
  readonly catalog?: DemoCatalog | CsvCatalog | PriceCatalog | undefined;
  readonly options?: SawingOptions | undefined;
  readonly heldPlan?: SawingPlan | undefined;
};

/** Mill and machines; who plans for a hired sawyer gives the sawyer's. */
export type SawingShop = {
  readonly mill?: "chainsaw-mill" | "manual-band-mill" | "hydraulic-band-mill" | "swing-blade-mill" | "none" | undefined;
  readonly longestBolt?: string | MeasuredValue | undefined;
  readonly thinnestSlab?: string | MeasuredValue | undefined;
  readonly tableSaw?: "table-saw" | "none" | undefined;
  readonly deepestRip?: string | MeasuredValue | undefined;
  readonly crosscutDepth?: string | MeasuredValue | undefined;
  readonly planerWidth?: string | MeasuredValue | undefined;
  readonly jointer?: "jointer" | "none" | undefined;
  readonly jointerWidth?: string | MeasuredValue | undefined;
  readonly planerDepth?: string | MeasuredValue | undefined;
  readonly heaviestFed?: string | MeasuredValue | undefined;
  readonly longestFed?: string | MeasuredValue | undefined;
  readonly settingStep?: string | MeasuredValue | undefined;
  readonly ripKerf?: string | MeasuredValue | undefined;
  readonly getOut?: "hand" | "cart" | "winch" | "tractor" | undefined;
  readonly carry?: "hand" | "cart" | "winch" | "tractor" | undefined;
  readonly planer?: "portable-planer" | "stationary-planer" | "none" | undefined;
  readonly sharpening?: "self" | "service" | undefined;
  readonly lumber?: "delivered" | "fetched" | undefined;
  readonly equipment?: readonly Equipment[] | undefined;
};

/** Whether the logs hold the pieces, and how to saw them. */
export type SawnLogs = {
  readonly about: About;
  readonly pieces: readonly WantedPieces[];
  readonly logs: readonly SoundLog[];
  readonly plan: LogsPlan;
  readonly hours: MillingHours;
  readonly cautions: readonly Caution[];
  readonly notices: readonly Notice[];
  readonly sheet: Sheet;
  readonly heldPlan?: SawingPlan | undefined;
};

/** A piece as a box in grid steps about its bolt's sawing axis. */
export type SawnPiece = {
  readonly group: string;
  readonly part: number;
  readonly x0: number;
  readonly x1: number;
  readonly y0: number;
  readonly y1: number;
  readonly z0: number;
  readonly z1: number;
};

/** A hired sawyer with a mill, compared with milling yourself and with buying. */
export type Sawyer = {
  readonly charge: "hour" | "board-foot";
  readonly mill?: "chainsaw-mill" | "manual-band-mill" | "hydraulic-band-mill" | "swing-blade-mill" | undefined;
  readonly helpers?: number | undefined;
  readonly minimum?: string | MeasuredValue | undefined;
};

/** Lumber sawn beside what the logs scale by one rule. */
export type ScaledBy = {
  readonly rule: "international" | "scribner" | "doyle" | "smalian" | "huber" | "newton";
  readonly label: string;
  readonly scale: Figure;
  readonly share: Figure | null;
};

/** Fasteners of one sort. */
export type ScheduleItem = {
  readonly fastener: string;
  readonly label: string;
  readonly count: Figure;
  readonly diameter: string | null;
  readonly length: string | null;
  readonly corrosion: string;
};

/** Equal connections with their hardware. */
export type ScheduleLine = {
  readonly name: string;
  readonly label: string;
  readonly kind: string;
  readonly groups: readonly string[];
  readonly sites: Figure;
  readonly exposure: FastenerExposure;
  readonly items: readonly ScheduleItem[];
  readonly ifBought?: readonly ScheduleItem[] | undefined;
  readonly placing: Placing | null;
};

/** Butyl tape or sealant for laps and closures. */
export type SealantOffer = {
  readonly length: string | MeasuredValue;
  readonly price?: string | MeasuredValue | null | undefined;
  readonly bulk?: readonly ({
    readonly from: number;
    readonly price: string | MeasuredValue;
  })[] | undefined;
};

/** Work or a journey that is paid for. */
export type ServiceOffer = {
  readonly name?: string | undefined;
  readonly label?: string | undefined;
  readonly item: "delivery" | "grading-visit" | "log-hauling" | "milling-set-up" | "post-hole-auger" | "disposal";
  readonly price?: string | MeasuredValue | null | undefined;
} | {
  readonly name?: string | undefined;
  readonly label?: string | undefined;
  readonly item: "milling-per-board-foot";
  readonly price?: string | MeasuredValue | null | undefined;
} | {
  readonly name?: string | undefined;
  readonly label?: string | undefined;
  readonly item: "milling-per-hour";
  readonly price?: string | MeasuredValue | null | undefined;
};

/** What groups share. */
export type SharedSaving = {
  readonly route: "milled" | "hired" | "mixed" | "bought";
  readonly cash: Figure;
  readonly hours: Figure;
};

/** The estimate as a table of blocks of lines of cells. */
export type Sheet = {
  readonly whole: boolean;
  readonly blocks: readonly SheetBlock[];
};

/** A block of the sheet. */
export type SheetBlock = {
  readonly name: string;
  readonly title: string;
  readonly cells: readonly Cell[];
  readonly lines: readonly SheetLine[];
};

/** Cells about one thing. */
export type SheetLine = {
  readonly name: string;
  readonly title: string;
  readonly cells: readonly Cell[];
};

/** Mill and machines. */
export type Shop = {
  readonly mill?: "chainsaw-mill" | "manual-band-mill" | "hydraulic-band-mill" | "swing-blade-mill" | "none" | undefined;
  readonly longestBolt?: string | MeasuredValue | undefined;
  readonly thinnestSlab?: string | MeasuredValue | undefined;
  readonly tableSaw?: "table-saw" | "none" | undefined;
  readonly deepestRip?: string | MeasuredValue | undefined;
  readonly crosscutDepth?: string | MeasuredValue | undefined;
  readonly planerWidth?: string | MeasuredValue | undefined;
  readonly jointer?: "jointer" | "none" | undefined;
  readonly jointerWidth?: string | MeasuredValue | undefined;
  readonly planerDepth?: string | MeasuredValue | undefined;
  readonly heaviestFed?: string | MeasuredValue | undefined;
  readonly longestFed?: string | MeasuredValue | undefined;
  readonly settingStep?: string | MeasuredValue | undefined;
  readonly ripKerf?: string | MeasuredValue | undefined;
  readonly getOut?: "hand" | "cart" | "winch" | "tractor" | undefined;
  readonly carry?: "hand" | "cart" | "winch" | "tractor" | undefined;
  readonly planer?: "portable-planer" | "stationary-planer" | "none" | undefined;
  readonly sharpening?: "self" | "service" | undefined;
  readonly lumber?: "delivered" | "fetched" | undefined;
  readonly sawyer?: Sawyer | undefined;
  readonly equipment?: readonly Equipment[] | undefined;
};

/** Lines of one department. */
export type ShoppingDepartment = {
  readonly department: "lumber" | "fasteners" | "finishes" | "coverings" | "consumables" | "equipment" | "services";
  readonly lines: readonly ShoppingLine[];
};

/** One line of a shopping list. No price is null, never zero. */
export type ShoppingLine = {
  readonly name: string;
  readonly label: string;
  readonly quantity: Figure;
  readonly share?: true | undefined;
  readonly each?: LengthFigure | undefined;
  readonly packs?: readonly PackCount[] | undefined;
  readonly leftOver?: Figure | undefined;
  readonly spares?: Figure | undefined;
  readonly price: Figure | null;
  readonly amount: Figure | null;
  readonly product?: Product | undefined;
  readonly add?: string | undefined;
};

/** Pieces that have to be bought although their group is milled. */
export type ShortGroup = {
  readonly group: string;
  readonly label: string;
  readonly wanted: number;
  readonly missing: number;
  readonly why: string;
};

/** A slab, as it comes off the bolt. */
export type Slab = {
  readonly thickness: string;
  readonly from: string;
  readonly to: string;
  readonly onMill: boolean;
  readonly rips: number;
  readonly strips: readonly Strip[];
  readonly tally: MeasuredValue;
};

/** Slope of the roof as rise over run, both as lengths. */
export type Slope = {
  readonly rise: string | MeasuredValue;
  readonly run: string | MeasuredValue;
};

/** Whether a covering is allowed at the roof's slope. */
export type SlopeVerdict = {
  readonly allowed: boolean;
  readonly lapsSealed: boolean;
  readonly reason: string;
  readonly reference: string;
};

/** A log as sound wood. */
export type SoundLog = {
  readonly name: string;
  readonly species: string;
  readonly dirty: boolean;
  readonly length: MeasuredValue;
  readonly smallDiameter: MeasuredValue;
  readonly largeDiameter: MeasuredValue;
  readonly sweep: MeasuredValue;
  readonly rotSmall: MeasuredValue;
  readonly rotLarge: MeasuredValue;
  readonly bark: MeasuredValue;
  readonly scale: LogScale;
  readonly weight: MeasuredValue;
  readonly value: MeasuredValue | null;
};

/** A publication that rows cite. */
export type Source = {
  readonly title: string;
  readonly publisher: string;
  readonly year: string | null;
  readonly part: string | null;
  readonly known: "seen" | "memory" | "common practice" | "computed" | "assumption";
};

/** One wood. */
export type Species = {
  readonly id: string;
  readonly name: string;
  readonly latin: string;
  readonly kind: "softwood" | "hardwood";
  readonly greenWeight: KnownProperty;
  readonly radialShrinkage: KnownProperty;
  readonly tangentialShrinkage: KnownProperty;
  readonly bark: KnownProperty;
  readonly drying: DryingTime;
  readonly decay: "resistant" | "moderate" | "nonresistant";
  readonly tannin: "rich" | "some" | "little";
};

/** The woods that the service knows. */
export type SpeciesList = {
  readonly species: readonly Species[];
  readonly tradeGroups: readonly TradeGroup[];
  readonly sources: { readonly [key: string]: Source };
};

/** A block of work. */
export type Stage = {
  readonly stage: string;
  readonly label: string;
  readonly hours: Figure;
};

/** What one stage of work costs in cash. */
export type StageCost = {
  readonly stage: string;
  readonly amount: Figure | null;
  readonly unpriced: number;
};

/** One piece on a stick. */
export type StickCut = {
  readonly piece: string;
  readonly part: string | null;
  readonly length: string;
  readonly from: string;
  readonly to: string;
};

/** How sticks are cut. */
export type StickCuts = {
  readonly stock: string;
  readonly times: number;
  readonly pieces: readonly StickPieces[];
  readonly marks: readonly (readonly (string | null)[])[];
  readonly offcut: string;
  readonly drawing?: string | undefined;
};

/** Sticks of one length to buy. */
export type StickLine = {
  readonly stock: string;
  readonly planned: Figure;
  readonly spares: Figure;
  readonly quantity: Figure;
  readonly price: Figure | null;
  readonly amount: Figure | null;
  readonly product?: Product | undefined;
};

/** Equal lengths one after the other, each ripped into equal pieces. */
export type StickPieces = {
  readonly group: string;
  readonly length: string;
  readonly count: number;
  readonly abreast: number;
};

/** Sticks cut alike. */
export type StockCut = {
  readonly stock: string;
  readonly pieces: readonly string[];
  readonly times: number;
};

/** A length that is sold. */
export type StockOnOffer = {
  readonly length: string | MeasuredValue;
  readonly price?: string | MeasuredValue | null | undefined;
  readonly bulk?: readonly ({
    readonly from: number;
    readonly price: string | MeasuredValue;
  })[] | undefined;
  readonly available?: number | undefined;
};

/** Pieces to cut from bought lengths, all of one section. */
export type StockOrder = {
  readonly pieces: readonly WantedPiece[];
  readonly stocks: readonly StockOnOffer[];
  readonly rate?: StockRate | undefined;
  readonly leftovers?: readonly Leftover[] | undefined;
  readonly kerf?: string | MeasuredValue | undefined;
  readonly endTrim?: string | MeasuredValue | undefined;
  readonly defects?: string | MeasuredValue | undefined;
  readonly bundle?: number | undefined;
  readonly currency?: "AUD" | "BRL" | "CAD" | "CHF" | "CZK" | "DKK" | "EUR" | "GBP" | "INR" | "JPY" | "MXN" | "NOK" | "NZD" | "PLN" | "SEK" | "USD" | "ZAR" | undefined;
  readonly measure?: "inch-pound" | "metric" | undefined;
  readonly heldPlan?: readonly StockCut[] | undefined;
};

/** What to buy and how to cut it. */
export type StockOrderPlan = {
  readonly engine: string;
  readonly requestDigest: string;
  readonly measure: "inch-pound" | "metric";
  readonly currency: string;
  readonly buy: readonly StickLine[];
  readonly total: Figure | null;
  readonly unpriced: number;
  readonly plan: StockProof;
  readonly boards: readonly Board[];
  readonly used: string;
  readonly short: readonly LeftOutPiece[];
  readonly notes: readonly string[];
  readonly sheet: Sheet;
  readonly heldPlan?: readonly StockCut[] | undefined;
};

/** How the sticks of one offer are cut. */
export type StockPlan = {
  readonly offer: string;
  readonly label: string;
  readonly covers: string;
  readonly gap: string | null;
  readonly cuts: readonly StickCuts[];
};

/** How good the plan is known to be. */
export type StockProof = {
  readonly cost: Figure | null;
  readonly bound: Figure | null;
  readonly gap: string | null;
  readonly proven: boolean;
  readonly covers: string;
};

/** A price by length or by volume, for lengths without a price of their own. */
export type StockRate = {
  readonly by: "length";
  readonly price?: string | MeasuredValue | null | undefined;
  readonly bulk?: readonly ({
    readonly from: number;
    readonly price: string | MeasuredValue;
  })[] | undefined;
} | {
  readonly by: "volume";
  readonly price?: string | MeasuredValue | null | undefined;
  readonly bulk?: readonly ({
    readonly from: number;
    readonly price: string | MeasuredValue;
  })[] | undefined;
  readonly section: string | {
    readonly thickness: string | MeasuredValue;
    readonly width: string | MeasuredValue;
  };
  readonly measure: "nominal" | "actual";
};

/** Strips ripped from a slab. */
export type Strip = {
  readonly width: string;
  readonly times: number;
  readonly edges: readonly string[];
  readonly pieces: readonly CutPieces[];
  readonly marks: readonly (readonly (string | null)[])[];
};

/** What is to be built. */
export type Structure = GableStructure | LeanToStructure | HipStructure | PergolaStructure | PieceList;

/** What a structure takes. It never says that it is strong enough. */
export type Takeoffs = {
  readonly about: About;
  readonly cutList: CutList;
  readonly geometry: Geometry;
  readonly coverings: readonly RoofCovering[];
  readonly fasteners: FastenerSchedule | null;
  readonly finish: FinishTakeoff;
  readonly needs: readonly Need[];
  readonly cautions: readonly Caution[];
  readonly notices: readonly Notice[];
  readonly nearMisses?: readonly NearMiss[] | undefined;
  readonly sheet: Sheet;
};

/** A tax that the prices do not yet hold. */
export type Tax = {
  readonly name: string;
  readonly rate: string | MeasuredValue;
  readonly appliesTo: readonly ("lumber" | "fasteners" | "finishes" | "coverings" | "consumables" | "equipment" | "services")[];
};

/** One job, timed. */
export type TimedJob = {
  readonly amount: string | MeasuredValue;
  readonly time: string | MeasuredValue;
  readonly people?: number | undefined;
};

/** Woods that yards sell under one name. */
export type TradeGroup = {
  readonly id: string;
  readonly name: string;
  readonly members: readonly string[];
  readonly tannin: "rich" | "some" | "little";
  readonly source: string;
};

/** One trim in its piece length; a kind that is sold in several lengths, or cheaper by the dozen, stands once for each. */
export type TrimOffer = {
  readonly kind: "ridge-cap" | "hip-cap" | "eave-trim" | "rake-trim" | "drip-edge" | "starter-strip" | "batten";
  readonly length: string | MeasuredValue;
  readonly from?: number | undefined;
  readonly price?: string | MeasuredValue | null | undefined;
};

/** Layers of underlay by slope. */
export type UnderlayRule = {
  readonly fromRise: MeasuredValue;
  readonly layers: number;
};

/** The decision in words. */
export type Verdict = {
  readonly headline: string;
  readonly reasons: readonly string[];
  readonly changes: readonly string[];
  readonly doubt: string;
  readonly first: string;
  readonly mill: readonly string[];
  readonly buy: readonly string[];
  readonly groups: readonly GroupReason[];
};

/** Boarded sides; the rest stays open. */
export type Walls = {
  readonly boards?: "vertical" | "board-and-batten" | "horizontal" | undefined;
  readonly lap?: string | MeasuredValue | undefined;
  readonly clearance?: string | MeasuredValue | undefined;
  readonly backing?: string | MeasuredValue | undefined;
  readonly gableLap?: string | MeasuredValue | undefined;
  readonly sides: readonly ({
    readonly side: "near" | "far" | "left" | "right";
    readonly part?: "whole" | "below-plate" | "gable" | undefined;
    readonly openings?: readonly Opening[] | undefined;
  })[];
};

/** Equal pieces that are wanted. */
export type WantedPiece = {
  readonly name: string;
  readonly length: string | MeasuredValue;
  readonly count: number;
  readonly supports?: string | MeasuredValue | undefined;
  readonly leastPart?: string | MeasuredValue | undefined;
  readonly mostJoints?: number | undefined;
};

/** One piece group that the logs are asked for. */
export type WantedPieces = {
  readonly name: string;
  readonly label: string;
  readonly count: Figure;
  readonly marks: readonly string[];
  readonly finished: string;
  readonly rough: string | null;
  readonly length: LengthFigure | null;
  readonly spares: Figure | null;
  readonly notMilled: string | null;
};

/** A route's work beside its hours: when, by which machine, and what is heavy. */
export type Work = {
  readonly calendar: Calendar;
  readonly counted: readonly CountedWork[];
  readonly dressing: readonly DressingChoice[];
  readonly loads: readonly HeavyLoad[];
};

/** What each call takes and gives. */
export interface Calls {
  readonly makeEstimate: {
    readonly path: undefined;
    readonly query: {
      readonly include?: readonly ("sheet" | "workings" | "plans" | "drawings" | "near-misses" | "work" | "extras")[] | undefined;
    };
    readonly body: EstimateRequest;
    readonly answer: Estimate;
  };
  readonly makeTakeoffs: {
    readonly path: undefined;
    readonly query: {
      readonly include?: readonly ("sheet" | "workings" | "drawings" | "near-misses")[] | undefined;
    };
    readonly body: EstimateRequest;
    readonly answer: Takeoffs;
  };
  readonly compareCoverings: {
    readonly path: undefined;
    readonly query: {
      readonly include?: readonly ("sheet" | "workings" | "drawings")[] | undefined;
    };
    readonly body: EstimateRequest;
    readonly answer: CoveringComparison;
  };
  readonly makeSawingPlan: {
    readonly path: undefined;
    readonly query: {
      readonly include?: readonly ("sheet" | "workings" | "plan" | "drawings")[] | undefined;
    };
    readonly body: SawingRequest;
    readonly answer: SawnLogs;
  };
  readonly makeStockPlan: {
    readonly path: undefined;
    readonly query: {
      readonly include?: readonly ("drawings" | "workings" | "plan")[] | undefined;
    };
    readonly body: StockOrder;
    readonly answer: StockOrderPlan;
  };
  readonly getAssumptions: {
    readonly path: undefined;
    readonly query: undefined;
    readonly body: undefined;
    readonly answer: AssumptionList;
  };
  readonly getSpecies: {
    readonly path: undefined;
    readonly query: undefined;
    readonly body: undefined;
    readonly answer: SpeciesList;
  };
  readonly getCoverings: {
    readonly path: undefined;
    readonly query: undefined;
    readonly body: undefined;
    readonly answer: CoveringList;
  };
  readonly getDemos: {
    readonly path: undefined;
    readonly query: undefined;
    readonly body: undefined;
    readonly answer: DemoList;
  };
  readonly getDemo: {
    readonly path: {
      readonly name: string;
    };
    readonly query: undefined;
    readonly body: undefined;
    readonly answer: EstimateRequest;
  };
  readonly getDemoCatalog: {
    readonly path: {
      readonly name: string;
    };
    readonly query: undefined;
    readonly body: undefined;
    readonly answer: PriceCatalog;
  };
  readonly getHealth: {
    readonly path: undefined;
    readonly query: undefined;
    readonly body: undefined;
    readonly answer: Alive;
  };
  readonly getReadiness: {
    readonly path: undefined;
    readonly query: undefined;
    readonly body: undefined;
    readonly answer: Health;
  };
  readonly getDocument: {
    readonly path: undefined;
    readonly query: undefined;
    readonly body: undefined;
    readonly answer: OpenApiDocument;
  };
}

/** Where each call is. */
export const CALLS = {
  makeEstimate: { method: "POST", path: "/v1/estimates" },
  makeTakeoffs: { method: "POST", path: "/v1/takeoffs" },
  compareCoverings: { method: "POST", path: "/v1/covering-comparisons" },
  makeSawingPlan: { method: "POST", path: "/v1/sawing-plans" },
  makeStockPlan: { method: "POST", path: "/v1/stock-plans" },
  getAssumptions: { method: "GET", path: "/v1/assumptions" },
  getSpecies: { method: "GET", path: "/v1/species" },
  getCoverings: { method: "GET", path: "/v1/coverings" },
  getDemos: { method: "GET", path: "/v1/demos" },
  getDemo: { method: "GET", path: "/v1/demos/{name}" },
  getDemoCatalog: { method: "GET", path: "/v1/demo-catalogs/{name}" },
  getHealth: { method: "GET", path: "/healthz" },
  getReadiness: { method: "GET", path: "/readyz" },
  getDocument: { method: "GET", path: "/openapi.json" },
} as const;
