// One text for one terminal, so that maps and sets can hold it.
import type { Id, TerminalRef } from '#document/index.ts';

/** "part/terminal": ids hold no slash, so two terminals never share a key. */
export const terminalKey = (part: Id, terminal: Id): string => `${part}/${terminal}`;

/** The key of the terminal that a reference names, whether that terminal exists or not. */
export const keyOfRef = (ref: TerminalRef): string => terminalKey(ref.part, ref.terminal);
