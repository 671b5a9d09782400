/* eslint-disable svelte/prefer-svelte-reactivity -- maps and sets are made anew here, never changed in place */
// What is handed on: a link, files of every kind, and what goes along. Everything that leaves here is a copy
// without shelf, prices and private notes unless they were asked for.
import {
  buildShareCopy,
  metadataForSvg,
  saveDocument,
  type ChassisDocument,
  type PrivateThing
} from '#document/index.ts';
import type {
  DisplayList,
  Face,
  PaperName,
  PaperTheme,
  PaperWish,
  PictureFile,
  PictureAsset,
  Subject
} from '#drawing/index.ts';
import {
  buildShareLink,
  fileNameOf,
  zipEnding,
  documentEnding,
  type ShareLink
} from '#storage/index.ts';
import type { EditorState } from '../core/editor-state.svelte.ts';
import type { FileDesk } from '../files/file-desk.ts';
import { gatherPictures } from '../files/gather-pictures.ts';
import type { SheetDrawing } from '../sheet/diagram-state.svelte.ts';
import { latePdf } from './late-pdf.ts';
import * as works from './share-works.ts';
import { CompareDesk } from './compare-desk.svelte.ts';

export const drawingFormats = ['pdf', 'svg', 'png'] as const;
export type DrawingFormat = (typeof drawingFormats)[number];

/** What the desk asks of the browser around it. */
export interface ShareHost {
  readonly download: (name: string, type: string, content: string | Uint8Array) => void;
  readonly today: () => string;
  readonly now: () => Date;
  /** Of the editor, without anything after the #. */
  readonly address: () => string;
  readonly copy: (text: string) => Promise<void>;
}

const subjectOfPick = (
  editor: EditorState
): { readonly subject: Subject; readonly name: string } | null => {
  const { pick } = editor;
  if (pick === null) return null;
  const { index, document } = editor.documents.study;
  if (pick.kind === 'wire')
    return { subject: pick, name: `wire ${document.wires[pick.id]?.number ?? ''}` };
  const part =
    pick.kind === 'part' ? index.partById.get(pick.id) : index.terminalByKey.get(pick.id)?.part;
  return part === undefined
    ? null
    : { subject: { kind: 'part', id: part.id }, name: part.reference };
};

export class ShareDesk {
  /** What goes along although it is private. */
  along = $state.raw<ReadonlySet<PrivateThing>>(new Set());
  link = $state.raw<ShareLink | null>(null);
  which = $state<SheetDrawing>('diagram');
  face = $state<Face>('below');
  onlyPick = $state(false);
  format = $state<DrawingFormat>('pdf');
  theme = $state<PaperTheme>('print');
  paper = $state<PaperName>('A4');
  /** 'fit', or millimetres of paper for one of the set. */
  scale = $state<'fit' | number>('fit');
  across = $state(1);
  dotsPerInch = $state(200);
  /** What is being made, in words, or null. */
  busy = $state<string | null>(null);
  /** What the last file or its preview had to say. */
  remarks = $state.raw<readonly string[]>([]);
  preview = $state.raw<{ readonly url: string; readonly words: string } | null>(null);
  readonly compare: CompareDesk;
  readonly #editor: EditorState;
  readonly #desk: FileDesk;
  readonly #host: ShareHost;

  constructor(editor: EditorState, desk: FileDesk, host: ShareHost) {
    this.#editor = editor;
    this.#desk = desk;
    this.#host = host;
    this.compare = new CompareDesk(editor, desk);
  }

