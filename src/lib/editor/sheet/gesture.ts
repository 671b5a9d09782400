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
  /** One pointer drags, pressed at `from` and now at `at`: a tool may take it, else the paper moves. */
  | {
      readonly kind: 'drag';
      readonly from: Place;
      readonly at: Place;
      readonly dx: number;
      readonly dy: number;
      /** The first of its drag. */
      readonly begins: boolean;
      readonly button: number;
      readonly touch: boolean;
    }
  /** The pointer that dragged was lifted. */
  | { readonly kind: 'drop'; readonly at: Place }
  /** The drag came to nothing: taken over by the system, or by a second finger. */
  | { readonly kind: 'give-up' }
  | { readonly kind: 'zoom'; readonly factor: number; readonly at: Place }
  | { readonly kind: 'tap'; readonly at: Place; readonly touch: boolean }
  | { readonly kind: 'hover'; readonly at: Place };

export interface GestureState {
  readonly down: ReadonlyMap<number, Place>;
  /** Where the first pointer went down, while it is the only one. */
  readonly press: Press | null;
}

interface Press extends Place {
  readonly pointer: number;
  readonly button: number;
  readonly touch: boolean;
  /** It left its place: no tap any more. */
  readonly drags: boolean;
}

export const restingGesture: GestureState = { down: new Map(), press: null };

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
  const { press } = state;
  if (input.kind === 'down') {
    down.set(input.pointer, at);
    if (down.size > 1) return { state: { down, press: null }, actions: giveUp(press) };
    const { pointer, button = 0, touch = false } = input;
    return { state: { down, press: { ...at, pointer, button, touch, drags: false } }, actions: [] };
  }
  if (input.kind === 'move') return move(state, down, input.pointer, at);
  const isPressed = down.delete(input.pointer) && press?.pointer === input.pointer;
  const next = { down, press: isPressed ? null : press };
  if (!isPressed) return { state: next, actions: [] };
  if (input.kind === 'cancel') return { state: next, actions: giveUp(press) };
  if (press.drags) return { state: next, actions: [{ kind: 'drop', at }] };
  const taps = press.button === 0;
  return { state: next, actions: taps ? [{ kind: 'tap', at, touch: press.touch }] : [] };
};

const giveUp = (press: Press | null): readonly GestureAction[] =>
  press?.drags === true ? [{ kind: 'give-up' }] : [];

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
  const { press } = state;
  if (press !== null && !press.drags) {
    const limit = press.touch ? tremblePx.touch : tremblePx.mouse;
    if (distance(press, at) <= limit) return { state, actions: [] };
  }
  const others = [...down].filter(([id]) => id !== pointer).map(([, place]) => place);
  down.set(pointer, at);
  const other = others[0];
  const [dx, dy] = [at.x - before.x, at.y - before.y];
  if (other === undefined) {
    if (press === null) return { state: { down, press }, actions: [{ kind: 'pan', dx, dy }] };
    const { x, y, button, touch } = press;
    const drag = { from: { x, y }, at, dx, dy, begins: !press.drags, button, touch };
    return {
      state: { down, press: { ...press, drags: true } },
      actions: [{ kind: 'drag', ...drag }]
    };
  }
  if (others.length > 1) return { state: { down, press }, actions: [] };
  return { state: { down, press }, actions: pinch(before, at, other) };
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
