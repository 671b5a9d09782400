// The drawing of a chassis as SVG text, with elk's worker from beside the program.
import { basename } from 'node:path';
import { fileURLToPath } from 'node:url';
import { cautionsFor } from '#checks/index.ts';
import { metadataForSvg, saveDocument, type ElementChange } from '#document/index.ts';
import {
  buildDiagram,
  buildDisplayList,
  buildPictorial,
  cropToPick,
  LayoutError,
  layOnPaper,
  markChanges,
  toMarks,
  PaperError,
  toSvg,
  type DisplayList,
  type Face,
  type PaperTheme,
  type PaperWish,
  type PictureAsset,
  type Subject
} from '#drawing/index.ts';
import type { FaceFile } from '#drawing/paper/face-runs.ts';
import { toPdf } from '#drawing/paper/to-pdf.ts';
import type { PageDrawing } from '#paperwork/index.ts';
import type { StoredPicture } from '#storage/index.ts';
import { CommandError, type Terminal } from './command.ts';
import { createNodeEngine } from './elk-in-node.ts';
import { readBytes } from './files.ts';
import type { Judged } from './judge.ts';
import type { Pictures } from './read-chassis.ts';

export const views = ['diagram', 'pictorial'] as const;
export type View = (typeof views)[number];

export interface DrawOptions {
  readonly theme: PaperTheme;
  readonly timeLimitMs: number;
  /** Which side the drawing to scale shows. */
  readonly face: Face;
  /** A wire's number or a part's reference: only that, with what stands round it. */
  readonly of?: string;
  /** With legend, cautions, notes and title block below; without, where only a piece is drawn. */
  readonly withFoot?: boolean;
}

/** The local date as it stands in a title block: 2026-11-25. */
export const today = (): string => {
  const now = new Date();
  const two = (value: number): string => String(value).padStart(2, '0');
  return `${now.getFullYear()}-${two(now.getMonth() + 1)}-${two(now.getDate())}`;
};

/** Lays the diagram out. Progress goes to stderr where a person watches it. */
const layDiagram = async (
  path: string,
  { study, findings }: Judged,
  { timeLimitMs, of, withFoot = of === undefined }: DrawOptions,
  terminal: Terminal
): Promise<DisplayList> => {
  const engine = createNodeEngine(fileURLToPath(new URL('./elk-worker.min.js', import.meta.url)));
  try {
    const diagram = await buildDiagram(study, engine, {
      timeLimitMs,
      onProgress: ({ done, of: all, name }) => {
        if (process.stderr.isTTY && name !== '')
          terminal.say(`step ${done + 1} of ${all}: ${name}`);
      }
    });
    for (const remark of diagram.remarks) terminal.say(`${basename(path)}: ${remark}`);
    return buildDisplayList(diagram, { findings, date: today(), withFoot });
  } catch (error) {
    if (error instanceof LayoutError)
      throw new CommandError(`${path}: not drawn: ${error.message}`);
    throw error;
  } finally {
    engine.stop();
  }
};

/** Wires of that number and parts of that reference. */
const subjectsNamed = ({ study }: Judged, name: string): readonly Subject[] => [
  ...study.index.wires
    .filter(({ number }) => number === name)
    .map(({ id }) => ({ kind: 'wire', id }) as const),
  ...study.index.parts
    .filter(({ reference }) => reference === name)
    .map(({ id }) => ({ kind: 'part', id }) as const)
];

/** The drawing of a chassis, or of the piece that was asked for, as a display list.
 *  @throws CommandError where the layout fails or takes longer than its limit, and where nothing bears the name */
export const listChassis = async (
  path: string,
  judged: Judged,
  view: View,
  options: DrawOptions,
  terminal: Terminal
): Promise<DisplayList> => {
  const { study, findings } = judged;
  const { face, of, withFoot = of === undefined } = options;
  const list =
    view === 'diagram'
      ? await layDiagram(path, judged, options, terminal)
      : buildPictorial(study, {
          findings,
          face,
          date: today(),
          withLengths: true,
          withFoot
        });
  if (of === undefined) return list;
  const piece = cropToPick(list, subjectsNamed(judged, of), study.document, {
    name: of,
    date: today()
  });
  if (piece === null)
    throw new CommandError(
      `--of ${of}: the ${view} shows nothing of that name: give a wire's number or a part's reference`
    );
  return piece;
};