  /** What would be drawn if only what is picked were; null where nothing is. */
  get picked(): string | null {
    return subjectOfPick(this.#editor)?.name ?? null;
  }

  get copyOfDocument(): ChassisDocument {
    this.#editor.schedule.leave();
    return buildShareCopy(this.#editor.documents.document, this.along);
  }

  let(thing: PrivateThing, goes: boolean): void {
    const along = new Set(this.along);
    if (goes) along.add(thing);
    else along.delete(thing);
    this.along = along;
    this.link = null;
  }

  makeLink(): void {
    this.link = buildShareLink(this.#host.address(), this.copyOfDocument);
  }

  async copyLink(): Promise<void> {
    if (this.link === null || !this.link.ok) return;
    try {
      await this.#host.copy(this.link.link);
      this.#editor.tell('the link is on the clipboard');
    } catch {
      this.#editor.tell(
        'the browser did not let the link be copied: mark it in the field and copy it'
      );
    }
  }

  /** Runs one piece of work at a time, says what goes wrong, and never leaves `busy` behind. */
  async #work(words: string, run: () => Promise<void>): Promise<void> {
    if (this.busy !== null) return;
    this.busy = words;
    this.remarks = [];
    try {
      await run();
    } catch (error) {
      const why = error instanceof Error ? error.message : String(error);
      this.remarks = [`not made: ${why}`];
      this.#editor.tell(`not made: ${why}`);
    } finally {
      this.busy = null;
    }
  }

  #save(ending: string, type: string, content: string | Uint8Array): void {
    const name = fileNameOf(this.#editor.documents.document.identity.title, ending);
    this.#host.download(name, type, content);
    this.#editor.tell(`${name} saved`);
  }

  async #drawing(which: SheetDrawing, withFoot: boolean): Promise<DisplayList> {
    const { diagram, documents } = this.#editor;
    const piece = this.onlyPick ? subjectOfPick(this.#editor) : null;
    const date = this.#host.today();
    const list = await diagram.drawingFor(which, {
      face: this.face,
      withFoot: withFoot && piece === null,
      date
    });
    if (list === null) throw new Error('the drawing is not there yet: try again in a moment');
    if (piece === null || !withFoot) return list;
    const { cropToPick } = works;
    const cropped = cropToPick(list, [piece.subject], documents.document, {
      name: piece.name,
      date
    });
    if (cropped === null)
      throw new Error(`${piece.name} is not on this drawing: choose the other one`);
    return cropped;
  }

  async #picturesOf(
    list: DisplayList,
    asJpeg: boolean
  ): Promise<(asset: PictureAsset) => PictureFile | undefined> {
    const assets = list.items.flatMap(({ shape }) =>
      shape.kind === 'picture' ? [shape.asset] : []
    );
    const find = await this.#editor.photos.filesOf(assets);
    if (!asJpeg) return find;
    const { toJpeg } = works;
    const files = new Map<string, PictureFile | undefined>();
    for (const asset of assets) {
      const file = find(asset);
      files.set(asset.key, file && (await toJpeg(file)));
    }
    return ({ key }) => files.get(key);
  }

  get paperWish(): PaperWish {
    return { paper: this.paper, scale: this.scale, across: this.scale === 'fit' ? this.across : 1 };
  }

