import { beforeAll, describe, expect, it } from 'vitest';
import { runChecks } from '#checks/index.ts';
import { applyEdit, documentTextFromSvg, type ChassisDocument } from '#document/index.ts';
import { addElement, connectEnd, setWireFields } from '#document/edits.ts';
import { layOutHere, type LayOut, type LayoutTask } from '#editor/sheet/lay-out.ts';
import { DiagramState, type DiagramView } from '#editor/sheet/diagram-state.svelte.ts';
import { lateSheet } from '#editor/sheet/late-sheet.ts';
import { hasSameStructure } from '#editor/sheet/same-structure.ts';
import { buildStudy } from '#study/index.ts';
import { chassis } from '../helpers/chassis.ts';
import { layoutEngine } from '../helpers/layout-engine.ts';

beforeAll(() => lateSheet.load());

const start = chassis('Bench set')
  .unit('Main chassis', { size: [430, 300] })
  .tube('V1', '6CG7', { at: [60, 60] })
  .strip('TS1', 5, { at: [120, 60], grounded: [3] })
  .strip('TS2', 5, { at: [180, 60] })
  .wire(12, 'V1-1', 'TS1-2', { dcV: 285 })
  .wire(13, 'TS1-2', 'TS2-1')
  .wire(14, 'V1-3', 'TS1-3')
  .build();

const edited = (document: ChassisDocument, ...edits: Parameters<typeof applyEdit>[1][]) =>
  edits.reduce((current, edit) => {
    const applied = applyEdit(current, edit);
    if (!applied.ok) throw new Error(applied.problem);
    return applied.document;
  }, document);

const viewOf = (document: ChassisDocument): DiagramView => {
  const study = buildStudy(document);
  return { study, findings: runChecks(study), isMarked: () => true };
};

const wire = (number: string): string =>
  Object.values(start.wires).find((candidate) => candidate.number === number)!.id;
const terminal = (label: string) => {
  const study = buildStudy(start);
  const entry = study.index.terminals.find(
    ({ part, terminal: { name } }) => `${part.reference}-${name}` === label
  )!;
  return { part: entry.part.id, terminal: entry.terminal.id };
};

/** The real layout, counting how often it is asked. */
const buildLayOut = () => {
  const asked: LayoutTask[] = [];
  const layOut: LayOut = (task, watch) => {
    asked.push(task);
    return layOutHere(layoutEngine)(task, watch);
  };
  return { layOut, asked: () => asked.length, tasks: asked };
};

const settled = async (state: DiagramState): Promise<void> => {
  while (state.progress !== null) await new Promise((resolve) => setTimeout(resolve, 5));
};

const styleOfWire = (state: DiagramState, id: string): string | undefined =>
  state.list?.items.find(
    ({ layer, subject, style }) =>
      layer === 'wires' && subject?.kind === 'wire' && subject.id === id && !style.includes('halo')
  )?.style;

describe('the diagram on the sheet', () => {
  it('lays out once, and only draws again when nothing but values changed', async () => {
    const { layOut, asked } = buildLayOut();
    const state = new DiagramState(layOut);
    state.show(viewOf(start));
    expect(state.list).toBeNull();
    await settled(state);
    expect(state.list!.items.length).toBeGreaterThan(20);
    const before = asked();
    const placesOf = (): unknown =>
      state.list!.items.filter(({ layer }) => layer === 'wires').map(({ shape }) => shape);
    const places = placesOf();
    expect(styleOfWire(state, wire('12'))).toBe('wire.600');

    state.show(viewOf(edited(start, setWireFields(wire('12'), { carries: { dcV: 18_000 } }))));
    expect(state.progress).toBeNull();
    expect(styleOfWire(state, wire('12'))).toBe('wire.20k+');
    // The heaviest class has a halo of its own; the wires themselves lie where they lay.
    expect(placesOf()).toEqual(expect.arrayContaining(places as unknown[]));
    expect(asked()).toBe(before);
  });

  it('lays out anew when a wire ends elsewhere, and keeps the old drawing until then', async () => {
    const { layOut, asked } = buildLayOut();
    const state = new DiagramState(layOut);
    state.show(viewOf(start));
    await settled(state);
    const [before, old] = [asked(), state.list];
    state.show(viewOf(edited(start, connectEnd(wire('13'), 'to', terminal('TS2-4'), 'seen'))));
    expect(state.list).toBe(old);
    expect(state.progress).not.toBeNull();
    await settled(state);
    expect(asked()).toBeGreaterThan(before);
    expect(state.list).not.toBe(old);
  });

  it('catches up with edits that came while it was at work', async () => {
    const { layOut } = buildLayOut();
    const state = new DiagramState(layOut);
    state.show(viewOf(start));
    state.show(viewOf(edited(start, setWireFields(wire('12'), { carries: { dcV: 18_000 } }))));
    await settled(state);
    expect(styleOfWire(state, wire('12'))).toBe('wire.20k+');
  });

  it('stops when told to, says so, and begins again only when asked', async () => {
    const { layOut } = buildLayOut();
    const state = new DiagramState(layOut);
    state.show(viewOf(start));
    state.stop();
    await settled(state);
    expect(state.list).toBeNull();
    expect(state.problem).toContain('stopped');
    state.show(viewOf(edited(start, setWireFields(wire('12'), { number: '12a' }))));
    expect(state.progress).toBeNull();
    state.again();
    await settled(state);
    expect(state.problem).toBeNull();
    expect(state.list).not.toBeNull();
  });

  it('says what went wrong when the layout fails', async () => {
    const state = new DiagramState(() => Promise.reject(new Error('out of paper')));
    state.show(viewOf(start));
    await settled(state);
    expect(state.problem).toMatch(/^The drawing could not be laid out: .*out of paper/);
  });

  it('writes a drawing that carries the document as it is now', async () => {
    const { layOut } = buildLayOut();
    const state = new DiagramState(layOut);
    state.show(viewOf(start));
    expect(state.toSvg('2026-11-25')).toBeNull();
    await settled(state);
    const now = edited(start, setWireFields(wire('12'), { number: '12a' }));
    state.show(viewOf(now));
    const found = documentTextFromSvg(state.toSvg('2026-11-25')!);
    expect(found.ok && found.text).toContain('"12a"');
  });
});

describe('the structure that a layout rests on', () => {
  it('is the same after values changed, and after an edit and its undo', () => {
    const later = edited(
      start,
      setWireFields(wire('12'), { carries: { amps: 1 }, found: { colour: 'red' }, state: 'tagged' })
    );
    expect(hasSameStructure(start, later)).toBe(true);
    const moved = edited(start, connectEnd(wire('13'), 'to', terminal('TS2-4'), 'seen'));
    const back = edited(moved, connectEnd(wire('13'), 'to', terminal('TS2-1'), 'seen'));
    expect(hasSameStructure(start, moved)).toBe(false);
    expect(hasSameStructure(start, back)).toBe(true);
  });

  it('is another with one more wire, one less, or another document', () => {
    const more = edited(start, addElement('wire', { ...start.wires[wire('12')]!, id: 'wnew' }));
    expect(hasSameStructure(start, more)).toBe(false);
    expect(hasSameStructure(more, start)).toBe(false);
    expect(hasSameStructure(start, { ...start, id: 'dother' })).toBe(false);
  });
});
