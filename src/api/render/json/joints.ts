/** The schedule of connections as JSON. */
import { z } from "zod";
import { CLIMATES, FASTENERS } from "../../../catalog/fasteners.js";
import { gauge, type MeasureSystem } from "../../../estimate/quantity/text.js";
import type { Cell } from "../../../estimate/sheet/expression.js";
import type { FastenersTakeoff } from "../../../estimate/takeoff/fasteners.js";
import type { Placing } from "../../../estimate/takeoff/placing.js";
import type { ScheduleItem, ScheduleLine } from "../../../estimate/takeoff/schedule.js";
import { FigureSchema, figure, markedOf } from "./figures.js";

const ItemSchema = z
  .strictObject({
    fastener: z.string().describe("Kind of fastener."),
    label: z.string().describe("In words."),
    count: FigureSchema.describe("As driven, all connections of the line together."),
    diameter: z.string().nullable().describe("Diameter, or one side of the post that a base takes; null if none."),
    length: z.string().nullable().describe("Length, or the other side of the post; null if none."),
    corrosion: z.string().describe("Least protection against corrosion."),
  })
  .meta({ id: "ScheduleItem", description: "Fasteners of one sort." });

const PlacingSchema = z
  .strictObject({
    hole: z
      .string()
      .nullable()
      .describe("Bored for a bolt or a lag screw's shank; null where screws or nails are driven."),
    pilot: z.string().nullable().describe("Pilot hole of a nail, screw or lag thread, at most; null for a bolt."),
    edge: z.string().describe("Middle of the fastener to the edge towards which it is pressed, at least."),
    end: z.string().describe("To the end of the piece, at least."),
    boredEnd: z.string().nullable().describe("The same where the pilot hole is bored; null for bolts."),
    endRoom: z
      .string()
      .nullable()
      .describe(
        "What there is, at most, to the end of a piece that meets the next over a support or ends flush with its plate; null elsewhere.",
      ),
    endFits: z.boolean().describe("Whether that is as much as a bored pilot hole asks for."),
    apart: z.string().describe("One from the next along the grain, at least."),
    leastWidth: z.string().describe("What a piece must measure across the grain to hold them."),
    fits: z.boolean().describe("Whether the pieces that are held measure that much."),
  })
  .meta({
    id: "Placing",
    description: "Hole and distances, as multiples of the diameter (NDS, from memory); as they are marked.",
  });

const ExposureSchema = z
  .strictObject({
    climate: z.enum(CLIMATES).describe("What surrounds it, the harshest of all pieces that meet here."),
    treated: z.boolean().describe("Whether a piece is preservative-treated."),
    tannin: z.boolean().describe("Whether a piece may be of a wood rich in tannin that gets damp."),
  })
  .meta({ id: "FastenerExposure", description: "Where the hardware must last: what `corrosion` follows from." });

const LineSchema = z
  .strictObject({
    name: z.string().describe("Name of the connection."),
    label: z.string().describe("In words."),
    kind: z.string().describe("Kind of connection."),
    groups: z.array(z.string()).describe("Piece groups that are held."),
    sites: FigureSchema.describe("Connections."),
    exposure: ExposureSchema,
    items: z.array(ItemSchema).describe("Their hardware, for the pieces as laid out."),
    ifBought: z
      .array(ItemSchema)
      .optional()
      .describe(
        "What pieces that are bought take in the place of what fits those laid out, for all connections together; absent where that is the same. Each route orders what fits its pieces.",
      ),
    placing: PlacingSchema.nullable().describe(
      "Where bolts, or else screws or nails, may stand; null where all are driven aslant or through a connector.",
    ),
  })
  .meta({ id: "ScheduleLine", description: "Equal connections with their hardware." });

export const JointsSchema = z
  .strictObject({ lines: z.array(LineSchema).describe("Connections, in the order of the pieces.") })
  .meta({ id: "FastenerSchedule", description: "What holds the pieces together. No statement that it is enough." });

/** Null where the structure is a list of pieces that says nothing of how they meet. */
export function shownJoints(
  fasteners: FastenersTakeoff | undefined,
  system: MeasureSystem,
): z.output<typeof JointsSchema> | null {
  return fasteners ? { lines: fasteners.lines.map((line) => shownLine(line, system)) } : null;
}

function shownLine(line: ScheduleLine, system: MeasureSystem): z.output<typeof LineSchema> {
  const { name, label, kind, groups, sites, exposure, items, fitted, placing } = line;
  return {
    ...{ name, label, kind },
    groups: [...groups],
    sites: figure(sites),
    exposure: { ...exposure },
    items: items.map((item) => shownItem(item, system)),
    ...(fitted && { ifBought: fitted.bought.map((item) => shownItem(item, system)) }),
    placing: placing ? shownPlacing(placing, system) : null,
  };
}

function shownPlacing(placing: Placing, system: MeasureSystem): z.output<typeof PlacingSchema> {
  const small = (cell: Cell) => markedOf(cell, system);
  const { hole, pilot, edge, end, boredEnd, endRoom, endFits, apart, leastWidth, fits } = placing;
  return {
    hole: hole ? small(hole) : null,
    pilot: pilot ? gauge(pilot, system) : null,
    edge: small(edge),
    end: small(end),
    boredEnd: boredEnd ? small(boredEnd) : null,
    endRoom: endRoom ? small(endRoom) : null,
    endFits,
    apart: small(apart),
    leastWidth: small(leastWidth),
    fits,
  };
}

function shownItem(item: ScheduleItem, system: MeasureSystem): z.output<typeof ItemSchema> {
  const { fastener, count, diameter, length, corrosion } = item;
  return {
    fastener,
    label: FASTENERS[fastener].name,
    count: figure(count),
    diameter: diameter ? gauge(diameter, system) : null,
    length: length ? gauge(length, system) : null,
    corrosion,
  };
}
