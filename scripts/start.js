import { join } from 'node:path';
import process from 'node:process';
import { build } from './build.js';
import { serve } from './serve.js';

const root = join(import.meta.dirname, '..');

build(root);
const address = await serve(join(root, 'build'), Number(process.env.PORT ?? 4173));
console.log(`Ohmyard is at ${address}  (stop it with Ctrl-C)`);
