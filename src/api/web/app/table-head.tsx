/** Heads of a table's columns. */

/** A head's words; those over numbers stand on the right, as the numbers do. A note says how it is measured. */
export type Head = string | { readonly number: string } | { readonly text: string; readonly note: string };

/** The one row of heads. */
export function Heads({ of }: { readonly of: readonly Head[] }) {
  return (
    <thead>
      <tr>
        {of.map((head) => (
          <th scope="col" class={typeof head !== "string" && "number" in head ? "number" : undefined}>
            {typeof head === "string" ? head : "number" in head ? head.number : head.text}
            {typeof head !== "string" && "note" in head && <small>{head.note}</small>}
          </th>
        ))}
      </tr>
    </thead>
  );
}
