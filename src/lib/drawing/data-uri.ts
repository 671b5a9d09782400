// Bytes as an address that holds them.

/** So many bytes at a time; a multiple of three, so that the pieces join. */
const pieceLength = 3 * 8192;

/** The bytes as a data URI (RFC 2397), in base64 (RFC 4648, 4). */
export const dataUri = (bytes: Uint8Array, type: string): string => {
  const pieces: string[] = [];
  for (let from = 0; from < bytes.length; from += pieceLength) {
    pieces.push(btoa(String.fromCharCode(...bytes.subarray(from, from + pieceLength))));
  }
  return `data:${type};base64,${pieces.join('')}`;
};
