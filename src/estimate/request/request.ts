/** The whole request: structure, logs, catalog, shop, labor, assumptions, overrides, lines, held plans, options. */

import { z } from "zod";
import { coveringKinds } from "../../catalog/coverings.js";
import { finishKinds } from "../../catalog/finishes.js";
import { type PriceCatalog, priceCatalogSchema, typedCatalog } from "../../catalog/price-catalog.js";
import {
  CURRENCIES,
  lineField,
  measuredValue,
  moneyField,
  nameField,
  quantityField,
  readShape,
} from "../../catalog/reading.js";
import { isRecord, MOST_FAULTS } from "../../catalog/shape-faults.js";
import type { Fault } from "../faults.js";
import type { MeasureSystem } from "../quantity/text.js";
import { atHandShape } from "./at-hand.js";
import { calibrationShape } from "./calibration.js";
import { csvCatalog, demoCatalog, namedCatalog } from "./catalog-forms.js";
import { heldPlans } from "./held-plans.js";
import { logFaults, logShape } from "./logs.js";
import { laborShape, shopShape } from "./shop.js";
import { structure } from "./structure-kinds.js";
import { twiceFaults } from "./twice.js";

const quantityText = z.union([z.string().min(1).max(64), measuredValue]);
const cellName = z
  .string()
  .min(1)
  .max(120)
  .regex(/^[A-Za-z][A-Za-z0-9_.-]*$/);

/** An assumption's replacement: one value, or low, likely and high. */
export const assumptionValue = z
  .union([
    quantityText,
    z.strictObject({
      low: quantityText.meta({ description: "Unlikely to be less.", examples: ["0.6 ft2/min"] }),
      likely: quantityText.meta({ description: "The best single figure.", examples: ["1.5 ft2/min"] }),
      high: quantityText.meta({ description: "Unlikely to be more.", examples: ["3 ft2/min"] }),
    }),
  ])
  .meta({
    id: "AssumptionValue",
    description: "One figure, or low, likely and high, each with its unit.",
    examples: ["1.2 ft2/min"],
  });

/** A line that the user adds, with plain arithmetic over cell names. */
export const ownLine = z
  .strictObject({
    name: nameField("Name of the line; its cell is own.<name>.", "crane-day"),
    label: lineField("Words for people.", "Crane for a day", 80),
    formula: lineField("Arithmetic over cell names, numbers and units.", "2 * $180", 500),
  })
  .meta({
    id: "OwnLine",
    description: "A line of your own: money is added to the cash of every route, person-hours to its hours.",
    examples: [{ name: "crane-day", label: "Crane for a day", formula: "1 * $450" }],
  });

/** What `ownLine` reads. */
export type OwnLineShape = z.infer<typeof ownLine>;

/** Options of an estimate. */
export const optionsShape = z
  .strictObject({
    measure: z
      .enum(["inch-pound", "metric"])
      .optional()
      .meta({
        description:
          "Measure system of the answer; that of the structure's lengths where nothing is said. Lengths and sections that are given stay as they are; those left open are usual ones of this system, not the other's converted.",
        examples: ["inch-pound"],
      }),
    fallDown: z
      .enum(["spares", "buy"])
      .optional()
      .meta({
        description: "What makes up for rejected pieces: spares sawn with the others, or boards bought.",
        examples: ["spares"],
      }),
    finish: z
      .enum([...finishKinds, "none"] as const)
      .optional()
      .meta({ description: "Finish for the faces that show; none leaves the wood bare.", examples: ["oil-stain"] }),
    coverings: z
      .array(z.enum(coveringKinds))
      .min(1)
      .max(coveringKinds.length)
      .optional()
      .meta({
        description: "Coverings to be compared on this roof, beside the one that it is built with.",
        examples: [["ribbed-steel", "asphalt-shingles"]],
      }),
    buyAs: z
      .array(nameField("Name of an entry of coverings or finishes.", "ribbed-painted"))
      .max(20)
      .optional()
      .meta({
        description:
          "Coverings and finishes to buy where several of a kind are on offer; the cheapest for the job where none is named.",
        examples: [["ribbed-painted"]],
      }),
    sealEnds: z
      .boolean()
      .optional()
      .meta({ description: "Brush sealer on all end grain against checking.", examples: [true] }),
    mostCash: moneyField("", {
      describe: "Cash that the best mix should stay within, if it can.",
      example: "4000",
    }).optional(),
    mostHours: quantityField("person-h", {
      describe:
        "Person-hours that the best mix should stay within, if it can; hours that an answer shows as no more keep it.",
      example: "150 person-h",
      most: "100000 person-h",
    }).optional(),
    frontier: z
      .boolean()
      .optional()
      .meta({
        description: "Also searches the frontier of cash against hours: the best mixes for every value of an hour.",
        examples: [true],
      }),
    mixedSizes: z
      .boolean()
      .optional()
      .meta({
        description:
          "Whether the best mix may mill some pieces of a run and buy others that measure less, such as 2 × 4 in beside 1 1/2 × 3 1/2 in, where that costs less; false where nothing is said, and then a run is mixed only where the logs hold no more of it.",
        examples: [false],
      }),
    lightFixing: z
      .enum(["screws", "nails"])
      .optional()
      .meta({
        description: "What holds purlins, fascia and light splices.",
        examples: ["screws"],
      }),
  })
  .meta({ id: "Options", description: "How the estimate is made.", examples: [{ fallDown: "spares" }] });

