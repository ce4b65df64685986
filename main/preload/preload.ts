/** The whole bridge between the window and the program: one call out, one signal in. No channel can be named from the page. */
import { contextBridge, type IpcRendererEvent, ipcRenderer } from 'electron';
import type { Result, Tag } from '../../core/contract/result.ts';

contextBridge.exposeInMainWorld('whelpside', {
  call(name: string, input: unknown): Promise<Result<unknown>> {
    return ipcRenderer.invoke('whelpside:call', name, input) as Promise<Result<unknown>>;
  },
  /** Answers the function that stops listening. The event itself, which carries the sender, stays on this side. */
  onChanged(listener: (tags: readonly Tag[]) => void): () => void {
    const heard = (_event: IpcRendererEvent, tags: readonly Tag[]): void => listener(tags);
    ipcRenderer.on('whelpside:changed', heard);
    return () => {
      ipcRenderer.off('whelpside:changed', heard);
    };
  },
});
