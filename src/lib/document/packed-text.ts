// Text packed into letters that an address or a page may hold, and back: deflate (RFC 1951) in base64url
// (RFC 4648, 5). A letter in front tells later versions how it was packed.
import { deflateSync, Inflate } from 'fflate';

const packing = 'd';
const pieceLength = 3 * 8192;

const toBase64 = (bytes: Uint8Array): string => {
  const pieces: string[] = [];
  for (let from = 0; from < bytes.length; from += pieceLength)
    pieces.push(btoa(String.fromCharCode(...bytes.subarray(from, from + pieceLength))));
  return pieces.join('');
};

/** The text in letters, figures, - and _. The same text gives the same letters. */
export const packText = (text: string): string => {
  const packed = deflateSync(new TextEncoder().encode(text), { level: 9 });
  return packing + toBase64(packed).replaceAll('+', '-').replaceAll('/', '_').replaceAll('=', '');
};

export type Unpacked =
  { readonly ok: true; readonly text: string } | { readonly ok: false; readonly problem: string };

/** Inflates a piece at a time, so that a small text cannot become one that fills the memory. */
const inflateUpTo = (bytes: Uint8Array, most: number): Uint8Array | null => {
  const chunks: Uint8Array[] = [];
  let length = 0;
  const inflate = new Inflate((chunk) => {
    length += chunk.length;
    if (length <= most) chunks.push(chunk);
  });
  const step = 4096;
  for (let from = 0; from < bytes.length && length <= most; from += step)
    inflate.push(bytes.subarray(from, from + step), from + step >= bytes.length);
  if (length > most) return null;
  const all = new Uint8Array(length);
  let at = 0;
  for (const chunk of chunks) {
    all.set(chunk, at);
    at += chunk.length;
  }
  return all;
};

/** The text that was packed, or what is wrong in words. Never throws.
 *  @param most bytes that it may unpack to */
export const unpackText = (letters: string, most: number): Unpacked => {
  const broken = 'it is cut off or changed: was all of it copied?';
  if (!/^[a-z][A-Za-z0-9_-]*$/.test(letters)) return { ok: false, problem: broken };
  if (!letters.startsWith(packing))
    return {
      ok: false,
      problem: 'it was packed by a newer version of this program: open it there'
    };
  try {
    const base64 = letters.slice(1).replaceAll('-', '+').replaceAll('_', '/');
    const packed = Uint8Array.from(atob(base64), (letter) => letter.charCodeAt(0));
    const bytes = inflateUpTo(packed, most);
    if (bytes === null)
      return { ok: false, problem: `it unpacks to more than ${Math.floor(most / 1024 / 1024)} MB` };
    const text = new TextDecoder('utf-8', { fatal: true }).decode(bytes);
    return text === '' ? { ok: false, problem: broken } : { ok: true, text };
  } catch {
    return { ok: false, problem: broken };
  }
};
