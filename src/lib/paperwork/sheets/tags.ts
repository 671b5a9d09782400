// Tags: two flags a wire on label sheets, one for each end, useful without the code on them. To be
// printed and tied on before anything is torn out.
import { escapeXmlText } from '#drawing/xml-text.ts';
import type { ChassisDocument, Wire } from '#document/index.ts';
import type { Study } from '#study/index.ts';
import { renderSVG } from 'uqr';
import { pageOf } from './page.ts';

/** A sheet of labels, mm. */
export interface LabelSheet {
  readonly name: string;
  readonly paper: 'A4' | 'letter';
  readonly columns: number;
  readonly rows: number;
  readonly widthMm: number;
  readonly heightMm: number;
  /** From one label's edge to that of the next. */
  readonly pitchXMm: number;
  readonly pitchYMm: number;
  readonly leftMm: number;
  readonly topMm: number;
}

/** Named by their size alone. Sizes in use for label sheets, from memory: measure yours. */
export const labelSheets: readonly LabelSheet[] = [
  {
    name: 'A4 3x8',
    paper: 'A4',
    columns: 3,
    rows: 8,
    widthMm: 63.5,
    heightMm: 33.9,
    pitchXMm: 66,
    pitchYMm: 33.9,
    leftMm: 7.2,
    topMm: 12.9
  },
  {
    name: 'A4 2x7',
    paper: 'A4',
    columns: 2,
    rows: 7,
    widthMm: 99.1,
    heightMm: 38.1,
    pitchXMm: 101.6,
    pitchYMm: 38.1,
    leftMm: 4.7,
    topMm: 15.1
  },
  {
    name: 'letter 3x10',
    paper: 'letter',
    columns: 3,
    rows: 10,
    widthMm: 66.7,
    heightMm: 25.4,
    pitchXMm: 69.8,
    pitchYMm: 25.4,
    leftMm: 4.8,
    topMm: 12.7
  },
  {
    name: 'plain A4',
    paper: 'A4',
    columns: 3,
    rows: 10,
    widthMm: 62,
    heightMm: 26,
    pitchXMm: 63,
    pitchYMm: 27,
    leftMm: 10.5,
    topMm: 13
  }
];

export interface TagOptions {
  readonly sheet: LabelSheet;
  /** Labels that are gone from the first sheet. */
  readonly skip?: number;
  /** Shifts all labels, mm: printers differ. */
  readonly shiftXMm?: number;
  readonly shiftYMm?: number;
  /** Stands before the text in the code; nothing where the person set none. */
  readonly address?: string;
}

interface Flag {
  readonly number: string;
  readonly here: string;
  readonly there: string;
  readonly colour: string;
  readonly code: string;
}

/** The two flags of each wire that has a number and is still there to be tagged. */
export function flagsOf(study: Study, address = ''): readonly Flag[] {
  return study.index.wires
    .filter((wire) => wire.number.trim() !== '' && wire.construction !== 'component lead')
    .flatMap((wire) => {
      const [from, to] = [study.index.labelOf(wire.from), study.index.labelOf(wire.to)];
      const code = codeText(study.document, wire, from, to, address);
      const colour = [wire.found.colour, wire.found.tracer].filter(Boolean).join('/');
      return [
        { number: wire.number, here: from, there: to, colour, code },
        { number: wire.number, here: to, there: from, colour, code }
      ];
    });
}

const codeText = (
  document: ChassisDocument,
  wire: Wire,
  from: string,
  to: string,
  address: string
): string => {
  const plain = `${document.identity.title}: ${wire.number}, ${from} to ${to}`;
  return (address === '' ? plain : `${address}#${wire.id} ${plain}`).slice(0, 200);
};

const mm = (length: number): string => `${Number(length.toFixed(2))}mm`;

const style = ({ sheet, shiftXMm = 0, shiftYMm = 0 }: TagOptions): string => `
@page { size: ${sheet.paper}; margin: 0; }
* { box-sizing: border-box; }
body { margin: 0; background: #fff; color: #111; font: 8pt/1.2 "IBM Plex Sans", "Segoe UI", "Helvetica Neue", Arial, sans-serif; }
.labels { position: relative; width: ${sheet.paper === 'A4' ? '210mm' : '216mm'}; height: ${sheet.paper === 'A4' ? '296mm' : '279mm'}; overflow: hidden; break-after: page; }
.grid { display: grid; position: absolute; left: ${mm(sheet.leftMm + shiftXMm)}; top: ${mm(sheet.topMm + shiftYMm)}; grid-template-columns: repeat(${sheet.columns}, ${mm(sheet.widthMm)}); grid-auto-rows: ${mm(sheet.heightMm)}; column-gap: ${mm(sheet.pitchXMm - sheet.widthMm)}; row-gap: ${mm(sheet.pitchYMm - sheet.heightMm)}; }
.flag { display: grid; grid-template-columns: 1fr 15mm; gap: 1.5mm; padding: 2mm 2.5mm; overflow: hidden; align-content: center; }
.flag svg { width: 15mm; height: 15mm; display: block; }
.no { font-size: 14pt; line-height: 1.1; font-weight: 700; overflow-wrap: anywhere; }
.no span { font-size: 8pt; font-weight: 400; }
.end { display: block; overflow-wrap: anywhere; }
.here { font-weight: 700; font-size: 9.5pt; }
.code { grid-column: 1 / 3; font-size: 5.5pt; color: #444; white-space: nowrap; overflow: hidden; text-overflow: ellipsis; }
@media screen { body { background: #e9e4d8; } .labels { background: #fff; margin: 5mm auto; } .flag { outline: 0.2mm dashed #b9b2a4; } }
`;

const flagHtml = ({ number, here, there, colour, code }: Flag): string => {
  const text = escapeXmlText(code);
  // Half a character, which a list may hold, has no place in a code.
  const picture = renderSVG(code.toWellFormed(), { ecc: 'L', border: 2 });
  return `<div class="flag"><div><div class="no">${escapeXmlText(number)}${colour === '' ? '' : ` <span>${escapeXmlText(colour)}</span>`}</div><span class="end here">${escapeXmlText(here)}</span><span class="end">goes to ${escapeXmlText(there)}</span></div>${picture}<div class="code">${text}</div></div>`;
};

/** Label sheets as a page for print, at 100 %. */
export function tagsPage(study: Study, options: TagOptions): string {
  const { sheet, skip = 0 } = options;
  const cells = [
    ...Array.from({ length: Math.max(0, skip) }, () => '<div></div>'),
    ...flagsOf(study, options.address).map(flagHtml)
  ];
  const each = sheet.columns * sheet.rows;
  const sheets: string[] = [];
  for (let at = 0; at < cells.length; at += each)
    sheets.push(
      `<div class="labels"><div class="grid">${cells.slice(at, at + each).join('\n')}</div></div>`
    );
  return pageOf(`Tags: ${study.document.identity.title}`, style(options), sheets.join('\n'));
}
