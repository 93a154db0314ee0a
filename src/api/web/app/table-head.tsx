/** Heads of a table's columns. */

/** A head's words; those over numbers stand on the right, as the numbers do. */
export type Head = string | { readonly number: string };

/** The one row of heads. */
export function Heads({ of }: { readonly of: readonly Head[] }) {
  return (
    <thead>
      <tr>
        {of.map((head) => (
          <th scope="col" class={typeof head === "string" ? undefined : "number"}>
            {typeof head === "string" ? head : head.number}
          </th>
        ))}
      </tr>
    </thead>
  );
}
