/** What only the types tell of the core: which door a cell's value goes through, what is exported without a word. */
import ts from "typescript";
import { describe, expect, it, vi } from "vitest";

/** The compiler takes some seconds, and more on a busy machine. */
vi.setConfig({ testTimeout: 120_000 });

const root = new URL("..", import.meta.url).pathname;

const config = ts.parseJsonConfigFileContent(
  ts.readConfigFile(`${root}tsconfig.json`, ts.sys.readFile).config,
  ts.sys,
  root,
);

const PLANTED = `${root}src/estimate/planted.ts`;

/** The core as the compiler sees it, with one more file planted in it where a text is given. */
function programOf(planted?: string): ts.Program {
  const files = config.fileNames.filter((name) => /\/src\/(estimate|catalog)\//.test(name));
  if (planted === undefined) return ts.createProgram(files, config.options);
  const host = ts.createCompilerHost(config.options);
  const { getSourceFile, fileExists } = host;
  host.fileExists = (name) => name === PLANTED || fileExists(name);
  host.getSourceFile = (name, ...rest) =>
    name === PLANTED ? ts.createSourceFile(name, planted, ts.ScriptTarget.Latest, true) : getSourceFile(name, ...rest);
  return ts.createProgram([PLANTED], config.options, host);
}

const coreOf = (program: ts.Program, where = /\/src\/(estimate|catalog)\//): ts.SourceFile[] =>
  program.getSourceFiles().filter(({ fileName }) => where.test(fileName));

function placeOf(node: ts.Node): string {
  const file = node.getSourceFile();
  return `${file.fileName.replace(root, "")}:${file.getLineAndCharacterOfPosition(node.getStart()).line + 1}`;
}

function everyNode(file: ts.SourceFile, look: (node: ts.Node) => void): void {
  const visit = (node: ts.Node): void => {
    look(node);
    ts.forEachChild(node, visit);
  };
  visit(file);
}

/** Places outside the sheet where a cell's value is read by another way than `decide` and `aside`. */
function sideDoors(program: ts.Program): string[] {
  const checker = program.getTypeChecker();
  const isA = (name: string, node: ts.Node) =>
    new RegExp(`\\b${name}\\b`).test(
      checker.typeToString(checker.getTypeAtLocation(node), undefined, ts.TypeFormatFlags.NoTruncation),
    );
  const found: string[] = [];
  for (const file of coreOf(program, /\/src\/(estimate\/(?!sheet\/|quantity\/)|catalog\/)/)) {
    everyNode(file, (node) => {
      const reads = ts.isPropertyAccessExpression(node) && node.name.text === "value" && isA("Cell", node.expression);
      const unpacks =
        ts.isBindingElement(node) && (node.propertyName ?? node.name).getText() === "value" && isA("Cell", node.parent);
      const converts =
        ts.isCallExpression(node) &&
        ((node.expression.getText() === "inUnit" && node.arguments.some((one) => isA("Cell", one))) ||
          (ts.isPropertyAccessExpression(node.expression) &&
            node.expression.name.text === "in" &&
            isA("Sheet", node.expression.expression)));
      if (reads || unpacks || converts) found.push(`${placeOf(node)}: ${node.getText().slice(0, 60)}`);
    });
  }
  return found;
}

/** Exported declarations without a doc comment; a default or re-export stands for none. */
function undocumented(program: ts.Program): string[] {
  const found: string[] = [];
  for (const file of coreOf(program)) {
    for (const statement of file.statements) {
      if (!ts.canHaveModifiers(statement)) continue;
      if (!ts.getModifiers(statement)?.some(({ kind }) => kind === ts.SyntaxKind.ExportKeyword)) continue;
      if (ts.getJSDocCommentsAndTags(statement).length === 0) {
        found.push(`${placeOf(statement)}: ${statement.getText().slice(0, 60).split("\n")[0]}`);
      }
    }
  }
  return found;
}

const core = programOf();

describe("a cell's value", () => {
  it("comes to code outside the sheet by `decide`, or by `aside` where nothing laid hangs on it", () => {
    expect(coreOf(core).length).toBeGreaterThan(150);
    expect(sideDoors(core)).toEqual([]);
  });

  it("is seen to be taken by a side door where it is", () => {
    const program = programOf(`
      import type { Cell } from "./sheet/expression.js";
      import type { Sheet } from "./sheet/sheet.js";
      import { inUnit } from "./quantity/quantity.js";
      export const a = (cell: Cell) => cell.value.gt(1);
      export const b = ({ value }: Cell) => value.gt(1);
      export const c = (cells: { one?: Cell }) => cells.one?.value;
      export const d = (cell: Cell) => inUnit(cell, "mm").gt(1);
      export const e = (sheet: Sheet, cell: Cell) => sheet.in(cell, "mm").gt(1);
    `);
    const planted = sideDoors(program).filter((place) => place.startsWith("src/estimate/planted.ts"));
    expect(planted.map((place) => Number(place.split(":")[1]) - 4)).toEqual([1, 2, 3, 4, 5]);
  });
});

describe("every export of the core", () => {
  it("says in a doc comment what it is", () => {
    expect(undocumented(core)).toEqual([]);
  });
});
