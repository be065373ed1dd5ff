import { mount } from 'svelte';
import App from './App.svelte';
import { keepKiosk } from './kiosk.ts';
import { chooseLanguage } from './language.ts';
import { keepScreens } from './offline/keep-screens.ts';
import { sizeNumerals } from './screen-size.ts';
import './theme.css';
import { screenMemory } from './screen-memory.ts';

chooseLanguage(location.search, screenMemory);
keepKiosk(window);
sizeNumerals();
keepScreens();
addEventListener('resize', sizeNumerals);
mount(App, { target: document.body });
