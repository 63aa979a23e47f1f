import { readIdeas } from '../lesson';

const files = import.meta.glob<string>('/content/ideas/*.md', {
  query: '?raw',
  import: 'default',
  eager: true
});

/** The cards of all wrong ideas. */
export const ideaCards = readIdeas(
  Object.entries(files).map(([file, text]) => ({ file: file.slice(1), text }))
);
