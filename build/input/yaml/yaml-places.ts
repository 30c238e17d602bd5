import { EVENT_ID, type Event, getScalarValue, SCALAR_STYLE } from "js-yaml";
import type { Fault } from "../../model/fault.ts";
import { quoted } from "../../model/fault.ts";

/** Where a value begins, as an offset into the text, and the places of what it holds. */
export interface Place {
  readonly start: number;
  /** By key, or by position in a list. */
  readonly entries: ReadonlyMap<string, Entry>;
}

export interface Entry {
  readonly keyStart: number;
  readonly value: Place;
}

/** What a walk over a file's events tells about them. */
export interface WalkReport {
  refuse(offset: number, fault: Fault): void;
  lineOf(offset: number): number;
}

/** What may stand between the end of a value and the dash of the next list entry. */
const UP_TO_DASH = /(?:[\s"'\]},]+|#.*)*/y;

const IS_NUMBER = /^\d+$/;

/** Walks the events of one document; refuses aliases, tags, keys written twice and `__proto__`. */
class Walk {
  #next = 1; // behind the event that opens the document
  /** End of the last value seen. */
  #reached = 0;
  #sawAlias = false;

  constructor(
    private readonly text: string,
    private readonly events: readonly Event[],
    private readonly report: WalkReport,
  ) {}

  /** The value that begins at the next event; `fallback` is its place when nothing is written. */
  node(fallback: number): Place {
    const event = this.events[this.#next];
    this.#next += 1;
    if (event === undefined || event.type === EVENT_ID.DOCUMENT || event.type === EVENT_ID.POP)
      return { start: fallback, entries: new Map() };
    if (event.type === EVENT_ID.ALIAS) return this.#alias(event.anchorStart - 1);
    if (event.tagStart >= 0)
      this.report.refuse(event.tagStart, {
        code: "yaml-tag",
        message: "a text without quotes cannot begin with !",
        hint: "put the text in quotes",
      });
    if (event.type === EVENT_ID.SCALAR) return { start: this.#scalar(event, fallback), entries: new Map() };
    this.#reached = event.start;
    const entries = event.type === EVENT_ID.SEQUENCE ? this.#items(event.start) : this.#pairs(event.start);
    return { start: event.start, entries };
  }

  #alias(start: number): Place {
    // Once a file: where there is one on purpose there are many.
    if (!this.#sawAlias)
      this.report.refuse(start, {
        code: "yaml-alias",
        message: "a text without quotes cannot begin with *",
        hint: "put the text in quotes; to repeat a value, write it out again",
      });
    this.#sawAlias = true;
    return { start, entries: new Map() };
  }

  #scalar(event: Extract<Event, { valueStart: number }>, fallback: number): number {
    if (event.valueStart < 0) return fallback;
    this.#reached = event.valueEnd;
    const isQuoted = event.style === SCALAR_STYLE.SINGLE_QUOTED || event.style === SCALAR_STYLE.DOUBLE_QUOTED;
    return isQuoted ? event.valueStart - 1 : event.valueStart;
  }

  #isAtEnd(): boolean {
    return (this.events[this.#next]?.type ?? EVENT_ID.POP) === EVENT_ID.POP;
  }

  #items(start: number): Map<string, Entry> {
    const entries = new Map<string, Entry>();
    while (!this.#isAtEnd()) {
      const dash = this.#nextDash() ?? start;
      entries.set(String(entries.size), { keyStart: dash, value: this.node(dash) });
    }
    this.#next += 1;
    return entries;
  }

  #nextDash(): number | undefined {
    UP_TO_DASH.lastIndex = this.#reached;
    UP_TO_DASH.test(this.text);
    const dash = UP_TO_DASH.lastIndex;
    if (this.text[dash] !== "-") return undefined;
    this.#reached = dash + 1;
    return dash;
  }

  #pairs(start: number): Map<string, Entry> {
    const entries = new Map<string, Entry>();
    while (!this.#isAtEnd()) {
      const event = this.events[this.#next];
      const key = event?.type === EVENT_ID.SCALAR ? getScalarValue(this.text, event) : "";
      const keyStart = this.node(start).start;
      if (event?.type === EVENT_ID.SEQUENCE || event?.type === EVENT_ID.MAPPING)
        this.report.refuse(keyStart, {
          code: "yaml-bad-key",
          message: "a list or group stands where a key belongs",
          hint: "write a plain word before the colon, and put a text that begins with { or [ in quotes",
        });
      this.#checkKey(key, keyStart, entries.get(key));
      entries.set(key, { keyStart, value: this.node(keyStart) });
    }
    this.#next += 1;
    return entries;
  }

  #checkKey(key: string, keyStart: number, earlier: Entry | undefined): void {
    if (key === "__proto__")
      this.report.refuse(keyStart, {
        code: "forbidden-key",
        message: "“__proto__” cannot be a key",
        hint: "remove it",
      });
    // A number is no key: whoever reads the group says so.
    if (earlier !== undefined && !IS_NUMBER.test(key))
      this.report.refuse(keyStart, {
        code: "duplicate-key",
        message: `${quoted(key)} is there already, on line ${this.report.lineOf(earlier.keyStart)}`,
        hint: "keep one of the two",
      });
  }
}

/** The places of everything in the first document of `events`. */
export const placesOf = (text: string, events: readonly Event[], report: WalkReport): Place =>
  new Walk(text, events, report).node(0);
