/** What one call, and all calls at once, may ask of the service. The numbers are assumptions, set by taste. */
import { RETRY_AFTER, Refusal } from "./problem.js";

/** Bounds of a request and of its answer when it is refused. */
export const LIMITS = {
  /** Bytes of a request's body. A demo request has about 10,000. */
  bodyBytes: 2 * 1024 * 1024,
  /** Levels of arrays and objects within one another. */
  jsonDepth: 32,
  /** Numbers, texts, arrays and objects in one body. */
  jsonValues: 50_000,
  /** Characters of one bare number. */
  numberCharacters: 32,
  /** Seconds after which a call is given up. An emergency stop: work is bounded by counted steps before. */
  callSeconds: 60,
} as const;

/** How many calls that compute may be under way. */
export interface Places {
  /** From everyone together. */
  readonly inAll: number;
  /** From one network address, so that one busy script leaves places for others. */
  readonly perClient: number;
}

export const DEFAULT_PLACES: Places = { inAll: 64, perClient: 32 };

/** Counts the calls under way and refuses the one too many, at once and without reading its body. */
export class Turnstile {
  private inAll = 0;
  private readonly perClient = new Map<string, number>();

  constructor(private readonly places: Places = DEFAULT_PLACES) {}

  /**
   * Takes a place.
   * @param client - The caller's network address; undefined when it is not known.
   * @returns What gives the place back; to be called once.
   * @throws Refusal 503 when all places are taken, 429 when this client has its share.
   */
  enter(client: string | undefined): () => void {
    if (this.inAll >= this.places.inAll) {
      throw new Refusal("overloaded", `All ${this.places.inAll} places are taken.`, { retryAfter: RETRY_AFTER });
    }
    const own = client === undefined ? 0 : (this.perClient.get(client) ?? 0);
    if (own >= this.places.perClient) {
      throw new Refusal("too-many-calls", `You have ${own} calls under way; wait for one to end.`, {
        retryAfter: RETRY_AFTER,
      });
    }
    this.add(client, 1);
    return () => this.add(client, -1);
  }

  private add(client: string | undefined, change: 1 | -1): void {
    this.inAll += change;
    if (client === undefined) return;
    const own = (this.perClient.get(client) ?? 0) + change;
    if (own === 0) this.perClient.delete(client);
    else this.perClient.set(client, own);
  }
}
