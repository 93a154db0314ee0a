/** Setting out a rafter. */
import { Fig, Panel, type Shown } from "./figure.js";
import { said } from "./words.js";

/** How to cut a common rafter, and what to set out. */
export function Geometry({ m, answer }: Shown) {
  const { geometry } = answer;
  if (!geometry || !("rafter" in geometry)) return null;
  const { rafter } = geometry;
  const rows = [
    ["Along one edge, between plumb cuts", rafter.edgeLength],
    ["Straight piece to cut it from", rafter.stockLength],
    ["Birdsmouth: seat, level", rafter.seat],
    ["Birdsmouth: depth, plumb", rafter.notchPlumb],
    ["Birdsmouth: depth, square to the rafter", rafter.notchDepth],
    ["Height above the plate, plumb", rafter.heightAbovePlate],
    ["Gap when the saw is one degree off", rafter.gapAtOneDegree],
  ] as const;
  return (
    <Panel
      m={m}
      name="rafter"
      title="Cutting a rafter"
      gist={`${rafter.stockLength.marked}, ${said(rafter.slopeAngle)} plumb cut`}
    >
      <dl class="sums">
        <dt>Plumb cut, off square</dt>
        <dd>
          <Fig m={m} of={rafter.slopeAngle} />
        </dd>
        {rows.map(([label, length]) => (
          <>
            <dt>{label}</dt>
            <dd>
              <Fig m={m} of={length} text={length.marked} />
            </dd>
          </>
        ))}
      </dl>
    </Panel>
  );
}
