// What can be set while wires are being drawn.
import type { PanelField } from '../panel.ts';
import type { ToolWorld } from '../tool.ts';
import { lastWire, readFound } from './next-wire.ts';
import { labelOf, namesOf, startOf, type WireState } from './wire-state.ts';

const sayings = (state: WireState, world: ToolWorld): string => {
  const from = startOf(state, world);
  if (from === null) return 'Press a terminal, or type its name: V3-5.';
  const through = state.supports.length === 0 ? '' : `, through ${state.supports.length} supports`;
  return `From ${labelOf(world, from)}${through}. Now its other end; ? where it is not found yet.`;
};

export const wirePanel = (state: WireState, world: ToolWorld): readonly PanelField[] => {
  const reading = readFound(state.gauge, state.colour);
  const isStarted = startOf(state, world) !== null;
  return [
    {
      kind: 'words',
      id: 'says',
      text: reading.ok ? sayings(state, world) : reading.why,
      tone: reading.ok ? 'plain' : 'problem'
    },
    {
      kind: 'text',
      id: 'terminal',
      label: isStarted ? 'To which terminal' : 'From which terminal',
      value: state.typed,
      example: 'V3-5',
      commit: 'Take',
      suggestions: namesOf(world.study).suggest(state.typed),
      wide: true
    },
    { kind: 'text', id: 'gauge', label: 'Gauge', value: state.gauge, example: '22 AWG' },
    { kind: 'text', id: 'colour', label: 'Colour', value: state.colour, example: 'red/yellow' },
    { kind: 'text', id: 'prefix', label: 'Prefix', value: state.prefix, example: 'H' },
    {
      kind: 'action',
      id: 'again',
      label: 'As the last wire',
      disabled: lastWire(world.study.document) === null
    },
    { kind: 'switch', id: 'chains', label: 'Chain: each end begins the next', on: state.chains },
    ...(isStarted
      ? [
          {
            kind: 'action',
            id: 'stop',
            label: state.chains ? 'End the chain' : 'Give up',
            key: 'Esc'
          } as const
        ]
      : [])
  ];
};
