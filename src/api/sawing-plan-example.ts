/** An answer of /v1/sawing-plans for the document, its lists cut to their first entry. */
import type { z } from "zod";
import type { SawingPlanSchema } from "./render/json/sawing-plan.js";

export const SAWING_PLAN_EXAMPLE: z.output<typeof SawingPlanSchema> = {
  about: {
    title: null,
    measure: "inch-pound",
    currency: "USD",
    catalog: "no prices",
    catalogNote: null,
    engine: "0.1.0",
    dataVersion: "0123456789abcdef",
    requestDigest: "5b2d27ce2a62cbcb4cb6eef9e4a520601bd9343840e2d7e3dccc63f3614e842b",
    reproducible: true,
  },
  pieces: [
    {
      name: "shelf-boards",
      label: "shelf-boards",
      count: { cell: "pieces.shelf-boards.count", value: "6", unit: "" },
      marks: ["A-01", "A-02", "A-03", "A-04", "A-05", "A-06"],
      finished: "1 × 8 in",
      rough: "1 3/8 × 8 5/8 in",
      length: { cell: "rough.shelf-boards.length", value: "5.25", unit: "ft", marked: "5' 3\"" },
      spares: { cell: "rough.shelf-boards.spares", value: "1", unit: "" },
      notMilled: null,
    },
  ],
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
  plan: {
    covers:
      "Plans of family R1: bolts laid from the butt end, each as long as one of all sums of piece lengths that log and mill take; parallel slabs as thick as a wanted thickness or width, of one wane each; strips of the other dimension, beside rot or pith or around a boxed heart; pieces of the strip's own section.",
    gap: "0",
    work: [
      {
        label: "rough wood sawn, eastern-white-pine",
        cell: "sawing.cuts.volume-eastern-white-pine",
        value: "25.9",
        unit: "bf",
      },
    ],
    yield: {
      lumber: { cell: "sawing.yield.lumber", value: "25.9", unit: "bf" },
      rules: [
        {
          rule: "international",
          label: "International 1/4-inch",
          scale: { cell: "sawing.scale.international", value: "60.6", unit: "bf" },
          share: { cell: "sawing.overrun.international", value: "-57.21", unit: "%" },
        },
        {
          rule: "scribner",
          label: "Scribner",
          scale: { cell: "sawing.scale.scribner", value: "57.1", unit: "bf" },
          share: { cell: "sawing.overrun.scribner", value: "-54.54", unit: "%" },
        },
        {
          rule: "doyle",
          label: "Doyle",
          scale: { cell: "sawing.scale.doyle", value: "42.7", unit: "bf" },
          share: { cell: "sawing.overrun.doyle", value: "-39.3", unit: "%" },
        },
        {
          rule: "smalian",
          label: "Smalian",
          scale: { cell: "sawing.scale.smalian", value: "9.3", unit: "ft3" },
          share: { cell: "sawing.recovery.smalian", value: "23.25", unit: "%" },
        },
        {
          rule: "huber",
          label: "Huber",
          scale: { cell: "sawing.scale.huber", value: "9.28", unit: "ft3" },
          share: { cell: "sawing.recovery.huber", value: "23.31", unit: "%" },
        },
        {
          rule: "newton",
          label: "Newton",
          scale: { cell: "sawing.scale.newton", value: "9.28", unit: "ft3" },
          share: { cell: "sawing.recovery.newton", value: "23.29", unit: "%" },
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
        label: "shelf-boards",
        wanted: 7,
        missing: 2,
        why: "A log such as pine-1 holds one, but there is not wood enough for all, or buying costs less than sawing.",
      },
    ],
  },
  hours: {
    stages: [{ label: "get the logs out", cell: "sawing.hours.getOut", value: "0.75", unit: "person-h" }],
    total: { cell: "sawing.hours.total", value: "2.86", unit: "person-h" },
    mill: { cell: "sawing.millHours", value: "1.27", unit: "h" },
  },
  cautions: [
    {
      code: "ungraded",
      text: "Lumber sawn from your logs bears no grade mark. Many codes ask for one, or for an inspector's certificate, on load-bearing pieces; some places allow native lumber in accessory buildings.",
      source: "IRC R502.1.1, R802.1.1 (from memory)",
    },
  ],
  notices: [{ code: "default", text: "Taken: 2 (nobody should mill or raise alone).", pointer: "/labor/crew" }],
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
          { name: "labor.helpers", label: "helpers on the days of raising", kind: "input", value: "2", unit: "people" },
          { name: "labor.hoursPerWeek", label: "hours a week", kind: "input", value: "12", unit: "h/week" },
          { name: "labor.hoursPerDay", label: "hours a day", kind: "input", value: "6", unit: "h/day" },
        ],
        lines: [],
      },
    ],
  },
};
