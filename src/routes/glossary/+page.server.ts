import { glossary } from '$lib/server/glossary';

export const load = () => ({ glossary });
