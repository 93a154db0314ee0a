/** Mill, machines and people. */
import { z } from "zod";
import { millKinds } from "../../catalog/mills.js";
import { EQUIPMENT, type EquipmentItem } from "../../catalog/offers/supplies.js";
import { moneyField, quantityField } from "../../catalog/reading.js";

import { sawyerShape } from "./sawyer.js";

/** Means of moving wood about the yard. */
const MEANS = ["hand", "cart", "winch", "tractor"] as const;
/** How pieces are carried. */
export type CarryMeans = (typeof MEANS)[number];
/** How logs are got out. */
export type LogMeans = (typeof MEANS)[number];

/** Mill, saws, planer and gear as a request describes them. */
export const shopShape = z
  .strictObject({
    mill: z
      .enum([...millKinds, "none"])
      .optional()
      .meta({
        description:
          "Kind of mill: sets kerf, throat, longest log, rates and wear, each of which can be overridden. none: there is no mill of one's own; a hired sawyer mills, or everything is bought.",
        examples: ["chainsaw-mill"],
      }),
    longestBolt: quantityField("ft", {
      describe: "Longest bolt that mill, yard and helpers can handle.",
      example: "14 ft",
      most: "60 ft",
    }).optional(),
    thinnestSlab: quantityField("in", {
      describe:
        "Thinnest slab that the mill saws: what lies between two of its cuts, wanted or waste, and a strip that it rips, is no thinner. Where nothing is said any is sawn.",
      example: "3/4 in",
      most: "12 in",
    }).optional(),
    tableSaw: z
      .enum(["table-saw", "none"])
      .optional()
      .meta({
        description:
          "Whether a table saw is at hand. none: what the mill does not saw to size is ripped by a hand-held circular saw along a guide.",
        examples: ["table-saw"],
      }),
    deepestRip: quantityField("in", {
      describe: "Depth of cut of the rip or table saw: the thickest slab that it edges from one face.",
      example: "3 in",
      most: "24 in",
    }).optional(),
    crosscutDepth: quantityField("in", {
      describe: "Depth of cut of the circular saw: deeper pieces are crosscut from several faces.",
      example: "2 1/2 in",
      most: "24 in",
    }).optional(),
    planerWidth: quantityField("in", {
      describe: "Widest piece that the planer takes.",
      example: "12 1/2 in",
      most: "48 in",
    }).optional(),
    jointer: z
      .enum(["jointer", "none"])
      .optional()
      .meta({
        description: "Whether a jointer is at hand. none: pieces are straightened by a saw along a guide.",
        examples: ["jointer"],
      }),
    jointerWidth: quantityField("in", {
      describe: "Widest piece that the jointer takes; wider ones are straightened by a saw along a guide.",
      example: "8 in",
      most: "48 in",
    }).optional(),
    planerDepth: quantityField("in", {
      describe: "Thickest piece that the planer takes.",
      example: "6 in",
      most: "24 in",
    }).optional(),
    heaviestFed: quantityField("lb", {
      describe: "Heaviest piece that you feed over the machines.",
      example: "100 lb",
      most: "2000 lb",
    }).optional(),
    longestFed: quantityField("ft", {
      describe: "Longest piece that the shop has room to feed.",
      example: "20 ft",
      most: "100 ft",
    }).optional(),
    settingStep: quantityField("in", {
      describe: "Step in which the mill is set: rough thickness and width are whole steps of it.",
      example: "1/8 in",
      most: "2 in",
    }).optional(),
    ripKerf: quantityField("in", { describe: "Kerf of the rip saw.", example: "1/8 in", most: "1 in" }).optional(),
    getOut: z
      .enum(MEANS)
      .optional()
      .meta({
        description: "How logs are got to the mill: rolled by hand, on a cart or arch, winched, by tractor.",
        examples: ["winch"],
      }),
    carry: z
      .enum(MEANS)
      .optional()
      .meta({ description: "How sawn pieces are carried to the stack and later to the site.", examples: ["hand"] }),
    planer: z
      .enum(["portable-planer", "stationary-planer", "none"])
      .optional()
      .meta({
        description:
          "Planer at hand: sets what goes through it and how fast. none: pieces are dressed by hand-held tools.",
        examples: ["portable-planer"],
      }),
    sharpening: z
      .enum(["self", "service"])
      .optional()
      .meta({
        description:
          "Who sharpens chain, band or circular blade: yourself, in hours and files or grinding wheels, or a service, for money. Where nothing is said chains and circular blades are sharpened on the mill by yourself, and bands sent away.",
        examples: ["self"],
      }),
    lumber: z
      .enum(["delivered", "fetched"])
      .optional()
      .meta({
        description: "Whether bought lumber is delivered, for money, or fetched with a trailer of your own, in hours.",
        examples: ["delivered"],
      }),
    sawyer: sawyerShape.optional(),
    equipment: z
      .array(
        z
          .strictObject({
            item: z
              .enum(Object.keys(EQUIPMENT) as [EquipmentItem, ...EquipmentItem[]])
              .meta({ description: "Which machine.", examples: ["chainsaw-mill"] }),
            terms: z.enum(["paid", "hired", "bought"]).meta({
              description:
                "paid: at hand already, costs nothing more; hired: by the day, at the catalog's rate; bought: purchase less resale, for the share of its use that this job takes.",
              examples: ["hired"],
            }),
            share: quantityField("%", {
              describe: "Bought machines: share of their expected use that falls on this job.",
              example: "50 %",
              most: "100 %",
            }).optional(),
          })
          .meta({ id: "Equipment", description: "A machine that the work needs, and on which terms it is had." }),
      )
      .max(20)
      .optional()
      .meta({ description: "Machines for either route; what is not named is at hand and paid for." }),
  })
  .meta({ id: "Shop", description: "Mill and machines.", examples: [{ mill: "chainsaw-mill", longestBolt: "14 ft" }] });

/** What `shopShape` reads. */
export type ShopShape = z.infer<typeof shopShape>;

/** Crew, hours and the value of one as a request gives them. */
export const laborShape = z
  .strictObject({
    valueOfHour: moneyField("person-h", {
      describe: "What an hour of one's own work is worth to one; `$25` and `25/h` are taken, too.",
      example: "20",
    }).optional(),
    crew: z
      .int()
      .min(1)
      .max(20)
      .optional()
      .meta({ description: "People at work together.", examples: [2] }),
    helpers: z
      .int()
      .min(0)
      .max(20)
      .optional()
      .meta({ description: "People who come in addition on the days of raising.", examples: [2] }),
    hoursPerWeek: quantityField("h/week", {
      describe: "Hours a week that the crew works on this.",
      example: "12 h/week",
      most: "100 h/week",
    }).optional(),
    hoursPerDay: quantityField("h/day", {
      describe: "Hours of a working day; hired machines are counted in such days.",
      example: "6 h/day",
      most: "16 h/day",
    }).optional(),
    startDate: z.iso
      .date()
      .optional()
      .meta({
        description: "Day on which the work begins, as 2027-03-01: the timeline then has dates as well.",
        examples: ["2027-03-01"],
      }),
  })
  .meta({
    id: "Labor",
    description: "People and what their time is worth.",
    examples: [{ crew: 2, hoursPerWeek: "12 h/week" }],
  });

/** What `laborShape` reads. */
export type LaborShape = z.infer<typeof laborShape>;
