// A sheet of paper as plain data: headings, words, lists and tables. One shape feeds the page, the text
// on a terminal and the spreadsheet, so that they cannot differ.

export type Cell = string | number | null;

export interface Table {
  readonly columns: readonly {
    readonly heading: string;
    /** Width in a spreadsheet, characters. */
    readonly width?: number;
    /** Of the width on paper, per cent; all columns of a table have one, or none has. */
    readonly share?: number;
    /** An empty column to write in. */
    readonly isBlank?: boolean;
  }[];
  readonly rows: readonly (readonly Cell[])[];
}

export type Block =
  | { readonly kind: 'heading'; readonly text: string }
  | { readonly kind: 'words'; readonly text: string }
  | { readonly kind: 'warning'; readonly text: string }
  | { readonly kind: 'list'; readonly items: readonly string[] }
  | { readonly kind: 'table'; readonly table: Table }
  | { readonly kind: 'page' };

export interface Sheet {
  readonly title: string;
  /** Read at arm's length: tables in 12 point. */
  readonly isLarge?: boolean;
  readonly blocks: readonly Block[];
}

export const heading = (text: string): Block => ({ kind: 'heading', text });
export const words = (text: string): Block => ({ kind: 'words', text });
export const warning = (text: string): Block => ({ kind: 'warning', text });
export const list = (items: readonly string[]): Block => ({ kind: 'list', items });
export const table = (columns: Table['columns'], rows: Table['rows']): Block => ({
  kind: 'table',
  table: { columns, rows }
});
