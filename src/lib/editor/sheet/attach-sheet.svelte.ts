// Ties the sheet's element to its view: pointers, wheel and keys go in, the canvas follows. All that
// decides anything is elsewhere; here is only the wiring.
import { untrack } from 'svelte';
import type { ThemeName } from '#drawing/inks.ts';
import type { EditorState } from '../core/editor-state.svelte.ts';
import {
  restingGesture,
  stepGesture,
  wheelFactor,
  type GestureAction,
  type PointerInput
} from './gesture.ts';
import { createKonvaWriter } from './konva-writer.ts';
import { sheetCommandOf } from './sheet-keys.ts';
import type { SheetView } from './sheet-view.svelte.ts';
import type { DiagramHand } from '../diagram/diagram-hand.svelte.ts';
import type { ToolDesk } from '../tools/tool-desk.svelte.ts';
import type { Modifiers } from '../tools/tool.ts';
import type { Place } from './viewport.ts';

/** How much nearer two quick presses bring the paper. */
const doubleZoom = 2;

const faces = ['400', '600'].flatMap((weight) =>
  ['Sans', 'Mono'].map((face) => `${weight} 12px "IBM Plex ${face}"`)
);

/** Wires up `host`, inside the effect of an attachment; returns what takes everything down again. */
export const attachSheet = (
  host: HTMLDivElement,
  view: SheetView,
  editor: EditorState
): (() => void) => {
  const writer = untrack(() =>
    createKonvaWriter(host, themeOf(editor), editor.photos.assets.bitmapOf)
  );

  $effect(() => {
    writer.apply(view.list);
    writer.setCulling(view.hits.within);
    untrack(() => {
      view.newDrawing();
      view.isDrawn = true;
    });
  });
  $effect(() => writer.setViewport(view.viewport, view.size, view.marks));
  $effect(() => {
    void view.list;
    writer.setLit(editor.lit === null ? null : (item) => view.lightOf(item));
  });
  $effect(() => writer.setTheme(themeOf(editor)));
  $effect(() => writer.setPreview(handOf(editor).preview));
  $effect(() => {
    if (editor.photos.assets.arrivals > 0) writer.repaint();
  });
  $effect(() => {
    editor.tools.pxPerMm = view.viewport.scale;
  });

  const watch = new ResizeObserver(() => {
    view.setSize({ width: host.clientWidth, height: host.clientHeight });
  });
  watch.observe(host);
  // Text drawn before its face has come would stay in the wrong one.
  void Promise.all(faces.map((face) => document.fonts.load(face))).then(() => {
    writer.setTheme(themeOf(editor));
  });
  const stopListening = listen(host, view, editor);
  view.focus = () => host.focus();
  return () => {
    stopListening();
    watch.disconnect();
    writer.destroy();
    view.isDrawn = false;
  };
};

/** What moves things on the sheet: the tools of the drawing to scale, or the hand in the diagram. */
const handOf = ({ tools, hand }: EditorState): ToolDesk | DiagramHand =>
  tools.isOpen ? tools : hand;

const themeOf = ({ isDark }: EditorState): ThemeName => (isDark ? 'dark' : 'light');

