// Pointers on the sheet as a plain state machine: what goes in are pointer events reduced to
// numbers, what comes out is what the sheet shall do. No DOM, so every gesture is tested in Node.
import type { Place } from './viewport.ts';

export interface PointerInput {
  readonly kind: 'down' | 'move' | 'up' | 'cancel';
  readonly pointer: number;
  readonly x: number;
  readonly y: number;
  /** 0 is the main button, 1 the middle one. */
  readonly button?: number;
  readonly touch?: boolean;
}

export type GestureAction =
  | { readonly kind: 'pan'; readonly dx: number; readonly dy: number }
  | { readonly kind: 'zoom'; readonly factor: number; readonly at: Place }
  | { readonly kind: 'tap'; readonly at: Place; readonly touch: boolean }
  | { readonly kind: 'hover'; readonly at: Place };

export interface GestureState {
  readonly down: ReadonlyMap<number, Place>;
  /** Where the first pointer went down, while it may still become a tap. */
  readonly tapFrom: (Place & { readonly pointer: number; readonly touch: boolean }) | null;
}

export const restingGesture: GestureState = { down: new Map(), tapFrom: null };

/** A hand trembles: less than this many pixels is a tap, not a drag. */
const tremblePx = { mouse: 4, touch: 10 } as const;

const distance = (a: Place, b: Place): number => Math.hypot(a.x - b.x, a.y - b.y);

/** What the sheet does about one pointer event, and the state that follows it. */
export const stepGesture = (
  state: GestureState,
  input: PointerInput
): { readonly state: GestureState; readonly actions: readonly GestureAction[] } => {
  const at = { x: input.x, y: input.y };
  const down = new Map(state.down);
  if (input.kind === 'down') {
    down.set(input.pointer, at);
    const mayTap = down.size === 1 && (input.button ?? 0) === 0;
    const tapFrom = mayTap ? { ...at, pointer: input.pointer, touch: input.touch ?? false } : null;
    return { state: { down, tapFrom }, actions: [] };
  }
  if (input.kind === 'move') return move(state, down, input.pointer, at);
  const known = down.delete(input.pointer);
  const taps =
    known &&
    input.kind === 'up' &&
    state.tapFrom !== null &&
    state.tapFrom.pointer === input.pointer;
  return {
    state: { down, tapFrom: null },
    actions: taps ? [{ kind: 'tap', at, touch: state.tapFrom?.touch ?? false }] : []
  };
};

const move = (
  state: GestureState,
  down: Map<number, Place>,
  pointer: number,
  at: Place
): { state: GestureState; actions: readonly GestureAction[] } => {
  const before = down.get(pointer);
  if (before === undefined) {
    return { state, actions: down.size === 0 ? [{ kind: 'hover', at }] : [] };
  }
  if (state.tapFrom !== null) {
    const limit = state.tapFrom.touch ? tremblePx.touch : tremblePx.mouse;
    if (distance(state.tapFrom, at) <= limit) return { state, actions: [] };
  }
  const others = [...down].filter(([id]) => id !== pointer).map(([, place]) => place);
  down.set(pointer, at);
  const next = { down, tapFrom: null };
  const other = others[0];
  if (other === undefined) {
    return { state: next, actions: [{ kind: 'pan', dx: at.x - before.x, dy: at.y - before.y }] };
  }
  if (others.length > 1) return { state: next, actions: [] };
  return { state: next, actions: pinch(before, at, other) };
};

// Two fingers: the middle between them drags the paper, their spread zooms it about the middle.
const pinch = (before: Place, after: Place, other: Place): readonly GestureAction[] => {
  const middleBefore = { x: (before.x + other.x) / 2, y: (before.y + other.y) / 2 };
  const middle = { x: (after.x + other.x) / 2, y: (after.y + other.y) / 2 };
  const spreadBefore = Math.max(1, distance(before, other));
  const spread = Math.max(1, distance(after, other));
  return [
    { kind: 'pan', dx: middle.x - middleBefore.x, dy: middle.y - middleBefore.y },
    { kind: 'zoom', factor: spread / spreadBefore, at: middle }
  ];
};

/** The zoom factor of one turn of a wheel; `pinched` is a trackpad's pinch, which sends small steps.
 *  `mode` 1 counts lines and 2 pages, as WheelEvent.deltaMode does. */
export const wheelFactor = (delta: number, mode: number, pinched: boolean): number => {
  const pixels = mode === 1 ? delta * 16 : mode === 2 ? delta * 400 : delta;
  const limited = Math.max(-240, Math.min(240, pixels));
  return Math.exp(-limited * (pinched ? 0.01 : 0.0015));
};
