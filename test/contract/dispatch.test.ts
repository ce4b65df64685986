import { openOn, scratchFolder } from '../main/open.ts';
import { contractSuite } from './suite.ts';

contractSuite('the service itself', async () => {
  const { folder, remove } = scratchFolder();
  const program = openOn(folder);
  return {
    dispatch: program.dispatch,
    close: async () => {
      program.close();
      remove();
    },
  };
});
