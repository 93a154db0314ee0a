/** A picture of a gable that follows every keystroke. */
import { isFields, type Json, valueAt } from "./json.js";
import { millimetres } from "./length.js";
import type { Model } from "./model.js";

/** End and side of a gable, to one scale. Only what can be read is drawn. */
export function Drawing({ m }: { readonly m: Model }) {
  const structure = valueAt(m.request, "/structure");
  if (!isFields(structure) || structure.kind !== "gable") return null;
  const size = (pointer: string, usual: string) => millimetres(valueAt(structure, pointer) ?? usual);
  const span = size("/span", "");
  const length = size("/length", "");
  const eave = size("/eaveHeight", "8 ft");
  const rise = size("/slope/rise", "4 in");
  const run = size("/slope/run", "12 in");
  if (!span || !length || !eave || rise === undefined || !run) {
    return (
      <figure class="drawing">
        <p class="hint">The picture comes back when span, length, height and slope can be read.</p>
      </figure>
    );
  }
  const over = size("/overhang/eave", "12 in") ?? 0;
  const past = size("/overhang/gable", "12 in") ?? 0;
  const bays = Math.min(60, Number(structure.bays ?? Math.max(1, Math.round(length / 2440))) || 1);
  const slope = rise / run;
  return <GableViews {...{ span, length, eave, slope, over, past, bays }} said={structure} />;
}

interface Gable {
  readonly span: number;
  readonly length: number;
  readonly eave: number;
  readonly slope: number;
  readonly over: number;
  readonly past: number;
  readonly bays: number;
  readonly said: Readonly<Record<string, Json>>;
}

/** Half of a post's drawn width, in mm: a picture, not a section. */
const POST = 75;

function GableViews({ span, length, eave, slope, over, past, bays, said }: Gable) {
  const peak = eave + (span / 2) * slope;
  const tail = eave - over * slope;
  const gap = Math.max(span, length) * 0.12;
  const end = { left: 0, right: span + 2 * over };
  const side = { left: end.right + gap, width: length + 2 * past };
  const width = side.left + side.width;
  const text = width / 34;
  const top = Math.max(peak, eave);
  const place = (x: number, y: number) => `${Math.round(x)} ${Math.round(top - y)}`;
  const posts = Array.from({ length: bays + 1 }, (_, index) => side.left + past + (length * index) / bays);
  return (
    <figure class="drawing">
      <svg
        viewBox={`${-text} ${-text} ${width + 2 * text} ${top + 4 * text}`}
        role="img"
        aria-label={`The shelter from its end and from its side, to scale: ${said.span} across, ${said.length} long.`}
        font-size={text}
      >
        <path class="ground" d={`M${place(0, 0)}H${Math.round(width)}`} />
        {[over, over + span].map((x) => (
          <rect class="timber" x={x === over ? x : x - 2 * POST} y={top - eave} width={2 * POST} height={eave} />
        ))}
        <path class="timber" d={`M${place(over, eave)}H${Math.round(over + span)}v${2 * POST}H${Math.round(over)}Z`} />
        <path class="roof" d={`M${place(0, tail)}L${place(over + span / 2, peak)}L${place(2 * over + span, tail)}`} />
        {posts.map((x) => (
          <rect class="timber" x={x - POST} y={top - eave} width={2 * POST} height={eave} />
        ))}
        <rect class="roofing" x={side.left} y={top - peak} width={side.width} height={Math.abs(peak - tail)} />
        <text x={over + span / 2} y={top + 1.6 * text} text-anchor="middle">
          {`${said.span} across`}
        </text>
        <text x={side.left + side.width / 2} y={top + 1.6 * text} text-anchor="middle">
          {`${said.length} long, ${bays} ${bays === 1 ? "bay" : "bays"}`}
        </text>
      </svg>
    </figure>
  );
}
