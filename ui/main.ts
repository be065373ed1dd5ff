import { mount } from 'svelte';
import App from './App.svelte';
import { keepKiosk } from './kiosk.ts';
import { keepScreens } from './offline/keep-screens.ts';
import { sizeNumerals } from './screen-size.ts';
import './theme.css';

keepKiosk(window);
sizeNumerals();
keepScreens();
addEventListener('resize', sizeNumerals);
mount(App, { target: document.body });
