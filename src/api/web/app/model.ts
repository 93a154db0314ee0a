/** What the page shows, and what can be done to it. The server fills it once; in the browser it lives on. */
import type { Calls, Estimate, Problem } from "../../../../openapi/client-types.js";
import type { Json } from "./json.js";
import type { FormSpec } from "./specs.js";

export type { Estimate, Problem };
/** What an answer may bring besides. */
export type Include = NonNullable<Calls["makeEstimate"]["query"]["include"]>[number];
/** One roof under every covering. */
export type Compared = Calls["compareCoverings"]["answer"];
/** Drawings of a structure, and which kind it is. */
export type Drawn = Pick<NonNullable<Estimate["geometry"]>, "kind" | "drawings">;
export type Fault = Problem["faults"][number];
export type SheetCell = Estimate["sheet"]["blocks"][number]["cells"][number];

/** How far a call has come, as the service tells it: a step of several, and a share of that step. */
export interface Progress {
  readonly stage: string;
  readonly step: number;
  readonly steps: number;
  readonly done: number;
  readonly of: number;
}

/** What is being done about the answer. */
export type Status =
  | { readonly is: "fresh" }
  | { readonly is: "waiting" }
  | ({ readonly is: "working" } & Progress)
  | { readonly is: "stopped" }
  | { readonly is: "offline" }
  | { readonly is: "busy"; readonly seconds: number }
  | { readonly is: "refused" }
  | { readonly is: "broken"; readonly detail: string };

/** What the page travels with: enough to go on without another call. */
export interface Start {
  readonly request: Json;
  readonly answer: Estimate;
  readonly spec: FormSpec;
  readonly demos: readonly { readonly name: string; readonly title: string }[];
}

/** What can be done. On the server, nothing. */
export interface Acts {
  /** Puts a value into the request; undefined takes it out. */
  edit(pointer: string, value: Json): void;
  undo(): void;
  redo(): void;
  /** Gives up the call under way. */
  cancel(): void;
  retry(): void;
  /** Another request in the place of this one; can be undone. */
  open(request: Json): void;
  openDemo(name: string): void;
  openFile(file: File): void;
  saveFile(): void;
  copyLink(): void;
  /** Prints what hangs on the shop wall; all there is, and every number, where that is asked for. */
  print(all: boolean): void;
  download(name: string, text: string): void;
  /** Opens the card of a cell, from another card with a way back; undefined shuts it. */
  showCell(name: string | undefined): void;
  /** Brings all cells with their workings. */
  wantSheet(): void;
  /** Brings the prices that the request only names. */
  wantPrices(): void;
  openPanel(name: string, open: boolean): void;
  /** Opens a panel, where one is named, and puts the cursor on an element in it, as soon as it is there. */
  goTo(panel: string, id: string): void;
  say(words: string): void;
}

/** Everything that is shown. */
export interface Model {
  readonly request: Json;
  readonly answer: Estimate | undefined;
  readonly problem: Problem | undefined;
  readonly status: Status;
  readonly spec: FormSpec;
  readonly demos: Start["demos"];
  /** All cells with workings; undefined until asked for. */
  readonly sheet: Estimate["sheet"] | undefined;
  /** False while the sheet is that of an answer before: it stays until the new one has come. */
  readonly sheetIsNew: boolean;
  /** The cell whose card is open. */
  readonly cell: string | undefined;
  /** Cells whose cards led to the open one, the last of them last. */
  readonly cellsBefore: readonly string[];
  /** The last answer of this project whose mixes between were searched. */
  readonly searched: Estimate | undefined;
  /** Coverings side by side; undefined until asked for. */
  readonly compared: Compared | undefined;
  /** Drawings of what was typed since the answer; undefined where the answer's own are newer. */
  readonly drawn: Drawn | undefined;
  /** The price catalog that the request names, once it was brought. */
  readonly prices: Json;
  readonly panels: ReadonlySet<string>;
  /** Said once to who listens and looks. */
  readonly said: string;
  /** Said to who listens alone: the verdict, where it became another. */
  readonly news: string;
  readonly canUndo: boolean;
  readonly canRedo: boolean;
  /** False on the server: what is shown there can't be changed. */
  readonly live: boolean;
  readonly acts: Acts;
}

/** Faults at one place of the request, and at places below it that no field of their own shows. */
export const faultsAt = (model: Model, pointer: string): readonly Fault[] =>
  (model.problem?.faults ?? []).filter((fault) => fault.pointer === pointer);

/** Whether anything of an answer has a price. A total of nothing but lines without one is not zero: it is not known. */
export const hasPrices = ({ purchasing }: Estimate): boolean =>
  purchasing.routes.some(({ spent, taxes }) => taxes.length > 0 || spent.some(({ amount }) => amount !== null));