  saveDrawing(): Promise<void> {
    return this.#work(`making the ${this.format.toUpperCase()}`, async () => {
      const list = await this.#drawing(this.which, true);
      const suffix = `${this.which === 'pictorial' ? `-${this.face}` : ''}${this.onlyPick && this.picked !== null ? '-piece' : ''}`;
      const { identity } = this.#editor.documents.document;
      if (this.format === 'svg') {
        const { toSvg } = works;
        const svg = toSvg(list, {
          theme: this.theme,
          title: identity.title,
          metadata: metadataForSvg(saveDocument(this.copyOfDocument)),
          pictures: await this.#picturesOf(list, false)
        });
        this.#save(`${suffix}.svg`, 'image/svg+xml', svg);
      } else if (this.format === 'png') await this.#savePng(list, suffix);
      else await this.#savePdf(list, suffix);
    });
  }

  async #savePng(list: DisplayList, suffix: string): Promise<void> {
    const { writePng, pngSize, decodePictures } = works;
    const size = pngSize(list, this.dotsPerInch);
    const pictures = await decodePictures(list, await this.#picturesOf(list, false));
    const png = await writePng(list, this.dotsPerInch, this.theme, pictures);
    if (png === null)
      throw new Error(
        `the browser gave no canvas of ${size.width} x ${size.height}: choose fewer dots`
      );
    this.#save(`${suffix}.png`, 'image/png', png);
    this.remarks = [
      `${size.width} x ${size.height} pixels, ${size.dotsPerInch} dots an inch${size.isLimited ? ': more than that a browser does not paint' : ''}`
    ];
  }

  async #savePdf(list: DisplayList, suffix: string): Promise<void> {
    const { toPdf, loadFace } = await latePdf.load();
    const { layOnPaper, cautionsFor } = works;
    const { document } = this.#editor.documents;
    const { bytes, sheets, remarks } = await toPdf(list, {
      theme: this.theme,
      title: document.identity.title,
      ...(document.identity.tracedBy === undefined ? {} : { author: document.identity.tracedBy }),
      plan: layOnPaper(list.bounds, this.paperWish),
      isToScale: this.which === 'pictorial',
      caution: cautionsFor(document)[0]?.short ?? '',
      date: this.#host.now(),
      loadFace,
      pictures: await this.#picturesOf(list, true)
    });
    this.#save(`${suffix}.pdf`, 'application/pdf', bytes);
    this.remarks = [`${sheets} ${sheets === 1 ? 'sheet' : 'sheets'} of ${this.paper}`, ...remarks];
  }

  /** How the drawing would come out, and on how many sheets. */
  showPreview(): Promise<void> {
    return this.#work('drawing the preview', async () => {
      const list = await this.#drawing(this.which, true);
      const { toSvg, layOnPaper, sheetOutlines } = works;
      const plan = this.format === 'pdf' ? layOnPaper(list.bounds, this.paperWish) : null;
      const svg = toSvg(plan === null ? list : sheetOutlines(list, plan), {
        theme: this.theme,
        title: this.#editor.documents.document.identity.title,
        pictures: await this.#picturesOf(list, false)
      });
      this.closePreview();
      const url = URL.createObjectURL(new Blob([svg], { type: 'image/svg+xml' }));
      const sheets =
        plan === null
          ? ''
          : `, ${plan.windows.length} ${plan.windows.length === 1 ? 'sheet' : 'sheets'} of ${this.paper}`;
      this.preview = {
        url,
        words: `${this.which === 'diagram' ? 'Diagram' : `To scale, from ${this.face}`}${sheets}`
      };
    });
  }

  closePreview(): void {
    if (this.preview !== null) URL.revokeObjectURL(this.preview.url);
    this.preview = null;
  }

  savePage(): Promise<void> {
    return this.#work('making the page', async () => {
      const { buildPage, buildStudy, runChecks } = works;
      const copy = this.copyOfDocument;
      const isPlaced = Object.values(copy.parts).some(({ place }) => place !== undefined);
      const whole = this.onlyPick;
      this.onlyPick = false;
      const diagram = await this.#drawing('diagram', false);
      const scale = isPlaced ? await this.#drawing('pictorial', false) : null;
      this.onlyPick = whole;
      const kept = await gatherPictures([copy], this.#editor.pictures);
      const shown = scale === null ? undefined : await this.#picturesOf(scale, false);
      const study = buildStudy(copy);
      const page = buildPage(study, runChecks(study), {
        drawings: [
          { name: 'Diagram', list: diagram },
          ...(scale === null ? [] : [{ name: `To scale, from ${this.face}`, list: scale }])
        ],
        ...(shown === undefined ? {} : { pictures: shown }),
        photos: (hash) => kept.get(hash),
        date: this.#host.today()
      });
      this.#save('.html', 'text/html', page);
      this.remarks = [`${Math.ceil(page.length / 1000)} kB`];
    });
  }

  saveSchedule(format: 'csv' | 'xlsx'): Promise<void> {
    return this.#work('writing the schedule', async () => {
      const { findings } = this.#editor.documents;
      const study = works.buildStudy(this.copyOfDocument);
      const rows = works.buildSchedule(study, findings);
      if (format === 'csv') this.#save('-schedule.csv', 'text/csv', works.scheduleToCsv(rows));
      else {
        const book = await works.scheduleToXlsx(study, rows, works.makeWholePlan(study));
        const type = 'application/vnd.openxmlformats-officedocument.spreadsheetml.sheet';
        this.#save('-schedule.xlsx', type, new Uint8Array(await book.arrayBuffer()));
      }
    });
  }

  /** The chassis itself, with its pictures where it has any. */
  saveCopy(): Promise<void> {
    return this.#work('packing the copy', async () => {
      const copy = this.copyOfDocument;
      const pictures = await gatherPictures([copy], this.#editor.pictures);
      if (pictures.size === 0)
        this.#save(`-shared${documentEnding}`, 'application/json', saveDocument(copy));
      else {
        const { buildChassisZip } = works;
        this.#save(`-shared${zipEnding}`, 'application/zip', buildChassisZip([copy], pictures));
      }
    });
  }

  openCompare(): void {
    this.#editor.openLeaf('compare');
  }

  get desk(): FileDesk {
    return this.#desk;
  }
}