/** The whole request of an estimate; unknown keys are refused. */
export const estimateRequest = z
  .strictObject({
    title: lineField("What is built, for the printed page.", "Orchard shelter", 80).optional(),
    structure,
    logs: z
      .array(logShape)
      .max(200)
      .optional()
      .meta({ description: "Logs at hand; without any, everything is bought." }),
    atHand: atHandShape.optional(),
    catalog: z.union([demoCatalog, csvCatalog, priceCatalogSchema]).optional().meta({
      description:
        "Local prices: as JSON, as the text of a CSV table, or those of a demo. Without any, nothing is priced.",
    }),
    currency: z
      .enum(CURRENCIES)
      .optional()
      .meta({ description: "Currency of the answer where no catalog says it.", examples: ["USD"] }),
    shop: shopShape.optional(),
    labor: laborShape.optional(),
    site: z
      .strictObject({
        ungradedAccepted: z
          .enum(["yes", "no", "unknown"])
          .optional()
          .meta({
            description:
              "Whether the building office accepts ungraded lumber for structural pieces. no: those are bought.",
            examples: ["unknown"],
          }),
      })
      .optional()
      .meta({ description: "The place and its building office." }),
    assumptions: z
      .record(cellName, assumptionValue)
      .optional()
      .meta({ description: "Assumptions replaced, by name; see GET /v1/assumptions." }),
    calibration: z
      .array(calibrationShape)
      .max(100)
      .optional()
      .meta({ description: "Rates that you timed, in the place of assumptions." }),
    overrides: z
      .record(cellName, quantityText)
      .optional()
      .meta({ description: "Values put in the place of cells, by name." }),
    lines: z.array(ownLine).max(50).optional().meta({ description: "Lines of your own." }),
    heldPlans: heldPlans.optional(),
    options: optionsShape.optional(),
  })
  .meta({ id: "EstimateRequest", description: "A structure, the logs at hand and local prices." });

/** What `estimateRequest` reads. */
export type EstimateShape = z.infer<typeof estimateRequest>;

/** A request that has passed the door. */
export interface EstimateRequest extends Omit<EstimateShape, "catalog"> {
  readonly catalog: PriceCatalog;
  readonly system: MeasureSystem;
}

/** The request as a call takes it, or every fault found in it. */
export type RequestReading = { readonly value: EstimateRequest } | { readonly faults: readonly Fault[] };

/**
 * Checks shape, texts and what only the whole can tell.
 * @param demoCatalogs - Price catalogs that a request may name, as JSON.
 */
export function readEstimateRequest(json: unknown, demoCatalogs: ReadonlyMap<string, unknown>): RequestReading {
  const named = namedCatalog(json, demoCatalogs);
  const known = named && "catalog" in named ? named.catalog : undefined;
  const shape = readShape(estimateRequest, json, { currency: known?.currency ?? currencyOf(json) });
  const ofCatalog = named && "faults" in named ? named.faults : [];
  if ("faults" in shape) return { faults: [...ofCatalog, ...shape.faults].slice(0, MOST_FAULTS) };
  if (ofCatalog.length > 0) return { faults: ofCatalog };
  const request = shape.value;
  const read = known ? { catalog: known } : typedCatalog(givenCatalog(request, json), "/catalog");
  const faults = [
    ...("faults" in read ? read.faults : []),
    ...logFaults(request.logs ?? [], "/logs"),
    ...twiceFaults(request, "catalog" in read ? read.catalog : undefined),
  ];
  if ("faults" in read || faults.length > 0) return { faults };
  return { value: { ...request, catalog: read.catalog, system: request.options?.measure ?? systemOf(request) } };
}

/** The catalog as it stands in the request, or one without any price. */
function givenCatalog(request: EstimateShape, json: unknown): z.infer<typeof priceCatalogSchema> {
  const { catalog } = request;
  return catalog && !("demo" in catalog) && !("csv" in catalog)
    ? catalog
    : { name: "no prices", currency: currencyOf(json) };
}

function currencyOf(input: unknown): (typeof CURRENCIES)[number] {
  const known = (text: unknown) => CURRENCIES.find((code) => code === text);
  if (!isRecord(input)) return "USD";
  return (isRecord(input.catalog) ? known(input.catalog.currency) : undefined) ?? known(input.currency) ?? "USD";
}

/** Metric where the structure's first length is. */
function systemOf(request: EstimateShape): MeasureSystem {
  const shape = request.structure;
  const text = shape.kind === "pieces" ? (shape.pieces[0]?.length ?? "1 ft") : shape.length;
  return /(?:mm|cm|\dm|\bm|metres?|meters?)\s*$/.test(typeof text === "string" ? text : text.unit)
    ? "metric"
    : "inch-pound";
}
