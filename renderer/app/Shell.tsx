import { useEffect, useRef, useState } from 'react';
import { flushSync } from 'react-dom';
import { litterInTheHouse } from '../../core/litter/in-the-house.ts';
import { CarePage } from '../care/CarePage.tsx';
import { useToday } from '../data/now.ts';
import { useQuery } from '../data/query.ts';
import { DamPage } from '../dogs/DamPage.tsx';
import { useHouse } from '../facts/useLitterGrowth.ts';
import { FoodPage } from '../food/FoodPage.tsx';
import { FoodsPage } from '../food/FoodsPage.tsx';
import { WeekPage } from '../food/WeekPage.tsx';
import { FreezerPage } from '../freezer/FreezerPage.tsx';
import { GrowthPage } from '../growth/GrowthPage.tsx';
import { WeighInPage } from '../growth/weigh-in/WeighInPage.tsx';
import { HomesPage } from '../homing/HomesPage.tsx';
import { href, type Route, useRoute } from '../links.ts';
import { BeginLitterPage } from '../litter/BeginLitterPage.tsx';
import { PuppiesPage } from '../litter/PuppiesPage.tsx';
import { PageTitle } from '../parts/PageTitle.tsx';
import { HousePage } from '../people/HousePage.tsx';
import { PaperPage } from '../print/PaperPage.tsx';
import { ImportPage } from '../records/ImportPage.tsx';
import { RescuePage } from '../records/RescuePage.tsx';
import { useWindow } from '../state/window.ts';
import { words } from '../state/words.ts';
import { ErrorBoundary } from './ErrorBoundary.tsx';
import { Foot } from './Foot.tsx';
import { HelpPage } from './HelpPage.tsx';
import { Margin } from './Margin.tsx';
import { Litters, Puppy, Records, Rules, Today, Weaning } from './places.tsx';
import { useTheme } from './useTheme.ts';

export function Shell() {
  const route = useRoute();
  const house = useHouse();
  const theme = useTheme(house);
  const rescue = useQuery('records.rescue', {}).value?.rescue ?? null;
  if (rescue !== null) return <RescuePage rescue={rescue} />;
  if (route.at === 'print') return <PaperPage key={`${route.of} ${route.id}`} route={route} />;
  return <Notebook route={route} theme={theme} />;
}

function Notebook({ route, theme }: { route: Exclude<Route, { at: 'print' }>; theme: 'day' | 'night' }) {
  const [marginOpen, setMarginOpen] = useState(false);
  const openLitterId = useOpenLitter(route);
  const page = useRef<HTMLElement>(null);
  const place = JSON.stringify(route);
  useFreshPlace(place, page, () => setMarginOpen(false));
  useEscape(page, () => setMarginOpen(true));
  return (
    <div className="window">
      <Fold open={marginOpen} toggle={() => setMarginOpen(!marginOpen)} openLitterId={openLitterId} />
      <Margin route={route} openLitterId={openLitterId} open={marginOpen} theme={theme} />
      <main className="page" ref={page} tabIndex={-1}>
        <ErrorBoundary at={place}>
          <Place route={route} />
        </ErrorBoundary>
      </main>
      <Foot />
    </div>
  );
}

function Place({ route }: { route: Exclude<Route, { at: 'print' }> }) {
  switch (route.at) {
    case 'litters':
      return <Litters />;
    case 'begin':
      return <BeginLitterPage />;
    case 'litter':
      return <LitterPlace key={route.litterId} route={route} />;
    case 'puppy':
      return <Puppy key={route.puppyId} puppyId={route.puppyId} view={route.view} />;
    case 'foods':
      return <FoodsPage />;
    case 'food':
      return <FoodPage foodId={route.foodId} />;
    case 'week':
      return <WeekPage key={route.litterId} litterId={route.litterId} />;
    case 'dam':
      return <DamPage key={route.damId} damId={route.damId} />;
    case 'freezer':
      return <FreezerPage />;
    case 'rules':
      return <Rules />;
    case 'house':
      return <HousePage field={route.field} />;
    case 'records':
      return <Records />;
    case 'import':
      return <ImportPage />;
    case 'help':
      return <HelpPage />;
    case 'nowhere':
      return <Nowhere />;
  }
}

