// The end of a wire as a person types it, made into a terminal: "V3-5", "v3 pin 5", "T1 red".
// What names no terminal is kept as it was written, with a word on why it was not found.
import type { TerminalRef } from '#document/index.ts';
import type { DocumentIndex } from '#study/index.ts';
import { terminalText } from '#study/index-document.ts';
import type { ChassisDocument, Part } from '#document/index.ts';

export type EndReading =
  | { readonly kind: 'terminal'; readonly at: TerminalRef; readonly label: string }
  | { readonly kind: 'words'; readonly text: string; readonly why: string }
  | { readonly kind: 'open' };

/** Letters and figures only, so that "V3-5", "V3:5" and "v3 5" are one name. */
const squeezed = (text: string): string =>
  text
    .toLowerCase()
    .replaceAll(/\b(pin|lug|terminal|term|no|number|lead)\b\.?/g, ' ')
    .replaceAll(/[^\p{L}\p{N}+]+/gu, ' ')
    .trim();

const list = (names: readonly string[]): string => {
  const shown = names.slice(0, 8).join(', ');
  return names.length > 8 ? `${shown} …` : shown;
};

export class EndNames {
  readonly #document: ChassisDocument;
  readonly #index: DocumentIndex;
  readonly #byName = new Map<string, { at: TerminalRef; label: string }>();
  readonly #partsByName = new Map<string, Part>();

  /** All names that the document's terminals go by; where two share one, the first keeps it. */
  constructor(document: ChassisDocument, index: DocumentIndex) {
    this.#document = document;
    this.#index = index;
    for (const entry of index.terminals) {
      const label = terminalText(document, entry);
      const at = { part: entry.part.id, terminal: entry.terminal.id };
      const names = [label, `${entry.part.reference} ${entry.terminal.name}`];
      if (index.terminalsOf.get(entry.part.id)?.length === 1) names.push(entry.part.reference);
      for (const name of names) {
        const key = squeezed(name);
        if (key !== '' && !this.#byName.has(key)) this.#byName.set(key, { at, label });
      }
    }
    for (const part of index.parts) {
      const key = squeezed(part.reference);
      if (key !== '' && !this.#partsByName.has(key)) this.#partsByName.set(key, part);
    }
  }

  /** The terminal that a text names, or the text as it stands; empty and "?" are an open end. */
  read(text: string): EndReading {
    const trimmed = text.trim();
    if (trimmed === '' || trimmed === '?') return { kind: 'open' };
    const found = this.#byName.get(squeezed(trimmed));
    if (found !== undefined) return { kind: 'terminal', ...found };
    return { kind: 'words', text: trimmed, why: this.#whyNot(squeezed(trimmed)) };
  }

  /** Names that begin as `text` does, for a list under the field; at most `limit`. */
  suggest(text: string, limit = 8): string[] {
    const start = squeezed(text);
    if (start === '') return [];
    const labels: string[] = [];
    for (const [name, { label }] of this.#byName) {
      if (name.startsWith(start) && !labels.includes(label)) labels.push(label);
      if (labels.length >= limit) break;
    }
    return labels;
  }

  #whyNot(key: string): string {
    const words = key.split(' ');
    for (let count = words.length; count > 0; count--) {
      const part = this.#partsByName.get(words.slice(0, count).join(' '));
      if (part === undefined) continue;
      const names = (this.#index.terminalsOf.get(part.id) ?? []).map((terminal) => terminal.name);
      if (names.length === 0) return `${part.reference} has no terminals yet`;
      return count === words.length
        ? `which terminal of ${part.reference}? It has ${list(names)}`
        : `${part.reference} has no such terminal; it has ${list(names)}`;
    }
    const count = Object.keys(this.#document.parts).length;
    return count === 0 ? 'there are no parts yet' : 'no part of that name';
  }
}

/** The fields of a wire's end that a reading stands for. Null takes a key away. */
export const endFieldsOf = (reading: EndReading): Record<string, unknown> => {
  switch (reading.kind) {
    case 'terminal':
      return { at: { ...reading.at }, as: null, known: 'seen' };
    case 'words':
      return { at: null, as: reading.text, known: 'unknown' };
    case 'open':
      return { at: null, as: null, known: 'unknown' };
  }
};
