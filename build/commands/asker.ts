import { createInterface } from "node:readline";

/** Asks somebody at a terminal, one line at a time. */
export interface Asker {
  /** The answer without spaces at its ends; undefined when there will be no more. */
  ask(question: string): Promise<string | undefined>;
  close(): void;
}

export function openAsker(input: NodeJS.ReadableStream, output: NodeJS.WritableStream): Asker {
  const lines = createInterface({ input, output });
  const answers = lines[Symbol.asyncIterator]();
  return {
    async ask(question) {
      lines.setPrompt(question);
      lines.prompt();
      const { value, done } = await answers.next();
      return done === true ? undefined : value.trim();
    },
    close: () => lines.close(),
  };
}
