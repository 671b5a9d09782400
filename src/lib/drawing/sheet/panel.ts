// A panel is one block of the sheet's foot: legend, cautions, notes, title block. Each says how big it
// is and draws itself at a place; sheet-layout.ts puts them beside and below each other.
import type { Sketch } from '../figures/figure.ts';
import { textWidthMm, wrapText, type TextLook } from '../text-width.ts';

export interface Panel {
  readonly id: string;
  readonly width: number;
  readonly height: number;
  readonly draw: (sketch: Sketch, x: number, y: number) => void;
}

export const sizes = { title: 4.4, heading: 2.2, text: 2.3, small: 1.9, line: 1.42 } as const;

export const headingLook: TextLook = { size: sizes.heading, face: 'sans', bold: true };
export const textLook: TextLook = { size: sizes.text, face: 'sans' };
export const boldLook: TextLook = { size: sizes.text, face: 'sans', bold: true };
export const smallLook: TextLook = { size: sizes.small, face: 'sans' };

/** A heading in spaced capitals with a line below; returns the room it takes. */
export const headingHeight = sizes.heading * 2;

export const drawHeading = (
  sketch: Sketch,
  text: string,
  x: number,
  y: number,
  width: number
): void => {
  sketch.text('frame.small', text.toUpperCase(), x, y + sizes.heading * 0.7, {
    ...headingLook,
    anchor: 'start',
    layer: 'frame'
  });
  const under = y + sizes.heading * 1.5;
  sketch.line('frame.fine', [x, under, x + width, under], { layer: 'frame' });
};

export interface Line {
  readonly text: string;
  readonly style: string;
  readonly look: TextLook;
  readonly indent: number;
  /** Room above it, mm. */
  readonly above: number;
}

/** Text broken into lines no wider than `width`, all with one look. */
export const toLines = (
  text: string,
  width: number,
  look: TextLook,
  { style = 'frame.text', indent = 0, above = 0 }: Partial<Omit<Line, 'text' | 'look'>> = {}
): Line[] =>
  wrapText(text, width - indent, look).map((line, index) => ({
    text: line,
    style,
    look,
    indent,
    above: index === 0 ? above : 0
  }));

export const linesHeight = (lines: readonly Line[]): number =>
  lines.reduce((sum, { look, above }) => sum + above + look.size * sizes.line, 0);

/** Draws lines below each other and returns where they end. */
export const drawLines = (sketch: Sketch, lines: readonly Line[], x: number, y: number): number => {
  let at = y;
  for (const { text, style, look, indent, above } of lines) {
    at += above + look.size * sizes.line;
    const middle = at - (look.size * sizes.line) / 2;
    sketch.text(style, text, x + indent, middle, { ...look, anchor: 'start', layer: 'frame' });
  }
  return at;
};

/** The width of the widest of some texts. */
export const widest = (texts: readonly string[], look: TextLook): number =>
  Math.max(0, ...texts.map((text) => textWidthMm(text, look)));
