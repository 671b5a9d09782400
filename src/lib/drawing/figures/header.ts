// The lines above a part: its reference in bold, its type or value beside it, what it does below.
import type { Part } from '#document/index.ts';
import { fitText, textWidthMm } from '../text-width.ts';
import type { Sketch } from './figure.ts';
import { type } from './sizes.ts';

const referenceLook = { size: type.reference, face: 'sans', bold: true } as const;
const kindLook = { size: type.kind, face: 'sans' } as const;
const smallLook = { size: type.small, face: 'sans' } as const;
const gap = 1;
const mostFunction = 30;

export interface Header {
  readonly reference: string;
  readonly kind: string;
  readonly function: string;
  readonly width: number;
  readonly height: number;
}

/** The texts of a part's header and the room that they need, mm. */
export const measureHeader = (part: Part): Header => {
  const reference = fitText(part.reference, 30, referenceLook);
  const kind = fitText([part.type, part.value].filter(Boolean).join(' '), 26, kindLook);
  const words = fitText(part.function ?? '', mostFunction, smallLook);
  const first = textWidthMm(reference, referenceLook);
  const second = kind === '' ? 0 : gap + textWidthMm(kind, kindLook);
  return {
    reference,
    kind,
    function: words,
    width: Math.max(first + second, textWidthMm(words, smallLook)),
    height: type.reference * 1.25 + (words === '' ? 0 : type.small * 1.25 + 0.7)
  };
};

/** Draws the header centred on `x`, its upper edge at `y`. */
export const drawHeader = (sketch: Sketch, header: Header, x: number, y: number): void => {
  const first = textWidthMm(header.reference, referenceLook);
  const second = header.kind === '' ? 0 : gap + textWidthMm(header.kind, kindLook);
  const left = x - (first + second) / 2;
  const middle = y + type.reference * 0.55;
  sketch.text('part.reference', header.reference, left, middle, {
    ...referenceLook,
    anchor: 'start'
  });
  sketch.text('part.kind', header.kind, left + first + gap, middle + 0.25, {
    ...kindLook,
    anchor: 'start'
  });
  sketch.text(
    'part.function',
    header.function,
    x,
    y + type.reference * 1.25 + type.small * 0.55,
    smallLook
  );
};
