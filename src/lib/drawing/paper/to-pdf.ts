// Writes a display list as PDF: on one sheet, or over many with marks to cut and join them by. The faces are
// embedded, so that ohm, micro and degree come out of the file as they went in. No DOM: the command line and
// the editor call the same function. Loaded only when asked for: the library behind it is large.
import PDFDocument from 'pdfkit';
import type { DisplayItem, DisplayList, PictureAsset } from '../display-list.ts';
import { boxOfShape } from '../item-boxes.ts';
import type { PaperTheme } from '../styles.ts';
import { fitText } from '../text-width.ts';
import type { PictureFile } from '../to-svg.ts';
import { faceRuns, type FaceFile } from './face-runs.ts';
import { marginMm, overlapMm, type PaperPlan, type SheetWindow } from './lay-on-paper.ts';
import { unpackWoff } from './unpack-woff.ts';
import { PdfPen, type Pdf, type PdfPicture } from './pdf-pen.ts';

export interface PdfOptions {
  readonly theme: PaperTheme;
  readonly title: string;
  /** Who traced it. */
  readonly author?: string;
  readonly plan: PaperPlan;
  /** True where a millimetre of the drawing is a millimetre of the set: the scale is then written on each sheet. */
  readonly isToScale: boolean;
  /** One line for the margin of every sheet. */
  readonly caution: string;
  readonly date: Date;
  /** The bytes of a bundled face, as WOFF. */
  readonly loadFace: (file: FaceFile) => Promise<Uint8Array>;
  /** JPEG or PNG; a frame with the photo's name stands for what is neither. */
  readonly pictures?: (asset: PictureAsset) => PictureFile | undefined;
}

export interface PdfResult {
  readonly bytes: Uint8Array;
  readonly sheets: number;
  /** What the reader of the file should know, a sentence each. */
  readonly remarks: readonly string[];
}

const ptPerMm = 72 / 25.4;
const smallestReadablePt = 4;
const marginInk = '#333333';
const look = { size: 2.6, face: 'sans' } as const;

const collect = (pdf: Pdf): Promise<Uint8Array> =>
  new Promise((resolve, reject) => {
    const chunks: Uint8Array[] = [];
    pdf.on('data', (chunk: Uint8Array) => chunks.push(chunk));
    pdf.on('error', reject);
    pdf.on('end', () => {
      const bytes = new Uint8Array(chunks.reduce((sum, { length }) => sum + length, 0));
      let at = 0;
      for (const chunk of chunks) {
        bytes.set(chunk, at);
        at += chunk.length;
      }
      resolve(bytes);
    });
  });

const loadFaces = async (
  texts: readonly {
    readonly text: string;
    readonly face: 'sans' | 'mono';
    readonly bold?: boolean;
  }[],
  load: PdfOptions['loadFace']
): Promise<Map<FaceFile, Uint8Array>> => {
  const needed = new Set<FaceFile>();
  for (const { text, face, bold = false } of texts)
    for (const { file } of faceRuns(`${text}<>?`, face, bold)) if (file !== null) needed.add(file);
  return new Map(
    await Promise.all(
      [...needed].map(async (file): Promise<[FaceFile, Uint8Array]> => [
        file,
        unpackWoff(await load(file))
      ])
    )
  );
};

/** A length as it is read off a rule: 1 : 1, 1 : 2.5, 2 : 1. */
export const scaleInWords = (scale: number): string => {
  const three = (value: number): string => String(Number(value.toPrecision(3)));
  return scale >= 1 ? `${three(scale)} : 1` : `1 : ${three(1 / scale)}`;
};

/** Marks at the corners of what is shared, where the knife goes, and what stands in the margin. */
function drawMargin(pen: PdfPen, window: SheetWindow, options: PdfOptions): void {
  const { plan, title, caution, isToScale } = options;
  const { width, height, columns, rows, scale } = plan;
  const line = (points: readonly number[], wide = 0.15, dash?: readonly number[]): void =>
    pen.shape(
      { kind: 'line', points },
      { stroke: marginInk, width: wide, ...(dash ? { dash } : {}) }
    );
  const isTiled = columns * rows > 1;
  const [left, top, right, bottom] = [marginMm, marginMm, width - marginMm, height - marginMm];
  if (isTiled) {
    for (const [x, outward] of [
      [left, -1],
      [right, 1]
    ] as const)
      for (const [y, up] of [
        [top, -1],
        [bottom, 1]
      ] as const) {
        line([x + outward * 1.5, y, x + outward * 6, y]);
        line([x, y + up * 1.5, x, y + up * 6]);
      }
    // Where a neighbour's edge comes to lie.
    const dash = [1.2, 1.2];
    if (window.column > 0) line([left + overlapMm, top, left + overlapMm, bottom], 0.12, dash);
    if (window.column < columns - 1)
      line([right - overlapMm, top, right - overlapMm, bottom], 0.12, dash);
    if (window.row > 0) line([left, top + overlapMm, right, top + overlapMm], 0.12, dash);
    if (window.row < rows - 1)
      line([left, bottom - overlapMm, right, bottom - overlapMm], 0.12, dash);
  }
  const write = (text: string, x: number, y: number, anchor: 'start' | 'end', room: number): void =>
    pen.shape(
      { kind: 'text', x, y, text: fitText(text, room, look), anchor, ...look },
      { fill: marginInk }
    );
  const place = isTiled
    ? `, sheet ${window.row * columns + window.column + 1} of ${columns * rows}: row ${window.row + 1} of ${rows}, column ${window.column + 1} of ${columns}`
    : '';
  const half = (width - 2 * marginMm) / 2 - 8;
  write(`${title}${place}`, left + 7, top - 3.4, 'start', half * 1.4);
  write(
    isToScale ? `scale ${scaleInWords(scale)}` : 'not to scale',
    right - 7,
    top - 3.4,
    'end',
    half * 0.6
  );
  const ruleMm = isToScale ? 100 : 0;
  write(caution, left + 7, bottom + 5.6, 'start', width - 2 * marginMm - 22 - ruleMm);
  if (!isToScale) return;
  const [from, to] = [right - 7 - ruleMm, right - 7];
  line([from, bottom + 5, to, bottom + 5], 0.25);
  for (const x of [from, from + ruleMm / 2, to]) line([x, bottom + 4, x, bottom + 6], 0.25);
  const check = '100 mm on this paper: measure it before you rely on the scale';
  pen.shape(
    {
      kind: 'text',
      x: (from + to) / 2,
      y: bottom + 3.6,
      text: check,
      anchor: 'middle',
      ...look,
      size: 2.2
    },
    { fill: marginInk }
  );
}

