export { isPartWay } from './ink';
export { lampShown } from './lampRows';
export { noMarks, type Marks } from './mark';
export { locoOn } from './rows';
export { default as InkKey } from './InkKey.svelte';
export { default as Plan } from './Plan.svelte';
export { default as Rows } from './Rows.svelte';
