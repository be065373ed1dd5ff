import { mount } from 'svelte';
import { speakAs } from '#core/words/say.ts';
import App from './App.svelte';
import { keepKiosk } from './kiosk.ts';
import { shop } from './hub/shop.svelte.ts';
import { chosenLanguage } from './language.ts';
import { keepScreens } from './offline/keep-screens.ts';
import { sizeNumerals } from './screen-size.ts';
import './theme.css';
import { screenMemory } from './screen-memory.ts';

speakAs(chosenLanguage(location.search, screenMemory, () => shop.now?.language));
keepKiosk(window);
sizeNumerals();
keepScreens();
addEventListener('resize', sizeNumerals);
mount(App, { target: document.body });
