import type { PlanDocument } from '../../../core/homing/document.ts';
import { catalogueOf } from '../../../core/words/catalogue.ts';
import type { Paper } from '../../links.ts';
import { CollarRibbon } from '../../parts/CollarBand.tsx';
import { MealLadder } from '../../parts/ladder/MealLadder.tsx';
import { Runs } from '../Runs.tsx';
import { NumberLine, PartHead } from '../Sheet.tsx';
import { PlanSheet } from './PlanSheet.tsx';

/** Height of the ladder over its width of 695. */
const LADDER_HIGH: Record<Paper, number> = { a4: 152, letter: 126 };

/** What to do tonight, and where it goes: whose plan, this week, the next six, the meal ladder, when to ring the vet. */
export function WeekSheet({ document, paper }: { document: PlanDocument; paper: Paper }) {
  const { ladder, collar } = document;
  return (
    <PlanSheet document={document} n={1} className="week-sheet">
      <CollarRibbon collar={collar} width={184} height={9.5} label={document.collarWords} />
      <Whose document={document} />
      <Week document={document} />
      {document.next !== null && <Next next={document.next} />}
      {/* One tread is no ladder: a grown dog gets the same every day. */}
      {ladder.steps.length > 1 && (
        <section className="ladder-part">
          <PartHead heading={ladder.heading}>{ladder.note}</PartHead>
          <MealLadder
            steps={ladder.steps}
            born={ladder.bornOn}
            nowDay={ladder.nowDay}
            unit={document.units.amount}
            paper
            paperHigh={LADDER_HIGH[paper]}
            spoken={catalogueOf(document.language)}
            plates
          />
        </section>
      )}
      <VetBox vet={document.vet} />
      <Ask contact={document.contact} />
    </PlanSheet>
  );
}

function Whose({ document: { name, about } }: { document: PlanDocument }) {
  return (
    <header className="whose">
      <div className="whose-name" data-fit="0.45" data-wraps="true">
        <h1 className="fit">
          <bdi>{name}</bdi>
        </h1>
      </div>
      <div className="whose-about">
        {about.map((line) => (
          <p key={line.map((r) => r.text).join('')}>
            <Runs runs={line} />
          </p>
        ))}
      </div>
    </header>
  );
}

function Week({ document }: { document: PlanDocument }) {
  const { week, units, language, missing, why } = document;
  const said = catalogueOf(language);
  if (week === null) {
    return (
      <section className="no-week">
        <p>{missing}</p>
        {why !== '' && <p>{why}</p>}
      </section>
    );
  }
  const figure = (grams: number) => (
    <span className="amount fit">
      {said.foodFigure(grams, units.amount)} <span className="unit">{units.amount}</span>
    </span>
  );
  return (
    <section className="week-part">
      <div className="week-box" data-fit="0.4">
        <div className="week-head">
          <h2>{week.heading}</h2>
          <p>
            <Runs runs={week.food} />
          </p>
        </div>
        <ul className="bowls">
          {week.bowls.map((b) => (
            <li key={b.name}>
              <span className="time">{b.time}</span> {figure(b.grams)}
            </li>
          ))}
          <li className="the-day">
            <span className="time">{week.day}</span> {figure(week.dayGrams)}
          </li>
        </ul>
        <p className="until fit">{week.until}</p>
      </div>
      <p className="fair">
        <Runs runs={week.fair} />
        {why !== '' && <strong> {why}</strong>}
      </p>
    </section>
  );
}

function Next({ next }: { next: NonNullable<PlanDocument['next']> }) {
  return (
    <section>
      <PartHead heading={next.heading}>{next.note}</PartHead>
      <ul className="strip" data-fit="0.5">
        {next.weeks.map((week) => (
          <li key={week.from} className={week.changes ? 'changes' : ''}>
            <span className="from fit">{week.from}</span>{' '}
            {week.bowls.map((line) => (
              <b key={line} className="fit">
                {line}{' '}
              </b>
            ))}
          </li>
        ))}
      </ul>
      {next.change.length > 0 && (
        <p className="strip-note">
          <Runs runs={next.change} />
        </p>
      )}
    </section>
  );
}

function VetBox({ vet }: { vet: PlanDocument['vet'] }) {
  return (
    <section className="vet-box">
      <div className="vet-tiers">
        {([vet.now, vet.today] as const).map((tier, i) => (
          <div key={tier.heading} className={i === 0 ? 'vet-now' : 'vet-today'}>
            <h2>
              {tier.heading} <small>{tier.note}</small>
            </h2>
            {tier.first.length > 0 && (
              <p className="vet-first">
                <Runs runs={tier.first} />
              </p>
            )}
            <ul>
              {tier.lines.map((line) => (
                <li key={line.map((r) => r.text).join('')}>
                  <Runs runs={line} />
                </li>
              ))}
            </ul>
          </div>
        ))}
      </div>
      <div className="vet-numbers">
        {vet.lines.map((line) => (
          <NumberLine key={line.label} {...line} />
        ))}
      </div>
    </section>
  );
}

function Ask({ contact }: { contact: PlanDocument['contact'] }) {
  return (
    <address className="ask">
      <p>
        {contact.lead} {contact.name === '' ? <span className="to-write" /> : <b>{contact.name}</b>}
        {[contact.address, contact.email].filter((t) => t !== '').map((t) => `, ${t}`)}
      </p>
      {contact.phone === '' ? <NumberLine label={contact.phoneLabel} phone="" /> : <b className="ask-phone">{contact.phone}</b>}
    </address>
  );
}
