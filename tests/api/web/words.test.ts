import { describe, expect, it } from "vitest";
import { priceInFull, rounded, said, short } from "../../../src/api/web/app/words.js";

describe("figures in words", () => {
  // 1.005 and 2.675 are the usual cases that binary floats round down; 64-bit floats lose the last two wholly.
  it.each([
    { value: "1.005", places: 2, shown: "1.01" },
    { value: "2.675", places: 2, shown: "2.68" },
    { value: "-0.25", places: 1, shown: "-0.3" },
    { value: "-0.04", places: 1, shown: "0.0" },
    { value: "99.95", places: 1, shown: "100.0" },
    { value: "7.5", places: 2, shown: "7.5" },
    { value: "12", places: 1, shown: "12" },
    { value: "9007199254740993.049", places: 2, shown: "9007199254740993.05" },
  ])("are rounded half up on their digits: $value", ({ value, places, shown }) => {
    expect(rounded(value, places)).toBe(shown);
  });

  it("show a rate to the cent, a very small one in full, and money as it is", () => {
    expect(said({ value: "1.005", unit: "USD/bf" })).toBe("$1.01 per board foot");
    expect(said({ value: "0.0123", unit: "USD/ft2" })).toBe("$0.0123 per ft²");
    expect(short({ value: "4.855", unit: "USD" }).value).toBe("4.855");
    expect(short({ value: "13.45", unit: "in" }).value).toBe("13.5");
  });

  it("show a price to multiply by with all its places", () => {
    expect(priceInFull({ value: "2.1875", unit: "USD/bf" })).toBe("$2.1875 per board foot");
    expect(priceInFull({ value: "760.00", unit: "EUR/m3" })).toBe("€760.00 per m³");
    expect(priceInFull({ value: "5.28", unit: "USD" })).toBe("$5.28");
  });
});
