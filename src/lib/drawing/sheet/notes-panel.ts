// The findings as notes at the foot, numbered as their marks are; the rest is told as a count. Beside
// them, what was not checked.
import { countFindings, type Finding } from '#checks/index.ts';
import type { Study } from '#study/index.ts';
import { textWidthMm } from '../text-width.ts';
import { notCheckedWords } from './not-checked.ts';
import {
  boldLook,
  drawHeading,
  drawLines,
  headingHeight,
  linesHeight,
  sizes,
  smallLook,
  textLook,
  toLines,
  type Line,
  type Panel
} from './panel.ts';

export interface SheetNote {
  /** Its number on the drawing: the place in the list of findings. */
  readonly number: number;
  readonly finding: Finding;
}

const width = 96;
const indent = 7;
const discRadius = 2.1;

interface Note {
  readonly note: SheetNote;
  readonly lines: readonly Line[];
  readonly height: number;
}

const buildNote = (note: SheetNote): Note => {
  const { finding } = note;
  const where = finding.at[0]?.label ?? '';
  const head = `${finding.severity} ${where.replace(/^wire /, '')}`.trim();
  const options = { indent };
  const lines = [
    ...toLines(head[0] ? head[0].toUpperCase() + head.slice(1) : '', width, boldLook, {
      ...options,
      style: `finding.${finding.severity}.word`
    }),
    ...toLines(finding.message, width, textLook, options),
    ...toLines(finding.severity === 'danger' ? (finding.caution ?? '') : '', width, smallLook, {
      ...options,
      style: 'caution.text'
    })
  ];
  return { note, lines, height: linesHeight(lines) + sizes.small };
};

const drawNote = (
  sketch: Parameters<Panel['draw']>[0],
  { note, lines }: Note,
  x: number,
  y: number
): void => {
  const { severity } = note.finding;
  const middle = y + sizes.text * 0.75;
  sketch.circle(`finding.${severity}.disc`, x + discRadius, middle, discRadius, { layer: 'frame' });
  const text = String(note.number);
  const size = textWidthMm(text, boldLook) > discRadius * 1.7 ? sizes.small * 0.8 : sizes.small;
  sketch.text(`finding.${severity}.text`, text, x + discRadius, middle, {
    size,
    bold: true,
    layer: 'frame'
  });
  drawLines(sketch, lines, x, y);
};

/** Panels of notes, each at most `most` high, and the words on what was not checked. */
export const buildNotes = (
  study: Study,
  findings: readonly Finding[],
  shown: readonly SheetNote[],
  most: number
): Panel[] => {
  const notes = shown.map(buildNote);
  const columns: Note[][] = [[]];
  let high = headingHeight;
  for (const note of notes) {
    if (high + note.height > most && columns.at(-1)?.length) {
      columns.push([]);
      high = headingHeight;
    }
    columns.at(-1)?.push(note);
    high += note.height;
  }
  const panels = columns
    .filter((column) => column.length > 0)
    .map((column, index): Panel => ({
      id: `notes-${index + 1}`,
      width,
      height: headingHeight + column.reduce((sum, note) => sum + note.height, 0),
      draw: (sketch, x, y) => {
        drawHeading(sketch, index === 0 ? 'Findings' : 'Findings, continued', x, y, width);
        let at = y + headingHeight;
        for (const note of column) {
          drawNote(sketch, note, x, at);
          at += note.height;
        }
      }
    }));
  return [...panels, buildNotChecked(study, findings, shown)];
};

const buildNotChecked = (
  study: Study,
  findings: readonly Finding[],
  shown: readonly SheetNote[]
): Panel => {
  const counts = countFindings(findings);
  const told = new Set(shown.map(({ finding }) => finding));
  const rest = findings.filter((finding) => !told.has(finding)).length;
  const plural = (count: number, word: string) => `${count} ${word}${count === 1 ? '' : 's'}`;
  const summary = [
    plural(counts.danger, 'danger'),
    plural(counts.fault, 'fault'),
    plural(counts.caution, 'caution'),
    plural(counts.note, 'note')
  ].join(', ');
  const lines = [
    ...toLines(`${summary}.${rest > 0 ? ` ${rest} of them not shown here.` : ''}`, width, boldLook),
    ...notCheckedWords(study).flatMap((words) =>
      toLines(words, width, textLook, { above: sizes.small * 0.3 })
    )
  ];
  return {
    id: 'not-checked',
    width,
    height: headingHeight + linesHeight(lines),
    draw: (sketch, x, y) => {
      drawHeading(sketch, 'Not checked', x, y, width);
      drawLines(sketch, lines, x, y + headingHeight);
    }
  };
};
