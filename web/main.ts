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
import { readerLanguage } from './reader-language.ts';
import { speak, type Words } from './strings.ts';

/** Each a file of its own, so that nobody loads two of them. */
async function wordsOfReader(): Promise<Words> {
  if (readerLanguage === 'nl') return (await import('./words/nl.ts')).nl;
  if (readerLanguage === 'es') return (await import('./words/es.ts')).es;
  return (await import('./words/en.ts')).en;
}

async function start(host: HTMLElement): Promise<void> {
  speak(await wordsOfReader());
  document.documentElement.lang = readerLanguage;
  (await import('./app.tsx')).startApp(host);
}

const host = document.getElementById('app');
if (host !== null) void start(host);
