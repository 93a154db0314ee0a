/** A number of the answer. In the browser it opens its card: where it comes from, and a value of one's own. */
import type { Estimate, Model } from "./model.js";
import { type Amount, said } from "./words.js";

/** A figure, shown with its unit. */
export function Fig({
  m,
  of,
  text,
}: {
  readonly m: Model;
  readonly of: Amount & { readonly cell: string };
  readonly text?: string;
}) {
  const words = text ?? said(of);
  if (!m.live) return <span class="fig">{words}</span>;
  return (
    <button type="button" class="fig" aria-haspopup="dialog" onClick={() => m.acts.showCell(of.cell)}>
      {words}
    </button>
  );
}

/** A section of the page that folds; its state outlives a new answer. */
export function Panel(props: {
  readonly m: Model;
  readonly name: string;
  readonly title: string;
  /** A few words beside the title, to tell whether it is worth opening. */
  readonly gist?: string | undefined;
  readonly children: unknown;
  readonly class?: string;
}) {
  const { m, name, title, gist, children } = props;
  return (
    <details
      id={name}
      class={`panel ${props.class ?? ""}`}
      open={m.panels.has(name)}
      onToggle={(event: Event) => m.acts.openPanel(name, (event.target as HTMLDetailsElement).open)}
    >
      <summary>
        <h2>{title}</h2> {gist && <span class="gist">{gist}</span>}
      </summary>
      {children}
    </details>
  );
}

/** A fold within a panel. Shut ones are empty: a thousand cells would slow every keystroke. */
export function Fold(props: {
  readonly m: Model;
  readonly name: string;
  readonly title: string;
  /** Said in the place of the title, where that needs its surroundings to be understood. */
  readonly spoken?: string;
  readonly children: unknown;
}) {
  const { m, name, title, spoken, children } = props;
  const open = m.panels.has(name);
  return (
    <details
      class="sub"
      open={open}
      onToggle={(event: Event) => m.acts.openPanel(name, (event.target as HTMLDetailsElement).open)}
    >
      <summary aria-label={spoken}>{title}</summary>
      {open && children}
    </details>
  );
}

/** What a part of the answer is drawn from. */
export interface Shown {
  readonly m: Model;
  readonly answer: Estimate;
}

/** Saves a table as a file; nothing on the server, where there is no one to save it. */
export function SaveTable({
  m,
  name,
  text,
}: {
  readonly m: Model;
  readonly name: string;
  readonly text: () => string;
}) {
  return (
    <p class="tools">
      <button type="button" onClick={() => m.acts.download(name, text())}>
        Save as CSV
      </button>
    </p>
  );
}
