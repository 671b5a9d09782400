// What a zip says that it holds, read and judged before anything is inflated; and one entry taken out of it,
// held to what was said.
// Source: PKWARE, APPNOTE.TXT - .ZIP File Format Specification, version 6.3.10, sections 4.3.7, 4.3.12, 4.3.16.
import { Inflate } from 'fflate';

export interface ZipEntry {
  readonly name: string;
  readonly isPacked: boolean;
  readonly crc: number;
  readonly packedBytes: number;
  readonly bytes: number;
  /** Of its local header in the file. */
  readonly offset: number;
}

/** A zip that is not taken. `message` says what is wrong, with the limit where there is one. */
export class ZipFault extends Error {
  override name = 'ZipFault';
}

/** What a zip may hold at most. */
export const zipLimits = {
  fileBytes: 512 * 1024 * 1024,
  entries: 4000,
  /** Of all entries, unpacked. */
  allBytes: 512 * 1024 * 1024,
  nameLength: 240
} as const;

const megabytes = (bytes: number): string => `${Math.ceil(bytes / 1024 / 1024)} MB`;
const endBytes = 22;
const headerBytes = 46;
const longestComment = 0xffff;

/** True where the bytes begin as those of a zip do. */
export const isZip = (bytes: Uint8Array): boolean =>
  bytes[0] === 0x50 && bytes[1] === 0x4b && (bytes[2] === 3 || bytes[2] === 5);

const findEnd = (view: DataView): number => {
  const earliest = Math.max(0, view.byteLength - endBytes - longestComment);
  for (let at = view.byteLength - endBytes; at >= earliest; at--) {
    if (view.getUint32(at, true) !== 0x06054b50) continue;
    if (at + endBytes + view.getUint16(at + 20, true) === view.byteLength) return at;
  }
  throw new ZipFault('its end is missing: it was cut off on its way here, or is no zip');
};

const checkName = (name: string): void => {
  const shown = JSON.stringify(name.slice(0, 60));
  if (name.length > zipLimits.nameLength) {
    throw new ZipFault(
      `the name ${shown} has ${name.length} characters; the most is ${zipLimits.nameLength}`
    );
  }
  // eslint-disable-next-line no-control-regex -- names with such characters are what is refused
  const isOutside = /^\/|^[a-z]:|\\|[\u0000-\u001f]|(?:^|\/)\.\.?(?:\/|$)/i.test(name);
  if (isOutside || name === '') throw new ZipFault(`the name ${shown} leads out of the zip`);
};

const readEntry = (bytes: Uint8Array, view: DataView, at: number): ZipEntry => {
  if (at + headerBytes > bytes.length || view.getUint32(at, true) !== 0x02014b50) {
    throw new ZipFault('its list of contents is damaged');
  }
  const name = new TextDecoder().decode(
    bytes.subarray(at + headerBytes, at + headerBytes + view.getUint16(at + 28, true))
  );
  checkName(name);
  const shown = JSON.stringify(name);
  const method = view.getUint16(at + 10, true);
  if ((view.getUint16(at + 8, true) & 1) === 1) throw new ZipFault(`${shown} is locked`);
  if (method !== 0 && method !== 8) {
    throw new ZipFault(`${shown} is packed in a way that is not known here (method ${method})`);
  }
  return {
    name,
    isPacked: method === 8,
    crc: view.getUint32(at + 16, true),
    packedBytes: view.getUint32(at + 20, true),
    bytes: view.getUint32(at + 24, true),
    offset: view.getUint32(at + 42, true)
  };
};

const checkAll = (entries: readonly ZipEntry[]): void => {
  const all = entries.reduce((sum, { bytes }) => sum + bytes, 0);
  if (all > zipLimits.allBytes) {
    throw new ZipFault(
      `it holds ${megabytes(all)} unpacked; the most is ${megabytes(zipLimits.allBytes)}`
    );
  }
  const names = new Set<string>();
  for (const { name } of entries) {
    if (names.has(name)) throw new ZipFault(`${JSON.stringify(name)} is in it twice`);
    names.add(name);
  }
};

/** The entries of a zip, folders left out. Nothing is inflated. Throws a ZipFault. */
export const readZipDirectory = (bytes: Uint8Array): ZipEntry[] => {
  if (bytes.length > zipLimits.fileBytes) {
    throw new ZipFault(
      `it has ${megabytes(bytes.length)}; the most is ${megabytes(zipLimits.fileBytes)}`
    );
  }
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  const end = findEnd(view);
  const count = view.getUint16(end + 10, true);
  if (count > zipLimits.entries) {
    throw new ZipFault(`it holds ${count} files; the most is ${zipLimits.entries}`);
  }
  const entries: ZipEntry[] = [];
  let at = view.getUint32(end + 16, true);
  for (let turn = 0; turn < count; turn++) {
    entries.push(readEntry(bytes, view, at));
    // Behind the header: the name, the extra fields, the comment.
    const behind = [28, 30, 32].map((field) => view.getUint16(at + field, true));
    at += headerBytes + behind.reduce((sum, length) => sum + length, 0);
  }
  checkAll(entries);
  return entries.filter(({ name }) => !name.endsWith('/'));
};

const crcTable = Uint32Array.from({ length: 256 }, (_, index) => {
  let value = index;
  for (let bit = 0; bit < 8; bit++) value = value & 1 ? 0xedb88320 ^ (value >>> 1) : value >>> 1;
  return value;
});

/** CRC-32 of ISO 3309 and ITU-T V.42, as zips carry it. */
const crcOf = (bytes: Uint8Array): number => {
  let crc = -1;
  for (const byte of bytes) crc = (crc >>> 8) ^ (crcTable[(crc ^ byte) & 0xff] ?? 0);
  return ~crc >>> 0;
};

/** Inflated piece by piece: what holds more than it said ends at once. */
const inflate = (packed: Uint8Array, { name, bytes }: ZipEntry): Uint8Array => {
  const out = new Uint8Array(bytes);
  let filled = 0;
  const stream = new Inflate((piece) => {
    if (filled + piece.length > bytes) {
      throw new ZipFault(`${JSON.stringify(name)} holds more than the ${bytes} bytes that it says`);
    }
    out.set(piece, filled);
    filled += piece.length;
  });
  const step = 16 * 1024;
  for (let at = 0; at < packed.length; at += step) {
    stream.push(packed.subarray(at, at + step), at + step >= packed.length);
  }
  return out.subarray(0, filled);
};

/** The bytes of one entry. Throws a ZipFault where they are not what the list of contents said. */
export const readZipEntry = (bytes: Uint8Array, entry: ZipEntry): Uint8Array => {
  const damaged = new ZipFault(`${JSON.stringify(entry.name)} is damaged`);
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  const { offset, packedBytes } = entry;
  if (offset + 30 > bytes.length || view.getUint32(offset, true) !== 0x04034b50) throw damaged;
  const start = offset + 30 + view.getUint16(offset + 26, true) + view.getUint16(offset + 28, true);
  if (start + packedBytes > bytes.length) throw damaged;
  const packed = bytes.subarray(start, start + packedBytes);
  let content: Uint8Array;
  try {
    content = entry.isPacked ? inflate(packed, entry) : packed.slice();
  } catch (error) {
    throw error instanceof ZipFault ? error : damaged;
  }
  if (content.length !== entry.bytes || crcOf(content) !== entry.crc) throw damaged;
  return content;
};
