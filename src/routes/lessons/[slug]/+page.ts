import type { Component } from 'svelte';

const pages = import.meta.glob<{ default: Component }>('/content/lessons/*.md');

export async function load({ params, data }) {
  const page = pages[`/content/lessons/${params.slug}.md`];
  return { ...data, Page: (await page?.())?.default };
}
