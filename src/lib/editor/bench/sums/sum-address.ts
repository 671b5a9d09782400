// The sum and what was typed into it, as the part of an address behind the #, so that a link or a
// bookmark opens it again: "#voltage-drop?awg=22&length=10ft".

export interface SumAddress {
  readonly id: string;
  /** As they were typed; blank ones are left out. */
  readonly texts: Readonly<Record<string, string>>;
}

/** The address in a hash, with its # or without; null where it names no sum. Never throws. */
export function parseSumAddress(hash: string): SumAddress | null {
  const plain = hash.replace(/^#/, '');
  const cut = plain.indexOf('?');
  const id = decoded(cut < 0 ? plain : plain.slice(0, cut)).trim();
  if (id === '') return null;
  const pairs = new URLSearchParams(cut < 0 ? '' : plain.slice(cut + 1));
  return { id, texts: Object.fromEntries([...pairs].filter(([, text]) => text.trim() !== '')) };
}

/** The hash of a sum and its texts, with its #. */
export function formatSumAddress({ id, texts }: SumAddress): string {
  const typed = Object.entries(texts).filter(([, text]) => text.trim() !== '');
  const query = new URLSearchParams(typed).toString();
  return `#${encodeURIComponent(id)}${query === '' ? '' : `?${query}`}`;
}

function decoded(text: string): string {
  try {
    return decodeURIComponent(text);
  } catch {
    return text;
  }
}
