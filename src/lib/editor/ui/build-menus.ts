// What the menus of the top bar hold, as data: on a phone they are one menu.
import { colourings, leavable, type Colouring, type Leavable } from '#drawing/look.ts';
import { handbookPages, openBeside } from '../bench/handbook-pages.ts';
import type { EditorState } from '../core/editor-state.svelte.ts';
import { lengthUnits, themes } from '../core/preferences.svelte.ts';
import type { FileDesk } from '../files/file-desk.ts';

export interface MenuItem {
  readonly label: string;
  /** A second, softer word: what comes out, or the key. */
  readonly hint?: string;
  readonly checked?: boolean;
  readonly disabled?: boolean;
  readonly testid?: string;
  readonly run: () => void;
}

export interface MenuGroup {
  readonly title?: string;
  readonly items: readonly MenuItem[];
}

const unitNames = { mm: 'Millimetres', in: 'Inches' } as const;
const themeNames = { system: 'As the system', light: 'Day', dark: 'Night' } as const;

const fileMenu = (editor: EditorState, desk: FileDesk): readonly MenuGroup[] => [
  {
    items: [
      { label: 'New chassis…', run: () => desk.newChassis(), testid: 'new' },
      {
        label: 'Open…',
        hint: 'document, zip, wire list, workbook, drawing',
        run: () => desk.choose(),
        testid: 'open'
      },
      {
        label: 'Bring in a wire list…',
        hint: 'paste, CSV, XLSX',
        run: () => (editor.dialog = 'intake'),
        testid: 'intake-open'
      },
      { label: 'Kept in this browser…', run: () => (editor.dialog = 'kept'), testid: 'kept' },
      { label: 'Earlier states…', run: () => (editor.dialog = 'states'), testid: 'states' },
      {
        label: desk.hasPictures ? 'Save a file with pictures' : 'Save a file',
        hint: 'Ctrl+S',
        run: () => void desk.saveFile(),
        testid: 'save'
      },
      {
        label: 'Save a file elsewhere…',
        run: () => void desk.saveFile({ elsewhere: true }),
        testid: 'save-elsewhere'
      },
      ...(desk.hasPictures
        ? [
            {
              label: 'Save a file without pictures',
              run: () => void desk.saveFile({ elsewhere: true, bare: true }),
              testid: 'save-bare'
            }
          ]
        : [])
    ]
  },
  {
    title: 'Demonstrations',
    items: desk.demonstrations.map((demonstration, index) => ({
      label: demonstration.title,
      run: () => void desk.openDemonstration(demonstration),
      testid: `demonstration-${index + 1}`
    }))
  }
];

const exportMenu = (editor: EditorState, desk: FileDesk): readonly MenuGroup[] => [
  {
    title: 'Export',
    items: [
      {
        label: 'Hand on…',
        hint: 'link, page, PDF, PNG, XLSX',
        run: () => editor.openLeaf('hand-on'),
        testid: 'hand-on-open'
      },
      {
        label: 'Compare and merge…',
        run: () => editor.openLeaf('compare'),
        testid: 'compare-open'
      },
      {
        label: 'Drawing',
        hint: 'SVG',
        disabled: editor.diagram.list === null,
        run: () => void desk.exportDrawing(),
        testid: 'export-svg'
      },
      {
        label: 'Wire schedule',
        hint: 'CSV',
        run: () => void desk.exportSchedule(),
        testid: 'export-csv'
      }
    ]
  }
];

const colouringNames: Readonly<Record<Colouring, string>> = {
  class: 'Insulation class needed',
  function: 'What it is for',
  state: 'How far the work is',
  findings: 'Findings',
  colour: 'Its own colour'
};

const leavableKeys = Object.keys(leavable) as Leavable[];

const viewMenu = (editor: EditorState): readonly MenuGroup[] => {
  const { preferences, walk, hand, diagram } = editor;
  return [
    {
      title: 'Pin walk',
      items: [
        { label: 'Walk the pins', hint: 'Shift+P', run: () => walk.open(), testid: 'walk-open' },
        { label: 'Half-traced wires', run: () => walk.open('waiting'), testid: 'waiting-open' }
      ]
    },
    ...(hand.isOpen
      ? [
          {
            title: 'Diagram',
            items: [
              {
                label: 'Let go of the picked place',
                hint: 'back to the layout',
                run: () => hand.letGoOfPlaces('picked'),
                testid: 'let-go-picked'
              },
              {
                label: 'Let go of all places',
                run: () => hand.letGoOfPlaces('all'),
                testid: 'let-go-all'
              }
            ]
          }
        ]
      : []),
    {
      items: [
        {
          label: 'What the judging goes by…',
          run: () => (editor.dialog = 'policy'),
          testid: 'policy-open'
        }
      ]
    },
    {
      title: 'Colour of the wires',
      items: colourings.map((colouring) => ({
        label: colouringNames[colouring],
        checked: diagram.look.colouring === colouring,
        run: () => diagram.colourBy(colouring),
        testid: `colour-by-${colouring}`
      }))
    },
    {
      title: 'On the sheet',
      items: leavableKeys.map((what) => ({
        label: leavable[what],
        checked: !diagram.look.without.includes(what),
        run: () => diagram.toggle(what),
        testid: `show-${what}`
      }))
    },
    {
      title: 'Lengths',
      items: lengthUnits.map((unit) => ({
        label: unitNames[unit],
        checked: preferences.lengthUnit === unit,
        run: () => preferences.setLengthUnit(unit),
        testid: `unit-${unit}`
      }))
    },
    {
      title: 'Paper',
      items: themes.map((theme) => ({
        label: themeNames[theme],
        checked: preferences.theme === theme,
        run: () => preferences.setTheme(theme),
        testid: `theme-${theme}`
      }))
    }
  ];
};

const helpMenu = (editor: EditorState): readonly MenuGroup[] => [
  {
    items: [
      { label: 'Cautions', run: () => (editor.dialog = 'cautions'), testid: 'help-cautions' },
      { label: 'Keys', hint: '?', run: () => (editor.dialog = 'keys'), testid: 'help-keys' },
      {
        label: 'Show me round',
        run: () => editor.preferences.setGuideDone(false),
        disabled: !editor.isDemonstration,
        testid: 'help-guide'
      },
      { label: 'About and licences', run: () => (editor.dialog = 'about'), testid: 'about' }
    ]
  },
  {
    title: 'Handbook',
    items: handbookPages.map(({ id, path, menu }) => ({
      label: menu,
      run: () => openBeside(`.${path}`),
      testid: `handbook-${id}`
    }))
  }
];

/** The menus as they stand now. */
export const buildMenus = (editor: EditorState, desk: FileDesk) => {
  const file = fileMenu(editor, desk);
  const exports = exportMenu(editor, desk);
  const view = viewMenu(editor);
  const help = helpMenu(editor);
  const go = { label: 'Go to, or do…', hint: 'Ctrl+K', run: () => (editor.dialog = 'go') };
  const all = [...file, ...exports, ...view, ...help];
  return { file, exports, view, help, all, narrow: [{ items: [go] }, ...all] };
};
