// The keys that work everywhere in the book.

export type BookCommand = 'undo' | 'redo' | 'save' | 'open' | 'find' | 'go' | 'keys' | 'walk';

interface KeyPress {
  readonly key: string;
  readonly ctrlKey: boolean;
  readonly metaKey: boolean;
  readonly shiftKey: boolean;
  readonly altKey: boolean;
}

/** What a key asks of the book, or null where it is none of its keys. */
export const bookCommandOf = (press: KeyPress): BookCommand | null => {
  if (press.altKey) return null;
  if (!press.ctrlKey && !press.metaKey) {
    if (press.key === '?') return 'keys';
    return press.key === 'P' && press.shiftKey ? 'walk' : null;
  }
  switch (press.key.toLowerCase()) {
    case 'z':
      return press.shiftKey ? 'redo' : 'undo';
    case 'y':
      return 'redo';
    case 's':
      return 'save';
    case 'o':
      return 'open';
    case 'f':
      return 'find';
    case 'k':
      return 'go';
    default:
      return null;
  }
};

/** True where letters belong to what has the focus and not to the book. */
export const isTyping = (target: EventTarget | null): boolean =>
  target instanceof HTMLInputElement ||
  target instanceof HTMLTextAreaElement ||
  target instanceof HTMLSelectElement;

/** Whether a command is the book's even while something is typed. */
export const worksWhileTyping = (command: BookCommand): boolean =>
  ['save', 'open', 'find', 'go'].includes(command);
