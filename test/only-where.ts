/** For `runIf`: whether a test can run on this machine. Where it can't, the reason is printed, so that nothing is left out in silence. */
export function onlyWhere(can: boolean, because: string): boolean {
  if (!can) console.log(`not run: ${because}`);
  return can;
}
