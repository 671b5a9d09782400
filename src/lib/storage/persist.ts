// Browsers clear what a page keeps when they run short of room, unless the page asked them not to.

/** Asks the browser to keep what is stored until the user removes it. False where it does not promise
 *  to, or cannot; people should then save files now and then. Best asked after a first save. */
export const askToPersist = async (): Promise<boolean> => {
  const { navigator } = globalThis as { navigator?: { storage?: Partial<StorageManager> } };
  try {
    return (await navigator?.storage?.persist?.()) ?? false;
  } catch {
    return false;
  }
};
