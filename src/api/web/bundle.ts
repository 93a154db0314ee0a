/**
 * The form's script, built from its sources when it is first asked for: no build step to forget, and no built file
 * that could be older than its source.
 */
import { fileURLToPath } from "node:url";
import { build, type Plugin } from "esbuild";

/** Built files by name. The table of prices comes apart, when someone opens it. */
export type Scripts = ReadonlyMap<string, string>;

let built: Promise<Scripts> | undefined;

/** The scripts, built once in the life of the process (about half a second). */
export function scripts(): Promise<Scripts> {
  built ??= bundle();
  return built;
}

const here = (path: string): string => fileURLToPath(new URL(path, import.meta.url));

/** Our modules do nothing when they are merely imported: of a file nobody uses a name of, nothing need be sent. */
const unusedGoes: Plugin = {
  name: "unused goes",
  setup({ onResolve, resolve }) {
    onResolve({ filter: /^\.{1,2}\// }, async ({ path, pluginData, ...args }) => {
      if (pluginData === "resolved" || args.importer.includes("node_modules")) return undefined;
      return { ...(await resolve(path, { ...args, pluginData: "resolved" })), sideEffects: false };
    });
  },
};

async function bundle(): Promise<Scripts> {
  const { outputFiles } = await build({
    entryPoints: [here("app/main.tsx")],
    bundle: true,
    splitting: true,
    format: "esm",
    target: "es2022",
    minify: true,
    write: false,
    outdir: "/",
    chunkNames: "part-[hash]",
    jsx: "automatic",
    jsxImportSource: "hono/jsx/dom",
    charset: "utf8",
    legalComments: "none",
    // What reads CSV on the server asks for Node's buffers; its own form for browsers brings them.
    alias: { "csv-parse/sync": "csv-parse/browser/esm/sync" },
    plugins: [unusedGoes],
    logLevel: "silent",
  });
  return new Map(outputFiles.map(({ path, text }) => [path.split(/[\\/]/).at(-1) as string, text]));
}
