// The first line that runs: type, tokens, language, and the app in its place.
import '@fontsource-variable/atkinson-hyperlegible-next/wght.css';
import { mount } from 'svelte';
import App from './App.svelte';
import './lib/tokens.css';
import './lib/base.css';
import './lib/settings.svelte';
import { speak } from './lib/words';

// Settings have chosen the language by now; the tests may ask for the one that is no language.
if (new URLSearchParams(location.search).get('lang') === 'pseudo') speak('pseudo');

const target = document.getElementById('app');
if (target === null) throw new Error('index.html has no element called app');
mount(App, { target });
