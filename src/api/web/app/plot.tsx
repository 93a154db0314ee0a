/** Cash against hours, drawn: every way a point with its name, mixes between them small. */
import type { Estimate } from "./model.js";
import { placesOf } from "./plot-names.js";
import { type Amount, said, wayOf } from "./words.js";

/** In units of the drawing. Letters as large as on a phone. */
const PLOT = { width: 440, height: 280, left: 76, right: 16, top: 18, bottom: 52, letters: 17 };

interface Point {
  readonly cash: Amount;
  readonly hours: Amount;
}

/** Down and to the left is better. Positions only; the figures stand in the tables beside it. */
export function Plot({ answer }: { readonly answer: Estimate }) {
  const { routes, best, frontier } = answer.decision;
  if (routes.length < 2) return null;
  const all: Point[] = [...routes, ...frontier];
  const x = scaleOf(
    all.map(({ hours }) => Number(hours.value)),
    PLOT.left,
    PLOT.width - PLOT.right,
  );
  const y = scaleOf(
    all.map(({ cash }) => Number(cash.value)),
    PLOT.height - PLOT.bottom,
    PLOT.top,
  );
  const at = ({ cash, hours }: Point) => ({ x: x.place(Number(hours.value)), y: y.place(Number(cash.value)) });
  const places = placesOf(
    routes.map((one) => ({ ...at(one), name: wayOf(one) })),
    { width: PLOT.width, height: PLOT.height - PLOT.bottom, size: PLOT.letters },
  );
  const words = routes.map((one) => `${wayOf(one)}: ${said(one.cash)}, ${said(one.hours)}`).join("; ");
  return (
    <svg
      class="plot"
      viewBox={`0 0 ${PLOT.width} ${PLOT.height}`}
      role="img"
      aria-label={`Cash against hours. ${words}.`}
    >
      <Axes x={x} y={y} currency={routes[0]?.cash.unit ?? ""} />
      {frontier.length > 1 && (
        <polyline class="frontier" points={frontier.map((one) => Object.values(at(one)).join(",")).join(" ")} />
      )}
      {frontier.map((one) => (
        <circle class="between" cx={at(one).x} cy={at(one).y} r="4" />
      ))}
      {routes.map((one, index) => {
        const { x: cx, y: cy } = at(one);
        const place = places[index];
        return (
          <g class={one.route}>
            {one.route === best && <circle class="ring" cx={cx} cy={cy} r="12" />}
            <circle cx={cx} cy={cy} r="6" />
            <text x={place?.x} y={place?.y} text-anchor={place?.anchor}>
              {wayOf(one)}
            </text>
          </g>
        );
      })}
    </svg>
  );
}

function Axes({ x, y, currency }: { readonly x: Scale; readonly y: Scale; readonly currency: string }) {
  const bottom = PLOT.height - PLOT.bottom;
  return (
    <g class="axes">
      <path class="axis" d={`M${PLOT.left} ${PLOT.top}V${bottom}H${PLOT.width - PLOT.right}`} />
      {x.ticks.map((tick) => (
        <>
          <path class="axis" d={`M${x.place(tick)} ${bottom}v6`} />
          <text x={x.place(tick)} y={bottom + 22} text-anchor="middle">
            {tick}
          </text>
        </>
      ))}
      {y.ticks.map((tick) => (
        <>
          <path class="axis" d={`M${PLOT.left} ${y.place(tick)}h-6`} />
          <text x={PLOT.left - 10} y={y.place(tick) + 5} text-anchor="end">
            {said({ value: String(tick), unit: currency })}
          </text>
        </>
      ))}
      <text x={PLOT.width - PLOT.right} y={PLOT.height - 8} text-anchor="end">
        person-hours of work →
      </text>
    </g>
  );
}

interface Scale {
  readonly place: (value: number) => number;
  /** Round numbers within the range. */
  readonly ticks: readonly number[];
}

/** Linear, with a margin of a fifth at both ends, where names have room. */
function scaleOf(values: readonly number[], from: number, to: number): Scale {
  const low = Math.min(...values);
  const span = Math.max(...values) - low || 1;
  const step = stepOf(span / 3);
  const first = Math.ceil((low - span / 4) / step);
  const ticks = Array.from({ length: 6 }, (_, index) => (first + index) * step);
  return {
    place: (value) => Math.round(from + (to - from) * (0.2 + (0.6 * (value - low)) / span)),
    ticks: ticks.filter((tick) => tick >= 0 && tick <= low + 1.25 * span),
  };
}

/** One, two or five of a power of ten: the first that is no smaller. */
function stepOf(least: number): number {
  const power = 10 ** Math.floor(Math.log10(least));
  return Math.max(1, power * ([1, 2, 5].find((times) => times * power >= least) ?? 10));
}
