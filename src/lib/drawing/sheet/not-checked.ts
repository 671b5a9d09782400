// What stands beside every "no finding", since that is not "safe": what this drawing does not know
// and what no rule of this edition looks at.
import { rules } from '#checks/index.ts';
import type { Study } from '#study/index.ts';

const subjects: readonly (readonly [rule: string, words: string])[] = [
  ['over-ampacity', 'current against gauge'],
  ['heater-drop', 'heater volts'],
  ['too-hot', 'heat'],
  ['hv-near', 'distance to high voltage'],
  ['hot-chassis', 'a live chassis'],
  ['support-size', 'bundles and grommets'],
  ['insulation-failing', 'the state of the insulation']
];

/** In words: what no rule covers yet. */
export const notLookedAt = (): string[] =>
  subjects.filter(([id]) => !rules.some((rule) => rule.id === id)).map(([, words]) => words);

const wires = (count: number): string => `${count} ${count === 1 ? 'wire' : 'wires'}`;

/** Sentences about what is not known of these wires, and about what was not checked. */
export const notCheckedWords = (study: Study): string[] => {
  const all = [...study.wires.values()];
  const unknown = all.filter(({ need }) => need === null).length;
  const partial = all.filter(({ need }) => need?.atLeast).length;
  const open = study.index.wires.filter(({ from, to }) => !from.at || !to.at).length;
  const unlooked = notLookedAt();
  return [
    ...(unknown > 0 ? [`${wires(unknown)}: class not known, drawn dotted.`] : []),
    ...(partial > 0
      ? [`${wires(partial)}: a part of the stress is missing, the class is "at least".`]
      : []),
    ...(open > 0 ? [`${wires(open)}: an end not found.`] : []),
    ...(unlooked.length > 0 ? [`Not looked at: ${unlooked.join(', ')}.`] : []),
    'No finding is not "safe": measure before you trust any of this.'
  ];
};
