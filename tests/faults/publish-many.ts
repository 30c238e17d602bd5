import { writeFile } from "node:fs/promises";
import path from "node:path";
import { publish } from "../../build/publish/publish.ts";
import { OWN_FILES } from "./own-files.ts";

/** Publishes one guide after the other into a folder, each of many small files that say its number, until it is killed. */
const FILES = 40;
const [out = "", first = "0"] = process.argv.slice(2);

async function publishForever(): Promise<never> {
  for (let number = Number(first); ; number++) {
    await publish(out, async (staging) => {
      await writeFile(path.join(staging, "guide.json"), JSON.stringify({ number }));
      for (let i = 0; i < FILES; i++)
        await writeFile(path.join(staging, `page-${i}.html`), `guide ${number}\n`);
      return true;
    });
    if (number === 0) await writeFile(path.join(out, "CNAME"), OWN_FILES.CNAME);
  }
}
await publishForever();
