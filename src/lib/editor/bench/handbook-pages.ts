// The pages of the handbook that lies beside the chassis, and how each opens without closing it.

export const handbookPages = [
  { id: 'sums', path: '/sums', title: 'Sums', menu: 'Sums for the bench' },
  { id: 'proof', path: '/proof', title: 'How we know', menu: 'How we know' },
  { id: 'rules', path: '/rules', title: 'Rules', menu: 'List of rules' }
] as const;
export type HandbookPage = (typeof handbookPages)[number];
export type HandbookPageId = HandbookPage['id'];

/** Beside the chassis, in one tab for the whole handbook: the book keeps its undo and its place. */
export const openBeside = (url: string): void => {
  window.open(url, 'underchassis-handbook')?.focus();
};

/** Back to the very chassis that the handbook was opened from: true where there was one. Its tab is
 *  shown again when this one closes. */
export function closeBeside(): boolean {
  const opener = window.opener as Window | null;
  if (opener === null || opener.closed) return false;
  opener.focus();
  window.close();
  return true;
}
