// Shapes of a display list as marks of a PDF page. Everything is in millimetres: the page is scaled once.
import type PDFDocument from 'pdfkit';
import type { DisplayItem, PictureAsset, Shape } from '../display-list.ts';
import { pictureFrame } from '../picture-corners.ts';
import { styleOf, type PaperTheme, type Style } from '../styles.ts';
import { textWidthMm } from '../text-width.ts';
import { roundedPath } from '../to-svg.ts';
import { faceRuns, type FaceFile } from './face-runs.ts';

/** A picture that has been put into the file once, however many sheets show it. */
export type PdfPicture = object;
/** The library's document; what its types leave out is said here. */
export type Pdf = InstanceType<typeof PDFDocument> & {
  openImage(bytes: Uint8Array): PdfPicture;
  readonly _font: {
    readonly id: string;
    ref(): object;
    encode(text: string): readonly [glyphs: readonly string[], positions: readonly object[]];
  };
  readonly page: { readonly fonts: Record<string, object> };
};
type TextShape = Extract<Shape, { kind: 'text' }>;
type PictureShape = Extract<Shape, { kind: 'picture' }>;

/** Drawn of another letter with a bar below, where no face has them. */
const barred: Readonly<Record<string, string>> = { '≥': '>', '≤': '<' };
/** How far above the baseline a missing letter's box reaches, in parts of the size. */
const boxHeight = 0.68;

export class PdfPen {
  readonly #pdf: Pdf;
  readonly #theme: PaperTheme;
  readonly #pictureOf: (asset: PictureAsset) => PdfPicture | undefined;
  /** Letters that no face has: drawn as a box, still found by whoever searches. */
  readonly missing = new Set<string>();

  constructor(
    pdf: Pdf,
    theme: PaperTheme,
    faces: ReadonlyMap<FaceFile, Uint8Array>,
    pictureOf: (asset: PictureAsset) => PdfPicture | undefined
  ) {
    this.#pdf = pdf;
    this.#theme = theme;
    for (const [file, bytes] of faces) pdf.registerFont(file, bytes as never);
    this.#pictureOf = pictureOf;
  }

  item({ shape, style }: DisplayItem): void {
    this.shape(shape, styleOf(style, this.#theme));
  }

  shape(shape: Shape, style: Style): void {
    switch (shape.kind) {
      case 'line': {
        const { points, closed = false, round = 0 } = shape;
        if (points.length < 4) return;
        this.#pdf.path(roundedPath(points, closed, round));
        return this.#paint(closed ? style : { ...style, fill: undefined });
      }
      case 'circle':
        this.#pdf.circle(shape.x, shape.y, shape.r);
        return this.#paint(style);
      case 'box': {
        const { x, y, width, height, round = 0 } = shape;
        if (round > 0) this.#pdf.roundedRect(x, y, width, height, round);
        else this.#pdf.rect(x, y, width, height);
        return this.#paint(style);
      }
      case 'picture':
        return this.#picture(shape);
      case 'text':
        return this.#text(shape, style.fill ?? style.stroke ?? '#000000');
    }
  }

  #paint({
    stroke,
    fill,
    width = 0.2,
    dash,
    cap = 'butt'
  }: { readonly [K in keyof Style]: Style[K] | undefined }): void {
    const pdf = this.#pdf;
    const isFilled = fill !== undefined && fill !== 'none';
    if (stroke !== undefined) {
      pdf.lineWidth(width).lineCap(cap).lineJoin('round');
      if (dash && dash.length > 0) pdf.dash(dash[0] ?? 1, { space: dash[1] ?? 1 });
      // More than one dash and gap are not among the library's options.
      if (dash && dash.length > 2) pdf.addContent(`[${dash.join(' ')}] 0 d`);
    }
    if (stroke !== undefined && isFilled) pdf.fillAndStroke(fill, stroke);
    else if (stroke !== undefined) pdf.stroke(stroke);
    else if (isFilled) pdf.fill(fill);
    // A path that is not painted must still be ended.
    else pdf.addContent('n');
    if (stroke !== undefined && dash) pdf.undash();
  }

