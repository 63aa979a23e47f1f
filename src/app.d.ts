declare module '*.md' {
  import type { Component } from 'svelte';
  const page: Component;
  export default page;
  export const metadata: Record<string, unknown>;
}
