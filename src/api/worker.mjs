// Where a worker thread begins. TypeScript is taught to it here: what the main thread was told at its start does not reach it.
import { register } from "tsx/esm/api";

register();
const { default: work, warmUp } = await import("./worker.ts");
await warmUp(); // the first caller does not wait for it
export default work;
