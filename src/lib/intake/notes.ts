// What the reader of a list noticed and wants people to know: each with its row and column as a
// spreadsheet counts them, and the text as it was written.

export interface IntakeNote {
  /** Row of the list, the first line being 1; null where the whole list is meant. */
  readonly row: number | null;
  /** Heading of the column, or null. */
  readonly column: string | null;
  /** The text of the cell, or null. */
  readonly cell: string | null;
  /** `unread`: something could not be read and is kept as text. `reading`: it was read, and how is
   *  worth knowing. `left out`: a line that is no wire. */
  readonly kind: 'unread' | 'reading' | 'left out';
  /** The whole sentence, with place and text. */
  readonly text: string;
  /** The sentence without its place. */
  readonly words: string;
}

export interface NotePlace {
  readonly row?: number;
  readonly column?: string;
  readonly cell?: string;
}

export type TellNote = (kind: IntakeNote['kind'], place: NotePlace, words: string) => void;

const shorten = (text: string): string => (text.length > 80 ? `${text.slice(0, 77)}...` : text);

/** A list of notes and the function that adds to it. */
export const collectNotes = (): { readonly notes: IntakeNote[]; readonly tell: TellNote } => {
  const notes: IntakeNote[] = [];
  const tell: TellNote = (kind, { row, column, cell }, words) => {
    const place = [
      ...(row === undefined ? [] : [`row ${row}`]),
      ...(column === undefined ? [] : [shorten(column)])
    ].join(', ');
    const sentence = cell === undefined ? words : `"${shorten(cell)}" ${words}`;
    notes.push({
      row: row ?? null,
      column: column ?? null,
      cell: cell ?? null,
      kind,
      text: place === '' ? sentence : `${place}: ${sentence}`,
      words: sentence
    });
  };
  return { notes, tell };
};

/** The notes with those that say the same of many rows told once: what was read needs no more than
 *  one line, what could not be read keeps its own. */
export const joinNotes = (notes: readonly IntakeNote[]): IntakeNote[] => {
  const rowsOf = new Map<string, number[]>();
  const keyOf = ({ kind, column, words, row }: IntakeNote): string | null =>
    kind === 'reading' && row !== null ? `${column ?? ''}\n${words}` : null;
  for (const note of notes) {
    const key = keyOf(note);
    if (key !== null) rowsOf.set(key, [...(rowsOf.get(key) ?? []), note.row ?? 0]);
  }
  return notes.flatMap((note) => {
    const key = keyOf(note);
    const rows = key === null ? [] : (rowsOf.get(key) ?? []);
    if (key === null || rows.length < 2) return [note];
    if (rows[0] !== note.row) return [];
    const shown = rows.slice(0, 5).join(', ');
    const more = rows.length > 5 ? ` and ${rows.length - 5} more` : '';
    const column = note.column === null ? '' : `, ${shorten(note.column)}`;
    return [{ ...note, text: `rows ${shown}${more}${column}: ${note.words}` }];
  });
};
