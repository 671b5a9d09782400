// Reading numbers out of a file.

/** A number of `count` bytes; undefined where the file ends before it. */
export const numberAt = (
  bytes: Uint8Array,
  at: number,
  count: number,
  first: 'high' | 'low' = 'high'
): number | undefined => {
  if (at < 0 || at + count > bytes.length) return undefined;
  let value = 0;
  for (let index = 0; index < count; index++) {
    value = value * 256 + (bytes[at + (first === 'high' ? index : count - 1 - index)] ?? 0);
  }
  return value;
};

/** The letters at a place; what is no letter comes out as it is. */
export const lettersAt = (bytes: Uint8Array, at: number, count: number): string =>
  String.fromCharCode(...bytes.subarray(at, at + count));

/** Pieces of bytes, one after the other. */
export const joinBytes = (pieces: readonly Uint8Array[]): Uint8Array => {
  const joined = new Uint8Array(pieces.reduce((sum, { length }) => sum + length, 0));
  let at = 0;
  for (const piece of pieces) {
    joined.set(piece, at);
    at += piece.length;
  }
  return joined;
};
