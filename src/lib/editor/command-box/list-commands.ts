// Everything that can be done, as one list: what the menus hold, the tools, the views of the sheet.
import type { EditorState } from '../core/editor-state.svelte.ts';
import { leafNames, leaves } from '../core/leaves.ts';
import { wayNames, ways } from '../core/ways.ts';
import type { FileDesk } from '../files/file-desk.ts';
import { toolFaces } from '../tools/registry.ts';
import { buildMenus } from '../ui/build-menus.ts';
import { best } from './rank.ts';

export interface Command {
  readonly words: string;
  /** The key, or what comes out. */
  readonly hint?: string;
  readonly disabled: boolean;
  readonly run: () => void;
}

const sheetCommands = (editor: EditorState): readonly Command[] => {
  const { diagram, sheet } = editor;
  const always = { disabled: false };
  return [
    { words: 'Show the diagram', ...always, run: () => diagram.choose('diagram') },
    { words: 'Show the drawing to scale', ...always, run: () => diagram.choose('pictorial') },
    { words: 'Turn the drawing to scale over', ...always, run: () => diagram.turnOver() },
    {
      words: 'Show all of the sheet',
      hint: '0',
      disabled: sheet === null,
      run: () => sheet?.fit()
    },
    {
      words: 'Go close to what is picked',
      hint: 'Enter',
      disabled: editor.pick === null,
      run: () => sheet?.lookCloser()
    },
    {
      words: 'Lay the diagram out anew',
      disabled: diagram.which !== 'diagram' || diagram.list === null,
      run: () => diagram.again()
    },
    { words: 'Find and sort in the schedule', hint: 'Ctrl+F', ...always, run: () => editor.find() },
    {
      words: 'Choose the columns of the schedule',
      ...always,
      run: () => (editor.dialog = 'columns')
    },
    {
      words: 'Change one field of many wires at once',
      ...always,
      run: () => (editor.dialog = 'many')
    }
  ];
};

const stepCommands = (editor: EditorState): readonly Command[] => {
  const { undoName, redoName } = editor.documents;
  return [
    {
      words: undoName === null ? 'Undo' : `Undo: ${undoName}`,
      hint: 'Ctrl+Z',
      disabled: undoName === null,
      run: () => editor.undo()
    },
    {
      words: redoName === null ? 'Redo' : `Redo: ${redoName}`,
      hint: 'Ctrl+Shift+Z',
      disabled: redoName === null,
      run: () => editor.redo()
    },
    {
      words: 'Steps: what was done, and back to any of it',
      disabled: undoName === null && redoName === null,
      run: () => (editor.dialog = 'steps')
    }
  ];
};

const toolCommands = (editor: EditorState): readonly Command[] =>
  toolFaces.map((face) => ({
    words: `Tool: ${face.name}`,
    ...(face.key === undefined ? {} : { hint: face.key }),
    disabled: false,
    run: () => editor.takeTool(face.id)
  }));

/** The leaves of the left page, and the ways of working that they belong to. */
const leafCommands = (editor: EditorState): readonly Command[] => [
  ...ways.map((way) => ({
    words: `Way of working: ${wayNames[way].name}`,
    disabled: editor.way === way,
    run: () => editor.setWay(way)
  })),
  ...leaves.map((leaf) => ({
    words: `Turn to: ${leafNames[leaf]}`,
    disabled: false,
    run: () => editor.openLeaf(leaf)
  })),
  { words: 'Tags for the wires…', disabled: false, run: () => (editor.dialog = 'tags') }
];

/** All commands as they stand now. */
export const listCommands = (editor: EditorState, desk: FileDesk): readonly Command[] => [
  ...stepCommands(editor),
  ...buildMenus(editor, desk).all.flatMap(({ title, items }) =>
    items.map(({ label, hint, disabled = false, run }) => ({
      words: title === undefined ? label : `${title}: ${label}`,
      ...(hint === undefined ? {} : { hint }),
      disabled,
      run
    }))
  ),
  ...leafCommands(editor),
  ...sheetCommands(editor),
  ...toolCommands(editor)
];

/** The commands that answer what was typed; all of them where nothing was. */
export const matchCommands = (
  commands: readonly Command[],
  typed: string,
  limit: number
): readonly Command[] =>
  typed.trim() === ''
    ? commands.filter(({ disabled }) => !disabled).slice(0, limit)
    : best(
        commands.filter(({ disabled }) => !disabled),
        typed,
        ({ words, hint = '' }) => [words, hint],
        limit
      );
