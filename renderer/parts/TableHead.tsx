/** The head of a table: a column a word, figures to the right, and words that are read out only. */

export type Head =
  | string
  | {
      readonly head: string;
      /** `figure` sets it over figures. */
      readonly className?: string;
      /** Read out, not shown. */
      readonly unseen?: boolean;
    };

/** `unseen` heads the whole table for readers only. */
export function TableHead({ heads, unseen = false }: { heads: readonly Head[]; unseen?: boolean }) {
  return (
    <thead className={unseen ? 'unseen' : undefined}>
      <tr>
        {heads.map((of) => {
          const { head, className, unseen: readOut } = typeof of === 'string' ? { head: of } : of;
          return (
            <th key={`${head} ${readOut === true}`} scope="col" className={className}>
              {readOut === true ? <span className="unseen">{head}</span> : head}
            </th>
          );
        })}
      </tr>
    </thead>
  );
}
