// Reference: CIEDE2000 (CIE 142-2001), the WCAG 2 contrast ratio and the simulation of colour
// deficiencies as culori computes them; it is not ours.
import {
  differenceCiede2000,
  filterDeficiencyDeuter,
  filterDeficiencyProt,
  filterDeficiencyTrit,
  parse,
  wcagContrast,
  type Color
} from 'culori';
import { describe, expect, it } from 'vitest';
import { inks, themeNames } from '#drawing/inks.ts';
import { bandLines, styleNames, styleOf } from '#drawing/styles.ts';
import { classBands } from '#study/index.ts';

const sights: Readonly<Record<string, (colour: Color) => Color>> = {
  normal: (colour) => colour,
  'without red cones': filterDeficiencyProt(1) as (colour: Color) => Color,
  'without green cones': filterDeficiencyDeuter(1) as (colour: Color) => Color,
  'without blue cones': filterDeficiencyTrit(1) as (colour: Color) => Color
};
const difference = differenceCiede2000();
const colourOf = (hex: string): Color => parse(hex)!;

describe('the inks of wires', () => {
  for (const theme of themeNames) {
    const ink = inks[theme];
    for (const [name, see] of Object.entries(sights)) {
      it(`differ from each other on ${theme}, sight ${name}`, () => {
        classBands.forEach((one, index) => {
          for (const two of classBands.slice(index + 1)) {
            const [a, b] = [ink.wires[one], ink.wires[two]].map((hex) => see(colourOf(hex)));
            expect(difference(a!, b!), `${one} and ${two}`).toBeGreaterThanOrEqual(15);
          }
        });
      });
    }

    it(`stand out from paper, unit and part on ${theme}`, () => {
      for (const band of classBands) {
        for (const ground of [ink.paper, ink.unit, ink.part]) {
          expect(
            wcagContrast(ink.wires[band], ground),
            `${band} on ${ground}`
          ).toBeGreaterThanOrEqual(3);
        }
      }
    });

    it(`leave every text readable on ${theme}`, () => {
      for (const text of [ink.ink, ink.softInk, ink.faintInk]) {
        for (const ground of [ink.paper, ink.unit, ink.part]) {
          expect(wcagContrast(text, ground), `${text} on ${ground}`).toBeGreaterThanOrEqual(4.5);
        }
      }
      for (const mark of [ink.danger, ink.fault, ink.caution, ink.note]) {
        expect(wcagContrast(mark, ink.onMark)).toBeGreaterThanOrEqual(4.5);
      }
      expect(wcagContrast(ink.danger, ink.dangerWash)).toBeGreaterThanOrEqual(4.5);
    });
  }
});

describe('the bands', () => {
  it('differ in dash and in width, so that grey tells them apart', () => {
    const dashes = classBands.map((band) => JSON.stringify(bandLines[band].dash ?? []));
    const widths = classBands.map((band) => bandLines[band].width);
    expect(new Set(dashes).size).toBe(classBands.length);
    expect(new Set(widths).size).toBe(classBands.length);
  });

  it('grow heavier with the class, and not known is never the lightest', () => {
    const known = classBands.filter((band) => band !== 'not known');
    const widths = known.map((band) => bandLines[band].width);
    expect(widths).toEqual([...widths].sort((a, b) => a - b));
    expect(bandLines['not known'].width).toBeGreaterThan(bandLines['300'].width);
  });
});

describe('style names', () => {
  it('mean something on every paper', () => {
    for (const theme of themeNames) {
      for (const name of styleNames) {
        const { stroke, fill } = styleOf(name, theme);
        expect(stroke ?? fill, `${name} on ${theme}`).toBeTruthy();
      }
    }
  });

  it('that are unknown are drawn in ink, not lost', () => {
    expect(styleOf('wire.of tomorrow', 'light').stroke).toBe(inks.light.ink);
  });
});
