/**
 * What went wrong, as problem details (RFC 9457). The only map from a fault to an HTTP status.
 * Every problem has a relative type that leads to its paragraph on the page at /docs.
 */
import { z } from "zod";
import { FAULT_CODES, type Fault, type FaultCode, FaultError } from "../estimate/faults.js";
import { CalledOff } from "../estimate/watch.js";

/** Faults listed in one answer; the rest are only counted. */
const MOST_FAULTS = 50;
/** Characters of each text in a fault. */
const LONGEST_TEXT = 300;
/** Seconds after which a refused caller may try again. Assumption. */
export const RETRY_AFTER = 2;

/** Every problem the service answers with. */
export const PROBLEMS = {
  "not-json": { status: 400, title: "The body is not JSON." },
  "not-found": { status: 404, title: "There is nothing here." },
  "method-not-allowed": { status: 405, title: "This address does not take that method." },
  "not-acceptable": { status: 406, title: "The answer cannot be given in any form that you accept." },
  "body-too-large": { status: 413, title: "The body is too large." },
  "unsupported-media-type": { status: 415, title: "The body is not of a type that is read here." },
  "invalid-request": { status: 422, title: "The request does not validate." },
  "cannot-build": { status: 422, title: "What is described cannot be built." },
  "too-much-work": { status: 422, title: "The work asked for is over a limit." },
  "too-many-calls": { status: 429, title: "You have too many calls under way." },
  "internal-error": { status: 500, title: "The service has a bug." },
  overloaded: { status: 503, title: "The service is busy." },
} as const satisfies Record<string, { status: number; title: string }>;

export type ProblemKind = keyof typeof PROBLEMS;

/** The problem that a fault alone makes; where several meet, the first of `PROBLEMS` wins. */
const PROBLEM_OF_FAULT: Readonly<Record<FaultCode, ProblemKind>> = {
  "not-a-quantity": "invalid-request",
  "wrong-dimension": "invalid-request",
  "out-of-range": "invalid-request",
  "wrong-shape": "invalid-request",
  "unknown-field": "invalid-request",
  "missing-field": "invalid-request",
  "duplicate-name": "invalid-request",
  "unknown-name": "invalid-request",
  "circular-lines": "invalid-request",
  "bad-formula": "invalid-request",
  "held-plan-misfit": "invalid-request",
  "not-overridable": "invalid-request",
  "currency-mix": "invalid-request",
  "cannot-build": "cannot-build",
  "too-large": "too-much-work",
};

/** What a refusal may say beside its sentence. */
export interface RefusalExtras {
  /** What would be taken instead: media types, methods, or a path. */
  readonly choices?: readonly string[];
  /** Seconds. */
  readonly retryAfter?: number;
}

/** Ends a call with a problem that is not about the content of the body; faults of content are `FaultError`. */
export class Refusal extends Error {
  constructor(
    readonly kind: Exclude<ProblemKind, "invalid-request" | "cannot-build" | "too-much-work">,
    readonly detail: string,
    readonly extras: RefusalExtras = {},
  ) {
    super(detail);
    this.name = "Refusal";
  }
}

const short = () => z.string().max(LONGEST_TEXT);

const FaultSchema = z
  .strictObject({
    code: z.enum(Object.keys(FAULT_CODES) as [FaultCode, ...FaultCode[]]).describe("What kind of fault it is."),
    pointer: short()
      .optional()
      .describe('JSON Pointer (RFC 6901) to the value in the body; "" is the whole body. Absent for a parameter.'),
    parameter: short().optional().describe("Name of the query parameter, when the fault is there and not in the body."),
    wrong: short().describe("What is wrong, with the value that was given."),
    cure: short().describe("What would be right."),
  })
  .meta({ id: "Fault", description: "One fault of a request: where, what is wrong, and what would be right." });

