// What can be set of a tool, as data: one component shows the panels of all tools, and tests fill them
// in without a page. What is done in a panel comes back to the tool as an event.
import type { PreviewShape } from './tool.ts';

export interface PanelOption {
  readonly value: string;
  readonly label: string;
  /** A small picture of it, mm about its middle. */
  readonly shapes?: readonly PreviewShape[];
}

export type PanelField =
  | {
      readonly kind: 'text';
      readonly id: string;
      readonly label: string;
      readonly value: string;
      readonly example?: string;
      /** What Enter does, for a button beside the field; without it there is none. */
      readonly commit?: string;
      /** What could be meant, for a list under the field. */
      readonly suggestions?: readonly string[];
      /** Takes the whole width: else fields stand beside each other. */
      readonly wide?: boolean;
    }
  | {
      readonly kind: 'choice';
      readonly id: string;
      readonly label: string;
      readonly value: string;
      readonly options: readonly PanelOption[];
    }
  | {
      readonly kind: 'switch';
      readonly id: string;
      readonly label: string;
      readonly on: boolean;
    }
  | {
      readonly kind: 'action';
      readonly id: string;
      readonly label: string;
      /** The key that does the same on the sheet. */
      readonly key?: string;
      readonly disabled?: boolean;
    }
  | {
      readonly kind: 'words';
      readonly id: string;
      readonly text: string;
      /** How the words weigh: a class band's style, or a problem. */
      readonly tone?: 'plain' | 'problem' | 'danger';
    };
