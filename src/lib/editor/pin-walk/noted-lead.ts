// A lead as it is noted: what is seen of it and nothing more. What has not been seen is left out.

/** Parts whose leads are met at a terminal; `other` is told apart later. */
export const leadPartKinds = [
  'resistor',
  'capacitor',
  'coil',
  'rectifier',
  'lamp',
  'fuse',
  'other'
] as const;
export type LeadPartKind = (typeof leadPartKinds)[number];

export type NotedLead =
  | {
      readonly kind: 'wire';
      readonly colour?: string;
      readonly tracer?: string;
      /** Hook-up wire where nothing else is said. */
      readonly construction?: string;
    }
  | { readonly kind: 'part'; readonly partKind: LeadPartKind; readonly value?: string };
