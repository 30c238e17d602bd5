// Starts a thread whose sources are run as they are written.
import { workerData } from "node:worker_threads";
import { register } from "tsx/esm/api";

register();
await import(workerData.script);
