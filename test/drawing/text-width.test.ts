// Reference: the bundled faces themselves, read by fontkit (a font library that is not ours).
import { readFileSync } from 'node:fs';
import { create, type Font } from 'fontkit';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { fitText, textWidthMm, wrapText, type TextLook } from '#drawing/text-width.ts';

const readFace = (family: string, weight: number): Font =>
  create(
    readFileSync(
      new URL(
        `../../node_modules/@fontsource/${family}/files/${family}-latin-${weight}-normal.woff2`,
        import.meta.url
      )
    )
  ) as Font;

const faces: readonly { look: TextLook; font: Font }[] = [
  { look: { size: 10, face: 'sans' }, font: readFace('ibm-plex-sans', 400) },
  { look: { size: 10, face: 'sans', bold: true }, font: readFace('ibm-plex-sans', 600) },
  { look: { size: 10, face: 'mono' }, font: readFace('ibm-plex-mono', 400) },
  { look: { size: 10, face: 'mono', bold: true }, font: readFace('ibm-plex-mono', 600) }
];

const texts = [
  'V10 6CG7 sync amplifier',
  'R38 470k',
  '40-80 uF, 450 V',
  'Spannung über 25 kV',
  '0123456789 ≥±×'
];

describe('text widths', () => {
  for (const { look, font } of faces) {
    it(`agree with the advances in the face: ${look.face}${look.bold ? ' bold' : ''}`, () => {
      for (const text of texts) {
        const units = [...text].reduce(
          (sum, letter) => sum + font.glyphForCodePoint(letter.codePointAt(0)!).advanceWidth,
          0
        );
        const expected = (units * look.size) / font.unitsPerEm;
        if ([...text].some((letter) => !font.hasGlyphForCodePoint(letter.codePointAt(0)!)))
          continue;
        expect(textWidthMm(text, look), text).toBeCloseTo(expected, 1);
      }
    });
  }

  it('give letters that the faces lack a width of their own', () => {
    const look = { size: 10, face: 'sans' } as const;
    expect(textWidthMm('\u{1f527}', look)).toBeGreaterThan(5);
    expect(textWidthMm('管', look)).toBe(10);
  });

  it('hold fitted and wrapped texts within their room', () => {
    const look = { size: 3, face: 'sans' } as const;
    fc.assert(
      fc.property(fc.string({ maxLength: 80 }), fc.integer({ min: 4, max: 60 }), (text, width) => {
        expect(textWidthMm(fitText(text, width, look), look)).toBeLessThanOrEqual(width);
        for (const line of wrapText(text, width, look)) {
          expect(textWidthMm(line, look)).toBeLessThanOrEqual(width);
        }
      }),
      { seed: 5, numRuns: 300 }
    );
  });

  it('leave a text that fits as it is', () => {
    expect(fitText('TS2-1', 40, { size: 2, face: 'sans' })).toBe('TS2-1');
    expect(wrapText('one two three', 400, { size: 2, face: 'sans' })).toEqual(['one two three']);
  });
});
