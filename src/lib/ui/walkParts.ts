/** What other pages use of the walkthrough's player. */
export { saveWalkFile } from './walk/handOver';
export { default as HandOver } from './walk/HandOver.svelte';
export { default as OpenWalk } from './walk/OpenWalk.svelte';
export { default as WalkPaper } from './walk/WalkPaper.svelte';
export { default as WalkPlayer } from './walk/WalkPlayer.svelte';
