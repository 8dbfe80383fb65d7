// Whether pictures must stand still: the device says so, or the operator does.
import { MediaQuery } from 'svelte/reactivity';
import { settings } from './settings.svelte';

const lessMotion = new MediaQuery('(prefers-reduced-motion: reduce)');

export const isStill = {
  get current(): boolean {
    return settings.motion === 'still' || lessMotion.current;
  },
};
