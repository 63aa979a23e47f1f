import adapter from '@sveltejs/adapter-static';
import { vitePreprocess } from '@sveltejs/vite-plugin-svelte';
import { mdsvex } from 'mdsvex';
import { literalProse } from './scripts/literal-prose.js';

/** @type {import('@sveltejs/kit').Config} */
export default {
  extensions: ['.svelte', '.md'],
  preprocess: [
    vitePreprocess(),
    mdsvex({
      extensions: ['.md'],
      smartypants: { dashes: 'oldschool' },
      remarkPlugins: [literalProse]
    })
  ],
  kit: {
    adapter: adapter({ strict: true, fallback: '404.html' }),
    paths: { base: process.env.BASE_PATH ?? '', relative: true },
    csp: {
      mode: 'hash',
      directives: {
        'default-src': ['none'],
        'script-src': ['self'],
        'style-src': ['self'],
        'style-src-attr': ['unsafe-inline'],
        'font-src': ['self'],
        'img-src': ['self', 'data:'],
        'connect-src': ['self'],
        'manifest-src': ['self'],
        'worker-src': ['self'],
        'base-uri': ['self'],
        'form-action': ['none']
      }
    }
  }
};
