// Places what holds and turns wires: clamps, ties, grommets, holes, corners.
import { addElement, doMany } from '#document/edits.ts';
import { orderAtEnd, type Support } from '#document/index.ts';
import { drawSupport } from '#drawing/pictorial/draw-supports.ts';
import { parseQuantity } from '#quantity/index.ts';
import { holdHomes } from '../bodies.ts';
import type { PanelField } from '../panel.ts';
import { settle } from '../place/place-parts.ts';
import { gridMm, snap, type Snapped } from '../snapping.ts';
import type { Spot, Tool, ToolEvent, ToolPreview, ToolStep, ToolWorld } from '../tool.ts';

type SupportKind = Support['kind'];
const kinds = ['clamp', 'tie', 'grommet', 'hole', 'corner'] as const;

export interface SupportState {
  readonly kind: SupportKind;
  readonly bore: string;
  readonly at: Spot | null;
  readonly free: boolean;
}

const drawPx = 7;
const resting: SupportState = { kind: 'clamp', bore: '', at: null, free: false };

const isKind = (text: string): text is SupportKind => (kinds as readonly string[]).includes(text);

type Bore = { readonly mm: number | null } | { readonly problem: string };

const readBore = (text: string, { lengthUnit }: ToolWorld): Bore => {
  if (text.trim() === '') return { mm: null };
  const parsed = parseQuantity(text, 'length', { defaultUnit: lengthUnit });
  if (!parsed.ok) return { problem: parsed.problem };
  return parsed.value > 0 ? { mm: parsed.value } : { problem: 'a bore is more than 0' };
};

/** "clamp 4" after "clamp 3". */
const nextName = (supports: Readonly<Record<string, Support>>, kind: SupportKind): string => {
  const numbers = Object.values(supports).map(({ name }) =>
    Number(new RegExp(`^${kind} (\\d{1,5})$`).exec(name)?.[1] ?? 0)
  );
  return `${kind} ${Math.max(0, ...numbers) + 1}`;
};

const restAt = ({ at, free }: SupportState, world: ToolWorld): Snapped => {
  const { scene, pxPerMm, lengthUnit } = world;
  if (at === null) return { at: { x: 0, y: 0 }, guides: [] };
  const { parts, supports } = scene.geometry.places;
  return snap(at, {
    others: [
      ...[...supports.values()].map((one) => one.at),
      ...[...parts.values()].flatMap(({ pose, inTray }) => (inTray ? [] : [pose.at]))
    ],
    reachMm: drawPx / pxPerMm,
    gridMm: gridMm(lengthUnit),
    origin: scene.homeAt(at)?.corner ?? { x: 0, y: 0 },
    free
  });
};

const round = (value: number): number => Math.round(value * 100) / 100;

const putDown = (state: SupportState, world: ToolWorld): ToolStep<SupportState> => {
  const { scene, study, makeId } = world;
  const bore = readBore(state.bore, world);
  const { at } = restAt(state, world);
  const home = scene.homeAt(at);
  if ('problem' in bore || !home) {
    const words = 'problem' in bore ? bore.problem : 'there is no unit to place it in';
    return { state, actions: [{ kind: 'say', words }], claims: true };
  }
  const { supports } = study.document;
  const { x, y } = scene.toUnit(home, at);
  const support: Support = {
    id: makeId('support'),
    order: orderAtEnd(supports),
    unit: home.unit.id,
    name: nextName(supports, state.kind),
    kind: state.kind,
    place: { x: round(x), y: round(y) },
    ...(bore.mm === null ? {} : { boreMm: round(bore.mm) })
  };
  const edits = [...settle(home), ...holdHomes(scene), addElement('support', support)];
  const edit = doMany(`place ${support.name}`, edits);
  return {
    state,
    actions: [{ kind: 'edit', edit, words: `${support.name} placed` }],
    claims: true
  };
};

const step = (state: SupportState, event: ToolEvent, world: ToolWorld): ToolStep<SupportState> => {
  switch (event.kind) {
    case 'hover':
      return { state: { ...state, at: event.at, free: event.alt }, actions: [] };
    case 'tap': {
      const next = putDown({ ...state, at: event.at, free: event.alt }, world);
      return event.touch ? { ...next, state: { ...next.state, at: null } } : next;
    }
    case 'give-up':
      return { state: { ...state, at: null }, actions: [] };
    case 'field':
      if (event.id === 'bore') return { state: { ...state, bore: event.value }, actions: [] };
      return isKind(event.value)
        ? { state: { ...state, kind: event.value }, actions: [] }
        : { state, actions: [] };
    default:
      return { state, actions: [] };
  }
};

const panel = (state: SupportState, world: ToolWorld): readonly PanelField[] => {
  const bore = readBore(state.bore, world);
  const words =
    'problem' in bore
      ? bore.problem
      : `${nextName(world.study.document.supports, state.kind)}: press where it stands.`;
  return [
    {
      kind: 'choice',
      id: 'kind',
      label: 'Kind of support',
      value: state.kind,
      options: kinds.map((kind) => ({ value: kind, label: kind }))
    },
    { kind: 'text', id: 'bore', label: 'Bore', value: state.bore, example: '3/8 in' },
    { kind: 'words', id: 'says', text: words, tone: 'problem' in bore ? 'problem' : 'plain' }
  ];
};

const show = (state: SupportState, world: ToolWorld): ToolPreview => {
  if (state.at === null) return { shapes: [], cursor: 'crosshair' };
  const { at, guides } = restAt(state, world);
  const ghost: Support = {
    id: 's0',
    order: 'a0',
    unit: 'u0',
    name: '',
    kind: state.kind,
    place: { x: 0, y: 0 }
  };
  return { shapes: [...guides, ...drawSupport(ghost, at, null)], cursor: 'copy' };
};

export const placeSupports: Tool<SupportState> = {
  id: 'support',
  name: 'Supports',
  key: 's',
  hint: 'Choose a clamp, tie, grommet, hole or corner and press where it stands.',
  icon: 'M4 7.5h3.2a2.8 2.8 0 0 1 5.6 0H16M4 7.5v3h12v-3M7 10.5V14M13 10.5V14',
  resting,
  rest: (state) => ({ ...state, at: null }),
  step,
  panel,
  show
};
