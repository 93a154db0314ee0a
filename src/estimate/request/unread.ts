/** Which given fields of a request nothing asks for while it is laid. */
import { pointer } from "../faults.js";

/** A value that remembers which of its fields were read, however deep; it is the very same to whoever reads it. */
export class Watched<T extends object> {
  readonly value: T;
  private readonly read = new Map<object, Set<string | symbol>>();
  private readonly watched = new Map<object, object>();

  constructor(private readonly given: T) {
    this.value = this.watch(given) as T;
  }

  /** JSON Pointers of the given fields that nobody has read so far; of a whole that nobody read, that of the whole. */
  unread(at: string): string[] {
    return this.unreadIn(this.given, at);
  }

  private watch(given: object): object {
    const known = this.watched.get(given);
    if (known) return known;
    const proxy = new Proxy(given, {
      get: (target, key): unknown => {
        const read = this.read.get(target) ?? new Set();
        this.read.set(target, read.add(key));
        const value: unknown = Reflect.get(target, key);
        return typeof value === "object" && value !== null ? this.watch(value) : value;
      },
    });
    this.watched.set(given, proxy);
    return proxy;
  }

  private unreadIn(given: object, at: string): string[] {
    const read = this.read.get(given);
    return Object.entries(given).flatMap(([key, value]: [string, unknown]) => {
      if (value === undefined) return [];
      const place = pointer(at, key);
      if (!read?.has(key)) return [place];
      return typeof value === "object" && value !== null && !("unit" in value) ? this.unreadIn(value, place) : [];
    });
  }
}
