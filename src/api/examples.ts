/** Examples for the document: one small request, and its answers with all lists cut to their first entry. */
import type { z } from "zod";
import type { estimateRequest } from "../estimate/request/request.js";
import type { EstimateSchema } from "./render/json/estimate.js";
import type { TakeoffsSchema } from "./render/json/takeoffs.js";

/** Requests. */
export const REQUEST_EXAMPLES: Readonly<Record<string, { summary: string; value: z.input<typeof estimateRequest> }>> = {
  pieces: {
    summary: "A list of pieces, one log, demo prices",
    value: {
      title: "Six shelf boards",
      structure: {
        kind: "pieces",
        pieces: [
          { name: "shelf-boards", label: "Shelf boards", role: "board", count: 6, section: "1 x 8 in", length: "5 ft" },
        ],
      },
      logs: [{ name: "pine-1", species: "eastern-white-pine", length: "10 ft 6 in", smallDiameter: "13 in" }],
      catalog: { demo: "orchard-yard" },
      labor: { valueOfHour: "$10/h" },
      options: { finish: "none" },
    },
  },
  gable: {
    summary: "A small gable shelter, everything bought; all else by default",
    value: { structure: { kind: "gable", span: "8 ft", length: "12 ft" }, catalog: { demo: "orchard-yard" } },
  },
};

const SHARED = {
  about: {
    title: "Six shelf boards",
    measure: "inch-pound",
    currency: "USD",
    catalog: "Orchard Road Yard",
    catalogNote: "Invented for demonstration: no real supplier's prices.",
    engine: "0.1.0",
    dataVersion: "0123456789abcdef",
    requestDigest: "a34587ecc65675246b602558c0e0d3846d465e7341d189e755e1809224998477",
    reproducible: true,
  },
  cutList: {
    pieces: { cell: "pieces.count", value: "6", unit: "" },
    volume: { cell: "pieces.volume", value: "20", unit: "bf" },
    weightGreen: { cell: "weight.totalGreen", value: "58.3", unit: "lb" },
    weightDry: { cell: "weight.totalDry", value: "42.4", unit: "lb" },
    heaviest: { cell: "weight.heaviest", value: "7.1", unit: "lb" },
    personLoad: { cell: "carry.load", value: "51", unit: "lb" },
    groups: [
      {
        name: "shelf-boards",
        label: "Shelf boards",
        role: "board",
        count: { cell: "pieces.shelf-boards.count", value: "6", unit: "" },
        finished: {
          section: "1 × 8 in",
          thickness: { cell: "sections.shelf-boards.thickness", value: "1", unit: "in" },
          width: { cell: "sections.shelf-boards.width", value: "8", unit: "in" },
          length: { cell: "pieces.shelf-boards.length", value: "5", unit: "ft", marked: "5'" },
        },
        rough: {
          section: "1 3/8 × 8 5/8 in",
          thickness: { cell: "rough.shelf-boards.thickness", value: "1.375", unit: "in" },
          width: { cell: "rough.shelf-boards.width", value: "8.625", unit: "in" },
          length: { cell: "rough.shelf-boards.length", value: "5.25", unit: "ft", marked: "5' 3\"" },
        },
        spares: { cell: "rough.shelf-boards.spares", value: "1", unit: "" },
        notMilled: null,
        boughtAs: {
          offer: "pine-1x8",
          label: "1 x 8 in eastern white pine boards, standard",
          differences: ["1 × 8 in wanted, the bought piece measures 3/4 × 7 1/4 in"],
          add: null,
        },
        volume: { cell: "pieces.shelf-boards.volume", value: "20", unit: "bf" },
        rules: {
          species: [],
          heart: "any",
          wane: "0 in",
          surface: "dressed",
          seasoning: "dried",
          structural: false,
          hiddenFaces: "none",
          joint: "crossing",
          source: "auto",
        },
        marks: ["A-01", "A-02", "A-03", "A-04", "A-05", "A-06"],
        weight: {
          green: { cell: "weight.shelf-boards.green", value: "9.7", unit: "lb" },
          dry: { cell: "weight.shelf-boards.dry", value: "7.1", unit: "lb" },
          lifted: { cell: "weight.shelf-boards.lifted", value: "7.1", unit: "lb" },
          people: { cell: "weight.shelf-boards.people", value: "1", unit: "" },
        },
        route: "mill",
      },
    ],
  },
  finish: {
    kind: "none",
    name: null,
    area: {
      rough: { cell: "finish.roughArea", value: "0", unit: "ft2" },
      smooth: { cell: "finish.smoothArea", value: "44.3", unit: "ft2" },
    },
    brushed: {
      rough: { cell: "finish.roughBrushed", value: "0", unit: "ft2" },
      smooth: { cell: "finish.smoothBrushed", value: "0", unit: "ft2" },
    },
    volume: null,
    upkeep: null,
    betweenCoats: null,
    lines: [
      {
        group: "shelf-boards",
        texture: "smooth",
        area: { cell: "finish.shelf-boards.area", value: "44.3", unit: "ft2" },
      },
    ],
  },
  cautions: [
    {
      code: "chainsaw",
      text: "A chainsaw kicks back and kills. Train, wear leg, eye, head and ear protection, keep a second person on site, wedge the kerf, never stand where a log can roll.",
      source: "29 CFR 1910.266 (from memory); FAO chainsaw-milling handbooks",
    },
  ],
  notices: [
    {
      code: "short",
      text: "shelf-boards: 2 of 7 do not come out of the logs. A log such as pine-1 holds one, but there is not wood enough for all, or buying costs less than sawing.",
      pointer: null,
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
            value: "10",
            unit: "USD/person-h",
          },
          { name: "labor.crew", label: "crew", kind: "input", value: "2", unit: "people" },
          { name: "labor.hoursPerWeek", label: "hours a week", kind: "input", value: "12", unit: "h/week" },
          { name: "labor.hoursPerDay", label: "hours a day", kind: "input", value: "6", unit: "h/day" },
        ],
        lines: [],
      },
    ],
  },
} satisfies Partial<z.output<typeof EstimateSchema>>;

