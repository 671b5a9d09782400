// What a thing on the sheet is, in words: for a pointer that rests on it, and for those who cannot see.
import type { Part, Support, Terminal } from '#document/index.ts';
import { terminalText } from '#study/index-document.ts';
import type { Study } from '#study/index.ts';

/** "V3 6CB6A, picture IF". */
export const partTitle = (part: Part): string =>
  [[part.reference, part.type, part.value].filter(Boolean).join(' '), part.function]
    .filter(Boolean)
    .join(', ');

/** "V3-5", "chassis at GL1". */
export const terminalTitle = (study: Study, part: Part, terminal: Terminal): string =>
  terminalText(study.document, { part, terminal });

/** "clamp K1". */
export const supportTitle = ({ kind, name }: Support): string => `${kind} ${name}`;
