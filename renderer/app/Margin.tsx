import { type CivilDate, date } from '../../core/calendar/day.ts';
import type { Level } from '../../core/growth/assess.ts';
import { litterInTheHouse, weighInOrder } from '../../core/litter/in-the-house.ts';
import { puppyName } from '../../core/litter/litter.ts';
import { localOf, useToday } from '../data/now.ts';
import { useQuery } from '../data/query.ts';
import type { LitterFacts } from '../facts/useLitter.ts';
import { useLitterGrowth } from '../facts/useLitterGrowth.ts';
import { weighingsCount } from '../facts/weighings-count.ts';
import { href, LITTER_PAGES, type LitterPage, type Route } from '../links.ts';
import { LevelMark } from '../parts/LevelMark.tsx';
import { useWindow } from '../state/window.ts';
import { words } from '../state/words.ts';

const pageWords = (): Record<LitterPage, string> => ({
  today: words.app.today,
  'weigh-in': words.app.weighIn,
  growth: words.app.growth,
  weaning: words.app.weaning,
  care: words.app.care,
  puppies: words.app.puppies,
  homes: words.app.homes,
});

/** Left of the margin line stand the places: the litters in the house, then what goes across litters, then the last backup. */
export function Margin({
  route,
  openLitterId,
  open,
  theme,
}: {
  route: Route;
  openLitterId: string | null;
  open: boolean;
  theme: 'day' | 'night';
}) {
  const all = useQuery('litter.all', {});
  const setTheme = useWindow((w) => w.setTheme);
  const today = useToday();
  const litters = (all.value?.litters ?? []).filter((l) => litterInTheHouse(l.puppies, today) || l.litter.id === openLitterId);
  const here = (at: Route['at']) => (route.at === at ? 'page' : undefined);
  return (
    <nav className={open ? 'margin open' : 'margin'} id="margin" aria-label={words.app.marginLabel} onKeyDown={moveInMargin}>
      <a className="top" href={href({ at: 'litters' })} aria-current={here('litters')}>
        {words.app.litters}
      </a>
      {litters.map((facts) =>
        facts.litter.id === openLitterId ? (
          <OpenLitter key={facts.litter.id} facts={facts} route={route} />
        ) : (
          <OtherLitter key={facts.litter.id} facts={facts} page={route.at === 'litter' ? route.page : 'today'} />
        ),
      )}
      <hr />
      <a className="top" href={href({ at: 'freezer' })} aria-current={here('freezer')}>
        {words.app.freezer}
      </a>
      <a className="top" href={href({ at: 'foods' })} aria-current={here('foods') ?? here('food') ?? here('week')}>
        {words.app.foods}
      </a>
      <a className="top" href={href({ at: 'rules' })} aria-current={here('rules')}>
        {words.app.rules}
      </a>
      <a className="top" href={href({ at: 'house', field: null })} aria-current={here('house')}>
        {words.house.title}
      </a>
      <a className="top" href={href({ at: 'records' })} aria-current={here('records') ?? here('import')}>
        {words.app.records}
      </a>
      <a className="top" href={href({ at: 'help' })} aria-current={here('help')}>
        {words.app.help}
      </a>
      <div className="last">
        <button type="button" className="link note" onClick={() => setTheme(theme === 'day' ? 'night' : 'day')}>
          {theme === 'day' ? words.app.lampNight : words.app.lampDay}
        </button>
        <LastBackup />
      </div>
    </nav>
  );
}

/** Those in the house, as the other pages count them; of a litter that is gone all that lived. */
function counted(puppies: LitterFacts['puppies'], today: CivilDate): number {
  return weighInOrder(puppies, today).length || puppies.filter((p) => p.state !== 'died').length;
}

