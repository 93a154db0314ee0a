/** What the form asks for, read from the schema that checks requests: labels, hints and choices cannot drift from it. */
import { z } from "zod";
import { CURRENCIES } from "../../catalog/reading.js";
import { estimateRequest } from "../../estimate/request/request.js";
import type { FieldSpec, FormSpec } from "./app/specs.js";
import { priceCells } from "./price-fields.js";

interface Node {
  readonly $ref?: string;
  readonly type?: string;
  readonly description?: string;
  readonly examples?: readonly unknown[];
  readonly enum?: readonly unknown[];
  readonly const?: unknown;
  readonly anyOf?: readonly Node[];
  readonly oneOf?: readonly Node[];
  readonly items?: Node;
  readonly properties?: Readonly<Record<string, Node>>;
  readonly required?: readonly string[];
}

type Definitions = Readonly<Record<string, Node>>;

/** Every form of the page. */
export function formSpec(): FormSpec {
  const root = z.toJSONSchema(estimateRequest, { io: "input" }) as Node & { readonly $defs?: Definitions };
  const reader = new Reader(root.$defs ?? {});
  const request = reader.resolve(root).properties ?? {};
  const part = (name: string) => reader.fields(reader.resolve(request[name] ?? {}));
  const structure = reader.resolve(request.structure ?? {});
  const kinds = (structure.oneOf ?? structure.anyOf ?? []).map((one) => reader.resolve(one));
  const timed = reader.resolve(reader.resolve(request.calibration ?? {}).items ?? {});
  return {
    structures: kinds.map((one) => ({
      kind: String(reader.resolve(one.properties?.kind ?? {}).const),
      label: sentence(one.properties?.kind?.description ?? one.description ?? ""),
      fields: reader.fields(one).filter(({ key }) => key !== "kind"),
    })),
    log: reader.fields(reader.resolve(request.logs ?? {}).items ?? {}),
    shop: part("shop"),
    labor: part("labor"),
    site: part("site"),
    options: part("options"),
    line: reader.fields(reader.resolve(request.lines ?? {}).items ?? {}),
    prices: priceCells(),
    currencies: CURRENCIES,
    timedJob: reader.fields(reader.resolve(timed.properties?.jobs ?? {}).items ?? {}),
  };
}

class Reader {
  constructor(private readonly definitions: Definitions) {}

  /** Follows a reference; what is said beside it stays. */
  resolve(node: Node): Node {
    const name = node.$ref?.split("/").at(-1);
    if (!name) return node;
    const { $ref: _, ...own } = node;
    return { ...this.definitions[name], ...own };
  }

  fields(node: Node): FieldSpec[] {
    const { properties = {}, required = [] } = this.resolve(node);
    return Object.entries(properties).flatMap(([key, one]) => {
      const spec = this.field(key, this.resolve(one), required.includes(key));
      return spec ? [spec] : [];
    });
  }

  private field(key: string, node: Node, required: boolean): FieldSpec | undefined {
    const example = node.examples?.[0];
    const head = {
      key,
      label: labelOf(key),
      hint: hintOf(node.description ?? ""),
      example: typeof example === "string" || typeof example === "number" ? String(example) : "",
      required,
    };
    if (node.enum) return { ...head, kind: "choice", choices: node.enum.map(String) };
    if (node.type === "boolean" || node.const === true) return { ...head, kind: "flag" };
    if (node.type === "integer" || node.type === "number") return { ...head, kind: "count" };
    if (node.type === "array") return this.list(head, this.resolve(node.items ?? {}));
    if (node.properties) return this.group(head, node);
    const texts = (node.anyOf ?? [node]).map((one) => this.resolve(one));
    const suggested = texts.flatMap((one) => one.enum ?? []).map(String);
    return texts.some(({ type }) => type === "string") ? { ...head, kind: "text", suggested } : undefined;
  }

  private list(head: Head, item: Node): FieldSpec | undefined {
    if (item.properties) return { ...head, kind: "rows", fields: this.fields(item) };
    const texts = (item.anyOf ?? [item]).map((one) => this.resolve(one));
    return texts.some(({ type }) => type === "string") ? { ...head, kind: "list" } : undefined;
  }

  /** Properties that all have one shape make a table with a row each. */
  private group(head: Head, node: Node): FieldSpec {
    const parts = Object.entries(node.properties ?? {});
    const shapes = new Set(parts.map(([, part]) => part.$ref));
    const [shape] = shapes;
    if (shapes.size > 1 || shape === undefined || !this.resolve({ $ref: shape }).properties) {
      return { ...head, kind: "group", fields: this.fields(node) };
    }
    const keys = parts.map(([key]) => ({ key, label: labelOf(key) }));
    return { ...head, kind: "table", keys, fields: this.fields({ $ref: shape }) };
  }
}

type Head = Pick<FieldSpec, "key" | "label" | "hint" | "example" | "required">;

/** Labels of keys whose own words say too little to whoever does not see the request. */
const LABELS: Readonly<Record<string, string>> = {
  ...{ valueOfHour: "An hour is worth", getOut: "Getting the logs out", carry: "Carrying what is sawn" },
  ...{ lumber: "Bought lumber is", fallDown: "Rejects are made up by", ungradedAccepted: "Ungraded lumber accepted" },
  ...{
    measure: "Inch or metric",
    mostCash: "Cash, at most",
    mostHours: "Hours, at most",
    lightFixing: "Light fixings",
  },
  "gable-beams": "Gable-end beams",
  ...{ charge: "Paid by the", minimum: "Least charge", time: "Time it took", people: "People at it" },
};

/** What is said of addresses is for programs. */
const hintOf = (description: string): string =>
  description
    .replaceAll("`", "")
    .split(/(?<=\.) /)
    .filter((part) => !part.includes("/v1/"))
    .join(" ");

/** `eaveHeight` and `eave-height` as words. */
function labelOf(key: string): string {
  const known = LABELS[key];
  if (known) return known;
  const words = key
    .replaceAll(/([A-Z])/g, " $1")
    .replaceAll("-", " ")
    .toLowerCase();
  return words.charAt(0).toUpperCase() + words.slice(1);
}

const sentence = (text: string): string => text.replace(/\.$/, "");
