// The drawing on the sheet. The diagram is laid out in a worker when what is joined to what has changed,
// and only drawn again when nothing but values did; the old one stays until the new one is there. The
// pictorial needs no layout: it is drawn to scale from places.
import type { Finding } from '#checks/index.ts';
import { metadataForSvg, saveDocument, type ChassisDocument } from '#document/index.ts';
import type { ChangeMark, ChangeNames } from '#drawing/mark-changes.ts';
import type {
  Diagram,
  DisplayList,
  Face,
  PictorialOptions,
  PictureAsset,
  SvgOptions
} from '#drawing/index.ts';
import { LayoutError } from '#drawing/layout/layout-options.ts';
import { plainLook, type Colouring, type Leavable, type Look } from '#drawing/look.ts';
import type { Study } from '#study/index.ts';
import type { Scene } from '../tools/scene.ts';
import { lateSheet } from './late-sheet.ts';
import type { LayOut } from './lay-out.ts';
import { LayoutMemory, type LayoutKeeping } from './layout-memory.ts';
import { hasSameStructure } from './same-structure.ts';

export interface LayoutStanding {
  readonly done: number;
  readonly total: number;
  readonly words: string;
}

/** What is to be seen on the sheet. */
export interface DiagramView {
  readonly study: Study;
  readonly findings: readonly Finding[];
  readonly isMarked: (finding: Finding) => boolean;
}

/** The two drawings of a chassis: laid out to be read, and to scale. */
export const sheetDrawings = ['diagram', 'pictorial'] as const;
export type SheetDrawing = (typeof sheetDrawings)[number];

/** How long a layout may take before it is given up. */
const timeLimitMs = 30_000;

export class DiagramState {
  list = $state.raw<DisplayList | null>(null);
  which = $state<SheetDrawing>('diagram');
  /** What the colour of the wires tells, and what is left out of the drawing on screen. */
  look = $state.raw<Look>(plainLook);
  /** From which side the drawing to scale is seen. */
  face = $state<Face>('below');
  /** The diagram as it is on the sheet; null while there is none, or the drawing to scale is shown. */
  shown = $state.raw<Diagram | null>(null);
  /** Where things lie in the drawing to scale; null while the diagram is shown. */
  scene = $state.raw<Scene | null>(null);
  progress = $state.raw<LayoutStanding | null>(null);
  /** Why the drawing is not up to date, in words, or null. */
  problem = $state<string | null>(null);
  readonly #layOutIn: LayOut;
  readonly #memory: LayoutMemory;
  #laidOut: { readonly diagram: Diagram; readonly document: ChassisDocument } | null = null;
  #view: DiagramView | null = null;
  #marks: readonly ChangeMark[] = [];
  #markNames: ChangeNames = {};
  /** The layout that is under way, and what for. */
  #running: { readonly document: ChassisDocument; readonly stop: AbortController } | null = null;
  /** What was given up, so that it is not begun again by itself. */
  #givenUp: ChassisDocument | null = null;

  /** @param keeping where layouts lie between visits; null where nowhere */
  constructor(layOut: LayOut, keeping: LayoutKeeping | null = null) {
    this.#layOutIn = layOut;
    this.#memory = new LayoutMemory(keeping);
  }