/** A whole estimate. */
export const ESTIMATE_EXAMPLE: z.output<typeof EstimateSchema> = {
  ...SHARED,
  decision: {
    verdict: {
      headline: "Mill everything from your logs.",
      reasons: [
        "It costs 126.97 USD and takes 7 person-hours; buying everything costs 165.47 USD and takes 3 person-hours.",
        "Milling saves 38.50 USD for 4 person-hours more: 10.71 USD an hour for each of them, against 10.00 USD an hour that you say an hour is worth.",
        "The logs hold 5 of the 7 pieces wanted from them, spares included; short of 2 shelf-boards, which are bought.",
        "Dried pieces are up to 1 in thick: stack them before the season (1-inch lumber of these woods: 60 to 200 days, thicker stock two to four times as long).",
      ],
      doubt: "Your pace. At the slow end the extra hours are 6 instead of 4.",
      first:
        "Before the first cut, ask the building office whether it accepts ungraded, locally sawn lumber for structural pieces.",
      mill: ["Shelf boards"],
      buy: [],
    },
    best: "milled",
    routes: [
      {
        route: "milled",
        label: "Milled wherever the logs serve",
        mills: ["shelf-boards"],
        hired: false,
        cash: { cell: "milled.cash", value: "126.97", unit: "USD" },
        hours: { cell: "milled.hours.total", value: "6.69", unit: "person-h" },
        elapsed: { cell: "milled.elapsed", value: "3.84", unit: "h" },
        total: { cell: "milled.total", value: "193.90", unit: "USD" },
        unpriced: 0,
      },
    ],
    mill: {
      cashSaved: { cell: "decision.mill.cashSaved", value: "38.50", unit: "USD" },
      extraHours: { cell: "decision.mill.extraHours", value: "3.59", unit: "person-h" },
      payPerHour: { cell: "decision.mill.payPerHour", value: "10.7137", unit: "USD/person-h" },
    },
    hired: null,
    mix: {
      cashSaved: { cell: "decision.mill.cashSaved", value: "38.50", unit: "USD" },
      extraHours: { cell: "decision.mill.extraHours", value: "3.59", unit: "person-h" },
      payPerHour: { cell: "decision.mill.payPerHour", value: "10.7137", unit: "USD/person-h" },
    },
    groups: [
      {
        group: "shelf-boards",
        label: "Shelf boards",
        milled: true,
        cashSaved: { cell: "decision.group.shelf-boards.cashSaved", value: "42.36", unit: "USD" },
        extraHours: { cell: "decision.group.shelf-boards.extraHours", value: "3.59", unit: "person-h" },
        payPerHour: { cell: "decision.group.shelf-boards.payPerHour", value: "11.8056", unit: "USD/person-h" },
      },
    ],
    shared: {
      cash: { cell: "decision.shared.cash", value: "-3.86", unit: "USD" },
      hours: { cell: "decision.shared.hours", value: "0.01", unit: "person-h" },
    },
    search: { tried: 2, possible: 2, covers: "every mix, each with the plans of a careful sawyer's rule" },
    frontier: [],
    breakEvenPrice: { cell: "decision.breakEvenPrice", value: "1.9318", unit: "USD/bf" },
  },
  geometry: null,
  sawing: {
    logs: [
      {
        name: "pine-1",
        species: "eastern-white-pine",
        dirty: false,
        length: { value: "10.5", unit: "ft" },
        smallDiameter: { value: "12.0702", unit: "in" },
        largeDiameter: { value: "13.3827", unit: "in" },
        sweep: { value: "1", unit: "in" },
        rotSmall: { value: "0", unit: "in" },
        rotLarge: { value: "0", unit: "in" },
        bark: { value: "0.5155", unit: "in" },
        scale: {
          international: { value: "60.6", unit: "bf" },
          scribner: { value: "57.1", unit: "bf" },
          doyle: { value: "42.7", unit: "bf" },
          cubic: { value: "9.3", unit: "ft3" },
        },
        weight: { value: "325.5", unit: "lb" },
        value: null,
      },
    ],
    plans: [
      {
        route: "milled",
        covers:
          "Plans of family R1: bolts laid from the butt end, each as long as one of all sums of piece lengths that log and mill take; parallel slabs as thick as a wanted thickness or width, of one wane each; strips of the other dimension, beside rot or pith or around a boxed heart; pieces of the strip's own section.",
        work: [
          {
            label: "rough wood sawn, eastern-white-pine",
            cell: "milled.cuts.volume-eastern-white-pine",
            value: "25.9",
            unit: "bf",
          },
        ],
        gap: "0",
        yield: {
          lumber: { cell: "milled.yield.lumber", value: "25.9", unit: "bf" },
          rules: [
            {
              rule: "international",
              label: "International 1/4-inch",
              scale: { cell: "milled.scale.international", value: "60.6", unit: "bf" },
              share: { cell: "milled.overrun.international", value: "-57.21", unit: "%" },
            },
            {
              rule: "scribner",
              label: "Scribner",
              scale: { cell: "milled.scale.scribner", value: "57.1", unit: "bf" },
              share: { cell: "milled.overrun.scribner", value: "-54.54", unit: "%" },
            },
            {
              rule: "doyle",
              label: "Doyle",
              scale: { cell: "milled.scale.doyle", value: "42.7", unit: "bf" },
              share: { cell: "milled.overrun.doyle", value: "-39.3", unit: "%" },
            },
            {
              rule: "smalian",
              label: "Smalian",
              scale: { cell: "milled.scale.smalian", value: "9.3", unit: "ft3" },
              share: { cell: "milled.recovery.smalian", value: "23.25", unit: "%" },
            },
            {
              rule: "huber",
              label: "Huber",
              scale: { cell: "milled.scale.huber", value: "9.28", unit: "ft3" },
              share: { cell: "milled.recovery.huber", value: "23.31", unit: "%" },
            },
            {
              rule: "newton",
              label: "Newton",
              scale: { cell: "milled.scale.newton", value: "9.28", unit: "ft3" },
              share: { cell: "milled.recovery.newton", value: "23.29", unit: "%" },
            },
          ],
        },
        logs: [
          {
            log: "pine-1",
            yields: [{ group: "shelf-boards", count: 5, marks: "A-01–05" }],
            bolts: [
              {
                from: "5' 3\"",
                to: "10' 6\"",
                length: "5' 3\"",
                smallDiameter: "12 3/4 in",
                sweep: "1/4 in",
                opening: "4 9/16 in",
                cuts: 2,
                cutList: [
                  { order: 1, height: "4 9/16 in", drop: null, slab: null },
                  { order: 2, height: "-4 7/16 in", drop: "9 in", slab: 1 },
                ],
                turns: 1,
                face: { value: "30.88", unit: "ft2" },
                slabs: [
                  {
                    thickness: "8 5/8 in",
                    from: "-4 1/16 in",
                    to: "4 9/16 in",
                    onMill: true,
                    rips: 6,
                    strips: [
                      {
                        width: "1 3/8 in",
                        times: 5,
                        edges: ["-4 3/16 in", "-2 7/16 in", "-11/16 in", "1 1/16 in", "2 13/16 in"],
                        pieces: [{ group: "shelf-boards", length: "5' 3\"", count: 1 }],
                        marks: [["A-01"], ["A-02"], ["A-03"], ["A-04"], ["A-05"]],
                      },
                    ],
                    tally: { value: "25.9", unit: "bf" },
                  },
                ],
              },
            ],
          },
        ],
        unused: [],
        short: [
          {
            group: "shelf-boards",
            label: "Shelf boards",
            wanted: 7,
            missing: 2,
            why: "A log such as pine-1 holds one, but there is not wood enough for all, or buying costs less than sawing.",
          },
        ],
      },
    ],
  },
  purchasing: {
    shared: [],
    own: [],
    routes: [
      {
        route: "bought",
        departments: [
          {
            department: "lumber",
            lines: [
              {
                name: "bought.buy.pine-1x8-16",
                label: "1 x 8 in eastern white pine boards, standard, 16'",
                quantity: { cell: "bought.buy.pine-1x8-16.sticks", value: "2", unit: "" },
                each: null,
                packs: [],
                price: { cell: "price.pine-1x8-16", value: "32.96", unit: "USD" },
                amount: { cell: "bought.buy.pine-1x8-16.amount", value: "65.92", unit: "USD" },
                add: null,
              },
            ],
          },
        ],
        taxes: [{ label: "sales tax (invented)", cell: "bought.tax.1", value: "4.15", unit: "USD" }],
        logValue: null,
        lumber: { cell: "bought.lumber", value: "65.92", unit: "USD" },
        cash: { cell: "bought.cash", value: "165.47", unit: "USD" },
        unpriced: 0,
        stock: [
          {
            offer: "pine-1x8",
            label: "1 x 8 in eastern white pine boards, standard",
            covers: "all ways to cut these pieces from these lengths; proven least",
            gap: "0",
            cuts: [
              {
                stock: "16'",
                times: 2,
                pieces: [{ group: "shelf-boards", length: "5'", count: 3 }],
                marks: [
                  ["A-01", "A-02", "A-03"],
                  ["A-04", "A-05", "A-06"],
                ],
                offcut: '11 5/8"',
              },
            ],
          },
        ],
      },
    ],
  },
  coverings: [],
  fasteners: null,
  effort: {
    valueOfHour: { cell: "labor.valueOfHour", value: "10", unit: "USD/person-h" },
    crew: { cell: "labor.crew", value: "2", unit: "people" },
    helpers: { cell: "labor.helpers", value: "2", unit: "people" },
    hoursPerWeek: { cell: "labor.hoursPerWeek", value: "12", unit: "h/week" },
    hoursPerDay: { cell: "labor.hoursPerDay", value: "6", unit: "h/day" },
    common: [
      { stage: "join", label: "cut joints", hours: { cell: "common.hours.join", value: "0.3", unit: "person-h" } },
    ],
    own: [],
    commonHours: { cell: "common.hours.total", value: "0.66", unit: "person-h" },
    routes: [
      {
        route: "milled",
        stages: [
          {
            stage: "getOut",
            label: "get the logs out",
            hours: { cell: "milled.hours.getOut", value: "0.75", unit: "person-h" },
          },
        ],
        hours: { cell: "milled.hours.total", value: "6.69", unit: "person-h" },
        elapsed: { cell: "milled.elapsed", value: "3.84", unit: "h" },
        millHours: { cell: "milled.millHours", value: "0.99", unit: "h" },
        drying: {
          soonest: { cell: "milled.drying.soonest", value: "11.7857", unit: "week" },
          likely: { cell: "milled.drying.likely", value: "30.3237", unit: "week" },
          latest: { cell: "milled.drying.latest", value: "54.0179", unit: "week" },
        },
        work: {
          calendar: {
            stages: [
              {
                stage: "getOut",
                people: { value: "2", unit: "people" },
                crewHours: { value: "0.38", unit: "h" },
                crewDays: { value: "0.1", unit: "day" },
                aloneDays: { value: "0.1", unit: "day" },
                startDay: { value: "0", unit: "day" },
                endDay: { value: "0.2", unit: "day" },
                whileDrying: false,
                alongside: ["setUp", "saw", "sharpen", "carry", "stack", "slabs", "fetch", "sort", "cut"],
              },
            ],
            drying: {
              startDay: { value: "1.2", unit: "day" },
              soonestDay: { value: "83.7", unit: "day" },
              likelyDay: { value: "196.7", unit: "day" },
              latestDay: { value: "379.3", unit: "day" },
            },
            totalDays: { value: "197.3", unit: "day" },
            crewDays: { value: "0.6", unit: "day" },
            aloneDays: { value: "1", unit: "day" },
          },
          dressing: [
            {
              group: "shelf-boards",
              by: "machine",
              order: "piece-by-piece",
              rip: "one-face",
              because: ["it goes through the planer", "no two go through in one slab"],
            },
          ],
          loads: [
            {
              kind: "log",
              name: "pine-1",
              green: { value: "326", unit: "lb" },
              dry: { value: "237", unit: "lb" },
              people: 7,
              aid: "cart, rollers or levers",
              count: 1,
            },
          ],
        },
      },
    ],
  },
};

/** Takeoffs: no routes, hence no choice of one. */
export const TAKEOFFS_EXAMPLE: z.output<typeof TakeoffsSchema> = {
  ...SHARED,
  cutList: { ...SHARED.cutList, groups: SHARED.cutList.groups.map((group) => ({ ...group, route: null })) },
  geometry: null,
  coverings: [],
  fasteners: null,
  needs: [
    {
      name: "finish.finish",
      label: "Oil-based semitransparent penetrating stain",
      quantity: { cell: "finish.volume", value: "0.24", unit: "gal" },
    },
  ],
};
