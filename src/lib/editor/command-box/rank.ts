// How well a text answers what was typed. Every word typed has to stand somewhere in it.

const wordsOf = (text: string): readonly string[] =>
  text
    .toLowerCase()
    .split(/[\s,]+/)
    .filter((word) => word !== '');

const rankOfWord = (text: string, word: string): number => {
  if (text === word) return 0;
  if (text.startsWith(word)) return 1;
  const at = text.indexOf(word);
  if (at < 0) return Infinity;
  return /[\p{L}\p{N}]/u.test(text[at - 1] ?? ' ') ? 3 : 2;
};

/** 0 for the text itself, more for a lesser likeness, Infinity for none. Nothing typed answers nothing. */
export const rankOf = (text: string, typed: string): number => {
  const whole = typed.trim().toLowerCase();
  if (whole === '') return Infinity;
  const plain = text.toLowerCase();
  if (plain === whole) return 0;
  const ranks = wordsOf(whole).map((word) => rankOfWord(plain, word));
  return 1 + ranks.reduce((sum, rank) => sum + rank, 0);
};

/** The best answers, best first; equals stay in their order.
 *  @param textsOf each of an item's texts, the first counting most */
export const best = <T>(
  items: readonly T[],
  typed: string,
  textsOf: (item: T) => readonly string[],
  limit: number
): readonly T[] =>
  items
    .map((item) => ({
      item,
      rank: Math.min(...textsOf(item).map((text, index) => rankOf(text, typed) + index * 0.5))
    }))
    .filter(({ rank }) => rank < Infinity)
    .sort((a, b) => a.rank - b.rank)
    .slice(0, limit)
    .map(({ item }) => item);
