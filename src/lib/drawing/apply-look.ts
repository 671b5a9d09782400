// A finished drawing looked at in another way: its wires in other colours, some of it left out.
import type { Finding } from '#checks/index.ts';
import { wireStates } from '#document/wire-schema.ts';
import type { Id } from '#document/index.ts';
import { parseColour } from '#handbook/index.ts';
import type { Study } from '#study/index.ts';
import type { DisplayItem, DisplayList } from './display-list.ts';
import { toneInks, type Colouring, type Look } from './look.ts';
import { buildNetRoles } from './presentation/roles.ts';

const severities = ['note', 'caution', 'fault', 'danger'] as const;

/** For each wire the end of its style's name, or null where it keeps the ink of its class. */
const buildTones = (
  study: Study,
  findings: readonly Finding[],
  colouring: Colouring
): ((wire: Id) => string | null) => {
  if (colouring === 'class') return () => null;
  if (colouring === 'colour')
    return (id) => {
      const written = study.document.wires[id]?.found?.colour;
      const parsed = written === undefined ? null : parseColour(written);
      return parsed ? `hue.${parsed.colour}` : 'tint.not known';
    };
  if (colouring === 'state')
    return (id) => {
      const state = study.document.wires[id]?.state;
      return state === undefined
        ? null
        : `tint.${toneInks.state[wireStates.indexOf(state)] ?? '300'}`;
    };
  if (colouring === 'function') {
    const roles = buildNetRoles(study);
    const order = ['signal', 'supply', 'heater', 'chassis'] as const;
    return (id) => {
      const role = roles.get(study.wires.get(id)?.net ?? '') ?? 'signal';
      return `tint.${toneInks.function[order.indexOf(role)] ?? '300'}`;
    };
  }
  const worst = new Map<Id, number>();
  for (const { severity, at } of findings)
    for (const { kind, id } of at)
      if (kind === 'wire')
        worst.set(id, Math.max(worst.get(id) ?? 0, severities.indexOf(severity) + 1));
  return (id) => `tint.${toneInks.findings[worst.get(id) ?? 0] ?? '300'}`;
};

const isPlainWire = ({ layer, style, subject }: DisplayItem): boolean =>
  layer === 'wires' && subject?.kind === 'wire' && /^wire\.[^.]+$/.test(style);

/** The same drawing, looked at in another way. */
export const applyLook = (
  list: DisplayList,
  study: Study,
  findings: readonly Finding[],
  { colouring, without }: Look
): DisplayList => {
  if (colouring === 'class' && without.length === 0) return list;
  const toneOf = buildTones(study, findings, colouring);
  const items = list.items.flatMap((item): DisplayItem[] => {
    if (without.some((layer) => layer === item.layer)) return [];
    if (!isPlainWire(item)) return [item];
    const tone = toneOf(item.subject?.id ?? '');
    if (tone === null) return [item];
    const toned = { ...item, style: `${item.style}.${tone}` };
    // A white wire on white paper is seen by its edge.
    return tone.startsWith('hue.')
      ? [{ ...item, id: `${item.id}-edge`, style: `${item.style}.edge` }, toned]
      : [toned];
  });
  return { ...list, items };
};
