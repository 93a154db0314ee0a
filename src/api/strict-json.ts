/**
 * JSON text to a value, stricter than JSON.parse: a name given twice, a name that every JavaScript object has
 * already, a number too long to be meant, and half a character are faults, not silent repairs; depth and count of
 * values are bounded before anything walks them.
 *
 * Own, because JSON.parse keeps the last of two equal names and never says that there was another.
 */
import { type Fault, FaultError, pointer } from "../estimate/faults.js";
import { quote } from "../estimate/quantity/text.js";
import { LIMITS } from "./limits.js";

/** The text is not JSON (RFC 8259); the message says where and what was expected. */
export class NotJson extends Error {
  constructor(text: string, at: number, expected: string) {
    const before = text.slice(0, at).split("\n");
    const column = (before.at(-1) ?? "").length + 1;
    super(`Line ${before.length}, column ${column}: expected ${expected}.`);
    this.name = "NotJson";
  }
}

/**
 * Reads one JSON text.
 * @returns the value, and what must be refused in it although it is JSON.
 * @throws NotJson; or FaultError when a bound is passed, since reading ends there.
 */
export function readJson(text: string): { readonly value: unknown; readonly faults: readonly Fault[] } {
  const reader = new Reader(text);
  const value = reader.document();
  return { value, faults: reader.faults };
}

const isSpace = (code: number) => code === 0x20 || code === 0x0a || code === 0x0d || code === 0x09;
const NUMBER = /-?(?:0|[1-9][0-9]*)(?:\.[0-9]+)?(?:[eE][+-]?[0-9]+)?/y;
const WORDS = [
  ["true", true],
  ["false", false],
  ["null", null],
] as const;
/** Half of a surrogate pair: no text in Unicode, and unprintable in UTF-8. */
const HALF_CHARACTER = /\p{Surrogate}/u;
const FIRST_PRINTABLE = 0x20;
const QUOTATION_MARK = 0x22;
const BACKSLASH = 0x5c;

/** Recursive, which the bound on depth keeps safe. */
class Reader {
  readonly faults: Fault[] = [];
  private at = 0;
  private values = 0;
  private readonly path: (string | number)[] = [];

  constructor(private readonly text: string) {}

  document(): unknown {
    const value = this.value();
    this.space();
    if (this.at < this.text.length) this.fail("the end of the text");
    return value;
  }

  private value(): unknown {
    this.space();
    this.count();
    switch (this.text[this.at]) {
      case "{":
        return this.object();
      case "[":
        return this.array();
      case '"':
        return this.string();
      default:
        return this.wordOrNumber();
    }
  }

  private object(): Record<string, unknown> {
    const found: Record<string, unknown> = {};
    this.items("}", () => {
      this.space();
      if (this.text[this.at] !== '"') this.fail("a name in double quotation marks");
      const name = this.string();
      this.expect(":");
      this.path.push(name);
      const refused = this.refusal(found, name);
      const value = this.value();
      if (refused) this.faults.push(refused);
      else found[name] = value;
      this.path.pop();
    });
    return found;
  }

  private array(): unknown[] {
    const found: unknown[] = [];
    this.items("]", () => {
      this.path.push(found.length);
      found.push(this.value());
      this.path.pop();
    });
    return found;
  }

  /** From the opening bracket to the closing one. */
  private items(close: "}" | "]", readItem: () => void): void {
    if (this.path.length >= LIMITS.jsonDepth) {
      const wrong = `Arrays and objects lie more than ${LIMITS.jsonDepth} deep.`;
      this.end(wrong, `Give at most ${LIMITS.jsonDepth} levels.`);
    }
    this.at++;
    this.space();
    if (this.text[this.at] === close) {
      this.at++;
      return;
    }
    for (;;) {
      readItem();
      this.space();
      const next = this.text[this.at];
      if (next !== "," && next !== close) this.fail(`a comma or "${close}"`);
      this.at++;
      if (next === close) return;
    }
  }

  private refusal(owner: object, name: string): Fault | undefined {
    if (name === "prototype" || name in Object.prototype) {
      const wrong = `${quote(name)} is a name that every object has already.`;
      return { code: "unknown-field", at: this.here(), wrong, cure: "Leave it out, or use another name." };
    }
    if (!Object.hasOwn(owner, name)) return undefined;
    const wrong = `The name ${quote(name)} is given twice in one object.`;
    return { code: "duplicate-name", at: this.here(), wrong, cure: "Keep one of them." };
  }

  private string(): string {
    const start = this.at++;
    let escaped = false;
    for (;;) {
      const code = this.text.charCodeAt(this.at);
      if (code === QUOTATION_MARK) break;
      if (!(code >= FIRST_PRINTABLE)) this.fail("the closing quotation mark"); // NaN past the end
      if (code === BACKSLASH) escaped = true;
      this.at += code === BACKSLASH ? 2 : 1;
    }
    this.at++;
    return escaped ? this.unescaped(start) : this.text.slice(start + 1, this.at - 1);
  }

  private unescaped(start: number): string {
    let found: string;
    try {
      found = JSON.parse(this.text.slice(start, this.at));
    } catch {
      throw new NotJson(this.text, start, "a text whose escapes JSON knows");
    }
    if (HALF_CHARACTER.test(found)) {
      const wrong = "A text has half of a surrogate pair in it.";
      this.faults.push({
        code: "wrong-shape",
        at: this.here(),
        wrong,
        cure: "Write the whole character.",
      });
    }
    return found;
  }

  private wordOrNumber(): unknown {
    for (const [word, value] of WORDS) {
      if (!this.text.startsWith(word, this.at)) continue;
      this.at += word.length;
      return value;
    }
    NUMBER.lastIndex = this.at;
    const digits = NUMBER.exec(this.text)?.[0] ?? this.fail("a value");
    this.at += digits.length;
    const value = digits.length > LIMITS.numberCharacters ? Number.NaN : Number(digits);
    if (Number.isFinite(value)) return value;
    const wrong = `${quote(digits)} is no number that can be meant.`;
    const cure = `Give at most ${LIMITS.numberCharacters} characters and a sensible size.`;
    this.faults.push({ code: "out-of-range", at: this.here(), wrong, cure });
    return 0;
  }

  private count(): void {
    this.values++;
    if (this.values <= LIMITS.jsonValues) return;
    this.end(`There are more than ${LIMITS.jsonValues} values in it.`, "Split the work into several requests.");
  }

  private space(): void {
    while (isSpace(this.text.charCodeAt(this.at))) this.at++;
  }

  private expect(character: string): void {
    this.space();
    if (this.text[this.at] !== character) this.fail(`"${character}"`);
    this.at++;
  }

  private here(): string {
    return pointer("", ...this.path);
  }

  private fail(expected: string): never {
    throw new NotJson(this.text, this.at, expected);
  }

  private end(wrong: string, cure: string): never {
    const fault: Fault = { code: "too-large", at: this.here(), wrong, cure };
    throw new FaultError([...this.faults, fault]);
  }
}
