import '../lib/ui/theme.css';
import { mount } from 'svelte';
import SinglePage from '../lib/ui/walking/SinglePage.svelte';

const held = document.getElementById('walkthrough')?.textContent ?? '';
mount(SinglePage, { target: document.body, props: { held } });
