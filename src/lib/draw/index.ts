export { isPartWay } from './ink';
export { noMarks, type Marks } from './mark';
export { locoOn } from './rows';
export { default as Diagram } from './Diagram.svelte';
export { default as InkKey } from './InkKey.svelte';
export { default as PanelFace } from './PanelFace.svelte';
export { default as Plan } from './Plan.svelte';
export { default as Rows } from './Rows.svelte';
