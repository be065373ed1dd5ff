import { mount } from 'svelte';
import App from './App.svelte';
import { keepKiosk } from './kiosk.ts';
import { sizeNumerals } from './screen-size.ts';
import './theme.css';

keepKiosk(window);
sizeNumerals();
addEventListener('resize', sizeNumerals);
mount(App, { target: document.body });