  /** Shows a study: at once where it has the structure that is laid out, else after a layout. */
  show(view: DiagramView): void {
    this.#view = view;
    const works = lateSheet.value;
    if (works === null) {
      void this.#fetchWorks();
      return;
    }
    const { document } = view.study;
    if (this.which === 'pictorial') {
      const geometry = works.layPictorial(view.study, this.face);
      this.scene = works.buildScene(view.study, geometry, this.face);
      const list = works.drawPictorial(view.study, geometry, this.#pictorialOptions(view, false));
      this.list = this.#marked(works.applyLook(list, view.study, view.findings, this.look));
      return;
    }
    if (this.#laidOut !== null && hasSameStructure(this.#laidOut.document, document)) {
      this.#draw();
      if (this.#running === null) this.problem = null;
      return;
    }
    if (this.#laidOut?.document.id !== document.id) this.#forget(document);
    // A layout under way is let come to its end: the next takes it up and adds to it.
    if (this.#running !== null || this.#isGivenUp(document)) return;
    void this.#layOut(document);
  }

  /** Turns to the other drawing of the same chassis. */
  choose(which: SheetDrawing): void {
    if (which === this.which) return;
    this.which = which;
    this.list = null;
    this.scene = null;
    this.shown = null;
    if (this.#view !== null) this.show(this.#view);
  }

  /** Has the colour of the wires tell something else; exports still tell the class. */
  colourBy(colouring: Colouring): void {
    this.#lookAt({ ...this.look, colouring });
  }

  /** Leaves something out of the drawing on screen, or shows it again. */
  toggle(what: Leavable): void {
    const others = [...this.look.without].filter((one) => one !== what);
    const isShown = others.length === this.look.without.length;
    this.#lookAt({ ...this.look, without: isShown ? [...others, what] : others });
  }

  #lookAt(look: Look): void {
    this.look = look;
    if (this.#view !== null) this.show(this.#view);
  }

  /** Turns the drawing to scale over: from above, right and left trade places. */
  turnOver(): void {
    this.face = this.face === 'below' ? 'above' : 'below';
    if (this.#view !== null) this.show(this.#view);
  }

  #pictorialOptions(
    { findings, isMarked }: DiagramView,
    withFoot: boolean,
    date?: string
  ): PictorialOptions {
    return {
      findings,
      face: this.face,
      withLengths: true,
      withFoot,
      ...(withFoot ? {} : { isMarked }),
      ...(date === undefined ? {} : { date })
    };
  }

  /** Ends the layout under way; what is drawn stays. */
  stop(): void {
    this.#running?.stop.abort();
  }

  /** Lays out everything anew, whether it was given up before or not. */
  again(): void {
    this.#givenUp = null;
    if (this.#view === null || this.#running !== null) return;
    void this.#layOut(this.#view.study.document, true);
  }

  /** The drawing as a file, with legend, cautions, notes and the document inside; null before there is one.
   *  @param date for the title block
   *  @param pictures the photos' files; without them frames stand for them */
  toSvg(date: string, pictures?: SvgOptions['pictures']): string | null {
    const list = this.#sheetWithFoot(date);
    const works = lateSheet.value;
    if (this.#view === null || list === null || works === null) return null;
    const { study } = this.#view;
    const { document } = study;
    return works.toSvg(list, {
      theme: 'print',
      title: document.identity.title,
      description: `${this.which === 'diagram' ? 'Wiring diagram' : 'Chassis drawn to scale'}: ${study.index.wires.length} wires, ${study.index.parts.length} parts.`,
      metadata: metadataForSvg(saveDocument(document)),
      ...(pictures === undefined ? {} : { pictures })
    });
  }

  /** Either drawing of what is there, to be written to a file: laid out where it has not been yet. Null before
   *  there is anything to draw.
   *  @param wishes.date for the title block */
  async drawingFor(
    which: SheetDrawing,
    wishes: { readonly face: Face; readonly withFoot: boolean; readonly date: string }
  ): Promise<DisplayList | null> {
    if (this.#view === null) return null;
    const { study, findings } = this.#view;
    const works = await lateSheet.load();
    const { date, withFoot, face } = wishes;
    if (which === 'pictorial') {
      const geometry = works.layPictorial(study, face);
      return works.drawPictorial(study, geometry, {
        findings,
        face,
        date,
        withFoot,
        withLengths: true
      });
    }
    if (this.#laidOut === null || !hasSameStructure(this.#laidOut.document, study.document)) {
      const { document } = study;
      const layout =
        (await this.#memory.recall(document)) ??
        (await this.#layOutIn(
          { document, before: null, timeLimitMs },
          { signal: new AbortController().signal, onProgress: () => undefined }
        ));
      this.#laidOut = { diagram: works.takeUpDiagram(layout, study), document };
    }
    return works.buildDisplayList(works.redressDiagram(this.#laidOut.diagram, study), {
      findings,
      date,
      withFoot
    });
  }

  /** Marks what differs from another document, or nothing; what is drawn is drawn again with them. */
  mark(marks: readonly ChangeMark[], names: ChangeNames = {}): void {
    this.#marks = marks;
    this.#markNames = names;
    if (this.#view !== null) this.show(this.#view);
  }

  #marked(list: DisplayList): DisplayList {
    const works = lateSheet.value;
    if (works === null || this.#marks.length === 0) return list;
    return works.markChanges(list, this.#marks, this.#markNames);
  }

  /** The pictures that the drawing on the sheet shows. */
  get pictures(): readonly PictureAsset[] {
    return (this.list?.items ?? []).flatMap(({ shape }) =>
      shape.kind === 'picture' ? [shape.asset] : []
    );
  }

  #sheetWithFoot(date: string): DisplayList | null {
    const works = lateSheet.value;
    if (this.#view === null || works === null) return null;
    if (this.which === 'diagram') return this.#diagramSheet(this.#view, date);
    const { study } = this.#view;
    const geometry = works.layPictorial(study, this.face);
    return works.drawPictorial(study, geometry, this.#pictorialOptions(this.#view, true, date));
  }

  #diagramSheet({ study, findings }: DiagramView, date: string): DisplayList | null {
    const works = lateSheet.value;
    if (
      works === null ||
      this.#laidOut === null ||
      !hasSameStructure(this.#laidOut.document, study.document)
    )
      return null;
    return works.buildDisplayList(works.redressDiagram(this.#laidOut.diagram, study), {
      findings,
      date
    });
  }

  #isGivenUp(document: ChassisDocument): boolean {
    return this.#givenUp !== null && hasSameStructure(this.#givenUp, document);
  }

  /** Another document: its drawing must not be mistaken for this one. */
  #forget(document: ChassisDocument): void {
    this.list = null;
    this.shown = null;
    this.#laidOut = null;
    if (this.#running !== null && this.#running.document.id !== document.id) this.stop();
  }

  #draw(): void {
    const works = lateSheet.value;
    if (works === null || this.#laidOut === null || this.#view === null) return;
    const { study, findings, isMarked } = this.#view;
    const diagram =
      this.#laidOut.diagram.plan.study === study
        ? this.#laidOut.diagram
        : works.redressDiagram(this.#laidOut.diagram, study);
    this.#laidOut = { diagram, document: study.document };
    this.shown = diagram;
    const list = works.buildDisplayList(diagram, { findings, isMarked, withFoot: false });
    this.list = this.#marked(works.applyLook(list, study, findings, this.look));
  }

  async #layOut(document: ChassisDocument, isAnew = false): Promise<void> {
    const study = this.#view?.study;
    if (study === undefined) return;
    const running = { document, stop: new AbortController() };
    this.#running = running;
    this.problem = null;
    this.progress = { done: 0, total: 1, words: 'reading the chassis' };
    try {
      const works = await lateSheet.load();
      const known = isAnew ? null : await this.#memory.recall(document);
      const before = isAnew || this.#laidOut?.document.id !== document.id ? null : this.#laidOut;
      const layout =
        known ??
        (await this.#layOutIn(
          { document, before: before?.diagram.laidOut ?? null, timeLimitMs },
          {
            signal: running.stop.signal,
            onProgress: ({ done, of, name }) => {
              this.progress = { done, total: of, words: name };
            }
          }
        ));
      const diagram = works.takeUpDiagram(layout, study);
      this.#laidOut = { diagram, document };
      if (!known) void this.#memory.keep(document, layout);
    } catch (error) {
      this.#giveUp(document, error);
    }
    this.#running = null;
    this.progress = null;
    // Edits may have come while it was at work.
    if (this.#view !== null) this.show(this.#view);
  }

  /** Shows what is to be shown once there is something to draw it with. */
  async #fetchWorks(): Promise<void> {
    try {
      await lateSheet.load();
    } catch {
      this.problem = 'What draws the sheet could not be fetched: load the page again to see it.';
      return;
    }
    if (this.#view !== null) this.show(this.#view);
  }

  #giveUp(document: ChassisDocument, error: unknown): void {
    const current = this.#view?.study.document;
    // Stopped because another document was opened: nothing to say.
    if (current?.id !== document.id) return;
    this.#givenUp = document;
    const why =
      error instanceof LayoutError || error instanceof Error ? error.message : String(error);
    this.problem =
      error instanceof LayoutError && error.why === 'stopped'
        ? 'The layout was stopped: the drawing does not show the last changes.'
        : `The drawing could not be laid out: ${why}`;
  }
}
