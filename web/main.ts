// The start of the page: the words of the reader's language first, then the interface, whose modules may keep parts of them.
import './style/base.css';
import './style/parts.css';
import './style/overview.css';
import './style/chamber.css';
import './style/ledgers.css';
import './style/learning.css';
import './style/duty.css';
import './style/dark.css';
import './style/print.css';
import { loadWords } from './load-words.ts';

async function start(host: HTMLElement): Promise<void> {
  document.documentElement.lang = await loadWords();
  (await import('./app.tsx')).startApp(host);
}

const host = document.getElementById('app');
if (host !== null) void start(host);
