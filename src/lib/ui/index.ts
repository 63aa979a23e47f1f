export { isOpen, showWhole } from './flow.svelte';
export { default as Player } from './Player.svelte';
export { default as Step } from './Step.svelte';
export { loadProgress, progressNotice, progressNow } from './progress.svelte';
export { default as ThemeChoice } from './ThemeChoice.svelte';
export { default as LessonList } from './LessonList.svelte';
export { default as YardPage } from './builder/YardPage.svelte';
