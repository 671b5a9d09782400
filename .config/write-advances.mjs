// Writes src/lib/drawing/advances.ts: how far each letter of the bundled faces advances, so that
// every writer of a drawing agrees on the width of a text without asking a screen.
// Run it after the faces change: node .config/write-advances.mjs
import { readFileSync, writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { create } from 'fontkit';

const top = fileURLToPath(new URL('..', import.meta.url));
const faces = [
  { name: 'sans', family: 'ibm-plex-sans', weight: 400 },
  { name: 'sansBold', family: 'ibm-plex-sans', weight: 600 },
  { name: 'mono', family: 'ibm-plex-mono', weight: 400 },
  { name: 'monoBold', family: 'ibm-plex-mono', weight: 600 }
];
const subsets = ['latin', 'latin-ext', 'greek', 'cyrillic'];

/** Advance by code point, in thousandths of the size. */
const readFace = ({ family, weight }) => {
  const advances = new Map();
  for (const subset of subsets) {
    const file = `${top}node_modules/@fontsource/${family}/files/${family}-${subset}-${weight}-normal.woff2`;
    let bytes;
    try {
      bytes = readFileSync(file);
    } catch {
      continue;
    }
    const font = create(bytes);
    for (const point of font.characterSet) {
      if (point < 0x20 || advances.has(point)) continue;
      const glyph = font.glyphForCodePoint(point);
      advances.set(point, Math.round((glyph.advanceWidth * 1000) / font.unitsPerEm));
    }
  }
  return advances;
};

/** Runs of neighbouring code points, so that the table stays short. */
const toRuns = (advances) => {
  const runs = [];
  for (const point of [...advances.keys()].sort((a, b) => a - b)) {
    const last = runs.at(-1);
    if (last && point === last.from + last.widths.length) last.widths.push(advances.get(point));
    else runs.push({ from: point, widths: [advances.get(point)] });
  }
  return runs;
};

/** A run of equal widths is written as its length times the width. */
const writeRun = ({ from, widths }) => {
  const allSame = widths.length > 3 && widths.every((width) => width === widths[0]);
  const list = allSame ? `same(${widths.length}, ${widths[0]})` : `[${widths.join(', ')}]`;
  return `    [0x${from.toString(16)}, ${list}]`;
};

const tables = faces.map((face) => {
  const runs = toRuns(readFace(face));
  return `  ${face.name}: [\n${runs.map(writeRun).join(',\n')}\n  ]`;
});

writeFileSync(
  `${top}src/lib/drawing/advances.ts`,
  `// Written by .config/write-advances.mjs from the bundled faces; not by hand.
// How far each letter advances, in thousandths of the size: runs of code points from the first on.

const same = (count: number, width: number): readonly number[] =>
  Array.from({ length: count }, () => width);

export type FaceName = ${faces.map(({ name }) => `'${name}'`).join(' | ')};

export const advances: Readonly<Record<FaceName, readonly (readonly [number, readonly number[]])[]>> = {
${tables.join(',\n')}
};
`
);
