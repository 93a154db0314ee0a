/** What a row of prices asks for, by kind of row: read from the schema that checks catalogs, so that it cannot drift. */
import { z } from "zod";
import { type CsvColumn, LAYOUTS, type Put } from "../../catalog/csv-columns.js";
import { priceCatalogSchema } from "../../catalog/price-catalog.js";
import type { PriceCell } from "./app/specs.js";

interface Node {
  readonly $ref?: string;
  readonly type?: string;
  readonly const?: unknown;
  readonly enum?: readonly unknown[];
  readonly examples?: readonly unknown[];
  readonly anyOf?: readonly Node[];
  readonly oneOf?: readonly Node[];
  readonly items?: Node;
  readonly properties?: Readonly<Record<string, Node>>;
  readonly required?: readonly string[];
}

/** Cells of every kind of row, in the order of the layout. */
export function priceCells(): Readonly<Record<string, readonly PriceCell[]>> {
  const root = z.toJSONSchema(priceCatalogSchema, { io: "input" }) as Node & {
    readonly $defs?: Readonly<Record<string, Node>>;
  };
  const tree = new Tree(root.$defs ?? {});
  const { properties } = tree.resolve(root);
  return Object.fromEntries(
    Object.entries(LAYOUTS).flatMap(([kind, layout]) => {
      const [department = "", ...words] = kind.split(" ");
      const entry = properties?.[department]?.items;
      if (!entry) return [];
      const each = layout.each && tree.walk([entry], layout.each.into, words).nodes.flatMap((one) => one.items ?? []);
      const own = layout.own.map((put) => tree.cell([entry], put, layout.own, words));
      return [[kind, [...own, ...(layout.each?.puts ?? []).map((put) => tree.cell(each ?? [], put, [], words))]]];
    }),
  );
}

/** More examples of one cell than this confuse. */
const MOST_EXAMPLES = 3;

class Tree {
  constructor(private readonly definitions: Readonly<Record<string, Node>>) {}

  cell(from: readonly Node[], [column, path, form]: Put, beside: readonly Put[], words: readonly string[]): PriceCell {
    const { nodes, required } = this.walk(from, path, words);
    const forms = nodes.flatMap((node) => this.forms(node)).filter(({ type }) => type !== "null");
    const named = form !== "list" && forms.length > 0 && forms.every((one) => one.enum ?? one.const !== undefined);
    const choices = form === "flag" ? ["yes", "no"] : named ? forms.flatMap((one) => one.enum ?? [one.const]) : [];
    const examples = nodes.flatMap((node) => this.examplesOf(node));
    // A list may stand for it, or cells of its own parts.
    const other = beside.some(([, one]) => one.startsWith(`${path}.`));
    return {
      column: column as CsvColumn,
      required: required && !other,
      choices: [...new Set(choices.map(String))],
      example: [...new Set(examples)].slice(0, MOST_EXAMPLES).join(" or "),
    };
  }

  /** The nodes at a dotted path, and whether every step of it is required. The kind's words choose among branches. */
  walk(from: readonly Node[], path: string, words: readonly string[]) {
    return path.split(".").reduce(
      ({ nodes, required }, key) => {
        const forms = nodes.flatMap((node) => this.forms(node)).filter((one) => this.fits(one, words));
        const owners = forms.filter(({ properties }) => properties && Object.hasOwn(properties, key));
        return {
          nodes: owners.flatMap((one) => this.resolve(one.properties?.[key] ?? {})),
          required:
            required &&
            owners.length === forms.length &&
            (words.includes(key) || owners.every((one) => one.required?.includes(key))),
        };
      },
      { nodes: from, required: true },
    );
  }

  /** The nearest example of each branch; one that is no text belongs to another form of the same. */
  private examplesOf(node: Node): readonly string[] {
    const { examples = [], oneOf, anyOf } = this.resolve(node);
    const [first] = examples;
    if (typeof first === "string" || typeof first === "number") return [String(first)];
    return (oneOf ?? anyOf ?? []).flatMap((one) => this.examplesOf(one));
  }

  private fits({ properties = {} }: Node, words: readonly string[]): boolean {
    const said = Object.values(properties).flatMap((one) => this.resolve(one).const ?? []);
    return said.every((one) => words.includes(String(one)));
  }

  private forms(node: Node): readonly Node[] {
    const own = this.resolve(node);
    return (own.oneOf ?? own.anyOf)?.flatMap((one) => this.forms(one)) ?? [own];
  }

  resolve(node: Node): Node {
    const { $ref, ...own } = node;
    const name = $ref?.split("/").at(-1);
    return name ? this.resolve({ ...this.definitions[name], ...own }) : node;
  }
}
