import type { HelpKey } from '../../core/words/en/help.ts';
import { useHouse } from '../facts/useLitterGrowth.ts';
import { words } from '../state/words.ts';
import './help.css';
import { href } from '../links.ts';

/** Everything there is to know, on one page. The vet's number stands first. */
export function HelpPage() {
  const { vetName, vetPhone } = useHouse();
  return (
    <>
      <header className="title">
        <div>
          <h1>{words.help.title}</h1>
          <p>{words.help.lead}</p>
        </div>
        <p className="right">
          {vetPhone === '' ? (
            <>
              {words.help.noVet} <a href={href({ at: 'house', field: 'vetPhone' })}>{words.help.writeVet}</a>
            </>
          ) : (
            words.help.vet(vetName, vetPhone)
          )}
        </p>
      </header>
      <nav className="help-contents" aria-label={words.help.contents}>
        <ul>
          {words.helpParts.map((part) => (
            <li key={part.id}>
              <button type="button" className="link" onClick={() => goTo(part.id)}>
                {part.title}
              </button>
            </li>
          ))}
        </ul>
      </nav>
      {words.helpParts.map((part) => (
        <section key={part.id} className="help-part">
          <h2 id={`help-${part.id}`} tabIndex={-1}>
            {part.title}
          </h2>
          <div>
            {part.paragraphs.map((text) => (
              <p key={text}>{text}</p>
            ))}
            {part.keys !== undefined && <Keys keys={part.keys} />}
          </div>
        </section>
      ))}
    </>
  );
}

/** The address after # names the page, so a part of it is gone to by focus. */
function goTo(id: string): void {
  const heading = document.getElementById(`help-${id}`);
  heading?.focus({ preventScroll: true });
  heading?.scrollIntoView();
}

function Keys({ keys }: { keys: readonly HelpKey[] }) {
  return (
    <dl className="help-keys">
      {keys.map(({ keys: names, does }) => (
        <div key={does}>
          <dt>
            {names.map((name) => (
              <kbd key={name}>{name}</kbd>
            ))}
          </dt>
          <dd>{does}</dd>
        </div>
      ))}
    </dl>
  );
}
