// A change to a document is a value: it applies or says why not, goes through JSON, and merges
// with its neighbour, so that a drag is one step of undo.

/** The records of a document, and what one of their elements is called. */
export const collections = {
  unit: 'units',
  part: 'parts',
  wire: 'wires',
  cable: 'cables',
  support: 'supports',
  photo: 'photos',
  pattern: 'patterns',
  callout: 'callouts',
  stock: 'shelf'
} as const;
export type ElementName = keyof typeof collections;

/** What a document has one of, each with an edit of its own; a document may be without a proof. */
export const sections = ['identity', 'policy', 'proof'] as const;
export type SectionName = (typeof sections)[number];

/** True where a text names a kind of element. */
export const isElementName = (text: string): text is ElementName =>
  Object.hasOwn(collections, text);

/** `fields` merges into the element: objects are merged key by key, null takes a key away. */
export type Fields = Readonly<Record<string, unknown>>;

export type Edit =
  | {
      readonly kind: `add-${ElementName}`;
      readonly args: { readonly element: { readonly id: string } & Fields };
    }
  | {
      readonly kind: `change-${ElementName}`;
      readonly args: { readonly id: string; readonly fields: Fields };
    }
  | { readonly kind: `remove-${ElementName}`; readonly args: { readonly id: string } }
  | { readonly kind: 'change-identity'; readonly args: { readonly fields: Fields } }
  | { readonly kind: 'change-policy'; readonly args: { readonly fields: Fields } }
  | { readonly kind: 'change-proof'; readonly args: { readonly fields: Fields } }
  | {
      /** All or none, one step of undo. */
      readonly kind: 'do-many';
      readonly args: { readonly name: string; readonly edits: readonly Edit[] };
    };
