#!/usr/bin/env node
// Starts the program where it is installed: node with tsx and the compiler options that lie beside it, wherever the
// command is given.
import { spawnSync } from "node:child_process";
import { fileURLToPath } from "node:url";

const here = (file) => fileURLToPath(new URL(file, import.meta.url));

const { status, error } = spawnSync(
  process.execPath,
  ["--import", import.meta.resolve("tsx"), here("./cli.ts"), ...process.argv.slice(2)],
  { stdio: "inherit", env: { ...process.env, TSX_TSCONFIG_PATH: here("../tsconfig.json") } },
);
if (error !== undefined) throw error;
process.exitCode = status ?? 1;
