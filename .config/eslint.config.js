import { fileURLToPath } from 'node:url';
import js from '@eslint/js';
import svelte from 'eslint-plugin-svelte';
import globals from 'globals';
import ts from 'typescript-eslint';
import { roomOf, whyForbidden } from './rooms.js';

const top = fileURLToPath(new URL('..', import.meta.url));

/** Every import, static, type-only or dynamic, must be one that the room's row in rooms.js allows. */
const roomsRule = {
  meta: { type: 'problem', schema: [] },
  create(context) {
    const file = context.filename.replaceAll('\\', '/').slice(top.length);
    const room = roomOf(file);
    if (!room) return {};
    const look = (node) => {
      const specifier = node.source?.value;
      if (typeof specifier !== 'string') return;
      const why = whyForbidden(room, specifier, file);
      if (why) context.report({ node, message: why });
    };
    return {
      ImportDeclaration: look,
      ImportExpression: look,
      ExportNamedDeclaration: look,
      ExportAllDeclaration: look
    };
  }
};

export default ts.config(
  { ignores: ['build/**', '.svelte-kit/**', 'node_modules/**', 'static/**', 'test-results/**'] },
  { linterOptions: { reportUnusedDisableDirectives: 'error' } },
  js.configs.recommended,
  ...ts.configs.strict,
  ...svelte.configs.recommended,
  {
    plugins: { house: { rules: { rooms: roomsRule } } },
    languageOptions: { globals: { ...globals.browser, ...globals.node } },
    rules: {
      'no-undef': 'off',
      'house/rooms': 'error',
      'svelte/no-at-html-tags': 'error',
      '@typescript-eslint/no-explicit-any': 'error',
      '@typescript-eslint/consistent-type-imports': 'error',
      '@typescript-eslint/no-unused-vars': [
        'error',
        { argsIgnorePattern: '^_', varsIgnorePattern: '^_' }
      ],
      'no-restricted-imports': [
        'error',
        {
          paths: [
            {
              name: 'elkjs',
              message: 'Use elkjs/lib/elk-api.js with the worker as a separate file.'
            }
          ]
        }
      ],
      'no-restricted-syntax': [
        'error',
        {
          selector: 'ImportDeclaration[source.value="zod"] ImportSpecifier',
          message: "Write import * as z from 'zod'."
        },
        {
          selector: 'MemberExpression[property.name="innerHTML"]',
          message: 'Nothing that comes from a document becomes markup.'
        }
      ]
    }
  },
  {
    files: ['src/**/*.ts', 'src/**/*.svelte', 'test/**/*.ts', 'vite.config.ts'],
    // The globals of a service worker and of a page cannot be typed in one project; its work lies in typed files.
    ignores: ['src/service-worker.ts'],
    languageOptions: {
      parserOptions: {
        parser: ts.parser,
        projectService: true,
        tsconfigRootDir: top,
        extraFileExtensions: ['.svelte']
      }
    },
    rules: { '@typescript-eslint/no-floating-promises': 'error' }
  },
  {
    files: ['src/service-worker.ts'],
    languageOptions: { parser: ts.parser, globals: globals.serviceworker }
  },
  {
    // Everything below the editor runs in Node as it does in the browser.
    files: ['src/lib/**/*.ts'],
    ignores: ['src/lib/editor/**', 'src/lib/storage/**'],
    rules: {
      'no-restricted-globals': [
        'error',
        'window',
        'document',
        'navigator',
        'localStorage',
        'process'
      ],
      // Clock and chance come in as arguments.
      'no-restricted-properties': [
        'error',
        { object: 'Math', property: 'random' },
        { object: 'Date', property: 'now' }
      ]
    }
  },
  {
    files: ['test/**'],
    rules: { '@typescript-eslint/no-non-null-assertion': 'off' }
  }
);
