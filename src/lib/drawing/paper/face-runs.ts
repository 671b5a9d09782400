// Which of the bundled faces has which letter. The faces are bundled by script, so that a drawing in plain
// English carries one file; a text that needs more is written in runs.

/** A file of a face, without its ending: "ibm-plex-sans-latin-400-normal". */
export type FaceFile = `ibm-plex-${'sans' | 'mono'}-${Script}-${400 | 600}-normal`;
type Script = 'latin' | 'latin-ext' | 'greek' | 'cyrillic';

// The letters that the files have in fact, as code points, ends included.
const scripts: readonly (readonly [Script, readonly (readonly [number, number])[]])[] = [
  [
    'latin',
    [
      [0x20, 0x7e],
      [0xa0, 0xff],
      [0x131, 0x131],
      [0x152, 0x153],
      [0x2013, 0x2014],
      [0x2018, 0x201a],
      [0x201c, 0x201e],
      [0x2022, 0x2022],
      [0x2026, 0x2026],
      [0x2032, 0x2033],
      [0x20ac, 0x20ac],
      [0x2122, 0x2122],
      [0x2191, 0x2191],
      [0x2193, 0x2193],
      [0x2212, 0x2212]
    ]
  ],
  ['latin-ext', [[0x100, 0x17f]]],
  [
    'greek',
    [
      [0x391, 0x3a1],
      [0x3a3, 0x3c9]
    ]
  ],
  ['cyrillic', [[0x410, 0x44f]]]
];

const scriptOf = (point: number): Script | undefined =>
  scripts.find(([, ranges]) => ranges.some(([from, to]) => point >= from && point <= to))?.[0];

/** A stretch of text that one face can write. */
export interface FaceRun {
  /** null where no bundled face has the letters. */
  readonly file: FaceFile | null;
  readonly text: string;
}

/** The ohm sign is the Greek letter (Unicode recommends the letter). */
const sameLetter: Readonly<Record<string, string>> = { '\u2126': '\u03A9' };

/** The text as runs of one face each, in order. */
export const faceRuns = (text: string, face: 'sans' | 'mono', bold: boolean): FaceRun[] => {
  const runs: { file: FaceFile | null; text: string }[] = [];
  for (const given of text.normalize('NFC')) {
    const letter = sameLetter[given] ?? given;
    const script = scriptOf(letter.codePointAt(0) ?? 0);
    // The typewriter face has no Greek.
    const family = script === 'greek' ? 'sans' : face;
    const file: FaceFile | null =
      script === undefined ? null : `ibm-plex-${family}-${script}-${bold ? 600 : 400}-normal`;
    const last = runs.at(-1);
    if (last && last.file === file && file !== null) last.text += letter;
    else runs.push({ file, text: letter });
  }
  return runs;
};
