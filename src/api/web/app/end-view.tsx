/** The end of a bolt with the pieces in it, to scale, drawn from the sawing plan of the answer. */
import { millimetres } from "./length.js";
import type { Estimate } from "./model.js";
import { capital, plain, said, short } from "./words.js";

type Held = NonNullable<NonNullable<Estimate["heldPlans"]>["sawing"]>[string]["logs"][number];

/** One bolt: where it lies in its log and the pieces that come out of it, all in millimetres. */
export interface BoltBoxes {
  readonly from: number;
  readonly to: number;
  readonly boxes: readonly {
    readonly group: string;
    readonly x: number;
    readonly y: number;
    readonly w: number;
    readonly h: number;
  }[];
}

/** The bolts of one log from the small end, divided where it is bucked. */
export function boltsOf({ cuts, pieces }: Held, grid: number): BoltBoxes[] {
  const bucks = cuts.filter(({ tool }) => tool === "buck").map(({ hi }) => hi);
  const edges = [...new Set(bucks)].toSorted((a, b) => a - b);
  const ranges = [Number.NEGATIVE_INFINITY, ...edges].map((from, index) => ({
    from,
    to: edges[index] ?? Number.POSITIVE_INFINITY,
  }));
  return ranges.flatMap(({ from, to }) => {
    const inside = pieces.filter(({ z0 }) => z0 >= from && z0 < to);
    if (inside.length === 0) return [];
    return [
      {
        from: Math.min(...inside.map(({ z0 }) => z0)) * grid,
        to: Math.max(...inside.map(({ z1 }) => z1)) * grid,
        boxes: inside.map(({ group, x0, x1, y0, y1 }) => ({
          group,
          x: x0 * grid,
          y: -y1 * grid,
          w: (x1 - x0) * grid,
          h: (y1 - y0) * grid,
        })),
      },
    ];
  });
}

const mm = (amount: { readonly value: string; readonly unit: string }): number =>
  millimetres(`${amount.value} ${amount.unit}`) ?? 0;

/** Bark, sound wood at the bolt's small end, rotten heart and pieces. Every figure is written beside it. */
export function EndView(props: {
  readonly log: Estimate["sawing"]["logs"][number];
  readonly bolt: BoltBoxes;
  readonly label: string;
}) {
  const { log, bolt, label } = props;
  const share = Math.min(1, Math.max(0, bolt.from / (mm(log.length) || 1)));
  const between = (small: number, large: number) => small + (large - small) * share;
  const wood = between(mm(log.smallDiameter), mm(log.largeDiameter)) / 2;
  const bark = wood + mm(log.bark);
  const rot = between(mm(log.rotSmall), mm(log.rotLarge)) / 2;
  const groups = [...new Set(bolt.boxes.map(({ group }) => group))];
  const counted = groups.map((group) => `${bolt.boxes.filter((box) => box.group === group).length} ${plain(group)}`);
  const size = Math.ceil(Math.max(bark, ...bolt.boxes.map(({ x, y, w, h }) => Math.max(-x, x + w, -y, y + h)))) + 4;
  return (
    <figure class="end">
      <svg
        viewBox={`${-size} ${-size} ${2 * size} ${2 * size}`}
        role="img"
        aria-label={`${label}: ${counted.join(", ")}`}
      >
        <circle class="bark" r={round(bark)} />
        <circle class="wood" r={round(wood)} />
        {[0.75, 0.5, 0.25].map((part) => (
          <circle class="growth" r={round(wood * part)} />
        ))}
        {rot > 0 && <circle class="rot" r={round(rot)} />}
        {bolt.boxes.map(({ group, x, y, w, h }) => (
          <rect
            class={`piece tone-${groups.indexOf(group) % 4}`}
            x={round(x)}
            y={round(y)}
            width={round(w)}
            height={round(h)}
          />
        ))}
      </svg>
      <figcaption>
        {groups.map((group, index) => (
          <span class={`key tone-${index % 4}`}>{capital(counted[index] ?? plain(group))}</span>
        ))}
        <span>{`${said(short(log.smallDiameter))} small end`}</span>
      </figcaption>
    </figure>
  );
}

const round = (value: number): number => Math.round(value * 10) / 10;
