// The legend: only what the drawing uses, and *not known* always, so that nobody takes it for low.
import type { Support } from '#document/index.ts';
import { classBands, type ClassBand } from '#study/index.ts';
import type { Sketch } from '../figures/figure.ts';
import { drawMark } from '../figures/mark.ts';
import { drawTag } from '../figures/number-tag.ts';
import type { MarkFace } from '../figures/part-end.ts';
import { drawHeading, headingHeight, sizes, textLook, widest, type Panel } from './panel.ts';

export interface LegendUse {
  readonly bands: ReadonlySet<ClassBand>;
  readonly marks: ReadonlySet<MarkFace['kind']>;
  /** Some step says "at least". */
  readonly atLeast: boolean;
  readonly cables: boolean;
  readonly mates: boolean;
  readonly leads: boolean;
  /** Kinds of support that the drawing shows; none in a diagram. */
  readonly supports?: ReadonlySet<Support['kind']>;
}

const bandWords: Readonly<Record<ClassBand, string>> = {
  '300': '300 V',
  '600': '600 V',
  '1k-3k': '1 to 3 kV',
  '5k-15k': '5 to 15 kV',
  '20k+': '20 kV and up',
  'not known': 'not known'
};

interface Entry {
  readonly words: string;
  /** Draws a sample from (x, y), the middle of its left side, as wide as `sample`. */
  readonly draw: (sketch: Sketch, x: number, y: number) => void;
}

const sample = 17;
const rowHeight = 5.4;
const inset = 2.5;

const bandEntry = (band: ClassBand): Entry => ({
  words: bandWords[band],
  draw: (sketch, x, y) => {
    const line = [x, y, x + sample, y];
    if (band === '20k+') sketch.line('wire.20k+.halo', line, { layer: 'frame' });
    sketch.line(`wire.${band}`, line, { layer: 'frame' });
  }
});

const markEntry = (words: string, face: MarkFace): Entry => ({
  words,
  draw: (sketch, x, y) => drawMark(sketch, face, { x: x + 2, y }, 'east')
});

const plain = { tags: [], words: '' } as const;
const example = { wire: '', number: '12', step: '600', band: '600' } as const;

const entriesOf = (use: LegendUse): { classes: Entry[]; marks: Entry[] } => {
  const used = classBands.filter((band) => use.bands.has(band) || band === 'not known');
  const marks: Entry[] = [
    {
      words: 'wire 12, needs the 600 V class',
      draw: (sketch, x, y) => drawTag(sketch, example, x + sample / 2, y)
    }
  ];
  if (use.atLeast) {
    marks.push({
      words: 'at least: a part of its stress is not known',
      draw: (sketch, x, y) =>
        drawTag(sketch, { ...example, step: '≥1k', band: '1k-3k' }, x + sample / 2, y)
    });
  }
  if (use.marks.has('metal') || use.marks.has('ground')) {
    marks.push(
      markEntry('to the metal of the unit, by a lug or foot', { kind: 'metal', ...plain })
    );
  }
  if (use.marks.has('component')) {
    const component = { id: '', kind: 'resistor', reference: '', value: '', toMetal: false };
    marks.push(
      markEntry('component; its other lead is on the terminal named', {
        kind: 'component',
        tags: [],
        words: 'V3-7',
        component
      })
    );
  }
  if (use.marks.has('free')) {
    marks.push(markEntry('other end not found yet', { kind: 'free', ...plain }));
  }
  if (use.leads) {
    marks.push({
      words: "a part's own lead, no wire between",
      draw: (sketch, x, y) => sketch.line('lead', [x, y, x + sample, y], { layer: 'frame' })
    });
  }
  if (use.cables) {
    marks.push({
      words: 'in a shielded or coaxial cable',
      draw: (sketch, x, y) => {
        const line = [x, y, x + sample, y];
        sketch.line('cable.casing.edge', line, { layer: 'frame' });
        sketch.line('cable.casing', line, { layer: 'frame' });
        sketch.line('wire.300', line, { layer: 'frame' });
      }
    });
  }
  if (use.mates) {
    marks.push({
      words: 'plug in its jack, or a whole cable',
      draw: (sketch, x, y) => sketch.line('mates', [x, y, x + sample, y], { layer: 'frame' })
    });
  }
  marks.push(...supportEntries(use.supports ?? new Set()));
  return { classes: used.map(bandEntry), marks };
};

const supportEntries = (kinds: ReadonlySet<Support['kind']>): Entry[] => {
  const entries: Entry[] = [];
  const add = (words: string, draw: (sketch: Sketch, x: number, y: number) => void): void => {
    entries.push({ words, draw: (sketch, x, y) => draw(sketch, x + sample / 2, y) });
  };
  if (kinds.has('clamp') || kinds.has('tie')) {
    add('clamp or tie that holds the wires', (sketch, x, y) => {
      const band = { x: x - 0.8, y: y - 2.2, width: 1.6, height: 4.4 };
      sketch.box('support.mark', band, 0, { layer: 'frame' });
      for (const beside of [-0.7, 0.7]) {
        const line = [x - sample / 2, y + beside, x + sample / 2, y + beside];
        sketch.line('wire.300', line, { layer: 'frame' });
      }
    });
  }
  if (kinds.has('grommet') || kinds.has('hole')) {
    add('through the metal, by a grommet or a hole', (sketch, x, y) => {
      sketch.circle('support.mark', x, y, 2.3, { layer: 'frame' });
      sketch.circle('support.bore', x, y, 1.6, { layer: 'frame' });
    });
  }
  if (kinds.has('corner')) {
    add('a corner that wires are led round', (sketch, x, y) => {
      sketch.circle('support.mark', x, y, 1.2, { layer: 'frame' });
    });
  }
  return entries;
};

const drawEntries = (sketch: Sketch, entries: readonly Entry[], x: number, y: number): void => {
  entries.forEach(({ words, draw }, index) => {
    const middle = y + (index + 0.5) * rowHeight;
    draw(sketch, x, middle);
    sketch.text('frame.text', words, x + sample + inset, middle, {
      ...textLook,
      anchor: 'start',
      layer: 'frame'
    });
  });
};

/** Two panels: the classes, and the marks. */
export const buildLegend = (use: LegendUse): Panel[] => {
  const { classes, marks } = entriesOf(use);
  const panel = (id: string, heading: string, entries: readonly Entry[]): Panel => {
    const words = widest(
      entries.map((entry) => entry.words),
      textLook
    );
    const width = Math.max(sample + inset + words, widest([heading.toUpperCase()], textLook) + 4);
    return {
      id,
      width,
      height: headingHeight + entries.length * rowHeight + sizes.small,
      draw: (sketch, x, y) => {
        drawHeading(sketch, heading, x, y, width);
        drawEntries(sketch, entries, x, y + headingHeight);
      }
    };
  };
  return [
    panel('legend-classes', 'Insulation class needed', classes),
    panel('legend-marks', 'Marks', marks)
  ];
};
