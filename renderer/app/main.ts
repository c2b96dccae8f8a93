import '../styles/tokens.css';
import '../styles/base.css';
import '../styles/sheet.css';
import '../styles/answers.css';
import '../styles/found.css';
import '../styles/readings.css';
import '../styles/pages.css';
import '../styles/window.css';
import '../styles/narrow.css';
import '../styles/tree.css';
import '../styles/print.css';
import { mount } from 'svelte';
import App from './App.svelte';
import { httpHost } from './host-http.ts';
import { ipcHost } from './host-ipc.ts';

const target = document.getElementById('app');
if (!target) throw new Error('index.html has no element with the id "app".');
mount(App, { target, props: { host: window.droplight ? ipcHost(window.droplight) : httpHost() } });
