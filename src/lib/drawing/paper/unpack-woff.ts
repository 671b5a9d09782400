// A face as it is bundled (WOFF 1.0) back into the plain font file that it was made of: the PDF library
// reads past the end of a table that stands by itself, as empty letters (a space) can lie last in it.
import { unzlibSync } from 'fflate';

const headBytes = 12;
const entryBytes = 16;
const woffHeadBytes = 44;
const woffEntryBytes = 20;

/** The font file inside a WOFF.
 *  Source: W3C, WOFF File Format 1.0 (2012), sections 3 to 5; checksums are kept as they stand.
 *  @throws RangeError where the bytes are no WOFF */
export function unpackWoff(bytes: Uint8Array): Uint8Array {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  if (bytes.length < woffHeadBytes || view.getUint32(0) !== 0x774f4646)
    throw new RangeError('this is no WOFF face: the bundle is broken, install it again');
  const count = view.getUint16(12);
  const tables = Array.from({ length: count }, (_, index) => {
    const at = woffHeadBytes + index * woffEntryBytes;
    const offset = view.getUint32(at + 4);
    const packed = bytes.subarray(offset, offset + view.getUint32(at + 8));
    const length = view.getUint32(at + 12);
    const content =
      packed.length < length ? unzlibSync(packed, { out: new Uint8Array(length) }) : packed;
    return { tag: view.getUint32(at), sum: view.getUint32(at + 16), content };
  });
  const padded = (length: number): number => (length + 3) & ~3;
  const size = tables.reduce(
    (sum, { content }) => sum + padded(content.length),
    headBytes + count * entryBytes
  );
  const font = new Uint8Array(size);
  const out = new DataView(font.buffer);
  const power = 2 ** Math.floor(Math.log2(count));
  out.setUint32(0, view.getUint32(4));
  out.setUint16(4, count);
  out.setUint16(6, power * 16);
  out.setUint16(8, Math.log2(power));
  out.setUint16(10, (count - power) * 16);
  let at = headBytes + count * entryBytes;
  tables.forEach(({ tag, sum, content }, index) => {
    const entry = headBytes + index * entryBytes;
    out.setUint32(entry, tag);
    out.setUint32(entry + 4, sum);
    out.setUint32(entry + 8, at);
    out.setUint32(entry + 12, content.length);
    font.set(content, at);
    at += padded(content.length);
  });
  return font;
}
