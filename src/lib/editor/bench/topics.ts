// The bench sums in the order of a handbook: by topic, numbered, so that a sum has the same number
// on the page that works it out and on the page that shows what it was held against.
import { sums, type Sum } from '#physics/index.ts';

export interface TopicSum {
  /** "2.1": the topic and the place in it. */
  readonly number: string;
  readonly sum: Sum;
}

export interface Topic {
  readonly number: number;
  readonly title: string;
  readonly sums: readonly TopicSum[];
}

const plan: readonly (readonly [title: string, ids: readonly string[]])[] = [
  [
    'Wire by its gauge',
    ['wire-size', 'wire-resistance', 'voltage-drop', 'ampacity', 'bundle-share', 'fusing']
  ],
  ['Insulation', ['stress', 'insulation-class']],
  ['Bundles and ends', ['bundle', 'bend-radius', 'post-wrap']],
  ['Distances', ['air-gap', 'creepage', 'board-spacing']],
  ['Stored charge and the second anode', ['discharge', 'anode-resistor']],
  ['Signals', ['coax-line', 'twin-line', 'mismatch', 'treble-corner', 'coupling']]
];
const restTitle = 'More sums';

/** Every registered sum once; those that no topic names come last. */
export function buildTopics(registered: readonly Sum[]): readonly Topic[] {
  const byId = new Map(registered.map((sum) => [sum.id, sum]));
  const named = plan.map(([title, ids]) => ({
    title,
    sums: ids.flatMap((id) => {
      const sum = byId.get(id);
      return sum && byId.delete(id) ? [sum] : [];
    })
  }));
  return [...named, { title: restTitle, sums: [...byId.values()] }]
    .filter((topic) => topic.sums.length > 0)
    .map((topic, index) => ({
      number: index + 1,
      title: topic.title,
      sums: topic.sums.map((sum, at) => ({ number: `${index + 1}.${at + 1}`, sum }))
    }));
}

export const topics = buildTopics(sums);

export const findTopicSum = (id: string): TopicSum | undefined =>
  topics.flatMap((topic) => topic.sums).find(({ sum }) => sum.id === id);
