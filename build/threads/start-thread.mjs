// Begins a thread: sources are run there as they are written, as in the main thread.
import { workerData } from "node:worker_threads";
import { register } from "tsx/esm/api";

register();
await import(workerData.script);
