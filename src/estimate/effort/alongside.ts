/**
 * Which stages need not wait for one another. Common practice: holes are dug and filled whenever; boards are edged, carried
 * and stacked while the next ones are sawn; bought lumber comes while logs are milled; another piece is worked on while one
 * is being joined, sanded or brushed.
 */
const BESIDE: readonly (readonly [readonly string[], readonly string[]])[] = [
  [
    ["dig", "pour"],
    words(
      "getOut prepare setUp saw edge sharpen carry stack slabs fetch sort cut dress dressByHand sand join trialAssemble dismantle finishFirst finishLater move",
    ),
  ],
  [["getOut", "prepare"], words("setUp saw edge sharpen carry stack slabs fetch sort cut")],
  [words("setUp saw edge sharpen carry stack slabs"), words("setUp saw edge sharpen carry stack slabs fetch sort cut")],
  [["dress", "dressByHand", "sand"], words("slabs sort cut dress dressByHand sand join finishFirst")],
  [["join"], words("finishFirst")],
  [["roof", "trim"], words("cleanUp")],
];

/** What is done by turns, bolt by bolt, from the first one on the mill until the last board is stacked. */
export const BY_TURNS: ReadonlySet<string> = new Set(words("setUp saw edge sharpen carry stack slabs"));

function words(text: string): string[] {
  return text.split(" ");
}

const PAIRS: ReadonlySet<string> = new Set(
  BESIDE.flatMap(([these, those]) => these.flatMap((a) => those.flatMap((b) => [`${a} ${b}`, `${b} ${a}`]))),
);

/** True when the two may go on at the same time, hands allowing; the parts of one stage always may. */
export const goAlongside = (a: string, b: string): boolean => a === b || PAIRS.has(`${a} ${b}`);
