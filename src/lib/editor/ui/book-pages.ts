// The pages that a narrow screen turns.
export const bookPages = ['schedule', 'sheet', 'notes', 'tag'] as const;
export type BookPage = (typeof bookPages)[number];
