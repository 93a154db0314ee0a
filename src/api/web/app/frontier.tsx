/** Cash against hours, drawn. */
import type { Estimate } from "./model.js";
import { ROUTE_WORDS, said } from "./words.js";

const PLOT = { width: 640, height: 260, left: 70, right: 24, top: 18, bottom: 44 };

type Label = { readonly x: number; readonly y: number; readonly anchor: "start" | "middle" | "end" };

/** Where a point's name stands: on sides that differ, since points may lie close together. */
const LABELS: Readonly<Record<string, Label>> & { readonly mixed: Label } = {
  mixed: { x: 0, y: -18, anchor: "middle" },
  milled: { x: 6, y: 24, anchor: "end" },
  bought: { x: 14, y: 5, anchor: "start" },
};

/** Cash against hours: down and to the left is better. Positions only; all figures stand in the table above. */
export function Plot({ answer }: { readonly answer: Estimate }) {
  const { routes, best, frontier } = answer.decision;
  const points = routes.map(({ route, cash, hours }) => ({ route: route as string, cash, hours }));
  if (points.length < 2) return null;
  const all = [...points, ...frontier.map(({ cash, hours }) => ({ cash, hours }))];
  const x = scale(
    all.map(({ hours }) => Number(hours.value)),
    PLOT.left,
    PLOT.width - PLOT.right,
  );
  const y = scale(
    all.map(({ cash }) => Number(cash.value)),
    PLOT.height - PLOT.bottom,
    PLOT.top,
  );
  const at = ({ cash, hours }: (typeof all)[number]) => ({ x: x(Number(hours.value)), y: y(Number(cash.value)) });
  const line = frontier.map((point) => Object.values(at(point)).join(",")).join(" ");
  const words = points
    .map(({ route, cash, hours }) => `${ROUTE_WORDS[route]}: ${said(cash)}, ${said(hours)}`)
    .join("; ");
  return (
    <svg
      class="plot"
      viewBox={`0 0 ${PLOT.width} ${PLOT.height}`}
      role="img"
      aria-label={`Cash against hours. ${words}.`}
    >
      <path class="axis" d={`M${PLOT.left} ${PLOT.top}V${PLOT.height - PLOT.bottom}H${PLOT.width - PLOT.right}`} />
      <text x={PLOT.left} y={PLOT.height - 12}>
        more work →
      </text>
      <text x={PLOT.left - 8} y={PLOT.top + 10} text-anchor="end">
        dearer
      </text>
      <text x={PLOT.left - 8} y={PLOT.height - PLOT.bottom} text-anchor="end">
        cheaper
      </text>
      {line && <polyline class="frontier" points={line} />}
      {points.map((point) => {
        const { x: cx, y: cy } = at(point);
        const label = LABELS[point.route] ?? LABELS.mixed;
        return (
          <g class={point.route}>
            {point.route === best && <circle class="ring" cx={cx} cy={cy} r="12" />}
            <circle cx={cx} cy={cy} r="6" />
            <text x={cx + label.x} y={cy + label.y} text-anchor={label.anchor}>
              {ROUTE_WORDS[point.route]}
            </text>
          </g>
        );
      })}
    </svg>
  );
}

/** A linear scale with a margin of a fifth at both ends, where names have room. */
function scale(values: readonly number[], from: number, to: number): (value: number) => number {
  const low = Math.min(...values);
  const span = Math.max(...values) - low || 1;
  return (value) => Math.round(from + (to - from) * (0.2 + (0.6 * (value - low)) / span));
}
