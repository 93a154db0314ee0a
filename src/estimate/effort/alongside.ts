/**
 * Which stages need not wait for one another. Common practice: holes are dug whenever; boards are edged, carried and
 * stacked while the next ones are sawn; bought lumber comes while logs are milled; another piece is worked on while one is
 * being joined, sanded or brushed.
 */
const BESIDE: readonly (readonly [readonly string[], readonly string[]])[] = [
  [
    ["dig", "pour"],
    words(
      "getOut prepare setUp saw edge sharpen carry stack slabs fetch sort cut dress sand join trialAssemble dismantle finishFirst",
    ),
  ],
  [["getOut", "prepare"], words("setUp saw edge sharpen carry stack slabs fetch sort cut")],
  [["setUp", "saw"], words("edge sharpen carry stack slabs fetch sort cut")],
  [["edge", "carry", "stack", "slabs"], words("edge carry stack slabs fetch sort cut")],
  [["fetch", "sort", "cut"], words("sharpen")],
  [["dress", "sand"], words("slabs sort cut sand join finishFirst")],
  [["join"], words("finishFirst")],
  [["roof", "trim"], words("cleanUp")],
];

function words(text: string): string[] {
  return text.split(" ");
}

/** True when the two may go on at the same time, hands allowing. */
export function goAlongside(a: string, b: string): boolean {
  if (a === b) return false;
  return BESIDE.some(
    ([these, those]) => (these.includes(a) && those.includes(b)) || (these.includes(b) && those.includes(a)),
  );
}
