import js from '@eslint/js';
import prettier from 'eslint-config-prettier';
import svelte from 'eslint-plugin-svelte';
import globals from 'globals';
import ts from 'typescript-eslint';
import { rooms } from './scripts/rooms.js';
import svelteConfig from './svelte.config.js';

/** A room imports only from rooms on its left, and only their index. */
const roomRules = rooms.map((room, index) => {
  const right = rooms.slice(index + 1);
  const patterns = [
    {
      regex: `^(\\$lib|\\.\\.(/\\.\\.)*)/(${rooms.join('|')})/.+`,
      message: "Import another room's index only."
    }
  ];
  if (right.length > 0) {
    patterns.unshift({
      regex: `^(\\$lib|\\.\\.(/\\.\\.)*)/(${right.join('|')})(/|$)`,
      message: `Room '${room}' may import only from its left: ${rooms.slice(0, index).join(', ') || 'nothing'}.`
    });
  }
  return {
    files: [`src/lib/${room}/**/*.{ts,svelte}`],
    rules: { 'no-restricted-imports': ['error', { patterns }] }
  };
});

/** Everything left of the drawing is pure: no page, no clock, no chance. */
const pureRules = {
  files: rooms.slice(0, rooms.indexOf('draw')).map((room) => `src/lib/${room}/**/*.ts`),
  rules: {
    'no-restricted-globals': ['error', 'window', 'document', 'localStorage', 'performance', 'Date'],
    'no-restricted-properties': ['error', { object: 'Math', property: 'random' }]
  }
};

export default ts.config(
  { ignores: ['build/', '.svelte-kit/', 'test-results/', 'playwright-report/', 'static/'] },
  js.configs.recommended,
  ...ts.configs.strict,
  ...svelte.configs.recommended,
  prettier,
  ...svelte.configs.prettier,
  {
    languageOptions: { globals: { ...globals.browser, ...globals.node } },
    rules: {
      'no-undef': 'off',
      'max-lines': ['error', { max: 400, skipBlankLines: true, skipComments: true }],
      'max-lines-per-function': ['error', { max: 80, skipBlankLines: true, skipComments: true }],
      'max-params': ['error', 4]
    }
  },
  {
    files: ['**/*.svelte', '**/*.svelte.ts'],
    languageOptions: {
      parserOptions: { extraFileExtensions: ['.svelte'], parser: ts.parser, svelteConfig }
    },
    rules: { 'svelte/no-navigation-without-resolve': 'off' }
  },
  { files: ['tests/**'], rules: { 'max-lines-per-function': 'off' } },
  ...roomRules,
  pureRules
);
