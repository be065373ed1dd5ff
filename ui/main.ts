import { mount } from 'svelte';
import App from './App.svelte';
import { keepKiosk } from './kiosk.ts';
import './theme.css';

keepKiosk(window);
mount(App, { target: document.body });
