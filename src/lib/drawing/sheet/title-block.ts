// The title block: what set this is, who traced it and when, and that it is not to scale.
import type { Identity } from '#document/index.ts';
import { fitText } from '../text-width.ts';
import {
  boldLook,
  sizes,
  smallLook,
  textLook,
  toLines,
  drawLines,
  linesHeight,
  type Panel
} from './panel.ts';

const width = 92;
const labelWidth = 24;
const pad = 3;
const rowHeight = sizes.text * 1.75;

const rowsOf = (
  identity: Identity,
  wires: number,
  date: string | undefined
): [string, string][] => {
  const checked = identity.setsChecked;
  return (
    [
      ['chassis', identity.chassis],
      ['run', identity.run],
      ['service data', identity.dataReference],
      ['traced by', identity.tracedBy],
      [
        'checked on',
        checked === undefined ? undefined : `${checked} ${checked === 1 ? 'set' : 'sets'}`
      ],
      ['wires', String(wires)],
      ['date', date],
      ['licence', identity.licence]
    ] as [string, string | undefined][]
  ).filter((row): row is [string, string] => row[1] !== undefined && row[1] !== '');
};

/** The title block; `date` is written as it is given, `words` say what kind of drawing this is. */
export const buildTitleBlock = (
  identity: Identity,
  wires: number,
  date?: string,
  words = 'Wiring diagram, seen from the wiring side, not to scale'
): Panel => {
  const inner = width - 2 * pad;
  const title = toLines(identity.title, inner, {
    size: sizes.title,
    face: 'sans',
    bold: true
  }).slice(0, 2);
  const set = toLines(identity.set ?? '', inner, textLook, { style: 'frame.small' }).slice(0, 2);
  const rows = rowsOf(identity, wires, date);
  const head = linesHeight(title) + linesHeight(set) + 3;
  const foot = sizes.small * 2.4;
  const height = pad + head + rows.length * rowHeight + foot + pad / 2;
  return {
    id: 'title-block',
    width,
    height,
    draw: (sketch, x, y) => {
      sketch.box('frame.line', { x, y, width, height }, 0, { layer: 'frame' });
      const after = drawLines(sketch, title, x + pad, y + pad * 0.7);
      drawLines(sketch, set, x + pad, after);
      let at = y + pad + head;
      for (const [label, value] of rows) {
        sketch.line('frame.fine', [x, at, x + width, at], { layer: 'frame' });
        const middle = at + rowHeight / 2;
        const marks = { anchor: 'start', layer: 'frame' } as const;
        sketch.text('frame.small', label, x + pad, middle, { ...smallLook, ...marks });
        const text = fitText(value, inner - labelWidth, boldLook);
        sketch.text('frame.text', text, x + pad + labelWidth, middle, { ...boldLook, ...marks });
        at += rowHeight;
      }
      sketch.line('frame.fine', [x, at, x + width, at], { layer: 'frame' });
      sketch.text('frame.small', words, x + pad, at + foot / 2, {
        ...smallLook,
        anchor: 'start',
        layer: 'frame'
      });
    }
  };
};
