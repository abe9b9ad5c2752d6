// The floor of a first load: a page that is sent the same bytes as the dashboard, packed alike and in the same turns, and writes one line a chamber.
import { createServer } from 'node:http';
import type { AddressInfo } from 'node:net';
import { gzipSync } from 'node:zlib';
import { firstLoad } from './first-load.ts';
import type { Nursery } from './open-nursery.ts';

const page = `<!doctype html><title>bare</title><main></main><script type="module">
const text = async (path) => (await fetch(path)).text();
await Promise.all([text('/script'), text('/style')]);
await text('/session');
for (const { name } of JSON.parse(await text('/chambers')).items) {
  const row = document.createElement('p');
  row.className = 'row';
  row.innerHTML = '<b class="sentence"></b>';
  row.firstChild.textContent = name;
  document.querySelector('main').append(row);
}
</script>`;

export async function openBarePage({ api }: Nursery): Promise<{ url: string; close(): Promise<void> }> {
  const files = firstLoad();
  const all = (kind: 'js' | 'css') => Buffer.concat(files.filter((file) => file.kind === kind).map(({ text }) => text));
  const answers = new Map<string, [type: string, body: Buffer]>([
    ['/', ['text/html', Buffer.from(page)]],
    ['/script', ['text/plain', all('js')]],
    ['/style', ['text/plain', all('css')]],
    ['/session', ['application/json', Buffer.from(JSON.stringify((await api.get('/session')).body))]],
    ['/chambers', ['application/json', Buffer.from(JSON.stringify((await api.get('/chambers')).body))]],
  ]);
  const packed = new Map([...answers].map(([path, [type, body]]) => [path, { type, body: gzipSync(body) }]));
  const server = createServer((request, response) => {
    const answer = packed.get(request.url ?? '');
    if (answer === undefined) return void response.writeHead(404).end();
    response.writeHead(200, { 'content-type': answer.type, 'content-encoding': 'gzip' }).end(answer.body);
  });
  await new Promise<void>((resolve) => server.listen(0, '127.0.0.1', resolve));
  const { port } = server.address() as AddressInfo;
  return {
    url: `http://127.0.0.1:${port}/`,
    close: () => {
      server.closeAllConnections();
      return new Promise<void>((resolve) => server.close(() => resolve()));
    },
  };
}