/** Pictures that are shown as they were taken; to straighten one takes the app. */
export const shownPictures =
  (pictures: Pictures) =>
  ({ hash, straightening }: PictureAsset): StoredPicture | undefined =>
    straightening === null ? pictures.get(hash) : undefined;

const svgOf = (
  { document, study, pictures }: Judged,
  list: DisplayList,
  view: View,
  theme: PaperTheme
): string =>
  toSvg(list, {
    theme,
    title: document.identity.title,
    description: `${view === 'diagram' ? 'Wiring diagram' : 'Chassis drawn to scale'}: ${study.index.wires.length} wires, ${study.index.parts.length} parts.`,
    metadata: metadataForSvg(saveDocument(document)),
    pictures: shownPictures(pictures)
  });

/** A drawing of the chassis as SVG text that carries the document.
 *  @throws CommandError as `listChassis` */
export const drawChassis = async (
  path: string,
  judged: Judged,
  view: View,
  options: DrawOptions,
  terminal: Terminal
): Promise<string> =>
  svgOf(judged, await listChassis(path, judged, view, options, terminal), view, options.theme);

/** The same with marks on what differs from another document. */
export const drawComparison = async (
  path: string,
  judged: Judged,
  changes: readonly ElementChange[],
  view: View,
  options: DrawOptions,
  terminal: Terminal
): Promise<string> => {
  const list = await listChassis(path, judged, view, options, terminal);
  return svgOf(judged, markChanges(list, toMarks(changes)), view, options.theme);
};

/** The drawings of a one-file page: the diagram, and the drawing to scale where somebody gave places. */
export const pageDrawings = async (
  path: string,
  judged: Judged,
  options: DrawOptions,
  terminal: Terminal
): Promise<PageDrawing[]> => {
  const isPlaced = judged.study.index.parts.some((part) => part.place !== undefined);
  const shown = isPlaced ? views : (['diagram'] as const);
  const drawings: PageDrawing[] = [];
  for (const view of shown) {
    const list = await listChassis(path, judged, view, { ...options, withFoot: false }, terminal);
    drawings.push({
      name: view === 'diagram' ? 'Diagram' : `To scale, from ${options.face}`,
      list
    });
  }
  return drawings;
};

const facePlace = (file: FaceFile): string =>
  fileURLToPath(new URL(`./faces/${file}.woff`, import.meta.url));

/** A drawing of the chassis as PDF on the paper that is wished for. What the reader should know is said.
 *  @throws CommandError as `listChassis`, and where no paper meets the wish */
export const drawChassisOnPaper = async (
  path: string,
  judged: Judged,
  view: View,
  options: DrawOptions,
  wish: PaperWish,
  terminal: Terminal
): Promise<Uint8Array> => {
  const { document, pictures } = judged;
  const list = await listChassis(path, judged, view, options, terminal);
  try {
    const { bytes, sheets, remarks } = await toPdf(list, {
      theme: options.theme,
      title: document.identity.title,
      ...(document.identity.tracedBy === undefined ? {} : { author: document.identity.tracedBy }),
      plan: layOnPaper(list.bounds, wish),
      isToScale: view === 'pictorial',
      caution: cautionsFor(document)[0]?.short ?? '',
      date: new Date(),
      loadFace: (file) => readBytes(facePlace(file)),
      pictures: shownPictures(pictures)
    });
    terminal.say(`${sheets} ${sheets === 1 ? 'sheet' : 'sheets'} of ${wish.paper}`);
    for (const remark of remarks) terminal.say(`${basename(path)}: ${remark}`);
    return bytes;
  } catch (error) {
    if (error instanceof PaperError) throw new CommandError(`${path}: not drawn: ${error.message}`);
    throw error;
  }
};
