/** Pages that show parts of several features are put together here, so that no feature knows another. */
import { DamExpecting } from '../dogs/DamExpecting.tsx';
import { DamPart } from '../dogs/DamPart.tsx';
import { PuppyFeeding } from '../feeding/PuppyFeeding.tsx';
import { LitterRationFindings } from '../feeding/RationFindings.tsx';
import { RulesPage } from '../feeding/RulesPage.tsx';
import { FoodPart } from '../food/FoodPart.tsx';
import { ThawToday } from '../freezer/ThawToday.tsx';
import { PuppyPage } from '../growth/PuppyPage.tsx';
import { TodayPage } from '../growth/TodayPage.tsx';
import type { PuppyView } from '../links.ts';
import { LittersPage } from '../litter/LittersPage.tsx';
import { PeoplePart } from '../people/PeoplePart.tsx';
import { RecordsPage } from '../records/RecordsPage.tsx';
import { MealsToday } from '../weaning/MealsToday.tsx';
import { TopUpPart } from '../weaning/TopUpPart.tsx';
import { WeaningPage } from '../weaning/WeaningPage.tsx';

export function Litters() {
  return <LittersPage expecting={<DamExpecting />} />;
}

export function Today({ litterId }: { litterId: string }) {
  return (
    <TodayPage
      litterId={litterId}
      topUp={(of) => <TopUpPart {...of} />}
      after={(shown) => (
        <>
          <MealsToday litterId={litterId} />
          <ThawToday />
          <LitterRationFindings {...shown} />
        </>
      )}
    />
  );
}

export function Puppy({ puppyId, view }: { puppyId: string; view: PuppyView }) {
  return (
    <PuppyPage puppyId={puppyId} view={view} topUp={(of) => <TopUpPart {...of} />} feeding={(of) => <PuppyFeeding {...of} />} />
  );
}

export function Weaning({ litterId }: { litterId: string }) {
  return <WeaningPage litterId={litterId} dam={(of) => <DamPart {...of} />} />;
}

export function Rules() {
  return <RulesPage more={<FoodPart />} />;
}

export function Records() {
  return <RecordsPage erase={<PeoplePart />} />;
}
