/** Who works, for how long, and what an hour is worth. */
import { toQuantity } from "../catalog/reading.js";
import { exactly } from "./quantity/text.js";
import type { Defaults } from "./request/given.js";
import type { EstimateRequest } from "./request/request.js";
import type { Cell } from "./sheet/expression.js";
import type { Sheet } from "./sheet/sheet.js";

/** What the request says of labor, or its defaults. */
export interface LaborCells {
  readonly valueOfHour: Cell;
  readonly crew: Cell;
  /** People who come in addition on the days of raising. */
  readonly helpers: Cell;
  readonly hoursPerWeek: Cell;
  readonly hoursPerDay: Cell;
}

/** Value of an hour where the request is silent, in units of the catalog's currency. Assumption. */
const VALUE_OF_HOUR = "20";

/** Lays what the request gives; what it leaves out is told as a default. */
export function layLabor(sheet: Sheet, request: EstimateRequest, defaults: Defaults): LaborCells {
  const { labor } = request;
  const { currency } = request.catalog;
  sheet.title("labor", "Labor");
  const rate = `${currency}/person-h`;
  const each = (text: string) => ({ "inch-pound": text, metric: text });
  const value = labor?.valueOfHour
    ? toQuantity(labor.valueOfHour, rate)
    : defaults.quantity(
        undefined,
        "/labor/valueOfHour",
        each(`${VALUE_OF_HOUR} ${rate}`),
        "an assumption; say what an hour is worth to you",
      );
  const crew = defaults.choice(labor?.crew, "/labor/crew", 2, "nobody should mill or raise alone");
  const helpers = defaults.choice(labor?.helpers, "/labor/helpers", 2, "timbers are raised by four or more");
  const rated = (name: "hoursPerWeek" | "hoursPerDay", label: string, otherwise: string) =>
    sheet.input(`labor.${name}`, defaults.quantity(labor?.[name], `/labor/${name}`, each(otherwise), "an assumption"), {
      label,
    });
  return {
    valueOfHour: sheet.input("labor.valueOfHour", value, { label: "value of an hour of one's own" }),
    crew: sheet.input("labor.crew", exactly(`${crew} people`), { label: "crew" }),
    helpers: sheet.input("labor.helpers", exactly(`${helpers} people`), { label: "helpers on the days of raising" }),
    hoursPerWeek: rated("hoursPerWeek", "hours a week", "12 h/week"),
    hoursPerDay: rated("hoursPerDay", "hours a day", "6 h/day"),
  };
}
