import { describe, expect, it } from "vitest";
import { Turnstile } from "../../src/api/limits.js";
import { Refusal } from "../../src/api/problem.js";

const kindOf = (work: () => unknown): string | undefined => {
  try {
    work();
    return undefined;
  } catch (error) {
    return error instanceof Refusal ? error.kind : String(error);
  }
};

describe("places for calls", () => {
  it("gives one client its share and leaves the rest to others", () => {
    const turnstile = new Turnstile({ inAll: 3, perClient: 2 });
    const leave = turnstile.enter("10.0.0.1");
    turnstile.enter("10.0.0.1");
    expect(kindOf(() => turnstile.enter("10.0.0.1"))).toBe("too-many-calls");
    turnstile.enter("10.0.0.2");
    expect(kindOf(() => turnstile.enter("10.0.0.3"))).toBe("overloaded");
    leave();
    expect(kindOf(() => turnstile.enter("10.0.0.1"))).toBeUndefined();
  });

  it("counts a caller without an address only among all", () => {
    const turnstile = new Turnstile({ inAll: 2, perClient: 1 });
    turnstile.enter(undefined);
    turnstile.enter(undefined);
    expect(kindOf(() => turnstile.enter(undefined))).toBe("overloaded");
  });
});
