import { svelte, vitePreprocess } from '@sveltejs/vite-plugin-svelte';
import { createHash } from 'node:crypto';
import { join } from 'node:path';
import { build, type Plugin, type Rolldown } from 'vite';

const MODULE = 'virtual:walk-player';
const root = join(import.meta.dirname, '..');

/** Script and style of the player, each in one piece, its letters inside. */
async function made(): Promise<{ readonly script: string; readonly style: string }> {
  const built = (await build({
    root,
    configFile: false,
    logLevel: 'error',
    mode: 'production',
    publicDir: false,
    define: { 'process.env.NODE_ENV': '"production"' },
    plugins: [svelte({ configFile: false, preprocess: vitePreprocess() })],
    build: {
      write: false,
      assetsInlineLimit: 1_000_000,
      cssCodeSplit: false,
      lib: { entry: join(root, 'src/single/main.ts'), name: 'player', formats: ['iife'] }
    }
  })) as readonly Rolldown.RolldownOutput[];
  const files = built.flatMap(({ output }) => output);
  const script = files.find((file) => file.type === 'chunk')?.code;
  const style = files.find((file) => file.fileName.endsWith('.css'));
  if (script === undefined || style?.type !== 'asset')
    throw new Error('The player of single pages has no script, or no style.');
  return { script, style: String(style.source) };
}

/** What the page's parser would take for the end, or the begin, of a script. */
const inScript = (script: string): string => script.replace(/<(?=\/?script|!--)/gi, '\\x3c');

const hashOf = (text: string): string =>
  `'sha256-${createHash('sha256').update(text).digest('base64')}'`;

/** A page that plays the walkthrough inside it; it lets in nothing but its own script and style. */
function pageOf(script: string, style: string): string {
  const policy = [
    "default-src 'none'",
    `script-src ${hashOf(script)}`,
    `style-src ${hashOf(style)}`,
    "style-src-attr 'unsafe-inline'",
    'font-src data:',
    'img-src data:',
    "base-uri 'none'",
    "form-action 'none'"
  ].join('; ');
  return [
    '<!doctype html>',
    '<html lang="en-GB">',
    '<head>',
    '<meta charset="utf-8">',
    `<meta http-equiv="content-security-policy" content="${policy}">`,
    '<meta name="viewport" content="width=device-width, initial-scale=1">',
    '<meta name="color-scheme" content="light dark">',
    '<title>Walkthrough</title>',
    `<style>${style}</style>`,
    '</head>',
    '<body>',
    '<script type="application/json" id="walkthrough"></script>',
    '<noscript>This page plays a walkthrough by a script of its own: let it run.</noscript>',
    `<script>${script}</script>`,
    '</body>',
    '</html>',
    ''
  ].join('\n');
}

/** Gives the page of single walkthroughs as a text, built once from the same sources as the site. */
export function walkPlayer(): Plugin {
  let page: Promise<string> | undefined;
  const make = async () => {
    const { script, style } = await made();
    return pageOf(inScript(script), style);
  };
  return {
    name: 'ohmyard-walk-player',
    resolveId: (id) => (id === MODULE ? `\0${MODULE}` : undefined),
    async load(id) {
      if (id !== `\0${MODULE}`) return undefined;
      page ??= make();
      return `export default ${JSON.stringify(await page)};`;
    }
  };
}
