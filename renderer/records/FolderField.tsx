import { call } from '../data/host.ts';
import { FormField } from '../parts/form/fields.tsx';
import { words } from '../state/words.ts';

/** The path of a folder: typed, or (on the desktop) chosen in the system's dialog. */
export function FolderField(props: {
  readonly value: string;
  readonly onChange: (folder: string) => void;
  readonly sentence: string | null;
  readonly canChoose: boolean;
}) {
  const choose = async () => {
    const answer = await call('records.chooseFolder', {});
    if (answer.ok && answer.value.folder !== null) props.onChange(answer.value.folder);
  };
  return (
    <div className="form">
      <FormField label={words.keeping.folder} value={props.value} onChange={props.onChange} sentence={props.sentence} />
      {props.canChoose && (
        <p className="keeping-choose">
          <button type="button" className="link" onClick={() => void choose()}>
            {words.keeping.choose}
          </button>
        </p>
      )}
    </div>
  );
}