  #picture(shape: PictureShape): void {
    const picture = this.#pictureOf(shape.asset);
    if (picture === undefined) {
      for (const part of pictureFrame(shape))
        this.shape(part.shape, styleOf(part.style, this.#theme));
      return;
    }
    const { matrix, width, height, opacity, clip } = shape;
    const pdf = this.#pdf;
    pdf.save();
    pdf.transform(...matrix);
    if (clip !== undefined) {
      const corners = clip.flatMap((x, at) => (at % 2 === 0 ? [[x, clip[at + 1] ?? 0]] : []));
      pdf.polygon(...(corners as [number, number][])).clip();
    }
    if (opacity !== 1) pdf.opacity(opacity);
    pdf.image(picture as never, 0, 0, { width, height, ignoreOrientation: true } as never);
    pdf.restore();
  }

  #text(shape: TextShape, colour: string): void {
    const { text, size, anchor, face, bold = false, turn = 0 } = shape;
    if (text === '') return;
    const pdf = this.#pdf;
    const width = textWidthMm(text, shape);
    let x = shape.x - (anchor === 'end' ? width : anchor === 'middle' ? width / 2 : 0);
    if (turn !== 0) {
      pdf.save();
      pdf.rotate(turn, { origin: [shape.x, shape.y] });
    }
    pdf.fillColor(colour).fontSize(size);
    for (const { file, text: run } of faceRuns(text, face, bold)) {
      if (file === null) this.#missingLetter(run, x, shape);
      else this.#run(file, run, x, shape.y);
      x += textWidthMm(run, shape);
    }
    if (turn !== 0) pdf.restore();
  }

  #run(file: FaceFile, text: string, x: number, y: number): void {
    this.#pdf.font(file).text(text, x, y, { lineBreak: false, baseline: 'alphabetic' });
  }

  #plainRun(file: FaceFile, text: string, size: number): void {
    const pdf = this.#pdf.font(file) as Pdf;
    const { _font: font, page } = pdf;
    page.fonts[font.id] ??= font.ref();
    const [glyphs] = font.encode(text);
    pdf.addContent(`BT /${font.id} ${size} Tf 0 Tr <${glyphs.join('')}> Tj ET`);
  }

  /** What is drawn is not what it says: the file says the letter beside (ISO 32000-1, 14.9.4). */
  #missingLetter(letter: string, x: number, { y, size, face, bold = false }: TextShape): void {
    if (letter.trim() === '') return;
    const pdf = this.#pdf;
    const bar = barred[letter];
    const stand = bar ?? '?';
    const wide = textWidthMm(stand, { size, face, bold });
    const [run] = faceRuns(stand, face, bold);
    // The library turns the page over for a text and back after it, and readers look for the letter where
    // the text would lie unturned: so this one is written by hand.
    pdf.save();
    pdf.transform(1, 0, 0, -1, x, y - (bar === undefined ? 0 : size * 0.06));
    pdf.markContent('Span', { actual: letter } as never);
    if (run?.file) this.#plainRun(run.file, stand, size);
    pdf.endMarkedContent();
    pdf.restore();
    if (bar !== undefined) {
      const under = y - size * 0.03;
      const points = [x + wide * 0.14, under, x + wide * 0.86, under];
      const width = (bold ? 0.1 : 0.065) * size;
      this.shape({ kind: 'line', points }, { stroke: '#000000', width });
      return;
    }
    this.missing.add(letter);
    const top = y - size * boxHeight;
    const box = { x: x + size * 0.03, y: top, width: wide - size * 0.06, height: size * boxHeight };
    this.shape({ kind: 'box', ...box }, { stroke: '#555555', width: size * 0.05 });
  }
}
