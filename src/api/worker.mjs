// Where a worker thread begins. TypeScript is taught to it here: what the main thread was told at its start does not reach it.
import { register } from "tsx/esm/api";

register();
const { default: work } = await import("./worker.ts");
export default work;
