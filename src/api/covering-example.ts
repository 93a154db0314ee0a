/** Examples of the covering comparison for the document; the answer's lists are cut to their first entry. */
import type { z } from "zod";
import type { estimateRequest } from "../estimate/request/request.js";
import type { ComparisonSchema } from "./render/json/covering-comparison.js";

export const COMPARISON_EXAMPLES: Readonly<
  Record<string, { summary: string; value: z.input<typeof estimateRequest> }>
> = {
  gable: {
    summary: "A gable of 16 × 24 ft under steel, strips and cedar",
    value: {
      structure: { kind: "gable", span: "16 ft", length: "24 ft", slope: { rise: "5 in", run: "12 in" } },
      catalog: { demo: "orchard-yard" },
      options: { coverings: ["ribbed-steel", "asphalt-shingles", "wood-shingles"] },
    },
  },
  all: {
    summary: "A metric lean-to under every covering that the service knows",
    value: {
      structure: { kind: "lean-to", span: "2.4 m", length: "7.2 m", slope: { rise: "75 mm", run: "300 mm" } },
      catalog: { demo: "ferry-yard" },
    },
  },
};

export const COMPARISON_EXAMPLE: z.output<typeof ComparisonSchema> = {
  about: {
    title: null,
    measure: "inch-pound",
    currency: "USD",
    catalog: "Orchard Road Yard",
    catalogNote: "Invented for demonstration: no real supplier's prices.",
    engine: "0.1.0",
    dataVersion: "3ec29a8e82a550c7",
    requestDigest: "583a7d5dc91fed6b89f38ceff5fb74b424bbb8b595a195cbeefad1244c003974",
    reproducible: true,
  },
  coverings: [
    {
      kind: "ribbed-steel",
      name: "ribbed steel panels, exposed screws",
      form: "panels",
      slope: {
        allowed: true,
        lapsSealed: false,
        reason: "A slope of 5 in over 12 in reaches the least slope, 3 in over 12 in.",
        reference: "International Residential Code, chapter 9, R905.10.2",
      },
      faces: [
        {
          name: "side",
          alike: 2,
          shape: "rectangle",
          eave: { cell: "covering.width", value: "26.167", unit: "ft", marked: "26' 2\"" },
          top: { cell: "covering.width", value: "26.167", unit: "ft", marked: "26' 2\"" },
          slopeLength: { cell: "covering.slopeLength", value: "9.885", unit: "ft", marked: "9' 10 5/8\"" },
          area: { cell: "covering.area", value: "517.34", unit: "ft2" },
          across: { cell: "covering.across", value: "9", unit: "" },
          up: { cell: "covering.up", value: "1", unit: "" },
          module: { cell: "covering.coverWidth", value: "36", unit: "in", marked: "36 in" },
          pieceLength: { cell: "covering.panelLength", value: "119", unit: "in", marked: "9' 11\"" },
          strips: [],
        },
      ],
      area: { cell: "covering.area", value: "517.34", unit: "ft2" },
      squares: { cell: "covering.squares", value: "5.1734", unit: "square" },
      weight: { cell: "covering.weight", value: "419", unit: "lb" },
      trimLength: { cell: "covering.trimLength", value: "118.042", unit: "ft", marked: "118' 1/2\"" },
      life: { cell: "covering.life", value: "40", unit: "year" },
      underlayLayers: 0,
      panels: {
        count: { cell: "covering.panels", value: "18", unit: "" },
        trims: [
          {
            kind: "ridge-cap",
            length: { cell: "covering.ridge-cap.length", value: "26.167", unit: "ft", marked: "26' 2\"" },
            pieces: { cell: "covering.ridge-cap.pieces", value: "3", unit: "" },
            pieceLength: { cell: "covering.trim.ridge-cap", value: "126", unit: "in", marked: "10' 6\"" },
          },
        ],
        eaveClosures: { cell: "covering.eave-closures", value: "18", unit: "" },
        ridgeClosures: { cell: "covering.ridge-closures", value: "18", unit: "" },
        sealant: null,
        roofScrews: { cell: "covering.roofScrews", value: "646", unit: "" },
        stitchScrews: { cell: "covering.stitchScrews", value: "150", unit: "" },
        clips: null,
      },
      courses: null,
      parts: [
        { name: "covering.panel", label: "Roof panels", quantity: { cell: "covering.panels", value: "18", unit: "" } },
      ],
      built: true,
      compared: {
        rank: 1,
        cash: { cell: "coverings.ribbed-steel.cash", value: "1863.24", unit: "USD" },
        complete: true,
        yearly: { cell: "coverings.ribbed-steel.yearly", value: "46.58", unit: "USD" },
        hours: { cell: "coverings.ribbed-steel.hours", value: "19.14", unit: "person-h" },
        weight: { cell: "coverings.ribbed-steel.allWeight", value: "1097.3", unit: "lb" },
        deck: "purlins",
        lines: [
          {
            name: "order.coverings.ribbed-steel.panel",
            label: "Roof panels",
            quantity: { cell: "covering.panels", value: "18", unit: "" },
            each: { cell: "covering.panelLength", value: "119", unit: "in", marked: "9' 11\"" },
            packs: [],
            price: { cell: "price.ribbed-painted.panel", value: "4.15", unit: "USD/ft" },
            amount: { cell: "order.coverings.ribbed-steel.panel.amount", value: "740.78", unit: "USD" },
            add: null,
          },
        ],
        taxes: [{ label: "sales tax (invented)", cell: "coverings.ribbed-steel.tax.1", value: "109.60", unit: "USD" }],
      },
    },
  ],
  cautions: [
    {
      code: "not-checked",
      text: "Nothing here says that a member, a joint or a footing is strong enough. Have them checked against the local code, and by a licensed engineer where the code asks for one.",
      source: "IRC R301; common practice",
    },
  ],
  notices: [
    {
      code: "default",
      text: "Taken: 20 USD/person-h (an assumption; say what an hour is worth to you).",
      pointer: "/labor/valueOfHour",
    },
  ],
  sheet: {
    whole: false,
    blocks: [
      {
        name: "labor",
        title: "Labor",
        cells: [
          {
            name: "labor.valueOfHour",
            label: "value of an hour of one's own",
            kind: "input",
            value: "20",
            unit: "USD/person-h",
          },
        ],
        lines: [],
      },
    ],
  },
};
