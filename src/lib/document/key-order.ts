// The order in which a document's keys are written: as the schema names them, then unknown keys by
// their letters. It is read from the schema, so that the two cannot disagree.
import * as z from 'zod';

export interface KeyOrder {
  /** The known keys in order, and the order within each. */
  readonly keys: ReadonlyMap<string, KeyOrder>;
  /** The order within each entry of a list or a record. */
  readonly each?: KeyOrder;
}

const noOrder: KeyOrder = { keys: new Map() };

/** The order of the keys of what a schema takes. Of a choice of shapes, the keys of all in turn. */
export const keyOrderOf = (schema: unknown): KeyOrder => {
  if (schema instanceof z.ZodOptional) return keyOrderOf(schema.unwrap());
  if (schema instanceof z.ZodArray) return { ...noOrder, each: keyOrderOf(schema.element) };
  if (schema instanceof z.ZodRecord) return { ...noOrder, each: keyOrderOf(schema.valueType) };
  if (schema instanceof z.ZodUnion) {
    const keys = new Map<string, KeyOrder>();
    for (const option of schema.options) {
      for (const [key, order] of keyOrderOf(option).keys) if (!keys.has(key)) keys.set(key, order);
    }
    return { keys };
  }
  if (schema instanceof z.ZodObject) {
    const shape = Object.entries(schema.shape as Record<string, unknown>);
    return { keys: new Map(shape.map(([key, inner]) => [key, keyOrderOf(inner)])) };
  }
  return noOrder;
};

/** The keys of an object in their order. */
export const keysInOrder = (value: object, order: KeyOrder): string[] => {
  const present = Object.keys(value);
  const known: string[] = [];
  for (const key of order.keys.keys()) if (Object.hasOwn(value, key)) known.push(key);
  if (known.length === present.length) return known;
  const others = present.filter((key) => !order.keys.has(key));
  return [...known, ...others.sort()];
};

/** The order within what stands under a key. */
export const orderWithin = (order: KeyOrder, key: string): KeyOrder =>
  order.keys.get(key) ?? order.each ?? noOrder;
