// A new document: one unit to put parts in, and nothing else.
import type { MakeId } from './ids.ts';
import { orderBetween } from './order.ts';
import { documentFormat, documentVersion, type ChassisDocument } from './schema.ts';

/** A document with a main chassis and no parts yet. */
export const buildEmptyDocument = ({
  title,
  makeId
}: {
  readonly title: string;
  readonly makeId: MakeId;
}): ChassisDocument => {
  const unit = makeId('unit');
  return {
    format: documentFormat,
    version: documentVersion,
    id: makeId('document'),
    lineage: [],
    identity: { title },
    policy: {},
    units: {
      [unit]: { id: unit, order: orderBetween(null, null), name: 'Main chassis', metal: 'bonded' }
    },
    parts: {},
    wires: {},
    cables: {},
    supports: {},
    photos: {},
    patterns: {},
    callouts: {},
    shelf: {}
  };
};