function LitterPlace({ route }: { route: Extract<Route, { at: 'litter' }> }) {
  const all = useQuery('litter.all', {});
  if (all.status === 'loading') return <p className="soft">{words.app.loading}</p>;
  if (!all.value?.litters.some((l) => l.litter.id === route.litterId)) return <Nowhere />;
  switch (route.page) {
    case 'today':
      return <Today litterId={route.litterId} />;
    case 'weigh-in':
      return <WeighInPage litterId={route.litterId} firstPuppyId={route.puppyId} />;
    case 'growth':
      return <GrowthPage litterId={route.litterId} />;
    case 'weaning':
      return <Weaning key={route.litterId} litterId={route.litterId} />;
    case 'care':
      return <CarePage litterId={route.litterId} />;
    case 'puppies':
      return <PuppiesPage litterId={route.litterId} />;
    case 'homes':
      return <HomesPage litterId={route.litterId} />;
  }
}

function Nowhere() {
  return (
    <>
      <PageTitle title={words.app.nowhere} lead={words.app.nowhereMore} />
      <p className="line">
        <a href={href({ at: 'litters' })}>{words.app.backToLitters}</a>
      </p>
    </>
  );
}

/** One line on top of a narrow window: Pages, the litter. */
function Fold({ open, toggle, openLitterId }: { open: boolean; toggle: () => void; openLitterId: string | null }) {
  const all = useQuery('litter.all', {});
  const litter = all.value?.litters.find((l) => l.litter.id === openLitterId)?.litter;
  return (
    <div className="fold">
      <button type="button" className="button" aria-expanded={open} aria-controls="margin" onClick={toggle}>
        {words.app.pages}
      </button>
      <h2>{litter === undefined ? words.app.name : words.litterName(litter)}</h2>
    </div>
  );
}

/** The litter whose pages stand in the margin: the one looked at, else the one looked at last, else the youngest in the house. */
function useOpenLitter(route: Route): string | null {
  const all = useQuery('litter.all', {});
  const litters = all.value?.litters ?? [];
  const today = useToday();
  const [last, setLast] = useState<string | null>(null);
  const looked =
    route.at === 'litter'
      ? route.litterId
      : route.at === 'puppy'
        ? (litters.find((l) => l.puppies.some((p) => p.id === route.puppyId))?.litter.id ?? null)
        : null;
  useEffect(() => {
    if (looked !== null) setLast(looked);
  }, [looked]);
  if (looked !== null) return looked;
  if (last !== null && litters.some((l) => l.litter.id === last)) return last;
  return litters.find((l) => litterInTheHouse(l.puppies, today))?.litter.id ?? null;
}

/** A new place starts at its top with the foot let down; screen readers are led to the page. */
function useFreshPlace(place: string, page: React.RefObject<HTMLElement | null>, fold: () => void): void {
  const before = useRef(place);
  useEffect(() => {
    if (before.current === place) return;
    before.current = place;
    const { explain, drawUp, setFailure } = useWindow.getState();
    explain(null);
    drawUp(false);
    setFailure(null);
    fold();
    const element = page.current;
    if (element !== null && !element.contains(document.activeElement)) element.focus();
    element?.scrollTo(0, 0);
    window.scrollTo(0, 0);
  });
}

/** Esc lets the foot down; else it goes from the page to the margin, and from the margin back to where she was. */
function useEscape(page: React.RefObject<HTMLElement | null>, openMargin: () => void): void {
  const returnTo = useRef<HTMLElement | null>(null);
  useEffect(() => {
    const listener = (event: KeyboardEvent) => {
      if (event.key !== 'Escape' || event.defaultPrevented) return;
      const { drawnUp, drawUp } = useWindow.getState();
      if (drawnUp) {
        drawUp(false);
        return;
      }
      const margin = document.getElementById('margin');
      const active = document.activeElement as HTMLElement | null;
      if (margin?.contains(active) === true) {
        const back = returnTo.current;
        if (back?.isConnected === true) back.focus();
        else page.current?.focus();
        return;
      }
      returnTo.current = active;
      flushSync(openMargin); // a folded margin can't take the focus before it is drawn
      (margin?.querySelector<HTMLElement>('a[aria-current="page"]') ?? margin?.querySelector<HTMLElement>('a'))?.focus();
    };
    window.addEventListener('keydown', listener);
    return () => window.removeEventListener('keydown', listener);
  }, [page, openMargin]);
}
