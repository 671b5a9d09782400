// The wire in the hand as it is seen: its line, the terminals it begins at and reaches, and what it would need.
import type { Wire } from '#document/index.ts';
import { formatAwg } from '#quantity/index.ts';
import { colourText } from '../../core/words.ts';
import type { PreviewShape, Spot, ToolPreview, ToolWorld } from '../tool.ts';
import { judgeWire } from './judge-wire.ts';
import { planWire } from './next-wire.ts';
import { labelOf, namesOf, planOf, startOf, type WireState } from './wire-state.ts';

/** What the wire in the hand would be, in a few words. */
const judged = (
  state: WireState,
  world: ToolWorld,
  to: string
): { readonly style: string; readonly text: string } | null => {
  const plan = planOf(state, world, to);
  if (typeof plan === 'string') return null;
  const wire: Wire = planWire(world.study.document, plan, () => 'w0inhand0');
  const { band, need, carries, danger } = judgeWire(world.study, wire);
  const { awg, colour, tracer } = wire.found;
  const looks = [awg === undefined ? '' : formatAwg(awg), colourText(colour, tracer)];
  const lines = [
    `${wire.number} to ${labelOf(world, to)}: ${need}`,
    carries,
    looks.filter((word) => word !== '').join(' '),
    danger ?? ''
  ];
  return { style: `wire.${band}`, text: lines.filter((line) => line !== '').join('\n') };
};

const ringMm = 2.6;
const ringAt = ({ x, y }: Spot): PreviewShape => ({
  shape: { kind: 'circle', x, y, r: ringMm },
  style: 'hand.ring'
});

export const showWire = (state: WireState, world: ToolWorld): ToolPreview => {
  const { scene } = world;
  const start = startOf(state, world);
  const from = start === null ? null : (scene.terminalByKey.get(start)?.at ?? null);
  const over = state.over === null ? null : (scene.terminalByKey.get(state.over) ?? null);
  const rings = [from, over?.at ?? null].flatMap((at) => (at ? [ringAt(at)] : []));
  const named = state.typed === '' ? null : namesOf(world.study).read(state.typed);
  const goal =
    named?.kind === 'terminal' ? `${named.at.part}/${named.at.terminal}` : (over?.key ?? null);
  const end = (goal === null ? null : scene.terminalByKey.get(goal)?.at) ?? state.at;
  const typed =
    state.typed === '' ? {} : { words: { text: state.typed, at: end ?? from ?? { x: 0, y: 0 } } };
  if (!from || !end) return { shapes: rings, cursor: 'crosshair', ...typed };
  const supports = state.supports.flatMap((id) => scene.geometry.places.supports.get(id)?.at ?? []);
  const points = [from, ...supports, end].flatMap(({ x, y }) => [x, y]);
  const judgement = goal === null || goal === start ? null : judged(state, world, goal);
  const style = judgement?.style ?? 'hand.loose';
  const words = judgement ? { words: { text: judgement.text, at: end } } : typed;
  return {
    shapes: [{ shape: { kind: 'line', points }, style }, ...rings],
    cursor: 'crosshair',
    ...words
  };
};