const touches = (a: SheetWindow['box'], b: SheetWindow['box']): boolean =>
  a.x <= b.x + b.width && b.x <= a.x + a.width && a.y <= b.y + b.height && b.y <= a.y + a.height;

/** Halos and heavy lines reach beyond their geometry, mm. */
const strokeMm = 2;

/** The drawing as a PDF. The same list, options and date give the same bytes. */
export async function toPdf(list: DisplayList, options: PdfOptions): Promise<PdfResult> {
  const { plan, theme, title, author, date, caution } = options;
  const texts = list.items.flatMap(({ shape }) => (shape.kind === 'text' ? [shape] : []));
  const names = list.items.flatMap(({ shape }) =>
    shape.kind === 'picture' ? [{ text: shape.name, face: 'sans' } as const] : []
  );
  const margins = [title, caution, 'scale'].map((text) => ({ text, face: 'sans' }) as const);
  const faces = await loadFaces([...texts, ...names, ...margins], options.loadFace);
  const pdf = new PDFDocument({
    autoFirstPage: false,
    font: null as never,
    pdfVersion: '1.7',
    lang: 'en',
    displayTitle: true,
    info: {
      Title: title,
      Creator: 'Underchassis',
      Producer: 'Underchassis',
      CreationDate: date,
      ...(author === undefined ? {} : { Author: author })
    }
  }) as Pdf;
  const done = collect(pdf);
  const opened = new Map<string, PdfPicture | undefined>();
  let unreadable = 0;
  const pictureOf = (asset: PictureAsset): PdfPicture | undefined => {
    if (opened.has(asset.key)) return opened.get(asset.key);
    const file = options.pictures?.(asset);
    const isKnown = file !== undefined && (file.type === 'image/jpeg' || file.type === 'image/png');
    if (!isKnown) unreadable++;
    const picture = isKnown ? pdf.openImage(file.bytes) : undefined;
    opened.set(asset.key, picture);
    return picture;
  };
  const pen = new PdfPen(pdf, theme, faces, pictureOf);
  const boxes = list.items.map((item): [DisplayItem, SheetWindow['box']] => {
    const { x, y, width, height } = boxOfShape(item.shape);
    return [
      item,
      {
        x: x - strokeMm,
        y: y - strokeMm,
        width: width + 2 * strokeMm,
        height: height + 2 * strokeMm
      }
    ];
  });
  for (const window of plan.windows) {
    pdf.addPage({ size: [plan.width * ptPerMm, plan.height * ptPerMm], margin: 0 });
    pdf.scale(ptPerMm);
    pdf.save();
    pdf.rect(marginMm, marginMm, plan.width - 2 * marginMm, plan.height - 2 * marginMm).clip();
    pdf.translate(marginMm, marginMm).scale(plan.scale).translate(-window.box.x, -window.box.y);
    for (const [item, box] of boxes) if (touches(box, window.box)) pen.item(item);
    pdf.restore();
    drawMargin(pen, window, options);
  }
  pdf.end();
  const smallestPt = Math.min(...texts.map(({ size }) => size)) * plan.scale * ptPerMm;
  const remarks = [
    ...(unreadable > 0
      ? [
          `${unreadable === 1 ? 'one photo is' : `${unreadable} photos are`} not in this file: a frame stands in place`
        ]
      : []),
    ...(pen.missing.size > 0
      ? [
          `letters that the bundled face lacks stand as a boxed question mark: ${[...pen.missing].slice(0, 12).join(' ')}`
        ]
      : []),
    ...(smallestPt < smallestReadablePt
      ? [
          `the smallest letters are ${smallestPt.toFixed(1)} point high: larger paper or more sheets can be read`
        ]
      : [])
  ];
  return { bytes: await done, sheets: plan.windows.length, remarks };
}
