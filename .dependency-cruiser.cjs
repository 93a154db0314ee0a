/**
 * The ladder of imports: a file imports from its own folder and from rungs below its own, never from a folder
 * beside it or above. tests/architecture.test.ts takes these rules and reads the imports by itself.
 */

/** From the ground up. A name is a folder or a file below src, without its ending. */
const LADDER = [
  ["estimate/faults", "estimate/watch", "estimate/notice"],
  ["estimate/quantity"],
  ["estimate/sheet", "estimate/solver", "catalog"],
  ["estimate/request", "estimate/need"],
  ["estimate/pieces"],
  ["estimate/takeoff", "estimate/salvage", "estimate/purchase"],
  ["estimate/effort"],
  ["estimate/group-basis", "estimate/labor", "estimate/logs-at-hand"],
  ["estimate/basis"],
  ["estimate/piece-price"],
  ["estimate/compare", "estimate/drawing"],
  ["estimate/plan", "estimate/takeoffs", "estimate/default-notices", "estimate/brace-notices"],
  ["estimate/joint-route", "estimate/extras", "estimate/left-out", "estimate/remembered"],
  [
    "estimate/cautions",
    "estimate/best-mix",
    "estimate/covering-comparison",
    "estimate/offer-choice",
    "estimate/structure-notices",
    "estimate/override-faults",
    "estimate/held-plan-faults",
    "estimate/drying-notices",
    "estimate/purchase-notices",
  ],
  ["estimate/notices", "estimate/mix-choice", "estimate/frontier-plans"],
  ["estimate/frontier", "estimate/limit-plans", "estimate/piece-moves", "estimate/without-pins"],
  ["estimate/estimate", "estimate/sawn-logs"],
  ["estimate/sweep", "api/render"],
  ["api"],
];

/** Packages that the core may use, each from one place. */
const PACKAGES = {
  "decimal.js": "^src/estimate/quantity/decimal\\.ts$",
  zod: "^src/(catalog|estimate/request|api)/",
  "csv-parse": "^src/catalog/csv-table\\.ts$",
};

const FOLDER = { api: "^src/api/(?!render/)" };
const pathOf = (name) => FOLDER[name] ?? `^src/${name}(/|\\.tsx?$)`;
const CORE = "^src/(estimate|catalog)/";

const ladderRules = LADDER.flatMap((rung, height) =>
  rung.map((name) => ({
    name: `ladder: ${name}`,
    comment: "Imports go down the ladder only.",
    severity: "error",
    from: { path: pathOf(name) },
    to: { path: notBelow(height, name) },
  })),
).filter((rule) => rule.to.path.length > 0);

/** Everything on the rung and above it, the folder itself apart. */
function notBelow(height, name) {
  return LADDER.slice(height)
    .flat()
    .filter((other) => other !== name)
    .map(pathOf);
}

module.exports = {
  forbidden: [
    { name: "no loops", comment: "Types included.", severity: "error", from: {}, to: { circular: true } },
    ...ladderRules,
    {
      name: "every file has its rung",
      comment: "A new folder must be placed on the ladder before anything is imported in it.",
      severity: "error",
      from: { path: "^src/", pathNot: LADDER.flat().map(pathOf) },
      to: {},
    },
    {
      name: "the catalog knows quantities and faults only",
      severity: "error",
      from: { path: "^src/catalog/" },
      to: { path: "^src/", pathNot: ["^src/catalog/", "^src/estimate/quantity/", "^src/estimate/faults\\.ts$"] },
    },
    {
      name: "the core runs anywhere",
      comment: "No Node module, and no package but those above.",
      severity: "error",
      from: { path: CORE },
      to: { pathNot: ["^src/", "^\\.", ...Object.keys(PACKAGES).map((name) => `^node_modules/${name}/`)] },
    },
    ...Object.entries(PACKAGES).map(([name, path]) => ({
      name: `${name} only where it belongs`,
      severity: "error",
      from: { path: "^src/", pathNot: path },
      to: { path: `^node_modules/${name}/` },
    })),
    {
      name: "each of these has one file that imports it",
      severity: "error",
      from: { path: "^src/", pathNot: "^src/api/(highs|pool|render/(csv|xlsx))\\.ts$" },
      to: { path: "^node_modules/(highs|piscina|csv-stringify|fflate)/" },
    },
    {
      name: "what is imported exists",
      severity: "error",
      from: {},
      to: { couldNotResolve: true },
    },
  ],
  options: {
    doNotFollow: { path: "(^|/)node_modules/" },
    tsPreCompilationDeps: true, // type imports count
    tsConfig: { fileName: "tsconfig.json" },
    enhancedResolveOptions: {
      exportsFields: ["exports"],
      extensions: [".ts", ".tsx", ".js"],
      conditionNames: ["import", "types", "default"],
    },
  },
};
