declare module '*.md' {
  import type { Component } from 'svelte';
  const page: Component;
  export default page;
  export const metadata: Record<string, unknown>;
}

declare module 'virtual:walk-player' {
  /** The page that plays one walkthrough by itself. */
  const page: string;
  export default page;
}
