// An address without a page.
import { PageHead } from '../parts/page-head.tsx';
import { words } from '../strings.ts';

export function NothingPage() {
  return (
    <main id="main" class="plain">
      <PageHead title={words.notFound.title} />
      <p>{words.notFound.text}</p>
      <a class="button" href="/">
        {words.notFound.home}
      </a>
    </main>
  );
}
