// A new document: one unit to put parts in, and nothing else.
import { collections, type ElementName } from './edit.ts';
import type { MakeId } from './ids.ts';
import { orderBetween } from './order.ts';
import { documentFormat, documentVersion, type ChassisDocument } from './schema.ts';

/** The records of a document, with nothing in them. */
export const emptyRecords = () =>
  Object.fromEntries(Object.values(collections).map((record) => [record, {}])) as Pick<
    ChassisDocument,
    (typeof collections)[ElementName]
  >;

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
    ...emptyRecords(),
    units: {
      [unit]: { id: unit, order: orderBetween(null, null), name: 'Main chassis', metal: 'bonded' }
    }
  };
};
