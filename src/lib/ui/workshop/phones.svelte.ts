import { untrack } from 'svelte';
import { letters, voteOf } from '../../walk';
import type { Room } from '../voting/room.svelte';
import type { Workshop } from './workshop.svelte';

/** Opens and closes the votes of phones with the stages of a workshop, and counts them in. */
export function withPhones(room: () => Room | undefined, workshop: () => Workshop): void {
  const open = $derived.by(() => {
    const { known, stand } = workshop();
    const vote = known && voteOf(stand.stage);
    return known && vote !== undefined ? `${vote + 1} ${known.options} ${known.id}` : undefined;
  });

  $effect(() => {
    if (open === undefined) room()?.close();
    else untrack(() => openVote(room(), workshop()));
  });
  $effect(() => {
    const tallies = room()?.tallies ?? {};
    const counts = untrack(() => lettersOf(workshop())).map((letter) => tallies[letter] ?? 0);
    // A vote that has just been opened anew has none yet: what was counted before stays.
    if (counts.some((count) => count > 0)) untrack(() => workshop().hear(counts));
  });
}

const lettersOf = ({ known }: Workshop): readonly string[] => letters.slice(0, known?.options);

function openVote(room: Room | undefined, workshop: Workshop): void {
  const { known, stand, id } = workshop;
  if (!known) return;
  const vote = voteOf(stand.stage) === 0 ? 1 : 2;
  room?.open({ id: `${id} ${known.id}`, letters: lettersOf(workshop), vote });
}
