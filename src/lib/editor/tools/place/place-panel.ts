// What can be set while parts are being placed.
import type { Part } from '#document/index.ts';
import { sortByOrder } from '#document/order.ts';
import type { PanelField } from '../panel.ts';
import type { ToolWorld } from '../tool.ts';
import { partSorts } from './part-sorts.ts';
import { counter, partsFor, readyOf, type PlaceState } from './place-state.ts';
import { sampleShapes } from './samples.ts';

/** The tube line-up of the set, as one text; empty where nobody wrote it. */
export const lineUpOf = ({ study }: ToolWorld): string =>
  (study.document.identity.tubes ?? '').replaceAll(/\s*[\n;]\s*/g, ', ').trim();

export const placePanel = (state: PlaceState, world: ToolWorld): readonly PanelField[] => {
  const { orders, problem } = readyOf(state, world);
  const patterns = sortByOrder(world.study.document.patterns);
  const options = [
    ...partSorts.map(({ id, name, example }) => ({
      value: example,
      label: name,
      shapes: sampleShapes(id)
    })),
    ...patterns.map(({ name }) => ({ value: name, label: name }))
  ];
  const parts = partsFor(orders, { ...world, makeId: counter() }, '');
  const words =
    problem ??
    (parts.length === 0 ? 'Choose a part, or write one.' : parts.map(describe).join(' · '));
  return [
    {
      kind: 'text',
      id: 'what',
      label: 'Part, or several with commas',
      value: state.text,
      example: '6CG7, 3 x strip 5, R12 47k',
      commit: 'Place beside',
      wide: true
    },
    { kind: 'words', id: 'says', text: words, tone: problem === null ? 'plain' : 'problem' },
    { kind: 'choice', id: 'sort', label: 'Parts', value: state.text, options },
    { kind: 'action', id: 'turn', label: 'Turn 45°', key: 'R' },
    {
      kind: 'action',
      id: 'over',
      label: state.face === 'above' ? 'Above the deck' : 'Below the deck',
      key: 'O'
    },
    ...(lineUpOf(world) === ''
      ? []
      : [{ kind: 'action', id: 'line-up', label: 'The tube line-up' } as const])
  ];
};

const describe = ({ reference, type, value, terminals }: Part): string => {
  const count = Object.keys(terminals).length;
  const what = type ?? value;
  return `${reference}${what === undefined ? '' : ` ${what}`}, ${count} terminal${count === 1 ? '' : 's'}`;
};
