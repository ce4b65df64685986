import { dateOf } from '../../core/calendar/clock.ts';
import { litterName } from '../../core/litter/litter.ts';
import { shortDate } from '../../core/words/en/dates.ts';
import { importWords as w } from '../../core/words/en/import.ts';
import { now, useToday } from '../data/now.ts';
import { useQuery } from '../data/query.ts';
import { whelpingFault } from '../facts/changes.ts';
import { FormChoice, FormField } from '../parts/form/fields.tsx';
import { readClock, readDate } from '../parts/form/read.ts';
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
  const words = preview.columns.ok ? preview.columns.read.litters : [];
  const sheets = draft.source?.tables ?? [];
  return (
    <section className="part">
      <h2>{w.where}</h2>
      <div className="form">
        {sheets.length > 1 && (
          <FormChoice
            label={w.sheet}
            value={String(draft.sheet)}
            options={sheets.map((s, i) => ({ value: String(i), word: s.name }))}
            onChange={(value) =>
              put({ sheet: Number(value), table: { shape: null, meanings: {}, litter: null }, who: {}, left: [] })
            }
          />
        )}
        {words.length > 1 && (
          <FormChoice
            label={w.fromTable}
            hint={draft.table.litter === null ? w.severalLitters : ''}
            value={draft.table.litter ?? ''}
            options={[
              ...(draft.table.litter === null ? [{ value: '', word: w.chooseLitter }] : []),
              ...words.map((l) => ({ value: l.key, word: w.ofTable(l.name, l.dam) })),
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
                left: [],
              })
            }
          />
        )}
        <FormChoice
          label={w.into}
          value={preview.into}
          options={[
            ...litters.map(({ litter }) => ({
              value: litter.id,
              word: w.littersOption(litterName(litter), shortDate(dateOf(litter.whelpedAt), today)),
            })),
            { value: 'new', word: w.newLitter },
          ]}
          onChange={(into) => put({ into, who: {}, left: [] })}
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
        label={w.dam}
        required
        value={form.dam}
        sentence={form.dam.trim() === '' ? w.damNeeded : null}
        onChange={(dam) => put({ dam })}
      />
      <FormField label={w.name} value={form.name} sentence={null} onChange={(name) => put({ name })} />
      <FormField
        label={w.bornOn}
        type="date"
        required
        max={dateOf(now().local)}
        value={form.day}
        sentence={day.ok ? fault : form.day === '' ? w.bornNeeded : day.sentence}
        onChange={(value) => put({ day: value })}
      />
      <FormField
        label={w.bornAt}
        inputMode="numeric"
        value={form.clock}
        sentence={clock.ok ? null : clock.sentence}
        onChange={(value) => put({ clock: value })}
      />
    </>
  );
}
