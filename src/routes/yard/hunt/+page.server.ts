import { cautions } from '$lib/server/cautions';

export const load = () => ({ cautions });
