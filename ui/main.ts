import './no-eval.ts';
import { mount } from 'svelte';
import { speakAs } from '#core/words/say.ts';
import App from './App.svelte';
import { letPinch } from './device/pinch.ts';
import { keepKiosk } from './kiosk.ts';
import { shop } from './hub/shop.svelte.ts';
import { chosenLanguage, languageOfBrowser } from './language.ts';
import { keepScreens } from './offline/keep-screens.ts';
import Untrusted from './pairing/Untrusted.svelte';
import { sizeNumerals } from './screen-size.ts';
import './theme.css';
import { screenMemory } from './screen-memory.ts';

speakAs(chosenLanguage(location.search, screenMemory, () => shop.now?.language));
keepKiosk(window);
letPinch(document.documentElement, location.protocol);
sizeNumerals();
const trusted = keepScreens();
addEventListener('resize', sizeNumerals);
// At the hub's own machine nothing stands between.
if (location.protocol === 'https:')
  void trusted.then((trusts) => {
    // The shop is not asked for its language over what is not trusted.
    if (!trusts) speakAs(languageOfBrowser);
    mount(trusts ? App : Untrusted, { target: document.body });
  });
else mount(App, { target: document.body });
