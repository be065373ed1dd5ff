import '../no-eval.ts';
import { mount } from 'svelte';
import '../theme.css';
import { letPinch } from '../device/pinch.ts';
import Arriving from './Arriving.svelte';
import Pairing from './Pairing.svelte';

/** The page by which a device is paired, or comes from another address: all that the hub gives to one that is not paired. */
letPinch(document.documentElement, location.protocol);
const behind = new URLSearchParams(location.hash.slice(1));
const token = behind.get('moved');
if (token === null) mount(Pairing, { target: document.body });
else {
  // It is not to stay in the address.
  history.replaceState(null, '', location.pathname);
  mount(Arriving, { target: document.body, props: { token, to: behind.get('to') ?? '/' } });
}
