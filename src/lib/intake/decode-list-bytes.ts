// The bytes of a list as text. Spreadsheets save UTF-8 with and without a mark, UTF-16, and the
// one-byte code of old Windows programs.

const startsWith = (bytes: Uint8Array, ...head: readonly number[]): boolean =>
  head.every((value, index) => bytes[index] === value);

// Text in Latin letters has a zero in every second byte of UTF-16.
const looksLikeUtf16 = (bytes: Uint8Array): 'utf-16le' | 'utf-16be' | null => {
  const sample = bytes.subarray(0, 2000 - (2000 % 2));
  if (sample.length < 8) return null;
  let even = 0;
  let odd = 0;
  sample.forEach((value, index) => {
    if (value === 0 && index % 2 === 0) even += 1;
    if (value === 0 && index % 2 === 1) odd += 1;
  });
  const most = sample.length / 2;
  if (odd > most * 0.7 && even < most * 0.1) return 'utf-16le';
  if (even > most * 0.7 && odd < most * 0.1) return 'utf-16be';
  return null;
};

/** The text of a list. A byte order mark decides; without one UTF-16 is known by its zeros, UTF-8 by
 *  being valid, and anything else is read as Windows-1252, in which every byte has a meaning. */
export const decodeListBytes = (bytes: Uint8Array): string => {
  if (startsWith(bytes, 0xef, 0xbb, 0xbf)) return new TextDecoder('utf-8').decode(bytes);
  if (startsWith(bytes, 0xff, 0xfe)) return new TextDecoder('utf-16le').decode(bytes);
  if (startsWith(bytes, 0xfe, 0xff)) return new TextDecoder('utf-16be').decode(bytes);
  const wide = looksLikeUtf16(bytes);
  if (wide) return new TextDecoder(wide).decode(bytes);
  try {
    return new TextDecoder('utf-8', { fatal: true }).decode(bytes);
  } catch {
    return new TextDecoder('windows-1252').decode(bytes);
  }
};