const listen = (host: HTMLDivElement, view: SheetView, editor: EditorState): (() => void) => {
  const stop = new AbortController();
  const { signal } = stop;
  let gesture = restingGesture;
  const { tools } = editor;
  const hand = () => handOf(editor);
  /** The tool has taken the drag that is under way. */
  let isClaimed = false;
  let modifiers: Modifiers = { shift: false, alt: false, ctrl: false };

  const placeOf = (event: MouseEvent): Place => {
    const box = host.getBoundingClientRect();
    return { x: event.clientX - box.left, y: event.clientY - box.top };
  };

  /** Whether the tool wants to know of pointers: not while a field of the schedule asks for one. */
  const toTool = (): boolean => hand().isOpen && editor.awaits === null;
  const send = (kind: 'hover' | 'tap' | 'grab' | 'drag' | 'drop', at: Place, touch: boolean) =>
    hand().send({ kind, ...view.pointerAt(at, touch), touch, ...modifiers });

  const act = (action: GestureAction): void => {
    switch (action.kind) {
      case 'pan':
        view.hover = null;
        return view.pan(action.dx, action.dy);
      case 'zoom':
        return view.zoomBy(action.factor, action.at);
      case 'drag': {
        view.hover = null;
        const { from, at, dx, dy, touch } = action;
        if (action.begins && action.button === 0 && toTool()) {
          isClaimed = send('grab', from, touch);
        }
        if (isClaimed) send('drag', at, touch);
        else view.pan(dx, dy);
        return;
      }
      case 'drop':
        if (isClaimed) send('drop', action.at, false);
        isClaimed = false;
        return;
      case 'give-up':
        if (isClaimed) hand().send({ kind: 'give-up' });
        isClaimed = false;
        return;
      case 'hover':
        if (toTool()) send('hover', action.at, false);
        return hoverAt(view, action.at);
      case 'tap': {
        if (toTool()) {
          send('tap', action.at, action.touch);
          return;
        }
        const item = view.itemAt(action.at, action.touch);
        return editor.pickFromSheet(item?.subject ?? null);
      }
    }
  };

  const onPointer =
    (kind: PointerInput['kind']) =>
    (event: PointerEvent): void => {
      if (kind === 'down') host.setPointerCapture(event.pointerId);
      modifiers = modifiersOf(event);
      const step = stepGesture(gesture, {
        kind,
        pointer: event.pointerId,
        ...placeOf(event),
        button: event.button,
        touch: event.pointerType === 'touch'
      });
      gesture = step.state;
      for (const action of step.actions) act(action);
    };

  host.addEventListener('pointerdown', onPointer('down'), { signal });
  host.addEventListener('pointermove', onPointer('move'), { signal });
  host.addEventListener('pointerup', onPointer('up'), { signal });
  host.addEventListener('pointercancel', onPointer('cancel'), { signal });
  host.addEventListener(
    'pointerleave',
    () => {
      view.hover = null;
      if (!isClaimed) hand().send({ kind: 'give-up' });
    },
    { signal }
  );
  // While a field of the schedule waits for a terminal, the press must not take its focus away.
  host.addEventListener(
    'mousedown',
    (event) => {
      if (editor.awaits !== null || event.button === 1) event.preventDefault();
    },
    { signal }
  );
  host.addEventListener(
    'dblclick',
    (event) => {
      // Quick presses with a tool in the hand are meant for the tool.
      if (!tools.isOpen) view.zoomBy(doubleZoom, placeOf(event));
    },
    { signal }
  );
  host.addEventListener(
    'wheel',
    (event) => {
      event.preventDefault();
      view.zoomBy(wheelFactor(event.deltaY, event.deltaMode, event.ctrlKey), placeOf(event));
    },
    { signal, passive: false }
  );
  host.addEventListener(
    'keydown',
    (event) => {
      if (toTool() && hand().send({ kind: 'key', key: event.key, ...modifiersOf(event) })) {
        event.preventDefault();
        event.stopPropagation();
        return;
      }
      if (event.ctrlKey || event.metaKey || event.altKey) return;
      const command = sheetCommandOf(event.key, event.shiftKey);
      if (command === null) {
        // On the diagram a tool's letter turns to where the tool works.
        const tool = tools.isOpen ? null : tools.toolOf(event.key);
        if (tool === null) return;
        event.preventDefault();
        editor.takeTool(tool.id);
        return;
      }
      event.preventDefault();
      if (command.kind === 'zoom') view.zoomBy(command.factor);
      else if (command.kind === 'fit') view.fit();
      else if (command.kind === 'closer') view.lookCloser();
      else if (command.kind === 'pan') view.pan(command.dx, command.dy);
      else if (command.kind === 'next-wire') editor.pickNextWire(command.by);
      else editor.letGo();
    },
    { signal }
  );
  return () => stop.abort();
};

const modifiersOf = (event: MouseEvent | KeyboardEvent): Modifiers => ({
  shift: event.shiftKey,
  alt: event.altKey,
  ctrl: event.ctrlKey || event.metaKey
});

const hoverAt = (view: SheetView, at: Place): void => {
  const item = view.itemAt(at, false);
  const title = item?.title;
  view.hover = title === undefined ? null : { title, ...at };
};
