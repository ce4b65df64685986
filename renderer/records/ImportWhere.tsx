import { dateOf } from '../../core/calendar/clock.ts';
import { now, useToday } from '../data/now.ts';
import { useQuery } from '../data/query.ts';
import { whelpingFault } from '../facts/changes.ts';
import { FormChoice, FormField } from '../parts/form/fields.tsx';
import { readClock, readDate } from '../parts/form/read.ts';
import { words } from '../state/words.ts';
import type { ImportDraft, Preview } from './import-draft.ts';

/** The sheet, the litter of the table, and the litter it goes into: one that is there, or a new one. */
export function ImportWhere({
  draft,
  preview,
  put,
}: {
  draft: ImportDraft;
  preview: Preview;
  put: (change: Partial<ImportDraft>) => void;
}) {
  const today = useToday();
  const litters = useQuery('litter.all', {}).value?.litters ?? [];
  const inTable = preview.columns.ok ? preview.columns.read.litters : [];
  const sheets = draft.source?.tables ?? [];
  return (
    <section className="part">
      <h2>{words.import.where}</h2>
      <div className="form">
        {sheets.length > 1 && (
          <FormChoice
            label={words.import.sheet}
            value={String(draft.sheet)}
            options={sheets.map((s, i) => ({ value: String(i), word: s.name }))}
            onChange={(value) =>
              put({ sheet: Number(value), table: { shape: null, meanings: {}, litter: null }, who: {}, ticked: [] })
            }
          />
        )}
        {inTable.length > 1 && (
          <FormChoice
            label={words.import.fromTable}
            hint={draft.table.litter === null ? words.import.severalLitters : ''}
            value={draft.table.litter ?? ''}
            options={[
              ...(draft.table.litter === null ? [{ value: '', word: words.import.chooseLitter }] : []),
              ...inTable.map((l) => ({ value: l.key, word: words.import.ofTable(l.name, l.dam) })),
            ]}
            onChange={(litter) =>
              put({
                table: { ...draft.table, litter },
                into: null,
                dam: null,
                name: null,
                day: null,
                clock: null,
                who: {},
                ticked: [],
              })
            }
          />
        )}
        <FormChoice
          label={words.import.into}
          value={preview.into}
          options={[
            ...litters.map(({ litter }) => ({
              value: litter.id,
              word: words.import.littersOption(words.litterName(litter), words.shortDate(dateOf(litter.whelpedAt), today)),
            })),
            { value: 'new', word: words.import.newLitter },
          ]}
          onChange={(into) => put({ into, who: {}, ticked: [] })}
        />
        {preview.into === 'new' && <NewLitter preview={preview} put={put} />}
      </div>
    </section>
  );
}

function NewLitter({ preview, put }: { preview: Preview; put: (change: Partial<ImportDraft>) => void }) {
  const { form } = preview;
  const [day, clock] = [readDate(form.day), readClock(form.clock)];
  const fault = form.whelpedAt === null ? null : whelpingFault(form.whelpedAt);
  return (
    <>
      <FormField
        label={words.import.dam}
        required
        value={form.dam}
        sentence={form.dam.trim() === '' ? words.import.damNeeded : null}
        onChange={(dam) => put({ dam })}
      />
      <FormField label={words.import.name} value={form.name} sentence={null} onChange={(name) => put({ name })} />
      <FormField
        label={words.import.bornOn}
        type="date"
        required
        max={dateOf(now().local)}
        value={form.day}
        sentence={day.ok ? fault : form.day === '' ? words.import.bornNeeded : day.sentence}
        onChange={(value) => put({ day: value })}
      />
      <FormField
        label={words.import.bornAt}
        inputMode="numeric"
        value={form.clock}
        sentence={clock.ok ? null : clock.sentence}
        onChange={(value) => put({ clock: value })}
      />
    </>
  );
}
