import { mount } from 'svelte';
import '../theme.css';
import Pairing from './Pairing.svelte';

/** The page by which a device is paired: all that the hub gives to one that is not. */
mount(Pairing, { target: document.body });
