import { puppyName } from '../../core/litter/litter.ts';
import { type Label, newKey } from '../../core/records/import-labels.ts';
import { SEXES } from '../../core/reference/classes.ts';
import { CollarBand } from '../parts/CollarBand.tsx';
import { collarLabel } from '../parts/collar-words.ts';
import { FormChoice } from '../parts/form/fields.tsx';
import { TableHead } from '../parts/TableHead.tsx';
import { words } from '../state/words.ts';
import { type ImportDraft, type Preview, sexesOf } from './import-draft.ts';

interface Props {
  draft: ImportDraft;
  preview: Preview;
  put: (change: Partial<ImportDraft>) => void;
}

/** What the table calls each puppy, and who that is. */
export function ImportWho({ draft, preview, put }: Props) {
  const labels = preview.columns.ok ? preview.columns.read.labels : [];
  return (
    <section className="part">
      <h2>{words.import.who}</h2>
      <p className="note">{words.import.whoHint}</p>
      {preview.made === null && <p role="alert">{words.import.tooMany}</p>}
      <table className="import-who">
        <TableHead heads={[words.import.inTable, { head: words.import.weights, className: 'figure' }, words.import.is]} />
        <tbody>
          {labels.map((label) => (
            <Row key={label.key} label={label} draft={draft} preview={preview} put={put} />
          ))}
        </tbody>
      </table>
    </section>
  );
}

function Row({ label, draft, preview, put }: Props & { label: Label }) {
  const who = preview.who.get(label.key);
  const puppies = preview.target?.puppies ?? [];
  const made = preview.made?.find((p) => p.key === newKey(label));
  const there = who?.is === 'there' ? puppies.find((p) => p.id === who.puppyId) : undefined;
  const collar = there?.collar ?? made?.collar;
  const called = label.text === '' ? words.import.noName : label.text;
  const weights = preview.rows.filter((r) => r.entry.label.key === label.key).length;
  return (
    <tr>
      <th scope="row" className="import-label">
        <bdi>{called}</bdi>
      </th>
      <td className="figure">{weights}</td>
      <td>
        <span className="import-is">
          {collar !== undefined && <CollarBand collar={collar} height={24} label={null} />}
          <FormChoice
            inCell
            label={words.import.whoOf(called)}
            value={who === undefined ? '' : who.is === 'there' ? who.puppyId : who.is}
            options={[
              ...(who === undefined ? [{ value: '', word: words.import.notSaid }] : []),
              ...puppies.map((p) => ({ value: p.id, word: collarLabel(p.collar, puppyName(p)) })),
              { value: 'new', word: words.import.newPuppy },
              { value: 'nobody', word: words.import.leaveOut },
            ]}
            onChange={(value) => put({ who: { ...draft.who, [label.key]: value }, ticked: [] })}
          />
          {who?.is === 'new' && (
            <FormChoice
              inCell
              label={words.import.sexOf(called)}
              value={sexesOf(draft, preview).get(newKey(label)) ?? 'unseen'}
              options={SEXES.map((s) => ({ value: s, word: words.sex[s] }))}
              onChange={(value) => put({ sexes: { ...draft.sexes, [label.key]: SEXES.find((s) => s === value) ?? 'dog' } })}
            />
          )}
        </span>
      </td>
    </tr>
  );
}
