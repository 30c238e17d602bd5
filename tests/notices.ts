import { readFile, writeFile } from "node:fs/promises";
import { type Lock, noticesText } from "./notices-text.ts";

/** Writes the notice of licences: `npm run notices`, after every change of the dependencies. */
const lock = JSON.parse(await readFile("package-lock.json", "utf8")) as Lock;
await writeFile("content/notices.txt", noticesText(lock));
