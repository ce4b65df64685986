import { date } from '../../core/calendar/day.ts';
import { useToday } from '../data/now.ts';
import { useLitter } from '../facts/useLitter.ts';
import { PageTitle } from '../parts/PageTitle.tsx';
import { words } from '../state/words.ts';
import { ChipsPart } from './ChipsPart.tsx';
import { DosePart } from './DosePart.tsx';
import './care.css';

/** What is done for a litter's health, besides weighing and feeding. */
export function CarePage({ litterId }: { litterId: string }) {
  const facts = useLitter(litterId);
  const today = useToday();
  if (facts === null) return null;
  const { litter, puppies } = facts;
  return (
    <>
      <PageTitle
        title={words.care.title}
        lead={words.care.lead(words.litterName(litter), words.ageInWords(date(litter.whelpedAt.slice(0, 10)), today))}
      />
      <ChipsPart litterId={litterId} puppies={puppies} />
      <DosePart litterId={litterId} />
    </>
  );
}