/** Up and down move, a first letter jumps (again for the next with that letter), Esc goes back to where she was. */
function moveInMargin(event: React.KeyboardEvent<HTMLElement>): void {
  const links = [...event.currentTarget.querySelectorAll<HTMLElement>('a')];
  const at = links.indexOf(document.activeElement as HTMLElement);
  const step = event.key === 'ArrowDown' ? 1 : event.key === 'ArrowUp' ? -1 : 0;
  if (step !== 0) {
    event.preventDefault();
    links[(at + step + links.length) % links.length]?.focus();
    return;
  }
  if (event.key.length === 1 && !event.ctrlKey && !event.metaKey && !event.altKey) {
    const letter = event.key.toLowerCase();
    const order = [...links.slice(at + 1), ...links.slice(0, at + 1)];
    order.find((l) => l.textContent.trim().toLowerCase().startsWith(letter))?.focus();
  }
}

/** Its level is null as long as nobody was weighed twice. */
function useLitterLine(facts: LitterFacts): { age: string; level: Level | null; who: string } {
  const today = useToday();
  const { input, growth, puppies } = useLitterGrowth(facts.litter.id);
  const here = weighInOrder(puppies, today);
  const flagged = growth === null ? [] : here.filter((p) => (growth.puppies.get(p.id)?.level ?? 'steady') !== 'steady');
  const worst: Level =
    growth?.litter.level === 'act' || flagged.some((p) => growth?.puppies.get(p.id)?.level === 'act')
      ? 'act'
      : flagged.length > 0 || growth?.litter.level === 'watch'
        ? 'watch'
        : 'steady';
  const first = flagged.find((p) => growth?.puppies.get(p.id)?.level === worst) ?? flagged[0];
  return {
    age: words.ageInWords(date(facts.litter.whelpedAt.slice(0, 10)), today),
    level: worst === 'steady' && !(input !== null && here.some((p) => weighingsCount(input, p.id) === 'more')) ? null : worst,
    who: first === undefined ? '' : puppyName(first),
  };
}

function OpenLitter({ facts, route }: { facts: LitterFacts; route: Route }) {
  const today = useToday();
  const { age, level, who } = useLitterLine(facts);
  const { litter, puppies } = facts;
  return (
    <>
      <p className="dam">{words.litterName(litter)}</p>
      <p className="note under">
        {words.app.puppyCount(counted(puppies, today))}, {age}
        {litter.demo && (
          <>
            , <span className="demo-mark">{words.app.demo}</span>
          </>
        )}
      </p>
      <ul>
        {LITTER_PAGES.map((page) => (
          <li key={page}>
            <a
              href={href({ at: 'litter', litterId: litter.id, page, puppyId: null })}
              aria-current={isHere(route, page) ? 'page' : undefined}
            >
              {pageWords()[page]}
              {page === 'today' && level !== null && level !== 'steady' && (
                <span className={`who ${level}`}>
                  <LevelMark level={level} word={false} /> {who === '' ? words.level[level] : who}
                </span>
              )}
            </a>
          </li>
        ))}
      </ul>
    </>
  );
}

function isHere(route: Route, page: LitterPage): boolean {
  if (route.at === 'puppy') return page === 'growth';
  return route.at === 'litter' && route.page === page;
}

function OtherLitter({ facts, page }: { facts: LitterFacts; page: LitterPage }) {
  const today = useToday();
  const { age, level, who } = useLitterLine(facts);
  return (
    <>
      <a className="top dam" href={href({ at: 'litter', litterId: facts.litter.id, page, puppyId: null })}>
        {words.litterName(facts.litter)}
      </a>
      <p className="note under">
        {words.app.puppyCount(counted(facts.puppies, today))}, {age}
        {level !== null && (
          <>
            , <span className={level}>{words.level[level]}</span>
          </>
        )}
        {who !== '' && ` ${who}`}
        {facts.litter.demo && (
          <>
            , <span className="demo-mark">{words.app.demo}</span>
          </>
        )}
      </p>
    </>
  );
}

function LastBackup() {
  const today = useToday();
  const status = useQuery('records.status', {});
  const newest =
    status.value?.backups.reduce<number | null>((t, b) => (t === null || b.instant > t ? b.instant : t), null) ?? null;
  return (
    <p className="note">{newest === null ? words.app.noBackup : words.app.lastBackup(words.when(localOf(newest), today))}</p>
  );
}