/** The one shape of every error. */
export const ProblemSchema = z
  .strictObject({
    type: z.string().describe("Which problem it is: a relative address on the page that explains it."),
    title: z.string().describe("The problem in a sentence, the same each time."),
    status: z.int().min(400).max(599).describe("The HTTP status."),
    detail: z.string().describe("What happened this time."),
    instance: z.string().optional().describe("Names this one occurrence in the service's log; only with status 500."),
    choices: z
      .array(z.string())
      .optional()
      .describe("What would be taken instead: media types (406, 415), methods (405), the nearest address (404)."),
    faults: z
      .array(FaultSchema)
      .max(MOST_FAULTS)
      .describe("All faults found, at most 50; empty when the problem is not about what the request says."),
  })
  .meta({ id: "Problem", description: "Problem details after RFC 9457, with one entry a fault." });

export type Problem = z.output<typeof ProblemSchema>;

/**
 * The problem that any thrown thing is. What we do not know is a bug: its problem shows nothing of its inside.
 * @param requestId - Names this occurrence; the log has it beside the error.
 */
export function problemOf(error: unknown, requestId: string): Problem {
  if (error instanceof FaultError) return problemOfFaults(error.faults);
  if (error instanceof Refusal) return problemOfRefusal(error);
  if (givenUp(error)) return problemOfRefusal(new Refusal("overloaded", "The call took too long and was given up."));
  return {
    ...head("internal-error"),
    detail: "It is not the request's fault. The log has more under the name of this instance.",
    instance: `/requests/${encodeURIComponent(requestId)}`,
    faults: [],
  };
}

/** Headers that go with a problem: which methods would be taken, when to try again. */
export function problemHeaders(error: unknown): Record<string, string> {
  const { kind, extras } = error instanceof Refusal ? error : { kind: undefined, extras: {} as RefusalExtras };
  const wait = extras.retryAfter ?? (givenUp(error) ? RETRY_AFTER : undefined);
  return {
    ...(kind === "method-not-allowed" && extras.choices && { Allow: extras.choices.join(", ") }),
    ...(wait !== undefined && { "Retry-After": String(wait) }),
  };
}

/** Thrown when the signal of a call fires: its time was up, or the caller has gone. */
function givenUp(error: unknown): boolean {
  if (error instanceof CalledOff) return true;
  return error instanceof DOMException && (error.name === "TimeoutError" || error.name === "AbortError");
}

function problemOfRefusal(refusal: Refusal): Problem {
  const { choices } = refusal.extras;
  return { ...head(refusal.kind), detail: cut(refusal.detail), ...(choices && { choices: [...choices] }), faults: [] };
}

/** At most 50 faults are listed, in the order found; the gravest kind names the problem. */
function problemOfFaults(faults: readonly Fault[]): Problem {
  const kinds = new Set(faults.map((fault) => PROBLEM_OF_FAULT[fault.code]));
  const kind = (Object.keys(PROBLEMS) as ProblemKind[]).find((candidate) => kinds.has(candidate)) ?? "invalid-request";
  const count = faults.length === 1 ? "There is one fault." : `There are ${faults.length} faults.`;
  const left = faults.length > MOST_FAULTS ? ` The first ${MOST_FAULTS} are listed.` : "";
  return { ...head(kind), detail: count + left, faults: faults.slice(0, MOST_FAULTS).map(shownFault) };
}

/** A problem as an HTTP response. */
export function problemResponse(problem: Problem, headers: Readonly<Record<string, string>> = {}): Response {
  return new Response(JSON.stringify(problem), {
    status: problem.status,
    headers: { "Content-Type": "application/problem+json", "Cache-Control": "no-store", ...headers },
  });
}

function head(kind: ProblemKind): Pick<Problem, "type" | "title" | "status"> {
  return { type: `/docs#problem-${kind}`, ...PROBLEMS[kind] };
}

function shownFault(fault: Fault): Problem["faults"][number] {
  const place = fault.at.startsWith("?") ? { parameter: cut(fault.at.slice(1)) } : { pointer: cut(fault.at) };
  return { code: fault.code, ...place, wrong: cut(fault.wrong), cure: cut(fault.cure) };
}

/** Cut to the length allowed, never between the halves of one character. */
function cut(text: string): string {
  if (text.length <= LONGEST_TEXT) return text;
  return `${text.slice(0, LONGEST_TEXT - 1).replace(/[\ud800-\udbff]$/, "")}…`;
}
