// Reads JSON text once before it is parsed, for what JSON.parse does not tell: where a mistake stands, in
// lines and columns and in every browser alike; a key that occurs twice, of which one value would be lost
// without a word; keys that reach an object's prototype; and nesting without end.
import { depthLimit, isDangerousKey } from './plain-json.ts';

export interface JsonFault {
  /** Counted from 1. */
  readonly line: number;
  readonly column: number;
  /** The keys down to the fault. */
  readonly path: readonly string[];
  readonly wrong: string;
  readonly wayOut: string;
}

/** More faults than this are not collected. */
const faultLimit = 100;

class Stop extends Error {}

const isSpace = (code: number): boolean =>
  code === 0x20 || code === 0x0a || code === 0x0d || code === 0x09;

const numberPattern = /-?(?:0|[1-9]\d*)(?:\.\d+)?(?:[eE][+-]?\d+)?/y;
const wordPattern = /[\p{L}_][\p{L}\d_]*/uy;

/** What is wrong with the text as JSON and as a document's text; empty where nothing is. */
export const findJsonFaults = (text: string): JsonFault[] => {
  const faults: JsonFault[] = [];
  const path: string[] = [];
  let at = 0;

  const note = (offset: number, wrong: string, wayOut: string): void => {
    const before = text.slice(0, offset);
    const line = before.split('\n').length;
    const column = offset - before.lastIndexOf('\n');
    faults.push({ line, column, path: [...path], wrong, wayOut });
    if (faults.length >= faultLimit) throw new Stop();
  };
  /** After a mistake in the grammar the rest cannot be read. */
  const stop = (offset: number, wrong: string, wayOut: string): never => {
    note(offset, wrong, wayOut);
    throw new Stop();
  };
  const skipSpace = (): void => {
    while (isSpace(text.charCodeAt(at))) at++;
  };

  const unexpected = (wanted: string): never => {
    const sign = text.charAt(at);
    if (sign === '')
      return stop(at, 'the text ends too early', 'the file may be cut off: get it anew');
    if (sign === '/')
      return stop(at, 'a comment stands here', 'take it away: JSON has no comments');
    if (sign === "'") return stop(at, 'single quotes stand here', 'write double quotes');
    wordPattern.lastIndex = at;
    const word = wordPattern.exec(text)?.[0];
    return stop(at, `${JSON.stringify(word ?? sign)} stands here`, `write ${wanted}`);
  };

  const readString = (): string => {
    const start = at++;
    let hasEscapes = false;
    for (;;) {
      const code = text.charCodeAt(at);
      if (code === 0x22) break;
      if (Number.isNaN(code)) stop(start, 'a text is not closed', 'add the closing quote');
      if (code < 0x20) {
        stop(
          at,
          'a line or tab stands inside a text',
          'write it as \\n or \\t, or close the quote'
        );
      }
      if (code === 0x5c) {
        hasEscapes = true;
        const isSound = /^(?:["\\/bfnrt]|u[0-9a-fA-F]{4})/.test(text.slice(at + 1, at + 6));
        if (!isSound) stop(at, 'a backslash stands here', 'write it twice');
        at++;
      }
      at++;
    }
    at++;
    return hasEscapes
      ? (JSON.parse(text.slice(start, at)) as string)
      : text.slice(start + 1, at - 1);
  };

  /** Goes over what stands between two brackets; `readItem` reads one entry. */
  const readItems = (close: number, readItem: (index: number) => void): void => {
    if (path.length >= depthLimit) {
      stop(
        at,
        `lists and objects lie deeper than ${depthLimit} levels`,
        'this is no chassis document'
      );
    }
    at++;
    skipSpace();
    if (text.charCodeAt(at) === close) {
      at++;
      return;
    }
    for (let index = 0; ; index++) {
      readItem(index);
      skipSpace();
      const code = text.charCodeAt(at);
      if (code === close) break;
      if (code !== 0x2c) unexpected(`a comma or ${String.fromCharCode(close)}`);
      const comma = at++;
      skipSpace();
      if (text.charCodeAt(at) === close) {
        stop(comma, 'a comma stands before the closing bracket', 'take the comma away');
      }
    }
    at++;
  };

  const readObject = (): void => {
    const keys = new Set<string>();
    readItems(0x7d, () => {
      const start = at;
      if (text.charCodeAt(at) !== 0x22) unexpected('a key in double quotes');
      const key = readString();
      path.push(key);
      if (isDangerousKey(key)) note(start, 'is a key that is refused everywhere', 'take it away');
      if (keys.has(key)) note(start, 'occurs twice in one object', 'keep one of the two');
      keys.add(key);
      skipSpace();
      if (text.charCodeAt(at) !== 0x3a) unexpected('a colon');
      at++;
      readValue();
      path.pop();
    });
  };

  const readValue = (): void => {
    skipSpace();
    const code = text.charCodeAt(at);
    if (code === 0x7b) return readObject();
    if (code === 0x5b) {
      return readItems(0x5d, (index) => {
        path.push(String(index));
        readValue();
        path.pop();
      });
    }
    if (code === 0x22) return void readString();
    for (const word of ['true', 'false', 'null']) {
      if (text.startsWith(word, at)) return void (at += word.length);
    }
    numberPattern.lastIndex = at;
    const number = numberPattern.exec(text)?.[0];
    if (number === undefined) return unexpected('a value');
    if (!Number.isFinite(Number(number)))
      note(at, 'is a number without bounds', 'write a smaller one');
    at += number.length;
  };

  try {
    skipSpace();
    if (at === text.length) stop(0, 'the file is empty', 'choose another file');
    readValue();
    skipSpace();
    if (at < text.length) stop(at, 'more text follows after the end', 'take it away');
  } catch (error) {
    if (!(error instanceof Stop)) throw error;
  }
  return faults;
};
