// What can be set while wires are being dressed.
import { criticalMarks } from '../../core/critical-marks.ts';
import { counted, lengthText } from '../../core/words.ts';
import type { PanelField } from '../panel.ts';
import type { ToolWorld } from '../tool.ts';
import { chosenWires, wayWords, type DressState } from './dress-state.ts';

export const dressPanel = (state: DressState, world: ToolWorld): readonly PanelField[] => {
  const wires = chosenWires(state, world);
  const isNone = wires.length === 0;
  const { lengthUnit } = world;
  const text = isNone
    ? 'Press wires, or parts for all of theirs; Shift and drag chooses all in a box. Then press supports in order.'
    : `${counted(wires.length, 'wire')}: ${wayWords(state.supports, world)}`;
  const cables = Object.values(world.study.document.cables).map(({ name }) => name);
  return [
    { kind: 'words', id: 'says', text },
    { kind: 'action', id: 'dress', label: 'Dress', key: 'Enter', disabled: isNone },
    { kind: 'action', id: 'free', label: 'Free', disabled: isNone },
    { kind: 'action', id: 'route', label: isNone ? 'Route all by themselves' : 'By themselves' },
    { kind: 'action', id: 'none', label: 'Choose none', disabled: isNone },
    ...(isNone
      ? []
      : ([
          {
            kind: 'text',
            id: 'cable',
            label: 'In cable',
            value: state.cable,
            example: 'yoke cable',
            commit: 'Set',
            suggestions: cables,
            wide: true
          },
          {
            kind: 'text',
            id: 'outside',
            label: 'Length outside the drawing',
            value: state.outside,
            example: lengthText(300, lengthUnit),
            commit: 'Set',
            wide: true
          },
          {
            kind: 'text',
            id: 'lies',
            label: 'How they lie',
            value: state.lies,
            example: 'along the apron, away from the flyback',
            commit: 'Set',
            wide: true
          },
          ...criticalMarks.map(({ key, words }) => ({
            kind: 'switch' as const,
            id: key,
            label: `Critical: ${words}`,
            on: wires.every(({ critical }) => critical?.[key] === true)
          }))
        ] as const))
  ];
};
